"""Lengths and names as a schematic says them."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing.lettering import plain
from loopwright.drawing.schematic.book import Entry
from loopwright.drawing.schematic.drawn import SchematicOptions
from loopwright.drawing.speech import Speech

_QUARTERS = ("", "¼", "½", "¾")
INCH_MM = 25.4


def cm(value_mm: float) -> str:
    """Centimetres to a millimetre, as measures are listed."""
    return f"{value_mm / 10:.1f}".removesuffix(".0")


def inches(value_mm: float) -> str:
    """Inches to the nearest quarter (common practice, no source); eighths below two inches."""
    value = value_mm / INCH_MM
    if value < 2:
        eighths = round(8 * value)
        if eighths % 2:
            return (f"{eighths // 8} " if eighths >= 8 else "") + f"{eighths % 8}/8"
        quarters = eighths // 2
    else:
        quarters = round(4 * value)
    whole, part = divmod(quarters, 4)
    return (str(whole) if whole or not part else "") + _QUARTERS[part]


def length(value_mm: float, units: str, speech: Speech) -> str:
    """One length with its unit, the first unit where both are wanted."""
    return _with_unit(inches(value_mm), "in", speech) if units == "in" else _with_unit(speech.decimal(cm(value_mm)), "cm", speech)


def _with_unit(said: str, unit: str, speech: Speech) -> str:
    return f"{said} {speech.say(unit)}"


def in_brackets(words: Sequence[str]) -> str:
    """ "46 (48, 50)", "46 (48,5; 50)" with decimal commas; one word where all are the same."""
    if len(set(words)) == 1:
        return words[0]
    apart = "; " if any("," in w for w in words) else ", "
    return f"{words[0]} ({apart.join(words[1:])})"


def values(entry: Entry, options: SchematicOptions) -> list[str]:
    """What the table says: one line for each unit."""
    found = entry.values_mm if options.only is None else (entry.values_mm[options.only],)
    lines = []
    speech = options.said
    for unit, say in (("cm", lambda v: speech.decimal(cm(v))), ("in", inches)):
        if options.units in (unit, "both"):
            lines.append(_with_unit(in_brackets(["-" if v is None else say(v) for v in found]), unit, speech))
    return [" · ".join(lines)] if len(found) == 1 else lines


def named(entry: Entry, speech: Speech) -> str:
    """ "Body, around"."""
    section = plain(speech.name(entry.section.split(" (", 1)[0])) if entry.section else ""
    return speech.say("measure-of", part=section or speech.say("whole"), measure=speech.measure(entry.told or entry.name))
