"""The fabric: every stitch that was made, as columns (structure of arrays), in the order of making.

Not a drawing and not a shape: what was worked into what, in which row, of which colour, from which words.
"""

from __future__ import annotations

from array import array
from dataclasses import dataclass, field


@dataclass(slots=True)
class Fabric:
    """Stitches in the order of making; item i of every column belongs to stitch i.

    `kind`: index into `kinds`. `row`: index into `rows`. `into`: stitch it was worked into, -1 for none (ring, chain in
    the air). `extra`: {stitch: further stitches it was worked into} for decreases and clusters, and for a chain space
    {stitch: the chains under it}. `place`: index into PLACES. `colour`: index into `colours`. `origin`: offset in the
    text of the instruction that made it. `right_side`: per row.
    """

    kinds: list[str] = field(default_factory=list)
    colours: list[str] = field(default_factory=list)
    kind: array[int] = field(default_factory=lambda: array("H"))
    row: array[int] = field(default_factory=lambda: array("i"))
    into: array[int] = field(default_factory=lambda: array("i"))
    place: bytearray = field(default_factory=bytearray)
    colour: bytearray = field(default_factory=bytearray)
    origin: array[int] = field(default_factory=lambda: array("i"))
    extra: dict[int, tuple[int, ...]] = field(default_factory=dict)
    rows: list[FabricRow] = field(default_factory=list)

    def __len__(self) -> int:
        return len(self.kind)


@dataclass(frozen=True, slots=True)
class FabricRow:
    """A row of the fabric: its stitches are start … end - 1."""

    section: str | None
    label: str
    start: int
    end: int
    joined: bool
    turned: bool
    item: int


PLACES = ("top", "back", "front", "third", "front-post", "back-post", "space", "ring", "row-end", "underside", "chain", "none")
