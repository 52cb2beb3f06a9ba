"""What makers find with a tape, as check values. Common practice, no source."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.measure import measure_source

INCH_MM = 25.4
ROUNDS = (
    "Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring; join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around; join. (24 dc)\n"
    "Rnd 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around; join. (36 dc)\n"
    "Rnd 4: Ch 3, dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * around; join. (48 dc)\n"
    "Rnd 5: Ch 3, dc in next 2 sts, 2 dc in next st, *dc in next 3 sts, 2 dc in next st; rep from * around; join. (60 dc)\n"
)


def dimensions(text: str) -> dict[tuple[str | None, str], tuple[float, float, float]]:
    found = measure_source(Source.of(text)).sizes[0].dimensions
    return {(d.section, d.name): (d.low_mm, d.value_mm, d.high_mm) for d in found}


def test_five_rounds_of_double_crochet_in_light_yarn_with_a_6_mm_hook_are_about_five_inches_across():
    low, value, high = dimensions("Redshank Disc\nYarn: light (3), cotton\nHook: 6 mm\n\n" + ROUNDS)[None, "across"]
    assert low < 5 * INCH_MM < high
    assert value == pytest.approx(5 * INCH_MM, rel=0.15)


@pytest.mark.parametrize(("more", "fewer"), [(12, 9), (15, 12)])
def test_fewer_stitches_left_unworked_make_the_lower_edge_of_a_bonnet_looser(more, fewer):
    """Its rows go round the face from one side of the neck to the other: the edge that ties close is longer."""

    def edge(left: int) -> float:
        n = 60 - left
        rows = f"Row 6: Ch 3 (counts as dc), dc in next {n - 1} sts, leave last {left} sts unworked, turn. ({n} dc)\nRow 7: Ch 3, dc in each st across, turn. ({n} dc)\n"
        return dimensions("Redshank Bonnet\nGauge: 16 dc and 9 rows = 10 cm\n\nBack\n" + ROUNDS + "Front\n" + rows)["Front", "width"][1]

    assert edge(fewer) > edge(more)
