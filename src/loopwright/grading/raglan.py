"""Yokes: raglan and round, worked from the neck down. Counts at the neck, rows to the underarm, counts where body and sleeves part."""

from __future__ import annotations

from fractions import Fraction

from loopwright.grading.counting import Legal, Number, half_up
from loopwright.grading.spread import even
from loopwright.record import record


@record
class Parts:
    """Stitches of the parts of a yoke in one round or row; `corners` are the raglan lines between them, all together."""

    front: int
    sleeve: int
    back: int
    corners: int = 0

    @property
    def total(self) -> int:
        """All stitches: front, back, two sleeves, corners."""
        return self.front + self.back + 2 * self.sleeve + self.corners


def by_shares(neck_mm: Number, shares: tuple[Number, Number, Number], stitch_mm: Number) -> Parts:
    """Front, sleeve and back as shares of the neck ("9, 2, 9, 2 of 22"), each to whole stitches."""
    front, sleeve, back = (half_up(neck_mm * s / stitch_mm) for s in shares)
    return Parts(front, sleeve, back)


def by_percent(neck: int, corners: int = 8, back_share: Number = Fraction(33, 100), sleeve_of_back: Number = Fraction(1, 4)) -> Parts:
    """A split by rule: a third for the back, a quarter of that for a sleeve, the corners, the front takes what is left.

    Source of the shares: crochetqueen.co, raglans, lesson 4 (2023), its ".025" read as .25. Raises ValueError where no front is left.
    """
    back = half_up(neck * back_share)
    sleeve = int(back * sleeve_of_back)
    front = neck - back - 2 * sleeve - corners
    if front < 1:
        raise ValueError(f"{neck} neck stitches leave none for the front")
    return Parts(front, sleeve, back, corners)


def grown(neck: Parts, increase_rows: int, per_line: int = 2) -> Parts:
    """The parts after so many increase rows; each of the four lines adds `per_line` stitches a row, half of them to either side.

    So front, back and each sleeve gain `per_line` a row (half a line's growth from each of their two lines).
    """
    more = per_line * increase_rows
    return Parts(neck.front + more, neck.sleeve + more, neck.back + more, neck.corners)


def parted(yoke: Parts, underarm: int) -> tuple[int, int]:
    """Stitches of the body and of one sleeve once they part: each takes the underarm's stitches (made once, worked from both sides)."""
    corner = yoke.corners // 2
    return yoke.front + yoke.back + corner + 2 * underarm, yoke.sleeve + corner // 2 + underarm


def rows_to_reach(neck: Parts, body: int, underarm: int, per_line: int = 2) -> int:
    """Increase rows until front, back and underarms come nearest to the body's count; never fewer than none."""
    short = body - 2 * underarm - neck.front - neck.back - neck.corners // 2
    return max(0, half_up(Fraction(short, 2 * per_line)))


def round_yoke_end(body: int, sleeve: int, underarm: int) -> int:
    """Stitches at the end of a round yoke: body + 2 * sleeve - 4 * underarm; each underarm is in the body once and in a sleeve once."""
    return body + 2 * sleeve - 4 * underarm


def round_yoke(neck: int, end: int, increase_rounds: int, legal: Legal | None = None) -> tuple[int, ...]:
    """Counts after each of the increase rounds, growing evenly from the neck to the end, each at the nearest legal count.

    The last is `end` itself. Source for evenly: none, as patterns differ; a start to try on.
    """
    allowed = legal or Legal()
    steps = even(end - neck, increase_rounds)
    counts, at = [], neck
    for step in steps:
        at += step
        counts.append(allowed.nearest(at)[0])
    return (*counts[:-1], end) if counts else ()
