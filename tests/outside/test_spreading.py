"""Even spreading against Bresenham's line, written here anew, and against printed Euclidean rhythms.

Sources: J. E. Bresenham, "Algorithm for computer control of a digital plotter", IBM Systems Journal 4(1), 1965, 25-30; the rhythms printed in
G. Toussaint, "The Euclidean algorithm generates traditional musical rhythms", Bridges 2005 (copied from memory of the paper, checked by
their numbers of onsets and pulses). The method behind the rhythms is held against ours in tests/shaping.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading import spread

# Printed by Toussaint (2005), section 4: onsets, pulses, rhythm.
PRINTED = [
    (2, 5, "x.x.."), (3, 4, "x.xx"), (3, 5, "x.x.x"), (3, 7, "x.x.x.."), (3, 8, "x..x..x."), (4, 7, "x.x.x.x"), (4, 9, "x.x.x.x.."),
    (4, 11, "x..x..x..x."), (5, 6, "x.xxxx"), (5, 7, "x.xx.xx"), (5, 8, "x.xx.xx."), (5, 9, "x.x.x.x.x"), (5, 11, "x.x.x.x.x.."),
    (5, 12, "x..x.x..x.x."), (5, 16, "x..x..x..x..x..."), (7, 8, "x.xxxxxx"), (7, 12, "x.xx.x.xx.x."), (7, 16, "x..x.x.x..x.x.x."),
    (9, 16, "x.xx.x.x.xx.x.x."), (11, 24, "x..x.x.x.x.x..x.x.x.x.x."), (13, 24, "x.xx.x.x.x.x.xx.x.x.x.x."),
]  # fmt: skip


def bresenham(total: int, parts: int) -> list[int]:
    """Gaps between the columns in which a line of `parts` rows over `total` columns climbs, by his running error term."""
    gaps, run, error = [], 0, 0
    for _ in range(total):
        run += 1
        error += parts
        if 2 * error >= 2 * total:
            error -= total
            gaps.append(run)
            run = 0
    return gaps


def gaps_of(rhythm: str) -> list[int]:
    """Distances from onset to onset, the last round to the first."""
    at = [i for i, sign in enumerate(rhythm) if sign == "x"]
    return [b - a for a, b in zip(at, [*at[1:], at[0] + len(rhythm)], strict=True)]


def turns(gaps: list[int]) -> set[tuple[int, ...]]:
    """The gaps from every starting place, forwards and backwards: a round has no first stitch."""
    both = (gaps, gaps[::-1])
    return {tuple(way[i:] + way[:i]) for way in both for i in range(len(way))}


@pytest.mark.parametrize(("onsets", "pulses", "rhythm"), PRINTED)
def test_spreading_is_the_printed_euclidean_rhythm(onsets: int, pulses: int, rhythm: str) -> None:
    assert (rhythm.count("x"), len(rhythm)) == (onsets, pulses)
    assert spread.even(pulses, onsets) in turns(gaps_of(rhythm))


@given(st.integers(1, 400), st.data())
def test_spreading_is_bresenhams_line(total: int, data: st.DataObject) -> None:
    parts = data.draw(st.integers(1, total))
    assert spread.even(total, parts) in turns(bresenham(total, parts))
