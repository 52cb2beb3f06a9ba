"""The folder that documents are written into: all of them or none, and never over a file that was not written here."""

from __future__ import annotations

import hashlib
import json
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from loopwright.workshop.files import CannotSave, make_folder, write_bytes

LIST = "published.json"
"""The list of what was published into a folder, with the sum of each file, so that it is known what may be replaced."""


def put(folder: Path, files: Mapping[str, bytes], *, replace: bool = False) -> None:
    """Writes files, all or none. Raises CannotSave; what was there is then still there.

    A file that stands there already is replaced only where it is as it was published before, or where `replace` says so.
    """
    make_folder(folder)
    known = listed(folder)
    if not replace:
        refuse_changed(folder, files)
    draft = _draft_in(folder)
    try:
        for name, data in files.items():
            _write(draft / name, data, folder / name)
        for name in files:
            make_folder((folder / name).parent)
            _move(draft / name, folder / name)
    finally:
        shutil.rmtree(draft, ignore_errors=True)
    sums = {**known, **{name: _sum(data) for name, data in files.items()}}
    told = {"version": 1, "files": dict(sorted(sums.items()))}
    write_bytes(folder / LIST, (json.dumps(told, indent=1, ensure_ascii=False) + "\n").encode())


def _draft_in(folder: Path) -> Path:
    try:
        return Path(tempfile.mkdtemp(prefix=".publishing-", dir=folder))
    except OSError as e:
        raise CannotSave(f"{folder} may not be written to ({e.strerror or e}): name another output folder") from None


def _write(draft: Path, data: bytes, path: Path) -> None:
    try:
        write_bytes(draft, data)
    except CannotSave as e:
        raise CannotSave(str(e).replace(str(draft), str(path))) from None


def _move(draft: Path, path: Path) -> None:
    try:
        draft.replace(path)
    except OSError as e:
        raise CannotSave(f"{path} cannot be written ({e.strerror or e}): name another output folder") from None


def refuse_changed(folder: Path, files: Mapping[str, bytes]) -> None:
    """Raises CannotSave where one of the files stands there already and is not as it was published before."""
    known = listed(folder)
    for name, data in files.items():
        path = folder / name
        if path.is_dir():
            raise CannotSave(f"{path} is a folder: name another output folder")
        try:
            there = path.read_bytes() if path.exists() else None
        except OSError as e:
            raise CannotSave(f"{path} cannot be read ({e.strerror or e}), so it is not replaced: name another output folder") from None
        if there is None or there == data:
            continue
        if known.get(name) != _sum(there):
            why = "was changed since it was published" if name in known else "is there already and was not published from here"
            raise CannotSave(f"{path} {why}: name another output folder, or add --replace")


def listed(folder: Path) -> dict[str, str]:
    """Files that were published into a folder before, with their sums; nothing where the list is missing or not readable."""
    try:
        told = json.loads((folder / LIST).read_text(encoding="utf-8"))
        return {str(k): str(v) for k, v in told["files"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def _sum(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
