"""Yarns of a chart: each with its letter and its own kind of line, so that colour is never told by colour alone."""

from __future__ import annotations

from loopwright.drawing.chart.drawn import ChartOptions, Laid
from loopwright.drawing.chart.numbering import row_label
from loopwright.drawing.chart.style import LETTERS
from loopwright.drawing.speech import Speech
from loopwright.drawing.tones import tone
from loopwright.model.fabric import Fabric


def coloured(fabric: Fabric, laid: Laid, options: ChartOptions) -> bool:
    """Whether yarns are told apart: where asked for, and where a chart is of several."""
    return options.colours or len({fabric.colour[m.stitch] for m in laid.marks} - {0}) > 1


def yarn_letter(fabric: Fabric, stitch: int) -> str:
    """The letter of a stitch's yarn, "" where none is told."""
    at = fabric.colour[stitch]
    return LETTERS[(at - 1) % len(LETTERS)] if fabric.colours[at] else ""


def yarn_class(fabric: Fabric, stitch: int) -> str:
    """The class of its lines."""
    letter = yarn_letter(fabric, stitch)
    return f"y{letter}" if letter else ""


def yarns_used(fabric: Fabric, laid: Laid, options: ChartOptions) -> list[tuple[str, str]]:
    """Letter and name of every yarn drawn, in the order of the fabric's colours."""
    used = {fabric.colour[m.stitch]: m.stitch for m in laid.marks if fabric.colours[fabric.colour[m.stitch]]}
    return [(yarn_letter(fabric, used[at]), called(fabric.colours[at], options)) for at in sorted(used)]


def called(yarn: str, options: ChartOptions) -> str:
    """What a pattern calls a yarn that its rows know by a letter."""
    return options.words.own(options.yarns[yarn]) if yarn in options.yarns else yarn


def tones_used(fabric: Fabric, laid: Laid, options: ChartOptions) -> dict[str, str]:
    """The tones of yarns whose names say a colour, by letter."""
    used = {fabric.colour[m.stitch]: m.stitch for m in laid.marks if fabric.colours[fabric.colour[m.stitch]]}
    named = {yarn_letter(fabric, s): tone(options.yarns.get(fabric.colours[at], fabric.colours[at])) for at, s in used.items()}
    return {letter: found for letter, found in sorted(named.items()) if found is not None}


def yarn_rows(fabric: Fabric, laid: Laid, speech: Speech) -> list[str]:
    """Which rows are of which yarn, in words."""
    rows: dict[str, dict[str, None]] = {}
    for m in laid.marks:
        yarn = fabric.colours[fabric.colour[m.stitch]]
        if yarn:
            rows.setdefault(yarn, {})[speech.row(label) if (label := row_label(fabric, m.row)) else speech.say("the-chain")] = None
    return [speech.say("yarn-rows", yarn=yarn, rows=", ".join(labels)) for yarn, labels in rows.items()]
