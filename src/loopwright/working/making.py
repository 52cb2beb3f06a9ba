"""Stitches: each kind into the places its words name."""

from __future__ import annotations

from array import array
from collections.abc import Sequence

from loopwright.model.tree import (
    STITCH,
    Chain,
    EdgeRun,
    Make,
    Mark,
    Node,
    Place,
    Thing,
)
from loopwright.record import changed
from loopwright.working.kinds import CHAIN, HEIGHT, code, legs, plain
from loopwright.working.places import how_of, slots_of
from loopwright.working.run import MAX_ITEMS, CannotWork, Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, seek, stitches_ahead
from loopwright.working.skipped import skip_foundation
from loopwright.working.underside import goes_under
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot


def kind_made(run: Run, kind: str) -> tuple[str, int]:
    """The real kind of "inc" and "dec", and how many an increase makes."""
    if kind == "inc":
        return run.main_kind, 2
    if kind in ("dec", "invdec"):
        return f"{plain(run.main_kind)}2tog", 1
    return ("sc" if run.main_kind == "st" else run.main_kind, 1) if kind in ("st", "*same*") else (kind, 1)


def do_make(run: Run, node: Make) -> None:
    """Stitches of one kind; see the tree's Make for which places."""
    if run.definitions and node.kind in run.definitions and node.kind not in HEIGHT:
        from loopwright.working.groups import do_defined

        return do_defined(run, node)
    if node.kind == "corner":
        raise CannotWork("corner-not-told")
    kind, twice = kind_made(run, node.kind)
    count = node.n.at(0)
    if count is None or count < 0:
        raise CannotWork("blank")
    if count > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    if node.kind == "sl st":
        from loopwright.working.slips import do_slip

        return do_slip(run, node, count)
    if kind == "picot":
        return picot(run, count)
    if node.place is not None and node.place.quant == "each" and node.place.n is None and node.place.thing.kind in ("row", "row-end"):
        from loopwright.working.whole_rows import do_edge

        return do_edge(run, EdgeRun(kind, None, "row-ends", count, span=node.span))
    place, parts = _all_in_one(run, node.place, count), node.taking or max(legs(node.kind), node.parts if node.parts and node.place is None else 0)
    if place is None:
        return _make_over(run, kind, count, parts, twice, node)
    if parts > 1 and _over(run, place, parts, node):
        wanted = ((place.n.at(0) if place.n else None) or parts) if place.quant != "each" else None
        times = count if wanted in (None, 1, parts) else max(1, wanted // parts)
        return _make_over(run, kind, times, parts, twice, node, Thing(place.thing.kind, place.thing.length))
    if place.of is not None and place.of.kind == "ch" and place.k is None and run.named.get("own-chain-left", 0) > 0:
        return own_more(run, code(kind), place)
    _before_foundation(run, kind, place)
    if place.quant == "each" and _too_many(run, place, count * twice):
        raise CannotWork("too-many", limit=MAX_ITEMS)
    slots = [Slot(run.start, run.start + 1)] if closes_in_own_start(run, place, kind) else slots_of(run, place, how_of(run, place, node.loop))
    if slots and slots[0].how == "own-chain" and place.from_hook:
        return own_chain(run, kind, count, -slots[0].start)
    if place.from_hook:
        _before_foundation(run, kind, place, place.k)
    number, each = code(kind), count * twice
    if place.quant == "each" and each > 1:
        _start_pair(run, place, number, each)
    if each == 1 and node.between and len(slots) > 1:
        return _spaced_out(run, number, slots, node.between)
    if each == 1 and len(slots) > 2:
        return plain_run(run, number, slots)
    if each > 1 and len(slots) > 2 and not node.between:
        heaped(run, number, slots, each)
        slots = []
    for slot in slots:
        begin = len(run.out)
        if node.between:
            apart(run, number, slot, each, node.between)
        else:
            run.make(number, slot, each)
        if each > 1:
            run.groups.append(MadeGroup(begin, len(run.out), ""))
    if place.quant == "same" and node.parts > 1 and node.kind != "cluster" and place.thing.kind not in SPACES:  # its other leg goes on: "sc2tog in same st and next st"
        following = seek(run, place.thing, run.pos)
        if following is None:
            raise RunsOut(place.thing.kind, wanted=node.parts, found=1)
        run.pos = following.end
    if run.half_loop:
        _half_loop(run, kind)
    return None


def _all_in_one(run: Run, place: Place | None, count: int) -> Place | None:
    """ "(3 sc in same st, 2 sc) x 4": the same for all three, and that is the next stitch; or the one worked into before."""
    if place is None or place.quant != "same" or count < 2 or place.thing.kind not in STITCHES or not (run.inside or "all-in-one" in run.sticky):
        return place
    return changed(place, quant="next") if run.once("all-in-one", ((0.0, False), (0.8, True))) else place


def _too_many(run: Run, place: Place, each: int) -> bool:
    """Whether so many stitches in each one that is left are far too many; seen before they are looked up one by one."""
    whole = place.n is None and place.left is None and place.upto is None and place.thing.kind in STITCHES and not run.view.open_end
    return whole and each > 1 and (run.stitches_left() // 2) * each > MAX_ITEMS


def _spaced_out(run: Run, number: int, slots: Sequence[Slot], chains: int) -> None:
    """ "Sc in each st with ch 3 between": in a round the last has such a chain behind it too, before the first."""
    closes = (run.in_rounds or run.view.joined) and not run.inside and slots[-1].end >= run.end
    for i, slot in enumerate(slots):
        run.make(number, slot)
        if closes or i + 1 < len(slots):
            run.chain(chains)


def _start_pair(run: Run, place: Place, number: int, each: int) -> None:
    """ "Ch 3, 2 dc in each st": where the chain is a stitch, its place takes the other one too."""
    stands = run.into[0] if run.tch_item and len(run.out) == 1 else None
    beside = place.thing.kind in ("gap", *SPACES) and not run.in_rounds  # at the edge of a row it stands beside the spaces
    paired = stands is not None and not run.view.ring and (not beside or stands.how not in ("top", "chain"))
    if paired and run.once("start-pair", ((0.0, True), (0.3, False))):
        for _ in range(each - 1):
            run.make(number, run.into[0])
        run.groups.append(MadeGroup(0, len(run.out), ""))


def _before_foundation(run: Run, kind: str, place: Place | None, said: int | None = None) -> None:
    """Where the first stitch of a row goes, in the first row of all with what the chains before it are."""
    if kind == "pattern" and run.slipped and not run.out and run.last is not None and run.last.end == run.pos and (run.tape[-1].what, run.tape[-1].n) == ("move", 1):
        run.pos = run.last.start  # "ss over 4 and into next st, patt to last 4": it begins in that stitch
    if not run.view.foundation or run.worked:
        return
    if said is None and run.named.get("missed") == run.pos > 0:
        said = run.pos + 1  # "miss 3, 1 treble in next": as if told from the hook
    if said is not None:
        skip_foundation(run, kind, said)
    elif run.pos == 0 and not (place and (place.from_hook or place.quant in ("first", "last"))):
        whole = place is not None and place.thing.kind == "any" and place.left is None
        skip_foundation(run, kind, None, whole=whole)


def plain_run(run: Run, number: int, slots: list[Slot]) -> None:
    """One stitch in each of many slots at once."""
    if len(run.out) + len(slots) > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    run.out.extend(bytes([number]) * len(slots))
    run.into.extend(slots)
    run.origins.extend([run.origin] * len(slots))
    run.worked += len(slots)
    run.own_chain = 0


def heaped(run: Run, number: int, slots: list[Slot], each: int) -> None:
    """So many stitches in each of many slots at once."""
    begin, many = len(run.out), len(slots) * each
    if begin + many > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    run.out.extend(bytes([number]) * many)
    run.into.heaps(slots, each)
    run.origins.extend(array("i", (run.origin,)) * many)
    run.groups.extend(MadeGroup(at, at + each, "") for at in range(begin, begin + many, each))
    run.worked += many
    run.own_chain = 0


def apart(run: Run, number: int, slot: Slot, times: int, chains: int) -> None:
    """So many stitches into one place with chains between them."""
    for j in range(times):
        if j:
            run.chain(chains)
        run.make(number, slot)


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
    ahead = stitches_ahead(run, run.pos, min(run.end, run.pos + count)) if parts < 2 and twice == 1 and count > 2 and thing is STITCH else []
    if 0 < len(ahead) < count == run.end - run.pos and not run.out:
        ahead = [Slot(i, i + 1) for i in range(run.pos, run.end)]  # "sc 74" over 52 stitches and 22 chains: into all of them
    if len(ahead) == count > 0:
        run.pos, run.last = ahead[-1].end, ahead[-1]
        plain_run(run, number, ahead if how == "top" else [s._replace(how=how) for s in ahead])
        return
    for _ in range(count):
        first: Slot | None = None
        for _ in range(max(1, parts)):
            slot = seek(run, thing, run.pos)
            if slot is None and goes_under(run):
                slot = seek(run, thing, run.pos)
            if slot is None:
                raise RunsOut(thing.kind, wanted=count * parts, found=0)
            run.pos, run.last = max(run.pos, slot.end), slot
            first = slot if first is None else Slot(first.start, slot.end, slot.how)
        assert first is not None
        begin = len(run.out)
        for _ in range(twice):
            run.make(number, Slot(first.start, first.end, how) if first.how == "top" else first)
        if twice > 1:
            run.groups.append(MadeGroup(begin, len(run.out), ""))


def own_chain(run: Run, kind: str, count: int, k: int) -> None:
    """Stitches back along the chain just made ("ch 6, dc in 4th ch from hook"): it becomes a base for a while."""
    if not run.runs or run.runs[-1][1] != len(run.out):
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


def picot(run: Run, count: int) -> None:
    """Notes so many picots on what was just made: they are no stitches of the row. Raises CannotWork past MAX_ITEMS."""
    run.named["picot"] = run.named.get("picot", 0) + count
    if run.named["picot"] > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    run.note("picot", count)


def closes_in_own_start(run: Run, place: Place, kind: str) -> bool:
    """Whether a stitch closes its round in the chain that the round began with, so that half of its last loop is the stitch; marks that it does."""
    run.half_loop = run.worked > 2 and bool(run.out) and run.out[-1] == CHAIN and _in_own_start(run, place, kind, run.following)
    return run.half_loop


def ends_in_own_start(run: Run, ending: Sequence[Node]) -> bool:
    """ "*sc in next sp, ch 6; rep from *, end ch 3, hdc in 3rd ch of ch-4": the ending of a repeat needs no stitch of the row below."""
    last = ending[-1] if len(ending) > 1 and isinstance(ending[-2], Chain) else None
    return isinstance(last, Make) and last.place is not None and last.n.at(0) == 1 and _in_own_start(run, last.place, last.kind, run.following)


def _in_own_start(run: Run, place: Place, kind: str, following: Sequence[Node]) -> bool:
    told = place.of.length if place.quant == "kth" and place.thing.kind == "ch" and place.of is not None and place.of.kind == "sp" else None
    named = bool(told) if place.thing.kind == "ch" else place.quant == "last" and place.thing.kind == "tch" and place.of is None and not place.from_hook
    if not named or run.inside or not run.in_rounds or run.turned or not run.tch_item or run.start_chain is None or told and told < run.start_chain[0]:
        return False
    return (HEIGHT.get(plain(kind)) or 0) > 1 and all(isinstance(n, Mark) and n.what != "turn" for n in following)


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
