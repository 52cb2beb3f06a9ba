"""Words of drawings in English, in the terms of one of its dialects."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from loopwright.drawing.speech.speech import Speech
from loopwright.drawing.speech.things import Again, Made, Thing
from loopwright.shipped import shipped_table
from loopwright.terms import dialect

ORDINAL = {2: "nd", 3: "rd"}
_WHERE = {
    "in": "in", "back": "in the back loop of", "front": "in the front loop of", "third": "in the third loop of",
    "front-post": "around the front of", "back-post": "around the back of", "underside": "in the other side of", "between": "between",
}  # fmt: skip
_ALONE = {"": "", "space": "in {} ch sp", "ring": "in ring", "row-end": "in {} row end", "around": "around {} st"}


class English:
    """See Speech. `terms`: us, uk or old."""

    def __init__(self, terms: str) -> None:
        """Raises ValueError for terms that there are none of."""
        self.terms = terms
        self._dialect = dialect(terms)
        self._frames = frames()

    def say(self, key: str, **slots: int | str) -> str:
        """A frame with its slots filled; its singular where there is one and n is 1."""
        one = self._frames.get(f"{key}-one") if slots.get("n") == 1 else None
        return (one or self._frames[key]).format(**slots)

    def stitch(self, kind: str, n: int = 1) -> str:  # noqa: ARG002 - abbreviations have no plural
        """Its short form."""
        return self._dialect.term(kind).short

    def named(self, kind: str) -> str:
        """As in "hdc: half double crochet"."""
        term = self._dialect.term(kind)
        return term.short if term.short == term.long else f"{term.short}: {term.long}"

    def name(self, said: str) -> str:
        """As it is."""
        return said

    def measure(self, said: str) -> str:
        """As it is."""
        return said

    def row(self, label: str) -> str:
        """As it is."""
        return label

    def own(self, said: str) -> str:
        """As they are."""
        return said

    def decimal(self, number: str) -> str:
        """As it is."""
        return number

    def listed(self, words: Sequence[str]) -> str:
        """As in "A, B and C"."""
        return " and ".join(x for x in (", ".join(words[:-1]), *words[-1:]) if x)

    def worked(self, things: Sequence[Thing]) -> str:
        """As in "dc in each of next 5 sts, ch 2, (sc in next st, 2 sc in next st) 3 times"."""
        return ", ".join(self._thing(t) for t in things)

    def _thing(self, thing: Thing) -> str:
        if isinstance(thing, Again):
            return f"({self.worked(thing.things)}) {thing.times} times"
        if isinstance(thing, Made):
            return self._made(thing)
        said = self._made(thing.made)
        for noun in ("st", "ch sp", "ch", "row end"):
            if said.endswith(f" next {noun}"):
                return f"{said.removesuffix(f'next {noun}')}each of next {thing.times} {noun}s"
        return f"({said}) {thing.times} times"

    def _made(self, made: Made) -> str:
        if made.what == "skip":
            return f"skip {made.n} {'ch' if made.of_chain else 'st'}{'s' * (made.n > 1)}"
        if made.what == "chain":
            text = f"ch {made.n}"
        elif made.what == "join":
            text = "join with sl st" if self.terms == "us" else "join with ss"
        else:
            name = self._dialect.term(made.kind).short
            text = f"{f'{made.n} {name}' if made.n > 1 else name} {_into(made)}".rstrip()
        return text + (" with a picot" if made.picot else "")


def _into(made: Made) -> str:
    """The place of stitches."""
    if made.hook:
        return f"{_WHERE[made.where]} {made.hook}{ORDINAL.get(made.hook, 'th')} ch from hook"
    which = "same" if made.same else "next"
    if made.where in _ALONE:
        return _ALONE[made.where].format(which)
    noun = "ch" if made.of_chain else "st"
    return f"{_WHERE[made.where]} {which} {made.over} {noun}s" if made.over > 1 else f"{_WHERE[made.where]} {which} {noun}"


@cache
def frames() -> Mapping[str, str]:
    """Everything that drawings say, in English."""
    found: dict[str, str] = shipped_table("loopwright.drawing.speech", "english.toml")["frames"]
    return found


@cache
def in_english(terms: str) -> Speech:
    """English in these terms. Raises ValueError for terms that there are none of."""
    return English(terms)
