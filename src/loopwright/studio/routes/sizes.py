"""Changes of a text from the table of sizes: a text and what is to be done come in, the changed text goes out. Nothing is saved here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.routes.given import body_of, words
from loopwright.studio.routes.worked import worked
from loopwright.studio.settings import MOST_TEXT

if TYPE_CHECKING:
    from starlette.requests import Request


async def change(request: Request) -> Response:
    """The text with one change made."""
    given = await body_of(request)
    text, name = words(given, "text", MOST_TEXT), words(given, "design")
    return JSONResponse({"text": await worked(request, name, "changed", text, {k: v for k, v in given.items() if k != "text"})})


ROUTES = (Route("/api/change", change, methods=["POST"]),)
