"""Facts that makers know by heart (common practice, no source), found again by working them."""

import pytest

from loopwright.grading import borders
from loopwright.model.report import Report
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade import sizes
from loopwright.working import work

PAIRS = "Row 2: Ch 1, turn, *sk 1 sc, 2 dc in next sc; rep from * across. ({n} dc)"
PLAIN = "Row 2: Ch 1, turn, sc in each st across. ({n} sc)"


def worked(text: str) -> Report:
    """The report of a text in US terms."""
    return work(read(Source.of(text), "us"))


@pytest.mark.parametrize("count", range(8, 16))
def test_a_pattern_of_pairs_needs_an_even_count_where_plain_rows_take_any(count: int) -> None:
    base = f"Ch {count + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({count} sc)\n"
    assert worked(base + PLAIN.format(n=count)).findings == ()
    assert (worked(base + PAIRS.format(n=count)).findings == ()) == (count % 2 == 0)


@pytest.mark.parametrize("wanted", [12, 40, 75])
def test_a_cord_worked_back_in_slip_stitches_gets_one_chain_more_than_stitches(wanted: int) -> None:
    fabric = worked(f"Ch {borders.cord_chain(wanted * 4, 4, turning=1)}.\nRow 1: Sl st in 2nd ch from hook and in each ch across.").fabrics[0]
    assert fabric is not None
    row = fabric.rows[-1]
    assert [fabric.name(stitch) for stitch in range(row.start, row.end)] == ["sl st"] * wanted


def test_a_cap_for_six_to_twelve_months_is_stopped_short_of_its_height() -> None:
    """Aimed at 5 1/2 in: the edging adds what is left, and a cap for a baby is lower than the trade's hat to below the ear."""
    aim = 5.5 * 25.4
    assert borders.stop_under_mm(aim, 12.0) == pytest.approx(aim - 12)
    for name in ("6 months", "9 months", "12 months"):
        assert 0.8 * sizes.chart("trade").find(name).measure("hat height").mm <= aim <= sizes.chart("trade").find(name).measure("hat height").mm
