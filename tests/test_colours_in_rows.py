"""Stitches counted by their colours, as charts in two colours are written out, and colours told with the stitches."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

ROW_1 = "Row 1: With A, ch 21, sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"


def _row_2(words: str) -> tuple[int | None, str, list[str]]:
    """How many stitches Row 2 makes, their colours, and the codes of what was found in it."""
    report = check_source(Source.of(f"{ROW_1}Row 2: Ch 1, {words}, turn. (20 sc)\n"))
    fabric = report.fabrics[0]
    assert fabric is not None
    row = fabric.rows[-1]
    colours = "".join(fabric.colours[fabric.colour[i]][0] for i in range(row.end - 20, row.end))
    return report.rows[-1].counts[0], colours, [f.code for f in report.findings if f.code[0] in "NWD"]


@pytest.mark.parametrize("words", [
    "3 A, 5 B, 4 A, 5 B, 3 A",
    "(A) x 3, (B) x 5, (A) x 4, (B) x 5, (A) x 3",
    "A x 3, B x 5, A x 4, B x 5, A x 3",
    "sc 3 in A, 5 in B, 4 in A, 5 in B, 3 in A",
    "3 sc in A, 5 sc in B, 4 sc in A, 5 sc in B, 3 sc in A",
    "sc 3 with A, sc 5 with B, sc 4 with A, sc 5 with B, sc 3 with A",
    "with A sc in next 3 sts, with B sc in next 5, A 4, B 5, A 3",
    "sc across: 3 A, 5 B, 4 A, 5 B, 3 A",
    "A: sc 3, B: sc 5, A: sc 4, B: sc 5, A: sc 3",
    "sc 3 (A), sc 5 (B), sc 4 (A), sc 5 (B), sc 3 (A)",
])
def test_stitches_counted_by_colours(words):
    assert _row_2(words) == (20, "AAABBBBBAAAABBBBBAAA", [])


def test_repeats_of_colours():
    assert _row_2("*sc 2 with A, sc 3 with B; rep from * across") == (20, "AABBB" * 4, [])
    assert _row_2("A x 2, [B x 2, A x 2] x 4, A x 2") == (20, "AABBAABBAABBAABBAAAA", [])


@pytest.mark.parametrize("words", [
    "sc in each st across in B", "sc in each st across with B", "using B sc in each st across", "change to B. Sc in each st across",
])
def test_colours_told_with_the_stitches_are_understood(words):
    made, colours, found = _row_2(words)
    assert (made, colours, found) == (20, "B" * 20, [])


@pytest.mark.parametrize("words", [
    "hdc in sp between first 2 hdc, hdc in each sp between sts across", "hdc in sp between first and second st, hdc in each sp across",
    "hdc in sp between first 2 hdc, *hdc in sp between next 2 hdc; rep from * across", "hdc in each sp between sts across",
    "sk first sp, hdc in each sp between sts across, hdc in top of tch",
])
def test_spaces_between_stitches_begin_beside_the_turning_chain(words):
    """Twenty stitches have 19 spaces between them; the chain that stands for a stitch is the twentieth. Plain counting, no source."""
    report = check_source(Source.of(
        "Row 1: Ch 21, hdc in 3rd ch from hook (counts as 2 hdc) and in each ch across, turn. (20 hdc)\n"
        f"Row 2: Ch 2 (counts as hdc), {words}, turn. (20 hdc)\n",
    ))
    assert report.rows[1].counts == (20,)
    assert [f.code for f in report.findings if f.code[0] in "NWD"] == []
