"""Lengths and gauges as people write them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading import GaugeError, parse_gauge
from loopwright.grading.lengths import in_cm, parse_length


@pytest.mark.parametrize(("text", "mm"), [
    ("4 cm", 40), ("12.5mm", 12.5), ("12,5 mm", 12.5), ("5½ in", 139.7), ('5 1/2"', 139.7), ("5 1/2 inches", 139.7), ("1/4 inch", 6.35),
    ("¾ in.", 19.05), ("2 ft", 609.6), ("1 yard", 914.4), ("0.5 m", 500), ("-3 cm", -30), ("10 centimetres", 100), ("6-1/2 in", 165.1),
])
def test_lengths(text: str, mm: float) -> None:
    assert parse_length(text) == pytest.approx(mm)


@pytest.mark.parametrize("text", ["", "cm", "ten", "4", "4 stone", "1/0 in", "4 cms cms"])
def test_no_lengths(text: str) -> None:
    with pytest.raises(ValueError, match=r"."):
        parse_length(text)


@pytest.mark.parametrize(("text", "stitch", "row", "repeat"), [
    ("17 hdc and 13 rnds = 10 cm, 4 mm hook", 100 / 17, 100 / 13, None),
    ("18 sts and 10 rows = 4 in", 101.6 / 18, 10.16, None),
    ("18 sts x 10 rows to 10 cm", 100 / 18, 10, None),
    ("16 sts = 10 cm; 9 rows = 10 cm", 6.25, 100 / 9, None),
    ("16 sts = 4 in, 9 rows = 10 cm", 6.35, 100 / 9, None),
    ("17½ sts and 12 rows = 10 cm", 100 / 17.5, 100 / 12, None),
    ("17.5 sts and 12 rows over 10 cm in hdc", 100 / 17.5, 100 / 12, None),
    ("20 dc and 10 rows = 10 x 8 cm", 5, 8, None),
    ("4 sts to the inch", 6.35, None, None),
    ("4 sts per inch and 5 rows per inch", 6.35, 5.08, None),
    ("5 repeats = 11 cm", None, None, 22),
    ("5 pattern repeats and 8 rows measure 11 cm", None, 13.75, 22),
    ("8 rnds of dc = 20 cm across", None, 12.5, None),
    ("17 dc and 8 rows = 10 cm in ripple pattern, 5 mm hook", 100 / 17, 12.5, None),
    ("22 htr and 17 rnds = 10 cm, 3.5 mm hook", 100 / 22, 100 / 17, None),
])
def test_gauges(text: str, stitch: float | None, row: float | None, repeat: float | None) -> None:
    found = parse_gauge(text)
    for got, wanted in ((found.stitch_mm, stitch), (found.row_mm, row), (found.repeat_mm, repeat)):
        assert (got is None) == (wanted is None)
        assert wanted is None or got == pytest.approx(wanted)


def test_the_stitch_of_the_swatch_is_kept() -> None:
    assert parse_gauge("17 hdc and 13 rnds = 10 cm").stitch == "hdc"
    assert parse_gauge("8 rnds of dc = 20 cm across").stitch == "dc"
    assert parse_gauge("17 sts and 13 rnds = 10 cm").stitch is None


@pytest.mark.parametrize(("text", "code"), [
    ("", "G002"), ("not important", "G002"), ("17 hdc", "G002"), ("1 square = 10 cm across after Rnd 4", "G002"), ("0 hdc and 13 rnds = 10 cm", "G003"),
    ("-17 hdc = 10 cm", "G003"), ("17 hdc = 0 cm", "G003"), ("17 hdc = -10 cm", "G003"), ("17 hdc = 10 m", "G004"), ("900 sts = 10 cm", "G004"),
    ("17 sts and 0 rows = 10 cm", "G003"), ("1/0 sts = 10 cm", "G002"),
])
def test_gauges_that_cannot_be_used(text: str, code: str) -> None:
    with pytest.raises(GaugeError) as e:
        parse_gauge(text)
    assert e.value.code == code


@given(st.text(max_size=60) | st.from_regex(r"[0-9 ./½-]{0,8}(sts|rows|dc|repeats)? ?(=|to|over)? ?[0-9 ./½-]{0,6}(cm|in|mm|\")?", fullmatch=True))
def test_any_text_is_a_gauge_or_is_refused(text: str) -> None:
    try:
        found = parse_gauge(text)
    except GaugeError:
        return
    assert any(x is not None and x > 0 for x in (found.stitch_mm, found.row_mm, found.repeat_mm))


def test_lengths_for_people() -> None:
    assert [in_cm(139.7), in_cm(40.0), in_cm(-0.2)] == ["14 cm", "4 cm", "0 cm"]
