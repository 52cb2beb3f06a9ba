"""Places that were passed over: in this row just before, for crossed stitches, or in rows below, under the chains that stand there now."""

from __future__ import annotations

from bisect import bisect_right

from loopwright.model.tree import Place
from loopwright.working.kinds import CHAIN, code
from loopwright.working.run import MAX_ITEMS, Run, RunsOut
from loopwright.working.seeking import JUMP, seek, view_runs
from loopwright.working.slots import HOW
from loopwright.working.view import Slot


def take(run: Run, slot: Slot) -> Slot:
    """Goes on behind a place, which is the last that was worked into."""
    run.last = slot
    run.pos = max(run.pos, slot.end)
    run.used_spaces = slot.how in ("space", "between")
    return slot


def kth_with_chains(run: Run, place: Place, k: int) -> Slot | None:
    """ "Ch 2, dc in 2nd st" over "sc, ch 1, sc, …": the chain is the second, where chains stand in for stitches; None where they do not."""
    at = run.start + k - 1
    if place.thing.kind != "st" or at < run.pos or run.worked > int(run.tch_item) or run.view.foundation or at >= run.end or run.item(at) != CHAIN:
        return None
    here = next(((s, e) for s, e in view_runs(run) if s <= at < e), None)
    if here is None or here[1] - here[0] != 1 or not run.once("chains-as-sts", ((0.2, False), (0.0, True))):
        return None
    run.last = Slot(*here, "space")
    run.pos, run.used_spaces = here[1], True
    return run.last


def passed_over(run: Run, place: Place, how: str) -> list[Slot]:
    """ "dc in skipped st", "dc in skipped st 3 rows below"."""
    if place.n is None and place.of_row and not run.skips and (under := [Slot(s, e, "below-1") for s, e in view_runs(run) if s >= run.pos]):
        run.left_said = True  # "dc in each skipped st of Rnd 4": the stitches between are left in front
        return [take(run, slot) for slot in under]
    lies_below = place.rows_below or not run.skips and run.pos < run.end and run.item(run.pos) == CHAIN
    return _under_chains(run, place, how) if lies_below else _just_passed(run, place, how)


def _just_passed(run: Run, place: Place, how: str) -> list[Slot]:
    """What was passed over last: its places in order, each once, or the one that is named. The row goes on where it was."""
    begin, end = next(((a, b) for a, b in reversed(run.skips) if b <= run.pos), (0, 0))
    places = [i for i in range(begin, end) if run.item(i) != CHAIN or run.view.foundation]
    if place.k == 0 and not run.skips:  # passed over by another row, which this one is worked behind
        slot = seek(run, place.thing, run.pos)
        if slot is None:
            raise RunsOut("skipped", wanted=1, found=0)
        return [take(run, Slot(slot.start, slot.end, how))]
    if place.k:
        free = [places[place.k - 1 if place.k > 0 else place.k]] if 0 < abs(place.k) <= len(places) else []
    else:
        done = {at for made, at in run.crossed if made < len(run.out)}
        free = [i for i in places if i not in done]
    wanted = place.n.at(0) if place.n is not None else len(free)
    if not wanted or len(free) < wanted:
        raise RunsOut("skipped", wanted=wanted or 1, found=len(free))
    found = free[:wanted]
    run.crossed.extend((len(run.out) + k, at) for k, at in enumerate(found))
    run.last = Slot(found[-1], found[-1] + 1, how)
    return [Slot(at, at + 1, how) for at in found]


def _under_chains(run: Run, place: Place, how: str) -> list[Slot]:
    """Stitches that rows below passed over: they lie under the chains that stand in their place now, and those are used up with them."""
    found: list[Slot] = []
    wanted, runs = (place.n.at(0) or 1) if place.n is not None else 1, view_runs(run)
    for _ in range(min(wanted, MAX_ITEMS)):
        if run.pos >= run.end:
            raise RunsOut("skipped", wanted=wanted, found=len(found))
        chain = run.item(run.pos) == CHAIN
        i = bisect_right(runs, (run.pos, MAX_ITEMS * 2)) - 1
        space = runs[i] if chain and i >= 0 and run.pos < runs[i][1] else (run.pos, run.pos + 1)
        found.append(take(run, Slot(*space, how if place.rows_below or not chain else "below-1")))
    return found


def chains_passed(run: Run, place: Place, jumped: int) -> int:
    """Chains of a foundation that no words pass over, before its last one; 0 where chains bridge them, or only one is left."""
    told = bool(run.skips) and run.skips[-1][1] == run.pos
    return jumped if run.view.foundation and place.thing.kind == "ch" and jumped > 1 and run.worked and run.out[-1] != CHAIN and not told else 0


def between_kinds(run: Run) -> bool:
    """Whether only such stitches are left as the round passed over in each repeat: "dc in next 5 dc, ch 3" goes over the sc between the groups."""
    sought = [code(key.removeprefix(JUMP)) for key, taken in run.sticky.items() if taken is True and key.startswith(JUMP)]
    if not sought or not run.in_rounds or not run.repeats or run.into.how.count(HOW["space"]) or run.pos <= 0 or run.end > len(run.view.items):
        return False
    ahead = frozenset(run.view.items[run.pos : run.end]) - {CHAIN}
    if len(ahead) != 1 or not ahead.isdisjoint(sought):
        return False
    other, items = next(iter(ahead)), run.view.items
    between = max(1, items.count(other, 0, run.pos) // run.repeats)
    return 0 < items.count(other, run.pos, run.end) <= between and not any(0 <= at < len(items) and items[at] == other for at in run.into.start)
