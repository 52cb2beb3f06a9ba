"""The fabric of one size, laid down from the outcomes of its rows.

Rows that are worked the same on the same row below share their columns; laying such a row down is copying.
"""

from __future__ import annotations

from array import array
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from typing import Any

from loopwright.model.fabric import Fabric, FabricRow
from loopwright.model.tree import Group, Node, Repeat
from loopwright.working.builder import PLACE, ROLE, Builder
from loopwright.working.colours import Colours
from loopwright.working.columns import Below, Columns
from loopwright.working.edges import Edges
from loopwright.working.explanations import Outcome
from loopwright.working.kinds import CHAIN, name
from loopwright.working.lanes import add
from loopwright.working.motifs import Joins
from loopwright.working.rows import Made
from loopwright.working.steps import Step
from loopwright.working.view import View

_NOTHING = Below(b"", 0, 0, None, -1, False, 0)


class Weaver:
    """Appends rows to a fabric and knows the row that is worked into.

    `shared` may be given to the weavers of several sizes: they share the columns of equal rows.
    """

    def __init__(self, shared: dict[Any, Any] | None = None, colours: Colours | None = None, joins: Joins | None = None) -> None:
        self.joins = joins if joins is not None else Joins()
        self.told = colours if colours is not None else Colours()
        self.dyed: dict[int, tuple[Columns, list[tuple[int, str]]]] = {}
        self.fabric = Fabric()
        self.below = _NOTHING
        self.below_start = 0
        self.shared: dict[Any, Any] = shared if shared is not None else {}
        self.kinds = bytearray(256)
        self.known: set[int] = set()
        self.colour = 0
        self.piece = -1
        self.turned = False  # the view was turned already at the end of the row before
        self.side = True
        self.edges = Edges(self.fabric)

    # --- kinds ---------------------------------------------------------------------------------------------------

    def _know(self, numbers: bytes | set[int]) -> None:
        for number in set(numbers) - self.known:
            self.known.add(number)
            self.kinds[number] = len(self.fabric.kinds)
            self.fabric.kinds.append(name(number))

    # --- rows ----------------------------------------------------------------------------------------------------

    def assumed(self, items: bytes, outcome: Outcome) -> None:
        """Stitches that must have been there: no words made them."""
        self._know(items)
        self._new_piece()
        self._plain(items, ROLE["assumed"], outcome, "")
        self.below = Below(items, 0, 1, None, -1, False, len(items))

    def _new_piece(self) -> None:
        self.piece += 1
        self.turned = False
        self.side = True

    def _plain(self, items: bytes, role: int, outcome: Outcome, label: str) -> None:
        """Stitches worked into nothing, as a row of their own."""
        f, step, count = self.fabric, outcome.step, len(items)
        start = len(f)
        ends = _spans(step.body)
        origins = outcome.made.origins if outcome.made is not None else ()
        first = next((n.origin for n in (outcome.made.tape if outcome.made else ()) if n.origin in ends), origins[0] if origins else -1)
        chain = next((k for k in ends if ends[k] and k == _chain_start(step.body)), first)
        span = (chain, ends[chain]) if chain in ends else (step.span.start, step.span.end)
        self._again(outcome.step, span[0])
        for i in self.told.of_row(span[0]):
            if self.told.offsets[i] <= span[0]:
                self.colour = self._colour(self.told.names[i])
        f.kind += items.translate(bytes(self.kinds))
        f.row.extend(array("i", (len(f.rows),)) * count)
        f.into.extend(array("i", (-1,)) * count)
        f.many.extend(array("h", bytes(2 * count)))
        f.place += bytes((PLACE["none"],)) * count
        f.role += bytes((role,)) * count
        f.colour += bytes((self.colour,)) * count
        f.origin.extend(array("i", (span[0],)) * count)
        f.origin_end.extend(array("i", (span[1],)) * count)
        f.round.extend(array("i", bytes(4 * count)))
        f.inner.extend(array("H", bytes(2 * count)))
        f.rows.append(FabricRow(step.section, label, start, len(f), False, False, step.item, max(self.piece, 0), part=step.part))
        self.below_start = start

    def _start(self, base: View, outcome: Outcome) -> None:
        """A foundation chain or a ring."""
        self._new_piece()
        self._know({CHAIN})
        if not base.items:
            self.below = Below(b"", 0, 1, None, -1, False, 0)
            self.below_start = len(self.fabric)
            return
        self._plain(base.items, ROLE["edge"], outcome, "")
        n = len(base.items)
        self.below = Below(base.items, 0, 1, None, -1, False, n) if base.ring else Below(base.items, n - 1, -1, None, -1, True, n)

    def _again(self, step: Step, origin: int) -> bool:
        """A colour told where a row is asked for again: "with B, rep Row 2"; whether one is."""
        if step.span.start <= origin < step.span.end:
            return False
        told = self.told.between(step.span.start, step.span.end)
        for i in told:
            self.colour = self._colour(self.told.names[i])
        return bool(told)

    def _colour(self, word: str) -> int:
        f = self.fabric
        if word not in f.colours:
            if len(f.colours) >= 255:
                return 0
            f.colours.append(word)
        return f.colours.index(word)

    def row(self, outcome: Outcome, below: View | None) -> None:
        """One worked row."""
        made = outcome.made
        if made is None:
            return
        base = made.base
        if base is not None and (base.foundation or base.ring) and base != below:
            self._start(base, outcome)
        elif below is not None and below.items != self.below.items:
            self.assumed(below.items, outcome)
        if not made.out:
            return
        turned = outcome.flipped != self.turned if base is not None and not base.foundation else outcome.flipped
        facing = self.below.flipped() if outcome.flipped and not (base is not None and (base.foundation or base.ring)) else self.below
        if base is not None and not (base.foundation or base.ring) and base.items != facing.items:
            facing = self._free(base.items, outcome, turned)
        self.side = self.side != turned
        cols = self._columns(outcome, made, facing)
        start = len(self.fabric)
        self._lay(cols, start, outcome.step)
        self._fix(cols, start, turned)
        if self.joins.ends:
            self.joins.resolve(self.fabric, start, cols, cols.origin, max(self.piece, 0))
        step = outcome.step
        said = step.side is not None
        self.fabric.rows.append(FabricRow(
            step.section, step.label, start, len(self.fabric), made.joined, made.turned, step.item, max(self.piece, 0),
            self.side if not said else step.side == "RS", said, turned, tuple(start + b for b in cols.borrowed), step.part,
        ))
        self.below, self.below_start = cols.below(made.out), start
        self.turned = made.turned and made.in_rounds and (made.joined or step.kind == "rnd")
        if self.turned:
            self.below = self.below.flipped()

    def _free(self, items: bytes, outcome: Outcome, turned: bool) -> Below:
        """The stitches left free that a row is joined to."""
        ids = self.edges.free(max(self.piece, 0), len(items), turned)
        if len(ids) != len(items):
            self.assumed(items, outcome)
            return self.below
        return Below(items, 0, 0, array("i", [i - self.below_start for i in ids]), -1, False, self.below.length)

    def _columns(self, outcome: Outcome, made: Made, facing: Below) -> Columns:
        key = (id(made), facing.key())
        found = self.shared.get(key)
        if found is None or not self._same_kinds(found[2], made.out):
            self._know(made.out)
            self._know({CHAIN})
            self._know_hidden(made)
            step = outcome.step
            builder = Builder(made, facing, bytes(self.kinds), _ends(step.body, made), (step.span.start, step.span.end))
            found = self.shared[key] = (made, builder.build(), tuple(self.fabric.kinds))
        columns: Columns = found[1]
        return columns

    def _same_kinds(self, kinds: tuple[str, ...], out: bytes) -> bool:
        """Whether another weaver numbered the kinds the same: only then its columns are ours."""
        mine = self.fabric.kinds
        if kinds == tuple(mine[: len(kinds)]):
            return True
        if not mine:
            for kind in kinds:
                self._know({_code(kind)})
            return True
        return False

    def _know_hidden(self, made: Made) -> None:
        for note in made.tape:
            if note.what in ("move", "join", "picot", "close"):
                self._know({_code("sl st")})
            elif note.what == "half":
                self._know({_code(note.word)})

    # --- laying down ---------------------------------------------------------------------------------------------

    def _lay(self, cols: Columns, start: int, step: Step) -> None:
        f, count = self.fabric, len(cols.kind)
        into = self._parents(cols, start)
        f.kind += cols.kind
        f.row.extend(array("i", (len(f.rows),)) * count)
        f.into.extend(into)
        f.many.extend(cols.many)
        f.place += cols.place
        f.role += cols.role
        f.origin.extend(cols.origin)
        f.origin_end.extend(cols.origin_end)
        f.round.extend(cols.round)
        f.inner.extend(cols.inner)
        self._dye(cols, step)

    def _dye(self, cols: Columns, step: Step) -> None:
        """The colours of a row's stitches."""
        f, count, done = self.fabric, len(cols.kind), 0
        if self.told.offsets and count:
            again = self._again(step, cols.origin[-1])
            cuts = self._cuts(cols)
            whole = len({word for _, word in cuts}) < 2
            for at, word in cuts if not (again and whole) else ():
                f.colour += bytes((self.colour,)) * (at - done)
                done, self.colour = at, self._colour(word)
        f.colour += bytes((self.colour,)) * (count - done)

    def _cuts(self, cols: Columns) -> list[tuple[int, str]]:
        """Where in a row which colour begins: worked out once for equal rows of this text."""
        found = self.dyed.get(id(cols))
        if found is None:
            found = self.dyed[id(cols)] = (cols, self.told.cuts(cols.origin, self.told.of_row(cols.origin[-1])))
        return found[1]

    def _parents(self, cols: Columns, start: int) -> array[int]:
        if cols.reaches_down:
            base = (0, self.below_start, start)
            return array("i", [i + base[r] for i, r in zip(cols.into, cols.refs, strict=True)])
        into = add(cols.into, self.below_start, cols.below_mask)
        return add(into, start, cols.own_mask) if cols.own_mask else into

    def _fix(self, cols: Columns, start: int, turned: bool) -> None:
        """What cannot be copied: parents that do not stand in a line, rows further down, edges."""
        f, base = self.fabric, self.below_start
        for stitch, more in cols.extra.items():
            f.extra[start + stitch] = tuple(base + m for m in more)
        for stitch, kind in cols.counts_as.items():
            f.counts_as[start + stitch] = kind
        for stitch, depth in cols.deep:
            parent = f.into[start + stitch]
            for _ in range(depth):
                parent = f.into[parent] if parent >= 0 and f.into[parent] >= 0 else parent
            f.into[start + stitch] = parent
            f.many[start + stitch] = 0
        if cols.edges:
            self.edges.resolve(start, cols.edges, max(self.piece, 0), turned)

    def finish(self) -> Fabric:
        """The fabric, with the side of each row: as said, else by the turns, the first row of a piece on the right side."""
        rows = self.fabric.rows
        begin = 0
        while begin < len(rows):
            end = begin
            while end < len(rows) and rows[end].piece == rows[begin].piece:
                end += 1
            _sides(rows, begin, end)
            begin = end
        return self.fabric


def _sides(rows: list[FabricRow], begin: int, end: int) -> None:
    """Sides of a piece's rows: each turn changes the side; one said side settles the others up to the next said one."""
    said = [i for i in range(begin, end) if rows[i].side_said]
    if not said:
        return
    sides, side = [], True
    for i in range(begin, end):
        side = side != rows[i].turned_before
        sides.append(side)
    flip = sides[said[0] - begin] != rows[said[0]].right_side
    for i in range(begin, end):
        if rows[i].side_said:
            flip = sides[i - begin] != rows[i].right_side
        elif rows[i].right_side != (sides[i - begin] != flip):
            rows[i] = replace(rows[i], right_side=not rows[i].right_side)


def _code(kind: str) -> int:
    from loopwright.working.kinds import code

    return code(kind)


def _chain_start(body: tuple[Node, ...]) -> int:
    from loopwright.model.tree import Chain

    return next((n.span.start for n in body if isinstance(n, Chain)), -1)


def _ends(body: tuple[Node, ...], made: Made) -> dict[int, int]:
    """Where the words that start at an offset end; a chain told at the end of the row before among them."""
    return _spans(body)


@lru_cache(maxsize=512)
def _spans(body: tuple[Node, ...]) -> dict[int, int]:
    """{start: end} of the instructions themselves, not of the repeats and groups around them."""
    found: dict[int, int] = {}
    _collect(body, found)
    return found


def _collect(node: Any, found: dict[int, int]) -> None:
    if isinstance(node, tuple):
        for n in node:
            _collect(n, found)
    elif is_dataclass(node) and hasattr(node, "span"):
        span = node.span
        if span.end and not isinstance(node, (Repeat, Group)):
            found[span.start] = min(span.end, found.get(span.start, span.end))
        for f in fields(node):
            value = getattr(node, f.name)
            if isinstance(value, tuple) and type(node).__name__ != "Num":
                _collect(value, found)
