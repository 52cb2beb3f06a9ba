"""How tall the rows of a design are, item by item: by their words before it is worked, by its fabric after that."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import field

from loopwright.grading.gauge.sizes import StitchSizes
from loopwright.grading.kinds import kinds_of_rows
from loopwright.grading.stitched import heights_of_rows, row_height_mm, row_length_mm, top_kinds
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document
from loopwright.record import record

CLOSE_MM = 1e-6


@record
class Heights:
    """Heights of rows and widths of their stitches in one size, mm, by the index of the item that asks for the rows.

    `cycles`: heights of an item's rows in turn; an item that is worked over and over goes through them again and again. `widths`: the
    mean width of the stitches of an item's rows. What is in neither is as the gauge's own stitch.
    """

    sizes: StitchSizes
    cycles: Mapping[int, tuple[float, ...]] = field(default_factory=dict)
    widths: Mapping[int, float] = field(default_factory=dict)

    def cycle(self, item: int) -> tuple[float, ...]:
        """Heights of an item's rows in turn, at least one, together above nought."""
        found = self.cycles.get(item, ())
        return found if sum(found) > 0 else (self.sizes.row_mm,)

    def tall_mm(self, item: int, rows: int) -> float:
        """The first so many rows of an item, together; a chain in the air has no height."""
        found = self.cycles.get(item) or (self.sizes.row_mm,)
        turns, rest = divmod(max(0, rows), len(found))
        return turns * sum(found) + sum(found[:rest])

    def width(self, items: Collection[int]) -> float:
        """The width of a stitch in the first of these items that is known, else of the gauge's stitch."""
        return next((self.widths[i] for i in items if i in self.widths), self.sizes.width_mm)

    def like(self, other: Heights, items: Collection[int]) -> bool:
        """Whether both say the same of the rows of these items."""
        same = all(_like(self.cycle(i), other.cycle(i)) for i in items)
        return same and all(abs(self.width((i,)) - other.width((i,))) < CLOSE_MM for i in items)


def _like(a: tuple[float, ...], b: tuple[float, ...]) -> bool:
    many = max(len(a), len(b))
    return all(abs(a[i % len(a)] - b[i % len(b)]) < CLOSE_MM for i in range(many))


def by_words(document: Document, sizes: StitchSizes) -> Heights:
    """What the words of the rows tell."""
    cycles: dict[int, tuple[float, ...]] = {}
    widths: dict[int, float] = {}
    for item, told in kinds_of_rows(document).items():
        cycles[item] = tuple(row_height_mm({k: n for k, n in kinds.items() if k != "ch"}, sizes) for kinds in told)
        widths[item] = _width(told[0], sizes)
    return Heights(sizes, cycles, widths)


def _width(kinds: Mapping[str, float], sizes: StitchSizes) -> float:
    return row_length_mm(kinds, sizes) / sum(kinds.values())


def by_fabric(fabric: Fabric, told: Heights, free: Collection[int]) -> Heights:
    """What the worked rows are, where they were worked; the words' heights for all others.

    `free`: items whose number of rows is a blank. Their rows are taken in turns where they are alike turn by turn, else by their mean.
    """
    widths = dict(told.widths)
    for row in fabric.rows if told.sizes.own else ():
        kinds = top_kinds(fabric, row)
        if any(k != "ch" for k in kinds):
            widths[row.item] = _width(kinds, told.sizes)
    cycles = dict(told.cycles)
    for item, found in rows_of_items(fabric, told.sizes).items():
        solid = [h for h in found if h > 0]
        if solid:
            cycles[item] = _in_turn(solid, told.cycle(item)) if item in free else tuple(solid)
        elif item not in free:
            cycles[item] = (0.0,)
    return Heights(told.sizes, cycles, widths)


def rows_of_items(fabric: Fabric, sizes: StitchSizes) -> dict[int, list[float]]:
    """Heights of the worked rows, mm, in order, by the index of the item that asks for them."""
    found: dict[int, list[float]] = {}
    for row, height in zip(fabric.rows, heights_of_rows(fabric, sizes), strict=True):
        found.setdefault(row.item, []).append(height)
    return found


def _in_turn(found: list[float], told: tuple[float, ...]) -> tuple[float, ...]:
    turn = len(told)
    if all(abs(h - found[i % turn]) < CLOSE_MM for i, h in enumerate(found)):
        return (*found[:turn], *told[len(found) :])
    return (sum(found) / len(found),)
