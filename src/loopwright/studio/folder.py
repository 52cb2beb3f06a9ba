"""The folder of designs: what stands in it, one text read and saved, never over somebody else's change."""

from __future__ import annotations

import hashlib
import re
import threading
import time
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from loopwright.source import Source
from loopwright.studio.history import FOLDER as HISTORY
from loopwright.studio.history import History
from loopwright.studio.settings import MOST_TEXT
from loopwright.workshop.files import MAX_BYTES, CannotOpen, CannotSave, open_source, write_whole

ENDINGS = (".txt", ".md", ".loop")
MOST_FILES = 2000
LONGEST = 240  # bytes of a file's name
_COARSE_NS = 2_000_000_000
_DRAFT_S = 60.0  # a half-written draft that is older than this was left by a process that was killed
_DRAFT = re.compile(r"\..+\.[a-z0-9_]{8}\.part")
_PLAIN = re.compile(r"[^\w .()'’&+-]+")

Stamp = tuple[int, int, int]
"""What changes with every change of a file, whatever the clock says: time in ns, bytes, number of its place on disk."""


class NotInFolderError(Exception):
    """A name that is no design of the folder."""


class ChangedElsewhereError(Exception):
    """The file is no longer what was opened. `text`: what it is now, None where it is gone."""

    def __init__(self, text: str | None) -> None:
        super().__init__("changed elsewhere")
        self.text = text

    def told(self) -> dict[str, str | None]:
        """The text and its sum, as a window is told."""
        return {"text": self.text, "sum": "" if self.text is None else sum_of(self.text)}


@dataclass(frozen=True, slots=True)
class Opened:
    """A text with the sum that tells whether it was changed, and when it was saved (seconds since 1970)."""

    id: str
    text: str
    sum: str
    at: float


class Folder:
    """Designs below one folder; nothing outside it is ever read or written, by whatever name or link."""

    def __init__(self, path: Path, *, read_only: bool = False) -> None:
        """`path`: the folder. Raises CannotOpen where it is none."""
        if not path.is_dir():
            raise CannotOpen(f"{path} is no folder: name the folder that your designs are in")
        self.path = path.resolve()
        self.read_only = read_only
        self.history = History(self.path)
        self._one = threading.Lock()
        self._held: dict[str, tuple[Stamp, Opened]] = {}
        if not read_only:
            self._sweep()

    def _sweep(self) -> None:
        """Takes away drafts that a killed process left behind."""
        with suppress(OSError):
            for draft in (*self.path.glob(".*.part"), *(self.path / HISTORY).glob("*/.*.part")):
                old = abs(time.time() - draft.lstat().st_mtime) > _DRAFT_S
                if old and _DRAFT.fullmatch(draft.name) and draft.resolve().is_relative_to(self.path):
                    draft.unlink()

    def names(self) -> list[str]:
        """Names of the designs by the alphabet; hidden files and texts of other kinds are left out. Raises CannotOpen."""
        try:
            found = [p.name for p in self.path.iterdir() if p.suffix in ENDINGS and p.is_file()]
        except OSError as e:
            raise CannotOpen(f"the folder {self.path.name} cannot be read: {e.strerror or e}") from None
        return sorted(n for n in found if self._inside(n))[:MOST_FILES]

    def _inside(self, name: str) -> bool:
        try:
            self._of(name)
        except NotInFolderError:
            return False
        return True

    def _of(self, name: str) -> Path:
        """The path of a design. Raises NotInFolderError for whatever leads elsewhere."""
        if not name or name.startswith(".") or any(c in "/\\:" or ord(c) < 32 for c in name) or Path(name).suffix not in ENDINGS:
            raise NotInFolderError(name)
        if len(name.encode("utf-8", "surrogateescape")) > LONGEST:
            raise NotInFolderError(name)
        path = self.path / name
        try:
            inside = not path.is_symlink() or path.resolve().parent == self.path and not path.resolve().is_symlink()
        except (OSError, RuntimeError, ValueError):  # a loop of links; from Python 3.13 on it is but a link that leads nowhere
            inside = False
        if not inside:
            raise NotInFolderError(name)
        return path

    def read(self, name: str) -> Opened:
        """One design. Raises NotInFolderError, CannotOpen."""
        path = self._of(name)
        stamp = self.stamp(name)
        held = self._held.get(name)
        if held is not None and held[0] == stamp:
            return held[1]
        if not path.is_file():
            raise NotInFolderError(name)
        source = open_source(str(path))
        opened = Opened(name, source.text, sum_of(source.text), self._saved_at(path))
        if stamp is not None and self._is_old(stamp):
            self._held[name] = stamp, opened
        return opened

    @staticmethod
    def _is_old(stamp: Stamp) -> bool:
        """Whether another change would have another stamp: not, where clocks are too coarse to tell it from the last one."""
        return abs(time.time_ns() - stamp[0]) > _COARSE_NS

    def all(self) -> list[Opened | tuple[str, str]]:
        """Every design; its name and why, of those that cannot be read. Raises CannotOpen."""
        found: list[Opened | tuple[str, str]] = []
        for name in self.names():
            try:
                found.append(self.read(name))
            except CannotOpen as e:
                found.append((name, str(e)))
            except NotInFolderError:  # gone since it was listed
                continue
        return found

    def _saved_at(self, path: Path) -> float:
        try:
            return path.stat().st_mtime
        except OSError:
            return 0.0

    def save(self, name: str, text: str, base: str) -> Opened:
        """Writes a design where it is still what was opened. Raises ChangedElsewhereError, CannotSave, NotInFolderError.

        `base`: the sum of what was opened; "" for a file that was known to be gone. What is replaced is kept in the history once in a
        quarter of an hour.
        """
        text = Source.of(text).text
        self._may_write(text)
        path = self._of(name)
        with self._one:
            now = self._now(name)
            if now == text:
                return self.read(name)
            if (sum_of(now) if now is not None else "") != base:
                raise ChangedElsewhereError(now)
            if now is not None:
                self.history.keep_for_work(name, now)
            write_whole(path, text)
            return Opened(name, text, sum_of(text), self._saved_at(path))

    def _now(self, name: str) -> str | None:
        try:
            return self.read(name).text
        except NotInFolderError:
            return None

    def keep(self, name: str, why: str, text: str | None = None) -> None:
        """Keeps what stands on disk, or another text of a design, in its history."""
        with suppress(NotInFolderError, CannotOpen):
            found = self.read(name).text if text is None else Source.of(text).text
            if not self.read_only and self._of(name):
                self.history.keep(name, found, why)

    def create(self, title: str, text: str) -> Opened:
        """A new design under a name made of its title; never over one that is there. Raises CannotSave."""
        text = Source.of(text).text
        self._may_write(text)
        stem = _PLAIN.sub("-", title).strip(" .-")[:60].strip(" .-") or "new design"
        with self._one:
            name, n = f"{stem}.txt", 2
            while (self.path / name).exists():
                name, n = f"{stem} {n}.txt", n + 1
            write_whole(self._of(name), text)
            return self.read(name)

    def _may_write(self, text: str) -> None:
        if self.read_only:
            raise CannotSave("this studio is only for reading: start it without --read-only to write")
        try:
            length = len(text.encode())
        except UnicodeEncodeError:
            raise CannotSave("this text has halves of characters in it, which no file can hold: type them anew") from None
        if len(text) > MOST_TEXT or length > MAX_BYTES:
            raise CannotSave(f"a design is at most {MOST_TEXT:,} characters long: split it into two")

    def stamp(self, name: str) -> Stamp | None:
        """What tells a change of a design; None where it is gone."""
        try:
            found = self._of(name).stat()
        except (NotInFolderError, OSError):
            return None
        return found.st_mtime_ns, found.st_size, found.st_ino


def sum_of(text: str) -> str:
    """The sum that tells two texts apart."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:32]
