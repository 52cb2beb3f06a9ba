"""Shapes of a measured pattern: which pieces are stuffed, relaxing each size, and writing each as binary glTF."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path

from loopwright.drawing.scene.beside import form_buffers, together
from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.gltf import as_glb
from loopwright.drawing.scene.stood import stood
from loopwright.drawing.ways import stands_open
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.parts import parts, rows_alone
from loopwright.measuring.relax import RelaxOptions, Shape, relax
from loopwright.measuring.relaxed import relaxed_dimensions
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document, Section
from loopwright.workshop.charting import palette_of
from loopwright.workshop.files import make_folder, write_bytes
from loopwright.workshop.measure import Measured, Wanted, item_of
from loopwright.workshop.wear import OnForm, forms_of, put_on

BUDGET_S = 20.0  # a size; what is usually made settles in a second or two, shawls and blankets in five
TRIANGLES = 150_000  # of a fabric in a file: every stitch a strand up to some thousand stitches
_STUFFED = re.compile(r"\bstuff(?:ed|ing)?\b|\bfill(?:ed)? with\b", re.IGNORECASE)
_NOT_STUFFED = re.compile(r"\b(?:do not|don't|not|un|without|no)[ -]?stuff", re.IGNORECASE)
_DRAWN = re.compile(
    r"\b(?:thread|run|weave)\b[^.]{0,60}\bthrough\b[^.]{0,60}\b(?:st|sts|stitches|loops)\b|"
    r"\b(?:draw|pull|gather)\b[^.]{0,30}\b(?:last|remaining)\b[^.]{0,12}\b(?:st|sts|stitches)\b|\bclose the (?:top|hole)\b", re.IGNORECASE,
)


def with_shapes(measured: Measured, wanted: Wanted) -> Measured:
    """The same with every size's shape relaxed, and what it comes to in its measures."""
    stitches = measured.gauge.sizes
    if stitches is None:
        notes = (*measured.notes, "no shape without a gauge: a stitch has no width and no height")
        nothing = (None,) * len(measured.sizes)
        return replace(measured, notes=notes, shapes=nothing, on_forms=nothing)
    shapes: list[Shape | None] = []
    on_forms: list[OnForm | None] = []
    sizes = []
    forms = forms_of(measured.document, item_of(measured.document), [m.size for m in measured.sizes])
    for m, fabric, form in zip(measured.sizes, measured.fabrics, forms, strict=True):
        if fabric is None:
            shapes.append(None)
            on_forms.append(None)
            sizes.append(m)
            continue
        watch = partial(wanted.progress, m.size) if wanted.progress is not None else None
        flat = lies_flat(fabric, stitches)
        filled = stuffed(measured.document, fabric)
        drawn = drawn_together(measured.document, fabric)
        options = RelaxOptions(flat, filled, wanted.budget_s or BUDGET_S, progress=watch, drawn=drawn)
        shape = relax(fabric, stitches, options)
        shapes.append(shape)
        worn = put_on(measured.document, fabric, stitches, shape, form)
        on_form = worn if isinstance(worn, OnForm) else None
        on_forms.append(on_form)
        found = (*m.dimensions, *relaxed_dimensions(fabric, stitches, shape))
        remarks = (*m.notes, *_remarks(m.size, shape, worn))
        told = on_form.told if on_form is not None else None
        sizes.append(replace(m, shape=replace(shape.measures(), laid_flat=flat), worn=told, dimensions=found, notes=remarks))
    return replace(measured, sizes=tuple(sizes), shapes=tuple(shapes), on_forms=tuple(on_forms))


def lies_flat(fabric: Fabric, stitches: StitchSizes) -> bool:
    """Whether it is relaxed as it is laid out and blocked: rows alone, with or without a border."""
    return rows_alone(parts(fabric, courses(fabric, stitches)))


def _remarks(size: str, shape: Shape, worn: OnForm | str | None) -> Iterator[str]:
    if not shape.settled:
        yield f"{size}: the shape has not come to rest: {shape.why}"
    if isinstance(worn, str):
        yield f"{size}: not put on: {worn}"
    elif worn is not None:
        yield from (f"{size}, worn: {note}" for note in worn.told.notes)


def stuffed(document: Document, fabric: Fabric) -> frozenset[int]:
    """Pieces that the words of their sections ask to stuff."""
    told = {title for title, words in _sections(document) if _STUFFED.search(words) and not _NOT_STUFFED.search(words)}
    return frozenset(row.piece for row in fabric.rows if row.section in told)


def drawn_together(document: Document, fabric: Fabric) -> frozenset[int]:
    """Last rounds of sections whose words draw them together: "thread the end through the last 8 sts, draw them together"."""
    told = {title for title, words in _sections(document) if _DRAWN.search(words)}
    last = {(row.section, row.piece): i for i, row in enumerate(fabric.rows) if row.section in told}
    return frozenset(last.values())


def _sections(document: Document) -> Iterator[tuple[str, str]]:
    """Titles of the sections with the text that stands under each."""
    found = [i for i in document.items if isinstance(i, Section)]
    for i, section in enumerate(found):
        end = found[i + 1].span.start if i + 1 < len(found) else len(document.text)
        yield section.title, document.text[section.span.start : end]


def opens_above(document: Document) -> bool:
    """Whether it stands with its opening upward, as a bag does."""
    first = next((i.title for i in document.items if isinstance(i, Section)), None)
    return stands_open(document.title or "", first)


def write_shapes(measured: Measured, folder: str) -> list[dict[str, str]]:
    """Writes each size's shape into a folder, made where it is not there. Raises CannotSave."""
    make_folder(Path(folder))
    files = []
    title = measured.document.title or Path(measured.source.name).stem
    opening_up, tones = opens_above(measured.document), palette_of(measured.document)
    for m, fabric, shape, on_form in zip(measured.sizes, measured.fabrics, measured.shapes, measured.on_forms, strict=True):
        if fabric is None or shape is None or not len(shape.points):
            continue
        name = _file(title, m.size if len(measured.sizes) > 1 or measured.document.sizes else "")
        path = Path(folder) / name
        told = f"{title}, {m.size}" if measured.document.sizes else title
        write_bytes(path, as_glb(buffers(fabric, stood(shape, opening_up=opening_up), tones, budget=TRIANGLES), title=told))
        files.append({"path": str(path), "what": "shape", "size": m.size, "description": f"the relaxed shape of {told}, stitch by stitch"})
        if on_form is not None:
            path = Path(folder) / name.replace(".glb", "-worn.glb")
            both = together(buffers(fabric, on_form.fabric.body, tones, budget=TRIANGLES), form_buffers(on_form.form))
            write_bytes(path, as_glb(both, title=f"{told}, on {on_form.told.form}"))
            files.append({"path": str(path), "what": "shape", "size": m.size, "description": f"{told}, on {on_form.told.form}"})
    return files


def _file(title: str, size: str) -> str:
    words = re.sub(r"[^a-z0-9]+", "-", f"{title} {size}".lower()).strip("-")
    return f"{words or 'shape'}.glb"
