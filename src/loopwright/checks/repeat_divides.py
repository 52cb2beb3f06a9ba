"""A repeat worked to the end of the row takes a number of stitches that what is there is no multiple of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from loopwright.checks.arithmetic import flow
from loopwright.checks.neighbours import below, on_chain, only_report, sizes, sure_below
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Node, Repeat, Row, Skip

TROUBLE = frozenset({"W003", "W004", "W007", "W001"})


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Speaks of rows that the worker could not work, left over, or counted otherwise, or that print no count, and of first rows."""
    troubled = {f.span.start for f in pattern.report.findings if f.code in TROUBLE}
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            report = only_report(pattern, item)
            told = any(row.span.start <= s < max(row.span.end, row.span.start + 1) for s in troubled)
            silent = report is not None and report.agrees is None and row.label is not None and row.label.kind == "row"
            if report is None or not (told or silent or on_chain(part, at)):
                continue
            yield from _row(pattern, part, at, row)


def _row(pattern: Pattern, part: Part, at: int, row: Row) -> Iterator[Finding]:
    """One finding with the figures of the first size that does not come out, naming the sizes unless all of them do not."""
    bad: list[tuple[str, Finding]] = []
    for size in sizes(pattern):
        stands = below(pattern, part, at, size) if sure_below(pattern, part, at) else None
        found = _misfit(row, stands, size) if stands else None
        if found is not None:
            bad.append((pattern.report.sizes[size], found))
    if bad:
        names = tuple(name for name, _ in bad) if len(bad) < len(pattern.report.sizes) else None
        yield replace(bad[0][1], sizes=names)


def _misfit(row: Row, stands: int, size: int) -> Finding | None:
    ends = [n for n in row.body if isinstance(n, Repeat) and n.mode in ("end", "left") and not n.ending and n.stop_at is None]
    if len(ends) != 1:
        return None
    repeat = ends[0]
    inside = flow(repeat.nodes, size)
    rest = flow(tuple(n for n in row.body if n is not repeat), size)
    if inside is None or rest is None or inside.takes < 2:
        return None
    left = repeat.left.at(size) if repeat.left else None
    at = row.body.index(repeat)
    after = flow(row.body[at + 1 :], size)
    if after is None or (left is not None and left != after.takes):
        return None
    starts = (0, 1) if _leading_chain(row.body) else (0,)  # a start chain that may stand for the first stitch
    if len(row.body) > 1 and isinstance(row.body[0], Chain) and isinstance(row.body[1], Skip):
        starts = (*starts, -1)  # "3 ch (counts as tr), miss first st": the chain stands over it
    room = [stands - rest.takes - s for s in starts]
    if any(r >= 0 and r % inside.takes == 0 for r in room) or room[0] < 0:
        return None
    over = room[0] % inside.takes
    facts = {"takes": inside.takes, "free": room[0], "fewer": stands - over, "more": stands - over + inside.takes}
    return Finding("C001", repeat.span, facts)


def _leading_chain(nodes: tuple[Node, ...]) -> bool:
    return bool(nodes) and isinstance(nodes[0], Chain) and nodes[0].counts == "unsaid"
