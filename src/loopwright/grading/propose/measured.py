"""Rows told by a measure ("rep Row 2 until the scarf measures 150 cm") become a number of rows, so that each size has its own."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Literal

from loopwright.grading.counting import Legal, half_up
from loopwright.grading.lengths import NUMBER, UNIT, number, unit_mm
from loopwright.grading.propose.blanks import ANY, Blank, Found, Role
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.rows import Numbering
from loopwright.grading.propose.tall import above_mm
from loopwright.source import Span

_UNTIL = re.compile(
    rf"\s*until\s+(?:the\s+)?(?P<what>[A-Za-z' ]{{2,40}}?)\s+(?:measures?|is)\s+(?:about\s+)?"
    rf"(?P<n>{NUMBER})\s*(?P<u>{UNIT})(?P<rest>[^.;,(]*)",
    re.IGNORECASE,
)
_REPEAT = re.compile(
    r"rep(?:eat)?\.?\s+(?P<rows>(?:the\s+)?last\s+(?:row|rnd|round)|(?:rows?|rnds?|rounds?)\s+\d+(?:\s*(?:-|–|and|&|to)\s*\d+)?)",
    re.IGNORECASE,
)
MOST = 2000


def measured(
    found: Found, lines: tuple[Line, ...], at: int, before: int, numbering: Numbering, role: Role, names: tuple[str, float | None],
) -> int:
    """Puts a blank in for a line that goes on until a measure; gives its number of rows, 0 where the line is none or no gauge tells it.

    `names`: what the whole piece is called, and the height of a row in mm.
    """
    line, (item, row_mm) = lines[at], names
    order = line.row.order
    m = _UNTIL.search(line.text) if order is not None and order.until_text else None
    if m is None or order is None or row_mm is None:
        return 0
    wanted = float(number(m["n"]) * unit_mm(m["u"]))
    own = line.tall_mm[0] if line.tall_mm else row_mm
    section = (line.section.title if line.section else m["what"].split()[-1]).lower()
    of_part = line.section is not None and section in m["what"].lower() and not numbering.known
    rows = half_up((wanted - (0.0 if of_part else above_mm(lines, at, before))) / own)
    total = rows if of_part else rows + before
    if not 0 < rows <= MOST:
        return 0
    in_rounds = role == "depth" or line.in_rounds or any(x.in_rounds for x in lines[max(0, at - 1) : at])
    unit: Literal["rnds", "rows"] = "rnds" if in_rounds else "rows"
    name = found.name(f"{section} {'rounds' if unit == 'rnds' else 'rows'}")
    end = m.end() - len(m.group()) + len(m.group().rstrip(". "))
    length = f"{m['n'].strip()} {m['u'].rstrip('.')}"
    facts = (f"until {m['what'].strip()} measures {length}: {total} {unit} from the start, {rows} of them here",)
    subject = item if role == "depth" else section
    start = line.span.start
    if order.what == "even":
        below = above_mm(lines, at, before) if role == "depth" else 0.0
        slot = found.add(Blank(name, unit, rows, role, subject, before, ANY, facts, line=at, rows_mm=(own, below)))
        found.replace(Span(start + m.start(), start + end), f" for {slot} {unit}")
        return rows
    place = Span(start + m.start(), start + end)
    return _repeated(found, lines, at, rows if numbering.known else 0, Blank(name, unit, rows, role, subject, before, facts=facts), place)


def _repeated(found: Found, lines: tuple[Line, ...], at: int, rows: int, blank: Blank, until: Span) -> int:
    """Rows that are repeated until a measure, as a range of their own; gives the number of its last row, 0 where none can be told.

    `blank`: as for so many rows worked even; `until`: where the measure stands.
    """
    line = lines[at]
    order, again, last = line.row.order, _REPEAT.search(line.text), lines[at - 1].last if at else None
    if order is None or again is None or last is None or not rows:
        return 0
    own, before = line.tall_mm[0] if line.tall_mm else 0.0, blank.before
    sets = len(order.rows) or order.last_n or 1
    legal = Legal(sets, (last + rows) % sets, least=last) if sets > 1 else Legal(least=last)
    mm = (own, above_mm(lines, at, before if blank.role == "depth" else last) - last * own) if own else None
    slot = found.add(replace(blank, value=last + rows, before=before - last, legal=legal, line=at, rows_mm=mm))
    text = f"{blank.unit.capitalize()} {last + 1}-{slot}: Rep {again['rows']}"
    found.replace(Span(line.span.start + again.start(), until.end), text)
    return last + rows
