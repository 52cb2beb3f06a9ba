"""Stitches told one by one, "dc, dc, dc, 2 dc": the two are an increase, for two in two places would have been told one by one too.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Make, Node, Place, Repeat
from loopwright.record import changed


def singly(nodes: Sequence[Node]) -> Sequence[Node]:
    """Nodes in which several of a kind behind two and more single ones of it are worked in one place; the same ones where none are."""
    made: list[Node] | None = None
    for i, node in enumerate(nodes):
        new = node
        if isinstance(node, Repeat):
            inner = singly(node.nodes)
            new = node if inner is node.nodes else changed(node, nodes=tuple(inner))
        elif i > 1 and isinstance(node, Make) and node.place is None and 2 <= (node.n.at(0) or 0) <= MOST and all(_one(b, node.kind) for b in nodes[i - 2 : i]):
            new = changed(node, place=Place())
        if new is not node:
            made = list(nodes) if made is None else made
            made[i] = new
    return nodes if made is None else made


MOST = 3  # in one place, so


def _one(node: Node, kind: str) -> bool:
    return isinstance(node, Make) and node.kind == kind and node.place is None and node.n.values == (1,)
