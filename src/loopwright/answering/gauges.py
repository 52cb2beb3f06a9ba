"""Another gauge: "my gauge is 16 and 9"."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.answering.answer import Answer
from loopwright.answering.phrases import cm, say
from loopwright.model.measures import Dimension, Measures

_NEAR = 0.01  # a share that no tape shows
_FITS = ("around", "width", "across", "length")


def gauge_is_other(
    measures: Sequence[Measures], size: int, pattern: str, pattern_mm: tuple[float, float], own: str, own_mm: tuple[float, float],
) -> Answer:
    """What a size comes to at her gauge, and which size's numbers come nearest to it.

    `pattern_mm`, `own_mm`: width of a stitch and height of a row, mm. `pattern`, `own`: the gauges in words. Raises IndexError for a size
    that there is none of, ValueError for a width or height that is not above nought.
    """
    if min(*pattern_mm, *own_mm) <= 0:
        raise ValueError("a stitch has a width and a height")
    wide, tall = own_mm[0] / pattern_mm[0] - 1, own_mm[1] / pattern_mm[1] - 1
    fact = say(
        "gauge", "fact", pattern=pattern, own=own, wide=f"{100 * abs(wide):.0f}", wider=say("gauge", "wider" if wide >= 0 else "narrower"),
        tall=f"{100 * abs(tall):.0f}", taller=say("gauge", "taller" if tall >= 0 else "shorter"),
    )
    if abs(wide) < _NEAR and abs(tall) < _NEAR:
        return Answer(say("gauge", "heading_same"), (fact,), (), say("gauge", "text", fact=fact, hook="", rest="").strip())
    hook = _hook(pattern_mm[0], own_mm[0])
    rest = _sizes(measures, size, wide) if abs(wide) >= _NEAR else [say("gauge", "rows_only")]
    rest.append(say("gauge", "again"))
    text = say("gauge", "text", fact=fact, hook=hook, rest=" ".join(rest)).replace("  ", " ")
    return Answer(say("gauge", "heading"), tuple(x for x in (fact, hook, *rest) if x), (), text)


def _hook(pattern_mm: float, own_mm: float) -> str:
    """More stitches to ten centimetres than the pattern has: a larger hook; fewer: a smaller one."""
    off = 100 / own_mm - 100 / pattern_mm
    if abs(off) < 0.25:
        return ""
    n = f"{abs(off):.1f}".removesuffix(".0")
    return say("gauge", "hook_up" if off > 0 else "hook_down", n=n, stitches="stitch" if n == "1" else "stitches")


def _sizes(measures: Sequence[Measures], size: int, wide: float) -> list[str]:
    mine = _measure(measures[size])
    if mine is None:
        return []
    what = f"{mine.name} the {mine.section}" if mine.section and mine.name == "around" else mine.name
    made = mine.value_mm * (1 + wide)
    said = [say("gauge", "comes", size=measures[size].size, what=what, made=cm(made), want=cm(mine.value_mm))]
    key = (mine.section, mine.name, False)
    others = [(m, d.value_mm * (1 + wide)) for m in measures for d in m.dimensions if (d.section, d.name, d.worn) == key]
    best, mm = min(others, key=lambda o: abs(o[1] - mine.value_mm))
    off = mm - mine.value_mm
    if best.size != measures[size].size:
        said.append(say(
            "gauge", "follow", other=best.size, what=what, made=cm(mm), off=cm(abs(off)), more=say("gauge", "more" if off >= 0 else "less"),
            size=measures[size].size,
        ))
    return said


def _measure(m: Measures) -> Dimension | None:
    """The measure that tells the size best: around the whole piece, else the widest around or across."""
    found = [d for d in m.dimensions if d.name in _FITS and not d.worn and not d.relaxed]
    return max(found, key=lambda d: (-_FITS.index(d.name), d.section is None, d.value_mm), default=None)
