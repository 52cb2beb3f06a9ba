"""Even spreading, against an independent algorithm and by its own laws."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading import spread

EVENTS = st.integers(1, 40)
TOTALS = st.integers(1, 400)


def euclidean_rhythm(events, steps):
    """Bjorklund's way (Toussaint 2005): lists are paired off until the rest is one or none. Gives the gaps between events."""
    heads, tails = [[1]] * events, [[0]] * (steps - events)
    while len(tails) > 1:
        n = min(len(heads), len(tails))
        paired = [h + t for h, t in zip(heads, tails, strict=False)]
        heads, tails = paired, heads[n:] + tails[n:]
    beats = [b for group in heads + tails for b in group]
    at = [i for i, b in enumerate(beats) if b]
    return tuple(b - a for a, b in itertools.pairwise([*at, at[0] + steps]))


@given(EVENTS, TOTALS)
def test_same_rhythm_as_bjorklund(events, total):
    events = min(events, total)
    ours, theirs = spread.even(total, events), euclidean_rhythm(events, total)
    assert any(theirs[i:] + theirs[:i] in (ours, ours[::-1]) for i in range(events))


@given(TOTALS, EVENTS)
def test_no_stretch_has_more_than_its_share(total, parts):
    gaps = spread.even(total, parts)
    assert sum(gaps) == total
    assert max(gaps) - min(gaps) <= 1
    for i, end in enumerate(itertools.accumulate(gaps), 1):
        assert 0 <= end - i * total / parts < 1


@given(TOTALS, EVENTS)
def test_flat_positions_keep_off_the_edges_evenly(total, events):
    events = min(events, total)
    at = spread.positions_flat(total, events)
    assert list(at) == sorted(set(at)) or total < 2 * events
    assert all(0 <= p <= total for p in at)
    if total >= 2 * events:
        assert at[0] >= 1
        assert at[-1] <= total
        assert abs((at[0]) - (total - at[-1])) <= 1


@given(st.integers(1, 30), st.integers(2, 300), st.integers(0, 10))
def test_increases_and_decreases_use_the_row_up(events, total, offset):
    if events <= total:
        runs = spread.increases(total, events, offset=offset)
        assert sum(runs) + events == total
    if 2 * events <= total:
        assert sum(spread.decreases(total, events, offset=offset)) + 2 * events == total


@given(st.integers(1, 20), st.integers(1, 200), st.sampled_from([1, 2]))
def test_staggered_uses_the_same_stitches(events, total, uses):
    if events * uses > total:
        return
    runs = spread.staggered(total, events, uses=uses)
    assert sum(r.times * (r.plain + uses * r.event) for r in runs) == total
    assert sum(r.times for r in runs if r.event) == events


def test_half_of_the_first_run_moves_to_the_end():
    assert spread.staggered(24, 6, uses=2) == (spread.Run(1), spread.Run(2, 5), spread.Run(1, event=False))


def test_offset_starts_elsewhere():
    assert spread.increases(51, 4) == (12, 12, 12, 11)
    assert spread.increases(51, 4, offset=3) == (11, 12, 12, 12)


@pytest.mark.parametrize("call", [lambda: spread.increases(3, 4), lambda: spread.decreases(7, 4), lambda: spread.even(-1, 2)])
def test_what_does_not_fit_is_said(call):
    with pytest.raises(ValueError, match=r".+"):
        call()
