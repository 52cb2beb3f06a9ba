"""A star behind a bracket, and a list named by both its marks. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize("gloss", ["(a sc)", "(first sc)", "(= sc)"])
def test_a_first_star_behind_a_bracket_opens_a_repeat(gloss):
    assert first_counts(f"Rnd 1: 20 dc in ring.\nRnd 2: ch1 {gloss} *ch 4, sk 3 dc, sc in next dc* rep * to * 3 more times, ch 4, join.\n")[-1] == 5


@pytest.mark.parametrize(("times", "made"), [("6 times", 8), ("6 more times", 8), ("5 times", 7)])
def test_from_mark_to_mark_so_many_times_more(times, made):
    assert first_counts(f"Rnd 1: Ch 4 (1 dc, ch 1), * dc in ring, ch 1 **; * to ** {times}. Sl st into 3rd ch of ch 4. ({made} dc)\n") == [made]


@pytest.mark.parametrize("begun", ["Ch 3, (first hdc and ch-1) hdc in same st.", "Ch 3 (hdc and ch 1), hdc in same st.", "Ch 3, (1st hdc plus ch 1) hdc in same st."])
def test_a_chain_that_is_a_stitch_and_a_space(begun):
    text = f"Ch 24, join.\nRnd 1: {begun} ** Skip next ch, (hdc, ch 1, hdc) in next ch. * Rep ** to * to end. Join to 2nd ch of first ch-3. (12 ch-1 spaces)\n"
    assert first_counts(text) == [24, 24]


@pytest.mark.parametrize("ring", ["(ch 5 ring)", "(ch 5 in a ring)", "(ch 5, sl st)", "(chain 5, joined in a ring)", "(with A, ch 5, join)", "Ch 5 in a ring,"])
def test_what_a_first_round_is_made_on_told_in_brackets(ring):
    assert first_counts(f"Rnd 1: {ring} ch 3, 13 dc in ring; join.\n") == [14]


@pytest.mark.parametrize("chain", ["(ch 28 in a ring)", "(Ch 28, join)", "Ch 28 in a ring,"])
def test_a_ring_as_long_as_the_round(chain):
    assert first_counts(f"Rnd 1: {chain} Ch 1, sc in each ch.\n") == [28]


def test_in_british_terms():
    for ring in ("(5ch ring)", "(4ch, ss)"):
        assert first_counts(f"Round 1: {ring} 3ch, 15tr into ring. Ss into 3rd of 3ch.\n", "uk") == [16]


def test_where_a_piece_begins_told_in_brackets():
    assert first_counts("Row 1: (start at lower edge, ch 33) Dc in 4th ch and each to end.\n") == [31]


def test_rows_told_in_a_leaflet_for_a_toy():
    text = (
        "BODY: Using 2 strands of brown, ch 26 & work 24 hdc on ch, ch 2 to turn each row.\n2ND ROW: 1 Hdc in each hdc.\n3RD ROW: Dec 1 hdc at beg of row & work 1 hdc in each rem hdc.\n"
        "4TH ROW: 1 Hdc in each hdc, rep 3rd & 4th rows twice.\n9TH ROW: 1 Hdc in each hdc with 2 hdc in last hdc.\n"
    )
    assert first_counts(text)[-9:] == [24, 24, 23, 23, 22, 22, 21, 21, 22]


@pytest.mark.parametrize(("each", "made"), [("3", 26), ("three", 26), ("2", 24), ("4", 28)])
def test_so_many_at_each_of_two_ends(each, made):
    text = "Ch 10.\n1st rnd: Sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch, sc in next 7 ch on other side, 2 sc in last ch.\n"
    assert first_counts(f"{text}2nd rnd: 1 sc in each sc on sides & 2 sc in each of the {each} sc at each end.\n")[-2:] == [20, made]


def test_a_star_that_was_forgotten():
    assert first_counts("Ch 37.\nRow 1: Dc in 4th ch from hook, dc in next 4 ch, * 2 dc in next ch, dc in next 6 ch, repeat from 3 times more. (38)\n")[-1] == 1 + 1 + 4 + 4 * 8


@pytest.mark.parametrize("led", ["sl st to 3rd ch of loop", "sl st in next 2 ch and in loop", "sl st to center of loop"])
def test_the_loop_that_the_slip_stitches_lead_to(led):
    loops = "Ch 60, join.\nRnd 1: ch 1, *sc, ch 5, skip 4 ch; rep from * around, join. (12 loops)\n"
    assert first_counts(f"{loops}Rnd 2: {led}, ch 1, sc in loop, *ch 5, sc in next loop; rep from * around, ch 5, join.\n")[-1] == 12
