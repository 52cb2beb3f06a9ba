"""Captions of a lesson: the draft of the written pattern that they make, with the words beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.source import Source
from loopwright.studio.filming import MOST_CAPTIONS, Filming
from loopwright.studio.routes.given import body_of, words
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkerError
from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request


async def listen(request: Request) -> Response:
    """The draft of a lesson. Nothing is written."""
    given = await body_of(request)
    captions, name, terms = words(given, "captions", MOST_CAPTIONS), words(given, "name") or "captions", words(given, "terms", 8)
    if terms not in ("", "us", "uk"):
        raise CannotOpen("terms should be us or uk")
    if not hasattr(request.app.state, "filming"):
        request.app.state.filming = Filming(request.app.state.workers)
    filming: Filming = request.app.state.filming
    try:
        found = await filming.listen(words(given, "window", 24), Source.of(captions).text, name, terms or None)
    except OutdatedError:
        return JSONResponse({"dropped": True})
    except TookTooLongError:
        raise CannotOpen("these captions take too long to read: give them in two parts") from None
    except WorkerError as e:
        raise CannotOpen(f"these captions could not be taken down ({e or type(e).__name__}); nothing was changed") from None
    return JSONResponse(found)


ROUTES = (Route("/api/listen", listen, methods=["POST"]),)
