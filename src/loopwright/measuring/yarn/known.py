"""What the heading tells of the yarn: its class, its balls, its colours, a swatch or a piece that was weighed."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import field

from loopwright.grading.gauge.heading import LENGTH, MASS, ball_of, grams_of, lines, metres_of, yarn_class
from loopwright.grading.lengths import NUMBER, number
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.terms import Dialect, dialect
from loopwright.trade.yarn import Weight

_BALLS = re.compile(r"(?P<n>\d{1,3})\s*(?:x\s*\d+\s*g\s*)?(?:balls?|skeins?|hanks?|cones?)\b", re.IGNORECASE)
_HELD = re.compile(r"\b(?:held double|two strands|2 strands|double strand)\b", re.IGNORECASE)
_COLOUR = re.compile(r"\b(?P<letter>[A-H]|MC|CC\d?)\s*\((?P<name>[^()]{1,40})\)")
_WEIGHS = re.compile(r"\b(?:weighs?|weighing|takes?|used?|uses|=)\s*(?:about\s+)?" + MASS, re.IGNORECASE)
_BEFORE_AFTER = re.compile(
    r"(?P<before>\d{1,4}(?:\.\d{1,2})?)\s*g\s+before\b.{0,30}?(?P<after>\d{1,4}(?:\.\d{1,2})?)\s*g\s+after", re.IGNORECASE
)
_USES_LENGTH = re.compile(r"\b(?:takes?|used?|uses)\s*(?:about\s+)?" + LENGTH, re.IGNORECASE)
_STS = re.compile(
    rf"(?P<n>{NUMBER})\s*(?P<noun>[A-Za-z][A-Za-z ]{{0,24}}?)\s*(?:x|×|by|and)\s*(?P<rows>{NUMBER})\s*(?:rows?|rnds?|rounds?)",
    re.IGNORECASE,
)
_OF = re.compile(r"\b(?:of|in)\s+(?P<words>[A-Za-z]+(?: [A-Za-z]+){0,2})", re.IGNORECASE)
_SAMPLE = re.compile(r"(?P<size>.+?)\s*+(?:size\s*+)?(?:weighs?|weighing|=|,)\s*(?:about\s+)?" + MASS, re.IGNORECASE)


@record
class Weighed:
    """A swatch that was weighed or unravelled: rows of so many stitches of one kind (US key). Grams or metres are None where not told."""

    kind: str | None
    stitches: float
    rows: float
    grams: float | None
    metres: float | None
    text: str


@record
class Sample:
    """A finished piece that was weighed: of which size, how heavy."""

    size: str
    grams: float
    text: str


@record
class YarnKnown:
    """The yarn as told. Masses in grams, lengths in metres; None where a thing is not told.

    `metres_per_100g` follows from the ball. `balls`: how many the pattern asks for. `strands`: held together. `colours`: letter to name.
    """

    weight: Weight | None = None
    ball_g: float | None = None
    ball_m: float | None = None
    balls: int | None = None
    strands: int = 1
    colours: Mapping[str, str] = field(default_factory=dict)
    swatches: tuple[Weighed, ...] = ()
    samples: tuple[Sample, ...] = ()
    text: str = ""

    @property
    def metres_per_100g(self) -> float | None:
        """Metres in 100 g by the label, None where it tells not both."""
        return 100 * self.ball_m / self.ball_g if self.ball_g and self.ball_m else None

    @property
    def usual_metres_per_100g(self) -> float | None:
        """By the label, else the middle of the class."""
        if self.metres_per_100g is not None or self.weight is None:
            return self.metres_per_100g
        low, high = self.weight.metres_per_100g
        return math.sqrt(low * high)


def yarn_known(document: Document) -> YarnKnown:
    """Everything the heading tells of the yarn. Never raises; nothing told gives an empty record."""
    told = [line.value for line in lines(document, "yarn", "materials", "you will need", "yarn needed")]
    terms = dialect(document.terms)
    swatches = tuple(s for line in lines(document, "swatch", "gauge", "tension") if (s := weighed(line.value, terms)) is not None)
    samples = tuple(p for line in lines(document, "sample", "weighed") if (p := _sample(line.value)) is not None)
    known = yarn_of("; ".join(told))
    return YarnKnown(known.weight, known.ball_g, known.ball_m, known.balls, known.strands, known.colours, swatches, samples, known.text)


def yarn_of(words: str) -> YarnKnown:
    """The yarn that the words of a line tell: "DK, wool, 2 balls of 50 g / 120 m each, in A (stone) and B (mauve)"."""
    grams, metres = ball_of(words) or (None, None)
    balls = sum(int(m["n"]) for m in _BALLS.finditer(words))
    colours = {m["letter"]: m["name"].strip() for m in _COLOUR.finditer(words)}
    return YarnKnown(
        yarn_class(words) if words else None, grams, metres, balls or None,
        2 if _HELD.search(words) else 1, colours, text=words.strip(),
    )


def weighed(words: str, terms: Dialect) -> Weighed | None:
    """A weighed swatch: "20 sts x 20 rows of sc weighs 6 g", "... 50 g before, 44 g after", "... takes 12 m"; None for another line."""
    size = _STS.search(words)
    if size is None:
        return None
    between, mass, length = _BEFORE_AFTER.search(words), _WEIGHS.search(words), _USES_LENGTH.search(words)
    grams = float(between["before"]) - float(between["after"]) if between else grams_of(mass) if mass else None
    metres = metres_of(length) if length else None
    if not (grams and grams > 0) and not (metres and metres > 0):
        return None
    stitches, rows = float(number(size["n"])), float(number(size["rows"]))
    named = terms.kind_of(size["noun"].strip())
    if named is None and (m := _OF.search(words)):
        tokens = m["words"].split()
        named = next((k for many in range(len(tokens), 0, -1) if (k := terms.kind_of(" ".join(tokens[:many])))), None)
    if not 1 <= stitches * rows <= 1_000_000:
        return None
    return Weighed(named, stitches, rows, grams if grams and grams > 0 else None, metres, words.strip())


def _sample(words: str) -> Sample | None:
    m = _SAMPLE.match(words.strip())
    if m is None or grams_of(m) <= 0:
        return None
    size = re.sub(r"^(?:the|our|size)\s+|\s+size$", "", m["size"].strip(), flags=re.IGNORECASE)
    return Sample(size, grams_of(m), words.strip())
