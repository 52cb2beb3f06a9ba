"""One number changed in a row of a written pattern: the change is found at this row, in the sizes that have the number, and what follows."""

from __future__ import annotations

import re
from functools import cache

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.model.tree import Row
from loopwright.publishing.changes import Changes, Worked, compare
from loopwright.publishing.changes.content import rows_by_item
from loopwright.source import Source
from loopwright.workshop.compare.versions import worked
from tests.compare.test_designs import DESIGNS, written

LIST = re.compile(r"\d+ \(\d+(?:, \d+)*\)")
Spot = tuple[int, int, int]


@cache
def spots(name: str) -> list[Spot]:
    """Item, start and end of every number in the words and counts of rows."""
    document = written(name, "us").document
    found = []
    for index, item in enumerate(document.items):
        if isinstance(item, Row):
            at = item.label.span.end if item.label is not None else item.span.start
            found += [(index, *m.span()) for m in re.compile(r"\d+").finditer(document.text, at, item.span.end)]
    return found


def sizes_of(old: Worked, at: int) -> set[str]:
    """The sizes that a number is for: one where it stands in a list of them, else all."""
    for m in LIST.finditer(old.document.text):
        numbers = list(re.finditer(r"\d+", m.group()))
        if m.start() <= at < m.end() and len(numbers) == len(old.sizes):
            return {old.sizes[next(i for i, n in enumerate(numbers) if m.start() + n.start() == at)]}
    return set(old.sizes)


def otherwise(old: Worked, new: Worked) -> set[tuple[int, str, str]]:
    """Item, label and size of every row of the new fabrics that has another count: the texts have the same items."""
    found = set()
    for index, size in enumerate(old.sizes):
        a, b = (rows_by_item(w.report.fabrics[index] if w.report else None) for w in (old, new))
        for item, rows in b.items():
            for was, now in zip(a.get(item, ()), rows, strict=False):
                if sum(was.fabric.counted(was.row).values()) != sum(now.fabric.counted(now.row).values()):
                    found.add((item, now.label, size))
    return found


def told(changes: Changes) -> set[tuple[str | None, str, str]]:
    rows = [(c.section, c.label, s) for c in changes.changes for s in c.sizes]
    return {*rows, *((f.section, f.label, s) for c in changes.changes for f in c.follows for s in f.sizes)}


@settings(max_examples=25, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(name=st.sampled_from(DESIGNS), pick=st.integers(0, 10_000), by=st.sampled_from([1, 2, 4]))
def test_a_planted_number_is_found_where_it_was_planted(name, pick, by):
    old = written(name, "us")
    item, start, end = spots(name)[pick % len(spots(name))]
    text = old.document.text
    new = worked(Source.of(f"{text[:start]}{int(text[start:end]) + by}{text[end:]}"))
    changes = compare(old, new)
    rows = [c for c in changes.changes if not c.heading]
    assert rows, text[start - 40 : end]
    assert {c.new_item for c in rows if c.what != "renumbered"} == {item}
    assert {s for c in rows for s in c.sizes} <= sizes_of(old, start)
    said = {(label, size) for _, label, size in told(changes)}
    assert {(label, size) for _, label, size in otherwise(old, new)} <= said
