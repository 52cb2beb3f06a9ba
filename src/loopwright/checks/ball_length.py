"""A ball of so many grams and metres that the class of its yarn, or any yarn, does not allow."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.checks.yarns import BALL, metres, named_class
from loopwright.findings import Finding
from loopwright.source import Span
from loopwright.trade.yarn import weights

ROOM = 1.8  # around the table, which gives the usual only: chainette yarns are longer, cotton is shorter. Common practice, no source.


def rule(pattern: Pattern) -> Iterator[Finding]:
    """One ball per line of yarn; silent where the line's class is not plain and some class has such yarn."""
    known = named_class(pattern)
    among = (known,) if known is not None else weights()
    low = min(w.metres_per_100g[0] for w in among)
    high = max(w.metres_per_100g[1] for w in among)
    for told in pattern.lines("yarn", "materials"):
        m = BALL.search(told.value)
        if m is None or int(m["g"]) == 0:
            continue
        long = metres(m) * 100 / int(m["g"])
        if not low / ROOM <= long <= high * ROOM:
            at = told.value_span.start
            facts = {"ball": " ".join(m.group().split()), "long": f"{long:.0f}", "low": f"{low:g}", "high": f"{high:g}"}
            yield Finding("C046", Span(at + m.start(), at + m.end()), {**facts, "yarn": known.name if known else "any"})
