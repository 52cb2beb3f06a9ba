"""A design's listing: out of what was measured of it."""

from __future__ import annotations

from dataclasses import replace

from loopwright.publishing.changes import version_of
from loopwright.publishing.listing import Listing, ListingFacts, listing
from loopwright.workshop.measure import Measured


def facts_of(measured: Measured) -> ListingFacts:
    """What a listing needs, out of a design or pattern that was measured."""
    version = version_of(measured.document)
    return ListingFacts(measured.document, measured.sizes, measured.fabrics, measured.cautions, version.text if version is not None else "")


def listing_of(
    measured: Measured, terms: str | None = None, files: tuple[tuple[str, str], ...] = (), filmed: str = "",
    chapters: tuple[tuple[str, str], ...] = (),
) -> Listing:
    """The texts for shop and film. `files`: name and what it is. `filmed`: the size of the film. `chapters`: (time, title)."""
    return listing(replace(facts_of(measured), files=files, filmed=filmed, chapters=chapters), terms)
