"""Documents of the shipped designs, each made once in a run. The cover is a plain little picture: a true one takes seconds."""

from __future__ import annotations

import io
from functools import cache
from typing import Any

from loopwright.publishing.document import Edition, Picture, Publication
from loopwright.publishing.document.build import build
from loopwright.publishing.document.pattern import Drawn, Pictures
from loopwright.workshop.publish.pictures import Drawings
from tests.publishing.conftest import _gathered


@cache
def studio(name: str) -> Drawings:
    return Drawings(_gathered(name).measured)


@cache
def little_cover() -> Drawn:
    from PIL import Image

    held = io.BytesIO()
    Image.new("RGBA", (90, 60), (120, 160, 150, 200)).save(held, "PNG")
    return Drawn(Picture("cover.png", "png", held.getvalue()), "", "A plain green field, 90 by 60.")


@cache
def _published(name: str, chosen: tuple[tuple[str, Any], ...]) -> Publication:
    gathered = _gathered(name)
    edition = Edition(**({"terms": gathered.pattern.document.terms} | dict(chosen)))
    pictures = Pictures() if edition.words_only else Pictures(studio(name).charts(edition), studio(name).schematics(edition), little_cover())
    return build(gathered.pattern, pictures, edition)


def published(name: str, **chosen: Any) -> Publication:
    """The document of a design in an edition."""
    return _published(name, tuple(sorted(chosen.items())))


def fabric_counts(name: str, size: int) -> list[int]:
    """Stitches of every worked row of a size, as the worker reports them: with chains where the pattern counts them."""
    found = []
    for row in _gathered(name).pattern.report.rows:
        n = row.counts[size]
        if n is None:
            continue
        if row.with_chains and row.printed and row.printed[size] == row.with_chains[size]:
            n = row.with_chains[size]
        found.append(n)
    return [n for n in found if n is not None]
