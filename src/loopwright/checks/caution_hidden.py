"""What the heading hides of the cautions: listed, so that none vanishes silently; and names that hide nothing."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.cautions import due
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.trade.cautions import cautions, hidden_names


def rule(pattern: Pattern) -> Iterator[Finding]:
    """One finding for each name that a line "Hidden cautions" gives."""
    found = {c.key: c for c in due(pattern)}
    known = {c.key for c in cautions()}
    for key, span in hidden_names(pattern.document):
        name = key.replace("-", " ")
        if key in found:
            yield Finding("C062", span, {"name": name}, (found[key].text, found[key].defer), found[key].sizes or None)
        else:
            why = "it is not due in this pattern" if key in known else "there is no caution of that name"
            due_here = ", ".join(c.name for c in found.values()) or "none"
            yield Finding("C063", span, {"name": name, "why": why, "due": due_here})
