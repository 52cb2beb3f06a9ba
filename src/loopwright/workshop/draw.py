"""Drawings of a pattern into a folder: chart, schematic, fabric, one picture per round, solid shape; each with a description in words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Literal

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.rounds import RoundOptions, fabric_picture, round_drawings
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.model.fabric import Fabric
from loopwright.terms import dialect
from loopwright.workshop.files import make_folder, write_bytes, write_whole
from loopwright.workshop.measure import Measured, Wanted
from loopwright.workshop.png import svg_png
from loopwright.workshop.shapes import opens_above, with_shapes, write_shapes

KINDS = ("chart", "schematic", "fabric", "rounds", "shape")
WIDE_PX = 1200


@dataclass(frozen=True, slots=True)
class File:
    """A drawing that was written: where, what it is, of which size and section, and what it shows, in words."""

    path: str
    what: str
    size: str
    section: str | None
    description: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """Which drawings are asked for (of KINDS), for which hand, whether every SVG is written as PNG too, whether charts are whole."""

    what: Sequence[str] = KINDS
    left_handed: bool = False
    png: bool = False
    whole: bool = False


def draw(measured: Measured, wanted: Wanted, sheet: Sheet, folder: str) -> tuple[Measured, list[File]]:
    """Writes what is asked for into a folder. Raises CannotSave. Notes of what could not be drawn are in the pattern that is given back."""
    make_folder(Path(folder))
    shaped = with_shapes(measured, wanted) if {"fabric", "rounds", "shape"} & set(sheet.what) else measured
    if measured.gauge.sizes is None:
        return replace(shaped, notes=(*shaped.notes, "nothing is drawn without a gauge: add a Gauge line")), []
    files: list[File] = []
    notes: list[str] = []
    if "chart" in sheet.what:
        files += _charts(measured, sheet, folder, notes)
    if "schematic" in sheet.what:
        files += _schematics(measured, sheet, folder)
    if "fabric" in sheet.what:
        files += _fabrics(shaped, folder, notes)
    if "rounds" in sheet.what:
        files += _rounds(shaped, sheet, folder)
    if "shape" in sheet.what:
        files += [File(f["path"], "shape", f["size"], None, f["description"]) for f in write_shapes(shaped, folder)]
    return replace(shaped, notes=tuple(dict.fromkeys((*shaped.notes, *notes)))), files


def _charts(measured: Measured, sheet: Sheet, folder: str, notes: list[str]) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    terms: Literal["us", "uk"] = "us" if measured.document.terms == "us" else "uk"
    for m, fabric in zip(measured.sizes, measured.fabrics, strict=True):
        if fabric is None:
            continue
        line = partial(_line, measured, fabric)
        options = ChartOptions(terms, sheet.left_handed, sheet.whole, line=line, ident=_ident("chart", measured, m.size))
        for i, chart in enumerate(charts(fabric, stitches, options), 1):
            notes.extend(chart.notes)
            hand = "-left-handed" if sheet.left_handed else ""
            name = file_name(measured, m.size, f"chart {i}", chart.section or "") + hand
            yield from _svg(Path(folder) / f"{name}.svg", chart.svg, File("", "chart", m.size, chart.section, chart.description), sheet)


def _line(measured: Measured, fabric: Fabric, stitch: int) -> int:
    return measured.source.line_of(max(0, fabric.origin[stitch]))


def _schematics(measured: Measured, sheet: Sheet, folder: str) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    names = [m.size for m in measured.sizes]
    options = SchematicOptions(title=measured.document.title or "", ident=_ident("schematic", measured))
    for i, drawing in enumerate(schematics(measured.fabrics, stitches, names, options), 1):
        name = file_name(measured, f"schematic {i}")
        section = drawing.sections[0] if drawing.sections else None
        yield from _svg(Path(folder) / f"{name}.svg", drawing.svg, File("", "schematic", drawing.size, section, drawing.description), sheet)


def _svg(path: Path, svg: str, told: File, sheet: Sheet) -> Iterator[File]:
    write_whole(path, svg)
    yield replace(told, path=str(path))
    if sheet.png:
        png = path.with_suffix(".png")
        write_bytes(png, svg_png(svg, WIDE_PX))
        yield replace(told, path=str(png))


def _fabrics(measured: Measured, folder: str, notes: list[str]) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    title = measured.document.title or ""
    opening_up = opens_above(measured.document) or None
    for m, fabric, shape in zip(measured.sizes, measured.fabrics, measured.shapes, strict=True):
        if fabric is None or shape is None or not len(shape.faces):
            continue
        found = fabric_picture(fabric, stitches, shape=shape, width_px=WIDE_PX, title=title, opening_up=opening_up)
        notes.extend(found.notes)
        path = Path(folder) / f"{file_name(measured, m.size)}-fabric.png"
        write_bytes(path, found.png)
        yield File(str(path), "fabric", m.size, None, found.description)


def _rounds(measured: Measured, sheet: Sheet, folder: str) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    terms = dialect(measured.document.terms)
    title, opening_up = measured.document.title or "", opens_above(measured.document) or None
    for m, fabric, shape in zip(measured.sizes, measured.fabrics, measured.shapes, strict=True):
        if fabric is None or shape is None:
            continue
        options = RoundOptions(title, lambda kind: terms.term(kind).short, opening_up, _ident("round", measured, m.size))
        for i, drawing in enumerate(round_drawings(fabric, stitches, options, shape=shape), 1):
            path = Path(folder) / f"{file_name(measured, m.size, f'round {i:03}', drawing.section or '', drawing.label)}.svg"
            yield from _svg(path, drawing.svg, File("", "rounds", m.size, drawing.section, drawing.description), sheet)


def _ident(kind: str, measured: Measured, *words: str) -> str:
    """What ids in a drawing begin with, a letter first, so that drawings of several sizes can stand in one page."""
    return f"{kind}-{file_name(measured, *words)}"


def file_name(measured: Measured, *words: str) -> str:
    """A file's name out of title, size and more: small letters, figures and hyphens."""
    title = measured.document.title or Path(measured.source.name).stem
    return re.sub(r"[^a-z0-9]+", "-", " ".join((title, *words)).lower()).strip("-") or "drawing"
