"""The studio's application: routes, one file to a topic, behind the guard."""

from __future__ import annotations

import asyncio
import os
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from importlib.resources import files
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route, WebSocketRoute

from loopwright.shelf import ShelfError
from loopwright.studio.desk import Desk
from loopwright.studio.folder import ChangedElsewhereError, Folder, NotInFolderError
from loopwright.studio.guard import NONCE, Guard
from loopwright.studio.pages import Pages, Smaller, fonts
from loopwright.studio.routes import (
    begin,
    designs,
    editing,
    film,
    listen,
    live,
    photographs,
    publishing,
    questions,
    sizes,
    swatches,
    translations,
)
from loopwright.studio.settings import Settings
from loopwright.studio.workers import WorkerError, Workers
from loopwright.workshop.asked import CannotAnswerError
from loopwright.workshop.files import CannotOpen, CannotSave

STATIC = Path(os.environ.get("LOOPWRIGHT_STATIC") or str(files("loopwright.studio").joinpath("static")))
"""The built pages; others for whoever works on them."""
MOST_TEXTS = 6  # processes for texts that are open
STAND_BACK = 5  # heavy work, behind the typing
TEND_S = 15.0


def create(settings: Settings) -> Starlette:
    """The application for a folder. Raises CannotOpen where the folder is none."""
    folder = Folder(settings.folder, read_only=settings.read_only)

    @asynccontextmanager
    async def life(app: Starlette) -> AsyncIterator[None]:
        app.state.workers, texts = Workers(nice=STAND_BACK), Workers(MOST_TEXTS)
        app.state.desk = Desk(texts, app.state.workers)
        tended = asyncio.create_task(_tend(texts, app.state.workers))
        yield
        tended.cancel()
        app.state.workers.close()
        texts.close()

    routes = [
        Route("/", _page), Route("/api/folder", designs.listing), Route("/api/designs", designs.create, methods=["POST"]),
        Route("/api/designs/{name}", designs.read, methods=["GET"]), Route("/api/designs/{name}", designs.save, methods=["PUT"]),
        Route("/api/designs/{name}/picture", designs.picture), WebSocketRoute("/ws/design/{name}", live.connection),
        *questions.ROUTES, *editing.ROUTES, *publishing.ROUTES, *sizes.ROUTES, *swatches.ROUTES, *begin.ROUTES,
        *film.ROUTES, *listen.ROUTES, *translations.ROUTES, *photographs.ROUTES,
        Route("/api/designs/{name}/history", designs.history), Route("/api/designs/{name}/history/{kept}", designs.kept),
        _files("/static", Pages(STATIC)), _files("/fonts", fonts()),
        Route("/{place:path}", _page),
    ]
    said = dict.fromkeys((CannotOpen, CannotSave, CannotAnswerError, ShelfError), _said)
    app = Starlette(
        routes=routes, lifespan=life, middleware=[Middleware(Guard, settings=settings), Middleware(Smaller)],
        exception_handlers={**said, NotInFolderError: _unknown, ChangedElsewhereError: _changed},
    )
    app.state.settings, app.state.folder, app.state.writers, app.state.looks = settings, folder, {}, {}
    return app


async def _tend(texts: Workers, heavy: Workers) -> None:
    """One process is ready before the first text comes; those that have nothing to do for long end."""
    with suppress(WorkerError):
        await texts.run("warm", "loopwright.studio.seeing:warm")
    while True:
        await asyncio.sleep(TEND_S)
        texts.rest(keep=1)
        heavy.rest(keep=0)


def _files(at: str, pages: Pages) -> Route:
    async def answer(request: Request) -> Response:
        return await asyncio.to_thread(pages.answer, request)

    return Route(f"{at}/{{path:path}}", answer)


async def _page(request: Request) -> Response:
    """Every place of the studio is the same page; the browser finds its way."""
    if not (STATIC / "index.html").is_file():
        return Response("The pages of the studio are not built: run `make studio`.\n", 503, media_type="text/plain")
    text = (STATIC / "index.html").read_text(encoding="utf-8").replace("__NONCE__", request.scope[NONCE])
    return Response(text, media_type="text/html", headers={"cache-control": "no-store"})


async def _said(_request: Request, error: Exception) -> Response:
    words = str(error)
    return JSONResponse({"error": words[:1].upper() + words[1:]}, 422)


async def _unknown(_request: Request, _error: Exception) -> Response:
    return JSONResponse({"error": "There is no such design in this folder."}, 404)


async def _changed(_request: Request, error: Exception) -> Response:
    told = error.told() if isinstance(error, ChangedElsewhereError) else {}
    return JSONResponse({"error": "This design was changed elsewhere.", **told}, 409)
