"""Where files go that are made from the studio: a folder right below that of the designs, or one file to take away."""

from __future__ import annotations

import re
from pathlib import Path

from starlette.responses import Response

from loopwright.studio.folder import Folder
from loopwright.studio.runs import Run
from loopwright.workshop.compare.kept import FOLDER as VERSIONS
from loopwright.workshop.files import CannotSave

_PLAIN = re.compile(r"[^\W_][\w .()'’&+-]{0,79}")


def below(folder: Folder, name: str) -> Path:
    """A folder right below that of the designs. Raises CannotSave for one that is elsewhere, or kept for something else."""
    path = folder.path / name
    if not _PLAIN.fullmatch(name) or name.rstrip(" .") != name or name == VERSIONS:
        raise CannotSave("name a folder in letters and figures, as in 'Samphire'; it is made below that of the designs")
    if path.exists() and (not path.is_dir() or path.resolve() != folder.path.resolve() / name):
        raise CannotSave(f"{name} is no folder of these designs: name another")
    return path


def as_zip(run: Run, more: str = "") -> Response:
    """The packed files of a run, named for its design, and `more`."""
    name = re.sub(r"[^A-Za-z0-9-]+", "-", Path(run.design).stem).strip("-") or "pattern"
    return Response(run.packed, media_type="application/zip", headers={"content-disposition": f'attachment; filename="{name}{more}.zip"'})
