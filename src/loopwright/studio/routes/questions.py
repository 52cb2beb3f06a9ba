"""Makers' questions: what can be asked of a design, the answer, what is kept, a note in the pattern."""

from __future__ import annotations

import asyncio
import time
from typing import TYPE_CHECKING, Any, cast, get_args

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.shelf import questions as shelf
from loopwright.shelf.store import Shelf
from loopwright.studio.folder import Folder, Opened
from loopwright.studio.routes.given import body_of, number_in_address, real, whole, words
from loopwright.studio.routes.worked import worked
from loopwright.studio.workers import OutdatedError
from loopwright.workshop.asked import Kind, Question
from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request


async def listing(request: Request) -> Response:
    """The rows of a size that can be asked about, and the questions that are kept."""
    opened = await _opened(request)
    size = number_in_address(request.query_params.get("size"), "size")
    rows = await worked(request, opened.id, "rows", opened.text, size)
    kept = await asyncio.to_thread(shelf.kept, _shelf(request), opened.id)
    return JSONResponse({"size": size, "rows": rows, "kept": [_told(k) for k in kept], "sum": opened.sum})


async def measures(request: Request) -> Response:
    """Measures of a size that can be asked about."""
    opened = await _opened(request)
    size = number_in_address(request.query_params.get("size"), "size")
    return JSONResponse({"size": size, "measures": await worked(request, opened.id, "measures", opened.text, size)})


async def answer(request: Request) -> Response:
    """The answer to a question, with its causes drawn.

    A question whose place a newer one took is answered with that alone: it is what happens while somebody types.
    """
    opened, question = await _opened(request), _question(await body_of(request))
    try:
        return JSONResponse(await worked(request, opened.id, "answer", opened.text, question, newest=True))
    except OutdatedError:
        return JSONResponse({"outdated": True})


async def keep(request: Request) -> Response:
    """Keeps a question with its row, size and version, and the answer that was sent."""
    opened, given = await _opened(request), await body_of(request)
    kind = words(given, "kind")
    if kind not in get_args(Kind):
        raise CannotOpen(f"a question is one of {', '.join(get_args(Kind))}")
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
    text = await worked(request, opened.id, "note", opened.text, whole(given, "row"), words(given, "words", 400))
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
        raise CannotOpen(f"a question is one of {', '.join(get_args(Kind))}")
    before = given.get("before")
    return Question(
        cast("Kind", kind), whole(given, "size", 0), whole(given, "row", -1), whole(given, "have", -1),
        None if before is None else whole(given, "before"), real(given, "stitches"), real(given, "rows"), words(given, "amount", 40),
        (words(given, "section") or None, words(given, "measure")), real(given, "want_mm"), "uk" if given.get("terms") == "uk" else "us",
        words(given, "look", 20), real(given, "ball_m"),
    )


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
