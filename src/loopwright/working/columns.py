"""One worked row as columns of its own, from which the fabric is laid down: once for each row that is worked the same.

Parents are counted from the first stitch of the row below, or of the row itself; so the same columns serve wherever the row
stands, and a blanket of equal rows is laid down by copying.
"""

from __future__ import annotations

from array import array
from dataclasses import dataclass, field

from loopwright.record import record
from loopwright.working.lanes import mask_of, shifted

NO_PARENT, BELOW, OWN = 0, 1, 2
NO_CHAIN = -(10**9)  # no turning chain: chains of a foundation are counted back from the row's first stitch


@record
class Below:
    """The row that is worked into.

    `ids`: its items as the hook meets them, counted from its first stitch; in a line (`step`
    1 or -1 from `first`) where `step` is not 0. `turning`: the top of a turning chain that is no item, NO_CHAIN for none;
    below 0 it is of the foundation.
    """

    items: bytes
    first: int
    step: int
    ids: array[int] | None
    turning: int
    foundation: bool
    length: int
    _other: list[Below] = field(default_factory=list, compare=False, repr=False)

    def flipped(self) -> Below:
        """The row from its other end."""
        if not self._other:
            n, ids = len(self.items), self.ids[::-1] if self.ids is not None else None
            first = self.first + self.step * (n - 1)
            self._other.append(Below(self.items[::-1], first, -self.step, ids, self.turning, self.foundation, self.length, [self]))
        return self._other[0]

    def at(self, index: int) -> int:
        """The stitch at an item."""
        return self.ids[index] if self.ids is not None else self.first + self.step * index

    def key(self) -> tuple[object, ...]:
        """What columns of a row above depend on."""
        ids = self.ids.tobytes() if self.ids is not None else b""
        return self.items, self.first, self.step, ids, self.turning, self.foundation


@dataclass(slots=True)
class Columns:
    """A row's stitches, hidden ones among them. `refs`: per stitch NO_PARENT, BELOW or OWN, what `into` is counted from."""

    kind: bytearray = field(default_factory=bytearray)
    into: array[int] = field(default_factory=lambda: array("i"))
    many: array[int] = field(default_factory=lambda: array("h"))
    place: bytearray = field(default_factory=bytearray)
    role: bytearray = field(default_factory=bytearray)
    refs: bytearray = field(default_factory=bytearray)
    origin: array[int] = field(default_factory=lambda: array("i"))
    origin_end: array[int] = field(default_factory=lambda: array("i"))
    round: array[int] = field(default_factory=lambda: array("i"))
    inner: array[int] = field(default_factory=lambda: array("H"))
    ids: array[int] = field(default_factory=lambda: array("i"))
    extra: dict[int, tuple[int, ...]] = field(default_factory=dict)
    counts_as: dict[int, int] = field(default_factory=dict)
    deep: list[tuple[int, int]] = field(default_factory=list)
    edges: list[tuple[int, str]] = field(default_factory=list)
    borrowed: tuple[int, ...] = ()
    turning: int = NO_CHAIN
    in_line: bool = False
    below_mask: int = 0
    own_mask: int = 0
    faces: dict[bytes, Below] = field(default_factory=dict)
    reaches_down: bool = False  # some parents lie before the row below: chains of the foundation that count as its stitches

    def finish(self) -> None:
        """Works out what the copying needs, once."""
        self.below_mask = mask_of(bytes(self.refs).translate(_IS_BELOW))
        self.own_mask = mask_of(bytes(self.refs).translate(_IS_OWN)) if OWN in self.refs else 0
        if min(self.into, default=0) < 0:
            self.reaches_down = any(i < 0 for i, ref in zip(self.into, self.refs, strict=True) if ref)
        n = len(self.ids)
        first = self.ids[0] if n else 0
        self.in_line = first >= 0 and self.ids.tobytes() == shifted(array("i", range(n)), first).tobytes()

    def below(self, items: bytes) -> Below:
        """The row as the next one meets it when it is not turned."""
        found = self.faces.get(items)
        if found is None:
            first, step = (self.ids[0] if self.ids else 0, 1) if self.in_line else (0, 0)
            ids = None if self.in_line else self.ids
            found = self.faces[items] = Below(items, first, step, ids, self.turning, False, len(self.kind))
        return found


_IS_BELOW = bytes(int(i == BELOW) for i in range(256))
_IS_OWN = bytes(int(i == OWN) for i in range(256))
