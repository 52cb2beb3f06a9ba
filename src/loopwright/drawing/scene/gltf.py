"""Binary glTF 2.0 of a scene. Written by hand: the container is two chunks and one JSON object.

Source: Khronos Group, glTF 2.0 Specification, version 2.0.1 (2021; also ISO/IEC 12113:2022); its sections are named beside the rules
used. Lengths there are metres and y is upward (3.4).
"""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene.buffers import Buffers, Part
from loopwright.drawing.scene.colours import Bytes

_FLOAT, _SHORT, _INT = 5126, 5123, 5125
_VERTICES, _INDICES = 34962, 34963
_MM_PER_METRE = 1000.0
_ROUGHNESS = 0.95
"""Wool scatters light widely and shines little (by eye)."""


class _Binary:
    """The binary chunk as it grows, with the views and accessors into it."""

    def __init__(self) -> None:
        self.chunks: list[bytes] = []
        self.length = 0
        self.views: list[dict[str, Any]] = []
        self.accessors: list[dict[str, Any]] = []

    def add(self, data: NDArray[Any], component: int, kind: str, target: int, **more: Any) -> int:
        """Number of the new accessor. Every view begins at a multiple of four bytes (3.6.2.4)."""
        raw = data.tobytes()
        self.views.append({"buffer": 0, "byteOffset": self.length, "byteLength": len(raw), "target": target})
        self.accessors.append({"bufferView": len(self.views) - 1, "componentType": component, "count": len(data), "type": kind, **more})
        raw += b"\0" * (-len(raw) % 4)
        self.chunks.append(raw)
        self.length += len(raw)
        return len(self.accessors) - 1


def as_glb(buffers: Buffers, *, title: str, millimetres_per_unit: float = _MM_PER_METRE) -> bytes:
    """The scene as a .glb file; the same buffers give the same bytes.

    One mesh, and one node, per piece of the fabric. `_STITCH` and `_ROW` are attributes of every vertex: numbers of the stitch and of
    its row, -1 for what is no stitch. `extras` of the scene names the rows, the legend, the level of detail and the notes.
    """
    binary = _Binary()
    pieces = buffers.parts or ()
    meshes = [_mesh(buffers, part, binary, millimetres_per_unit) for part in pieces]
    data: dict[str, Any] = {
        "asset": {"version": "2.0", "generator": "Loopwright"},
        "scene": 0,
        "scenes": [{"name": title, "extras": _extras(buffers)}],
    }
    if meshes:
        names = [_name(part) for part in pieces]
        data["scenes"][0]["nodes"] = list(range(len(meshes)))
        data["nodes"] = [{"mesh": i, "name": name} for i, name in enumerate(names)]
        data["meshes"] = meshes
        dull = {"metallicFactor": 0, "roughnessFactor": _ROUGHNESS}
        data["materials"] = [{"name": "yarn", "doubleSided": True, "pbrMetallicRoughness": dull}]
        data |= {"accessors": binary.accessors, "bufferViews": binary.views, "buffers": [{"byteLength": binary.length}]}
    return _container(data, b"".join(binary.chunks))


def _name(part: Part) -> str:
    return f"piece {part.piece + 1}" if part.piece >= 0 else "form"


def _mesh(buffers: Buffers, part: Part, binary: _Binary, unit_mm: float) -> dict[str, Any]:
    vertex = slice(part.first_vertex, part.first_vertex + part.vertices)
    triangle = slice(part.first_triangle, part.first_triangle + part.triangles)
    places = _turned(buffers.positions[vertex]) / np.float32(unit_mm)
    least, most = ([float(v) for v in edge] for edge in (places.min(axis=0), places.max(axis=0)))
    normals = _turned(buffers.normals[vertex]).astype(np.float64)
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-12)
    corners = (buffers.indices[triangle].astype(np.int64) - part.first_vertex).reshape(-1)
    small = part.vertices < 0xFFFF  # the largest number of a type is no index (3.7.2.1)
    attributes = {
        "POSITION": binary.add(places.astype("<f4"), _FLOAT, "VEC3", _VERTICES, min=least, max=most),
        "NORMAL": binary.add(normals.astype("<f4"), _FLOAT, "VEC3", _VERTICES),
        "COLOR_0": binary.add(_linear(buffers.colours[vertex]), _SHORT, "VEC4", _VERTICES, normalized=True),
        # whole numbers up to 16,777,216 as floats: 32-bit integers are for indices only (3.6.2.2)
        "_STITCH": binary.add(buffers.vertex_stitch[vertex].astype("<f4"), _FLOAT, "SCALAR", _VERTICES),
        "_ROW": binary.add(buffers.vertex_row[vertex].astype("<f4"), _FLOAT, "SCALAR", _VERTICES),
    }
    indices = binary.add(corners.astype("<u2" if small else "<u4"), _SHORT if small else _INT, "SCALAR", _INDICES)
    return {"name": _name(part), "primitives": [{"attributes": attributes, "indices": indices, "material": 0, "mode": 4}]}


def _turned(vectors: NDArray[np.float32]) -> NDArray[np.float32]:
    """From z upward to y upward, right-handed both."""
    return np.stack((vectors[:, 0], vectors[:, 2], -vectors[:, 1]), axis=1)


def _linear(colours: Bytes) -> NDArray[np.uint16]:
    """Vertex colours are linear light (3.9.2), with an alpha that is full; curve: IEC 61966-2-1 (sRGB)."""
    share = colours.astype(np.float64) / 255
    light = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    found = np.full((len(colours), 4), 0xFFFF, dtype="<u2")
    found[:, :3] = np.rint(light * 0xFFFF)
    return found


def _extras(buffers: Buffers) -> dict[str, Any]:
    return {
        "rows": list(buffers.row_labels),
        "legend": [{"label": label, "colour": "#{:02x}{:02x}{:02x}".format(*colour)} for label, colour in buffers.legend],
        "level": buffers.level,
        "notes": list(buffers.notes),
    }


def _container(data: dict[str, Any], binary: bytes) -> bytes:
    """Header, JSON chunk filled with spaces, binary chunk filled with noughts (4.4)."""
    text = json.dumps(data, separators=(",", ":"), ensure_ascii=False, allow_nan=False).encode("utf-8")
    text += b" " * (-len(text) % 4)
    chunks = struct.pack("<II", len(text), 0x4E4F534A) + text
    if binary:
        chunks += struct.pack("<II", len(binary), 0x004E4942) + binary
    return struct.pack("<III", 0x46546C67, 2, 12 + len(chunks)) + chunks
