"""A row of waves or lace whose repeat keeps the number of stitches, and whose two edges do not."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.arithmetic import flow
from loopwright.checks.neighbours import on_chain
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Group, Make, Node, Repeat, Row, Skip


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Rows worked back and forth, told plainly, with increases and decreases inside the repeat."""
    for part in pattern.parts:
        for at, (_, row) in enumerate(part.rows):
            if row.label is None or row.label.kind != "row" or row.order is not None or at == 0 or on_chain(part, at):
                continue
            yield from _row(row)


def _row(row: Row) -> Iterator[Finding]:
    repeats = [
        n for n in row.body if isinstance(n, Repeat) and n.mode in ("times", "more", "star-times", "end", "left") and n.stop_at is None
    ]
    if len(repeats) != 1:
        return
    inside = flow(repeats[0].nodes)
    rest = flow((*(n for n in row.body if n is not repeats[0]), *repeats[0].ending))
    if inside is None or rest is None or inside.takes != inside.gives or inside.takes < 3 or not _waves(repeats[0].nodes):
        return
    start = 1 if any(isinstance(n, Chain) and n.counts == "unsaid" for n in row.body[:2]) else 0
    drift = rest.gives - rest.takes
    if abs(drift) != 1 or start:  # a start chain that may count leaves it open
        return
    label = row.label.text if row.label else "this row"
    yield Finding("C043", row.span, {"label": label, "change": "gain" if drift > 0 else "lose"})


def _waves(nodes: tuple[Node, ...]) -> bool:
    """Increases and decreases (or skips) side by side."""
    more = any(
        isinstance(n, Group) or isinstance(n, Make) and ((n.n.at(0) or 1) > 1 or n.kind == "inc") and n.place is not None for n in nodes
    )
    fewer = any(isinstance(n, Skip) or isinstance(n, Make) and (n.kind == "dec" or "tog" in n.kind) for n in nodes)
    return more and fewer
