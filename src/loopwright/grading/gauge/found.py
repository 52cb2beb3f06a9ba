"""The gauge of a pattern as everybody uses it: sizes of stitches, what they were taken from, and what had to be taken on trust."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.findings import Finding
from loopwright.grading.gauge import sound
from loopwright.grading.gauge.guess import guess
from loopwright.grading.gauge.heading import Line, hook_mm, lines, main_stitch, yarn_class
from loopwright.grading.gauge.sizes import StitchSizes, counted_share, plain_kind, usual_shape
from loopwright.grading.gauge.swatches import Swatch, read_swatches
from loopwright.grading.gauge.written import LARGEST_MM, SMALLEST_MM, Gauge, GaugeError, parse_gauge
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.source import Span
from loopwright.terms import dialect
from loopwright.trade.stitches import circle
from loopwright.trade.yarn import Weight

# Stitches in a repeat, as the trade says them: "multiple of 6 + 2", "6-st repeat".
_MULTIPLE = re.compile(r"\bmultiple of (?P<n>\d{1,3})|\b(?P<st>\d{1,3})[- ]st(?:itch)? (?:pattern )?repeat", re.IGNORECASE)
UNKNOWN = "without a gauge no length, no yarn and no flat rate can be told; counts and proportions hold"


@record
class GaugeFound:
    """What is known of the gauge.

    `sizes`: None where nothing tells it. `before`: before blocking, where both were measured. `guessed`: nobody measured it. `notes`:
    what was assumed. `doubts`: what does not fit together, in words. `findings`: faults of the gauge line (codes of the registry).
    """

    sizes: StitchSizes | None
    notes: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    before: StitchSizes | None = None
    swatches: tuple[Swatch, ...] = ()

    @property
    def guessed(self) -> bool:
        """True where nobody measured it."""
        return self.sizes is not None and self.sizes.guessed


def stitch_sizes(document: Document, given: Gauge | None = None) -> GaugeFound:
    """Sizes of every kind of stitch for a pattern: by a gauge given, by its own lines, or guessed from yarn and hook. Never raises.

    `given` replaces the pattern's gauge; stitches that the pattern measured besides keep their proportion to it.
    """
    told = lines(document, "gauge", "tension", "swatch")
    main = main_stitch(document) or "sc"
    yarn, hook = _yarn(document), hook_mm(document)
    swatches = [s for line in told for s in read_swatches(line.value, dialect(document.terms))]
    for line in told:  # "gauge in hdc: 17 sts and 13 rows = 10 cm" names its stitch before the colon
        _name_them([s for s in swatches if s.text == line.value.strip()], line, document)
    notes: list[str] = []
    after = [s for s in swatches if s.blocked != "before"] or swatches
    sizes = _measured(after, main, document, notes)
    before = _measured([s for s in swatches if s.blocked == "before"], main, document, []) if len(after) < len(swatches) else None
    if given is not None:
        sizes, before = _given(given, sizes, main, document, notes), None
    doubts = sound.doubts(sizes, after if given is None else [], before, yarn)
    findings = [] if given is not None else _faults(told, swatches)
    if sizes is None:
        found = guess(main, yarn, hook)
        lacks = "the gauge tells neither a stitch nor a row" if swatches else "no gauge is told"
        if found is None:
            return GaugeFound(None, (*notes, f"{lacks}, and no yarn or hook: {UNKNOWN}"), tuple(doubts), tuple(findings))
        wide = 2 * found.sizes.width_share * 100
        said = f"{lacks}; stitches are guessed {found.how}, give or take {wide:.0f} %: measure a swatch before trusting any length"
        return GaugeFound(found.sizes, (*notes, said), tuple(doubts), tuple(findings))
    return GaugeFound(sizes, tuple(notes), tuple(doubts), tuple(findings), before, tuple(swatches))


def _yarn(document: Document) -> Weight | None:
    return next((w for line in lines(document, "yarn", "materials", "you will need") if (w := yarn_class(line.value))), None)


def _name_them(swatches: Sequence[Swatch], line: Line, document: Document) -> None:
    named = re.search(r"\b(?:in|of|over|for)\s+(.+)$", line.name)
    kind = dialect(document.terms).kind_of(named[1]) if named else None
    for swatch in swatches:
        swatch.kind = swatch.kind or kind


def _measured(swatches: Sequence[Swatch], main: str, document: Document, notes: list[str]) -> StitchSizes | None:
    """Sizes from swatches: the first with most told is what the others stand beside."""
    usable = [s for s in swatches if _complete(s, main, document, notes)]
    if not usable:
        return None
    chief = max(usable, key=lambda s: (bool(s.stitch_mm) + bool(s.row_mm), -usable.index(s)))
    sizes = _sizes_of(chief, main, notes)
    own = {}
    for other in usable:
        if other is chief or other.kind is None or other.kind == sizes.kind or other.kind in own:
            continue
        one = _sizes_of(other, main, notes, beside=sizes)
        own[other.kind] = (one.width_mm, one.row_mm)
    return replace(sizes, own=own)


def _complete(swatch: Swatch, main: str, document: Document, notes: list[str]) -> bool:
    """True where the swatch tells a stitch or a row; repeats and motifs are turned into them where the pattern says how."""
    if swatch.stitch_mm is None and swatch.repeat_mm is not None:
        multiple = _MULTIPLE.search(document.text)
        many = int(multiple["n"] or multiple["st"]) if multiple else 0
        if many and SMALLEST_MM <= swatch.repeat_mm / many <= LARGEST_MM:
            swatch.stitch_mm, swatch.stitches = swatch.repeat_mm / many, float(many)
            notes.append(f"a repeat of {many} sts is {swatch.repeat_mm:.4g} mm wide, so a stitch is {swatch.stitch_mm:.3g} mm")
        elif swatch.row_mm is None:
            what = swatch.repeat_of or "repeats"
            notes.append(f'the gauge counts {what} and does not say of how many stitches: say "multiple of 6" or count stitches')
    if swatch.motif_mm is not None and not swatch.stitch_mm and not swatch.row_mm and swatch.motif_rounds:
        row = swatch.motif_mm / 2 / swatch.motif_rounds
        if SMALLEST_MM <= row <= LARGEST_MM:
            swatch.row_mm, swatch.rows, swatch.disc_rounds = row, float(swatch.motif_rounds), float(swatch.motif_rounds)
            swatch.kind = swatch.kind or main
            notes.append(f"a motif of {swatch.motif_rounds} rounds is {swatch.motif_mm:.4g} mm across, so a round is {row:.3g} mm")
    return swatch.stitch_mm is not None or swatch.row_mm is not None


def _sizes_of(swatch: Swatch, main: str, notes: list[str], beside: StitchSizes | None = None) -> StitchSizes:
    """One swatch as sizes; what it does not tell comes from the swatch beside it, the flat circle or the usual shape of the stitch."""
    kind = swatch.kind or main
    if swatch.kind is None and swatch.stitch_mm is not None:
        notes.append(f"the gauge names no stitch; it is taken as {kind}, the stitch that the pattern works most")
    width, row = swatch.stitch_mm, swatch.row_mm
    width_share, row_share = counted_share(swatch.stitches), counted_share(swatch.rows)
    if width is None:
        assumed = row or 0.0
        width, width_share, how = _width_from_row(kind, assumed, swatch, beside)
        notes.append(f"the gauge tells no width of a {kind}; {width:.3g} mm is taken from {how}, give or take {200 * width_share:.0f} %")
    if row is None:
        row, row_share = width * usual_shape(kind), counted_share(1, guessed=True)
        if beside is not None:
            row = beside.height(kind)
        where = "the other swatch and the usual heights" if beside else "the usual shape of the stitch"
        notes.append(f"the gauge tells no rows of {kind}; {row:.3g} mm is taken from {where}, give or take {200 * row_share:.0f} %")
    return StitchSizes(width, row, kind, width_share, row_share, text=swatch.text)


def _width_from_row(kind: str, row_mm: float, swatch: Swatch, beside: StitchSizes | None) -> tuple[float, float, str]:
    """Width of a stitch where only its row was measured: width, share, where from."""
    share = counted_share(1, guessed=True)
    if beside is not None:
        return beside.width(kind), beside.width_share, "the other swatch"
    flat = circle(plain_kind(kind))
    if swatch.disc_rounds and flat is not None:  # 2 pi height / width stitches a round lie flat
        return math.tau * row_mm / flat.usual, share, f"the {flat.usual} stitches a round of a flat circle"
    return row_mm / usual_shape(kind), share, "the usual shape of the stitch"


def _given(given: Gauge, own: StitchSizes | None, main: str, document: Document, notes: list[str]) -> StitchSizes | None:
    """The gauge given, in the stitch it names, else in that of the pattern's own gauge."""
    named = dialect(document.terms).kind_of(given.stitch) if given.stitch else None
    kind = named or (own.kind if own else main)
    swatch = Swatch(kind, given.stitch_mm, given.row_mm, repeat_mm=given.repeat_mm, text=given.text)
    swatch.stitches = 100 / given.stitch_mm if given.stitch_mm else 0.0
    swatch.rows = 100 / given.row_mm if given.row_mm else 0.0
    if not _complete(swatch, main, document, notes):
        return own
    if own is not None and swatch.row_mm is None:
        swatch.row_mm, swatch.rows = own.height(kind), 100 / own.height(kind) if own.height(kind) else 0.0
        notes.append("the gauge given tells no rows; those of the pattern are kept")
    elif own is not None and swatch.stitch_mm is None:
        swatch.stitch_mm, swatch.stitches = own.width(kind), 100 / own.width(kind)
        notes.append("the gauge given tells no stitches; those of the pattern are kept")
    sizes = _sizes_of(swatch, main, notes)
    if own is None or not own.own:
        return sizes
    wide, tall = sizes.width_mm / own.width(kind), sizes.row_mm / (own.height(kind) or sizes.row_mm)
    measured = {**own.own, own.kind: (own.width_mm, own.row_mm)}
    return replace(sizes, own={k: (w * wide, h * tall) for k, (w, h) in measured.items() if k != kind})


def _faults(told: Sequence[Line], swatches: Sequence[Swatch]) -> list[Finding]:
    """Gauge lines that nothing could be taken from."""
    found = []
    for line in told:
        if line.name == "swatch" or any(s.text == line.value.strip() for s in swatches):
            continue
        try:
            parse_gauge(line.value)
        except GaugeError as e:
            found.append(Finding(e.code, line.span, e.facts))
    return found or ([] if told else [Finding("G001", Span(0, 0))])
