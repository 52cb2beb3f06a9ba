"""The log of a film as it is tapped: kept beside the designs, one file a design and size, in the form that `loopwright film --log` reads.

Nothing that was tapped is ever taken out: what is taken back becomes a remark, and a log that is begun again is kept under a number.
"""

from __future__ import annotations

import hashlib
import re
import threading
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from loopwright.workshop.files import CannotOpen, CannotSave, open_source, write_whole

FOLDER = Path(".loopwright") / "film"
MOST_LINES = 5000  # that are read of a log
MOST_LOG = 400_000  # characters
MOST_OLDER = 200
MOST_AT_ONCE = 500
LONGEST_LINE = 240
TAKEN_BACK = "# taken back: "
_LINE = re.compile(r"[^\x00-\x1f\x7f\u2028\u2029\ud800-\udfff]+")


@dataclass(frozen=True, slots=True)
class KeptLog:
    """A log as it stands, and how many older ones of this design and size are kept."""

    text: str
    older: int


@dataclass(frozen=True, slots=True)
class OlderLog:
    """A log that another one took the place of: its number, when that was (seconds since 1970), and how many beginnings it holds."""

    number: int
    at_s: float
    taps: int


class FilmLogs:
    """The logs of a folder's designs."""

    def __init__(self, folder: Path, *, read_only: bool = False) -> None:
        """`folder`: of the designs, resolved."""
        self.folder = folder
        self.read_only = read_only
        self._one = threading.Lock()

    def read(self, design: str, size: str) -> KeptLog:
        """The log of a design's size; empty where there is none. Raises CannotOpen."""
        path = self._path(design, size)
        return KeptLog(_text(path), len(_older(path)))

    def older(self, design: str, size: str) -> tuple[OlderLog, ...]:
        """The older logs of a design's size, the newest first. Raises CannotOpen."""
        path = self._path(design, size)
        found = []
        for number in reversed(_older(path)):
            with suppress(OSError, CannotOpen):
                one = _numbered(path, number)
                found.append(OlderLog(number, one.stat().st_mtime, sum(line[:1].isdigit() for line in _text(one).split("\n"))))
        return tuple(found)

    def older_text(self, design: str, size: str, number: int) -> str:
        """An older log by its number. Raises CannotOpen."""
        path = self._path(design, size)
        if number not in _older(path):
            raise CannotOpen("there is no such older log of this film")
        return _text(_numbered(path, number))

    def change(self, design: str, size: str, doing: Sequence[dict[str, Any]]) -> KeptLog:
        """Does what was tapped, in its order; what is done already is passed over, so that it may be sent again.

        Each is {"add": line}, {"take_back": line} (its last one becomes a remark), or {"put": text}, which keeps the log before it.
        Raises CannotSave, CannotOpen.
        """
        if self.read_only:
            raise CannotSave("this studio is only for reading: the log is kept in this window; save it as a file")
        path = self._path(design, size)
        with self._one:
            text = was = _text(path)
            for one in doing:
                after = _done(text, one)
                if "put" in one and text.strip() and after != text:
                    self._keep(path, text)
                text = after
            if len(text) > MOST_LOG or text.count("\n") > MOST_LINES:
                raise CannotSave(f"a log has at most {MOST_LINES:,} lines: begin a new one")
            if text != was:
                write_whole(path, text)
            return KeptLog(text, len(_older(path)))

    def _keep(self, path: Path, text: str) -> None:
        older = _older(path)
        write_whole(_numbered(path, older[-1] + 1 if older else 1), text)
        for number in older[: max(0, len(older) + 1 - MOST_OLDER)]:
            with suppress(OSError):
                _numbered(path, number).unlink()

    def _path(self, design: str, size: str) -> Path:
        """The file of a log; never one that a link leads elsewhere. Raises CannotOpen."""
        place = self.folder / FOLDER / design
        plain = re.sub(r"[^a-z0-9]+", "-", size.lower()).strip("-")[:24] or "size"
        path = place / f"{plain}-{hashlib.sha256(size.encode('utf-8', 'surrogatepass')).hexdigest()[:8]}.txt"
        if path.resolve() != path:
            raise CannotOpen(f"{FOLDER} is a link to another place: nothing is kept there")
        return path


def _text(path: Path) -> str:
    return open_source(str(path)).text if path.is_file() else ""


def _numbered(path: Path, number: int) -> Path:
    return path.with_name(f"{path.stem}.{number}.txt")


def _older(path: Path) -> list[int]:
    found = (re.fullmatch(rf"{re.escape(path.stem)}\.(\d{{1,6}})\.txt", p.name) for p in path.parent.glob(f"{path.stem}.*.txt"))
    return sorted(int(m[1]) for m in found if m)


def _done(text: str, one: dict[str, Any]) -> str:
    """A log with one thing done to it. Raises CannotOpen for what is none of the three."""
    lines = text.split("\n")[:-1] if text.endswith("\n") else text.split("\n") if text else []
    if isinstance(line := one.get("add"), str) and _LINE.fullmatch(line) and len(line) <= LONGEST_LINE:
        return text if line in lines or f"{TAKEN_BACK}{line}" in lines else "".join(f"{x}\n" for x in [*lines, line])
    if isinstance(line := one.get("take_back"), str):
        at = next((i for i in range(len(lines) - 1, -1, -1) if lines[i] == line), None)
        return text if at is None else "".join(f"{TAKEN_BACK}{x}\n" if i == at else f"{x}\n" for i, x in enumerate(lines))
    if isinstance(put := one.get("put"), str) and len(put) <= MOST_LOG:
        try:
            put.encode()
        except UnicodeEncodeError:
            raise CannotOpen("this log has halves of characters in it, which no file can hold") from None
        plain = put.replace("\0", "").lstrip("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
        return plain + ("\n" if plain and not plain.endswith("\n") else "")
    raise CannotOpen("this line of the log could not be understood")
