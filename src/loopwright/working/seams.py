"""Stitches that no row of the pattern tells as its own: chains and assumed stitches laid down bare, and seams."""

from __future__ import annotations

import re
from array import array

from loopwright.model.fabric import PLACES, Fabric

_NONE = PLACES.index("none")
SEAM = re.compile(
    r"\b(?:foundation|beginning|starting)\s+(?:ch|chain)\b[^\n]*?\bthrough both (?:layers|thicknesses)\b[^\n;.]*?"
    r"\b(?:sl\.? ?st|ss|slip stitch)\b[^\n;.]*",
    re.IGNORECASE,
)
"""Words that close the last row to the foundation with slip stitches through both."""


def bare(fabric: Fabric, kinds: bytes, role: int, colour: int, words: tuple[int, int]) -> None:
    """Appends stitches of the row to come that have no parents as yet. `kinds`: indexes into the fabric's kinds."""
    f, count = fabric, len(kinds)
    f.kind += kinds
    f.row.extend(array("i", (len(f.rows),)) * count)
    f.into.extend(array("i", (-1,)) * count)
    f.many.extend(array("h", bytes(2 * count)))
    f.place += bytes((_NONE,)) * count
    f.role += bytes((role,)) * count
    f.colour += bytes((colour,)) * count
    f.origin.extend(array("i", (words[0],)) * count)
    f.origin_end.extend(array("i", (words[1],)) * count)
    f.round.extend(array("i", bytes(4 * count)))
    f.inner.extend(array("H", bytes(2 * count)))
