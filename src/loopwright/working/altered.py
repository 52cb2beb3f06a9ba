"""Rows of another one's words with something altered: a group more on each side, a loop less on a pineapple, so many stitches instead."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopwright.model.tree import STITCH, Chain, Either, Group, Make, Node, Num, Repeat, RowOrder, Swap
from loopwright.working.kinds import HEIGHT
from loopwright.working.seeking import SPACES


def altered(order: RowOrder, body: tuple[Node, ...], times: int) -> tuple[tuple[Node, ...], RowOrder]:
    """The body of a row as an order alters it, `times` over, and the order: one that finds nothing that could be more does not tell what it alters."""
    words = _altered(order, body, times)
    return words, replace(order, untold=True) if order.grow > 0 and words == body else order


def _altered(order: RowOrder, body: tuple[Node, ...], times: int) -> tuple[Node, ...]:
    if order.grow:
        return _grown(body, order.grow * times) if order.grow > 0 else tuple(_shorter(body, times))
    swap = order.swap
    if swap is not None and swap.kind == "side":
        has = _on_a_side(body)
        return _grown(body, swap.new - has) if has and swap.new > has else body
    if swap is not None and not swap.old and not swap.other and swap.kind not in ("ch", "times"):
        several = {n.n.at(0) or 0 for n in _all(body) if isinstance(n, Make) and n.kind == swap.kind and (n.n.at(0) or 0) > 1}
        swap = replace(swap, old=several.pop()) if len(several) == 1 else swap  # "with 7 tr in each space": of those that stand together
    return tuple(_swapped(n, swap) for n in body) if swap is not None else body


def rows_to(order: RowOrder, body: Sequence[Node]) -> int | None:
    """How many rows there are until so many loops remain, each with a loop less than the one before; None where no number ends them."""
    if order.until_sts is None:
        return None
    loops = max((n.times.at(0) or 0 for n in _all(body) if isinstance(n, Repeat) and _is_loops(n) and n.times is not None), default=0)
    return max(0, loops - (order.until_sts.at(0) or 0))


def _all(nodes: Sequence[Node]) -> Iterator[Node]:
    for node in nodes:
        yield node
        if isinstance(node, (Repeat, Group)):
            yield from _all(node.nodes)


def _is_loops(node: Repeat) -> bool:
    """ "(ch 3, sc in next loop) 7 times": the loops of a pineapple."""
    if node.mode != "times" or len(node.nodes) != 2:
        return False
    chain, stitch = node.nodes
    return isinstance(chain, Chain) and isinstance(stitch, Make) and stitch.place is not None and stitch.place.thing.kind in SPACES


def _is_blocks(node: Repeat) -> bool:
    """ "*(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * once more": blocks from corner to corner."""
    one = node.nodes[0] if len(node.nodes) == 1 else None
    return isinstance(one, Group) and one.place is not None and one.place.thing.kind in SPACES and any(isinstance(n, Chain) for n in one.nodes[:2])


def _on_a_side(nodes: Sequence[Node]) -> int:
    """How many groups of a round's repeat go into the spaces of one side."""
    inside = next((n.nodes for n in nodes if isinstance(n, Repeat) and any(_of_a_side(m) for m in n.nodes)), ())
    return sum(map(_of_a_side, inside))


def _of_a_side(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None and node.place.quant in ("next", "last") and node.place.thing.kind in (*SPACES, "gap")


def _shorter(nodes: Sequence[Node], by: int) -> Iterator[Node]:
    for node in nodes:
        if isinstance(node, Repeat) and _is_loops(node) and node.times is not None:
            left = Num(tuple(None if v is None else max(0, v - by) for v in node.times.values))
            if left.at(0):
                yield replace(node, times=left)
        elif isinstance(node, Repeat):
            yield replace(node, nodes=tuple(_shorter(node.nodes, by)), ending=tuple(_shorter(node.ending, by)))
        else:
            yield node


def _grown(nodes: tuple[Node, ...], by: int) -> tuple[Node, ...]:
    """What goes into the space of a side is worked so many times more, with the chain before it."""
    made: list[Node] = []
    done = False  # on this side
    for i, node in enumerate(nodes):
        if isinstance(node, Repeat):
            more = Num(tuple(None if v is None else v + by for v in node.times.values)) if (_is_loops(node) or _is_blocks(node)) and node.times is not None else None
            made.append(replace(node, times=more) if more is not None else replace(node, nodes=_grown(node.nodes, by), ending=_grown(node.ending, by)))
            continue
        side = _of_a_side(node)
        if isinstance(node, Make) and node.place is not None and side and not done:
            one = replace(node, place=replace(node.place, quant="next"))
            lead = (nodes[i - 1],) if i and isinstance(nodes[i - 1], Chain) else ()
            made += (one, *lead) * by
        done = side or done and isinstance(node, Chain)
        made.append(node)
    return tuple(made)


def _swapped(node: Node, swap: Swap) -> Node:
    if isinstance(node, Make) and swap.kind == "anywhere":
        return node if node.place is None or node.place.thing.kind not in HEIGHT else replace(node, place=replace(node.place, thing=STITCH))
    if isinstance(node, Make) and swap.other:
        return replace(node, kind=swap.other) if node.kind == swap.kind else node
    if isinstance(node, Repeat) and swap.kind in ("times", "any") and node.mode == "times" and node.times is not None and node.times.at(0) == swap.old:
        return replace(node, times=Num((swap.new,)))
    if isinstance(node, Repeat):
        return replace(node, nodes=tuple(_swapped(n, swap) for n in node.nodes), ending=tuple(_swapped(n, swap) for n in node.ending))
    if isinstance(node, Group):
        return replace(node, nodes=tuple(_swapped(n, swap) for n in node.nodes))
    if isinstance(node, Either):
        return replace(node, readings=tuple((cost, tuple(_swapped(n, swap) for n in nodes)) for cost, nodes in node.readings))
    if isinstance(node, Chain):
        return replace(node, n=Num((swap.new,))) if swap.kind == "ch" and not swap.other and node.n.at(0) == (swap.old or node.n.at(0)) else node
    if not isinstance(node, Make) or swap.kind in ("ch", "times"):
        return node
    if swap.kind in (node.kind, "any") and node.n.at(0) == swap.old:
        return replace(node, n=Num((swap.new,)))
    if swap.within and node.kind == swap.within and node.n.at(0) == 1:
        return Group((Make(swap.kind, Num((swap.new,)), span=node.span),), node.place, node.kind, span=node.span)
    return node
