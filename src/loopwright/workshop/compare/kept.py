"""Old versions kept beside a design, in a folder `versions`: never written over, the same text never kept twice."""

from __future__ import annotations

import os
import re
from pathlib import Path

from loopwright.notation import read
from loopwright.publishing.changes import Version, version_of
from loopwright.workshop.files import CannotOpen, CannotSave, folder_of, open_source, write_bytes

FOLDER = "versions"
_TRIES = 1000
_KEPT = re.compile(r"(?:v(?P<number>[\w.-]+?)|unnumbered)(?:--on-(?P<date>[\w.-]+?))?(?:--(?P<again>\d+))?")


def keep_version(design: Path | str) -> Path:
    """Keeps a copy of a design as it stands, and gives its path; where the same text is kept already, that one.

    The name tells version and date: "hat--v1.2--on-2026-11-20.txt"; where a version has another text already, "…--2". Raises CannotOpen and
    CannotSave.
    """
    path = Path(design)
    source = open_source(str(path))
    for kept in kept_versions(path):
        if kept.stat().st_size == len(source.text.encode("utf-8")) and _same(kept, source.text):
            return kept
    told = version_of(read(source))
    folder = path.parent / FOLDER
    for n in range(1, _TRIES):
        target = folder / _name(path, told, n)
        folder_of(target)
        if _claimed(target):
            try:
                write_bytes(target, source.text.encode("utf-8"))
            except CannotSave:
                target.unlink(missing_ok=True)  # the empty file that held its place
                raise
            return target
    raise CannotSave(f"{folder} holds {_TRIES - 1} texts of this version already: raise the version in the design's heading")


def _claimed(target: Path) -> bool:
    """Makes an empty file of that name where there is none, so that nobody else takes it; False where there is one."""
    try:
        os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666))
    except FileExistsError:
        return False
    except OSError as e:
        raise CannotSave(f"{target} cannot be written: {e.strerror or e}") from None
    return True


def kept_versions(design: Path | str) -> tuple[Path, ...]:
    """The versions kept of a design, the newest last: by the number of their version, then by their date, then by when they were kept."""
    path = Path(design)
    folder = path.parent / FOLDER
    try:
        found = [p for p in folder.iterdir() if p.is_file() and _is_of(p, path)]
    except FileNotFoundError:
        return ()
    except OSError as e:
        raise CannotOpen(f"{folder} cannot be looked into: {e.strerror or e}") from None
    return tuple(sorted(found, key=lambda p: _age(p, path)))


def last_kept(design: Path | str) -> Path | None:
    """The newest version kept of a design that is not the design as it stands; the newest of all where every one is. None for none."""
    kept = kept_versions(design)
    text = open_source(str(design)).text
    others = [p for p in kept if not _same(p, text)]
    return others[-1] if others else kept[-1] if kept else None


def _is_of(kept: Path, design: Path) -> bool:
    ending = design.suffix or ".txt"
    rest = kept.name.removeprefix(f"{design.stem}--").removesuffix(ending)
    named = kept.name.startswith(f"{design.stem}--") and kept.suffix == ending and _KEPT.fullmatch(rest) is not None
    return named and kept.stat().st_size > 0


def _age(kept: Path, design: Path) -> tuple[tuple[int, ...], str, int, float]:
    m = _KEPT.fullmatch(kept.stem.removeprefix(f"{design.stem}--"))
    number, date, again = (m["number"] or "", m["date"] or "", m["again"] or "1") if m else ("", "", "1")
    return tuple(int(n[:9]) for n in re.findall(r"\d+", number)), date, int(again), kept.stat().st_mtime


def _name(path: Path, told: Version | None, n: int) -> str:
    version = _plain(f"v{told.name.removeprefix('v')}") if told and told.name else ""
    date = _plain(told.date) if told else ""
    parts = [path.stem, version or "unnumbered", *([f"on-{date}"] if date else []), *([str(n)] if n > 1 else [])]
    return f"{'--'.join(parts)}{path.suffix or '.txt'}"


def _plain(text: str) -> str:
    """Letters, digits, dots and single hyphens, so that it can stand in a file's name."""
    return re.sub(r"-{2,}", "-", re.sub(r"[^\w.]+", "-", text)).strip("-.")[:40]


def _same(kept: Path, text: str) -> bool:
    try:
        return open_source(str(kept)).text == text
    except CannotOpen:
        return False
