"""What a film is planned from: a design read, graded, worked and measured, and the size on camera found in it."""

from __future__ import annotations

from loopwright.filming.facts import FilmFacts
from loopwright.measuring.time import own_speed
from loopwright.model.fabric import FabricRow
from loopwright.model.tree import Document, HeadLine
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.as_made import as_made
from loopwright.workshop.measure import Measured, Wanted, measure_source


class CannotFilm(Exception):  # noqa: N818 (read as a sentence: "except CannotFilm")
    """A film that cannot be planned or cut; the message says why, and the way out."""


@record
class Filmed:
    """The facts of a film and the measured design that they are from."""

    facts: FilmFacts
    measured: Measured


def gather(source: Source, size: str | None, *, terms: str | None = None, language: str = "en", left_handed: bool = False) -> Filmed:
    """The facts for the size on camera; `size` None: the one that there is, or the one the sample was worked in.

    Raises CannotFilm for a size that there is none of, and for a text without a row that could be worked.
    """
    measured = measure_source(source, Wanted())
    document, report = measured.document, measured.graded.report
    if report is None or not report.rows:
        raise CannotFilm(f"{source.name} holds no row that could be worked: look at it with loopwright check")
    names = document.sizes or ("one size",)
    at = _index(names, size, _sample(document))
    fabric = measured.fabrics[at]
    if fabric is None:
        raise CannotFilm(f"size {names[at]} of {source.name} could not be worked: look at it with loopwright check")
    spoken = terms or document.terms

    def told(row: FabricRow) -> tuple[str, int] | None:
        found = as_made(fabric, row, spoken)
        return (found.words, found.times) if found is not None else None

    facts = FilmFacts(
        document, report, at, spoken, language, fabric, measured.sizes, measured.cautions, own_speed(document), told, source.line_of,
        left_handed,
    )
    return Filmed(facts, measured)


def _sample(document: Document) -> str | None:
    """The size that the sample was worked in, as the heading says."""
    return next((i.value.strip() for i in document.items if isinstance(i, HeadLine) and i.name == "worked in"), None)


def _index(names: tuple[str, ...], size: str | None, sample: str | None) -> int:
    known = {n.lower(): i for i, n in enumerate(names)}
    if size is None:
        if len(names) == 1:
            return 0
        if sample and sample.lower() in known:
            return known[sample.lower()]
        raise CannotFilm(f"which size is on camera? --size NAME, one of: {', '.join(names)}")
    if size.strip().lower() not in known:
        raise CannotFilm(f"there is no size {size.strip()!r}: the design has {', '.join(names)}")
    return known[size.strip().lower()]
