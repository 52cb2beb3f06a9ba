"""Rows that all gain the same number: how many there are becomes a blank, and the count at their end follows from it."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.tall import rows_mm
from loopwright.source import Span

_LABEL = re.compile(r"(?P<word>Rows|Rnds|Rounds)\s+(?P<first>\d+)\s*(?:-|–|to)\s*(?P<last>\d+)", re.IGNORECASE)


def growing(found: Found, lines: Sequence[Line], at: int) -> bool:
    """Puts the blanks in for a line "Rows 4-40" whose rows gain alike. False where they do not, or where nothing tells how much."""
    line, before = lines[at], lines[at - 1]
    m = _LABEL.match(line.text)
    gain = _gain(line, before)
    if m is None or not gain or line.count is None:
        return False
    first, last = int(m["first"]), int(m["last"])
    unit = "rnds" if line.in_rounds else "rows"
    word = (line.section.title if line.section else "piece").lower()
    facts = (f"each of them gains {gain} sts",)
    name = found.name(f"{word} {'rounds' if unit == 'rnds' else 'rows'}")
    tall = rows_mm(lines, at, last, 0, last - first + 1)
    rows = Blank(name, unit, last, "part", word, 0, Legal(least=first), facts, line=line.item, rows_mm=tall)  # type: ignore[arg-type]
    start = line.span.start
    found.replace(Span(start + m.start("last"), start + m.end("last")), found.add(rows))
    rest = line.count - gain * last
    more = f" {'plus' if rest > 0 else 'less'} {abs(rest)}" if rest else ""
    link = Reason(f"{gain} times {{{rows.name}}}{more}", f"{gain} more in every row make {line.count} in row {last}")
    found.add(Blank(found.name(f"{word} sts"), "sts", line.count, "link", given=(link,), line=line.item))
    return True


def _gain(line: Line, before: Line) -> int | None:
    """What every row of the line gains; from its printed count where its rows are not known one by one."""
    start = before.count
    if start is None or line.count is None:
        return None
    if len(line.counts) == line.worked and None not in line.counts and line.counts[-1] == line.count:
        gains = {b - a for a, b in itertools.pairwise((start, *line.counts)) if a is not None and b is not None}
        return gains.pop() if len(gains) == 1 else None
    gain, rest = divmod(line.count - start, line.worked)
    return gain if rest == 0 and gain > 0 else None
