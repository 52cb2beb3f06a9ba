"""What the words of a row tell of its start chain: how it goes on, how it ends."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Either, Filet, Group, Join, Make, Mark, Node, Repeat, Skip
from loopwright.working.kinds import code, legs, plain
from loopwright.working.run import Run
from loopwright.working.seeking import SPACES
from loopwright.working.view import Slot

MESH_CHAIN = 5  # dc, ch 2


def one_leg_short(following: Sequence[Node]) -> bool:
    """ "ch 3, dc4tog over next 4 sts, *ch 7, dc5tog over next 5 sts": what the row begins with has a leg less than all the others."""
    first = following[0] if following else None
    if not isinstance(first, Make) or (few := _legs(first)) < 2:
        return False
    others = next((n.nodes for n in following if isinstance(n, Repeat)), ())
    return any(_legs(n) == few + 1 for n in others if isinstance(n, Make) and ("tog" in n.kind) == ("tog" in first.kind))


def _legs(node: Make) -> int:
    """Over how many stitches it is worked, where it is one of several legs; 0 where it goes into one place."""
    over = node.place.n.at(0) if node.place is not None and node.place.n is not None and node.place.quant == "next" else None
    many = node.taking or (legs(node.kind) if "tog" in node.kind else 0)
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
    """ "Ch 2, skip first 10 sc": a row that begins with a chain over what is passed; nothing made elsewhere."""
    over = following[0] if following else None
    if run.view.open_end or not (run.in_rounds or run.view.joined) or not isinstance(over, Skip) or not over.first or over.thing.kind in SPACES or (over.n.at(0) or 0) < max(4, length + 1):
        return False
    run.start_chain = (length, "loop")
    run.chain(length)
    return True


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
