"""Counts, discs, tapers, yokes, borders, motifs: laws that hold for all numbers, and small cases by hand."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading import borders, counting, discs, motifs, multiples, raglan, tapers
from loopwright.grading.counting import Legal


@given(st.integers(1, 40), st.integers(0, 30), st.fractions(0, 500))
def test_nearest_is_nearest(multiple, plus, target):
    legal = Legal(multiple, plus)
    found = legal.nearest(target)
    all_of_them = [c for c in range(1, 600) if legal.allows(c)]
    best = min(abs(c - target) for c in all_of_them)
    assert list(found) == [c for c in all_of_them if abs(c - target) == best]


def test_a_gauge_of_nothing_is_refused():
    with pytest.raises(ValueError, match="above zero"):
        counting.pitch_mm(0, 100)


def test_two_sizes_of_one_gauge_agree():
    assert counting.consistent([80, 90], [470, 529])
    assert not counting.consistent([80, 90], [470, 600])


@given(st.integers(1, 400), st.integers(1, 20))
def test_a_crown_ends_on_its_target(target, per_round):
    counts = discs.crown(target, per_round)
    assert counts[-1] == target
    assert all(0 < g <= per_round for g in discs.gains(counts))
    assert all(g == per_round for g in discs.gains(counts)[:-1])


@given(st.integers(1, 30), st.integers(0, 300))
def test_sharing_grows_by_equal_steps(rounds, more):
    gains = discs.gains(discs.sharing(rounds + more, rounds))
    assert sum(gains) == rounds + more
    assert max(gains) - min(gains) <= 1


def test_flat_or_not():
    assert discs.lies(8, discs.flat_rate(100 / 17, 100 / 13)) == "flat"  # 17 hdc and 13 rounds: 8.2
    assert discs.lies(8, 9.6) == "cups"
    assert discs.lies(8, 7.2) == "ruffles"


def test_rounds_of_a_width():
    assert discs.rounds_for(154, Fraction(100, 13)) == 10
    assert discs.rounds_for(0, 5) == 1
    assert discs.across_by_rounds_mm(10, Fraction(100, 13)) == Fraction(2000, 13)


def test_oval_and_ball():
    assert discs.oval(10, 3) == (26, 32, 38)
    ball = discs.ball_counts(24)
    assert ball == ball[::-1]
    assert max(ball) == 24
    assert math.isclose(sum(ball), 24 * 24 / math.pi, rel_tol=0.05)  # area of a ball: equator squared / pi


@given(st.integers(1, 60), st.integers(0, 300))
def test_schedules_use_all_rows(events, more):
    rows = events + more
    steps = tapers.schedule(rows, events)
    assert tapers.rows_of(steps) == rows
    assert tapers.events_of(steps) == events
    assert len({s.every for s in steps}) <= 2
    assert tapers.alternating(rows, events)[-1] == rows
    if events <= rows // 2:
        turned = tapers.turned_rows(rows, events)
        assert all(s.every % 2 == 0 for s in turned)
        assert tapers.rows_of(turned) == rows - rows % 2


@given(st.integers(0, 30), st.integers(0, 30))
def test_compound_finds_what_was_made(close, wide):
    steps = tapers.compound(2 * close + 4 * wide, close + wide)
    assert steps == tuple(s for s in (tapers.Step(2, close), tapers.Step(4, wide)) if s.times)


def test_what_cannot_be_shaped_is_said():
    assert tapers.compound(9, 4) is None
    assert tapers.schedule(10, 0) == ()
    for call in (lambda: tapers.pairs(60, 37), lambda: tapers.schedule(5, 6), lambda: tapers.neck(40, 15, 6), lambda: borders.stop_under_mm(20, 25)):
        with pytest.raises(ValueError, match=r".+"):
            call()


def test_raglan_from_neck_to_chest():
    neck = raglan.Parts(front=22, sleeve=8, back=22, corners=8)
    assert neck.total == 68
    rows = raglan.rows_to_reach(neck, body=128, underarm=6)
    yoke = raglan.grown(neck, rows)
    assert yoke.total == neck.total + 8 * rows
    body, sleeve = raglan.parted(yoke, 6)
    assert abs(body - 128) <= 2
    assert body + 2 * sleeve == yoke.total + 4 * 6  # each underarm is made once and worked from both sides


@given(st.integers(20, 120), st.integers(0, 300), st.integers(1, 8))
def test_round_yoke_grows_to_its_end(neck, more, rounds):
    counts = raglan.round_yoke(neck, neck + more, rounds, Legal(6))
    assert len(counts) == rounds
    assert counts[-1] == neck + more


@given(st.integers(1, 60), st.integers(1, 60))
def test_a_rate_in_words_is_the_rate(a, b):
    rate = Fraction(min(a, b), max(a, b))
    words = borders.in_words(rate)
    assert Fraction(sum(k for k, _ in words), sum(n for _, n in words)) == rate


def test_a_border_meets_at_its_corners():
    first = borders.around(101, 79, Legal(6, 1))
    assert (first.long_side, first.short_side) == (103, 79)
    assert borders.next_round(first).total == first.total + 8


def test_a_cord_worked_back_has_one_chain_more():
    assert borders.cord_chain(200, 4, turning=1) == 51


@given(st.integers(1, 20), st.integers(0, 20), st.integers(0, 4), st.integers(0, 30))
def test_a_chain_holds_the_repeats_it_was_made_for(repeat, edge, turning, n):
    m = multiples.Multiple(repeat, edge, turning)
    assert m.repeats_in_chain(m.chain(n)) == n
    assert m.repeats_within(m.chain(n)) == n


@given(st.integers(1, 300), st.integers(1, 5), st.booleans())
def test_chain_and_stitches_are_each_others_opposite(stitches, first_in, counts):
    assert multiples.stitches_from_chain(multiples.chain_for_stitches(stitches, first_in, counts=counts), first_in, counts=counts) == stitches


def test_common_multiple_of_rows():
    assert multiples.common_multiple([4, 6]) == 12
    assert multiples.common_multiple([]) == 1


def test_joins_of_a_throw():
    assert motifs.joins(motifs.covering(500, 600, 100)) == 4 * 6 + 5 * 5
