"""What the words of a row tell of its start chain: how it goes on, how it ends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import STITCH, Chain, Either, Filet, Group, Join, Make, Mark, Node, Place, Repeat, Skip, Thing
from loopwright.working.kinds import HEIGHT, code, legs, plain
from loopwright.working.run import Run
from loopwright.working.seeking import SPACES, STITCHES
from loopwright.working.view import Slot

MESH_CHAIN = 5  # dc, ch 2


def one_leg_short(following: Sequence[Node]) -> bool:
    """ "ch 3, dc4tog over next 4 sts, *ch 7, dc5tog over next 5 sts": what the row begins with has a leg less than all the others."""
    first = following[0] if following else None
    first = first.nodes[0] if isinstance(first, Repeat) and first.mode == "once" else first  # "dc2tog over next dc and ch-2 sp"
    if not isinstance(first, Make) or (few := _legs(first)) < 2:
        return False
    others = next((n.nodes for n in following if isinstance(n, Repeat) and n.mode != "once"), ())
    begun = [n.nodes[0] if isinstance(n, Repeat) and n.mode == "once" else n for n in others]
    return any(_legs(n) == few + 1 for n in begun if isinstance(n, Make) and ("tog" in n.kind) == ("tog" in first.kind))


def _legs(node: Make) -> int:
    """Of how many legs it is, over stitches or in one space; 0 elsewhere."""
    over = node.place.n.at(0) if node.place is not None and node.place.n is not None and node.place.quant == "next" else None
    many = legs(node.kind) if "tog" in node.kind else node.taking or 0
    if node.place is not None and node.place.thing.kind in (*SPACES, "ring") and not node.taking:  # "ch 3, dc2tog in ring, *ch 3, dc3tog in ring"
        return many or node.parts or 0
    return many if many > 1 and (node.place is None or over == many) else 0


def into_turning_chain(nodes: Sequence[Node]) -> str:
    """The stitch that a row ends with, where it goes into the turning chain of the row below; "" where it does not."""
    for node in reversed(nodes):
        if isinstance(node, Make):
            return plain(node.kind) if node.place is not None and "tch" in (node.place.thing.kind, node.place.of and node.place.of.kind) else ""
        counted = isinstance(node, Either) and not node.readings[0][1]  # a count, or so many more
        if not counted and not isinstance(node, (Mark, Join)):
            return ""
    return ""


def on_to_turning_chain(nodes: Sequence[Node]) -> bool:
    """Whether the next stitch goes into the turning chain of the row below: "…, ch 1, dc in top of turning ch"."""
    after = next((n for n in nodes if not isinstance(n, (Chain, Skip, Mark))), None)
    if not isinstance(after, Make) or after.place is None:
        return False
    return "tch" in (after.place.thing.kind, after.place.of and after.place.of.kind) or after.place.quant == "kth" and after.place.thing.kind == "ch"


def of_spaces_to_turning_chain(nodes: Sequence[Node], length: int) -> bool:
    """Whether a row goes from space to space and ends in the one of the turning chain: "*ch 1, sk 1, sc in next ch-1 sp; rep from *, sc in turning ch sp".

    `length`: chains of its own turning chain, which a space of so many is ("ending with sc in ch-2 sp").
    """
    at = next((i for i in range(len(nodes) - 1, -1, -1) if isinstance(nodes[i], Repeat)), len(nodes))
    repeat = nodes[at] if at < len(nodes) else None
    if not isinstance(repeat, Repeat) or not any(isinstance(n, Make) and n.place is not None and n.place.thing.kind in SPACES for n in repeat.nodes):
        return False
    ending = repeat.ending or tuple(nodes[at + 1 :])
    last = ending[-1] if ending else None
    place = last.place if isinstance(last, Make) else None
    return into_turning_chain(ending) != "" or place is not None and place.thing.kind in SPACES and (place.thing.length == length or place.quant == "last")


def pair_at_end(nodes: Sequence[Node]) -> bool:
    """Whether a row ends with two of a stitch in its last place."""
    last = next((n for n in reversed(nodes) if isinstance(n, (Make, Group, Repeat))), None)
    if isinstance(last, Repeat):
        return pair_at_end(last.ending)
    place = last.place if isinstance(last, Make) else None
    return isinstance(last, Make) and last.n.at(0) == 2 and place is not None and (place.quant == "last" or place.thing.kind == "tch" or place.of is not None)


def bridged(run: Run, length: int, following: Sequence[Node]) -> bool:
    """ "Ch 2, skip first 10 sc", "ch 5, skip 5 sts for thumb, sc in each st": a row that begins with a chain over what is passed; nothing made elsewhere."""
    over = following[0] if following else None
    told = isinstance(over, Skip) and (over.first and (over.n.at(0) or 0) >= max(4, length + 1) or _all_others(over, length, following[1:]))
    if run.view.open_end or not (run.in_rounds or run.view.joined) or not isinstance(over, Skip) or not told or over.thing.kind in SPACES:
        return False
    run.start_chain = (length, "loop")
    run.chain(length)
    return True


def _all_others(over: Skip, length: int, following: Sequence[Node]) -> bool:
    """Whether so many stitches are passed over as a chain is long, and all the others are worked into."""
    many, after = over.n.at(0) or 0, next((n for n in following if not isinstance(n, Mark)), None)
    place = after.place if isinstance(after, Make) else None
    return many > 3 and abs(many - length) < 3 and over.thing.kind in STITCHES and place is not None and place.quant == "each" and place.n is None


def mesh_begun(run: Run, length: int, following: Sequence[Node]) -> bool:
    """ "Ch 5, turn, 8 sps": the row's first stitch and the chain of its first open mesh; nothing made elsewhere."""
    first = next((n for n in following if not isinstance(n, Mark)), None)
    if length != MESH_CHAIN or not isinstance(first, Filet) or first.filled or run.view.open_end or run.pos >= run.end:
        return False
    slot = Slot(run.pos, run.pos + 1)
    run.start_chain, run.last, run.pos = (3, "dc"), slot, run.pos + 1
    run.note("stands", 3)
    run.make(code("dc"), slot)
    run.tch_item, run.tch_length = True, 3
    return True


def spaced(nodes: Sequence[Node]) -> int:
    """Chains between the stitches that follow: 2 of "ch 5, *dc in next st, ch 2", where the ch 5 is such a stitch and its chains."""
    first = next((n for n in nodes if not isinstance(n, Mark)), None)
    inner = first.nodes if isinstance(first, Repeat) else nodes
    made = next((i for i, n in enumerate(inner) if not isinstance(n, Mark)), None)
    if made is None or made + 1 >= len(inner) or not isinstance(inner[made], Make):
        return 0
    then = inner[made + 1]
    return (then.n.at(0) or 0) if isinstance(then, Chain) else 0


def joined_at(nodes: Sequence[Node]) -> int | None:
    """The chain of the start chain that the round's end is joined to: k of "join in 3rd st of ch", 0 for its top; None when unsaid."""
    for node in reversed(nodes):
        if isinstance(node, Repeat) and isinstance(node.ending[-1] if node.ending else None, Join):
            return joined_at(node.ending)  # "…, ending with 2 dc in first sp, join in top of ch"
        if isinstance(node, Join):
            place = node.place
            if place is None or place.thing.kind in HEIGHT:
                return None
            if place.quant == "kth" and place.k and (place.of is not None or place.thing.kind == "ch"):
                return place.k
            if place.thing.kind == "tch" or place.thing.kind in ("sp", "ch") and place.quant in ("next", "last"):
                return 0
            return None
    return None


def from_second(run: Run, place: Place | None) -> bool:
    """Whether the first stitch goes into the second one of the row below, "ch 2, dc in 2nd st": the chain stands over the first."""
    return place is not None and place.quant == "kth" and place.k == 2 and place.of is None and not place.from_hook and not run.view.foundation and not run.view.ring


MORE = 4  # no more chains turn a row


def only_turns(length: int, following: Sequence[Node]) -> bool:
    """ "Ch 31, ch 1 more, sl st in each ch across": whether chains behind the foundation only turn, as each chain from the next on is worked into."""
    first = following[0] if following else None
    place = first.place if isinstance(first, Make) else None
    return length < MORE and place is not None and place.quant == "each" and not place.from_hook


def told_to_count(run: Run, length: int, tall: int) -> bool | None:
    """Whether the words before the rows say that such a chain counts; None where they do not, or mean one for lower stitches."""
    of_length = run.conventions.get(f"told-ch-{length}")
    told = run.conventions.get("told-ch") if of_length is None else of_length
    return bool(told) if told is not None and length <= tall + (of_length is not None and length == 2) else None


def joined_past(nodes: Sequence[Node], kind: str) -> bool:
    """Whether the round is joined to the first stitch of that kind, past its start chain: so the chain is none."""
    last = next((n for n in reversed(nodes) if isinstance(n, Join) and n.place is not None), None)
    return last is not None and last.place is not None and last.place.quant == "first" and last.place.thing.kind == kind and last.place.of is None


EVEN_RING = 6  # stitches


def whole_ring(nodes: Sequence[Node], place: Place | None, many: int) -> bool:
    """ "Ch 2, 12 dc in ring": a start chain that counts makes them one more, and odd (common practice, no source)."""
    alone = sum(isinstance(n, (Make, Group, Repeat)) for n in nodes) == 1
    return alone and place is not None and place.thing.kind == "ring" and many >= EVEN_RING and many % 2 == 0


def on_chain(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """ "Dc in 4th, dc in each" on a chain: in the 4th from the hook."""
    first = nodes[0] if nodes else None
    if isinstance(first, Repeat) and first.mode == "once":
        return (replace(first, nodes=on_chain(first.nodes)), *nodes[1:])
    place = first.place if isinstance(first, Make) else None
    if not isinstance(first, Make) or place is None or place.quant != "kth" or place.thing != STITCH or place.of is not None or place.from_hook or (place.k or 0) < 2:
        return nodes
    return (replace(first, place=replace(place, thing=Thing("ch"), from_hook=True)), *nodes[1:])


def without_one(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """ "…, ch 1, turn. Sl st into loop, ch 3, dc in same loop": the ch 1 only turns the work, and the row begins with the other chain; the row as it is elsewhere."""
    told = [n for n in body if not isinstance(n, Mark)]
    if not told or not isinstance(told[0], Chain) or told[0].n.at(0) != 1 or told[0].counts != "unsaid":
        return body
    at = 1
    while at < len(told) and isinstance(slip := told[at], Make) and slip.kind == "sl st":
        at += 1
    chain, last = told[at] if at < len(told) else None, told[at - 1]
    where = last.place if isinstance(last, Make) else None
    into = where is not None and (where.centre or where.thing.kind in SPACES or where.thing.kind in ("shell", "fan", "group"))
    if at == 1 or not into or not isinstance(chain, Chain) or not 1 < (chain.n.at(0) or 0) < 6:
        return body
    return tuple(n for n in body if n is not told[0])
