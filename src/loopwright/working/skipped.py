"""The chains skipped in the first row, and whether they count as a stitch."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Chain, Make, Mark, Node, Repeat, Skip
from loopwright.working.kinds import code, height, plain
from loopwright.working.run import Run
from loopwright.working.view import Slot

_OF_DC = frozenset(("v-st", "shell", "fan"))  # what they are made of where nobody told; common practice, no source


def skip_foundation(run: Run, kind: str, said: int | None, mesh: bool = True, *, whole: bool = False) -> None:
    """The chains before the first stitch of the first row; whether they count as one is a convention.

    `mesh`: more chains than the stitch is tall may be a stitch and a space; before a group they are a stitch and chains passed over.
    `whole`: only the stitch is named, for the whole row ("1st row. Treble."): old books work it into every chain, and cut the thread at the row's end.
    `said` is the k of "kth ch from hook"; None: custom or the count tells where the first stitch goes.
    """
    kind = "dc" if kind in _OF_DC else kind
    tall = max(height(kind) or 1, height(run.main_kind) or 1 if said is not None else 0)
    if said is None:
        turned = run.start_chain is not None and run.start_chain[1] == "foundation-turn"
        if turned:
            return
        options = [(0.0, 0), (0.3, tall)] if whole else [(0.0, tall), (0.5, 0), (0.7, max(0, tall - 1))]
        skipped = run.choose("first-chain", tuple(options))
        run.pos = min(skipped, run.end)
    else:
        skipped = said - 1
    if skipped == tall == 1 and said is not None and (run.skipped_said == "yes" or run.conventions.get("one-counts")):
        _skip_one(run)
    if skipped == 1 < tall and run.skipped_said == "yes":
        _first_made(run, kind, tall)  # "hdc in 2nd ch from hook (the skipped ch counts as hdc)"
    if skipped >= 2 and tall == 1:
        _skip_two(run, skipped)
    if skipped >= 2 and tall >= 2:
        extra = skipped - tall
        options2: list[tuple[float, object]] = [(0.0, "no")] if skipped < tall else [(0.6, "no"), (0.4, "yes")] if tall >= 3 else [(0.2, "no"), (0.4, "yes")]
        if skipped < tall:
            options2.append((0.7, "yes"))
        if tall == skipped == 3 and len(run.view.items) <= 7 and said is not None:
            options2.append((0.45, "loop"))  # the first block of a piece worked from corner to corner
        gap = gap_after(run.following) or run.named.get("gap", 0) if mesh else 0
        squares = gap > 0 and extra == 2 * gap  # half of what is beyond the stitch lies below the first space
        if extra > 0:
            space = gap if squares else extra
            options2 = [(0.3, "no"), (0.2, ("space", space)), (0.8, "yes")] if mesh else [(0.4, "no"), (0.5, ("space", extra)), (0.2, "yes")]
        reading = _with_space(run, extra, gap) or run.skipped_said.split()[0] if run.skipped_said else run.convention(f"skipped-{skipped}-{plain(kind)}", tuple(options2))
        if reading == "yes" and squares and run.skipped_said:
            reading = ("space", gap)
        if run.skipped_said:
            run.conventions[f"skipped-{skipped}-{plain(kind)}"] = reading
        if reading == "loop":
            run.chain(skipped)
            run.named["own-blocks"] = 1
        elif reading != "no":
            run.note("skipped", skipped, first=int(reading[1]) if isinstance(reading, tuple) else 0)
            run.make(code(plain(kind)), Slot(run.pos - 1, run.pos))
            run.tch_item = True
            run.tch_length = tall
            if isinstance(reading, tuple):
                run.chain(int(reading[1]))


def _skip_one(run: Run) -> None:
    """One chain skipped before a single crochet, where later rows say that a chain stands for the first of them: it may be one here too."""
    if (run.skipped_said or run.convention("skipped-1-sc", ((0.0, "no"), (0.6, "yes")))) == "yes":
        _first_made(run, "sc", 1)


def _with_space(run: Run, extra: int, gap: int) -> tuple[str, int] | None:
    """The stitch and the space that the chains skipped are told to be; None where none is told, or none is left for it."""
    told = int(run.skipped_said.split()[1]) if run.skipped_said.startswith("space ") else 0
    return ("space", told) if 0 < told <= extra or 0 < told == gap else None


def _first_made(run: Run, kind: str, tall: int) -> None:
    """The one chain skipped is the first stitch."""
    run.note("skipped", 1)
    run.make(code(plain(kind)), Slot(run.pos - 1, run.pos))
    run.tch_item = True
    run.tch_length = tall


def _skip_two(run: Run, skipped: int) -> None:
    """Two and more chains skipped before a single crochet: chains to turn with, a loop at the edge, or, as in older British patterns, a stitch."""
    tall = _AS_TALL.get(skipped, "sc")
    options: tuple[tuple[float, str], ...] = ((0.0, "no"), (0.7, "loop"), *(((0.8, "yes"),) if skipped == 2 else ()))
    if tall != "sc" and _takes_turns(run, tall):
        options = ((0.0, "yes"), (0.5, "no"))
    elif skipped >= _gap_passed(run.following) + _SIDE > _SIDE:
        options = ((0.0, "loop"), (0.6, "no"))
    reading = "loop" if run.skipped_said.startswith("space") else run.skipped_said or run.convention(f"skipped-{skipped}-sc", options)
    if reading == "loop":
        loop, below = _loop_ahead(run.following), _gap_passed(run.following) + 1
        run.chain(loop if below > 1 and skipped == below + loop else skipped)  # what lies below it and at its end is of the edge
        return
    run.tch_length = skipped
    if reading == "yes":
        run.note("skipped", skipped)
        run.make(code(tall), Slot(run.pos - 1, run.pos))
        run.tch_item = True
    else:
        run.note("passed", skipped)


_AS_TALL = {3: "dc", 4: "tr"}
_SIDE = 5  # chains more than lie below a loop: they are its side, and it is the first of the loops


def _gap_passed(nodes: Sequence[Node]) -> int:
    """Chains passed over below each loop, "sc in 10th ch, *ch 4, skip 3 ch, sc in next ch; …": 3; 0 where no such loops come next."""
    told = nodes[0].nodes if nodes and isinstance(nodes[0], Repeat) else nodes[:3]
    if len(told) != 3 or not isinstance(told[0], Chain) or not isinstance(told[1], Skip) or not isinstance(told[2], Make):
        return 0
    return (told[1].n.at(0) or 0) if (told[0].n.at(0) or 0) > 2 and plain(told[2].kind) == "sc" else 0


def _loop_ahead(nodes: Sequence[Node]) -> int:
    """Chains of the loops that come next; 0 where none do."""
    told = nodes[0].nodes if nodes and isinstance(nodes[0], Repeat) else nodes[:1]
    return (told[0].n.at(0) or 0) if told and isinstance(told[0], Chain) else 0


def _takes_turns(run: Run, tall: str) -> bool:
    """ "Sc in 4th ch from hook, *dc in next ch, sc in next ch; rep from * across": whether such stitches and singles take turns, so that the chains skipped are the first."""
    first = run.following[0] if run.following else None
    turns = run.following if run.inside else first.nodes if isinstance(first, Repeat) else ()
    kinds = {plain(n.kind) if isinstance(n, Make) else "" for n in turns}
    return tall in kinds and kinds <= {tall, "sc"} and (run.inside > 0 or "sc" in kinds)


def gap_after(nodes: Sequence[Node]) -> int:
    """Chains of the space that follows the first stitch: "*ch 2, sk 2, dc"; 0 where none does."""
    for node in nodes:
        if isinstance(node, Chain):
            return node.n.at(0) or 0
        if isinstance(node, Repeat):
            return gap_after(node.nodes)
        if not isinstance(node, Mark):
            break
    return 0
