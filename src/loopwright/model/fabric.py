"""The fabric: every stitch that was made, as columns (structure of arrays), in the order of making.

Not a drawing and not a shape: what was worked into what, in which row, of which colour, from which words.
"""

from __future__ import annotations

from array import array
from dataclasses import dataclass, field
from typing import Any

from loopwright.record import record

PLACES = (
    "top", "back", "front", "third", "front-post", "back-post", "space", "ring", "row-end", "underside", "chain", "none", "between",
)
"""Where in its parent a stitch was worked. "top": under both loops; "space": around the chains of a space (the parents are
those chains); "chain": into the chain itself; "underside": into the free side of a chain; "between": between its two parents;
"row-end": into the side of a stitch at the end of a row; "none": nothing below it (a chain in the air, a magic ring's chain)."""

ROLES = ("edge", "turning", "stands", "counts", "join", "move", "base", "picot", "assumed")
"""What a stitch is to its row. "edge": part of the row's top, the next row can be worked into it. "turning": a chain that
turns and is no stitch. "stands": a chain below the top of a start chain that counts as a stitch; "counts": its top chain, which
takes the stitch's place in the row. "join": the slip stitch that closes a round. "move": slip stitches that carry the yarn to a
new start. "base": a chain made in the row and worked back over. "picot": a knob on the edge, not worked into. "assumed":
a stitch that no words made but that must have been there."""


@record
class FabricRow:
    """A row of the fabric: its stitches are start … end - 1, in the order of making.

    `piece`: number of the piece it belongs to, from 0. `right_side`: the right side faces the maker; `side_said`: the words say
    so. `turned_before`: the work was turned between the row before and this one. `borrowed`: chains of the row before that
    count as stitches of this one (the chains skipped in a first row). `index`: of the row among the worked rows, -1 for none.
    """

    section: str | None
    label: str
    start: int
    end: int
    joined: bool
    turned: bool
    item: int
    piece: int = 0
    right_side: bool = True
    side_said: bool = False
    turned_before: bool = False
    borrowed: tuple[int, ...] = ()
    part: int = 0


@dataclass(slots=True)
class Fabric:
    """Stitches in the order of making; item i of every column belongs to stitch i.

    `kind`: index into `kinds`. `row`: index into `rows`. `into`: the first stitch it was worked into, -1 for none. `many`:
    how many more stitches it was worked into, next to the first one: ahead of it in the order of making (positive) or before
    it (negative); `extra` holds the parents that do not stand in a line, {stitch: all but the first}. `place`: index into
    PLACES. `role`: index into ROLES. `colour`: index into `colours` ("" where no colour was said). `origin` … `origin_end`:
    the characters of the text that made it. `round`: which round of the outermost repeat, from 1 (0: in none); `inner`: of the
    repeat within it. `counts_as`: {top chain of a start chain: index into `kinds` of the stitch it counts as}.
    `layout`: how many motifs stand across and down, where motifs are joined and a border goes around them all.
    `known`: what was measured of it, kept by those who measured it; nothing of it tells of colours or of where words stand.
    """

    kinds: list[str] = field(default_factory=list)
    colours: list[str] = field(default_factory=lambda: [""])
    kind: bytearray = field(default_factory=bytearray)
    row: array[int] = field(default_factory=lambda: array("i"))
    into: array[int] = field(default_factory=lambda: array("i"))
    many: array[int] = field(default_factory=lambda: array("h"))
    place: bytearray = field(default_factory=bytearray)
    role: bytearray = field(default_factory=bytearray)
    colour: bytearray = field(default_factory=bytearray)
    origin: array[int] = field(default_factory=lambda: array("i"))
    origin_end: array[int] = field(default_factory=lambda: array("i"))
    round: array[int] = field(default_factory=lambda: array("i"))
    inner: array[int] = field(default_factory=lambda: array("H"))
    extra: dict[int, tuple[int, ...]] = field(default_factory=dict)
    counts_as: dict[int, int] = field(default_factory=dict)
    rows: list[FabricRow] = field(default_factory=list)
    layout: tuple[int, int] | None = None
    known: dict[Any, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    def __len__(self) -> int:
        return len(self.kind)

    def parents(self, stitch: int) -> tuple[int, ...]:
        """The stitches it was worked into, in the order they were taken; empty for a chain in the air or a magic ring."""
        first = self.into[stitch]
        if first < 0:
            return ()
        more = self.extra.get(stitch)
        if more is not None:
            return (first, *more)
        many = self.many[stitch]
        return tuple(range(first, first + many + 1)) if many >= 0 else tuple(range(first, first + many - 1, -1))

    def name(self, stitch: int) -> str:
        """Its kind, a US abbreviation or a name of the pattern's own."""
        return self.kinds[self.kind[stitch]]

    def where(self, stitch: int) -> str:
        """Where in its parent it was worked: one of PLACES."""
        return PLACES[self.place[stitch]]

    def part_of(self, stitch: int) -> str:
        """What it is to its row: one of ROLES."""
        return ROLES[self.role[stitch]]

    def words(self, stitch: int) -> tuple[int, int]:
        """Start and end in the text of the words that made it."""
        return self.origin[stitch], self.origin_end[stitch]

    def counted(self, row: FabricRow) -> dict[str, int]:
        """Stitches of a row by kind as the trade counts them: without chains, joins and picots, start chains as what they count as."""
        found: dict[str, int] = {}
        for stitch in (*range(row.start, row.end), *row.borrowed):
            role = ROLES[self.role[stitch]]
            if role not in ("edge", "counts", "assumed"):
                continue
            stands = role == "counts" or stitch < row.start
            word = self.kinds[self.counts_as.get(stitch, self.kind[stitch]) if stands else self.kind[stitch]]
            if word != "ch":
                found[word] = found.get(word, 0) + 1
        return found
