"""Numbers that a Fit sentence gives for some sizes itself: "sts to go around head circumference less 3 cm, in child: 84".

Such a number is the designer's own: it goes before the nearest one. Its multiple and limits hold for it all the same.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.findings import Finding
from loopwright.grading.fit import Fit
from loopwright.source.expressions import Expression

_KEPT = Expression(
    r"(?<!\s)\s*+[,;]?+\s*+(?:\band\s+)?\bin\s+(?:size\s+)?(?P<size>[^,;:{}\n]{1,60}?)\s*:\s*(?P<n>\d{1,6})(?![\d.]*\d)(?:\s*(?:sts?|rnds?|rows?|ch)\b)?",
    re.IGNORECASE,
)


def kept_in(sentence: str) -> tuple[str, tuple[tuple[str, int], ...]]:
    """The sentence without the numbers that it gives for sizes, and these, by the sizes' names in lower case."""
    found = tuple((_name(m["size"]), int(m["n"])) for m in _KEPT.finditer(sentence))
    return (_KEPT.sub("", sentence), found) if found else (sentence, ())


def with_kept(sentence: str, size: str, number: int | None) -> str:
    """The sentence with a number for one size, at its end; None takes the size's own number out again."""
    plain, found = kept_in(sentence)
    names = {_name(m["size"]): " ".join(m["size"].split()) for m in _KEPT.finditer(sentence)}
    kept = {name: n for name, n in found if name != _name(size)}
    if number is not None:
        kept[_name(size)] = number
        names[_name(size)] = " ".join(size.split())
    end = plain.rstrip()
    dot = "." if end.endswith(".") else ""
    return ", ".join([end.removesuffix("."), *(f"in {names[name]}: {n}" for name, n in kept.items())]) + dot


def unknown_sizes(fits: Mapping[str, Fit], sizes: Sequence[str]) -> list[Finding]:
    """A finding for every size that a sentence gives a number for and the design does not have."""
    known = {_name(s) for s in sizes}
    return [
        Finding("G018", fit.span, {"blank": fit.blank, "size": size, "known": ", ".join(sizes) or "one size"})
        for fit in fits.values() for size, _ in fit.kept if size not in known
    ]


def _name(size: str) -> str:
    return " ".join(size.lower().split())
