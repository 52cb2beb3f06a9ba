"""Languages other than English: how each says stitches, things and small words. The facts stand in languages/*.toml."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, NamedTuple

from loopwright.shipped import shipped_table

LANGUAGES = ("de", "fr", "es", "nl", "sv", "da", "pt", "it")
_TOG = re.compile(r"^(?P<base>(?:fp|bp)?[a-z]+?)(?P<n>\d+)tog$")
_POST = re.compile(r"^(?P<post>fp|bp)(?P<base>[a-z]+)$")

Sure = Literal["seen", "custom", "memory", "own"]


class Word(NamedTuple):
    """A stitch, thing or small word: abbreviation, long form, plural of the long form, gender, how surely it is known.

    `gender` is m, f, n, c (Dutch de-words, Swedish and Danish en-words) or "". `sure`: "seen" in the source that the table names,
    "custom" or "memory" where a native maker should look at it, "own" for a name that the pattern itself gives.
    `definite` and `definites`: one and many where the word stands after an article ("das nächste halbe Stäbchen").
    """

    short: str
    long: str
    plural: str
    gender: str
    sure: Sure
    definite: str
    definites: str

    @property
    def weak(self) -> bool:
        """Whether no source was seen for it."""
        return self.sure in ("custom", "memory")


@dataclass(frozen=True, slots=True, eq=False)  # one object per id: the object is its identity
class Language:
    """One language.

    `stitches` by US key; `nouns` and `words` by our own keys; `also`: other ways to write the same, for reading. `contractions`:
    words that melt together ("de le" -> "du"), each an expression and what stands instead. `sizes`, `parts`: names of sizes and of
    parts by the English.
    """

    id: str
    name: str
    own_name: str
    locale: str
    source: str
    stitches: dict[str, Word]
    nouns: dict[str, Word]
    words: dict[str, Word]
    also: dict[str, tuple[str, ...]]
    composed: dict[str, tuple[str, str, str, str, Sure]]
    contractions: tuple[tuple[re.Pattern[str], str], ...]
    sizes: dict[str, str]
    parts: dict[str, str]

    def stitch(self, kind: str) -> Word:
        """How a stitch (US key) is said; composed kinds (dc3tog, fphdc) are put together; unknown ones are said as they are."""
        known = self.stitches.get(kind) or self.nouns.get(kind)
        if known is not None:
            return known
        tog, post = _TOG.match(kind), _POST.match(kind)
        if tog and self._has(tog["base"]):
            return self._compose("together", self.stitch(tog["base"]), tog["n"])
        if post and post["base"] in self.stitches:
            return self._compose("front_post" if post["post"] == "fp" else "back_post", self.stitches[post["base"]], "")
        return Word(kind, kind, kind, "", "own", kind, kind)

    def knows(self, kind: str) -> bool:
        """Whether a stitch has a term of this language."""
        return self.stitch(kind).sure != "own"

    def _has(self, base: str) -> bool:
        post = _POST.match(base)
        return base in self.stitches or bool(post and post["base"] in self.stitches)

    def _compose(self, frame: str, plain: Word, n: str) -> Word:
        short, long, plural, gender, sure = self.composed[frame]
        slots = {"n": n, "short": plain.short, "long": plain.long, "plural": plain.plural}
        one, many = long.format(**slots), plural.format(**slots)
        weak: Sure = plain.sure if plain.weak and sure == "seen" else sure
        if frame == "together":
            return Word(short.format(**slots), one, many, gender, weak, one, many)
        defined = {**slots, "long": plain.definite, "plural": plain.definites}
        return Word(short.format(**slots), one, many, plain.gender, weak, long.format(**defined), plural.format(**defined))


def _words(table: dict[str, list[str]], definite: dict[str, list[str]]) -> dict[str, Word]:
    """Entries of five (short, long, plural, gender, sure) or of three (short, long, sure)."""
    found: dict[str, Word] = {}
    for key, entry in table.items():
        short, long, plural, gender, sure = entry if len(entry) == 5 else (entry[0], entry[1], entry[1], "", entry[2])
        one, many = definite.get(key, (long, plural))
        found[key] = Word(short, long, plural, gender, _sure(sure), one, many)
    return found


def _sure(text: str) -> Sure:
    return "seen" if text == "seen" else "custom" if text == "custom" else "memory"


@cache
def language(code: str) -> Language:
    """The language of a two-letter code. Raises ValueError for one that there is not, naming those that there are."""
    if code not in LANGUAGES:
        raise ValueError(f"no language called {code!r}: there are en, {', '.join(LANGUAGES)}")
    data: dict[str, Any] = shipped_table("loopwright.terms", f"languages/{code}.toml")
    definite = data.get("definite", {})
    return Language(
        data["id"], data["name"], data["own_name"], data["locale"], data["source"],
        _words(data["stitches"], definite), _words(data["nouns"], definite), _words(data["words"], definite),
        {key: tuple(ways) for key, ways in data["also"].items()},
        {key: (v[0], v[1], v[2], v[3], _sure(v[4])) for key, v in data["composed"].items()},
        tuple((re.compile(before), after) for before, after in data.get("contractions", ())),
        data.get("sizes", {}), data.get("parts", {}),
    )
