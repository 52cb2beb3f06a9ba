"""The folder: its designs, a new one, one read and saved, one as a picture."""

from __future__ import annotations

import asyncio
import json
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response

from loopwright.findings.registry import severity
from loopwright.studio.folder import Folder, Opened
from loopwright.workshop.files import CannotOpen, CannotSave
from loopwright.workshop.live import Live

if TYPE_CHECKING:
    from starlette.requests import Request

_SUMMARIES: dict[str, dict[str, Any]] = {}
_MOST_SUMMARIES = 2000


async def listing(request: Request) -> Response:
    """The designs of the folder, each with what is true of it, and the starting points."""
    folder: Folder = request.app.state.folder
    found: list[dict[str, Any]] = []
    for name in await asyncio.to_thread(folder.names):
        try:
            opened = await asyncio.to_thread(folder.read, name)
        except CannotOpen as e:
            found.append({"id": name, "title": name, "error": str(e)})
            continue
        found.append({"id": name, "saved_at": opened.at, **await asyncio.to_thread(_summary, opened)})
    from loopwright.workshop.designs import shipped  # noqa: PLC0415 - reads files

    points = [{"name": s.name, "title": s.title, "about": s.about} for s in await asyncio.to_thread(shipped) if not s.as_worked]
    return JSONResponse({"folder": folder.path.name, "read_only": folder.read_only, "designs": found, "starting_points": points})


def _summary(opened: Opened) -> dict[str, Any]:
    if opened.sum not in _SUMMARIES:
        if len(_SUMMARIES) > _MOST_SUMMARIES:
            _SUMMARIES.clear()
        seen = Live(opened.id).see(opened.text)
        open_ones = [severity(f) for f in seen.report.findings]
        _SUMMARIES[opened.sum] = {
            "title": seen.document.title or opened.id, "sizes": list(seen.report.sizes), "rows": len(seen.report.rows),
            "unread": sum(not r.read for r in seen.report.rows), "terms": seen.document.terms,
            "open": {word: open_ones.count(word) for word in ("error", "warning", "advice")},
        }
    return _SUMMARIES[opened.sum]


async def create(request: Request) -> Response:
    """A new design: from a text, from a starting point, or empty."""
    asked = await _body(request)
    text, title = str(asked.get("text") or ""), str(asked.get("title") or "")
    if asked.get("starting_point"):
        from loopwright.workshop.designs import find  # noqa: PLC0415 - reads files

        point = await asyncio.to_thread(find, str(asked["starting_point"]))
        if point is None:
            raise CannotOpen("There is no such starting point.")
        text, title = point.text, point.title
    title = title or next((x.strip() for x in text.split("\n") if x.strip()), "") or "new design"
    opened = await asyncio.to_thread(request.app.state.folder.create, title, text or f"{title}\n")
    return JSONResponse(_told(opened), 201)


async def read(request: Request) -> Response:
    """One design's text."""
    return JSONResponse(_told(await asyncio.to_thread(request.app.state.folder.read, request.path_params["name"])))


async def save(request: Request) -> Response:
    """Saves a design where it is still what was opened."""
    asked = await _body(request)
    if not isinstance(asked.get("text"), str) or not isinstance(asked.get("base"), str):
        raise CannotSave("a text and the sum of what was opened are needed")
    opened = await asyncio.to_thread(request.app.state.folder.save, request.path_params["name"], asked["text"], asked["base"])
    return JSONResponse({k: v for k, v in _told(opened).items() if k != "text"})


async def picture(request: Request) -> Response:
    """The design as its fabric looks, as PNG; 404 where it has no shape yet."""
    opened = await asyncio.to_thread(request.app.state.folder.read, request.path_params["name"])
    from loopwright.studio.shapes import thumbnail  # noqa: PLC0415 - only where it is looked at

    data = await thumbnail(request.app.state.workers, opened.text, opened.sum)
    if data is None:
        return JSONResponse({"error": "This design has no shape yet."}, 404)
    return Response(data, media_type="image/png", headers={"cache-control": "private, max-age=60", "etag": f'"{opened.sum}"'})


def _told(opened: Opened) -> dict[str, Any]:
    return {"id": opened.id, "text": opened.text, "sum": opened.sum, "saved_at": opened.at}


async def _body(request: Request) -> dict[str, Any]:
    try:
        asked = json.loads(await request.body())
    except (ValueError, RecursionError):
        raise CannotOpen("this request could not be understood") from None
    if not isinstance(asked, dict):
        raise CannotOpen("this request could not be understood")
    return asked
