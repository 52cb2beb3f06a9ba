"""Words kept as they stand: terms that are surely terms are exchanged, blanks filled, lists of sizes brought down to one size."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache, lru_cache

from loopwright.model.tree import Num
from loopwright.terms import Dialect, dialect
from loopwright.terms.phrases import phrases
from loopwright.wording.voice import Voice

_LIST = re.compile(r"(?P<first>\d+(?:\.\d+)?|[-–—])\s?[(\[](?P<rest>(?:\d+(?:\.\d+)?|[-–—])(?:\s*[,:;]\s*(?:\d+(?:\.\d+)?|[-–—]))*)[)\]]")
_DASHES, _GONE = ("-", "–", "—"), "\0"
_ENTRY = re.compile(r"\d+(?:\.\d+)?|[-–—]")
_CLAUSE = re.compile(rf"[^,;.(\[*{_GONE}]*{_GONE}[^,;.)\]]*(?:[,;]\s*)?")
_NUMBER = r"\d+(?:\s?[(\[][\d\s,:;–-]+[)\]])?"
_BLANK = re.compile(r"\{(?P<name>[^{}\n]+)\}(?:\s*(?P<sign>[+−-])\s*(?P<more>\d{1,6})\b(?!\s*(?:-|sts?\b|times)))?")
_CHAINS_FIRST = re.compile(rf"(?<![\w{{-])(?P<n>{_NUMBER})\s(?P<word>ch|chain)(?![\w-])(?!\s(?:sps?|spaces?|loops?|lps?)\b)", re.IGNORECASE)
_CHAINS_AFTER = re.compile(rf"(?<![\w-])(?P<word>ch|chain)\s(?P<n>{_NUMBER})(?![\d-])(?!\s(?:sps?|spaces?|loops?|lps?)\b)", re.IGNORECASE)
_SPACE_FIRST = re.compile(r"(?<![\w{-])(?P<n>\d+)-(?P<word>ch|chain)(?![\w-])", re.IGNORECASE)
_SPACE_AFTER = re.compile(r"(?<![\w-])(?P<word>ch|chain)-(?P<n>\d+)(?![\d-])", re.IGNORECASE)
_DOUBTFUL = re.compile(r"\b(?:singles|doubles|trebles|plain st(?:itche)?s?|double st(?:itche)?s?)\b", re.IGNORECASE)
_AFTER = re.compile(r"\s+(?:strand|thread|yarn|wool|cotton|layer|knot|thickness|length|width)", re.IGNORECASE)
_SEVERAL = re.compile(r"(?<![\d-])(?!1\b)\d+\.?\s*$")
LONGEST_SHORT = 4
_FIGURE_FIRST = re.compile(r"(?:^|[.]\s+|\):\s+)\d+\s+(?:ch|chain)\b", re.IGNORECASE)
_WORD_FIRST = re.compile(r"(^|[.]\s+|\):\s+)(c)(h(?:ain)?\s\d)")
_AT_START = re.compile(r"\s*(?:or\s+\d+\s*ch\b|at\s+(?:the|each)\s+(?:start|beg)|counts?\b|does\b)", re.IGNORECASE)
_PLACE_BEFORE = re.compile(r"\b(?:not|next|first|last|of|each|remaining|rem|the|to|in)\s*$", re.IGNORECASE)


def translate(voice: Voice, text: str, *, loose: bool = False) -> str:
    """A text in the terms of the voice, with its blanks filled and its sizes brought down to one where one is asked for.

    `loose`: the text is an instruction, so that every spelling of a stitch is one.
    """
    return _capitals(text, swap(voice, pick_size(voice, fill_blanks(voice, text)), loose=loose))


def _capitals(before: str, after: str) -> str:
    """A sentence that began with a number ("3 ch counts …") begins with a capital where a word comes first now."""
    if before == after or not _FIGURE_FIRST.search(before):
        return after
    return _WORD_FIRST.sub(lambda m: m[1] + m[2].upper() + m[3], after)


def swap(voice: Voice, text: str, *, loose: bool = False) -> str:
    """A text in the terms of the voice: stitches, "miss" and "skip", chains before or after their number; full words if asked for."""
    if not voice.kept:
        return _swap(voice, text, loose=loose)
    names = re.compile(rf"((?<![A-Za-z])(?:{'|'.join(map(re.escape, voice.kept))})s?(?![A-Za-z]))", re.IGNORECASE)
    return "".join(part if i % 2 else _swap(voice, part, loose=loose) for i, part in enumerate(names.split(text)))


def _swap(voice: Voice, text: str, *, loose: bool) -> str:
    if voice.source_terms != voice.terms or voice.full_words and loose:
        text = swap_terms(text, voice.source, voice.dialect, loose=loose, full=voice.full_words)
    if voice.source_terms != voice.terms:
        text = _skips(voice, text)
    if voice.source_terms != voice.terms or voice.full_words:
        text = _chains(voice, text)
    return in_full(voice, text) if voice.full_words else text


# --- terms -----------------------------------------------------------------------------------------------------------


@lru_cache(maxsize=8)
def _terms(source: Dialect) -> tuple[re.Pattern[str], dict[str, tuple[str, int]]]:
    """The terms of a dialect that stand for one stitch only: (kind, which form) by their words in lower case."""
    table: dict[str, tuple[str, int]] = {}
    for kind, term in source.terms.items():
        for form, said in enumerate(term):
            if source.kind_of(said.lower()) == kind:
                table.setdefault(said.lower(), (kind, form))
    return _expression([re.escape(w) for w in sorted(table, key=len, reverse=True)]), table


@lru_cache(maxsize=8)
def _spellings(source: Dialect) -> tuple[re.Pattern[str], dict[str, tuple[str, int]]]:
    """Every way to spell a stitch, "d. c." and "trs" too: for instructions, where such words are nothing else."""
    table: dict[str, tuple[str, int]] = {}
    for said in source.spellings:
        kind = source.kind_of(said)
        if kind is not None and kind in source.terms:
            form = 0 if len(said.replace(" ", "")) <= LONGEST_SHORT else 2 if said.endswith("s") else 1
            table.setdefault(_letters(said), (kind, form))
    ways = [_way(w) for w in sorted(source.spellings, key=len, reverse=True)]
    return _expression(ways), table


def _way(spelling: str) -> str:
    """An expression for a spelling: a stop may follow each letter of an abbreviation."""
    if " " in spelling:
        return r"[.]?[ ]?".join(map(re.escape, spelling.split(" ")))
    return r"[.]?".join(map(re.escape, spelling)) if len(spelling) <= LONGEST_SHORT else re.escape(spelling)


def _expression(ways: list[str]) -> re.Pattern[str]:
    any_way = "|".join(ways)
    stop = r"(?:\.(?=\s+(?-i:[a-z(])))?"
    return re.compile(rf"(?<![A-Za-z-])(?P<post>fp|bp)?(?P<term>{any_way})(?P<tog>\d+tog)?(?![A-Za-z]){stop}", re.IGNORECASE)


def _letters(said: str) -> str:
    return re.sub(r"[.\s]", "", said.lower())


def swap_terms(text: str, source: Dialect, target: Dialect, *, loose: bool = False, full: bool = False) -> str:
    """Exchanges the terms of one dialect for those of another in running words.

    `loose`: all spellings of instructions, also those of one's own terms; `full`: abbreviations become full words.
    """
    if source.id == target.id and not full:
        return text
    pattern, table = _spellings(source) if loose else _terms(source)

    def one(m: re.Match[str]) -> str:
        found = table.get(_letters(m["term"]) if loose else m["term"].lower())
        if found is None or source.terms[found[0]] == target.term(found[0]) and not full or _AFTER.match(text, m.end("term")):
            return m[0]
        form = found[1]
        if full and form == 0 and not m["tog"] and not m["post"]:
            several = _SEVERAL.search(text, max(0, m.start() - 12), m.start()) and text[m.end() : m.end() + 1] != "-"
            form = 2 if several else 1
        said = target.term(found[0])[form]
        if m["term"][:1].isupper() and not m["post"]:
            said = said[:1].upper() + said[1:]
        return f"{m['post'] or ''}{said}{m['tog'] or ''}"

    return pattern.sub(one, text)


def _skips(voice: Voice, text: str) -> str:
    """As in "miss" for "skip" and the other way round, where a number or a place follows."""
    words = {w for d in ("us", "uk") for w in (dialect(d).words["skip"], dialect(d).words["skip_long"])}
    own = voice.dialect.words
    ways = "|".join(sorted(words, key=len, reverse=True))

    def one(m: re.Match[str]) -> str:
        if m[0].lower() in (own["skip"], own["skip_long"]):
            return m[0]
        said = own["skip"] if m[0].lower() in ("sk", "skip") and not voice.full_words else own["skip_long"]
        said = own["skip"] if m[0].lower() == "miss" and not voice.full_words else said
        return said[:1].upper() + said[1:] if m[0][:1].isupper() else said

    return re.sub(rf"\b(?:{ways})\b(?=\s+(?:\d|next|the|first|last|one|each|ch\b|st\b|sts\b))", one, text, flags=re.IGNORECASE)


def _chains(voice: Voice, text: str) -> str:
    """As in "ch 3" and "ch-3 sp", or "3 ch" and "3-ch sp", whichever these terms say."""
    number_first = voice.say("chain", n=1).startswith("1")
    spaces_first = voice.noun("ch-run", n=1).startswith("1")

    def moved(m: re.Match[str]) -> str:
        if _PLACE_BEFORE.search(m.string, max(0, m.start() - 12), m.start()) and not _AT_START.match(m.string, m.end()):
            return m[0]
        said = f"{m['n']} {m['word'].lower()}" if number_first else f"{m['word'].lower()} {m['n']}"
        return said[:1].upper() + said[1:] if m["word"][:1].isupper() else said

    text = (_CHAINS_AFTER if number_first else _CHAINS_FIRST).sub(moved, text)
    if spaces_first:
        return _SPACE_AFTER.sub(lambda m: f"{m['n']}-{m['word'].lower()}", text)
    return _SPACE_FIRST.sub(lambda m: f"{m['word'].lower()}-{m['n']}", text)


@cache
def _long_words(terms: str) -> tuple[re.Pattern[str], dict[str, tuple[str, str]]]:
    table: dict[str, tuple[str, str]] = {}
    which = dialect(terms)
    for term in which.terms.values():
        if term.short != term.long:
            table.setdefault(term.short.lower(), (term.long, term.plural))
    for short, long in phrases(terms).abbreviations.items():
        base, one = short.removesuffix("(s)"), re.sub(r"\(e?s\)$", "", long)
        table.setdefault(base.lower(), (one, one))
        if short.endswith("(s)"):
            many = one + (long[len(one) + 1 : -1] if "(" in long else "s")
            table.setdefault(f"{base}s".lower(), (many, many))
    ways = "|".join(re.escape(w) for w in sorted(table, key=len, reverse=True))
    number, tog = r"(?P<n>(?<!\d)\d+\s?)?", r"(?:(?P<tog>\d+)tog)?"
    return re.compile(rf"(?<![A-Za-z]){number}(?P<post>fp|bp)?(?P<term>{ways}){tog}(?![A-Za-z])", re.IGNORECASE), table


def in_full(voice: Voice, text: str) -> str:
    """Abbreviations written out, in the terms that the text has now."""
    pattern, table = _long_words(voice.terms)

    def one(m: re.Match[str]) -> str:
        if m["term"].lower() == "st" and (m["n"] or "").isdigit():
            return m[0]  # an ordinal: 1st
        long, plural = table[m["term"].lower()]
        several = m["n"] and m["n"].strip() != "1" and not m["tog"] and text[m.end() : m.end() + 1] != "-"
        said = plural if several else long
        if m["tog"]:
            said += f" {m['tog']} together"
        said = {"fp": "front post ", "bp": "back post "}.get((m["post"] or "").lower(), "") + said
        first = m["term"][:1].isupper() and not m["term"].isupper() or (m["post"] or "")[:1].isupper()
        number = f"{m['n'].strip()} " if m["n"] else ""
        return number + (said[:1].upper() + said[1:] if first and not number else said)

    return pattern.sub(one, text)


def doubtful_words(text: str, source: Dialect, target: Dialect) -> list[str]:
    """Words in prose that mean a stitch in one set of terms and cannot be exchanged safely."""
    if source.id == target.id:
        return []
    pattern, _ = _terms(source)
    rest = pattern.sub(" ", text)
    return sorted({m.group().lower() for m in _DOUBTFUL.finditer(rest)})


# --- numbers ---------------------------------------------------------------------------------------------------------


def pick_size(voice: Voice, text: str) -> str:
    """Lists of sizes reduced to one size; lists that have another number of entries stay. What the size does not work goes."""
    of, told = (voice.told_of, voice.told) if voice.told else (voice.sizes, tuple(range(voice.sizes)))
    shown = told if voice.size is None else told[voice.size : voice.size + 1]
    if of < 2 or len(shown) == of:
        return text

    def pick(m: re.Match[str]) -> str:
        values = [m["first"], *re.split(r"\s*[,:;]\s*", m["rest"])]
        if len(values) != of:
            return m.group()
        kept = [values[s] for s in shown]
        kept = kept[:1] if len(set(kept)) == 1 else kept
        if len(kept) == 1:
            return _GONE if kept[0] in _DASHES else kept[0]
        return voice.say("sizes", first=kept[0], rest=voice.say("size_sep").join(kept[1:]))

    picked = _LIST.sub(pick, text)
    return re.sub(r" {2,}", " ", _CLAUSE.sub(" ", picked)) if _GONE in picked else picked


def fill_blanks(voice: Voice, text: str) -> str:
    """Blanks whose numbers are known, with what is added to them."""

    def one(m: re.Match[str]) -> str:
        values = voice.blanks.get(" ".join(m["name"].split()))
        if values is None:
            return m[0]
        more = int(m["more"] or 0) * (-1 if m["sign"] in ("−", "-") else 1)
        return voice.values([None if v is None else v + more for v in values])

    return _BLANK.sub(one, text) if "{" in text else text


def with_numbers(voice: Voice, text: str, offset: int, numbers: Mapping[tuple[int, int], Num]) -> str:
    """A text cut from the pattern at `offset`, with the lists of the tree in place of those that stand in it.

    They differ where the tree has been brought down to some of the sizes. Blanks are left to `fill_blanks`.
    """
    for (start, end), number in sorted(numbers.items(), reverse=True):
        said = text[start - offset : end - offset] if offset <= start and end <= offset + len(text) else "0"
        if _LIST.fullmatch(said) and len(_ENTRY.findall(said)) not in (voice.sizes, voice.told_of):
            text = text[: start - offset] + voice.num(number) + text[end - offset :]
    return text
