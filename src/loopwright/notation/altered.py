"""Rows told by another row with something altered: "same as Rnd 3, having one more group on each side", "making 7 dc instead of 5 dc in each shell".

Common practice, no source: the forms were met in leaflets.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Num, RowOrder, Swap
from loopwright.record import changed
from loopwright.source.expressions import Expression
from loopwright.terms import Dialect

_LEAD = r"\b(?:having|making|working|with)\s+"
_GROWS = Expression(
    r"\b(?:having|with)\s+(?:1|one)\s+(?:(?P<first>more|less|fewer)\s+)?(?:(?!st|stitch|[sdht]{1,2}c\b|tr\b)[\w-]+\s+)?(?:group|loop|shell|sp|space)s?(?:\s+(?P<last>more|less|fewer))?\s+(?:on|in|between|at|to)\b", re.IGNORECASE)
_REMAINS = Expression(r"\buntil\s+(?:only\s+)?(?P<n>\d{1,2}|one|two)\s+(?:ch-\d\s+)?loops?\s+(?:remain|is\s+left|are\s+left)", re.IGNORECASE)
_STITCHES = Expression(
    rf"{_LEAD}(?P<new>\d{{1,2}})\s+(?P<kind>[a-z]{{2,3}}|[sdh]\s?c)\s+(?:instead|in\s+place)\s+of\s+(?P<old>\d{{1,2}})(?:\s+(?P=kind))?(?:\s+in\s+(?:each\s+|every\s+|the\s+)?(?P<within>shell|fan|scallop|petal|cluster|group)s?)?\b", re.IGNORECASE)
_CHAINS = Expression(
    rf"{_LEAD}(?:ch[- ]?(?P<n>\d{{1,2}})|(?P<m>\d{{1,2}})[- ]?ch)\b(?:[- ]?(?:loops?|sps?)\b)?\s*(?:(?:instead|in\s+place)\s+of\s+(?:ch[- ]?)?(?P<old>\d{{1,2}})|(?:in|for)\s+(?:each|all|every)\s+loops?|throughout|(?=[.,;]|$))", re.IGNORECASE)
_TIMES = Expression(
    rf"{_LEAD}(?P<new>\d{{1,2}})(?:\s+times)?\s+(?:instead|in\s+place)\s+of\s+(?P<old>\d{{1,2}})(?:\s+times|\s+(?:in|between)\s+(?:the\s+)?(?:brackets|parenthes[ei]s)){{1,2}}", re.IGNORECASE)
_WORDS = {"one": 1, "two": 2}


def altered(order: RowOrder, words: str, which: Dialect | None) -> RowOrder:
    """The order with what its words alter in the rows that it names; as it is where they alter nothing."""
    low = words.lower()
    if "having" not in low and "making" not in low and "working" not in low and "with" not in low:
        return order
    grows = _GROWS.search(words)
    said = (grows["first"] or grows["last"] or "").lower() if grows is not None else ""
    if said and order.what in ("same-as", "repeat", "continue"):
        remains = _REMAINS.search(words)
        until = Num((_WORDS.get(remains["n"].lower()) or int(remains["n"]),)) if remains is not None else None
        by = 1 if said == "more" else -1
        if until is None and order.until_sts is not None:
            return order  # it ends with so many stitches
        if order.what != "continue":
            return changed(order, grow=by, until_sts=until or order.until_sts)
        return RowOrder("repeat", last_n=1, grow=by, until_sts=until) if until is not None else order
    swap = _swap(words, which) if order.what == "same-as" else None
    return order if swap is None else changed(order, swap=swap)


def loops_less(words: str) -> RowOrder | None:
    """ "Continue thus, having 1 loop less on pineapple on each row, until 1 loop remains": None for other words."""
    if not words[:4].lower().startswith(("cont", "work", "rep")) or "loop" not in words or "until" not in words:
        return None
    found = altered(RowOrder("continue"), words, None)
    return found if found.grow else None


def _swap(words: str, which: Dialect | None) -> Swap | None:
    """What is made instead of what."""
    times = _TIMES.search(words)
    if times is not None:
        return Swap("times", int(times["old"]), int(times["new"]))
    stitches = _STITCHES.search(words)
    if stitches is not None and which is not None:
        kind = which.kind_of(re.sub(r"\s", "", stitches["kind"].lower()))
        return Swap(kind, int(stitches["old"]), int(stitches["new"]), (stitches["within"] or "").lower()) if kind is not None and kind != "ch" else None
    chains = _CHAINS.search(words)
    if chains is None:
        return None
    return Swap("ch", int(chains["old"] or 0), int(chains["n"] or chains["m"]))
