"""A stretch that narrows or widens by shaping rows among plain ones: its ends, its rows and how often it shapes become blanks."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from fractions import Fraction

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import ANY, Blank, Found, Reason, Role
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.phrases import share_of
from loopwright.grading.propose.rows import said
from loopwright.grading.propose.tall import rows_mm
from loopwright.model.tapers import schedule
from loopwright.model.tree import AtEnds
from loopwright.source import Span

_SCHEDULE = re.compile(
    r",?\s*(?:(?:of|on|in|at)\s+)?(?:every|each)\s+(?=(?:foll\w*\.?\s+)?(?:\d|other|alt|second|third|fourth|rows?|rnds?))", re.IGNORECASE,
)
_END = re.compile(r"\s*+\.?+\s*+(?:\([^()]*\)|\[[^\[\]]*\])?+\s*+\.?+\s*+$")


def taper(found: Found, lines: tuple[Line, ...], at: int, before_rows: int, role: Role, subject: str) -> bool:
    """Puts the blanks in for "dec 1 st at each end of every 4th row 9 times, then …".

    False where a line is no such thing, or where her spacing is not the even one that the words put in its place would give back.
    `before_rows`: rows of the piece worked before; `subject`: what a sentence about its depth names.
    """
    line, before = lines[at], lines[at - 1] if at else None
    order, does = line.row.order, line.body[0] if len(line.body) == 1 else None
    if order is None or order.what != "shape" or not isinstance(does, AtEnds) or before is None or line.row.label is not None:
        return False
    steps = [(s.every.at(0) or 0, (s.times.at(0) if s.times is not None else 0) or 0) for s in order.spaced]
    rows, events = sum(e * t for e, t in steps), sum(t for _, t in steps)
    base = found.counts(before.count, "sts") if before.count is not None else None
    each = (does.n.at(0) or 0) * does.ends
    m = _SCHEDULE.search(line.text)
    if base is None or line.count is None or m is None or order.until_sts is not None or not each or not events or rows != line.worked:
        return False
    if order.at_once or [(s.every, s.times) for s in schedule(rows, events)] != [s for s in steps if s[1]]:
        found.kept.append(f"{said(line)} …: its spacing is not an even one, so it keeps its numbers")
        return False
    _put(found, lines, at, (before_rows, role, subject), (base, rows, events, each), m)
    return True


def _put(
    found: Found, lines: tuple[Line, ...], at: int, piece: tuple[int, Role, str], known: tuple[Blank, int, int, int], m: re.Match[str],
) -> None:
    line, (before_rows, role, subject), (base, rows, events, each) = lines[at], piece, known
    count, unit = line.count or 0, "rnds" if line.in_rounds else "rows"
    word = (line.section.title if line.section else "piece").lower()
    narrower = count < base.value
    step = math.lcm(base.legal.multiple, each)
    found.blanks[found.blanks.index(base)] = replace(base, legal=Legal(step, base.value % step, least=base.legal.least))
    base_name = f"{{{base.name}}}"
    end = Blank(
        found.name(f"{word} end sts"), "sts", count, "around" if base.role == "around" else "width", word, 0, Legal(each, count % each),
        (f"{base.value} sts {'less' if narrower else 'plus'} {each} in each of {events} shaping {unit}",), line=line.item,
    )
    end_slot = found.add(end)
    wide, narrow = (base_name, end_slot) if narrower else (end_slot, base_name)
    share = Fraction(1, each)
    link = Reason(f"{share_of(share, wide)} less {share_of(share, narrow)}", f"{abs(base.value - count)} sts in steps of {each}")
    name = found.name(f"{word} {'decreases' if narrower else 'increases'}")
    times = found.add(Blank(name, "times", events, "link", given=(link,), line=line.item))
    depth, name = role == "depth", found.name(f"{word} shaping {'rounds' if unit == 'rnds' else 'rows'}")
    tall = rows_mm(lines, at, rows, before_rows if depth else 0, rows)
    facts = (f"{events} shaping {unit}, evenly among {rows}",)
    shaping = Blank(name, unit, rows, role, subject if depth else word, before_rows, ANY, facts, line=line.item, rows_mm=tall)  # type: ignore[arg-type]
    slot = found.add(shaping)
    start, tail = line.span.start, _END.search(line.text)
    stop = tail.start() if tail is not None else len(line.text)
    found.replace(Span(start + m.start(), start + stop), f" {times} times, evenly spaced over the next {slot} {unit}")
