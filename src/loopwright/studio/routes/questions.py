"""Makers' questions: what can be asked of a design, the answer, what is kept, a note in the pattern."""

from __future__ import annotations

import asyncio
import time
from functools import lru_cache
from typing import TYPE_CHECKING, Any, cast, get_args

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.shelf import questions as shelf
from loopwright.shelf.store import Shelf
from loopwright.studio.folder import Folder, Opened
from loopwright.studio.routes.given import body_of, number_in_address, real, whole, words
from loopwright.studio.workers import OutdatedError, WorkerError
from loopwright.workshop.asked import Asked, CannotAnswerError, Kind, Question
from loopwright.workshop.files import CannotOpen, CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request

_HELD = 4  # texts that were read and worked for questions
ASK_S = 30.0


async def listing(request: Request) -> Response:
    """The rows of a size that can be asked about, and the questions that are kept."""
    opened = await _opened(request)
    size = number_in_address(request.query_params.get("size"), "size")
    asked = await asyncio.to_thread(_asked, opened.text, opened.id)
    rows = await asyncio.to_thread(asked.rows, size)
    kept = await asyncio.to_thread(shelf.kept, _shelf(request), opened.id)
    return JSONResponse({"size": size, "rows": rows, "kept": [_told(k) for k in kept], "sum": opened.sum})


async def measures(request: Request) -> Response:
    """Measures of a size that can be asked about."""
    opened = await _opened(request)
    size = number_in_address(request.query_params.get("size"), "size")
    found = await _worked(request, measures_of, opened, size, "measures")
    return JSONResponse({"size": size, "measures": found if isinstance(found, list) else []})


async def answer(request: Request) -> Response:
    """The answer to a question, with its causes drawn."""
    opened, question = await _opened(request), _question(await body_of(request))
    if question.kind == "count":
        asked = await asyncio.to_thread(_asked, opened.text, opened.id)
        return JSONResponse(await asyncio.to_thread(asked.as_wire, question))
    return JSONResponse(await _worked(request, answer_of, opened, question))


async def keep(request: Request) -> Response:
    """Keeps a question with its row, size and version, and the answer that was sent."""
    opened, given = await _opened(request), await body_of(request)
    kind = words(given, "kind")
    if kind not in get_args(Kind):
        raise CannotOpen("a question is of a count, a gauge, yarn or a measure")
    asked = given.get("asked")
    question = shelf.Kept(
        opened.id, words(given, "version"), cast("shelf.Kind", kind), words(given, "size"), words(given, "section"), words(given, "label"),
        asked if isinstance(asked, dict) else {}, words(given, "heading"), words(given, "sent", shelf.MOST_LONG), time.time(),
    )
    kept = await asyncio.to_thread(shelf.keep, _shelf(request), question)
    return JSONResponse(_told(kept), 201)


async def let_go(request: Request) -> Response:
    """Takes a question off the shelf."""
    number = number_in_address(request.path_params["number"], "number")
    gone = await asyncio.to_thread(shelf.let_go, _shelf(request), request.path_params["name"], number)
    return JSONResponse({"gone": gone}, 200 if gone else 404)


async def note(request: Request) -> Response:
    """The text of a design with a note below one of its rows; nothing is saved here."""
    opened, given = await _opened(request), await body_of(request)
    asked = await asyncio.to_thread(_asked, opened.text, opened.id)
    text = await asyncio.to_thread(asked.note, whole(given, "row"), words(given, "words", 400))
    return JSONResponse({"text": text, "sum": opened.sum})


async def _opened(request: Request) -> Opened:
    folder: Folder = request.app.state.folder
    return await asyncio.to_thread(folder.read, request.path_params["name"])


def _shelf(request: Request) -> Shelf:
    folder: Folder = request.app.state.folder
    return Shelf(folder.path, read_only=folder.read_only)


def _question(given: dict[str, Any]) -> Question:
    kind = words(given, "kind")
    if kind not in get_args(Kind):
        raise CannotOpen("a question is of a count, a gauge, yarn or a measure")
    before = given.get("before")
    return Question(
        cast("Kind", kind), whole(given, "size", 0), whole(given, "row", -1), whole(given, "have", -1),
        None if before is None else whole(given, "before"), real(given, "stitches"), real(given, "rows"), words(given, "amount", 40),
        (words(given, "section") or None, words(given, "measure")), real(given, "want_mm"), "uk" if given.get("terms") == "uk" else "us",
    )


async def _worked(request: Request, work: Any, opened: Opened, given: Any, what: str = "question") -> Any:
    """In another process: measuring must not slow down the typing. Raises CannotAnswerError, CannotSave.

    A question whose place a newer one took is answered with that alone: it is what happens while somebody types.
    """
    try:
        good, value = await request.app.state.workers.run(f"{what} {opened.id}", work, opened.text, opened.id, given, time_s=ASK_S)
    except OutdatedError:
        return {"outdated": True}
    except WorkerError as e:
        raise CannotSave(f"this question could not be answered ({e}); the pattern is safe and saved") from None
    if not good:
        raise CannotAnswerError(value)
    return value


@lru_cache(_HELD)
def _asked(text: str, name: str) -> Asked:
    return Asked(text, name)


def answer_of(text: str, name: str, question: Question) -> tuple[bool, Any]:
    """In the other process: the answer, or why there is none."""
    try:
        return True, _asked(text, name).as_wire(question)
    except CannotAnswerError as e:
        return False, str(e)


def measures_of(text: str, name: str, size: int) -> tuple[bool, Any]:
    """In the other process: the measures of a size, or why there are none."""
    try:
        return True, _asked(text, name).measures(size)
    except CannotAnswerError as e:
        return False, str(e)


def _told(kept: shelf.Kept) -> dict[str, Any]:
    return {
        "id": kept.id, "version": kept.version, "kind": kept.kind, "size": kept.size, "section": kept.section, "label": kept.label,
        "asked": dict(kept.asked), "heading": kept.heading, "sent": kept.sent, "at": kept.at_s,
    }


ROUTES = (
    Route("/api/questions/{name}", listing, methods=["GET"]), Route("/api/questions/{name}/measures", measures, methods=["GET"]),
    Route("/api/questions/{name}/answer", answer, methods=["POST"]), Route("/api/questions/{name}/kept", keep, methods=["POST"]),
    Route("/api/questions/{name}/kept/{number}", let_go, methods=["DELETE"]), Route("/api/questions/{name}/note", note, methods=["POST"]),
)
