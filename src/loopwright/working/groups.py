"""Several things into one place, and the names that groups have."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import (
    Chain,
    Either,
    Group,
    Join,
    Make,
    Node,
    Num,
    Place,
    Repeat,
)
from loopwright.working.kinds import CHAIN, HEIGHT, code
from loopwright.working.making import apart, do_make, kind_made, picot
from loopwright.working.places import how_of, slots_of
from loopwright.working.run import MAX_ITEMS, Run
from loopwright.working.seeking import SPACES
from loopwright.working.skipped import skip_foundation
from loopwright.working.starts import first_stitch, side_of_petal, start_in_group
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot, groups_again, runs_again


def do_group(run: Run, node: Group) -> None:
    """Several things into one place, once for each place taken."""
    place = node.place or Place("next", Num((1,)))
    slots = slots_of(run, place, how_of(run, place))
    if slots and slots[0].how == "own-chain" and place.from_hook:
        slots = [Slot(-1, -1, "chain")]
    elif place.from_hook and run.view.foundation and not run.worked and (first := first_stitch(node.nodes)) is not None:
        skip_foundation(run, kind_made(run, first[0])[0], place.k, mesh=False)
    for done, slot in enumerate(slots):
        begin = len(run.out)
        if done == 2 and copied(run, node, slots):
            break
        nodes = node.nodes[1:] if len(node.nodes) > 2 and _slip(node.nodes[0]) else node.nodes  # the hook goes there: "(sl st, ch 3, 2 dc) in next sp"
        if len(nodes) > 1 and isinstance(nodes[0], Chain) and not run.worked and not run.out and run.start_chain is None and not run.view.foundation:
            length = (nodes[0].n.at(0) or 0) + nodes[0].plus
            run.origin = nodes[0].span.start if nodes[0].span.end else run.origin
            if run.inside and nodes is not node.nodes:  # "*(sl st, ch 3, 2 dc) in next, …; rep from *": of each petal
                run.start_chain = (length, "loop")
                run.chain(length)
            elif not side_of_petal(run, length, nodes[1:]):
                start_in_group(run, nodes[0], length, nodes[1:], slot)
            nodes = nodes[1:]
        into_one(run, nodes, slot)
        label = node.name or ""
        run.groups.append(MadeGroup(begin, len(run.out), label))
    if slots:
        run.last = slots[-1]
        if place.quant != "same" or slots[-1].start < run.end:  # the loop that closed the round before lies behind the others
            run.pos = max(run.pos, slots[-1].end)


def copied(run: Run, node: Group, slots: list[Slot]) -> bool:
    """The group in all places but the first two, copied from the second: where it holds plain stitches and chains alone."""
    first, second = run.groups[-2:]
    size = second.end - second.start
    apart = size > 0 and not run.out[second.start] == CHAIN == run.out[second.end - 1]  # chains that meet would be one space
    plain = apart and first.end == second.start and size == first.end - first.start
    if not plain or second.end != len(run.out) or not all(isinstance(n, Chain) or is_plain(run, n) for n in node.nodes):
        return False
    into, origins, more = [run.into[i] for i in range(second.start, second.end)], run.origins[second.start :], slots[2:]
    if len(run.out) + size * len(more) > MAX_ITEMS or any(s is not None and s != slots[1] for s in into):
        return False
    runs = [(s, e) for s, e in run.runs if s >= second.start]
    times = len(more)
    run.out += run.out[second.start :] * times
    run.origins.extend(origins * times)
    run.into.extend(None if s is None else slot for slot in more for s in into)
    run.runs.extend(runs_again(runs, size, times))
    run.groups.extend(groups_again([second], size, times))
    run.worked += times * sum(1 for s in into if s is not None)
    return True


def is_plain(run: Run, node: Node) -> bool:
    """Whether a node makes so many stitches and nothing else happens."""
    return isinstance(node, Make) and node.place is None and node.kind in HEIGHT and node.kind != "sl st" and node.kind not in run.definitions


def into_one(run: Run, nodes: Sequence[Node], slot: Slot) -> None:
    """Works nodes so that every stitch goes into `slot`."""
    from loopwright.working.instructions import do

    run.placed += len(nodes)
    for node in (n for n in nodes if not _slip(n)):
        if node.span.end:
            run.origin = node.span.start
        if isinstance(node, Make):
            if node.place is not None and node.place.quant != "same" and node.place.thing.kind != "st":
                do_make(run, node)
                continue
            kind, twice = kind_made(run, node.kind)
            if kind == "picot":
                picot(run, node.n.at(0) or 1)
                continue
            if kind == "sl st":
                continue
            if kind in run.definitions and kind not in HEIGHT:
                for _ in range(min(node.n.at(0) or 1, MAX_ITEMS)):
                    begin = len(run.out)
                    into_one(run, stitch_parts(run, kind), slot)
                    run.groups.append(MadeGroup(begin, len(run.out), kind))
                continue
            if node.between:
                apart(run, code(kind), slot, (node.n.at(0) or 1) * twice, node.between)
            else:
                run.make(code(kind), slot, (node.n.at(0) or 1) * twice)
        elif isinstance(node, Chain):
            run.chain(max(0, node.n.at(0) or 0))
        elif isinstance(node, Repeat):
            for _ in range(min(200, ((node.times.at(0) or 1) if node.times else 1) + (node.mode == "more"))):
                into_one(run, node.nodes, slot)
            into_one(run, node.ending, slot)
        elif isinstance(node, Group):
            into_one(run, node.nodes, slot)
        elif isinstance(node, Either):
            into_one(run, node.readings[0][1], slot)
        else:
            do(run, node, ())


def _slip(node: Node) -> bool:
    """ "(sl st, ch 3, 3 dc) in next sp": a slip stitch into that place, which closes no round."""
    if isinstance(node, Make):
        return node.kind == "sl st" and node.place is None
    return isinstance(node, Join) and node.place is None and node.via == "sl st"


def stitch_parts(run: Run, kind: str) -> tuple[Node, ...]:
    """What a defined name is made of, its own place taken away: the caller gives the place."""
    nodes = run.definitions.get(kind, ())
    if len(nodes) == 1 and isinstance(nodes[0], Group):
        return nodes[0].nodes
    if len(nodes) == 1 and isinstance(nodes[0], Make) and nodes[0].kind != kind and (nodes[0].n.at(0) or 1) > 1 and _in_a_stitch(nodes[0]):
        return (replace(nodes[0], place=None),)  # "5 dc in next ch (5-dc shell made)"
    return tuple(n for n in nodes if not (isinstance(n, Make) and n.kind == kind))


def _in_a_stitch(made: Make) -> bool:
    """Whether what a name means goes into a stitch or a chain, wherever that is: into no space of its own."""
    return made.place is not None and made.place.thing.kind not in (*SPACES, "corner", "ring")


def do_defined(run: Run, node: Make) -> None:
    """A stitch or group that the pattern has defined: "shell", "cluster", "bean st"."""
    nodes, called = stitch_parts(run, node.kind), _one_of(run, node.kind)
    if len(nodes) == 1 and isinstance(nodes[0], Repeat) and nodes[0].mode == "once":
        return _do_over_several(run, node, nodes[0])
    count = node.n.at(0) or 1
    places = node.place or Place("next", node.n)
    if count == 1 and len(nodes) > 1 and isinstance(nodes[0], Chain) and not run.worked and not run.out and not run.view.foundation:
        return do_group(run, Group(nodes, places, node.kind, span=node.span))  # "beg shell in same sp": the row begins with its chain
    repeats = count if node.place is not None and count > 1 and (node.place.n is None or node.place.n.at(0) == 1) else 1
    spread = not any(isinstance(n, (Make, Group)) for n in nodes)
    slots = slots_of(run, places, how_of(run, places, node.loop))
    if places.from_hook and run.view.foundation and not run.worked and (first := first_stitch(nodes)) is not None:
        at, run.pos = run.pos, max(1, run.pos - 1)  # the chain that counts stands before the group, not in it
        skip_foundation(run, kind_made(run, first[0])[0], places.k, mesh=False)
        run.pos = at
    for slot in slots:
        for _ in range(repeats):
            begin = len(run.out)
            if spread or not nodes:
                run.make(code(node.kind), slot)
            else:
                into_one(run, nodes, slot)
            run.groups.append(MadeGroup(begin, len(run.out), called))
    if slots:
        run.last, run.pos = slots[-1], max(run.pos, slots[-1].end)
    return None


_FIRST_OF = ("beginning ", "beg ", "first ", "starting ")


def _one_of(run: Run, kind: str) -> str:
    """ "beginning star" is one of the stars that the pattern defines."""
    lead = next((w for w in _FIRST_OF if kind.startswith(w)), None)
    rest = kind.removeprefix(lead) if lead is not None else ""
    return next((k for k in run.definitions if rest and (k == rest or k in (f"{rest} st", f"{rest} stitch"))), kind)


def _do_over_several(run: Run, node: Make, told: Repeat) -> None:
    """A stitch that goes over several: worked as it is defined, on what comes next. "Xdc over next 2 sts" is one; "in each st" goes on to the end."""
    from loopwright.working.instructions import do_all
    from loopwright.working.repeats import do_repeat

    if node.place is not None and node.place.quant == "each":
        return do_repeat(run, Repeat((replace(node, place=None),), "end", span=node.span))
    after, called = (run.reserve, run.reserve_spaces), _one_of(run, node.kind)
    for _ in range(min(node.n.at(0) or 1, MAX_ITEMS)):
        begin = len(run.out)
        do_all(run, told.nodes, after)
        run.groups.append(MadeGroup(begin, len(run.out), called))
    return None


def name_last(run: Run, label: str) -> None:
    """The stitches just made into one place get a name ("(shell made)")."""
    run.named["called"] = 1
    if run.groups and run.groups[-1].end == len(run.out):
        run.groups[-1] = run.groups[-1]._replace(name=label)
    elif run.out:
        run.groups.append(MadeGroup(len(run.out) - 1, len(run.out), label))


# --- skips, joins, marks ---------------------------------------------------------------------------------------------
