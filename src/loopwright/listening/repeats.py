"""More rows of the same: "every row from here", "until you have twenty rows", "until it measures eighteen centimetres"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.listening.forms import form
from loopwright.listening.words import Line
from loopwright.record import record

_UNIT_MM = {"cm": 10.0, "inch": 25.4, "mm": 1.0}


@record
class Repeats:
    """What was said of further rows. `until`: the last row; `more`: how many more; `rows`: how many, perhaps with this one.

    `measure`: the length to stop at as (number, unit, millimetres); `same`: only that it goes on; `at`: index of the first such word;
    `of_at`: of "three rounds of single crochet".
    """

    until: int | None = None
    more: int | None = None
    rows: int | None = None
    measure: tuple[str, str, float] | None = None
    same: bool = False
    at: int = -1
    rows_at: int = -1
    measure_at: int = -1
    of_at: int = -1


def repeats(line: Line, start: int, end: int, k: int) -> Repeats:
    """What is said of further rows between two words of a line, after row `k`."""
    text = _cut(line, start, end)
    lows = line.starts[start] - 1 if start < len(line.starts) else 0

    def at(m: re.Match[str]) -> int:
        return line.index(lows + m.start() + 1)

    until = [(int(m[1]), at(m)) for p in (form("more", "until_n"), form("more", "to_row")) for m in p.finditer(text)]
    until += [(int(m[1] or m[2]), at(m)) for m in form("more", "all_n").finditer(text)]
    until = [(n, i) for n, i in until if k < n <= k + 400]
    more = next(((int(m[1] or m[2]), at(m)) for m in form("more", "more_n").finditer(text)), None)
    rows = next(((int(m[1]), at(m)) for m in form("more", "for_n").finditer(text)), None)
    of = next(((int(m[1]), at(m)) for m in form("more", "of_n").finditer(text)), None)
    rows = of or rows
    measure = form("more", "measures").search(text) or form("more", "measured").search(text)
    same = form("more", "same").search(text)
    places = [i for _, i in until] + [p[1] for p in (more, rows) if p] + [at(m) for m in (measure,) if m]
    return Repeats(
        max((n for n, _ in until), default=None), more[0] if more else None, rows[0] if rows else None,
        (measure[1], measure[2], float(measure[1]) * _UNIT_MM[measure[2]]) if measure else None, same is not None, min(places, default=-1),
        rows[1] if rows else more[1] if more else -1, at(measure) if measure else -1, of[1] if of else -1,
    )


def reference(line: Line, start: int, end: int, below: int) -> tuple[int, ...]:
    """The rows up to `below` that are spoken of as a model: "the same as round two", "repeat the second and third rows"."""
    text = _cut(line, start, end)
    if " lasttwo " in text and below > 1:
        return below - 1, below
    for m in form("more", "ref").finditer(text):
        rows = _models(m)
        if max(rows) <= below:
            return rows
    return ()


def _models(m: re.Match[str]) -> tuple[int, ...]:
    if m["a"]:
        return int(m["a"]), int(m["b"])
    if m["c"]:
        first, last = int(m["c"]), int(m["d"] or m["c"])
        return tuple(range(first, last + 1)) if first <= last <= first + 20 else (first,)
    return (int(m["e"]),)


def last_row(found: Repeats, k: int, following: int | None, *, own: bool) -> int:
    """The last row that is worked without being told anew.

    `following`: the number of the next row told; `own`: the words of the further rows differ from those of row `k`.
    """
    if following is not None:
        return max(k, following - 1) if following > k + 1 and (found.at >= 0 or found.same or own) else k
    counted = [n for n in (found.until,) if n]
    if found.more:
        return k + min(found.more, 400)
    if counted:
        return counted[0]
    if found.rows:
        return k + min(found.rows, 400) - (0 if own else 1)
    return k


def cycle(rows: Sequence[int]) -> str:
    """Rows as they are repeated: "Row 2", "Rows 2 and 3"."""
    return str(rows[0]) if len(rows) == 1 else f"{rows[0]} and {rows[-1]}" if len(rows) == 2 else f"{rows[0]}-{rows[-1]}"


def _cut(line: Line, start: int, end: int) -> str:
    a = line.starts[start] - 1 if start < len(line.starts) else len(line.text)
    b = line.starts[end] if end < len(line.starts) else len(line.text)
    return line.text[a:b]
