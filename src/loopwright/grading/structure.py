"""What the rows say about each blank: where it stands, how many rows come before it, what its number may not be.

Read off the tree without working it: counts are followed only where printed numbers and "inc 8 sts each rnd" tell them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, fields, is_dataclass
from fractions import Fraction
from typing import Any, Literal

from loopwright.grading.fit import Linear, blank_of, count_of
from loopwright.model.tree import Chain, Document, Evenly, FitLine, Make, Num, Ring, Row, Section
from loopwright.source import Span

_BLANK = re.compile(r"\{([^{}\n]{1,60})\}")

NOTHING = Linear()

Role = Literal["last row", "times", "count"]


@dataclass(frozen=True, slots=True)
class Use:
    """The place where a blank tells how many rows there are, or the first place where it is a count.

    `before_in_section` and `before_in_piece`: rows worked before the ones it tells, as sums over other blanks; for a
    range "Rnds 4-{n}" they are such that they and the number together are all rows so far.
    """

    role: Role
    span: Span
    section: str | None
    first: int = 1
    before_in_section: Linear = NOTHING
    before_in_piece: Linear = NOTHING


@dataclass(slots=True)
class Structure:
    """Uses by blank; the limits found (each sum must not be below zero); by how many stitches the rows of a range grow."""

    uses: dict[str, Use] = field(default_factory=dict)
    spans: dict[str, Span] = field(default_factory=dict)
    limits: list[tuple[Linear, str]] = field(default_factory=list)
    sections: list[str] = field(default_factory=list)
    grows: dict[str, int] = field(default_factory=dict)


def blanks_in(node: Any) -> Iterator[Num]:
    """Every unfilled blank under a node, in the order of the text."""
    if isinstance(node, Num):
        if node.blank is not None and not node.values:
            yield node
    elif isinstance(node, tuple):
        for n in node:
            yield from blanks_in(n)
    elif is_dataclass(node) and not isinstance(node, (type, Span)):
        for f in fields(node):
            yield from blanks_in(getattr(node, f.name))


def structure(document: Document) -> Structure:
    """Walks the rows once."""
    found = Structure()
    section: str | None = None
    in_section, in_piece = Linear(), Linear()
    stitches: Linear | None = None
    for item in document.items:
        if isinstance(item, Section):
            section, in_section = item.title, Linear()
            found.sections.append(item.title.lower())
            continue
        if not isinstance(item, Row):
            continue
        for num in blanks_in(item):
            if num.blank is not None:
                found.spans.setdefault(num.blank, num.span if num.span.end else item.span)
        if _begins(item):
            in_piece = Linear()
        stitches = _limits(found, item, stitches)
        rows = _rows(found, item, section, in_section, in_piece)
        in_section, in_piece = in_section.plus(rows), in_piece.plus(rows)
        for num in blanks_in((item.body, item.printed)):
            if num.blank is not None:
                found.uses.setdefault(num.blank, Use("count", item.span, section))
    _in_text(document, found)
    return found


def _in_text(document: Document, found: Structure) -> None:
    """Blanks that stand in the text where the reader made no number of them: they are in use all the same."""
    fits = [i.span for i in document.items if isinstance(i, FitLine)]
    for m in _BLANK.finditer(document.text):
        if not any(f.start <= m.start() < f.end for f in fits):
            found.spans.setdefault(" ".join(m[1].split()), Span(*m.span()))


def _begins(row: Row) -> bool:
    """A row that begins a piece: into a ring."""
    for node in row.body:
        if isinstance(node, Ring):
            return True
        if isinstance(node, Make) and node.place is not None and node.place.thing.kind == "ring":
            return True
    return False


def _rows(found: Structure, row: Row, section: str | None, in_section: Linear, in_piece: Linear) -> Linear:
    """How many rows an item asks for; notes the blank that tells it."""
    label, order = row.label, row.order
    times = order.times if order is not None else None
    if label is not None and label.last is not None and label.last.blank and not label.last.values:
        first = (label.first.at(0) if label.first is not None else 1) or 1
        name = label.last.blank
        back = count_of(1 - first)
        found.uses.setdefault(name, Use("last row", row.span, section, first, in_section.plus(back), in_piece.plus(back)))
        return blank_of(name).plus(back)
    if times is not None and times.blank and not times.values:
        per = len(order.rows) or order.last_n or 1 if order is not None and order.what == "repeat" else 1
        found.uses.setdefault(times.blank, Use("times", row.span, section, 1, in_section, in_piece))
        return blank_of(times.blank).times(Fraction(per))
    if label is not None and label.first is not None:
        start, end = label.first.at(0) or 0, label.last.at(0) if label.last is not None else None
        return count_of(1 + max(0, (end or start) - start))
    if order is not None and times is not None:
        return count_of((times.at(0) or 0) * (len(order.rows) or 1))
    if label is not None:
        return count_of(label.how_many.at(0) or 1)
    return count_of(1) if any(not isinstance(n, (Chain, Ring)) for n in row.body) and row.printed else Linear()


def _limits(found: Structure, row: Row, before: Linear | None) -> Linear | None:
    """Follows the count through a row; "increasing evenly to {n}" asks for no fewer than there are, and no more than twice as many."""
    for node in row.body:
        if isinstance(node, Evenly) and node.to is not None and node.to.blank and not node.to.values and before is not None:
            after = blank_of(node.to.blank)
            more, fewer = (after, before) if node.op == "inc" else (before, after)
            word = "fewer" if node.op == "inc" else "more"
            found.limits.append((more.plus(fewer, Fraction(-1)), f"{{{node.to.blank}}} would be {word} than the stitches before it"))
            found.limits.append((fewer.times(Fraction(2)).plus(more, Fraction(-1)), "one row can at most double or halve the stitches"))
    order, label = row.order, row.label
    if order is not None and order.what == "continue" and order.delta is not None and before is not None and label is not None:
        first, last, delta = label.first, label.last, order.delta.at(0)
        if first is not None and first.values and last is not None and delta is not None:
            if last.blank:
                found.grows[last.blank] = delta
            end = blank_of(last.blank) if last.blank and not last.values else count_of(last.at(0) or 0)
            before = before.plus(end, Fraction(delta)).plus(count_of(1 - (first.at(0) or 0)), Fraction(delta))
            return before if not row.printed else _printed(row, before)
    return _printed(row, before if order is not None and order.what in ("even", "repeat") else None)


def _printed(row: Row, otherwise: Linear | None) -> Linear | None:
    for count in row.printed:
        if count.scope == "row":
            if count.n.blank and not count.n.values:
                return blank_of(count.n.blank)
            if len(count.n.values) == 1 and count.n.values[0] is not None:
                return count_of(count.n.values[0])
    return otherwise
