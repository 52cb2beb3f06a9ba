"""Texts for the shop and the film, as files beside the documents."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.publishing.document import Publication
from loopwright.workshop.publish.gather import Gathered


@dataclass(frozen=True, slots=True)
class KitFile:
    """A file of the kit: its name, what is in it, and what it is for."""

    name: str
    data: bytes
    description: str


def listing_files(found: Gathered, publications: Sequence[Publication], files: Sequence[str], title: str) -> tuple[KitFile, ...]:
    """The kit that goes with a package."""
    return ()
