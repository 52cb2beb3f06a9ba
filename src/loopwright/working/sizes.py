"""One size out of a tree: every number reduced to the value of that size."""

from __future__ import annotations

from dataclasses import fields, replace
from functools import lru_cache
from operator import is_
from typing import Any

from loopwright.model.still import Still
from loopwright.model.tree import Num, Row
from loopwright.record import changed


def _dashed(node: Any, size: int) -> bool:
    """Whether a dash stands for this size: it leaves the instruction out."""
    for name in ("n", "times"):
        number = getattr(node, name, None)
        if isinstance(number, Num) and len(number.values) > 1 and number.at(size) is None:
            return True
    place = getattr(node, "place", None)
    return place is not None and isinstance(place.n, Num) and len(place.n.values) > 1 and place.n.at(size) is None


@lru_cache(maxsize=8192)
def for_size(node: Any, size: int) -> Any:
    """A node (or tuple of nodes) with each number holding only this size's value; a missing one stays without a value."""
    if isinstance(node, Num):
        if len(node.values) <= 1:
            return node
        value = node.at(size)
        return Num((value,), node.blank, node.span)
    if isinstance(node, tuple):
        sized = tuple(for_size(n, size) for n in node if not _dashed(n, size))
        same = len(sized) == len(node) and all(map(is_, sized, node))
        return node if same else sized  # what no size changes is worked once for all
    if hasattr(node, "__dataclass_fields__"):
        changes = {}
        for f in fields(node):
            old = getattr(node, f.name)
            if isinstance(old, (tuple, Num)) or hasattr(old, "__dataclass_fields__"):
                new = for_size(old, size)
                if new is not old:
                    changes[f.name] = new
        return replace(node, **changes) if changes else node
    return node


def of_size(still: Still, size: int) -> Row:
    """A row for one size; what it says is worked out once for all rows that say the same."""
    row = still.sized.get(size)
    if row is None and still.like is not None:
        own = still.row
        row = changed(of_size(still.like, size), label=for_size(own.label, size), side=own.side, sizes=own.sizes, span=own.span)
    elif row is None:
        row = for_size(still.row, size)
    still.sized[size] = row
    return row
