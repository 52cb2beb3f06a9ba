"""Words for the same put into those that the reader knows, before a row is read. The text keeps its length, so every span stays true.

The words stand in plainer.toml, those of colours here.
Common practice, no source: the forms were met in printed books, leaflets and pages of today.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache, partial

from loopwright.notation.scanner import words
from loopwright.shipped import shipped_table
from loopwright.source.expressions import Expression

_SHORT = {
    "<STITCH>": r"(?:[sdh]{1,2}\s?c|h?tr)",
    "<WORTH>": r"(?P<what>(?:(?:an?|1|one|first|1st)\s+)?(?:h?dc|d?tr|htr|sc|st))\b",
}


@cache
def _said() -> tuple[tuple[str, Expression, Callable[[re.Match[str]], str]], ...]:
    """The table of plainer.toml: a word that is in all that an expression finds, the expression, and what is said instead."""
    table = shipped_table("loopwright.notation", "plainer.toml")["said"]
    return tuple((one["word"], spelled_out(one["finds"], _SHORT), partial(_instead, (said,) if isinstance(said := one["said"], str) else tuple(said))) for one in table)


def spelled_out(finds: str, short: Mapping[str, str]) -> Expression:
    """What a table finds, with the short names in it put in full."""
    for name, text in short.items():
        finds = finds.replace(name, text)
    return Expression(finds, re.IGNORECASE)


def as_long(made: str, m: re.Match[str]) -> str:
    """What is said instead, filled up with spaces; what was found as it stands where that would be longer."""
    return made.ljust(len(m.group())) if len(made) <= len(m.group()) else m.group()


def _instead(ways: tuple[str, ...], m: re.Match[str]) -> str:
    """The first of the ways that is short enough, else the last; stitches without a space in them ("s c"), a number in figures."""
    named = {name: found.replace(" ", "") if name == "kind" else found for name, found in m.groupdict().items() if found is not None}
    if (number := named.get("number")) is not None:
        named["number"] = str(words()["numbers"].get(number.lower(), number))
    if (twice := named.get("twice")) is not None:  # so many at each of two ends
        named["twice"] = str(2 * int(words()["numbers"].get(twice.lower(), twice)))
    made = ""
    for way in ways:
        made = way.format_map(named)
        if len(made) <= len(m.group()):
            break
    return made


def plainer(text: str) -> str:
    """A line of the same length in which what can be said in other words is: "every ch" as "each ch", "dec 1 sc" as "sc2tog"."""
    low = text.lower()
    for _, expression, said in [one for one in _said() if one[0] in low]:
        text = expression.sub(partial(_put, said), text)
    return text


def _put(said: Callable[[re.Match[str]], str], m: re.Match[str]) -> str:
    return as_long(said(m), m)


# --- colours ---------------------------------------------------------------------------------------------------------

_L = r"(?:[A-H]|MC|CC)"
_LETTER = re.compile(rf"\b{_L}\b")
_PATCH = re.compile(
    rf"[(\[]\s?(?P<a>{_L})\s?[)\]]\s*[x×]\s*(?P<n>\d{{1,3}})\b|\b(?P<b>{_L})\s*[x×]\s*(?P<m>\d{{1,3}})\b"
    rf"|(?:(?<=[,;:*] )|(?<=[(\[*]))(?P<c>{_L})\s(?P<k>\d{{1,3}})(?=\s*(?:[,;.)\]]|$))|(?P<kind>\b[a-z]{{2,4}}\s+)?\b(?P<j>\d{{1,3}})\s+(?:sts?\s+)?(?:in|with)\s+(?P<d>{_L})\b(?=\s*(?:[,;.)\]]|$))",
)
_LED_TO_PATCHES = re.compile(r"\b(?:sc|hdc|dc|tr|htr)\s+(?:in\s+each\s+st(?:itch)?\s+)?(?:across|around)?\s*[:–—-]\s*(?=\d{1,3}\s+[A-HMC])")


@cache
def worn() -> re.Pattern[str]:
    """Colours told with the stitches, "12 sc in gold", "change to B in last st", "B: sc 3"; MC, which is a magic ring too, behind no "in"."""
    colours = "|".join(sorted(map(re.escape, words()["colours"]), key=len, reverse=True))
    name = rf"(?:(?:colou?r|yarn|shade)\s+)?(?:{_L}|CC\d|(?i:{colours}))(?:\s+(?:yarn|colou?r))?"
    last = r"(?:\s+(?:in|on|with|at)\s+(?:the\s+)?last\s+(?:st|stitch|sc|hdc|dc|tr|yo|yarn\s+over)\b)?"
    return re.compile(
        rf"(?<=\w)\s(?:in(?!\s+MC\b)|with|using)\s+{name}(?=\s*(?:[,;.)\]*]|$))|(?<=[:.;]\s)(?:[Ww]ith|[Uu]sing)\s+{name}\s*,"
        rf"|(?<!\w)(?i:chang(?:e|ing)|switch(?:ing)?)\s+(?:back\s+)?to\s+{name}{last}(?=\s*(?:[,;.)\]]|$))|(?<=[,;:.*]\s){_L}:(?=\s)",
    )


def patches(text: str) -> str:
    """Stitches counted by colours, "A x 3, (B) x 5", "3 in A, 5 in B", as "3 A, 5 B"; filled up with spaces to the same length."""
    if _LETTER.search(text) is None:
        return text
    text = _LED_TO_PATCHES.sub(lambda m: " " * len(m.group()), text)
    if len(_PATCH.findall(text)) < 2:
        return text

    def told(m: re.Match[str]) -> str:
        if m["kind"]:
            return f"{m['kind']}{m['j']}".ljust(len(m.group()))
        n, colour = next((m[n], m[c]) for n, c in (("n", "a"), ("m", "b"), ("k", "c"), ("j", "d")) if m[n])
        return f"{n} {colour}".ljust(len(m.group()))

    return _PATCH.sub(told, text)
