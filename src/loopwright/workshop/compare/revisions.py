"""The old version: a file, a folder of old versions, or a revision that git holds (FILE@REV)."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

from loopwright.source import Source
from loopwright.workshop.compare.kept import last_kept
from loopwright.workshop.files import MAX_BYTES, CannotOpen, open_source

_PATIENCE_S = 20
_REVISION = re.compile(r"[\w][\w./~^@{}+-]{0,99}")


def old_source(name: str) -> Source:
    """The text of a file, or "FILE@REV" by git. Raises CannotOpen."""
    if name == "-" or Path(name).exists() or "@" not in name:
        return open_source(name)
    file, _, revision = name.rpartition("@")
    return at_revision(file, revision) if file else open_source(name)


def at_revision(file: str, revision: str) -> Source:
    """A file as git holds it at a revision. Raises CannotOpen, with the way out."""
    called = f"{file}@{revision}"
    if _REVISION.fullmatch(revision) is None:
        raise CannotOpen(f"{called}: {revision!r} is no name of a revision; write a tag, a branch or a commit after the @")
    git = shutil.which("git")
    if git is None:
        raise CannotOpen(f"{called} asks for an old version by git, and git is not installed: save the old version as a file and name that")
    path = Path(file)
    folder = path.parent if str(path.parent) else Path()
    if not folder.is_dir():
        raise CannotOpen(f"there is no folder {folder}: check the name before the @")
    asked = [git, "-C", str(folder), "show", "--end-of-options", f"{revision}:./{path.name}"]
    try:
        done = subprocess.run(asked, capture_output=True, timeout=_PATIENCE_S, check=False, stdin=subprocess.DEVNULL)  # noqa: S603
    except (OSError, subprocess.TimeoutExpired) as e:
        why = e.__class__.__name__
        raise CannotOpen(f"{called} could not be asked of git ({why}): save the old version as a file and name that") from None
    if done.returncode:
        told = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise CannotOpen(f"git has no {called}: {_in_short(told[0] if told else 'it did not say why')}")
    if len(done.stdout) > MAX_BYTES:
        raise CannotOpen(f"{called} is longer than {MAX_BYTES:,} bytes")
    try:
        return Source.of(done.stdout.decode("utf-8"), called)
    except UnicodeDecodeError as e:
        raise CannotOpen(f"{called} is not UTF-8 text: byte {e.start + 1} is 0x{done.stdout[e.start]:02x}") from None


def _in_short(told: str) -> str:
    return re.sub(r"^(?:fatal|error):\s*", "", told)[:200]


def in_folder(folder: str, design: str) -> Source:
    """The old version of a design in a folder: the file of the same name. Raises CannotOpen."""
    path = Path(folder)
    if not path.exists():
        raise CannotOpen(f"there is no folder {folder}: name one with the old version in it after --since")
    if not path.is_dir():
        return open_source(folder)
    if design == "-":
        raise CannotOpen("--since a folder needs the design's file name, and standard input has none: name the old file itself")
    same = path / Path(design).name
    if not same.exists():
        raise CannotOpen(f"there is no {Path(design).name} in {folder}: name the old file itself")
    return open_source(str(same))


def last_version(design: str) -> Source:
    """The last version kept beside a design. Raises CannotOpen where none is."""
    if design == "-":
        raise CannotOpen("standard input has no kept versions: name the old version and the new one")
    open_source(design)
    found = last_kept(design)
    if found is None:
        way = f"name the old one too, or keep one first with loopwright compare --keep {design}"
        raise CannotOpen(f"no older version of {design} is kept: {way}")
    return open_source(str(found))
