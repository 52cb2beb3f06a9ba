"""Drawings of a pattern into a folder: chart, schematic, fabric, one picture per round, solid shape; each with a description in words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Literal

from loopwright.drawing.chart import charts
from loopwright.drawing.embedding import embed_fonts
from loopwright.drawing.rounds import RoundOptions, fabric_picture, round_drawings
from loopwright.drawing.schematic import Units, schematics
from loopwright.drawing.schematic.drawn import COLUMN_MM
from loopwright.model.fabric import Fabric
from loopwright.record import record
from loopwright.terms import dialect
from loopwright.workshop import charting
from loopwright.workshop.files import make_folder, write_bytes, write_whole
from loopwright.workshop.measure import Measured, Wanted
from loopwright.workshop.original import line_of
from loopwright.workshop.png import svg_png
from loopwright.workshop.shapes import with_shapes, write_shapes

KINDS = ("chart", "schematic", "fabric", "rounds", "shape")
WIDE_PX = 1200


@record
class File:
    """A drawing that was written: where, what it is, of which size and section, and what it shows, in words."""

    path: str
    what: str
    size: str
    section: str | None
    description: str


@record
class Sheet:
    """Which drawings are asked for (of KINDS), for which hand, whether every SVG is written as PNG too, whether charts are whole.

    `units`, `width_mm`: of schematics, their table's units and their width on paper. `embed_fonts`: whether every SVG carries the letters
    it uses, so that it looks the same wherever it stands alone.
    """

    what: Sequence[str] = KINDS
    left_handed: bool = False
    png: bool = False
    whole: bool = False
    embed_fonts: bool = True
    units: Units = "both"
    width_mm: float = COLUMN_MM

    def as_wide_as(self, width_mm: float) -> Sheet:
        """The same with schematics of that width."""
        return replace(self, width_mm=width_mm)


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
        files += _fabrics(shaped, sheet, folder, notes)
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
    for at, (m, fabric) in enumerate(zip(measured.sizes, measured.fabrics, strict=True)):
        if fabric is None:
            continue
        line = partial(_line, measured, fabric)
        told = charting.of_charts(measured.document, measured.graded.report, at)
        ident = _ident("chart", measured, m.size)
        options = replace(told, terms=terms, left_handed=sheet.left_handed, whole=sheet.whole, line=line, ident=ident)
        for i, chart in enumerate(charts(fabric, stitches, options), 1):
            notes.extend(chart.notes)
            name = file_name(measured, m.size, f"chart {i}", chart.section or "") + _hand(sheet)
            yield from _svg(Path(folder) / f"{name}.svg", chart.svg, File("", "chart", m.size, chart.section, chart.description), sheet)


def _line(measured: Measured, fabric: Fabric, stitch: int) -> int:
    return line_of(measured.document, measured.source)(max(0, fabric.origin[stitch]))


def _schematics(measured: Measured, sheet: Sheet, folder: str) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    names = [m.size for m in measured.sizes]
    options = replace(
        charting.of_schematics(measured.document), title=measured.document.title or "", units=sheet.units, width_mm=sheet.width_mm,
        ident=_ident("schematic", measured), left_handed=sheet.left_handed,
    )
    for i, drawing in enumerate(schematics(measured.fabrics, stitches, names, options, [m.dimensions for m in measured.sizes]), 1):
        name = file_name(measured, f"schematic {i}") + _hand(sheet)
        section = drawing.sections[0] if drawing.sections else None
        yield from _svg(Path(folder) / f"{name}.svg", drawing.svg, File("", "schematic", drawing.size, section, drawing.description), sheet)


def _svg(path: Path, svg: str, told: File, sheet: Sheet) -> Iterator[File]:
    write_whole(path, embed_fonts(svg) if sheet.embed_fonts else svg)
    yield replace(told, path=str(path))
    if sheet.png:
        png = path.with_suffix(".png")
        write_bytes(png, svg_png(svg, WIDE_PX))
        yield replace(told, path=str(png))


def _fabrics(measured: Measured, sheet: Sheet, folder: str, notes: list[str]) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    title = measured.document.title or ""
    for m, fabric, shape in zip(measured.sizes, measured.fabrics, measured.shapes, strict=True):
        if fabric is None or shape is None:
            continue
        if not len(shape.pairs):
            notes.append("there is no picture of the fabric: no two of its stitches hold each other")
            continue
        found = fabric_picture(
            fabric, stitches, shape=shape, palette=charting.palette_of(measured.document), width_px=WIDE_PX, title=title,
            left_handed=sheet.left_handed,
        )
        notes.extend(found.notes)
        path = Path(folder) / f"{file_name(measured, m.size)}-fabric{_hand(sheet)}.png"
        write_bytes(path, found.png)
        yield File(str(path), "fabric", m.size, None, found.description)


def _rounds(measured: Measured, sheet: Sheet, folder: str) -> Iterator[File]:
    stitches = measured.gauge.sizes
    if stitches is None:
        return
    terms = dialect(measured.document.terms)
    title = measured.document.title or ""
    for m, fabric, shape in zip(measured.sizes, measured.fabrics, measured.shapes, strict=True):
        if fabric is None or shape is None:
            continue
        ident = _ident("round", measured, m.size)
        options = RoundOptions(title, lambda kind: terms.term(kind).short, ident=ident, left_handed=sheet.left_handed)
        for i, drawing in enumerate(round_drawings(fabric, stitches, options, shape=shape), 1):
            name = file_name(measured, m.size, f"round {i:03}", drawing.section or "", drawing.label) + _hand(sheet)
            path = Path(folder) / f"{name}.svg"
            yield from _svg(path, drawing.svg, File("", "rounds", m.size, drawing.section, drawing.description), sheet)


def _hand(sheet: Sheet) -> str:
    return "-left-handed" if sheet.left_handed else ""


def _ident(kind: str, measured: Measured, *words: str) -> str:
    """What ids in a drawing begin with, a letter first, so that drawings of several sizes can stand in one page."""
    return f"{kind}-{file_name(measured, *words)}"


def file_name(measured: Measured, *words: str) -> str:
    """A file's name out of title, size and more: small letters, figures and hyphens."""
    title = measured.document.title or Path(measured.source.name).stem
    return re.sub(r"[^a-z0-9]+", "-", " ".join((title, *words)).lower()).strip("-") or "drawing"
