"""Which stitches a row is made of, read off its words: enough for how tall it is, before it has been worked.

Not a reading of its own: only the proportions of kinds are taken, and where a row goes by other rows, theirs.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.model.tree import (
    AtEnds,
    Chain,
    Document,
    EdgeRun,
    Either,
    Evenly,
    EveryKth,
    Filet,
    Group,
    InTurn,
    Make,
    Node,
    PatternRun,
    Place,
    Repeat,
    Row,
    RowOrder,
    Section,
    Spread,
)
from loopwright.record import record

DEEP = 40  # special stitches that name each other end here
MANY = 24.0  # what "each st around" and "across" stand for beside stitches that are told one by one
_PLAIN = re.compile(r"^(?:fp|bp|fl|bl)(?=[a-z])")
Kinds = Mapping[str, float]
Nodes = tuple[Node, ...]


def kinds_of_rows(document: Document) -> dict[int, tuple[Kinds, ...]]:
    """By the item of a row: its stitches by kind (US keys), as many sets of them as rows it goes by in turn ("Rep Rows 2 and 3" has two).

    Rows of which the words do not tell any stitch are left out.
    """
    found: dict[int, tuple[Kinds, ...]] = {}
    made = {name: s.nodes for s in document.specials for name in (s.name, s.abbreviation) if name and s.nodes}
    by_number: dict[int, Kinds] = {}
    so_far: list[Kinds] = []
    for at, item in enumerate(document.items):
        if isinstance(item, Section):
            by_number = {}
        if not isinstance(item, Row):
            continue
        told = _of_row(item, by_number, so_far, made)
        if not told:
            continue
        found[at] = told
        first = item.label.first.at(0) if item.label is not None and item.label.first is not None else None
        for i, kinds in enumerate(told):
            so_far.append(kinds)
            if first is not None:
                by_number[first + i] = kinds
    return found


def _of_row(row: Row, by_number: Mapping[int, Kinds], so_far: Sequence[Kinds], made: Mapping[str, Nodes]) -> tuple[Kinds, ...]:
    before = so_far[-1] if so_far else {}
    if row.order is not None:
        told = _of_order(row.order, by_number, so_far)
        if told:
            return told
    counted: dict[str, float] = {}
    _Count(before, made, counted).add(row.body, 1.0)
    kinds = _named(counted, before)
    return (kinds,) if any(k != "ch" for k in kinds) else ()


def _of_order(order: RowOrder, by_number: Mapping[int, Kinds], so_far: Sequence[Kinds]) -> tuple[Kinds, ...]:
    """The rows that a row goes by, in turn."""
    if order.rows and order.section is None:
        return tuple(by_number[n] for n in order.rows if n in by_number)
    if order.last_n:
        return tuple(so_far[-order.last_n :])
    if order.what == "even" and order.kind is None and so_far:
        return ({_PLAIN.sub("", k): n for k, n in so_far[-1].items()},)
    if order.kind is not None and order.what in ("even", "continue"):
        return ({order.kind: 1.0},)
    return tuple(so_far[-1:]) if order.what in ("even", "continue", "repeat") else ()


def _named(counted: Mapping[str, float], before: Kinds) -> dict[str, float]:
    """The kinds with increases and decreases called by what else the row, or else the row before it, is made of."""
    known = {k: n for k, n in counted.items() if k not in ("inc", "dec")}
    unnamed = sum(n for k, n in counted.items() if k in ("inc", "dec"))
    if known.keys() - {"ch", "sl st"}:
        known.pop("sl st", None)  # joins and moves
    solid = [k for k in known if k != "ch"] or [k for k in before if k != "ch"]
    if unnamed and solid:
        main = max(solid, key=lambda k: known.get(k, before.get(k, 0.0)))
        known[main] = known.get(main, 0.0) + unnamed
    return known


@record
class _Count:
    """Counts stitches by kind. `before`: the row before; `made`: what special stitches are made of, by name."""

    before: Kinds
    made: Mapping[str, Nodes]
    counted: dict[str, float]

    def add(self, nodes: Nodes, times: float, deep: int = 0) -> None:
        """Adds the stitches of nodes, each so many times."""
        for node in nodes if deep < DEEP else ():
            if isinstance(node, Make):
                self._make(node, times, deep)
            elif isinstance(node, Chain):
                self._one("ch", times * (node.n.at(0) or 1) if node.counts == "unsaid" else 0.0)
            elif isinstance(node, Group):
                self.add(node.nodes, times * _places(node.place), deep + 1)
            elif isinstance(node, Repeat):
                self.add(node.nodes, times * _times(node), deep + 1)
                self.add(node.ending, times, deep + 1)
            elif isinstance(node, Either) and node.readings:
                self.add(node.readings[0][1], times, deep + 1)
            else:
                self._other(node, times, deep)

    def _one(self, kind: str, many: float) -> None:
        self.counted[kind] = self.counted.get(kind, 0.0) + many

    def _make(self, node: Make, times: float, deep: int) -> None:
        many = times * (node.n.at(0) or 1) * _places(node.place)
        if node.kind in self.made:
            self.add(self.made[node.kind], many, deep + 1)
        else:
            self._one(node.kind, many)

    def _other(self, node: Node, times: float, deep: int) -> None:
        if isinstance(node, (Evenly, EveryKth, AtEnds, EdgeRun, Spread)):
            if node.kind is not None:
                self._one(node.kind, times * MANY)
            elif not self.counted:
                self.counted.update({k: n for k, n in self.before.items() if k != "ch"})
        elif isinstance(node, InTurn):
            self.add(node.parts, times, deep + 1)
        elif isinstance(node, PatternRun):
            self.add(node.parts or self.made.get(node.name or "", ()), times, deep + 1)
        elif isinstance(node, Filet):
            self._one("dc", times * (node.n.at(0) or 1) * (3 if node.filled else 1))


def _places(place: Place | None) -> float:
    if place is None:
        return 1.0
    if place.quant in ("each", "every") and (place.n is None or place.n.at(0) is None):
        return MANY
    return float((place.n.at(0) if place.n is not None else None) or 1)


def _times(repeat: Repeat) -> float:
    told = repeat.times.at(0) if repeat.times is not None else None
    if repeat.mode == "once":
        return 1.0
    return MANY if told is None else float(told + (1 if repeat.mode in ("more", "star-times") else 0))
