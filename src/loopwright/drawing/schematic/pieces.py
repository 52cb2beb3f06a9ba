"""Which figures a fabric is drawn as: its parts by piece, each in the way that its kind is drawn."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from loopwright.drawing.schematic import flats, fronts, garments, rounds
from loopwright.drawing.schematic.book import SAME, Book
from loopwright.drawing.schematic.figure import Figure
from loopwright.drawing.schematic.ripples import ripple
from loopwright.measuring.courses import FEW, Course
from loopwright.measuring.parts import Part, pieces
from loopwright.measuring.ranges import width_mm
from loopwright.model.fabric import PLACES, Fabric

THIN = 0.05  # a round edging less deep than this share of its length is told, not drawn
TOGETHER = 0.5  # mean direction of decreases around a round, 1 where all lie in one place
SHORT = 0.02  # a length shorter than this share of its figure is told, not drawn


@dataclass(slots=True)
class Drawn:
    """Figures, and the measurements that are told without a drawing."""

    figures: list[Figure] = field(default_factory=list)
    told: list[int] = field(default_factory=list)


def figures_of(fabric: Fabric, rows: Sequence[Course], cut: Sequence[Part], book: Book) -> Drawn:
    """The figures of a fabric, in the order of making.

    A piece made alike again is drawn once, if it goes by the same name or is joined to others as it is made, as motifs are.
    """
    drawn = Drawn()
    before: list[list[Part]] = []
    for own in pieces(cut).values():
        joined = _is_joined(fabric, own)
        if any(_alike(own, other) and (joined or own[0].section == other[0].section) for other in before):
            continue
        before.append(own)
        edgings = _edgings(own, rows)
        drawn.told += [i for p in edgings for i in book.of_parts([p])]
        _Piece(fabric, rows, [p for p in own if p not in edgings], book, drawn).draw()
    if fabric.layout is not None:
        whole = flats.laid_out(cut[-1], fabric.layout, book)
        drawn.figures += [whole] if whole is not None else []
    for figure in drawn.figures:
        _without_short(figure, drawn)
    drawn.told = _once(drawn.told, book)
    return drawn


def _alike(own: Sequence[Part], other: Sequence[Part]) -> bool:
    """Made of the same rounds, but for the last, in which pieces are joined to others."""
    mine, theirs = ([c for p in parts for c in p.courses] for parts in (own, other))
    if len(mine) != len(theirs) or len(mine) < 2 or [p.kind for p in own] != [p.kind for p in other]:
        return False
    return all(abs(a.top_mm - b.top_mm) <= SAME * a.top_mm for a, b in zip(mine[:-1], theirs[:-1], strict=True))


def _is_joined(fabric: Fabric, own: Sequence[Part]) -> bool:
    """Whether its last row is worked into other pieces too."""
    row = fabric.rows[own[-1].courses[-1].index]
    return any(fabric.rows[fabric.row[p]].piece != row.piece for s in range(row.start, row.end) for p in fabric.parents(s))


def _edgings(own: Sequence[Part], rows: Sequence[Course]) -> list[Part]:
    """Parts worked along other pieces' edges, which have no outline of their own."""
    found: list[Part] = []
    along: set[int] = set()
    for part in own:
        first = part.courses[0]
        below = rows[first.below] if 0 <= first.below < len(rows) else None
        bare = part.kind == "tube" and below is not None and below.assumed and part.height_mm < THIN * first.top_mm
        on_rim = first.way == "along" and part.kind != "edge" or first.below in along
        if bare or on_rim:
            found.append(part)
            along.update(range(part.rows[0], part.rows[1] + 1))
    return found


def _once(told: Sequence[int], book: Book) -> list[int]:
    """Each length of a section once."""
    by_value: dict[tuple[str | None, int], int] = {}
    for i in told:
        by_value.setdefault((book.entries[i].section, round(book.value_mm(i))), i)
    return sorted(by_value.values())


def _without_short(figure: Figure, drawn: Drawn) -> None:
    x0, y0, x1, y1 = figure.box
    least = SHORT * max(x1 - x0, y1 - y0)
    drawn.told += [s.entry for s in figure.spans if s.length_mm < least]
    figure.spans = [s for s in figure.spans if s.length_mm >= least]


@dataclass(slots=True)
class _Piece:
    """One piece being drawn."""

    fabric: Fabric
    rows: Sequence[Course]
    own: list[Part]
    book: Book
    drawn: Drawn

    def draw(self) -> None:
        """Its figures, one after the other."""
        flat = [p for p in self.own if p.kind == "flat"]
        round_ = [p for p in self.own if p.kind in ("disc", "oval", "tube")]
        branches = [p for p in round_ if self._is_branch(p)]
        body = [p for p in round_ if p not in branches]
        ties = [p for p in self.own if p.kind == "tie"]
        if flat and body and body[0].kind == "tube" and body[0].courses[0].row_ends:
            self._add(rounds.laid_flat([flat[0], *body], branches, self.book))
            flat, body, branches = flat[1:], [], []
        if body:
            self._round(body, branches if not flat else [])
        if flat:
            if self._flat(flat, body, branches):
                branches = []
            for part in branches:
                self._add(rounds.laid_flat([part], [], self.book, rounds.Lay(up=False)))
        self._ties(ties)
        left = [p for p in self.own if p.kind in ("edge", "border")]
        self.drawn.told += [i for p in left for i in self.book.of_parts([p])]

    def _add(self, figure: Figure | None) -> bool:
        if figure is None or not figure.strokes:
            return False
        self.drawn.figures.append(figure)
        return True

    def _is_branch(self, part: Part) -> bool:
        """Whether a tube takes only a part of a row that others go on from: a thumb, a sleeve."""
        first = part.courses[0]
        if part.kind != "tube" or not 0 <= first.below < first.index - 1 or first.row_ends:
            return False
        below = self.rows[first.below]
        return below.way != "chain" and not below.assumed and first.uses < FEW * below.places

    def _round(self, body: list[Part], branches: list[Part]) -> None:
        if body[0].kind == "oval":
            self._add(flats.oval(body[0], self.book))
            if len(body) > 1:
                self._add(rounds.laid_flat(body[1:], branches, self.book, rounds.Lay(up=True, heel=one_sided(self.fabric, body[1:]))))
        elif len(body) == 1 and body[0].kind == "disc":
            self._add(flats.disc(body[0], self.book))
        elif not self._add(rounds.stuffed(body, self.book) if body[0].kind == "disc" else None):
            self._add(rounds.laid_flat(body, branches, self.book))

    def _flat(self, flat: list[Part], body: list[Part], branches: list[Part]) -> bool:
        """Pieces of rows; whether their branches were drawn with them."""
        own, book = self.own, self.book
        if not body and self._add(flats.triangle(own, flat[0], book) or flats.half_circle(own, flat[0], book)):
            self.drawn.told += [i for p in flat[1:] if (i := book.find(p, "depth")) is not None]
            return False
        opened = garments.yoke(self.fabric, flat[0], book) if flat[0].corners else None
        if opened is not None:
            self._add(opened)
            start = book.find(flat[0], "width at the start")
            self.drawn.told += [start] if start is not None else []
            whole = fronts.raglan(self.fabric, flat[0], flat[1], branches[0], book) if len(flat) == 2 and branches else None
            if self._add(whole):
                return True
            flat = flat[1:]
        for run in _runs(flat):
            last = run[-1].courses[-1]
            waves = ripple(self.fabric, run[0].courses[len(run[0].courses) // 2], width_mm(last)) if len(run) == 1 else []
            figure = flats.rows(own, run, book, waves)
            if body and body[-1].kind == "disc" and run[0].courses[0].below == body[-1].rows[1]:
                garments.from_part_of_a_rim(self.drawn.figures[-1], figure, body[-1], run[0], book)
            self._add(figure)
        return False

    def _ties(self, ties: list[Part]) -> None:
        """Each length once."""
        lengths: list[float] = []
        for part in ties:
            long = part.courses[0].top_mm
            if not any(math.isclose(long, other, rel_tol=SAME) for other in lengths):
                self._add(flats.strip(part, self.book))
            lengths.append(long)


def _runs(flat: Sequence[Part]) -> list[list[Part]]:
    """Sections that follow one another at one width, together."""
    runs: list[list[Part]] = []
    for part in flat:
        last = runs[-1][-1].courses[-1] if runs else None
        first = part.courses[0]
        if last is not None and first.below == last.index and abs(width_mm(first) - width_mm(last)) <= SAME * width_mm(last):
            runs[-1].append(part)
        else:
            runs.append([part])
    return runs


def one_sided(fabric: Fabric, body: Sequence[Part]) -> bool:
    """Whether its decreases lie together on one side, as those of a toe do."""
    at: list[complex] = []
    for c in (c for p in body for c in p.courses):
        many = max(1, c.row.end - c.row.start)
        fewer = [s for s in range(c.row.start, c.row.end) if fabric.many[s] and PLACES[fabric.place[s]] == "top"]
        at += [cmath.exp(2j * math.pi * (s - c.row.start) / many) for s in fewer]
    return bool(at) and abs(sum(at)) > TOGETHER * len(at)
