"""On the body: how far what goes around stretches, and what that leaves of its depth; how long a sole is against the foot.

Where an item goes around: a hat at the narrowest round past its crown, where it sits above the brow, not at a brim that flares or a body
that droops; a bonnet at the last round that closes; a garment below its armholes; all else at the widest round.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import SAME, Course
from loopwright.measuring.parts import Part
from loopwright.measuring.ranges import dimension, sts, width_mm
from loopwright.model.measures import Dimension
from loopwright.trade.ease import Ease

# Crochet stretched along its rows grows shorter by about this share of the stretch. Common practice, no source.
SHORTENS = 0.3
GARMENT = "chest"  # what an item goes by that names no measure
# Of the body's measure; what lies beyond is a thumb, a top drawn in, a frill. Rows go around alone from AROUND: half of it is one of two
# panels. Judgement.
NEAR = (0.5, 2.0)
AROUND = 0.8
SPLIT = 0.2  # of a yoke's stitches are left for two sleeves, at least: judgement


def worn(found: Sequence[Dimension], cut: Sequence[Part], sizes: StitchSizes, body_mm: float, ease: Ease) -> Iterator[Dimension]:
    """What goes around the body as it is worn, and the depth that is left; nothing where nothing goes around it.

    `found`, `cut`: the fabric's dimensions and parts. `body_mm`: the body's measurement that the item goes by, `ease.measure`.
    """
    if body_mm <= 0:
        return
    if ease.measure.endswith("length"):
        yield from _sole(found, body_mm, ease)
        return
    at = _around([p for p in cut if p.piece == 0 and not p.branch], body_mm, ease.measure or GARMENT)
    if at is None:
        return
    part, course, where = at
    laid_mm = width_mm(course)
    how = f"{_against(laid_mm, body_mm, ease)}: {sts(course)}{where}"
    laid = dimension(part, "around worn", laid_mm, how, sizes, along=True, run=[course])
    value, low, high = (max(mm, body_mm) for mm in (laid.value_mm, laid.low_mm, laid.high_mm))
    yield replace(laid, section=None, value_mm=value, low_mm=low, high_mm=high, worn=True)
    stretch = value / laid_mm - 1
    depths = [d for d in found if d.section is None and d.name == "depth"]
    if depths and stretch > 0.001:
        depth, less = max(depths, key=lambda d: d.value_mm), 1 - SHORTENS * stretch
        how = f"stretched by {100 * stretch:.0f} % around, which takes up about {100 * (1 - less):.0f} % of the depth"
        yield replace(
            depth, name="depth worn", value_mm=depth.value_mm * less, low_mm=depth.low_mm * less, high_mm=depth.high_mm, worn=True, how=how,
        )


def _sole(found: Sequence[Dimension], body_mm: float, ease: Ease) -> Iterator[Dimension]:
    """A sole is as long on the foot as it lies; said is how it compares."""
    sole = next((d for d in found if d.name == "length" and d.piece == 0 and NEAR[0] * body_mm <= d.value_mm <= NEAR[1] * body_mm), None)
    if sole is not None:
        yield replace(sole, section=None, name="length worn", worn=True, how=_against(sole.value_mm, body_mm, ease))


def _against(value_mm: float, body_mm: float, ease: Ease) -> str:
    off = value_mm - body_mm
    low, high = ease.range_mm(body_mm)
    habit = f"a {ease.name} is usually {_cm(low)} to {_cm(high)} cm"
    size = f"{abs(off) / 10:.1f} cm {'more' if off > 0 else 'less'} than the {ease.measure or GARMENT} of {body_mm / 10:.1f} cm"
    return f"{size} ({habit} against it)"


def _around(cut: Sequence[Part], body_mm: float, measure: str) -> tuple[Part, Course, str] | None:
    """Where the item goes around the body: part, course, and what is to be said of it."""
    low, high = NEAR[0] * body_mm, NEAR[1] * body_mm
    rounds = [(p, c) for p in cut for c in p.courses if c.way == "round" and p.kind != "border" and low <= c.top_mm <= high]
    rows = [(p, c) for p in cut for c in p.courses if p.kind == "flat" and AROUND * body_mm <= width_mm(c) <= high]
    if measure == GARMENT:
        below = next(((p, c) for p, c in sorted((*rounds, *rows), key=_order) if _splits(c)), None)
        if below is not None:
            return *below, ", below the armholes" + ("" if below[1].way == "round" else ", open in front")
        if not rounds and rows:
            return *max(rows, key=lambda pc: width_mm(pc[1])), ", open in front"
    if not rounds:
        return None
    widest = max(rounds, key=lambda pc: pc[1].top_mm)
    if not measure.startswith("head"):
        return *widest, ""
    first = next(p for p in cut if p.kind in ("disc", "oval", "tube"))
    part, course = _above_the_brow(rounds, from_crown=first.kind != "tube")
    opens = any(p.kind == "flat" and p.courses[0].below == course.index for p in cut)
    where = ", the last round that closes" if opens else ", the narrowest past the crown" if course.top_mm * SAME < widest[1].top_mm else ""
    return part, course, where


def _order(place: tuple[Part, Course]) -> int:
    return place[1].index


def _splits(c: Course) -> bool:
    """Whether a row leaves the sleeves of a yoke: many stitches passed over, and few chains in their place."""
    whole = c.uses + c.skipped
    return c.skipped >= SPLIT * whole > 0 and whole - c.places >= SPLIT * whole / 2


def _above_the_brow(rounds: Sequence[tuple[Part, Course]], *, from_crown: bool) -> tuple[Part, Course]:
    """The narrowest round from the crown's end on: a crown ends where the longest run of even rounds begins, the last of equal ones."""
    run = list(rounds) if from_crown else list(reversed(rounds))
    longest = begin = start = 0
    for i, (_, c) in enumerate(run):
        if i and c.top_mm > run[i - 1][1].top_mm * SAME:
            start = i
        if i - start >= longest:
            longest, begin = i - start, start
    return min(run[begin:], key=lambda pc: pc[1].top_mm)


def _cm(mm: float) -> str:
    return f"{mm / 10:+.1f}".replace("-", "−")
