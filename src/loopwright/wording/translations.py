"""The designer's own sentences, out to a translator and back: units with what stands where, read back, checked, and put in.

Numbers and lists of sizes are taken out of a sentence ("{1}"), so that one translation serves every size and every gauge.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping, Sequence

from loopwright.record import record

_LIST = r"(?:\d+(?:\.\d+)?|[–—-])\s?\((?:\d+(?:\.\d+)?|[–—-])(?:,\s*(?:\d+(?:\.\d+)?|[–—-]))*\)"
_NUMBER = re.compile(rf"{_LIST}|\d+(?:\.\d+)?")
_LETTERS = re.compile(r"\b[A-Z]{1,3}\b")
_COLUMNS = ("id", "where", "text", "numbers")
_SLOT = re.compile(r"\{(\d+)\}")


@record
class Unit:
    """A piece of the designer's words: its text with numbers taken out, where it stands, and the numbers, as they are in all sizes.

    `id` stays the same as long as the words do, whatever the numbers are. `target`: its translation, "" while there is none.
    """

    id: str
    text: str
    where: str
    numbers: tuple[str, ...] = ()
    target: str = ""


@record
class Trouble:
    """What is wrong with a translation: "missing", "stale" (its words are no longer in the pattern), "numbers" or "abbreviations" lost."""

    kind: str
    unit: str
    text: str
    lost: tuple[str, ...] = ()

    @property
    def message(self) -> str:
        """In words."""
        what = {
            "missing": "is not translated", "stale": "is no longer in the pattern: its translation is not used",
            "numbers": f"is translated without {', '.join(self.lost)}", "abbreviations": f"loses {', '.join(self.lost)}",
        }[self.kind]
        return f"“{self.text}” {what}"


def template(said: str) -> tuple[str, tuple[str, ...]]:
    """A sentence with its numbers taken out, and the numbers: "leave {1} sts", ("13 (13, 15)",)."""
    found: list[str] = []

    def out(m: re.Match[str]) -> str:
        found.append(m[0])
        return f"{{{len(found)}}}"

    return _NUMBER.sub(out, said), tuple(found)


def filled_in(target: str, numbers: Sequence[str]) -> str:
    """A translated sentence with its numbers put in; a slot that has none stays as it is."""
    return _SLOT.sub(lambda m: numbers[int(m[1]) - 1] if 0 < int(m[1]) <= len(numbers) else m[0], target)


def translation_of(said: str, translations: Mapping[str, str]) -> str | None:
    """The translation of a sentence with its numbers in it; None where there is none. `translations`: by the sentence without numbers."""
    if not translations:
        return None
    plain, numbers = template(said)
    told = translations.get(plain)
    return filled_in(told, numbers) if told else None


def units(kept: Iterable[tuple[str, str, str]], translations: Mapping[str, str] | None = None) -> tuple[Unit, ...]:
    """Units of what had to stay (words, section, row), each wording once, in order."""
    found: dict[str, Unit] = {}
    for said, section, row in kept:
        plain, numbers = template(said)
        where = ", ".join(p for p in (section, row) if p)
        if re.search(r"[^\W\d_]", _SLOT.sub("", plain)):
            found.setdefault(plain, Unit(identity(plain), plain, where, numbers, (translations or {}).get(plain, "")))
    return tuple(found.values())


def as_table(wanted: Iterable[Unit], code: str) -> str:
    """Units as a table of tab-separated columns that any spreadsheet opens: id, where, text, numbers, and the translation to fill in.

    `code`: the language, named in the head of the last column.
    """
    out = io.StringIO()
    rows = csv.writer(out, dialect="excel-tab", lineterminator="\n")
    rows.writerow([*_COLUMNS, code])
    rows.writerows([u.id, u.where, u.text, "; ".join(f"{{{i}}} = {n}" for i, n in enumerate(u.numbers, 1)), u.target] for u in wanted)
    return out.getvalue()


def from_table(text: str) -> dict[str, str]:
    """Translations by the sentence without numbers, out of such a table; rows with nothing filled in are left out.

    Raises ValueError, naming the line, for a table with other columns.
    """
    rows = list(csv.reader(io.StringIO(text.lstrip("\ufeff")), dialect="excel-tab"))
    if not rows or rows[0][: len(_COLUMNS)] != list(_COLUMNS) or len(rows[0]) <= len(_COLUMNS):
        raise ValueError(f"line 1: this is no table of translations; its columns are {', '.join(_COLUMNS)} and the language")
    found: dict[str, str] = {}
    for line, row in enumerate(rows[1:], 2):
        if not any(row):
            continue
        if len(row) < len(_COLUMNS):
            raise ValueError(f"line {line}: {len(row)} columns where there are {len(_COLUMNS) + 1}")
        target = row[len(_COLUMNS)].strip() if len(row) > len(_COLUMNS) else ""
        if target:
            found[row[_COLUMNS.index("text")]] = target
    return found


def language_of(text: str) -> str:
    """The code of the language that such a table is for: the head of its last column."""
    heads = next(csv.reader(io.StringIO(text.lstrip("\ufeff")), dialect="excel-tab"), [])
    return heads[len(_COLUMNS)].strip().lower() if len(heads) > len(_COLUMNS) else ""


def identity(plain: str) -> str:
    """A short name for a sentence, the same on every machine (FNV-1a of its characters, 64 bits, in hexadecimal)."""
    value = 0xCBF29CE484222325
    for byte in plain.encode():
        value = ((value ^ byte) * 0x100000001B3) % 2**64
    return f"u{value:016x}"


def troubles(wanted: Sequence[Unit], told: Mapping[str, str], shorts: Iterable[str] = ()) -> tuple[Trouble, ...]:
    """What is missing, stale or has lost numbers in translations. `told`: by the sentence without numbers.

    `shorts`: abbreviations of the design's own that a translation has to keep ("MC").
    """
    found = [Trouble("stale", identity(text), text) for text in told if text not in {u.text for u in wanted}]
    for unit in wanted:
        target = told.get(unit.text, "")
        if not target.strip():
            found.append(Trouble("missing", unit.id, unit.text))
            continue
        slots = [f"{{{m[1]}}}" for m in _SLOT.finditer(unit.text)]
        lost = tuple(s for s in slots if target.count(s) < slots.count(s))
        if lost:
            found.append(Trouble("numbers", unit.id, unit.text, lost))
        kept = dict.fromkeys([*shorts, *(c for c in _LETTERS.findall(unit.text) if c not in ("I", "A"))])
        gone = tuple(s for s in kept if _has(s, unit.text) and not _has(s, target))
        if gone:
            found.append(Trouble("abbreviations", unit.id, unit.text, gone))
    return tuple(found)


def _has(short: str, text: str) -> bool:
    return bool(re.search(rf"(?<!\w){re.escape(short)}(?!\w)", text))
