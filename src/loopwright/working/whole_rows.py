"""Forms told for a whole row: evenly, every k-th, at the ends, along an edge, as the row below."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from loopwright.model.tree import (
    STITCH,
    AtEnds,
    EdgeRun,
    Evenly,
    EveryKth,
)
from loopwright.working.kinds import CHAIN, code, plain
from loopwright.working.making import kind_made
from loopwright.working.run import MAX_ITEMS, CannotWork, Run, RunsOut
from loopwright.working.seeking import seek, single_stitches
from loopwright.working.slots import HOW
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot


def do_evenly(run: Run, node: Evenly) -> None:
    """Increases or decreases spread over what is left of the row."""
    left = run.stitches_left() - run.reserve
    change = node.n.at(0) if node.n is not None else None
    if change is None and node.to is not None and node.to.at(0) is not None:
        goal = (node.to.at(0) or 0) - _counted(run)
        change = abs(goal - left)
    if change is None:
        raise CannotWork("blank")
    kind = node.kind or run.main_kind
    if kind in ("st", ""):
        kind = "sc"
    if change == 0:
        return _spread(run, kind, left, 0, node.op)
    if node.op == "dec" and change * 2 > left:
        raise RunsOut("st", wanted=change * 2, found=left)
    if node.op == "inc" and change > left:
        raise RunsOut("st", wanted=change, found=left)
    return _spread(run, kind, left, change, node.op)


def _counted(run: Run) -> int:
    return len(run.out) - run.out.count(CHAIN)


def _spread(run: Run, kind: str, left: int, change: int, op: str) -> None:
    units = left if op == "inc" else left - change
    _shaped(run, kind, left, op, units, [-(-i * units // change) - 1 for i in range(1, change + 1)])


def _shaped(run: Run, kind: str, left: int, op: str, units: int, special: Sequence[int]) -> None:
    """So many plain stitches, and at those that `special` numbers two in one or two together."""
    number, together = code(kind), code(f"{plain(kind)}2tog")
    ahead = single_stitches(run, run.pos, run.end)
    if not ahead or units < 1:
        _one_by_one(run, number, together, left, op, units, special)
        return
    taken = units + (len(special) if op == "dec" else 0)
    if len(ahead) < taken:
        raise RunsOut("st", wanted=left, found=len(ahead))
    first: list[int] = []
    last: list[int] = []  # of the stitches of the row below that each takes
    begin = at = 0
    for unit in (*special, None):
        plain_ones = ahead[at : at + (units if unit is None else unit) - begin]
        first += plain_ones
        last += plain_ones
        at += len(plain_ones)
        if unit is None:
            break
        if op == "inc":
            first += (ahead[at], ahead[at])
            last += (ahead[at], ahead[at])
        else:
            first.append(ahead[at])
            last.append(ahead[at := at + 1])
        begin, at = unit + 1, at + 1
    kinds = bytearray(bytes((number,)) * len(first))
    if op == "dec":
        for unit in special:
            kinds[unit] = together
    run.make_each(bytes(kinds), first, [i + 1 for i in last])
    run.last = Slot(ahead[taken - 1], ahead[taken - 1] + 1)
    run.pos = run.last.end


def _one_by_one(run: Run, number: int, together: int, left: int, op: str, units: int, special: Sequence[int]) -> None:
    """As _shaped, where each stitch must be looked for."""
    here = set(special)
    for done in range(units):
        slot = seek(run, STITCH, run.pos)
        if slot is None:
            raise RunsOut("st", wanted=left, found=done)
        run.pos, run.last = slot.end, slot
        if done in here and op == "dec":
            second = seek(run, STITCH, run.pos)
            if second is None:
                raise RunsOut("st", wanted=left, found=done)
            run.pos, run.last = second.end, second
            run.make(together, Slot(slot.start, second.end))
        else:
            run.make(number, slot)
            if done in here:
                run.make(number, slot)


def do_every_kth(run: Run, node: EveryKth) -> None:
    """Increase or decrease in every k-th stitch: k - 1 (or k - 2) plain ones before it."""
    kind = node.kind or run.main_kind
    kind = "sc" if kind in ("st", "") else kind
    number, k = code(kind), max(1, node.k)
    if run.view.open_end or not run.view.items:
        raise CannotWork("open", thing="st")
    i = int(run.tch_item and len(run.out) == 1 and node.op == "inc")  # a start chain that counts is the first of them
    left = run.stitches_left() - run.reserve + i
    while i < left:
        i += 1
        slot = seek(run, STITCH, run.pos)
        if slot is None:
            return
        run.pos, run.last = slot.end, slot
        if node.op == "inc":
            run.make(number, slot)
            if i % k == 0:
                run.make(number, slot)
        elif i % k == k - 1 and i < left and k > 1:
            second = seek(run, STITCH, run.pos)
            if second is None:
                run.make(number, slot)
                return
            run.pos, run.last = second.end, second
            run.make(code(f"{plain(kind)}2tog"), Slot(slot.start, second.end))
            i += 1
        else:
            run.make(number, slot)


def do_at_ends(run: Run, node: AtEnds) -> None:
    """One (or n) more or fewer at each end, the rest worked even."""
    kind = node.kind or run.main_kind
    kind = "sc" if kind in ("st", "") else kind
    amount = (node.n.at(0) or 1) * max(1, node.ends)
    left = run.stitches_left() - run.reserve
    if node.op == "dec" and left < amount * 2:
        raise RunsOut("st", wanted=amount * 2, found=left)
    first = amount // 2 if node.ends == 2 else 0
    last = amount - first
    units = left - amount if node.op == "dec" else left
    _shaped(run, kind, left, node.op, units, sorted({*range(min(first, units)), *range(max(0, units - last), units)}))


def do_edge(run: Run, node: EdgeRun) -> None:
    """Stitches along an edge: as many as told; an untold number comes from the edge itself where it is known."""
    if node.where == "opening":
        from loopwright.working.around import do_opening

        do_opening(run, node)
        return
    if node.where in ("around", "outline"):
        from loopwright.working.around import do_around

        do_around(run, node)
        return
    count = node.n.at(0) if node.n is not None else None
    if count is None and node.where == "free":  # a second piece, as the one at hand
        count = len(run.view.items) - run.view.items.count(CHAIN)
        run.cost += 0.3
    elif count is None and node.where == "underside" and (own := run.into.how.count(HOW["own-chain"])):
        count = own  # the other side of the chain that this row made and began with: as many as on its first
    elif count is None:
        count = _by_rate(run, run.named.get("first-row" if node.where == "underside" else "edge-rows", 0) * (node.per or 1), node.rows)
        if not count:
            raise CannotWork("edge-unknown")
        run.cost += 0.5
    if count > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    number = code(kind_made(run, node.kind)[0])
    place = Slot(-1, -1, node.where if node.where in ("underside", "free") else "row-end")
    run.make(number, place, times=count)
    run.left_said = True
    run.named["along-edge"] = 1
    if place.how == "row-end":
        run.named["row-ends"] = 1


def _by_rate(run: Run, stitches: int, rows: int) -> int:
    """Stitches over rows where not every row takes one; which way a part of one is rounded, the printed count tells."""
    if rows < 2 or stitches % rows == 0:
        return stitches // max(1, rows)
    wanted = run.printed.ask() - _counted(run)
    if wanted not in (stitches // rows, stitches // rows + 1):
        return stitches // rows
    run.named["from-print"] = 1
    return wanted


def copy_row(run: Run) -> None:
    """Works the row below over once more, stitch on stitch and chain on chain."""
    kinds = Counter(run.view.items)
    if not kinds:
        raise CannotWork("nothing-below")
    run_starts = dict(run.view.runs)
    at = run.pos
    stop = run.end
    while at < stop:
        if at in run_starts:
            run.chain(run_starts[at] - at)
            at = run_starts[at]
            continue
        run.make(run.item(at), Slot(at, at + 1))
        at += 1
    run.pos = stop
    run.groups.extend(MadeGroup(g.start, g.end, g.name) for g in run.view.groups if run.start == 0 and len(run.out) == len(run.view.items))
