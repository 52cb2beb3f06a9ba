"""What goes along a row: stitches worked as their places come, so many over so many, patterns and shapes that go on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from loopwright.model.tree import Divided, EdgeRun, Group, InTurn, Make, Node, Num, PatternRun, Place, Spread, Thing
from loopwright.working.around import CORNERS, bare, do_around, goes_round
from loopwright.working.groups import into_one, is_plain, stitch_parts
from loopwright.working.kinds import CHAIN, HEIGHT, code, name, plain
from loopwright.working.making import do_make, kind_made
from loopwright.working.nearby import stop_of
from loopwright.working.run import CannotWork, Run, RunsOut
from loopwright.working.seeking import SPACES, STITCHES, seek, stitches_ahead, view_runs
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot
from loopwright.working.whole_rows import copy_row

LIMIT = 20_000


def do_in_turn(run: Run, node: InTurn) -> None:
    """Each part in each of its places, in the order of the places; a later part wins a place that two name."""
    if (whole := _round_the_piece(run, node)) is not None:
        do_around(run, whole, node.parts[-1])
        return None
    own = run.named.get("own-chain-left", 0) > 0 and isinstance(node.parts[0], Make) and node.parts[0].place is not None and node.parts[0].place.thing.kind == "ch"
    if own or any(_row_ends(part) for part in node.parts):
        for part in node.parts:  # along the side, or a chain made beside the row, and then along the top: one after the other
            for make in _apart(part):
                do_make(run, make)
        return None
    if run.view.open_end:
        raise CannotWork("open", thing="st")
    last = placed[-1] if (placed := [p.place for p in node.parts if isinstance(p, (Make, Group)) and p.place is not None]) else None
    if last is not None and last.upto is not None:
        end, run.end = run.end, stop_of(run, last)  # "in each dc and each ch-1 sp to next corner"
        try:
            return _as_they_come(run, node)
        finally:
            run.end = end
    if last is not None and last.left is not None and (keep := last.left.at(0) or 0):
        if run.view.mesh and last.thing in (Thing("ch"), Thing("sp", 1)):
            run.sticky["chains-taken"] = True  # each chain is worked into as a stitch is, so the last ones are counted with them
        end, run.end = run.end, _before_last(run, keep)  # "in each sc and ch-1 sp to last 2 sts"
        try:
            return _as_they_come(run, node)
        finally:
            run.end = end
    return _as_they_come(run, node)


def _before_last(run: Run, many: int) -> int:
    """Where the last so many stitches of the row below begin. Raises RunsOut where it has no more than those."""
    at = [i for i in range(run.pos, run.end) if run.item(i) != CHAIN or run.sticky.get("chains-taken")]
    if len(at) <= many:
        raise RunsOut("st", wanted=many, found=len(at))
    return at[-many]


def _as_they_come(run: Run, node: InTurn) -> None:
    """The parts of such a list in the order of their places, up to where the row ends."""
    taken: dict[int, tuple[Slot, Node]] = {}
    for part in node.parts[1:]:
        for slot in _places_ahead(run, part):
            taken[slot.start] = (slot, part)
    if not taken and not all(map(_of_chains, node.parts[1:])):
        raise RunsOut("place", wanted=1, found=0)
    covered = {i for slot, _ in taken.values() for i in range(slot.start, max(slot.end, slot.start + 1))}
    base = [s for s in _places_ahead(run, node.parts[0]) if s.start not in covered]
    told = next((p.place.left or p.place.upto for p in reversed(node.parts) if isinstance(p, (Make, Group)) and p.place is not None), None)
    if run.reserve and told is None:
        base = base[: max(0, len(base) - run.reserve)]
    for slot in base:
        taken[slot.start] = (slot, node.parts[0])
    parts = {id(part): tuple(bare(n) for n in (part.nodes if isinstance(part, Group) else (part,))) for part in node.parts}
    at_once = {key: made for key, told in parts.items() if (made := _plain_in_one(run, told)) is not None}
    for start in sorted(taken):
        slot, part = taken[start]
        run.last, run.pos = slot, max(run.pos, slot.end)
        begin = len(run.out)
        if (made := at_once.get(id(part))) is not None:  # as `into_one`, without looking at it each time
            run.placed += 1
            run.origin = made[2] or run.origin
            run.make(made[0], slot, made[1])
        else:
            into_one(run, parts[id(part)], slot)
        if len(run.out) - begin > 1:
            run.groups.append(MadeGroup(begin, len(run.out), part.name or "" if isinstance(part, Group) else ""))


def _of_chains(part: Node) -> bool:
    """Whether a part goes into spaces of so many chains."""
    return isinstance(part, (Make, Group)) and part.place is not None and part.place.thing.kind in SPACES and part.place.thing.length is not None


def _plain_in_one(run: Run, nodes: tuple[Node, ...]) -> tuple[int, int, int] | None:
    """The stitch, how many of it go into one place, and the words that ask for them; None where more than that is asked."""
    one = nodes[0] if len(nodes) == 1 else None
    if not isinstance(one, Make) or not is_plain(run, one) or one.between or one.n.at(0) is None:
        return None
    kind, twice = kind_made(run, one.kind)
    return code(kind), (one.n.at(0) or 1) * twice, one.span.start if one.span.end else 0


def _round_the_piece(run: Run, node: InTurn) -> EdgeRun | None:
    """ "sc evenly around, 3 sc in each corner", or "sc in each st around, 3 sc in each corner" where the piece is flat."""
    first, last = node.parts[0], node.parts[-1]
    if isinstance(first, EdgeRun) and first.where in ("around", "outline"):
        return first
    others = [p.place for p in node.parts[:-1] if isinstance(p, Make) and p.place is not None and p.place.quant == "each" and p.place.thing.kind in ("st", "row")]
    if len(others) < len(node.parts) - 1 or not isinstance(first, Make):
        return None
    place = last.place if isinstance(last, (Make, Group)) else None
    if place is None or place.thing.kind != "corner" or run.view.runs or not goes_round(run) or any(g.end - g.start >= 3 for g in run.view.groups):
        return None
    return EdgeRun(first.kind, None, "around", span=first.span)


def _row_ends(part: Node) -> bool:
    return isinstance(part, Make) and part.place is not None and part.place.thing.kind in ("row", "row-end")


def _apart(part: Node) -> list[Make]:
    """A part's stitches, each with its place."""
    nodes = part.nodes if isinstance(part, Group) else (part,)
    place = part.place if isinstance(part, Group) else None
    return [replace(n, place=n.place or place) for n in nodes if isinstance(n, Make)]


def _places_ahead(run: Run, part: Node) -> list[Slot]:
    place = part.place if isinstance(part, (Make, Group)) else None
    if place is None:
        return []
    if place.centre and place.thing.kind in (*SPACES, "ch"):
        spaces = [Slot(s, e, "space") for s, e in run.view.runs if run.pos <= s and e <= run.end]
        return spaces[len(spaces) // 2 : len(spaces) // 2 + 1]  # "but 3 under the centre chain"
    if place.centre or place.of is not None and place.thing.kind in (*STITCHES, *HEIGHT):
        middle = run.pos + (len(run.view.items) - run.pos - 1) // 2
        return _centres(run) or ([Slot(middle, middle + 1)] if middle < run.end else [])
    found: list[Slot] = []
    if _of_chains(part) and not run.view.runs and not run.view.foundation:
        return []  # "sc in each sc and ch-1 sp", again over a row that has none
    if place.thing.kind == "corner" and not run.view.runs and (corners := _corners(run)):
        return corners
    pos = run.pos
    if place.thing.kind in STITCHES and (ahead := stitches_ahead(run, pos, run.end)):
        return ahead[:LIMIT]
    while pos < run.end and len(found) < LIMIT:
        slot = seek(run, place.thing, pos)
        if slot is None:
            break
        found.append(slot)
        pos = slot.end if slot.end > pos else pos + 1
    return found


def _corners(run: Run) -> list[Slot]:
    """The middle of each group of a round; where it has none and nobody told where its corners are, four in equal distances."""
    found = _centres(run)
    if found or not run.view.joined:
        return found
    run.cost += 0.5
    n = len(run.view.items)
    return [Slot(i * n // CORNERS, i * n // CORNERS + 1) for i in range(CORNERS)]


def _centres(run: Run) -> list[Slot]:
    """The middle stitch of each group of three and more made in one place."""
    n = len(run.view.items)
    found = []
    for turn in (0, n) if run.end > n else (0,):
        for g in run.view.groups:
            if g.end - g.start >= 3 and g.start + turn >= run.pos - 2 and g.end + turn <= run.end + 1:
                middle = (g.start + g.end - 1) // 2 + turn
                if middle >= run.pos:
                    found.append(Slot(middle, middle + 1))
    return found


def do_spread(run: Run, node: Spread) -> None:
    """`n` stitches over the next `over` places, as evenly as they come."""
    count, over = node.n.at(0), node.over.at(0) if node.over is not None else None
    if count is None or count > LIMIT:
        raise CannotWork("blank" if count is None else "too-many", limit=LIMIT)
    if over is None:
        size = division(run)
        over = size - run.pos % size - run.reserve if size else 0
        if over <= 0:
            raise RunsOut("st", wanted=1, found=0)
        run.cost += 0.2
    slots: list[Slot] = []
    pos = run.pos
    for _ in range(min(over, LIMIT)):
        slot = seek(run, Thing("st"), pos)
        if slot is None:
            raise RunsOut("st", wanted=over, found=len(slots))
        slots.append(slot)
        pos = slot.end
    if not slots:
        raise RunsOut("st", wanted=1, found=0)
    number = code(kind_made(run, node.kind)[0])
    for j in range(count):
        run.make(number, slots[min(over - 1, j * over // max(1, count))])
    if slots:
        run.last, run.pos = slots[-1], slots[-1].end


def division(run: Run) -> int:
    """How many stitches of the row below each of its divisions has; 0 when it had none."""
    parts = run.view.divisions
    return len(run.view.items) // parts if parts and len(run.view.items) % parts == 0 else 0


def do_divided(run: Run, node: Divided) -> None:
    """Each division of the row in the same way; what the words leave open lies over the rest of the division."""
    told = [p.over.at(0) if p.over is not None else None for p in node.parts]
    whole = len(run.view.items) - run.pos
    known = sum(t or 0 for t in told)
    size = known if None not in told else division(run)
    if None not in told and (not known or whole % known or run.view.divisions and whole // known != run.view.divisions):
        size = division(run) or size
        run.cost += 0.6
    if size <= 0 or whole % size or None in told and known >= size:
        raise RunsOut("st", wanted=size, found=whole)
    open_ = max(1, told.count(None))
    for first in range(run.pos, run.pos + whole, size):
        at = 0
        for part, over in zip(node.parts, told, strict=True):
            covers = max(1, (size - known) // open_) if over is None else over
            many = part.n.at(0) or 0
            number = code(kind_made(run, part.kind)[0])
            for j in range(min(many, LIMIT)):
                place = first + min(size - 1, at + j * covers // max(1, many))
                run.make(number, Slot(place, place + 1))
            at += covers
    run.pos += whole
    run.repeats += whole // size
    run.named["divisions"] = whole // size


def do_pattern(run: Run, node: PatternRun) -> None:
    """ "In pattern", "5 shells across": shapes in the places between the shapes below, or what stands below once more."""
    if node.name and node.n is not None:
        return _so_many(run, node.name, node.n.at(0), node.parts)
    if node.name and run.view.groups:
        return _shapes_across(run, node.name, node.parts)
    if node.name and node.name in run.definitions:
        return do_make(run, Make(node.name, Num((1,)), Place("each", None, Thing(node.name)), span=node.span))
    if node.n is not None:
        return _copy(run, node.n.at(0) or 0)
    if node.left is not None:
        return _copy(run, max(0, run.stitches_left() - (node.left.at(0) or 0)))
    if run.reserve and run.stitches_left() > run.reserve:
        return _copy(run, run.stitches_left() - run.reserve)
    if run.worked and CHAIN not in run.view.items and _swapped(run):
        return _copy(run, run.stitches_left())
    copy_row(run)
    return None


def _swapped(run: Run) -> dict[int, int]:
    """ "dc in next sc, complete row in pattern": the pattern sets the one kind over the other; empty where it does not."""
    found: dict[int, int] = {}
    for i in range(min(len(run.out), 20)):
        slot = run.into[i]
        if slot is not None and slot.start >= 0 and run.out[i] != CHAIN and slot.how in ("top", "back", "front"):
            below = run.item(slot.start)
            if below not in (run.out[i], CHAIN):
                found |= {below: run.out[i], run.out[i]: below}
    return found


def _copy(run: Run, count: int) -> None:
    """So many stitches in pattern: as those below, or the other of the two where the row's first stitches say so."""
    swapped = _swapped(run)
    for _ in range(min(count, LIMIT)):
        slot = seek(run, Thing("st"), run.pos)
        if slot is None:
            raise RunsOut("st", wanted=count, found=0)
        run.last, run.pos = slot, slot.end
        kind = swapped.get(run.item(slot.start), run.item(slot.start))
        kind = code(plain(name(kind))) if "tog" in name(kind) else kind  # what was two together is one as the others
        run.make(code(run.main_kind) if kind == CHAIN else kind, slot)


def _so_many(run: Run, shape: str, count: int | None, parts: Sequence[Node]) -> None:
    """A told number of shapes along the row; they take what the rest of the row leaves."""
    if count is None or count > LIMIT:
        raise CannotWork("blank" if count is None else "too-many", limit=LIMIT)
    left, pos = max(0, run.stitches_left() - run.reserve), run.pos
    places = (pos + left * i // max(1, count) for i in range(count))
    _shapes(run, shape, (Slot(at, at + 1) for at in places), parts)
    run.pos = max(run.pos, min(run.end, run.pos + left))
    run.left_said = True


def _shapes(run: Run, shape: str, slots: Iterable[Slot], parts: Sequence[Node]) -> None:
    """One shape in each of some slots."""
    nodes = parts or (stitch_parts(run, shape) if shape in run.definitions else ())
    told = tuple(bare(n) for n in nodes) if any(isinstance(n, (Make, Group)) for n in nodes) else ()
    number = code(shape)
    for slot in slots:
        begin = len(run.out)
        if told:
            into_one(run, told, slot)
        else:
            run.make(number, slot)
        run.groups.append(MadeGroup(begin, len(run.out), shape))


def _shapes_across(run: Run, shape: str, parts: Sequence[Node]) -> None:
    """One shape in each single stitch between the shapes below, a single one in the middle of each of those."""
    groups = sorted(g for g in run.view.groups if g.end - g.start > 1 or g.name)
    inside = {i for g in groups for i in range(g.start, g.end)}
    between = [i for i in range(run.pos, min(run.end, len(run.view.items))) if i not in inside and run.item(i) != CHAIN]
    if run.reserve and between and not _group_after(groups, between[-1]):
        between = between[: max(0, len(between) - run.reserve)]
    if _centre_next(run):
        whole = [g for g in groups if g.name == shape or g.end - g.start > 2]
        between = [i for i in between if not whole or i < whole[-1].start]
    started = bool(run.out) and run.out[-1] == code("sc")
    for j, at in enumerate(between):
        middle = next((g for g in groups if (between[j - 1] if j else run.pos - 1) < g.start < at), None)
        if j or middle is not None and not started:
            run.make(code("sc"), Slot(middle.start, middle.end) if middle else Slot(at, at + 1))
        _shapes(run, shape, (Slot(at, at + 1),), parts)
    after = next((g for g in groups if between and g.start > between[-1]), None)
    if after is not None and after.end < len(run.view.items) and not _centre_next(run):
        run.make(code("sc"), Slot(after.start, after.end))
    if between:
        run.last, run.pos = Slot(between[-1], between[-1] + 1), between[-1] + 1
    run.left_said = True


def _centre_next(run: Run) -> bool:
    """Whether the words go on with a stitch in the middle of a shape."""
    return any(isinstance(n, Make) and n.place is not None and n.place.centre for n in run.following[:1])


def _group_after(groups: Sequence[MadeGroup], at: int) -> bool:
    return any(g.start > at for g in groups)


__all__ = ["do_divided", "do_in_turn", "do_pattern", "do_spread", "name", "plain", "view_runs"]
