"""The drawings of an edition, each drawn once however many editions show it."""

from __future__ import annotations

from collections.abc import Collection
from concurrent.futures import Future, ProcessPoolExecutor
from dataclasses import replace
from multiprocessing import current_process, get_context
from typing import TYPE_CHECKING, Literal

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.schematic import schematics
from loopwright.publishing.document import Edition, Picture
from loopwright.publishing.document.pattern import Drawn, Pictures
from loopwright.publishing.document.steps import slug
from loopwright.publishing.document.words import worked_in
from loopwright.workshop import charting
from loopwright.workshop.measure import Measured

if TYPE_CHECKING:
    from loopwright.drawing.rounds import FabricPicture
    from loopwright.grading.gauge import StitchSizes
    from loopwright.model.fabric import Fabric

ChartKey = tuple[int, bool, Literal["us", "uk"]]
ELSEWHERE = 3  # every so many sizes are drawn in the other process
COVER_PX = 760
COVER_BUDGET_S = 20.0
COVER_TRIANGLES = 80_000
MOST_CHARTS = 24


class Drawings:
    """Draws what editions ask for and keeps it: charts by size, hand and terms; schematics by size; one cover."""

    def __init__(self, measured: Measured) -> None:
        """`measured`: the pattern in all its sizes."""
        self.measured = measured
        self._charts: dict[ChartKey, tuple[Drawn, ...]] = {}
        self._elsewhere: dict[ChartKey, Future[tuple[Drawn, ...]]] = {}
        self._schematics: dict[tuple[int | None, bool], tuple[Drawn, ...]] = {}
        self._cover: list[Drawn | None] = []
        self._covering: Future[FabricPicture] | None = None
        self._pool: ProcessPoolExecutor | None = None
        self.notes: list[str] = []

    def pictures(self, edition: Edition) -> Pictures:
        """What an edition shows; nothing for words alone, and no cover where ink is saved."""
        if edition.words_only or self.measured.gauge.sizes is None:
            return Pictures()
        return Pictures(self.charts(edition), self.schematics(edition), None if edition.ink_saving else self.cover())

    def prepare(self, editions: Collection[Edition]) -> None:
        """Begins the cover and draws the charts and schematics of some editions meanwhile."""
        if any(not (e.words_only or e.ink_saving) for e in editions):
            self.begin_cover()
        shown = [e for e in editions if not e.words_only and self.measured.gauge.sizes is not None]
        if self._pool is not None:  # it has the cover to draw as well
            for edition in shown[2::ELSEWHERE]:
                self._elsewhere.setdefault(self._key(edition), self._pool.submit(draw_charts, *self._given(self._key(edition))))
        for edition in shown:
            if self._key(edition) not in self._elsewhere:
                self.charts(edition)
            self.schematics(edition)

    def charts(self, edition: Edition) -> tuple[Drawn, ...]:
        """Charts in the edition's size, or in the one that the sample was worked in."""
        key = self._key(edition)
        if key not in self._charts:
            begun = self._elsewhere.get(key)
            self._charts[key] = begun.result() if begun is not None else draw_charts(*self._given(key))
        return self._charts[key]

    def _key(self, edition: Edition) -> ChartKey:
        at = self.sample if edition.size is None else edition.size
        return at, edition.left_handed, "us" if edition.terms == "us" else "uk"

    def _given(self, key: ChartKey) -> tuple[Fabric | None, StitchSizes | None, ChartOptions]:
        at, left_handed, terms = key
        told = charting.of_charts(self.measured.document, self.measured.graded.report, at)
        options = replace(told, terms=terms, left_handed=left_handed, ident=f"chart-{at}")
        return self.measured.fabrics[at], self.measured.gauge.sizes, options

    def schematics(self, edition: Edition) -> tuple[Drawn, ...]:
        """Schematics of the edition's size, or of all in brackets."""
        sizes = self.measured.gauge.sizes
        if sizes is None:
            return ()
        key = edition.size, edition.left_handed
        if key not in self._schematics:
            names = [m.size for m in self.measured.sizes]
            told = charting.of_schematics(self.measured.document, self.sample if edition.size is None else edition.size)
            options = replace(told, only=edition.size, ident="schematic", left_handed=edition.left_handed)
            self._schematics[key] = tuple(
                Drawn(Picture(f"schematic-{i}.svg", "svg", d.svg.encode()), "", d.description)
                for i, d in enumerate(schematics(self.measured.fabrics, sizes, names, options), 1)
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
            made = self._covering.result() if isinstance(self._covering, Future) else None
            if made is not None:
                self.notes.extend(made.notes)
            self._cover.append(None if made is None else Drawn(Picture("cover.png", "png", made.png), "", made.description))
        return self._cover[0]

    def begin_cover(self) -> None:
        """Begins to draw the cover in a process of its own, while charts are drawn here; here, where no process can be started."""
        fabric, sizes = self.measured.fabrics[self.sample], self.measured.gauge.sizes
        if self._covering is not None or self._cover or fabric is None or sizes is None:
            return
        given = fabric, sizes, self.measured.document.title or ""
        if current_process().daemon:
            self._covering = Future()
            self._covering.set_result(draw_cover(*given))
            return
        self._pool = ProcessPoolExecutor(max_workers=1, mp_context=get_context("spawn"))
        self._covering = self._pool.submit(draw_cover, *given)

    def close(self) -> None:
        """Ends what was begun."""
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)

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
        found.append(Drawn(Picture(name, "svg", chart.svg.encode()), chart.section or "", chart.description, chart.notes))
    return tuple(found)


def draw_cover(fabric: Fabric, sizes: StitchSizes, title: str) -> FabricPicture:
    """The picture for the front, small and quickly made; the same bytes for the same fabric, as long as its shape comes to rest in time."""
    from loopwright.drawing.rounds import fabric_picture  # noqa: PLC0415 - brings the solver

    return fabric_picture(fabric, sizes, width_px=COVER_PX, title=title, budget_s=COVER_BUDGET_S, triangles=COVER_TRIANGLES)
