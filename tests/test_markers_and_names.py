"""Markers placed within brackets and skipped to, names given to the first of like groups, repeats told as going on."""

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source
from tests.line_by_line import first_counts

CORNERED = "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each of next 7 ch, 3 sc in next ch {}, sc in last 10 ch, turn. (21 sc)\nRow 2: Ch 1, sc to marked st, 3 sc in marked st, sc to end, turn. (23)"


def test_a_marker_within_a_bracket() -> None:
    for told in ("(pm)", "(place marker in center st)", "(place marker in 2nd sc of 3)", "(pm in the middle sc)"):
        text = CORNERED.format(told)
        assert first_counts(text) == [20, 21, 23], told
        assert not [f for f in check_source(Source.of(text)).findings if f.code.startswith(("N", "W"))], told


def test_skipping_from_marker_to_marker() -> None:
    text = """Ch 31.
Row 1: Sc in 2nd ch from hook and in each of next 5 ch, 3 sc in next ch (pm), sc in next 5 ch, 3 sc in next ch (pm), sc in next 9 ch, 3 sc in next ch (pm), sc in next 4 ch, 3 sc in next ch (pm), sc in last 2 ch, turn. (38 sc)
Row 2: Ch 1, sc to marker, skip all sts to next marker, sc to next marker, skip all sts to next marker, sc to end, turn.
"""
    # turned: 3 before the first marker; skipped to the second; that one and 11 to the third; then the fourth and the 7 behind it
    assert first_counts(text) == [30 + 1, 38, 3 + (1 + 11) + (1 + 7)]


def test_groups_like_the_one_that_was_named() -> None:
    text = "Ch 22.\nRow 1: 5 dc in 6th ch from hook (shell made), *skip 3 ch, 5 dc in next ch; rep from * across to last 4 ch, skip 3 ch, dc in last ch. (4 shells, 2 dc)\nRow 2: Ch 3, shell in center dc of each shell across, dc in top of tch. (4 shells)"
    rows = work(read(Source.of(text), "us")).rows
    assert [(r.made.get("shell"), r.agrees) for r in rows[1:]] == [((4,), True), ((4,), True)]


def test_a_repeat_told_as_going_on() -> None:
    for words in ("continue in this way around", "continue this way around", "continue like this around", "continue from * around"):
        assert first_counts(f"Rnd 1: 12 dc in ring.\nRnd 2: *Dc in next st, 2 dc in the next; {words}. (18)") == [12, 18], words


def test_pieces_called_by_a_letter() -> None:
    text = "A\nCh 5.\nRow 1: Sc in 2nd ch from hook and in each ch across. (4)\n\nB\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across. (6)"
    assert first_counts(text) == [5, 4, 7, 6]


def test_all_in_a_chain_told_by_its_number() -> None:
    text = "Ch 24.\nRow 1: 2 dc, ch 1, 2 dc all in 6th ch from hook, *skip 3 ch, (2 dc, ch 1, 2 dc) in next ch; rep from * across to last 2 ch, skip 1 ch, dc in last ch."
    assert first_counts(text) == [24, 1 + 5 * 4 + 1]
