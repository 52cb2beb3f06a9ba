"""Changes of a text from the table of sizes: a text and what is to be done come in, the changed text goes out. Nothing is saved here."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.routes.given import body_of, whole, words
from loopwright.studio.settings import MOST_TEXT
from loopwright.workshop import resize
from loopwright.workshop.files import CannotOpen
from loopwright.workshop.live import Live

if TYPE_CHECKING:
    from starlette.requests import Request


async def change(request: Request) -> Response:
    """The text with one change made."""
    given = await body_of(request)
    text, what = words(given, "text", MOST_TEXT), words(given, "do")
    make = CHANGES.get(what)
    if make is None:
        raise CannotOpen(f"a change is one of {', '.join(CHANGES)}")
    try:
        made = await asyncio.to_thread(make, text, given)
    except resize.CannotChange as e:
        raise CannotOpen(str(e)) from None
    return JSONResponse({"text": made})


def _number(text: str, given: Mapping[str, Any]) -> str:
    number = None if given.get("number") is None else whole(given, "number")
    return resize.with_number(text, words(given, "blank"), words(given, "size"), number)


def _own_chart(text: str, _given: Mapping[str, Any]) -> str:
    graded = Live("").see(text).graded
    if graded is None:
        raise resize.CannotChange("nothing is graded in this pattern yet")
    return resize.with_own_chart(text, graded)


CHANGES: dict[str, Callable[[str, Mapping[str, Any]], str]] = {
    "sentence": lambda t, g: resize.with_sentence(t, words(g, "blank"), words(g, "sentence", resize.LONGEST)),
    "figure": lambda t, g: resize.with_ease(t, words(g, "blank"), whole(g, "nth"), words(g, "said")),
    "number": _number,
    "gauge": lambda t, g: resize.with_gauge(t, words(g, "gauge")),
    "own chart": _own_chart,
    "measurement": lambda t, g: resize.with_measurement(t, words(g, "size"), words(g, "measure"), words(g, "said")),
    "without size": lambda t, g: resize.without_size(t, words(g, "size")),
}
"""Every change by its name on the wire."""

ROUTES = (Route("/api/change", change, methods=["POST"]),)
