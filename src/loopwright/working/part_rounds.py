"""The last round of a repeat where there is no room for a whole one: how far it goes, and whether it uses up the row.

Common practice, no source: "ending with ch 6" tells the chain that the last round has already.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile

from loopwright.model.tree import Chain, Group, Join, Make, Mark, Node, Num, Repeat, Skip
from loopwright.record import changed
from loopwright.working.instructions import do_all
from loopwright.working.kinds import CHAIN, code
from loopwright.working.nearby import rest_of_group
from loopwright.working.run import CannotWork, Point, Run
from loopwright.working.seeking import view_runs
from loopwright.working.tiles import round_begins
from loopwright.working.view import Slot


def partial(run: Run, node: Repeat, point: Point, keep: tuple[int, int], number: int) -> int:
    """Works the nodes of one more round one by one as long as there is room for them."""
    run.back_to(point)
    round_begins(run, number)
    closing = closing_chain(run, node)
    closed: Point | None = None
    after = next(iter(node.ending or run.beyond), None)
    told: Point | None = None  # before a chain that is told behind the repeat: "…; rep from * around, ending with ch 4, join"
    passed: list[Node] = []
    stopped: Node | None = None
    for item in node.nodes:
        here = run.point()
        cost = run.cost
        if not _goes_in(run, item, keep):
            run.back_to(here)
            run.cost = cost
            if (rest := _rest_of(run, item, keep)) is None or not _goes_in(run, rest, keep):
                run.back_to(here)
                run.cost = cost
                stopped = item
                break
        if isinstance(item, (Skip, Mark)):
            passed.append(item)
        else:
            passed.clear()
            told = here if isinstance(item, Chain) and isinstance(after, Chain) and not run.inside and item.n.at(0) == after.n.at(0) else None
        if closing and is_chain(item, closing):
            closed = run.point()
    if closed is not None:
        run.back_to(closed)  # "join last ch-3": the round ends with this chain
    elif told is not None:
        run.back_to(told)
        do_all(run, tuple(passed), keep)
    _past_last_group(run, stopped, keep)
    return 0


def _past_last_group(run: Run, item: Node | None, keep: tuple[int, int]) -> None:
    """ "…, 2 dc in first dc of next group; rep from * around": there is no further group, and what lies before one was passed over in each round."""
    place = item.place if isinstance(item, Make) else None
    if place is None or place.quant != "kth" or place.of is None or place.of.kind != "group" or not run.in_rounds or run.inside or run.start or keep != (0, 0):
        return
    if run.stitches_left() <= ABOUT_ALL and sum(1 for s, _ in view_runs(run) if s >= run.pos) <= 1:
        run.pos = run.end


def _goes_in(run: Run, item: Node, keep: tuple[int, int]) -> bool:
    """Works one node of a repeat; whether there was room for it."""
    run.inside += 1
    try:
        do_all(run, (item,), keep)
    except CannotWork:
        return False
    finally:
        run.inside -= 1
    return not (run.stitches_left() < keep[0] or keep[1] and sum(1 for s, _ in view_runs(run) if s >= run.pos) < keep[1])


def _rest_of(run: Run, item: Node, keep: tuple[int, int]) -> Node | None:
    """ "Sc in first 4 sc, *3 sc in loop, sc in next 9 sc; rep from * around": the last 5, where the round began with the other 4; None elsewhere.

    "Sc in loop, * …, (ch 5, sc in next loop) 3 times; rep from * around": the last of the three is the one that the round began with.
    """
    if isinstance(item, Repeat) and item.mode == "times" and item.times is not None and run.in_rounds and not run.inside and run.named.get("lead"):
        chain = item.nodes[:1] if isinstance(item.nodes[0], Chain) else ()
        here, cost = run.point(), run.cost
        for fewer in range((item.times.at(0) or 0) - 1, 0, -1):  # those that the round began with: one of them, or several
            rest = Repeat((changed(item, times=Num((fewer,))), *chain), "once", span=item.span)
            fitting = _goes_in(run, rest, keep)
            run.back_to(here)
            run.cost = cost
            if fitting or run.named["lead"] < len(item.nodes) * 2:
                return rest
        return None
    lead, left = run.named.get("lead", 0), run.stitches_left()
    if not lead or run.inside or keep[1] or not isinstance(item, Make) or item.place is None or item.place.n is None:
        return None
    whole = item.n.at(0) in (None, 1) and item.place.quant == "next" and item.place.n.at(0) == lead + left and left > keep[0]
    if not whole or set(run.out[:lead]) != {code(item.kind)}:
        return None
    return changed(item, place=changed(item.place, n=Num((left - keep[0],))))


def stands_for_last(run: Run, node: Repeat, keep: tuple[int, int]) -> bool:
    """ "*shell in next sc, sc in next shell; rep from * across, ending with sc in turning ch": the end of one more round, where its shell has room."""
    if len(node.nodes) < 2 or len(node.ending) != 1:
        return False
    last, end = node.nodes[-1], node.ending[0]
    if not isinstance(last, Make) or not isinstance(end, Make) or end.kind != last.kind or end.place is None or end.place.thing.kind != "tch":
        return False
    if last.place is not None and last.place.n is not None and (last.place.n.at(0) or 0) > 1 and run.named.get("lead"):
        return False  # "dc in next 8 dc; …, ending with dc in turning ch": of those, what is left before it
    return fits(run, node.nodes[:-1], keep)


def closes(run: Run, node: Repeat, point: Point, keep: tuple[int, int]) -> bool:
    """Whether a part of one more round of the repeat uses up the row exactly: so a round ends whose start has the rest."""
    if not (run.in_rounds or run.view.joined) or run.inside or keep != (0, 0):
        return False
    return comes_out(run, node, point, keep)


def comes_out(run: Run, node: Repeat, point: Point, keep: tuple[int, int]) -> bool:
    """Whether a part of one more round leaves just what is kept, stitches and spaces; nothing is kept of the trial."""
    cost, logged, repeats = run.cost, len(run.log), run.repeats
    sticky, conventions, named = dict(run.sticky), dict(run.conventions), dict(run.named)
    partial(run, node, point, keep, 2)
    longest = max((e - s for s, e in run.view.runs), default=0) if "corner" in places_of(node.nodes) else 0
    spaces = sum(1 for s, e in view_runs(run) if run.pos <= s < run.end and e - s >= longest)  # not the loop it began in, where that closed the round below
    spaces -= spaces == 1 and run.in_rounds and not run.used_spaces and ends_untold(node)  # past it the round comes to its first stitch
    left = 0 if run.used_spaces and not spaces else run.stitches_left()
    if left > keep[0] and not run.in_rounds:
        left -= rest_of_group(run, Slot(run.pos - 1, run.pos))  # "sc in 2nd dc of next shell" has done with the others
    if run.start:
        left = max(0, left - sum(1 for i in range(run.start) if run.view.items[i] != CHAIN))
    moved = run.pos > point.pos
    run.back_to(point)
    del run.log[logged:]
    run.cost, run.repeats, run.sticky, run.named = cost, repeats, sticky, named
    run.conventions.clear()
    run.conventions.update(conventions)
    return moved and left == keep[0] and spaces <= keep[1]


def ends_untold(node: Repeat) -> bool:
    """Whether no stitch is told that its last round ends with, only the chain before the join, or nothing."""
    return node.ending_mode != "correspond" and all(isinstance(n, (Chain, Join)) for n in node.ending)


ABOUT_ALL = 2  # stitches that an ending may pass over besides those it takes


def told_again(node: Repeat, tail: Sequence[Node]) -> int:
    """How many nodes of one more round stand before those that its ending tells again: "* A, ch 4, dc in next sc, B; rep from * around, ending ch 4, dc in next sc"."""
    said = list(takewhile(lambda n: isinstance(n, (Chain, Skip)) or isinstance(n, Make) and n.kind != "sl st", tail))
    if len(said) < 2:
        return 0
    ends = range(1, len(node.nodes) - len(said) + 1)
    return next((i for i in ends if all(map(_alike, node.nodes[i:], said))), 0)


def _alike(one: Node, other: Node) -> bool:
    if isinstance(one, Chain) and isinstance(other, Chain):
        return one.n.values == other.n.values
    if isinstance(one, Skip) and isinstance(other, Skip):
        return (one.n.values, one.thing) == (other.n.values, other.thing)
    if not isinstance(one, Make) or not isinstance(other, Make) or one.place is None or other.place is None:
        return False
    return (one.kind, one.n.values, one.place.thing) == (other.kind, other.n.values, other.place.thing) and one.place.quant == "next" and other.place.quant in ("next", "last")


def leads_to_its_end(run: Run, nodes: Sequence[Node], keep: tuple[int, int]) -> bool:
    """Whether nodes can be worked from here so that about what is kept is left of the round; nothing is kept of the trial."""
    here, cost = run.point(), run.cost
    try:
        do_all(run, nodes, keep)
        left = run.stitches_left() - sum(1 for i in range(run.start) if run.view.items[i] != CHAIN)
        good = run.pos > here.pos and left <= keep[0] + ABOUT_ALL
    except CannotWork:
        good = False
    run.back_to(here)
    run.cost = cost
    return good


def closing_chain(run: Run, node: Repeat) -> int:
    """The length of the chain that the round ends with, where its join tells it; 0 when untold."""
    told = 0 if run.inside else run.named.get("last-chain", 0)
    if told < 0:  # "join as before": with the chain that the repeat begins with, if it does
        first = node.nodes[0] if node.nodes else None
        return (first.n.at(0) or 0) if isinstance(first, Chain) else 0
    return told


def picot_before(node: Repeat) -> tuple[Node, ...]:
    """ "*ch 4, picot, ch 4, sc in next loop; rep from * around, ending with ch 4": what stands before that chain, so that the last loop is like the others."""
    loop = list(takewhile(lambda n: isinstance(n, Chain) or isinstance(n, Make) and (n.kind == "picot" or n.place is not None and n.place.from_hook), node.nodes))
    ends = next(iter(node.ending), None)
    if node.ending_mode != "with" or len(loop) < 3 or not isinstance(ends, Chain) or len(loop) == len(node.nodes):
        return ()
    return tuple(loop[:-1]) if isinstance(loop[-1], Chain) and loop[-1].n.values == ends.n.values and not isinstance(loop[-2], Chain) else ()


def joined_by_chain(run: Run, node: Repeat) -> bool:
    """ "Sc in same st, *ch 5, sc in next dc; rep from * around. Join": the last ch 5 lies between the last sc and the first, though no words tell it."""
    rounds = (run.in_rounds or run.view.joined) and not run.inside and not run.slip_row and not (run.turned or run.view.turned)
    if not rounds or node.ending or len(node.nodes) < 2 or not isinstance(node.nodes[0], Chain) or not run.out or run.out[0] == CHAIN or run.out[-1] == CHAIN:
        return False
    then = next((n for n in run.following if not isinstance(n, Mark)), None)
    return (then is None or isinstance(then, Join)) and bool(run.once("joined-by-chain", ((0.0, True), (0.2, False))))


def is_chain(node: Node, length: int) -> bool:
    """Whether a node is a chain of that length."""
    return isinstance(node, Chain) and node.n.at(0) == length


def fits(run: Run, nodes: Sequence[Node], keep: tuple[int, int]) -> bool:
    """Whether nodes can be worked from here; nothing is kept of the trial."""
    here, cost = run.point(), run.cost
    try:
        do_all(run, nodes, keep)
        good = run.stitches_left() >= keep[0]
    except CannotWork:
        good = False
    run.back_to(here)
    run.cost = cost
    return good


def places_of(nodes: Sequence[Node]) -> set[str]:
    """The kinds of places that nodes go into."""
    return {n.place.thing.kind for n in nodes if isinstance(n, (Make, Group)) and n.place is not None}
