"""Things for babies, and toys, that carry no caution where one is due: ties, small parts, blankets in a cot, soft toys."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.tree import Prose
from loopwright.source import Span
from loopwright.trade.cautions import Caution, about, defer

_SMALL = re.compile(
    r"\b(?:bab(?:y|ies)|infants?|newborns?|preemies?|toddlers?|layette|pram|cot|crib|christening|booties?|bibs?|(?:0|3|6|9|12)\s*(?:[-–]\s*\d+\s*)?(?:months?|mths?|m)\b)",
    re.IGNORECASE,
)
_TOY = re.compile(
    r"\b(?:toys?|amigurumi|dolls?|plush(?:ie)?|teddy|rattles?|teethers?|stuffies|stuffed animal|loveys?|lovies)\b", re.IGNORECASE
)
_RISKS = (
    ("ties", re.compile(r"\b(?:ties?|tie cords?|cords?|drawstrings?|ribbons?|strings?|straps?)\b", re.IGNORECASE)),
    ("small parts", re.compile(r"\b(?:buttons?|beads?|safety eyes?|pompoms?|pom-poms?|bells?|snaps?|press studs?)\b", re.IGNORECASE)),
    ("a blanket", re.compile(r"\b(?:blankets?|afghans?|throws?|shawls?|cowls?)\b", re.IGNORECASE)),
)
_CAUTION = re.compile(
    r"\b(?:strangl\w*|chok\w*|swallow\w*|under (?:three|3)|suffocat\w*|cautions?|warnings?|safety(?! eyes?)|never leave|"
    r"unattended|asleep|sleeping|"
    r"out of (?:a |the )?(?:baby's |reach|cot|crib)|cot in the first year|small parts? (?:can|may)|"
    r"(?:not|no) (?:a )?(?:toys?|suitable)|come off|catch|trim every end|keep them short)\b",
    re.IGNORECASE,
)

MOST = 3  # cautions told at once


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Whole patterns only: for whom it is, is taken from the title, the sizes and the words before the rows; any caution silences it."""
    if not pattern.whole or _CAUTION.search(_prose(pattern)):
        return
    head = pattern.document.text[: pattern.body_start()]
    notes = [t.span for t in pattern.lines("notes", "abbreviations")]
    toy, small = (next((m for m in words.finditer(head) if not _within(m, notes)), None) for words in (_TOY, _SMALL))
    whom = toy or small
    if whom is None:
        return
    rows = pattern.document.text[pattern.body_start() :]
    risks = [name for name, words in _RISKS if words.search(head) or words.search(rows)]
    if toy:
        risks.append("a soft toy")
    if risks:
        due = about(pattern.document.text, _ages(pattern))[:MOST]
        facts = {"whom": whom.group(), "risks": " and ".join(risks)}
        yield Finding(
            "C033", Span(whom.start(), whom.end()), facts, (*(c.text for c in due), defer()) if due else (), fix=_fix(pattern, due)
        )


def _ages(pattern: Pattern) -> tuple[str, ...]:
    """Names of the sizes, where the heading gives them; without, the words tell for whom it is."""
    return pattern.document.sizes if pattern.value("sizes") else ()


def _fix(pattern: Pattern, due: Sequence[Caution]) -> Fix | None:
    """Notes of the cautions at the end of the heading. Not a safe mend: the designer words her own notes."""
    told = [t for t in pattern.told if t.span.end <= pattern.body_start()]
    if not told or not any(_CAUTION.search(c.text) for c in due):
        return None
    end = told[-1].span.end
    lines = "".join(f"\nNotes: {c.text}" for c in due) + f"\nNotes: {defer()}"
    return Fix("add the cautions to the notes", (Edit(Span(end, end), lines),), safe=False)


def _within(m: re.Match[str], spans: Sequence[Span]) -> bool:
    return any(s.start <= m.start() < s.end for s in spans)


def _prose(pattern: Pattern) -> str:
    """Notes and all text that is no row."""
    text = pattern.document.text
    lines = [t.value for t in pattern.lines("notes", "caution")]
    lines += [text[i.span.start : i.span.end] for i in pattern.document.items if isinstance(i, Prose)]
    lines += [t.name for t in pattern.told]
    return "\n".join(lines)
