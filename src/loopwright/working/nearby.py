"""Places that lie where the hook is, or beside groups: the loop a stitch has closed, a space slipped into, what stands between petals."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence

from loopwright.model.tree import Chain, Join, Make, Mark, Node, Place, Repeat, Thing
from loopwright.model.tree import Group as Told
from loopwright.working.kinds import CHAIN, HEIGHT, code, name
from loopwright.working.marked import next_marker
from loopwright.working.passed import take
from loopwright.working.run import Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, seek, view_runs
from loopwright.working.view import Group, Slot


def loop_of_the_join(run: Run) -> Slot | None:
    """The loop that a stitch closed at the end of the round below, where the hook still is: it is not come back to. None elsewhere."""
    n, runs = len(run.view.items), run.view.runs
    begun = run.worked - run.tch_item or run.inside or run.start or run.slipped
    if begun or not run.view.joined or not runs or runs[-1][1] != n or run.last is not None and run.last.how in ("space", "between", "chain", "ring"):
        return None
    run.last, run.end, run.pos, run.used_spaces = Slot(*runs[-1], "space"), runs[-1][0], 0, True
    if run.tch_item and len(run.out) == 1:
        del run.into[0:]
        run.into.append(run.last)
    return run.last


def goes_on_in_spaces(run: Run) -> bool:
    """ "Ch 3, 2 dc in same sp, *ch 1, 3 dc in next sp; rep from * around": whether the rest of a round goes into spaces alone, so that the first is one of them."""
    told = next((n for n in run.following if not isinstance(n, Chain)), None)
    if not isinstance(told, Repeat) or told.mode not in ("end", "times", "more", "star-times"):
        return False
    if told.mode != "end" and told.times is not None and (told.times.at(0) or 0) + (told.mode != "times") >= len(run.view.runs):
        return False
    placed = [n.place for n in told.nodes if isinstance(n, (Make, Told)) and n.place is not None]
    return bool(placed) and placed[0].quant == "next" and all(p.thing.kind in SPACES or p.quant == "same" for p in placed)


def loop_again(run: Run, place: Place) -> Slot | None:
    """ "ch 3, dc around the joining hdc, …, 2 dc in next sp, ch 1, join with hdc": the loop of the join, which the round began in and ends in."""
    n, runs = len(run.view.items), run.view.runs
    begun = bool(runs) and run.view.joined and run.end == runs[-1][0] < runs[-1][1] == n and run.into and run.into[0] == Slot(*runs[-1], "space")
    if not begun or place.thing.kind not in ("corner", *SPACES) or run.inside or not any(isinstance(x, (Chain, Join)) for x in run.following):
        return None
    run.pos = run.end
    return Slot(*runs[-1], "space")


def in_its_closing(run: Run, place: Place) -> bool:
    """ "ending with ch 2, dc in dc": the stitch that closed the round below by half a loop, which is chains there; this one closes by one too."""
    runs, kind = run.view.runs, place.thing.kind
    if run.inside or not run.in_rounds or kind not in HEIGHT or kind == "sc" or not run.worked or not run.out or run.out[-1] != CHAIN:
        return False
    closed = run.view.joined and bool(runs) and runs[-1][1] == len(run.view.items) and code(kind) not in run.view.items
    run.half_loop = closed and place.of is None and all(isinstance(n, Mark) for n in run.following)
    return run.half_loop


def over_its_closing(run: Run, place: Place) -> Slot | None:
    """ "3 sc over tr": the loop that this stitch closed at the end of the round below, at the start of a round that has no other such stitch; None elsewhere."""
    begins = run.view.half and not run.out and not run.inside and place.quant == "next" and place.thing.kind in HEIGHT and place.thing.kind != "sc"
    return loop_of_the_join(run) if begins and code(place.thing.kind) not in run.view.items else None


def beside_groups(run: Run, slot: Slot) -> Slot | None:
    """ "in next sc between shells": one that no shell holds; where there is none in the row, the gap between two of them."""
    groups = [g for g in run.view.groups if g.end - g.start > 2]
    inside = {i for g in groups for i in range(g.start, g.end)}
    n = len(run.view.items)
    if not groups:
        return slot
    if all(i in inside for i in range(n) if run.item(i) != CHAIN):
        return seek(run, Thing("gap"), run.pos)
    return next((Slot(i, i + 1) for i in range(slot.start, run.end) if i % n not in inside and run.item(i) == run.item(slot.start)), slot)


def space_here(run: Run) -> Slot | None:
    """The chain space that the hook was slipped into."""
    if run.last is None or not run.view.items or run.last.how not in ("space", "chain") and run.item(run.last.start) != CHAIN:
        return None
    return next((Slot(s, e, "space") for s, e in view_runs(run) if s <= run.last.start < e), None)


def group_here(run: Run) -> Slot | None:
    """The group that the hook is in, before its middle: "skip 3 tr, sc in center tr of last fan"."""
    at, last = run.pos, run.last.start if run.last is not None and run.worked else -1
    return next((Slot(g.start, g.end) for g in run.view.groups if g.start < at <= (g.start + g.end - 1) // 2 and not g.start <= last < g.end), None)


def shell_here(run: Run, place: Place) -> Slot | None:
    """ "Sl st to center of shell, shell in shell": the one that the hook was slipped into at the row's start; None elsewhere."""
    named = run.view.index.by_name.get(place.thing.kind) if run.last is not None and not run.inside and place.quant == "next" else None
    if not named or run.last is None or run.in_rounds or run.view.joined or any(item != code("sl st") for item in run.out):
        return None
    at = run.last.start
    return next((Slot(g.start, g.end) for g in named if g.start < at < g.end), None)


def in_pair(run: Run, place: Place) -> Slot | None:
    """ "Sc in next loop, ch 5, sc between next 2 dc": the middle of two that stand by themselves between chains, taken; None where they do not."""
    if place.thing.kind != "gap" or place.of is None or CHAIN not in run.view.items:
        return None
    number, at = code(place.of.kind), run.pos
    while at < run.end and run.item(at) == CHAIN:
        at += 1
    alone = at + 1 < run.end and run.item(at) == run.item(at + 1) == number
    return take(run, Slot(at + 1, at + 1, "between")) if alone and (at + 2 >= run.end or run.item(at + 2) == CHAIN) and (at == run.start or run.item(at - 1) == CHAIN) else None


def space_begun(run: Run, place: Place) -> Slot | None:
    """ "…, 3 dc in first ch-2 sp, ch 2, join": the space that the round began in, where more is worked behind it; None elsewhere."""
    single = place.n is None or (place.n.at(0) or 1) == 1
    if place.thing.kind not in ("corner", *SPACES) or run.inside or run.worked < 3 or not run.in_rounds or not single or run.view.foundation or run.pos <= run.start + 1:
        return None
    if not any(isinstance(n, (Chain, Join)) for n in run.following):
        return None
    n = len(run.view.items)
    return next((Slot(s, e, "space") for s, e in run.view.runs if s <= run.start % n < e), None) if n else None


def of_the_chain(run: Run, place: Place) -> bool:
    """ "Ch 40, join; sc in same ch, sc in each ch around": whether the chain that was joined is worked into, stitch by stitch, and not around."""
    if not run.view.items or place.thing.kind != "ch" and place.thing.kind not in STITCHES:
        return False
    told = (n.place for n in run.following if isinstance(n, (Make, Told)) and n.place is not None)
    return place.thing.kind == "ch" or any(p.quant in ("each", "next") and (p.thing.kind == "ch" or p.thing.kind in STITCHES) for p in told)


def space_at_start(run: Run, place: Place) -> Slot | None:
    """ "Ch 4, dc in same ch-1 sp" right after a join: the space beside the stitch joined to, though no slip stitch led into it, taken; None elsewhere."""
    begun = run.in_rounds and not run.inside and run.start_chain is not None and run.worked <= int(run.tch_item) and not run.view.half
    if place.thing.kind not in SPACES or not begun or run.last is not None and run.last.how in ("space", "ring", "between"):
        return None
    space = seek(run, place.thing, run.pos)
    return take(run, space) if space is not None and space.start == run.pos else None


def kth_of_row(run: Run, place: Place, k: int) -> int:
    """How many stitches on the k-th is: counted from the row's first, where a start chain stands or stitches were passed over before it."""
    begins = run.worked == len(run.out) == int(run.tch_item) and not run.inside and not run.view.ring and not run.view.foundation
    passed = run.pos - run.start
    if not begins or not 0 < passed < k or place.thing.kind not in STITCHES and place.thing.kind not in HEIGHT:
        return k
    return k - passed if all(run.item(i) != CHAIN for i in range(run.start, run.pos)) else k


def none_left(run: Run, place: Place) -> bool:
    """ "…, sc in 3rd ch of beg ch-5": whether a row ends with these words and no such space is left, so that its turning chain is meant."""
    return place.of is not None and run.inside == 0 and all(isinstance(n, Mark) for n in run.following) and seek(run, place.of, run.pos) is None


def next_together(run: Run, kind: str) -> Slot | None:
    """The next stitch of the row below that was several worked together: of the kind that is told, or any."""
    for i in range(run.pos, run.end):
        made = name(run.item(i))
        if made == kind or "tog" not in kind and "tog" in made:
            return Slot(i, i + 1)
    return None


def turning_next(run: Run) -> bool:
    """Whether the words go on with a stitch in the turning chain."""
    after = run.following or (() if run.inside else run.beyond)  # "dc in next dc and in each dc across, dc in top of turning ch"
    node = after[0] if after else None
    where = node.place if isinstance(node, Make) else None
    if where is None or where.thing.kind == "tch" and where.quant == "last":
        return where is not None
    told = where.of.length if where.of is not None and where.of.kind == "sp" else None  # "…, 1 tr into 3rd of 3 ch"
    flat = not run.in_rounds and not run.view.joined and told not in run.view.index.lengths
    return bool(told) and flat and where.quant == "kth" and 1 < (where.k or 0) <= (told or 0) and all(isinstance(n, (Mark, Chain)) for n in after[1:])


def space_in_group(run: Run, place: Place) -> Slot | None:
    """ "in sp of next shell": the space that the next group of that name, or the last one, has within it; None where the row below has no groups so named."""
    of = place.of.kind if place.of is not None and place.relation == "in" and place.thing.kind in SPACES else ""
    spaces = view_runs(run) if of else []
    named: Sequence[Group] = run.view.index.by_name.get(of, ()) if of else ()
    if len(named) < 2 and of in _SHAPES:
        unnamed = run.view.index.open_groups(spaces)  # "in sp of next shell" means those
        named = sorted([*named, *unnamed]) if named else unnamed
    if len(named) < 2:
        return None
    n = len(run.view.items)
    ahead = _spaces_within(named, spaces, run.pos, 0)
    found = next(ahead, None) or next(_spaces_within(named, spaces, run.pos - n, n), None)
    if found is None or found[0].start >= n + run.start:
        if next(_spaces_within(named, spaces, 0, 0), None) is None:
            return None
        raise RunsOut(of, wanted=1, found=0)
    if place.quant == "last":  # those before it are passed over
        for passed in ahead:
            found, run.cost = passed, run.cost + 0.8
    run.named["group-rest"] = sum(1 for i in range(found[0].end, found[1]) if run.item(i) != CHAIN)
    return found[0]


def rest_of_group(run: Run, within: Slot) -> int:
    """How many stitches of a group lie behind a space within it: "V-st in sp of each V-st, dc in last st" passes none but those."""
    n = len(run.view.items)
    at, over = within.start % n, within.start // n * n
    end = max((g.end for g in run.view.groups if g.start <= at < g.end), default=0) + over
    return sum(1 for i in range(within.end, end) if run.item(i) != CHAIN)


_SHAPES = ("shell", "fan", "group")

def _spaces_within(groups: Sequence[Group], spaces: list[tuple[int, int]], pos: int, by: int) -> Iterator[tuple[Slot, int]]:
    """The first space within each group that begins at `pos` or after, and where its group ends; all `by` items further on."""
    for at in range(max(0, bisect_left(groups, (pos,)) - 1), len(groups)):
        group = groups[at]
        i = bisect_left(spaces, (max(pos, group.start + 1) + by,))
        if i < len(spaces) and spaces[i][1] < group.end + by:
            yield Slot(*spaces[i], "space"), group.end + by


def kept_behind(run: Run, end: int, spare: int) -> int:
    """ "sc in each sc, 2 sc in last sc": how many of a kind are kept for the rest of the row; `end`: behind the last of them."""
    turning = any(isinstance(n, (Make, Told)) and n.place is not None and n.place.thing.kind == "tch" for n in run.following)
    return 0 if turning and run.view.tch else max(0, spare - sum(1 for at in range(end, run.end) if run.item(at) != CHAIN))


def reserved(run: Run, place: Place) -> int:
    """How many of these places the rest of the row needs: none of "each 5-ch loop" where "2 tr in last 2-ch sp" follows."""
    if place.thing.kind not in SPACES:
        return run.reserve
    follow = [n.place.thing for n in run.following if isinstance(n, (Make, Told)) and n.place is not None and n.place.thing.kind in SPACES]
    others = place.thing.length and follow and all(t.length and t.length != place.thing.length for t in follow)
    return 0 if others else run.reserve_spaces


def one_run(run: Run, place: Place, ahead: list[Slot]) -> list[Slot] | None:
    """ "*Ch 2, dc in each sc, ch 2, sc in each dc; rep from *": of several runs of stitches the one that comes next, where other work stands between; else None."""
    if place.thing.kind not in HEIGHT or place.n is not None or place.left is not None or place.upto is not None or not (run.view.runs or run.inside):
        return None
    lead = run.following[0] if run.following else None
    comes = isinstance(lead, Repeat) and lead.mode == "end"
    nodes: Sequence[Node] = lead.nodes if isinstance(lead, Repeat) and comes else run.following if run.inside else ()
    if not any(isinstance(n, Chain) for n in nodes[:1]) and not (run.inside and not run.following):
        return None  # behind the last of a repeat it begins again
    end = next((i for i in range(1, len(ahead)) if ahead[i].start != ahead[i - 1].end), len(ahead))
    return ahead[:end] if end < len(ahead) and ahead[0].end - ahead[0].start == 1 else None


def stop_of(run: Run, place: Place) -> int:
    """Where "each" stops that goes up to something."""
    assert place.upto is not None
    if place.upto.kind == "centre":
        middles = [(g.start + g.end - 1) // 2 for g in run.view.groups if g.end - g.start > 2]
        return next((m for m in sorted(middles) if m >= run.pos), run.end)
    if place.upto.kind == "corner" and not run.view.runs and (corners := [g.start for g in run.view.groups if g.end - g.start >= 3]) and max(corners) < run.pos:
        return run.end  # past the last of them
    if place.upto.kind == "marker":
        slot = next_marker(run, run.pos + (run.named.get("skipped-to", -1) == run.pos))  # "skip to next marker, sc to next marker"
        if slot is not None and slot.start == slot.end:
            run.named["marker"] = slot.start
    elif place.upto.kind in ("dec", "invdec") or "tog" in place.upto.kind:
        slot = next_together(run, place.upto.kind)
    else:
        slot = seek(run, place.upto, run.pos)
    if slot is None and (place.left is not None or place.upto.kind in ("marker", "dec", "invdec") or "tog" in place.upto.kind):
        raise RunsOut(place.upto.kind, wanted=1, found=0)
    return slot.start if slot is not None else run.end


FAR = 60  # chains that are passed over


def chain_between(run: Run, place: Place) -> Slot | None:
    """ "Sc between first 2 tr, *ch 3, sc between next 2 tr": the chain that lies between the next two of that kind; None where they stand side by side."""
    if place.thing.kind != "gap" or place.of is None or place.of.kind not in HEIGHT or not run.view.runs or run.view.foundation:
        return None
    kind, items, seen = code(place.of.kind), run.view.items, max(run.pos - 1, 0)
    first = bisect_left(run.view.runs, (run.pos,))
    for start, end in run.view.runs[first : first + FAR]:
        if end >= min(run.end, len(items)) or any(items[i] == items[i + 1] == kind for i in range(seen, start - 1)):
            return None
        seen = end
        if items[start - 1] == kind == items[end]:
            return Slot(start, end, "space")
    return None
