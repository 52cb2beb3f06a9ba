"""The shelf: yarns and swatches, put there, changed, taken off and put back; their lines for a pattern; which designs use them."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.shelf import swatches as shelf
from loopwright.shelf import yarns
from loopwright.shelf.store import Shelf
from loopwright.studio.folder import Folder
from loopwright.studio.routes.given import body_of, number_in_address, real, whole, words
from loopwright.studio.routes.worked import worked
from loopwright.studio.settings import MOST_TEXT
from loopwright.trade.hooks import hooks
from loopwright.trade.yarn import weights
from loopwright.workshop.files import CannotOpen
from loopwright.workshop.swatched import Heading, Worked, gauge_words, heading_of, hook_words, same_gauge

if TYPE_CHECKING:
    from starlette.requests import Request

_HEADINGS: dict[str, Heading] = {}
_MOST_HEADINGS = 4000


async def listing(request: Request) -> Response:
    """All that stands on the shelf, with what each comes to and where it is used."""
    held, folder = _shelf(request), request.app.state.folder
    return JSONResponse(await asyncio.to_thread(_listed, held, folder))


def _listed(held: Shelf, folder: Folder) -> dict[str, Any]:
    kept, found = yarns.yarns(held), shelf.swatches(held)
    by_number = {y.id: y for y in kept}
    headings = _headings(folder) if found or kept else []
    return {
        "yarns": [_yarn(y, headings) for y in kept], "swatches": [_swatch(s, by_number.get(s.yarn), headings) for s in found],
        "weights": [{"number": w.number, "name": w.name, "also": list(w.also)} for w in weights()],
        "hooks": [{"mm": h.mm, "us": h.us} for h in hooks() if not h.steel], "read_only": held.read_only,
    }


def _headings(folder: Folder) -> list[tuple[str, Heading]]:
    found = []
    for name in folder.names():
        try:
            opened = folder.read(name)
        except CannotOpen:
            continue
        if opened.sum not in _HEADINGS:
            if len(_HEADINGS) > _MOST_HEADINGS:
                _HEADINGS.clear()
            _HEADINGS[opened.sum] = heading_of(opened.text, name)
        found.append((name, _HEADINGS[opened.sum]))
    return found


def _yarn(y: yarns.Yarn, headings: list[tuple[str, Heading]]) -> dict[str, Any]:
    used = [{"id": name, "title": h.title} for name, h in headings if y.name.lower() in h.yarn]
    ball = {"ball_g": y.ball_g, "ball_m": y.ball_m}
    return {"id": y.id, "name": y.name, "weight": y.weight, "fibre": y.fibre, **ball, "colours": list(y.colours), "used_in": used}


def _swatch(s: shelf.Swatch, yarn: yarns.Yarn | None, headings: list[tuple[str, Heading]]) -> dict[str, Any]:
    per = s.metres_per_stitch(yarn.metres_per_g if yarn is not None else None)
    used = [
        {"id": name, "title": h.title, "yarn": yarn is not None and yarn.name.lower() in h.yarn}
        for name, h in headings if same_gauge(h, s.stitch_mm, s.row_mm)
    ]
    return {
        "id": s.id, "yarn": s.yarn if yarn is not None else 0, "hook_mm": s.hook_mm, "stitch": s.stitch, "stitches": s.stitches,
        "width_mm": s.width_mm, "rows": s.rows, "height_mm": s.height_mm, "rounds": s.rounds, "washed": s.washed, "mass_g": s.mass_g,
        "note": s.note, "made_at_s": s.made_at_s, "stitch_mm": round(s.stitch_mm, 3), "row_mm": round(s.row_mm, 3),
        "m_per_100": None if per is None else round(100 * per, 2), "gauge": gauge_words(_worked(s, yarn)), "hook": hook_words(s.hook_mm),
        "used_in": used,
    }


def _worked(s: shelf.Swatch, y: yarns.Yarn | None) -> Worked:
    yarn = (y.name, y.weight, y.fibre, y.ball_g, y.ball_m) if y is not None else ("", None, "", None, None)
    return Worked(s.stitches, s.width_mm, s.rows, s.height_mm, s.stitch, s.hook_mm, s.rounds, s.washed, *yarn)


async def put_yarn(request: Request) -> Response:
    """A yarn onto the shelf, or in the place of one."""
    given = await body_of(request)
    colours = given.get("colours", [])
    if not isinstance(colours, list) or not all(isinstance(c, str) for c in colours):
        raise CannotOpen("colours should be a list of names")
    yarn = yarns.Yarn(
        words(given, "name"), None if given.get("weight") is None else whole(given, "weight"), words(given, "fibre"),
        real(given, "ball_g") or None, real(given, "ball_m") or None, tuple(c.strip() for c in colours if c.strip()), _number(request),
    )
    kept = await asyncio.to_thread(yarns.put, _shelf(request), yarn)
    return JSONResponse({"id": kept.id}, 200 if yarn.id else 201)


async def put_swatch(request: Request) -> Response:
    """A swatch onto the shelf, or in the place of one."""
    given = await body_of(request)
    swatch = shelf.Swatch(
        real(given, "hook_mm"), words(given, "stitch"), real(given, "stitches"), real(given, "width_mm"), real(given, "rows"),
        real(given, "height_mm"), whole(given, "yarn", 0), given.get("rounds") is True, given.get("washed") is True,
        real(given, "mass_g") or None, words(given, "note", 500), time.time(), _number(request),
    )
    kept = await asyncio.to_thread(shelf.put, _shelf(request), swatch)
    return JSONResponse({"id": kept.id}, 200 if swatch.id else 201)


async def _gone(request: Request, take: Callable[..., bool]) -> Response:
    if not await asyncio.to_thread(take, _shelf(request), _number(request)):
        return _gone_already()
    return JSONResponse({})


def _gone_already() -> Response:
    return JSONResponse({"error": "It is no longer on the shelf."}, 404)


async def take_yarn(request: Request) -> Response:
    """A yarn off the shelf."""
    return await _gone(request, lambda s, n: yarns.take_off(s, n, time.time()))


async def take_swatch(request: Request) -> Response:
    """A swatch off the shelf."""
    return await _gone(request, lambda s, n: shelf.take_off(s, n, time.time()))


async def back_yarn(request: Request) -> Response:
    """A yarn that was taken off, back."""
    return await _gone(request, yarns.put_back)


async def back_swatch(request: Request) -> Response:
    """A swatch that was taken off, back."""
    return await _gone(request, shelf.put_back)


async def into(request: Request) -> Response:
    """A text with Gauge, Hook and Yarn of a swatch in its heading. Nothing is saved here."""
    given, number = await body_of(request), _number(request)
    worked_in = await asyncio.to_thread(_taken, _shelf(request), number)
    if worked_in is None:
        return _gone_already()
    text = words(given, "text", MOST_TEXT)
    return JSONResponse({"text": await worked(request, words(given, "design"), "swatched", text, worked_in)})


def _taken(held: Shelf, number: int) -> Worked | None:
    swatch = shelf.one(held, number)
    if swatch is None:
        return None
    return _worked(swatch, next((y for y in yarns.yarns(held) if y.id == swatch.yarn), None))


def _number(request: Request) -> int:
    return number_in_address(request.path_params.get("number"), "number")


def _shelf(request: Request) -> Shelf:
    folder: Folder = request.app.state.folder
    return Shelf(folder.path, read_only=folder.read_only)


def _of(name: str, put: Any, take: Any, back: Any) -> tuple[Route, ...]:
    all_of = f"/api/shelf/{name}"
    one = f"{all_of}/{{number}}"
    return (
        Route(all_of, put, methods=["POST"]), Route(one, put, methods=["PUT"]), Route(one, take, methods=["DELETE"]),
        Route(f"{one}/back", back, methods=["POST"]),
    )


ROUTES = (
    Route("/api/shelf", listing), *_of("yarns", put_yarn, take_yarn, back_yarn), *_of("swatches", put_swatch, take_swatch, back_swatch),
    Route("/api/shelf/swatches/{number}/into", into, methods=["POST"]),
)
