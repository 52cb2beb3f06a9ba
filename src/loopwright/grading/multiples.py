"""Multiples and foundation chains: repeat, edge stitches and turning chain kept as three numbers, since makers stumble over their sum."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import reduce

from loopwright.grading.counting import Number
from loopwright.record import record


@record
class Multiple:
    """A stitch pattern's "multiple of m + e": `repeat` stitches, `edge` stitches once, `turning` chains more in the foundation.

    `turning` is what the foundation chain has beyond its stitches: 1 for sc in the 2nd chain, 2 for dc in the 4th with ch 3 as a stitch.
    """

    repeat: int
    edge: int = 0
    turning: int = 0

    def stitches(self, repeats: int) -> int:
        """Stitches of a row: m * n + e."""
        return self.repeat * repeats + self.edge

    def chain(self, repeats: int) -> int:
        """Foundation chain: stitches and turning chain."""
        return self.stitches(repeats) + self.turning

    def repeats_in_chain(self, chain: int) -> int | None:
        """How many repeats a chain holds; None where it does not fit."""
        n, rest = divmod(chain - self.edge - self.turning, self.repeat)
        return n if rest == 0 and n >= 0 else None

    def repeats_within(self, chain: Number) -> int:
        """The most repeats that need no more than `chain` chains."""
        return max(0, math.floor((chain - self.edge - self.turning) / self.repeat))

    def repeats_to_cover(self, width_mm: Number, repeat_mm: Number) -> int:
        """The fewest repeats, each measured as `repeat_mm`, that are at least `width_mm` wide (the way of a blanket)."""
        return math.ceil(width_mm / repeat_mm)


def stitches_from_chain(chain: int, first_in: int, *, counts: bool) -> int:
    """Stitches worked into a chain when the first goes into the `first_in`th chain from the hook.

    The chains before it are passed over; they are a stitch when `counts`: chain - first_in + 1, and 1 more.
    """
    return chain - first_in + 1 + (1 if counts else 0)


def chain_for_stitches(stitches: int, first_in: int, *, counts: bool) -> int:
    """The other way round: the chain for so many stitches."""
    return stitches + first_in - 1 - (1 if counts else 0)


def times_in_all(worked: int, repeated: int) -> int:
    """"Repeat 6 times" after 3 were worked is 9 in all, not 6."""
    return worked + repeated


def repeat_row(plain: int, repeats: int, made_per_event: int = 2, taken_per_event: int = 1) -> tuple[int, int]:
    """Stitches that a row of (plain, event) repeats takes and makes: an increase takes 1 and makes 2, a decrease takes 2 and makes 1."""
    return (plain + taken_per_event) * repeats, (plain + made_per_event) * repeats


def common_multiple(takes: Iterable[int]) -> int:
    """The multiple that rows with several repeats need together: the least common multiple of what each repeat takes."""
    return reduce(math.lcm, takes, 1)
