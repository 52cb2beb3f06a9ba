"""A row taken apart into the columns that stand side by side in it, in the order of making."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field

from loopwright.drawing.chart.symbols import width
from loopwright.model.fabric import Fabric, FabricRow

LEAST = 14.5  # a stitch takes at least
GAP = 2.5  # between two symbols side by side
CHAIN_STEP = 13.0  # a chain in a short run, with its air
ARCH_STEP = 10.0  # a chain in a run that may bow
LOOP_STEP, LONG_LOOP = 6.0, 5  # a chain in a short loop over one place
LEFT_OUT = 16.0  # room for the line where stitches are left out
TAB = 24.0  # room for the number where a round starts
JOIN = 9.0  # room for the slip stitch that closes a round
LEG = 12.0  # between two legs of a decrease, at least
ARCH = 3  # so many chains may bow


@dataclass(slots=True)
class Column:
    """What stands in one place along a row.

    `stitches`: from the foot upwards. `what`: "stitch", "chain" (lies along the row), "stack" (chains that stand up), "slip" (a slip
    stitch on the way to where the next one stands), "join", "tab". `parents`: what it stands on, each with the place in it. `knob`:
    picots on top of it. `counts_as`: the stitch that chains of a foundation stand for.
    """

    what: str
    stitches: list[int]
    kind: str = ""
    place: str = "none"
    parents: tuple[int, ...] = ()
    wide: float = 0.0
    knob: list[int] = field(default_factory=list)
    turning: bool = False
    counts_as: str = ""


def columns(fabric: Fabric, row: FabricRow, *, tab: bool, left: Collection[int] = ()) -> list[Column]:
    """The columns of a row; `tab`: with room for its number in front; `left`: stitches that are left out."""
    found: list[Column] = [Column("tab", [], wide=TAB)] if tab else []
    stack: Column | None = None
    for s in range(row.start, row.end):
        role, kind = fabric.part_of(s), fabric.name(s)
        if role == "assumed":
            continue
        if kind == "ch" and role in ("stands", "turning"):
            if stack is None or stack.turning != (role == "turning"):
                stack = Column("stack", [], "ch", wide=9.0, turning=role == "turning")
                found.append(stack)
            stack.stitches.append(s)
        elif kind == "ch" and role == "counts":
            if stack is None or stack.turning:
                stack = Column("stack", [], "ch")
                found.append(stack)
            stack.stitches.append(s)
            stack.wide, stack.place, stack.parents = 15.5, fabric.where(s), fabric.parents(s)
            stack = None
        else:
            stack = None
            found.extend(_other(fabric, s, role, kind, found))
    _slips(fabric, found)
    _bow(found)
    return _without(found, left) if left else found


def _slips(fabric: Fabric, found: Sequence[Column]) -> None:
    """Slip stitches that carry the yarn to where the next stitch stands lie as dots below the row and take no room in it."""
    for column, after in zip(found, [*found[1:], None], strict=True):
        if column.kind != "sl st" or column.what != "stitch" or column.place == "row-end":
            continue
        climbs = after is not None and after.what == "stack" and bool(after.parents) and after.parents == column.parents
        if climbs or fabric.part_of(column.stitches[0]) == "move":
            column.what, column.wide = "slip", 0.0


def _without(found: list[Column], left: Collection[int]) -> list[Column]:
    """What is left in, with room for the line where something is not."""
    kept: list[Column] = []
    gap = False
    for column in found:
        if column.stitches and column.stitches[0] in left:
            gap = True
            continue
        if gap:
            column.wide += LEFT_OUT
            gap = False
        kept.append(column)
    return kept


def _other(fabric: Fabric, s: int, role: str, kind: str, found: list[Column]) -> list[Column]:
    if role == "picot" and found and found[-1].what in ("stitch", "stack", "chain"):
        found[-1].knob.append(s)
        found[-1].wide = max(found[-1].wide, knob_width(len(found[-1].knob)))
        return []
    if role == "join":
        return [Column("join", [s], kind, fabric.where(s), fabric.parents(s), JOIN)]
    if kind == "ch":
        return [Column("chain", [s], kind, wide=CHAIN_STEP)]
    parents = fabric.parents(s)
    legs = LEG * len(parents) if kind.endswith("tog") and len(parents) > 1 else 0.0
    return [Column("stitch", [s], kind, fabric.where(s), parents, max(width(kind) + GAP, LEAST if kind != "sl st" else 0.0, legs))]


def knob_width(chains: int) -> float:
    """How wide a picot of so many stitches is."""
    return 2 * knob_radius(chains) + 12.0


def knob_radius(chains: int) -> float:
    """Radius of the ring that a picot's chains lie on."""
    return max(5.0, chains * 10.0 / 6.28)


def _bow(found: list[Column]) -> None:
    """Chains in a long run stand closer: the run may bow."""
    i = 0
    while i < len(found):
        j = i
        while j < len(found) and found[j].what == "chain":
            j += 1
        if ARCH <= j - i < len(found):
            loop = i > 0 and j < len(found) and found[i - 1].parents == found[j].parents and found[j].parents
            step = LOOP_STEP if loop and j - i < LONG_LOOP else ARCH_STEP
            for column in found[i:j]:
                column.wide = max(step, column.wide - CHAIN_STEP + step) if not column.knob else column.wide
        i = max(j, i + 1)
