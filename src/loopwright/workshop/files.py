"""Pattern files in: decoding and limits, with messages that say what to do."""

from __future__ import annotations

import sys
from pathlib import Path

from loopwright.source import Source

MAX_BYTES = 10_000_000


class CannotOpen(Exception):
    """A file that cannot be used; the message names it and the way out."""


def open_source(name: str) -> Source:
    """The text of a file, "-" for standard input. Raises CannotOpen."""
    try:
        raw = sys.stdin.buffer.read(MAX_BYTES + 1) if name == "-" else _bytes(Path(name))
    except IsADirectoryError:
        raise CannotOpen(f"{name} is a folder: name a text file in it") from None
    except FileNotFoundError:
        raise CannotOpen(f"there is no file {name}: check its name and folder") from None
    except PermissionError:
        raise CannotOpen(f"{name} may not be read: change its permissions or copy it elsewhere") from None
    except OSError as e:
        raise CannotOpen(f"{name} cannot be read: {e.strerror}") from None
    if len(raw) > MAX_BYTES:
        raise CannotOpen(f"{name} is longer than {MAX_BYTES:,} bytes: split it into patterns")
    try:
        return Source.of(raw.decode("utf-8"), name)
    except UnicodeDecodeError as e:
        raise CannotOpen(f"{name} is not UTF-8 text: byte {e.start + 1} is 0x{raw[e.start]:02x}; save it as UTF-8") from None


def _bytes(path: Path) -> bytes:
    with path.open("rb") as f:
        return f.read(MAX_BYTES + 1)
