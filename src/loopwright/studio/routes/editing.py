"""The editing desk: findings of the whole folder, safe mends of one design, one that is left, the report as a file."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.desk import Desk
from loopwright.studio.folder import ChangedElsewhereError, Folder, NotInFolderError
from loopwright.studio.routes.given import body_of, words
from loopwright.studio.routes.worked import worked
from loopwright.studio.settings import MOST_TEXT
from loopwright.studio.workers import WorkerError
from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request

_UNSEEN = "This design could not be worked; it is safe and saved."


async def folder(request: Request) -> Response:
    """Every design of the folder with its findings, those that are left, and what was checked."""
    held: Folder = request.app.state.folder
    names = await asyncio.to_thread(held.names)
    found = await asyncio.gather(*(_looked_at(request.app.state.desk, held, name) for name in names))
    return JSONResponse({"designs": [f for f in found if f], "read_only": held.read_only})


async def _looked_at(desk: Desk, held: Folder, name: str) -> dict[str, Any]:
    try:
        opened = await asyncio.to_thread(held.read, name)
        good, told = await desk.proof(name, opened.text)
    except CannotOpen as e:
        return {"id": name, "title": name, "error": str(e)}
    except NotInFolderError:  # gone since it was listed
        return {}
    except WorkerError:
        good, told = False, _UNSEEN
    return {"id": name, "sum": opened.sum, **(told if good else {"title": name, "error": told})}


async def mend(request: Request) -> Response:
    """The text that is given with all its safe mends, and what they did; nothing is saved here: whoever writes the design saves it."""
    text = words(await body_of(request), "text", MOST_TEXT)
    mended, done = await worked(request, request.path_params["name"], "mended", text)
    return JSONResponse({"text": mended, "done": done})


async def leave(request: Request) -> Response:
    """The text that is given with the line that leaves a finding of it as it is, and why; nothing is saved here."""
    given = await body_of(request)
    told = (words(given, "text", MOST_TEXT), words(given, "code", 8), words(given, "place"), words(given, "why"))
    return JSONResponse({"text": await worked(request, request.path_params["name"], "left_as_it_is", *told)})


async def mend_saved(request: Request) -> Response:
    """A design of the folder with all its safe mends, saved whole where it is still what was looked at; its text before, to take back."""
    held: Folder = request.app.state.folder
    name, base = request.path_params["name"], words(await body_of(request), "base")
    opened = await asyncio.to_thread(held.read, name)
    if opened.sum != base:
        raise ChangedElsewhereError(opened.text)
    mended, done = await worked(request, name, "mended", opened.text)
    saved = await asyncio.to_thread(held.save, name, mended, base) if done else opened
    return JSONResponse({"before": opened.text, "sum": saved.sum, "done": done})


async def report(request: Request) -> Response:
    """The technical-editing report of a design, as a text file."""
    held: Folder = request.app.state.folder
    opened = await asyncio.to_thread(held.read, request.path_params["name"])
    text = await worked(request, opened.id, "report", opened.text)
    headers = {"content-disposition": 'attachment; filename="editing-report.txt"'}
    return Response(text, media_type="text/plain; charset=utf-8", headers=headers)


ROUTES = (
    Route("/api/editing", folder, methods=["GET"]), Route("/api/editing/{name}/mended", mend, methods=["POST"]),
    Route("/api/editing/{name}/left", leave, methods=["POST"]),
    Route("/api/editing/{name}/mend", mend_saved, methods=["POST"]), Route("/api/editing/{name}/report", report, methods=["GET"]),
)
