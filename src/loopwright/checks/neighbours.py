"""What a row stands on: the count of the row below, or the length of the chain, where the report knows it. Not a rule."""

from __future__ import annotations

from loopwright.checks.pattern import Part, Pattern
from loopwright.model.report import RowReport
from loopwright.model.tree import Chain, Group, Make, Node, Repeat, Row


def below(pattern: Pattern, part: Part, at: int, size: int) -> int | None:
    """Stitches or chains that the row at index `at` of a part is worked into; None where not plain."""
    if at == 0:
        return None
    item, row = part.rows[at - 1]
    chains = _only_chain(row, size)
    if chains is not None:
        return chains
    reports = pattern.by_item.get(item, ())
    return count(reports[-1], size) if reports and row.order is None else None


def on_chain(part: Part, at: int) -> bool:
    """Whether the row is worked into a chain: one that stands alone before it, or one that its words count from the hook."""
    return at > 0 and (_only_chain(part.rows[at - 1][1], 0) is not None or _from_hook(part.rows[at][1].body))


def _from_hook(nodes: tuple[Node, ...]) -> bool:
    first = next((n for n in nodes if isinstance(n, (Make, Group, Repeat))), None)
    place = getattr(first, "place", None)
    return _from_hook(first.nodes) if isinstance(first, Repeat) else bool(place is not None and place.from_hook)


def sure_below(pattern: Pattern, part: Part, at: int) -> bool:
    """Whether what the row stands on is sure: a chain, or a row whose printed count agrees."""
    if at == 0:
        return False
    item, row = part.rows[at - 1]
    reports = pattern.by_item.get(item, ())
    return _only_chain(row, 0) is not None or bool(reports) and reports[-1].agrees is True


def with_chains(pattern: Pattern, part: Part, at: int, size: int) -> int | None:
    """The row below with the chains that go over skipped stitches, where that is another number."""
    reports = pattern.by_item.get(part.rows[at - 1][0], ()) if at else ()
    chains = reports[-1].with_chains if reports and reports[-1].read else None
    return chains[size] if chains and size < len(chains) else None


def count(report: RowReport, size: int) -> int | None:
    """A row's count in a size, None when it was not read."""
    return report.counts[size] if report.read and size < len(report.counts) else None


def only_report(pattern: Pattern, item: int) -> RowReport | None:
    """The report of an item that was worked as one row."""
    reports = pattern.by_item.get(item, ())
    return reports[0] if len(reports) == 1 else None


def _only_chain(row: Row, size: int) -> int | None:
    chains = [n for n in row.body if isinstance(n, Chain)]
    if len(row.body) != 1 or len(chains) != 1:
        return None
    n = chains[0].n.at(size)
    return None if n is None else n + chains[0].plus


def sizes(pattern: Pattern) -> range:
    """Indexes of the sizes."""
    return range(max(1, len(pattern.report.sizes)))
