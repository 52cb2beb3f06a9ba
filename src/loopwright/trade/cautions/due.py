"""The cautions that a pattern brings up, with the figures that stand beside a limit. One function, for everyone who says them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.model.cautions import CautionDue, CautionFigure
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document, HeadLine
from loopwright.source import Span
from loopwright.trade.cautions import ages, table
from loopwright.trade.cautions.cords import Tied, cords, tied
from loopwright.trade.cautions.gaps import StitchMm, openings_mm
from loopwright.trade.cautions.scopes import HIDDEN, Scopes, of_text, scopes
from loopwright.trade.cautions.table import Caution

MADE_OPEN = re.compile(r"\b(?:sk|skip|miss|sps?|spaces?|lps?|mesh(?:es)?)\b", re.IGNORECASE)
# a stuffed thing with such parts is a toy, whatever its title; what is hung up or pinned is none. Common practice, no source.
_PARTS = ("head", "eyes", "eye", "ears", "ear", "legs", "leg", "arms", "arm", "wing", "wings", "muzzle", "snout", "beak", "tail")
_STUFFED = ("stuff", "stuffing", "stuffed", "fiberfill", "fibrefill", "fibre fill", "fiber fill", "polyfill", "toy filling")
_NO_TOY = ("pincushion", "pin cushion", "ornament", "bauble", "garland", "doorstop", "cushion", "pillow", "decoration")


def cautions_due(
    document: Document, stitch: StitchMm | None = None, fabrics: Sequence[Fabric | None] = (),
) -> tuple[CautionDue, ...]:
    """The cautions that are due, in the order of the table, those hidden by the heading among them, marked.

    `stitch`: widths and heights at her gauge; without them no length is known but those told in words. `fabrics`: one for each size, for
    the holes of lace; looked at only where a baby's size has any. Never raises for what a document holds.
    """
    said = scopes(document)
    names = document.sizes
    whom = ages.by_size(names, ages.spoken_of(said.whom))
    hidden = {line for line, _ in hidden_names(document)}
    all_tied = tied(document)
    found = []
    for caution in table.cautions():
        concerned = [i for i, one in enumerate(whom) if not caution.ages or one & set(caution.ages)]
        measured = caution.measured and stitch is not None and len(fabrics) > 0
        why = _why(caution, said, measured=measured) if concerned else None
        if why is None:
            continue
        figures = tuple(dict.fromkeys(_figures(caution, document, all_tied, stitch, fabrics, concerned)))
        if measured and not any(f.over for f in figures):
            continue
        sharp = caution.melts and bool(table.found(said.stuff, table.fibres("melt")))
        sizes = tuple(names[i] for i in concerned) if len(concerned) < len(names) else ()
        found.append(CautionDue(
            caution.key, caution.topic, caution.text, table.defer(), caution.standard, caution.source, caution.weak, caution.limit,
            sizes, figures, why,
            _is_told(caution, said.notes), caution.key in hidden, sharp,
        ))
    return tuple(found)


def about(text: str, size_names: Sequence[str] = ()) -> tuple[Caution, ...]:
    """The cautions that a text brings up in those sizes, all of its words taken for what it is and has.

    Those for an age come up where a size is of that age, or, without sizes, where the text speaks of it.
    """
    said = of_text(text)
    whom = {age for name in size_names for age in ages.ages_of(name)} if size_names else ages.spoken_of(said.whom)
    return tuple(c for c in table.cautions() if (not c.ages or whom & set(c.ages)) and _why(c, said) is not None)


def hidden_names(document: Document) -> Iterator[tuple[str, Span]]:
    """What the heading asks to hide, each as a key ("sleep-hat", known or not), with the line that asks for it."""
    for item in document.items:
        if isinstance(item, HeadLine) and item.name in HIDDEN:
            for part in re.split(r"[,;]|\band\b", item.value.lower()):
                key = "-".join(re.findall(r"[a-z0-9]+", part))
                if key:
                    yield key, item.span


def in_words(figure: CautionFigure) -> str:
    """A figure with its limit: "20 cm, 12.5 cm more than 7.5 cm"; "9 mm, between 7 and 12 mm"."""
    if figure.to_mm is not None and figure.from_mm is not None:
        side = "between" if figure.over else "not between"
        return f"about {figure.found_mm:.1f} mm across ({figure.how}), {side} {figure.from_mm:g} and {figure.to_mm:g} mm"
    more = f", {_cm(figure.by_mm)} more than {_cm(figure.from_mm)}" if figure.over and figure.from_mm is not None else ""
    return f"{_cm(figure.found_mm)}{more}"


def _cm(mm: float) -> str:
    return f"{mm / 10:.1f}".removesuffix(".0") + " cm"


def _why(caution: Caution, said: Scopes, *, measured: bool = False) -> str | None:
    """The words that bring a caution up; None where it is not due. `measured`: figures decide, and words are not asked for."""
    item = table.found(said.item, caution.items)
    if caution.items and not item:
        item = _as_toy(caution, said)
        if not item:
            return None
    if caution.melts and not _may_melt(said.stuff):
        return None
    words = [table.found(said.risks, group) for group in caution.words]
    return ", ".join(w for w in dict.fromkeys([item, *words]) if w) if measured or all(words) else None


def _as_toy(caution: Caution, said: Scopes) -> str:
    """What shows a toy that does not call itself one."""
    if "toy" not in caution.items or table.found(said.item, _NO_TOY):
        return ""
    stuffed = table.found(said.risks, _STUFFED)
    return stuffed if stuffed and table.found(said.risks, _PARTS) else ""


def _may_melt(stuff: str) -> bool:
    """Whether the yarn is told to melt, or not told to stand heat."""
    return bool(table.found(stuff, table.fibres("melt"))) or not table.found(stuff, table.fibres("stand"))


def _is_told(caution: Caution, notes: Sequence[str]) -> bool:
    """Whether a note says it: in our own words, or with a word of each group."""
    if any(caution.text in note for note in notes):
        return True
    return any(all(table.begun(table.said_plainly(note), group) for group in caution.told) for note in notes)


def _figures(
    caution: Caution, document: Document, all_tied: Sequence[Tied], stitch: StitchMm | None, fabrics: Sequence[Fabric | None],
    concerned: Sequence[int],
) -> Iterator[CautionFigure]:
    """The lengths that this caution is about, in the sizes it is for."""
    low, high = caution.figures.get("hole_mm_from"), caution.figures.get("hole_mm_to")
    if low is not None and high is not None:
        if stitch is not None and MADE_OPEN.search(document.text):
            for i in concerned:
                yield from _holes(document.sizes[i], stitch, fabrics[i] if i < len(fabrics) else None, low, high)
    elif caution.topic == "cord":
        for i in concerned:
            yield from _lengths(caution, document.sizes, all_tied, i, stitch)


def _holes(size: str, stitch: StitchMm, fabric: Fabric | None, low: float, high: float) -> Iterator[CautionFigure]:
    """Dangerous holes, each kind once."""
    seen: set[tuple[int, int, float]] = set()
    if fabric is None:
        return
    for hole in openings_mm(fabric, stitch):
        kind = (hole.chains, hole.skipped, round(hole.mm, 1))
        if kind not in seen and low < hole.mm < high:
            seen.add(kind)
            over = f" over {hole.skipped} st{'s' if hole.skipped > 1 else ''}" if hole.skipped else ""
            yield CautionFigure("opening", size, hole.mm, low, high, Span(*fabric.words(hole.first)), f"{hole.chains} ch{over}")


def _lengths(
    caution: Caution, names: Sequence[str], all_tied: Sequence[Tied], size: int, stitch: StitchMm | None,
) -> Iterator[CautionFigure]:
    """Ties beside the limit for free ends, loops beside the one for loops."""
    free, loop = caution.figures.get("free_mm_most"), caution.figures.get("loop_mm_most")
    below = caution.figures.get("age_years_below")
    months = ages.months_of(names[size])
    if below is not None and months is not None and months >= below * 12:
        return
    seen = set()
    for cord in cords(all_tied, size, stitch):
        if (cord.what, cord.mm, cord.how) in seen:
            continue
        seen.add((cord.what, cord.mm, cord.how))
        elsewhere = cord.waist is not (caution.key == "waist-cords")
        if cord.what == "loop" and loop is None or cord.what == "tie" and (loop is not None or elsewhere):
            continue
        most = loop if cord.what == "loop" else free
        yield CautionFigure(cord.what, names[size], cord.mm, most if cord.free else None, None, cord.span, cord.how)
