"""Publishing from the studio: what there would be, its pages, a run with its progress, what changed since the version that was kept."""

from __future__ import annotations

import asyncio
import hashlib
from dataclasses import replace
from typing import TYPE_CHECKING

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.publishing import COMPARE_S, Publishing, compared
from loopwright.studio.routes.given import body_of, number_in_address
from loopwright.studio.routes.opened import folder_of, opened_of, path_of
from loopwright.studio.routes.runs import run_routes, target_of
from loopwright.studio.routes.worked import worked
from loopwright.studio.translating import tables_for
from loopwright.studio.workers import OutdatedError, WorkerError
from loopwright.workshop.compare.kept import keep_version
from loopwright.workshop.files import CannotOpen, CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request


async def plan(request: Request) -> Response:
    """The files that would be written, what is missing, and the versions that are kept."""
    opened, given = await opened_of(request), await body_of(request)
    found = await worked(request, opened.id, "plan", opened.text, str(path_of(request)), given)
    return JSONResponse({**found, "folder": folder_of(request).path.name, "read_only": folder_of(request).read_only})


async def look(request: Request) -> Response:
    """Makes the pages of one file as pictures; gives their key and how many there are."""
    opened, given = await opened_of(request), await body_of(request)
    edition = await worked(request, opened.id, "edition", opened.text, given)
    told = await asyncio.to_thread(tables_for, folder_of(request), opened.id, (edition.language,))
    key = hashlib.sha256(f"{opened.id}\n{opened.sum}\n{edition}\n{told}".encode()).hexdigest()[:24]
    try:
        found = await _publishing(request).look(key, path_of(request), opened.text, edition, told)
    except OutdatedError:
        return JSONResponse({"error": "It was stopped, or other pages were asked for."}, 409)
    except WorkerError as e:
        raise CannotOpen(f"these pages could not be made ({e or type(e).__name__}); the pattern is safe and saved") from None
    return JSONResponse({"key": key, "pages": len(found)})


async def looking(request: Request) -> Response:
    """How far the pages are that are being made of a design; `share` 1 where none are."""
    run = _publishing(request).looking.get(str(request.path_params["name"]))
    return JSONResponse({"what": run.what if run else "", "share": round(run.share, 3) if run else 1.0})


async def stop_looking(request: Request) -> Response:
    """Stops the making of pages."""
    _publishing(request).stop_looking(str(request.path_params["name"]))
    return JSONResponse({"stopped": True})


async def page(request: Request) -> Response:
    """One page that was made, as PNG."""
    found = _publishing(request).looked_at.get(request.path_params["key"], ())
    at = number_in_address(request.path_params["number"], "number")
    if not 0 <= at < len(found):
        return JSONResponse({"error": "There is no such page."}, 404)
    return Response(found[at], media_type="image/png", headers={"cache-control": "private, max-age=600"})


async def begin(request: Request) -> Response:
    """Begins to publish: into a folder below the designs, or into one file to take away."""
    opened, given = await opened_of(request), await body_of(request)
    asked, target = await worked(request, opened.id, "asked_for", opened.text, given), target_of(request, given)
    folder = folder_of(request)
    asked = replace(asked, translations=await asyncio.to_thread(tables_for, folder, opened.id, asked.languages))
    run = _publishing(request).begin(path_of(request), asked, target, draft=given.get("draft") is True, keep=not folder.read_only)
    return JSONResponse(run.as_wire(), 202)


async def changes(request: Request) -> Response:
    """What changed since the version that was kept last, with the errata."""
    opened = await opened_of(request)
    try:
        found = await request.app.state.workers.run(f"compare {opened.id}", compared, str(path_of(request)), opened.text, time_s=COMPARE_S)
    except OutdatedError:
        return JSONResponse({"error": "It is being compared anew."}, 409)
    except WorkerError as e:
        raise CannotOpen(f"the versions could not be compared ({e or type(e).__name__}); both are safe") from None
    return JSONResponse({"changes": found})


async def keep(request: Request) -> Response:
    """Keeps the version as it stands."""
    opened, folder = await opened_of(request), folder_of(request)
    if folder.read_only:
        raise CannotSave("this studio is only for reading: start it without --read-only to keep versions")
    kept = await asyncio.to_thread(keep_version, folder.path / opened.id)
    return JSONResponse({"kept": kept.name}, 201)


def _publishing(request: Request) -> Publishing:
    state = request.app.state
    if not hasattr(state, "publishing"):
        state.publishing = Publishing(state.workers)
    found: Publishing = state.publishing
    return found


_AT = "/api/publishing/{name}"
ROUTES = (
    Route(f"{_AT}/plan", plan, methods=["POST"]), Route(f"{_AT}/changes", changes, methods=["GET"]),
    Route(f"{_AT}/keep", keep, methods=["POST"]), Route(f"{_AT}/pages", look, methods=["POST"]),
    Route(f"{_AT}/looking", looking, methods=["GET"]), Route(f"{_AT}/looking", stop_looking, methods=["DELETE"]),
    Route(f"{_AT}/pages/{{key}}/{{number}}", page, methods=["GET"]), Route(f"{_AT}/runs", begin, methods=["POST"]),
    *run_routes(_AT, lambda request: _publishing(request).runs),
)
