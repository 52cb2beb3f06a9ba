"""The drawings of an edition, each drawn once however many editions show it."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.schematic import schematics
from loopwright.publishing.document import Edition, Picture
from loopwright.publishing.document.pattern import Drawn, Pictures
from loopwright.publishing.document.speech import spoken
from loopwright.publishing.document.steps import slug
from loopwright.publishing.document.words import worked_in
from loopwright.workshop import charting
from loopwright.workshop.measure import Measured
from loopwright.workshop.publish.beside import Beside
from loopwright.workshop.publish.cover import draw_cover

if TYPE_CHECKING:
    from concurrent.futures import Future

    from loopwright.drawing.rounds import FabricPicture
    from loopwright.drawing.speech import Speech
    from loopwright.grading.gauge import StitchSizes
    from loopwright.model.fabric import Fabric

Translations = Mapping[str, Mapping[str, str]]
ChartKey = tuple[int, bool, Literal["us", "uk"], str]
MOST_CHARTS = 24
GRID = b"lw-grid"
"""What tells a grid: squares that would be small on a phone are drawn for its width."""
PHONE_PX = 360.0
MANY = 6
"""So many charts left are worth it that the other process loads what draws charts as well."""


class Drawings:
    """Draws what editions ask for and keeps it: charts by size, hand and terms; schematics by size; one cover."""

    def __init__(self, measured: Measured, beside: Beside | None = None, translations: Translations | None = None) -> None:
        """`measured`: the pattern in all its sizes. `beside`: draws the cover, and charts where it is free; None: all is drawn here.

        `translations`: of the designer's own words, by language.
        """
        self.measured = measured
        self.translations = dict(translations or {})
        self._beside = beside or Beside(own_process=False)
        self._charts: dict[ChartKey, tuple[Drawn, ...]] = {}
        self._narrow: dict[ChartKey, tuple[Drawn, ...]] = {}
        self._elsewhere: dict[ChartKey, Future[tuple[Drawn, ...]]] = {}
        self._schematics: dict[tuple[int | None, bool, str], tuple[Drawn, ...]] = {}
        self._cover: list[Drawn | None] = []
        self._covering: Future[FabricPicture] | None = None
        self.notes: list[str] = []

    def pictures(self, edition: Edition) -> Pictures:
        """What an edition shows, but for the cover; nothing for words alone."""
        if edition.words_only or self.measured.gauge.sizes is None:
            return Pictures()
        return Pictures(self.charts(edition), self.schematics(edition))

    def prepare(self, editions: Collection[Edition]) -> None:
        """Draws the charts and schematics of some editions."""
        shown = [e for e in editions if not e.words_only and self.measured.gauge.sizes is not None]
        todo = [k for k in dict.fromkeys(map(self._key, shown)) if k not in self._charts and k not in self._elsewhere]
        while todo:
            if self._beside.free and len(todo) > MANY:
                key = todo.pop()  # the last, since the first ones are wanted first
                self._elsewhere[key] = self._beside.submit(draw_charts, *self._given(key))
            key = todo.pop(0)
            self._charts[key] = draw_charts(*self._given(key))
        for edition in shown:
            self.schematics(edition)

    def charts(self, edition: Edition) -> tuple[Drawn, ...]:
        """Charts in the edition's size, or in the one that the sample was worked in."""
        key = self._key(edition)
        if key not in self._charts:
            begun = self._elsewhere.get(key)
            self._charts[key] = begun.result() if begun is not None else draw_charts(*self._given(key))
        found = self._charts[key]
        if edition.paper != "phone" or not any(GRID in d.picture.data for d in found):
            return found
        if key not in self._narrow:
            fabric, sizes, options = self._given(key)
            self._narrow[key] = draw_charts(fabric, sizes, replace(options, width=PHONE_PX))
        return self._narrow[key]

    def _key(self, edition: Edition) -> ChartKey:
        at = self.sample if edition.size is None else edition.size
        return at, edition.left_handed, "us" if edition.terms == "us" else "uk", edition.language

    def _given(self, key: ChartKey) -> tuple[Fabric | None, StitchSizes | None, ChartOptions]:
        at, left_handed, terms, language = key
        told = charting.of_charts(self.measured.document, self.measured.graded.report, at)
        options = replace(told, terms=terms, left_handed=left_handed, ident=f"chart-{at}", speech=self._speech(language))
        return self.measured.fabrics[at], self.measured.gauge.sizes, options

    def _speech(self, language: str) -> Speech | None:
        """Puts drawings into the words of a language; None for English."""
        return spoken(self.measured.document, language, self.translations.get(language)) if language != "en" else None

    def schematics(self, edition: Edition) -> tuple[Drawn, ...]:
        """Schematics of the edition's size, or of all in brackets."""
        sizes = self.measured.gauge.sizes
        if sizes is None:
            return ()
        key = edition.size, edition.left_handed, edition.language
        if key not in self._schematics:
            names = [m.size for m in self.measured.sizes]
            told = charting.of_schematics(self.measured.document, self.sample if edition.size is None else edition.size)
            speech = self._speech(edition.language)
            options = replace(told, only=edition.size, ident="schematic", left_handed=edition.left_handed, speech=speech)
            drawn = schematics(self.measured.fabrics, sizes, names, options, [m.dimensions for m in self.measured.sizes])
            self._schematics[key] = tuple(
                Drawn(Picture(f"schematic-{i}.svg", "svg", d.svg.encode()), "", d.description) for i, d in enumerate(drawn, 1)
            )
        return self._schematics[key]

    @property
    def sample(self) -> int:
        """Index of the size that the sample was worked in, else of the middle one of those that could be worked."""
        known = worked_in(self.measured.document)
        worked = [i for i, f in enumerate(self.measured.fabrics) if f is not None]
        return known if known in worked else worked[len(worked) // 2] if worked else 0

    def cover(self) -> Drawn | None:
        """The fabric of the sample as it looks; None where it cannot be given a shape."""
        if not self._cover:
            self.begin_cover()
            made = self._covering.result() if self._covering is not None else None
            if made is not None:
                self.notes.extend(made.notes)
            self._cover.append(None if made is None else Drawn(Picture("cover.png", "png", made.png), "", made.description))
        return self._cover[0]

    def begin_cover(self) -> None:
        """Begins to draw the cover, while charts are drawn here."""
        fabric, sizes = self.measured.fabrics[self.sample], self.measured.gauge.sizes
        if self._covering is None and not self._cover and fabric is not None and sizes is not None:
            document = self.measured.document
            self._covering = self._beside.submit(draw_cover, fabric, sizes, document.title or "", charting.palette_of(document))

    @property
    def drawn_cover(self) -> Drawn | None:
        """The cover, where an edition asked for it."""
        return self._cover[0] if self._cover else None


def draw_charts(fabric: Fabric | None, sizes: StitchSizes | None, options: ChartOptions) -> tuple[Drawn, ...]:
    """The charts of one size."""
    if fabric is None or sizes is None:
        return ()
    found = []
    for i, chart in enumerate(charts(fabric, sizes, options)[:MOST_CHARTS], 1):
        name = f"chart-{i}-{slug(chart.section or 'whole')[:40]}.svg"
        section = options.words.name(chart.section or "")
        found.append(Drawn(Picture(name, "svg", chart.svg.encode()), section, chart.description, chart.notes))
    return tuple(found)
