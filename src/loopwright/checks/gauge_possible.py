"""A gauge or a hook that the yarn, or the stitch's own shape, does not allow."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.gauges import NUMBER, Gauge, gauge
from loopwright.checks.pattern import Pattern
from loopwright.checks.yarns import named_class
from loopwright.findings import Finding
from loopwright.source import Span
from loopwright.trade.stitches import shape
from loopwright.trade.yarn import Weight

# Room around the tables, which give the usual only. Toys are worked half as tight again, shawls half as loose. Common practice, no source.
ROOM_GAUGE = 2.0
ROOM_HOOK = 1.9
ROOM_SHAPE = 1.6
_STUFFED = re.compile(r"\b(?:stuff(?:ing|ed)?|fib(?:er|re)[ -]?fill|polyfill|amigurumi)\b", re.IGNORECASE)
_HOOK_MM = re.compile(rf"(?P<mm>{NUMBER})\s*mm\b", re.IGNORECASE)
_HOOK_SAID = re.compile(rf"(?<![\d.])(?P<mm>{NUMBER})\s*mm\b(?=[^.;,\n]{{0,20}}\bhook\b)", re.IGNORECASE)

def rule(pattern: Pattern) -> Iterator[Finding]:
    """Three looks: stitches against the yarn's class, hook against it, and the shape of the stitch (rows against stitches)."""
    told, yarn = gauge(pattern), named_class(pattern)
    if told is not None:
        yield from _shape(pattern, told)
        if yarn is not None and told.stitches and told.stitch in (yarn.gauge_stitch, "sc", "hdc", "dc"):
            low, high = yarn.gauge[0] / ROOM_GAUGE, yarn.gauge[1] * ROOM_GAUGE
            if not low <= told.stitches <= high:
                facts = {
                    "told": f"{told.stitches:g} {told.noun} in 10 cm",
                    "yarn": yarn.name,
                    "low": f"{yarn.gauge[0]:g}",
                    "high": f"{yarn.gauge[1]:g}",
                }
                yield Finding("C029", told.span, facts)
    if yarn is not None:
        yield from _hook(pattern, yarn)


def _shape(pattern: Pattern, told: Gauge) -> Iterator[Finding]:
    usual = shape(told.stitch) if told.stitch else None
    if usual is None or not told.stitches or not told.rows or re.search(r"\bpatt|\bin\s+(?!\d)[a-z]", told.text, re.IGNORECASE):
        return
    wide = told.rows / told.stitches
    if not usual.low / ROOM_SHAPE <= wide <= usual.high * ROOM_SHAPE:
        facts = {
            "stitch": told.noun,
            "ratio": f"{wide:.2f}",
            "low": f"{usual.low:g}",
            "high": f"{usual.high:g}",
            "terms": pattern.document.terms.upper(),
        }
        yield Finding("C038", told.span, facts)


def _hook(pattern: Pattern, yarn: Weight) -> Iterator[Finding]:
    told = pattern.value("hook")
    m = _HOOK_MM.search(told.value) if told else None
    if told is None:  # among the materials, "5 mm crochet hook"
        told = next((t for t in pattern.lines("materials") if _HOOK_SAID.search(t.value)), None)
        m = _HOOK_SAID.search(told.value) if told else None
    if told is None or m is None:
        return
    mm = float(m["mm"])
    low, high = yarn.hook_mm
    low /= 2 if _STUFFED.search(pattern.document.text) else 1  # toys are worked tight, so that no filling shows: common practice, no source
    if 0.4 <= mm <= 25 and not low / ROOM_HOOK <= mm <= high * ROOM_HOOK:
        at = told.value_span.start
        facts = {"hook": f"{mm:g}", "yarn": yarn.name, "low": f"{low:g}", "high": f"{high:g}"}
        yield Finding("C039", Span(at + m.start(), at + m.end()), facts)
