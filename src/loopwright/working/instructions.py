"""What each instruction does to a run: stitches, groups, chains, skips, increases, joins."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import (
    AtEnds,
    Chain,
    Define,
    Divided,
    EdgeRun,
    Either,
    Evenly,
    EveryKth,
    Filet,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    PatternRun,
    Place,
    Repeat,
    Ring,
    Skip,
    Spread,
    Unknown,
)
from loopwright.working.groups import do_group, name_last
from loopwright.working.kinds import legs
from loopwright.working.making import do_make
from loopwright.working.run import CannotWork, Run
from loopwright.working.seeking import SPACES
from loopwright.working.slips import do_join, do_mark, do_skip
from loopwright.working.starts import do_chain, do_ring
from loopwright.working.whole_rows import do_at_ends, do_edge, do_evenly, do_every_kth

UNKNOWN_COST = 0.15
MAX_STEPS = 20_000


MAX_PLANS = 4096
Plan = tuple[tuple[Node, Sequence[Node], int, int], ...]
_PLANS: dict[int, tuple[Sequence[Node], Plan]] = {}


def do_all(run: Run, nodes: Sequence[Node], after: tuple[int, int] = (0, 0)) -> None:
    """Works nodes in order. `after` = (stitches, spaces) that what follows the nodes still needs."""
    if len(nodes) == 1:
        run.reserve, run.reserve_spaces = after
        return do(run, nodes[0], ())
    plan = _PLANS.get(id(nodes))
    if plan is None:
        if len(_PLANS) >= MAX_PLANS:
            _PLANS.clear()
        plan = _PLANS[id(nodes)] = (nodes, _plan(nodes))  # the nodes are kept, so that their id stays theirs
    for node, following, stitches, spaces in plan[1]:
        run.reserve, run.reserve_spaces = after[0] + stitches, after[1] + spaces
        do(run, node, following)
    return None


def _plan(nodes: Sequence[Node]) -> Plan:
    """Each node with what follows it, and the stitches and spaces that those still need."""
    needs = [needed(node) for node in nodes]
    closed = next((i for i, node in enumerate(nodes) if isinstance(node, Join) and i), len(nodes))
    closed = min(closed, _slip_after_whole(nodes))
    needs[closed:] = [(0, 0)] * (len(nodes) - closed)  # what comes after the join takes nothing of this round
    edge = next((i for i, node in enumerate(nodes) if isinstance(node, EdgeRun)), len(nodes))
    for i in range(edge + 1, len(nodes)):
        node = nodes[i]
        if isinstance(node, (Make, Group)) and node.place is not None and node.place.thing.kind == "corner":
            needs[i] = (0, 0)  # a corner of the piece, not of the row below
    under = next((i for i, node in enumerate(nodes) if isinstance(node, Mark) and node.what == "underside"), len(nodes))
    behind = sum(n[0] for n in needs[under:])  # the other side of the chain has stitches of its own for them
    stitches, spaces = sum(n[0] for n in needs), sum(n[1] for n in needs)
    plan = []
    for i, node in enumerate(nodes):
        stitches -= needs[i][0]
        spaces -= needs[i][1]
        plan.append((node, nodes[i + 1 :], stitches - behind if i < under else stitches, spaces))
    return tuple(plan)


def _slip_after_whole(nodes: Sequence[Node]) -> int:
    """Where a slip stitch into the next stitch ends a round told as a whole, "inc 6 sc evenly. Sl st in next sc": it goes into the round's first."""
    last = next((i for i in range(len(nodes) - 1, -1, -1) if not isinstance(nodes[i], (Mark, Unknown))), 0)
    slip = nodes[last] if last else None
    if isinstance(slip, Make) and slip.kind == "sl st" and slip.place is not None and slip.place.quant == "next" and (isinstance(before := nodes[last - 1], (Evenly, EveryKth)) or isinstance(before, Make) and before.place is not None and before.place.quant == "each" and before.place.left is None):
        return last
    return len(nodes)


def needed(node: Node) -> tuple[int, int]:
    """The fewest stitches and chain spaces of the row below that a node uses up: what "each" must leave for it."""
    if isinstance(node, Make):
        return _needed_make(node)
    if isinstance(node, Group):
        return _needed_place(node.place, 1)
    if isinstance(node, Skip):
        count = node.n.at(0) or 0
        return (0, count) if node.thing.kind in SPACES else (count, 0)
    if isinstance(node, Repeat):
        if node.mode in ("end", "left"):
            return total_needed(node.ending) if node.ending_mode != "omit" else (0, 0)
        once, times = total_needed(node.nodes), (node.times.at(0) or 1) if node.times else 1
        more = total_needed(node.ending) if node.ending_mode in ("after", "with", "with-last") else (0, 0)
        return once[0] * times + more[0], once[1] * times + more[1]
    if isinstance(node, Either):
        return total_needed(node.readings[0][1])
    if isinstance(node, AtEnds) and node.ends == 1:
        return (node.n.at(0) or 1) * (2 if node.op == "dec" else 1), 0
    if isinstance(node, (PatternRun, Spread)):
        many = node.over if isinstance(node, Spread) else node.n if node.name is None else None
        return (many.at(0) or 0 if many is not None else 0), 0
    if isinstance(node, Mark) and node.what == "leave" and node.n is not None:
        return (node.n.at(0) or 0), 0
    return 0, 0


def total_needed(nodes: Sequence[Node]) -> tuple[int, int]:
    """The sum of `needed` over nodes."""
    both = [needed(n) for n in nodes]
    return sum(b[0] for b in both), sum(b[1] for b in both)


def _needed_make(node: Make) -> tuple[int, int]:
    count = node.n.at(0) or 1
    if node.place is None:
        return count * (node.taking or legs(node.kind)), 0
    if node.place.quant == "next" and legs(node.kind) > 1 and (node.place.n.at(0) if node.place.n else 1) == 1:
        return legs(node.kind) * count, 0
    return _needed_place(node.place, 1)


def _needed_place(place: Place | None, default: int) -> tuple[int, int]:
    if place is None:
        return default, 0
    if place.thing.kind == "tch" and place.of is not None and place.of.kind in SPACES:
        return 0, 0  # "in turning ch-sp": no stitch of the row below
    if place.quant in ("same", "each", "every", "first") or place.thing.kind == "ring" or place.from_hook:
        return 0, 0
    wanted = (place.n.at(0) if place.n is not None else 1) or 1
    if place.thing.kind in SPACES:
        return 0, wanted
    return wanted, 0


def do(run: Run, node: Node, following: Sequence[Node]) -> None:
    """Works one node; `following` is what comes after it in the same sequence."""
    run.steps += 1
    if run.steps > MAX_STEPS:
        raise CannotWork("too-many", limit=MAX_STEPS)
    if node.span.end:
        run.origin = node.span.start
    run.following = following
    kind = node.__class__
    if kind is Make:
        do_make(run, node)  # type: ignore[arg-type]
    elif kind is Chain:
        do_chain(run, node, following)  # type: ignore[arg-type]
    elif isinstance(node, Repeat):
        from loopwright.working.repeats import do_repeat

        do_repeat(run, node)
    elif isinstance(node, Group):
        do_group(run, node)
    elif isinstance(node, Skip):
        do_skip(run, node)
    elif isinstance(node, Either):
        # once in a row: the words mean the same in every round of a repeat
        nodes = run.once(f"{node.key}@{node.span.start}", tuple((cost, reading) for cost, reading in node.readings))
        do_all(run, nodes, (run.reserve, run.reserve_spaces))
    else:
        _do_rare(run, node)


def _do_rare(run: Run, node: Node) -> None:
    if isinstance(node, Unknown):
        run.unsure = min(12.0, run.unsure + node.words)
        run.cost += UNKNOWN_COST * min(node.words, 12)
    elif isinstance(node, Join):
        do_join(run, node)
    elif isinstance(node, Mark):
        do_mark(run, node)
    elif isinstance(node, Ring):
        do_ring(run, node)
    elif isinstance(node, Evenly):
        do_evenly(run, node)
    elif isinstance(node, EveryKth):
        do_every_kth(run, node)
    elif isinstance(node, AtEnds):
        do_at_ends(run, node)
    elif isinstance(node, EdgeRun):
        do_edge(run, node)
    elif isinstance(node, Filet):
        from loopwright.working.filet import do_filet

        do_filet(run, node)
    elif isinstance(node, (PatternRun, InTurn, Spread, Divided)):
        from loopwright.working import along

        if isinstance(node, PatternRun):
            along.do_pattern(run, node)
        elif isinstance(node, InTurn):
            along.do_in_turn(run, node)
        elif isinstance(node, Divided):
            along.do_divided(run, node)
        else:
            along.do_spread(run, node)
    elif isinstance(node, Define) and run.out:
        name_last(run, node.name)


# --- stitches --------------------------------------------------------------------------------------------------------
