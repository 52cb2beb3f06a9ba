"""Publishing from the studio: what there would be, its pages, a run with its progress, what changed since the version that was kept."""

from __future__ import annotations

import asyncio
import hashlib
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast, get_args

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.publishing.document import Paper
from loopwright.publishing.phrases import languages
from loopwright.studio.folder import Folder, Opened
from loopwright.studio.publishing import COMPARE_S, Publishing, Run, compared
from loopwright.studio.routes.given import body_of, number_in_address, some, words
from loopwright.studio.workers import OutdatedError, WorkerError
from loopwright.workshop.compare.kept import FOLDER as VERSIONS
from loopwright.workshop.compare.kept import keep_version, kept_versions
from loopwright.workshop.files import CannotOpen, CannotSave
from loopwright.workshop.live import Live, Seen
from loopwright.workshop.publish.before import MOST_FILES, edition_of, files_of, missing
from loopwright.workshop.publish.editions import FORMATS, Asked, Format

if TYPE_CHECKING:
    from starlette.requests import Request

_SWITCHES = ("large_print", "left_handed", "ink_saving", "words_only", "section_per_page", "package")
_PLAIN = re.compile(r"[^\W_][\w .()'’&+-]{0,79}")


async def plan(request: Request) -> Response:
    """The files that would be written, what is missing, and the versions that are kept."""
    opened, given = await _opened(request), await body_of(request)
    seen = await asyncio.to_thread(_seen, opened)
    found = await asyncio.to_thread(files_of, seen, _asked(given, seen))
    path = _path(request)
    lacks = await asyncio.to_thread(missing, seen, path)
    kept = await asyncio.to_thread(kept_versions, path)
    return JSONResponse({
        "files": found[:MOST_FILES], "many": len(found), "missing": lacks, "kept": [k.name for k in kept],
        "languages": list(languages()), "folder": _folder(request).path.name, "read_only": _folder(request).read_only,
    })  # fmt: skip


async def look(request: Request) -> Response:
    """Makes the pages of one file as pictures; gives their key and how many there are."""
    opened, given = await _opened(request), await body_of(request)
    seen = await asyncio.to_thread(_seen, opened)
    edition = edition_of(seen, _asked(given, seen), words(given, "file"))
    if edition is None:
        raise CannotOpen("there is no such file in this publishing")
    key = hashlib.sha256(f"{opened.id}\n{opened.sum}\n{edition}".encode()).hexdigest()[:24]
    try:
        found = await _publishing(request).look(key, _path(request), opened.text, edition)
    except OutdatedError:
        return JSONResponse({"error": "Other pages were asked for."}, 409)
    except WorkerError as e:
        raise CannotOpen(f"these pages could not be made ({e or type(e).__name__}); the pattern is safe and saved") from None
    return JSONResponse({"key": key, "pages": len(found)})


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
    folder, seen = _folder(request), await asyncio.to_thread(_seen, opened)
    asked = _asked(given, seen)
    many = len(await asyncio.to_thread(files_of, seen, asked))
    if not 0 < many <= MOST_FILES:
        raise CannotSave(f"between 1 and {MOST_FILES} files are published at once; this would be {many}")
    into = words(given, "into", 80)
    if into and folder.read_only:
        raise CannotSave("this studio is only for reading: take the files away as one file instead")
    target = _below(folder, into) if into else None
    run = _publishing(request).begin(_path(request), asked, target, draft=given.get("draft") is True, keep=not folder.read_only)
    return JSONResponse(run.as_wire(), 202)


async def progress(request: Request) -> Response:
    """How far a run is, and in the end what was written."""
    run = _run(request)
    return JSONResponse({"error": "There is no such run."}, 404) if run is None else JSONResponse(run.as_wire())


async def stop(request: Request) -> Response:
    """Stops a run."""
    _publishing(request).stop(request.path_params["run"])
    return JSONResponse({"stopped": True})


async def packed(request: Request) -> Response:
    """The files of a run as one file."""
    run = _run(request)
    if run is None or run.packed is None:
        return JSONResponse({"error": "There is nothing to take away yet."}, 404)
    name = re.sub(r"[^A-Za-z0-9-]+", "-", Path(run.design).stem).strip("-") or "pattern"
    return Response(run.packed, media_type="application/zip", headers={"content-disposition": f'attachment; filename="{name}.zip"'})


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


def _seen(opened: Opened) -> Seen:
    return Live(opened.id).see(opened.text)


def _asked(given: dict[str, Any], seen: Seen) -> Asked:
    """What is asked for. Raises CannotOpen for what there is not."""
    known = seen.report.sizes or ("one size",)
    sizes = given.get("sizes", [])
    if not isinstance(sizes, list) or not all(type(s) is int and 0 <= s < len(known) for s in sizes):
        raise CannotOpen("sizes should be numbers of sizes that the design has")
    own = "uk" if seen.document.terms == "uk" else "us"
    return Asked(
        papers=cast("tuple[Paper, ...]", some(given, "papers", get_args(Paper))) or ("a4",),
        terms=some(given, "terms", ("us", "uk")) or (own,), languages=some(given, "languages", languages()) or ("en",),
        sizes=tuple(dict.fromkeys(sizes)), formats=cast("tuple[Format, ...]", some(given, "formats", FORMATS)),
        **{name: given.get(name) is True for name in _SWITCHES},  # type: ignore[arg-type]
    )


def _below(folder: Folder, name: str) -> Path:
    """A folder right below that of the designs. Raises CannotSave for one that is elsewhere, or kept for something else."""
    path = folder.path / name
    if not _PLAIN.fullmatch(name) or name.rstrip(" .") != name or name == VERSIONS:
        raise CannotSave("name a folder in letters and figures, as in 'Samphire'; it is made below that of the designs")
    if path.exists() and (not path.is_dir() or path.resolve() != folder.path.resolve() / name):
        raise CannotSave(f"{name} is no folder of these designs: name another")
    return path


_AT = "/api/publishing/{name}"
ROUTES = (
    Route(f"{_AT}/plan", plan, methods=["POST"]), Route(f"{_AT}/changes", changes, methods=["GET"]),
    Route(f"{_AT}/keep", keep, methods=["POST"]), Route(f"{_AT}/pages", look, methods=["POST"]),
    Route(f"{_AT}/pages/{{key}}/{{number}}", page, methods=["GET"]), Route(f"{_AT}/runs", begin, methods=["POST"]),
    Route(f"{_AT}/runs/{{run}}", progress, methods=["GET"]), Route(f"{_AT}/runs/{{run}}", stop, methods=["DELETE"]),
    Route(f"{_AT}/runs/{{run}}/files.zip", packed, methods=["GET"]),
)
