"""Rounds of repeats that come back to where they began: what their last repeat shares with the round's first stitch, loop or half loop."""

from __future__ import annotations

from loopwright.model.tree import Chain, Group, Join, Make, Node, Repeat, Skip
from loopwright.working.kinds import CHAIN, CLOSED
from loopwright.working.part_rounds import places_of
from loopwright.working.run import Run
from loopwright.working.seeking import SPACES, view_runs


def ends_in_first(run: Run, node: Repeat) -> bool:
    """ "Sc in same st, (ch 7, skip 2 dc, sc in next dc) 8 times; sl st in first sc": the last sc would go where the first one is, so the slip stitch stands for it."""
    join, last = (run.beyond or (None,))[0], node.nodes[-1]
    if not run.in_rounds or not run.worked or not isinstance(join, Join) or join.via != "sl st" or not isinstance(last, Make) or not any(isinstance(n, Chain) for n in node.nodes):
        return False
    return last.n.at(0) == 1 and last.place is not None and last.place.quant == "next" and last.place.thing.kind not in SPACES and run.stitches_left() == 0


def in_half(run: Run, node: Node) -> bool:
    """ "…, join last ch-9 with sl st in dc", that dc being half of the loop below in which the round begins: no stitch goes into that loop."""
    place = node.place if isinstance(node, Join) or isinstance(node, Make) and node.kind == "sl st" else None
    return run.view.half and not run.inside and place is not None and place.thing.kind in ("hdc", "dc", "tr", "dtr", "trtr") and place.quant == "next"


def sits(run: Run, node: Repeat) -> bool:
    """Whether the last round is worked where the hook has come to: "*(dc, ch 2, sl st) in same st, sl st in next st; rep from * around".

    "Cluster in first loop, *(ch 5, cluster in same loop) 3 times, cluster in next loop; rep from * around": the last loop gets its others too.
    """
    told = [n for one in node.nodes for n in (one.nodes if isinstance(one, Repeat) and one.mode == "times" else (one,))]
    placed = [n for n in told if isinstance(n, (Make, Group)) and n.place is not None]
    first, last = (placed[0], placed[-1]) if len(placed) > 1 else (None, None)
    if first is None or first.place.quant != "same" or not isinstance(last, Make) or last is not node.nodes[-1]:  # type: ignore[union-attr]
        return False
    return last.kind == "sl st" or run.named.get("lead", 0) > 0 and last.kind in CLOSED and last.place is not None and last.place.thing.kind in SPACES and node.ending_mode == "after"


def only_before_start(run: Run, node: Repeat, left: int) -> bool:
    """Whether nothing is left of a round worked into loops but the stitches that lie before the loop in which it was begun."""
    if not places_of(node.nodes) <= {*SPACES} or left < 1 or not run.view.runs or any(run.pos <= s < run.end for s, _ in view_runs(run)):
        return False
    in_closing = run.end < len(run.view.items) == run.view.runs[-1][1] and run.end == run.view.runs[-1][0]  # begun in the loop that closed the round below
    return in_closing or left == sum(1 for i in range(run.start) if run.view.items[i] != CHAIN)


def leads(node: Repeat) -> bool:
    """Whether each round is a chain and a stitch, and the ending but the stitch: the chain stands before that one too."""
    told = [n for n in node.nodes if not isinstance(n, Skip)]
    if node.ending_mode != "with" or len(told) != 2 or len(node.ending) != 1:
        return False
    (chain, stitch), last = told, node.ending[0]
    return isinstance(chain, Chain) and isinstance(stitch, Make) and isinstance(last, Make) and last.kind == stitch.kind and (last.n.at(0) == stitch.n.at(0) or last.place == stitch.place is not None)


def takes_rest(ending: tuple[Node, ...]) -> bool:
    """ "…; rep from * across, ending with dc in each remaining dc": all that the whole rounds leave."""
    place = ending[0].place if ending and isinstance(ending[0], Make) else None
    return place is not None and place.quant == "each" and place.n is None and place.upto is None and place.left is None and place.of is None and place.thing.kind in ("st", "sc", "hdc", "dc", "tr")


def before_its_group(run: Run, spaces: int) -> bool:
    """Whether the one space left lies before the group in whose middle the round began, as one does before each of the others."""
    groups = run.view.index.by_name
    return spaces == 1 and run.in_rounds and run.start > 0 and run.repeats > 1 and any(g.start < run.start < g.end for name in groups if name for g in groups[name])
