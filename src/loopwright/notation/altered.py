"""Rows told by another row with something altered: "same as Rnd 3, having one more group on each side", "making 7 dc instead of 5 dc in each shell".

Common practice, no source: the forms were met in leaflets.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Num, RowOrder, Swap
from loopwright.notation.scanner import scan
from loopwright.notation.scanner import words as tables
from loopwright.record import changed
from loopwright.source.expressions import Expression
from loopwright.terms import Dialect

_LEAD = r"\b(?:having|making|working|with)\s+"
_GROWS = Expression(
    r"\b(?:having|with|working|making|adding)\s+(?:1|one|an)\s+(?:(?P<first>more|extra|additional|less|fewer)\s+)?(?:(?!st|stitch|[sdht]{1,2}c\b|tr\b)[\w-]+\s+)?(?:group|loop|shell|sp|space)s?(?:\s+of\s+\d\s+\w{1,3})?(?:\s+(?P<last>more|less|fewer))?\s+(?:on|in|between|at|to|along)\b", re.IGNORECASE)
_ONE_KIND = r"[a-z]{1,2}\.?\s?c\.?|h?d?tr\.?|trebles?|doubles?|double\s+crochet"
_OVER_EACH_OTHER = Expression(rf"\bworking\s+(?:an?\s+|1\s+)?(?P<one>{_ONE_KIND})\s+(?:over|on)\s+(?:each\s+|an?\s+)?(?P<other>{_ONE_KIND})\s*(?:,|and)\s+(?:an?\s+|1\s+)?(?P=other)\s+(?:over|on)\s+(?:each\s+|an?\s+)?(?P=one)", re.IGNORECASE)
_EACH_ROUND = Expression(r"\b(?:each|every)\s+side\b(?!\s+of)[^.;]{0,40}\b(?:each|every)\s+(?:round|rnd)\b|\b(?:each|every)\s+(?:round|rnd)\b[^.;]{0,60}\b(?:each|every)\s+side\b(?!\s+of)", re.IGNORECASE)
_ON_EACH_SIDE = Expression(
    r"\b(?:having|with|working|making)\s+(?P<new>\d{1,2}|two|three|four|five|six)\s+(?:(?!st|stitch|[sdht]{1,2}c\b|tr\b)[\w-]+\s+)?(?:groups?|shells?|clusters?)\s+(?:of\s+\d\s+\w{2,3}\s+)?(?:on|along|at|between\s+(?:the\s+)?corners\s+on)\s+(?:each|every|all)\s+(?:of\s+the\s+)?(?:4\s+|four\s+)?sides?\b"
    r"|\b(?:having|with|working|making)\s+(?:\d\s+\w{1,3}(?:\s\w)?|a\s+group)\s+in\s+(?:each|all)\s+of\s+the\s+(?P<many>\d|two|three|four|five|six)\s+(?:sps?|spaces)\s+(?:along|on|at)\s+(?:the\s+)?(?:each\s+)?sides?\b", re.IGNORECASE)
_BLOCKS = Expression(
    r"\b(?:(?P<by>increas|grow|decreas|add)(?:es|ing|e|s)?\s+(?:by\s+)?(?:1|one)\s+(?:more\s+)?block|(?:with|having)\s+(?:1|one)\s+(?P<first>more|less|fewer)\s+block|(?:1|one)\s+block\s+(?P<last>more|less|fewer))\b", re.IGNORECASE)
_REMAINS = Expression(r"\buntil\s+(?:only\s+)?(?P<n>\d{1,2}|one|two)\s+(?:ch-\d\s+)?loops?\s+(?:remain|is\s+left|are\s+left)", re.IGNORECASE)
_STITCHES = Expression(
    rf"{_LEAD}(?P<new>\d{{1,2}})\s+(?P<kind>[a-z]{{2,3}}|[sdh]\s?c)\s+(?:instead|in\s+place)\s+of\s+(?P<old>\d{{1,2}})(?:\s+(?P=kind))?(?:\s+in\s+(?:each\s+|every\s+|the\s+)?(?P<within>shell|fan|scallop|petal|cluster|group)s?)?\b", re.IGNORECASE)
_CHAINS = Expression(
    rf"{_LEAD}(?:ch[- ]?(?P<n>\d{{1,2}})|(?P<m>\d{{1,2}})[- ]?ch)\b(?:[- ]?(?:loops?|sps?)\b)?\s*(?:(?:instead|in\s+place)\s+of\s+(?:ch[- ]?)?(?P<old>\d{{1,2}})|(?:in|for)\s+(?:each|all|every)\s+loops?|throughout|(?=[.,;]|$))", re.IGNORECASE)
_TIMES = Expression(
    rf"{_LEAD}(?P<new>\d{{1,2}})(?:\s+times)?\s+(?:instead|in\s+place)\s+of\s+(?P<old>\d{{1,2}})(?:\s+times|\s+(?:in|between)\s+(?:the\s+)?(?:brackets|parenthes[ei]s)){{1,2}}", re.IGNORECASE)
_N = rf"(?:\d{{1,3}}|{'|'.join(sorted(set(tables()['numbers']) - {'another', 'a', 'an'}, key=len, reverse=True))})\b"
_STITCH = r"(?:[a-z]{1,3}\.\s?c\.?|[a-z]+[.]?)"
_INSTEAD = Expression(
    rf"(?:(?P<new>{_N})\s*)?(?:(?P<newkind>{_STITCH})\s+)?(?:(?:sts?|stitches)\s+)?(?:instead\s+of|in\s+place\s+of)\s+(?:the\s+)?(?:(?P<old>{_N})\s*)?(?P<oldkind>{_STITCH})?", re.IGNORECASE)
_IN_EACH = Expression(
    rf"{_LEAD}(?P<new>{_N})\s+(?P<kind>{_STITCH})\s+(?:in|into|to|on|under)\s+(?:each|every|the)\s+(?P<within>[a-z]+)(?:\s+(?:instead|in\s+place)\s+of\s+(?P<old>{_N}))?", re.IGNORECASE)
_SIGNS = ("block", "having", "making", "working", "with", "instead", "in place of", "but", "except", "add")
_CLAUSE = Expression(r"\b(?:but|except(?:ing)?|having|making|working|with|adding|you\s+(?:will\s+)?add|instead)\b\s*(?P<what>[^;]*)", re.IGNORECASE)
_NUMBERS = Expression(  # something is made more or less often than in the row that is named
    r"\b(?:more|less|fewer|extra|additional|instead|in\s+place\s+of|between)\b|\bover\s+\d|\badd\b|\b\d+\s+(?:groups?|shells?|[sd]\.?\s?c|h?tr|hdc)\b", re.IGNORECASE)


def altered(order: RowOrder, words: str, which: Dialect | None) -> RowOrder:
    """The order with what its words alter in the rows that it names; as it is where they alter nothing."""
    low = words.lower()
    if not any(word in low for word in _SIGNS):
        return order
    blocks = _BLOCKS.search(words) if "block" in low else None
    if blocks is not None and order.what in ("same-as", "repeat", "continue") and order.until_sts is None:
        less = (blocks["first"] or blocks["last"] or "").lower() in ("less", "fewer") or (blocks["by"] or "").lower() == "decreas"
        return changed(order, grow=-1 if less else 1) if order.what != "continue" else RowOrder("repeat", last_n=1, grow=-1 if less else 1)
    grows = _GROWS.search(words)
    said = (grows["first"] or grows["last"] or "").lower() if grows is not None else ""
    if said and order.what in ("same-as", "repeat", "continue"):
        remains = _REMAINS.search(words)
        until = Num((_number(remains["n"]) or 0,)) if remains is not None else None
        by = -1 if said in ("less", "fewer") else 1
        if until is None and order.until_sts is not None:
            return order  # it ends with so many stitches
        if order.what != "continue":
            return changed(order, grow=by, until_sts=until or order.until_sts)
        if by > 0 and until is None and order.total_rows is None and _EACH_ROUND.search(words) is not None:
            return RowOrder("repeat", last_n=1, grow=by)  # the rows that its label names
        return RowOrder("repeat", last_n=1, grow=by, until_sts=until) if until is not None else order
    if order.what not in ("same-as", "repeat") or order.until_text:
        return order
    swap = _swap(words, which)
    if swap is None and (clause := _CLAUSE.search(words)) is not None and _NUMBERS.search(clause["what"]) is not None:
        return changed(order, untold=True)
    return order if swap is None else changed(order, swap=swap)


def loops_less(words: str) -> RowOrder | None:
    """ "Continue thus, having 1 loop less on pineapple on each row, until 1 loop remains": None for other words."""
    if not words[:4].lower().startswith(("cont", "work", "rep")) or "loop" not in words or "until" not in words:
        return None
    found = altered(RowOrder("continue"), words, None)
    return found if found.grow else None


def _swap(words: str, which: Dialect | None) -> Swap | None:
    """What is made instead of what."""
    over = _OVER_EACH_OTHER.search(words) if " over " in words or " on " in words else None
    if over is not None:
        one, other = (_kind(over[name], which) for name in ("one", "other"))
        if one and other and one != other:
            return Swap("anywhere", 0, 0, within=one, other=other)
    side = _ON_EACH_SIDE.search(words) if "side" in words else None
    if side is not None:
        return Swap("side", 0, _number((side["new"] or side["many"]).lower()) or 0)
    times = _TIMES.search(words)
    if times is not None:
        return Swap("times", int(times["old"]), int(times["new"]))
    stitches = _STITCHES.search(words)
    if stitches is not None and which is not None:
        kind = which.kind_of(re.sub(r"\s", "", stitches["kind"].lower()))
        return Swap(kind, int(stitches["old"]), int(stitches["new"]), (stitches["within"] or "").lower()) if kind is not None and kind != "ch" else None
    chains = _CHAINS.search(words)
    if chains is not None:
        return Swap("ch", int(chains["old"] or 0), int(chains["n"] or chains["m"]))
    each = _IN_EACH.search(words)
    if each is not None and (known := _kind(each["kind"], which)) is not None and known != "ch":
        return Swap(known, _number(each["old"]) or 0, _number(each["new"]) or 0, each["within"].lower())
    told = _INSTEAD.search(words) if "instead of" in words or "in place of" in words else None
    if told is None:
        return None
    old, new = _number(told["old"]), _number(told["new"])
    kinds = [_kind(told[name], which) for name in ("oldkind", "newkind")]
    if old is not None and new is not None:
        return Swap(kinds[0] or kinds[1] or "any", old, new)
    return Swap(kinds[0], 0, 0, other=kinds[1]) if old is None and new is None and kinds[0] and kinds[1] else None


def _number(text: str | None) -> int | None:
    if not text:
        return None
    return int(text) if text.isdigit() else int(tables()["numbers"][text.lower()])


def _kind(text: str | None, which: Dialect | None) -> str | None:
    """The stitch that a word names behind a number."""
    if not text or which is None:
        return None
    words = f"2 {text.lower()} in"
    return next((str(t.value) for t in scan(words, 0, len(words), which) if t.kind == "kind"), None)
