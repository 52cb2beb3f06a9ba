"""Files in and out: decoding and limits on the way in, whole files or none on the way out.

Every failure is a CannotOpen or CannotSave whose message names the file, what is wrong, and the way out; it ends a command with exit
code 2. Nothing else of the program opens a file that a user named.
"""

from __future__ import annotations

import contextlib
import errno
import os
import sys
from pathlib import Path

from loopwright.source import Source

MAX_BYTES = 2_000_000
_NEW_FILE = 0o666

_BOMS = ((b"\xff\xfe", "UTF-16"), (b"\xfe\xff", "UTF-16"))


class CannotOpen(Exception):  # noqa: N818 (read as a sentence: "except CannotOpen")
    """A file that cannot be used; the message names it and the way out."""


class CannotSave(Exception):  # noqa: N818
    """A file that cannot be written; the message names it and the way out. What was there before is still there."""


def open_source(name: str) -> Source:
    """The text of a file, "-" for standard input. Raises CannotOpen."""
    called = "standard input" if name == "-" else name
    try:
        raw = sys.stdin.buffer.read(MAX_BYTES + 1) if name == "-" else _bytes(Path(name))
    except IsADirectoryError:
        raise CannotOpen(f"{called} is a folder: name a text file in it") from None
    except FileNotFoundError:
        raise CannotOpen(f"there is no file {called}: check its name and folder") from None
    except PermissionError:
        raise CannotOpen(f"{called} may not be read: change its permissions, or copy it elsewhere") from None
    except OSError as e:
        raise CannotOpen(f"{called} cannot be read: {e.strerror or e}") from None
    except ValueError:
        raise CannotOpen(f"{called!r} is no file name: check what was typed") from None
    if len(raw) > MAX_BYTES:
        raise CannotOpen(f"{called} is longer than {MAX_BYTES:,} bytes: split it, one pattern to a file")
    return Source.of(_decoded(raw, called), name)


def _bytes(path: Path) -> bytes:
    with path.open("rb") as f:
        return f.read(MAX_BYTES + 1)


def _decoded(raw: bytes, called: str) -> str:
    for mark, encoding in _BOMS:
        if raw.startswith(mark):
            raise CannotOpen(f"{called} is {encoding}, not UTF-8: byte 1 (offset 0) is 0x{raw[0]:02x}; save it as UTF-8")
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as e:
        line = raw.count(b"\n", 0, e.start) + 1
        where = f"byte {e.start + 1} (offset {e.start}, in line {line}) is 0x{raw[e.start]:02x}"
        raise CannotOpen(f"{called} is not UTF-8 text: {where}; open it in an editor and save it as UTF-8") from None


def write_whole(path: Path, text: str) -> None:
    """Writes a text file, whole or not at all. Raises CannotSave."""
    write_bytes(path, text.encode("utf-8"))


def write_bytes(path: Path, data: bytes) -> None:
    """Writes a file, whole or not at all: beside it first, flushed to disk, then put in its place. Raises CannotSave.

    The folder is made if it is not there. An older file keeps its permissions, and stays as it was when anything goes wrong.
    """
    import tempfile  # noqa: PLC0415 -- most commands write nothing

    folder_of(path)
    draft: str | None = None
    try:
        handle, draft = tempfile.mkstemp(prefix=f".{path.name[:40]}.", suffix=".part", dir=path.parent)
        with os.fdopen(handle, "wb") as f:
            f.write(data)
            f.flush()
            os.fsync(f.fileno())
        Path(draft).chmod(_mode(path))
        Path(draft).replace(path)
        draft = None
    except OSError as e:
        raise CannotSave(_why(path, e)) from None
    finally:
        if draft is not None:
            with contextlib.suppress(OSError):
                Path(draft).unlink()


def folder_of(path: Path) -> None:
    """Makes the folder that a file is to stand in, and those above it. Raises CannotSave."""
    make_folder(path.parent)


def make_folder(folder: Path) -> None:
    """Makes an output folder, and those above it; one that is there is taken. Raises CannotSave."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError):
        raise CannotSave(f"{folder} is a file, not a folder: name another output folder") from None
    except OSError as e:
        raise CannotSave(_why(folder, e)) from None


def output_folder(name: str) -> Path:
    """An output folder, made, and found to be one that files can be put into before there is work to lose. Raises CannotSave."""
    folder = Path(name)
    make_folder(folder)
    if not os.access(folder, os.W_OK | os.X_OK):
        raise CannotSave(f"{folder} may not be written: name another output folder, or change its permissions")
    return folder


def _mode(path: Path) -> int:
    """Permissions for the file: those of the older one, else what the system gives to a new file."""
    try:
        return path.stat().st_mode & 0o7777
    except OSError:
        mask = os.umask(0)
        os.umask(mask)
        return _NEW_FILE & ~mask


def _why(path: Path, error: OSError) -> str:
    if isinstance(error, IsADirectoryError):
        return f"{path} is a folder: name a file in it"
    if isinstance(error, PermissionError) or error.errno == errno.EROFS:
        return f"{path} may not be written: choose another folder with -o or --out, or change the permissions of {path.parent}"
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return f"{path} was not written, the disk is full: make room, or choose a folder on another disk"
    if error.errno == errno.ENAMETOOLONG:
        return f"{path.name[:60]}… is too long for a file name: choose a shorter one"
    return f"{path} cannot be written: {error.strerror or error}"
