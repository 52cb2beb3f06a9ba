"""Forms to wear fabric on: a head and a hand of given size, as meshes with marks, and how far a place lies outside of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq
from scipy.spatial import cKDTree

from loopwright.drawing.scene.body import Bools, Floats, Ints
from loopwright.drawing.scene.surface import normals
from loopwright.shipped import shipped_table

SMALLEST_MM, LARGEST_MM = 30.0, 2000.0
"""What a circumference or length of a form may be: a doll's wrist to far beyond any head."""


@dataclass(frozen=True)
class Form:
    """A closed body. Lengths are mm, z upward, the face towards -y; the palm too.

    `points` (n, 3), `faces` (f, 3) outward, `normals` (n, 3). `marks`: places by name; of a head "brow", "ear", "eyes", "chin", "nape",
    "top"; of a hand "wrist", "knuckles", "side", "back" (of the hand), "tip", "thumb tip". `bare` (n,): the point is on the outside of the
    body (where parts of a hand meet, some are within) and fabric lies on it (it bridges the nose). `spacing_mm`: about how far points lie
    apart.
    """

    points: Floats
    faces: Ints
    normals: Floats
    marks: Mapping[str, tuple[float, float, float]]
    bare: Bools
    spacing_mm: float

    @cached_property
    def tree(self) -> cKDTree:
        """The bare points, ready to be asked for the nearest."""
        return cKDTree(self.points[self.bare])


def nearest_outside(form: Form, points: Floats) -> tuple[Floats, Floats]:
    """How far points (p, 3) lie outside a form, mm (p,), below nought: inside; and the direction outward there (p, 3).

    Taken to the plane at the nearest point of the surface.
    """
    if not len(points):
        return np.zeros(0), np.zeros((0, 3))
    where = np.flatnonzero(form.bare)
    reach, found = form.tree.query(points)
    found = where[found]
    way = points - form.points[found]
    plane = np.einsum("ij,ij->i", way, form.normals[found])
    far = reach > 2 * form.spacing_mm
    return np.where(far, np.copysign(reach, plane), plane), form.normals[found]


@cache
def _proportions() -> dict[str, Any]:
    return shipped_table("loopwright.drawing.scene", "proportions.toml")


def _checked(name: str, value_mm: float) -> float:
    if not SMALLEST_MM <= value_mm <= LARGEST_MM:
        raise ValueError(f"{name} of a form is {SMALLEST_MM:g} to {LARGEST_MM:g} mm, not {value_mm:g}")
    return float(value_mm)


# --- head ---------------------------------------------------------------------------------------------------------------------


def head_form(circumference_mm: float, *, spacing_mm: float | None = None) -> Form:
    """A head of that circumference, the tape just above the brows at z = 0; neck below, the face towards -y.

    Sources of the proportions: `proportions.toml`. Raises ValueError for a circumference outside SMALLEST_MM … LARGEST_MM.
    """
    around = _checked("the circumference", circumference_mm)
    share = _proportions()["head"]
    spacing = spacing_mm or around / 140
    half_long, half_wide = around * share["length"] / 2, around * share["breadth"] / 2
    power = _power(around, half_long, half_wide)
    high = around * (share["ear_to_top"] - share["ear_to_tape"])
    known = np.asarray(share["face_by_around_mm"])
    face = around * share["tape_to_chin"] * float(np.interp(around, known[:, 0], known[:, 1]))
    count = max(round(around / spacing / 4) * 4, 24)
    rings = _dome(half_long, half_wide, high, power, count, spacing) + _below(share, half_long, half_wide, face, power, count, spacing)
    points, faces = _closed(rings)
    nose = _nose(points, face, half_long, around)
    points += nose[:, None] * np.asarray([0.0, -1.0, 0.0])
    ear = -around * share["ear_to_tape"]
    marks = {
        "top": (0.0, 0.0, high), "brow": (0.0, -half_long, 0.0), "eyes": (0.0, -half_long, -0.2 * face),
        "ear": (half_wide, 0.0, ear), "chin": (0.0, -0.88 * half_long, -face), "nape": (0.0, 0.70 * half_long, -0.85 * face),
    }
    return Form(points, faces, normals(points, faces), marks, nose < 0.004 * around, spacing)


def _section(front: float, back: float, wide: float, power: float, count: int) -> Floats:
    """A level ring (count, 2), rounder than a box and boxier than an ellipse; from the right, over the back, against the clock."""
    angle = 2 * np.pi * np.arange(count) / count
    cosine, sine = np.cos(angle), np.sin(angle)
    x = wide * np.sign(cosine) * np.abs(cosine) ** (2 / power)
    y = np.sign(sine) * np.abs(sine) ** (2 / power) * np.where(sine > 0, back, front)
    return np.stack((x, y), axis=1)


def _around(ring: Floats) -> float:
    return float(np.linalg.norm(np.roll(ring, -1, axis=0) - ring, axis=1).sum())


def _power(around: float, half_long: float, half_wide: float) -> float:
    """The exponent that makes a section of that length and breadth as long around as the tape says."""
    return float(brentq(lambda p: _around(_section(half_long, half_long, half_wide, p, 720)) - around, 1.5, 6.0))


def _dome(half_long: float, half_wide: float, high: float, power: float, count: int, spacing: float) -> list[Floats]:
    """Rings from the top down to the tape, both of the same exponent as the tape's section."""
    steps = max(round(1.6 * high / spacing), 8)
    rings = [np.asarray([[0.0, 0.0, high]])]
    for angle in np.linspace(np.pi / 2, 0, steps + 1)[1:]:
        scale, z = np.cos(angle) ** (2 / power), high * np.sin(angle) ** (2 / power)
        ring = _section(half_long * scale, half_long * scale, half_wide * scale, power, count)
        rings.append(np.column_stack((ring, np.full(count, z))))
    return rings


def _below(
    share: Mapping[str, Any], half_long: float, half_wide: float, face: float, power: float, count: int, spacing: float,
) -> list[Floats]:
    """Rings from below the tape to the neck, and the middle of the neck's end."""
    table = np.asarray(share["sections"])
    curve = PchipInterpolator(table[:, 0], table[:, 1:])
    depths = np.linspace(0, table[-1, 0], max(round(table[-1, 0] * face / spacing), 8) + 1)[1:]
    rings = []
    for depth in depths:
        front, back, wide = curve(depth)
        ring = _section(half_long * front, half_long * back, half_wide * wide, power, count)
        rings.append(np.column_stack((ring, np.full(count, -depth * face))))
    return [*rings, np.asarray([[0.0, 0.1 * half_long, -depths[-1] * face]])]


def _nose(points: Floats, face: float, half_long: float, around: float) -> Floats:
    """How far the nose stands out at each point; a bump by eye, so that one sees which way the head looks."""
    far = ((points[:, 0] / (0.028 * around)) ** 2 + ((points[:, 2] + 0.46 * face) / (0.15 * face)) ** 2)
    return np.where(points[:, 1] < -0.5 * half_long, 0.042 * around * np.exp(-far), 0.0)


def _closed(rings: list[Floats]) -> tuple[Floats, Ints]:
    """Rings of equally many points, the first and the last a single point, as a closed mesh with its outside outward."""
    count = len(rings[1])
    points = np.concatenate(rings)
    first, last = np.arange(count), len(points) - 1 - count
    following = (first + 1) % count
    faces = [np.stack((np.zeros(count, dtype=np.int64), 1 + first, 1 + following), axis=1)]
    for level in range(len(rings) - 3):
        above, below = 1 + level * count, 1 + (level + 1) * count
        faces.append(np.stack((above + first, below + first, below + following), axis=1))
        faces.append(np.stack((above + first, below + following, above + following), axis=1))
    faces.append(np.stack((last + first, np.full(count, len(points) - 1), last + following), axis=1))
    return points, np.concatenate(faces)


# --- hand ---------------------------------------------------------------------------------------------------------------------


def hand_form(around_mm: float, length_mm: float, *, mitten: bool = False, spacing_mm: float | None = None) -> Form:
    """A hand: around the knuckles without the thumb, and long from the wrist crease (z = 0) to the tip of the middle finger.

    Fingers upward, palm towards -y, thumb towards +x. `mitten`: fingers closed to one rounded body and no thumb, as mitts with a thumb of
    their own are put on. Sources of the proportions: `proportions.toml`. Raises ValueError for a size outside SMALLEST_MM … LARGEST_MM.
    """
    around, long = _checked("the circumference", around_mm), _checked("the length", length_mm)
    share = _proportions()["hand"]
    spacing = spacing_mm or around / 60
    breadth, palm = around * share["breadth"], long * share["palm"]
    thick = (around - 2 * breadth) / (np.pi - 2)  # two flats and two half circles: around = 2 (breadth - thick) + pi thick
    count = max(round(around / spacing / 4) * 4, 16)
    parts = [_palm(breadth, thick, palm, around * share["wrist_around"], count, spacing, long if mitten else None)]
    across = breadth / len(share["fingers"])
    for place, part in enumerate(() if mitten else share["fingers"]):
        x = breadth / 2 - (place + 0.5) * across
        radius = 0.46 * across
        root, tip = np.asarray([x, 0, palm * 0.92]), np.asarray([x, 0, palm + (long - palm) * part - radius])
        parts.append(_capsule(root, tip, radius, radius * 0.86, spacing))
    spread = np.radians(share["thumb_spread"])
    root = np.asarray([breadth * 0.30, -0.1 * thick, palm * share["thumb_root"]])
    tip = root + long * share["thumb_length"] * np.asarray([np.sin(spread), -0.15, np.cos(spread)])
    if not mitten:
        parts.append(_capsule(root, tip, 0.58 * across, 0.46 * across, spacing))
    marks = {"wrist": (0.0, 0.0, 0.0), "knuckles": (0.0, 0.0, palm), "tip": (0.0, 0.0, long), "side": (breadth / 2, 0.0, palm),
             "back": (0.0, thick / 2, palm), "thumb tip": tuple(tip.tolist())}
    return _together(parts, marks, spacing)


def _palm(
    breadth: float, thick: float, palm: float, wrist: float, count: int, spacing: float, long: float | None,
) -> tuple[Floats, Ints]:
    """Forearm, wrist and palm as one rounded body; with `long`, closed fingers too."""
    wrist_wide, wrist_thick = wrist * 0.36, wrist * 0.26  # an oval whose sides are about as 7 : 5, by eye
    table = np.asarray([
        [-0.75 * palm, 0.55 * wrist_wide, 0.62 * wrist_thick], [0.0, 0.5 * wrist_wide, 0.5 * wrist_thick],
        [0.35 * palm, 0.47 * breadth, 0.52 * thick], [0.75 * palm, 0.5 * breadth, 0.5 * thick]])
    knuckles = [[palm, 0.49 * breadth, 0.42 * thick], [1.05 * palm, 0.42 * breadth, 0.25 * thick]]
    if long is not None:
        ends = ((0.7, 0.49, 0.42), (0.85, 0.44, 0.36), (0.95, 0.31, 0.28), (0.99, 0.15, 0.15), (1.0, 0.03, 0.03))
        knuckles = [[long * at, breadth * wide, thick * deep] for at, wide, deep in ends]
    table = np.concatenate((table, knuckles))
    curve = PchipInterpolator(table[:, 0], table[:, 1:])
    levels = np.linspace(table[-1, 0], table[0, 0], max(round(1.25 * np.ptp(table[:, 0]) / spacing), 10))
    rings = [np.asarray([[0.0, 0.0, levels[0] + (0.02 * palm if long is None else 0.0)]])]
    for z in levels:
        wide, deep = curve(z)
        rings.append(np.column_stack((_section(deep, deep, wide, 2.5, count), np.full(count, z))))
    return _closed([*rings, np.asarray([[0.0, 0.0, levels[-1]]])])


def _capsule(start: Floats, end: Floats, radius: float, tip_radius: float, spacing: float) -> tuple[Floats, Ints]:
    """A rounded stick from start to end, thicker or thinner at its end."""
    count, long = max(round(2 * np.pi * radius / spacing), 8), float(np.linalg.norm(end - start))
    towards = (end - start) / long
    side = np.cross(towards, [0.0, 1.0, 0.0])
    side /= np.linalg.norm(side)
    frame = np.stack((side, np.cross(towards, side)))
    angle = 2 * np.pi * np.arange(count) / count
    circle = np.cos(angle)[:, None] * frame[0] + np.sin(angle)[:, None] * frame[1]
    cap = np.linspace(np.pi / 2, 0, 6)
    middle = np.linspace(1, 0, max(round(long / spacing), 3))[1:-1]
    stops = [(end + tip_radius * np.sin(a) * towards, tip_radius * np.cos(a)) for a in cap]
    stops += [(start + m * (end - start), radius + m * (tip_radius - radius)) for m in middle]
    stops += [(start - radius * np.sin(a) * towards, radius * np.cos(a)) for a in cap[::-1]]
    rings = [stops[0][0][None], *(centre + r * circle for centre, r in stops[1:-1]), stops[-1][0][None]]
    return _closed(rings)


def _together(parts: list[tuple[Floats, Ints]], marks: Mapping[str, tuple[float, float, float]], spacing: float) -> Form:
    """Closed meshes that overlap as one form; points that lie within another part are not bare."""
    directions = [normals(points, faces) for points, faces in parts]
    bare = [np.ones(len(points), dtype=bool) for points, _ in parts]
    for other, (points, _) in enumerate(parts):
        tree = cKDTree(points)
        for mine, (own, _) in enumerate(parts):
            if mine != other:
                _, near = tree.query(own)
                bare[mine] &= np.einsum("ij,ij->i", own - points[near], directions[other][near]) > -0.02 * spacing
    starts = np.cumsum([0, *(len(points) for points, _ in parts)])
    faces = np.concatenate([faces + start for (_, faces), start in zip(parts, starts[:-1], strict=True)])
    return Form(np.concatenate([points for points, _ in parts]), faces, np.concatenate(directions), marks, np.concatenate(bare), spacing)
