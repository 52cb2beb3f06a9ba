"""Dimensions of worked fabric against plane and solid geometry: circle, annulus, cylinder, cone, sphere, frustum, stadium, triangle.

Source of every formula: Euclid's geometry as any handbook of mathematics gives it, e.g. Abramowitz & Stegun, Handbook of Mathematical
Functions (1964), section 3.4 (mensuration formulas for plane figures and solids).
"""

from __future__ import annotations

import itertools
import math

import pytest

from loopwright.grading.discs import ball_counts
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions, stuffed_height_mm
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def fabric(text: str) -> Fabric:
    found = work(read(Source.of(text), "us")).fabrics[0]
    assert found is not None
    return found


def measured(text: str, sizes: StitchSizes) -> dict[tuple[str | None, str], float]:
    return {(d.section, d.name): d.value_mm for d in dimensions(fabric(text), sizes)}


def rounds(counts: list[int], kind: str = "sc", first: int = 1) -> str:
    """Rounds of those counts, in words: each spread evenly."""
    lines = [f"Rnd {first}: {counts[0]} {kind} in magic ring. ({counts[0]})"]
    for n, (before, now) in enumerate(itertools.pairwise(counts), first + 1):
        if now > 2 * before:
            lines.append(f"Rnd {n}: {now // before} {kind} in each st around. ({now})")
        elif now == before:
            lines.append(f"Rnd {n}: {kind} in each st around. ({now})")
        else:
            op = "inc" if now > before else "dec"
            lines.append(f"Rnd {n}: {kind} around, {op} {abs(now - before)} sts evenly. ({now})")
    return "\n".join(lines) + "\n"


def flat(rate: int, height_mm: float) -> StitchSizes:
    """A gauge at which `rate` stitches a round lie exactly flat: w = 2 pi h / rate."""
    return StitchSizes(2 * math.pi * height_mm / rate, height_mm, "sc")


@pytest.mark.parametrize("many", [3, 8, 15])
def test_a_circle_is_pi_times_as_far_around_as_across(many):
    found = measured(rounds([6 * n for n in range(1, many + 1)]), flat(6, 5.0))
    assert found[None, "around"] == pytest.approx(math.pi * found[None, "across"])
    assert found[None, "across"] == pytest.approx(2 * many * 5.0)


def test_a_cylinder_on_a_disc():
    found = measured("Curlew Pot\n\nBottom\n" + rounds([6, 12, 18, 24, 30]) + "Side\nRnds 6-15: sc in each st around. (30)\n", flat(6, 4.0))
    assert found["Side", "around"] == pytest.approx(2 * math.pi * 5 * 4.0)
    assert found["Side", "depth"] == pytest.approx(10 * 4.0)
    assert found[None, "depth"] == pytest.approx(5 * 4.0 + 10 * 4.0)


@pytest.mark.parametrize("share", [0.5, 0.75])
def test_a_cone(share):
    """A cone of slant s and half angle a has a rim of radius s sin a: rounds that gain a share of the flat rate have sin a = share."""
    rate, height, many = 12, 6.0, 8
    sizes = StitchSizes(2 * math.pi * height / rate * share, height, "sc")
    found = measured(rounds([rate * n for n in range(1, many + 1)]), sizes)
    slant = many * height
    assert found[None, "across"] == pytest.approx(2 * slant * share)
    run = courses(fabric(rounds([rate * n for n in range(1, many + 1)])), sizes)
    assert stuffed_height_mm(run) == pytest.approx(slant * math.sqrt(1 - share**2))


def test_a_frustum():
    """Between rims of radius r and R with slant s it stands sqrt(s^2 - (R - r)^2) tall."""
    counts = [20, 24, 28, 32, 36, 40]
    sizes = StitchSizes(5.0, 6.0, "sc")
    run = courses(fabric(rounds(counts)), sizes)
    small, large = 20 * 5 / (2 * math.pi), 40 * 5 / (2 * math.pi)
    assert stuffed_height_mm(run) - stuffed_height_mm(run[:1]) == pytest.approx(math.sqrt((5 * 6.0) ** 2 - (large - small) ** 2))


@pytest.mark.parametrize("equator", [24, 36, 48, 60])
def test_a_ball_is_as_tall_as_wide(equator):
    """Rounds by the sine rule on stitches as tall as wide: a sphere of circumference equator x width."""
    counts = [max(3, n) for n in ball_counts(equator)]
    counts = [*counts[:1], counts[1] // counts[0] * counts[0], *counts[2:-1]]  # whole repeats only, and left open by its last round
    sizes = StitchSizes(5.0, 5.0, "sc")
    found = measured(rounds(counts), sizes)
    diameter = equator * 5.0 / math.pi
    assert found[None, "around"] == pytest.approx(equator * 5.0)
    assert found[None, "height"] == pytest.approx(diameter, rel=0.08)


def test_an_oval_is_a_stadium():
    """Two straight sides and two half circles: 2 L + pi d around."""
    text = (
        "Ch 13.\nRnd 1: Sc in 2nd ch from hook and in next 10 ch, 4 sc in last ch, working on other side of ch, sc in next 10 ch, 3 sc in last ch. (28)\n"
        "Rnd 2: 2 sc in next st, sc in next 10 sts, 2 sc in next 4 sts, sc in next 10 sts, 2 sc in next 3 sts. (36)\n"
    )
    sizes = flat(8, 5.0)
    found = measured(text, sizes)
    straight = found[None, "length"] - found[None, "width"]
    assert found[None, "width"] == pytest.approx(2 * 2 * 5.0)
    assert found[None, "around"] == pytest.approx(2 * straight + math.pi * found[None, "width"], rel=0.1)


def test_a_triangle_shawl_has_a_right_angle():
    """Pythagoras: with both legs L/2 long the top edge is L / sqrt(2), and half of it is the depth."""
    rows = ["Ch 4, join to form a ring.", "Row 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn. (6 dc)"]
    rows += [
        f"Row {n}: Ch 3 (counts as dc), dc in same st, dc in each st to ch-2 sp, (3 dc, ch 2, 3 dc) in sp, dc in each st to last st, 2 dc in last st, turn."
        for n in range(2, 12)
    ]
    width, height = 5.0, 5.0 * 8 / 4  # 8 stitches more a row: 4 h / w = 8
    found = measured("\n".join(rows) + "\n", StitchSizes(width, height, "dc"))
    legs = courses(fabric("\n".join(rows) + "\n"), StitchSizes(width, height, "dc"))[-1].top_mm
    assert found[None, "width"] ** 2 == pytest.approx(2 * (legs / 2) ** 2)
    assert found[None, "depth"] == pytest.approx(found[None, "width"] / 2, rel=0.05)
