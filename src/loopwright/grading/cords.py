"""Ties and cords in the sizes of small children: their length is shown with the caution of the trade, which defers to local rules."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.findings import Finding
from loopwright.grading.fit import Fit
from loopwright.grading.lengths import in_cm
from loopwright.grading.number import Number
from loopwright.trade.cautions import Caution, about

_CORD = re.compile(r"\b(?:ties?|cords?|strings?|drawstrings?|straps?|laces?|ribbons?)\b", re.IGNORECASE)


def cords(fits: Mapping[str, Fit], text: str, sizes: Sequence[str], numbers: Sequence[Sequence[Number]]) -> list[Finding]:
    """A finding for each blank that is the length of a cord in sizes for which the trade has a caution."""
    found = []
    for blank, fit in fits.items():
        if fit.unit != "ch" or not _CORD.search(f"{blank} {fit.sentence}"):
            continue
        due: dict[str, tuple[Caution, list[str], float]] = {}
        for size, chosen in zip(sizes, numbers, strict=True):
            mm = next((n.achieved_mm for n in chosen if n.blank == blank and n.achieved_mm is not None), None)
            for caution in about(text, (size,)) if mm is not None else ():
                if caution.topic == "cord":
                    _, named, longest = due.setdefault(caution.key, (caution, [], 0.0))
                    due[caution.key] = (caution, [*named, size], max(longest, mm or 0.0))
        found += [_finding(fit, *case) for case in due.values()]
    return found


def _finding(fit: Fit, caution: Caution, sizes: list[str], longest_mm: float) -> Finding:
    most = caution.figures.get("free_mm_most")
    above = most is not None and longest_mm > most
    over = f", {in_cm(longest_mm - (most or 0.0))} too long ({caution.limit})" if above else ""
    facts = {"blank": fit.blank, "length": in_cm(longest_mm), "over": over, "caution": caution.said}
    return Finding("G035", fit.span, facts, sizes=tuple(sizes), severity="warning" if above and not caution.weak else None)
