"""Which size of one version is which of the other."""

from __future__ import annotations

import re

from loopwright.model.tree import Document, HeadLine
from loopwright.publishing.changes.model import Pairing, Worked


def pair_sizes(old: Worked, new: Worked) -> Pairing:
    """Pairs sizes by name; as many sizes with other names in the same places were renamed; a single unnamed size is the one worked.

    Without a size in common the pairs are empty, and a note says so.
    """
    a, b = old.sizes, new.sizes
    if len(a) == len(b) == 1:
        renamed = ((a[0], b[0]),) if _key(a[0]) != _key(b[0]) else ()
        return Pairing(((0, 0),), renamed)
    single = _single(old, new)
    if single is not None:
        return single
    names = {_key(n): i for i, n in enumerate(a)}
    pairs = {j: names[_key(n)] for j, n in enumerate(b) if _key(n) in names}
    rest_a = [i for i in range(len(a)) if i not in pairs.values()]
    rest_b = [j for j in range(len(b)) if j not in pairs]
    given: list[tuple[str, str]] = []
    if rest_a and len(rest_a) == len(rest_b) and len(a) == len(b):  # in the same places under other names
        for i, j in zip(rest_a, rest_b, strict=True):
            pairs[j] = i
            given.append((a[i], b[j]))
        rest_a, rest_b = [], []
    notes: tuple[str, ...] = ()
    if not pairs:
        notes = (f"no size is in both: {', '.join(a)} before, {', '.join(b)} now; only the words were compared",)
    elif len(given) == len(a):
        notes = ("no size has its old name; they were paired by their order",)
    ordered = tuple((pairs[j], j) for j in sorted(pairs))
    return Pairing(ordered, tuple(given), tuple(b[j] for j in rest_b), tuple(a[i] for i in rest_a), notes)


def _single(old: Worked, new: Worked) -> Pairing | None:
    """One side has one size that is none of the other's by name: it is the size that the design was worked in."""
    a, b = old.sizes, new.sizes
    if min(len(a), len(b)) != 1:
        return None
    one, many, many_document = (a[0], b, new.document) if len(a) == 1 else (b[0], a, old.document)
    if any(_key(one) == _key(n) for n in many):
        return None
    worked = worked_in(many_document)
    at = next((i for i, n in enumerate(many) if _key(n) == _key(worked)), None)
    if at is None:
        return None
    note = (f"{one} was taken for size {many[at]}, in which the design was worked",)
    others = tuple(n for i, n in enumerate(many) if i != at)
    if len(a) == 1:
        return Pairing(((0, at),), ((one, many[at]),), others, (), note)
    return Pairing(((at, 0),), ((many[at], one),), (), others, note)


def worked_in(document: Document) -> str:
    """The size that a design says it was worked in, "" where it does not say."""
    return next((i.value for i in document.items if isinstance(i, HeadLine) and i.name == "worked in"), "")


def _key(name: str) -> str:
    return re.sub(r"[\s._-]+", " ", name.casefold()).strip()
