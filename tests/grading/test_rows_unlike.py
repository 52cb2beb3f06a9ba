"""Numbers of rows that are not all as tall: the one chosen is nearest, whatever heights take turns, by trying them all."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading.choose import Problem, Run, Sought, candidates, choose, split

HEIGHTS = st.lists(st.integers(1, 400).map(lambda n: n / 10), min_size=1, max_size=4).map(tuple)
HIGH = 60


@given(HEIGHTS, st.integers(1, 3), st.integers(-3, 4), st.integers(1, 4), st.integers(0, 3), st.integers(0, 900), st.integers(0, 50))
def test_the_nearest_of_all(turn: tuple[float, ...], per: int, more: int, multiple: int, rest: int, target: int, const: int) -> None:
    own = Run("a", turn, per, more)
    step = per * sum(turn) / len(turn)
    s = Sought("a", step, float(target), multiple, rest % multiple, 1, HIGH, runs=(own,), const_mm=float(const))
    legal = [n for n in range(1, HIGH + 1) if n % multiple == rest % multiple]

    def reached(n: int) -> float:
        rows = max(0, per * n + more)
        return const + sum(turn[i % len(turn)] for i in range(rows))

    chosen = choose([Problem((s,))])[0]
    assert chosen is not None
    best = min(abs(reached(n) - target) for n in legal)
    assert abs(s.reached_mm(chosen) - reached(chosen["a"])) < 1e-6
    assert abs(abs(reached(chosen["a"]) - target) - best) < 1e-5
    in_order = list(candidates(s, {}))
    assert sorted(n for _, n in in_order) == legal
    assert [c for c, _ in in_order] == sorted(c for c, _ in in_order)


@given(HEIGHTS, HEIGHTS, st.integers(20, 900))
def test_rows_before_weigh_what_they_are(first: tuple[float, ...], second: tuple[float, ...], target: int) -> None:
    """Two numbers of rows, the second "until the piece measures" so much: together they are as near as the second can bring them."""
    a = Sought("a", sum(first) / len(first), 60.0, low=1, high=HIGH, runs=(Run("a", first),))
    b = Sought("b", sum(second) / len(second), float(target), low=0, high=HIGH, runs=(Run("b", second), Run("a", first)))
    whole_problem = Problem((b, a))
    assert split(whole_problem) == [whole_problem]
    chosen = choose([whole_problem])[0]
    assert chosen is not None

    def tall(turn: tuple[float, ...], rows: int) -> float:
        return sum(turn[i % len(turn)] for i in range(rows))

    def cost(m: int, n: int) -> float:
        return abs(tall(first, m) - 60.0) + abs(tall(second, n) + tall(first, m) - target)

    # the two are tied by nothing but the rows they share: their errors are least together
    whole = min(cost(m, n) for m in range(1, HIGH + 1) for n in range(HIGH + 1))
    got = abs(tall(first, chosen["a"]) - 60.0) + abs(b.reached_mm(chosen) - target)
    assert got <= cost(chosen["a"], chosen["b"]) + 1e-6
    assert abs(got - whole) < 1e-5
