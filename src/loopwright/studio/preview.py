"""The pages of one edition before it is written, with her own words in its language."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

from loopwright.publishing.document import Edition
from loopwright.publishing.document.build import build
from loopwright.publishing.document.covered import covered, wants_cover
from loopwright.source import Source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.gather import gather
from loopwright.workshop.publish.pictures import Drawings

Translations = Mapping[str, Mapping[str, str]]
"""Of the designer's own words, by language."""


def previewed(
    source: Source, edition: Edition, design: Path, translations: Translations, progress: Callable[[str, float], None],
) -> tuple[bytes, ...]:
    """The pages as PNG; `progress` is told what is being made, and which share of all is done.

    Raises GaugeError, NothingToPublishError, PageError.
    """
    from loopwright.publishing.pages import Pages  # noqa: PLC0415 - brings the typesetter

    progress("working the design", 0.05)
    found = gather(source, Wanted(), design.parent, design)
    held = replace(edition, paper="a4")
    progress("drawing charts and schematics", 0.2)
    drawings = Drawings(found.measured, None, translations)
    publication = build(replace(found.pattern, translations=translations), drawings.pictures(held), held)
    if wants_cover(publication):
        progress("drawing the fabric for the front", 0.35)
        cover = drawings.cover()
        publication = publication if cover is None else covered(publication, cover)
    progress("setting the pages", 0.8)
    with Pages() as setter:
        return tuple(setter.pictures(replace(publication, edition=edition)))
