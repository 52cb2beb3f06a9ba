"""What a row is told to go on with behind its own words: other rows, shaping."""

from __future__ import annotations

import re
from dataclasses import replace

from loopwright.model.tree import Label, Num, RowOrder
from loopwright.notation.endings import turned_on
from loopwright.notation.orders import number
from loopwright.notation.orders import order as order_of
from loopwright.notation.schedules import schedule
from loopwright.terms import Dialect

_LATER = re.compile(r"[.;]\s+(?=rep|rpt|(?:\d{1,3}|two|three|four|five|six)\s+(?:rows|rounds|rnds)\s+(?:even|straight|without|of(?=\s+[a-z]{2,3}\s*(?:\.|$)))\b|work\s+(?:even|straight|in\s+(?:rounds|rnds|rows)\s+of|\d{1,3}\s+(?:more\s+)?(?:rounds|rnds|rows)|(?:the\s+)?\d{1,3}(?:st|nd|rd|th)\b[^.;]{1,40}\bas\s+(?:given\s+)?(?:for|on|of))\b|cont(?:inue|\.)?\s+(?:in\s+(?:this|the\s+same|same)|thus|(?:in|de)creasing)\b)", re.IGNORECASE)
FOR_ROWS = re.compile(r",?\s*\bfor\s+(?:the\s+next\s+)?(?P<n>\d{1,4}(?:\s*[(\[][\d\s,:;–-]+[)\]])?|two|three|four|five|six|seven|eight|nine|ten)\s+(?:more\s+)?(?:rows?|rnds?|rounds?)(?:\s+more)?\s*\.?\s*$", re.IGNORECASE)
_SHAPE_THEN = re.compile(r"(?:\bthen|[.;])\s++(?=(?:dec|inc)(?:r|reas[a-z]+)?\.?\s+(?:\d|one\b|two\b)[^.;]{3,80}\b(?:every|each|next)\b)", re.IGNORECASE)


def later_order(text: str, at: int, stop: int, sizes: int, which: Dialect) -> tuple[int, RowOrder | None]:
    """A sentence after the row that asks for other rows: "… turn. Rep Rows 2 and 3 4 times"."""
    for m in _LATER.finditer(text[at:stop]):
        words = text[at + m.end() : stop].strip()
        shaped = schedule(words, sizes)
        order = shaped.order if shaped is not None and not shaped.body[1] else order_of(words, sizes, which)
        if order is not None:
            return at + m.start() + 1, order
    return stop, None


def shapes_then(text: str, at: int, stop: int, sizes: int) -> tuple[int, int] | None:
    """Where a row ends and shaping begins that is told behind it: "work even for 4 inches, then inc 1 sc at each end of every 6th row 3 times"."""
    low = text[at:stop].lower()
    if "dec" not in low and "inc" not in low:
        return turned_on(text, at, stop) if "turn;" in low else None
    for m in _SHAPE_THEN.finditer(text, at, stop):
        told = schedule(text[m.end() : stop], sizes)
        if told is not None and not told.body[0] and told.body[1]:
            return m.start() + (text[m.start()] in ".;"), m.end()
    return None


_TO_A_LENGTH = re.compile(
    r"(?:(?:now|then)\s+)?(?:work|continue|cont)\b[^.;()]{0,60}\b(?:until|till|for)\b[^.;]{0,80}?(?:\binch(?:es)?|\bins?|\bcm|\d\s?[\"”])(?:\s[^.;()]{0,60})?[.;]\s+"
    r"(?:on\s+(?:the\s+)?(?:next|following)\s+row,?\s+(?=[a-z(*])|(?=(?!(?:on\s+(?:the\s+)?(?:next|following)|cut|break|fasten|end|finish|join|turn|sew|do|leave|repeat|rep|work|block|press|fold|place|mark|ch\s?\d,?\s+turn)\b)[a-z(*]))", re.IGNORECASE)


def behind_a_length(text: str, at: int, end: int) -> int:
    """Where the row begins that is told behind rows to a length, "Work even until piece measures 5 inches. To shape shoulder, …"; 0 where none is."""
    if "until" not in text[at:end] and "till" not in text[at:end] and " for " not in text[at:end]:
        return 0
    m = _TO_A_LENGTH.match(text, at, end)
    return 0 if m is None else m.end()


def for_rows(said: Label | None, order: RowOrder, words: str, sizes: int) -> Label | None:
    """The label of "continue to increase 15 sts in each round for 2 more rounds": of so many; as it is elsewhere."""
    many = FOR_ROWS.search(words) if order.what == "continue" and order.delta is not None and order.until_sts is None and order.total_rows is None else None
    n = number(many["n"], sizes) if many is not None else None
    return said if n is None else repeated_label(said, n)


def repeated_label(said: Label | None, n: Num) -> Label:
    """ "sc in each st for 3 rnds": a label that stands for so many rows."""
    if said is None or said.first is None or len(n.values) != 1 or (first := said.first.at(0)) is None:
        return Label("none" if said is None else said.kind, how_many=n, text="" if said is None else said.text)
    return replace(said, last=Num((first + (n.values[0] or 1) - 1,)))
