"""Repeats: so many times, to the end, until some are left; and what the last round of them leaves out."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from loopwright.model.tree import Chain, Group, Join, Make, Node, Num, Repeat, Skip
from loopwright.record import changed
from loopwright.working.coming_round import ends_in_first, in_half, leads, only_before_start, sits, takes_rest
from loopwright.working.instructions import do_all, total_needed
from loopwright.working.kinds import CHAIN, CLOSED, HEIGHT, code
from loopwright.working.making import ends_in_own_start
from loopwright.working.part_rounds import (
    closes,
    closing_chain,
    comes_out,
    ends_untold,
    fits,
    is_chain,
    joined_by_chain,
    leads_to_its_end,
    partial,
    picot_before,
    places_of,
    stands_for_last,
    told_again,
)
from loopwright.working.run import CannotWork, Point, Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, seek, view_runs
from loopwright.working.skipped import gap_after
from loopwright.working.tiles import LAST_ROUNDS, Copier, Points, round_begins

MAX_TIMES = 20_000
WITHIN = 20  # instructions that a repeat to the end costs in each round of another one, beside those in it


def do_repeat(run: Run, node: Repeat) -> None:
    """Works a repeat in the way its words say."""
    after = (run.reserve, run.reserve_spaces)
    run.beyond = run.beyond if run.inside else run.following
    join = next((n for n in run.following if isinstance(n, Join)), None)
    run.named["last-chain"] = join.last_chain or 0 if join is not None and not run.inside else 0
    if node.mode == "once":
        if run.view.foundation and not run.worked:
            run.named["gap"] = gap_after(run.following)
        do_all(run, node.nodes, after)
        return do_all(run, node.ending, after)
    if node.mode in ("times", "more", "star-times"):
        _counted_times(run, node, after)
    elif node.mode == "until":
        _until(run, node, after)
    elif node.mode == "left":
        left = (node.left.at(0) or 0) if node.left is not None else 0
        blocks = node.left_of.kind == "block" and bool(run.conventions.get("blocks"))  # each is met in the space of its chain
        if not blocks and (before := _group_left(run, node, left)) is not None:
            _up_to(run, node, before, 0)
            return None
        _to_end(run, node, after, (0, left) if blocks or node.left_of.kind in SPACES else (left, 0))
    elif node.upto is not None and (stop := seek(run, node.upto, run.pos)) is not None:
        _up_to(run, node, stop.start, node.left.at(0) or 0 if node.left is not None else 0)
    else:
        _to_end(run, node, after, None)
    return None


def _group_left(run: Run, node: Repeat, left: int) -> int | None:
    """Where the last so many groups begin ("rep from * to last fan"); None where something else is left."""
    kind = node.left_of.kind
    if kind in SPACES or kind in STITCHES or kind in HEIGHT or kind in ("ch", "corner") or not run.view.groups or left < 1:
        return None
    found: list[int] = []
    pos = run.pos
    while (slot := seek(run, node.left_of, pos)) is not None and slot.end > slot.start and len(found) < MAX_TIMES:
        found.append(slot.start)
        pos = slot.end
    return found[-left] if len(found) >= left and pos > run.pos else None


def _up_to(run: Run, node: Repeat, stop: int, left: int) -> None:
    """Rounds as long as they end before an item of the row below; what lies between the last and it is passed over."""
    if stop <= run.pos:
        return
    end, run.end = run.end, stop
    try:
        _to_end(run, node, (0, 0), (left, 0))
    finally:
        run.end = end


def _until(run: Run, node: Repeat, after: tuple[int, int]) -> None:
    """Rounds until so many groups are made, or stitches of a kind, those before the repeat counted."""
    wanted = node.times.at(0) if node.times is not None else None
    if wanted is None:
        raise CannotWork("blank")
    last = sum(n.n.at(0) or 1 for n in node.ending if isinstance(n, Make)) if node.left_of.kind == "st" else 0  # "until there are 40 sts, ending with dc"
    for _ in range(min(wanted, MAX_TIMES)):
        if _made(run, node) >= wanted - last:
            break
        run.inside += 1
        try:
            do_all(run, node.nodes, after)
        except RunsOut:
            if node.left_of.kind not in SPACES or len(run.runs) < wanted or not run.in_rounds:
                raise
            run.joined = True  # the last loop is closed in the stitch that the round begins with
        finally:
            run.inside -= 1
        run.repeats += 1
    do_all(run, node.ending, after)


def _made(run: Run, node: Repeat) -> int:
    """How many there are of what a repeat is worked until."""
    of = node.left_of.kind
    if of == "st":
        return len(run.out) - run.out.count(CHAIN) - run.out.count(code("sl st"))
    return run.out.count(code(of)) if of in HEIGHT or of in CLOSED else len(run.runs) if of in SPACES else len(run.groups)


def _counted_times(run: Run, node: Repeat, after: tuple[int, int]) -> None:
    times = node.times.at(0) if node.times is not None else 1
    if times is None:
        raise CannotWork("blank")
    if node.mode == "more":
        times += 1
    elif node.mode == "star-times":
        times += run.convention("times-more", ((0.0, 1), (1.5, 0)))
    if times > MAX_TIMES:
        raise CannotWork("too-many", limit=MAX_TIMES)
    each, ending = total_needed(node.nodes), total_needed(node.ending)
    last_short = node.ending_mode in ("omit", "at") or _replaces(node)
    copier = Copier(run, None, node.nodes)
    i = 0
    while i < times:
        left = times - i - 1
        rest = (after[0] + each[0] * left + ending[0], after[1] + each[1] * left + ending[1])
        nodes = _shortened(node) if not left and last_short else node.nodes
        stood, before, cost = None if i else (run.pos, run.last, len(run.out), len(run.runs)), run.point(), run.cost
        copier.begin()
        run.inside += 1
        run.named["last-round"] = int(not left and run.inside == 1)
        try:
            do_all(run, nodes, rest)
        except RunsOut as short:
            if i and not left and run.inside == 1 and _all_but_last(run, node, before, cost, rest):
                break
            short.facts = {"round": i + 1, "rounds": times, **short.facts}
            raise
        finally:
            run.inside -= 1
            run.named["last-round"] = 0
        copied = copier.end(left - LAST_ROUNDS)
        run.repeats += 1 + copied
        i += 1 + copied
        if stood == (run.pos, run.last, len(run.out), len(run.runs)):
            break  # nothing is made in it the first time, nor any other
    round_begins(run, 0)
    if node.ending and node.ending_mode != "omit":
        do_all(run, node.ending, after)


def _all_but_last(run: Run, node: Repeat, before: Point, cost: float, rest: tuple[int, int]) -> bool:
    """Works the last round anew without its last stitch, where that would go into the round's first; whether it is so."""
    if not ends_in_first(run, node):
        return False
    run.back_to(before)
    run.cost = cost
    do_all(run, node.nodes[:-1], rest)
    run.repeats += 1
    return True


def _shortened(node: Repeat) -> tuple[Node, ...]:
    """The nodes of the last round when it stops at a mark or leaves the ending out."""
    if node.ending_mode == "at" and node.stop_at is not None:
        return node.nodes[: node.stop_at]
    if node.ending_mode == "omit" and node.ending:
        return node.nodes[: max(0, len(node.nodes) - len(node.ending))]
    return node.nodes[:-1] if _replaces(node) else node.nodes


def _replaces(node: Repeat) -> bool:
    """ "(…, sc in each of next 2 sts) 6 times, ending last rep with 1 sc", "with sl st in first sc": whether the ending stands for the last instruction of the last round."""
    last, end = node.nodes[-1] if node.nodes else None, node.ending[0] if node.ending else None
    if node.ending_mode != "with-last" or not isinstance(last, Make) or node.mode not in ("times", "more", "star-times"):
        return False
    if isinstance(end, Join) and end.via == "sl st":
        return last.kind != "sl st" and (last.n.at(0) or 0) == 1
    return node.mode == "times" and isinstance(end, Make) and last.kind == end.kind


def _to_end(run: Run, node: Repeat, after: tuple[int, int], left: tuple[int, int] | None) -> None:
    """Whole rounds while there is room; then, where it does not come out even, the ways it may have been meant."""
    if run.view.ring and not run.view.items:
        raise CannotWork("endless")
    if run.view.open_end:
        raise CannotWork("open", thing="st")
    if run.inside:
        run.steps += WITHIN
    ending = () if node.ending_mode == "omit" else node.ending
    tail = (0, 0) if ends_in_own_start(run, ending) else total_needed(ending)
    # what the words leave ("to last 2 sts") is what the rest of the row works into
    keep = (max(after[0] + tail[0], left[0] if left else 0), max(after[1] + tail[1], left[1] if left else 0))
    short = _shortened(node) if node.ending_mode in ("omit", "at") else ()
    if not run.inside:
        run.named["lead"], run.named["ends-untold"] = len(run.out), int(ends_untold(node))
    points = _rounds(run, node, keep)
    full = len(points) - 1
    if short:
        full = max(0, full - (0 if fits(run, short, keep) else 1))
        run.back_to(points[full])
        run.repeats += full
        round_begins(run, full + 1)
        do_all(run, short, keep)
    else:
        full = _how_many(run, node, points, keep, left is not None)
        run.repeats += max(full, 0)
    round_begins(run, 0)
    if ending and node.ending_mode != "correspond":
        _before_ending(run, node, after)
        do_all(run, ending, after)


def _before_ending(run: Run, node: Repeat, after: tuple[int, int]) -> None:
    """The chain of one more round where the ending is told without it; nothing where a part of that round has made it."""
    if len(run.out) > 0 and run.out[-1] == CHAIN:
        return
    if leads(node) and run.once("chain-before-ending", ((0.0, True), (0.3, False))):
        do_all(run, node.nodes[:1], after)  # "*ch 1, sc in next sp; rep from * across, ending with sc in last sp"
    elif len(node.nodes) == 2 and isinstance(node.nodes[0], Chain) and len(node.ending) == 1 and in_half(run, node.ending[0]):
        do_all(run, node.nodes[:1], after)  # "*ch 5, sc in next loop; rep from * around, ending with sl st in dc": the last chain ends there
    elif before := picot_before(node):
        do_all(run, before, after)


def _room(run: Run, keep: tuple[int, int], takes_spaces: bool) -> bool:
    if run.pos >= run.end:
        return False
    if keep[1] and (takes_spaces or not keep[0]):
        ahead = len(run.view.runs) - bisect_left(run.view.runs, (run.pos,))
        if ahead <= keep[1] and run.end <= len(run.view.items):
            return False
        if not keep[0]:
            return True
    return run.stitches_left() > keep[0] or (run.stitches_left() == keep[0] == 0)


def _rounds(run: Run, node: Repeat, keep: tuple[int, int]) -> Points:
    """Works whole rounds; gives the points before the first and after each."""
    copier = Copier(run, keep, node.nodes)
    points = copier.points
    takes_spaces = total_needed(node.nodes)[1] > 0
    anew = run.in_rounds and not (run.inside or run.out or run.start or run.pos or run.skips)
    while _room(run, keep, takes_spaces) and len(points) <= MAX_TIMES:
        before, cost = run.pos, run.cost
        copier.begin()
        run.inside += 1
        try:
            do_all(run, node.nodes, keep)
        except RunsOut:
            run.back_to(points[-1])
            run.cost = cost
            break
        finally:
            run.inside -= 1
        if anew and len(points) == 1 and run.end == len(run.view.items) and (over := _comes_round(run, node)):
            run.end += over
        if node.upto is not None and run.pos > run.end:
            run.back_to(points[-1])
            run.cost = cost
            break
        beside = run.last is not None and run.last.how == "between" and run.worked > 0  # a gap right where the hook is
        slipped = len(points) == 1 and (beside or run.sticky.get("slipped-into") is True) and len(run.out) > 0  # its place was reached before it
        if run.pos == before and not slipped:
            if len(points) == 1 and run.last is not None:
                points.append(run.point())
                break
            run.back_to(points[-1])
            break
        copier.end()
    return points


def _comes_round(run: Run, node: Repeat) -> int:
    """ "1 dc in the loop, 7 ch, 1 dc on the dc, 7 ch; repeat": stitches passed over before the first loop, which the last round comes back to."""
    first = run.into[0] if len(run.out) else None
    if first is None or first.start < 1 or first.how != "space" and run.item(first.start) != CHAIN:
        return 0
    placed = [n.place for n in node.nodes if isinstance(n, (Make, Group)) and n.place is not None]
    on_stitch = bool(placed) and placed[-1].thing.kind in HEIGHT and placed[-1].quant == "next" and placed[0].thing.kind in SPACES
    return first.start if on_stitch else 0


def _how_many(run: Run, node: Repeat, points: Points, keep: tuple[int, int], exact: bool) -> int:
    """How many of the rounds are kept; a part of one more where the choice says so."""
    full = len(points) - 1
    if full == 0 and run.stitches_left() > keep[0]:
        return partial(run, node, points[0], keep, 1)
    if full and run.in_rounds and sits(run, node):
        run.back_to(points[full])
        return partial(run, node, points[full], keep, full + 1) + full
    best = full
    while best > 0 and _left_at(run, points[best]) < keep[0]:
        best -= 1
    run.back_to(points[best])
    left = _left_at(run, points[best])
    closing = closing_chain(run, node)
    matches = sum(is_chain(n, closing) for n in node.nodes[:-1]) if closing else 0
    if matches and best and not left and run.beyond and in_half(run, run.beyond[0]):
        partial(run, node, points[best - 1], keep, best)
        run.pos = run.end
        return best - 1
    if matches and not (matches > 1 and left <= keep[0]):
        run.named["rounds"] = best + 1
        return partial(run, node, points[best], keep, best + 1) + best
    closed = closes(run, node, points[best], keep)
    run.back_to(points[best])
    tailed = node.ending_mode in ("with", "with-last") and len(node.nodes) > 1
    spaced = tailed and left <= keep[0] and _into_spaces(node.nodes) and _spaces_ahead(run)  # a corner before the end
    if left == keep[0] and not (closed and _spaces_ahead(run)) and not (keep[1] and node.ending_mode in ("with", "with-last")) and not spaced:
        if best and not left and joined_by_chain(run, node):
            do_all(run, node.nodes[:1])
        return best
    if best and keep == (0, 0) and only_before_start(run, node, left) and joined_by_chain(run, node):
        do_all(run, node.nodes[:1])  # "sl st to center of first loop, sc in same loop, *ch 5, sc in next loop; rep from * around; join"
        return best
    run.uneven = _uneven(run, points, keep) or run.uneven
    if exact or left > keep[0] and takes_rest(node.ending):
        return best
    if node.ending_mode == "correspond" and 0 < left < 4 and not (run.in_rounds or run.view.joined) and _mirrored(run, node, left):
        return best
    part_cost = 0.0 if node.ending_mode in ("correspond", "with-last") else 0.05 if closed else 0.35
    options: tuple[tuple[float, str], ...] = ((0.0, "most"), (part_cost + 0.0, "part"))
    if closed and run.start:  # what lies before the place where the round began comes last, and is worked too
        options = ((0.1, "most"), (0.0, "part"))
    stands = tailed and left > keep[0] and not run.inside and stands_for_last(run, node, keep)
    if stands or tailed and (spaced or left > keep[0]) and comes_out(run, node, points[best], keep):
        options = ((0.3, "most"), (0.0, "part"))  # the ending stands for the end of one more round
    run.back_to(points[best])
    again = told_again(node, node.ending or run.beyond) if left > keep[0] and not run.inside and run.in_rounds and node.ending_mode in ("after", "with", "with-last") else 0
    if again and leads_to_its_end(run, node.nodes[:again], keep):
        options = ((0.3, "most"), (0.0, "again"))
    if best > 1:
        options = (*options, (0.2, "fewer"), (0.5, "fewer2")) if node.ending or keep[0] else (*options, (0.9, "fewer"))
    how = run.choose("last-repeat", options)
    if how == "fewer":
        best -= 1
    elif how == "fewer2":
        best = max(0, best - 2)
    run.back_to(points[best])
    if how == "again":
        do_all(run, node.nodes[:again], keep)
    if how == "part":
        if not run.inside:
            run.named["rounds"] = best + 1
        return partial(run, changed(node, nodes=node.nodes[:-1]) if stands else node, points[best], keep, best + 1) + best
    if not run.inside:
        run.named["rounds"] = best
    return best


def _mirrored(run: Run, node: Repeat, left: int) -> bool:
    """ "Ending to correspond" in a row: its last stitch stands in the last place, chains over what lies between, as at its start."""
    last = node.nodes[-1] if node.nodes else None
    if not isinstance(last, Make) or not any(isinstance(n, Chain) for n in node.nodes):
        return False
    if left > 1:
        do_all(run, (Chain(Num((left - 1,))), Skip(Num((left - 1,)))))
    do_all(run, (last,))
    return True


def _into_spaces(nodes: Sequence[Node]) -> bool:
    """Whether any of the nodes goes into a space or corner."""
    return bool(places_of(nodes) & {*SPACES, "corner"})


def _spaces_ahead(run: Run) -> bool:
    return any(s >= run.pos for s, _ in view_runs(run))


def _uneven(run: Run, points: Points, keep: tuple[int, int]) -> tuple[int, int] | None:
    """What one round takes of the row below and what there was for the rounds, in stitches; None where a round takes none."""
    if len(points) < 2:
        return None
    room = _left_at(run, points[0])
    takes = room - _left_at(run, points[1])
    return (takes, room - keep[0]) if takes > 1 and (room - keep[0]) % takes else None


def _left_at(run: Run, point: Point) -> int:
    now = run.pos
    run.pos = point.pos
    left = run.stitches_left()
    run.pos = now
    return left
