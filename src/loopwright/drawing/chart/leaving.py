"""Stitches left out of a piece that is too wide for a page: plain columns that go straight up, or repeats in the middle."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing.chart.sections import Section
from loopwright.model.fabric import Fabric

KEPT, CLOSER = 3, 2  # columns on either side of what is left out; where that is still too wide
FEWEST, FEWER = 6, 2  # columns worth leaving out; where the rest is still too wide
LONGEST = 40  # stitches of a repeat
EITHER, MORE = 2, 1  # repeats kept at either end, repeats left out at least


def more_left_out(fabric: Fabric, section: Section) -> list[frozenset[int]]:
    """Longer bands of stitches that a chart can do without, and shorter ones too: see left_out."""
    return left_out(fabric, section, kept=CLOSER, fewest=FEWER)


def left_out(fabric: Fabric, section: Section, *, kept: int = KEPT, fewest: int = FEWEST) -> list[frozenset[int]]:
    """Bands of stitches that a chart can do without, from the first row shown to the last, with what they stand on.

    A band is of neighbouring columns. A column has one stitch in every row, each worked into the one below it and into nothing else, each
    of the same kind as those beside it; nothing else is worked into its stitches.
    """
    columns = _columns(fabric, section)
    found, run = [], list[list[int]]()
    for column in [*columns, []]:
        if run and (not column or not _beside(fabric, section, run[-1], column)):
            if len(run) >= 2 * kept + fewest:
                found.append(frozenset(s for one in run[kept:-kept] for s in one))
            run = []
        if column:
            run.append(column)
    return found


def _columns(fabric: Fabric, section: Section) -> list[list[int]]:
    above = _above(fabric, section.rows)
    first = fabric.rows[section.rows[0]]
    order = [s for s in range(first.start, first.end) if _plain(fabric, s)]
    found = []
    for s in order:
        column = [fabric.parents(s)[0], s]
        if above.get(column[0]) != [s]:
            continue
        for _ in section.rows[1:]:
            on = above.get(column[-1], [])
            if len(on) != 1 or not _plain(fabric, on[0]):
                break
            column.append(on[0])
        if len(column) == len(section.rows) + 1:
            found.append(column)
    return found


def _above(fabric: Fabric, rows: Sequence[int]) -> dict[int, list[int]]:
    found: dict[int, list[int]] = {}
    for index in rows:
        for s in range(fabric.rows[index].start, fabric.rows[index].end):
            for p in fabric.parents(s):
                found.setdefault(p, []).append(s)
    return found


def _plain(fabric: Fabric, s: int) -> bool:
    alone = fabric.part_of(s) == "edge" and fabric.name(s) != "ch" and len(fabric.parents(s)) == 1
    return alone and fabric.where(s) in ("top", "chain", "back", "front")


def _beside(fabric: Fabric, section: Section, one: Sequence[int], two: Sequence[int]) -> bool:
    """Whether two columns stand side by side in every row and are of the same kinds."""
    return all(
        abs(b - a) == 1 and fabric.name(a) == fabric.name(b) and fabric.row[a] == fabric.row[b] == section.rows[k]
        for k, (a, b) in enumerate(zip(one[1:], two[1:], strict=True))
    )


def repeats_out(fabric: Fabric, section: Section) -> list[frozenset[int]]:
    """The repeats in the middle of the first row with all that stands on them, where that leaves whole what stands beside; [] where not."""
    row = fabric.rows[section.rows[0]]
    rounds = {s: fabric.round[s] for s in range(row.start, row.end)}
    if max(rounds.values(), default=0) < 2 * EITHER + MORE:
        rounds = _rounds(fabric, [s for s in rounds if fabric.part_of(s) == "edge"])
    times = max(rounds.values(), default=0)
    if times < 2 * EITHER + MORE:
        return []
    out = {s for s, n in rounds.items() if EITHER < n <= times - EITHER}
    feet = [p for s in out for p in fabric.parents(s)]
    below = set(range(min(feet), max(feet) + 1)) if feet and section.base >= 0 else set(feet)
    others = {p for s in range(row.start, row.end) if s not in out for p in fabric.parents(s)}
    if not feet or below & others or not _in_line(out):
        return []
    found = out | below
    for index in section.rows[1:]:
        band = standing_on(fabric, index, found)
        if not band:
            return []
        found |= band
    return [frozenset(found)]


def _rounds(fabric: Fabric, stitches: Sequence[int]) -> dict[int, int]:
    """Rounds of the repeat that covers most of a row whose words tell of none; nothing where no repeat comes often enough."""
    into = [fabric.parents(s) for s in stitches]
    seen = [(fabric.name(s), len(into[k]), k > 0 and into[k] == into[k - 1]) for k, s in enumerate(stitches)]
    best, found = 0, dict[int, int]()
    for period in range(2, min(LONGEST, len(stitches) // (2 * EITHER + MORE)) + 1):
        run = 0
        for k in range(period, len(stitches) + 1):
            if k < len(stitches) and seen[k] == seen[k - period]:
                run += 1
                continue
            times = run // period + 1
            first = k - run - period
            if times >= 2 * EITHER + MORE and times * period > best and len(set(seen[first : first + period])) > 1:
                best = times * period
                found = {s: n // period + 1 for n, s in enumerate(stitches[first : first + best])}
            run = 0
    return found


def standing_on(fabric: Fabric, index: int, out: set[int]) -> set[int]:
    """What a row has on stitches that are left out, and the chains between; nothing where it does not stand apart from the rest."""
    row = fabric.rows[index]
    on = [s for s in range(row.start, row.end) if fabric.parents(s) and all(p in out for p in fabric.parents(s))]
    if not on:
        return set()
    band = set(range(min(on), max(on) + 1))
    own = all(p in out or p in band for s in band for p in fabric.parents(s))
    apart = own and all(fabric.part_of(s) in ("edge", "picot") for s in band)
    clear = not any(p in out for s in range(row.start, row.end) if s not in band for p in fabric.parents(s))
    return band if apart and clear else set()


def _in_line(stitches: set[int]) -> bool:
    return max(stitches) - min(stitches) + 1 == len(stitches)
