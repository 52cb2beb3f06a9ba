"""The fabric of one size, laid down from the outcomes of its rows.

Rows that are worked the same on the same row below share their columns; laying such a row down is copying.
"""

from __future__ import annotations

import re
from array import array
from dataclasses import replace
from typing import Any

from loopwright.kept import Kept, kept
from loopwright.model.fabric import Fabric, FabricRow
from loopwright.model.tree import Mark, Node
from loopwright.working.builder import PLACE, ROLE, Builder, into_tops
from loopwright.working.colours import Colours
from loopwright.working.columns import BELOW, NO_CHAIN, Below, Columns
from loopwright.working.deep import straight_down
from loopwright.working.edges import Edges, Way
from loopwright.working.explanations import Outcome
from loopwright.working.kinds import CHAIN, code, name
from loopwright.working.lanes import add
from loopwright.working.looked import Looked
from loopwright.working.motifs import Joins
from loopwright.working.placed import Placed, placed
from loopwright.working.rows import Made
from loopwright.working.seams import SEAM, bare
from loopwright.working.sides import facings
from loopwright.working.slots import HOW, Slots
from loopwright.working.spans import chain_start, spans
from loopwright.working.steps import Step
from loopwright.working.tally import SLIP
from loopwright.working.view import View

_FASTENED = re.compile(r"(?<!not )\b(?:fasten(?:ed|ing)? off|f\.?o\.?|(?:break|cut|end) (?:off|yarn|wool|thread))\b", re.IGNORECASE)
_NOTHING = Below(b"", 0, 0, None, NO_CHAIN, False, 0)


class Weaver:
    """Appends rows to a fabric and knows the row that is worked into.

    `shared` may be given to the weavers of several sizes: they share the columns of equal rows.
    """

    def __init__(
        self, shared: Kept[Any, Any] | None = None, colours: Colours | None = None, joins: Joins | None = None, looked: Looked | None = None,
    ) -> None:
        self.joins = joins if joins is not None else Joins()
        self.told = colours if colours is not None else Colours()
        self.placed: dict[tuple[int, int, bool], Placed] = {}
        self.fabric = Fabric()
        self.below = _NOTHING
        self.below_start = 0
        self.shared = shared if shared is not None else kept(None, "woven", 1000)
        self.kinds = bytearray(256)
        self.known: set[int] = set()
        self.colour = 0
        self.turned_to: dict[int, int] = {}  # rows of an item that are done, where its colours take turns
        self.piece = -1
        self.turned = False  # the view was turned already at the end of the row before
        self.side = True
        self.looked = looked if looked is not None else Looked("")
        self.told_to = 0  # where the words of the row before end
        self.told_at = -1  # and where they are told
        self.edges = Edges(self.fabric, self.looked)
        self.laid: dict[tuple[str | None, int], tuple[Below, int]] = {}  # rows by their numbers, for those worked into further up

    # --- kinds ---------------------------------------------------------------------------------------------------

    def _know(self, numbers: bytes) -> None:
        """Kinds are numbered as they come up in the fabric, whatever else was worked before it in the same run."""
        for number in sorted(set(numbers) - self.known, key=numbers.index):
            self.known.add(number)
            self.kinds[number] = len(self.fabric.kinds)
            self.fabric.kinds.append(name(number))

    # --- rows ----------------------------------------------------------------------------------------------------

    def begins(self, items: bytes, outcome: Outcome) -> None:
        """A row that needs so many stitches, of which nothing is told before it; one along row ends finds them in its piece."""
        if not self._along_row_ends(outcome):
            self.assumed(items, outcome)

    def _along_row_ends(self, outcome: Outcome) -> bool:
        return self.piece >= 0 and outcome.made is not None and HOW["row-end"] in Slots.of(outcome.made.into).how

    def assumed(self, items: bytes, outcome: Outcome) -> None:
        """Stitches that must have been there: no words made them."""
        self._know(items)
        if not self._along_row_ends(outcome):
            self._new_piece()
        self._plain(items, ROLE["assumed"], outcome, "")
        self.below = Below(items, 0, 1, None, NO_CHAIN, False, len(items))

    def around_motifs(self, items: bytes, outcome: Outcome, layout: tuple[int, int]) -> None:
        """The edge of motifs that are joined: one of them was worked, the others are like it."""
        self.fabric.layout = layout
        self.assumed(items, outcome)

    def _new_piece(self) -> None:
        self.piece += 1
        self.turned = False
        self.side = True

    def _plain(self, items: bytes, role: int, outcome: Outcome, label: str) -> None:
        """Stitches worked into nothing, as a row of their own."""
        f, step = self.fabric, outcome.step
        start = len(f)
        ends, at = spans(step.body), step.at
        origins = outcome.made.origins if outcome.made is not None else ()
        first = next((n.origin for n in (outcome.made.tape if outcome.made else ()) if n.origin in ends), origins[0] if origins else -1)
        chain = next((k for k in ends if ends[k] and k == chain_start(step.body)), first)
        span = (chain + at, ends[chain] + at) if chain in ends else (step.span.start, step.span.end)
        self._again(outcome.step, span[0])
        for i in self.told.of_row(span[0]):
            if self.told.offsets[i] <= span[0]:
                self.colour = self._colour(self.told.names[i])
        bare(f, items.translate(bytes(self.kinds)), role, self.colour, span)
        f.rows.append(FabricRow(step.section, label, start, len(f), False, False, step.item, max(self.piece, 0), self.side, part=step.part))
        self.below_start = start

    def _start(self, base: View, outcome: Outcome) -> None:
        """A foundation chain or a ring; or a chain that hangs on the stitch before it."""
        if self._is_cord(base, outcome):
            self.edges.cords.update((len(self.fabric.rows), len(self.fabric.rows) + 1))
        else:
            self._new_piece()
        self._know(bytes((CHAIN,)))
        if not base.items:
            self.below = Below(b"", 0, 1, None, NO_CHAIN, False, 0)
            self.below_start = len(self.fabric)
            return
        self._plain(base.items, ROLE["edge"], outcome, "")
        n = len(base.items)
        self.below = Below(base.items, 0, 1, None, NO_CHAIN, False, n) if base.ring else Below(base.items, n - 1, -1, None, NO_CHAIN, True, n)

    def _is_cord(self, base: View, outcome: Outcome) -> bool:
        """A chain with slip stitches back along it, made while the yarn still hangs on the piece: a tie."""
        made, step = outcome.made, outcome.step
        slips = made is not None and bool(made.out) and not made.out.strip(bytes((SLIP,)))
        return slips and base.foundation and self.piece >= 0 and step.number is None and not self._anew(step)

    def _anew(self, step: Step) -> bool:
        """Whether the yarn was fastened off before a row, or is joined in it."""
        between = self.looked.cut(self.told_to, step.span.start)
        return _FASTENED.search(between) is not None or any(isinstance(n, Mark) and n.what == "attach" for n in step.body)

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
        self._seam(outcome.step)
        base = made.base
        if base is not None and (base.foundation or base.ring) and base != below:
            self._start(base, outcome)
        elif below is not None and below.items != self.below.items:
            self.assumed(below.items, outcome)
        if not made.out:
            return
        fresh = base is not None and (base.foundation or base.ring)
        turned = outcome.flipped != self.turned if base is not None and not base.foundation else outcome.flipped
        facing, tops = self.below.flipped() if outcome.flipped and not fresh else self.below, "top"
        opening: tuple[int, ...] = ()
        if base is not None and not fresh and base.items != facing.items:
            facing, tops, opening = self._elsewhere(base.items, outcome, turned)
        cols, start = self._columns(outcome, made, facing), len(self.fabric)
        there = self._placed(cols, outcome.step)
        self._lay(cols, there, start, outcome.step)
        self._fix(cols, start)
        if base is None:
            self._evenly_over(cols, start)
        elif cols.edges:
            turned = self._along(outcome.step, cols, start, turned, tops, opening)
        joined = made.joined and not self.edges.closes(start)
        self.side = self.side != turned
        if self.joins.ends:
            self.joins.resolve(self.fabric, start, there, there.origin, max(self.piece, 0), self.looked)
        step, said = outcome.step, outcome.step.side is not None
        self.fabric.rows.append(FabricRow(
            step.section, step.label, start, len(self.fabric), joined, made.turned, step.item, max(self.piece, 0),
            self.side if not said else step.side == "RS", said, turned, tuple(start + b for b in cols.borrowed), step.part,
        ))
        self._done(step, made, cols.below(made.out), start)

    def _done(self, step: Step, made: Made, below: Below, start: int) -> None:
        """What the next row finds: the row that was laid, turned where its words say so."""
        self.told_to, self.told_at, self.below, self.below_start = step.span.end, step.at, below, start
        self.turned = made.turned and made.in_rounds and (made.joined or step.kind == "rnd")
        if self.turned:
            self.below = self.below.flipped()
        if step.number is not None:
            self.laid[step.section, step.number] = self.below, self.below_start

    def back_to(self, section: str | None, number: int) -> bool:
        """What comes next is worked into the row of that number; whether it is there."""
        self.below, self.below_start = self.laid.get((section, number), (self.below, self.below_start))
        return (section, number) in self.laid

    # --- along edges ---------------------------------------------------------------------------------------------

    def _turns(self, step: Step, turned: bool, *, tops_first: bool) -> bool:
        """Whether the work is turned before a row that goes along edges.

        Where it is worked into tops too, as they are met; else as its side is said. Yarn joined anew is joined on the right side,
        yarn that is not goes on round the corner (common practice, no source).
        """
        if tops_first:
            return turned
        last = self.edges.faces(max(self.piece, 0))
        if step.side is not None:
            return (step.side == "RS") != last
        return self._anew(step) and not last

    def _way(self, step: Step, turned: bool, tops: str = "top", opening: tuple[int, ...] = ()) -> Way:
        piece = max(self.piece, 0)
        return Way(piece, self.edges.faces(piece) != turned, self._anew(step), tops, opening, step.span.start)

    def _elsewhere(self, items: bytes, outcome: Outcome, turned: bool) -> tuple[Below, str, tuple[int, ...]]:
        """The stitches that a row is worked on that does not stand on the row before, what they are, those of an opening.

        The chains of the foundation, stitches left free; assumed ones where the piece has none.
        """
        step, many = outcome.step, len(items)
        if self._along_row_ends(outcome):
            ids = self.edges.underside(many, self._way(step, self._turns(step, turned, tops_first=False)))
            if ids:
                return Below(items, 0, 0, array("i", [i - self.below_start for i in ids]), NO_CHAIN, False, self.below.length), "underside", ()
        ids = self.edges.free(many, self._way(step, turned))
        if ids:
            return Below(items, 0, 0, array("i", [i - self.below_start for i in ids]), NO_CHAIN, False, self.below.length), "top", tuple(ids)
        self.assumed(items, outcome)
        return self.below, "top", ()

    def _along(self, step: Step, cols: Columns, start: int, turned: bool, tops: str, opening: tuple[int, ...]) -> bool:
        """Gives a row that goes along edges its parents there; whether the work was turned before it."""
        if tops == "underside":
            for i, ref in enumerate(cols.refs):
                if ref == BELOW:
                    self.fabric.place[start + i] = PLACE["underside"]
        turned = self._turns(step, turned, tops_first=tops == "top" and into_tops(cols))
        self.edges.resolve(start, cols.edges, self._way(step, turned, tops, opening))
        return turned

    def _evenly_over(self, cols: Columns, start: int) -> None:
        """A row of which only the number of stitches is known stands evenly on the row below."""
        f, below, many = self.fabric, self.below, len(cols.ids)
        for i, stitch in enumerate(cols.ids):
            if below.items and f.kinds[f.kind[start + stitch]] != "ch":
                f.into[start + stitch] = self.below_start + below.at(i * len(below.items) // many)
                f.place[start + stitch] = PLACE["top"]

    def _seam(self, step: Step) -> None:
        """A seam told before a row that closes the last row to the foundation: slip stitches through both."""
        f, rows, below = self.fabric, self.fabric.rows, self.below
        if not rows or self.told_to >= step.span.start:
            return
        self.looked.cut(max(0, self.told_to - 1), step.span.start)
        told = SEAM.search(self.looked.text, self.told_to, step.span.start)
        if told is None or below.foundation:
            return
        turned = rows[-1].turned
        top = [self.below_start + below.at(i) for i in range(len(below.items))]
        way = Way(rows[-1].piece, self.edges.faces(rows[-1].piece) != turned)
        under = self.edges.underside(len(top), way)[::-1]
        if not under:
            return
        self._know(bytes((SLIP,)))
        start = len(f)
        bare(f, bytes((self.kinds[SLIP],)) * len(top), ROLE["edge"], self.colour, told.span())
        for i, (over, chain) in enumerate(zip(top[::-1] if turned else top, under, strict=True), start):
            f.into[i], f.extra[i], f.place[i] = over, (chain,), PLACE["top"]
        self.side = self.side != turned
        self.edges.cords.add(len(rows))
        item = min(rows[-1].item + 1, step.item)  # the words of the seam stand between the rows'
        rows.append(FabricRow(rows[-1].section, "", start, len(f), False, False, item, rows[-1].piece, self.side, turned_before=turned))

    def _columns(self, outcome: Outcome, made: Made, facing: Below) -> Columns:
        step = outcome.step
        words, ends = (step.span.start - step.at, step.span.end - step.at), self._ends(step.body)
        key = (id(made), facing.key(), words, tuple(ends.items()))  # where words end may differ where all else is the same
        found = self.shared.get(key)
        kinds = found[3] if found is not None else bytes((*dict.fromkeys(made.out), CHAIN, *_hidden(made)))
        self._know(kinds)
        # Columns that another weaver built are ours only where it numbered the kinds the same.
        if found is None or found[2] != tuple(self.fabric.kinds[: len(found[2])]):
            builder = Builder(made, facing, bytes(self.kinds), ends, words)
            found = self.shared[key] = (made, builder.build(), tuple(self.fabric.kinds), kinds)
        return found[1]

    def _ends(self, body: tuple[Node, ...]) -> dict[int, int]:
        """Where the words of a row's instructions begin and end: looked up once for a body that many rows have."""
        if (found := self.shared.get(id(body))) is None:
            found = self.shared[id(body)] = spans(body), body  # it keeps its id while this is kept
        ends: dict[int, int] = found[0]
        return ends

    # --- laying down ---------------------------------------------------------------------------------------------

    def _placed(self, cols: Columns, step: Step) -> Placed:
        """The columns of a row with its place in the text. A chain told by the row before has its words where that is the same row."""
        key = id(cols), step.at, step.at == self.told_at
        found = self.placed.get(key)
        if found is None:
            words = step.span.start - step.at, step.span.end - step.at
            found = self.placed[key] = placed(cols, step.at, words, before=key[2])
        return found

    def _lay(self, cols: Columns, placed: Placed, start: int, step: Step) -> None:
        f, count = self.fabric, len(cols.kind)
        into = self._parents(cols, start)
        f.kind += cols.kind
        f.row.extend(array("i", (len(f.rows),)) * count)
        f.into.extend(into)
        f.many.extend(cols.many)
        f.place += cols.place
        f.role += cols.role
        f.origin.extend(placed.origin)
        f.origin_end.extend(placed.end)
        f.round.extend(cols.round)
        f.inner.extend(cols.inner)
        self._dye(placed, step)

    def _dye(self, placed: Placed, step: Step) -> None:
        """The colours of a row's stitches."""
        f, count, done = self.fabric, len(placed.origin), 0
        turns = self.told.turns_of(step.span.start) if self.told.turns else None
        if turns is not None:
            self.colour = self._colour(turns.of(self.turned_to.get(step.item, 0)))
            self.turned_to[step.item] = self.turned_to.get(step.item, 0) + 1
        elif self.told.offsets and count:
            again = self._again(step, placed.origin[-1])
            cuts = self._cuts(placed)
            whole = len({word for _, word in cuts}) < 2
            for at, word in cuts if not (again and whole) else ():
                f.colour += bytes((self.colour,)) * (at - done)
                done, self.colour = at, self._colour(word)
        f.colour += bytes((self.colour,)) * (count - done)

    def _cuts(self, placed: Placed) -> list[tuple[int, str]]:
        """Where in a row which colour begins: worked out once for equal rows of this text."""
        if placed.cuts is None:
            placed.cuts = self.told.cuts(placed.origin, self.told.of_row(placed.origin[-1]))
        return placed.cuts

    def _parents(self, cols: Columns, start: int) -> array[int]:
        if cols.reaches_down:
            base = (0, self.below_start, start)
            return array("i", [i + base[r] for i, r in zip(cols.into, cols.refs, strict=True)])
        into = add(cols.into, self.below_start, cols.below_mask)
        return add(into, start, cols.own_mask) if cols.own_mask else into

    def _fix(self, cols: Columns, start: int) -> None:
        """What cannot be copied: parents that do not stand in a line, rows further down."""
        f, base = self.fabric, self.below_start
        for stitch, more in cols.extra.items():
            f.extra[start + stitch] = tuple(base + m for m in more)
        for stitch, kind in cols.counts_as.items():
            f.counts_as[start + stitch] = kind
        for stitch, depth in cols.deep:
            f.into[start + stitch] = straight_down(f, f.into[start + stitch], depth)
            f.many[start + stitch] = 0

    def finish(self) -> Fabric:
        """The fabric, with the side of each row: as said, else by the turns, the first row of a piece on the right side."""
        rows = self.fabric.rows
        begin = 0
        while begin < len(rows):
            end = begin
            while end < len(rows) and rows[end].piece == rows[begin].piece:
                end += 1
            for i, side in enumerate(facings(rows[begin:end]), begin):
                if rows[i].right_side != side:
                    rows[i] = replace(rows[i], right_side=side)
            begin = end
        return self.fabric


def _hidden(made: Made) -> list[int]:
    """Kinds that stand in the fabric and not among what the row counts."""
    joins = (SLIP if n.what in ("move", "join", "picot", "close") else code(n.word) if n.what == "half" else None for n in made.tape)
    return [number for number in joins if number is not None]
