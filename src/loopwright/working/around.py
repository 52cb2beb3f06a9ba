"""Stitches all the way round a piece that was worked in rows: along its top, down one side, along its foundation, up the other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from loopwright.model.tree import EdgeRun, Group, InTurn, Make, Node, Num, Place, Repeat, Spread, Thing
from loopwright.trade.stitches import row_ends
from loopwright.working.groups import into_one
from loopwright.working.kinds import CHAIN, HEIGHT, code, name, plain
from loopwright.working.making import kind_made
from loopwright.working.run import MAX_ITEMS, CannotWork, Run
from loopwright.working.slots import HOW
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot

ROWS_AT_LEAST = 2
CORNERS = 4  # of a piece, where nobody tells them
# A printed count tells how many go along the row ends where that is so many times the customary number.
_LEAST, _MOST = 0.4, 2.5
_SIDE = Slot(-1, -1, "row-end")
_FOUNDATION = Slot(-1, -1, "underside")
_CORNER = Slot(-1, -1, "corner")


def goes_round(run: Run) -> bool:
    """Whether the row below is the last of a flat piece, so that "around" means its four edges."""
    view = run.view
    return not (view.joined or view.ring or view.foundation or view.open_end) and run.named.get("edge-rows", 0) >= ROWS_AT_LEAST and bool(view.items)


def told_round(run: Run, nodes: Sequence[Node]) -> tuple[Node, ...]:
    """ "3 sc in corner, *sc evenly along edge to next corner, 3 sc in corner; rep from * around" as one instruction; else the nodes."""
    at = next((i for i, n in enumerate(nodes) if isinstance(n, Repeat)), -1)
    if at < 0 or not goes_round(run):
        return tuple(nodes)
    repeat = nodes[at]
    assert isinstance(repeat, Repeat)
    edge = next((n for n in repeat.nodes if isinstance(n, EdgeRun)), None)
    corner = next((n for n in repeat.nodes if _in_corner(n)), None)
    if edge is None or edge.n is not None or corner is None or len(repeat.nodes) != 2 or repeat.mode not in ("end", "times", "more"):
        return tuple(nodes)
    lead = nodes[:at]
    if any(isinstance(n, (Make, Group)) and not _in_corner(n) for n in lead):
        return tuple(nodes)
    told = InTurn((EdgeRun(edge.kind, None, "around", span=edge.span), corner), span=repeat.span)
    return (*(n for n in lead if not _in_corner(n)), told, *nodes[at + 1 :])


def _in_corner(node: Node) -> bool:
    return isinstance(node, (Make, Group)) and node.place is not None and node.place.thing.kind == "corner"


def do_around(run: Run, node: EdgeRun, corner: Node | None = None) -> None:
    """So many stitches round the piece, `corner` worked in each of its corners; in a round, into each of its stitches.

    The row ends take what the printed count leaves for them, else the customary number. Both are told as assumptions.
    """
    if not goes_round(run):
        _over_the_round(run, node, corner)
        return
    number = code(kind_made(run, node.kind)[0])
    along = run.named.get("first-row", 0)
    if not along:
        raise CannotWork("edge-unknown")
    begin, tops = len(run.out), _tops(run)
    if corner is not None and not tops:
        raise CannotWork("edge-unknown")  # the top was worked before in the same row, and with it two corners
    corners = _top(run, number, tops, corner)
    below = along if corner is None else max(0, along - 2)
    feet = (2 if along > 1 else 1) * corners // max(1, min(2, len(tops)))  # a point has one corner
    first, second = _sides(run, _stitches(run, begin) + below + feet, node)
    if len(run.out) - begin + below + first + second > MAX_ITEMS:
        raise CannotWork("too-many", limit=MAX_ITEMS)
    run.last, run.pos = tops[-1] if tops else run.last, run.end
    _many(run, number, first, _SIDE)
    _corner(run, corner, _CORNER)
    _many(run, number, below, _FOUNDATION)
    _corner(run, corner if along > 1 else None, _CORNER)
    _many(run, number, second, _SIDE)
    run.left_said = True
    run.named["along-edge"] = run.named["row-ends"] = 1


def _top(run: Run, number: int, tops: list[Slot], corner: Node | None) -> int:
    """The stitches along the top, those of its corners in its first and last place; how many those are."""
    begin, first = len(run.out), corner is not None
    _corner(run, corner, tops[0] if tops else _CORNER)
    for slot in tops[first : len(tops) - first]:
        run.make(number, slot)
    if len(tops) > 1:
        _corner(run, corner, tops[-1])
    return _stitches(run, begin) - max(0, len(tops) - 2) if first else 0


def _many(run: Run, number: int, many: int, slot: Slot) -> None:
    for _ in range(many):
        run.make(number, slot)


def do_opening(run: Run, node: EdgeRun) -> None:
    """So many stitches round an opening as the printed count says, as nobody told its length; into each stitch of a round that has as many."""
    printed = run.printed.ask()
    if run.view.joined and printed in (0, run.stitches_left()):
        _over_the_round(run, node, None)
        return
    many = printed - _stitches(run, 0)
    if not 0 < many <= MAX_ITEMS:
        raise CannotWork("edge-unknown")
    _many(run, code(kind_made(run, node.kind)[0]), many, _SIDE)
    run.left_said = True
    run.named["along-edge"] = run.named["row-ends"] = run.named["from-print"] = 1
    run.conventions["round-an-opening"] = printed


def _over_the_round(run: Run, node: EdgeRun, corner: Node | None) -> None:
    from loopwright.working import along

    if not run.view.joined or node.where == "outline":
        raise CannotWork("edge-unknown")
    each = Make(node.kind, Num((1,)), Place("each", None, Thing("st")), span=node.span)
    if corner is not None:
        along.do_in_turn(run, InTurn((each, corner), span=node.span))
    elif node.n is not None:
        along.do_spread(run, Spread(node.kind, node.n, Num((run.stitches_left() - run.reserve,)), span=node.span))
    else:
        from loopwright.working.making import do_make

        do_make(run, each)


def _tops(run: Run) -> list[Slot]:
    """The places of the row below: its stitches, and its spaces as often as they have chains."""
    in_space = {i: Slot(s, e, "space") for s, e in run.view.runs for i in range(s, e)}
    return [in_space.get(i) or Slot(i, i + 1) for i in range(run.pos, len(run.view.items))]


def _corner(run: Run, corner: Node | None, slot: Slot) -> None:
    if corner is None:
        return
    begin = len(run.out)
    nodes = corner.nodes if isinstance(corner, Group) else (corner,)
    into_one(run, tuple(bare(n) for n in nodes), slot)
    if slot is _CORNER and len(run.out) > begin:
        run.into.how[begin] = HOW[_FOUNDATION.how]  # in the foundation's end; the others of the corner go where this one does
    if len(run.out) - begin > 1:
        run.groups.append(MadeGroup(begin, len(run.out), ""))


def bare(node: Node) -> Node:
    """The node without its place: the place is given."""
    return Make(node.kind, node.n, None, node.loop, node.parts, node.between, None, node.span) if isinstance(node, Make) else node


def _stitches(run: Run, begin: int) -> int:
    return len(run.out) - begin - run.out.count(CHAIN, begin)


def _sides(run: Run, others: int, node: EdgeRun) -> tuple[int, int]:
    """Stitches along the one side and along the other."""
    custom = max(1, round(run.named.get("edge-rows", 0) * _per_row(run)))
    told = node.n.at(0) if node.n is not None else None
    wanted = told if told is not None else run.printed.ask()
    left = wanted - others
    if wanted and 2 * custom * _LEAST <= left <= 2 * custom * _MOST:
        if told is None:
            run.named["from-print"] = 1
        run.conventions["round-the-piece"] = (left - left // 2, "print" if told is None else "words")
        return left - left // 2, left // 2
    if told is not None:
        raise CannotWork("edge-unknown")
    run.conventions["round-the-piece"] = (custom, "custom")
    return custom, custom


def _per_row(run: Run) -> Fraction:
    """What the end of a row takes by custom: the mean over the stitches of the last one."""
    kinds = Counter(plain(name(number)) for number in run.view.items if number != CHAIN)
    known = {kind: row_ends().get(kind, Fraction(HEIGHT.get(kind) or 1)) for kind in kinds}
    return sum((known[k] * n for k, n in kinds.items()), Fraction(0)) / kinds.total() if kinds else Fraction(1)
