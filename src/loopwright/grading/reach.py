"""What the number of a blank reaches: how much one more brings, which rows come with it, what is there whatever the number is.

Rows are as tall as they are measured: by the kinds of their stitches, those before them too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import field

from loopwright.grading.bodies import Measure
from loopwright.grading.choose import Run
from loopwright.grading.fit import Fit, Linear
from loopwright.grading.gauge import Gauge
from loopwright.grading.heights import Heights
from loopwright.grading.stitched import opening_mm
from loopwright.grading.structure import NOTHING, Spanned, Structure, Use
from loopwright.record import record


@record
class Setting:
    """What all sentences stand on: sizes, gauge, the rows, and where measurements are looked up.

    `heights`: how tall rows and how wide stitches are, per size; empty where nothing tells it. `rows_told` and `stitches_told`: whether
    somebody measured the height of a row, the width of a stitch.
    """

    sizes: Sequence[str]
    gauge: Gauge
    plan: Structure
    measure: Measure
    text: str = ""
    heights: Sequence[Heights] = field(default=())
    rows_told: bool = False
    stitches_told: bool = False


class UnusableError(Exception):
    """A sentence that cannot be used here; holds the finding's code and words."""

    def __init__(self, code: str, **facts: object) -> None:
        super().__init__(code)
        self.code = code
        self.facts = facts


@record
class Reach:
    """As in `choose.Sought`: mm for one more, the rows told by numbers, mm that are always there, rows before in number."""

    step_mm: float
    runs: tuple[Run, ...] = ()
    const_mm: float = 0.0
    before: Linear = NOTHING


def reach(fit: Fit, size: int, setting: Setting) -> Reach:
    """For one blank in one size. Raises UnusableError where the gauge does not tell it."""
    if fit.unit == "row":
        if not setting.rows_told or not setting.heights:
            raise UnusableError("G005")
        return _of_rows(fit, setting.plan, setting.heights[size])
    if fit.unit == "repeat":
        if setting.gauge.repeat_mm is None:
            raise UnusableError("G006", what="repeats")
        return Reach(setting.gauge.repeat_mm)
    if setting.stitches_told and setting.heights:
        return _of_stitches(fit, setting.plan, setting.heights[size])
    if setting.gauge.repeat_mm is not None and fit.multiple > 1:
        return Reach(setting.gauge.repeat_mm / fit.multiple)
    raise UnusableError("G006", what="stitches")


def _of_stitches(fit: Fit, plan: Structure, heights: Heights) -> Reach:
    sizes = heights.sizes
    if fit.opening:
        spanned = plan.spanned.get(fit.blank, Spanned(1, 1))
        chains, skipped = (spanned.chains, spanned.skipped) if spanned.chains or spanned.skipped else (1, 1)
        return Reach(opening_mm(chains, skipped, sizes), const_mm=opening_mm(spanned.more_chains, spanned.more_skipped, sizes))
    if fit.unit == "ch":
        return Reach(sizes.width("ch"))
    return Reach(heights.width(plan.counted.get(fit.blank, ())))


def _of_rows(fit: Fit, plan: Structure, heights: Heights) -> Reach:
    times = 2 if fit.across else 1
    use = plan.uses.get(fit.blank)
    if use is None or use.role == "count":
        return Reach(heights.sizes.row_mm * times)
    turn = heights.cycle(use.item)
    own = Run(fit.blank, _times(turn, times), use.per, 1 - use.first if use.role == "last row" else 0)
    step = sum(turn) / len(turn) * times * use.per
    if fit.way != "until":
        return Reach(step, (own,), times * _above_mm(use, heights))
    in_section = _in_section(fit, use)
    runs, const = [own], 0.0
    for stretch in use.section_rows if in_section else use.piece_rows:
        more = int(sum(f for f, a in stretch.rows.terms if a.kind == "one"))
        blanks = [(a.name, int(f)) for f, a in stretch.rows.terms if a.kind == "blank"]
        if not blanks:
            const += heights.tall_mm(stretch.item, more)
        runs += [Run(name, _times(heights.cycle(stretch.item), times), per, more) for name, per in blanks]
    return Reach(step, tuple(runs), times * const, use.before_in_section if in_section else use.before_in_piece)


def _times(turn: tuple[float, ...], times: int) -> tuple[float, ...]:
    return tuple(h * times for h in turn)


def _in_section(fit: Fit, use: Use) -> bool:
    """Whether "until … measures" names the section that the rows stand in; the whole piece is meant otherwise."""
    section, subject = (use.section or "").lower(), fit.subject or ""
    return bool(section and subject) and (subject in section or section in subject) and not fit.from_centre


def _above_mm(use: Use, heights: Heights) -> float:
    """The rows that a range's number counts besides its own, together: "Rnds 4-{n}" has the three rows written before it."""
    missing = use.first - 1 if use.role == "last row" else 0
    found = 0.0
    for stretch in reversed(use.section_rows or use.piece_rows):
        if missing <= 0 or any(a.kind == "blank" for _, a in stretch.rows.terms):
            break
        rows = int(sum(f for f, _ in stretch.rows.terms))
        taken = min(rows, missing)
        found += heights.tall_mm(stretch.item, rows) - heights.tall_mm(stretch.item, rows - taken)
        missing -= taken
    own = heights.cycle(use.item)
    return found + max(0, missing) * sum(own) / len(own)


def before(fit: Fit, plan: Structure) -> Linear:
    """Rows worked before those that the blank tells, for "until" sentences."""
    use = plan.uses.get(fit.blank)
    if fit.way != "until" or use is None or use.role == "count":
        return Linear()
    return use.before_in_section if _in_section(fit, use) else use.before_in_piece
