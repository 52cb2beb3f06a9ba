"""The same word over and over: read within bounds, kept as it stands, and never a fault of the program."""

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

WORDS = (" ", "a", "1 ", "12, ", "(", "[", "* ", ". ", "the ", "in ", "rep ", "A1", "+1", "with A ", "rows 2 and ", "to ", "{", "ab-", "\t")


@pytest.mark.parametrize("word", WORDS)
@pytest.mark.parametrize("line", ["Row 1: sc in next st {}x", "Abbreviations: {}", "{} sc in next st.", "Row 1: ch 3 {} (12 sc)"])
def test_a_word_over_and_over(line: str, word: str) -> None:
    text = "Rnd 1: 12 sc in magic ring. (12 sc)\n" + line.replace("{}", word * (1500 // len(word)))
    document = read(Source.of(text), "us")
    assert write(document) == text
    assert work(document).rows[0].counts == (12,)


def test_repeats_of_repeats_end() -> None:
    report = work(read(Source.of("Rnd 1: 6 sc in magic ring.\nRnd 2: sc in next st, " + "repeat around, " * 400), "us"))
    assert len(report.rows) == 2
    assert any(f.code == "N002" for f in report.findings)


def test_rows_along_edges_over_and_over() -> None:
    report = work(read(Source.of("Rnd 1: 12 sc in magic ring. (12 sc)\nNext 300 rnds: Work 60 sc evenly around neck edge, join. (60 sc)"), "us"))
    assert [row.counts[0] for row in report.rows] == [12, *[60] * 300]
    assert [len(fabric) > 300 * 60 for fabric in report.fabrics if fabric is not None] == [True]


@pytest.mark.parametrize("round_of", ["ch 1, dc in next sp; rep from * twice more, ", "sc in next st, ch 1; rep from1 ch; ", "*Fpdc around rep from", "ch 3, dc in next st, repeat from beginning around, ", "*(dc, ch 1, dc) in next st, sc around rep from "])
def test_lists_within_lists_do_not_double(round_of):
    text = "Rnd 1: 12 sc in magic ring. (12 sc)\nNext rnd: " + round_of * 20 + " * around; sl st to first sc. (18 sc)\n"
    document = read(Source.of(text), "us")
    assert write(document) == text
    assert len(repr(document.items)) < 200_000
    assert len(work(document).rows) == 2
