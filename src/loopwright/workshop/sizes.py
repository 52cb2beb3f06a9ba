"""The table of sizes: each number with its target and neighbours, the bodies it stands on, the gauge, and what is worth a thought."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from loopwright.grading import Number
from loopwright.grading.bodies import table_span
from loopwright.grading.kept import kept_in
from loopwright.model.tree import FitLine, HeadLine
from loopwright.workshop.live import Seen
from loopwright.workshop.resize import figures_in

_ADDRESS = re.compile(r"https?://\S+")
_MANY = 6  # thoughts that are told at once


def sizes(seen: Seen) -> dict[str, Any]:
    """The grading table: for every blank and size the number, its target, what it comes to, its neighbours and its reason."""
    graded = seen.graded
    if graded is None:
        return {"sizes": list(seen.report.sizes), "blanks": [], "bodies": [], "own_chart": False, "gauge": None, "thoughts": []}
    lines = [i for i in seen.document.items if isinstance(i, FitLine)]
    found = [_blank(seen, line) for line in lines]
    own = table_span(seen.document) is not None
    return {
        "sizes": [s.size for s in graded.sizes], "blanks": found, "bodies": _bodies(seen), "own_chart": own, "gauge": _gauge(seen),
        "thoughts": list(_thoughts(seen)),
    }


def _blank(seen: Seen, line: FitLine) -> dict[str, Any]:
    graded = seen.graded
    numbers = [next((n for n in s.numbers if n.blank == line.blank), None) for s in graded.sizes] if graded is not None else []
    first = next((n for n in numbers if n is not None), None)
    return {
        "name": line.blank, "sentence": line.sentence, "plain": kept_in(line.sentence)[0], "figures": figures_in(line.sentence),
        "measure": first.name if first is not None else line.blank, "way": first.way if first is not None else "",
        "multiple": first.multiple if first is not None else 1, "sizes": [None if n is None else _number(n) for n in numbers],
    }


def _number(n: Number) -> dict[str, Any]:
    return {
        "value": n.value, "unit": n.unit, "way": n.way, "measure": n.name, "target_mm": _mm(n.target_mm), "achieved_mm": _mm(n.achieved_mm),
        "error_mm": _mm(n.error_mm), "step_mm": _mm(n.step_mm), "reason": n.reason, "kept": n.kept, "held": n.held, "equal": n.equal,
        "bodies": [{"name": name, "mm": _mm(b.mm), "source": b.source, "weak": b.weak} for name, b in n.bodies],
        "neighbours": [{"value": m.value, "achieved_mm": None if n.target_mm is None else _mm(m.achieved_mm)} for m in n.neighbours],
    }


def _mm(value: float | None) -> float | None:
    return None if value is None else round(value, 2) + 0.0


def _bodies(seen: Seen) -> list[dict[str, Any]]:
    """The measurements of the body that the sentences ask for, per size, each with the names of its sources and their addresses."""
    graded = seen.graded
    found: dict[str, list[tuple[float, str, bool] | None]] = {}
    for at, size in enumerate(graded.sizes if graded is not None else ()):
        for number in size.numbers:
            for name, body in number.bodies:
                found.setdefault(name, [None] * len(graded.sizes if graded is not None else ()))[at] = (body.mm, body.source, body.weak)
    return [
        {
            "name": name, "mm": [None if x is None else _mm(x[0]) for x in row], "weak": [bool(x and x[2]) for x in row],
            "sources": [_source(s) for s in dict.fromkeys(x[1] for x in row if x is not None)],
        }
        for name, row in found.items()
    ]


def _source(told: str) -> dict[str, Any]:
    """A source as its name, and the addresses that stand in it."""
    addresses = [a.rstrip(".,;)") for a in _ADDRESS.findall(told)]
    return {"name": re.sub(r"[\s,;(]+$", "", _ADDRESS.sub("", told)).strip() or "a page", "addresses": addresses}


def _gauge(seen: Seen) -> dict[str, Any] | None:
    """The gauge that numbers are chosen at: per 10 cm, with the words for a stitch and a row; None where there is none."""
    graded = seen.graded
    gauge = graded.gauge if graded is not None else None
    if gauge is None:
        return None
    written = next((i.value for i in seen.document.items if isinstance(i, HeadLine) and i.name in ("gauge", "tension")), None)
    rounds = re.search(r"\b(rnds?|rounds?)\b", written or gauge.text, re.IGNORECASE)
    return {
        "text": gauge.text, "written": written, "stitch": gauge.stitch or "sts", "row": "rnds" if rounds else "rows",
        "stitches": None if gauge.stitch_mm is None else round(100 / gauge.stitch_mm, 2),
        "rows": None if gauge.row_mm is None else round(100 / gauge.row_mm, 2), "repeats": gauge.repeat_mm is not None,
    }


def _thoughts(seen: Seen) -> Iterator[dict[str, Any]]:
    told = [*_same(seen), *_falling(seen), *_held(seen)]
    yield from told[:_MANY]


def _same(seen: Seen) -> Iterator[dict[str, Any]]:
    """Pairs of neighbouring sizes in which nothing differs, or only rows do."""
    graded = seen.graded
    for a, b in zip(graded.sizes, graded.sizes[1:], strict=False) if graded is not None else ():
        one, two = a.blanks, b.blanks
        differ = [n for n in a.numbers if two.get(n.blank) != one[n.blank]]
        if one and not differ:
            yield {"what": "same", "sizes": [a.size, b.size], "text": f"{a.size} and {b.size} have the same numbers everywhere."}
        elif one and all(n.unit == "row" for n in differ):
            values = graded.values if graded is not None else {}
            around = (n for n in a.numbers if n.unit == "st" and n.target_mm is not None)
            shared = next((n for n in around if len(set(values.get(n.blank, ()))) > 2), None)
            if shared is None:
                continue
            other = {n.blank: n for n in b.numbers}
            mm = max(abs((other[n.blank].achieved_mm or 0) - (n.achieved_mm or 0)) for n in differ if n.blank in other)
            yield {
                "what": "same", "sizes": [a.size, b.size],
                "text": f"{a.size} and {b.size} share {shared.value} in {shared.blank}; only rows differ, by {mm:.0f} mm at most.",
            }


def _falling(seen: Seen) -> Iterator[dict[str, Any]]:
    """Numbers that fall from one size to the next though their target does not."""
    graded = seen.graded
    for a, b in zip(graded.sizes, graded.sizes[1:], strict=False) if graded is not None else ():
        other = {n.blank: n for n in b.numbers}
        for n in a.numbers:
            m = other.get(n.blank)
            if m is None or m.value >= n.value or n.target_mm is None or m.target_mm is None or m.target_mm < n.target_mm:
                continue
            yield {
                "what": "falls", "sizes": [a.size, b.size], "blank": n.blank,
                "text": f"{n.blank} falls from {n.value} in {a.size} to {m.value} in {b.size}, and what it must reach does not.",
            }


def _held(seen: Seen) -> Iterator[dict[str, Any]]:
    """Numbers that something keeps away from a nearer one, per blank and reason."""
    graded = seen.graded
    cases: dict[str, list[str]] = {}
    for s in graded.sizes if graded is not None else ():
        for n in s.numbers:
            if n.held and not n.kept:
                cases.setdefault(n.blank, []).append(s.size)
    for blank, named in cases.items():
        yield {"what": "held", "sizes": named, "blank": blank, "text": f"In {', '.join(named)} a nearer number for {blank} is not open."}
