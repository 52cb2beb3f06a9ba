"""Shapes of a measured pattern: which pieces are stuffed, relaxing each size, and writing each as binary glTF."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.gltf import as_glb
from loopwright.measuring.relax import RelaxOptions, Shape, relax
from loopwright.measuring.relaxed import relaxed_dimensions
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document, Section
from loopwright.workshop.files import make_folder, write_bytes
from loopwright.workshop.measure import Measured, Wanted

BUDGET_S = 60.0
_STUFFED = re.compile(r"\bstuff(?:ed|ing)?\b|\bfill(?:ed)? with\b", re.IGNORECASE)
_NOT_STUFFED = re.compile(r"\b(?:do not|don't|not|un|without|no)[ -]?stuff", re.IGNORECASE)


def with_shapes(measured: Measured, wanted: Wanted) -> Measured:
    """The same with every size's shape relaxed, and what it comes to in its measures."""
    stitches = measured.gauge.sizes
    if stitches is None:
        notes = (*measured.notes, "no shape without a gauge: a stitch has no width and no height")
        return replace(measured, notes=notes, shapes=(None,) * len(measured.sizes))
    shapes: list[Shape | None] = []
    sizes = []
    for m, fabric in zip(measured.sizes, measured.fabrics, strict=True):
        if fabric is None:
            shapes.append(None)
            sizes.append(m)
            continue
        told = wanted.progress
        watch = None if told is None else (lambda share, name=m.size, told=told: told(name, share))
        options = RelaxOptions(stuffed=stuffed(measured.document, fabric), budget_s=wanted.budget_s or BUDGET_S, progress=watch)
        shape = relax(fabric, stitches, options)
        shapes.append(shape)
        notes = m.notes if shape.settled else (*m.notes, f"{m.size}: the shape has not come to rest: {shape.why}")
        found = (*m.dimensions, *relaxed_dimensions(fabric, stitches, shape))
        sizes.append(replace(m, shape=shape.measures(), dimensions=found, notes=notes))
    return replace(measured, sizes=tuple(sizes), shapes=tuple(shapes))


def stuffed(document: Document, fabric: Fabric) -> frozenset[int]:
    """Pieces that the words of their sections ask to stuff."""
    told = {title for title, words in _sections(document) if _STUFFED.search(words) and not _NOT_STUFFED.search(words)}
    return frozenset(row.piece for row in fabric.rows if row.section in told)


def _sections(document: Document) -> Iterator[tuple[str, str]]:
    """Titles of the sections with the text that stands under each."""
    found = [i for i in document.items if isinstance(i, Section)]
    for i, section in enumerate(found):
        end = found[i + 1].span.start if i + 1 < len(found) else len(document.text)
        yield section.title, document.text[section.span.start : end]


def write_shapes(measured: Measured, folder: str) -> list[dict[str, str]]:
    """Writes each size's shape into a folder, made where it is not there. Raises CannotSave."""
    make_folder(Path(folder))
    files = []
    title = measured.document.title or Path(measured.source.name).stem
    for m, fabric, shape in zip(measured.sizes, measured.fabrics, measured.shapes, strict=True):
        if fabric is None or shape is None or not len(shape.points):
            continue
        name = _file(title, m.size if len(measured.sizes) > 1 or measured.document.sizes else "")
        path = Path(folder) / name
        told = f"{title}, {m.size}" if measured.document.sizes else title
        write_bytes(path, as_glb(buffers(fabric, shape), title=told))
        files.append({"path": str(path), "what": "shape", "size": m.size, "description": f"the relaxed shape of {told}, stitch by stitch"})
    return files


def _file(title: str, size: str) -> str:
    words = re.sub(r"[^a-z0-9]+", "-", f"{title} {size}".lower()).strip("-")
    return f"{words or 'shape'}.glb"
