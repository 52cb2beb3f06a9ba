"""How a text is to be said: terms, sizes, short or long. Turns numbers, stitches and things into words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from loopwright.model.tree import Num, Thing
from loopwright.source import Span
from loopwright.terms import Dialect, dialect
from loopwright.terms.phrases import Phrases, phrases

_ORDINALS = {1: "st", 2: "nd", 3: "rd"}
_SP = frozenset({"sp", "loop", "mesh"})


@dataclass(frozen=True)
class Voice:
    """What a text is written for. `size` None means all sizes in brackets; `sizes` is how many there are.

    `blanks`: numbers per size of blanks that have been filled, for words that are kept as written. `names`: what the
    designer calls her groups and special stitches. `kept`: names that are left as they are wherever they stand.
    `told`, `told_of`: which of how many sizes in the text's own lists these sizes are, where they are some of them.
    `pieces`: where a list is given, every instruction that is said is added to it, with the place of the words that it came from.
    """

    terms: str
    source_terms: str
    sizes: int = 1
    size: int | None = None
    full_words: bool = False
    spelled_out: bool = False
    blanks: Mapping[str, tuple[int | None, ...]] = field(default_factory=dict)
    names: Mapping[str, str] = field(default_factory=dict)
    kept: tuple[str, ...] = ()
    told: tuple[int, ...] = ()
    told_of: int = 0
    pieces: list[tuple[str, Span]] | None = None

    @property
    def language(self) -> str:
        """The language written in."""
        return "en"

    @property
    def prefers_written(self) -> bool:
        """Whether words as they stand in the pattern go before a frame that would say the same less closely."""
        return True

    def keep(self, said: str) -> str:
        """Words that stay as the pattern has them."""
        return said

    def prose(self, said: str) -> str:
        """The designer's own sentences."""
        return said

    def caution(self, key: str, said: str) -> str:  # noqa: ARG002 - other languages go by the key
        """A caution of ours, by its key, as it is said in English."""
        return said

    def many(self, number: Num | None) -> bool:
        """Whether what a number counts stands in the plural."""
        return self.single(number) != 1

    @cached_property
    def dialect(self) -> Dialect:
        """The terms written in."""
        return dialect(self.terms)

    @cached_property
    def source(self) -> Dialect:
        """The terms the pattern was written in."""
        return dialect(self.source_terms)

    @cached_property
    def phrases(self) -> Phrases:
        """Frames and nouns."""
        return phrases(self.terms, self.full_words)

    def say(self, frame: str, **slots: object) -> str:
        """A frame with its slots filled."""
        return self.phrases.frames[frame].format(**slots)

    def head(self, frame: str, **slots: object) -> str:
        """A frame of the heading with its slots filled."""
        return str(self.phrases.heading[frame]).format(**slots)

    def enter(self, section: str) -> None:
        """Begins a section."""

    def name(self, said: str) -> str:
        """A part's or a size's name as this text has it."""
        return said

    # --- numbers -------------------------------------------------------------------------------------------------

    def num(self, number: Num | None) -> str:
        """A number for one size, or for all: "60", "60 (64, 72)", a dash for a size that has none."""
        if number is None:
            return self.say("one")
        if not number.values:
            return self.say("unfilled", name=number.blank or "?")
        return self.values(number.values)

    def values(self, values: Sequence[int | None]) -> str:
        """Values per size in words; one where they are all the same."""
        if self.size is not None:
            values = (values[self.size if len(values) > 1 and self.size < len(values) else 0],)
        said = [self.say("dash") if v is None else str(v) for v in values]
        if len(set(said)) == 1:
            return said[0]
        return self.say("sizes", first=said[0], rest=self.say("size_sep").join(said[1:]))

    def single(self, number: Num | None) -> int | None:
        """The one value a number has for what is written; None where sizes differ or it is not known."""
        if number is None:
            return 1
        if not number.values:
            return None
        if self.size is not None:
            return number.at(self.size)
        return number.values[0] if len(set(number.values)) == 1 else None

    def works(self, values: Sequence[int | None]) -> bool:
        """Whether what is written has any of these values."""
        if self.size is None:
            return any(v is not None for v in values)
        return values[self.size if len(values) > 1 and self.size < len(values) else 0] is not None

    def times(self, number: Num | None, more: int = 0) -> str:
        """As in "twice", "6 times", "6 (7, 8) times". `more` is added to the number first."""
        shown = Num(tuple(None if v is None else v + more for v in number.values), number.blank) if number and more else number
        one = self.single(shown)
        if one in (1, 2):
            return self.say("once" if one == 1 else "twice")
        return self.say("times", n=self.num(shown))

    def ordinal(self, k: int) -> str:
        """As in "2nd", "11th"."""
        return f"{k}{'th' if 10 < k % 100 < 14 else _ORDINALS.get(k % 10, 'th')}"

    def ordinals(self, number: Num) -> str:
        """As in "4th", "4th (4th, 3rd)"; a dash for a size that has none."""
        if not number.values:
            return self.num(number)
        said = [self.say("dash") if v is None else self.say("spacing_kth", kth=self.ordinal(v)) for v in number.values]
        if self.size is not None:
            said = [said[self.size if len(said) > 1 and self.size < len(said) else 0]]
        return said[0] if len(set(said)) == 1 else self.say("sizes", first=said[0], rest=self.say("size_sep").join(said[1:]))

    # --- stitches and things -------------------------------------------------------------------------------------

    def stitch(self, kind: str, many: bool = False) -> str:
        """A stitch as these terms say it. Abbreviations of stitches take no plural; names of groups do."""
        if kind in self.names:
            return f"{self.names[kind]}s" if many else self.names[kind]
        term = self.dialect.term(kind)
        if self.full_words or term.short == term.long:
            return term.plural if many else term.long
        return f"{term.short}s" if many and kind in ("v-st", "cross-st", "knot-st", "loop-st") else term.short

    def noun(self, key: str, many: bool = False, **slots: object) -> str:
        """A thing that is no stitch."""
        one, more = self.phrases.nouns[key]
        return (more if many else one).format(**slots)

    def thing(self, thing: Thing, many: bool = False) -> str:
        """What a place is made of, in words."""
        kind = thing.kind
        if kind in _SP:
            if thing.length:
                return self.noun("ch-sp", many, n=thing.length)
            return self.noun("gap" if thing.length == 0 else "ch-sp-any" if kind == "sp" else kind, many)
        if kind in ("ring", "corner", "tch"):
            return self.say(kind)
        if kind == "join":
            return self.say("join_place")
        if kind in self.phrases.nouns:
            return self.noun(kind, many)
        return self.stitch(kind, many)
