"""Foundation chains whose length the words leave open: "ch a multiple of 4 plus 2", "chain an even number", "a chain of the desired length"."""

from __future__ import annotations

import re

from loopwright.model.tree import Num
from loopwright.notation.cursor import Cursor

WORDS = 24  # that tell a length and its sample
_STITCHES = r"(?: (?:sts?|stitches|chs?|chains?))?"
_MULTIPLE = re.compile(
    rf"(?:in )?(?:an? |any )?multiples? of (?P<every>\d{{1,3}}){_STITCHES}(?:(?: ,)? (?:\+|plus|and) (?P<plus>\d{{1,2}})(?: (?:sts?|stitches|chs?|chains?|more|extra)){{0,2}}(?![\d/]))?(?: ,? ?(?:\+|plus) (?P<more>\d|one|two|three)(?: more)?(?= |$)(?! (?:chs?|chains?)\b))?"
    r"(?: ?,? (?:\+|plus|and|add) (?P<turn>\d{1,2})(?: (?:chs?|chains?|sts|more|extra)){0,2} (?:for|to) (?:the |your )?(?:turn\w*|base\w*|found\w*|beg\w*|start\w*)(?: (?:chs?|chain|row))?)?")
_PARITY = re.compile(rf"(?:an |any )?(?P<parity>even|odd|uneven) (?:number|amount)(?: of)?{_STITCHES}")
_WANTED = r"(?:desired|required|needed|wanted|preferred|chosen)"
_ANY = re.compile(
    rf"(?:any (?:number|length|amount|width)(?: of)?{_STITCHES}|(?:to |for |of )?(?:the |a |your )?{_WANTED} (?:number|length|amount|width)(?: of)?{_STITCHES}"
    rf"|(?:to |for |of )?(?:the |a |any )?(?:number|length|width) (?:{_WANTED}|you (?:want|like|need|wish))|as long as (?:{_WANTED}|you (?:want|like|need|wish)))")
_SAMPLE = re.compile(r"(?: ,)? \( (?:[a-z.']+ |[:=,] ){0,5}(?P<n>\d{1,3})(?: (?!cm|mm|in|inch|inches)[a-z.]+){0,4}(?: \.)? \)")


def _number(told: str | None) -> int:
    """ "1", "one"; 0 of nothing."""
    return 0 if told is None else int(told) if told.isdigit() else ("one", "two", "three").index(told) + 1


def open_length(cur: Cursor) -> tuple[Num, int, int] | None:
    """The length that stands behind "ch", as (number of the sample less `plus`, every, plus); nothing taken where a number is told or nothing is.

    The number has no value where no sample is told; `every` is 1 where any length will do.
    """
    start = cur.at
    cur.skip("of", "loosely")
    words = cur.lows[cur.at : cur.at + WORDS]
    said = " ".join(words)
    m = _MULTIPLE.match(said) or _PARITY.match(said) or _ANY.match(said)
    if m is None or said[m.end() : m.end() + 1] not in ("", " "):
        cur.at = start
        return None
    told = m.groupdict()
    every = 2 if told.get("parity") else int(told.get("every") or 1)
    plus = int(told.get("parity") in ("odd", "uneven")) + int(told.get("plus") or 0) + int(told.get("turn") or 0) + _number(told.get("more"))
    sample = _SAMPLE.match(said, m.end())
    n = int(sample["n"]) if sample is not None else 0
    end = sample.end() if sample is not None and n > plus and every and (n - plus) % every == 0 else m.end()
    if not every:
        cur.at = start
        return None
    cur.at += len(said[:end].split(" "))
    return Num((n - plus,) if end > m.end() else ()), every, plus
