"""Words for the same put into those that the reader knows, before a row is read. The text keeps its length, so every span stays true.

Common practice, no source: the forms were met in printed books, leaflets and pages of today.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, partial

from loopwright.notation.scanner import words
from loopwright.source.expressions import Expression

_STITCH = r"(?:[sdh]{1,2}\s?c|h?tr)"
_WORTH = r"(?P<what>(?:(?:an?|1|one|first|1st)\s+)?(?:h?dc|d?tr|htr|sc|st))\b"


def _counts(m: re.Match[str]) -> str:
    """ "(counts as dc)", shorter where there is no room for it."""
    return made if len(made := f"(counts as {m['what']})") <= len(m.group()) else f"(= {m['what']})"


# a word that is in all that an expression finds, the expression, and how it is said instead
_SAID: tuple[tuple[str, Expression, Callable[[re.Match[str]], str]], ...] = (
    ("every", Expression(r"\bevery(?=\s+(?:ch|st|sc|dc|hdc|tr|htr|stitch|chain|sp|space)\b)", re.IGNORECASE), lambda _: "each"),
    ("at ", Expression(r"\b(?:in|into)\s+(?:the\s+)?(?:st|stitch|[shd]{1,2}c|h?tr)\s+at\s+(?:the\s+)?base\b(?:\s+of\s+(?:the\s+)?(?:\d\s?-?\s?)?(?:turning\s+)?ch(?:ain)?(?:-\d)?\b)?", re.IGNORECASE), lambda _: "in same st"),
    ("of e", Expression(r"\b(?:in|into)\s+(?:the\s+)?ends?\s+of\s+(?:each|every)\s+(?:\w+\s+)?row\b", re.IGNORECASE), lambda _: "in each row end"),
    ("after ", Expression(r"(?:\b(?:in|into)\s+)?\bthe\s+(?P<n>\d{1,3})\s+(?P<what>sts|stitches|ch|chains?|[shd]{1,2}c|h?tr)\s+after\s+(?:that|it)\b", re.IGNORECASE), lambda m: f"in next {m['n']} {m['what']}"),
    ("one ", Expression(r"\b(?:in|into)\s+the\s+(?:next\s+one|one\s+after(?:\s+that)?)\b", re.IGNORECASE), lambda _: "in next st"),
    ("evenly", Expression(rf"\b(?P<kind>{_STITCH})\s+evenly\s+(?P<n>\d{{1,3}})\s+sts?(?=\s+(?:down|along|up|across)\b)", re.IGNORECASE), lambda m: f"{m['n']} {m['kind']} evenly"),
    ("last row tog", Expression(r"(?<=[sd]c )(?:the\s+)?last\s+row\s+tog(?:ether)?(?=,?\s+through\s+both\b)", re.IGNORECASE), lambda _: "across"),
    ("put ", Expression(rf"\bput(?=\s+(?:an?|one|two|three|four|five|\d{{1,2}})\s+(?:{_STITCH}|half|double|single|treble|htr|sts?)\b)", re.IGNORECASE), lambda _: ""),
    ("come to", Expression(r"\b(?:that\s+)?you\s+come\s+to\b", re.IGNORECASE), lambda _: ""),
    ("whole way", Expression(r"\bthe\s+whole\s+way\s+(?:a?round|across)\b", re.IGNORECASE), lambda _: "around"),
    ("back at", Expression(r"\buntil\s+you(?:'re|’re|\s+are)\s+back\s+(?:at|to)\s+the\s+(?:start|beginning)\b", re.IGNORECASE), lambda _: "around"),
    ("one ", Expression(rf"\b(?:making|working)\s+2\s+(?:{_STITCH}|sts?)\s+in(?:to)?\s+one\s+(?:st|stitch|{_STITCH}|of\s+them)\b[^.,;()]*", re.IGNORECASE),
     lambda _: "increasing 1 st evenly"),
    ("),", Expression(  # a chain of 4 "(1 tr, 1 ch)" or "(dc + ch 1)"
        r"(?P<ch>\b[2-7]\s?ch(?:ain)?s?|\bch(?:ain)?\s?[2-7])\s\((?P<what>(?:1 )?(?:h?dc|d?tr|htr)(?:\s?(?:,|\+|and)\s?(?:[1-9] ch|ch [1-9]))?)\)(?=\s*,)", re.IGNORECASE),
     lambda m: f"{m['ch']}(={m['what']})"),
    ("others", Expression(r"\b(?:in|into|under|on)\s+each\s+of\s+the\s+others\b", re.IGNORECASE), lambda _: "in each sp"),
    ("as ", Expression(rf"\(\s*as\s+(?:the\s+)?{_WORTH}[^()]{{0,40}}\)", re.IGNORECASE), _counts),
    ("=", Expression(rf"\(\s*(?:(?:the\s+)?(?:\d\s+)?(?:skipped\s+|missed\s+)?(?:\d\s+)?ch(?:s|ains?)?\s*)?=\s*(?:the\s+)?{_WORTH}[^()]{{0,25}}\)", re.IGNORECASE), _counts),
    ("evenly", Expression(rf"(?<=\bdec )(?P<n>\d{{1,2}}) {_STITCH}(?= evenly\b)", re.IGNORECASE), lambda m: f"{m['n']} st"),
    ("evenly", Expression(rf"(?<=\binc )(?P<n>\d{{1,2}}) {_STITCH}(?= evenly\b)", re.IGNORECASE), lambda m: f"{m['n']} st"),
    ("each ch", Expression(
        rf"\bwork\s+(?:(?:across|around|to\s+end)\s+)?in\s+(?P<kind>{_STITCH})(?:\s+(?:across|around|to\s+end))?,\s*(?:making\s+|working\s+)?1\s+(?P=kind)\s+in(?:to)?\s+each\s+ch\b[^:;.(]*",
        re.IGNORECASE), lambda m: f"{m['kind']} in each st and in each ch"),
    ("dec", Expression(
        rf"\bdec(?:rease)?\s+(?:1|one)\s+(?P<kind>{_STITCH})\b(?!\s+(?:at|evenly|each|every|in|on|over|across|around|from|sts?|stitch|\d))", re.IGNORECASE),
     lambda m: f"{m['kind'].replace(' ', '')}2tog"),
    ("col", Expression(r"(?:(?<=join )|(?<=with )|(?<=attach )|(?<=using ))col(?:ou?r)?\.?\s(?:\d|[A-H]|one|two|three|four)\b", re.IGNORECASE), lambda _: "yarn"),
    ("across ", Expression(r"\bacross\s+(?:the\s+)?(?:back|front|sleeve)(?=,\s*\d?\s*[sdht]{1,2}c\s+in\s+(?:the\s+)?next\s+sp)", re.IGNORECASE), lambda _: "to next sp"),
    ("col", Expression(r"(?<=\b(?:join|with)\s)(?:1st|2nd|3rd|4th|5th|first|second|third|fourth|fifth|another|next|new)\s+colou?r\b", re.IGNORECASE), lambda _: "yarn"),
)


def plainer(text: str) -> str:
    """A line of the same length in which what can be said in other words is: "every ch" as "each ch", "dec 1 sc" as "sc2tog"."""
    low = text.lower()
    for word, expression, said in _SAID:
        if word in low:
            text = expression.sub(partial(_as_long, said), text)
    return text


def _as_long(said: Callable[[re.Match[str]], str], m: re.Match[str]) -> str:
    """What is said instead, filled up with spaces; as it stands where that would be longer."""
    made = said(m)
    return made.ljust(len(m.group())) if len(made) <= len(m.group()) else m.group()


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
