"""What is written, line by line: lists and dashes, one size clean, chains and spaces as each set of terms says them."""

from __future__ import annotations

from typing import Any

import pytest
from law import Worked, worked  # type: ignore[import-not-found,unused-ignore]

from loopwright.wording import write

BAND = """Rush Band
Sizes: small, medium, large
Terms: US
Gauge: 18 sc and 20 rows = 10 cm, 4 mm hook
Yarn: DK, wool, 50 g = 120 m

Band
Ch 21 (25, 29).
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28) sc)
Rows 2-– (3, 5): Ch 1, sc in each st across, turn.
Row 6: Ch 1, sc in each of next 4 (–, 6) sts, sc in each st across, turn.
Row 7: Ch 3 (counts as dc), sk 1 st, *(dc, ch 1, dc) in next st, sk 1 st; rep from * to last 2 sts, dc in last st, turn.
Row 8: Ch 3, *2 dc in next ch-1 sp; rep from * across, dc in top of ch-3.
Fasten off. Sew the ends of the band together with dc-coloured thread.
"""


def _line(text: str, start: str) -> str:
    return next(line for line in text.splitlines() if line.startswith(start))


def _written(pattern: Worked, **how: Any) -> str:
    return str(write(pattern.document, pattern.report, **how))


def test_sizes_stand_in_brackets_with_a_dash_where_one_does_not_work_a_row() -> None:
    text = _written(worked(BAND), terms="us")
    assert _line(text, "Ch 21") == "Ch 21 (25, 29)."
    assert _line(text, "Rows 2-").startswith("Rows 2-– (3, 5): Ch 1, sc in each st across")


def test_one_size_is_clean() -> None:
    text = _written(worked(BAND), terms="us", size=0)
    assert "Size: small" in text
    assert "Rows 2" not in text
    assert "–" not in text
    assert _line(text, "Row 6").startswith("Row 6: Ch 1, sc in each of next 4 sts, sc in each st across")
    assert "each of next" not in _line(_written(worked(BAND), terms="us", size=1), "Row 6")


def test_chains_stand_after_their_number_in_uk_terms() -> None:
    text = _written(worked(BAND), terms="uk")
    assert _line(text, "21 (25").startswith("21 (25, 29) ch.")
    assert "3 ch (counts as tr)" in text
    assert "in next 1-ch sp" in text
    assert "top of 3-ch" in text
    assert "miss next st" in text
    assert _line(text, "Tension").startswith("Tension: 18 dc and 20 rows")


def test_full_words_leave_no_abbreviation() -> None:
    text = _written(worked(BAND), terms="us", full_words=True)
    assert "Abbreviations" not in text
    assert "Row 7: Chain 3 (counts as double crochet), skip next stitch, *(double crochet, chain 1, double crochet) in next stitch" in text
    assert "2 double crochets in next chain-1 space" in text


def test_counts_are_told_where_the_pattern_is_silent() -> None:
    text = _written(worked(BAND), terms="us", size=2)
    assert _line(text, "Row 6").endswith("(28 sc)")


def test_abbreviations_are_those_that_are_used() -> None:
    line = _line(_written(worked(BAND), terms="uk"), "Abbreviations")
    assert "tr = treble" in line
    assert "dc = double crochet" in line
    assert "htr" not in line
    assert "rnd" not in line


def test_turning_chains_are_told_as_they_were_worked() -> None:
    assert _line(_written(worked(BAND), terms="uk"), "Turning chain") == "Turning chain: 3 ch counts as tr, 1 ch does not count as a st"


def test_finished_measurements_are_a_line_of_the_heading() -> None:
    text = _written(worked(BAND), terms="us", measurements={"around": [510.0, 560.0, None], "depth": [45.0, 45.0, 45.0]})
    assert "Finished measurements: around 51 (56, –) cm, depth 4.5 cm" in text


def test_repeats_are_spelled_out_in_number_where_too_long_to_write_out() -> None:
    text = _written(worked(BAND), terms="us", size=0, spelled_out=True)
    assert "rep from * 7 times more" in _line(text, "Row 7")


@pytest.mark.parametrize("size", [-1, 3])
def test_a_size_that_is_not_there(size: int) -> None:
    pattern = worked(BAND)
    with pytest.raises(IndexError):
        write(pattern.document, pattern.report, terms="us", size=size)


def test_terms_that_are_not_there() -> None:
    pattern = worked(BAND)
    with pytest.raises(ValueError, match="us, uk and old"):
        write(pattern.document, pattern.report, terms="french")


def test_without_a_report_the_tree_is_written_all_the_same() -> None:
    text = write(worked(BAND).document, None, terms="uk")
    assert "Row 8: 3 ch, *2 tr in next 1-ch sp; rep from * across" in text
