"""Laws that the fabric of any pattern keeps, asked of a whole fabric; each gives what breaks it."""

from __future__ import annotations

from itertools import pairwise

from loopwright.model.fabric import Fabric, FabricRow

LIVE = ("edge", "counts", "assumed")


def live(fabric: Fabric, row: FabricRow) -> list[int]:
    """Stitches of a row's top, in the order of making."""
    return [*row.borrowed, *(s for s in range(row.start, row.end) if fabric.part_of(s) in LIVE)]


def orphans(fabric: Fabric) -> list[tuple[str, int]]:
    """Stitches that hang on nothing: neither chains nor in a magic ring nor assumed, and yet without parents."""
    return [
        (row.label, s)
        for row in fabric.rows for s in live(fabric, row)
        if not fabric.parents(s) and fabric.name(s) != "ch" and fabric.where(s) != "ring" and fabric.part_of(s) != "assumed"
    ]


def row_of_end(fabric: Fabric, stitch: int) -> int:
    """The row whose end a stitch is; chains borrowed from the foundation stand at the end of the first row."""
    return next((i for i, r in enumerate(fabric.rows) if stitch in r.borrowed), fabric.row[stitch])


def side_of(fabric: Fabric, stitch: int) -> str:
    """Which side of the piece an end stitch stands on, seen from the right side: a row on the right side runs from right to left."""
    row = fabric.rows[row_of_end(fabric, stitch)]
    ends = live(fabric, row)
    if stitch not in (ends[0], ends[-1]):
        return "middle"
    return "left" if (stitch == ends[-1]) == row.right_side else "right"


def runs_along(fabric: Fabric, row: FabricRow) -> list[list[int]]:
    """Parents of the stitches that go along row ends, one list for each side without a break."""
    runs: list[list[int]] = []
    going = False
    for s in live(fabric, row):
        if fabric.where(s) == "row-end":
            if not going:
                runs.append([])
            runs[-1] += fabric.parents(s)[:1]
        elif not fabric.parents(s):
            continue  # a chain between
        going = fabric.where(s) == "row-end"
    return runs


def broken_edges(fabric: Fabric) -> list[tuple[str, str]]:
    """Rows along row ends that do not go from the end of one row to that of the next on one side of the piece."""
    found = []
    for row in fabric.rows:
        for run in runs_along(fabric, row):
            sides = {side_of(fabric, s) for s in run}
            rows = [row_of_end(fabric, s) for s in run]
            steps = {b - a for a, b in pairwise(rows)} - {0}
            if len(sides) != 1 or "middle" in sides:
                found.append((row.label, f"sides {sorted(sides)}"))
            if len(run) > len(set(rows)) and steps not in ({1}, {-1}, set()) or len(steps) > 1 and min(steps) * max(steps) < 0:
                found.append((row.label, f"rows {rows}"))
    return found


def around(fabric: Fabric, row: FabricRow) -> list[tuple[str, str]]:
    """The edges that a row meets, in order: (place, side of the piece or "")."""
    found: list[tuple[str, str]] = []
    for s in live(fabric, row):
        if fabric.parents(s):
            place = fabric.where(s)
            edge = (place, side_of(fabric, fabric.parents(s)[0]) if place == "row-end" else "")
            if not found or found[-1] != edge:
                found.append(edge)
    return found
