"""The guided beginning: what a plain pattern tells, the design proposed for it, and that design again with what was chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.routes.given import body_of, words
from loopwright.studio.routes.worked import worked
from loopwright.studio.settings import MOST_TEXT
from loopwright.studio.workers import OutdatedError, WorkerError
from loopwright.workshop import begin as workshop
from loopwright.workshop.files import CannotOpen
from loopwright.workshop.resize import LONGEST

if TYPE_CHECKING:
    from starlette.requests import Request

BEGIN_S = 60.0
MOST_SIZES = 40
MOST_CHOICES = 200


async def look(request: Request) -> Response:
    """What a pattern tells by itself."""
    text = words(await body_of(request), "text", MOST_TEXT)
    return JSONResponse(await worked(request, "", "begin_look", text))


async def begin(request: Request) -> Response:
    """The design proposed for a pattern, with what was chosen."""
    given = await body_of(request)
    text = words(given, "text", MOST_TEXT)
    sizes, choices = given.get("sizes", []), given.get("choices", {})
    if not isinstance(sizes, list) or len(sizes) > MOST_SIZES or not all(isinstance(s, str) and 0 < len(s) <= 60 for s in sizes):
        raise CannotOpen(f"sizes should be a list of at most {MOST_SIZES} names")
    if not isinstance(choices, dict) or len(choices) > MOST_CHOICES or not all(_is_sentence(v) for v in choices.values()):
        raise CannotOpen("choices should be sentences by the names of their blanks")
    wanted = {"worked_in": words(given, "worked_in", 60), "gauge": words(given, "gauge"), "sizes": sizes}
    try:
        made: Any = await request.app.state.workers.run("begin", workshop.begin, text, wanted, choices, time_s=BEGIN_S)
    except OutdatedError:
        return JSONResponse({"error": "A newer question was asked meanwhile."}, 409)
    except WorkerError:
        return JSONResponse({"error": "No reasons could be looked for in this pattern. It is still here; another part of it may do."}, 422)
    return JSONResponse(made)


def _is_sentence(said: object) -> bool:
    return isinstance(said, str) and 0 < len(said) <= LONGEST and "\n" not in said


ROUTES = (Route("/api/begin/look", look, methods=["POST"]), Route("/api/begin", begin, methods=["POST"]))
