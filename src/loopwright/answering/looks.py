"""It does not look as it should: "her crown ruffles", "her edges slant"."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, get_args

from loopwright.answering.answer import Answer, Cause
from loopwright.answering.phrases import cause, look, looks, say
from loopwright.model.report import Report, RowReport
from loopwright.terms import dialect

Look = Literal["ruffles", "cups", "narrows", "slants", "travels", "corners", "waves", "ripple"]
LOOKS: tuple[Look, ...] = get_args(Look)
_DISC = ("ruffles", "cups", "corners")
_NEAR = 0.05  # of the rate at which a round lies flat; "judge over several rounds": what is nearer settles


@dataclass(frozen=True, slots=True)
class LooksAsked:
    """What is asked: how a section looks in a size, by index. `stitch_mm`, `row_mm`: the pattern's gauge, where it tells one."""

    look: Look
    size: int
    section: str | None
    stitch_mm: float | None = None
    row_mm: float | None = None
    terms: str = "us"


def it_looks(report: Report, asked: LooksAsked) -> Answer:
    """Why a section may look so, from the counts of its rows and the trade's rules. Raises ValueError for one that there is not.

    What is said is in phrases.toml, with its sources.
    """
    rows = [r for r in report.rows if r.section == asked.section and r.counts[asked.size] is not None]
    if asked.look not in looks() or not rows:
        raise ValueError("no such look, or no such section")
    facts = tuple(_facts(rows, asked, "round" if _round(report, asked) else "row"))
    slots = {"stitch": _stitch(rows, asked), "per": _growth(rows, asked.size)[0] or "its number of"}
    told = look(asked.look)
    keys = told.get("rounds", told["causes"]) if _round(report, asked) else told["causes"]
    causes = tuple(cause(key, **slots) for key in keys)
    return Answer(str(told["heading"]), facts, causes, _text(facts, causes))


def _round(report: Report, asked: LooksAsked) -> bool:
    """Whether the section is worked in rounds that are not turned."""
    fabric = report.fabrics[asked.size] if asked.size < len(report.fabrics) else None
    rows = [r for r in fabric.rows if r.section == asked.section] if fabric is not None else []
    return bool(rows) and not any(r.turned for r in rows)


def _stitch(rows: Sequence[RowReport], asked: LooksAsked) -> str:
    kinds = Counter({k: sum(r.made.get(k, [0] * 99)[asked.size] or 0 for r in rows) for r in rows for k in r.made})
    plain = [k for k, n in kinds.most_common() if n and k not in ("ch", "ch-sp", "group", "repeat", "sl st")]
    return dialect(asked.terms).term(plain[0]).short if plain else "st"


def _growth(rows: Sequence[RowReport], size: int) -> tuple[int, RowReport | None]:
    """By how many stitches its rounds grow, most often, and the last that does; 0 and None where none grows."""
    steps = [(b, (b.counts[size] or 0) - (a.counts[size] or 0)) for a, b in pairwise(rows)]
    grown = Counter(n for _, n in steps if n > 0)
    if not grown:
        return 0, None
    return grown.most_common(1)[0][0], next(r for r, n in reversed(steps) if n > 0)


def _facts(rows: Sequence[RowReport], asked: LooksAsked, word: str) -> Iterator[str]:
    per, last = _growth(rows, asked.size)
    where = asked.section or say("looks", "piece")
    if asked.look in _DISC and last is not None:
        yield say("looks", "grows", section=where, per=per, last=last.label or "the last round", n=last.counts[asked.size])
        if asked.stitch_mm and asked.row_mm:
            flat = 2 * math.pi * asked.row_mm / asked.stitch_mm
            key = "flat" if abs(per / flat - 1) < _NEAR else "flat_more" if per > flat else "flat_less"
            yield say("looks", key, flat=f"{flat:.1f}".removesuffix(".0"), per=per)
        if last is not rows[-1]:
            yield say("looks", "keeps", last=last.label or "the last of them", n=rows[-1].counts[asked.size])
    elif asked.look in ("narrows", "slants"):
        same = {r.counts[asked.size] for r in rows[1:]}
        key = "even" if len(same) == 1 else "uneven"
        first, end = rows[0].counts[asked.size], rows[-1]
        yield say("looks", key, section=where, n=end.counts[asked.size], first=first, word=word, label=end.label or f"the last {word}")


def _text(facts: Sequence[str], causes: Sequence[Cause]) -> str:
    first, more = causes[0], causes[1:]
    said = [say("looks", "thanks", facts=" ".join(facts)).strip(), say("looks", "first", title=first.title, see=first.see, mend=first.mend)]
    said += [say("looks", "else", title=c.title, see=c.see, mend=c.mend) for c in more]
    return "\n\n".join(said)
