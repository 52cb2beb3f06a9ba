"""Dimensions in closed form, each with the range that the gauge's own uncertainty leaves, and the rows it is taken from.

Along a row: stitches x width. Up: the sum of the rows' heights. A disc or oval: twice that from its centre. A tube: its round's length is
its circumference. What a stuffed piece comes to: each round a circle of its own circumference, one slant height above the last.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from loopwright.grading.discs import across_by_rounds_mm
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import SAME, Course, courses
from loopwright.measuring.diagonal import sides_mm
from loopwright.measuring.fans import fan
from loopwright.measuring.openings import openings
from loopwright.measuring.parts import Part, parts, pieces
from loopwright.measuring.ranges import dimension, sts, width_mm
from loopwright.measuring.ripples import takes_up
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension

NARROW = 0.9  # a rim shorter than this share of a flat disc's: the piece cups
ALIKE = 0.02  # rows whose lengths differ by less count as one width


def dimensions(fabric: Fabric, sizes: StitchSizes, rows: Sequence[Course] | None = None) -> tuple[Dimension, ...]:
    """All dimensions of a fabric: of each section, then of each piece as a whole (`section` None, or the piece's first section)."""
    found = list(courses(fabric, sizes)) if rows is None else list(rows)
    cut = parts(fabric, found)
    result: list[Dimension] = []
    for i, part in enumerate(cut):
        own = _OF[part.kind](part, sizes)
        result += (d for d in own if d.name != "around" or not _goes_on(part, cut[i + 1 : i + 2]))
    result += openings(fabric, found, sizes)
    if fabric.layout is not None:
        result += _laid_out(fabric.layout, cut, result, sizes)
    by_piece = pieces(cut)
    for piece, own_parts in by_piece.items():
        whole = list(_whole(own_parts, sizes, alone=len(by_piece) == 1))
        if any(d.name == "across" for d in whole):  # stuffed: its crown does not lie flat
            result = [d for d in result if d.piece != piece or d.name != "across"]
        result += whole
    return tuple(_once(result))


def _laid_out(layout: tuple[int, int], cut: Sequence[Part], told: Sequence[Dimension], sizes: StitchSizes) -> Iterator[Dimension]:
    """Motifs joined, their border around them: as many motifs as stand across or down, and the border twice."""
    motif = next((d for d in told if d.name == "across" and d.piece == cut[0].piece), None)
    border = cut[-1]
    if motif is None or border.piece == motif.piece:
        return
    for name, many in zip(("width", "length"), layout, strict=True):
        how = f"{many} motifs of {motif.how}, and twice the border"
        yield dimension(border, name, many * motif.value_mm + 2 * border.height_mm, how, sizes, along=False)


def _goes_on(part: Part, following: Sequence[Part]) -> bool:
    """Whether a disc goes on in the same section as a tube no narrower than itself, which then tells how far around it is."""
    if not following or part.kind != "disc" or following[0].kind != "tube" or part.section != following[0].section:
        return False
    last, first = part.courses[-1], following[0].courses[0]
    return first.below == last.index and first.top_mm * SAME >= last.top_mm


def _once(found: Sequence[Dimension]) -> Iterator[Dimension]:
    """Each measure once: what a section's parts share, and what the whole says again, is told the first time."""
    told: set[tuple[object, ...]] = set()
    for d in found:
        key = d.section, d.piece, d.name, round(d.value_mm, 3)
        if key not in told:
            told.add(key)
            yield d


def _disc(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    last = part.courses[-1]
    flat = 2 * math.pi * part.radius_mm
    sides = part.sides
    if sides:
        yield dimension(part, "side", last.top_mm / sides, f"{sts(last)}, {sides} sides", sizes, along=True, run=[last])
        flat = 2 * sides * math.tan(math.pi / sides) * part.radius_mm
    if part.radius_mm and last.top_mm < NARROW * flat:  # it cups: its rim is narrower than it is wide along the fabric
        across = last.top_mm / (sides * math.tan(math.pi / sides) if sides else math.pi)
        yield dimension(part, "across", across, f"{sts(last)} around, laid out", sizes, along=True, run=[last])
    else:
        across = float(across_by_rounds_mm(1, part.radius_mm))
        yield dimension(part, "across", across, f"twice {_rounds_to(part)}", sizes, along=False)
    yield dimension(part, "around", last.top_mm, sts(last), sizes, along=True, run=[last])


def _oval(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    last = part.courses[-1]
    yield dimension(part, "length", part.base_mm + 2 * part.radius_mm, f"the chain and twice {_rounds_to(part)}", sizes, along=False)
    yield dimension(part, "width", 2 * part.radius_mm, f"twice {_rounds_to(part)}", sizes, along=False)
    yield dimension(part, "around", last.top_mm, sts(last), sizes, along=True, run=[last])


def _tube(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    yield from _lengths(part, "around", sizes)
    yield _depth(part, sizes)


def _flat(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    if part.blocks:
        yield from _aslant(part, 0.0, sizes)
        return
    yield from _lengths(part, "width", sizes)
    yield _depth(part, sizes)


def _aslant(part: Part, around_mm: float, sizes: StitchSizes) -> Iterator[Dimension]:
    """A piece from corner to corner in blocks, and a border around it: its two sides, not the length of its rows."""
    how = f"up to {max(part.blocks)} blocks in a row from corner to corner"
    for name, mm in zip(("width", "depth"), sides_mm(part.blocks, part.courses, sizes), strict=True):
        yield dimension(part, name, mm + around_mm, how, sizes, along=False)


def _border(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    last = part.courses[-1]
    yield dimension(part, "around", last.top_mm, sts(last), sizes, along=True, run=[last])
    yield _depth(part, sizes)


def _edge(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    last = part.courses[-1]
    yield dimension(part, "length", last.top_mm, sts(last), sizes, along=True, run=[last])
    yield _depth(part, sizes)


def _tie(part: Part, sizes: StitchSizes) -> Iterator[Dimension]:
    first = part.courses[0]
    many = first.places
    yield dimension(part, "length", first.top_mm, f"{many} {'ch' if first.way == 'chain' else 'sl sts'}", sizes, along=True)


_OF = {"disc": _disc, "oval": _oval, "tube": _tube, "flat": _flat, "border": _border, "edge": _edge, "tie": _tie}


def _depth(part: Part, sizes: StitchSizes) -> Dimension:
    return dimension(part, "depth", part.height_mm, _rounds(part.courses), sizes, along=False)


def _lengths(part: Part, name: str, sizes: StitchSizes) -> Iterator[Dimension]:
    """The length of the rows; where they differ, the widest, and those at both ends."""
    share = takes_up(part, sizes)
    widths = [share * width_mm(c) for c in part.courses]
    widest = max(range(len(widths)), key=widths.__getitem__)
    best = part.courses[widest]
    how = sts(best) if share == 1 else f"{sts(best)} in a zigzag, which takes up {100 * (1 - share):.0f} % of them; measure a repeat"
    yield dimension(part, name, widths[widest], how, sizes, along=True, run=[best])
    if min(widths) < (1 - ALIKE) * widths[widest]:
        for word, at in (("at the start", 0), ("at the end", -1)):
            if widths[at] < (1 - ALIKE) * widths[widest]:
                c = part.courses[at]
                yield dimension(part, f"{name} {word}", widths[at], sts(c), sizes, along=True, run=[c])


def _whole(own: Sequence[Part], sizes: StitchSizes, *, alone: bool) -> Iterator[Dimension]:
    """What a piece comes to altogether."""
    section = None if alone else own[0].section
    body = [p for p in own if p.kind in ("disc", "oval", "tube")]
    flat = [p for p in own if p.kind == "flat"]
    if body and body[0].kind == "disc":
        yield from _from_centre(body, section, sizes)
    elif body and not flat and len(body) > 1:
        last = max(body, key=lambda p: p.depth_mm)
        yield _as_whole(dimension(last, "depth", last.depth_mm, "all its rounds", sizes, along=False), section, body)
    if flat:
        yield from _flat_whole(own, flat, body, section, sizes)


def _flat_whole(
    own: Sequence[Part], flat: Sequence[Part], body: Sequence[Part], section: str | None, sizes: StitchSizes,
) -> Iterator[Dimension]:
    """A piece with rows: its width where it is rows alone, its depth from where it began."""
    rim: dict[str, float] = {p.kind: p.edge_mm for p in own if p.edge_mm}
    around = 2 * rim.get("border", 0.0)
    aslant = _aslant(flat[0], around, sizes) if flat[0].blocks else fan(own, flat, sizes)
    if not body and (found := list(aslant)):
        yield from (_as_whole(d, section, own) for d in found)
        return
    if not body:
        part, widest = max(((p, c) for p in flat for c in p.courses), key=lambda pc: width_mm(pc[1]))
        wide = takes_up(part, sizes) * width_mm(widest) + around + rim.get("edge", 0.0)
        w = dimension(flat[0], "width", wide, _with_border(sts(widest), rim), sizes, along=True, run=[widest])
        yield _as_whole(w, section, own)
    main = [p for p in body if not p.branch]
    deepest = max(body if main and main[0].kind == "tube" else (*flat, *body), key=lambda p: p.depth_mm)
    how = "all its rounds and rows" if body else "all its rows"
    how = f"from the centre, {how}" if body and body[0].kind == "disc" else how
    told = _with_border(how, {k: v for k, v in rim.items() if k == "border"})
    yield _as_whole(dimension(deepest, "depth", deepest.depth_mm + around, told, sizes, along=False), section, own)


def _as_whole(d: Dimension, section: str | None, own: Sequence[Part]) -> Dimension:
    rows = min(p.rows[0] for p in own), max(p.rows[1] for p in own)
    return Dimension(section, d.name, d.value_mm, d.low_mm, d.high_mm, rows, d.how, d.piece)


def _from_centre(body: Sequence[Part], section: str | None, sizes: StitchSizes) -> Iterator[Dimension]:
    """A piece from a centre: how deep along the fabric, how far around; and how tall when it closes again, as a stuffed piece does."""
    if len(body) == 1:
        return
    run = [c for p in body for c in p.courses]
    widest = max(run, key=lambda c: c.top_mm)
    whole = max(body, key=lambda p: p.depth_mm)
    yield _as_whole(dimension(whole, "depth", whole.depth_mm, "from the centre, all its rounds", sizes, along=False), section, body)
    yield _as_whole(dimension(whole, "around", widest.top_mm, sts(widest), sizes, along=True, run=[widest]), section, body)
    closes = run[-1].top_mm <= 0.6 * widest.top_mm
    if closes:
        tall = stuffed_height_mm(run)
        across = widest.top_mm / math.pi
        yield _as_whole(dimension(whole, "height", tall, "stuffed, each round a circle", sizes, along=False), section, body)
        yield _as_whole(dimension(whole, "across", across, "stuffed, the widest round a circle", sizes, along=True), section, body)


def stuffed_height_mm(run: Sequence[Course]) -> float:
    """How tall rounds stand when each is a circle of its own length: the sum of sqrt(h^2 - dr^2), from a first radius of nought."""
    total, radius = 0.0, 0.0
    for c in run:
        own = c.top_mm / (2 * math.pi)
        total += max(0.0, c.height_mm**2 - (own - radius) ** 2) ** 0.5
        radius = own
    return total


def _with_border(how: str, rim: Mapping[str, float]) -> str:
    told = {"border": "the border on both sides", "edge": "the edge worked on"}
    return ", and ".join([how, *(told[k] for k in rim)])


def _rounds(run: Sequence[Course]) -> str:
    word = "rnd" if run[0].way == "round" else "row"
    return f"{len(run)} {word}{'s' if len(run) != 1 else ''}"


def _rounds_to(part: Part) -> str:
    many = len(part.courses)
    word = f"{many} rnd{'s' if many != 1 else ''}"
    return word if abs(part.radius_mm - part.height_mm) < 0.01 else f"{word} and those before"
