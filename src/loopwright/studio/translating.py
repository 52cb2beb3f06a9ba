"""A design's own words in another language: its table beside the design, in the very form that `--translations` of the commands reads.

What stands in a table is never lost: rows of words that have left the pattern stay at its end, columns that somebody added stay, and a
filled table that is brought in leaves the one before it in the history.
"""

from __future__ import annotations

import csv
import io
import threading
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from loopwright.publishing.phrases import languages
from loopwright.record import record
from loopwright.studio.folder import Folder
from loopwright.studio.seeing import seen_of
from loopwright.terms.languages import language
from loopwright.wording.translations import Unit, as_table, from_table, identity, language_of, troubles
from loopwright.workshop.files import CannotOpen, CannotSave, open_source, write_whole
from loopwright.workshop.grade import finished
from loopwright.workshop.languages import in_language

MOST_TABLE = 1_000_000  # characters
MOST_AT_ONCE = 2000  # phrases
LONGEST = 4000  # characters of a phrase
_TARGET = 4  # its column, after id, where, text and numbers
_ONE = threading.Lock()

Units = Sequence[Unit]
Rows = list[list[str]]


@record
class BroughtIn:
    """What came of a filled table: how many phrases were taken, how many of them in place of others, how many are not of this pattern."""

    taken: int
    replaced: int
    strange: int


@record
class Table:
    """One design's table for one language: its file, which need not be there."""

    folder: Folder
    path: Path
    code: str

    @property
    def text(self) -> str:
        """What stands in it, "" where there is none. Raises CannotOpen where it cannot be used."""
        if not self.path.exists():
            return ""
        text = open_source(str(self.path)).text
        _checked(text, self.code, f"the list {self.path.name}")
        return text

    @property
    def told(self) -> dict[str, str]:
        """Translations by the sentence without numbers. Raises CannotOpen."""
        text = self.text
        return from_table(text) if text else {}

    def filled(self, units: Units, more: Mapping[str, str] | None = None) -> str:
        """The table as it would be written: the words of the pattern in their order, then what is left of others.

        `more`: translations by the sentence; "" takes one out. Raises CannotOpen.
        """
        return _filled(self.text, units, self.code, more or {})

    def put(self, units: Units, more: Mapping[str, str]) -> None:
        """Writes some translations into the table. Raises CannotSave, CannotOpen."""
        if self.folder.read_only:
            raise CannotSave("this studio is only for reading: take the list away, and fill it in elsewhere")
        with _ONE:
            before = self.text
            after = _filled(before, units, self.code, more)
            if after == before:
                return
            if len(after) > MOST_TABLE:
                raise CannotSave("these words are longer than a table of them may be")
            if before:
                self.folder.history.keep_for_work(self.path.name, before)
            write_whole(self.path, after)

    def bring_in(self, units: Units, table: str) -> BroughtIn:
        """Takes in a table that came back filled; what it leaves empty stays as it was. Raises CannotSave, CannotOpen."""
        _checked(table, self.code, "this file")
        came, before = from_table(table), self.told
        if before and not self.folder.read_only:
            self.folder.history.keep(self.path.name, self.text, "work")
        self.put(units, came)
        known = {u.text for u in units}
        replaced = sum(before.get(text, target) != target for text, target in came.items())
        return BroughtIn(len(came), replaced, sum(text not in known for text in came))


def table_of(folder: Folder, design: str, code: str) -> Table:
    """The table of a design that was opened: "hat.de.tsv" beside "hat.txt". Raises CannotOpen for a language that there is none of."""
    if code not in languages() or code == "en":
        raise CannotOpen("there are no words in this language")
    path = folder.path / f"{Path(design).stem}.{code}.tsv"
    if path.is_symlink() and path.resolve().parent != folder.path:
        raise CannotOpen(f"{path.name} is a link to another place: it is not read")
    return Table(folder, path, code)


def tables_for(folder: Folder, design: str, codes: Iterable[str]) -> dict[str, dict[str, str]]:
    """Translations by language, of those languages that have any. Raises CannotOpen."""
    found = {code: table_of(folder, design, code).told for code in codes if code != "en"}
    return {code: told for code, told in found.items() if told}


def as_wire(table: Table, units: Units) -> dict[str, Any]:
    """What the page shows: each of her phrases with its translation and what is wrong with that. Raises CannotOpen."""
    told = table.told
    wrong: dict[str, list[str]] = {}
    for t in troubles(units, told):
        if t.kind in ("numbers", "abbreviations"):
            wrong.setdefault(t.text, []).extend(t.lost)
    known = {u.text for u in units}
    return {
        "code": table.code, "name": language(table.code).name, "file": table.path.name, "there": table.path.exists(),
        "read_only": table.folder.read_only,
        "phrases": [
            {"text": u.text, "where": u.where, "numbers": list(u.numbers), "said": told.get(u.text, ""), "lost": wrong.get(u.text, [])}
            for u in units
        ],
        "left": sum(text not in known for text in told),
    }


def units_of(name: str, text: str, code: str) -> tuple[Unit, ...]:
    """In the other process: the phrases of a design that no language of ours has words for, in their order."""
    seen = seen_of(name, text, None)
    graded = seen.graded
    document = graded.document if graded is not None else seen.filled
    return in_language(document, seen.report, code, finished(graded) if graded is not None else None).units


def _checked(text: str, code: str, called: str) -> None:
    try:
        from_table(text)
    except (ValueError, csv.Error) as e:
        raise CannotOpen(f"{called} cannot be used: {e}") from None
    if language_of(text) != code:
        raise CannotOpen(f"{called} is a table for {language_of(text)!r}, not for {code!r}: the head of its last column says so")


def _filled(before: str, units: Units, code: str, more: Mapping[str, str]) -> str:
    held = {row[2]: row for row in _rows(before)[1:] if len(row) >= _TARGET}
    told = {**(from_table(before) if before else {}), **more}
    head, *fresh = _rows(as_table((_said(u, told) for u in units), code))
    extra = _rows(before)[0][_TARGET + 1 :] if before else []
    known = {u.text for u in units}
    rows = [row + held.get(row[2], [])[_TARGET + 1 :] for row in fresh]
    rows += [_with(row, told.get(text, "")) for text, row in held.items() if text not in known]
    strange = [text for text in more if text not in known and text not in held and more[text]]
    rows += _rows(as_table((_said(Unit("", text, ""), told) for text in strange), code))[1:]
    out = io.StringIO()
    csv.writer(out, dialect="excel-tab", lineterminator="\n").writerows([head + extra, *rows])
    return out.getvalue()


def _said(unit: Unit, told: Mapping[str, str]) -> Unit:
    return Unit(unit.id or identity(unit.text), unit.text, unit.where, unit.numbers, " ".join(told.get(unit.text, "").split()))


def _with(row: list[str], target: str) -> list[str]:
    return [*row[:_TARGET], target, *row[_TARGET + 1 :]]


def _rows(text: str) -> Rows:
    return list(csv.reader(io.StringIO(text.lstrip("\ufeff")), dialect="excel-tab"))
