"""Relaxing one part: where it begins, which of two beginnings ends lower, stuffing, contact, and when it is at rest."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from loopwright.measuring.relax.branches import branch_rows, grow
from loopwright.measuring.relax.contact import LARGEST, Contact
from loopwright.measuring.relax.curvature import angle_deficits
from loopwright.measuring.relax.descent import Factor, Limits, Outcome, Past, descend
from loopwright.measuring.relax.energy import Energy, Force, strains
from loopwright.measuring.relax.part import Part, part_of
from loopwright.measuring.relax.rows import by_rows
from loopwright.measuring.relax.shape import RelaxOptions
from loopwright.measuring.relax.starts import by_distance, by_rounds, hangs_together, saddle
from loopwright.measuring.relax.stuffing import OPEN, Stuffing, Volume, surface
from loopwright.measuring.relax.tops import Floats

JITTER = 0.02
# Steps after which two beginnings of a large part are compared, at once for each look for contacts, and in all.
FIRST_STEPS = 60
LOOK_STEPS = 40
ALL_STEPS = 3000
# Parts of fewer nodes try every beginning to the end.
SMALL_PART = 4000
# A part whose rest lengths hold this much less than no curvature, in radians, has stitches to spare.
EXCESS = -0.3
# A shape whose edges are off by more than this share in the mean is not the fabric's: something was worked where it cannot be.
FITS = 0.1
# A shape whose layers push one another about is given up where so many looks in a row take less than this share off its energy.
STALLED_LOOKS = 6
STALLED_SHARE = 0.02
# More nodes than this are not factored: their start is given as it is.
LARGEST_PART = 250_000


@dataclass(slots=True)
class Solver:
    """One part being relaxed in stitch widths. `until`: time.monotonic to stop at; `each`: called with the number of every step."""

    part: Part
    options: RelaxOptions
    until: float
    each: Callable[[int], None] | None = None
    why: str = ""
    steps: int = 0
    volume: Volume = field(init=False)
    energy: Energy = field(init=False)

    def __post_init__(self) -> None:
        self.volume = Volume(self.part.tris, len(self.part))
        self.energy = self.part.energy(self.options.bending)

    def run(self) -> Floats:
        """Its points, (n, 3). Sets `why` where it did not come to rest or was not filled as asked."""
        part, rng = self.part, np.random.default_rng(self.options.seed)
        if len(part) == 1:
            return np.zeros((1, 3))
        begun = [self._right_way_out(x + rng.normal(0, JITTER, x.shape)) for x in starts(part, self.options, self.until)]
        if len(part) > LARGEST_PART:
            self.why = "too large"
            return begun[0]
        factor = Factor(self.energy, begun[0])
        found = self._lowest(factor, begun)
        return self._settle(factor, found)

    def _right_way_out(self, x: Floats) -> Floats:
        """Mirrored where the right side would lie inward."""
        return x * np.array([1.0, -1.0, 1.0]) if self.volume(x)[0] < 0 else x

    def _lowest(self, factor: Factor, begun: list[Floats]) -> Outcome:
        steps = ALL_STEPS if len(self.part) <= SMALL_PART and len(begun) > 1 else FIRST_STEPS
        found = [self._descend(factor, x, steps) for x in begun]
        return min(found, key=lambda o: o.energy)

    def _descend(self, factor: Factor, x: Floats, steps: int, past: Past | None = None) -> Outcome:
        return descend(self.energy, factor, x, Limits(steps, self.until, each=self._tell), past)

    def _tell(self, _step: int) -> None:
        self.steps += 1
        if self.each is not None:
            self.each(self.steps)

    def _settle(self, factor: Factor, found: Outcome) -> Floats:
        """On to rest, with stuffing and contact."""
        contact = Contact(self.part.pairs, len(self.part)) if len(self.part) <= LARGEST else None
        filling = self._filling(found.x)
        forces: list[Force] = [*filling]
        self.energy.more = forces
        rested = found.rested and not filling
        x, done, shaken, past = found.x, 0, 0, found.past
        energies: list[float] = []
        while done < ALL_STEPS and time.monotonic() < self.until:
            touches = contact is not None and contact.look(x)
            self.energy.more = [*forces, contact] if touches and contact is not None else forces
            if rested and (not touches or shaken > 2):
                break
            outcome = self._descend(factor, x, LOOK_STEPS if touches or filling else ALL_STEPS - done, past)
            x, rested, done, past = outcome.x, outcome.rested, done + max(outcome.steps, 1), outcome.past
            shaken += int(rested and touches)
            energies.append(outcome.energy)
            if not rested and _stalled(energies):
                break
        if not rested:
            self.why = "time" if time.monotonic() >= self.until else "no more progress" if _stalled(energies) else "steps"
        strain = np.abs(strains(x, self.part.pairs, self.part.rest))
        if not self.why and len(strain) and strain.mean() > FITS:
            self.why = "lengths do not fit together"
        if not np.isfinite(x).all():
            self.why = "collapsed"
            return found.x if np.isfinite(found.x).all() else np.zeros_like(x)
        return x

    def _filling(self, x: Floats) -> list[Force]:
        """The stuffing that was asked for; none where the piece is open."""
        pieces = np.unique(self.part.graph.piece[self.part.nodes])
        pressure = max((self.options.pressure(int(p)) for p in pieces), default=0.0)
        if pressure <= 0 or not np.isfinite(pressure):
            return []
        area = surface(self.part.tris, x)
        if not len(self.part.tris) or self.volume.largest_opening(x) > OPEN * area:
            self.why = "stuffing in an open piece"
            return []
        return [Stuffing(self.volume, pressure, area)]


def _stalled(energies: list[float]) -> bool:
    """Whether the last looks for contacts brought hardly anything."""
    before, lately = energies[:-STALLED_LOOKS], energies[-STALLED_LOOKS:]
    return bool(before) and min(lately) > (1 - STALLED_SHARE) * min(before)


def starts(part: Part, options: RelaxOptions, until: float) -> list[Floats]:
    """Where the part may begin, the likeliest first."""
    rounds = by_rounds(part.graph, part.nodes)
    found = [rounds[part.nodes] / part.unit_mm] if rounds is not None else [_better(part, _staged(part, options, until))]
    if rest_curvature(part) < EXCESS:
        found.append(saddle(part, found[0], rounds is not None))
    return found


def _better(part: Part, x: Floats) -> Floats:
    """A start by distances, or row over row where that is strained less."""
    rows = by_rows(part.graph, part.nodes)
    if rows is None:
        return x
    laid = rows[part.nodes] / part.unit_mm
    one, two = (float(np.square(strains(p, part.pairs, part.rest)).sum()) for p in (x, laid))
    return laid if two <= one else x


def rest_curvature(part: Part) -> float:
    """Total curvature that the rest lengths ask for, radians, the rim left out; below 0 there are stitches to spare."""
    h = part.hinges[0]
    return float(angle_deficits(h.nodes, h.lengths_mm, len(part)).sum()) if len(h.nodes) else 0.0


def _staged(part: Part, options: RelaxOptions, until: float) -> Floats:
    """By distances; thumbs and sleeves grown out of the relaxed body."""
    branches = branch_rows(part.graph, part.nodes)
    along = part.graph.along
    grown = np.zeros(len(part.graph), bool)
    for rows in branches:
        for row in rows:
            grown[along.node[along.start[row] : along.start[row + 1]]] = True
    nodes = part.nodes[~grown[part.nodes]]
    if not branches or not len(nodes):
        return by_distance(part.pairs, part.rest, len(part))
    body = part_of(part.graph, nodes)
    if len(body) < 2 or not hangs_together(body.pairs, len(body)):
        return by_distance(part.pairs, part.rest, len(part))
    x = np.zeros((len(part.graph), 3))
    x[nodes] = Solver(body, RelaxOptions(seed=options.seed, bending=options.bending), until).run() * part.unit_mm
    laid = np.zeros(len(part.graph), bool)
    laid[nodes] = True
    for rows in branches:
        grow(part.graph, rows, x, laid)
    return x[part.nodes] / part.unit_mm
