"""The terms that a pattern is written in: as it says, else by the stitches and words that it uses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Literal

# what tells the terms where they are not said: stitches that one side alone has, other words, and start chains as tall as their stitch
_SIGNS: dict[str, list[tuple[re.Pattern[str], float]]] = {which: [(re.compile(sign, re.IGNORECASE), weight) for sign, weight in signs] for which, signs in {
    "us": (
        (r"\b(?:s\.?\s?c|hdc|single crochet|half double)\b(?<!with single crochet)(?<!with a single crochet)(?<!by a single crochet)", 3.0), (r"\b(?:skip|sk|gauge|fasten off)\b", 1.0), (r"\bcolor\b", 0.5),
        (r"(?:^|:\s*)(?:ch[ -]?3|3 ch)\b(?:(?!\btr\b)[^.;\n]){0,40}?\bd\.?\s?c\b", 1.5), (r"\bch[ -]?2\b[^.;\n]{0,30}?\bhdc\b", 1.0),
    ),
    "uk": (
        (r"\b(?:htr|half treble|half-treble)\b", 3.0), (r"\b(?:miss|tension|yrh|yoh)\b", 1.0), (r"\bcolour\b", 0.5), (r"\bss\b", 0.4),
        (r"(?:^|[:.—]\s*)(?:3 ?ch(?:ain)?|ch[ -]?3)\b(?:(?!\bd\.?\s?c\b)[^.;\n]){0,40}?\btr(?:ebles?)?\b", 1.5), (r"(?:^|:\s*)(?:1 ?ch|ch[ -]?1)\b[^.;\n]{0,24}?\bdc\b", 1.0),
        (r"\b(?:\d{1,2}|a|one)\s+trebles?\b(?!\s+crochet)", 0.4),
        (r"\b(?:join|unite|close)\w*\s+(?:\w+\s+){0,2}?(?:with|by)\s+a?\s*single\s+crochet\b(?!\s+(?:in|into)\s+(?!the\s+(?:3rd|third|top)\b|3rd\b|third\b|top\b))", 1.5),
    ),
}.items()}


_TITLED = re.compile(r"\s*[^\n(]{3,60}\((US|UK)(?: (?:version|terms))?\)\s*\n")  # in the title
_SAID = re.compile(
    r"(?<!\w)(US|U\.S\.|American|UK|U\.K\.|British)\s+(?:crochet\s+|English\s+)?(?:terms|terminology|abbreviations|stitch names)\b", re.IGNORECASE,
)  # "written in UK terms", "US terminology"


def terms_of(text: str, terms: str | None) -> tuple[Literal["us", "uk", "old"], bool]:
    """The terms of a text, `terms` where they are given; and whether they were found out by its words."""
    if terms in ("us", "uk", "old"):
        return terms, False  # type: ignore[return-value]
    told = re.search(r"(?:^|[.;]\s)terms:\s*(us|uk|old)\b", text, re.IGNORECASE | re.MULTILINE)
    if told:
        return told[1].lower(), False  # type: ignore[return-value]
    if (titled := _TITLED.match(text)) is not None:
        return ("us" if titled[1] == "US" else "uk"), False
    said = {m[1].lower().replace(".", "")[:2] for m in _SAID.finditer(text)}
    if len(said) == 1:
        return ("us" if said <= {"us", "am"} else "uk"), False
    us, uk = map(sum, zip(*map(_weighed, text.split("\n")), strict=True))
    return ("uk" if uk > us else "us"), True


_CHAIN = r"(?:ch(?:ain)?[ -]?(?P<{0}>\d)(?!\d)|(?<!\d)(?P<{0}2>\d)[ -]?ch(?:ain)?s?)\b"
_COUNTED = re.compile(  # "5 ch (counts as 1 tr and 2 ch)", "3 chain for a treble"
    _CHAIN.format("n") + r"[\s,(]*(?:to\s+)?(?:counts?|counting|counted|for|stands?|serves?|serving|=)(?:\s+(?:as|for))?\s+(?:(?:the|a|an|one|1|1st|first)\s+)*(?P<kind>d\.?\s?c|d\.?tr|tr|trebles?|double\s+(?:crochet|treble))\b\.?"
    r"(?:\s*(?:,|and|\+|plus)\s*" + _CHAIN.format("over") + ")?", re.IGNORECASE,
)
_JOINED = re.compile(  # "5 ch, * 1 tr in next tr, …, join to 3rd of 5 ch"
    r"(?:^|[:.—]\s*)" + _CHAIN.format("n") + r"\s*,[\s*(]*(?:miss[^,;.]{1,20},\s*)?(?:(?:\d|a|one)\s+)?(?P<kind>d\.?\s?c|tr|trebles?)\b[^\n]{0,400}?\b(?P<k>3r?d|third|4th|fourth)\s+(?:(?:ch(?:ain)?|st(?:itch)?)\s+)?of\s+(?:(?:the|first|starting|beg|beginning|turning)\s+)*"
    + _CHAIN.format("again"), re.IGNORECASE,
)
# which terms call a stitch so that a chain of that many stands for
_AS_TALL: dict[tuple[str, int], Literal["us", "uk"]] = {("t", 3): "uk", ("t", 4): "us", ("d", 1): "uk", ("d", 2): "us", ("d", 3): "us", ("dt", 4): "uk", ("dt", 5): "us"}


def _by_height(line: str) -> Iterator[Literal["us", "uk"]]:
    """The terms that the chains standing for stitches tell, one for each."""
    for m in _COUNTED.finditer(line):
        said = re.sub(r"[\s.]", "", m["kind"].lower())
        kind = "dt" if said.startswith(("dtr", "doubletr")) else said[0]
        tall = int(m["n"] or m["n2"]) - int(m["over"] or m["over2"] or 0)
        if (which := _AS_TALL.get((kind, tall))) is not None:
            yield which
    for m in _JOINED.finditer(line):
        if (m["n"] or m["n2"]) == (m["again"] or m["again2"]) and (which := _AS_TALL.get((m["kind"][0].lower(), 3 if m["k"][0] in "3tT" else 4))) is not None:
            yield which


@lru_cache(maxsize=8_192)
def _weighed(line: str) -> tuple[float, float]:
    """What a line weighs as one in US and as one in UK terms."""
    us, uk = (sum(weight * len(signs.findall(line)) for signs, weight in _SIGNS[which]) for which in ("us", "uk"))
    told = [*_by_height(line)] if "ch" in line.lower() else []
    return us + 3.0 * told.count("us"), uk + 3.0 * told.count("uk")
