"""A chart read back from its SVG alone: symbols with their kind, row, foot and lines."""

import math
import re
import xml.etree.ElementTree as ET
from collections import defaultdict
from dataclasses import dataclass
from typing import Any

NS = "{http://www.w3.org/2000/svg}"
_TOKEN = re.compile(r"[MLCZ]|-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Symbol:
    stitch: int
    kind: str
    row: int
    lines: tuple[Any, ...]
    data: str

    @property
    def foot(self):
        return self.lines[0][0]


def symbols(svg):
    found = []
    for group in ET.fromstring(svg).iter(f"{NS}g"):  # noqa: S314 - our own drawing
        if "data-row" in group.attrib:
            found += [
                Symbol(int(p.attrib["data-stitch"]), p.attrib["data-kind"], int(group.attrib["data-row"]), tuple(lines(p.attrib["d"])), p.attrib["d"])
                for p in group
                if "data-stitch" in p.attrib
            ]
    return found


def lines(data: Any) -> Any:
    """Straight pieces of a path; a curve is four of them."""
    tokens, at, here, start, step = _TOKEN.findall(data), 0, (0.0, 0.0), (0.0, 0.0), "M"
    while at < len(tokens):
        if tokens[at] in "MLCZ":
            step, at = tokens[at], at + 1
        if step == "Z":
            yield here, start
            here = start
            continue
        points = [(float(tokens[at + 2 * k]), float(tokens[at + 2 * k + 1])) for k in range(3 if step == "C" else 1)]
        at += 2 * len(points)
        if step == "M":
            start = points[0]
        elif step == "L":
            yield here, points[0]
        else:
            last = here
            for k in range(1, 5):
                now = _bezier(here, points[0], points[1], points[2], k / 4)
                yield last, now
                last = now
        here = points[-1]


def _bezier(a: Any, b: Any, c: Any, d: Any, t: float) -> Any:
    s = 1 - t
    return tuple(s**3 * a[i] + 3 * s * s * t * b[i] + 3 * s * t * t * c[i] + t**3 * d[i] for i in (0, 1))


def overlaps(svg, cell=15.0):
    """Pairs of symbols that touch, cross or lie on each other, but for lines that meet end to end, as two legs do in one foot."""
    found = symbols(svg)
    grid = defaultdict(list)
    for n, s in enumerate(found):
        for a, b in s.lines:
            for x in range(int(min(a[0], b[0]) // cell), int(max(a[0], b[0]) // cell) + 1):
                for y in range(int(min(a[1], b[1]) // cell), int(max(a[1], b[1]) // cell) + 1):
                    grid[x, y].append((n, (a, b)))
    hits = set()
    for held in grid.values():
        for i, (n, one) in enumerate(held):
            for m, two in held[i + 1 :]:
                if m != n and (n, m) not in hits and _touch(found[n], found[m], crossing(one, two)):
                    hits.add((n, m))
    return [(found[n], found[m]) for n, m in sorted(hits)]


def crossing(one, two):
    (x1, y1), (x2, y2) = one
    (x3, y3), (x4, y4) = two
    d = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
    if abs(d) < 1e-9:
        return _on_each_other(one, two)
    a = ((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)) / d
    b = ((x3 - x1) * (y2 - y1) - (y3 - y1) * (x2 - x1)) / d
    return (x1 + a * (x2 - x1), y1 + a * (y2 - y1)) if 0 <= a <= 1 and 0 <= b <= 1 else None


def _on_each_other(one, two):
    """The middle of what two parallel lines have in common, where they lie on each other."""
    (x1, y1), (x2, y2) = one
    long = math.dist(*one)
    if not long:
        return None
    ux, uy = (x2 - x1) / long, (y2 - y1) / long
    if any(abs((p[0] - x1) * uy - (p[1] - y1) * ux) > 0.3 for p in two):
        return None
    low, high = sorted((p[0] - x1) * ux + (p[1] - y1) * uy for p in two)
    low, high = max(low, 0.0), min(high, long)
    return (x1 + ux * (low + high) / 2, y1 + uy * (low + high) / 2) if high > low else None


def _touch(one, two, at):
    if at is None:
        return False
    ends = [p for line in two.lines for p in line]
    return not any(math.dist(at, a) <= 0.8 and any(math.dist(a, b) <= 0.5 for b in ends) for line in one.lines for a in line)
