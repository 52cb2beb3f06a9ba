"""What each instruction does to a run: stitches, groups, chains, skips, increases, joins."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from loopwright.model.tree import (
    STITCH,
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
    Num,
    PatternRun,
    Place,
    Repeat,
    Ring,
    Skip,
    Spread,
    Thing,
    Unknown,
)
from loopwright.working.kinds import CHAIN, HEIGHT, code, legs, name, plain
from loopwright.working.places import SPACES, STITCHES, how_of, seek, slots_of, view_runs
from loopwright.working.run import MAX_ITEMS, CannotWork, Run, RunsOut
from loopwright.working.starts import do_chain, do_ring, first_stitch, skip_foundation, start_in_group
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot, plain_row

UNKNOWN_COST = 0.15
MAX_STEPS = 60_000
DEFAULT_SHELL = 5


def do_all(run: Run, nodes: Sequence[Node], after: tuple[int, int] = (0, 0)) -> None:
    """Works nodes in order. `after` = (stitches, spaces) that what follows the nodes still needs."""
    if len(nodes) == 1:
        run.reserve, run.reserve_spaces = after
        return do(run, nodes[0], ())
    needs = [needed(node) for node in nodes]
    closed = next((i for i, node in enumerate(nodes) if isinstance(node, Join) and i), len(nodes))
    needs[closed:] = [(0, 0)] * (len(nodes) - closed)  # what comes after the join takes nothing of this round
    stitches, spaces = after[0] + sum(n[0] for n in needs), after[1] + sum(n[1] for n in needs)
    for i, node in enumerate(nodes):
        stitches -= needs[i][0]
        spaces -= needs[i][1]
        run.reserve, run.reserve_spaces = stitches, spaces
        do(run, node, nodes[i + 1 :])
    return None


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
    if isinstance(node, Make):
        do_make(run, node)
    elif isinstance(node, Chain):
        do_chain(run, node, following)
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


def kind_made(run: Run, kind: str) -> tuple[str, int]:
    """The real kind of "inc" and "dec", and how many an increase makes."""
    if kind == "inc":
        return run.main_kind, 2
    if kind in ("dec", "invdec"):
        return f"{plain(run.main_kind)}2tog", 1
    return ("sc" if run.main_kind == "st" else run.main_kind, 1) if kind in ("st", "*same*") else (kind, 1)


def do_make(run: Run, node: Make) -> None:
    """Stitches of one kind; see the tree's Make for which places."""
    if node.kind in run.definitions and node.kind not in HEIGHT:
        return do_defined(run, node)
    kind, twice = kind_made(run, node.kind)
    count = node.n.at(0)
    if count is None or count < 0:
        raise CannotWork("blank")
    if node.kind == "sl st":
        return do_slip(run, node, count)
    if kind == "picot":
        return _picot(run, count)
    if node.place is not None and node.place.quant == "each" and node.place.n is None and node.place.thing.kind in ("row", "row-end"):
        return do_edge(run, EdgeRun(kind, None, "row-ends", count, node.span))
    place, parts = node.place, node.taking or max(legs(node.kind), node.parts if node.parts and node.place is None else 0)
    if place is None:
        return _make_over(run, kind, count, parts, twice, node)
    if parts > 1 and _over(run, place, parts, node):
        wanted = ((place.n.at(0) if place.n else None) or parts) if place.quant != "each" else None
        times = count if wanted in (None, 1, parts) else max(1, wanted // parts)
        return _make_over(run, kind, times, parts, twice, node, Thing(place.thing.kind, place.thing.length))
    if place.of is not None and place.of.kind == "ch" and place.k is None and run.named.get("own-chain-left", 0) > 0:
        return own_more(run, code(kind), place)
    _before_foundation(run, kind, place)
    slots = slots_of(run, place, how_of(run, place, node.loop))
    if slots and slots[0].how == "own-chain" and place.from_hook:
        return own_chain(run, kind, count, -slots[0].start)
    if place.from_hook:
        _before_foundation(run, kind, place, place.k)
    number = code(kind)
    _start_pair(run, place, number, count * twice)
    if count * twice == 1 and not node.between and len(slots) > 8:
        return _plain_run(run, number, slots)
    for slot in slots:
        begin = len(run.out)
        for j in range(count * twice):
            if j and node.between:
                run.chain(node.between)
            run.make(number, slot)
        if count * twice > 1:
            run.groups.append(MadeGroup(begin, len(run.out), ""))
    if run.half_loop:
        _half_loop(run, kind)
    return None


def _start_pair(run: Run, place: Place, number: int, each: int) -> None:
    """ "Ch 3, 2 dc in each st": where the chain is a stitch, its place takes the other one too."""
    paired = place.quant == "each" and each > 1 and run.tch_item and len(run.out) == 1 and run.into[0] is not None and not run.view.ring
    if paired and run.once("start-pair", ((0.0, True), (0.3, False))):
        for _ in range(each - 1):
            run.make(number, run.into[0])
        run.groups.append(MadeGroup(0, len(run.out), ""))


def _before_foundation(run: Run, kind: str, place: Place | None, said: int | None = None) -> None:
    """In the first row: where the first stitch goes, and what the chains before it are."""
    if not run.view.foundation or run.worked:
        return
    if said is None and run.named.get("missed") == run.pos > 0:
        said = run.pos + 1  # "miss 3, 1 treble in next": as if told from the hook
    if said is not None:
        skip_foundation(run, kind, said)
    elif run.pos == 0 and not (place and (place.from_hook or place.quant in ("first", "last"))):
        skip_foundation(run, kind, None)


def _plain_run(run: Run, number: int, slots: list[Slot]) -> None:
    """One stitch in each of many slots at once."""
    if len(run.out) + len(slots) > 20_000:
        raise CannotWork("too-many", limit=20_000)
    run.out.extend(bytes([number]) * len(slots))
    run.into.extend(slots)
    run.origins.extend([run.origin] * len(slots))
    run.worked += len(slots)
    run.own_chain = 0


def _over(run: Run, place: Place, parts: int, node: Make) -> bool:
    """Whether a decrease or cluster is worked over several places, or wholly into one."""
    if place.quant == "same" or place.relation == "around" and place.n is None:
        return False
    wanted = place.n.at(0) if place.n is not None else 1
    if wanted and wanted > 1:
        return True
    if place.quant == "each" or place.thing.kind in SPACES or place.thing.kind in ("ring", "corner"):
        return False
    return bool(run.once(f"over-{node.kind}", ((0.0, True), (0.35, False)) if parts == 2 else ((0.2, True), (0.0, False))))


def _make_over(run: Run, kind: str, count: int, parts: int, twice: int, node: Make, thing: Thing = STITCH) -> None:
    """Each stitch over the next `parts` places."""
    how = how_of(run, None, node.loop)
    number = code(kind)
    if run.view.ring and (not run.view.items or not run.worked and count * parts > len(run.view.items)):
        for _ in range(count * twice):
            run.make(number, Slot(0, 0, "ring"))
        return
    _before_foundation(run, kind, None)
    for _ in range(count):
        first: Slot | None = None
        for _ in range(max(1, parts)):
            slot = seek(run, thing, run.pos)
            if slot is None:
                raise RunsOut(thing.kind, wanted=count * parts, found=0)
            run.pos, run.last = max(run.pos, slot.end), slot
            first = slot if first is None else Slot(first.start, slot.end, slot.how)
        assert first is not None
        begin = len(run.out)
        for _ in range(twice):
            run.make(number, first._replace(how=how if first.how == "top" else first.how))
        if twice > 1:
            run.groups.append(MadeGroup(begin, len(run.out), ""))


def do_slip(run: Run, node: Make, count: int) -> None:
    """Slip stitches: before the first stitch they move the start of the row; later they are stitches that are not counted."""
    place = node.place or Place("next", node.n)
    if run.worked == 0 and not run.out and place.quant == "each" and not run.view.ring:
        slots = slots_of(run, place, how_of(run, place, node.loop))
        run.slip_row = True
        return _plain_run(run, code("sl st"), slots)
    if run.view.foundation and place.from_hook and run.worked == 0:
        slots = slots_of(run, place)
        run.slip_row = True
        return _plain_run(run, code("sl st"), slots)
    if place.from_hook and run.own_chain and run.own_chain >= (place.k or 1):
        back = place.k or 1
        if back < min(3, run.own_chain) and run.worked:
            return own_chain(run, "sl st", count, back)  # along the chain just made: a tie, a knob
        run.named["picot"] = run.named.get("picot", 0) + 1  # back into the chain just made: a picot, part of its loop
        run.note("close", back)
        return None
    if place.of is not None and place.of.kind == "ch" and run.named.get("own-chain-left", 0) > 0:
        return own_more(run, code("sl st"), place)
    if run.worked == 0 and not run.out:
        if run.view.ring:
            return None
        try:
            slots = slots_of(run, place)
        except RunsOut:
            run.cost += 1.0
            return None
        if slots:
            run.last = slots[-1]
            run.note("move", len(slots), slot=slots[-1])
            run.slipped = slots[-1].how not in ("space", "between", "chain", "ring")
            if run.view.joined or run.in_rounds:
                move_start(run, slots[-1].start)
                _start_again(run, slots[-1])
                if slots[-1].end - slots[-1].start > 1 and slots[-1].how != "space":
                    run.pos = slots[-1].start  # moved to a group: it is the first to be worked into
        return None
    if place.quant in ("first", "same") or place.thing.kind in ("tch", "join", "ring"):
        if place.quant == "first" and run.worked:
            run.joined = True
            run.note("join")
        return None
    try:
        slots = slots_of(run, place, how_of(run, place, node.loop))
    except RunsOut:
        if not run.worked or run.inside:
            raise
        run.joined = True  # a slip stitch for which no place is left closes the round
        run.note("join")
        run.cost += 0.2
        return None
    for slot in slots:
        run.into.append(slot)
        run.out.append(code("sl st"))
        run.origins.append(run.origin)
        run.worked += 1
        run.own_chain = 0
    return None


def move_start(run: Run, at: int) -> None:
    """The round begins at item `at`; what was before it comes last."""
    if at <= 0 or run.view.open_end or not run.view.items:
        return
    over = at // len(run.view.items) * len(run.view.items)
    at, run.pos = at - over, max(0, run.pos - over)
    run.start = at
    run.end = len(run.view.items) + at
    run.pos = max(run.pos, at)


def _start_again(run: Run, slot: Slot) -> None:
    """A round that starts in a space without a stitch there comes back to that space at its end."""
    first = first_stitch(run.following)
    lead = run.following[0] if run.following else None
    if isinstance(lead, Chain) and first is not None and (HEIGHT.get(plain(first[0])) or 0) > 1:
        return
    if first is None or first[1] is not None and first[1].quant in ("same", "first"):
        return
    n = len(run.view.items)
    for s, e in run.view.runs:
        if s <= slot.start % n < e:
            run.end = max(run.end, n + e)


def own_chain(run: Run, kind: str, count: int, k: int) -> None:
    """Stitches back along the chain just made ("ch 6, dc in 4th ch from hook"): it becomes a base for a while."""
    if not run.runs:
        raise RunsOut("ch", wanted=k + count, found=0)
    begin, end = run.runs.pop()
    base, origin = end - begin, run.origins[begin]
    del run.out[begin:]
    del run.into[begin:]
    del run.origins[begin:]
    keep = base - k
    number = code(kind)
    skipped = k - 1
    # "ch 6, dc in 4th ch from hook, dc in next 2 ch": a block, whose first chains are a space or a stitch
    how = run.convention("own-skipped", ((0.0, "space"), (0.3, "st"), (0.4, "none"))) if keep and skipped >= 2 else "none"
    run.note("base", keep + 1 if how == "space" else base)
    run.tape[-1] = run.tape[-1]._replace(origin=origin)
    if how == "space":
        run.chain(skipped)
        run.named["own-blocks"] = 1
        run.conventions["blocks"] = True
    elif how == "st":
        run.make(number, Slot(-2 - keep, -2 - keep, "own-chain"))
    for _ in range(count):
        run.make(number, Slot(-2 - keep, -2 - keep, "own-chain"))
    run.own_chain = 0
    run.named["own-chain-left"] = keep


def own_more(run: Run, number: int, place: Place) -> None:
    """Further stitches along a chain that was just worked back into: the next one, or all that are left of it."""
    left = run.named.get("own-chain-left", 0)
    many = left if place.quant == "each" else min(left, (place.n.at(0) if place.n is not None else 1) or 1)
    for i in range(many):
        at = -2 - (left - 1 - i)
        run.make(number, Slot(at, at, "own-chain"))
    run.named["own-chain-left"] = left - many


def _picot(run: Run, count: int) -> None:
    run.named["picot"] = run.named.get("picot", 0) + count
    if run.named["picot"] > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    run.note("picot", count)


def _half_loop(run: Run, kind: str) -> None:
    """A round closed by a stitch in its first place: the stitch is half a loop."""
    run.half_loop = False
    run.out.pop()
    slot = run.into.pop()
    run.origins.pop()
    del slot
    run.worked -= 1
    run.joined = True
    tall = max(1, min(HEIGHT.get(plain(kind)) or 1, 8))
    run.note("half", tall, kind)
    run.chain(tall)


# --- groups, names ---------------------------------------------------------------------------------------------------


def do_group(run: Run, node: Group) -> None:
    """Several things into one place, once for each place taken."""
    place = node.place or Place("next", Num((1,)))
    slots = slots_of(run, place, how_of(run, place))
    if slots and slots[0].how == "own-chain" and place.from_hook:
        slots = [Slot(-1, -1, "chain")]
    elif place.from_hook and run.view.foundation and not run.worked and (first := first_stitch(node.nodes)) is not None:
        skip_foundation(run, kind_made(run, first[0])[0], place.k, mesh=False)
    for slot in slots:
        begin = len(run.out)
        nodes = node.nodes
        if len(nodes) > 1 and isinstance(nodes[0], Chain) and not run.worked and not run.out and run.start_chain is None and not run.view.foundation:
            start_in_group(run, nodes[0], (nodes[0].n.at(0) or 0) + nodes[0].plus, nodes[1:], slot)
            nodes = nodes[1:]
        into_one(run, nodes, slot)
        label = node.name or ""
        run.groups.append(MadeGroup(begin, len(run.out), label))
    if slots:
        run.last = slots[-1]
        run.pos = max(run.pos, slots[-1].end)


def into_one(run: Run, nodes: Sequence[Node], slot: Slot) -> None:
    """Works nodes so that every stitch goes into `slot`."""
    for node in nodes:
        if node.span.end:
            run.origin = node.span.start
        if isinstance(node, Make):
            if node.place is not None and node.place.quant != "same" and node.place.thing.kind != "st":
                do_make(run, node)
                continue
            kind, twice = kind_made(run, node.kind)
            if kind == "picot":
                _picot(run, node.n.at(0) or 1)
                continue
            if kind == "sl st":
                continue
            if kind in run.definitions and kind not in HEIGHT:
                for _ in range(node.n.at(0) or 1):
                    begin = len(run.out)
                    into_one(run, stitch_parts(run, kind), slot)
                    run.groups.append(MadeGroup(begin, len(run.out), kind))
                continue
            for j in range((node.n.at(0) or 1) * twice):
                if j and node.between:
                    run.chain(node.between)
                run.make(code(kind), slot)
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


def stitch_parts(run: Run, kind: str) -> tuple[Node, ...]:
    """What a defined name is made of, its own place taken away: the caller gives the place."""
    nodes = run.definitions.get(kind, ())
    if len(nodes) == 1 and isinstance(nodes[0], Group):
        return nodes[0].nodes
    return tuple(n for n in nodes if not (isinstance(n, Make) and n.kind == kind))


def do_defined(run: Run, node: Make) -> None:
    """A stitch or group that the pattern has defined: "shell", "cluster", "bean st"."""
    nodes = stitch_parts(run, node.kind)
    count = node.n.at(0) or 1
    places = node.place or Place("next", node.n)
    repeats = count if node.place is not None and count > 1 and (node.place.n is None or node.place.n.at(0) == 1) else 1
    spread = not any(isinstance(n, (Make, Group)) for n in nodes)
    slots = slots_of(run, places, how_of(run, places, node.loop))
    for slot in slots:
        for _ in range(repeats):
            begin = len(run.out)
            if spread or not nodes:
                run.make(code(node.kind), slot)
            else:
                into_one(run, nodes, slot)
            run.groups.append(MadeGroup(begin, len(run.out), node.kind))
    if slots:
        run.last, run.pos = slots[-1], max(run.pos, slots[-1].end)


def name_last(run: Run, label: str) -> None:
    """The stitches just made into one place get a name ("(shell made)")."""
    if run.groups and run.groups[-1].end == len(run.out):
        run.groups[-1] = run.groups[-1]._replace(name=label)
    elif run.out:
        run.groups.append(MadeGroup(len(run.out) - 1, len(run.out), label))


# --- skips, joins, marks ---------------------------------------------------------------------------------------------


def _into_space(following: Sequence[Node]) -> bool:
    """Whether the next thing is worked into a chain space."""
    node = following[0] if following else None
    if isinstance(node, Either):
        node = node.readings[0][1][0] if node.readings[0][1] else None
    return isinstance(node, (Make, Group)) and node.place is not None and node.place.thing.kind in SPACES and node.place.quant == "next"


def do_skip(run: Run, node: Skip) -> None:
    """Passes places over."""
    count = node.n.at(0)
    if count is None:
        raise CannotWork("blank")
    if node.thing.kind in STITCHES and _into_space(run.following) and not run.view.foundation and run.view.runs:
        ahead = next((s for s, e in view_runs(run) if e > run.pos), None)
        if ahead is not None and count:  # "skip 3 dc, … in next sp": never past the space that is meant
            passed = 0
            while passed < count and run.pos < ahead and (slot := seek(run, node.thing, run.pos)) is not None and slot.start < ahead:
                run.pos, passed = slot.end, passed + 1
            return
    if node.first and run.tch_item and len(run.out) == 1 and not run.view.ring:
        count -= 1  # the start chain stands over it
    for i in range(min(count, 4000)):
        slot = seek(run, STITCH if node.first and node.thing.kind in HEIGHT else node.thing, run.pos)
        if slot is None:
            if run.view.ring:
                return
            raise RunsOut(node.thing.kind, wanted=count, found=i)
        run.pos = max(slot.end, run.pos + (slot.end == slot.start))
    if run.view.foundation and not run.worked and run.pos == count:
        run.named["missed"] = count


def do_join(run: Run, node: Join) -> None:
    """The end of a round. A stitch as join ("dc in first sc") after chains is half a loop."""
    run.joined = True
    if not node.via or node.via == "sl st":
        run.note("join")
    if node.place is not None:
        k = node.place.k
        if node.place.thing.kind == "tch" or (k and node.place.thing.kind == "ch"):
            run.join_said = f"ch{k}" if k else "ch"
        elif node.place.thing.kind in HEIGHT:
            run.join_said = node.place.thing.kind
    if node.via and node.via != "sl st" and run.runs and run.runs[-1][1] == len(run.out):
        tall = max(1, min(HEIGHT.get(node.via, 1) or 1, 8))
        run.note("half", tall, node.via)
        run.chain(tall)


def do_mark(run: Run, node: Mark) -> None:
    """Marks that matter to the fabric: turn, no join, leave, attach, loops."""
    if node.what == "turn":
        run.turned = True
    elif node.what == "no-join":
        run.joined = False
    elif node.what == "no-turn":
        run.named["no-turn"] = 1
    elif node.what == "leave":
        run.left_said = True
    elif node.what == "colour":
        run.note("colour", word=node.text)
    elif node.what == "loops":
        run.loop = node.loop
    elif node.what == "skipped-counts":
        run.skipped_said = node.text
    elif node.what == "underside":
        do_underside(run)
    elif node.what == "attach" and node.text == "free" and run.named.get("free") and run.worked == 0:
        run.view = plain_row(run.named["free"])
        run.pos, run.start, run.end, run.last = 0, 0, run.named["free"], None
    elif node.what == "attach" and node.place is not None and run.worked == 0 and run.view.items and not run.view.foundation:
        slots = slots_of(run, node.place)
        if slots and slots[-1].start >= 0:
            run.last = slots[-1]
            run.pos = slots[-1].start
            move_start(run, slots[-1].start)
            run.named["attached"] = 1
            run.note("attach", slot=slots[-1])


def do_underside(run: Run) -> None:
    """From the last chain of the foundation back along its other side: it has a place under each stitch worked so far."""
    n = len(run.view.items)
    if not run.view.foundation or run.end > n:
        return
    skipped = run.into[0].start if run.into and run.into[0] is not None else 0
    run.pos = max(run.pos, n)
    run.end = n + max(0, n - 1 - skipped)
    run.in_rounds = True


# --- whole-row forms -------------------------------------------------------------------------------------------------


def do_evenly(run: Run, node: Evenly) -> None:
    """Increases or decreases spread over what is left of the row."""
    left = run.stitches_left() - run.reserve
    change = node.n.at(0) if node.n is not None else None
    if change is None and node.to is not None and node.to.at(0) is not None:
        goal = (node.to.at(0) or 0) - _counted(run)
        change = abs(goal - left)
    if change is None:
        raise CannotWork("blank")
    kind = node.kind or run.main_kind
    if kind in ("st", ""):
        kind = "sc"
    if change == 0:
        return _spread(run, kind, left, 0, node.op)
    if node.op == "dec" and change * 2 > left:
        raise RunsOut("st", wanted=change * 2, found=left)
    if node.op == "inc" and change > left:
        raise RunsOut("st", wanted=change, found=left)
    return _spread(run, kind, left, change, node.op)


def _counted(run: Run) -> int:
    return len(run.out) - run.out.count(CHAIN)


def _spread(run: Run, kind: str, left: int, change: int, op: str) -> None:
    number, together = code(kind), code(f"{plain(kind)}2tog")
    units = left if op == "inc" else left - change
    for done in range(units):
        special = change and ((done + 1) * change) // units > (done * change) // units
        slot = seek(run, STITCH, run.pos)
        if slot is None:
            raise RunsOut("st", wanted=left, found=done)
        run.pos, run.last = slot.end, slot
        if special and op == "dec":
            second = seek(run, STITCH, run.pos)
            if second is None:
                raise RunsOut("st", wanted=left, found=done)
            run.pos, run.last = second.end, second
            run.make(together, Slot(slot.start, second.end))
        else:
            run.make(number, slot)
            if special:
                run.make(number, slot)


def do_every_kth(run: Run, node: EveryKth) -> None:
    """Increase or decrease in every k-th stitch: k - 1 (or k - 2) plain ones before it."""
    kind = node.kind or run.main_kind
    kind = "sc" if kind in ("st", "") else kind
    number, k = code(kind), max(1, node.k)
    left = run.stitches_left() - run.reserve
    i = 0
    while i < left:
        i += 1
        slot = seek(run, STITCH, run.pos)
        if slot is None:
            return
        run.pos, run.last = slot.end, slot
        if node.op == "inc":
            run.make(number, slot)
            if i % k == 0:
                run.make(number, slot)
        elif i % k == k - 1 and i < left and k > 1:
            second = seek(run, STITCH, run.pos)
            if second is None:
                run.make(number, slot)
                return
            run.pos, run.last = second.end, second
            run.make(code(f"{plain(kind)}2tog"), Slot(slot.start, second.end))
            i += 1
        else:
            run.make(number, slot)


def do_at_ends(run: Run, node: AtEnds) -> None:
    """One (or n) more or fewer at each end, the rest worked even."""
    kind = node.kind or run.main_kind
    kind = "sc" if kind in ("st", "") else kind
    amount = (node.n.at(0) or 1) * max(1, node.ends)
    left = run.stitches_left() - run.reserve
    if node.op == "dec" and left < amount * 2:
        raise RunsOut("st", wanted=amount * 2, found=left)
    first = amount // 2 if node.ends == 2 else 0
    last = amount - first
    number, together = code(kind), code(f"{plain(kind)}2tog")
    units = left - amount if node.op == "dec" else left
    for i in range(units):
        special = i < first or i >= units - last
        slot = seek(run, STITCH, run.pos)
        if slot is None:
            raise RunsOut("st", wanted=left, found=i)
        run.pos, run.last = slot.end, slot
        if special and node.op == "dec":
            second = seek(run, STITCH, run.pos)
            if second is None:
                raise RunsOut("st", wanted=left, found=i)
            run.pos, run.last = second.end, second
            run.make(together, Slot(slot.start, second.end))
        else:
            run.make(number, slot)
            if special:
                run.make(number, slot)


def do_edge(run: Run, node: EdgeRun) -> None:
    """Stitches along an edge: as many as told; an untold number comes from the edge itself where it is known."""
    count = node.n.at(0) if node.n is not None else None
    if count is None and node.where == "around":
        raise CannotWork("edge-unknown")
    if count is None:
        count = run.named.get("edge-rows", 0) * (node.per or 1)
        if not count:
            raise CannotWork("edge-unknown")
        run.cost += 0.5
    if count > 20_000:
        raise CannotWork("too-many", limit=20_000)
    number = code(kind_made(run, node.kind)[0])
    place = Slot(-1, -1, node.where if node.where in ("underside", "free") else "row-end")
    for _ in range(count):
        run.make(number, place)
    run.left_said = True


def copy_row(run: Run) -> None:
    """Works the row below over once more, stitch on stitch and chain on chain."""
    kinds = Counter(run.view.items)
    if not kinds:
        raise CannotWork("nothing-below")
    run_starts = dict(run.view.runs)
    at = run.pos
    stop = run.end
    while at < stop:
        if at in run_starts:
            run.chain(run_starts[at] - at)
            at = run_starts[at]
            continue
        run.make(run.item(at), Slot(at, at + 1))
        at += 1
    run.pos = stop
    run.groups.extend(MadeGroup(g.start, g.end, g.name) for g in run.view.groups if run.start == 0 and len(run.out) == len(run.view.items))


__all__ = ["STITCHES", "copy_row", "do", "do_all", "do_make", "into_one", "kind_made", "name", "needed", "stitch_parts", "total_needed"]
