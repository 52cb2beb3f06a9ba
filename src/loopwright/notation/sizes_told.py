"""Which sizes a pattern tells, and which rows are told for some of them only."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from loopwright.model.tree import Row
from loopwright.source import Span

_FIRST_SIZE = re.compile(r"\s*+([^,;()\[\]]+?)\s*+[(\[](?!(?:to\s+)?fits?\b|about|approx|finished|shown|\d+\s*[-–](?!\s*\d+\s*(?:-\s*\d+|m|mths?|mos?|months?|y|yrs?|years?)\b))([^()\[\]]+)[)\]]\s*+(months?|mths?|mos?|years?|yrs?|cm|in(?:ches)?)?\s*+(?:\.(?:\s+[A-Z].*)?)?\s*$", re.IGNORECASE)
_ONLY = re.compile(r"\(?(?:for\s+)?(?:the\s+)?(?P<names>[\w ,&/-]{1,60}?)\s+sizes?\s+only\)?\s*[:.—–-]?\s*|\(?for\s+(?:the\s+)?(?P<plain>[\w ,&/-]{1,40}?)\s+only\)?\s*(?:[:.—–-]\s*|$)|\(?(?:for\s+)?(?:the\s+)?sizes?\s+[(\[]?(?P<after>[\w ,&/-]{1,60}?)[)\]]?\s+only\)?\s*(?:[:.—–-]\s*|$)", re.IGNORECASE)
_ONLY_BARE = re.compile(r"(?P<open>[(\[])?(?P<names>\w[\w ,&/-]{0,60}?)\s+only(?(open)[)\]]\s*[:.—–-]?\s*|\s*(?:[:.—–-]\s*|$))|(?:for\s+)?(?:the\s+)?sizes?\s++(?P<told>\w[\w ,&/-]{0,60}?)\s*$", re.IGNORECASE)  # "(M, L only) Rnd 3: …", "Sizes M & L"
_ROW_FOLLOWS = r"(?:next\s+)?(?:rows?|rnds?|rounds?)\b|r\d|(?:ch(?:ain)?|work|make)\s+\d|fasten\s+off|rep(?:eat)?\s+(?:rows?|rnds?|rounds?|last)\b"
_FOR = r"(?:for\s+)?(?:the\s+)?(?:sizes?\s++(?P<names>\w[\w ,&/-]{0,60}?)|(?P<plain>\w[\w ,&/-]{0,40}?)\s++sizes?)(?:\s+only)?\s*+:\s*+"
_FOR_ROW = re.compile(rf"{_FOR}(?:(?={_ROW_FOLLOWS})|$)", re.IGNORECASE)  # "Sizes M and L: Rnd 3: …"
_IN_LINE = re.compile(rf"(?<=[.;)\]])\s++(?={_FOR}(?:{_ROW_FOLLOWS}))", re.IGNORECASE)
_ORDINALS = ("first 1st", "second 2nd", "third 3rd", "fourth 4th", "fifth 5th", "sixth 6th", "seventh 7th", "eighth 8th", "ninth 9th", "tenth 10th")
_ALL_SIZES = re.compile(r"\(?(?:for\s+)?all\s+sizes\)?\s*[:.—–-]?\s*", re.IGNORECASE)
_TOLD = re.compile(r"^sizes?\s*(?:(?P<colon>[:–—-])\s*|(?=[^()\n]{1,20}[(\[]|[A-Z\d]{1,3}(?:\s?[/|–-]\s?[A-Z\d]{1,3}){2,}\s*$))(?P<names>\S.*)$", re.IGNORECASE | re.MULTILINE)
_BELOW = re.compile(r"^[ \t]*sizes?[ \t]*\n[ \t]*(?P<names>[^\n(\[]{1,30}[(\[][^()\[\]\n]+,[^()\[\]\n]+[)\]])[ \t]*$", re.IGNORECASE | re.MULTILINE)
_A_MEASURE = re.compile(r"(?:about|approx\w*\.?|ca\.?)?\s*\d[\d.½¼¾ ]*\s*(?:cm|mm|m|in|ins|inch|inches|\"|″|”)(?:[ .][^,;()]*)?", re.IGNORECASE)  # the one size's finished size
_BRACKETS_MEET = re.compile(r"[)\]]\s*,?\s*[(\[]")  # "S (M, L)(XL, 2XL)"
_LISTS_MEET = re.compile(r"[)\]](?<=\d[)\]])\s?[(\[](?=\d+\s*[,)\]])")
_OTHERS = re.compile(r"[(\[](\d{1,9}(?:\s*[,:;]\s*\d{1,9}|\s?[-–]\s?\d{1,9}(?=\s?[-–)\]]))*)[)\]]")  # behind a number: the other sizes'
_NO_SIZE = re.compile(r"(?:x|\*|row|rnd|round|times)\s*$", re.IGNORECASE)
_BY_TURNS = re.compile(r"[^()\[\],;\n]+(?:[(\[][^()\[\],;\n]+[)\]][^()\[\],;\n]*){2,}$")  # "S (M) L (XL)"
_DASHED = re.compile(r"(?:(?:\d?X{0,4}[SL]|[A-H]|M|\d{1,3}|small|medium|large|newborn|child|teen|adult)(?:\s*[–—/|-]\s*(?=\S)|$)){3,}", re.IGNORECASE)  # "S - M - L"
_HYPHENS = re.compile(r"(?:(?:extra )?(?:small|medium|large)|[SML]|X{1,3}[SL]|\d{1,2}(?=(?:\s?-\s?\d{1,2}){2})|(?<=-)\d{1,2}|(?<=- )\d{1,2})(?:\s?-\s?(?=\w)|$)", re.IGNORECASE)
_SLASHED = re.compile(r"(?<![\d/])\d{2,4}(?:/\d{2,4}){2,}(?![\d/])")
SLASHED_LEAST = 3
_CHANGES = re.compile(r"\b(?:changes|(?:larger|smaller|other)\s+sizes?)\b[^.\n]{0,60}?\b(?:parenthes[ei]s|brackets)\b", re.IGNORECASE)  # "Changes for sizes 12 and 16 are in parentheses."
_LABELLED = re.compile(r"^[ \t]*(?:rnds?|rows?|rounds?)\s?\d{1,3}(?:\s?[-–]\s?\d{1,3})?\s?\[\d{1,3}(?:\s?[-–]\s?\d{1,3})?\]\s?:", re.IGNORECASE | re.MULTILINE)  # "Rnd 9 [10]:", of two sizes
LONGEST_NUMBER = 9
_IN_LABEL = re.compile(r"(?:rows?|rnds?|rounds?|r)\s*\d[\d\s–-]*\s*(?P<only>\((?:for\s+)?(?:sizes?\s+)?(?P<names>[\w ,&/-]{1,60}?)(?:\s+sizes?)?(?P<word>\s+only)?\))\s*[:.—–-]", re.IGNORECASE)
_AT_END = re.compile(r"(?P<only>[(\[](?:for\s+)?(?:sizes?\s+)?(?P<names>[\w ,&/-]{1,60}?)(?:\s+sizes?)?(?P<word>\s+only)[)\]])(?=\s*\.?\s*$)", re.IGNORECASE)


def sizes_only(text: str, at: int, end: int, sizes: tuple[str, ...], only: tuple[int, ...] | None) -> tuple[int, tuple[int, ...] | None]:
    """ "For large size only:" holds until "All sizes:" or a blank line's section; gives where the words go on and the sizes meant."""
    if len(sizes) < 2:
        return at, None
    everyone = _ALL_SIZES.match(text, at, end)
    if everyone:
        return everyone.end(), None
    m = _ONLY.match(text, at, end)
    if m is not None and ((found := _meant(m["names"] or m["plain"] or m["after"] or "", sizes)) or sizes[0] == "size 1" and m["after"]):
        return m.end(), found  # of none where the text names no sizes, and so not which this is: "Size 6 only:"
    m = _FOR_ROW.match(text, at, end)
    if m is not None and (found := _meant(m["names"] or m["plain"], sizes, every=True)):
        return m.end(), found
    m = _ONLY_BARE.match(text, at, end)
    if m is not None and 0 < len(found := _meant(m["names"] or m["told"], sizes, every=True)) < len(sizes):
        return m.end(), found
    return at, only


def parts_of(text: str, start: int, end: int, sizes: tuple[str, ...]) -> list[tuple[int, int]]:
    """A line in parts, where it tells of one size after another: "Size S: Fasten off. Size M: Rnd 9: …"."""
    if len(sizes) < 2:
        return [(start, end)]
    cuts = [m.end() for m in _IN_LINE.finditer(text, start, end) if _meant(m["names"] or m["plain"], sizes, every=True)]
    return list(itertools.pairwise([start, *cuts, end]))


def in_label(text: str, at: int, end: int, sizes: tuple[str, ...]) -> tuple[str, tuple[int, ...] | None]:
    """ "Rnd 6 (M and L only): …": the text with those words turned into spaces, and the sizes meant, None where none are told."""
    m = _IN_LABEL.match(text, at, end) or _AT_END.search(text, at, end) if len(sizes) > 1 else None
    found = _meant(m["names"], sizes, every=m["word"] is None) if m is not None else ()
    if m is None or not found:
        return text, None
    return text[: m.start("only")] + " " * (m.end("only") - m.start("only")) + text[m.end("only") :], found


def without_dashes(row: Row) -> Row:
    """A row whose printed count has a dash for some sizes: those do not work it."""
    values = row.printed[0].n.values if row.printed else ()
    if row.sizes is not None or None not in values:
        return row
    return replace(row, sizes=tuple(i for i, v in enumerate(values) if v is not None))


def _meant(said: str, sizes: tuple[str, ...], *, every: bool = False) -> tuple[int, ...]:
    """The sizes that are named; with `every` none where a name is no size's."""
    said = re.sub(r"^sizes?\s+", "", said.lower().strip())  # "for sizes M, L only:"
    names = [n.strip() for n in re.split(r",|&|\band\b|/", said) if n.strip()]
    found = [{i for i, size in enumerate(sizes) if _means(n, size, i, len(sizes))} for n in names]
    return () if every and not all(found) else tuple(sorted(set().union(*found)))


def _names(said: str, colon: bool) -> tuple[str, ...]:
    """Names out of a line; without a colon it must be a list: "Sizes 1 (2, 3)", not "Size 5 (2 mm)"."""
    if _BY_TURNS.match(said):
        inside, outside = re.findall(r"[(\[]([^()\[\]]+)", said), re.split(r"[(\[][^()\[\]]+[)\]]", said)
        if any(c.isdigit() for c in "".join(inside)) and not any(c.isdigit() for c in "".join(outside)):
            return tuple(n.strip() for n in outside if n.strip())  # "Small (80 cm) Medium (90 cm)"
        return tuple(n.strip() for n in re.split(r"[()\[\]]", said) if n.strip())
    if _DASHED.fullmatch(said.strip(" .")):
        return tuple(n.strip() for n in re.split(r"[–—/|-]", said.strip(" .")))
    first = _FIRST_SIZE.match(said)  # "S (M, L, XL)": the first size, the others in brackets
    if first is None and not colon or first is not None and not colon and "," not in first[2]:
        return ()
    if first is not None and re.fullmatch(rf"(?:{_HYPHENS.pattern}){{2,}}", first[2].strip(), re.IGNORECASE):
        return (first[1].strip(), *(n.strip() for n in re.split("-", first[2])))  # "Small (Medium-Large)"
    listed = f"{first[1]}, {first[2].replace(':', ',') if first[3] or ',' not in first[2] else first[2]}" if first else said
    unit = f" {first[3]}" if first and first[3] else ""
    return tuple(n.strip() + unit for n in re.split(r"[,;]", listed) if n.strip())[:30]


def _means(said: str, size: str, index: int, of: int) -> bool:
    """Whether a name said in the rows means a size: its name, its initials, "larger", "smallest", "two largest"."""
    low = size.lower()
    if low == f"size {said}" and said.isdigit():
        return True
    if index < len(_ORDINALS) and said in _ORDINALS[index].split():
        return True
    if low == f"size {index + 1}" and _unnamed(said, index, of):
        return True
    if said == low or said == low[:1] or said == "".join(w[0] for w in low.split()):
        return True
    n = 2 if said.startswith(("two ", "2 ")) else 1
    if "largest" in said or said in ("large", "larger") and of == 2:
        return index >= of - n
    if "smallest" in said or said in ("small", "smaller") and of == 2:
        return index < n
    return False


_BY_PLACE = {2: ("small s", "large l"), 3: ("small s", "medium m", "large l"), 4: ("small s", "medium m", "large l", "extra-large xl")}


def _unnamed(said: str, index: int, of: int) -> bool:
    """Whether a name means a size by its place, where the text names none: "Size 3 only", "Small only"."""
    return said == str(index + 1) or of in _BY_PLACE and said in _BY_PLACE[of][index].split()


_ENDS = re.compile(r"[ .;]*(?:\n|\Z|\()")
_MEET = tuple(f"{a}{gap}{b}" for a in ")]" for gap in ("", " ") for b in "([")


def sizes_of(text: str, written: str) -> tuple[str, ...]:
    """The names of the sizes; where none are told, as many as the lists of numbers have. `text` is `written` without its quiet words."""
    told = _TOLD.search(text) if "size" in text.lower() else None
    if told is not None and _A_MEASURE.fullmatch(told["names"].strip()):
        told = None
    elif told is None and "size" in text.lower() and (below := _BELOW.search(text)) is not None and (names := _names(written[below.start("names") : below.end("names")], True)):
        return names
    if told and (names := _names(_BRACKETS_MEET.sub(", ", written[told.start("names") : told.end("names")]), told["colon"] is not None)):
        return names
    text = text[:200_000]
    if any(meet in text for meet in _MEET):
        text = _LISTS_MEET.sub(", ", text)
    votes: dict[int, int] = {}
    dashed = 0
    for m in _OTHERS.finditer(text):
        at = _number_before(text, m.start())
        if at is None:
            continue
        n = len(re.findall(r"\d{1,9}", m[1])) + 1
        if n == 3 and re.search(r"[-–]", m[1]):
            dashed += _grows(text[at : m.start()], m[1])
            continue  # a range, not two sizes, unless such lists come time and again
        ends = _ENDS.match(text, m.end(), m.end() + 40) is not None
        if n == 2 and (ends or _NO_SIZE.search(text[max(0, at - 7) : at])):
            continue
        votes[n] = votes.get(n, 0) + (3 if n > 2 else 1)
    slashed = [m.group().count("/") + 1 for m in _SLASHED.finditer(text)] if not votes and "/" in text else []
    for n in set(slashed):
        votes[n] = slashed.count(n) if slashed.count(n) >= SLASHED_LEAST else 0  # "57/63/69" time and again
    if dashed >= SLASHED_LEAST or dashed and _CHANGES.search(written) is not None:
        votes[3] = votes.get(3, 0) + dashed
    if (labelled := len(_LABELLED.findall(text)) if "[" in text else 0) > 1:
        votes[2] = votes.get(2, 0) + labelled
    best = max(votes, key=lambda k: votes[k], default=1)
    if not 1 < best <= 30 or not votes[best]:
        return ("one size",)
    return _named_in_rows(written, best) or tuple(f"size {i + 1}" for i in range(best))


_NUMBERED = re.compile(r"^[ \t]*(?:for\s+)?sizes?\s+(?P<names>\d{1,2}(?:\s*(?:,|and|&|,\s*and)\s*\d{1,2}){0,8})\s+only\b", re.IGNORECASE | re.MULTILINE)


def _named_in_rows(text: str, many: int) -> tuple[str, ...]:
    """The names of so many sizes, where rows are told for some of them only, "Sizes 6, 8 and 10 only: …"; the smallest may have no row of its own."""
    numbers = sorted({int(n) for m in _NUMBERED.finditer(text) for n in re.findall(r"\d{1,2}", m["names"])}) if "only" in text else []
    if not numbers or numbers[-1] <= many or len(numbers) not in (many - 1, many):
        return ()
    return (*(() if len(numbers) == many else (f"smaller than {numbers[0]}",)), *(f"size {n}" for n in numbers))


def named_in_rows(text: str, sizes: tuple[str, ...]) -> tuple[Span, str] | None:
    """Where sizes got their names from the rows told for some of them, and how that is said; None where the text names them, or nothing does."""
    first = _NUMBERED.search(text) if len(sizes) > 1 and _TOLD.search(text) is None and _named_in_rows(text, len(sizes)) == sizes else None
    return None if first is None else (Span(*first.span()), f"the sizes are called after the rows that are told for some of them: {', '.join(sizes)}")


def _grows(first: str, others: str) -> bool:
    """Whether numbers stand as those of larger and larger sizes do, "20 (25-25)", or with the middle one first, "24 (20-28)"."""
    numbers = [int(n) for n in re.findall(r"\d{1,9}", f"{first} {others}")]
    return numbers == sorted(numbers) or numbers[1] < numbers[0] < numbers[2]


def _number_before(text: str, at: int) -> int | None:
    """Where the number begins that stands before an offset, blanks between; None where none does."""
    while at and text[at - 1].isspace():
        at -= 1
    end = at
    while at and end - at < LONGEST_NUMBER and text[at - 1].isdecimal():
        at -= 1
    return at if at < end else None
