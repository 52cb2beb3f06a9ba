"""A wide piece cut down to its repeat with its edges.

Rows that repeat lie the same again a whole number of repeats further on; so a band of whole repeats can be taken out of the middle and
the rest moved up, and every foot still stands on the stitch that stands on the same place of the repeat. Where nothing repeats evenly, a
piece too long for any page keeps its two ends, with a gap between them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from loopwright.drawing.chart.drawn import Laid, LeftOut, Mark, Point
from loopwright.model.fabric import Fabric

WIDE = 560.0  # a narrower piece is shown whole
ENDLESS, LONG = 4200.0, 1000.0  # a wider one that cannot be cut by repeats shows its ends alone, one of few rows sooner; by eye
FEW = 4  # rows
END = 320.0  # of either end
GAP = 40.0  # between two ends
NARROW, LINE = 16.0, 0.5  # room where plain stitches are left out; where its line lies, from the start
SHORTEST = 2 * END + 120.0  # a piece that two ends make much narrower
KEPT = 190.0  # of either side, at least
SIDE, LESS = 1.1, 0.55  # repeats of either side, at least; where that is still too wide
TRIED, STARTS = 20, 8
SAME = 1.0  # how far repeats may lie from even


def cut(fabric: Fabric, laid: Laid, *, side: float = SIDE) -> tuple[Laid, LeftOut | None]:
    """The chart with repeats left out, and what is shown; as it was, and None, where nothing can be left out.

    `side`: repeats that are kept of either side, at least.
    """
    xs = [m.top[0] for m in laid.marks]
    left, right = min(xs), max(xs)
    if right - left < WIDE:
        return laid, None
    step = _period(fabric, laid)
    keep = max(KEPT, side * step)
    most = int((right - left - 2 * keep) // step) if step else 0
    gone = 0
    if most and not any(fabric.round[m.stitch] for m in laid.marks):  # nothing repeats but single stitches
        return _plain(laid, left + keep, (most, step))
    for aside in (0.0, -1.0, *(step * k / STARTS for k in range(1, STARTS))):
        if gone >= most or gone and aside > 0:
            break
        for times in _tries(most - gone):
            far = max(m.top[0] for m in laid.marks)
            start = left + keep + aside if aside >= 0 else far - keep - times * step
            if start >= left + keep - 1e-6 and _fits(laid.marks, start, times * step, step):
                laid, gone = _without(laid, start, times * step), gone + times
                break
    return laid, LeftOut("left-out-between", gone) if gone else None


def _plain(laid: Laid, first: float, repeats: tuple[int, float]) -> tuple[Laid, LeftOut | None]:
    """The chart with plain stitches left out at a dotted line. `repeats`: how many at most, how far one is."""
    most, step = repeats
    for start in (first, *(first + step * k / STARTS for k in range(1, STARTS))):
        for times in _tries(most):
            if _fits(laid.marks, start, times * step, step):
                found = _without(laid, start, times * step, gap=NARROW)
                ys = [p[1] for m in found.marks for p in (*m.feet, m.top)]
                found.gaps.append([(start + LINE, min(ys)), (start + LINE, max(ys))])
                return found, LeftOut("plain-left-out", many=(times,))
    return laid, None


def ends(laid: Laid, *, small: bool = False) -> tuple[Laid, LeftOut | None]:
    """Both ends of rows that no page can hold, and what is shown; as it was, and None, where one can. `small`: type would be too small."""
    xs = [m.top[0] for m in laid.marks]
    if max(xs) - min(xs) <= (SHORTEST if small else LONG if len(laid.lines) <= FEW else ENDLESS):
        return laid, None
    start, way = min(xs) + END, max(xs) - min(xs) - 2 * END
    found = _without(laid, start, way, gap=GAP)
    gone = len(laid.marks) - len(found.marks)
    ys = [p[1] for m in found.marks for p in (*m.feet, m.top)]
    found.gaps = [[(start + GAP / 2, min(ys)), (start + GAP / 2, max(ys))]]
    return found, LeftOut("ends-shown", gone)


def _tries(most: int) -> list[int]:
    """Numbers of repeats to try to leave out: the largest, those a little smaller, then ever fewer."""
    first = list(range(most, max(0, most - TRIED), -1))
    below = max(0, most - TRIED)
    while below > 0:
        first.append(below)
        below = below * 19 // 20
    return first


def _without(laid: Laid, start: float, way: float, *, gap: float = 0.0) -> Laid:
    """The chart without what lies from `start` on, `way` wide; the rest moved up, but for a gap."""

    def moved(p: Point, top: float) -> Point:
        return (p[0] - way + gap, p[1]) if top >= start + way else p

    def as_moved(m: Mark, at: float) -> Mark:
        feet, along = (tuple(moved(p, at) for p in points) for points in (m.feet, m.way))
        return replace(m, feet=feet, top=moved(m.top, at), way=along)

    marks = [as_moved(m, m.top[0]) for m in laid.marks if not start <= m.top[0] < start + way]
    piece = [as_moved(m, x) for m in laid.piece if not start <= (x := (m.feet[0][0] + m.top[0]) / 2) < start + way]
    below = [(moved(a, x), moved(b, x)) for a, b in laid.below if not start <= (x := (a[0] + b[0]) / 2) < start + way]
    lines = [replace(n, tab=moved(n.tab, n.tab[0]), end=moved(n.end, n.end[0])) for n in laid.lines]
    frames = []
    for f in laid.frames:
        at = [p[0] for side in f.sides for p in side]
        if max(at) < start or min(at) >= start + way:
            one, two = (tuple(moved(p, at[0]) for p in side) for side in f.sides)
            frames.append(replace(f, sides=((one[0], one[1]), (two[0], two[1]))))
    gaps = [[moved(p, p[0]) for p in line] for line in laid.gaps]
    return Laid(marks, lines, frames, below, laid.ring, gaps=gaps, piece=piece)


def _period(fabric: Fabric, laid: Laid) -> float:
    """How far on the rows lie the same again: the widest repeat of all rows, if all others go into it."""
    steps: list[float] = []
    by_row: dict[int, dict[int, list[float]]] = {}
    plain: dict[int, list[float]] = {}
    for m in laid.marks:
        number = fabric.round[m.stitch]
        if number:
            by_row.setdefault(m.row, {}).setdefault(number, []).append(m.top[0])
        plain.setdefault(m.row, []).append(m.top[0])
    for rounds in by_row.values():
        firsts = [xs[0] for n, xs in sorted(rounds.items()) if n > 1]
        ways = sorted(abs(b - a) for a, b in pairwise(firsts))
        if ways:
            steps.append(ways[len(ways) // 2])
    for row, xs in plain.items():
        if row not in by_row and len(xs) > 2:
            ways = sorted(abs(b - a) for a, b in pairwise(xs))
            steps.append(ways[len(ways) // 2])
    whole = max(steps, default=0.0)
    return whole if all(s > 0 and abs(whole / s - round(whole / s)) * s < SAME for s in steps) else 0.0


def _fits(marks: Sequence[Mark], start: float, way: float, step: float) -> bool:
    """Whether every row goes on behind the cut as it would have gone on before it, and nothing but repeats is cut out."""
    rows: dict[int, list[Mark]] = {}
    for m in marks:
        rows.setdefault(m.row, []).append(m)
    for found in rows.values():
        ordered = sorted(found, key=lambda m: m.top[0])
        first = next((m for m in ordered if m.top[0] >= start), None)
        after = next((m for m in ordered if m.top[0] >= start + way), None)
        if first is None or after is None:
            continue
        same = first.kind == after.kind and abs(after.top[0] - way - first.top[0]) < SAME and abs(after.top[1] - first.top[1]) < SAME
        same = same and len(first.feet) == len(after.feet) and all(
            abs(b[0] - way - a[0]) < SAME and abs(b[1] - a[1]) < SAME for a, b in zip(first.feet, after.feet, strict=True)
        )
        if not same or not _repeats([m for m in ordered if start <= m.top[0] < start + way], start, step):
            return False
    return True


def _repeats(cut_out: Sequence[Mark], start: float, step: float) -> bool:
    """Whether marks in order are the same again every step."""
    many = sum(m.top[0] < start + step for m in cut_out)
    return all(a.kind == b.kind and abs(b.top[0] - a.top[0] - step) < SAME for a, b in zip(cut_out, cut_out[many:], strict=False))
