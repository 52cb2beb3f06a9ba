"""What stands on the page and in no stitch of the tree is in the written text too; what is said elsewhere is not said twice."""

from typing import Any

from law import WAYS, again, same, worked  # type: ignore[import-not-found,unused-ignore]

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write

COLOURS = """Tideline

Yarn: DK in A (navy), B (sand)
Terms: US

With A, ch 21.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
Row 2: With B, ch 1, sc in each st across, turn. (20 sc)
Rows 3-6: With A, rep Row 2.
"""
SIZED = """Samphire

Sizes: Child (Adult S, Adult L)
Terms: US

Ch 21 (25, 29).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28) sc)
Sizes Adult S and Adult L only
Row 2: Ch 1, sc in each st across, turn. (24, 28 sc)
Size Adult L only
Row 3: Ch 1, sc in each st across, turn.
All sizes
Next row: Ch 1, sc in each st across, turn.
"""
LISTED = """Reedbed

ABBREVIATIONS (UK terms)
ch - chain
dc - double crochet
st(s) - stitch(es)

NOTE
3 ch at the start of a row counts as 1 tr. 1 ch does not count as a st.

Make 21 ch.
Row 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. (20 dc)
"""
NOTED = """Thrift

YARN: fingering weight, 100 g = 400 m
ABBREVIATIONS: ch = chain; dc = double crochet; st(s) = stitch(es)

PATTERN NOTES
The ch-3 at the beginning of a row counts as 1 dc.

Ch 4, join with sl st to form a ring.
Row 1: Ch 3, 2 dc in ring, ch 2, 3 dc in ring, turn. 6 dc
Row 2: Ch 3, 2 dc in first st, dc in each st to ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in each st to last st, 3 dc in last st, turn. 14 dc
Rows 3-5: Repeat Row 2. 38 dc
"""


def _said(text: str, terms: str = "us", **how: Any) -> str:
    first = worked(text)
    return write(first.document, first.report, terms=terms, **how)


def test_the_colour_that_a_row_begins_with_is_kept() -> None:
    said = _said(COLOURS)
    assert "Row 2: With B, ch 1, sc in each st across, turn. (20 sc)" in said
    assert "Rows 3-6: With A, rep Row 2. (20 sc)" in said
    assert "Row 2: With B, chain 1, single crochet" in _said(COLOURS, full_words=True)
    assert "R 2: Mit B, 1 Lm" in _said(COLOURS, language="de")


def test_sizes_are_named_once_before_their_rows() -> None:
    said = _said(SIZED)
    assert said.count("Adult S, Adult L only") == 1
    assert said.lower().count("all sizes") == 1
    assert "only" not in _said(SIZED, size=2)


def test_a_list_of_abbreviations_stands_once_and_in_the_terms_of_the_text() -> None:
    said = _said(LISTED)
    assert said.count("single crochet") == 1
    assert "UK terms" not in said
    assert "Ch 3 at the start of a row counts as 1 dc. Ch 1 does not count as a st." in said


def test_the_first_row_after_notes_is_read_again_as_a_row() -> None:
    said = _said(NOTED)
    assert "Yarn: fingering weight" in said
    assert "Rows 3-5: Repeat Row 2. (38 dc)" in said


def test_all_of_them_make_the_same_fabric_when_they_are_read_back() -> None:
    for text in (COLOURS, SIZED, LISTED, NOTED):
        first = worked(text)
        for terms, full, spelled in WAYS:
            for size in (None, *range(len(first.document.sizes))):
                said, report = again(first, terms, size, full, spelled)
                assert same(first.report, report, size), said


def test_a_count_without_brackets_is_read_behind_a_repeated_row() -> None:
    rows = [i for i in read(Source.of("Row 3: Sc in each st.\nRows 4-9: Rep Row 3. 48 sts.\nRow 10: Rep rows 5 - 8."), "us").items if hasattr(i, "printed")]
    assert [[c.n.values for c in r.printed] for r in rows] == [[], [(48,)], []]
