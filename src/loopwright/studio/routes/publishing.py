"""Publishing from the studio: what there would be, its pages, a run with its progress, what changed since the version that was kept."""

from __future__ import annotations

import asyncio
import hashlib
from pathlib import Path
from typing import TYPE_CHECKING

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.folder import Folder, Opened
from loopwright.studio.publishing import COMPARE_S, Publishing, compared
from loopwright.studio.routes.given import body_of, number_in_address, words
from loopwright.studio.routes.taken import as_zip, below
from loopwright.studio.routes.worked import worked
from loopwright.studio.runs import Run
from loopwright.studio.workers import OutdatedError, WorkerError
from loopwright.workshop.compare.kept import keep_version
from loopwright.workshop.files import CannotOpen, CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request



async def plan(request: Request) -> Response:
    """The files that would be written, what is missing, and the versions that are kept."""
    opened, given = await _opened(request), await body_of(request)
    found = await worked(request, opened.id, "plan", opened.text, str(_path(request)), given)
    return JSONResponse({**found, "folder": _folder(request).path.name, "read_only": _folder(request).read_only})


async def look(request: Request) -> Response:
    """Makes the pages of one file as pictures; gives their key and how many there are."""
    opened, given = await _opened(request), await body_of(request)
    edition = await worked(request, opened.id, "edition", opened.text, given)
    key = hashlib.sha256(f"{opened.id}\n{opened.sum}\n{edition}".encode()).hexdigest()[:24]
    try:
        found = await _publishing(request).look(key, _path(request), opened.text, edition)
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
    opened, given = await _opened(request), await body_of(request)
    folder, asked = _folder(request), await worked(request, opened.id, "asked_for", opened.text, given)
    into = words(given, "into", 80)
    if into and folder.read_only:
        raise CannotSave("this studio is only for reading: take the files away as one file instead")
    target = below(folder, into) if into else None
    run = _publishing(request).begin(_path(request), asked, target, draft=given.get("draft") is True, keep=not folder.read_only)
    return JSONResponse(run.as_wire(), 202)


async def progress(request: Request) -> Response:
    """How far a run is, and in the end what was written."""
    run = _run(request)
    return JSONResponse({"error": "There is no such run."}, 404) if run is None else JSONResponse(run.as_wire())


async def stop(request: Request) -> Response:
    """Stops a run."""
    _publishing(request).runs.stop(request.path_params["run"])
    return JSONResponse({"stopped": True})


async def packed(request: Request) -> Response:
    """The files of a run as one file."""
    run = _run(request)
    if run is None or run.packed is None:
        return JSONResponse({"error": "There is nothing to take away yet."}, 404)
    return as_zip(run)


async def changes(request: Request) -> Response:
    """What changed since the version that was kept last, with the errata."""
    opened = await _opened(request)
    try:
        found = await request.app.state.workers.run(f"compare {opened.id}", compared, str(_path(request)), opened.text, time_s=COMPARE_S)
    except OutdatedError:
        return JSONResponse({"error": "It is being compared anew."}, 409)
    except WorkerError as e:
        raise CannotOpen(f"the versions could not be compared ({e or type(e).__name__}); both are safe") from None
    return JSONResponse({"changes": found})


async def keep(request: Request) -> Response:
    """Keeps the version as it stands."""
    opened, folder = await _opened(request), _folder(request)
    if folder.read_only:
        raise CannotSave("this studio is only for reading: start it without --read-only to keep versions")
    kept = await asyncio.to_thread(keep_version, folder.path / opened.id)
    return JSONResponse({"kept": kept.name}, 201)


def _folder(request: Request) -> Folder:
    found: Folder = request.app.state.folder
    return found


def _path(request: Request) -> Path:
    """The design's file; only after it was opened, which refuses names that lead elsewhere."""
    return _folder(request).path / str(request.path_params["name"])


async def _opened(request: Request) -> Opened:
    return await asyncio.to_thread(_folder(request).read, request.path_params["name"])


def _publishing(request: Request) -> Publishing:
    state = request.app.state
    if not hasattr(state, "publishing"):
        state.publishing = Publishing(state.workers)
    found: Publishing = state.publishing
    return found


def _run(request: Request) -> Run | None:
    return _publishing(request).runs.get(request.path_params["run"])


_AT = "/api/publishing/{name}"
ROUTES = (
    Route(f"{_AT}/plan", plan, methods=["POST"]), Route(f"{_AT}/changes", changes, methods=["GET"]),
    Route(f"{_AT}/keep", keep, methods=["POST"]), Route(f"{_AT}/pages", look, methods=["POST"]),
    Route(f"{_AT}/looking", looking, methods=["GET"]), Route(f"{_AT}/looking", stop_looking, methods=["DELETE"]),
    Route(f"{_AT}/pages/{{key}}/{{number}}", page, methods=["GET"]), Route(f"{_AT}/runs", begin, methods=["POST"]),
    Route(f"{_AT}/runs/{{run}}", progress, methods=["GET"]), Route(f"{_AT}/runs/{{run}}", stop, methods=["DELETE"]),
    Route(f"{_AT}/runs/{{run}}/files.zip", packed, methods=["GET"]),
)
