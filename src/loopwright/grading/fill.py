"""Blanks out, numbers in: the tree of a design with a number per size in every blank; and some sizes out of many."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any

from loopwright.kept import kept
from loopwright.model.tree import Chain, Document, Label, Num, Row, RowOrder
from loopwright.source import Span

MOST_ROWS = 4_000  # kept between calls
_MORE = re.compile(r"(?:\s*ch)?\s*\+\s*(\d{1,6})\b(?!\s*(?:-|sts?\b|times))")


def fill(document: Document, size_values: Mapping[str, Sequence[int]], memo: dict[Any, Any] | None = None) -> Document:
    """The document with every known blank replaced by its numbers, one per size in the document's order.

    A range of rows that is empty in a size ("Rnds 4-{n}" where n is 3), and "work even for {n} rnds" where n is 0, is not
    worked in that size. Blanks without numbers stay. Raises ValueError where a blank has not one number per size. `memo` keeps filled
    rows between calls.
    """
    sizes = max(1, len(document.sizes))
    for name, values in size_values.items():
        if len(values) != sizes:
            raise ValueError(f"{{{name}}} has {len(values)} numbers for {sizes} sizes")

    def change(num: Num) -> Num:
        if num.blank is None or num.values or num.blank not in size_values:
            return num
        values = tuple(size_values[num.blank])
        return Num(values[:1] if len(set(values)) == 1 else values, None, num.span)

    rows = kept(memo, "filled", MOST_ROWS)
    which = tuple(sorted((name, tuple(values)) for name, values in size_values.items()))

    def remembered(row: Row) -> Row:
        held: tuple[Row, Row] | None = rows.get((id(row), which))
        if held is None:
            held = rows[id(row), which] = row, filled(row)  # it keeps its id while this is kept
        return held[1]

    def filled(row: Row) -> Row:
        blank = "{" in document.text[row.span.start : row.span.end]
        return _fitted(_changed(_with_more(row, document.text), change) if blank else row, sizes)

    return replace(document, items=tuple(remembered(item) if isinstance(item, Row) else item for item in document.items))


def _with_more(row: Row, text: str) -> Row:
    """The row with what is added to a blank chain ("ch {body sts} + 3") told in the chain itself."""
    body = tuple(
        replace(n, plus=int(m[1])) if isinstance(n, Chain) and n.n.blank and not n.plus and (m := _MORE.match(text, n.n.span.end)) else n
        for n in row.body
    )
    return replace(row, body=body) if body != row.body else row


def pick(document: Document, sizes: Sequence[int], names: Sequence[str] | None = None) -> Document:
    """The document for some of its sizes, by index and in that order."""
    where = {old: new for new, old in enumerate(sizes)}

    def change(num: Num) -> Num:
        if len(num.values) <= 1:
            return num
        values = tuple(num.at(s) for s in sizes)
        return Num(values[:1] if len(set(values)) == 1 else values, num.blank, num.span)

    items = []
    for item in document.items:
        made = _changed(item, change)
        if isinstance(made, Row) and made.sizes is not None:
            made = replace(made, sizes=tuple(where[s] for s in made.sizes if s in where))
        items.append(made)
    return replace(document, items=tuple(items), sizes=tuple(names) if names else tuple(document.sizes[s] for s in sizes))


def per_size(document: Document) -> bool:
    """Whether the designer wrote lists per size herself, so that a size more would have no number in them."""
    rows = [i for i in document.items if isinstance(i, Row)]
    return any(len(n.values) > 1 for n in _numbers(tuple(rows))) or any(r.sizes is not None for r in rows)


def _numbers(node: Any) -> list[Num]:
    found: list[Num] = []
    _changed(node, lambda num: found.append(num) or num)  # type: ignore[func-returns-value]
    return found


def _changed(node: Any, change: Callable[[Num], Num]) -> Any:
    """A node with every number in it changed; the same node where nothing changes."""
    if isinstance(node, Num):
        return change(node)
    if isinstance(node, tuple):
        made = tuple(_changed(n, change) for n in node)
        return made if any(a is not b for a, b in zip(made, node, strict=True)) else node
    if is_dataclass(node) and not isinstance(node, (type, Span)):
        changes = {}
        for f in fields(node):
            old = getattr(node, f.name)
            if isinstance(old, tuple) or is_dataclass(old):
                new = _changed(old, change)
                if new is not old:
                    changes[f.name] = new
        return replace(node, **changes) if changes else node
    return node


def _fitted(row: Row, sizes: int) -> Row:
    """A row kept to the sizes that work it."""
    asked = row.sizes if row.sizes is not None else tuple(range(sizes))
    worked = tuple(s for s in asked if _is_worked(row.label, row.order, s))
    return row if worked == asked else replace(row, sizes=worked)


def _is_worked(label: Label | None, order: RowOrder | None, size: int) -> bool:
    if label is not None and label.first is not None and label.last is not None and label.last is not label.first:
        first, last = label.first.at(size), label.last.at(size)
        if first is not None and label.last.values and (last is None or last < first):
            return False
    times = order.times if order is not None else None
    return not (times is not None and times.values and times.at(size) in (0, None))
