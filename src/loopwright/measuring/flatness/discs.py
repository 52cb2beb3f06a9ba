"""Discs, crowns and motifs that cup or ruffle, and stacked increases that make a round disc a polygon."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.measuring.courses import Course
from loopwright.measuring.flatness.crowns import BLOCKS, Crown, Ring, children, crowns, unsure
from loopwright.measuring.flatness.mends import figure, percent, round_mend
from loopwright.measuring.flatness.told import told
from loopwright.measuring.ranges import BY_TABLE
from loopwright.model.fabric import Fabric
from loopwright.model.lies import Follows, LieFault
from loopwright.trade.stitches import circle

FEWEST = 4  # rounds: over several, not one
HABIT = 0.20  # a rate that is the trade's habit for its stitch is let go up to this share
KNOWN = frozenset({"sc", "hdc", "dc", "tr", "dtr"})  # heights that rest on more than custom
AT_CORNERS = 0.05  # chains of a corner are drawn straight or hang loose
BEFORE_MORE = 0.25  # further from flat than this, before rounds or rows that go on, it is meant
STACKED, MOST = 6, 6  # rounds of stacked increases, and places of them, that show as corners
TWO = 2


def curvature(ring: Ring) -> float:
    """Total curvature inside a round, radians: 2 pi (1 - its length / the flat length). Gauss-Bonnet: a flat round turns by 2 pi."""
    off = ring.course.top_mm / ring.flat_mm if ring.flat_mm > 0 else 1.0
    return 2 * math.pi * (1 - off)


def disc_faults(fabric: Fabric, courses: Sequence[Course], sizes: StitchSizes) -> Iterator[LieFault]:
    """One fault at most for each crown: what cups or ruffles is not also told to have corners."""
    for crown in crowns(fabric, courses, sizes):
        found = _lies(crown, sizes) or _corners(fabric, crown)
        if found is not None:
            yield found


def _lies(crown: Crown, sizes: StitchSizes) -> LieFault | None:
    rings = crown.rings
    if len(rings) < FEWEST or not rings[-1].sure or rings[-1].word not in ("cups", "ruffles"):
        return None
    last = rings[-1]
    rate_off = crown.gain / crown.flat_gain - 1
    kind = _main(last.course)
    limit = BLOCKS + unsure(sizes)
    if kind != sizes.kind and kind not in sizes.own:
        if kind not in KNOWN:
            return None
        limit += BY_TABLE
    if crown.sides:
        limit += AT_CORNERS
    if _habit(crown, kind):
        limit = max(limit, HABIT)
    if rings[-2].word != last.word or (rate_off > 0) != (last.off > 0) or min(abs(rate_off), abs(last.off)) <= limit:
        return None
    if crown.after and (abs(rate_off) > BEFORE_MORE or _habit(crown, kind)):
        return None
    c = last.course
    facts = {
        "have": f"{c.places} {'sts and chains' if c.chains else 'sts'}", "flat": str(round(c.places / (1 + last.off))),
        "share": percent(last.off), "gain": figure(crown.gain), "needed": figure(crown.flat_gain),
        "shape": f"motif with {crown.sides} corners" if crown.sides else "oval" if crown.oval else "disc",
    }
    follows: Follows = "" if not crown.after else "round" if crown.after == "round" else "row"
    return told(c, "cups" if last.off < 0 else "ruffles", last.off, round_mend(crown, last), facts, follows)


def _main(c: Course) -> str:
    solid = Counter({plain_kind(k): n for k, n in c.kinds.items() if k != "ch"})
    return solid.most_common(1)[0][0] if solid else ""


def _habit(crown: Crown, kind: str) -> bool:
    """Whether the rate is one that the trade gives for flat circles of the stitch."""
    known = circle(kind)
    return known is not None and not crown.sides and known.low - 0.01 <= crown.gain <= known.high + 0.01


def _corners(fabric: Fabric, crown: Crown) -> LieFault | None:
    """Increases of two in one, one above the other in few places, over many rounds."""
    if crown.sides or crown.oval or crown.after or len(crown.rings) < STACKED:
        return None
    run = [r for r in crown.rings if r.sure]
    before: set[int] = set()
    stacked, places = 0, 0
    for ring in run:
        doubled = {p: s for p, s in children(fabric, ring.course).items() if len(s) >= TWO}
        if any(len(s) > TWO for s in doubled.values()) and ring is not run[0]:
            return None
        on = sum(1 for p in doubled if fabric.into[p] in before)
        if doubled and before and on >= 0.8 * len(doubled) and (not places or len(doubled) == places):
            stacked, places = stacked + 1, len(doubled)
        elif doubled:
            stacked, places = 0, 0
        if doubled:
            before = set(doubled)
    if stacked + 1 < STACKED or not 3 <= places <= MOST:
        return None
    last = run[-1]
    out = 1 / math.cos(math.pi / places) - 1
    facts = {"rounds": str(stacked + 1), "places": str(places), "out_mm": f"{last.radius_mm * out:.0f}"}
    mend = "move the increases: begin every other round with half of its plain stitches, so that none stands on another"
    return told(last.course, "corners", out, mend, facts)
