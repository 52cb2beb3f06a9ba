"""Limits and holes against sources outside: published rules, typed from them, and geometry worked out by another way."""

import math

import numpy as np
import pytest

from loopwright.trade.cautions import cautions
from loopwright.trade.cautions.gaps import opening

INCH = 25.4
# the caution, its figure, what the source prints in mm (or years, months, newtons), the source
PRINTED = [
    ("waist-cords", "free_mm_most", 3 * INCH, 1.5, "3 in or 7.5 cm outside the channel: Consumer Product Safety Commission, FAQ on drawstrings (16 CFR 1120)"),
    ("hood-and-neck-cords", "age_years_below", 7, 0, "under 7 years or 134 cm: Finnish Safety and Chemicals Agency on EN 14682"),
    ("hood-and-neck-cords", "height_cm_below", 134, 0, "the same page"),
    ("small-parts", "tube_mm", 1.25 * INCH, 0.1, "1.25 in across: figure 1 of 16 CFR 1501, from memory"),
    ("small-parts", "age_months_below", 36, 0, "under 36 months: lecture notes on EN 71-1"),
    ("toy-pull", "parts_newton", 90, 0, "90 N for 10 s: table of toy tests, EN 71-1"),
    ("toy-pull", "seams_newton", 70, 0, "70 N at seams: the same table"),
    ("sleep-bedding", "age_months_below", 12, 0, "the first year: American Academy of Pediatrics, 2022"),
    ("toy-cord", "free_mm_most", 220, 0, "about 220 mm: EN 71-1, from memory"),
    ("finger-holes", "hole_mm_from", 7, 0, "7 to 12 mm: CEN/TR 13387-3, from memory"),
    ("finger-holes", "hole_mm_to", 12, 0, "the same"),
]


@pytest.mark.parametrize(("key", "figure", "printed", "off", "source"), PRINTED)
def test_limits_are_those_printed(key, figure, printed, off, source):
    caution = next(c for c in cautions() if c.key == key)
    assert caution.figures[figure] == pytest.approx(printed, abs=off), source
    assert caution.weak or "from memory" not in source or key == "small-parts"


def largest_circle(top, bottom, height):
    """Diameter of the largest circle in a trapezoid, by trying all points of a grid: no formula of ours."""
    corners = np.array([(-bottom / 2, 0), (bottom / 2, 0), (top / 2, height), (-top / 2, height)])
    wide = max(top, bottom) / 2
    x, y = np.meshgrid(np.linspace(-wide, wide, 161), np.linspace(0, height, 161))
    away = np.full(x.shape, np.inf)
    for p, q in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        length = math.hypot(*(q - p))
        if length > 0:
            away = np.minimum(away, ((y - p[1]) * (q - p)[0] - (x - p[0]) * (q - p)[1]) / length)
    return 2 * float(away.max())


STRAIGHT = [(a, b, h) for a in (3, 5, 9, 15, 20) for b in (0, 3, 6, 9, 15, 20) for h in (4, 6, 9, 12) if not 0 < b < a]


@pytest.mark.parametrize(("top", "bottom", "height"), STRAIGHT)
def test_a_hole_under_a_straight_chain_is_the_largest_circle_inside(top, bottom, height):
    assert opening(top, bottom, height) == pytest.approx(largest_circle(top, bottom, height), rel=0.01)


@pytest.mark.parametrize("share", [0.7, 0.8, 0.9])
def test_a_bowed_chain_is_a_parabola(share):
    """The rise of the bow, against the length of a parabola summed up piece by piece; a shallow one, so within a tenth."""
    arc, post = 20.0, 30.0
    chord = share * arc
    found = math.sqrt(0.375 * chord * (arc - chord))
    x = np.linspace(-chord / 2, chord / 2, 20_001)
    y = found * (1 - (2 * x / chord) ** 2)
    assert float(np.hypot(np.diff(x), np.diff(y)).sum()) == pytest.approx(arc, rel=0.1)
    assert 0 < opening(arc, chord, post) <= chord + 2 * found


@pytest.mark.parametrize(("chain", "below", "post"), [(0, 5, 5), (5, 5, 0), (-1, 5, 5), (5, 0, 5), (1e6, 1e-9, 1e-6)])
def test_no_hole_is_negative_or_endless(chain, below, post):
    assert 0 <= opening(chain, below, post) <= max(chain, below, post, 0)
