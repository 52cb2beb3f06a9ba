"""Which of several readings the worker took, seen from the fabric; the cheapest where the fabric does not tell."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from loopwright.model.fabric import Fabric
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Either, Group, Make, Node, Num, Repeat, Row
from loopwright.wording.voice import Voice

_NO_KIND = frozenset({"ch", "ch-sp", "group", "repeat", "sl st", "picot", "pattern"})


def chooser(report: Report | None, size: int | None) -> Callable[[Either], tuple[Node, ...] | None]:
    """A function from a fork to the nodes to write; it gives None where the fork had better stay as it was written."""
    fabric = _fabric(report, size)
    found: list[dict[int, int]] = []  # looked for once, and only where there is a fork: it takes the whole fabric

    def choose(fork: Either) -> tuple[Node, ...] | None:
        if fabric is not None and not found:
            found.append(_first_made(fabric))
        begun = found[0] if found else {}
        if fabric is not None and fork.key == "list-then-place" and fork.span.end:
            together = _in_one_place(fabric, begun, fork)
            if together is not None:
                for _, nodes in fork.readings:
                    if (len(nodes) == 1 and isinstance(nodes[0], Group)) is together:
                        return nodes
        if fabric is not None and fork.span.end and not fork.readings[0][1] and _made_anything(begun, fork):
            return next((nodes for _, nodes in fork.readings if nodes), ())
        return None if fork.key == "list-then-place" else fork.readings[0][1]

    return choose


def _fabric(report: Report | None, size: int | None) -> Fabric | None:
    if report is None:
        return None
    fabrics = report.fabrics if size is None else report.fabrics[size : size + 1]
    return next((f for f in fabrics if f is not None), None)


def _first_made(fabric: Fabric) -> dict[int, int]:
    """The first stitch that each instruction made, chains left aside."""
    found: dict[int, int] = {}
    chain = fabric.kinds.index("ch") if "ch" in fabric.kinds else -1
    for i, origin in enumerate(fabric.origin):
        if fabric.kind[i] != chain:
            found.setdefault(origin, i)
    return found


def _in_one_place(fabric: Fabric, begun: dict[int, int], fork: Either) -> bool | None:
    """Whether the stitches of these words share the place they are worked into; None when too few were made."""
    made = sorted(i for origin, i in begun.items() if fork.span.start <= origin < fork.span.end)
    if len(made) < 2:
        return None
    before = made[1] - 1
    while before > made[0] and fabric.origin[before] != fabric.origin[made[0]]:
        before -= 1
    return fabric.into[made[1]] == fabric.into[before]


def _made_anything(begun: dict[int, int], fork: Either) -> bool:
    """Whether the worker took these words for an instruction."""
    return any(fork.span.start <= origin < fork.span.end for origin in begun)


def _whole(item: Row, worked: RowReport, report: Report | None) -> bool:
    """Whether every stitch of the repeat was made equally often, seen from the fabrics; a repeat may end in a part of itself."""
    star = next((n for n in item.body if isinstance(n, Repeat) and n.mode != "once"), None)
    times = worked.made.get("repeat")
    for size, fabric in enumerate(report.fabrics if report and star and times else ()):
        if fabric is None or star is None or times is None or times[size] is None:
            continue
        line = next((r for r in fabric.rows if r.item == worked.item), None)
        made = Counter(fabric.origin[line.start : line.end]) if line else Counter()
        for node in star.nodes:
            if isinstance(node, Make) and node.span.end and node.place is not None and node.place.n is not None:
                each = (node.n.at(size) or 1) * ((node.place.n.at(size) or 1) if "tog" not in node.kind else 1)
                if made and made[node.span.start] != each * (times[size] or 0):
                    return False
    return True


def only_kind(worked: Sequence[RowReport]) -> str:
    """The one kind of stitch that rows are made of; "" where there are several or none."""
    kinds = {k for r in worked for k, n in r.made.items() if k not in _NO_KIND and any(n)}
    return kinds.pop() if len(kinds) == 1 else ""


def repeats_of(item: Row, worked: Sequence[RowReport], voice: Voice, report: Report | None) -> Num | None:
    """How often the one repeat of a row is worked, per size; None where it has several, its rows differ in it, or it stops half-way."""
    if not worked or _repeats(item.body) != 1 or len({r.made.get("repeat") for r in worked}) != 1 or not _whole(item, worked[0], report):
        return None
    values = worked[0].made.get("repeat")
    if values is None or any(v is None for v in values):
        return None
    return Num(values) if voice.size is None else Num((values[voice.size],))


def _repeats(nodes: tuple[Node, ...]) -> int:
    found = 0
    for node in nodes:
        if isinstance(node, Repeat):
            found += (node.mode != "once") + _repeats(node.nodes) + _repeats(node.ending)
        elif isinstance(node, Group):
            found += _repeats(node.nodes)
        elif isinstance(node, Either):
            found += max(_repeats(r) for _, r in node.readings)
    return found
