"""Lengths of worked rows by the sizes of their stitches: how tall a row is, how long its top, how far around an opening.

The one place for these formulas: targets are reckoned and fabric is measured with them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from loopwright.grading.gauge.sizes import StitchSizes, plain_kind
from loopwright.model.fabric import ROLES, Fabric, FabricRow

_EDGE, _COUNTS, _ASSUMED, _BASE = (ROLES.index(r) for r in ("edge", "counts", "assumed", "base"))
_JOIN, _PICOT = ROLES.index("join"), ROLES.index("picot")


def row_height_mm(kinds: Mapping[str, float], sizes: StitchSizes, skipped: float = 0) -> float:
    """How much a row adds: the mean of its stitches' heights; 0 for a chain in the air.

    `kinds`: stitches along its top by kind (US keys), chains ("ch") among them; `skipped`: stitches below that it leaves. Chains add
    nothing, but loops longer than what they span stand up: c chains over s stitches as the two legs of a triangle, half of its height
    taken, since the next row is worked around the loop (derived from plane geometry; the half is common practice, no source).
    """
    solid = {k: n for k, n in kinds.items() if k != "ch"}
    many = sum(solid.values())
    if not many:
        return 0.0
    if set(map(plain_kind, solid)) == {"sl st"}:
        return sizes.height("sl st")
    mean = sum(n * sizes.height(k) for k, n in solid.items()) / many
    chains = kinds.get("ch", 0)
    if chains > skipped and chains > many:
        half, base = chains / many * sizes.width("ch") / 2, skipped / many * sizes.width("ch") / 2
        mean += max(0.0, half**2 - base**2) ** 0.5 / 2
    return mean


def row_length_mm(kinds: Mapping[str, float], sizes: StitchSizes) -> float:
    """How long the top of a row is: the sum of its stitches' widths, chains among them."""
    return sum(n * sizes.width(k) for k, n in kinds.items())


def opening_mm(chains: float, skipped: float, sizes: StitchSizes) -> float:
    """How far around an opening is: its chain and the stitches under it."""
    return chains * sizes.width("ch") + skipped * sizes.width("")


def top_kinds(fabric: Fabric, row: FabricRow) -> dict[str, int]:
    """Stitches along the top of a row by kind; a start chain that counts is what it counts as."""
    roles, codes = fabric.role[row.start : row.end], fabric.kind[row.start : row.end]
    kinds: dict[str, int] = {}
    for (role, code), n in Counter(zip(roles, codes, strict=True)).items():
        if role in (_EDGE, _ASSUMED, _BASE):
            kinds[fabric.kinds[code]] = kinds.get(fabric.kinds[code], 0) + n
    stand_ins = [row.start + i for i, r in enumerate(roles) if r == _COUNTS] if _COUNTS in roles else []
    for stitch in (*stand_ins, *row.borrowed):
        name = fabric.kinds[fabric.counts_as.get(stitch, fabric.kind[stitch])]
        kinds[name] = kinds.get(name, 0) + 1
    return kinds


def lent_stitches(fabric: Fabric) -> dict[int, int]:
    """Chains that count as a stitch of the row above theirs, and which row that is: {stitch: row}."""
    return {s: i for i, row in enumerate(fabric.rows) for s in row.borrowed}


def taken_below(fabric: Fabric, row: FabricRow, lent: Mapping[int, int]) -> tuple[int, int]:
    """The row that most of a row is worked into (-1 for none), and how many stitches of that row it takes. `lent`: see lent_stitches."""
    taken: dict[int, set[int]] = {}
    start, end = row.start, row.end
    into, many, row_of, extra = fabric.into[start:end], fabric.many[start:end], fabric.row, fabric.extra
    if not lent and not extra and not any(many) and not {_JOIN, _PICOT} & set(fabric.role[start:end]):
        alone = {parent for parent in set(into) if 0 <= parent < start}
        if alone and row_of[min(alone)] == row_of[max(alone)]:
            return row_of[min(alone)], len(alone)
    for stitch, role, first, more in zip(range(start, end), fabric.role[start:end], into, many, strict=True):
        if first < 0 or first >= start or role in (_JOIN, _PICOT):
            continue
        for parent in fabric.parents(stitch) if more or stitch in extra else (first,):
            below = lent.get(parent, row_of[parent])
            if below in taken:
                taken[below].add(parent)
            else:
                taken[below] = {parent}
    if not taken:
        return -1, 0
    best = max(taken, key=lambda r: (len(taken[r]), r))
    return best, len(taken[best])


def heights_of_rows(fabric: Fabric, sizes: StitchSizes) -> list[float]:
    """The height of every row of a fabric, mm; 0 for chains in the air and for rows that nobody worked."""
    lent = lent_stitches(fabric)
    places: list[int] = []
    found: list[float] = []
    for row in fabric.rows:
        kinds = top_kinds(fabric, row)
        places.append(sum(kinds.values()))
        roles = fabric.role[row.start : row.end]
        if roles and roles.count(_ASSUMED) == len(roles):
            found.append(0.0)
            continue
        skipped = 0
        if kinds.get("ch", 0) * 2 > places[-1]:  # what it skips tells nothing of any other row's height
            below, uses = taken_below(fabric, row, lent)
            skipped = max(0, (places[below] if 0 <= below < len(places) - 1 else 0) - uses)
        found.append(row_height_mm(kinds, sizes, skipped))
    return found
