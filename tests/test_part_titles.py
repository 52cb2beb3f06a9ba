"""Titles of parts before the first row of each, one behind another, as leaflets print them."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SKIRT = "Skirt: Ch 20, turn.\n1st row: Sc in 2nd ch from hook and in each ch.\n{}\n1st row: Sc in 2nd ch from hook and in each ch.\n"


@pytest.mark.parametrize(
    ("words", "title"),
    [
        ("Blouse: Ch 115, turn.", "Blouse"),
        ("Blouse: Back: Ch 115, turn.", "Blouse: Back"),
        ("BLOUSE: BACK: Ch 115, turn.", "BLOUSE: BACK"),
        ("Jacket: Left Front: With B, ch 115, turn.", "Jacket: Left Front"),
        ("BLOUSE. BACK. Ch 115, turn.", "BLOUSE: BACK"),
        ("BLOUSE—Back—Ch 115, turn.", "BLOUSE: Back"),
        ("BLOUSE. Back. Starting at lower edge, ch 115, turn.", "BLOUSE: Back"),
    ],
)
def test_a_part_begins_anew(words: str, title: str) -> None:
    report = work(read(Source.of(f"Outfit\n\n{SKIRT.format(words)}"), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == [20, 19, 115, 114]
    assert report.rows[-1].section == title


def test_bold_print_run_into_the_words_is_a_label() -> None:
    text = "Mat\n\nCh 5, join to form a ring.\n1st RoundCh 1, 8 s c in ring, join.\n2nd Round2 s c in each s c, join.\n3rd Round* 2 d c in next s c, 1 d c in next s c, repeat from * all around, join.\n"
    report = work(read(Source.of(text), "us"))
    assert [row.counts[0] for row in report.rows] == [5, 8, 16, 24]
    assert [row.label for row in report.rows][1:] == ["1st Round", "2nd Round", "3rd Round"]


def test_a_chain_told_by_its_length_is_as_long_as_the_first_row_needs() -> None:
    text = "Shelf edging\n\nBeginning at lower edge, make a chain 30 inches long.\n1st row: Sc in 2nd ch from hook and in next 9 ch, (ch 3, sk 3 ch, sc in next 12 ch) 15 times; ch 3, sk 3 ch, sc in next 10 ch. Cut off remaining chain.\n"
    report = work(read(Source.of(text), "us"))
    assert [row.counts[0] for row in report.rows] == [10 + 15 * 12 + 10]


def test_a_first_row_that_goes_on_to_its_end_does_not_tell_its_chain() -> None:
    report = work(read(Source.of("Edging\n\n1st row: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across.\n"), "us"))
    assert [f.code for f in report.findings] == ["D001"]
