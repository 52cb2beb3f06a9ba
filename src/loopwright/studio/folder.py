"""The folder of designs: what stands in it, one text read and saved, never over somebody else's change."""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass
from pathlib import Path

from loopwright.studio.settings import MOST_TEXT
from loopwright.workshop.files import MAX_BYTES, CannotOpen, CannotSave, open_source, write_whole

ENDINGS = (".txt", ".md", ".loop")
MOST_FILES = 2000
_PLAIN = re.compile(r"[^\w .()'’&+-]+")


class NotInFolderError(Exception):
    """A name that is no design of the folder."""


class ChangedElsewhereError(Exception):
    """The file is no longer what was opened. `text`: what it is now, None where it is gone."""

    def __init__(self, text: str | None) -> None:
        super().__init__("changed elsewhere")
        self.text = text


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
        self.path = path.resolve()
        self.read_only = read_only
        if not self.path.is_dir():
            raise CannotOpen(f"{path} is no folder: name the folder that your designs are in")

    def names(self) -> list[str]:
        """Names of the designs, without their folder, by the alphabet; hidden files and texts of other kinds are left out."""
        found = [p.name for p in self.path.iterdir() if p.suffix in ENDINGS and not p.name.startswith(".") and p.is_file()]
        return sorted(n for n in found if self._inside(n))[:MOST_FILES]

    def _inside(self, name: str) -> bool:
        try:
            self._of(name)
        except NotInFolderError:
            return False
        return True

    def _of(self, name: str) -> Path:
        """The path of a design. Raises NotInFolderError for whatever leads elsewhere."""
        if not name or name.startswith(".") or "/" in name or "\\" in name or "\0" in name or Path(name).suffix not in ENDINGS:
            raise NotInFolderError(name)
        path = self.path / name
        if path.resolve().parent != self.path:
            raise NotInFolderError(name)
        return path

    def read(self, name: str) -> Opened:
        """One design. Raises NotInFolderError, CannotOpen."""
        path = self._of(name)
        if not path.is_file():
            raise NotInFolderError(name)
        source = open_source(str(path))
        return Opened(name, source.text, sum_of(source.text), path.stat().st_mtime)

    def save(self, name: str, text: str, base: str) -> Opened:
        """Writes a design where it is still what was opened (`base`: the sum of that). Raises ChangedElsewhereError, CannotSave."""
        self._may_write(text)
        path = self._of(name)
        try:
            now = self.read(name).text
        except (NotInFolderError, CannotOpen):
            now = None
        if now is None or sum_of(now) != base:
            if now == text:
                return self.read(name)
            raise ChangedElsewhereError(now)
        write_whole(path, text)
        return Opened(name, text, sum_of(text), path.stat().st_mtime)

    def create(self, title: str, text: str) -> Opened:
        """A new design under a name made of its title; never over one that is there. Raises CannotSave."""
        self._may_write(text)
        stem = _PLAIN.sub("-", title).strip(" .-")[:60] or "new design"
        name, n = f"{stem}.txt", 2
        while (self.path / name).exists():
            name, n = f"{stem} {n}.txt", n + 1
        write_whole(self._of(name), text)
        return self.read(name)

    def _may_write(self, text: str) -> None:
        if self.read_only:
            raise CannotSave("this studio is only for reading: start it without --read-only to write")
        if len(text) > MOST_TEXT or len(text.encode()) > MAX_BYTES:
            raise CannotSave(f"a design is at most {MOST_TEXT:,} characters long: split it into two")

    def stamp(self, name: str) -> tuple[float, int] | None:
        """When a design was changed last and how long it is; None where it is gone."""
        try:
            found = self._of(name).stat()
        except (NotInFolderError, OSError):
            return None
        return found.st_mtime, found.st_size


def sum_of(text: str) -> str:
    """The sum that tells two texts apart."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:32]
