"""The customary rates of flat circles, and the curvature of cones, against how rounds lie.

Rates: sc 6, hdc 8, dc 12 (http://craftymaria.blogspot.com/2009/06/getting-your-circles-flat.html), dc 10-12
(http://mkcarroll.com/blog/2009/5/14/how-not-to-crochet-a-flat-circle.html), tr 16 (common practice, no source). Shapes of stitches: the
published gauges' mean in `trade/data/stitches.toml`. Curvature: the angles of a cone's paper pattern around its tip are 2 pi less its
curvature (Descartes; for smooth surfaces Gauss and Bonnet).
"""

from __future__ import annotations

import math

import pytest

from loopwright.grading.gauge import StitchSizes
from loopwright.grading.gauge.sizes import usual_shape
from loopwright.trade.stitches import circle
from tests.measuring.flatness.crown_texts import disc, lie

WIDTH = 5.0
# Height over width of ordinary swatches: what the customary rate implies lies within a few percent of these.
ORDINARY = {"sc": 0.92, "hdc": 1.30, "dc": 1.88, "tr": 2.65}
CUSTOM = {"sc": 6, "hdc": 8, "dc": 12, "tr": 16}


def at(kind: str, shape: float) -> StitchSizes:
    return StitchSizes(WIDTH, WIDTH * shape, kind)


def angles_around_the_tip(stitches: int, slant_mm: float) -> float:
    """Sum of the tip angles of the thin triangles, a sixteenth of a stitch wide, that the edge and the tip span."""
    return 16 * stitches * 2 * math.asin(WIDTH / 32 / slant_mm)


def paper_says(stitches: int, slant_mm: float) -> str:
    """Whether the paper pattern closes to a flat disc, has a gap (a cone) or overlaps (a ruffle)."""
    gap = 2 * math.pi - angles_around_the_tip(stitches, slant_mm)
    share = abs(gap) / (2 * math.pi)
    return "flat" if share <= 0.04 else "blocks out" if share <= 0.1 else "cups" if gap > 0 else "ruffles"


@pytest.mark.parametrize("kind", list(CUSTOM))
def test_the_customary_rate_lies_flat_at_ordinary_gauge(kind):
    found = lie(disc([CUSTOM[kind] * n for n in range(1, 11)], kind), at(kind, ORDINARY[kind]))
    assert {r.lies for r in found} == {"flat"}
    known = circle(kind)
    assert known is not None
    assert known.usual == CUSTOM[kind]


@pytest.mark.parametrize("kind", list(CUSTOM))
def test_the_customary_rate_at_least_blocks_out_at_the_mean_of_published_gauges(kind):
    last = lie(disc([CUSTOM[kind] * n for n in range(1, 11)], kind), at(kind, usual_shape(kind)))[-1]
    assert last.lies in ("flat", "blocks out")


@pytest.mark.parametrize("kind", list(CUSTOM))
@pytest.mark.parametrize("away", [-2, -1, 0, 1, 2])
def test_the_right_word_for_every_rate_near_flat(kind, away):
    rate, shape = CUSTOM[kind] + away, ORDINARY[kind]
    last = lie(disc([rate * n for n in range(1, 11)], kind), at(kind, shape))[-1]
    assert last.lies == paper_says(rate * 10, 10 * WIDTH * shape)
    assert (last.curvature > 0) == (rate < 2 * math.pi * shape)


@pytest.mark.parametrize(("kind", "rate"), [("sc", 4), ("sc", 8), ("hdc", 6), ("hdc", 10), ("dc", 8), ("dc", 10), ("dc", 16), ("tr", 12), ("tr", 20)])
def test_the_curvature_is_that_of_the_paper_pattern(kind, rate):
    shape = ORDINARY[kind]
    for n, r in enumerate(lie(disc([rate * n for n in range(1, 11)], kind), at(kind, shape)), start=1):
        assert r.curvature == pytest.approx(2 * math.pi - angles_around_the_tip(rate * n, n * WIDTH * shape), abs=0.02)


@pytest.mark.parametrize("kind", ["sc", "hdc", "dc"])
def test_two_more_than_the_custom_ruffle_and_two_fewer_cup(kind):
    few, many = (lie(disc([(CUSTOM[kind] + d) * n for n in range(1, 11)], kind), at(kind, ORDINARY[kind]))[-1] for d in (-2, 2))
    assert (few.lies, many.lies) == ("cups", "ruffles")
