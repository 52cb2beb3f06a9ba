"""Which measures a fabric has, under which names, and how wide their ranges are."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.dimensions import dimensions
from loopwright.model.measures import Dimension
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HDC = StitchSizes(5.0, 7.0, "hdc", width_share=0.02, height_share=0.03)
HAT = (
    "Redshank Hat\n\nCrown\nRnd 1: Ch 1, 8 hdc in magic ring; join. (8 hdc)\nRnd 2: Ch 1, 2 hdc in each st around; join. (16)\n"
    "Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24)\nBody\nRnds 4-8: Ch 1, hdc in each st around; join. (24)\n"
)


def measured(text: str, sizes: StitchSizes = HDC) -> dict[tuple[str | None, str], Dimension]:
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    return {(d.section, d.name): d for d in dimensions(fabric, sizes)}


def test_a_hat():
    found = measured(HAT)
    assert found["Crown", "across"].value_mm == pytest.approx(2 * 3 * 7)
    assert found["Crown", "around"].value_mm == pytest.approx(24 * 5)
    assert found["Body", "around"].value_mm == pytest.approx(24 * 5)
    assert found["Body", "depth"].value_mm == pytest.approx(5 * 7)
    assert found[None, "depth"].value_mm == pytest.approx(8 * 7)
    assert found[None, "depth"].rows == (0, 7)


def test_the_range_is_two_standard_deviations_each_way():
    found = measured(HAT)
    around, depth = found["Body", "around"], found["Body", "depth"]
    assert around.low_mm == pytest.approx(around.value_mm * 0.96)
    assert depth.high_mm == pytest.approx(depth.value_mm * 1.06)


def test_a_stitch_that_was_not_swatched_widens_the_range():
    rows = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRows 2-10: Ch 1, sc in each st across, turn. (12)\n"
    other, own = measured(rows)[None, "depth"], measured(rows, StitchSizes(5.0, 5.0, "sc", width_share=0.02, height_share=0.03))[None, "depth"]
    assert other.high_mm / other.value_mm > own.high_mm / own.value_mm


def test_a_flat_piece_that_widens_says_both_ends():
    text = "Ch 11.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, 2 hdc in first st, hdc in each st to last st, 2 hdc in last st, turn. (12)\nRow 3: Ch 1, 2 hdc in first st, hdc in each st to last st, 2 hdc in last st, turn. (14)\n"
    found = measured(text)
    assert (found[None, "width"].value_mm, found[None, "width at the start"].value_mm) == (70.0, 50.0)


def test_an_oval():
    text = "Ch 11.\nRnd 1: Hdc in 2nd ch from hook and in next 8 ch, 4 hdc in last ch, working on other side of ch, hdc in next 8 ch, 3 hdc in last ch; join. (24)\nRnd 2: Ch 1, 2 hdc in next st, hdc in next 8 sts, 2 hdc in next 4 sts, hdc in next 8 sts, 2 hdc in next 3 sts; join. (32)\n"
    found = measured(text)
    assert found[None, "width"].value_mm == pytest.approx(4 * 7)
    assert found[None, "length"].value_mm == pytest.approx(9 * 5 + 4 * 7)


def test_an_opening_is_its_chain_and_what_lies_under_it():
    text = HAT + "Rnd 9: Ch 1, hdc in next 8 sts, ch 6, sk next 6 sts, hdc in next 10 sts; join. (18 hdc)\n"
    assert measured(text)["Body", "opening around"].value_mm == pytest.approx(60.0)


def test_a_tie_is_as_long_as_its_chain():
    assert measured("Redshank Hood\n\nTie\nCh 60. Fasten off.\n")["Tie", "length"].value_mm == pytest.approx(300.0)


def test_a_border_adds_to_both_sides():
    text = (
        "Ch 21.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (20)\nRows 2-10: Ch 1, hdc in each st across, turn. (20)\n"
        "Rnd 1: Ch 1, hdc in next 19 sts, 3 hdc in last st, 14 hdc evenly along the row ends, 3 hdc in corner, hdc in next 18 ch on the other side of the foundation chain, 3 hdc in corner, 14 hdc evenly along the row ends, 2 hdc in first st; join.\n"
    )
    found = measured(text)
    assert found[None, "width"].value_mm == pytest.approx(20 * 5 + 2 * 7)
    assert found[None, "depth"].value_mm == pytest.approx(10 * 7 + 2 * 7)


def test_each_measure_is_told_once():
    fabric = work(read(Source.of(HAT), "us")).fabrics[0]
    assert fabric is not None
    keys = [(d.section, d.piece, d.name, round(d.value_mm, 3)) for d in dimensions(fabric, HDC)]
    assert len(keys) == len(set(keys))


@given(sts=st.integers(3, 60), rows=st.integers(2, 30), width=st.floats(1.0, 20.0), height=st.floats(1.0, 30.0))
def test_a_rectangle_is_stitches_by_rows(sts: int, rows: int, width: float, height: float) -> None:
    text = f"Ch {sts + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({sts} sc)\nRows 2-{rows}: Ch 1, sc in each st across, turn. ({sts} sc)\n"
    found = measured(text, StitchSizes(width, height, "sc"))
    assert found[None, "width"].value_mm == pytest.approx(sts * width)
    assert found[None, "depth"].value_mm == pytest.approx(rows * height)
    assert all(d.low_mm < d.value_mm < d.high_mm for d in found.values())


@given(factor=st.floats(0.3, 3.0))
def test_everything_scales_with_the_gauge(factor: float) -> None:
    one = measured(HAT)
    other = measured(HAT, StitchSizes(5.0 * factor, 7.0 * factor, "hdc", width_share=0.02, height_share=0.03))
    assert all(other[k].value_mm == pytest.approx(factor * d.value_mm) for k, d in one.items())


RIPPLE = (
    "Ch 57.\nRow 1: Sc in 2nd ch from hook and in next 5 ch, *3 sc in next ch, sc in next 6 ch, sk 2 ch, sc in next 6 ch; rep from * to last 8 ch, "
    "3 sc in next ch, sc in last 7 ch, turn.\n"
)


def test_a_ripple_takes_up_width_unless_the_gauge_was_taken_over_it():
    """Its rows lie at the angle whose tangent is a width over a height (plane geometry); here 45 degrees."""
    straight = measured(RIPPLE, StitchSizes(5.0, 5.0, "sc", text="20 sc and 20 rows = 10 cm in ripple pattern"))[None, "width"].value_mm
    waved = measured(RIPPLE, StitchSizes(5.0, 5.0, "sc", text="20 sc and 20 rows = 10 cm"))[None, "width"].value_mm
    assert waved == pytest.approx(straight / 2**0.5)
