"""The studio's application: routes, one file to a topic, behind the guard."""

from __future__ import annotations

import os
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from importlib.resources import files
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Mount, Route, WebSocketRoute
from starlette.staticfiles import StaticFiles

from loopwright.studio.folder import ChangedElsewhereError, Folder, NotInFolderError
from loopwright.studio.guard import NONCE, Guard
from loopwright.studio.routes import designs, live
from loopwright.studio.settings import Settings
from loopwright.studio.workers import Workers
from loopwright.workshop.files import CannotOpen, CannotSave

STATIC = Path(os.environ.get("LOOPWRIGHT_STATIC") or str(files("loopwright.studio").joinpath("static")))
"""The built pages; others for whoever works on them."""


def create(settings: Settings) -> Starlette:
    """The application for a folder. Raises CannotOpen where the folder is none."""
    folder = Folder(settings.folder, read_only=settings.read_only)

    @asynccontextmanager
    async def life(app: Starlette) -> AsyncIterator[None]:
        app.state.workers = Workers()
        yield
        app.state.workers.close()

    routes = [
        Route("/", _page), Route("/api/folder", designs.listing), Route("/api/designs", designs.create, methods=["POST"]),
        Route("/api/designs/{name}", designs.read, methods=["GET"]), Route("/api/designs/{name}", designs.save, methods=["PUT"]),
        Route("/api/designs/{name}/picture", designs.picture), WebSocketRoute("/ws/design/{name}", live.connection),
        Mount("/static", StaticFiles(directory=STATIC, check_dir=False)),
        Route("/{place:path}", _page),
    ]
    app = Starlette(
        routes=routes, lifespan=life, middleware=[Middleware(Guard, settings=settings)],
        exception_handlers={CannotOpen: _said, CannotSave: _said, NotInFolderError: _unknown, ChangedElsewhereError: _changed},
    )
    app.state.settings, app.state.folder, app.state.writers = settings, folder, {}
    return app


async def _page(request: Request) -> Response:
    """Every place of the studio is the same page; the browser finds its way."""
    if not (STATIC / "index.html").is_file():
        return Response("The pages of the studio are not built: run `make studio`.\n", 503, media_type="text/plain")
    text = (STATIC / "index.html").read_text(encoding="utf-8").replace("__NONCE__", request.scope[NONCE])
    return Response(text, media_type="text/html", headers={"cache-control": "no-store"})


async def _said(_request: Request, error: Exception) -> Response:
    return JSONResponse({"error": str(error)}, 422)


async def _unknown(_request: Request, _error: Exception) -> Response:
    return JSONResponse({"error": "There is no such design in this folder."}, 404)


async def _changed(_request: Request, error: Exception) -> Response:
    text = error.text if isinstance(error, ChangedElsewhereError) else None
    return JSONResponse({"error": "This design was changed elsewhere.", "text": text}, 409)
