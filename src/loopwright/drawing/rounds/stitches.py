"""Cells of the stitches as flat shapes: what was worked before in quiet tones, the new round over it."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from loopwright.drawing.rounds.laid import LaidOut
from loopwright.drawing.scene.body import Bools, Floats, Ints
from loopwright.drawing.scene.cells import Outlines, rings_of
from loopwright.drawing.scene.surface import unit
from loopwright.measuring.courses import Course
from loopwright.measuring.parts import Part, tie_rows
from loopwright.record import record

SIDE_PX = 400.0
MARGIN_PX = 16.0
LEAST_SHARE = 0.45  # a first round is drawn no smaller than this share of the frame would be at the end
TONES = 4
FEWEST_CORNERS, UNSEEN = 4, 4.0  # of an outline that may lose some; tenths of a pixel
_LAMP = unit(np.asarray([-0.45, 0.65, 0.75]))


@record
class Frame:
    """How a part is seen: from the body to the eye (3, 3), how large it is at its end, mm, and the row that its piece begins with.

    `mirrored`: as who works with the left hand sees it. `laid_flat`: nothing turns its back to the eye. `lines`: drawn below the stitches,
    mm. `told`: what the picture shows besides the work.
    """

    to_eye: Floats
    whole_mm: float
    from_row: int
    mirrored: bool = False
    laid_flat: bool = False
    lines: tuple[Floats, ...] = ()
    told: str = ""


def frame_of(laid: LaidOut, to_eye: Floats, part: Part | None, piece: int) -> Frame:
    """The frame of a part: discs and ovals by themselves, else the whole piece without its ties."""
    rows = np.asarray(laid.fabric.row, dtype=np.int64)[laid.body.face_stitch]
    ties = tie_rows(laid.parts)
    own = [i for i, row in enumerate(laid.fabric.rows) if row.piece == piece and i not in ties] or [0]
    last = part.rows[1] if part is not None and part.kind in ("disc", "oval") else own[-1]
    nodes = _corners(laid.body.faces[(rows >= own[0]) & (rows <= last) & ~np.isin(rows, list(ties))])
    seen = laid.body.points[nodes] @ to_eye.T if len(nodes) else np.zeros((1, 3))
    return Frame(to_eye, float(np.ptp(seen[:, :2], axis=0).max()), own[0])


def extent_mm(laid: LaidOut, c: Course) -> float:
    """The longest side of a row's box."""
    return float(np.ptp(laid.body.points[laid.nodes_of(c.index)], axis=0).max())


def _corners(faces: Ints) -> Ints:
    nodes = np.unique(faces)
    return np.asarray(nodes[nodes >= 0])


def work_so_far(laid: LaidOut, outlines: Outlines, c: Course, frame: Frame, most: int) -> list[str]:
    """Paths of the piece up to a row: every stitch's cell where they are no more than `most`, else rows alone."""
    so_far = np.flatnonzero((outlines.row >= frame.from_row) & (outlines.row <= c.index))
    new = outlines.row[so_far] == c.index
    ring = laid.nodes_of(c.index)
    all_faces = (outlines.cells.row >= frame.from_row) & (outlines.cells.row <= c.index)
    nodes = np.union1d(_corners(outlines.cells.faces[all_faces]), ring)
    seen = outlines.cells.places(laid.body.points) @ frame.to_eye.T
    low, high = seen[nodes, :2].min(axis=0), seen[nodes, :2].max(axis=0)
    size = max(float((high - low).max()), LEAST_SHARE * frame.whole_mm, 1e-9)
    scale, middle = (SIDE_PX - 2 * MARGIN_PX) / size, (low + high) / 2

    def placed(points: Floats) -> Floats:
        found = np.stack(((points[:, 0] - middle[0]) * scale, (middle[1] - points[:, 1]) * scale), axis=1) + SIDE_PX / 2
        if frame.mirrored:
            found[:, 0] = SIDE_PX - found[:, 0]
        return found

    places = placed(seen)
    ground = [_line(placed(line @ frame.to_eye.T), "row", closed=False) for line in frame.lines]
    if len(so_far) > most:
        return [*ground, *_bands(laid, frame, c, places), _line(places[ring], "newest", closed=c.way == "round")]
    lace = [o for o in laid.rows[frame.from_row : c.index] if o.chains and o.way != "chain" and len(laid.nodes_of(o.index)) > 1]
    drawn = ground + [_line(places[laid.nodes_of(o.index)], "row", closed=o.way == "round") for o in lace]
    drawn += [
        _line(places[post], "lace" if row == c.index else "row", closed=False)
        for post, row in zip(outlines.posts, outlines.post_row.tolist(), strict=True) if frame.from_row <= row <= c.index
    ]
    drawn += _cells(places, seen, outlines, (so_far, new, frame.laid_flat)) if len(so_far) else []
    if c.way == "chain" or not new.any():
        return [*drawn, _line(places[ring], "newest", closed=False)]
    return [*drawn, *([_line(places[ring], "lace", closed=c.way == "round")] if c.chains else [])]


def _cells(places: Floats, seen: Floats, outlines: Outlines, told: tuple[Ints, Bools, bool]) -> Iterator[str]:
    """From the far ones to the near ones; runs of one class in one path. `told`: which, those that are new, whether all lie flat."""
    chosen, new, laid_flat = told
    rings, of, depth, normal = _looks(seen, outlines, chosen, whole=laid_flat)
    away = normal[:, 2] < 0
    light = np.where(away[:, None], -normal, normal) @ _LAMP
    away &= not laid_flat
    tone = np.clip(np.floor(light * TONES), 0, TONES - 1).astype(np.int64)
    # what faces away lies behind what faces the eye; flat work has no depth to sort by
    order = np.lexsort((tone, np.round(depth / max(1e-9, float(np.ptp(depth)) / 40)), ~away))
    corners = np.round(places * 10).astype(np.int64).tolist()
    names = [f"{'new' if new[of[i]] else 'old'}{' in' if away[i] else f' t{tone[i]}'}" for i in order]
    run: list[str] = []
    for k, i in enumerate(order.tolist()):
        run += ["M" + " ".join(f"{x} {y}" for x, y in _without_flat([corners[n] for n in ring])) + "Z" for ring in rings[i]]
        if k + 1 == len(order) or names[k + 1] != names[k]:
            yield f'<path class="{names[k]}" d="{"".join(run)}"/>'
            run = []


def _without_flat(ring: list[list[int]]) -> list[list[int]]:
    """An outline without corners that lie on the line between their neighbours, as near as nobody can see; four stay."""
    if len(ring) <= FEWEST_CORNERS:
        return ring
    kept = []
    for k, (x, y) in enumerate(ring):
        (x0, y0), (x1, y1) = ring[k - 1], ring[(k + 1) % len(ring)]
        if abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) > UNSEEN * max(1.0, math.hypot(x1 - x0, y1 - y0)):
            kept.append([x, y])
    return kept if len(kept) >= FEWEST_CORNERS else ring


def _looks(seen: Floats, outlines: Outlines, chosen: Ints, *, whole: bool) -> tuple[list[list[list[int]]], list[int], Floats, Floats]:
    """What is drawn of some cells: outlines, of which of them, how near the eye, which way it looks.

    A cell that is bent over the edge of what is seen is two: what faces the eye and what faces away; unless cells are `whole`.
    """
    faces = outlines.cells.faces
    three = faces[:, 3] < 0
    full = np.where(faces < 0, faces[:, [2]], faces)
    side = seen[full[:, 2]] - seen[full[:, 0]]
    normal = np.cross(side, np.where(three[:, None], seen[full[:, 1]] - seen[full[:, 0]], seen[full[:, 3]] - seen[full[:, 1]]))
    normal = np.where(three[:, None], -normal, normal)
    depth, back = seen[full][:, :, 2].mean(axis=1), normal[:, 2] < 0
    first, many = outlines.first[:-1], np.diff(outlines.first)
    behind = np.add.reduceat(back.astype(np.int64), first)
    bent = (behind > 0) & (behind < many) & (not whole)
    plain = np.flatnonzero(~bent[chosen])
    rings, of = [outlines.rings[i] for i in chosen[plain].tolist()], plain.tolist()
    deep = [(np.add.reduceat(depth, first) / many)[chosen[plain]]]
    ways = [np.add.reduceat(normal, first, axis=0)[chosen[plain]]]
    for k in np.flatnonzero(bent[chosen]).tolist():
        own = np.arange(outlines.first[chosen[k]], outlines.first[chosen[k] + 1])
        for part in (own[back[own]], own[~back[own]]):
            rings.append(rings_of(faces[part].tolist()))
            of.append(k)
            deep.append(depth[part].mean(keepdims=True))
            ways.append(normal[part].sum(axis=0, keepdims=True))
    return rings, of, np.concatenate(deep), unit(np.concatenate(ways))


def _bands(laid: LaidOut, frame: Frame, c: Course, places: Floats) -> Iterator[str]:
    """Rows below as lines, those that lie too close left out."""
    own = range(frame.from_row, c.index)
    step = max(1, len(own) // 40)
    for row in own[::step]:
        nodes = laid.nodes_of(row)
        if len(nodes) > 1:
            yield _line(places[nodes[:: max(1, len(nodes) // 60)]], "row", closed=laid.rows[row].way == "round")


def _line(places: Floats, name: str, *, closed: bool) -> str:
    points = np.round(places * 10).astype(np.int64).tolist()
    points = points * 2 if len(points) == 1 else points  # one stitch is a dot
    return f'<path class="{name}" d="M{" ".join(f"{x} {y}" for x, y in points)}{"Z" if closed and len(points) > 2 else ""}"/>'
