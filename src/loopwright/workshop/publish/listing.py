"""Texts for the shop and the film, as files beside the documents."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.publishing.document.steps import slug
from loopwright.workshop.listing import listing_of
from loopwright.workshop.measure import Measured


@dataclass(frozen=True, slots=True)
class KitFile:
    """A file of the kit: its name, what is in it, and what it is for."""

    name: str
    data: bytes
    description: str


def listing_files(measured: Measured, title: str, files: Sequence[tuple[str, str]], cover: bytes | None) -> tuple[KitFile, ...]:
    """The kit that goes with a package: for the shop page, for the film's description, and a cover where no photograph is one.

    `files`: what is handed out, name and what it is. `cover`: the fabric as it looks, PNG.
    """
    told = listing_of(measured, files=tuple(files))
    base = slug(title)
    shop = f"{told.short}\n\n{told.medium}\n\n{told.full}".strip() + "\n"
    found = [
        KitFile(f"{base}-shop-page.txt", shop.encode(), "texts for the shop page: short, middle and long"),
        KitFile(f"{base}-film-description.txt", (told.film.strip() + "\n").encode(), "text to stand under the film"),
    ]
    if cover is not None:
        found.append(KitFile(f"{base}-cover.png", cover, "a picture of the fabric for the shop page"))
    return tuple(found)
