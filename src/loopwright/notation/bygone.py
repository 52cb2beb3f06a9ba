"""Wording of books before about 1930 put into words that the reader knows: rows told in one breath, X for a star, "one hundred and eighty".

The text keeps its length, so every span stays true. The words stand in bygone.toml; some mean so in old British terms only.
Common practice, no source: the forms were met in printed books and magazines of 1840-1930.
"""

from __future__ import annotations

import re
from functools import cache, partial

from loopwright.notation.plainer import as_long, spelled_out
from loopwright.notation.scanner import words
from loopwright.shipped import shipped_table
from loopwright.source.expressions import Expression

_KIND = r"(?:plain\s+)?(?:double\s+crochet|single\s+crochet|treble\s+crochet|half[- ]trebles?|double\s+trebles?|trebles?|doubles?|[sd]\.?\s?c\b\.?|h\.?\s?tr\b\.?|d\.?\s?tr\b\.?|tr\b\.?|long\s+(?:crochet|stitch)|long\b)(?:\s+stitch(?:es)?\b)?"
_STITCHES = r"(?:(?:chain|ch\.?)\s+)?(?:stitch(?:es)?|sts?\b\.?|loops)"
_N = rf"(?:\d{{1,4}}|(?:{'|'.join(sorted(words()['numbers'], key=len, reverse=True))})(?:[- ](?:one|two|three|four|five|six|seven|eight|nine))?(?![a-z]))"
_SHORT = {"<KIND>": _KIND, "<STITCHES>": _STITCHES, "<N>": _N}
_NUMBERS = words()["numbers"]
_OFTEN = {"once": 1, "twice": 2, "thrice": 3}


@cache
def _said() -> tuple[tuple[str, tuple[str, ...], Expression, str], ...]:
    table = shipped_table("loopwright.notation", "bygone.toml")["said"]
    return tuple((one["word"], tuple(one.get("terms", "").split()), spelled_out(one["finds"], _SHORT), one["said"]) for one in table)


def bygone(text: str, terms: str) -> str:
    """A line of the same length in which older ways of saying are put as the reader knows them."""
    low = text.lower()
    if "_" in text:
        text = _EMPHASIS.sub(lambda m: f" {m['said']} ", text)
    if text.rstrip()[-1:] in ("-", "—", "–"):
        text = _LAST_DASH.sub(lambda m: " " * len(m.group()), text)
    if "no" in low[:12] or "fig" in low[:12]:
        text = _TITLE.sub(lambda m: " " * len(m.group()), text)
    if "hundred" in low:
        text = _HUNDREDS.sub(_in_figures, text)
    if terms == "old" and "stitch" in low:
        text = _counted(text)
    if terms != "us" and (" o." in low or " sq." in low):
        text = _squares(text)
    if terms != "us" and "x " in low:
        text = _marked(text)
    if "increasing in" in low or "widening in" in low:
        text = _EACH_ROUND.sub(_one_by_one, text)
    for word, only, expression, said in _said():
        if word in low and (terms in only or not only):
            text = expression.sub(partial(_put, said), text)
            low = text.lower()
    return text


def _put(said: str, m: re.Match[str]) -> str:
    named = {name: _figure(" ".join(found.split())) for name, found in m.groupdict().items() if found is not None}
    return as_long(said.format(**named), m)


def _figure(said: str) -> str:
    """ "three" as "3", "twenty-four" as "24"; other words as they are."""
    parts = said.lower().replace("-", " ").removesuffix(" times").split()
    if len(parts) == 1 and parts[0] in _OFTEN:
        return str(_OFTEN[parts[0]])
    if len(parts) == 1 and parts[0].isdigit():
        return parts[0]
    return str(sum(_NUMBERS[part] for part in parts)) if parts and all(part in _NUMBERS for part in parts) else said


_EMPHASIS = re.compile(r"(?<![\w_])_(?P<said>[^_\n]{1,80})_(?![\w_])")  # "_3d round_"
_LAST_DASH = re.compile(r"(?<=[.,;:])\s{0,3}(?:—|–|--)\s*$")  # ".—" at a row's end
_TITLE = re.compile(r"^\s*(?:(?:pattern|design|motif|figure)\.?\s+)?(?:no|fig)\.?\s*\d{1,3}\s*\.?\s*(?:—|--|–|:)\s*(?=\S)", re.IGNORECASE)  # "Pattern No. 1.—Make …"
_HUNDREDS = re.compile(
    r"\b(?P<h>a|one|two|three|four|five|six|seven|eight|nine)\s+hundred(?:\s+and\s+(?P<t>twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|ten|eleven|twelve|\w{3,5}teen|one|two|three|four|five|six|seven|eight|nine)(?:[- ](?P<u>one|two|three|four|five|six|seven|eight|nine))?)?\b", re.IGNORECASE,
)


def _in_figures(m: re.Match[str]) -> str:
    """ "one hundred and eighty"."""
    tens, ones = (_NUMBERS.get(m[g].lower(), 0) if m[g] else 0 for g in ("t", "u"))
    hundreds = 1 if m["h"].lower() == "a" else _NUMBERS[m["h"].lower()]
    return str(100 * hundreds + tens + ones).ljust(len(m.group()))


_SO_MANY = re.compile(r"(?<=[\d])\s+(?:stitches|stitch|sts)\b(?=\s*(?:[,.;]|$|(?:in|into)\b))(?!\s*in\s+(?:all|the\s+(?:row|round)))", re.IGNORECASE)
_NAMED = Expression(rf"\b(?:{_KIND}|chain|ch\b|crochet)", re.IGNORECASE)


def _counted(text: str) -> str:
    """ "9 stitches, 2 stitches in next, 4 stitches": stitches as before, where a row names none."""
    if len(_SO_MANY.findall(text)) < 3 or _NAMED.search(text) is not None:
        return text
    return _SO_MANY.sub(lambda m: " plain".ljust(len(m.group())) if len(m.group()) > 5 else m.group(), text)


_SQUARE = re.compile(r"(?<=\d) (?P<which>o|c|sq)\.?(?=\s*(?:[,;+*]|$)|\s+\d|\.\s)", re.IGNORECASE)
_TIMES_STOP = re.compile(r"(?<=times)\.(?=\s+\d{1,2}\s+(?:bl|sp)\b)")
_PLUS = re.compile(r"(?:(?<=[.,;:—–-] )|(?<=[.,;:—–-]))\+(?=\s+(?:\d|twice|thrice|[a-z]{3,6}\s+times))", re.IGNORECASE)


def _squares(text: str) -> str:
    """ "4 o., + 1 c., 1 o., + 5 times": open and close squares of filet, printers' plus signs as stars."""
    if len(_SQUARE.findall(text)) < 2:
        return text
    text = _SQUARE.sub(lambda m: (" bl" if m["which"].lower() == "c" else " sp").ljust(len(m.group()))[: len(m.group())], text)
    text = _TIMES_STOP.sub(",", text)
    return _PLUS.sub("*", text) if len(_PLUS.findall(text)) > 1 else text


_MARK = re.compile(r"(?:^|(?<=[.,;:—–-])|(?<=[.,;:—–-] ))[Xx](?=\s+[\da-z])(?!\s*\d{1,3}\s*(?:times\b|[,;.)\]]|$))", re.IGNORECASE)
_END_MARK = re.compile(r"(?<=[.,;:] )[Xx](?=\s+(?:\d{1,3}\s+times|to\s+(?:the\s+)?end|all\s+round|repeat|round)\b|[.,;])", re.IGNORECASE)


def _marked(text: str) -> str:
    """ "X 1 white, 5 steel, X 4 times": printers' crosses as stars, where one begins a repeat and one ends it."""
    ends = _END_MARK.sub("*", text)
    return _MARK.sub("*", ends) if ends != text and _MARK.search(ends) is not None else text


_ROUNDS = r"(?P<rows>rounds|rows)"
_EACH_ROUND = Expression(
    rf"[,;]?\s*(?:(?:and\s+)?(?:work|do|make)\s+)?(?:two|three|four|[2-4])\s+{_ROUNDS}\s+(?:in|of)\s+(?P<kind>{_KIND}),?\s+(?:increasing|widening)\s+(?P<list>in\s+every\s+\w+(?:\s+\w+)?\s+in\s+the\s+first\b[^.;]{{0,160}})", re.IGNORECASE,
)
_IN_ONE = re.compile(r"in\s+every\s+(?P<which>\w+)(?:\s+(?P<st>\w+))?\s+in\s+the\s+(?P<k>first|second|third|fourth)\b", re.IGNORECASE)
_SHORTLY = {"double crochet": "dc", "single crochet": "sc", "treble crochet": "tr", "treble": "tr", "long": "tr"}
_WHICH = {"alternate": "2nd ", "other": "2nd ", "second": "2nd ", "third": "3rd ", "fourth": "4th ", "fifth": "5th ", "sixth": "6th "}


def _one_by_one(m: re.Match[str]) -> str:
    """ "three rounds in d.c., increasing in every loop in the first round, in every 2nd in the second": each round by itself."""
    row = m["rows"][:-1].lower()
    kind = " ".join(m["kind"].lower().split())
    kind = _SHORTLY.get(kind, kind)
    told = [f"Next {row}: {kind}, increasing in every {_WHICH.get(one['which'].lower(), '')}st" for one in _IN_ONE.finditer(m["list"])]
    made = ". ".join(told)
    return f". {made}".ljust(len(m.group())) if told and len(made) + 2 <= len(m.group()) else m.group()
