"""One row among others that turn, which does not say that it is turned."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator

from loopwright.checks.pattern import Part, Pattern, standing
from loopwright.findings import Finding
from loopwright.model.tree import Mark, Node, Row

LEAST = 3
"""So many other rows must say it: then it is the habit of the pattern."""
LEADS = 2  # instructions that a row may begin with before its first stitch: chain and turn
_ENOUGH = re.compile(r"\b(?:turn\w*|fasten|fo|break|cut|end off|join\w*|rejoin\w*|facing|continue|finish\w*)\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Parts whose rows say "turn", all but one in the middle."""
    for part in pattern.parts:
        yield from _part(pattern, part)


def _part(pattern: Pattern, part: Part) -> Iterator[Finding]:
    rows = [row for _, row in part.rows]
    worked = [(row, after) for row, after in itertools.pairwise(rows) if _plain(row) and _plain(after)]
    silent = [row for row, after in worked if not _turns(row) and not _begins(after)]
    others = sum(1 for row in rows if _turns(row) or _begins(row))
    if len(silent) != 1 or others < LEAST or others < len(rows) - 3:
        return
    row = silent[0]
    label = row.label
    if label is None or standing(_ENOUGH, pattern.words(row)[label.span.end - row.span.start :]):
        return
    yield Finding("C064", row.span, {"label": label.text, "others": others})


def _plain(row: Row) -> bool:
    """Whether it is one row with its own number and instructions."""
    label = row.label
    return label is not None and label.kind == "row" and label.first is not None and row.order is None and not row.doubt and bool(row.body)


def _turns(row: Row) -> bool:
    return _told(row.body[LEADS:] if _begins(row) else row.body)


def _begins(row: Row) -> bool:
    """Whether a row begins with the turn of the row before: "Ch 1, turn, sc in each st"."""
    return len(row.body) > LEADS and _told(row.body[:LEADS])


def _told(nodes: tuple[Node, ...]) -> bool:
    return any(isinstance(n, Mark) and n.what == "turn" for n in nodes)
