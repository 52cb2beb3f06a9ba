"""Rows that go on to their end and keep something for it: "sc in each sc, 2 sc in last sc". The counts are worked by hand."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

EIGHT = "Hem\n\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc)\nRow 2: {}.\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in first sc, sc in each sc, 2 sc in last sc", 10),
        ("2 sc in first sc, sc in each sc across, 2 sc in last sc", 10),
        ("2 sc in the first sc, sc in each sc, 2 sc in the last sc. 10 sc in all", 10),
        ("2 sc in the first sc, sc in each sc, 2 sc in the last sc. 10 sc in last row", 10),
        ("1 sc in each sc working 2 sc in last sc", 9),
        ("1 sc in each sc of row, ending with 2 sc in last sc", 9),
        ("sc2tog, sc in each sc across, sc2tog", 6),
        ("1 sc in each sc, leaving last 2 sc unworked", 6),
        ("Inc 1 sc in first sc, sc in each sc to last sc, inc 1 sc in last sc", 10),
        ("Dec 1 st at each end, sc in each st across", 6),
        ("Inc 1 st at each end of row, sc in each st between", 10),
        ("Decrease 1 sc at beginning of row, sc in each remaining st", 7),
    ],
)
def test_what_the_end_needs_is_kept(words: str, made: int) -> None:
    report = work(read(Source.of(EIGHT.format(words)), "us"))
    assert report.rows[-1].counts == (made,)
    assert report.findings == ()


def test_a_number_before_the_last_stitch_is_no_count() -> None:
    report = work(read(Source.of(EIGHT.format("Sc in each sc across, 3 sc in last sc")), "us"))
    assert report.rows[-1].printed is None
    assert report.rows[-1].counts == (10,)


def test_a_stitch_for_the_turning_chain_is_not_kept_among_those_of_a_kind() -> None:
    text = "Hem\n\nCh 12.\nRow 1: Dc in 4th ch from hook and in each ch across. (10 dc)\nRow 2: Ch 3 (counts as dc), turn, sk first dc, dc in each dc, dc in top of turning ch. (10 dc)\n"
    report = work(read(Source.of(text), "us"))
    assert [row.counts[0] for row in report.rows] == [12, 10, 10]
    assert report.findings == ()


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("Ch 8, join with sl st to form ring.\nRnd 1: Ch-3, 16 dc in ring, join.\nRnd 2: Ch-3, dc in next dc, *ch-2, skip next dc, dc in next dc; rep from * around, ending with ch-2, sl st in top.\n", [8, 17, 9]),
        ("Ch 7. Join.\nRnd 1: Ch 4, (hdc in ring, ch 2) 9 times. Join last ch-2 with sl st in top of starting chain.\nRnd 2: Ch 3, *2 dc in next sp, dc in next hdc; rep from * around, ending with 2 dc in last sp; join.\n", [7, 10, 30]),
        ("Rnd 1: 14 dc in magic ring, join.\nRnd 2: Ch 1, hdc in same st, *ch 2, hdc in next dc; rep from * around, ch 2, sl st in first hdc of round.\n", [14, 14]),
    ],
)
def test_rounds_of_old_leaflets(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(f"Mat\n\n{text}"), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == counts


def test_a_round_begun_at_any_loop_comes_back_to_it() -> None:
    text = (
        "Mat\n\nCh 6, join.\nRnd 1: Ch 1, 20 sc in ring, join.\nRnd 2: Ch 1, sc in first sc, *ch 6, sk 3 sc, sc in next sc; rep from * around. Join. (5 loops)\n"
        "Rnd 3: Sl st in loop, ch 4, 6 tr in same loop, 7 tr in each loop around, join.\nRnd 4: Ch 1, sc in same st, sc in next 6 tr, *ch 4, sc in next 7 tr; rep from * around. Join.\n"
        "Rnd 5: Attach Gold to any loop, ch 3, dc in same loop, ch 3, 2 dc in same loop, *ch 2, sk 3 sc, 2 dc in next sc, ch 2, in next loop work 2 dc, ch 3 and 2 dc; rep from * around. Join.\n"
    )
    report = work(read(Source.of(text), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == [6, 20, 5, 35, 35, 30]
    assert report.rows[4].made["ch-sp"] == (5,)


def test_what_the_last_repeat_ends_with_may_be_told_of_its_end() -> None:
    row = "Dc in 4th ch from hook and in next 3, 3 dc in next ch, dc in next 4, *dc2tog, dc in next 3, 3 dc in next ch, dc in next 4; rep from *, at the end of last rep dc in next 2, dc2tog."
    report = work(read(Source.of(f"Ripple\n\nCh 32.\nRow 1: {row}\n"), "us"))
    assert report.findings == ()
    assert report.rows[-1].counts == (33,)
