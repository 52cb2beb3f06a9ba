"""Labels of rows: "Rnd 3", "Rows 4-7", "2nd ROW", "Next 5 rows", "R2:"; at a line's start or after a stop inside a paragraph."""

from __future__ import annotations

import re
from typing import Literal

from loopwright.model.tree import ONE, Label, Num
from loopwright.notation.orders import ROWS_AGAIN
from loopwright.notation.scanner import words
from loopwright.record import changed, record
from loopwright.source import Span

MAX_RANGE = 2000
_WORD = r"(?:rows?|rnds?|rounds?|rds?)"
_LIST = r"\s?[(\[]\s*(?:\d{1,5}|[–—-])(?:\s*[,;:]\s*(?:\d{1,5}|[–—-]))*\s*[)\]]"
_RANGES = r"\s?[(\[]\s*\d{1,5}\s*[–-]\s*\d{1,5}(?:\s*[,;:]\s*\d{1,5}\s*[–-]\s*\d{1,5})*\s*[)\]]"  # "Rows 3-28 (3-32)": the other sizes' rows
_END = r"(?:\s*\((?!rs\b|ws\b|right\b|wrong\b|for\b|a\b|total\b)[a-z][a-z -]{2,24}\)(?=\s*[:.]))?(?:\s*\+|\s+onwards?|\s+(?:and|&)\s+(?:all\s+)?(?:following|further|subsequent|remaining)(?:\s+(?:rows?|rnds?|rounds?))?)?(?:\s*\((?:for\s+|a\s+total\s+of\s+|total\s+of\s+)?\d{1,3}\s+(?:rows?|rnds?|rounds?)(?:\s+(?:total|in\s+all|altogether))?\))?\s*(?P<side>\((?:right\s+side(?:\s+of\s+work)?|wrong\s+side(?:\s+of\s+work)?|rs|ws)\))?\s*(?:\.\s?(?:—|--|–)|,\s+(?:[a-z]+\s+)?(?:edge|edging|border|mesh|lace|eyelets?|beading|increases?|decreases?|set-?up|armholes?|neck|thumb|heel|crown|brim|shaping)\s*:|[:.)|]|=(?=\s*(?:\d+\s*[a-z]|[*(\[]|rows?\s+\d[^.;]{0,20}\sagain\b|(?:[sdh]{1,2}c|d?tr|htr|inc|dec|st|ch|sl|rep(?:eat)?|work|same|as)\b))|--?(?!\s*r\s?\d|\s+\d{1,4}\s+(?:rep(?:eat)?|same|as|like|continue)\b|\d{1,4}\s+(?:(?:rep(?:eat)?|same|as|like|work|ch|ss|sl)\b|(?:[sdh]{1,2}c|d?tr|htr)\s+(?:in(?:to)?\s+(?:each|every|all)|across|a?round|all|even)\b))|—|–(?!\s*r\s?\d|\s*\d{1,4}\s+(?:rep(?:eat)?|same|as|like|continue)\b))\s*(?P<side2>\((?:right\s+side(?:\s+of\s+work)?|wrong\s+side(?:\s+of\s+work)?|rs|ws)\)\s*[:.]?)?"
_ALT = rf"\s+(?:and|&)\s+(?:all|every|each)\s+(?:other\s+|foll(?:owing|\.)?\s+|subsequent\s+|remaining\s+)?(?:ws|rs|wrong\s+side|right\s+side|even|odd|alt(?:ernate|\.)?)(?:[- ]numbered)?(?:\s+{_WORD})?"
_ORDINALS = "|".join(words()["ordinals"])
_NUMBERS = "|".join(sorted(words()["numbers"], key=len, reverse=True))
_OPEN = re.compile(r"(?P<word>r|rnds?|rows?|rounds?)\s*(?P<first>\d{1,9})(?:\s*(?:-|–|~|&)\s*r?(?P<last>\d{1,9}))?\s+(?=[\d(*\[]|[a-z]+\b|ch\d)", re.IGNORECASE)
_OPEN_BEHIND = re.compile(r"(?P<first>\d{1,3})(?:\s*[-–~]\s*(?P<last>\d{1,3})\s*(?:rows|rnds|rounds)|\s*(?:row|rnd|round))\s+(?=[\d(*\[]|(?!of\b|only\b|at\b|in\b|with\b|each\b|more\b|has\b)[a-z]+\b)", re.IGNORECASE)
_LABEL = re.compile(
    rf"""(?:
      (?P<word>{_WORD}|r)\s*\.?\s*(?P<first>\d{{1,9}}|\{{[^{{}}\n]+\}})(?P<firsts>(?:{_LIST}){{1,3}})?(?:\s*(?P<join>-|–|—|~|to|through|thru|and|&|\+|/)\s*(?:{_WORD}|r)?\s*(?P<last>\d{{1,9}}|[–—-](?=\s?[(\[])|\{{[^{{}}\n]+\}})(?:(?P<ranges>{_RANGES})|(?P<lasts>(?:{_LIST}){{1,3}}|(?:-\d{{1,5}}){{2,}}(?=\s*:)))?)?(?P<alt>{_ALT})?(?(last)(?:,?\s+\(?inc(?:l(?:usive(?:ly)?|uded?)?)?\)?(?=\s*[:—–]|\.?\s+(?:(?:ch|s\.?\s?c|d\.?\s?c|hdc|tr)\b|[*(\[]|-\s)))?)
    | (?P<ofirst>\d{{1,9}})(?:st|nd|rd|th)(?:\s*(?P<ojoin>-|–|to|and|through|thru)\s*(?P<olast>\d{{1,9}})(?:st|nd|rd|th|(?=\s+{_WORD})))?(?P<oalt>\s*(?:and|&)\s+(?:all\s+|every\s+|each\s+)?(?:foll(?:owing|\.)?\s+)?(?:alt(?:ernate|\.)?|other|even|odd|ws|rs)(?:[- ]numbered)?)?\s*(?:patt(?:ern)?\b\.?\s*)?(?P<oword>{_WORD})(?:\s+of\s+(?:the\s+)?patt(?:ern)?\b\.?(?=\s*[.:(]))?(?:,?\s+\(?incl(?:usive(?:ly)?|uded?|\.)?\)?)?
    | (?P<nfirst>\d{{1,9}})(?:\s*(?:-|–|—|to)\s*(?P<nlast>\d{{1,9}}))?\.?\s+(?P<rword>{_WORD})(?:\s*/\s*\d{{1,3}}\s+{_WORD}\s*(?:/|(?=\s[–—-])))?
    | (?P<wword>{_WORD})\s+(?P<wfirst>{_NUMBERS})(?:\s*(?:-|–|to|and)\s*(?P<wlast>{_NUMBERS}))?
    | (?P<spelled>{_ORDINALS})\s+(?P<sword>{_WORD})
    | (?P<shaping>(?:dec|inc)(?:\.|r\.?|reas(?:e|ing))?|shaping)\s+(?P<xword>{_WORD})
    | (?:all\s+|every\s+)?(?P<parity>even|odd|ws|rs|wrong\s+side|right\s+side)(?:[- ]numbered)?\s+(?P<pword>rows|rnds|rounds)
    | (?:next|last|final|following)\s+(?P<many>\d+(?:\s*[(\[][\d\s,:;–-]+[)\]])?\s+)?(?P<nword>{_WORD})
    )(?:{_END}|(?(oword)(?=(?-i:[A-Z])|\d|\*)|(?!)))""",  # "2nd RowCh 3": bold print run into the words
    re.IGNORECASE | re.VERBOSE,
)
_PLAIN = re.compile(r"(?P<word>rows?|rnds?|rounds?)\s?(?P<n>\d{1,7})(?:\s\((?P<side>rs|ws)\))?:\s+(?!\((?:rs|ws|right|wrong)\b)(?=\S)", re.IGNORECASE)
_AS_ANOTHER = re.compile(rf"{_WORD}\s*\d{{1,4}}\s+(?:(?:the\s+)?same\s+)?(?:as|like)\b", re.IGNORECASE)  # "Row 1 as for back"
_BEHIND = re.compile(r"[.;)\]]\s+(?=\w)")
_A_ROW = re.compile(rf"\b{_WORD}\b|\br\s?\d{{1,3}}\s?:", re.IGNORECASE)
_AN_R = re.compile(r"r\s?\d{1,3}(?:\s?[-–]\s?r?\d{1,3})?\s?:", re.IGNORECASE)  # "R3: …. R4: …"
_SEVERAL = re.compile(rf"(?P<word>{_WORD})\s*\.?\s*(?P<list>\d{{1,4}}\s*,\s*\d{{1,4}}(?:\s*,\s*\d{{1,4}})*(?:\s*,?\s*(?:and|&)\s*\d{{1,4}})?){_END}", re.IGNORECASE)
_SEVERAL_R = re.compile(rf"(?P<word>r)\s?(?P<list>\d{{1,4}}\s*(?:,|&|and)\s*r\s?\d{{1,4}}(?:\s*(?:,|&|and)\s*r\s?\d{{1,4}})*|\d{{1,4}}(?:\s*[-–.]\s*r\d{{1,4}}){{2,}}){_END}", re.IGNORECASE)  # "R3, R4, R5:"
_SEVERAL_BEHIND = re.compile(rf"(?P<list>\d{{1,4}}\s*,\s*\d{{1,4}}(?:\s*,\s*\d{{1,4}})*(?:\s*,?\s*(?:and|&)\s*\d{{1,4}})?)\s+(?P<word>{_WORD}){_END}", re.IGNORECASE)
_PART = re.compile(r"(?!(?:next|last)\b)[A-Za-z][A-Za-z &’'-]{2,30}:\s+(?=r|next\s+r|\d{1,3}(?:st|nd|rd|th)\s+r)", re.IGNORECASE)
_BARE = re.compile(r"(?P<first>\d{1,3})(?:\.?\s*[-–~]\s*(?P<last>\d{1,3}))?\s*(?:[:.)|]\s+(?!(?-i:[a-z])\.)|[.)](?=(?:ch|[shd]{1,2}c|h?tr|dtr|rep|sl)\b))", re.IGNORECASE)


_OLD_ORD = r"\d{1,3}(?:st|nd|rd|th|d)"
_OLD = re.compile(
    rf"""(?P<list>{_OLD_ORD}(?:\s*(?:,|and|&|to|-|–)\s*(?:and\s+)?{_OLD_ORD})*)(?:\s+and\s+(?:last|successive|following))?
        (?:\s*(?P<word>{_WORD})(?:{_END}|\s+(?=(?:the\s+)?same\s+as\b|(?:as|like)\s+(?:the\s+)?(?:\d|{_WORD}\s*\d)))|\.?\s*(?:—|--|–)\s*|\.\s+(?=[A-Z✕*(\d])|:\s+(?=[A-Za-z✕*(\d])|\s+r\.(?:\s*(?:—|--|–|:)\s*|\s+(?=[A-Z✕*(\d])))
      | (?P<from>\d{{1,3}})\s+to\s+(?P<to>\d{{1,3}})\s*[.:]\s+(?=[A-Z])""",
    re.IGNORECASE | re.VERBOSE,
)


@record
class Found:
    """A label with its side mark and where the row's text begins."""

    label: Label
    side: str | None
    start: int
    end: int


def plain_label(text: str, at: int, end: int) -> Found | None:
    """The label that nearly all rows have, "Row 12 (RS): ", None for any other: the same as `label_at` gives, in a tenth of its time."""
    m = _PLAIN.match(text, at, end)
    if m is None:
        return None
    word, number, side = m.groups()
    n, stop = Num((int(number),)), m.end()
    label = Label("row" if word.lower().startswith("row") else "rnd", n, n, ONE, text[at : m.end("n")], (), Span(at, stop), "")
    return Found(label, side and side.upper(), at, stop)


def label_at(text: str, at: int, end: int, sizes: int = 1) -> Found | None:
    """The label that starts at an offset, None when none does. Lists of row numbers must have one for each of the sizes."""
    plain = plain_label(text, at, end)
    if plain is not None:
        return plain
    if ROWS_AGAIN.match(text, at, end) is not None:
        return None  # "Rows 4 and 5, 6 times": no label, they are worked again
    several = _SEVERAL.match(text, at, end) or _SEVERAL_BEHIND.match(text, at, end) or _SEVERAL_R.match(text, at, end)
    if several is not None:
        return _several(text, several)
    m = _LABEL.match(text, at, end)
    if m is not None and m["many"] and len(re.findall(r"\d+", m["many"])) not in (1, sizes):
        m = None
    if m is not None and (m["firsts"] or m["lasts"]) and any(m[g] and len(_listed("0", m[g])) != sizes for g in ("firsts", "lasts")):
        m = None
    if m is not None and m["ranges"] and m["ranges"].count("-") + m["ranges"].count("–") + 1 != sizes:
        m = None
    if m is None and (old := _old_label(text, at, end)) is not None:
        return old
    if m is None:
        bare = _OPEN.match(text, at, end) or _OPEN_BEHIND.match(text, at, end) or _BARE.match(text, at, end)
        if bare is None:
            return None
        one, end_of_it = _num(bare["first"]), _num(bare["last"] or bare["first"])
        return Found(Label("none", one, end_of_it, text=bare.group().strip(" .:)"), span=Span(at, bare.end())), None, at, bare.end())
    word = (m["word"] or m["oword"] or m["rword"] or m["wword"] or m["sword"] or m["nword"] or m["xword"] or m["pword"]).lower()
    kind = "row" if word.startswith("row") else "rnd" if word.startswith(("rnd", "round", "rd")) else "none"
    side_text = (m["side"] or m["side2"] or "").lower()
    side = None if not side_text else "RS" if "right" in side_text or "rs" in side_text else "WS"
    first, last, many = _numbers(m)
    said = text[at : m.end()].rstrip(" :.-—–)").split("(")[0].rstrip(" .").strip()
    also: tuple[int, ...] = ()
    if (m["join"] or m["ojoin"] or "").lower() in ("and", "&", "+", "/") and first is not None and last is not None and len(first.values) == len(last.values) == 1:
        low, high = first.values[0] or 0, last.values[0] or 0
        if high > low + 1:  # "Rows 3 and 5": these two
            last, also = first, (high,)
    label = Label(kind, first, last, many, said, also, Span(at, m.end()), _alternate(m))  # type: ignore[arg-type]
    return Found(label, side, at, m.end())


def _alternate(m: re.Match[str]) -> Literal["", "same", "even", "odd"]:
    """Which second rows a label stands for; those on the right side are the odd ones, as the first row is one."""
    if m["pword"]:
        return "odd" if m["parity"].lower() in ("odd", "rs") or "right" in m["parity"].lower() else "even"
    return "same" if m["alt"] or m["oalt"] else ""


def _several(text: str, m: re.Match[str]) -> Found:
    """ "Rnds 5, 6 and 7:"."""
    rows = sorted({int(n) for n in re.findall(r"\d{1,4}", m["list"])})[:MAX_RANGE]
    kind = "row" if m["word"].lower().startswith("row") else "rnd" if m["word"].lower().startswith(("rnd", "round", "rd")) else "none"
    first, last = Num((rows[0],)), Num((rows[-1],))
    span = Span(m.start(), m.end())
    said = text[m.start() : m.end("list")].strip()
    if rows[-1] - rows[0] == len(rows) - 1:
        return Found(Label(kind, first, last, text=said, span=span), None, m.start(), m.end())  # type: ignore[arg-type]
    return Found(Label(kind, first, first, text=said, also=tuple(rows[1:]), span=span), None, m.start(), m.end())  # type: ignore[arg-type]


def _numbers(m: re.Match[str]) -> tuple[Num | None, Num | None, Num]:
    one = Num((1,))
    if m["spelled"]:
        n = Num((words()["ordinals"][m["spelled"].lower()],))
        return n, n, one
    if m["wfirst"]:
        table = words()["numbers"]
        return Num((table[m["wfirst"].lower()],)), Num((table[(m["wlast"] or m["wfirst"]).lower()],)), one
    if m["xword"] or m["pword"]:
        return None, None, one
    if m["nword"]:
        return None, None, Num(tuple(min(int(n), MAX_RANGE) for n in re.findall(r"\d+", m["many"]))) if m["many"] else one
    if m["ranges"]:
        pairs = [(m["first"], m["last"]), *re.findall(r"(\d+)\s*[–-]\s*(\d+)", m["ranges"])]
        begins, ends = ([int(pair[i]) for pair in pairs] for i in (0, 1))
        return Num(tuple(begins) if len(set(begins)) > 1 else (begins[0],)), Num(tuple(ends)), one
    first = _num(m["first"] or m["ofirst"] or m["nfirst"], m["firsts"])
    last = _num(m["last"] or m["olast"] or m["nlast"], m["lasts"]) if m["last"] or m["olast"] or m["nlast"] else first
    return first, last, one


def _listed(first: str, others: str) -> tuple[int | None, ...]:
    """The numbers of a list per size, None for a dash."""
    every = [first, *re.findall(r"\d+" if others.startswith("-") else r"\d+|[–—-]", others)]
    return tuple(int(n) if n.isdigit() else None for n in every)


def _num(text: str, others: str | None = None) -> Num:
    if others:
        return Num(_listed(text, others))
    if text.startswith("{"):
        return Num((), " ".join(text[1:-1].split()))
    return Num((min(int(text), 10_000_000),))


def _old_label(text: str, at: int, end: int) -> Found | None:
    """ "1st.—", "2d.—", "21st, 22nd and 23rd rounds—", "6th and last round:", "3 to 23."."""
    m = _OLD.match(text, at, end)
    if m is None:
        return None
    listed = [int(n) for n in re.findall(r"\d+", m["list"])] if m["list"] else list(range(int(m["from"]), min(int(m["to"]), int(m["from"]) + MAX_RANGE) + 1))
    if m["list"] and re.search(r"to|-|–", m["list"]) and len(listed) == 2:
        listed = list(range(listed[0], min(listed[1], listed[0] + MAX_RANGE) + 1))
    word = (m["word"] or "").lower()
    kind = "row" if word.startswith("row") else "rnd" if word else "none"
    rest = tuple(listed[1:]) if listed[1:] != list(range(listed[0] + 1, listed[-1] + 1)) else ()
    last = listed[0] if rest else listed[-1]
    said = text[at : m.end()].strip(" .:-—–")
    return Found(Label(kind, Num((listed[0],)), Num((last,)), text=said, also=rest, span=Span(at, m.end())), None, at, m.end())  # type: ignore[arg-type]


def labels_in(text: str, start: int, end: int, sizes: int = 1) -> list[Found]:
    """Labels of a paragraph: one at its start, others only after `. ; )`."""
    found: list[Found] = []
    head = label_at(text, start, end, sizes)
    if head is not None:
        found.append(head)
    elif (part := _PART.match(text, start, end)) is not None and (more := label_at(text, part.end(), end, sizes)) is not None and (more.label.kind != "none" or more.label.text[:1] in "rR"):
        found.append(more)  # "Heel: Row 1: …"
    for m in _BEHIND.finditer(text, start, end):
        at = m.end()
        if found and at < found[-1].end or not _A_ROW.search(text, at, end):
            continue
        more = label_at(text, at, end, sizes)
        if more is not None and (more.label.kind != "none" or _AS_ANOTHER.match(text, at, end) or _AN_R.match(text, at, end)):
            found.append(more)
    return found


def one_each(found: list[Found]) -> list[Found]:
    """ "Rounds 1 and 2. … On the next round …": the labels of a line that names several rows and tells each of them."""
    label = found[0].label
    numbers = [n.at(0) for n in (label.first, label.last) if n is not None and len(n.values) == 1]
    if len(found) < 2 or len(numbers) != 2 or (numbers[1] or 0) - (numbers[0] or 0) + 1 != len(found) or any(f.label.first is not None for f in found[1:]):
        return found
    return [changed(found[0], label=changed(label, last=label.first, how_many=ONE)), *found[1:]]
