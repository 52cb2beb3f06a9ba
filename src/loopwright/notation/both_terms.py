"""Stitches told in two terms at once, "1 dc (UK)/1 sc (USA)", "sc (UK dc)": those of the pattern's own terms are kept.

The text keeps its length. Common practice, no source.
"""

from __future__ import annotations

import re

from loopwright.source.expressions import Expression

_ST = r"(?:(?:(?:dec|inc)(?:rease)?s?\s+)?(?:\d{1,3}\s?)?(?:(?:half|double|triple)[\s-])?(?:double|single|treble|half\s+treble|half\s+double|[sdh]{1,2}c|d?tr|htr|trc|ss|sl\s?st|slip\s?st(?:itch)?)s?(?:\s+crochet)?(?:s|\s?\d?tog)?)"
_UK, _US = r"(?:UK|U\.K\.|British)(?:\s+terms)?", r"(?:USA?|U\.S\.(?:A\.)?|American)(?:\s+terms)?"
_SLASHED = Expression(
    rf"(?<![\w-])(?:(?P<uk>{_ST})\s?\(\s?{_UK}\s?\)\s?/\s?(?P<us>{_ST})\s?\(\s?{_US}\s?\)|(?P<us2>{_ST})\s?\(\s?{_US}\s?\)\s?/\s?(?P<uk2>{_ST})\s?\(\s?{_UK}\s?\)"
    rf"|{_UK}:?\s(?P<uk3>{_ST})\s?/\s?{_US}:?\s(?P<us3>{_ST})|{_US}:?\s(?P<us4>{_ST})\s?/\s?{_UK}:?\s(?P<uk4>{_ST}))(?!\w)", re.IGNORECASE,
)
_BRACKETED = Expression(rf"(?<![\w-])(?P<first>{_ST})\s?[(\[]\s?(?:(?P<uk>{_UK})|{_US})[:\s]\s?(?P<then>{_ST})\s?[)\]]", re.IGNORECASE)

# "6 dc/sc", "1tr/dc in each st": the same stitch in both terms, which nobody says
_PAIRED = Expression(r"(?:(?<=\d)|(?<=\d ))(?P<a>sc|hdc|dc|htr|tr|dtr)/(?P<b>sc|hdc|dc|htr|tr|dtr)(?P<s>s?)\b", re.IGNORECASE)
_OF_US = {"sc": "dc", "hdc": "htr", "dc": "tr", "tr": "dtr"}  # the name that a stitch of American terms has in British ones

_NUMBER = re.compile(r"\d{1,3}\s?")


def own_terms(text: str, terms: str) -> str:
    """A line in which of stitches told in both terms only those of `terms` ("us", or any other for British ones) are left."""
    if "c/" in text or "r/" in text:
        text = _PAIRED.sub(lambda m: _paired(m, terms), text)
    if "UK" not in text and "US" not in text and "U.K" not in text and "British" not in text:
        return text
    british = terms != "us"

    def one(m: re.Match[str]) -> str:
        return _only(m, next(name for name, found in m.groupdict().items() if found is not None and name.startswith("uk") is british))

    return _BRACKETED.sub(lambda m: _then(m) if bool(m["uk"]) is british else _only(m, "first"), _SLASHED.sub(one, text))


def _paired(m: re.Match[str], terms: str) -> str:
    """Of "dc/sc" the stitch in the pattern's own terms; what was found, where the two are not one stitch."""
    a, b = m["a"].lower(), m["b"].lower()
    us = next((x for x, y in ((a, b), (b, a)) if _OF_US.get(x) == y), None)
    if us is None:
        return m.group()
    return ((us if terms == "us" else _OF_US[us]) + m["s"]).ljust(len(m.group()))


def _then(m: re.Match[str]) -> str:
    """What stands in the bracket, behind the number that stands before it: "6 sc (UK dc)" as "6 dc"."""
    number = _NUMBER.match(m["first"])
    kept = number.group() if number is not None and _NUMBER.match(m["then"]) is None else ""
    return kept + _only(m, "then")[len(kept) :]


def _only(m: re.Match[str], name: str) -> str:
    """Spaces for all that was found but one group."""
    return " " * (m.start(name) - m.start()) + m[name] + " " * (m.end() - m.end(name))
