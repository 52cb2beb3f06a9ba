"""Pieces put together for a picture: each turned to be seen well, then side by side and one below the other."""

from __future__ import annotations

import math

import numpy as np

from loopwright.drawing.rounds.laid import ABOVE, LaidOut, facing
from loopwright.drawing.rounds.twins import Twin, with_twin
from loopwright.drawing.scene.body import Bools, Floats, Ints
from loopwright.drawing.scene.picture import turned_to_eye
from loopwright.drawing.scene.surface import unit
from loopwright.measuring.parts import Part, tie_rows
from loopwright.record import record

AZIMUTH = 20.0
_GAP_SHARE = 0.08
_WIDER = 1.25  # a picture of several pieces, over the side of a square of their boxes
_THUMB = math.radians(35.0)  # between a hand and its thumb, by eye
FEWEST = 4  # rounds of a branch that can be bent
BENDS = 4  # rounds over which it bends
_LOW = math.radians(12.0)  # from how far above a garment is seen


@record
class Composed:
    """Places of the nodes as they are seen, (n, 3) mm, x to the right, y upward, z towards the eye.

    `twin`: the other one of a sleeve that is worked twice. `bent`: a thumb was laid along its hand.
    """

    points: Floats
    twin: Twin | None = None
    bent: bool = False


def composed(laid: LaidOut) -> Composed:
    """The whole fabric as it is looked at."""
    points = _thumbs_up(laid)
    if not len(points):
        return Composed(points)
    bent = bool((points != laid.body.points).any())
    seen = ~np.isin(_rows_of_nodes(laid), list(tie_rows(laid.parts)))
    pieces: list[tuple[Bools, float, float]] = []
    for piece in np.unique(laid.body.piece).tolist():
        mine = laid.body.piece == piece
        own = points[mine] @ _to_eye(laid, piece).T
        boxed = own[seen[mine]] if seen[mine].any() else own
        own -= np.asarray([boxed[:, 0].min(), boxed[:, 1].min(), own[:, 2].min()])
        points[mine] = own
        pieces.append((mine, float(np.ptp(boxed[:, 0])), float(np.ptp(boxed[:, 1]))))
    for (mine, wide, _), (x, y) in zip(pieces, _places([(w, h) for _, w, h in pieces]), strict=True):
        points[mine] += np.asarray([x - wide / 2, y, 0.0])
    sleeve = _sleeve(laid)
    if sleeve is None:
        return Composed(points, bent=bent)
    return Composed(*with_twin(laid, sleeve, points), bent)


def _thumbs_up(laid: LaidOut) -> Floats:
    """The places of the nodes, branches of tubes bent over: a thumb that stands off as far as it grew is laid along the hand."""
    points = laid.body.points.copy()
    row_of = _rows_of_nodes(laid)
    for part in laid.parts:
        body = [p for p in laid.parts if p.piece == part.piece and p.kind == "tube" and not p.branch]
        if part.kind != "tube" or not part.branch or not body or len(part.courses) < FEWEST:
            continue
        root, tip = (points[laid.nodes_of(c.index)].mean(axis=0) for c in (part.courses[0], part.courses[-1]))
        low, high = (points[laid.nodes_of(i)].mean(axis=0) for i in (body[0].rows[0], body[-1].rows[1]))
        out, up = unit(tip - root), unit(high - low, (0.0, 0.0, 1.0))
        turn = max(0.0, math.acos(float(np.clip(out @ up, -1, 1))) - _THUMB)
        axis = unit(np.cross(out, up))
        for c in part.courses:
            mine = (row_of == c.index) & (laid.body.piece == part.piece)
            share = min(1.0, (c.index - part.rows[0] + 1) / BENDS)
            points[mine] = root + _about(points[mine] - root, axis, turn * share)
    return points


def _about(points: Floats, axis: Floats, angle: float) -> Floats:
    """Turned about an axis through nought (Rodrigues' formula)."""
    along = np.outer(points @ axis, axis)
    return np.asarray(along + (points - along) * math.cos(angle) + np.cross(axis, points) * math.sin(angle))


def _rows_of_nodes(laid: LaidOut) -> Ints:
    """The row of each node; -1 where no stitch has it."""
    found = np.full(len(laid.body.points), -1, dtype=np.int64)
    known = laid.body.node_of >= 0
    found[laid.body.node_of[known]] = np.asarray(laid.fabric.row, dtype=np.int64)[known]
    return found


def _to_eye(laid: LaidOut, piece: int) -> Floats:
    """How a piece is turned: garments with their front to the eye, flat ones on their right side, others from a little above."""
    own = [p for p in laid.parts if p.piece == piece and p.kind != "tie"]
    if any(p.branch for p in own) and any(p.kind == "flat" for p in own):
        return _front(laid, [p for p in own if p.kind == "flat"])
    lies = laid.flat or all(p.kind in ("flat", "edge", "border") for p in own)
    part = next((p for p in own if p.kind in ("flat", "disc", "oval")), None) if lies else None
    if part is None:
        return turned_to_eye((AZIMUTH, ABOVE))
    found = facing(laid, part)
    seen = laid.body.points[laid.body.piece == piece] @ found.T
    if not laid.flat and np.ptp(seen[:, 1]) > 2 * np.ptp(seen[:, 0]):  # a strap lies along the picture
        return np.stack((found[1], -found[0], found[2]))
    return found


def _front(laid: LaidOut, flat: list[Part]) -> Floats:
    """A garment of rows, its neck above and its opening, where the rows end, to the eye."""
    first, last = laid.body.points[laid.nodes_of(flat[0].rows[0])], laid.body.points[laid.nodes_of(flat[-1].rows[1])]
    if len(first) < 2 or len(last) < 2:
        return turned_to_eye((AZIMUTH, ABOVE))
    up = unit(first.mean(axis=0) - last.mean(axis=0), (0.0, 0.0, 1.0))
    ends = sum(((row[0] + row[-1]) / 2 - row.mean(axis=0) for row in (first, last)), np.zeros(3))
    z = unit(ends - (ends @ up) * up, (0.0, -1.0, 0.0))
    x = np.cross(up, z)
    tilted = math.cos(_LOW) * z + math.sin(_LOW) * up
    return np.stack((x, np.cross(tilted, x), tilted))


def _places(boxes: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """The middle of the lower edge of each box: the highest first, in lines that are no wider than the whole is about high."""
    gap = _GAP_SHARE * max(max(box) for box in boxes)
    room = max(*(w for w, _ in boxes), _WIDER * math.sqrt(sum((w + gap) * (h + gap) for w, h in boxes)))
    lines: list[list[int]] = []
    left = 0.0
    for i in sorted(range(len(boxes)), key=lambda i: -boxes[i][1]):
        if not lines or left + boxes[i][0] > room * 1.001:
            lines.append([])
            left = 0.0
        lines[-1].append(i)
        left += boxes[i][0] + gap
    found = [(0.0, 0.0)] * len(boxes)
    y = 0.0
    for line in lines:
        y -= max(boxes[i][1] for i in line)
        x = -(sum(boxes[i][0] for i in line) + gap * (len(line) - 1)) / 2
        for i in sorted(line):
            found[i] = (x + boxes[i][0] / 2, y)
            x += boxes[i][0] + gap
        y -= gap
    return found


def _sleeve(laid: LaidOut) -> Part | None:
    """The one sleeve of a garment of rows, worked twice and laid down once; None where there is none, or there are both."""
    pieces = {p.piece for p in laid.parts if p.kind == "flat"}
    found = [p for p in laid.parts if p.kind == "tube" and p.branch and p.piece in pieces]
    return found[0] if len({p.section for p in found}) == len(found) == 1 else None
