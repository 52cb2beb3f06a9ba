"""Charts of a fabric: one to a part."""

from __future__ import annotations

from loopwright.drawing.chart.cutting import cut
from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.page import page
from loopwright.drawing.chart.sections import Section, sections
from loopwright.drawing.chart.words import describe
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric

MOST_SYMBOLS = 40_000  # beyond this a chart of the whole shows the repeat, with a word


def charts(fabric: Fabric, sizes: StitchSizes, options: ChartOptions | None = None) -> tuple[ChartDrawing, ...]:
    """A chart for every part of the fabric, in the order of making; none for a fabric without stitches.

    `sizes`: the gauge, by which rows are cut into parts. Parts that were made alike are drawn once for each that the words make.
    """
    options = options or ChartOptions()
    whole = options.whole and len(fabric) <= MOST_SYMBOLS
    too_many = () if whole or not options.whole else (f"The whole has {len(fabric)} stitches, too many to show: this is the repeat.",)
    return tuple(_drawing(fabric, s, options, whole=whole, told=too_many) for s in sections(fabric, sizes, whole=whole))


def chart(fabric: Fabric, sizes: StitchSizes, options: ChartOptions | None = None) -> ChartDrawing:
    """The first chart of a fabric. Raises ValueError where it has no stitches to draw."""
    found = charts(fabric, sizes, options)
    if not found:
        raise ValueError("there is no stitch to draw")
    return found[0]


def _drawing(fabric: Fabric, section: Section, options: ChartOptions, *, whole: bool, told: tuple[str, ...]) -> ChartDrawing:
    laid = lay(fabric, section)
    notes = list(told)
    if not whole:
        laid, left_out = cut(fabric, laid) if section.kind not in ("disc", "oval") else (laid, "")
        first, last = fabric.rows[section.rows[0]].label, fabric.rows[section.rows[-1]].label
        if left_out or len(section.rows) < section.of:
            span = f"{first} to {last}" if first and last and first != last else first
            told_rows = f"{span} of {section.of}" if len(section.rows) < section.of else span
            rows = "; ".join(x for x in (left_out or "whole rows", told_rows) if x)
            notes.append(f"Shown: {rows}.")
    if section.closed and section.kind not in ("disc", "oval"):
        notes.append("Worked in the round; drawn unrolled, every round read the same way.")
    description = describe(fabric, section, notes, options.terms, left_handed=options.left_handed)
    svg = page(fabric, section, laid, options, notes, description)
    return ChartDrawing(svg, description, section.kind, section.name, (section.rows[0], section.rows[-1]), tuple(notes))
