"""Small patterns as trees, for tests by chance: rows that can be worked on what is below them."""

from __future__ import annotations

from typing import Literal

from hypothesis import strategies as st

from loopwright.model.tree import (
    AtEnds,
    Chain,
    Document,
    Evenly,
    EveryKth,
    Group,
    Item,
    Join,
    Label,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Row,
    Section,
    Skip,
    Thing,
)

KINDS = ["sc", "hdc", "dc", "tr"]
EACH = Place("each", None)


def _next(n: int = 1) -> Place:
    return Place("next", Num((n,)))


def _num(n: int) -> Num:
    return Num((n,))


@st.composite
def body(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    """Instructions that use up `below` stitches, and how many stitches they make."""
    ways = [_even, _increase, _decrease, _evenly, _plain_run, _loops, _posts, _every_kth, _at_ends, _to_last, _first_and_last, _tail]
    if below % 3 == 0:
        ways.append(_shells)
    if below % 2 == 0:
        ways.append(_mesh)
    made: tuple[tuple[Node, ...], int] = draw(st.sampled_from(ways))(draw, below, kind)
    return made


def _even(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    return (Make(kind, place=EACH),), below


def _loops(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    loop: Literal["back", "front"] = draw(st.sampled_from(("back", "front")))
    return (Make(kind, place=Place("each", None, loop=loop), loop=loop),), below


def _posts(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    unit = _divisor(draw, below, 2)
    front = draw(st.integers(1, unit - 1))
    around = [Make(f"{side}dc", place=Place("next", Num((n,)), relation="around")) for side, n in (("fp", front), ("bp", unit - front))]
    return (_repeat(draw, tuple(around), below // unit),), below


def _every_kth(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    k = draw(st.integers(2, 5))
    return (EveryKth("inc", k),), below + below // k


def _at_ends(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    op: Literal["inc", "dec"] = draw(st.sampled_from(("inc", "dec")))
    return (AtEnds(op, _num(1)),), below + 2 if op == "inc" else below - 2


def _to_last(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    left = draw(st.integers(1, below - 2))
    other = draw(st.sampled_from(KINDS))
    return (Make(kind, place=Place("each", None, left=_num(left))), Make(other, place=Place("last", _num(left)))), below


def _first_and_last(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    middle = Make(kind, place=Place("each", None, left=_num(1)))
    return (Make(kind, _num(2), Place("first")), middle, Make(kind, _num(2), Place("last"))), below + 2


def _tail(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    unit = draw(st.integers(2, max(2, below // 2)))
    left = below - unit * ((below - 1) // unit)
    nodes = (Make(kind, place=_next(unit - 1)), Make(kind, _num(2), _next()))
    star = Repeat(nodes, "left", left=_num(left))
    return (star, Make(kind, place=Place("last", _num(left)))), below + (below - left) // unit


def _divisor(draw: st.DrawFn, below: int, least: int) -> int:
    return draw(st.sampled_from([d for d in range(least, below + 1) if below % d == 0]))


def _repeat(draw: st.DrawFn, nodes: tuple[Node, ...], times: int) -> Node:
    if times < 2:
        return Repeat(nodes, "end")
    mode: Literal["end", "times", "more"] = draw(st.sampled_from(("end", "times", "more")))
    return Repeat(nodes, mode, None if mode == "end" else _num(times - (mode == "more")))


def _increase(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    unit = _divisor(draw, below, 2)
    nodes = (Make(kind, place=_next(unit - 1)), Make(kind, _num(2), _next()))
    return (_repeat(draw, nodes, below // unit),), below + below // unit


def _decrease(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    unit = _divisor(draw, below, 3)
    nodes = (Make(kind, place=_next(unit - 2)), Make(f"{kind}2tog", place=_next(2)))
    return (_repeat(draw, nodes, below // unit),), below - below // unit


def _evenly(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    n = draw(st.integers(1, below // 2))
    op: Literal["inc", "dec"] = draw(st.sampled_from(("inc", "dec")))
    return (Evenly(op, _num(n), kind=kind),), below + n if op == "inc" else below - n


def _plain_run(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    first = draw(st.integers(1, below - 1))
    other = draw(st.sampled_from(KINDS))
    return (Make(kind, place=_next(first)), Make(other, place=_next(below - first))), below


def _shells(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    n = draw(st.integers(2, 3))
    shell = Group((Make(kind, _num(n)), Chain(_num(1)), Make(kind, _num(n))), _next())
    return (_repeat(draw, (Skip(_num(1)), shell, Skip(_num(1))), below // 3),), 2 * n * below // 3


def _mesh(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    return (_repeat(draw, (Make(kind, place=_next()), Chain(_num(1)), Skip(_num(1))), below // 2),), below // 2


@st.composite
def documents(draw: st.DrawFn) -> Document:
    """A piece of two to four rows or rounds, US terms, one size."""
    round_ = draw(st.booleans())
    kind = draw(st.sampled_from(KINDS))
    count = draw(st.integers(6, 24))
    rows: list[Row] = [_first_round(kind, count)] if round_ else _first_rows(kind, count)
    for number in range(2, draw(st.integers(2, 4)) + 1):
        kind = draw(st.sampled_from(KINDS))
        nodes, made = draw(body(count, kind))
        rows.append(_row(number, nodes, kind, made, round_=round_))
        has_spaces = any("Chain" in repr(n) for n in nodes)
        count = made
        if has_spaces or count < 4:
            break
    items: tuple[Item, ...] = (Section("Piece"), *rows)
    return Document("", "made", items, None, ("one size",), "us", True)


def _first_round(kind: str, count: int) -> Row:
    nodes = (Chain(_num(1), "no"), Make(kind, _num(count), Place(thing=Thing("ring"))), Join(Place("first", thing=Thing(kind)), "sl st"))
    return Row(Label("rnd", _num(1), _num(1)), nodes)


def _first_rows(kind: str, count: int) -> list[Row]:
    hook = Place("kth", thing=Thing("ch"), k=2, from_hook=True)
    each = Place("each", None, Thing("ch"))
    body_ = Repeat((Make("sc", place=hook), Make("sc", place=each)), "once")
    return [Row(None, (Chain(_num(count + 1)),)), Row(Label("row", _num(1), _num(1)), (body_, Mark("turn")))]


def _row(number: int, nodes: tuple[Node, ...], kind: str, made: int, *, round_: bool) -> Row:
    lead = Chain(_num(1), "no")
    tail: Node = Join(Place("first", thing=Thing(kind)), "sl st") if round_ else Mark("turn")
    return Row(Label("rnd" if round_ else "row", _num(number), _num(number)), (lead, *nodes, tail))




@st.composite
def sized(draw: st.DrawFn) -> Document:
    """A piece in three sizes whose counts differ, US terms."""
    unit = draw(st.integers(2, 5))
    counts = [unit * k for k in draw(st.lists(st.integers(2, 6), min_size=3, max_size=3))]
    kind = draw(st.sampled_from(KINDS))
    ring = (Chain(_num(1), "no"), Make(kind, Num(tuple(counts)), Place(thing=Thing("ring"))), Join(Place("first", thing=Thing(kind)), "sl st"))
    rows = [Row(Label("rnd", _num(1), _num(1)), ring)]
    number = 2
    for _ in range(draw(st.integers(1, 3))):
        kind = draw(st.sampled_from(KINDS))
        nodes, counts = draw(st.sampled_from([_sized_run, _sized_repeat, _sized_evenly]))(draw, counts, kind, unit)
        rows.append(_row(number, nodes, kind, 0, round_=True))
        number += 1
        if any(c % unit for c in counts):
            unit = 1
        if min(counts) < 4:
            break
    last = [number + draw(st.integers(0, 3)) for _ in counts]
    even = (Chain(_num(1), "no"), Make(kind, place=EACH), Join(Place("first", thing=Thing(kind)), "sl st"))
    rows.append(Row(Label("rnd", _num(number), Num(tuple(last))), even))
    return Document("", "made", (Section("Piece"), *rows), None, ("small", "medium", "large"), "us", True)


def _sized_run(draw: st.DrawFn, counts: list[int], kind: str, unit: int) -> tuple[tuple[Node, ...], list[int]]:
    first = [draw(st.integers(1, c - 1)) for c in counts]
    rest = [c - f for c, f in zip(counts, first, strict=True)]
    other = draw(st.sampled_from(KINDS))
    return (Make(kind, place=Place("next", Num(tuple(first)))), Make(other, place=Place("next", Num(tuple(rest))))), counts


def _sized_repeat(draw: st.DrawFn, counts: list[int], kind: str, unit: int) -> tuple[tuple[Node, ...], list[int]]:
    if unit < 2:
        return (Make(kind, place=EACH),), counts
    nodes = (Make(kind, place=_next(unit - 1)), Make(kind, _num(2), _next()))
    times = Num(tuple(c // unit for c in counts))
    star = Repeat(nodes, "end") if draw(st.booleans()) else Repeat(nodes, "times", times)
    return (star,), [c + c // unit for c in counts]


def _sized_evenly(draw: st.DrawFn, counts: list[int], kind: str, unit: int) -> tuple[tuple[Node, ...], list[int]]:
    more = [draw(st.integers(1, c // 2)) for c in counts]
    if draw(st.booleans()):
        return (Evenly("inc", Num(tuple(more)), kind=kind),), [c + m for c, m in zip(counts, more, strict=True)]
    return (Evenly("dec", to=Num(tuple(c - m for c, m in zip(counts, more, strict=True))), kind=kind),), [c - m for c, m in zip(counts, more, strict=True)]
