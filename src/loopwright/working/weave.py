"""The fabric of one size, laid down from the outcomes of its rows."""

from __future__ import annotations

from loopwright.model.fabric import PLACES, Fabric, FabricRow
from loopwright.working.kinds import CHAIN, name
from loopwright.working.search import Outcome
from loopwright.working.view import Slot, View

_PLACE = {p: i for i, p in enumerate(PLACES)}
_HOW = {"between": "space", "own-chain": "chain"}


class Weaver:
    """Appends rows to a fabric and keeps the ids of the row that is worked into."""

    def __init__(self) -> None:
        self.fabric = Fabric(colours=[""])
        self.ids: list[int] = []
        self.kinds: dict[int, int] = {}

    def kind(self, number: int) -> int:
        if number not in self.kinds:
            self.kinds[number] = len(self.fabric.kinds)
            self.fabric.kinds.append(name(number))
        return self.kinds[number]

    def assumed(self, items: bytes, origin: int) -> None:
        """Stitches that must have been there: no words made them."""
        f = self.fabric
        start = len(f)
        for number in items:
            f.kind.append(self.kind(number))
        count = len(items)
        f.row.extend([len(f.rows)] * count)
        f.into.extend([-1] * count)
        f.place.extend(bytes([_PLACE["none"]]) * count)
        f.colour.extend(bytes(count))
        f.origin.extend([origin] * count)
        f.rows.append(FabricRow(None, "", start, len(f), False, False, -1))
        self.ids = list(range(start, len(f)))

    def row(self, outcome: Outcome, below: View | None) -> None:
        """One worked row."""
        made = outcome.made
        if made is None:
            return
        step, f = outcome.step, self.fabric
        if below is not None and len(below.items) != len(self.ids):
            self.assumed(below.items, step.span.start)
        ids = self.ids[::-1] if outcome.flipped else self.ids
        if made.view.foundation and not made.out:
            self.assumed(made.view.items, step.span.start)
            return
        start, n = len(f), len(ids)
        for i, number in enumerate(made.out):
            f.kind.append(self.kind(number))
            slot = made.into[i] if i < len(made.into) else None
            self._into(start + i, slot, ids, n, number)
        count = len(made.out)
        f.row.extend([len(f.rows)] * count)
        f.colour.extend(bytes(count))
        f.origin.extend(made.origins)
        f.rows.append(FabricRow(step.section, step.label, start, len(f), made.joined, made.turned, step.item))
        self.ids = list(range(start, len(f)))
        if made.turned and made.in_rounds and (made.joined or step.kind == "rnd"):
            self.ids.reverse()

    def _into(self, stitch: int, slot: Slot | None, ids: list[int], n: int, number: int) -> None:
        f = self.fabric
        if slot is None or number == CHAIN or n == 0 or slot.start < 0:
            how = slot.how if slot is not None else "none"
            f.into.append(-1)
            f.place.append(_PLACE.get(_HOW.get(how, how), _PLACE["none"]))
            return
        f.into.append(ids[slot.start % n])
        f.place.append(_PLACE.get(_HOW.get(slot.how, slot.how), 0))
        if slot.end - slot.start > 1 and slot.how != "ring":
            f.extra[stitch] = tuple(ids[j % n] for j in range(slot.start + 1, min(slot.end, slot.start + 64)))
