"""The abbreviations that a text uses, and only those; the designer's own among them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.model.tree import Document, HeadLine, Item, Row, SpecialStitch
from loopwright.terms import dialect
from loopwright.wording.as_written import translate
from loopwright.wording.voice import Voice

LONGEST_NAME = 30
_COMMON = frozenset({"ch", "sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr"})
_LISTING = re.compile(r"\s*(?:list\s+of\s+)?abbreviations?(?:\s+used)?\s*(?:\([^()]*\))?\s*:?\s*", re.IGNORECASE)
_ONE_ENTRY = re.compile(r"\s*+(?P<short>[\w() ]{1,20}?)(?:\s*[=:–—]|\s+-)\s+\S")
_ENTRY = re.compile(r"\s*+(?P<short>[^=,;]{1,30}?)\s*+[=:]\s*(?P<long>(?:[^,;()]|\([^()]*\))+)[,;.]?")


def abbreviations(voice: Voice, text: str, own: dict[str, str]) -> tuple[tuple[str, str], ...]:
    """The list for a text, short and long form by the alphabet."""
    found: dict[str, str] = {}
    for kind in _kinds_in(voice, text):
        term = voice.dialect.term(kind)
        if term.short != term.long:
            found[term.short] = term.long
    for short, long in {**voice.phrases.abbreviations, **own}.items():
        if _is_used(short, text):
            found.setdefault(short, long)
    return tuple((s, found[s]) for s in sorted(found, key=str.lower))


def own_abbreviations(voice: Voice, items: Sequence[Item]) -> dict[str, str]:
    """What the pattern defines beyond the stitches and words that every list has: "bl(s) = block(s)"."""
    found: dict[str, str] = {}
    usual = {k.removesuffix("(s)").lower() for k in voice.phrases.abbreviations} | {"ch", "skip", "miss"}
    for item in items:
        if not isinstance(item, HeadLine) or item.name != "abbreviations":
            continue
        for m in _ENTRY.finditer(item.value):
            short = m["short"].strip()
            base = re.sub(r"\(e?s\)$", "", short)
            if base.lower() not in usual and not _is_stitch(voice, base):
                found[short] = translate(voice, m["long"].strip())
    return found


def told_again(voice: Voice, document: Document) -> frozenset[int]:
    """Items of a list of abbreviations, one to a line, that the written text has in its own list; what only this pattern has stays."""
    title = next((i for i, item in enumerate(document.items) if _LISTING.fullmatch(_written(document, item))), None)
    if title is None or any(isinstance(i, Row) for i in document.items[:title]):
        return frozenset()
    usual = {k.removesuffix("(s)").lower() for k in voice.phrases.abbreviations} | {"ch", "skip", "miss"}
    gone, kept, before = {title}, False, document.items[title]
    for i, item in enumerate(document.items[title + 1 :], title + 1):
        m = _ONE_ENTRY.match(_written(document, item))
        if m is None or isinstance(item, Row) or "\n\n" in document.text[before.span.end : item.span.start].replace(" ", ""):
            break
        base = re.sub(r"\(e?s\)$", "", m["short"]).lower()
        known = base in usual or _is_stitch(voice, base)
        gone, kept, before = gone | ({i} if known else set()), kept or not known, item
    return frozenset(gone - {title} if kept else gone)


def _written(document: Document, item: Item) -> str:
    return document.text[item.span.start : item.span.end]


def own_names(document: Document) -> dict[str, str]:
    """What the designer calls her special stitches, by kind: "V st" where others write V-st."""
    which = dialect(document.terms)
    found: dict[str, str] = {}
    for item in document.items:
        told = item.text if isinstance(item, SpecialStitch) else ""
        if isinstance(item, HeadLine) and item.name.startswith("special"):
            told = item.value
        name = re.split(r"\s*[=:(]", told.strip(), maxsplit=1)[0]
        kind = which.kind_of(name.lower()) if 0 < len(name) <= LONGEST_NAME else None
        if kind is not None and kind in which.terms and kind not in _COMMON:
            found.setdefault(kind, name)
    return found


def kept_names(document: Document) -> tuple[str, ...]:
    """Names of two words and more that the pattern gives to stitches of its own ("bean st"): no part of them is a term."""
    told = [s for s in (*document.specials, *document.items) if isinstance(s, SpecialStitch)]
    names = {n for s in told for n in (s.name, s.abbreviation) if n and " " in n}
    return tuple(sorted(names, key=len, reverse=True))


def _is_stitch(voice: Voice, short: str) -> bool:
    """Whether an abbreviation is one that the terms themselves say differently or spell out."""
    kind = voice.source.kind_of(short)
    if kind is None:
        return False
    term = voice.source.terms.get(kind)
    return term.short != term.long if term is not None else "tog" in kind or kind[:2] in ("fp", "bp")


def _is_used(short: str, text: str) -> bool:
    base, many = re.sub(r"\(e?s\)$", "", short), "(?:e?s)?" if short.endswith("s)") else ""
    flags = re.NOFLAG if base.isupper() else re.IGNORECASE
    return bool(re.search(rf"(?<![A-Za-z\d]){re.escape(base)}{many}(?![A-Za-z])", text, flags))


def _kinds_in(voice: Voice, text: str) -> list[str]:
    shorts = {voice.dialect.term(k).short.lower(): k for k in voice.dialect.terms}
    ways = "|".join(re.escape(s) for s in sorted(shorts, key=len, reverse=True))
    kinds: list[str] = []
    for m in re.finditer(rf"(?<![A-Za-z])(fp|bp)?({ways})(\d+tog)?(?![A-Za-z])", text, re.IGNORECASE):
        kind = f"{(m[1] or '').lower()}{shorts[m[2].lower()]}{m[3] or ''}"
        if kind not in kinds:
            kinds.append(kind)
    return kinds
