"""Rows told by another one and by what they do otherwise."""

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

GRANNY = (
    "Rnd 1: Ch 4, sl st in first ch to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times, join. (12 dc)\n"
    "Rnd 2: Sl st to corner sp. (Ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next corner sp, ch 1; rep from * twice more, join. (24 dc)\n"
)
SHELLS = (
    "Row 1: Ch 26, sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn. (4 shells)\n"
    "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sc in 3rd dc of next shell, 5 dc in next sc; rep from * across, ending with 3 dc in last sc, turn.\n"
)


def rows(text, terms="us"):
    return [(r.label, r.counts[0], r.agrees) for r in check_source(Source.of(text + "\n"), terms).rows]


def findings(text):
    return [(f.code, f.severity) for f in check_source(Source.of(text + "\n"), "us").findings if f.code in ("W001", "W003", "N005", "N002")]


@pytest.mark.parametrize("how", ["but making 7 dc instead of 5 dc in each shell", "with 7 instead of 5 in each", "working seven dc in place of five"])
def test_one_number_for_another(how):
    assert rows(f"{SHELLS}Row 3: Ch 1, sc in first dc, *5 dc in next sc, sc in 3rd dc of next shell; rep from * across, turn. (4 shells)\nRow 4: As Row 3, {how}.")[2][1] == 25
    text = f"Rnd 1: 12 sc in magic ring. (12 sc)\nRnd 2: *Sc in next st, 5 dc in next st; rep from * around. (36)\nRnd 3: As Rnd 2, {how}."
    assert rows(text)[-1] == ("Rnd 3", 18 * 8, None)


def test_one_stitch_for_another():
    assert rows("Row 1: Ch 11, sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Ch 1, turn, hdc in each st. (10 hdc)\nRow 3: As Row 2, but sc instead of hdc. (10 sc)")[-1] == ("Row 3", 10, True)


def test_what_differs_without_saying_where_is_taken_from_the_print_and_said():
    text = f"{GRANNY}Rnd 3: As Rnd 2, but with one more group of 3 dc on each side. (36 dc)\nRnd 4: Sc in each dc and in each ch-1 sp around. (60 sc)"
    report = check_source(Source.of(text + "\n"), "us")
    assert report.rows[2].counts == (36,)
    assert report.rows[2].agrees is None
    assert any("taken from the print" in a.message for a in report.assumptions)
    assert [f for f in report.findings if f.severity is None and f.code == "W001"] == []  # nothing is sure of what stands on it


def test_what_differs_without_a_count_is_not_worked():
    text = f"{GRANNY}Rnd 3: Work as Rnd 2, but with some more stitches in the corners."
    assert rows(text)[-1] == ("Rnd 3", None, None)
    assert [code for code, _ in findings(text)] == ["N005"]


@pytest.mark.parametrize("how", ["but do not turn", "but with B", "using yarn B", "working in back loops only"])
def test_what_changes_no_number_is_worked_as_told(how):
    assert rows(f"Rnd 1: 12 sc in magic ring. (12 sc)\nRnd 2: 2 sc in each st around. (24 sc)\nRnd 3: As Rnd 2, {how}. (48 sc)")[-1] == ("Rnd 3", 48, True)
