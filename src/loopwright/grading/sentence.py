"""The reader of Fit sentences: a small, tolerant, hand-written parser of trade English.

    sentence = unit what thing? sum clause*  |  sum clause*
    what     = "to go around" | "to go along" | "to fit" | "to measure" | "until" subject "measures"
    thing    = ("an" | "the")? word* ("opening" | "edge") "of"?
    sum      = part (("less" | "minus" | "plus" | "and" | "+" | "-") part)*
    part     = (fraction "of" | n "times" | "twice" | n "%" "of")? atom | n "%"
    atom     = {blank} | length | list of lengths | measurement | number
    clause   = "," ("multiple of" n "plus" n | "even" | "odd" | "at least" sum | "at most" sum | "divided by" n | "divides" {blank}
               | "rounded down" | "rounded up" | "same parity in all sizes" | "across" | "around" | "wide" | "high" | "deep" | "long"
               | "in width" … | "along" thing | "from the centre" | "ease" | "in" size ":" n)

A fraction or a factor takes the next atom only: "a third of head circumference less 1 cm" is (head / 3) - 1 cm.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import cast

from loopwright.grading.fit import ONE, Atom, Fit, Linear, Side, Unit, Way
from loopwright.grading.kept import kept_in
from loopwright.grading.lengths import NUMBER, UNIT, number, unit_mm
from loopwright.grading.words import COUNTS, EDGES, NUMBERS, OPENINGS, PARTS, SIDES
from loopwright.source import Span

_TOKEN = re.compile(
    rf"\{{[^{{}}\n]+\}}|{NUMBER}(?=\s*{UNIT})|{UNIT}(?<!m)(?<!in)(?<!ft)|{NUMBER}|[A-Za-z][A-Za-z'’-]*|[%(),;:+\-−–—\"″”.]", re.IGNORECASE,
)
_NUMBER = re.compile(NUMBER)
_UNIT = re.compile(UNIT, re.IGNORECASE)
_PLUS = frozenset({"plus", "and", "+"})
_LESS = frozenset({"less", "minus", "-", "−", "–", "—"})
_SIDES = frozenset("wide long high deep tall around all in width length height from across of ease with".split())
_ENDS = frozenset({"around", "all", "ease"})
_STOPS = _PLUS | _LESS | frozenset("across from multiple wide long high deep tall rounded at with divided even odd in but".split())

NOWHERE = Span(0, 0)


class NotUnderstoodError(ValueError):
    """A sentence, or a part of it, that the parser does not know. `words` is the part."""

    def __init__(self, words: str) -> None:
        super().__init__(words)
        self.words = words


@dataclass(slots=True)
class _Words:
    """The tokens of a sentence and where the parser stands."""

    tokens: list[str]
    at: int = 0

    def low(self, ahead: int = 0) -> str:
        return self.tokens[self.at + ahead].lower() if self.at + ahead < len(self.tokens) else ""

    def take(self) -> str:
        if self.at >= len(self.tokens):
            raise NotUnderstoodError("the end")
        self.at += 1
        return self.tokens[self.at - 1]

    def skip(self, *words: str) -> bool:
        """Takes these words in a row when they stand next."""
        if all(self.low(i) == w for i, w in enumerate(words)):
            self.at += len(words)
            return True
        return False

    def skip_any(self, *words: str) -> None:
        while self.low() in words:
            self.at += 1

    def rest(self) -> str:
        return " ".join(self.tokens[self.at :])


def parse_fit(blank: str, sentence: str, span: Span = NOWHERE) -> Fit:
    """A Fit sentence as data. Raises NotUnderstoodError with the words that cannot be read."""
    rest, kept = kept_in(sentence)
    w = _Words([m.group().strip() for m in _TOKEN.finditer(re.sub(r"\bper cent\b", "percent", rest, flags=re.IGNORECASE))])
    if not w.tokens:
        raise NotUnderstoodError(sentence.strip() or "nothing")
    w.skip_any("as", "many", "work", "make", "the", "number", "of", "an", "enough")
    fit = Fit(blank, sentence.strip(), span, "st", "number", Linear(), kept=kept)
    if w.low() in ("multiple", "multiples") and w.low(1) == "of":
        fit = _clause(w, fit)
        w.at -= w.low(-1) in COUNTS  # "multiple of 4 sts to go around …": the word tells what is counted, too
    fit = _headed(w, fit)
    fit = replace(fit, target=_sum(w))
    while w.at < len(w.tokens):
        fit = _clause(w, fit)
    if fit.way == "number" and fit.target.is_length:
        fit = replace(fit, way="measure", unit=_unit_of_name(blank))
    return fit


def _headed(w: _Words, fit: Fit) -> Fit:
    """The head of the sentence: what is counted, what it does, and the opening or edge that is measured where one is named."""
    unit, way, subject = _head(w)
    along = w.low(-1) == "along"
    thing = subject if subject is not None else _thing(w) if way != "number" else None
    last = thing.split()[-1] if thing else ""
    opening = unit != "row" and last in OPENINGS
    tall = SIDES.get(w.low(-2), "") if w.low(-1) == "as" else ""  # "is as tall as"
    side = "length" if along or unit != "row" and last in EDGES else tall
    return replace(fit, unit=unit, way=way, subject=thing, opening=opening, side=cast("Side", side))


def _thing(w: _Words) -> str | None:
    """As in "an opening of …", "the neck edge, …": its words, taken; None where the next words name no such thing."""
    for ahead in range(5):
        word = w.low(ahead)
        if not re.fullmatch(r"[a-z'’-]+", word) or word in _STOPS:
            return None
        if word in OPENINGS | EDGES and w.low(ahead + 1) not in SIDES and w.low(ahead + 1) != "circumference":
            words = [w.take().lower() for _ in range(ahead + 1 + (w.low(ahead + 1) in OPENINGS))]
            w.skip_any("of", "that", "which", "measures", "measuring", "is", ",")
            return " ".join(x for x in words if x not in ("a", "an", "the")) or None
    return None


def _unit_of_name(blank: str) -> Unit:
    """What a blank counts when its sentence does not say: its own name tells, stitches otherwise."""
    for word in reversed(blank.lower().split()):
        if word in COUNTS:
            return cast("Unit", COUNTS[word])
    return "st"


def _head(w: _Words) -> tuple[Unit, Way, str | None]:
    unit: Unit | None = None
    if w.low() in COUNTS and w.low(1) not in _PLUS | _LESS:
        unit = cast("Unit", COUNTS[w.take().lower()])
    w.skip_any("as", "needed", "enough", "long", "wide", "nearest", "closest")
    if unit is None and w.low() not in ("to", "until", "till"):
        return "st", "number", None
    if w.skip("until") or w.skip("till"):
        return unit or "row", "until", _subject(w)
    if w.skip("along") or w.skip("to", "go", "along") or w.skip("to", "fit", "along"):
        return unit or "st", "measure", None
    if w.skip("to") or w.low() == "go" and w.low(1) in ("around", "round"):
        if w.low() in ("go", "fit", "reach") and w.low(1) in ("around", "round") or w.low() == "fit":
            w.take()
            w.skip_any("around", "round")
            return unit or "st", "around", None
        w.skip_any("measure", "reach", "be", "cover", "span", "make", "match")
        return unit or "st", "measure", None
    if w.low() in ("around", "round", "for", "over", "measuring", "in"):
        way: Way = "around" if w.take().lower() in ("around", "round") else "measure"
        w.skip_any("long", "wide", "as")
        return unit or "st", way, None
    return unit or "st", "measure", None


def _subject(w: _Words) -> str | None:
    words: list[str] = []
    while w.at < len(w.tokens) and w.low() not in ("measures", "measure", "is", "reaches"):
        words.append(w.take())
    if w.at >= len(w.tokens):
        raise NotUnderstoodError("until " + " ".join(words))
    w.take()
    w.skip_any("the", "work")
    if w.low() == "as" and w.low(2) == "as":  # "is as tall as …"
        w.at += 3
    name = " ".join(x for x in words if x.lower() not in ("the", "work's"))
    return name.lower() or None


def _sum(w: _Words) -> Linear:
    total = _part(w)
    while True:
        here = w.at
        joined = w.skip(",")
        sign = 1 if w.low() in _PLUS else -1 if w.low() in _LESS else _ease(w)
        if not sign or joined and w.low(1) in ("multiple", "at", "even", "odd", "rounded", "divided", "not", "no"):
            w.at = here
            return total
        w.take()
        if _percent_next(w):
            share = Fraction(number(w.take())) / 100
            w.take()
            w.skip_any("ease", "of", "negative", "positive", "it", "that")
            total = total.times(1 + sign * share)
            continue
        total = total.plus(_part(w), Fraction(sign))


def _ease(w: _Words) -> int:
    """The sign of "with 3 cm of negative ease", 0 where no ease is told."""
    if w.low() != "with":
        return 0
    rest = [w.low(i) for i in range(1, 8)]
    if "ease" not in rest:
        return 0
    return -1 if "negative" in rest[: rest.index("ease")] else 1


def _percent_next(w: _Words) -> bool:
    return bool(_NUMBER.fullmatch(w.low())) and w.low(1) in ("%", "percent") and w.low(2) != "of"


def _part(w: _Words) -> Linear:
    """A factor, if any, and the atom after it."""
    w.skip_any("the", "same", "as", "number", "equal", "to", "about")
    if w.skip("twice") or w.skip("double"):
        return _atom(w).times(Fraction(2))
    factor = _fraction(w)
    if factor is not None:
        return _atom(w).times(factor)
    if (_NUMBER.fullmatch(w.low()) or w.low() in NUMBERS) and w.low(1) in ("times", "x", "×"):
        many = _plain_number(w)
        w.take()
        return _atom(w).times(many)
    if _NUMBER.fullmatch(w.low()) and w.low(1) in ("%", "percent"):
        share = number(w.take()) / 100
        w.take()
        w.skip_any("of")
        return _atom(w).times(share)
    return _atom(w)


def _fraction(w: _Words) -> Fraction | None:
    """A part of the next atom, as in "a third of", "four fifths of", "half", "3/4 of"."""
    here = w.at
    top = 1
    if w.low() in ("a", "an"):
        w.take()
    elif w.low() in NUMBERS and w.low(1) in PARTS:
        top = NUMBERS[w.take().lower()]
    if w.low() in PARTS:
        share = Fraction(top, PARTS[w.take().lower()])
        w.skip_any("of", "the", "as", "many")
        return share
    w.at = here
    if re.fullmatch(r"\d+/\d+|[½¼¾⅓⅔⅛⅜⅝⅞]", w.low()) and w.low(1) == "of":
        share = number(w.take())
        w.take()
        w.skip_any("the")
        return share
    return None


def _plain_number(w: _Words) -> Fraction:
    word = w.take()
    if word.lower() in NUMBERS:
        return Fraction(NUMBERS[word.lower()])
    try:
        return number(word)
    except ValueError:
        raise NotUnderstoodError(word) from None


def _atom(w: _Words) -> Linear:
    w.skip_any("the", "of", "a", "an", "number", "same")
    word = w.low()
    if word.startswith("{"):
        name = " ".join(w.take()[1:-1].split())
        w.skip_any("sts", "st", "stitches", "rows", "rnds", "rounds", "row", "rnd")
        return Linear(((Fraction(1), Atom("blank", name)),))
    if _NUMBER.fullmatch(word) or word in NUMBERS:
        return _amount(w)
    name = _measure(w)
    if w.low() == "of" and _NUMBER.fullmatch(w.low(1)):  # "a head of 52 cm"
        w.take()
        return _amount(w)
    part = Linear(((Fraction(1), Atom("measure", name)),))
    if w.low() == "divided" and w.low(1) == "by" and _NUMBER.fullmatch(w.low(2)) and number(w.low(2)):
        w.at += 2
        return part.times(1 / _plain_number(w))  # "head circumference divided by 3 less 1 cm": the measurement alone
    return part


def _amount(w: _Words) -> Linear:
    """A number, a length, or lengths per size: "15 (17, 19, 22) cm"."""
    values = [_plain_number(w)]
    if w.low() in ("(", "["):
        here = w.at
        w.take()
        while w.at < len(w.tokens) and w.low() not in (")", "]"):
            if _NUMBER.fullmatch(w.low()):
                values.append(number(w.take()))
            else:
                w.take()
        if not w.skip(")") and not w.skip("]"):
            w.at = here
            raise NotUnderstoodError(w.rest())
    if _UNIT.fullmatch(w.low()):
        mm = unit_mm(w.take())
        w.skip_any("of", "negative", "positive", "ease")
        return Linear(((Fraction(1), Atom("length", "", tuple(float(v * mm) for v in values))),))
    w.skip_any("sts", "st", "stitches", "rows", "rnds", "rounds", "more", "ch")
    if len(values) > 1:
        return Linear(((Fraction(1), Atom("one", "", tuple(float(v) for v in values))),))
    return Linear(((values[0], ONE),))


def _measure(w: _Words) -> str:
    words: list[str] = []
    while w.at < len(w.tokens) and w.low() not in _STOPS and re.fullmatch(r"[a-z'’-]+", w.low()) and w.low() not in _ENDS:
        if w.low() == "of" and _NUMBER.fullmatch(w.low(1)):
            break
        words.append(w.take().lower())
    if not words:
        raise NotUnderstoodError(w.rest() or "the end")
    if w.skip("in", "circumference"):
        words.append("circumference")
    return " ".join(words)


def _clause(w: _Words, fit: Fit) -> Fit:
    """One more thing said of the number, after the sum."""
    w.skip_any(",", ";", ".", "and", "in", "a", "an", "to", "the", "be", "must", "is", "with", "but", "it", "ease")
    if w.at >= len(w.tokens):
        return fit
    if w.skip("across") or w.skip("diameter") or w.skip("wide", "across"):
        return replace(fit, across=True) if fit.unit == "row" else fit
    if w.skip("from"):
        w.skip_any("the", "its")
        if w.low() in ("centre", "center", "middle", "crown", "top", "beginning", "start", "bottom"):
            w.take()
            return replace(fit, from_centre=True)
        raise NotUnderstoodError("from " + w.rest())
    if w.skip("multiple", "of") or w.skip("multiples", "of") or w.skip("divisible", "by"):
        return _multiple(w, fit)
    if w.skip("even") or w.skip("odd"):
        odd = w.low(-1) == "odd"
        w.skip_any("number", "of", "sts", "rows", "rnds")
        return replace(fit, multiple=2, rest=int(odd))
    if w.skip("along"):
        thing = _thing(w)
        if thing is None:
            raise NotUnderstoodError(f"along {w.rest()}")
        return replace(fit, side="length", subject=fit.subject or thing)
    limits = _limit(w, fit)
    return limits if limits is not None else _manner(w, fit)


def _multiple(w: _Words, fit: Fit) -> Fit:
    m = _plain_number(w)
    w.skip_any("sts", "rows", "rnds", "ch")
    rest = Fraction(0)
    while w.low() in _PLUS | _LESS and (_NUMBER.fullmatch(w.low(1)) or w.low(1) in NUMBERS):
        sign = 1 if w.take().lower() in _PLUS else -1
        rest += sign * _plain_number(w)
        w.skip_any("sts", "rows", "rnds", "ch", "more")
    if m.denominator != 1 or rest.denominator != 1 or m < 1 or m > 10_000:
        raise NotUnderstoodError(f"multiple of {m}")
    return replace(fit, multiple=int(m), rest=int(rest))


def _limit(w: _Words, fit: Fit) -> Fit | None:
    never = w.low() in ("not", "no") and w.low(2) == "than"
    if w.skip("at", "least") or never and w.low(1) in ("less", "fewer"):
        w.at += 3 if never else 0
        return replace(fit, at_least=(*fit.at_least, _sum(w)))
    if w.skip("at", "most") or never and w.low(1) == "more":
        w.at += 3 if never else 0
        return replace(fit, at_most=(*fit.at_most, _sum(w)))
    if w.skip("divides"):
        found = _atom(w).blanks()
        if not found:
            raise NotUnderstoodError("divides")
        return replace(fit, divides=(*fit.divides, *found))
    return None


def _manner(w: _Words, fit: Fit) -> Fit:
    if w.skip("divided", "by"):
        by = _plain_number(w)
        if by == 0:
            raise NotUnderstoodError("divided by 0")
        return replace(fit, target=fit.target.times(1 / by), whole=True)
    if w.skip("rounded"):
        how = w.take().lower() if w.at < len(w.tokens) else ""
        if how in ("down", "up"):
            return replace(fit, rounding="down" if how == "down" else "up")
        if how == "to":
            w.skip_any("nearest")
        return fit
    if w.skip("same", "parity") or w.skip("all", "even", "or", "all", "odd"):
        w.skip_any("in", "all", "sizes")
        return replace(fit, same_parity=True)
    if w.low() in _SIDES:
        word = w.take().lower()
        side = "around" if word == "around" else SIDES.get(word, fit.side)
        return replace(fit, side=cast("Side", side))
    raise NotUnderstoodError(w.rest())
