"""Live edges of a piece: row ends down one side, the other side of the foundation, row ends up the other, stitches left free."""

from __future__ import annotations

from itertools import groupby

from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow

_PLACE = {p: i for i, p in enumerate(PLACES)}
_LIVE = frozenset({ROLES.index("edge"), ROLES.index("counts"), ROLES.index("assumed")})


def _runs(wanted: list[tuple[int, str]]) -> list[tuple[str, list[int]]]:
    """Stitches that go along one edge one right after the other."""
    found: list[tuple[str, list[int]]] = []
    for stitch, how in wanted:
        if found and found[-1][0] == how and found[-1][1][-1] == stitch - 1:
            found[-1][1].append(stitch)
        else:
            found.append((how, [stitch]))
    return found


class Edges:
    """Finds the stitches that words like "along the row ends" mean, in a fabric that is being made."""

    def __init__(self, fabric: Fabric) -> None:
        self.fabric = fabric

    def resolve(self, start: int, wanted: list[tuple[int, str]], piece: int, turned: bool) -> None:
        """Gives parents to stitches (numbers counted from `start`) that go into an edge of the piece. `turned`: just before.

        The edge is followed from where the last row ended, or where these stitches came to when they went along its top first:
        down that side, along the foundation, up the other side.
        """
        rows = [r for r in self.fabric.rows if r.piece == piece]
        away = turned and any(self.fabric.into[s] >= 0 for s in range(start, start + wanted[0][0]))
        sides = 0
        opening: list[int] = []
        for how, run in _runs(wanted):
            stitches = [start + s for s in run]
            if how == "row-end":
                self._spread(stitches, self._side(rows, sides, away), how)
                sides += 1
            elif how == "underside":
                self._spread(stitches, self._above(rows, opening) or self._underside(rows, away), how)
                sides = max(sides, 1)
            elif how == "corner":
                last = stitches[0] - 1  # in the same place as the stitch before the corner
                self._spread(stitches, [s for s in (self.fabric.into[last],) if s >= 0], PLACES[self.fabric.place[last]])
            elif how == "free":
                opening = self._free(rows, len(stitches), turned)
                self._spread(stitches, opening, "top")

    def free(self, piece: int, many: int, turned: bool) -> list[int]:
        """So many stitches that earlier rows of a piece left free, in the order in which they are met; none where there are not as many."""
        return self._free([r for r in self.fabric.rows if r.piece == piece], many, turned)

    def _spread(self, stitches: list[int], edge: list[int], place: str) -> None:
        """One after the other into an edge: one each where the numbers are equal, evenly over it where they are not."""
        f = self.fabric
        for i, stitch in enumerate(stitches):
            if edge:
                f.into[stitch], f.many[stitch] = edge[i * len(edge) // len(stitches)], 0
                f.place[stitch] = _PLACE[place]

    def _live(self, row: FabricRow) -> list[int]:
        """Stitches of a row's top, in the order of making."""
        return [*row.borrowed, *(s for s in range(row.start, row.end) if self.fabric.role[s] in _LIVE)]

    def _is_foundation(self, row: FabricRow) -> bool:
        f = self.fabric
        return all(f.into[s] < 0 and f.kinds[f.kind[s]] == "ch" for s in (row.start, row.end - 1))

    def _side(self, rows: list[FabricRow], which: int, away: bool) -> list[int]:
        """Stitches at the row ends: 0 the side where the last row ended (began, if `away`), from the top down; 1 the other side, upwards."""
        body = [r for r in rows if r.end > r.start and not self._is_foundation(r)]
        found = []
        at_end = (which % 2 == 0) != away
        for r in reversed(body):
            live = self._live(r)
            if live:
                found.append(live[-1] if at_end else live[0])
            at_end = at_end != r.turned_before
        return found if which % 2 == 0 else found[::-1]

    def _underside(self, rows: list[FabricRow], away: bool) -> list[int]:
        """The chains of the foundation that the first row went into, from the side where the last row ended (began, if `away`)."""
        if len(rows) < 2 or not self._is_foundation(rows[0]):
            return []
        first = rows[1]
        chains = list(dict.fromkeys(self.fabric.into[s] for s in self._live(first) if rows[0].start <= self.fabric.into[s] < rows[0].end))
        at_end = not away
        for r in reversed(rows[2:]):
            at_end = at_end != r.turned_before
        return chains[::-1] if at_end else chains

    def _free(self, rows: list[FabricRow], many: int, turned: bool) -> list[int]:
        """Stitches left free: a run of at least so many in the latest row that has one; that of the row below last of all."""
        used = self._used(rows)
        away = turned
        for i in range(len(rows) - 1, -1, -1):
            row = rows[i]
            runs = [list(g) for free, g in groupby(self._live(row), key=lambda s: s not in used) if free]
            fit = [run for run in runs if len(run) >= many]
            if fit and (i < len(rows) - 1 or len(rows) == 1):
                return fit[-1][: -many - 1 : -1] if away else fit[-1][:many]
            away = away != row.turned_before
        return []

    def _above(self, rows: list[FabricRow], opening: list[int]) -> list[int]:
        """The chains that bridge an opening over free stitches, from the far side back; none where nothing bridges it."""
        f = self.fabric
        if not opening:
            return []
        row = next((i for i, r in enumerate(rows) if r.start <= opening[0] < r.end), len(rows))
        for r in rows[row + 1 : row + 2]:
            live = [f.kinds[f.kind[s]] == "ch" and f.role[s] in _LIVE for s in range(r.start, r.end)]
            runs = [list(g) for chain, g in groupby(range(r.start, r.end), key=lambda s: live[s - r.start]) if chain]
            fit = [run for run in runs if len(run) == len(opening)]
            if fit:
                return fit[0][::-1] if (opening[-1] > opening[0]) != r.turned_before else fit[0]
        return []

    def _used(self, rows: list[FabricRow]) -> set[int]:
        if not rows:
            return set()
        f = self.fabric
        return {p for s in range(rows[0].start, len(f)) for p in f.parents(s)}
