"""Another measure: "I want it 54 around"."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.answering.answer import Answer
from loopwright.answering.phrases import cm, say
from loopwright.model.measures import Measures

_EXACT_MM = 2.0


def measure_is_wanted(
    measures: Sequence[Measures], section: str | None, name: str, want_mm: float, stitch_mm: float | None = None, multiple: int = 1,
    plus: int = 0,
) -> Answer:
    """Which size is nearest to a measure, and how many stitches would make it.

    `section` and `name`: the dimension that is meant. `stitch_mm`: width of a stitch, where the measure goes along the stitches; the count
    is the nearest multiple plus `plus`. Raises ValueError where no size has that dimension, or the measure is none.
    """
    found = [(m.size, d.value_mm) for m in measures for d in m.dimensions if (d.section, d.name) == (section, name)]
    if not found or not want_mm > 0:
        raise ValueError("no size has this measure")
    what = f"{name} ({section})" if section else name
    size, made = min(found, key=lambda f: abs(f[1] - want_mm))
    off = made - want_mm
    key = "exact" if abs(off) < _EXACT_MM else "nearest"
    facts = [say("measure", key, size=size, made=cm(made), what=what, off=cm(abs(off)), more=say("gauge", "more" if off > 0 else "less"))]
    if stitch_mm and key == "nearest":
        repeats = max(0 if plus else 1, round((want_mm / stitch_mm - plus) / multiple))
        sts = repeats * multiple + plus
        told = {"sts": sts, "made": cm(sts * stitch_mm), "multiple": f"{multiple} plus {plus}" if plus else str(multiple)}
        facts.append(say("measure", "stitches" if multiple > 1 else "free", **told))
        facts.append(say("measure", "then"))
    return Answer(say("measure", "heading", want=cm(want_mm), what=what), tuple(facts), (), say("measure", "text", facts=" ".join(facts)))
