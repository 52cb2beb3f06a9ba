"""Stitch patterns: rows as the trade writes them, and the multiple of stitches each needs."""

from __future__ import annotations

import re
from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry

_ROW = re.compile(r"Row \d")


@record
class Multiple:
    """A number of so many for each repeat and so many more: 6n + 1 is Multiple(6, 1)."""

    of: int
    plus: int

    def at(self, repeats: int) -> int:
        """The number for so many repeats."""
        return self.of * repeats + self.plus

    def repeats_in(self, number: int) -> int | None:
        """How many repeats a number holds; None where it does not come out even."""
        repeats, over = divmod(number - self.plus, self.of)
        return repeats if over == 0 and repeats > 0 else None

    def __str__(self) -> str:
        times = "n" if self.of == 1 else f"{self.of}n"
        return times if not self.plus else f"{times} {'+' if self.plus > 0 else '-'} {abs(self.plus)}"


@record
class StitchPattern:
    """A stitch pattern in US terms. `stitches` of its first row and `chain` of its foundation are multiples of the repeat.

    `rows` are the counts of its rows in `noun`; `left` stitches of each row stay unworked at its end; {chain} in `text`
    stands for the number of the foundation chain.
    """

    key: str
    name: str
    also: tuple[str, ...]
    stitches: Multiple
    chain: Multiple
    rows: tuple[Multiple, ...]
    noun: str
    left: int
    text: str
    source: str
    weak: bool
    note: str

    def written(self, repeats: int, *, counts: bool = True) -> str:
        """The rows for so many repeats as they would be printed, with or without the count at the end of each."""
        lines: list[str] = []
        row = 0
        for line in self.text.strip().splitlines():
            said = line.replace("{chain}", str(self.chain.at(repeats)))
            if _ROW.match(line):
                said += f" ({self.rows[row].at(repeats)} {self.noun})" if counts else ""
                row += 1
            lines.append(said)
        return "\n".join(lines)


@cache
def patterns() -> tuple[StitchPattern, ...]:
    """All stitch patterns. Raises TableError where the table is not in order."""
    top = tables.load("patterns")
    found = tuple(_pattern(entry) for entry in top.entries("pattern"))
    top.done()
    return found


def pattern(name: str) -> StitchPattern | None:
    """The stitch pattern of that key or name ("shell", "griddle stitch"), or None."""
    wanted = " ".join(name.lower().replace("-", " ").split())
    for known in patterns():
        names = {known.key, known.name, *known.also}
        if wanted in {" ".join(said.lower().replace("-", " ").split()) for said in names}:
            return known
    return None


def _pattern(entry: Entry) -> StitchPattern:
    text = entry.text("text")
    rows = entry.pairs("rows")
    written = sum(bool(_ROW.match(line)) for line in text.splitlines())
    if written != len(rows):
        raise entry.error(f"{written} rows are written, but {len(rows)} counts are given")
    if "{chain}" not in text:
        raise entry.error("the text has no {chain}")
    found = StitchPattern(
        entry.text("key"),
        entry.text("name"),
        entry.texts("also", ()),
        _multiple(entry, entry.pair("stitches")),
        _multiple(entry, entry.pair("chain")),
        tuple(_multiple(entry, pair) for pair in rows),
        entry.text("noun", "sts"),
        entry.whole("left", 0),
        text,
        entry.text("source"),
        entry.flag("weak"),
        entry.text("note", ""),
    )
    entry.done()
    return found


def _multiple(entry: Entry, pair: tuple[int, int]) -> Multiple:
    if pair[0] < 1:
        raise entry.error("a multiple is of 1 or more")
    return Multiple(*pair)
