"""Our own drawings made ready for paper: ground, ink, and lettering as large as it has to be."""

from __future__ import annotations

import html
import re
from collections import defaultdict
from itertools import pairwise

from loopwright.publishing.pages.faces import Faces

LETTERING_PX = 13.0  # the smallest lettering in our drawings, in their own units
MOST_GROWN = 1.48
_SIGN_PX = 36.0  # room for a sign of the key before its name
_EDGE_PX = 4.0
_TAB_AIR_PX = 7.0
_PRINT = re.compile(r"@media print\{(?P<rules>(?:[^{}]*\{[^{}]*\})*)\}")
_SCREEN = re.compile(r"@media screen[^{]*\{(?:[^{}]*\{[^{}]*\})*\}")
_STITCH = re.compile(r' data-[a-z]+="[^"]*"')
_TEXT = re.compile(r'<text(?P<before>[^>]*?) x="(?P<x>-?[\d.]+)" y="(?P<y>-?[\d.]+)"(?P<after>[^>]*)>(?P<said>[^<]*)</text>')
_TAB = re.compile(
    r'(?P<head><rect class="tab"[^>]*?) x="(?P<x>-?[\d.]+)" y="(?P<y>-?[\d.]+)" width="(?P<width>[\d.]+)" height="(?P<height>[\d.]+)"',
)
_PAPER = "<style>.sheet,.paper,.label,.outline{fill:#fff!important}</style>"


def room_to_grow(svg: str, width_px: float, faces: Faces) -> float:
    """How many times larger the lettering of a drawing may get before it meets its neighbour or the edge; 1 to MOST_GROWN."""
    lines: dict[int, list[tuple[float, float]]] = defaultdict(list)
    room = MOST_GROWN
    for m in _TEXT.finditer(svg):
        wide = faces.plain_em(html.unescape(m["said"])) * LETTERING_PX
        x, kind = float(m["x"]), m["before"] + m["after"]
        if not wide or "title" in kind:
            continue
        if "mid" in kind:
            room = min(room, 2 * (min(x, width_px - x) - _EDGE_PX) / wide)
        elif "end" in kind:
            room = min(room, (x - _EDGE_PX) / wide)
        else:
            room = min(room, (width_px - _EDGE_PX - x) / wide)
            lines[round(float(m["y"]))].append((x, wide))
    for line in lines.values():
        line.sort()
        for (x, wide), (following, _) in pairwise(line):
            room = min(room, (following - _SIGN_PX - x) / wide)
    return max(1.0, room)


def for_print(svg: bytes, *, ink_only: bool, grown: float) -> bytes:
    """A drawing for paper: white ground, the styles for print where only ink is wanted, lettering as large as it must be."""
    text = _SCREEN.sub("", _STITCH.sub("", svg.decode("utf-8", "replace")))
    text = _PRINT.sub(lambda m: m["rules"] if ink_only else "", text)
    style = _PAPER
    if grown > 1.01:
        text = _TAB.sub(lambda m: _tab(m, grown), text)
        style += f"<style>text{{font-size:{LETTERING_PX * grown:.2f}px!important}}</style>"
    end = text.rfind("</svg>")
    return (text[:end] + style + text[end:]).encode() if end >= 0 else text.encode()


def _tab(m: re.Match[str], grown: float) -> str:
    """The tab that a row's number stands on, grown about its middle."""
    width, height = float(m["width"]), float(m["height"])
    wide, high = max(width, (width - 2 * _TAB_AIR_PX) * grown + _TAB_AIR_PX), max(height, LETTERING_PX * grown + 4.0)
    x, y = float(m["x"]) - (wide - width) / 2, float(m["y"]) - (high - height) / 2
    return f'{m["head"]} x="{x:.2f}" y="{y:.2f}" width="{wide:.2f}" height="{high:.2f}"'
