"""Charts of a fabric: one to a part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.drawing.chart.around import fold, gone
from loopwright.drawing.chart.cutting import LESS, WIDE, cut, ends
from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions, Laid, LeftOut, Torn
from loopwright.drawing.chart.grid_charts import grid_charts
from loopwright.drawing.chart.key import own_told
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.leaving import left_out, more_left_out, repeats_out
from loopwright.drawing.chart.motifs import assembly
from loopwright.drawing.chart.numbering import row_label
from loopwright.drawing.chart.page import legible, page
from loopwright.drawing.chart.sections import GROWN, PAGE, RINGS, Section, sections
from loopwright.drawing.chart.symbols import changes_places
from loopwright.drawing.chart.unread import Gaps, torn_edge
from loopwright.drawing.chart.words import describe
from loopwright.drawing.copies import in_words, sentence, told_of
from loopwright.drawing.speech import Speech
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric

_Shown = tuple[Section, Laid, LeftOut | None]
MOST_SYMBOLS = 40_000  # beyond this a chart of the whole shows the repeat, with a word


def charts(fabric: Fabric, sizes: StitchSizes, options: ChartOptions | None = None) -> tuple[ChartDrawing, ...]:
    """A chart for every part of the fabric, in the order of making; none for a fabric without stitches.

    `sizes`: the gauge, by which rows are cut into parts. Parts that were made alike are drawn once for each that the words make.
    """
    options = options or ChartOptions()
    whole = options.whole and len(fabric) <= MOST_SYMBOLS
    too_many = () if whole or not options.whole else (options.words.say("too-many", n=len(fabric)),)
    full = {s.rows[0]: s for s in sections(fabric, sizes, whole=True)} if options.grids else {}
    found: list[ChartDrawing] = []
    before: Section | None = None
    gaps = Gaps(fabric, sections(fabric, sizes, whole=whole), options.unread, options.words)
    for at, s in enumerate(gaps.sections):
        told = (*_made_more(s, options), *too_many, *_closes(fabric, before, s, options.words), *gaps.told(at))
        squares = grid_charts(fabric, full[s.rows[0]], sizes, options, gaps.told(at)) if s.rows[0] in full else ()
        found += squares or (_drawing(fabric, s, options, whole=whole, told=told, torn=gaps.headline(at)),)
        before = s
    plan = assembly(fabric, options)
    return (*found, plan) if plan is not None else tuple(found)


def _made_more(section: Section, options: ChartOptions) -> tuple[str, ...]:
    told = told_of(options.copies, section.name)
    return (sentence(in_words(told, options.words)),) if told else ()


def _closes(fabric: Fabric, before: Section | None, section: Section, speech: Speech) -> tuple[str, ...]:
    """Why a piece that was drawn flat so far goes on unrolled: rounds that gain no more stand up, or close it."""
    flat = before is not None and before.kind in RINGS and before.name == section.name
    if before is None or not flat or section.kind in RINGS or not section.closed:
        return ()
    label = row_label(fabric, before.rows[-1])
    many = [sum(fabric.counted(fabric.rows[i]).values()) for i in section.rows]
    why = "piece-closes" if 2 * many[-1] <= max(many) else "piece-stands-up"
    return (speech.say(why, row=speech.row(label) if label else speech.say("last-round")),)


def _narrowed(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions) -> _Shown:
    """A chart cut to the repeat with its edges; where nothing repeats, without bands of plain stitches; and what is left out."""
    if section.ringed:
        return section, laid, None
    if section.edge is not None:
        return _folded(fabric, section, laid)
    found, word = cut(fabric, laid)
    if _wide(found) < WIDE:
        return section, found, word
    known: list[_Shown] = [(section, found, word)]
    if word and not _fits(fabric, known[-1], options):
        known.append((section, *cut(fabric, laid, side=LESS)))
    if word and _fits(fabric, known[-1], options):
        return known[-1]
    for leave, told in ((repeats_out, _repeats_told), (left_out, _plain_told), (more_left_out, _plain_told)):
        bands = leave(fabric, section)
        if bands:
            less = replace(section, left=tuple(bands))
            known.append((less, lay(fabric, less), told(fabric, less)))
            if _fits(fabric, known[-1], options):
                return known[-1]
    grown = [fabric.rows[i].end - fabric.rows[i].start for i in (section.rows[0], section.rows[-1])]
    small = not any(_fits(fabric, k, options) for k in known)
    short, told_short = ends(laid, small=small)
    if told_short and (small or grown[1] <= GROWN * grown[0] or not known[1:]):
        known.append((section, short, told_short))
    return min(known, key=lambda k: _wide(k[1]))


def _ended(fabric: Fabric, shown: _Shown, options: ChartOptions) -> _Shown:
    """A chart with the last rows of the piece, where that leaves it as wide."""
    section, _, word = shown
    if section.ending is None or section.left:
        return shown
    less = replace(section, rows=section.ending.rows, ends=True)
    laid = lay(fabric, less)
    for found, told in ((laid, None), cut(fabric, laid), cut(fabric, laid, side=LESS)):
        if told == word and (_fits(fabric, (less, found, told), options) or not _fits(fabric, shown, options)):
            return less, found, told
    return shown


def _folded(fabric: Fabric, section: Section, laid: Laid) -> _Shown:
    """Rows around an edge with the middle of its long sides left out."""
    if section.edge is None:
        return section, laid, None
    edge, bands = fold(fabric, section, section.edge)
    less = replace(section, edge=edge, left=tuple(bands))
    return (less, lay(fabric, less), LeftOut("edge-left-out", gone(fabric, less))) if bands else (section, laid, None)


def _fits(fabric: Fabric, shown: _Shown, options: ChartOptions) -> bool:
    section, laid, _ = shown
    return _wide(laid) < PAGE and legible(fabric, section, laid, options)


def _wide(laid: Laid) -> float:
    xs = [m.top[0] for m in laid.marks]
    return max(xs) - min(xs)


def _repeats_told(fabric: Fabric, section: Section) -> LeftOut:
    gone = len({fabric.round[s] for s in section.left[0] if fabric.row[s] == section.rows[0]} - {0})
    return LeftOut("left-out-at-line", gone) if gone else LeftOut("left-out-middle")


def _plain_told(_: Fabric, section: Section) -> LeftOut:
    return LeftOut("plain-left-out", many=tuple(len(b) // (len(section.rows) + 1) for b in section.left))


def _rows_told(fabric: Fabric, section: Section, speech: Speech) -> str:
    """Which rows of how many are shown."""
    at = section.rows.index(section.ending.after) + 1 if section.ends and section.ending is not None else len(section.rows)
    spans = [_span(fabric, rows, speech) for rows in (section.rows[:at], section.rows[at:]) if rows]
    span = speech.listed(spans) if all(spans) else str(len(section.rows))
    return speech.say("rows-of", rows=span, n=section.of) if len(section.rows) < section.of else "" if not all(spans) else span


def _span(fabric: Fabric, rows: Sequence[int], speech: Speech) -> str:
    """From which row to which, by their labels; nothing where they have none."""
    first, last = (speech.row(row_label(fabric, rows[at])) for at in (0, -1))
    return speech.say("rows-shown", first=first, last=last) if first and last and first != last else first


def chart(fabric: Fabric, sizes: StitchSizes, options: ChartOptions | None = None) -> ChartDrawing:
    """The first chart of a fabric. Raises ValueError where it has no stitches to draw."""
    found = charts(fabric, sizes, options)
    if not found:
        raise ValueError("there is no stitch to draw")
    return found[0]


def _drawing(
    fabric: Fabric, section: Section, options: ChartOptions, *, whole: bool, told: tuple[str, ...], torn: str = "",
) -> ChartDrawing:
    laid, speech = lay(fabric, section), options.words
    notes = list(told)
    if not whole:
        section, laid, word = _ended(fabric, _narrowed(fabric, section, laid, options), options)
        if word or len(section.rows) < section.of:
            what = word.told(speech) if word else speech.say("whole-rows")
            notes.append(speech.say("shown", what="; ".join(x for x in (what, _rows_told(fabric, section, speech)) if x)))
    if section.edge is not None:
        notes.append(speech.say("in-grey"))
    elif section.closed and section.kind not in RINGS:
        notes.append(speech.say("unrolled"))
    if any(changes_places(m) for m in laid.marks):
        notes.append(speech.say("front-and-back"))
    if options.left_handed:
        notes.append(speech.say("mirrored"))
    if torn:
        laid.torn = Torn(tuple(torn_edge(section, laid.marks)), torn)
    description = describe(fabric, section, [*own_told(fabric, laid, options), *notes], speech, left_handed=options.left_handed)
    svg = page(fabric, section, laid, options, notes, description)
    return ChartDrawing(svg, description, section.kind, section.name, (section.rows[0], section.rows[-1]), tuple(notes))
