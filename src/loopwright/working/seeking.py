"""Looking for the next thing in the row below: a stitch, a chain, a space, a group, a corner."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import pairwise

from loopwright.model.tree import Place, Thing
from loopwright.working.kinds import ANY, CHAIN, CLOSED, HEIGHT, code, name, plain
from loopwright.working.marked import next_marker
from loopwright.working.run import Run
from loopwright.working.view import Group, Slot

SPACES = frozenset({"sp", "loop", "mesh", "arch"})
STITCHES = frozenset({"st", "sts", "stitch", "pattern"})
OPEN_LIMIT = 4000
JUMP = "jump-"  # whether stitches of other kinds are passed over, by the kind that is sought
HALF_SCALE = 3  # stitches on one post


def view_runs(run: Run) -> list[tuple[int, int]]:
    """Chain spaces of the view, going on past a full turn when the start has moved."""
    runs = list(run.view.runs)
    if run.end > len(run.view.items):
        n = len(run.view.items)
        runs += [(s + n, e + n) for s, e in run.view.runs if e + n <= run.end]
    return runs


# --- looking for the next thing --------------------------------------------------------------------------------------


def seek(run: Run, thing: Thing, pos: int) -> Slot | None:
    """The next place of this sort at or after `pos`, or None. The cursor stays."""
    kind = thing.kind
    if kind == "any" and not run.view.open_end:
        return Slot(pos, pos + 1) if pos < run.end else None
    if run.view.open_end:
        return Slot(pos, pos + 1) if pos < OPEN_LIMIT else None
    if kind in STITCHES:
        return _seek_stitch(run, pos)
    if kind == "loop" and not run.view.runs and not run.view.foundation:
        return _seek_stitch(run, pos)  # where no chain makes a loop, old books mean those of the stitches
    if kind in SPACES:
        return _seek_space(run, pos, thing.length, gaps=kind != "loop")
    if kind == "gap":
        return _seek_gap(run, pos, told=thing.length is None)
    if kind == "ch":
        return _seek_chain(run, pos, thing.length)
    if kind == "corner":
        return _seek_corner(run, pos)
    if kind == "scale" and (middle := _seek_scale(run, pos)) is not None:
        return middle
    if kind == "marker":
        marked = next_marker(run, pos)
        return marked if marked is None or marked.end > marked.start else Slot(marked.start, marked.start + 1)
    if kind == "tch":
        return _seek_stitch(run, max(pos, run.end - 1)) or _seek_stitch(run, pos)
    if kind in ("join", "joining"):
        return Slot(run.start, run.start + 1)
    if kind in ("row-end", "underside", "row"):
        return _seek_stitch(run, pos)
    return _seek_kind(run, pos, kind)


def stitches_ahead(run: Run, pos: int, stop: int) -> list[Slot]:
    """All stitches of the row below from `pos` to `stop`, where they are plain to see: none where they must be looked for one by one."""
    return [Slot(i, i + 1) for i in single_stitches(run, pos, stop)]


def single_stitches(run: Run, pos: int, stop: int) -> Sequence[int]:
    """Where the stitches of `stitches_ahead` stand."""
    view = run.view
    if view.foundation or view.ring or view.open_end or not 0 <= pos < stop <= len(view.items):
        return ()
    if CHAIN not in view.items[pos:stop] or view.mesh and _chains_taken(run):
        return range(pos, stop)
    return [i for i, kind in enumerate(view.items[pos:stop], pos) if kind != CHAIN]


def _seek_stitch(run: Run, pos: int) -> Slot | None:
    if run.view.foundation or (run.view.ring and run.view.items):
        return Slot(pos, pos + 1) if pos < run.end else None
    while pos < run.end:
        if run.item(pos) != CHAIN or run.view.mesh and _chains_taken(run):
            return Slot(pos, pos + 1)
        pos += 1
    return None


def _chains_taken(run: Run) -> bool:
    """Whether the chains of a mesh below are worked into one by one, as stitches are."""
    return bool(run.once("chains-taken", ((0.4, False), (0.0, True)) if run.view.mesh > 1 else ((0.0, False), (0.5, True))))


def _seek_chain(run: Run, pos: int, length: int | None) -> Slot | None:
    if run.view.foundation or run.view.ring:
        return Slot(pos, pos + 1) if pos < run.end else None
    if length:
        return _seek_space(run, pos, length)
    if (found := _scan(run, pos, CHAIN)) is not None:
        return Slot(found.start, found.end, "chain")
    return _seek_stitch(run, pos) if CHAIN not in run.view.items or pos >= run.end - 1 else None


def _seek_space(run: Run, pos: int, length: int | None, *, gaps: bool = True) -> Slot | None:
    runs = run.view.runs
    if not runs or run.view.foundation:
        return _seek_gap(run, pos)
    if length is None and gaps and _gap_ahead(run, pos) and run.once("gaps-are-spaces", ((0.0, False), (0.3, True))):
        return _seek_gap(run, pos)
    known = run.view.index.lengths
    if length and length not in known:
        run.once(f"space-{length}", ((0.7, True),))
        length = None
    exact = length if length and len(known) > 1 else None
    n = len(run.view.items)
    for turn in (0, n) if run.end > n else (0,):
        at = bisect_left(runs, (pos - turn,))
        if at and runs[at - 1][0] == pos - turn - 1 and runs[at - 1][1] > pos - turn:
            at -= 1  # just past the first chain of a space: still in it
        while at < len(runs) and exact and runs[at][1] - runs[at][0] != exact:
            at += 1
        if at < len(runs) and (not turn and run.end >= n or runs[at][1] + turn <= run.end):
            return Slot(runs[at][0] + turn, runs[at][1] + turn, "space")
    view = run.view
    own = view.tch > 1 and not view.tch_first and not run.in_rounds and not run.named.get("tch-space") and pos >= runs[-1][1]
    if own and (run.conventions.get("tch-space") or run.once("tch-space", ((0.0, False), (0.5, True)))):  # the space that the turning chain makes
        run.named["tch-space"] = 1
        return Slot(run.end, run.end, "space")
    return None


def _seek_gap(run: Run, pos: int, *, told: bool = False) -> Slot | None:
    """No chain spaces in the row: a space is a gap between groups (as may be `told`), else between two stitches."""
    if len(run.view.groups) > 1:
        edges = _edges(run)
        if told and not run.in_rounds and (meeting := _where_groups_meet(run)) and len(meeting) < len(edges):
            edges = meeting if run.once("gaps-between-groups", ((0.0, True), (0.3, False))) else edges
        first = bisect_left(edges, pos)
        here = run.last is not None and run.last.end == pos and run.last.how == "between" and not just_joined(run)
        at = next((e for e in edges[first : first + 3] if e > pos or e == pos and not here), None)
        space = _space_between(run, pos)
        if space is not None and (at is None or space.start <= at):
            return space
        if at is not None and at == len(run.view.items) and _first_gap_taken(run, at) and run.once("first-gap-taken", ((0.0, True), (0.2, False))):
            return None
        return Slot(at, at, "between") if at is not None and at <= run.end else None
    run.once("gap-between-stitches", ((0.9, True),))
    worked = run.last is not None and run.last.end == pos and run.last.how == "top" and run.last.start < pos
    if worked and 0 < pos <= run.end and run.once("gap-behind", ((0.0, False), (0.35, True))):
        return Slot(pos, pos, "between")  # "(dc in dc, dc between dc)": right behind the stitch that was worked into
    if run.view.runs and (chains := next(((s, e) for s, e in view_runs(run) if pos <= s <= pos + 1 or s < pos < e), None)) is not None:
        return Slot(*chains, "space")  # "3 sc between next 2 clusters": the chains that lie between them
    begun = run.named.get("from-gap", 0)
    last = run.end - int(begun and not (run.named.get("attached") and not _in_first_gap(run)))  # the gap that the round began in comes last, and is taken
    return Slot(pos + 1, pos + 1, "between") if pos + 1 <= last else None


def _first_gap_taken(run: Run, end: int) -> bool:
    """ "Ch 6, dc in same place, *ch 5, between next 2 petals dc, ch 3 and dc; rep from * around": where the round was joined two groups meet as well."""
    if not run.in_rounds or run.start or not len(run.into) or (first := run.into[0]) is None or first.start:
        return False
    again = any((slot := run.into[i]) is not None and slot.start == 0 and slot.how == "top" for i in range(1, min(FEW, len(run.into))))
    return again and run.view.groups[0].start == 0 and any(g.end == end for g in run.view.groups)


FEW = 8  # stitches and chains that a group in the first place may have


def just_joined(run: Run) -> bool:
    """Whether the yarn was joined where the hook is, and nothing is made yet: "join between any 2 pairs, *popcorn between pairs"."""
    return bool(run.named.get("attached")) and not run.worked and not run.out


def _in_first_gap(run: Run) -> bool:
    """Whether the first stitch of the round was made where it began."""
    first = run.into[0] if len(run.into) else None
    return first is not None and first.how == "between" and first.start == run.start


def from_first_gap(run: Run, place: Place) -> int:
    """Where spaces between stitches are looked for: a turning chain that stands for the first stitch has the first of them beside it."""
    begun = run.pos == 1 and run.start_chain is not None and run.worked <= 1 and not run.in_rounds
    if not begun or place.thing.kind not in ("gap", *SPACES) or run.view.runs or run.view.foundation or len(run.view.groups) > 1:
        return run.pos
    return 0 if run.once("first-gap", ((0.0, True), (0.2, False))) else 1


def _gap_ahead(run: Run, pos: int) -> bool:
    """Whether groups meet before the next chain space, which stands in the midst of one: a granny square's sides and corners."""
    if len(run.view.groups) < 2:
        return False
    runs = run.view.runs
    at = bisect_left(runs, (pos,))
    if at < len(runs) and _space_between(run, runs[at][0]) == Slot(*runs[at], "space"):
        return False
    edges = _edges(run)
    first = bisect_left(edges, pos)
    return first < len(edges) and edges[first] <= (runs[at][0] if at < len(runs) else run.end)


def _space_between(run: Run, pos: int) -> Slot | None:
    """The next space of chains that stands between groups, not in the middle of one."""
    if run.view.foundation:
        return None
    if run.between is None:
        run.between = _runs_between(run.view.runs, run.view.groups)
    at = bisect_left(run.between, (pos,))
    if at == len(run.between):
        return None
    start, end = run.between[at]
    return Slot(start, end, "space") if end <= run.end else None


def _runs_between(runs: tuple[tuple[int, int], ...], groups: tuple[Group, ...]) -> list[tuple[int, int]]:
    """The spaces of chains that no group has in its midst, in order of their places."""
    found, ahead, reach, at = [], sorted(groups), -1, 0
    for start, end in sorted(runs):
        while at < len(ahead) and ahead[at].start < start:
            reach, at = max(reach, ahead[at].end), at + 1
        if reach <= end:
            found.append((start, end))
    return found


def _edges(run: Run) -> list[int]:
    """Where one group of the row below ends and another begins; looked up once."""
    if run.edges is None:
        n = len(run.view.items)
        found = {g.end for g in run.view.groups if g.end < n} | {g.start for g in run.view.groups if g.start > 0}
        found -= {at for apart in run.view.runs for at in apart}  # there the chains are the space
        run.edges = sorted(found) + ([n] if run.view.joined and all(e != n for _, e in run.view.runs) else [])
    return run.edges


def _where_groups_meet(run: Run) -> list[int]:
    """Where groups lie on both sides: a gap beside the stitch at a row's edge is not between groups."""
    begun = {g.start for g in run.view.groups}
    return sorted({g.end for g in run.view.groups if g.end in begun})


def same_group(run: Run, k: int) -> Slot | None:
    """ "Sc in 2nd dc of next shell, ch 1, sc in 4th dc of same shell": the group worked into last, where its k-th stitch is still ahead."""
    last = run.last
    if last is None or not run.worked or last.end != run.pos or not run.view.groups:
        return None
    edges = _edges(run)
    at = bisect_right(edges, last.start)
    start, end = edges[at - 1] if at else 0, edges[at] if at < len(edges) else len(run.view.items)
    return Slot(start, end) if run.pos < start + k <= end and run.once("kth-of-same", ((0.0, True), (0.3, False))) else None


def _seek_corner(run: Run, pos: int) -> Slot | None:
    runs = [(s, e) for s, e in view_runs(run) if s >= pos or (e > pos and s >= pos - 1)]
    if run.view.runs:
        longest = max(e - s for s, e in run.view.runs)
        if len({e - s for s, e in run.view.runs}) > 1:
            runs = [(s, e) for s, e in runs if e - s == longest]
        return Slot(*runs[0], "space") if runs else None
    middles = [(g.start + g.end - 1) // 2 for g in run.view.groups if g.end - g.start >= 3]
    if middles:
        return next((Slot(m, m + 1) for m in middles if m >= pos), None)
    return _seek_stitch(run, pos)


def _seek_scale(run: Run, pos: int) -> Slot | None:
    """The middle of a scale, of crocodile stitch: between the stitches down one post and those up the next, in the chain there if it has one."""
    runs = dict(run.view.runs)
    for a, b in pairwise(g for g in run.view.groups if g.end - g.start >= HALF_SCALE):
        if a.end >= pos and b.start == runs.get(a.end, a.end) and name(run.view.items[a.start]) != plain(name(run.view.items[a.start])):
            return Slot(a.end, b.start, "space") if b.start > a.end else Slot(a.end, a.end, "between")
    return None


def _seek_kind(run: Run, pos: int, kind: str) -> Slot | None:
    """A stitch of a kind, or a group by name; where the row has none of it, the next stitch at a cost."""
    if (middle := _middle_ahead(run, pos, kind)) is not None and run.once("middle-ahead", ((0.0, True), (0.3, False))):
        return middle
    number = code(kind)
    one = kind in CLOSED and number in run.view.items  # each is a stitch, also where one of them got the name by "(popcorn st)"
    group = None if one else _seek_group(run, pos, kind)
    if group is not None:
        return Slot(group.start, group.end)
    if kind in run.view.index.by_name and not one:
        return None
    if number in run.view.items:
        alike = _alike(run.view.index.kinds_of(run.view.items), kind, run.around)
        jump = run.once(f"{JUMP}{kind}", ((0.45, True), (0.1, False)) if _post_ahead(run, pos, kind) else ((0.1, True), (0.45, False))) if _others_ahead(run, pos, alike) else True
        if not jump:
            return _seek_stitch(run, pos)
        return _scan_any(run, pos, alike) if len(alike) > 1 else _scan(run, pos, number)
    relatives = _relatives(run.view.index.kinds_of(run.view.items), kind)
    if relatives:
        return _scan_any(run, pos, relatives)
    if kind == "picot" and run.view.groups and (beside := _space_between(run, pos)) is not None:
        return beside  # "*ch 5, picot, ch 5, in next picot 3 sc, ch 6 and 3 sc": the loop with the picot, not the one in the midst of a group
    if kind not in HEIGHT and run.view.groups:
        return _any_group(run, pos, kind)
    if kind not in HEIGHT and run.view.runs and plain(kind) not in HEIGHT:
        run.once(f"no-{kind}", ((0.6, True),))
        return _seek_space(run, pos, None)
    run.once(f"no-{kind}", ((0.4, True),))
    return _seek_stitch(run, pos)


@lru_cache(maxsize=1024)
def _alike(kinds: frozenset[int], kind: str, around: bool = False) -> frozenset[int]:
    """The stitches of a row that are of a kind, those worked together among them: "sc in next sc" takes an sc2tog too, "fpdc around next dc" a bpdc."""
    return frozenset(i for i in kinds if i > ANY and (name(i) == kind or around and name(i)[2:] == kind and name(i)[:2] in ("fp", "bp") or plain(kind) == kind == plain(name(i)) and name(i).startswith(kind) and name(i).endswith("tog")))


@lru_cache(maxsize=1024)
def _relatives(kinds: frozenset[int], kind: str) -> frozenset[int]:
    """The stitches of a row that are variants of what a kind is a variant of."""
    return frozenset(i for i in kinds if i > ANY and (plain(name(i)) == plain(kind) or kind == "cluster" and "tog" in name(i)))


def _others_ahead(run: Run, pos: int, numbers: frozenset[int]) -> bool:
    slot = _seek_stitch(run, pos)
    return slot is not None and run.item(slot.start) not in numbers


def _post_ahead(run: Run, pos: int, kind: str) -> bool:
    """ "Fpdc in next 3 dc" over fpdc: whether the next stitch is of the kind too, worked around a post; it is passed over less readily than another."""
    slot = _seek_stitch(run, pos) if kind in HEIGHT else None
    return slot is not None and name(run.item(slot.start)) in (f"fp{kind}", f"bp{kind}")


def _scan(run: Run, pos: int, number: int) -> Slot | None:
    n = len(run.view.items)
    if pos < n:
        at = run.view.items.find(number, pos, min(run.end, n))
        if at >= 0:
            return Slot(at, at + 1)
        pos = n
    if run.end > n:
        at = run.view.items.find(number, pos - n, run.end - n)
        if at >= 0:
            return Slot(at + n, at + n + 1)
    return None


def _scan_any(run: Run, pos: int, numbers: Iterable[int]) -> Slot | None:
    found = [s for s in (_scan(run, pos, i) for i in numbers) if s is not None]
    return min(found) if found else None


def _seek_group(run: Run, pos: int, kind: str) -> Group | None:
    named = run.view.index.by_name.get(kind)
    if not named:
        return None
    n = len(run.view.items)
    for turn in (0, n) if run.end > n else (0,):
        for g in named[bisect_left(named, (pos - turn,)) :]:
            if g.end + turn <= run.end:
                return Group(g.start + turn, g.end + turn, g.name)
    return None


def _middle_ahead(run: Run, pos: int, kind: str) -> Slot | None:
    """ "dc in next 2 dc, shell in next shell": the space of the one whose first stitches were just worked into; its others are still to come."""
    named = run.view.index.by_name.get(kind)
    if not named or not run.out or run.last is None or run.last.end != pos or run.last.end - run.last.start != 1:
        return None
    n = len(run.view.items)
    turn = n if pos >= n and run.end > n else 0
    at = bisect_left(named, (pos - turn,)) - 1
    if at < 0 or named[at].end <= pos - turn or CHAIN in run.view.items[named[at].start : pos - turn]:
        return None
    i = bisect_left(run.view.runs, (pos - turn,))
    if i == len(run.view.runs) or run.view.runs[i][1] >= named[at].end:
        return None
    return Slot(run.view.runs[i][0] + turn, run.view.runs[i][1] + turn, "space")


def _any_group(run: Run, pos: int, kind: str) -> Slot | None:
    run.once(f"group-{kind}", ((0.5, True),))
    g = next((g for g in run.view.groups if g.start >= pos and g.end <= run.end and g.end - g.start > 1), None)
    return Slot(g.start, g.end) if g is not None else None
