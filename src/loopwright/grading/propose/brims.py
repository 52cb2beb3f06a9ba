"""Bands worked sideways and picked up along their row ends: the round is measured, the rows of the band follow from it."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.phrases import share_of
from loopwright.grading.propose.rows import needed

_ENDS = re.compile(r"(?:(?P<n>\d+)\s+)?\w+(?: \w+)? in (?:the )?(?:ends? of )?each row", re.IGNORECASE)
STRIP_STS = 20
COARSE = 8


def around_strip(found: Found, lines: tuple[Line, ...], at: int) -> bool:
    """A round along the ends of a strip's rows: its count gets the measure, the strip's rows become so many as it needs."""
    line = lines[at]
    m = _ENDS.search(line.text)
    if m is None or not line.in_rounds or line.count is None:
        return False
    per = int(m["n"] or 1)
    where = next((i for i, b in enumerate(found.blanks) if b.unit == "rows" and b.value * per == line.count), None)
    if where is None or not any(b.unit == "sts" and b.value <= STRIP_STS for b in found.blanks[:where]):
        return False
    rows = found.blanks[where]
    word = (line.section.title if line.section else "body").lower()
    rule, why = needed(lines, at, line.count)
    turned = rows.legal.multiple
    sts = Blank(found.name(f"{word} sts"), "sts", line.count, "around", word, 0, _both(rule, turned * per, per, line.count), why, line=at)
    because = f"{per} in the end of each of its {rows.value} rows make {line.count} sts"
    given = Reason(share_of(Fraction(1, per), f"{{{sts.name}}}"), because)
    found.blanks[where] = replace(rows, role="link", given=(given,), legal=Legal(least=0))
    found.add(sts)
    return True


def _both(rule: Legal, turned: int, per: int, count: int) -> Legal:
    """A multiple for the round that is one for the strip's turned rows too; not where that makes steps too coarse for a head."""
    multiple = rule.multiple * turned // _gcd(rule.multiple, turned)
    multiple = multiple if multiple <= COARSE else rule.multiple * per // _gcd(rule.multiple, per)
    return Legal(multiple, count % multiple, least=1)


def _gcd(a: int, b: int) -> int:
    while b:
        a, b = b, a % b
    return a
