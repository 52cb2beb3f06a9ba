"""Filet: rows told in meshes. A mesh stands over three places of the row below, stitches and chains alike.

Common practice, no source: an open mesh is ch 2, skip 2, dc in the next; a block is dc in each of the three.
"""

from __future__ import annotations

from loopwright.model.tree import Filet, Make, Node, Repeat
from loopwright.working.kinds import CHAIN, HEIGHT, code, plain
from loopwright.working.making import do_make
from loopwright.working.run import CannotWork, Run, RunsOut
from loopwright.working.view import Group, Slot

PLACES = 3
LIMIT = 4000


def do_filet(run: Run, node: Filet) -> None:
    """Works meshes one after the other. Where the pattern means another thing by a block, that is worked."""
    count = node.n.at(0)
    if count is None:
        raise CannotWork("blank")
    if node.filled and ("block" in run.definitions or run.conventions.get("blocks")) or run.view.foundation and not _fits_chain(run, node) or not run.view.items:
        do_make(run, Make("block" if node.filled else "ch-sp", node.n, span=node.span))
        return
    kind = plain(run.main_kind)
    number = code(kind if (HEIGHT.get(kind) or 0) >= PLACES else "dc")
    if run.start_chain is None and not run.worked and not run.out and not run.in_rounds and (run.end - run.pos) % PLACES == 1:
        run.make(number, Slot(run.pos, run.pos + 1))  # the chain that the row begins with, untold
        run.pos += 1
    begun = run.tch_item and run.worked <= 1 and run.out[1:] == bytes((CHAIN,) * (PLACES - 1))  # "5 ch, turn": the first open mesh has its chains
    for i in range(min(count, LIMIT)):
        if run.pos + PLACES > run.end:
            raise RunsOut("mesh", wanted=count, found=i)
        begin = len(run.out)
        if not node.filled and (i or not begun):
            run.chain(PLACES - 1)
        for at in range(run.pos if node.filled else run.pos + PLACES - 1, run.pos + PLACES):
            run.make(number, Slot(at, at + 1, "chain" if run.item(at) == CHAIN else "top"))
        if node.filled:
            run.groups.append(Group(begin, len(run.out), "block"))
        run.pos += PLACES
        run.last = Slot(run.pos - 1, run.pos)
    run.named["meshes"] = run.named.get("meshes", 0) + min(count, LIMIT)


def _fits_chain(run: Run, node: Filet) -> bool:
    """Whether a row of meshes takes up a foundation chain whole: three chains to each, and one for the stitch that it begins with."""
    begun = run.named.get("meshes", 0) if run.worked else 0
    return bool(begun) or run.end - run.pos == PLACES * (_meshes(node) + sum(map(_meshes, run.following))) + 1


def _meshes(node: Node) -> int:
    """How many meshes a node is told to make."""
    if isinstance(node, Filet):
        return node.n.at(0) or 0
    return (node.times.at(0) or 0 if node.times is not None else 0) * sum(map(_meshes, node.nodes)) if isinstance(node, Repeat) else 0
