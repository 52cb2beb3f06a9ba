"""Trees that stand elsewhere in a text: the same nodes, every span so many characters further on."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import fields
from functools import lru_cache
from operator import attrgetter
from typing import Any, Literal, TypeVar

from loopwright.model import tree
from loopwright.source import Span

T = TypeVar("T")

_RECORDS = {name: kind for name, kind in vars(tree).items() if isinstance(kind, type) and hasattr(kind, "__dataclass_fields__")}
_LATER = tree.Later.__dict__["_later"].__get__  # past the row's own look-up, which would be asked for what is not there
_WORD = re.compile(r"\w+")


def moved(node: T, by: int) -> T:
    """A node, an item or a tuple of them, with all its spans `by` characters further on; words that stand nowhere stay there."""
    if by == 0:
        return node
    if isinstance(node, tree.Row):
        return same_words(node, by, _moved(node.label, by), node.side, _moved(node.span, by))  # type: ignore[no-any-return]
    return _moved(node, by)  # type: ignore[no-any-return]


def same_words(row: tree.Row, by: int, label: tree.Label | None, side: Literal["RS", "WS"] | None, span: Span) -> Any:
    """A row that says what another one says, `by` characters further on, behind its own label. Its words are moved when they are asked for."""
    first = words_of(row)
    return own_words(row, by, label, side, span) if first is None else own_words(first[0], first[1] + by, label, side, span)


def own_words(row: tree.Row, by: int, label: tree.Label | None, side: Literal["RS", "WS"] | None, span: Span) -> Any:
    """As same_words, of a row that is known to have words of its own."""
    made: Any = object.__new__(tree.Row)
    made.label, made.side, made.sizes, made.doubt, made.span = label, side, row.sizes, row.doubt, span
    made._later = row, by
    return made


def words_of(row: tree.Row) -> tuple[tree.Row, int] | None:
    """The row whose words a row has, and by how many characters they are moved; None where they are its own."""
    try:
        return _LATER(row)  # type: ignore[no-any-return]
    except AttributeError:
        return None


def bare(node: T) -> T:
    """A node, or a tuple of them, whose words stand nowhere: what is the same wherever it is told."""
    return _moved(node, None)  # type: ignore[no-any-return]


def first_start(nodes: Iterable[tree.Node]) -> int | None:
    """Where the first of some nodes stands that stands anywhere."""
    return next((n.span.start for n in nodes if n.span.end), None)


def _moved(node: Any, by: int | None) -> Any:
    kind = node.__class__
    if kind is tuple:
        return tuple([_moved(n, by) for n in node])
    if kind is Span:
        return node if not node.end else tree.NOWHERE if by is None else Span(node.start + by, node.end + by)
    plan = _plans.get(kind) or _planned(kind)
    if not plan.names:
        return node
    values = list(plan.values(node))
    if plan.span >= 0 and (span := values[plan.span]).end:
        values[plan.span] = tree.NOWHERE if by is None else Span(span.start + by, span.end + by)
    for i in plan.deep:
        value = values[i]
        if value and (value.__class__ is not tree.Num or value.span.end):
            values[i] = _moved(value, by)
    return kind(*values)


class _Plan:
    """How a kind of record is moved: all its values in order, which is its span, and which others may hold places in the text."""

    __slots__ = ("deep", "names", "span", "values")

    def __init__(self, kind: type) -> None:
        held = {f.name: str(f.type) for f in fields(kind)} if hasattr(kind, "__dataclass_fields__") else {}
        self.names = list(held) if any(map(_holds_places, held.values())) else []
        self.values = attrgetter(*self.names) if self.names else tuple
        self.span = self.names.index("span") if "span" in self.names else -1
        self.deep = [i for i, name in enumerate(self.names) if i != self.span and _holds_places(held[name])]


_plans: dict[type, _Plan] = {}


def _planned(kind: type) -> _Plan:
    plan = _plans[kind] = _Plan(kind)
    return plan


@lru_cache(maxsize=256)
def _holds_places(annotation: str) -> bool:
    """Whether a field of that type may hold spans: a span, a node, or a record that has such a field."""
    words = set(_WORD.findall(annotation))
    if words & {"Span", "Node", "Item"}:
        return True
    return any(_holds_places(str(f.type)) for word in words & _RECORDS.keys() for f in fields(_RECORDS[word]))
