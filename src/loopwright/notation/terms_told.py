"""The terms that a pattern is written in: as it says, else by the stitches and words that it uses."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

# what tells the terms where they are not said: stitches that one side alone has, other words, and start chains as tall as their stitch
_SIGNS: dict[str, list[tuple[re.Pattern[str], float]]] = {which: [(re.compile(sign, re.IGNORECASE), weight) for sign, weight in signs] for which, signs in {
    "us": (
        (r"\b(?:s\.?\s?c|hdc|single crochet|half double)\b", 3.0), (r"\b(?:skip|sk|gauge|fasten off)\b", 1.0), (r"\bcolor\b", 0.5),
        (r"(?:^|:\s*)(?:ch[ -]?3|3 ch)\b[^.;\n]{0,40}?\bd\.?\s?c\b", 1.5), (r"\bch[ -]?2\b[^.;\n]{0,30}?\bhdc\b", 1.0),
    ),
    "uk": (
        (r"\b(?:htr|half treble|half-treble)\b", 3.0), (r"\b(?:miss|tension|yrh|yoh)\b", 1.0), (r"\bcolour\b", 0.5), (r"\bss\b", 0.4),
        (r"(?:^|:\s*)(?:3 ?ch|ch[ -]?3)\b[^.;\n]{0,40}?\btr\b", 1.5), (r"(?:^|:\s*)(?:1 ?ch|ch[ -]?1)\b[^.;\n]{0,24}?\bdc\b", 1.0),
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


@lru_cache(maxsize=8_192)
def _weighed(line: str) -> tuple[float, float]:
    """What a line weighs as one in US and as one in UK terms."""
    us, uk = (sum(weight * len(signs.findall(line)) for signs, weight in _SIGNS[which]) for which in ("us", "uk"))
    return us, uk
