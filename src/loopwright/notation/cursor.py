"""A place in a row's tokens, and the small things read everywhere: numbers, lists of sizes, words."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from loopwright.model.tree import Node, Num
from loopwright.notation.scanner import Token, words
from loopwright.source import Span
from loopwright.terms import Dialect

FILLER = frozenset(
    "the a an of then now work working make making do please also again and st's just only crochet more rather loosely tightly "
    "carefully neatly as usual thus so well up one's your you to all it".split()
)
SIZE_SEPS = frozenset({",", ":", ";", "-", "–", "/", "—"})


@dataclass(slots=True)
class Cursor:
    """Tokens of one row and where the reader stands.

    `sizes`: how many sizes lists in this pattern have; `working`: inside "…, working …"; `shaping`: inside "shell of …".
    """

    tokens: list[Token]
    dialect: Dialect
    sizes: int = 1
    names: frozenset[str] = frozenset()
    at: int = 0
    unknown: int = 0
    depth: int = 0
    swept: int = -1  # where "around" or "across" was read behind an instruction that does not say "each"
    working: bool = False
    shaping: bool = False
    layered: bool = False  # behind "working through both layers"
    repeats: int = 0  # told so far; each may hold the ones before it
    fruitless: int = 0  # how often "…, working …" was read in vain
    numbers_behind: bool | None = None  # whether the row tells numbers behind their stitches, once that was looked for
    definitions: list[tuple[str, tuple[Node, ...]]] = field(default_factory=list)
    first_star: dict[int, int] = field(default_factory=dict)
    lows: list[str] = field(init=False)  # the tokens in lower case, and empty ones for what is before the first
    kinds: list[str] = field(init=False)  # their sorts likewise

    def __post_init__(self) -> None:
        self.lows = [t.low for t in self.tokens]
        self.lows += ("",) * 4
        self.kinds = [t.kind for t in self.tokens]
        self.kinds += ("end",) * 4

    def put_back(self, at: int, token: Token) -> None:
        """Puts a token in front of the one at an index."""
        self.tokens.insert(at, token)
        self.lows.insert(at, token.low)
        self.kinds.insert(at, token.kind)

    def token(self, ahead: int = 0) -> Token | None:
        """The token `ahead` of the next one, None past the end."""
        i = self.at + ahead
        return self.tokens[i] if 0 <= i < len(self.tokens) else None

    def kind(self, ahead: int = 0) -> str:
        """The sort of the token `ahead` of the next one; "end" past the end."""
        try:
            return self.kinds[self.at + ahead]
        except IndexError:
            return "end"

    def low(self, ahead: int = 0) -> str:
        """The token's text in lower case, "" at the end."""
        try:
            return self.lows[self.at + ahead]
        except IndexError:
            return ""

    def take(self) -> Token:
        """The next token, which is taken."""
        t = self.tokens[self.at]
        self.at += 1
        return t

    def accept(self, *choices: str) -> bool:
        """Takes the next token if its text is one of the choices."""
        if self.low() in choices:
            self.at += 1
            return True
        return False

    def accept_words(self, phrase: str) -> bool:
        """Takes several words if they all stand here."""
        parts = _split(phrase)
        if self.low() == parts[0] and self.lows[self.at : self.at + len(parts)] == parts:
            self.at += len(parts)
            return True
        return False

    def skip(self, *choices: str) -> None:
        """Passes any run of these words."""
        while self.low() in choices and self.at < len(self.tokens):
            self.at += 1

    @property
    def done(self) -> bool:
        """Whether all tokens are taken."""
        return self.at >= len(self.tokens)

    def span_from(self, start: int) -> Span:
        """From the token at index `start` to the last one taken."""
        if not self.tokens or start >= len(self.tokens):
            return Span(0, 0)
        last = self.tokens[max(start, min(self.at, len(self.tokens)) - 1)]
        return Span(self.tokens[start].start, last.end)

    # --- numbers -------------------------------------------------------------------------------------------------

    def number(self) -> Num | None:
        """A number, a list of sizes "26 (30, 34)", or a blank; None (and nothing taken) where there is none."""
        t = self.token()
        if t is None:
            return None
        if t.kind == "blank":
            self.at += 1
            return Num((), t.value, Span(t.start, t.end))
        if t.text in ("-", "–", "—") and self.sizes > 1 and self.kind(1) == "open" and self.kind(2) in ("num", "sep"):
            self.at += 1
            others = self._size_list()  # the first size does not do it: "– (3, 4)"
            if others:
                return Num((None, *others), None, Span(t.start, self.tokens[self.at - 1].end))
            self.at -= 1
            return None
        if t.kind != "num" or not isinstance(t.value, int):
            return None
        self.at += 1
        listed = self._size_list()
        end = self.tokens[self.at - 1].end
        if listed:
            return Num((t.value, *listed), None, Span(t.start, end))
        return Num((t.value,), None, Span(t.start, t.end))

    def _size_list(self) -> tuple[int | None, ...]:
        """The other sizes after a first number: "(30, 34)", "[30:34]"; nothing taken unless their number is right."""
        if self.sizes < 2:
            return ()
        start = self.at
        if self.low() == "," and self.kind(1) == "open" and self.kind(2) == "num":
            self.at += 1  # "13, [12, 12, 10]"
        if self.kind() != "open":
            self.at = start
            return self._unbracketed()
        values: list[int | None] = []
        while self.kind() == "open" and len(values) + 1 < self.sizes:
            held = self._bracketed(values)
            if held is None:
                self.at = start
                return ()
            if self.low() == "," and self.kind(1) == "open" and len(values) + 1 < self.sizes:
                self.at += 1
            elif held == 1 and self.kind() == "num" and len(values) + 1 < self.sizes and isinstance(self.tokens[self.at].value, int):
                values.append(self.take().value)  # "28 (32) 36 (40)"
        if len(values) + 1 == self.sizes:
            return tuple(values)
        self.at = start
        return ()

    def _bracketed(self, values: list[int | None]) -> int | None:
        """The numbers of one bracket, put behind the values; how many, None where something else stands in it."""
        before = len(values)
        self.at += 1
        while not self.done and self.kind() != "close":
            t = self.take()
            if t.kind == "num" and isinstance(t.value, int):
                values.append(t.value)
            elif t.text in ("-", "–", "—") and (self.kind() == "close" or self.low() in SIZE_SEPS) and (len(values) == before or self.tokens[self.at - 2].text in (",", ":", "(", "[")):
                values.append(None)
            elif t.text not in SIZE_SEPS and t.text.lower() != "and":
                return None
        if self.done:  # never closed: no list
            return None
        self.at += 1
        return len(values) - before

    def _unbracketed(self) -> tuple[int, ...]:
        """ "80-90-100 sts", "40, 44, 48 sts" for three sizes or more; nothing taken where there are not as many numbers as sizes."""
        sep, more = self.low(), self.sizes - 1
        if more < 2 or sep not in ("-", "–", "/", ",") or self.kind(2 * more) in ("kind", "open", "close") and sep == ",":
            return ()
        numbers = [self.token(2 * i + 1) for i in range(more)]
        if any(t is None or t.kind != "num" or not isinstance(t.value, int) for t in numbers) or any(self.low(2 * i) != sep for i in range(more)) or self.low(2 * more) == sep:
            return ()
        self.at += 2 * more
        return tuple(t.value for t in numbers if t is not None)


@cache
def _split(phrase: str) -> list[str]:
    return phrase.split()


def thing_word(text: str) -> str | None:
    """The thing a word names (sp, loop, ring …), None when it names none."""
    return words()["things"].get(text.lower().rstrip("."))
