"""How rows begin: the turning or start chain, and what is said of it. Not a rule."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.checks.pattern import Pattern
from loopwright.model.tree import Chain, Group, Make, Mark, Node, Repeat, Row
from loopwright.record import record


@record
class Opening:
    """A row that begins with a chain: its length in one size, the stitch worked next (US key), the row's place among the rows."""

    row: Row
    chain: Chain
    length: int
    kind: str


def openings(pattern: Pattern) -> Iterator[Opening]:
    """Rows that begin with a chain of one length for all sizes and go on with a stitch."""
    for _, row in pattern.rows():
        nodes = [n for n in row.body if not isinstance(n, Mark)]
        if len(nodes) < 2 or not isinstance(nodes[0], Chain) or len(nodes[0].n.values) != 1:
            continue
        length, kind = nodes[0].n.at(0), first_kind(nodes[1:])
        told = nodes[0].counts in ("yes", "no")  # then what comes next need not be known
        if length is not None and (kind is not None or told) and not _from_hook(nodes[1]):
            yield Opening(row, nodes[0], length, kind or "")


def first_kind(nodes: Sequence[Node]) -> str | None:
    """The kind of the first stitch made; None where something else comes first."""
    for node in nodes:
        match node:
            case Make():
                return node.kind
            case Repeat() | Group():
                return first_kind(node.nodes)
            case Mark():
                continue
            case _:
                return None
    return None


def _from_hook(node: Node) -> bool:
    match node:
        case Make():
            return node.place is not None and node.place.from_hook
        case Repeat():
            return bool(node.nodes) and _from_hook(node.nodes[0])
        case _:
            return False
