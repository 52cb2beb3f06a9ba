"""Shaping rows laid out among rows worked even: which of the rows shape, by a schedule that is told or shared out evenly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from loopwright.model.tapers import schedule
from loopwright.model.tree import AtEnds, Evenly, EveryKth, Group, Make, Node, Repeat, RowOrder

MOST = 2001


def shaped_rows(order: RowOrder, told: int | None) -> tuple[bool, ...] | str | None:
    """For each of the rows whether it shapes. `told`: rows that the label tells, None where it tells none.

    A text says why there is none: "rows" where the shaping takes more rows than there are. None where a number is not known.
    """
    if order.spaced:
        return _by_spacing(order, told)
    times, rows = (None if n is None else n.at(0) for n in (order.times, order.total_rows))
    rows = told if rows is None else rows
    if times is None or rows is None:
        return None
    if times > rows:
        return "rows"
    flags = [False] * min(rows, MOST)
    at = 0
    for step in schedule(len(flags), times):
        for _ in range(step.times):
            at += step.every
            flags[at - 1] = True
    return tuple(flags) + (False,) * max(0, (told or 0) - len(flags))


def _by_spacing(order: RowOrder, told: int | None) -> tuple[bool, ...] | str | None:
    flags = [True] if order.at_once else []
    for spacing in order.spaced:
        every, times = spacing.every.at(0), None if spacing.times is None else spacing.times.at(0)
        if every is None or spacing.times is not None and times is None:
            return None
        if times is None:  # as long as there are rows
            times = max(0, ((told or 0) - len(flags)) // max(1, every))
        for _ in range(min(times, MOST)):
            flags += [*[False] * (max(1, every) - 1), True]
            if len(flags) > MOST:
                return tuple(flags[:MOST])
    if told is not None and len(flags) > told:
        return "rows"
    return tuple(flags) + (False,) * max(0, (told or 0) - len(flags))


def alternates(order: RowOrder, numbers: Sequence[int | None], *, shaped_before: bool) -> list[bool]:
    """For each of the rows that go on so whether it shapes: all of them, the even or odd ones, or every other one, by what the row before did."""
    if order.alternate in ("even", "odd") and None not in numbers:
        return [(n or 0) % 2 == (order.alternate == "odd") for n in numbers]
    return [not order.alternate or (i + shaped_before) % 2 == 0 for i in range(len(numbers))]


def rows_needed(order: RowOrder) -> int:
    """Rows that a schedule takes, of those that are told."""
    told = [(s.every.at(0) or 0) * ((s.times.at(0) if s.times else 1) or 0) for s in order.spaced]
    return sum(told) + order.at_once if told else (order.times.at(0) or 0) if order.times else 0


def turn_of(order: RowOrder) -> tuple[bool, ...]:
    """Which rows shape, over and over, of a schedule that goes on until a number of stitches is reached."""
    every = (order.spaced[-1].every.at(0) if order.spaced else 1) or 1
    plain = (False,) * (min(every, MOST) - 1)
    return (True, *plain) if order.at_once and len(order.spaced) == 1 else (*plain, True)


def shapes(nodes: Sequence[Node], op: str) -> bool:
    """Whether a row's words make fewer stitches ("dec") or more ("inc") somewhere."""
    return any(_op(n) == op for n in _all(nodes))


def _op(node: Node) -> str:
    if isinstance(node, (AtEnds, Evenly, EveryKth)):
        return node.op
    if isinstance(node, Make):
        if "tog" in node.kind or node.kind == "dec":
            return "dec"
        several = node.n.values[:1] != (1,) and node.place is not None and node.place.quant in ("next", "first", "last", "same", "kth")
        return "inc" if several or node.kind == "inc" else ""
    return "inc" if isinstance(node, Group) and len(node.nodes) > 1 and node.place is not None else ""


def _all(nodes: Sequence[Node]) -> Iterator[Any]:
    for node in nodes:
        yield node
        if isinstance(node, Repeat):
            yield from _all(node.nodes)
            yield from _all(node.ending)
