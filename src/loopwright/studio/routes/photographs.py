"""Photographs of a design: put into the folder, looked at, laid aside; and the lines of the pattern that name them."""

from __future__ import annotations

import asyncio
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.desk import Desk
from loopwright.studio.photographs import SHOW_S, Photographs, kind_of, shown
from loopwright.studio.routes.given import body_of, words
from loopwright.studio.routes.opened import folder_of, opened_of
from loopwright.studio.settings import MOST_PHOTOGRAPH, MOST_TEXT
from loopwright.studio.workers import WorkerError
from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request

LONGEST_NAME = 250


async def bring(request: Request) -> Response:
    """Puts the photograph that is the body of the request into the folder; gives the name that it got."""
    await opened_of(request)
    photographs, called = Photographs(folder_of(request)), request.query_params.get("called", "")[:LONGEST_NAME]
    data = await request.body()
    good, kind = await _made(request, "this photograph", "kind_of", kind_of, data)
    if not good:
        raise CannotOpen(kind)
    return JSONResponse({"file": await asyncio.to_thread(photographs.put, called, kind, data)}, 201)


async def listing(request: Request) -> Response:
    """The photographs that a text names, each with whether it is there; the sections; and what else lies in the folder."""
    opened, text = await opened_of(request), words(await body_of(request), "text", MOST_TEXT)
    found = await _work(request, opened.id, "listed", text)
    photographs = Photographs(folder_of(request))
    for one in found["named"]:
        one["there"] = await asyncio.to_thread(photographs.find, one["file"]) is not None
    known = {one["file"] for one in found["named"]}
    others = [s.name for s in await asyncio.to_thread(photographs.all) if s.name not in known]
    return JSONResponse({**found, "others": others, "read_only": folder_of(request).read_only, "most_bytes": MOST_PHOTOGRAPH})


async def change(request: Request) -> Response:
    """The text with one photograph added, changed or taken out. Nothing is saved here."""
    opened, given = await opened_of(request), await body_of(request)
    text = words(given, "text", MOST_TEXT)
    good, made = await _work(request, opened.id, "changed", text, {k: v for k, v in given.items() if k != "text"})
    if not good:
        raise CannotOpen(made)
    return JSONResponse({"text": made})


async def show(request: Request) -> Response:
    """One photograph of the folder, made small."""
    await opened_of(request)
    path = await asyncio.to_thread(Photographs(folder_of(request)).find, request.query_params.get("file", ""))
    if path is None:
        return JSONResponse({"error": "There is no such photograph in this folder."}, 404)
    sign = await asyncio.to_thread(_sign, path)
    headers = {"etag": sign, "cache-control": "private, no-cache"}
    if request.headers.get("if-none-match") == sign:
        return Response(status_code=304, headers=headers)
    data = await _made(request, "this photograph", f"shown {path}", shown, str(path))
    return Response(data, media_type="image/jpeg", headers=headers) if data is not None else Response(status_code=204)


async def lay_aside(request: Request) -> Response:
    """Moves a photograph that no design names out of sight; gives where it lies."""
    await opened_of(request)
    file = words(await body_of(request), "file", LONGEST_NAME)
    return JSONResponse({"to": await asyncio.to_thread(Photographs(folder_of(request)).lay_aside, file)})


def _sign(path: Path) -> str:
    found = path.stat()
    return f'"{found.st_mtime_ns:x}-{found.st_size:x}"'


async def _made(request: Request, what: str, kind: str, work: Any, *given: Any) -> Any:
    """What the heavy processes make of a photograph; each its own piece, so that none stops another. Raises CannotOpen."""
    state = request.app.state
    state.photographs = getattr(state, "photographs", 0) + 1
    try:
        return await state.workers.run(f"photograph {kind} {state.photographs}", work, *given, time_s=SHOW_S)
    except WorkerError as e:
        raise CannotOpen(f"{what} could not be opened ({e or type(e).__name__}); the pattern is safe and saved") from None


async def _work(request: Request, name: str, what: str, *given: Any) -> Any:
    desk: Desk = request.app.state.desk
    try:
        return await desk.work(name, f"photograph_lines:{what}", *given)
    except WorkerError as e:
        raise CannotOpen(f"the photographs could not be listed ({e or type(e).__name__}); the pattern is safe and saved") from None


_AT = "/api/publishing/{name}/photographs"
ROUTES = (
    Route(_AT, bring, methods=["POST"]), Route(f"{_AT}/list", listing, methods=["POST"]), Route(f"{_AT}/line", change, methods=["POST"]),
    Route(f"{_AT}/shown", show, methods=["GET"]), Route(f"{_AT}/aside", lay_aside, methods=["POST"]),
)
