"""A round along both sides of a chain that ends where it began: "…, 3 sc in first ch", "3 hdc in beg st".

The chain that the first stitches were worked into is the last of its other side.
"""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Group, Join, Make, Mark, Node, Place, Thing
from loopwright.record import changed

_PLACES = frozenset(("ch", "st"))


def ends_where_begun(nodes: Sequence[Node]) -> Sequence[Node]:
    """Nodes in which the first chain, named again at the end of the other side, is that side's last; the same ones where it is not."""
    under = next((i for i, n in enumerate(nodes) if isinstance(n, Mark) and n.what == "underside"), None)
    if under is None:
        return nodes
    at = next((i for i in range(len(nodes) - 1, under + 1, -1) if not isinstance(nodes[i], (Join, Mark))), under)
    last = nodes[at]
    if at == under or not isinstance(last, (Make, Group)) or last.place is None or last.place.quant != "first" or last.place.thing.kind not in _PLACES:
        return nodes
    return [*nodes[:at], changed(last, place=Place("last", thing=Thing("ch"), span=last.place.span)), *nodes[at + 1 :]]
