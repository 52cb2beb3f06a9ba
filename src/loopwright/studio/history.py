"""Older texts of a design, kept beside it in a hidden folder: one for every quarter of an hour of work, and before each take-over."""

from __future__ import annotations

import re
import time
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from loopwright.workshop.files import CannotOpen, CannotSave, open_source, write_whole

FOLDER = Path(".loopwright") / "history"
EVERY_S = 15 * 60
NEWEST = 40  # kept without a gap
DAYS = 60  # beyond those, one of each day, the newest so many
REASONS = ("work", "another window", "changed elsewhere")
_NAME = re.compile(r"(?P<number>\d{6}) (?P<at>\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ) (?P<why>[a-z ]+)\.txt")


@dataclass(frozen=True, slots=True)
class KeptText:
    """A text that was kept: its name in the history, when (seconds since 1970, by the clock of that time), and why."""

    id: str
    number: int
    at_s: float
    why: str


class History:
    """The older texts of a folder's designs. They are in the order of their numbers: a clock that is set back mixes nothing up."""

    def __init__(self, folder: Path) -> None:
        """`folder`: of the designs, resolved."""
        self.folder = folder
        self._kept_at: dict[str, float] = {}

    def keep_for_work(self, name: str, text: str) -> None:
        """Keeps the text that is about to be replaced, where a quarter of an hour went by since the last one. Never raises."""
        now = time.monotonic()
        if now - self._kept_at.get(name, -EVERY_S) >= EVERY_S and self.keep(name, text, "work"):
            self._kept_at[name] = now

    def keep(self, name: str, text: str, why: str) -> bool:
        """Keeps a text, unless it is the one that was kept last. Never raises, as saving matters more: False where it could not."""
        with suppress(CannotSave, CannotOpen, OSError):
            place = self._place(name)
            found = self._in(place)
            if found and open_source(str(place / found[-1].id)).text == text:
                return True
            number = found[-1].number + 1 if found else 1
            at = time.strftime("%Y-%m-%dT%H-%M-%SZ", time.gmtime())
            write_whole(place / f"{number:06d} {at} {why}.txt", text)
            for old in _outlived(self._in(place)):
                (place / old.id).unlink(missing_ok=True)
            return True
        return False

    def listing(self, name: str) -> tuple[KeptText, ...]:
        """The texts of a design that are kept, the newest first."""
        try:
            return tuple(reversed(self._in(self._place(name))))
        except CannotOpen:
            return ()

    def read(self, name: str, kept: str) -> str:
        """A text that was kept. Raises CannotOpen."""
        place = self._place(name)
        if all(k.id != kept for k in self._in(place)):
            raise CannotOpen("There is no such text in the history of this design.")
        return open_source(str(place / kept)).text

    def _place(self, name: str) -> Path:
        """The folder of one design's history; never one that a link leads elsewhere. Raises CannotOpen."""
        place = self.folder / FOLDER / name
        if place.resolve() != place:
            raise CannotOpen(f"{FOLDER} is a link to another place: nothing is kept there")
        return place

    def _in(self, place: Path) -> list[KeptText]:
        try:
            names = sorted(p.name for p in place.iterdir() if p.is_file() and not p.is_symlink())
        except OSError:
            return []
        found = (_NAME.fullmatch(n) for n in names)
        return [KeptText(m[0], int(m["number"]), _seconds(m["at"]), m["why"]) for m in found if m]


def _outlived(kept: list[KeptText]) -> Iterable[KeptText]:
    """What is no longer kept: beyond the newest, all but the last of each day; beyond so many days, all."""
    older = kept[:-NEWEST]
    last_of_day = {k.id[7:17]: k for k in older}
    stay = set(list(last_of_day.values())[-DAYS:])
    return [k for k in older if k not in stay]


def _seconds(said: str) -> float:
    import calendar  # noqa: PLC0415 - only where the history is looked at

    try:
        return float(calendar.timegm(time.strptime(said, "%Y-%m-%dT%H-%M-%SZ")))
    except ValueError:
        return 0.0
