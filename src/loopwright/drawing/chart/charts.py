"""Charts of a fabric: one to a part."""

from __future__ import annotations

from dataclasses import replace

from loopwright.drawing.chart.cutting import WIDE, cut, ends
from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions, Torn
from loopwright.drawing.chart.grid_charts import grid_charts
from loopwright.drawing.chart.key import own_told
from loopwright.drawing.chart.laid import Laid, lay
from loopwright.drawing.chart.leaving import left_out, repeats_out
from loopwright.drawing.chart.motifs import assembly
from loopwright.drawing.chart.page import page
from loopwright.drawing.chart.sections import GROWN, PAGE, Section, sections
from loopwright.drawing.chart.signs import RINGS
from loopwright.drawing.chart.unread import Gaps, torn_edge
from loopwright.drawing.chart.words import describe
from loopwright.drawing.copies import told_of
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
    full = {s.rows[0]: s for s in sections(fabric, sizes, whole=True)} if options.grids else {}
    found: list[ChartDrawing] = []
    before: Section | None = None
    gaps = Gaps(fabric, sections(fabric, sizes, whole=whole), options.unread)
    for at, s in enumerate(gaps.sections):
        told = (*_made_more(s, options), *too_many, *_closes(fabric, before, s), *gaps.told(at))
        squares = grid_charts(fabric, full[s.rows[0]], sizes, options, gaps.told(at)) if s.rows[0] in full else ()
        found += squares or (_drawing(fabric, s, options, whole=whole, told=told, torn=gaps.headline(at)),)
        before = s
    plan = assembly(fabric, options)
    return (*found, plan) if plan is not None else tuple(found)


def _made_more(section: Section, options: ChartOptions) -> tuple[str, ...]:
    told = told_of(options.copies, section.name)
    return (f"{told[0].upper()}{told[1:]}.",) if told else ()


def _closes(fabric: Fabric, before: Section | None, section: Section) -> tuple[str, ...]:
    """Why a piece that was drawn flat so far goes on unrolled: rounds that gain no more stand up, or close it."""
    flat = before is not None and before.kind in RINGS and before.name == section.name
    if before is None or not flat or section.kind in RINGS or not section.closed:
        return ()
    last = fabric.rows[before.rows[-1]].label or "the last round"
    many = [sum(fabric.counted(fabric.rows[i]).values()) for i in section.rows]
    why = "closes" if 2 * many[-1] <= max(many) else "stands up"
    return (f"The piece {why}: beyond {last} it cannot be drawn flat, so its rounds are unrolled.",)


def _narrowed(fabric: Fabric, section: Section, laid: Laid) -> tuple[Section, Laid, str]:
    """A chart cut to the repeat with its edges; where nothing repeats, without bands of plain stitches; and a word on what is left out."""
    if section.kind in RINGS:
        return section, laid, ""
    found, word = cut(fabric, laid)
    if _wide(found) < (PAGE if word else WIDE):
        return section, found, word
    known = [(section, found, word)]
    for leave, told in ((repeats_out, _repeats_told), (left_out, _plain_told)):
        bands = leave(fabric, section)
        if bands:
            less = replace(section, left=tuple(bands))
            known.append((less, lay(fabric, less), told(fabric, less)))
            if _wide(known[-1][1]) < PAGE:
                return known[-1]
    short, told_short = ends(laid)
    first, last = (fabric.rows[i].end - fabric.rows[i].start for i in (section.rows[0], section.rows[-1]))
    if told_short and (last <= GROWN * first or not known[1:]):
        known.append((section, short, told_short))
    return min(known, key=lambda k: _wide(k[1]))


def _wide(laid: Laid) -> float:
    xs = [m.top[0] for m in laid.marks]
    return max(xs) - min(xs)


def _repeats_told(fabric: Fabric, section: Section) -> str:
    gone = len({fabric.round[s] for s in section.left[0] if fabric.row[s] == section.rows[0]} - {0})
    many = f"{gone} repeat{'s' * (gone > 1)}" if gone else "the repeats in the middle"
    return f"the repeat with its edges, {many} left out at the dotted line"


def _plain_told(_: Fabric, section: Section) -> str:
    many = [len(b) // (len(section.rows) + 1) for b in section.left]
    told = f"{many[0]}" if len(many) == 1 else ", ".join(str(n) for n in many[:-1]) + f" and {many[-1]}"
    return f"{told} plain stitches of every row left out at the dotted line{'s' * (len(many) > 1)}"


def chart(fabric: Fabric, sizes: StitchSizes, options: ChartOptions | None = None) -> ChartDrawing:
    """The first chart of a fabric. Raises ValueError where it has no stitches to draw."""
    found = charts(fabric, sizes, options)
    if not found:
        raise ValueError("there is no stitch to draw")
    return found[0]


def _drawing(
    fabric: Fabric, section: Section, options: ChartOptions, *, whole: bool, told: tuple[str, ...], torn: str = "",
) -> ChartDrawing:
    laid = lay(fabric, section)
    notes = list(told)
    if not whole:
        section, laid, word = _narrowed(fabric, section, laid)
        first, last = fabric.rows[section.rows[0]].label, fabric.rows[section.rows[-1]].label
        if word or len(section.rows) < section.of:
            span = f"{first} to {last}" if first and last and first != last else first
            told_rows = f"{span} of {section.of}" if len(section.rows) < section.of else span
            rows = "; ".join(x for x in (word or "whole rows", told_rows) if x)
            notes.append(f"Shown: {rows}.")
    if section.closed and section.kind not in RINGS:
        notes.append("Worked in the round; drawn unrolled, every round read the same way.")
    if torn:
        laid.torn = Torn(tuple(torn_edge(section, laid.marks)), torn)
    description = describe(fabric, section, [*own_told(fabric, laid, options), *notes], options.terms, left_handed=options.left_handed)
    svg = page(fabric, section, laid, options, notes, description)
    return ChartDrawing(svg, description, section.kind, section.name, (section.rows[0], section.rows[-1]), tuple(notes))
