"""Shaping rows among plain ones.

"Dec 1 st at each end of every 4th row 3 times, then every 3rd row twice", "rep dec rnd every 6th rnd until 40 sts remain", "dec 1 st at
each end 8 times, evenly spaced over the next 52 rows". Common practice, no source: the forms were met in printed leaflets and books.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Num, RowOrder, Spacing
from loopwright.notation.orders import IN_WORDS, MOST, MOST_STITCHES, number
from loopwright.notation.scanner import words as tables
from loopwright.record import record
from loopwright.source.expressions import Expression

MOST_SPACINGS = 8
_ROWS = r"(?:rows?|rnds?|rounds?|rds?)\b\.?"
_LIST = r"(?:\s*[(\[][\dA-Za-z\s,:;–-]+[)\]])?"
_N = rf"(?:(?:\d{{1,9}}|[–—-](?=\s*[(\[])){_LIST}|\{{[^{{}}\n]+\}}|{IN_WORDS})"
_ORDINALS = "|".join(tables()["ordinals"])
_ORD = r"(?:st|nd|rd|th)\b"
_KTH = rf"(?:\{{[^{{}}\n]+\}}(?:{_ORD})?|(?:\d{{1,3}}(?:{_ORD})?|[–—-](?=\s*[(\[])){_LIST}|other|even|odd|alt(?:ernate\b|\.|\b)|(?:{_ORDINALS})\b)"
_NAMED_KTH = rf"(?:\d{{1,3}}{_ORD}{_LIST}|other|alt(?:ernate\b|\.|\b)|(?:{_ORDINALS})\b)"
_FOLL = r"(?:foll(?:owing\b|\.|\b)\s*)?"
_TIMES = rf"(?:(?P<n>{_N})\s*(?:more\s+)?(?:times?\b|x\b|×)|(?P<once>once|twice|thrice)\b)(?:\s+more\b)?(?P<all>\s+(?:in\s+all|in\s+total|altogether)\b)?"
_ONE = Expression(
    rf"""\s*+,?+\s*+(?:(?:on|of|in|at)\s+)?(?P<next>(?:the\s+)?(?:next|this)\s+(?:{_ROWS}\s*)?(?:and|,|&)\s+)?(?:then\s+)?(?:(?:on|of|in|at)\s+)?
    (?:every|each)\s+{_FOLL}(?P<k>{_KTH})?\s*{_FOLL}{_ROWS}(?:\s*,?\s*(?:for\s+)?(?P<total>a\s+total\s+of\s+)?{_TIMES})?
    | \s*+,?+\s*+(?:(?:on|of|in|at)\s+)?(?:the\s+)?next\s+(?:{_ROWS}\s*)?(?:and|&)\s+(?:(?:on|of|in|at)\s+)?(?:the\s+)?foll(?:owing|\.)?\s+(?:(?:(?P<fn>{_N})\s*)?(?P<fk>{_NAMED_KTH})|(?P<frows>{_N}))\s*{_ROWS}
    | \s+(?:of|on|in)\s+(?:each\s+of\s+)?(?:the\s+)?(?:next|following)\s+(?P<many>{_N})\s*{_ROWS}""",
    re.IGNORECASE | re.VERBOSE,
)
_THEN = Expression(r"\s*(?:[,;]\s*(?:and\s+)?(?:then\s+)?|and\s+(?:then\s+)?|then\s+)(?=(?:(?:on|of|in|at|then)\s+)*(?:every|each)\b)", re.IGNORECASE)
_OVER = Expression(
    rf"""\s*+,?+\s*+(?:
      {_TIMES},?\s*(?:evenly(?:\s+spaced|\s+spread)?|spaced\s+evenly|spread\s+evenly)
        (?:\s+(?:over|across|in|within|throughout)\s+(?:the\s+)?(?:next\s+|these\s+|those\s+)?(?:(?P<m>{_N})\s*)?{_ROWS})?
    | (?:evenly(?:\s+spaced|\s+spread)?|spaced\s+evenly)\s+(?:over|across|in|within)\s+(?:the\s+)?(?:next\s+)?(?P<m2>{_N})\s*{_ROWS}\s*,?\s*
        (?P<n2>{_N})\s*times\b
    )""",
    re.IGNORECASE | re.VERBOSE,
)
_AGAIN = Expression(
    rf"(?:(?:then|now|continue|cont\.?|keep)\s+)*(?:and\s+)?(?:rep(?:eat(?:ing)?)?\.?|work(?:ing)?)\s+(?:as\s+)?(?:the\s+|this\s+|these\s+)?(?:(?P<op>dec|inc)(?:\.|r\.?|reas(?:e|ing))?\s+{_ROWS}"
    rf"|{_ROWS}\s*(?P<row>\d{{1,4}})|(?P<last>(?:last|previous|above|shaping)\s+{_ROWS}|{_ROWS}))\s*,?\s*$"
    r"|(?:then\s+|now\s+)?(?:continue|cont\.?|keep\s+on)(?:\s+(?:in\s+this\s+(?:manner|way)|as\s+(?:set|before|established|now)|like\s+this|this\s+way|to|on|in\s+pattern)){0,2}\s*,?\s*(?:and\s+)?(?P<same>dec|inc)(?:\.|r\.?|reas(?:e|ing))?\s*,?\s*$",
    re.IGNORECASE,
)
_INLINE = Expression(r"(?:(?:and|then|now|but)\s+)*(?:(?:[sdh]{1,2}c|h?tr)\s+in\s+(?:each|every)\s+st(?:itch)?(?:\s+(?:across|around))?,\s*)?(?:(?:continue|cont\.?|keep|work(?:ing)?)\b[^.;]{0,40}?[\s,])?(?P<body>(?:dec|inc)(?:r|reas)?(?:e|ing)?\b.*)", re.IGNORECASE | re.DOTALL)
_UNTIL = Expression(
    rf"\s*,?\s*(?:until|till|to)\s+(?:there\s+are\s+|you\s+have\s+|only\s+)?(?P<n>{_N})\s*(?:sts?\b\.?|stitches|[sd]\.?\s?c\b\.?|hdc\b|[dh]?\.?\s?tr\b\.?|trebles?\b|doubles?\b(?:\s+crochets?\b)?)?"
    r"(?:\s+(?:remain(?:s|ing)?|rem|are left|left|in all|in\s+(?:the|each)\s+(?:row|round|rnd)|on\s+the\s+(?:row|needle)))?", re.IGNORECASE,
)
_OTHERS_EVEN = Expression(
    rf"\s*+,?+\s*+(?:(?:and|while)\s+)?(?:work(?:ing)?|keeping)\s+(?:all\s+)?(?:the\s+)?(?:other\s+|remaining\s+|{_N}\s+|(?:{_ROWS}\s+)?in\s*between\s*)?(?:{_ROWS}\s*)?(?:in between\s+)?"
    r"(?:even|straight|plain|without (?:shaping|decreasing|increasing)|in pattern)(?:\s+in between)?", re.IGNORECASE,
)
_NEXT_ROWS = re.compile(rf"\b(?:next|following)\s+{_N}\s*{_ROWS}|\bnext\s+(?:{_ROWS}\s*)?(?:and|&)\s+(?:\w+\s+)?(?:the\s+)?foll", re.IGNORECASE)
_COUNTS = {"once": 1, "twice": 2, "thrice": 3}


@record
class Schedule:
    """An order to shape among plain rows.

    `body`: where the words of the shaping itself begin and end, empty where another row is meant; `end`: where the order's words end. Both
    in the words that were given.
    """

    order: RowOrder
    body: tuple[int, int]
    end: int


def schedule(words: str, sizes: int = 1, *, ranged: bool = False, first: int | None = None) -> Schedule | None:
    """What a row's words say of shaping among plain rows; None where they say nothing of it.

    `ranged`: the label tells several rows ("Rows 5-40"), so that times may be left unsaid, and rows too; `first`: the number of the first.
    """
    low = words.lower()
    times = any(w in low for w in ("time", "once", "twice", "thrice"))
    each = times and any(w in low for w in ("each row", "each rnd", "each round", "each foll"))
    if "every" not in low and not each and not (times and "evenly" in low) and _NEXT_ROWS.search(low) is None:
        return None  # what follows is not for the many rows that say nothing of the kind
    return _spaced(words, sizes, ranged=ranged, first=first) or _over(words, sizes, ranged=ranged)


def _spaced(words: str, sizes: int, *, ranged: bool, first: int | None) -> Schedule | None:
    for m in _ONE.finditer(words):
        led = _led(words, m.start(), sizes)
        told = m["k"] or m["n"] or m["once"] or m["many"] or m["fk"] or m["frows"]
        if led is None or not told and _UNTIL.match(words, m.end()) is None:  # "dec 1 st at each end of every row until 4 sts remain"
            continue
        spaced, at, found = [_spacing(m, sizes)], m.end(), m
        while len(spaced) < MOST_SPACINGS and (then := _THEN.match(words, at)) is not None and (more := _ONE.match(words, then.end())) is not None:
            spaced.append(_spacing(more, sizes))
            at, found = more.end(), more
        until = _UNTIL.match(words, at) if found["n"] is None and found["once"] is None else None
        if any(s.times is None for s in spaced[:-1]) or spaced[-1].times is None and until is None and not ranged:
            continue
        order, body = led
        in_all = bool(m["all"] or m["total"]) and not body
        if in_all:  # the one told before counts among them
            spaced[0] = Spacing(spaced[0].every, _one_less(spaced[0].times))
        at = until.end() if until is not None else at
        even = _OTHERS_EVEN.match(words, at)
        ends = number(until["n"], sizes, MOST_STITCHES) if until is not None else None
        rows = RowOrder(
            "shape", order.rows, order.last_n, delta_kind=order.delta_kind, until_sts=ends, spaced=tuple(spaced), at_once=bool(m["next"] or m["fk"] or m["frows"]) or _at_once(m["k"], first),
        )
        return Schedule(rows, body or (0, 0), even.end() if even is not None else at)
    return None


def _over(words: str, sizes: int, *, ranged: bool) -> Schedule | None:
    for m in _OVER.finditer(words):
        led = _led(words, m.start(), sizes)
        rows = _number(m["m"] or m["m2"], sizes) if m["m"] or m["m2"] else None
        if led is None or led[1] is None or rows is None and not ranged:
            continue
        times = Num((_COUNTS[m["once"].lower()],)) if m["once"] else _number(m["n"] or m["n2"], sizes)
        return Schedule(RowOrder("shape", times=times, total_rows=rows), led[1], m.end())
    return None


def _led(words: str, end: int, sizes: int) -> tuple[RowOrder, tuple[int, int] | None] | None:
    """What is done in a shaping row, by the words before: another row, or what they themselves say."""
    said = words[:end]
    again = _AGAIN.fullmatch(said.strip(" ,;"))
    if again is not None:
        if again["op"] or again["same"]:
            return RowOrder("shape", delta_kind=(again["op"] or again["same"]).lower()), None
        return (RowOrder("shape", (int(again["row"]),)) if again["row"] else RowOrder("shape", last_n=1)), None
    inline = _INLINE.fullmatch(said)
    if inline is None or not inline["body"].strip(" ,;"):
        return None
    return RowOrder("shape"), (inline.start("body"), end)


def _at_once(kth: str | None, first: int | None) -> bool:
    """Whether "every even row" begins with the first of them."""
    return first is not None and kth is not None and kth.lower() == ("odd" if first % 2 else "even")


def _spacing(m: re.Match[str], sizes: int) -> Spacing:
    if m["fk"]:  # "next and foll 2 alt rows"
        return Spacing(_kth(m["fk"], sizes), _number(m["fn"], sizes) if m["fn"] else Num((1,)))
    if m["frows"]:  # "next and foll 3 rows"
        return Spacing(Num((1,)), _number(m["frows"], sizes))
    if m["many"]:  # "dec 1 st at beg of next 4 rows": on each of them
        return Spacing(Num((1,)), _number(m["many"], sizes))
    times = Num((_COUNTS[m["once"].lower()],)) if m["once"] else _number(m["n"], sizes) if m["n"] else None
    return Spacing(_kth(m["k"], sizes), times)


def _number(said: str, sizes: int) -> Num | None:
    """One number, or one for each size with a dash where a size has none."""
    listed = re.fullmatch(r"\s*(\d+|[–—-])\s*[(\[]([^)\]]*)[)\]]", said)
    if listed is None:
        return number(said, sizes)
    values = [listed[1], *re.findall(r"\d+|[–—-]", listed[2])]
    return Num(tuple(min(int(v), MOST) if v.isdigit() else None for v in values)) if len(values) == sizes else number(said, sizes)


def _kth(said: str | None, sizes: int) -> Num:
    """ "4th (4th, 3rd)", "other", "third", "{every}th"; every row where nothing is said."""
    if said is None:
        return Num((1,))
    low = said.strip().lower()
    if low.startswith(("other", "alt", "even", "odd")):
        return Num((2,))
    if low in tables()["ordinals"]:
        return Num((int(tables()["ordinals"][low]),))
    return _number(re.sub(rf"(?<=[\d}}]){_ORD}", "", low), sizes) or Num((1,))


def _one_less(times: Num | None) -> Num | None:
    return None if times is None else Num(tuple(None if v is None else max(0, v - 1) for v in times.values), times.blank)
