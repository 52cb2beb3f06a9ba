"""Openings: so many chains over as many stitches passed by, for a thumb or an arm; a share of the round."""

from __future__ import annotations

import re
from fractions import Fraction

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.phrases import SHARES, share_of
from loopwright.source import Span

_CHAIN = re.compile(r"\bch(?:ain)?\s+(?P<a>\d+)\b|\b(?P<b>\d+)\s+ch(?:ains?)?\b(?!-)", re.IGNORECASE)
_PASSED = re.compile(r"\b(?:sk|skip|miss)\s+(?:the\s+)?(?:next\s+)?(?P<n>\d+)\s+(?:sts|stitches)", re.IGNORECASE)
_LATER = re.compile(r"\b(?P<n>\d+)(?=\s+(?:missed|skipped|free|unworked)\s+(?:sts|stitches)|\s+ch\b|\s+chains?\b)", re.IGNORECASE)
_NAMED = re.compile(r"\b(?P<what>thumb|arm|armhole|ear|heel|afterthought|pocket|button|opening|neck)\b", re.IGNORECASE)
LEAST = 4


def opening(found: Found, lines: tuple[Line, ...], at: int) -> bool:
    """Puts a blank for the stitches of an opening in, wherever its number stands. False where line `at` makes none."""
    line = lines[at]
    passed = _PASSED.search(line.text)
    if passed is None or "*" in line.text or int(passed["n"]) < LEAST:
        return False
    value = int(passed["n"])
    chain = next((m for m in _CHAIN.finditer(line.text) if int(m["a"] or m["b"]) == value), None)
    before = lines[at - 1].count if at else None
    base = found.counts(before, "sts") if before is not None else None
    if chain is None or base is None:
        return False
    named = _NAMED.search(" ".join(x.text + (x.section.title if x.section else "") for x in lines[at:]))
    reasons = _shares(base, value)
    blank = Blank(found.name(f"{named['what'].lower() if named else 'opening'} sts"), "sts", value, "share", given=reasons, line=at)
    slot = found.add(blank)
    _put(found, line, passed.span("n"), slot)
    _put(found, line, chain.span("a" if chain["a"] else "b"), slot)
    for later in lines[at + 1 :]:
        for m in _LATER.finditer(later.text):
            if int(m["n"]) == value:
                _put(found, later, m.span("n"), slot)
    return True


def _put(found: Found, line: Line, span: tuple[int, int], slot: str) -> None:
    found.replace(Span(line.span.start + span[0], line.span.start + span[1]), slot)


def _shares(base: Blank, value: int) -> tuple[Reason, ...]:
    rule = Legal()
    found = [
        Reason(share_of(s, f"{{{base.name}}}"), f"{value} of {base.value} sts are {value / base.value:.3f}; {s} is {float(s):.3f}",
               abs(float(base.value * s) - value) + s.denominator / 20)
        for s in SHARES if rule.nearest(base.value * Fraction(s)) == (value,)
    ]
    own = Reason(str(value), "the same in every size", 9)
    return (*sorted(found, key=lambda r: r.score), own)
