"""Words of other languages as patterns are written in them, each with the reader's own English word. The tables stand in reading/*.toml."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any, NamedTuple

from loopwright.shipped import shipped_table

if TYPE_CHECKING:
    from loopwright.terms.languages import Language, Word

LANGUAGES = {"de": "German", "fr": "French", "es": "Spanish"}
_NOUNS = {
    "st": ("st", "st"), "row": ("line", "row"), "rnd": ("line", "rnd"), "ch-sp": ("sp", "ch sp"), "sp": ("sp", "sp"),
    "ring": ("ring", "ring"), "mesh": ("filet", "sps"), "magic_ring": ("ring", "magic ring"), "tch": ("chain", "ch"),
    "foundation": ("edge", "foundation ch"), "corner": ("thing", "corner"), "group": ("thing", "group"),
    "back": ("lp", "back loop only"), "front": ("lp", "front loop only"), "third": ("lp", "third loop only"),
}
_WORDS = {
    "rep": ("rep", "rep"), "turn": ("turn", "turn"), "skip": ("skip", "skip"), "join": ("join", "join"), "together": ("tog", "tog"),
    "fasten_off": ("off", "fasten off"), "evenly": ("noun", "evenly"), "to_end": ("toend", "to end"),
}
_DIGRAPHS = {"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "œ": "oe", "æ": "ae"}
_LETTERS = str.maketrans({**{k: v for k, v in _DIGRAPHS.items() if k in "ßœæ"}, "’": "'"})


class Entry(NamedTuple):
    """A word or phrase: its words without accents, what sort of word it is, the English for it; `stop`: it is written with a full stop."""

    words: tuple[str, ...]
    sort: str
    made: str
    stop: bool


class Order(NamedTuple):
    """A rule of word order: sorts of words as they stand, and how the English reader wants them ("skip {1} {2}").

    `end`: what goes to the end of the line. `after` and `unless_after` tell the sort of word before, `before` and `unless_before` the one
    behind.
    """

    found: str
    made: str
    end: str = ""
    after: str = ""
    unless_after: str = ""
    before: str = ""
    unless_before: str = ""


@dataclass(frozen=True, slots=True, eq=False)  # one object per language
class Table:
    """How one language is read. `entries`: by first word, the longest first. `ordinals`: how a number says that it is one ("2e", "2.")."""

    code: str
    entries: dict[str, tuple[Entry, ...]]
    ordinals: str
    headings: dict[str, str]
    orders: tuple[Order, ...]
    verbs_last: frozenset[str]
    turns: tuple[str, ...]
    rows: frozenset[str]
    rounds: frozenset[str]
    rings: frozenset[str]
    parts: dict[str, str]
    copies: re.Pattern[str]


def plain(text: str) -> str:
    """Lower case without accents: how words are looked up ("Häkelnadel" as "hakelnadel", "Größe" as "grosse")."""
    low = text.lower().translate(_LETTERS)
    if low.isascii():
        return low
    return "".join(c for c in unicodedata.normalize("NFD", low) if not unicodedata.combining(c))


def folded(text: str) -> str:
    """The same letters without their accents, one for one: an English reader takes "Träger" for a treble and an unknown word."""
    if text.isascii():
        return text
    return "".join(unicodedata.normalize("NFD", c)[0] if c.isalpha() else c for c in text)


def _ways(way: str) -> set[str]:
    """A spelling without accents, and with the two letters that stand for one with an accent ("haekeln")."""
    low = way.lower()
    long = low
    for letter, two in _DIGRAPHS.items():
        long = long.replace(letter, two)
    return {plain(low), plain(long)}


@cache
def _data(name: str) -> dict[str, Any]:
    return shipped_table("loopwright.terms", f"reading/{name}.toml")


def _split(way: str) -> tuple[str, ...]:
    return tuple(way.replace("-", " ").replace("'", "' ").replace(".", " ").split())


def _entries(code: str, data: dict[str, Any]) -> dict[str, tuple[Entry, ...]]:
    """The table's own words, and the terms that this language is written with (`languages`) where the table does not know them."""
    from loopwright.terms.languages import language  # noqa: PLC0415 - most patterns are in English and never come here

    found: dict[str, dict[tuple[str, ...], Entry]] = {}
    own = ((sort, made, way) for sort, said in data["words"].items() for made, ways in said.items() for way in ways)
    for sort, made, way in (*own, *_terms(language(code))):
        for said in _ways(way):
            words = _split(said)
            if not words:
                continue
            entry = Entry(words, sort, "" if made == "-" else made, way.endswith("."))
            known = found.setdefault(words[0], {}).get(words)
            found[words[0]][words] = entry if known is None else known._replace(stop=known.stop or entry.stop)
    return {first: tuple(sorted(every.values(), key=lambda e: -len(e.words))) for first, every in found.items()}


def _terms(of: Language) -> Iterator[tuple[str, str, str]]:
    """Sort, English and spelling of every stitch and thing as the language's own terms say it."""
    posts = [f"{side}{base}" for side in ("fp", "bp") for base in ("sc", "hdc", "dc", "tr")]
    for kind in (*of.stitches, *posts):
        if kind == "block":
            continue
        sort = "chain" if kind == "ch" else "kind"
        for way in (*_said(of.stitch(kind)), *of.also.get(kind, ())):
            yield sort, kind, way
    for key, (sort, made) in _NOUNS.items():
        for way in (*(_said(of.nouns[key]) if key in of.nouns else ()), *of.also.get(key, ())):
            yield sort, made, way
    for key, (sort, made) in _WORDS.items():
        for way in (*(_said(of.words[key]) if key in of.words else ()), *of.also.get(key, ())):
            yield sort, made, way


def _said(word: Word) -> tuple[str, ...]:
    return word.short, word.long, word.plural, word.definite, word.definites


def _parts(code: str) -> dict[str, str]:
    """English names of a pattern's parts by their own, as they are written ("erstes quadrat": "first square")."""
    from loopwright.terms.languages import language  # noqa: PLC0415 - as above

    found: dict[str, str] = {}
    for english, own in language(code).parts.items():
        if english == "border" or plain(own) not in found:  # French has one word for border and edging
            found[plain(own)] = english
    return found


def _copies(ways: list[str]) -> re.Pattern[str]:
    """The title of a part with how many are made of it: "Ärmel (2 Stück)"."""
    number = r"\d{1,4}(?:\s*[(\[][\d,;:\s]{1,60}[)\]])?"
    forms = [re.escape(way).replace(r"\{n\}", f"(?P<n{i}>{number})") for i, way in enumerate(ways)]
    return re.compile(rf"(?P<title>[^\n]{{2,60}}?)\s*\((?:{'|'.join(forms)})\)\s*:?\s*$", re.IGNORECASE)


@cache
def table(code: str) -> Table:
    """The table of "de", "fr" or "es". Raises ValueError for another language, naming the three."""
    if code not in LANGUAGES:
        raise ValueError(f"no table to read {code!r}: there are {', '.join(LANGUAGES)}")
    data, shared = _data(code), _data("order")
    orders = tuple(Order(**o) for o in (*data.get("order", ()), *shared["order"]))
    headings = {plain(way): name for name, ways in data["headings"].items() for way in ways}
    headings.update({said: name for name, ways in data["headings"].items() for way in ways for said in _ways(way)})
    words = {key: frozenset(plain(w) for w in data[key]) for key in ("rows", "rounds", "rings")}
    return Table(
        code, _entries(code, data), data["ordinal_endings"], headings, orders, frozenset(data.get("verbs_last", ())), tuple(data["turns"]),
        words["rows"], words["rounds"], words["rings"], _parts(code), _copies(data["copies"]),
    )


@cache
def marks(code: str) -> frozenset[str]:
    """Words, without accents, that tell a pattern in a language ("en", "de", "fr", "es") from one in another."""
    return frozenset(said for way in _data("marks")[code]["marks"] for said in _ways(way))


def language_named(name: str) -> str | None:
    """The code of a language by its code or name ("Deutsch", "german"); None for one that is not read."""
    said = plain(name.strip())
    return next((code for code in ("en", *LANGUAGES) if said == code or said in _data("marks")[code]["names"]), None)
