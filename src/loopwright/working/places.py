"""Finding the places that words name: the next stitch, the 3rd chain of ch-6, the centre of a shell, the last space."""

from __future__ import annotations

from loopwright.model.tree import ONE, Join, Make, Mark, Place, Thing
from loopwright.working.kinds import CHAIN, HEIGHT, code
from loopwright.working.leads import on_to_turning_chain
from loopwright.working.nearby import (
    beside_groups,
    chain_between,
    goes_on_in_spaces,
    group_here,
    in_its_closing,
    in_pair,
    kept_behind,
    kth_of_row,
    loop_again,
    loop_of_the_join,
    none_left,
    of_the_chain,
    one_run,
    over_its_closing,
    reserved,
    rest_of_group,
    shell_here,
    space_at_start,
    space_begun,
    space_here,
    space_in_group,
    stop_of,
    turning_next,
)
from loopwright.working.passed import chains_passed, kth_with_chains, passed_over, take
from loopwright.working.run import MAX_ITEMS, CannotWork, Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, from_first_gap, just_joined, same_group, seek, stitches_ahead, view_runs
from loopwright.working.underside import goes_under
from loopwright.working.view import Slot

_HOW = {"both": "top", "back": "back", "front": "front", "third": "third", "front-post": "front-post", "back-post": "back-post"}
JUMP_COST = 0.8
NOTHING_THERE = 0.5  # "each space to the next corner" where only groups meet
BESIDE = 4  # stitches of the group behind the space that a row was last worked into
_ODD = frozenset({"marker", "row", "row-end", "corner", "ring"})  # not looked for along the row below


def how_of(run: Run, place: Place | None, loop: str = "both") -> str:
    """Where in the stitch: top, a loop, a post; for a spike how many rows further down."""
    if place is not None and place.rows_below:
        return f"below-{min(place.rows_below, 9)}"
    if place is not None and place.loop != "both":
        return _HOW[place.loop]
    if loop != "both":
        return _HOW[loop]
    return _HOW[run.loop]


def _is_ring(run: Run, place: Place) -> bool:
    """ "10 double crochet into this loop": the chain that was joined."""
    one = place.quant == "next" and place.n in (None, ONE) and place.of is None
    return one and run.view.ring and not run.view.runs and place.thing.kind in ("loop", "sp")


def slots_of(run: Run, place: Place, how: str = "top") -> list[Slot]:
    """The slots a place names, in order, moving the cursor past them. Raises RunsOut when they are not there."""
    if run.view.ring and not run.view.items and place.thing.kind != "ring":
        return [Slot(0, 0, "ring")] * min(max(1, place.n.at(0) or 1 if place.n and place.quant == "next" else 1), MAX_ITEMS + 1)
    kind, run.around = place.thing.kind, place.relation == "around"
    if _is_ring(run, place):
        place, kind = Place("next", ONE, Thing("ring")), "ring"
    left = run.named.get("own-chain-left", 0)
    if place.quant == "next" and kind not in _ODD and not left and not place.k and not place.from_hook:
        return _next(run, place, how)
    if left and kind in ("ch", *STITCHES) and place.quant in ("next", "each", "last") and not place.from_hook:
        own = _own_places(run, place, left)
        if own:
            return own
    if kind in ("row", "row-end") and (edge := _row_ends(run, place)) is not None:
        return edge
    if kind == "corner" and (run.named.get("along-edge") or run.named.get("edges-told") and seek(run, place.thing, run.pos) is None):
        return [Slot(-1, -1, "corner")]  # where one edge of the piece meets the next
    if kind == "ring" or kind == "row" and run.view.ring:  # "in the round", said of the ring
        run.last = Slot(0, len(run.view.items), "ring")
        if not run.view.ring:
            run.cost += 1.0
            return [take(run, Slot(run.pos, run.pos, "ring"))]
        return [run.last]
    if place.quant == "same":
        return [space_at_start(run, place) or (kind == "loop" or kind in SPACES and (run.view.half or goes_on_in_spaces(run))) and loop_of_the_join(run) or _same(run, place)]
    if place.quant == "skipped":
        return passed_over(run, place, how)
    if place.quant == "first":
        return _first(run, place, how)
    if place.quant == "last":
        return [take(run, found)] if (found := space_in_group(run, place)) is not None else _last(run, place, how)
    if place.quant == "kth" or place.from_hook or (place.k and place.quant == "next" and place.of is None):
        return [_kth(run, place, how)]
    if place.quant == "each":
        return _each(run, place, how)
    if place.quant == "every":
        return _every(run, place, how)
    return _next(run, place, how)


def _row_ends(run: Run, place: Place) -> list[Slot] | None:
    """ "in end of each of next 12 rows": places at the side of the piece; None where the words do not mean them."""
    wanted = place.n.at(0) if place.n is not None else None
    if run.view.ring or run.view.foundation or wanted is None or wanted < 2 or place.quant != "next":
        return None
    run.left_said = True
    run.named["row-ends"] = 1
    return [Slot(-1, -1, "row-end")] * min(wanted, MAX_ITEMS)


def _own_places(run: Run, place: Place, left: int) -> list[Slot]:
    """Places on what is left of the chain that is a base of its own; none where the words ask for more than it has."""
    wanted = left if place.quant == "each" and place.thing.kind == "ch" else (place.n.at(0) or 0) if place.n is not None else 0
    if place.quant == "last":
        wanted = left if place.thing.kind == "ch" and wanted >= left else wanted if wanted == left else 0
    if not 0 < wanted <= left:
        return []
    run.named["own-chain-left"] = left - wanted
    return [Slot(-2 - (left - 1 - i), -2 - (left - 1 - i), "own-chain") for i in range(wanted)]


def _next(run: Run, place: Place, how: str) -> list[Slot]:
    wanted = place.n.at(0) if place.n is not None else 1
    found: list[Slot] = []
    if wanted == 1 and in_its_closing(run, place):
        return [Slot(run.start, run.start + 1, how)]
    if place.thing.kind == "ch" and run.named.get("row-ends") and not run.view.foundation and CHAIN not in run.view.items and place.of is None:
        run.left_said = True  # past the row ends come the chains that the piece began with
        return [Slot(-1, -1, "underside")] * min(wanted or 0, MAX_ITEMS)
    if place.thing.kind == "corner" and not run.inside and run.worked <= 1 and run.last is not None and run.last.how == "space" and run.once("slipped-corner", ((0.0, True), (0.3, False))):
        return [take(run, run.last)]  # "sl st to next corner sp, ch 3, (2 dc, ch 2, 3 dc) in the corner sp"
    if (there := in_pair(run, place) or over_its_closing(run, place)) is not None:
        return [there]
    here = space_here(run) if run.inside and not run.out and wanted == 1 and place.thing.kind in ("corner", *SPACES) else None
    if here is not None and run.once("slipped-into", ((0.0, True), (0.3, False))):
        run.end = min(run.end, len(run.view.items) + here.start)  # and is not come back to
        return [take(run, here)]  # "sl st into loop, ch 1, *3 sc in loop; rep from * around": the hook is in the first of them
    for _ in range(min(wanted or 0, MAX_ITEMS)):
        slot = group_here(run) if place.centre else chain_between(run, place) or space_in_group(run, place)
        slot = slot or (None if found else shell_here(run, place)) or seek(run, place.thing, from_first_gap(run, place) if not found else run.pos)
        if slot is None and not found and goes_under(run):
            slot = seek(run, place.thing, run.pos)
        if slot is None and wanted == 1:
            slot = loop_again(run, place)
        if slot is None:
            raise RunsOut(place.thing.kind, wanted=wanted, found=len(found))
        if place.relation == "between" and place.of is not None and (place.thing.kind in HEIGHT or place.thing.kind in SPACES):
            slot = beside_groups(run, slot) if place.thing.kind in HEIGHT else _between(run, slot, place.of.kind) or (None if run.inside and slot.how == "space" else slot)
            if slot is None:
                raise RunsOut("gap" if place.thing.kind in HEIGHT else "sp", wanted=wanted, found=len(found))
        elif place.of is not None and place.thing.kind != "gap" or place.centre:
            slot = _inside(run, slot, place)
        if _begins_there(run, place, slot):
            from loopwright.working.slips import move_start

            move_start(run, slot.start)
        found.append(take(run, _with(slot, how)))
    return found


def _begins_there(run: Run, place: Place, slot: Slot) -> bool:
    """Whether a round begins in the space it is first worked into, though no words take the hook there; what lies before comes last then."""
    first = run.worked == 0 and not run.out and run.view.joined and not run.start and slot.start > 0
    if not first or place.thing.kind not in ("corner", *SPACES) and (place.thing.kind != "gap" or slot.how != "space"):
        return False
    back = run.inside == 1 and slot.start == 1 and any(isinstance(n, Make) and n.place is not None and n.place.thing.kind not in ("corner", "ring", "gap", *SPACES) for n in run.following)
    # "*3 sc in next sp, sc in next dc; rep from * around": the stitch that the round began behind is the last to be worked into
    return bool(run.once("round-from-there", ((0.2, False), (0.0, True)) if back else ((0.0, False), (0.4, True))))


def _between(run: Run, slot: Slot, kind: str) -> Slot | None:
    """The next chain space that stands between two stitches of a kind, from `slot` on; None when there is none."""
    number, n = code(kind), len(run.view.items)
    for s, e in view_runs(run):
        if s >= slot.start and s > 0 and run.item(s - 1) == number and run.item(e % n) == number:
            return Slot(s, e, "space")
    return None


def _with(slot: Slot, how: str) -> Slot:
    """A slot, entered as the words say."""
    how = _entered(slot, how)
    return slot if how == slot[2] else Slot(slot[0], slot[1], how)


def _entered(slot: Slot, how: str) -> str:
    return slot.how if slot.how == "between" or slot.how in ("space", "ring", "chain") and how == "top" else how


def _same(run: Run, place: Place) -> Slot:
    if run.view.ring and (run.last is None or run.last.how == "ring" and not run.worked) and of_the_chain(run, place):
        run.last = Slot(run.pos, run.pos + 1)
    if run.last is None:
        if run.view.ring:
            return Slot(0, len(run.view.items), "ring")
        if run.pos >= run.end and not run.view.open_end:
            raise RunsOut("same", wanted=1, found=0)
        run.last = Slot(run.pos, run.pos + 1)
    return take(run, run.last)


def _first(run: Run, place: Place, how: str) -> list[Slot]:
    """The first place of the row; "first 3 sts" takes three. At the end of a round it is the stitch of the join."""
    if run.view.foundation and run.pos >= len(run.view.items) and run.into and run.into[0] is not None:
        return [run.into[0]] * min((place.n.at(0) if place.n is not None else 1) or 1, MAX_ITEMS + 1)  # all round the chain: where the round began
    if (begun := space_begun(run, place)) is not None:
        return [begun]
    if run.inside == 0 and run.worked > 2 and (run.pos > run.start + 1 or run.view.ring) and run.in_rounds and (place.n is None or (place.n.at(0) or 1) == 1):
        run.half_loop = not (place.thing.kind == "corner" and any(isinstance(n, Join) for n in run.following))  # "sc in first corner; join": a stitch more
        return [Slot(run.start, run.start + 1, how)]
    stands = run.worked == 1 and run.tch_item and run.pos == run.start + 1 and (place.n is None or place.n.at(0) == 1)
    run.pos = min(run.pos, run.start) if run.worked == 0 or stands else run.pos  # the start chain stands there: into the same stitch
    thing = place.thing
    return _next(run, Place("next", place.n, thing, of=place.of, centre=place.centre, k=None), how)


def _last(run: Run, place: Place, how: str) -> list[Slot]:
    """The last places: what lies between is left, at a cost."""
    wanted = (place.n.at(0) if place.n else 1) or 1
    if run.view.open_end:
        return _next(run, Place("next", place.n, place.thing), how)
    if place.thing.kind == "tch" and place.of is not None and not run.view.tch and (spaces := view_runs(run)) and spaces[-1][0] >= run.pos:
        return [take(run, Slot(*spaces[-1], "space"))]
    if place.thing.kind == "tch" or (place.of and place.of.kind == "tch"):
        return [_tch(run)]
    ahead: list[Slot] = []
    pos = run.pos
    while (slot := seek(run, place.thing, pos)) is not None and len(ahead) < MAX_ITEMS:
        ahead.append(slot)
        pos = max(slot.end, pos + 1) if slot.end == pos else slot.end
    if len(ahead) < wanted:
        if run.last is not None and wanted == 1 and run.last.end >= run.end and run.worked:
            run.cost += 0.4
            return [run.last]
        raise RunsOut(place.thing.kind, wanted=wanted, found=len(ahead))
    if len(ahead) > wanted and ahead[-1].end == run.end and place.thing.kind in HEIGHT and not (run.view.tch or run.in_rounds) and on_to_turning_chain(run.following):
        ahead.pop()  # "dc in last dc, dc in top of turning ch": the chain that is a stitch is kept for the one after
    jumped = len(ahead) - wanted
    beside = run.last is not None and (run.last.how == "between" and jumped <= BESIDE or run.last.how == "space" and jumped <= rest_of_group(run, run.last))
    if jumped and beside:
        jumped = 0  # "3 dc in each sp between groups, dc in last st": of the last group, beside whose space the hook is
    if jumped and place.thing.kind in STITCHES:
        run.cost += min(4.0, JUMP_COST * jumped)
        told = run.skips and run.skips[-1][1] == run.pos > run.skips[-1][0]  # chains alone may bridge what they do not name
        run.named["passed"] = jumped if told or run.out and run.out[-1] != CHAIN else 0
    elif jumped:
        run.cost += min(2.0, 0.3 * jumped)
        run.named["passed"] = chains_passed(run, place, jumped) or run.named.get("passed", 0)
    chosen = ahead[-wanted:]
    if place.of is None and place.thing.kind in HEIGHT and run.out and run.out[-1] != CHAIN and not run.view.foundation and not beside:
        run.cost += min(1.6, 0.2 * sum(1 for i in range(run.pos, chosen[0].start) if run.item(i) != CHAIN))  # what stands before it is passed over
    if place.of is not None or place.centre:
        chosen = [_inside(run, s, place) for s in chosen]
    for slot in chosen:
        take(run, slot)
    return [s._replace(how=_entered(s, how)) for s in chosen]


def _tch(run: Run) -> Slot:
    """The turning chain of the row below: its item where it counts, else a place after the last stitch."""
    end = run.end
    if run.view.tch:
        return take(run, Slot(max(end, run.pos), max(end, run.pos), "chain"))
    if (spaces := view_runs(run)) and spaces[-1][1] == end and spaces[-1][0] >= run.pos:
        return take(run, Slot(*spaces[-1], "space"))  # a chain that is no stitch, and behind the last of them
    at = end - 1
    while at > run.pos and run.item(at) == CHAIN:
        at -= 1
    if at < run.pos:
        if run.last is not None and run.worked:
            run.cost += 0.5
            return run.last
        raise RunsOut("turning chain", wanted=1, found=0)
    skipped = sum(1 for i in range(run.pos, at) if run.item(i) != CHAIN)
    in_space = run.used_spaces or run.last is not None and run.last.how == "space"  # the rest of its group is passed over
    run.cost += 0.1 * (skipped > 1) if in_space else min(3.0, 0.15 * skipped if skipped < 4 else 0.6 * skipped)
    return take(run, Slot(at, at + 1))


def _kth(run: Run, place: Place, how: str) -> Slot:
    k = place.k or 1
    if place.from_hook:
        return _from_hook(run, k)
    if place.of is not None and place.of.kind in ("ch", "tch") and place.of.length is None and not run.view.foundation and run.inside == 0 and run.worked:
        return _tch(run)
    told = place.of.length if place.of is not None and place.of.kind == "sp" else None
    behind = run.view.tch_first is False or run.inside == 0 and not run.view.joined and all(isinstance(n, Mark) for n in run.following)
    if told and run.worked and 1 < k <= told and not run.view.foundation and behind and (told not in run.view.index.lengths or none_left(run, place)):
        return _tch(run)  # "in 3rd of 3 ch" at the end of a row: of its turning chain
    if place.of is not None:
        slot = same_group(run, k) or seek(run, place.of, run.pos)
        if slot is None:
            raise RunsOut(place.of.kind, wanted=1, found=0)
        at = slot.start + k - 1
        if at >= slot.end:
            run.cost += 1.0
            at = slot.end - 1
        run.last = Slot(at, at + 1, how)
        run.pos = max(run.pos, at + 1)
        return run.last
    slot = kth_with_chains(run, place, k)
    for _ in range(min(kth_of_row(run, place, k), MAX_ITEMS) if slot is None else 0):
        slot = seek(run, place.thing, run.pos)
        if slot is None:
            raise RunsOut(place.thing.kind, wanted=k, found=0)
        take(run, slot)
    if slot is None:
        raise RunsOut(place.thing.kind, wanted=k, found=0)
    return slot._replace(how=_entered(slot, how))


def _from_hook(run: Run, k: int) -> Slot:
    """ "2nd ch from hook": on the foundation, or on the chain that was just made."""
    if run.view.foundation and run.worked == 0:
        if k > run.end:
            raise RunsOut("ch", wanted=k, found=run.end)
        run.pos = k
        run.last = Slot(k - 1, k)
        return run.last
    if run.own_chain >= k and run.runs and run.runs[-1][1] == len(run.out):
        return Slot(-k, -k, "own-chain")
    run.cost += 1.0
    slot = seek(run, Thing("st"), run.pos)
    if slot is None:
        raise RunsOut("ch", wanted=k, found=0)
    return take(run, slot)


def _each(run: Run, place: Place, how: str) -> list[Slot]:
    """Each place to the end, less what the words keep back and what the rest of the row needs."""
    if run.view.open_end:
        raise CannotWork("open", thing=place.thing.kind)
    keep = place.left.at(0) or 0 if place.left is not None else 0
    in_spaces = place.thing.kind in SPACES
    spare = max(keep, 0) if place.left is not None else reserved(run, place)
    stop = stop_of(run, place) if place.upto is not None else run.end
    ahead = stitches_ahead(run, run.pos, stop) if place.thing.kind in STITCHES else []
    pos = stop if ahead else from_first_gap(run, place)
    if in_spaces and not run.worked and not run.out and (here := space_here(run)) is not None:
        ahead.append(here)  # the hook was slipped into the first of them
        run.end = stop = min(run.end, len(run.view.items) + here.start)
    _look_ahead(run, place, pos, stop, ahead)
    if place.upto is not None:  # what the rest of the row needs lies behind the stop; before it there may be nothing
        spare = keep if place.left is not None else spare if stop == run.end and not in_spaces else 0
        if not ahead:
            run.cost += NOTHING_THERE if in_spaces and run.sticky.get("gaps-are-spaces") is False else 0.0
            return []
    if not ahead:
        raise RunsOut(place.thing.kind, wanted=1, found=0)
    if (run_ahead := one_run(run, place, ahead)) is not None:
        take(run, run_ahead[-1])
        return [_with(s, how) for s in run_ahead]
    if place.thing.kind not in STITCHES and not in_spaces and place.left is None and not run.view.foundation:
        spare = kept_behind(run, ahead[-1].end, spare) if place.upto is None else 0
    if not spare and place.left is None and turning_next(run) and not run.view.tch and len(ahead) > 1 and ahead[-1].end >= run.end:
        spare = 1  # the last one is that chain
    taken = ahead[: len(ahead) - spare] if spare else ahead
    if not taken and place.left is None and ahead and place.upto is None:
        run.cost += 1.0
        taken = ahead[:1]
    if place.of is not None or place.centre:
        taken = [_inside(run, s, place) for s in taken]
    for slot in taken[-1:]:
        take(run, slot)
    return taken if how == "top" and all(s[2] == "top" for s in taken) else [_with(s, how) for s in taken]


def _look_ahead(run: Run, place: Place, pos: int, stop: int, ahead: list[Slot]) -> None:
    """Adds the places of a kind from `pos` to `stop`."""
    while pos < stop and len(ahead) < MAX_ITEMS:
        slot = seek(run, place.thing, pos)
        if slot is None or slot.start >= stop and (slot.how != "between" or slot.start > stop or stop != len(run.view.items) and not just_joined(run)):
            break  # the gap at a round's end is beside its last group
        if not ahead or slot != ahead[-1]:  # a gap has no width: it may be met again
            ahead.append(slot)
        pos = slot.end if slot.end > pos else pos + 1


def _every(run: Run, place: Place, how: str) -> list[Slot]:
    """Every k-th place to the end."""
    each = _each(run, Place("each", None, place.thing, left=place.left), how)
    step = max(1, place.k or 1)
    return each[step - 1 :: step]


def _inside(run: Run, slot: Slot, place: Place) -> Slot:
    """The centre of a slot (a shell's middle stitch or space), or its centre stitch of a kind."""
    if place.of is not None and not place.centre and place.k is None:
        return slot
    for s, e in view_runs(run):
        if slot.start < s and e < slot.end and abs((s - slot.start) - (slot.end - e)) <= 1:
            return Slot(s, e, "space") if place.thing.kind in SPACES or place.centre else slot
    middle = (slot.start + slot.end - 1) // 2
    return Slot(middle, middle + 1)
