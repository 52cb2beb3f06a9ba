"""The editing desk: findings of the whole folder, safe mends of one design, the report as a file."""

from __future__ import annotations

import asyncio
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.source import Source
from loopwright.studio.folder import ChangedElsewhereError, Folder
from loopwright.studio.routes.given import body_of, words
from loopwright.studio.settings import MOST_TEXT
from loopwright.workshop.files import CannotOpen
from loopwright.workshop.live import Live
from loopwright.workshop.mend import mend_text
from loopwright.workshop.proof import proof, report_text

if TYPE_CHECKING:
    from starlette.requests import Request

_HELD = 500  # designs of a folder whose findings are kept, by their text


async def folder(request: Request) -> Response:
    """Every design of the folder with its findings, those that are left, and what was checked."""
    held: Folder = request.app.state.folder
    found: list[dict[str, Any]] = []
    for name in await asyncio.to_thread(held.names):
        try:
            opened = await asyncio.to_thread(held.read, name)
        except CannotOpen as e:
            found.append({"id": name, "title": name, "error": str(e)})
            continue
        found.append({"id": name, "sum": opened.sum, **await asyncio.to_thread(_looked_at, name, opened.text)})
    return JSONResponse({"designs": found, "read_only": held.read_only})


async def mend(request: Request) -> Response:
    """The text that is given with all its safe mends, and what they did; nothing is saved here: whoever writes the design saves it."""
    text = words(await body_of(request), "text", MOST_TEXT)
    mended, done = await asyncio.to_thread(mend_text, Source.of(text, request.path_params["name"]))
    return JSONResponse({"text": mended, "done": _done(done)})


async def mend_saved(request: Request) -> Response:
    """A design of the folder with all its safe mends, saved whole where it is still what was looked at; its text before, to take back."""
    held: Folder = request.app.state.folder
    name, base = request.path_params["name"], words(await body_of(request), "base")
    opened = await asyncio.to_thread(held.read, name)
    if opened.sum != base:
        raise ChangedElsewhereError(opened.text)
    mended, done = await asyncio.to_thread(mend_text, Source.of(opened.text, name))
    saved = await asyncio.to_thread(held.save, name, mended, base) if done else opened
    return JSONResponse({"before": opened.text, "sum": saved.sum, "done": _done(done)})


async def report(request: Request) -> Response:
    """The technical-editing report of a design, as a text file."""
    held: Folder = request.app.state.folder
    opened = await asyncio.to_thread(held.read, request.path_params["name"])
    text = await asyncio.to_thread(lambda: report_text(Live(opened.id).see(opened.text)))
    headers = {"content-disposition": 'attachment; filename="editing-report.txt"'}
    return Response(text, media_type="text/plain; charset=utf-8", headers=headers)


@lru_cache(_HELD)
def _looked_at(name: str, text: str) -> dict[str, Any]:
    seen = Live(name).see(text)
    wire = seen.as_wire()
    return {**{k: wire[k] for k in ("title", "terms", "sizes", "findings", "left")}, "title": wire["title"] or name, "checked": proof(seen)}


def _done(done: Any) -> list[dict[str, Any]]:
    return [{"line": d.line, "title": d.title, "before": d.before, "after": d.after} for d in done]


ROUTES = (
    Route("/api/editing", folder, methods=["GET"]), Route("/api/editing/{name}/mended", mend, methods=["POST"]),
    Route("/api/editing/{name}/mend", mend_saved, methods=["POST"]), Route("/api/editing/{name}/report", report, methods=["GET"]),
)
