"""What the rows say about each blank: where it stands, how many rows come before it, what its number may not be.

Read off the tree without working it: counts are followed only where printed numbers and "inc 8 sts each rnd" tell them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, fields, is_dataclass
from fractions import Fraction
from functools import cache
from typing import Any, Literal

from loopwright.grading.fit import Linear, blank_of, count_of
from loopwright.model.tree import Chain, Document, Evenly, FitLine, Make, Num, Ring, Row, Section, Skip
from loopwright.record import record
from loopwright.source import Span

_BLANK = re.compile(r"\{([^{}\n]{1,60})\}")

NOTHING = Linear()

Role = Literal["last row", "times", "count"]


@record
class Stretch:
    """Rows that one item asks for: its index in the document, and how many they are, as a number or a sum over blanks."""

    item: int
    rows: Linear


@record
class Use:
    """The place where a blank tells how many rows there are, or the first place where it is a count.

    `before_in_section` and `before_in_piece`: rows worked before the ones it tells, as sums over other blanks; for a
    range "Rnds 4-{n}" they are such that they and the number together are all rows so far. `section_rows` and `piece_rows`: the same
    rows one item after the other, without what the range's number says again. `item`: index of the item; `per`: rows that each one of
    its number asks for ("Rep Rows 2 and 3 {n} times" has two).
    """

    role: Role
    span: Span
    section: str | None
    first: int = 1
    before_in_section: Linear = NOTHING
    before_in_piece: Linear = NOTHING
    item: int = -1
    per: int = 1
    section_rows: tuple[Stretch, ...] = ()
    piece_rows: tuple[Stretch, ...] = ()


@record
class Spanned:
    """An opening: chains and skipped stitches for each one of a blank's number, and those that are there besides."""

    chains: int = 0
    skipped: int = 0
    more_chains: int = 0
    more_skipped: int = 0


@dataclass(slots=True)
class Structure:
    """Uses by blank; the limits found (each sum must not be below zero); by how many stitches the rows of a range grow.

    `counted`: the items in which a blank is a count of stitches, not those that make nothing but a chain. `spanned`: by blank, how many
    chains and how many skipped stitches of its first row each one of its number stands for, and how many come to them whatever it is.
    """

    uses: dict[str, Use] = field(default_factory=dict)
    spans: dict[str, Span] = field(default_factory=dict)
    limits: list[tuple[Linear, str]] = field(default_factory=list)
    sections: list[str] = field(default_factory=list)
    grows: dict[str, int] = field(default_factory=dict)
    counted: dict[str, list[int]] = field(default_factory=dict)
    spanned: dict[str, Spanned] = field(default_factory=dict)

    def items(self) -> frozenset[int]:
        """All items whose rows or stitches a blank may stand for or stand on."""
        rows = {s.item for u in self.uses.values() for s in (*u.section_rows, *u.piece_rows)} | {u.item for u in self.uses.values()}
        return frozenset(rows).union(*self.counted.values()) - {-1}

    def free(self) -> frozenset[int]:
        """Items whose number of rows a blank tells."""
        return frozenset(u.item for u in self.uses.values() if u.role != "count")


_PLAIN = frozenset({type(None), bool, int, float, str, Span})


def blanks_in(node: Any) -> Iterator[Num]:
    """Every unfilled blank under a node, in the order of the text."""
    if isinstance(node, Num):
        if node.blank is not None and not node.values:
            yield node
    elif isinstance(node, tuple):
        for n in node:
            yield from blanks_in(n)
    else:
        for name in _names(node.__class__):
            part = getattr(node, name)
            if part.__class__ not in _PLAIN and part != ():
                yield from blanks_in(part)


@cache
def _names(kind: type) -> tuple[str, ...]:
    """The fields of a kind of node; none of a place in the text or a plain value."""
    return tuple(f.name for f in fields(kind)) if is_dataclass(kind) and kind is not Span else ()


@record
class _Before:
    """Rows so far: their number and the items that ask for them."""

    number: Linear = NOTHING
    stretches: tuple[Stretch, ...] = ()

    def plus(self, item: int, rows: Linear) -> _Before:
        return _Before(self.number.plus(rows), (*self.stretches, Stretch(item, rows))) if rows.terms else self


@record
class _Place:
    """Where a row stands: its item's index, the section, the rows before it in section and piece."""

    item: int
    section: str | None
    in_section: _Before
    in_piece: _Before

    def use(self, role: Role, row: Row, first: int = 1, per: int = 1) -> Use:
        back = count_of(1 - first)
        return Use(
            role, row.span, self.section, first, self.in_section.number.plus(back), self.in_piece.number.plus(back), self.item, per,
            self.in_section.stretches, self.in_piece.stretches,
        )


def structure(document: Document) -> Structure:
    """Walks the rows once."""
    found = Structure()
    section: str | None = None
    in_section, in_piece = _Before(), _Before()
    stitches: Linear | None = None
    for at, item in enumerate(document.items):
        if isinstance(item, Section):
            section, in_section = item.title, _Before()
            found.sections.append(item.title.lower())
            continue
        if not isinstance(item, Row):
            continue
        open_here = "{" in document.text[item.span.start : item.span.end]
        for num in blanks_in(item) if open_here else ():
            if num.blank is not None:
                found.spans.setdefault(num.blank, num.span if num.span.end else item.span)
        if _begins(item):
            in_piece = _Before()
        stitches = _limits(found, item, stitches)
        rows = _rows(found, item, _Place(at, section, in_section, in_piece))
        in_section, in_piece = in_section.plus(at, rows), in_piece.plus(at, rows)
        if open_here:
            _counts(found, item, at, section)
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


def _counts(found: Structure, row: Row, at: int, section: str | None) -> None:
    """Notes the blanks that are counts in a row, and what an opening in it makes of them."""
    solid = any(not isinstance(n, (Chain, Ring)) for n in row.body) or row.order is not None
    for num in blanks_in((row.body, row.printed)):
        if num.blank is None:
            continue
        found.uses.setdefault(num.blank, Use("count", row.span, section))
        if solid:
            found.counted.setdefault(num.blank, []).append(at)
            found.spanned.setdefault(num.blank, _spanned(row, num.blank))


def _spanned(row: Row, blank: str) -> Spanned:
    """Chains in the air over skipped stitches: how many of each the blank stands for, where the row has one chain and one skip."""
    chains = [n.n for n in row.body if isinstance(n, Chain) and n.counts == "unsaid"]
    skips = [n.n for n in row.body if isinstance(n, Skip)]
    chains = [n for n in chains if n.blank == blank] or chains[-1:]
    own = [(n[0].blank == blank, n[0].at(0) or 0) if n else (False, 0) for n in (chains, skips)]
    (chain, chain_more), (skip, skip_more) = own
    return Spanned(int(chain), int(skip), 0 if chain else chain_more, 0 if skip else skip_more)


def _rows(found: Structure, row: Row, place: _Place) -> Linear:
    """How many rows an item asks for; notes the blank that tells it."""
    label, order = row.label, row.order
    times = order.times if order is not None else None
    if label is not None and label.last is not None and label.last.blank and not label.last.values:
        first = (label.first.at(0) if label.first is not None else 1) or 1
        name = label.last.blank
        found.uses.setdefault(name, place.use("last row", row, first))
        return blank_of(name).plus(count_of(1 - first))
    if times is not None and times.blank and not times.values:
        per = len(order.rows) or order.last_n or 1 if order is not None and order.what == "repeat" else 1
        found.uses.setdefault(times.blank, place.use("times", row, per=per))
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
