"""Too little yarn: "I have 600 m"."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.answering.answer import Answer
from loopwright.answering.phrases import say
from loopwright.model.measures import Measures, YarnAtHand


def yarn_is_left(measures: Sequence[Measures], size: int, have_m: float, at_hand: YarnAtHand | None = None) -> Answer:
    """Whether so many metres make a size, where they end if not, and which sizes they make.

    `at_hand`: what measuring says of it, for the row in which it runs out. Raises IndexError for a size that there is none of, ValueError
    for an amount that is none, or a size whose yarn is not known.
    """
    m = measures[size]
    need, low, high = (sum(getattr(y, part) for y in m.yarn) for part in ("length_m", "low_m", "high_m"))
    if not have_m > 0 or not need > 0:
        raise ValueError("an amount of yarn is above nought, and the need must be known")
    facts = [say("yarn", "fact", size=m.size, need=f"{need:.0f}", low=f"{low:.0f}", high=f"{high:.0f}")]
    if have_m >= high:
        heading = "heading_fits"
        facts.append(say("yarn", "spare", n=f"{have_m - need:.0f}"))
    else:
        heading = "heading_maybe" if have_m >= need else "heading_short"
        if have_m < need:
            row = " ".join(filter(None, (at_hand.label, f"of the {at_hand.section}" if at_hand.section else ""))) if at_hand else ""
            facts.append(say("yarn", "lacks", n=f"{need - have_m:.0f}", row=row or "the last rows"))
    fits = [o.size for o in measures if o.yarn and sum(y.high_m for y in o.yarn) <= have_m]
    more = say("yarn", "others", have=f"{have_m:.0f}", sizes=", ".join(fits)) if fits else say("yarn", "no_others", have=f"{have_m:.0f}")
    facts.append(more)
    facts.append(say("yarn", "weigh"))
    return Answer(say("yarn", heading), tuple(facts), (), say("yarn", "text", facts=" ".join(facts[:-1]), more=facts[-1]))


def balls_of_another(measures: Sequence[Measures], size: int, ball_m: float) -> Answer:
    """How many balls of another yarn a size takes, by the length of one: enough for the upper end of the estimate, for each colour.

    Raises IndexError for a size that there is none of, ValueError for a length that is none, or a size whose yarn is not known.
    """
    m = measures[size]
    if not ball_m > 0 or not sum(y.length_m for y in m.yarn) > 0:
        raise ValueError("a ball has a length above nought, and the need must be known")
    each = [(y, math.ceil(round(y.high_m / ball_m, 6))) for y in m.yarn if y.length_m > 0]
    total = sum(n for _, n in each)
    facts = [
        say("balls", "colour" if y.colour and len(each) > 1 else "one", colour=y.colour, size=m.size, need=f"{y.length_m:.0f}",
            high=f"{y.high_m:.0f}", n=n, balls="ball" if n == 1 else "balls", ball=f"{ball_m:.0f}")
        for y, n in each
    ]  # fmt: skip
    facts += [say("balls", "length"), say("balls", "swatch")]
    heading = say("balls", "heading", n=total, balls="ball" if total == 1 else "balls")
    return Answer(heading, tuple(facts), (), say("balls", "text", facts=" ".join(facts)))
