"""Before anything is written: which files there would be, what is missing, and the pages as pictures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from loopwright.findings.registry import severity
from loopwright.model.tree import HeadLine
from loopwright.publishing.document import Edition
from loopwright.publishing.document.build import build
from loopwright.publishing.document.covered import covered, wants_cover
from loopwright.source import Source
from loopwright.workshop.compare.kept import kept_versions
from loopwright.workshop.live import Seen
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.editions import Asked, jobs
from loopwright.workshop.publish.gather import gather
from loopwright.workshop.publish.photographs import photographs
from loopwright.workshop.publish.pictures import Drawings, Translations
from loopwright.workshop.publish.publish import described

MOST_FILES = 400


def files_of(seen: Seen, asked: Asked) -> list[dict[str, Any]]:
    """The files that would be written, each with what it is."""
    sizes = seen.report.sizes or ("one size",)
    todo = jobs(asked, seen.document.title or Path(seen.source.name).stem, sizes, seen.document.terms)
    found = []
    for job in todo:
        told = described(Path(), job, sizes)
        found.append({"name": job.name, "format": job.format, "size": told.size, "description": told.description})
    return found


def missing(seen: Seen, design: Path) -> list[str]:
    """What a reader would miss: a version, photographs and their alt texts; and what stops publishing. In sentences."""
    return list(_missing(seen, design))


def _missing(seen: Seen, design: Path) -> Iterator[str]:
    stops = sum(severity(f) == "error" for f in seen.report.findings)
    if stops:
        yield f"{stops} {'place stops' if stops == 1 else 'places stop'} here: only a draft can be published, and it says so on every page."
    lines = [i for i in seen.document.items if isinstance(i, HeadLine)]
    if not any(i.name == "version" for i in lines):
        yield "No version is told: a line such as 'Version: 1' lets makers know which one they have."
    if seen.stitches is None:
        yield "There is no gauge: no chart, schematic or measure can be made."
    found = photographs(lines, design.parent)
    if not found:
        yield "There is no photograph: a line such as 'Photograph: beanie.jpg (cover): the beanie on a head' puts one on the front."
    for p in found:
        if p.picture is None:
            yield f"The photograph {p.file} is not there, or cannot be opened."
        if not p.alt:
            yield f"The photograph {p.file} has no words for those who do not see it: they go after a colon."
    if not kept_versions(design):
        yield "No earlier version is kept: publishing keeps this one, so that the next can be compared with it."


def pages(
    source: Source, edition: Edition, home: Path, design: Path | None = None,
    progress: Callable[[str, float], None] = lambda _what, _share: None, translations: Translations | None = None,
) -> tuple[bytes, ...]:
    """The pages of an edition as PNG; `progress` is told what is being made, and which share of all is done.

    `translations`: of the designer's own words, by language. Raises GaugeError, NothingToPublishError, PageError.
    """
    from loopwright.publishing.pages import Pages  # noqa: PLC0415 - brings the typesetter

    progress("working the design", 0.05)
    found = gather(source, Wanted(), home, design)
    held = edition.held
    progress("drawing charts and schematics", 0.2)
    drawings = Drawings(found.measured, None, translations or {})
    publication = build(replace(found.pattern, translations=translations or {}), drawings.pictures(held), held)
    if wants_cover(publication):
        progress("drawing the fabric for the front", 0.35)
    cover = drawings.cover() if wants_cover(publication) else None
    publication = publication if cover is None else covered(publication, cover)
    progress("setting the pages", 0.8)
    with Pages() as setter:
        return tuple(setter.pictures(replace(publication, edition=edition)))


def edition_of(seen: Seen, asked: Asked, name: str) -> Edition | None:
    """The edition of a file that would be written, by its name; None where there is none of that name."""
    sizes: Sequence[str] = seen.report.sizes or ("one size",)
    todo = jobs(asked, seen.document.title or Path(seen.source.name).stem, sizes, seen.document.terms)
    return next((j.edition for j in todo if j.name == name), None)
