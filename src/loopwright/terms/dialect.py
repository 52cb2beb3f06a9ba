"""Dialects: which stitch a term means, and which term a stitch has. The facts stand in the TOML files beside this one."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any, NamedTuple

from loopwright.shipped import shipped_table

_TOG = re.compile(r"^(?P<post>fp|bp)?(?P<kind>[a-z]+?)(?P<n>\d+)tog$")
_POST = re.compile(r"^(?P<post>fp|bp)(?P<kind>[a-z]+)$")
_POST_WORDS = {"fp": "front post", "bp": "back post"}


class Term(NamedTuple):
    """A stitch in words: abbreviation, long form, plural of the long form."""

    short: str
    long: str
    plural: str


@dataclass(frozen=True, slots=True, eq=False)  # one object per id: the object is its identity
class Dialect:
    """One set of terms. `letters`: what a spelling's letters mean here (US key); `terms`: how each stitch is said here."""

    id: str
    letters: dict[str, str]
    terms: dict[str, Term]
    words: dict[str, str]
    spellings: dict[str, str]

    def kind_of(self, text: str) -> str | None:
        """The stitch (US key) that a term, abbreviation or plural means; None when it is no stitch."""
        return kind_of(self, " ".join(text.lower().replace(".", " ").split()))

    def term(self, kind: str) -> Term:
        """How a stitch is said; composed kinds (dc3tog, fpdc) are put together; unknown ones are said as they are."""
        known = self.terms.get(kind)
        if known is not None:
            return known
        tog = _TOG.match(kind)
        if tog and tog["kind"] in self.terms:
            base, post = self.terms[tog["kind"]], tog["post"] or ""
            words = f"{_POST_WORDS[post]} " if post else ""
            long = f"{words}{base.long} {tog['n']} together"
            return Term(f"{post}{base.short}{tog['n']}tog", long, long)
        around = _POST.match(kind)
        if around and around["kind"] in self.terms:
            base = self.terms[around["kind"]]
            words = _POST_WORDS[around["post"]]
            return Term(f"{around['post']}{base.short}", f"{words} {base.long}", f"{words} {base.plural}")
        return Term(kind, kind, kind if kind.endswith("s") else kind + "s")


@lru_cache(maxsize=64)  # while a name is typed, each letter makes another dialect
def _extended(which: Dialect, names: frozenset[tuple[str, str]]) -> Dialect:
    spellings, letters = dict(which.spellings), dict(which.letters)
    for name, kind in names:
        for way in (name, f"{name}s") if not name.endswith(("s", "st")) else (name, f"{name}s") if name.endswith("st") else (name,):
            spellings[way] = f"own {kind}"
            letters[f"own {kind}"] = kind
    return Dialect(which.id, letters, which.terms, which.words, spellings)


def extended(which: Dialect, names: dict[str, str]) -> Dialect:
    """The dialect with names of a pattern's own: lower case name -> kind. Equal names give the same object."""
    return _extended(which, frozenset(names.items()))


def _load(name: str) -> dict[str, Any]:
    return shipped_table("loopwright.terms", name)


@cache
def _spellings() -> dict[str, str]:
    data = _load("spellings.toml")
    return {s: key for table in ("letters", "shapes") for key, ways in data[table].items() for s in ways}


@cache
def dialect(name: str) -> Dialect:
    """The dialect "us", "uk" or "old". Raises ValueError for another name, naming the three."""
    if name not in ("us", "uk", "old"):
        raise ValueError(f"no terms called {name!r}: there are us, uk and old")
    data = _load(f"dialects/{name}.toml")
    letters: dict[str, str] = {}
    terms: dict[str, Term] = {}
    words: dict[str, str] = {}
    if "extends" in data:
        base = dialect(data["extends"])
        letters, terms, words = dict(base.letters), dict(base.terms), dict(base.words)
    letters.update(data.get("letters", {}))
    terms.update({k: Term(*v) for k, v in data.get("terms", {}).items()})
    words.update(data.get("words", {}))
    return Dialect(name, letters, terms, words, _with_own_words(terms, letters))


def spellings() -> frozenset[str]:
    """Every way to spell a stitch in some dialect, in lower case."""
    return frozenset(said for name in ("us", "uk", "old") for said in dialect(name).spellings)


def _with_own_words(terms: dict[str, Term], letters: dict[str, str]) -> dict[str, str]:
    """The spellings of all dialects and every word this one says itself, so that what is written can be read."""
    spellings = dict(_spellings())
    for kind, term in terms.items():
        own = f"own {kind}"
        for said in term:
            if said.lower() not in spellings:
                spellings[said.lower()] = own
                letters[own] = kind
    return spellings


@cache
def kind_of(which: Dialect, text: str) -> str | None:
    """See Dialect.kind_of; `text` is lower case with single spaces."""
    key = which.spellings.get(text)
    if key is not None:
        return which.letters.get(key, key)
    tog = re.match(r"^(?:(fp|bp) ?)?([a-z ]+?) ?(\d+) ?(?:tog|together)$", text)
    tog = tog or re.match(r"^(?:(fp|bp) ?)?([a-z ]+?)-?(\d+)-?tog$", text)
    if tog:
        inner = kind_of(which, tog.group(2).strip())
        return f"{tog.group(1) or ''}{inner}{int(tog.group(3))}tog" if inner else None
    post = re.match(r"^(fp|bp|front post|back post|raised|fr|br) ?([a-z ]+?)$", text) or re.match(r"^()([a-z ]+?) ?(fp|bp)$", text)
    if post:
        inner = kind_of(which, post.group(2).strip())
        side = post.group(1) or post.group(3) if post.lastindex and post.lastindex >= 3 else post.group(1)
        return f"{'bp' if (side or '').startswith('b') else 'fp'}{inner}" if inner else None
    return None
