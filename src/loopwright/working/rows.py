"""Working one row once: from a state and a body to what was made, what it cost, and the view for the next row."""

from __future__ import annotations

import re
from array import array
from collections import Counter
from dataclasses import replace
from typing import Any

from loopwright.model.moved import moved
from loopwright.model.tree import (
    AtEnds,
    Chain,
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
    Num,
    PatternRun,
    Repeat,
    Ring,
    Skip,
    Unknown,
)
from loopwright.record import record
from loopwright.working.around import told_round
from loopwright.working.coming_round import before_its_group
from loopwright.working.grouping import together
from loopwright.working.instructions import do_all, total_needed
from loopwright.working.kinds import CHAIN, HEIGHT, code, plain
from loopwright.working.leads import on_chain
from loopwright.working.marked import carried
from loopwright.working.passed import between_kinds
from loopwright.working.run import CannotWork, Choice, Printed, Run
from loopwright.working.seeking import SPACES
from loopwright.working.slots import Slots
from loopwright.working.starts import first_stitch
from loopwright.working.tally import SLIP, bridged_chains, counted_end, ends_low, kinds_made, main_of, makes_opening, slips_along_own_chain
from loopwright.working.tape import Note
from loopwright.working.view import View, ring

NOTHING = View(b"")
_SLIPS = re.compile(re.escape(bytes((SLIP,))) + b"{2,}")
LEFT_COST, LEFT_EACH, LEFT_MAX = 1.5, 0.15, 4.0
SPACE_LEFT, SPACE_EACH, PAST_LAST = 0.7, 0.1, 0.2
UNDER_CLOSING = 5  # stitches that the loop which closes a round may lie over, unsaid
DISAGREES = 3.0
PART_ROW = 2  # a row of more stitches than that, and no more told of it, is one as it stands
OF_BEFORE = 1 << 28  # added to places in the words of the row before


@record
class Made:
    """One row as made in one reading."""

    view: View
    out: bytes
    into: Slots
    origins: array[int]
    count: int
    bridged: int
    made: dict[str, int]
    cost: float
    left: int
    spaces_left: int
    log: tuple[Choice, ...]
    conventions: tuple[tuple[str, Any], ...]
    main_kind: str
    joined: bool
    turned: bool
    in_rounds: bool
    pending: Chain | None
    agrees: bool | None = None
    unsure: float = 0.0
    work: int = 0
    base: View | None = None  # what it was worked on: the row below, or a foundation or ring that the row itself began
    tape: tuple[Note, ...] = ()
    start: int = 0
    uneven: tuple[int, int] | None = None  # a repeat that did not come out even: what a round takes, what there was for it
    stays: bool = False  # the words say that the work is not turned after it
    free: int = 0  # stitches of the row below that it leaves, whether the words say so or not
    passed: int = 0  # stitches of the row below that it passes over, unsaid, to come to its last ones
    from_print: bool = False  # how many go along the row ends was taken from the printed count, which therefore confirms nothing


def main_kind(nodes: tuple[Node, ...], default: str) -> str:
    """The stitch a row is mostly made of: what "inc" and "dec" are made of."""
    found = _kinds(nodes)
    return found.most_common(1)[0][0] if found else default


def _kinds(nodes: tuple[Node, ...]) -> Counter[str]:
    found: Counter[str] = Counter()
    for node in nodes:
        if isinstance(node, Make) and plain(node.kind) in HEIGHT and node.kind != "sl st":
            found[plain(node.kind)] += 5 if node.place is not None and node.place.quant in ("each", "every") else 1
        elif isinstance(node, (Group, Repeat)):
            found.update(_kinds(node.nodes))
        elif isinstance(node, (Evenly, EveryKth, AtEnds)) and node.kind:
            found[node.kind] += 1
        elif isinstance(node, Either):
            found.update(_kinds(node.readings[0][1]))
    return found


def split_pending(body: tuple[Node, ...]) -> tuple[tuple[Node, ...], Chain | None]:
    """Takes a turning chain told at the end of a row off it: it belongs to the next row, and its words are none of that one's."""
    nodes = list(body)
    marks: list[Node] = []
    while nodes and isinstance(nodes[-1], Mark):
        marks.append(nodes.pop())
    turned = any(isinstance(m, Mark) and m.what == "turn" for m in marks)
    if turned and nodes and isinstance(nodes[-1], Repeat) and len(nodes[-1].ending) > 1 and isinstance(nodes[-1].ending[-1], Chain):
        told = nodes[-1]
        return (*nodes[:-1], replace(told, ending=told.ending[:-1]), *reversed(marks)), _of_before(told.ending[-1])
    if nodes and isinstance(nodes[-1], Chain) and len(nodes) > 1 and any(isinstance(n, (Make, Repeat, Group, Evenly, PatternRun, EveryKth, AtEnds, Filet, InTurn)) for n in nodes[:-1]):
        before = nodes[-2]
        if turned or isinstance(before, (Join, Mark)):
            chain = nodes.pop()
            assert isinstance(chain, Chain)
            return (*nodes, *reversed(marks)), _of_before(chain)
    return body, None


def _of_before(chain: Any) -> Any:
    """A chain with its words marked as those of the row before."""
    return moved(chain, OF_BEFORE) if chain.span.start < OF_BEFORE else chain


def lead_chain(body: tuple[Node, ...]) -> Chain | None:
    """The chain a row begins with, marks aside."""
    for node in body:
        if isinstance(node, Chain):
            return node
        if not isinstance(node, Mark) and not (isinstance(node, Unknown) and from_hook(body)):
            return None
    return None


def from_hook(nodes: tuple[Node, ...]) -> bool:
    """Whether the first place named is counted from the hook."""
    for node in nodes:
        place = getattr(node, "place", None)
        if place is not None:
            return bool(place.from_hook)
        if isinstance(node, Repeat):
            return from_hook(node.nodes)
        if isinstance(node, Make):
            return False
    return False


def work_row(
    view: View, body: tuple[Node, ...], forced: tuple[int, ...], conventions: dict[str, Any], definitions: dict[str, tuple[Node, ...]],
    kind: str, in_rounds: bool, edge_rows: int = 0, free: int = 0, first_row: int = 0, printed: Printed | None = None,
) -> Made:
    """Works a row once with forced choices. Raises CannotWork when this reading cannot be worked."""
    nodes, pending = split_pending(on_chain(body) if view.foundation else body)
    run = Run(view, forced, conventions.copy(), definitions, kind, in_rounds or view.joined, printed or Printed())
    run.named["edge-rows"] = edge_rows
    run.named["free"] = free
    run.named["first-row"] = first_row
    run.named["edges-told"] = int(not view.runs and any(_along_edge(n) for n in nodes))
    if not view.items and not view.ring and not view.open_end and not any(isinstance(n, Ring) for n in nodes) and _into_ring(nodes):
        run.view = ring()
        run.in_rounds = True
        run.end = 0
    if view.ring and not view.items:
        run.end = 0
    if any(isinstance(n, Mark) and n.text == "tch-space" for n in nodes):
        run.conventions["tch-space"] = True  # "the turning chain always counts as 1 space"
    try:
        do_all(run, _implied_repeat(run, told_round(run, nodes)))
    except CannotWork as why:
        why.log = tuple(run.log)
        why.work = run.work
        why.got = len(run.out) - run.out.count(CHAIN)
        if why.reason == "runs-out" and (has := _has(run.view, why.facts.get("thing"))) is not None:
            why.facts.setdefault("has", has)
        raise
    made = len(run.out)  # stitches may have been taken back, and with them what they were part of
    run.groups = [g for g in run.groups if g.end <= made]
    run.runs = [r for r in run.runs if r[1] <= made]
    return _finished(run, pending)


def _along_edge(node: Node) -> bool:
    """Whether an instruction goes along an edge of the piece."""
    if isinstance(node, InTurn):
        return any(map(_along_edge, node.parts))
    return isinstance(node, EdgeRun) or isinstance(node, Make) and node.place is not None and node.place.thing.kind in ("row", "row-end")


def _has(view: View, thing: str | None) -> int | None:
    """How many of a thing the row below has; None where nobody knows or counts."""
    if view.open_end or view.ring or not view.items or thing is None:
        return None
    if thing in ("sp", "loop", "mesh", "arch"):
        return len(view.runs) or None
    if thing == "ch" and view.foundation or thing == "st":
        return len(view.items) if view.foundation else view.stitches
    return view.items.count(code(thing)) or None if thing in HEIGHT else None


def _into_ring(nodes: tuple[Node, ...]) -> bool:
    for node in nodes:
        if isinstance(node, (Make, Group)) and node.place is not None:
            return node.place.thing.kind == "ring"
        if isinstance(node, (Repeat, Group)):
            return _into_ring(node.nodes)
        if isinstance(node, Make):
            return False
    return False


def _implied_repeat(run: Run, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """A row that tells one repeat only and means the whole row: a choice, made a convention."""
    if (one := _one_bracket(nodes)) is not None and run.printed.ask():
        nodes = one
    inner = [i for i, n in enumerate(nodes) if isinstance(n, (Make, Group, Skip, Chain, Repeat))]
    if not inner or any(isinstance(n, (Repeat, Either, Evenly, EveryKth, AtEnds, PatternRun, Ring)) for n in nodes):
        return nodes
    if any(isinstance(n, (Make, Group)) and n.place is not None and n.place.quant in ("each", "last", "every") for n in nodes):
        return nodes
    if any(isinstance(n, (Make, Group)) and n.place is not None and n.place.of is not None and len(run.view.index.by_name.get(n.place.of.kind, ())) == 1 for n in nodes):
        return nodes  # "shell in sp of shell", where there is but one
    if run.view.ring and not run.view.runs and any(isinstance(n, (Make, Group)) and n.place is not None and n.place.thing.kind in ("ring", "loop", "sp") for n in nodes):
        return nodes  # all of it goes into the ring
    first = next((i for i in inner if not (isinstance(nodes[i], Chain) and i == inner[0])), None)
    if first is not None and isinstance(nodes[inner[0]], Chain) and (nodes[inner[0]].n.at(0) or 0) > 2 and (first_stitch(nodes[inner[0] + 1 :]) or ("",))[0] in ("sc", "sl st"):  # type: ignore[union-attr]
        first = inner[0]  # "3 ch, 1 sc": the loop is part of what is repeated
    if first is None or (run.view.ring and not run.view.items) or run.view.open_end or not run.view.items:
        return nodes
    last = inner[-1] + 1
    need = total_needed(nodes[first:last])
    if need == (0, 0) or need[0] > run.view.stitches or need[0] * 2 > run.view.stitches and need[1] * 2 >= len(run.view.runs) or (run.view.foundation and need[0] * 2 > len(run.view.items)):
        return nodes
    turns = any(isinstance(n, Mark) and n.what == "turn" for n in nodes)
    if turns and (run.in_rounds or _part_row(nodes[first:last])):  # rows begin on part of a round, or of a row
        run.left_said = True
        run.named["left-free"] = int(not run.in_rounds)
        return nodes
    if (once := _plainly_made(nodes[first:last])) and once == run.printed.ask():
        return nodes  # "4 sc, dec, 4 sc (9)": told as it stands
    if run.convention("one-repeat-told", ((0.0, False), (0.9, True))):
        return (*nodes[:first], Repeat(nodes[first:last], "end"), *nodes[last:])
    return nodes


def _one_bracket(nodes: tuple[Node, ...]) -> tuple[Node, ...] | None:
    """ "[sc, inc] (18)": what stands in the one bracket that a row tells; None where it tells more."""
    told = [n for n in nodes if not isinstance(n, (Mark, Join))]
    one = told[0] if len(told) == 1 else None
    if not isinstance(one, Repeat) or one.mode != "once" or not all(isinstance(n, (Make, Group, Chain, Skip)) for n in one.nodes):
        return None
    return tuple(inner for n in nodes for inner in (one.nodes if n is one else (n,)))


def _plainly_made(nodes: tuple[Node, ...]) -> int:
    """How many stitches instructions make that go from one stitch to the next; 0 where others stand among them."""
    made = 0
    for node in nodes:
        if isinstance(node, Mark):
            continue
        place = node.place if isinstance(node, Make) else None
        if not isinstance(node, Make) or node.parts or place is not None and (place.quant != "next" or place.thing.kind in SPACES):
            return 0
        each = place.n.at(0) if place is not None and place.n is not None else 1
        made += (node.n.at(0) or 0) * (each or 0) * (2 if node.kind == "inc" else 1)
    return made


def _part_row(nodes: tuple[Node, ...]) -> bool:
    """ "1 sc in each of 8 sc, turn", "work 15 sc, turn": one run of stitches that ends where the work is turned."""
    one = nodes[0]
    if len([n for n in nodes if not isinstance(n, (Mark, Chain))]) != 1 or not isinstance(one, Make):
        return False
    if one.place is None:
        return (one.n.at(0) or 0) > PART_ROW
    return one.n.at(0) == 1 and one.place.quant in ("next", "first") and one.place.thing.kind not in SPACES and (one.place.n is not None and (one.place.n.at(0) or 0) > PART_ROW)


def _finished(run: Run, pending: Chain | None) -> Made:
    """Puts the row together: leftovers, counts, the view for the next row."""
    left, spaces = _leftovers(run)
    cost = run.cost
    free = left
    if 0 < left <= UNDER_CLOSING and run.repeats and any(n.what == "half" for n in run.tape):
        left, spaces = 0, spaces if run.used_spaces else 0  # "…; rep from * to last 2 sts, ch 2, dc in first sc": the last loop is over those
    if run.left_said:
        free = left if run.named.get("left-free") else 0
        left = spaces = 0
    if left:
        cost += min(LEFT_MAX, LEFT_COST + LEFT_EACH * left) if left > 1 or not run.view.turned else 0.5
    elif spaces:
        cost += PAST_LAST if before_its_group(run, spaces) else min(LEFT_MAX, SPACE_LEFT + SPACE_EACH * spaces)
    _drop_trailing_slips(run)
    out = bytes(run.out)
    nothing_made = run.worked == 0 and not out
    along = slips_along_own_chain(run, out)
    slips = out.count(SLIP) - along
    stitches = len(out) - out.count(CHAIN) - along
    uncounted = 0 if run.slip_row else _uncounted(run, out, slips, stitches)
    count = stitches - (_uncounted_of(run, out, stitches, uncounted) if uncounted else 0)
    bridged = bridged_chains(run, count)
    if nothing_made and (run.view.foundation or run.view.ring):
        return _only_start(run, cost, pending)
    together(run)
    view = View(
        out, tuple(r for r in run.runs if r[1] > r[0]), tuple(g for g in run.groups if g.end - g.start > 1 or g.name),
        0 if run.tch_item else run.tch_length, True, joined=run.joined or (run.in_rounds and not run.turned), turned=False,
        mesh=(bridged > 0 and min(e - s for s, e in run.runs) < 3) + (makes_opening(run) or bridged > 0 and run.named.get("chains-counted", 0) > 0) * 2, divisions=_divisions(run), markers=carried(run),
        half=any(n.what == "half" for n in run.tape),
    )
    return Made(
        view, out, run.into, run.origins, count, bridged + counted_end(run, count, pending), kinds_made(run, out), cost, left, spaces, tuple(run.log),
        tuple(sorted(run.conventions.items(), key=lambda kv: kv[0])), main_of(out, run.main_kind), run.joined, run.turned,
        run.in_rounds or run.joined, pending, None, run.unsure, base=run.view, tape=tuple(run.tape), start=run.start, uneven=run.uneven,
        stays=bool(run.named.get("no-turn")), from_print=bool(run.named.get("from-print")),
        passed=run.named.get("passed", 0), work=run.work, free=free,
    )


def _uncounted(run: Run, out: bytes, slips: int, stitches: int) -> int:
    """Slip stitches that are none of the row's stitches: single ones among others, and a round of nothing else."""
    if slips == stitches > 0 and run.turned is False and run.in_rounds:
        return slips
    if slips * 4 >= stitches:
        return 0
    if slips != out.count(SLIP):
        return slips
    return slips - sum(len(m.group()) for m in _SLIPS.finditer(out))


def _uncounted_of(run: Run, out: bytes, stitches: int, slips: int) -> int:
    """How many of the slip stitches that are none of the row's stitches its printed count leaves out: all, unless it is of all but those on the way to its start."""
    on_the_way = len(out) - len(out.lstrip(bytes((SLIP,)))) if run.in_rounds else 0
    return on_the_way if on_the_way < slips and run.printed.ask() == stitches - on_the_way and run.printed.of_all else slips


def _divisions(run: Run) -> int:
    """Equal parts that the row was told in: its repeats, its groups into each place."""
    parts = run.named.get("divisions") or run.named.get("rounds") or (len(run.groups) if run.groups and not run.runs else 0)
    return parts if parts and len(run.out) % parts == 0 else 0


def _only_start(run: Run, cost: float, pending: Chain | None) -> Made:
    n = len(run.view.items)
    turn = run.start_chain is not None and run.start_chain[1] == "foundation-turn"
    pend = Chain(Num((run.start_chain[0],))) if turn and run.start_chain else pending
    return Made(
        run.view, b"", Slots(), array("i"), n, 0, {"ch": n}, cost, 0, 0, tuple(run.log), tuple(sorted(run.conventions.items(), key=lambda kv: kv[0])),
        run.main_kind, False, run.turned, run.in_rounds, pend, None, run.unsure, base=run.view, tape=tuple(run.tape),
    )


def _leftovers(run: Run) -> tuple[int, int]:
    view = run.view
    if view.ring or view.open_end or not view.items:
        return 0, 0
    if view.foundation:
        return max(0, run.end - run.pos), 0
    left = run.stitches_left()
    spaces = sum(1 for s, e in view.runs if run.pos <= s < run.end)
    if run.used_spaces and left and not spaces:
        return 0, 0
    left = max(0, left - run.named.get("came-back", 0))
    if run.end > len(view.items) and run.start:
        before = sum(1 for i in range(min(run.start, len(view.items))) if view.items[i] != CHAIN)
        left = max(0, left - before)
    if spaces == 1 and not run.used_spaces and not left and run.in_rounds and run.named.get("ends-untold"):
        run.cost += PAST_LAST  # a round from stitch to stitch goes past its last chain to the first stitch
        return 0, 0
    if left and between_kinds(run) or run.used_spaces and 0 < left <= run.named.get("group-rest", 0):
        return 0, 0  # the rest of the last shell, in whose space the round ends
    return left, spaces


def _drop_trailing_slips(run: Run) -> None:
    if not run.in_rounds and not run.joined and run.out[-2:] == bytes((SLIP, SLIP)):
        return  # the edge of a row
    if not run.in_rounds and not run.joined and run.view.turned and run.out.count(SLIP) > 1:
        return  # one of several that stand between shells or scales
    if ends_low(run) and run.convention("last-slip", ((0.0, False), (0.6, True))):
        return
    while run.out and run.out[-1] == SLIP and not run.slip_row and run.out.count(SLIP) * 4 < len(run.out):
        run.out.pop()
        slot = run.into.pop()
        run.origins.pop()
        run.note("join", slot=slot)
