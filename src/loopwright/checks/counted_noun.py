"""A printed count that is right and names a stitch of which the row makes none: "(20 dc)" behind a row of single crochet."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Row
from loopwright.terms import dialect
from loopwright.trade.stitches import heights

_PREFIXES = ("fp", "bp")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Advice: the number itself is right. Rows that make stitches of their own, groups or slip stitches are left alone."""
    which = dialect(pattern.document.terms)
    known = heights()
    for row in pattern.report.rows:
        noun = row.printed_noun
        item = pattern.document.items[row.item]
        if noun is None or noun not in known or noun in ("sl st", "ch") or row.agrees is not True:
            continue
        if not isinstance(item, Row) or item.doubt:
            continue
        made = {kind for kind in row.made if kind not in ("repeat", "ch-sp", "group")}
        if not made or not made <= known.keys() or any(_is(kind, noun) for kind in made):
            continue
        others = ", ".join(sorted(which.term(kind).short for kind in made))
        yield Finding("C047", row.span, {"label": row.label or "this row", "noun": which.term(noun).short, "made": others})


def _is(kind: str, noun: str) -> bool:
    """Whether a stitch is one of those that are counted: a decrease or post stitch of them too."""
    plain = kind.removeprefix("fp").removeprefix("bp") if kind.startswith(_PREFIXES) else kind
    return plain == noun or plain.startswith(noun) and plain.endswith("tog")
