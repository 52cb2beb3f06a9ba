"""Small patterns as trees, for tests by chance: rows that can be worked on what is below them."""

from __future__ import annotations

from hypothesis import strategies as st

from loopwright.model.tree import (
    Chain,
    Document,
    Evenly,
    Group,
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
    ways = [_even, _increase, _decrease, _evenly, _plain_run, _loops]
    if below % 3 == 0:
        ways.append(_shells)
    if below % 2 == 0:
        ways.append(_mesh)
    made: tuple[tuple[Node, ...], int] = draw(st.sampled_from(ways))(draw, below, kind)
    return made


def _even(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    return (Make(kind, place=EACH),), below


def _loops(draw: st.DrawFn, below: int, kind: str) -> tuple[tuple[Node, ...], int]:
    loop = draw(st.sampled_from(["back", "front"]))
    return (Make(kind, place=Place("each", None, loop=loop), loop=loop),), below


def _divisor(draw: st.DrawFn, below: int, least: int) -> int:
    return draw(st.sampled_from([d for d in range(least, below + 1) if below % d == 0]))


def _repeat(draw: st.DrawFn, nodes: tuple[Node, ...], times: int) -> Node:
    if times < 2:
        return Repeat(nodes, "end")
    mode = draw(st.sampled_from(["end", "times", "more"]))
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
    op = draw(st.sampled_from(["inc", "dec"]))
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
    items = (Section("Piece"), *rows)
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


