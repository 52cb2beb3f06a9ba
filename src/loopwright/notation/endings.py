"""Rows told by their end: "continue so until there are 64 sts", "dec at both ends until 14 sts remain"; and titles before a row.

Common practice, no source: the forms were met in printed books and leaflets.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Item, Join, Mark, Num, Row, RowOrder, Unknown
from loopwright.notation.cursor import thing_word
from loopwright.notation.orders import changing
from loopwright.terms import Dialect

_UNTIL = re.compile(
    r"(?:(?:then|and)\s+)?(?:continue|cont|work|repeat|rep|rpt|dec|decrease|inc|increase|decreasing|increasing)\b(?P<mid>(?:[^.;*†]|(?<=st)\.|(?<=sts)\.|(?<=cont)\.|(?<=dec)\.|(?<=inc)\.|(?<=alt)\.|(?<=patt)\.)*?)\b(?:until|till)\s+"
    r"(?:there\s+(?:are|will be)\s+|you\s+have\s+|only\s+)?(?P<n>\d{1,5})(?:\s*[(\[](?P<more>[\d,:;\s]+)[)\]])?\s+(?P<noun>[a-z][a-z.]*(?:\s[a-z.]{1,3})?)"
    r"(?:\s+(?:remain(?:s|ing)?|rem|are left|left|(?:are\s+)?in\s+(?:the\s+|each\s+)?(?:row|round|rnd)|on\s+(?:the\s+)?row|in all))*\s*(?=[,.;(—]|$)",
    re.IGNORECASE,
)
_TITLE = re.compile(
    r"(?!(?:NEXT|LAST|ROWS?|RNDS?|ROUNDS?|RS|WS|MC|CC|CH|SC|DC|HDC|BLO|FLO|INC|DEC|REP|REPEAT|BEG|TOG|STS|FINAL|TURN|JOIN|NOTES?|TIPS?)\b)(?P<name>[A-Z][A-Z’']{2,}(?:[ ,&–—-]{1,2}[A-Z’']{2,}|\s\d+)*)\s*(?:\([^()]{0,40}\)\s*)?"
    r"(?:\.(?=—|--|\s-\s)\s*)?(?::(?:\s*\([^()]{0,40}\)\s*:?)?|—|--|\s?-\s(?=[\s,]*[A-Za-z]|\d{1,2}(?:st|nd|rd|th)\s)|(?:\s?\.){3,4}|\s?…|\.(?=\s+(?:Start(?:ing)?\b|Begin|With\b|Using\b|(?:[A-Z][A-Za-z]{2,}(?: [A-Za-z]{2,})?[.:—-]+\s+){1,2}(?:[Cc]h|With|Start|Begin|Using|[Mm]ake)|Work\b|Commence\b|Cast\b|Ch(?:ain)?\b|Make\b|1st\s|Row\s|Rnd\s|Round\s)))\s*(?=\S)"
)


_GOES_ON = re.compile(r"\s*,\s*(?:(?:work|make|then)\s+)?(?:\d+\s+)?(?:dec(?:rease)?|inc(?:rease)?|invdec|(?:sc|hdc|dc|tr|htr|dtr)(?:\d+tog)?)\b", re.IGNORECASE)  # the row is told further


def until(words: str, dialect: Dialect, sizes: int = 1) -> RowOrder | None:
    """The order that words give which name the count it ends with; None when they give none."""
    if (told := changing(words, sizes)) is not None:
        return told
    m = _UNTIL.match(words)
    if m is None or re.search(r"\bfrom\b", m["mid"]) or _GOES_ON.match(words, m.end()):
        return None
    noun = m["noun"].lower().strip(". ")
    if noun in ("inches", "inch", "ins", "in", "cm", "mm", "yards", "more", "times"):
        return None
    values = (int(m["n"]), *(int(v) for v in re.findall(r"\d+", m["more"] or "")))
    if noun in ("loop", "loops") and "having" in m["mid"].lower():
        return None  # "continue thus, having 1 loop less on pineapple on each row, until 1 loop remains"
    if noun in ("rows", "row", "rounds", "rnds", "round"):
        return None
    kind = dialect.kind_of(" ".join(noun.replace(".", " ").split()))
    if kind is None and thing_word(noun.split()[0]) is None:
        return None
    if kind == "block":
        return RowOrder("repeat", last_n=1, until_sts=Num(values), kind=kind)  # from corner to corner each row has one more, or one less
    return RowOrder("continue", until_sts=Num(values), kind=kind)


def later_until(text: str, start: int, end: int, dialect: Dialect, sizes: int = 1) -> tuple[int, RowOrder] | None:
    """A clause after other words that gives such an order: where it begins, and the order."""
    for m in re.finditer(r"[.;,]\s+(?=(?:then\s+|and\s+)?(?:continue|cont|work|rep|dec|inc))", text[start:end], re.IGNORECASE):
        if text[start : start + m.start()].count("*") % 2 and "repeat from" not in text[start : start + m.start()].lower():
            continue
        order = until(text[start + m.end() : end], dialect, sizes)
        if order is not None:
            return start + m.start() + 1, order
    return None


def title_before(text: str, start: int, end: int) -> tuple[str, int] | None:
    """A title in capitals before a row on the same line: the title and where the row begins."""
    m = _TITLE.match(text, start, end) or (_PIECE.match(text, start, end) if text[start : start + 1].isupper() else None)
    if m is None:
        return None
    at = m.end()
    while at < end and text[at] in " .,;:":  # what quiet words left standing
        at += 1
    name, at = more_titles(text, m["name"], at, end)
    return name, at


_BEGUN = r"(?:[Cc]h(?:ain)?|Start(?:ing)?|Begin(?:ning)?|With|Using|[Ww]ork|[Mm]ake|Commence|Join|Attach|Row|Rnd|Round|Next|\d)\b"
_PIECE = re.compile(  # "Sleeves. Starting at cuff, ch 40", "Top [Make 2]: Starting at center, ch 9"
    r"(?P<name>(?:(?:Right|Left|Upper|Lower|Inner|Outer|First|Second|Front|Back|Side)\s+)?(?:Backs?|Fronts?|Sleeves?|Yoke|Collar|Cuffs?|Body|Crown|Brim|Soles?|Uppers?|Top|Head|Legs?|Arms?|Ears?|Tail|Edging|Border"
    r"|Pockets?|Belt|Band|Straps?|Handles?|Tabs?|Flap|Gusset|Skirt|Waistband|Bag|Hat|Cap|Bonnet|Boot(?:ees?|ies)|Mittens?|Thumb|Palm|Flowers?|Leaf|Leaves|Motif|Peplum|Blouse|Jacket|Sacque|Jabot|Heel|Toe|Purse))"
    rf"\s?(?:[(\[][^()\[\]]{{1,30}}[)\]]\s?(?::|\.{{1,4}}|…|—)|\.{{1,4}}|\s?…)\s+(?={_BEGUN})"
)
_PART_OF = re.compile(rf"(?!{_BEGUN})(?P<name>[A-Z][A-Za-z’']+(?:[ -][A-Za-z]+){{0,2}})\s*(?::\s+|—\s*|--\s*|\s–\s+|\.\s+)(?={_BEGUN})")


def more_titles(text: str, name: str, at: int, end: int) -> tuple[str, int]:
    """A title and where the row begins behind it, where the name of a part of it follows: "Blouse: Back: Ch 115", "BLOUSE. BACK. Ch 115"."""
    while (m := _PART_OF.match(text, at, end)) is not None:
        name, at = f"{name}: {m['name']}", m.end()
    return name, at


_TURN_ON = re.compile(r"(?<=[a-z.]),?\s(turn);\s+(?=(?:ch(?:ain)?\.?\s*[1-4]|[1-4]\s*ch(?:ain)?)\b[^;]*\b(?:in|into|on|over|across)\b)", re.IGNORECASE)
SHORTEST_ROW = 12  # letters


def turned_on(text: str, start: int, end: int) -> tuple[int, int] | None:
    """Where a row ends and the next begins that is told with it: "sc in next 20 sts, turn; ch 1, sc in next 9 sts, turn"; None where it is one row."""
    m = _TURN_ON.search(text, start + SHORTEST_ROW, end) if not any(mark in text[start:end] for mark in "*([") else None
    return None if m is None else (m.end(1), m.end())


def closing(items: list[Item]) -> Row | None:
    """What a line says that but ends the row above it: joins, turns or fastens off, and may print that row's count."""
    only = items[0] if len(items) == 1 else None
    if not isinstance(only, Row) or only.label is not None or only.order is not None or not only.body:
        return None
    ends = any(isinstance(n, Join) or isinstance(n, Mark) and n.what in ("turn", "fasten-off", "attach") for n in only.body)
    return only if ends and all(isinstance(n, (Join, Mark, Unknown)) for n in only.body) else None
