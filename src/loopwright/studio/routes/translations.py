"""Her own words in another language: the list to translate, some of it written, taken away and brought in filled."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING
from urllib.parse import quote

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.desk import Desk
from loopwright.studio.routes.given import body_of, words
from loopwright.studio.routes.opened import folder_of, opened_of
from loopwright.studio.translating import LONGEST, MOST_AT_ONCE, MOST_TABLE, Table, Units, as_wire, table_of
from loopwright.studio.workers import WorkerError
from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request


async def read(request: Request) -> Response:
    """Her phrases, each with its translation."""
    table, units = await _list(request)
    return JSONResponse(await asyncio.to_thread(as_wire, table, units))


async def write(request: Request) -> Response:
    """Writes some translations; the others stay as they are in the file."""
    said = (await body_of(request)).get("said")
    if not isinstance(said, dict) or len(said) > MOST_AT_ONCE:
        raise CannotOpen(f"said should be at most {MOST_AT_ONCE:,} phrases with their translations")
    table, units = await _list(request)
    known = {u.text for u in units}
    if not all(text in known for text in said):
        raise CannotOpen("the pattern was changed meanwhile, and has other words now: look at the list once more")
    if not all(isinstance(t, str) and len(t) <= LONGEST and _can_be_kept(t) for t in said.values()):
        raise CannotOpen(f"a translation is a text of at most {LONGEST:,} characters")
    await asyncio.to_thread(table.put, units, said)
    return JSONResponse(await asyncio.to_thread(as_wire, table, units))


async def take(request: Request) -> Response:
    """The list as a file to fill in elsewhere, with what is translated already."""
    table, units = await _list(request)
    text = await asyncio.to_thread(table.filled, units)
    told = f"attachment; filename*=UTF-8''{quote(table.path.name)}"
    return Response(text, media_type="text/tab-separated-values; charset=utf-8", headers={"content-disposition": told})


async def bring(request: Request) -> Response:
    """Takes in a list that came back filled."""
    given = words(await body_of(request), "table", MOST_TABLE)
    if not _can_be_kept(given):
        raise CannotOpen("this file has halves of characters in it: save it as UTF-8")
    table, units = await _list(request)
    found = await asyncio.to_thread(table.bring_in, units, given)
    shown = await asyncio.to_thread(as_wire, table, units)
    return JSONResponse({**shown, "taken": found.taken, "replaced": found.replaced, "strange": found.strange})


async def _list(request: Request) -> tuple[Table, Units]:
    opened, desk = await opened_of(request), _desk(request)
    table = table_of(folder_of(request), opened.id, request.path_params["code"])
    try:
        units: Units = await desk.work(opened.id, "translating:units_of", opened.text, table.code)
    except WorkerError as e:
        raise CannotOpen(f"the words could not be listed ({e or type(e).__name__}); the pattern is safe and saved") from None
    return table, units


def _desk(request: Request) -> Desk:
    found: Desk = request.app.state.desk
    return found


def _can_be_kept(text: str) -> bool:
    """Whether a file can hold it: no halves of characters, no NUL."""
    return "\0" not in text and not any("\ud800" <= c <= "\udfff" for c in text)


_AT = "/api/publishing/{name}/words/{code}"
ROUTES = (
    Route(_AT, read, methods=["GET"]), Route(_AT, write, methods=["PUT"]), Route(f"{_AT}/table", take, methods=["GET"]),
    Route(f"{_AT}/table", bring, methods=["POST"]),
)
