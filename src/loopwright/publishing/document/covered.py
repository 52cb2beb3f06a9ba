"""The picture on the front, drawn from the fabric: put there last, as it takes longest to draw."""

from __future__ import annotations

from dataclasses import replace

from loopwright.publishing.document.blocks import Figure, Part, Publication
from loopwright.publishing.document.pattern import Drawn
from loopwright.publishing.phrases import Phrases

_TOLD_IN = "en-US"  # the words of the picture, which is drawn once for all editions


def wants_cover(publication: Publication) -> bool:
    """Whether the fabric belongs on the front: not where a photograph is there, where ink is saved, nor where words stand alone."""
    edition = publication.edition
    if edition.words_only or edition.ink_saving:
        return False
    return not any(isinstance(b, Figure) and b.cover for part in publication.parts for b in part.blocks)


def covered(publication: Publication, cover: Drawn) -> Publication:
    """The same with the fabric on its front; as it was where that is not wanted."""
    if not wants_cover(publication):
        return publication
    alt = Phrases(publication.edition.language).say("cover-alt", title=publication.title)
    described = cover.description if publication.language == _TOLD_IN else ""
    front = Figure(cover.picture, alt, description=described, cover=True)
    parts = publication.parts
    title = parts[0] if parts and parts[0].key == "title" else None
    first = Part("title", "", (front, *(title.blocks if title else ())))
    return replace(publication, parts=(first, *parts[bool(title):]))
