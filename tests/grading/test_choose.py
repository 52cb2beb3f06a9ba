"""The choice of numbers against an exhaustive search: nothing legal is nearer."""

from __future__ import annotations

import itertools
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.grading.choose import Chosen, Limit, Linked, Problem, Sought, Sum, assignments, choose, nearest_legal, split
from loopwright.grading.parity import choose_alike

HIGH = 16


def every_assignment(problem: Problem) -> list[tuple[int, Chosen]]:
    """The oracle: all numbers up to HIGH tried, none left out."""
    found = []
    ranges = [[n for n in range(s.low, s.high + 1) if (n - s.rest) % s.multiple == 0] for s in problem.sought]
    for numbers in itertools.product(*ranges):
        values = {s.name: n for s, n in zip(problem.sought, numbers, strict=True)}
        if all(follows(x, values) for x in problem.linked) and all(limit.holds(values) for limit in problem.limits):
            found.append((sum(s.cost(values) for s in problem.sought), values))
    return found


def follows(x: Linked, values: Chosen) -> bool:
    value = x.value(values)
    if value is not None:
        values[x.name] = value
    return value is not None


widths = st.floats(2.0, 20.0, allow_nan=False).map(lambda x: round(x, 2))
targets = st.floats(5.0, 300.0, allow_nan=False).map(lambda x: round(x, 1))


@st.composite
def wanted(draw: st.DrawFn, name: str) -> Sought:
    multiple = draw(st.integers(1, 6))
    low = draw(st.integers(0, 8))
    return Sought(name, draw(widths), draw(targets), multiple, draw(st.integers(0, multiple - 1)), low, HIGH)


@st.composite
def parts(draw: st.DrawFn, target_step: float = 0.0) -> Problem:
    """Two numbers and one that follows, tied by a limit; the second may stand on the first, as the body on the crown."""
    a, b = draw(wanted("a")), draw(wanted("b"))
    if draw(st.booleans()):
        b = Sought(b.name, b.step_mm, b.target_mm, b.multiple, b.rest, b.low, b.high, Sum(Fraction(draw(st.integers(0, 3))), (("a", Fraction(1)),)))
    c = Linked("c", Sum(Fraction(draw(st.integers(-4, 4))), (("a", Fraction(draw(st.integers(1, 4)), 2)), ("b", Fraction(draw(st.integers(-2, 2)))))),
               draw(st.integers(1, 4)), 0, draw(st.sampled_from(("nearest", "down", "up"))))
    limit = Limit(Sum(Fraction(draw(st.integers(-10, 20))), (("b", Fraction(1)), ("a", Fraction(draw(st.integers(-3, -1)))))))
    least = Limit(Sum(Fraction(-1), (("c", Fraction(1)),)))
    return Problem((a, b), (c,), (limit, least) if draw(st.booleans()) else (limit,))


@given(parts())
@settings(max_examples=60, deadline=None)
def test_no_legal_set_is_nearer(problem: Problem) -> None:
    oracle = every_assignment(problem)
    got = next(iter(assignments(problem)), None)
    if not oracle:
        assert got is None
        return
    assert got is not None
    least = min(cost for cost, _ in oracle)
    assert got[0] == least
    assert (got[0], got[1]) in oracle


@given(parts())
@settings(max_examples=25, deadline=None)
def test_sets_come_in_the_order_of_their_errors_and_none_is_left_out(problem: Problem) -> None:
    got = list(itertools.islice(assignments(problem), 40))
    oracle = sorted(cost for cost, _ in every_assignment(problem))[: len(got)]
    assert [cost for cost, _ in got] == oracle


@st.composite
def three_sizes(draw: st.DrawFn) -> list[Problem]:
    """The same part in three sizes that grow, with a limit of its own in each: so that order can be at stake."""
    first = draw(parts())
    made = [first]
    for _ in range(2):
        grown = tuple(Sought(s.name, s.step_mm, s.target_mm + draw(st.floats(0, 15).map(lambda x: round(x, 1))), s.multiple, s.rest, s.low, s.high, s.before)
                      for s in made[-1].sought)
        shift = Limit(Sum(first.limits[0].sum.const + draw(st.integers(-6, 6)), first.limits[0].sum.parts))
        made.append(Problem(grown, first.linked, (shift, *first.limits[1:])))
    return made


def in_order(a: Problem, b: Problem, one: Chosen, two: Chosen) -> bool:
    return all(
        (t.reached_mm(two) >= s.reached_mm(one) - 1e-9 or t.target_mm < s.target_mm) and (t.target_mm != s.target_mm or abs(t.reached_mm(two) - s.reached_mm(one)) < 1e-9)
        for s, t in zip(a.sought, b.sought, strict=True)
    )


@given(three_sizes())
@settings(max_examples=25, deadline=None)
def test_sizes_in_order_and_no_chain_is_nearer(sizes: list[Problem]) -> None:
    lists = [every_assignment(p) for p in sizes]
    if any(not x for x in lists):
        return
    best: dict[int, int] = {i: cost for i, (cost, _) in enumerate(lists[0])}
    for before, here in itertools.pairwise(range(3)):
        best = {
            j: cost + min(best[i] for i in best if in_order(sizes[before], sizes[here], lists[before][i][1], values))
            for j, (cost, values) in enumerate(lists[here])
            if any(in_order(sizes[before], sizes[here], lists[before][i][1], values) for i in best)
        }
    got = choose(sizes)
    if not best:
        return
    assert all(g is not None for g in got)
    total = sum(s.cost(g) for p, g in zip(sizes, got, strict=True) if g is not None for s in p.sought)
    assert total == min(best.values())


def test_of_two_equally_near_the_larger() -> None:
    assert choose([Problem((Sought("a", 10.0, 45.0),))]) == [{"a": 5}]
    assert nearest_legal(Fraction(10), 4, 0) == 12
    assert nearest_legal(Fraction(9), 4, 0, "down") == 8


def test_parts_that_share_nothing_are_chosen_apart() -> None:
    whole = Problem((Sought("a", 1, 5), Sought("b", 1, 5), Sought("c", 1, 5, before=Sum(Fraction(0), (("a", Fraction(1)),)))))
    assert sorted(sorted(s.name for s in p.sought) for p in split(whole)) == [["a", "c"], ["b"]]


def test_no_legal_number_is_none() -> None:
    assert choose([Problem((Sought("a", 1.0, 12.0, 8, 0, 9, 15),))]) == [None]


def test_one_parity_in_all_sizes_whichever_costs_less() -> None:
    sizes = [Problem((Sought("a", 1.0, target),)) for target in (20.0, 23.0, 27.0)]
    assert [c["a"] for c in choose_alike(sizes, ("a",)) if c] == [21, 23, 27]
    assert [c["a"] for c in choose_alike(sizes, ()) if c] == [20, 23, 27]
    thirds = [Problem((Sought("a", 1.0, target, 3, 1),)) for target in (10.0, 16.0, 22.0)]
    assert [c["a"] for c in choose_alike(thirds, ("a",)) if c] == [10, 16, 22]
