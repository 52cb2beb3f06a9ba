"""The folder: its designs, a new one, one read and saved, one as a picture."""

from __future__ import annotations

import asyncio
from functools import cache
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response

from loopwright.studio.desk import Desk
from loopwright.studio.folder import MOST_FILES, Folder, Opened
from loopwright.studio.routes.given import body_of
from loopwright.studio.settings import mark_of
from loopwright.studio.workers import WorkerError
from loopwright.workshop.files import CannotOpen, CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request

LIST_S = 0.6  # the folder is listed after so long, also where not every design has been looked at


async def listing(request: Request) -> Response:
    """The designs of the folder, each with what is true of it, and the starting points.

    A design that has not been looked at yet has only its title: it is looked at meanwhile, and whoever asks again is told.
    """
    folder: Folder = request.app.state.folder
    found: list[dict[str, Any]] = []
    waiting: dict[asyncio.Task[dict[str, Any]], dict[str, Any]] = {}
    for opened in await asyncio.to_thread(folder.all):
        if isinstance(opened, tuple):
            found.append({"id": opened[0], "title": opened[0], "error": opened[1]})
            continue
        found.append({"id": opened.id, "title": _first_line(opened.text) or opened.id, "saved_at": opened.at})
        waiting[_looked_at(request, opened)] = found[-1]
    if waiting:
        await asyncio.wait(waiting, timeout=LIST_S)
    for task, card in waiting.items():
        if task.done() and not task.cancelled():
            card.update(task.result())
    points = await asyncio.to_thread(_starting_points)
    return JSONResponse({"folder": folder.path.name, "read_only": folder.read_only, "designs": found, "starting_points": points})


@cache
def _starting_points() -> list[dict[str, str]]:
    from loopwright.workshop.designs import shipped  # noqa: PLC0415 - reads files

    return [{"name": s.name, "title": s.title, "about": s.about} for s in shipped() if not s.as_worked]


def _looked_at(request: Request, opened: Opened) -> asyncio.Task[dict[str, Any]]:
    """A look at a design, shared by all who ask for it; it goes on when nobody waits any more."""
    looks: dict[str, asyncio.Task[dict[str, Any]]] = request.app.state.looks
    task = looks.get(opened.sum)
    if task is None or task.cancelled():
        while len(looks) > 2 * MOST_FILES:
            looks.pop(next(iter(looks)))
        task = looks[opened.sum] = asyncio.create_task(_look(request.app.state.desk, opened))
    return task


async def _look(desk: Desk, opened: Opened) -> dict[str, Any]:
    try:
        return await desk.summary(opened.id, opened.text)
    except WorkerError as e:
        return {"error": f"This design could not be looked at ({e or type(e).__name__}); it is safe and saved."}


def _first_line(text: str) -> str:
    return next((x.strip() for x in text.split("\n") if x.strip()), "")[:200]


async def create(request: Request) -> Response:
    """A new design: from a text, from a starting point, or empty."""
    asked = await body_of(request)
    text, title = str(asked.get("text") or ""), str(asked.get("title") or "")
    if asked.get("starting_point"):
        from loopwright.workshop.designs import find  # noqa: PLC0415 - reads files

        point = await asyncio.to_thread(find, str(asked["starting_point"]))
        if point is None:
            raise CannotOpen("There is no such starting point.")
        text, title = point.text, point.title
    title = title or _first_line(text) or "new design"
    opened = await asyncio.to_thread(request.app.state.folder.create, title, text or f"{title}\n")
    return JSONResponse(_told(opened), 201)


async def read(request: Request) -> Response:
    """One design's text."""
    folder: Folder = request.app.state.folder
    opened = await asyncio.to_thread(folder.read, request.path_params["name"])
    return JSONResponse({**_told(opened), "place": mark_of(folder.path), "read_only": folder.read_only})


async def save(request: Request) -> Response:
    """Saves a design where it is still what was opened."""
    asked = await body_of(request)
    if not isinstance(asked.get("text"), str) or not isinstance(asked.get("base"), str):
        raise CannotSave("a text and the sum of what was opened are needed")
    opened = await asyncio.to_thread(request.app.state.folder.save, request.path_params["name"], asked["text"], asked["base"])
    return JSONResponse({k: v for k, v in _told(opened).items() if k != "text"})


async def history(request: Request) -> Response:
    """The older texts of a design that are kept, the newest first."""
    folder: Folder = request.app.state.folder
    opened = await asyncio.to_thread(folder.read, request.path_params["name"])
    found = await asyncio.to_thread(folder.history.listing, opened.id)
    return JSONResponse({"kept": [{"id": k.id, "at": k.at_s, "why": k.why} for k in found]})


async def kept(request: Request) -> Response:
    """One older text of a design."""
    folder: Folder = request.app.state.folder
    opened = await asyncio.to_thread(folder.read, request.path_params["name"])
    text = await asyncio.to_thread(folder.history.read, opened.id, request.path_params["kept"])
    return JSONResponse({"id": request.path_params["kept"], "text": text})


async def picture(request: Request) -> Response:
    """The design as its fabric looks, as PNG; nothing where it has no shape yet."""
    opened = await asyncio.to_thread(request.app.state.folder.read, request.path_params["name"])
    from loopwright.studio.shapes import thumbnail  # noqa: PLC0415 - only where it is looked at

    data = await thumbnail(request.app.state.workers, opened.text, opened.sum)
    if data is None:
        return Response(status_code=204)
    return Response(data, media_type="image/png", headers={"cache-control": "private, max-age=60", "etag": f'"{opened.sum}"'})


def _told(opened: Opened) -> dict[str, Any]:
    return {"id": opened.id, "text": opened.text, "sum": opened.sum, "saved_at": opened.at}
