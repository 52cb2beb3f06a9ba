"""What a plain pattern's lines are, for the search for reasons: each row as written with what it made, and where pieces begin.

Not a reading of its own: the tree tells what was written, the report what was made; a printed count goes before a worked one, since it is
what the designer counted on her hook.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any, Literal

from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Chain, Document, Join, Make, Mark, Node, Ring, Row, Section, Unknown
from loopwright.record import record
from loopwright.source import Span
from loopwright.terms import dialect

Start = Literal["ring", "chain", "tube", "cord", "none"]
LEAST_CHAIN = 5
LEAST_EQUAL = 3
MOST_ROWS = 20_000  # of a line that tells more nobody has worked so many


@record
class Line:
    """One row item of the text. `count`: stitches of its last row, as printed or else as made; `counts` of each row as made.

    `worked`: how many rows it stands for. `stitch`: the stitch it has most of, in the pattern's own terms. Where several equal rows
    stand one below the other, the first stands for all of them: `until` is the number of the last, `tail` the text of the others.
    `wide`: its count with the chains that stand over skipped stitches, where it has such. `tall_mm`: how tall each of its rows is.
    """

    item: int
    row: Row
    text: str
    section: Section | None
    count: int | None
    counts: tuple[int | None, ...]
    worked: int
    start: Start
    stitch: str | None = None
    until: int | None = None
    tail: Span | None = None
    wide: int | None = None
    tall_mm: tuple[float, ...] = ()

    @property
    def span(self) -> Span:
        """Where it stands."""
        return self.row.span

    @property
    def first(self) -> int | None:
        """The number of its label."""
        return self.row.label.first.at(0) if self.row.label and self.row.label.first else None

    @property
    def last(self) -> int | None:
        """The last number of its label's range."""
        return self.until or (self.row.label.last.at(0) if self.row.label and self.row.label.last else None)

    @property
    def in_rounds(self) -> bool:
        """Whether its label says rounds."""
        if self.row.label and self.row.label.first and self.row.label.kind != "none":
            return self.row.label.kind == "rnd"
        return bool(re.search(r"\b(?:around|rnds?|rounds?)\b", self.text, re.IGNORECASE))

    @property
    def printed(self) -> int | None:
        """Its printed count."""
        return next((c.n.at(0) for c in self.row.printed if c.scope == "row"), None)

    def even_after(self, before: Line | None) -> bool:
        """Whether its rows all keep the count of the row before; printed counts go before made ones."""
        if before is None:
            return True
        if self.printed is not None and before.printed is not None:
            return self.printed == before.printed
        return self.count is not None and {*self.counts, self.count, before.count} == {self.count}

    @property
    def body(self) -> tuple[Node, ...]:
        """Its instructions."""
        return self.row.body


_ASIDE = re.compile(r"\s*[(\[][^()\[\]]*[)\]]")  # "Back and front (both alike)"


def lines_of(document: Document, report: Report, rows_mm: Mapping[int, Sequence[float]], row_mm: float) -> tuple[Line, ...]:
    """The rows of the text in order, with what they made in the first size.

    `rows_mm`: how tall worked rows are, by the item that asks for them; `row_mm`: that of all others.
    """
    made: dict[int, list[RowReport]] = {}
    for r in report.rows:
        made.setdefault(r.item, []).append(r)
    found: list[Line] = []
    section: Section | None = None
    for i, item in enumerate(document.items):
        if isinstance(item, Section):
            section = replace(item, title=_ASIDE.sub("", item.title).strip() or item.title)
        elif isinstance(item, Row):
            text = document.text[item.span.start : item.span.end]
            rows = made.get(i, [])
            made_counts = tuple(r.counts[0] for r in rows)
            stitch = _stitch(rows, document.terms)
            wide = rows[-1].with_chains[0] if rows and rows[-1].with_chains else None
            many = _rows(item, rows)
            tall = tuple(h for h in rows_mm.get(i, ()) if h > 0)
            if len(tall) != many and item.label is not None:
                tall = (sum(tall) / len(tall) if tall else row_mm,) * (many if many <= MOST_ROWS else 0)
            line = Line(i, item, text, section, _count(item, rows), made_counts, many, _start(item, text), stitch, wide=wide, tall_mm=tall)
            found.append(line)
    return tuple(_gathered(found))


def _stitch(rows: list[RowReport], terms: str) -> str | None:
    """The stitch that the last of the rows has most of, as the pattern's terms call it."""
    which = dialect(terms)
    made = {k: n[0] or 0 for k, n in rows[-1].made.items()} if rows else {}
    plain = [k for k in made if k in which.terms and k not in ("ch", "sl st")]
    return which.term(max(plain, key=lambda k: made[k])).short if plain else None


def _gathered(lines: list[Line]) -> Iterator[Line]:
    """Equal single rows one below the other as one line that stands for all of them."""
    at = 0
    while at < len(lines):
        end = at + 1
        while end < len(lines) and _follows(lines[end - 1], lines[end]):
            end += 1
        if end - at < LEAST_EQUAL:
            yield lines[at]
            at += 1
            continue
        first, last = lines[at], lines[end - 1]
        counts = tuple(c for x in lines[at:end] for c in x.counts)
        tall = tuple(h for x in lines[at:end] for h in x.tall_mm)
        yield replace(first, counts=counts, worked=end - at, until=last.first, tail=Span(first.span.end, last.span.end), tall_mm=tall)
        at = end


def _follows(line: Line, after: Line) -> bool:
    """Whether a row is told in the words of the one before, with the next number."""
    if line.start != "none" or line.first is None or after.first != line.first + 1 or line.worked != 1 or after.worked != 1:
        return False
    return line.section is after.section and line.text.partition(":")[2].strip() == after.text.partition(":")[2].strip() != ""


def _count(row: Row, rows: list[RowReport]) -> int | None:
    for c in row.printed:
        if c.scope == "row" and c.n.at(0) is not None:
            return c.n.at(0)
    return rows[-1].counts[0] if rows else None


def _rows(row: Row, rows: list[RowReport]) -> int:
    label = row.label
    if label and label.first and label.last and label.first.at(0) is not None and label.last.at(0) is not None:
        return (label.last.at(0) or 0) - (label.first.at(0) or 0) + 1
    return max(1, len(rows))


def _start(row: Row, text: str) -> Start:
    """What kind of beginning a row is, if it is one."""
    chains = [n for n in row.body if isinstance(n, Chain)]
    longest = max((c.n.at(0) or 0 for c in chains), default=0)
    before = row.body[: next((i for i, n in enumerate(row.body) if isinstance(n, Ring)), 0)]
    if any(isinstance(n, Ring) for n in row.body) and all(isinstance(n, (Chain, Mark, Unknown)) for n in before):
        return "tube" if longest > 3 * LEAST_CHAIN else "ring"
    if any(isinstance(n, Make) and n.place and n.place.thing.kind == "ring" for n in row.body):
        return "ring"
    if longest < LEAST_CHAIN or not isinstance(_first_act(row), Chain):
        return "none"
    if any(isinstance(n, Make) and n.kind == "sl st" for n in walk(row.body)) and row.label is None:
        return "cord"
    others = [n for n in row.body if not isinstance(n, (Chain, Mark, Unknown, Join))]
    return "chain" if not others or "from hook" in text.lower() else "none"


def _first_act(row: Row) -> Node | None:
    return next((n for n in row.body if not isinstance(n, (Mark, Unknown))), None)


def walk(node: Any) -> Iterator[Any]:
    """Every node below, itself too."""
    if isinstance(node, tuple):
        for n in node:
            yield from walk(n)
    elif is_dataclass(node) and not isinstance(node, Span):
        yield node
        for f in fields(node):
            yield from walk(getattr(node, f.name))
