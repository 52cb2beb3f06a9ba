"""Runs over the wire, whatever they make: where their files are to go, how far they are, stopped, taken away as one file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from loopwright.studio.routes.given import words
from loopwright.studio.routes.opened import folder_of
from loopwright.studio.routes.taken import as_zip, below
from loopwright.studio.runs import Runs
from loopwright.workshop.files import CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request


def target_of(request: Request, given: Mapping[str, Any]) -> Path | None:
    """The folder below the designs that was asked for, `into`; None for one file to take away. Raises CannotSave, CannotOpen."""
    folder, into = folder_of(request), words(given, "into", 80)
    if into and folder.read_only:
        raise CannotSave("this studio is only for reading: take the files away as one file instead")
    return below(folder, into) if into else None


def run_routes(at: str, runs_of: Callable[[Request], Runs], more: str = "") -> tuple[Route, ...]:
    """The routes of runs below an address. `runs_of`: those of a request's studio; `more`: what the packed file's name ends with."""

    async def progress(request: Request) -> Response:
        run = runs_of(request).get(request.path_params["run"])
        return JSONResponse({"error": "There is no such run."}, 404) if run is None else JSONResponse(run.as_wire())

    async def stop(request: Request) -> Response:
        runs_of(request).stop(request.path_params["run"])
        return JSONResponse({"stopped": True})

    async def packed(request: Request) -> Response:
        run = runs_of(request).get(request.path_params["run"])
        if run is None or run.packed is None:
            return JSONResponse({"error": "There is nothing to take away yet."}, 404)
        return as_zip(run, more)

    one = f"{at}/runs/{{run}}"
    return (
        Route(one, progress, methods=["GET"]), Route(one, stop, methods=["DELETE"]), Route(f"{one}/files.zip", packed, methods=["GET"]),
    )
