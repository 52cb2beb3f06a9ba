"""Counts that are odd in some sizes and even in others where rows of the part work in pairs."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.arithmetic import flow
from loopwright.checks.lists import counts
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Repeat


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only in parts with a repeat over an even number of stitches to the end of the row; once per part."""
    lists = list(counts(pattern))
    for part in pattern.parts:
        rows = {id(row) for _, row in part.rows}
        if not _pairs(part):
            continue
        for row, one in lists:
            odd = [int(v) % 2 == 1 for v in one.values]
            if id(row) in rows and one.noun in ("", "sts", "sc", "hdc", "dc", "tr") and 0 < sum(odd) < len(odd):
                few = [s for s, o in zip(pattern.document.sizes, odd, strict=True) if o == (sum(odd) * 2 <= len(odd))]
                yield Finding(
                    "C022", one.span, {"sizes": ", ".join(few), "is": "odd" if sum(odd) * 2 <= len(odd) else "even"}, sizes=tuple(few)
                )
                break


def _pairs(part: Part) -> bool:
    for _, row in part.rows:
        for node in row.body:
            inside = flow(node.nodes) if isinstance(node, Repeat) and node.mode in ("end", "left") and not node.ending else None
            if inside is not None and inside.takes >= 2 and inside.takes % 2 == 0:
                return True
    return False
