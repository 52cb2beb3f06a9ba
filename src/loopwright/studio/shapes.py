"""Shapes and pictures of a text, made in a process of their own and sent as one block of bytes."""

from __future__ import annotations

import base64
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Literal

from loopwright.studio.workers import WorkerError, Workers

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from loopwright.drawing.scene.body import Body
    from loopwright.model.fabric import Fabric

SHAPE_BUDGET_S = 2.0
SHAPE_TIME_S = 30.0
TRIANGLES = 60_000
THUMB_PX = 480
_THUMBS: dict[str, bytes | None] = {}
_MOST_THUMBS = 200


async def shape(workers: Workers, kind: str, text: str, size: int, way: str = "made") -> dict[str, Any]:
    """The shape of one size: a header and, in base64, positions, normals, colours, the stitch of each vertex, and triangles.

    `way`: how it is looked at, see workshop/one_shape.py. Beside the colours of the yarn come those of the stitches by row, by kind and by
    strain, each with what its colours stand for.

    Raises what `Workers.run` raises.
    """
    header, data = await workers.run(kind, shape_of, text, size, way, time_s=SHAPE_TIME_S)
    return {**header, "data": base64.b64encode(data).decode("ascii")}


async def thumbnail(workers: Workers, text: str, key: str) -> bytes | None:
    """The fabric of the size that was worked, as a small PNG; None where it has none. Kept by the sum of the text."""
    if key not in _THUMBS:
        if len(_THUMBS) >= _MOST_THUMBS:
            _THUMBS.pop(next(iter(_THUMBS)))
        try:
            _THUMBS[key] = await workers.run(f"thumb {key}", thumbnail_of, text, time_s=SHAPE_TIME_S)
        except WorkerError:
            return None
    return _THUMBS[key]


def shape_of(text: str, size: int, way: str = "made") -> tuple[dict[str, Any], bytes]:
    """In the other process: relaxes one size and lays its triangles out. The header alone, and nothing, where there is no shape."""
    import numpy as np  # noqa: PLC0415 - in the other process only

    from loopwright.drawing.scene.beside import form_buffers, together  # noqa: PLC0415 - the same
    from loopwright.drawing.scene.buffers import buffers  # noqa: PLC0415 - the same
    from loopwright.workshop.one_shape import WAYS, one_shape  # noqa: PLC0415 - the same

    found = one_shape(text, size, SHAPE_BUDGET_S, next((w for w in WAYS if w == way), "made"))
    if found is None:
        return {"why": "It has no shape yet: that appears with a gauge and the first row that can be worked."}, b""
    drawn = buffers(found.fabric, found.body, found.palette, budget=TRIANGLES)
    if found.form is not None:
        drawn = together(drawn, form_buffers(found.form))
    painted, legends = _painted(found.fabric, found.body, found.terms)
    parts: dict[str, NDArray[Any]] = {
        "positions": drawn.positions.astype(np.float32), "normals": np.clip(drawn.normals * 127, -127, 127).astype(np.int8),
        "colours": drawn.colours.astype(np.uint8), "vertex_stitch": drawn.vertex_stitch.astype(np.int32),
        "indices": drawn.indices.astype(np.uint32), **painted,
    }
    header: dict[str, Any] = {
        "parts": {}, "level": drawn.level, "settled": found.settled, "notes": list(found.notes or drawn.notes), "ways": list(found.ways),
        "legends": {"yarn": [[name, list(colour)] for name, colour in drawn.legend], **legends}, "flat": way == "flat",
    }
    blocks, at = [], 0
    for name, array in parts.items():
        raw = np.ascontiguousarray(array).tobytes()
        header["parts"][name] = {"at": at, "length": int(array.size), "type": str(array.dtype)}
        raw += b"\0" * (-len(raw) % 4)
        blocks.append(raw)
        at += len(raw)
    json.dumps(header)  # it must be sayable
    return header, b"".join(blocks)


def _painted(fabric: Fabric, body: Body, terms: str) -> tuple[dict[str, NDArray[Any]], dict[str, list[Any]]]:
    """Colours of the stitches (stitches, 3) by each of the ways but that of the yarn, and what they stand for."""
    from loopwright.drawing.scene.colours import paint  # noqa: PLC0415 - in the other process only
    from loopwright.terms import dialect  # noqa: PLC0415 - the same

    ways: tuple[Literal["row", "kind", "strain"], ...] = ("row", "kind", "strain")
    found = {by: paint(fabric, body, by) for by in ways}
    said = dialect(terms)
    named: dict[str, Callable[[str], str]] = {"kind": lambda key: said.term(key).short}
    return (
        {f"by_{by}": p.right for by, p in found.items()},
        {by: [[named.get(by, str)(name), list(colour)] for name, colour in p.legend] for by, p in found.items()},
    )


def thumbnail_of(text: str) -> bytes | None:
    """In the other process: the picture of the size that was worked."""
    from loopwright.workshop.one_shape import small_picture  # noqa: PLC0415 - in the other process only

    return small_picture(text, THUMB_PX, SHAPE_BUDGET_S)

