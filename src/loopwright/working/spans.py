"""Where in the text the instructions of a row stand."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from functools import lru_cache
from typing import Any

from loopwright.model.tree import Chain, Group, Node, Repeat


def chain_start(body: tuple[Node, ...]) -> int:
    """Where the first chain of a row is told; -1 where none is."""
    return next((n.span.start for n in body if isinstance(n, Chain)), -1)


@lru_cache(maxsize=512)
def spans(body: tuple[Node, ...]) -> dict[int, int]:
    """{start: end} of the instructions themselves, not of the repeats and groups around them."""
    found: dict[int, int] = {}
    _collect(body, found)
    return found


def _collect(node: Any, found: dict[int, int]) -> None:
    if isinstance(node, tuple):
        for n in node:
            _collect(n, found)
    elif is_dataclass(node) and hasattr(node, "span"):
        span = node.span
        if span.end and not isinstance(node, (Repeat, Group)):
            found[span.start] = min(span.end, found.get(span.start, span.end))
        for f in fields(node):
            value = getattr(node, f.name)
            if isinstance(value, tuple) and type(node).__name__ != "Num":
                _collect(value, found)
