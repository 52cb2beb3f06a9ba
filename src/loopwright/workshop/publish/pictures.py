"""The drawings of an edition, each drawn once however many editions show it."""

from __future__ import annotations

from typing import Literal

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.copies import copies_told
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.publishing.document import Edition, Picture
from loopwright.publishing.document.pattern import Drawn, Pictures
from loopwright.publishing.document.steps import slug
from loopwright.publishing.document.words import worked_in
from loopwright.workshop.measure import Measured

COVER_PX = 900
COVER_BUDGET_S = 0.4
MOST_CHARTS = 24


class Studio:
    """Draws what editions ask for and keeps it: charts by size, hand and terms; schematics by size; one cover."""

    def __init__(self, measured: Measured) -> None:
        """`measured`: the pattern in all its sizes."""
        self.measured = measured
        self._charts: dict[tuple[int, bool, str], tuple[Drawn, ...]] = {}
        self._schematics: dict[int | None, tuple[Drawn, ...]] = {}
        self._cover: list[Drawn | None] = []
        self.notes: list[str] = []

    def pictures(self, edition: Edition) -> Pictures:
        """What an edition shows; nothing for words alone, and no cover where ink is saved."""
        if edition.words_only or self.measured.gauge.sizes is None:
            return Pictures()
        return Pictures(self.charts(edition), self.schematics(edition), None if edition.ink_saving else self.cover())

    def charts(self, edition: Edition) -> tuple[Drawn, ...]:
        """Charts in the edition's size, or in the one that the sample was worked in."""
        at = self.sample if edition.size is None else edition.size
        terms: Literal["us", "uk"] = "us" if edition.terms == "us" else "uk"
        key = (at, edition.left_handed, terms)
        if key not in self._charts:
            self._charts[key] = self._draw_charts(at, terms, left_handed=edition.left_handed)
        return self._charts[key]

    def _draw_charts(self, at: int, terms: Literal["us", "uk"], *, left_handed: bool) -> tuple[Drawn, ...]:
        fabric, sizes = self.measured.fabrics[at], self.measured.gauge.sizes
        if fabric is None or sizes is None:
            return ()
        found = []
        copies = copies_told(self.measured.document, at)
        options = ChartOptions(terms, left_handed, ident=f"chart-{at}", copies=copies)
        for i, chart in enumerate(charts(fabric, sizes, options)[:MOST_CHARTS], 1):
            name = f"chart-{i}-{slug(chart.section or 'whole')[:40]}.svg"
            found.append(Drawn(Picture(name, "svg", chart.svg.encode()), chart.section or "", chart.description, chart.notes))
        return tuple(found)

    def schematics(self, edition: Edition) -> tuple[Drawn, ...]:
        """Schematics of the edition's size, or of all in brackets."""
        sizes = self.measured.gauge.sizes
        if sizes is None:
            return ()
        if edition.size not in self._schematics:
            names = [m.size for m in self.measured.sizes]
            at = self.sample if edition.size is None else edition.size
            options = SchematicOptions(only=edition.size, ident="schematic", copies=copies_told(self.measured.document, at))
            self._schematics[edition.size] = tuple(
                Drawn(Picture(f"schematic-{i}.svg", "svg", d.svg.encode()), "", d.description)
                for i, d in enumerate(schematics(self.measured.fabrics, sizes, names, options), 1)
            )
        return self._schematics[edition.size]

    @property
    def sample(self) -> int:
        """Index of the size that the sample was worked in, else of the middle one of those that could be worked."""
        known = worked_in(self.measured.document)
        worked = [i for i, f in enumerate(self.measured.fabrics) if f is not None]
        return known if known in worked else worked[len(worked) // 2] if worked else 0

    def cover(self) -> Drawn | None:
        """The fabric of the sample as it looks; None where it cannot be given a shape."""
        if not self._cover:
            self._cover.append(self._draw_cover())
        return self._cover[0]

    @property
    def drawn_cover(self) -> Drawn | None:
        """The cover, where an edition asked for it."""
        return self._cover[0] if self._cover else None

    def _draw_cover(self) -> Drawn | None:
        from loopwright.drawing.rounds import fabric_picture  # noqa: PLC0415 - brings the solver
        from loopwright.workshop.shapes import opens_above  # noqa: PLC0415 - the same

        fabric, sizes = self.measured.fabrics[self.sample], self.measured.gauge.sizes
        if fabric is None or sizes is None:
            return None
        found = fabric_picture(
            fabric, sizes, width_px=COVER_PX, title=self.measured.document.title or "",
            opening_up=opens_above(self.measured.document) or None, budget_s=COVER_BUDGET_S,
        )
        self.notes.extend(found.notes)
        return Drawn(Picture("cover.png", "png", found.png), "", found.description)
