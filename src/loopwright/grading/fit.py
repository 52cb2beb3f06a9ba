"""Fit sentences: what a blank counts, what it must reach, in which multiple, within which limits. As data, straight from the words."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from loopwright.record import record
from loopwright.source import Span

Unit = Literal["st", "row", "ch", "repeat"]
Way = Literal["around", "measure", "until", "number"]
Side = Literal["", "around", "width", "depth", "height", "length"]


@record
class Atom:
    """One thing that a target is made of: a number, lengths (one or one per size, in mm), a body measurement, a blank."""

    kind: Literal["one", "length", "measure", "blank"]
    name: str = ""
    lengths_mm: tuple[float, ...] = ()


ONE = Atom("one")


@record
class Linear:
    """A sum of atoms, each so many times."""

    terms: tuple[tuple[Fraction, Atom], ...] = ()

    def plus(self, other: Linear, times: Fraction = Fraction(1)) -> Linear:
        """This and so many times the other."""
        return Linear((*self.terms, *((f * times, a) for f, a in other.terms)))

    def times(self, factor: Fraction) -> Linear:
        """Every term so many times."""
        return Linear(tuple((f * factor, a) for f, a in self.terms))

    def blanks(self) -> frozenset[str]:
        """Names of the blanks in it."""
        return frozenset(a.name for _, a in self.terms if a.kind == "blank")

    @property
    def is_length(self) -> bool:
        """Whether it holds a length or a measurement."""
        return any(a.kind in ("length", "measure") for _, a in self.terms)


def count_of(value: int) -> Linear:
    """A plain number as a sum."""
    return Linear(((Fraction(value), ONE),))


def blank_of(name: str) -> Linear:
    """A blank as a sum."""
    return Linear(((Fraction(1), Atom("blank", name)),))


@record
class Fit:
    """One blank's sentence, understood. `multiple` and `rest`: legal are `multiple * n + rest`.

    `way`: around or measure (a length of so many stitches or rows), until (the piece named by `subject` reaches it),
    number (a link to other blanks). `across`: the length is a diameter. `opening`: what is measured goes around an opening.
    `side`: which way the length lies, where the words tell it. `whole`: worked out, it must be a whole number. `kept`: numbers that the
    sentence itself gives for some sizes, by their names.
    """

    blank: str
    sentence: str
    span: Span
    unit: Unit
    way: Way
    target: Linear
    subject: str | None = None
    across: bool = False
    from_centre: bool = False
    opening: bool = False
    side: Side = ""
    multiple: int = 1
    rest: int = 0
    at_least: tuple[Linear, ...] = ()
    at_most: tuple[Linear, ...] = ()
    divides: tuple[str, ...] = ()
    rounding: Literal["nearest", "down", "up"] = "nearest"
    whole: bool = False
    same_parity: bool = False
    kept: tuple[tuple[str, int], ...] = ()

    def kept_in(self, size: str) -> int | None:
        """The number that the sentence gives for a size; None where it leaves that to the choice."""
        wanted = " ".join(size.lower().split())
        return next((n for name, n in self.kept if name == wanted), None)
