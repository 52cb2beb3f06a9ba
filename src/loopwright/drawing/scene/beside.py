"""A form beside the fabric in the same scene."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from loopwright.drawing.scene.buffers import Buffers, Part
from loopwright.drawing.scene.colours import Colour
from loopwright.drawing.scene.forms import Form

WOOD: Colour = (236, 226, 212)
DARK: Colour = (92, 78, 66)


def form_buffers(form: Form, colour: Colour = WOOD) -> Buffers:
    """A form as a scene of its own: one piece, number -1, whose triangles belong to no stitch. Eyes and ears of a head are shaded."""
    count, many = len(form.points), len(form.faces)
    colours = np.tile(np.asarray(colour, dtype=np.uint8), (count, 1))
    colours[_marked(form)] = DARK
    nothing = np.full(count, -1, dtype=np.int32)
    return Buffers(form.points.astype(np.float32), form.normals.astype(np.float32), colours, nothing, nothing.copy(),
                   form.faces.astype(np.uint32), np.full(many, -1, dtype=np.int32), np.full(many, -1, dtype=np.int32),
                   np.zeros(many, dtype=np.int8), np.zeros(many, dtype=bool), (Part(-1, 0, count, 0, many),), level="form")


def _marked(form: Form) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
    """Points of the eyes and round the ear holes."""
    shaded = np.zeros(len(form.points), dtype=bool)
    if "eyes" not in form.marks:
        return shaded
    wide = form.marks["ear"][0]
    for name, x, size in (("eyes", 0.42 * wide, 0.11 * wide), ("ear", wide, 0.10 * wide)):
        height = form.marks[name][2]
        front = form.points[:, 1] < -0.4 * wide if name == "eyes" else np.abs(form.points[:, 1]) < 2 * size
        if name == "eyes":
            shaded |= front & (np.hypot(np.abs(form.points[:, 0]) - x, 1.6 * (form.points[:, 2] - height)) < size)
        else:
            shaded |= np.hypot(form.points[:, 1], 0.6 * (form.points[:, 2] - height)) < size
    return shaded


def together(first: Buffers, second: Buffers) -> Buffers:
    """Two scenes in one: the pieces of the first, then those of the second; labels, legend and level are the first's."""
    columns = ("positions", "normals", "colours", "vertex_stitch", "vertex_row",
               "triangle_stitch", "triangle_row", "triangle_side", "sheet")
    vertices, triangles = len(first.positions), len(first.indices)
    moved = tuple(Part(p.piece, p.first_vertex + vertices, p.vertices, p.first_triangle + triangles, p.triangles) for p in second.parts)
    both: dict[str, Any] = {name: np.concatenate((getattr(first, name), getattr(second, name))) for name in columns}
    return replace(first, **both,
                   indices=np.concatenate((first.indices, second.indices + np.uint32(vertices))), parts=(*first.parts, *moved),
                   notes=(*first.notes, *second.notes))
