"""Live edges of a piece: row ends down one side, the other side of the foundation, row ends up the other, stitches left free.

Seen from the side that faces the maker, an edging goes round against the clock: along the top from right to left, down the left side,
along the bottom from left to right, up the right side. A row made with that side facing was made from right to left, one made with
the other side facing from left to right. Both hold for a right-handed maker and are mirrored together for a left-handed one
(common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import groupby

from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow
from loopwright.record import record
from loopwright.working.looked import Looked
from loopwright.working.sides import facings

_PLACE = {p: i for i, p in enumerate(PLACES)}
_LIVE = frozenset({ROLES.index("edge"), ROLES.index("counts"), ROLES.index("assumed")})
_JOIN = ROLES.index("join")
_COUNTS = ROLES.index("counts")
_DOWN, _UP = 1, 3  # left side, right side, as the maker sees them
_MANY = 40  # rows along edges from which the edges of those that follow are not looked at any more: no piece has as many
_MOST = 4  # stitches that go into the end of one row; a double treble is as high as four rows of double crochet
_STARTS_LOW = re.compile(r"\b(?:lower|bottom)\b", re.IGNORECASE)
_STARTS_HIGH = re.compile(r"\b(?:top|upper)\b", re.IGNORECASE)
_BY_ROW = re.compile(r"\b(?:each|every)\b[^,;.]*\b(?:rows?|rnds?|rounds?)\b|\b\d+\s+(?:\w+\s+)?(?:rows|rnds|rounds)\b", re.IGNORECASE)
_NEXT_SIDE = re.compile(r"\b(?:other|opposite|second|left|right|up|down)\b", re.IGNORECASE)
_TO_COMMA = re.compile(r"[^,;.()]*")
_RIGHT = re.compile(r"\bright(?!\s+side\s+fac)[\s-]+(?:\w+\s+)?(?:edge|side|corner|end)\b", re.IGNORECASE)
_LEFT = re.compile(r"\bleft[\s-]+(?:\w+\s+)?(?:edge|side|corner|end)\b", re.IGNORECASE)


@record
class Way:
    """How a row goes along edges. `right_side`: faces the maker. `anew`: the yarn was joined for it, so it may begin anywhere.

    `tops`: what its stitches into the row below are to the piece, "top" or "underside". `opening`: stitches left free that it was
    joined to. `begin`: where the words of the row begin.
    """

    piece: int
    right_side: bool
    anew: bool = False
    tops: str = "top"
    opening: tuple[int, ...] = ()
    begin: int = 0


@dataclass(slots=True)
class _Run:
    """Stitches that go along one edge one right after the other. `done`: they have their parents."""

    how: str
    stitches: list[int]
    done: bool = False
    side: int = 0


@dataclass(slots=True)
class Edges:
    """Finds the stitches that words like "along the row ends" mean, in a fabric that is being made.

    `cords`: rows that are a chain made in the air or stitches back along one. `along`: rows that were worked along edges.
    `taken`: stitches that have a row end worked into.
    """

    fabric: Fabric
    looked: Looked = field(default_factory=lambda: Looked(""))
    cords: set[int] = field(default_factory=set)
    along: set[int] = field(default_factory=set)
    taken: set[int] = field(default_factory=set)
    _stood: list[list[FabricRow]] = field(default_factory=list)  # what stands on one another in a piece, for the row in progress
    _piece: int = -1
    _chosen: dict[tuple[int, int, int], tuple[tuple[int, ...], list[int]]] = field(default_factory=dict)  # by a run's first stitch and side, and what is taken

    def rows(self, piece: int) -> list[FabricRow]:
        """The rows of a piece."""
        return [r for r in self.fabric.rows if r.piece == piece]

    def faces(self, piece: int) -> bool:
        """Whether the right side faced the maker in the last row of a piece."""
        sides = facings(self.rows(piece))
        return sides[-1] if sides else True

    # --- a row along edges ---------------------------------------------------------------------------------------

    def resolve(self, start: int, wanted: list[tuple[int, str]], way: Way) -> None:
        """Gives parents to stitches (numbers counted from `start`) of the row in progress that go into edges of the piece."""
        rows = self.rows(way.piece)
        same = {r.start: side == way.right_side for r, side in zip(rows, facings(rows), strict=True)}
        runs, corners = self._runs(start, dict(wanted), way)
        if len(self.along) < _MANY or way.piece != self._piece:
            self._stood, self._piece = [], way.piece
        self._chosen.clear()
        self._place_runs(runs, rows, same, way)
        opening = list(way.opening)
        for run in sorted(runs, key=lambda r: r.how != "free"):
            if run.done:
                continue
            if run.how == "row-end":
                ends = self._ends(run, rows, same)
                self._spread(run.stitches, ends, run.how)
                self.taken.update(ends)
            elif run.how == "underside":
                bridge = self._bridge(rows, opening, same)
                self._spread(run.stitches, bridge or self._underside(rows, same, len(run.stitches)), run.how)
            elif run.how == "free":
                opening = self._free(rows, len(run.stitches), same)
                self._spread(run.stitches, opening, "top")
        for stitch in corners:
            self._as_before(stitch, start)
        if any(r.how == "row-end" for r in runs):
            self.along.add(len(self.fabric.rows))

    def free(self, many: int, way: Way) -> list[int]:
        """So many stitches that earlier rows of a piece left free, in the order in which they are met; none where there are not as many."""
        rows = self.rows(way.piece)
        found = self._free(rows, many, {r.start: side == way.right_side for r, side in zip(rows, facings(rows), strict=True)})
        return found if len(found) == many else []

    def underside(self, many: int, way: Way) -> list[int]:
        """The other side of the foundation as so many stitches meet it; empty where the piece has none."""
        rows = self.rows(way.piece)
        edge = self._underside(rows, {r.start: side == way.right_side for r, side in zip(rows, facings(rows), strict=True)}, many)
        return [edge[i * len(edge) // many] for i in range(many)] if edge else []

    def closes(self, start: int) -> bool:
        """Whether the row in progress, from stitch `start`, is a tie that ends with a slip stitch into the edging's first stitch.

        The edging began where the work was last turned. The slip stitch gets its parent.
        """
        f, rows = self.fabric, self.fabric.rows
        if len(rows) not in self.cords:
            return False
        first = len(rows) - 1
        while first > 0 and not rows[first].turned_before and rows[first - 1].piece == rows[first].piece:
            first -= 1
        goal = next((s for s in range(rows[first].start, rows[first].end) if f.role[s] in _LIVE), -1)
        for stitch in range(start, len(f)):
            if f.role[stitch] == _JOIN and goal >= 0:
                f.into[stitch], f.many[stitch] = goal, 0
        return True

    def _runs(self, start: int, hows: dict[int, str], way: Way) -> tuple[list[_Run], list[int]]:
        """The row's stitches by the edge they go along, and those in corners. Chains between them break no run."""
        f = self.fabric
        runs: list[_Run] = []
        corners: list[int] = []
        for s in range(start, len(f)):
            how = hows.get(s - start, "")
            if how == "corner":
                corners.append(s)
            elif how or f.role[s] in _LIVE and 0 <= f.into[s] < start:
                done, how = not how, how or way.tops
                last = runs[-1] if runs else None
                if last is not None and last.how == how and last.done == done and not self._another_side(how, last.stitches[-1], s, corners):
                    last.stitches.append(s)
                else:
                    runs.append(_Run(how, [s], done))
        if len(runs) > 1 and runs[0].how == "top" and len(runs[0].stitches) == 1 and f.role[runs[0].stitches[0]] == _COUNTS:
            runs[1].stitches.insert(0, runs[0].stitches[0])  # the start chain stands where the first stitches go
            del runs[0]
        return runs, corners

    def _another_side(self, how: str, before: int, stitch: int, corners: list[int]) -> bool:
        """Whether a stitch into a row end goes along another side than the one before it: past a corner, or where the words say so."""
        f = self.fabric
        if how != "row-end" or f.origin[before] == f.origin[stitch]:
            return False
        return bool(corners) and corners[-1] > before or _NEXT_SIDE.search(self._words(stitch)) is not None

    def _as_before(self, stitch: int, start: int) -> None:
        """A corner: in the same place as the stitch before it, or as the next one where it comes first."""
        f = self.fabric
        ahead = (*range(stitch - 1, start - 1, -1), *range(stitch + 1, len(f)))
        near = next((s for s in ahead if f.into[s] >= 0 and f.role[s] in _LIVE), None)
        if near is not None:
            f.into[stitch], f.many[stitch], f.place[stitch] = f.into[near], 0, f.place[near]

    def _spread(self, stitches: list[int], edge: list[int], place: str) -> None:
        """One after the other into an edge: one each where the numbers are equal, evenly over it where they are not."""
        f = self.fabric
        for i, stitch in enumerate(stitches):
            if edge:
                f.into[stitch], f.many[stitch] = edge[i * len(edge) // len(stitches)], 0
                f.place[stitch] = _PLACE[place]

    # --- which side ----------------------------------------------------------------------------------------------

    def _place_runs(self, runs: list[_Run], rows: list[FabricRow], same: dict[int, bool], way: Way) -> None:
        """Tells for each run of row ends which side of the piece it goes along, by what comes before and after it."""
        for i, run in enumerate(runs):
            if run.how != "row-end":
                continue
            before = runs[i - 1].how if i else ""
            after = runs[i + 1].how if i + 1 < len(runs) else ""
            if before:
                run.side = _DOWN if before == "top" else _UP if before != "row-end" or runs[i - 1].side == _DOWN else _DOWN
            elif after and after != "row-end":
                run.side = _UP if after == "top" else _DOWN
            else:
                run.side = self._first_side(run, rows, same, way)

    def _first_side(self, run: _Run, rows: list[FabricRow], same: dict[int, bool], way: Way) -> int:
        """The side on which a row begins that goes along row ends from its start."""
        first = run.stitches[0]
        lead, words = self.looked.cut(way.begin, self.fabric.origin[first]), self._words(first)
        for pattern, side in ((_STARTS_LOW, _UP), (_STARTS_HIGH, _DOWN)) if way.anew else ():
            if pattern.search(lead):
                return side
        for pattern, side in ((_RIGHT, _UP), (_LEFT, _DOWN)):
            if pattern.search(words) or way.anew and pattern.search(lead):
                return side
        worth = {side: self._best(_Run(run.how, run.stitches, side=side), rows, same)[0] for side in (_DOWN, _UP)}
        return _UP if worth[_UP] > worth[_DOWN] else _DOWN

    def _ends(self, run: _Run, rows: list[FabricRow], same: dict[int, bool]) -> list[int]:
        """The stitches at the row ends that a run goes along, in the order in which it meets them."""
        ends = self._best(run, rows, same)[1]
        return ends[::-1] if run.side == _DOWN else ends

    def _best(self, run: _Run, rows: list[FabricRow], same: dict[int, bool]) -> tuple[tuple[int, ...], list[int]]:
        """The row ends that a run most likely goes along on its side, upwards, and what speaks for them."""
        key = run.stitches[0], run.side, len(self.taken)
        if key not in self._chosen:
            self._chosen[key] = self._likeliest(run, rows, same)
        return self._chosen[key]

    def _likeliest(self, run: _Run, rows: list[FabricRow], same: dict[int, bool]) -> tuple[tuple[int, ...], list[int]]:
        best: tuple[tuple[int, ...], list[int]] = ((), [])
        words = self._words(run.stitches[-1])
        by_row = _BY_ROW.search(words) is not None
        for found in self._candidates(rows):
            ends = []
            for r in found:
                end = self._end(r, last=same[r.start] == (run.side == _DOWN))
                if end >= 0:
                    ends.append(end)
            if not ends:
                continue
            many = len(run.stitches)
            exact = many % len(ends) == 0 and many <= _MOST * len(ends)
            likely = len(ends) <= 2 * many and many <= _MOST * len(ends)
            named = all(r.section and r.section.lower() in words for r in found)
            free = not self.taken.intersection(ends)
            worth = (named, exact, likely, free, len(ends)) if by_row else (named, likely, free, len(ends), exact)
            if worth > best[0]:
                best = worth, ends
        return best

    def _words(self, stitch: int) -> str:
        """What is said of a stitch, up to the next comma."""
        f = self.fabric
        said = _TO_COMMA.match(self.looked.text, f.origin_end[stitch])
        end = said.end() if said else f.origin_end[stitch]
        return self.looked.cut(f.origin[stitch], end + 1)[: end - f.origin[stitch]].lower()

    def _candidates(self, rows: list[FabricRow]) -> Iterator[list[FabricRow]]:
        """Rows that may be the ones whose ends are meant: those that stand on one another, and the sections of them."""
        if not self._stood:
            self._stood = self._blocks(rows)
        for block in self._stood:
            yield block
            sections = [list(g) for _, g in groupby(block, key=lambda r: r.section)]
            for i in range(len(sections)):
                for j in range(i + 1, len(sections) + 1):
                    if j - i < len(sections):
                        yield [r for section in sections[i:j] for r in section]

    def _blocks(self, rows: list[FabricRow]) -> list[list[FabricRow]]:
        """Rows with ends, those that stand on one another together: a row worked along edges begins a block of its own."""
        f = self.fabric
        block_of: dict[int, int] = {}
        blocks: dict[int, list[FabricRow]] = {}
        flat = [r for r in rows if not r.joined and (r.turned or r.turned_before)]
        ended = {r.start for r in flat} or {r.start for r in rows}
        for r in rows:
            if r.end <= r.start or self._is_foundation(r):
                continue
            index = f.row[r.start]
            if index in self.cords:
                continue
            parent = next((f.into[s] for s in range(r.start, r.end) if 0 <= f.into[s] < r.start), -1)
            below = f.row[parent] if parent >= 0 else -1
            block = index if index in self.along else block_of.get(below, -1)
            block_of[index] = block
            if r.start in ended:
                blocks.setdefault(block, []).append(r)
        return list(blocks.values())

    def _end(self, row: FabricRow, *, last: bool) -> int:
        """The first or the last stitch of a row's top; -1 where it has none."""
        if not last and row.borrowed:
            return row.borrowed[0]
        role = self.fabric.role
        there = range(row.end - 1, row.start - 1, -1) if last else range(row.start, row.end)
        return next((s for s in there if role[s] in _LIVE), row.borrowed[0] if row.borrowed else -1)

    def _live(self, row: FabricRow) -> list[int]:
        """Stitches of a row's top, in the order of making."""
        return [*row.borrowed, *(s for s in range(row.start, row.end) if self.fabric.role[s] in _LIVE)]

    def _is_foundation(self, row: FabricRow) -> bool:
        f = self.fabric
        return all(f.into[s] < 0 and f.kinds[f.kind[s]] == "ch" for s in (row.start, row.end - 1))

    # --- the other side of a chain -------------------------------------------------------------------------------

    def _underside(self, rows: list[FabricRow], same: dict[int, bool], many: int) -> list[int]:
        """The chains of the foundation, from left to right as the maker sees them.

        Those that the first row went into where they are as many as asked for; else all it stands on, passed over or not, the chain
        below the stitch that skipped chains count as among them.
        """
        if len(rows) < 2 or not self._is_foundation(rows[0]):
            return []
        f, base, first = self.fabric, rows[0], rows[1]
        used = list(dict.fromkeys(p for s in self._live(first) for p in f.parents(s) if base.start <= p < base.end and s >= first.start))
        if not used:
            return []
        step = 1 if used[-1] > used[0] else -1
        corner = [used[0] - step] if first.borrowed and base.start <= used[0] - step < base.end else []
        whole = list(range(used[0], used[-1] + step, step))
        ways = [used, whole, [*corner, *used], [*corner, *whole]]
        found = next((w for w in ways if len(w) == many), ways[-1])
        return found[::-1] if same[first.start] else found

    def _bridge(self, rows: list[FabricRow], opening: list[int], same: dict[int, bool]) -> list[int]:
        """The chains that bridge an opening over free stitches, from left to right as the maker sees them; none where nothing does."""
        f = self.fabric
        if not opening:
            return []
        at = next((i for i, r in enumerate(rows) if r.start <= opening[0] < r.end), len(rows))
        low, high = min(opening), max(opening)
        for r in rows[at + 1 : at + 2]:
            live = [s for s in range(r.start, r.end) if f.role[s] in _LIVE]
            runs = [list(g) for chain, g in groupby(live, key=lambda s: f.kinds[f.kind[s]] == "ch" and f.into[s] < 0) if chain]
            over = [run for run in runs if self._stands_over(live, run, low, high)] or [run for run in runs if len(run) == len(opening)]
            if over:
                return over[0][::-1] if same[r.start] else over[0]
        return []

    def _stands_over(self, live: list[int], run: list[int], low: int, high: int) -> bool:
        """Whether the stitches before and after a run of chains stand on either side of the stitches `low` … `high`."""
        f = self.fabric
        a, b = live.index(run[0]) - 1, live.index(run[-1]) + 1
        if a < 0 or b >= len(live):
            return False
        feet = sorted((f.into[live[a]], f.into[live[b]]))
        return feet[0] < low and high < feet[1]

    # --- stitches left free --------------------------------------------------------------------------------------

    def _free(self, rows: list[FabricRow], many: int, same: dict[int, bool]) -> list[int]:
        """Stitches left free: a run of at least so many in the latest row that was worked into elsewhere; else a row never worked into."""
        f = self.fabric
        used: set[int] = set()
        whole: list[int] = []
        for i in range(len(rows) - 1, -1, -1):
            row = rows[i]
            live = self._live(row) if f.row[row.start] not in self.cords else []
            live = live if same[row.start] else live[::-1]
            worked = used.intersection(live)
            if worked:
                fit = self._long_enough([list(g) for free, g in groupby(live, key=lambda s: s not in worked) if free], many)
                if fit:
                    return fit
            elif not whole and (i < len(rows) - 1 or len(rows) == 1) and len(live) >= many:
                whole = live[:many]
            above = range(row.start, row.end)
            used.update(p for s in above for p in f.parents(s))
        return whole

    def _long_enough(self, runs: list[list[int]], many: int) -> list[int]:
        """So many stitches of the first run that has as many: of its stitches where they are enough, else of its chains too."""
        f = self.fabric
        for run in runs:
            stitches = [s for s in run if f.kinds[f.kind[s]] != "ch" or f.role[s] == _COUNTS]
            if len(run) == many or len(stitches) >= many:
                return run if len(run) == many else stitches[:many]
        return next((run[:many] for run in runs if len(run) >= many), [])
