"""Starts: foundation chains, rings, the chain that stands for a stitch, the chains skipped in the first row."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import (
    AtEnds,
    Chain,
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
    Place,
    Repeat,
    Ring,
    Skip,
)
from loopwright.working.kinds import CHAIN, CLOSED, HEIGHT, code, plain
from loopwright.working.leads import (
    bridged,
    from_second,
    into_turning_chain,
    joined_at,
    joined_past,
    mesh_begun,
    of_spaces_to_turning_chain,
    one_leg_short,
    only_turns,
    pair_at_end,
    spaced,
    told_to_count,
    whole_ring,
)
from loopwright.working.run import CannotWork, Run
from loopwright.working.seeking import SPACES
from loopwright.working.view import Slot, foundation, ring

MAX_CHAIN = 20_000


def do_ring(run: Run, node: Ring) -> None:
    """A magic ring, or the chain so far joined into one."""
    if run.out and not node.magic:
        run.joined = run.in_rounds = True  # stitches made without a chain, joined into a round
        return
    chains = 0 if node.magic else len(run.view.items) if run.view.foundation else 0
    run.view = ring(chains)
    run.pos = run.start = 0
    run.end = len(run.view.items)
    run.last = Slot(0, run.end, "ring")
    run.out.clear()
    run.into.clear()
    del run.origins[:], run.tape[:]
    run.runs.clear()
    run.start_chain = None
    run.in_rounds = True


def do_chain(run: Run, node: Chain, following: Sequence[Node]) -> None:
    """A chain: a foundation where there is no fabric, a start chain at the head of a row, else chains in the row."""
    length = node.n.at(0)
    if length is None:
        raise CannotWork("blank")
    length += node.plus
    if length > MAX_CHAIN:
        raise CannotWork("too-many", limit=MAX_CHAIN)
    if length <= 0:
        return
    nothing = not run.view.items and not run.view.ring and not run.view.open_end
    if nothing and run.worked == 0 and run.start_chain is None:
        run.view = foundation(length)
        run.pos, run.end = 0, length
        run.start_chain = (0, "foundation")
        return
    if run.worked == 0 and not run.out and run.start_chain is None and not run.view.foundation:
        first = first_stitch(following)
        if first is not None and first[1] is not None and first[1].from_hook and 1 < (first[1].k or 1) <= length:
            run.chain(length)  # the row goes on beyond its edge: the chain is a base of its own
            run.start_chain = (0, "base")
            return
        if run.conventions.get("blocks") and run.last is not None and run.last.how == "space":
            run.chain(length)  # a block from corner to corner begins with its own chains
            run.start_chain = (length, "loop")
            run.named["own-blocks"] = 1
            return
        if run.inside and side_of_petal(run, length, following) or node.counts == "unsaid" and bridged(run, length, following) or node.counts != "no" and mesh_begun(run, length, following):
            return
        if run.inside and (_to_ring(length, following) if run.view.ring else first is None or length > 1 and _over_one(following)):
            _loop(run, length, first)  # "*ch 3, sk 1, sl st in next": the chain of a repeat is a loop
            return
        start_chain(run, node, length, following)
        return
    if run.view.foundation and run.worked == 0 and run.pos == 0 and run.start_chain == (0, "foundation") and (_turning(following) or only_turns(length, following)):
        run.start_chain = (length, "foundation-turn")
        return
    run.chain(length)


def _to_ring(length: int, following: Sequence[Node]) -> bool:
    """ "(Ch 4, sl st in ring) 6 times": whether a chain goes back to the ring with nothing beside it."""
    only = following[0] if len(following) == 1 else None
    return length > 2 and isinstance(only, Make) and only.kind == "sl st" and only.place is not None and only.place.thing.kind == "ring"


def _over_one(following: Sequence[Node]) -> bool:
    """ "*ch 2, skip 1 st, sc in next st": whether the chain of a repeat goes over stitches to a single, and so is a loop however short."""
    skip, then = (following[0], following[1]) if len(following) > 1 else (None, None)
    return isinstance(skip, Skip) and not skip.first and isinstance(then, Make) and plain(then.kind) == "sc"


def side_of_petal(run: Run, length: int, following: Sequence[Node]) -> bool:
    """ "(ch 3, 3 dc, ch 3, sl st) in ring": such a chain is one side of a petal, and is made; False where the words are others."""
    last = following[-1] if following else None
    if isinstance(last, Either):  # "2 dc, ch 2, sl st in ring": all in one place or not, it ends alike
        following = [*following[:-1], *last.readings[0][1]]
        last = following[-1] if following else None
    if isinstance(last, Group) and last.nodes:
        following = [*following[:-1], *last.nodes]
        last = following[-1]
    slipped = isinstance(last, Make) and last.kind == "sl st" or isinstance(last, Join) and last.via == "sl st"
    if not slipped or not any(isinstance(n, Chain) and (n.n.at(0) or 0) > 1 for n in following):
        return False
    run.start_chain = (length, "loop")
    run.chain(length)
    return True


def _turning(following: Sequence[Node]) -> bool:
    """A short chain after the foundation that only turns: "ch 20. Ch 1, turn"."""
    return bool(following) and isinstance(following[0], Mark) and following[0].what == "turn"


def first_stitch(nodes: Sequence[Node]) -> tuple[str, Place | None, int] | None:
    """Kind, place and number of the first stitch that nodes make."""
    for node in nodes:
        if isinstance(node, Make) and node.kind != "sl st":
            return node.kind, node.place, node.n.at(0) or 1
        if isinstance(node, Group):
            inner = first_stitch(node.nodes)
            if inner:
                return inner[0], node.place, 2
        if isinstance(node, Repeat):
            inner = first_stitch(node.nodes)
            if inner:
                return inner
        if isinstance(node, InTurn):
            return first_stitch(node.parts)
        if isinstance(node, Either):
            inner = first_stitch(node.readings[0][1])
            if inner:
                return inner
        if isinstance(node, (Evenly, EveryKth, AtEnds)):
            return node.kind or "", None, 1
        if isinstance(node, (Chain, Join)):
            return None
    return None


def start_chain(run: Run, node: Chain, length: int, following: Sequence[Node]) -> None:
    """The chain at the head of a row: a stitch, nothing, a loop, or a stitch and a space. Decided once per pattern."""
    first = first_stitch(following)
    kind = plain(first[0]) if first else ""
    if kind in ("inc", "dec", "invdec", "st", "*same*", ""):
        kind = plain(run.main_kind)
    join = joined_at(following)
    if kind not in HEIGHT and join in (0, length) and length in _BY_HEIGHT:
        kind = _BY_HEIGHT[length]  # before a popcorn or a cluster, and joined to: a stitch as tall as the chain
    as_kind = node.as_kind or kind
    if kind not in HEIGHT and _BY_HEIGHT.get(length) is not None and into_turning_chain(following) == _BY_HEIGHT[length]:
        kind = _BY_HEIGHT[length]  # before a shell or a V, in rows that end on the turning chain: it is a stitch there
    if node.counts == "part" or node.counts == "unsaid" and one_leg_short(following):
        run.start_chain, run.tch_length = (length, "none"), length  # it is the first leg of the cluster, over the first stitch
        run.note("turning", length)
        if run.view.ring:
            run.last = Slot(0, run.end, "ring")
        elif run.last is None or not (run.slipped or run.last.how in ("space", "between")):
            run.last = Slot(run.pos, run.pos + 1)
            run.pos += 1
        return
    reading = _begun(run, node, length, kind) or _reading(run, node, length, kind, first, join)
    if run.inside and length > 4 and isinstance(reading, tuple):
        reading = "loop"  # the repeat's own chain, not one for the row's height
    if isinstance(reading, tuple):
        spaces, as_kind = reading[1], reading[2]
        _stand(run, as_kind, length - spaces, first[1] if first is not None else None)
        if spaces:
            run.chain(spaces)
    elif reading == "loop":
        _loop(run, length, first)
    else:
        run.tch_length = length
        run.start_chain = (length, "none")
        run.note("turning", length)
        if run.last is None and not run.view.ring:
            run.last = Slot(run.pos, run.pos + 1)


def start_in_group(run: Run, node: Chain, length: int, following: Sequence[Node], slot: Slot) -> None:
    """The start chain inside a group: "(ch 3, 2 dc, ch 2, 3 dc) in same sp" stands as the first stitch in that place."""
    first = first_stitch(following)
    kind = plain(first[0]) if first and first[0] else plain(run.main_kind)
    reading = "loop" if run.conventions.get("blocks") and slot.how == "space" else _reading(run, node, length, kind, first, joined_at(run.following))
    if isinstance(reading, tuple):
        spaces, as_kind = reading[1], reading[2]
        run.start_chain, run.last = (length - spaces, as_kind), slot
        run.note("stands", length - spaces)
        run.make(code(as_kind if as_kind in HEIGHT else "dc"), slot)
        run.tch_item, run.tch_length = True, length - spaces
        if spaces:
            run.chain(spaces)
    elif reading == "loop":
        run.start_chain = (length, "loop")
        run.chain(length)
    else:
        run.start_chain, run.tch_length = (length, "none"), length
        run.note("turning", length)


def _begun(run: Run, node: Chain, length: int, kind: str) -> object:
    """What a start chain is by what follows it: a mesh of filet, or a stitch that is passed over; None where that tells nothing."""
    if node.counts != "unsaid" or length not in _BY_HEIGHT:
        return None
    if length == 5 and any(isinstance(n, Filet) for n in run.following[:1]):
        return run.convention("start-5-mesh", ((0.0, ("st", 2, "dc")), (0.6, "loop")))  # the first mesh of the row is begun with it
    if kind == "sc" and length > 2 and _passes_first(run.following):
        return run.convention(f"start-{length}-passed", ((0.0, ("st", 0, _BY_HEIGHT[length])), (0.8, "loop"), (1.0, "none")))
    return None


def _passes_first(nodes: Sequence[Node]) -> bool:
    """Whether the stitch below the start chain is passed over, "3 ch, miss first dc, …": so the chain stands for it."""
    first = next((n for n in nodes if not isinstance(n, (Chain, Mark))), None)
    return isinstance(first, Skip) and first.first and first.n.at(0) == 1


_BY_HEIGHT = {3: "dc", 4: "tr", 5: "dtr", 2: "hdc"}


def _reading(run: Run, node: Chain, length: int, kind: str, first: tuple[str, Place | None, int] | None, join: int | None = None) -> object:
    tall = HEIGHT.get(kind, 0)
    as_kind = node.as_kind or (kind if tall else "dc")
    if node.counts == "unsaid" and join and 1 < join < length and join in _BY_HEIGHT:
        return run.choose(f"joined-{join}-{length}", ((0.0, ("st", length - join, _BY_HEIGHT[join])), (1.8, "loop")))
    if node.counts == "unsaid" and join is not None and join in (0, length) and tall > 1 and length >= tall - 1:
        return _joined(run, length, kind, tall, join, first)
    if node.counts == "yes":
        spaces = max(0, length - (HEIGHT.get(as_kind) or length)) if node.as_kind else max(0, length - tall) if tall > 1 else 0
        return _counts_on(run, length, kind, ("st", max(0, spaces), as_kind))
    if node.counts == "part":
        return "none"
    told = told_to_count(run, length, tall) if node.counts == "unsaid" and first is not None and tall else None
    if told is not None:
        return ("st", 0, kind) if told else "none"
    if node.counts == "no":
        run.conventions.setdefault(f"start-{length}-{kind}", "none")  # what is said of it once holds further on
        return "none"
    if first is None and length <= 2:
        return "none"
    if first is None:
        by_height = next((k for k, h in HEIGHT.items() if h == length and k in ("dc", "tr", "dtr")), None)
        if length >= 5:
            return run.convention(f"loop-{length}", ((0.0, "loop"), (0.6, ("st", 2, "dc")), (0.9, ("st", 1, "tr"))))
        return run.convention(f"start-{length}", ((0.0, ("st", 0, by_height)), (0.6, "loop"))) if by_height else "loop"
    if length == 1 and join == 0 and run.in_rounds and first[1] is not None and first[1].quant == "same":
        return run.convention("start-1-joined", ((0.0, "none"), (0.4, ("st", 0, kind))))  # "ch 1, sc in same st, …, join to ch 1"
    if length == 1:
        return run.convention("start-1", ((0.0, "none"), (5.0, ("st", 0, kind))))
    if kind == "sc" and length > 1:
        if length == 2 and of_spaces_to_turning_chain(run.following, length):
            return run.convention("start-2-sc", ((0.0, "loop"), (0.4, "none"), (0.9, ("st", 0, "sc"))))
        if length == 2:
            return run.convention("start-2-sc", ((0.0, "none"), (0.9, ("st", 0, "sc")), (1.2, "loop")))
        return run.convention(f"start-{length}-sc", ((0.0, "loop"), (1.0, "none"), (1.2, ("st", 0, "dc")), (1.5, ("st", length - 1, "sc"))))
    if not tall:
        return _before_a_shape(run, length, kind, first[1])
    return _by_height(run, length, kind, tall, first)


def _joined_at_top(run: Run, length: int, kind: str, extra: int) -> object:
    """A start chain longer than the stitches, joined at its top: as tall as it is long, or such a stitch with the chains that the others have."""
    whole, part = (0.3, 0.0) if spaced(run.following) == extra else (0.0, 0.3)
    return run.convention(f"start-{length}-{kind}-joined", ((whole, ("st", 0, _BY_HEIGHT[length])), (part, ("st", extra, kind)), (1.0, "none")))


def _joined(run: Run, length: int, kind: str, tall: int, join: int, first: tuple[str, Place | None, int] | None) -> object:
    """What a start chain is that the round is joined to: a stitch, as far as one can tell."""
    extra = max(0, length - tall) if join == 0 else 0
    if extra and length in _BY_HEIGHT:
        return _joined_at_top(run, length, kind, extra)
    return run.convention(f"start-{length}-{kind}-joined", ((0.0, ("st", extra, kind)), (2.5 if join else 1.8 if first is not None and first[1] is not None and first[1].quant == "same" else 1.0, "none")))


def _before_a_shape(run: Run, length: int, kind: str, place: Place | None) -> object:
    """A start chain before what has no height of its own, a popcorn or a shell."""
    onward = place is not None and place.quant == "next"
    if length in _BY_HEIGHT and length > 3 and onward and run.in_rounds:
        return run.convention(f"start-{length}-{kind}", ((0.1, ("st", 0, _BY_HEIGHT[length])), (0.3, "none"), (0.8, "loop")))
    if length > 4 and kind in CLOSED and not run.in_rounds and place is not None and place.thing.kind in SPACES:  # "ch 6, turn; cluster in first loop, ch 3, cluster in next loop"
        return run.convention(f"start-{length}-{kind}", ((0.1, ("st", length - 3, "dc")), (0.2, "none"), (0.3, ("st", 0, "dc")), (0.8, "loop")))
    if onward and _stands_before(run, length):
        return run.convention(f"start-{length}-{kind}", ((0.1, ("st", 0, _BY_HEIGHT[length])), (0.2, "none"), (0.8, "loop")))
    return run.convention(f"start-{length}-{kind}", ((0.2, "none"), (0.3, ("st", 0, "dc")), (0.8, "loop")))


def _stands_before(run: Run, length: int) -> bool:
    """Whether such a chain was a stitch in this text before stitches as tall as it is: so it is before a popcorn."""
    key = f"start-{length}-{_BY_HEIGHT.get(length, '')}"
    return any(isinstance(run.conventions.get(k), tuple) for k in (key, f"{key}-joined"))


def _counts_on(run: Run, length: int, kind: str, reading: tuple[str, int, str]) -> object:
    """A chain told to count as a stitch counts in later rows too."""
    called = "start-1" if length == 1 else f"start-{length}-{kind}"
    if not reading[1] and called not in run.conventions:
        run.conventions[called] = reading
    return reading


def _by_height(run: Run, length: int, kind: str, tall: int, first: tuple[str, Place | None, int]) -> object:
    place = first[1]
    if (length == tall if kind == "hdc" else length == tall - 1) and joined_past(run.following, kind):
        return run.convention(f"start-{length}-{kind}-passed", ((0.0, "none"), (0.5, ("st", 0, kind))))
    single_first = place is not None and place.quant in ("first", "same") and first[2] == 1 and not run.view.ring
    if single_first and length == tall and place is not None and place.quant == "first" and pair_at_end(run.following):
        return run.convention(f"start-{length}-{kind}", ((0.0, ("st", 0, kind)), (0.3, "none")))  # both ends increase
    yes, no = 0.0, 1.0
    if length == tall - 1 or kind == "hdc":
        yes, no = 0.3, 0.3
    if place is not None and place.quant == "first" and first[2] == 1 and place.thing.kind not in SPACES:
        yes, no = yes + 0.8, max(0.0, no - 0.6)
    if single_first and length < tall:
        no = 0.0
    if (length < tall or not run.view.items) and whole_ring(run.following, place, first[2]):
        yes, no = max(yes, no + 0.4), 0.0
    if tall > 1 and length >= tall - 1 and (_passes_first(run.following) or from_second(run, place)):
        yes, no = 0.0, max(no, 1.0)  # it stands over the stitch that is passed over
    st = ("st", 0, kind)
    if length < tall - 1:
        return run.convention(f"start-{length}-{kind}", ((0.2, "none"), (0.5, st)))
    if length <= tall:
        return run.convention(f"start-{length}-{kind}", ((yes, st), (no, "none"), (1.6, "loop")))
    extra = length - tall
    return run.convention(
        f"start-{length}-{kind}",
        ((0.0, ("st", extra, kind)), (0.5, "loop"), (0.6, st), (0.9, "none"), (0.8, ("st", length - 3, "dc")) if length > 3 and kind != "dc" else (1.4, "none")),
    )


def _stand(run: Run, kind: str, length: int, first: Place | None = None) -> None:
    """The start chain as a stitch over the first place, or in the ring, or in the space where the yarn is; `first`: where the next one goes."""
    at: Slot | None
    run.start_chain = (length, kind)
    if run.view.ring and run.view.items and first is not None and first.thing.kind in ("ch", "st") and _over_first(run, first):
        at = Slot(run.pos, run.pos + 1)  # all round a chain that was joined, it stands on the first of it
        run.pos += 1
    elif run.view.ring:
        at = Slot(0, len(run.view.items), "ring")
    elif run.last is not None and run.last.how in ("space", "between") or run.slipped and run.last is not None:
        at = run.last
    elif run.view.open_end or run.pos < run.end:
        if not run.view.open_end:
            while run.pos < run.end - 1 and run.item(run.pos) == CHAIN:
                run.pos += 1
        at = Slot(run.pos, run.pos + 1)
        run.pos += 1
    else:
        at = None
    run.last = at
    run.note("stands", length)
    run.make(code(kind if kind in HEIGHT else "dc"), at)
    run.tch_item = True
    run.tch_length = length


def _over_first(run: Run, first: Place) -> bool:
    return bool(first.quant in ("next", "same") or first.quant == "each" and run.once("stands-on-ring", ((0.0, True), (0.4, False))))


def _loop(run: Run, length: int, first: tuple[str, Place | None, int] | None) -> None:
    """The start chain as an ordinary loop from the join."""
    run.start_chain = (length, "loop")
    if not run.view.ring and run.pos < run.end:
        run.last = Slot(run.pos, run.pos + 1)
        in_stitch = first is None or first[1] is None or first[1].thing.kind not in SPACES
        if in_stitch and not run.skips and not run.named.get("attached"):  # behind stitches missed it is a bridge over them
            passed = run.once("loop-start", ((0.0, 1), (0.3, 0)))
            run.pos += passed
            if passed and run.inside and (run.in_rounds or run.view.joined) and not run.view.open_end and not run.named.get("came-back"):
                run.end += 1  # a round of loops comes back to the stitch it began from
                run.named["came-back"] = 1
    run.chain(length)


