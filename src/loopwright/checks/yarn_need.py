"""Yarn told that cannot be right: balls and lengths that do not multiply, or far from what the stitches take."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from loopwright.checks.gauges import gauge
from loopwright.checks.pattern import Pattern, Told
from loopwright.checks.yarns import BALL, LONG, NUMBER, metres
from loopwright.findings import Finding
from loopwright.model.tree import Section
from loopwright.source import Span
from loopwright.trade.yarn_use import yarn_use

_BALLS = re.compile(r"(?P<n>\d{1,3})\s*(?:x\s*\d+\s*g\s*)?(?:balls?|skeins?|hanks?)\b", re.IGNORECASE)
_TOTAL = re.compile(rf"(?:\btotal\b|\bin all\b|\babout\b|\bapprox\w*\b|=|\()\D{{0,12}}(?P<n>{NUMBER})\s*{LONG}", re.IGNORECASE)
_USED = re.compile(r"\b(?:about|approx|use[ds]?)\b", re.IGNORECASE)  # of what is bought, some may be left
LEAST, MOST = 0.7, 1.05  # of the length bought, that is told in all
SAME, BEHIND = 0.04, 3  # share by which two lengths of a ball may differ, one of them rounded; characters between them
TOO_LITTLE, TOO_MUCH = 2.0, 6.0  # the estimate is rough: half of it, or six times, is no matter of tension any more


def rule(pattern: Pattern) -> Iterator[Finding]:
    """First the line's own sum; then, where all rows were worked and a gauge is told, the stitches."""
    told = pattern.value("yarn")
    if told is None:
        return
    ball = BALL.search(told.value)
    balls = list(_BALLS.finditer(told.value))
    per_ball_m = metres(ball) if ball else None
    total = next((m for m in _TOTAL.finditer(told.value) if ball is None or not _of_the_ball(ball, m)), None)
    bought_m = per_ball_m * sum(int(b["n"]) for b in balls) if per_ball_m and balls else None
    total_m = metres(total) if total else None
    least = bought_m * LEAST if bought_m and total and not _USED.search(told.value, max(0, total.start() - 8), total.end() + 8) else 0.0
    if bought_m and total_m and len(balls) == 1 and not least <= total_m <= bought_m * MOST:
        yield Finding(
            "C032",
            _span(told, total),
            {"balls": balls[0]["n"], "per_ball": round(per_ball_m or 0), "makes": round(bought_m), "told": round(total_m)},
        )
        return
    has_m = total_m or bought_m
    need_m = _need_m(pattern)
    place = total or (balls[0] if balls else None)
    one = len(balls) == 1 and balls[0]["n"] == "1"  # less than a ball is not sold
    too_much = need_m and not one and _all_read(pattern) and (has_m or 0) > need_m * TOO_MUCH
    if has_m and need_m and place and (has_m * TOO_LITTLE < need_m or too_much):
        yield Finding("C040", _span(told, place), {"told": round(has_m), "need": round(need_m)})


def _of_the_ball(ball: re.Match[str], m: re.Match[str]) -> bool:
    """Whether a length is the ball's, or the same in the other unit right behind it: "120 m (131 yd)"."""
    same = abs(metres(m) - metres(ball)) <= SAME * metres(ball) and m["unit"][0].lower() != ball["unit"][0].lower()
    return m.start("n") == ball.start("n") or same and m.start("n") - ball.end() <= BEHIND


def _span(told: Told, m: re.Match[str] | None) -> Span:
    at = told.value_span.start
    return Span(at + m.start(), at + m.end()) if m else told.value_span


def _all_read(pattern: Pattern) -> bool:
    return bool(pattern.report.rows) and all(r.read for r in pattern.report.rows)


def _need_m(pattern: Pattern) -> float | None:
    """Metres in the stitches of the first size, by the width of a stitch; None without a gauge in a stitch."""
    told = gauge(pattern)
    if told is None or not told.stitches or told.stitch is None:
        return None
    width_m = 0.1 / told.stitches
    times = _times_width()
    copies = _copies(pattern)
    total = 0.0
    for row in pattern.report.rows:
        for kind, made in row.made.items():
            total += (made[0] or 0) * times.get(kind, 0.0) * width_m * copies.get(row.section, 1)
    return total or None


def _copies(pattern: Pattern) -> dict[str | None, int]:
    found: dict[str | None, int] = {}
    for item in pattern.document.items:
        if isinstance(item, Section):
            make = re.search(r"\bmake\s+(\d{1,3})\b|\((\d{1,3})\s*x\)", item.title, re.IGNORECASE)
            found[item.title] = int(make[1] or make[2]) if make else item.copies
    return found


@cache
def _times_width() -> dict[str, float]:
    """Yarn in one stitch as a multiple of its width, from the measured swatches; a treble is as much over a double as that over a half."""
    times = {m.kind: m.over_length for m in yarn_use().measured if m.over_length and not m.weak}
    return {**times, "sl st": times["ch"], "tr": 2 * times["dc"] - times["hdc"]}
