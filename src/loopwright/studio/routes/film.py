"""Films: the plan of a design for the size on camera, its cards, the log that is tapped beside the camera and what it gives, the kit."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Awaitable
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.film_logs import MOST_AT_ONCE, MOST_LOG, FilmLogs, KeptLog
from loopwright.studio.filming import SHAPES, Filming, NoFilmError
from loopwright.studio.folder import sum_of
from loopwright.studio.routes.given import body_of, number_in_address, words
from loopwright.studio.routes.opened import folder_of, opened_of, path_of
from loopwright.studio.routes.runs import run_routes, target_of
from loopwright.studio.settings import mark_of
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkerError
from loopwright.workshop.files import CannotOpen
from loopwright.workshop.film.choice import Choice

if TYPE_CHECKING:
    from starlette.requests import Request

LONGEST_SIZE = 80


async def plan(request: Request) -> Response:
    """The plan for a choice of size, terms, language and hand."""
    opened, given = await opened_of(request), await body_of(request)
    return await _told(_filming(request).plan(_window(given), opened.id, opened.text, _choice(given)), "This plan")


async def cards(request: Request) -> Response:
    """What the cards of a choice are in one shape, and the key of their drawings."""
    opened, given = await opened_of(request), await body_of(request)
    shape = words(given, "shape", 8) or SHAPES[0]
    if shape not in SHAPES:
        raise CannotOpen(f"shape should be one of {', '.join(SHAPES)}")

    async def made() -> str:
        asked = _window(given), opened.id, opened.text, _choice(given), shape
        key, told = await _filming(request).cards(*asked)
        return f'{{"key":"{key}","cards":{told}}}'

    return await _told(made(), "These cards")


async def card(request: Request) -> Response:
    """One card, SVG. The styles in it are let in by no page's policy but as a picture."""
    found = _filming(request).drawing(request.path_params["key"], number_in_address(request.path_params["number"], "number"))
    if found is None:
        return JSONResponse({"error": "There is no such card."}, 404)
    return Response(found, media_type="image/svg+xml", headers={"cache-control": "private, max-age=600"})


async def times(request: Request) -> Response:
    """What a log gives along the plan of a choice; its whole text is sent."""
    opened, given = await opened_of(request), await body_of(request)
    choice, log = _choice(given), words(given, "log", MOST_LOG)
    return await _told(_filming(request).times(_window(given), opened.id, opened.text, choice, log), "The times of this log")


async def read_log(request: Request) -> Response:
    """The log that is kept of a design's size."""
    opened = await opened_of(request)
    found = await asyncio.to_thread(_logs(request).read, opened.id, _size(request.query_params.get("size", "")))
    return _log(request, found)


async def older_logs(request: Request) -> Response:
    """The older logs of a design's size, the newest first."""
    opened = await opened_of(request)
    found = await asyncio.to_thread(_logs(request).older, opened.id, _size(request.query_params.get("size", "")))
    return JSONResponse({"older": [{"number": o.number, "at": o.at_s, "taps": o.taps} for o in found]})


async def older_log(request: Request) -> Response:
    """One older log."""
    opened, number = await opened_of(request), number_in_address(request.path_params["number"], "number")
    text = await asyncio.to_thread(_logs(request).older_text, opened.id, _size(request.query_params.get("size", "")), number)
    return JSONResponse({"number": number, "text": text})


async def change_log(request: Request) -> Response:
    """Does to the log what was tapped, in its order."""
    opened, given = await opened_of(request), await body_of(request)
    doing = given.get("doing")
    if not isinstance(doing, list) or len(doing) > MOST_AT_ONCE or not all(isinstance(d, dict) for d in doing):
        raise CannotOpen(f"doing should be a list of at most {MOST_AT_ONCE} things to do to the log")
    found = await asyncio.to_thread(_logs(request).change, opened.id, _size(given.get("size", "")), doing)
    return _log(request, found)


async def begin(request: Request) -> Response:
    """Begins to make the kit, with a log if one is sent: into a folder below the designs, or into one file to take away."""
    await opened_of(request)
    given = await body_of(request)
    choice, target = _choice(given), target_of(request, given)
    log = words(given, "log", MOST_LOG)
    run = _filming(request).begin(path_of(request), choice, log if log.strip() else None, target)
    return JSONResponse(run.as_wire(), 202)


async def _told(made: Awaitable[str], what: str) -> Response:
    """What was made; or `why` there is none; or that it was `dropped`, as another one was asked for meanwhile."""
    try:
        return Response(await made, media_type="application/json")
    except NoFilmError as e:
        return JSONResponse({"why": str(e)})
    except OutdatedError:
        return JSONResponse({"dropped": True})
    except TookTooLongError:
        raise CannotOpen(f"{what} took too long, and was stopped. The pattern is safe and saved; a smaller design may do") from None
    except WorkerError as e:
        raise CannotOpen(f"{what} could not be made ({e or type(e).__name__}). The pattern is safe and saved") from None


def _choice(given: dict[str, Any]) -> Choice:
    """What is filmed. Raises CannotOpen for what there is not; the size is looked for where the design is worked."""
    terms, language = words(given, "terms", 8), words(given, "language", 8) or "en"
    if terms not in ("", "us", "uk"):
        raise CannotOpen("terms should be us or uk")
    if not re.fullmatch("[a-z]{2}", language):
        raise CannotOpen("language should be a code of two letters")
    return Choice(_size(given.get("size", "")), terms, language, given.get("left_handed") is True)


def _size(said: object) -> str:
    if not isinstance(said, str) or len(said) > LONGEST_SIZE or any(ord(c) < 32 for c in said):
        raise CannotOpen("size should be the name of a size")
    return said


def _window(given: dict[str, Any]) -> str:
    """The window that asks: what it asks for anew stops what it asked for before."""
    return words(given, "window", 24)


def _log(request: Request, found: KeptLog) -> Response:
    kept = {"text": found.text, "sum": sum_of(found.text), "older": found.older, "read_only": folder_of(request).read_only}
    kept["place"] = mark_of(folder_of(request).path)
    return JSONResponse(kept)


def _filming(request: Request) -> Filming:
    state = request.app.state
    if not hasattr(state, "filming"):
        state.filming = Filming(state.workers)
    found: Filming = state.filming
    return found


def _logs(request: Request) -> FilmLogs:
    state = request.app.state
    if not hasattr(state, "film_logs"):
        state.film_logs = FilmLogs(folder_of(request).path, read_only=folder_of(request).read_only)
    found: FilmLogs = state.film_logs
    return found


_AT = "/api/film/{name}"
ROUTES = (
    Route(f"{_AT}/plan", plan, methods=["POST"]), Route(f"{_AT}/cards", cards, methods=["POST"]),
    Route(f"{_AT}/cards/{{key}}/{{number}}", card, methods=["GET"]), Route(f"{_AT}/times", times, methods=["POST"]),
    Route(f"{_AT}/log", read_log, methods=["GET"]), Route(f"{_AT}/log", change_log, methods=["POST"]),
    Route(f"{_AT}/log/older", older_logs, methods=["GET"]), Route(f"{_AT}/log/older/{{number}}", older_log, methods=["GET"]),
    Route(f"{_AT}/runs", begin, methods=["POST"]), *run_routes(_AT, lambda request: _filming(request).runs, "-film"),
)
