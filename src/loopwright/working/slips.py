"""Slip stitches, skips, joins and marks: what moves the hook without making a counted stitch."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import (
    STITCH,
    Chain,
    EdgeRun,
    Either,
    Group,
    Join,
    Make,
    Mark,
    Node,
    Place,
    Repeat,
    Skip,
    Unknown,
)
from loopwright.working.kinds import CHAIN, HEIGHT, code, plain
from loopwright.working.leads import joined_at
from loopwright.working.making import own_chain, own_more, plain_run
from loopwright.working.marked import next_marker, place_marker
from loopwright.working.motifs import ANOTHER, PIECES
from loopwright.working.places import how_of, slots_of
from loopwright.working.run import MAX_ITEMS, CannotWork, Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, seek, view_runs
from loopwright.working.starts import first_stitch
from loopwright.working.underside import do_underside
from loopwright.working.view import Slot, plain_row


def do_slip(run: Run, node: Make, count: int) -> None:
    """Slip stitches: before the first stitch they move the start of the row; later they are stitches that are not counted."""
    place = node.place or Place("next", node.n)
    if run.worked == 0 and not run.out and place.quant == "each" and not run.view.ring:
        slots = slots_of(run, place, how_of(run, place, node.loop))
        run.slip_row = True
        return plain_run(run, code("sl st"), slots)
    if run.worked and _of_another(run.following):
        run.out.append(code("sl st"))
        run.into.append(None)
        run.origins.append(run.origin)
        run.own_chain = 0
        return None
    if run.view.foundation and place.from_hook and run.worked == 0:
        slots = slots_of(run, place)
        run.slip_row = True
        return plain_run(run, code("sl st"), slots)
    if place.from_hook and run.own_chain and run.own_chain >= (place.k or 1):
        back = place.k or 1
        if back < min(3, run.own_chain) and run.worked:
            return own_chain(run, "sl st", count, back)  # along the chain just made: a tie, a knob
        run.named["picot"] = run.named.get("picot", 0) + 1  # back into the chain just made: a picot, part of its loop
        run.note("close", back)
        return None
    if place.of is not None and place.of.kind == "ch" and run.named.get("own-chain-left", 0) > 0:
        return own_more(run, code("sl st"), place)
    if run.worked == 0 and not run.out and not run.inside and not _are_stitches(run, node, place, count):
        if run.view.ring:
            return None
        try:
            slots = slots_of(run, place)
        except RunsOut:
            run.cost += 1.0
            return None
        if slots:
            slots[-1] = _its_loop(run, slots[-1])
            run.last = slots[-1]
            run.note("move", len(slots), slot=slots[-1])
            run.slipped = slots[-1].how not in ("space", "between", "chain", "ring")
            if run.view.joined or run.in_rounds:
                move_start(run, slots[-1].start)
                run.named["from-gap"] = int(slots[-1].how == "between")
                _start_again(run, slots[-1])
                if slots[-1].end - slots[-1].start > 1 and slots[-1].how != "space":
                    run.pos = slots[-1].start  # moved to a group: it is the first to be worked into
        return None
    if place.thing.kind in ("ring", "loop") and run.view.ring and run.inside and run.own_chain and set(run.out) <= {CHAIN, code("sl st")}:
        return plain_run(run, code("sl st"), [Slot(0, len(run.view.items), "ring")])  # "*ch 6, sl st in ring; rep from *": loops alone
    if (place.quant in ("first", "same") or place.thing.kind in ("tch", "join", "ring")) and not _alternates(run, place):
        if place.quant == "first" and run.worked:
            run.joined = True
            run.note("join")
        return None
    try:
        slots = slots_of(run, place, how_of(run, place, node.loop))
    except RunsOut:
        if not run.worked or run.inside and not (run.named.get("last-round") and not run.following) or run.view.turned and not run.in_rounds and not run.view.joined:
            raise
        run.joined = True  # a slip stitch for which no place is left closes the round
        run.note("join")
        run.cost += 0.2
        return None
    return plain_run(run, code("sl st"), slots)


def _are_stitches(run: Run, node: Make, place: Place, count: int) -> bool:
    """Whether slip stitches at the start are the first of the row, not a way to where it starts: "sl st 4, sc 4, sl st 4"."""
    if count == 1 and place.quant in ("first", "next") and _alternates(run, place):
        return True
    many = count if node.place is None else count * ((place.n.at(0) if place.n is not None else 1) or 1)
    if many > 2 and many == run.stitches_left() and place.thing == STITCH and all(isinstance(n, (Mark, Join)) for n in run.following):
        run.slip_row = True  # "12 sl st" over 12: the whole row
        return True
    begun = run.start_chain is not None or run.tch_length > 0
    if begun and many > 2 and not run.in_rounds and place.thing == STITCH and all(isinstance(n, (Mark, Chain)) or isinstance(n, EdgeRun) and n.kind == "sl st" for n in run.following):
        run.slip_row = True  # "ch 1, sl st in back loop of first 24 sts, leave the rest, turn": a short row
        return True
    if many < 2 or run.view.ring or run.view.foundation or place.quant not in ("next", "first") or place.thing != STITCH:
        return False
    first = run.following[0] if run.following else None
    if not isinstance(first, Make) or first.place is not None and first.place.quant == "same":
        return False
    left = first.place.left if first.place is not None else None
    if left is not None and left.at(0) == many and all(isinstance(n, (Mark, Chain)) for n in run.following[1:]):
        return False  # as many are left at the row's end: both ends are shaped
    if run.start_chain is not None or run.tch_length:  # the row has begun: "ch 1, sl st in first 5 sts, hdc in each st"
        return bool(run.once("slips-first", ((0.4, False), (0.0, True))))
    return bool(run.once("slips-first", ((0.0, False), (0.4, True))))


def _alternates(run: Run, place: Place) -> bool:
    """Whether slip stitches and tall ones take turns in a row, "sl st in first dc, *dc in next dc, sl st in next dc; rep …": so the first and last of them are stitches too."""
    if run.in_rounds or run.view.joined or run.view.ring or run.view.foundation or place.quant == "same":
        return False
    if run.worked or run.out:
        return place.thing.kind == "tch" and code("sl st") in run.out
    told = run.following[0] if run.following else None
    kinds = [n.kind for n in told.nodes if isinstance(n, Make)] if isinstance(told, Repeat) else []
    return isinstance(told, Repeat) and len(kinds) == len(told.nodes) > 1 and "sl st" in kinds and len(set(kinds)) > 1


def _of_another(following: Sequence[Node]) -> bool:
    """ "sl st in corner sp of the finished square": the place just named is another piece's, not the row's below."""
    words = [n.text.lower() for n in following[:2] if isinstance(n, Unknown)]
    return len(words) == 2 and words[0] in ANOTHER and words[1] in PIECES


def move_start(run: Run, at: int) -> None:
    """The round begins at item `at`; what was before it comes last. Within a repeat it began with the first time."""
    if at <= 0 or run.view.open_end or not run.view.items or run.inside and run.out:
        return
    over = at // len(run.view.items) * len(run.view.items)
    at, run.pos = at - over, max(0, run.pos - over)
    run.start = at
    run.end = len(run.view.items) + at
    run.pos = max(run.pos, at)


def _its_loop(run: Run, slot: Slot) -> Slot:
    """ "Sl st in next ch, ch 3, 6 dc in same sp": the loop that a chain is one of, where the next stitch goes into that; else the chain itself."""
    if slot.how != "chain" or not run.view.runs or run.view.foundation:
        return slot
    first = first_stitch([n for n in run.following[:3] if not isinstance(n, Chain)])
    if first is None or first[1] is None or first[1].quant not in ("same", "first") or first[1].thing.kind not in SPACES:
        return slot
    at, over = slot.start % len(run.view.items), slot.start // len(run.view.items) * len(run.view.items)
    return next((Slot(s + over, e + over, "space") for s, e in run.view.runs if s <= at < e), slot)


def _start_again(run: Run, slot: Slot) -> None:
    """A round that starts in a space without a stitch there comes back to that space at its end."""
    first = first_stitch(run.following)
    lead = run.following[0] if run.following else None
    if isinstance(lead, Group) and lead.place is not None and lead.place.quant in ("same", "first"):
        return
    if first is None and isinstance(lead, Repeat) and lead.mode == "end" and len(lead.nodes) > 1 and isinstance(lead.nodes[0], Chain):
        first = first_stitch(lead.nodes[1:])  # "*ch 5, sc in next loop; rep from * around": the last goes into the loop it began in
    if isinstance(lead, Chain) and first is not None and (HEIGHT.get(plain(first[0])) or 0) > 1:
        return
    if first is None or first[1] is not None and first[1].quant in ("same", "first"):
        return
    n = len(run.view.items)
    for s, e in run.view.runs:
        at_once = s == slot.start % n and slot.how not in ("space", "between") and isinstance(lead, Make) and lead.place is not None and lead.place.thing.kind in SPACES
        if s <= slot.start % n < e and not at_once:  # "sl st in next ch, sc in sp": that space is worked in at once
            run.end = max(run.end, n + e)


def _into_space(following: Sequence[Node]) -> bool:
    """Whether the next thing is worked into a chain space."""
    node = following[0] if following else None
    if isinstance(node, Either):
        node = node.readings[0][1][0] if node.readings[0][1] else None
    return isinstance(node, (Make, Group)) and node.place is not None and node.place.thing.kind in SPACES and node.place.quant == "next"


def _pass_to(run: Run, node: Skip) -> None:
    """Passes everything up to a marker, or up to a place and that too."""
    if node.thing.kind == "marker":
        slot = next_marker(run, run.pos + 1)
    else:
        slot = seek(run, node.thing, run.pos)
        if slot is not None and slot.start == run.pos:
            slot = seek(run, node.thing, slot.end)  # the hook stands at one already: "hdc to ch-2 sp, skip sleeve sts to next ch-2 sp"
    if slot is None:
        raise RunsOut(node.thing.kind, wanted=1, found=0)
    to = slot.end if node.to else slot.start
    run.skips.append((run.pos, to))
    run.pos = to
    if not node.to:
        run.named["skipped-to"] = to


def do_skip(run: Run, node: Skip) -> None:
    """Passes places over."""
    count = node.n.at(0)
    if count is None:
        raise CannotWork("blank")
    if run.worked == 0 and not run.out and count < run.named.get("free", 0) and _joins_yarn(run.following) and run.once("free-stitches", ((0.0, True), (0.5, False))):
        on_free(run)
    if node.thing.kind == "sl st" and code("sl st") not in run.view.items:
        return  # those that joined a band to its edge: they are none of its row
    if node.to or node.thing.kind == "marker":
        _pass_to(run, node)
        return
    if node.thing.kind in STITCHES and _into_space(run.following) and not run.view.foundation and run.view.runs:
        ahead = next((s for s, e in view_runs(run) if e > run.pos), None)
        if ahead is not None and count:  # "skip 3 dc, … in next sp": never past the space that is meant
            passed = 0
            while passed < count and run.pos < ahead and (slot := seek(run, node.thing, run.pos)) is not None and slot.start < ahead:
                run.pos, passed = slot.end, passed + 1
            return
    if node.first and run.tch_item and run.out.count(CHAIN, 1) == len(run.out) - 1 and not run.view.ring:
        count -= 1  # the start chain stands over it
    elif count == 1 and _base_of_start(run):
        count = 0
    elif count == 2 and _stands_over_first(run, node) and run.once("skip-with-first", ((0.0, False), (0.25, True))):
        count = 1  # "ch 4, skip 2 sts, dc in next": the first of them is the one that the chain stands on
    begin = run.pos
    for i in range(min(count, MAX_ITEMS)):
        slot = seek(run, STITCH if node.first and node.thing.kind in HEIGHT else node.thing, run.pos)
        if slot is None:
            if run.view.ring:
                return
            raise RunsOut(node.thing.kind, wanted=count, found=i)
        run.pos = max(slot.end, run.pos + (slot.end == slot.start))
    run.skips.append((begin, run.pos))
    if run.view.foundation and not run.worked and run.pos == count:
        run.named["missed"] = count


def _stands_over_first(run: Run, node: Skip) -> bool:
    """Whether a start chain that is a stitch and more stands at the beginning of a row, so that what is passed over may begin below it."""
    chains = run.out.count(CHAIN, 1)
    return bool(run.tch_item) and chains == len(run.out) - 1 > 0 and node.thing.kind in (*STITCHES, *HEIGHT) and not run.view.ring and not run.view.foundation and not run.view.joined


def _base_of_start(run: Run) -> bool:
    """ "3 chain, miss 1, 1 treble in each of the next 10": whether the one missed is that which the chain stands over: so the row comes out."""
    if not run.tch_item or run.inside or run.view.ring or run.view.foundation or run.out.count(CHAIN, 1) != len(run.out) - 1:
        return False
    return run.reserve > 0 and (run.reserve, run.reserve_spaces) == (run.stitches_left(), 0)


def do_join(run: Run, node: Join) -> None:
    """The end of a round. A stitch as join ("dc in first sc") after chains is half a loop."""
    run.joined = True
    if not node.via or node.via == "sl st":
        run.note("join")
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
        run.named["left-free"] = 1
    elif node.what == "marker":
        place_marker(run, node)
    elif node.what == "no-markers":
        run.named["no-markers"] = 1
    elif node.what == "colour":
        run.note("colour", word=node.text)
    elif node.what == "loops":
        run.loop = node.loop
    elif node.what == "skipped-counts":
        run.skipped_said = node.text
    elif node.what == "underside":
        do_underside(run)
    elif node.what == "all-but" and node.n is not None:
        pass_all_but(run, node.n.at(0) or 0)
    elif node.what == "attach" and node.text == "free" and run.named.get("free") and run.worked == 0:
        on_free(run)
    elif node.what == "attach" and node.place is not None and run.worked == 0 and run.view.items and not run.view.foundation and not (run.inside and run.named.get("attached")):
        slots = slots_of(run, node.place)
        if slots and slots[-1].start >= 0:
            run.last = slots[-1]
            run.pos = slots[-1].start
            if not run.named.get("on-free") and not _left_behind(run, slots[-1]):
                move_start(run, slots[-1].start)
                if slots[-1].how == "space" and _chain_in_loop(run.following):
                    run.pos = slots[-1].end  # the loop has its stitch
                run.named["from-gap"] = int(slots[-1].how == "between")
            run.named["attached"] = 1
            run.note("attach", slot=slots[-1])


def _left_behind(run: Run, slot: Slot) -> bool:
    """ "Row 8: Skip first 4 sts, join yarn in next st, sc in each sc": a row does not come round to the stitches that it passed over; the stitch joined in may be taken."""
    if not run.skips or run.in_rounds or run.view.joined or run.view.ring or run.inside or slot.end - slot.start != 1 or slot.end > run.end:
        return False
    run.start, run.left_said, run.named["left-free"] = slot.start, True, 1
    then = next((n for n in run.following if not isinstance(n, Mark) and not (isinstance(n, Chain) and n.n.at(0) == 1)), None)
    each = isinstance(then, Make) and then.place is not None and then.place.quant in ("each", "every") and then.place.n is None
    if each and run.once("joined-in-taken", ((0.0, False), (0.5, True))):
        run.pos = slot.end
    return True


def _chain_in_loop(following: Sequence[Node]) -> bool:
    """ "Join yarn in any loop, ch 9, *dc in next loop, ch 6; rep from * around, join to 3rd ch": whether the chain is the stitch of that loop."""
    lead, then = (following[0], following[1]) if len(following) > 1 else (None, None)
    if not isinstance(lead, Chain) or not isinstance(then, (Make, Repeat)):
        return False
    first = first_stitch((then,))
    if first is None or first[1] is None or first[1].quant != "next" or first[1].thing.kind not in SPACES or (first[1].n.at(0) if first[1].n is not None else 1) != 1 or first[2] != 1:
        return False
    tall, length = HEIGHT.get(plain(first[0])) or 0, lead.n.at(0) or 0
    if isinstance(then, Make):  # "ch 8, sc in next loop, *ch 5, sc in next loop; …": the repeat says what is meant by a loop
        rest = following[2] if len(following) > 2 else None
        again = first_stitch(rest.nodes[1:]) if isinstance(rest, Repeat) and [type(n) for n in rest.nodes] == [Chain, Make] else None
        if again is None or again[1] is None or (again[0], again[1].quant, again[1].thing, again[2]) != (first[0], "next", first[1].thing, 1):
            return False
    return tall > 1 and length >= tall or 0 < (joined_at(following) or length) < length


def pass_all_but(run: Run, many: int) -> None:
    """ "Skip all but last 7 sc": to where the last so many stitches begin. Raises RunsOut where the row has no more than those."""
    ahead = [i for i in range(run.pos, run.end) if run.item(i) != CHAIN]
    if many < 1 or len(ahead) <= many:
        raise RunsOut("st", wanted=many, found=len(ahead))
    run.pos = ahead[-many]


def on_free(run: Run) -> None:
    """The row goes on where an earlier one left stitches free."""
    run.view = plain_row(run.named["free"])
    run.pos, run.start, run.end, run.last = 0, 0, run.named["free"], None
    run.named["on-free"] = 1


def _joins_yarn(following: Sequence[Node]) -> bool:
    """ "skip next 8 sts, join yarn in next st": the yarn is joined anew, behind what was worked before."""
    first = following[0] if following else None
    return isinstance(first, Mark) and first.what == "attach"
