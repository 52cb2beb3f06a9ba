"""From text to tokens: one compiled expression, spans kept. Knows spellings, not grammar."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache
from typing import Any, NamedTuple

from loopwright.shipped import shipped_table
from loopwright.terms import Dialect

MAX_NUMBER = 10_000_000


class Token(NamedTuple):
    """A piece of text. `kind`: kind (a stitch; value its US key), num, ord, times, word, blank, star, open, close, sep, punct.

    `low`: the text in lower case. A tuple, not a dataclass: a row makes twenty, and a tuple is made three times as fast.
    """

    kind: str
    text: str
    value: Any
    start: int
    end: int
    low: str


def _made(kind: str, text: str, value: Any, start: int, end: int) -> Token:
    return Token(kind, text, value, start, end, text.lower())


@cache
def words() -> dict[str, dict[str, Any]]:
    """The tables of words.toml."""
    return shipped_table("loopwright.notation", "words.toml")


_SWAPPED = "next into circle ring each around across first last same work repeat space turn skip from times between previous beginning".split()
_WORDS_TOO = frozenset(("form",))


@cache
def same_words() -> dict[str, str]:
    """Words that mean another which the reader knows: those of the table, and known ones with two letters the wrong way round ("enxt")."""
    swapped = ((w[:i] + w[i + 1] + w[i] + w[i + 2 :], w) for w in _SWAPPED for i in range(len(w) - 1) if w[i] != w[i + 1])
    return {way: w for way, w in swapped if way not in _WORDS_TOO} | words()["same"]


_GLUED_ON = ("lo", "inc", "dec", "sp", "sps", "lp", "lps", "bl", "fl", "sc", "dc", "tr")
_GLUED = re.compile(r"(sc|hdc|dc|htr|tr|ss)(t?[bf]lo?|inc|dec)|(ch)(sps?|lps?)|([bf]lo?)(sc|h?dc|h?tr)")
_FRACTION = {"½": 0.5, "¼": 0.25, "¾": 0.75}


def _spelling(way: str) -> str:
    """An expression for a spelling: letters may have a stop and a space after them where the spelling has a space."""
    if len(way) <= 4 and " " not in way:
        parts = [re.escape(c) for c in way]
        return r"\.?".join(parts)
    pieces = [re.escape(w) for w in way.split(" ")]
    return r"[.\s-]*".join(pieces)


def _by_letter(ways: Iterable[str], spelt: Callable[[str], str] = _spelling) -> str:
    """Alternatives, the longest first, gathered under their first letter: most of them need not be tried.

    That letter is told in both cases, not left to IGNORECASE: so the branch it does not begin is passed over at once.
    """
    gathered: dict[str, list[str]] = {}
    for way in sorted(ways, key=len, reverse=True):
        gathered.setdefault(way[0].lower(), []).append(spelt(way)[len(re.escape(way[0])) :])
    return "|".join(f"(?-i:[{re.escape(first + first.upper())}])(?:{'|'.join(rests)})" for first, rests in gathered.items())


@cache
def _expression(dialect: Dialect) -> re.Pattern[str]:
    table = words()
    stitches = _by_letter(dialect.spellings)
    post = r"(?:(?:front|back)[\s-]*post|fp|bp|(?:raised|relief)(?:[\s-]*(?:front|back))?|r[fb](?=h?tr|h?dc|sc))[\s-]*"
    units = "|".join(k for k, v in table["numbers"].items() if v < 10 and k != "another")
    numbers = rf"(?=[tfsen])(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)[\s-](?:{units})(?![a-z])|" + _by_letter(table["numbers"], re.escape)
    ordinals = _by_letter(table["ordinals"], re.escape)
    pattern = rf"""
      (?P<timesx2>(?:(?<=[)\]}}])\s*\*\s*|(?<=[a-z])\*(?=\d{{1,4}}\s*(?:[,;.()\[\]]|$)))(?P<tx2>\d{{1,9}})(?!\s*(?!(?:around|times|total|then|and|join|sl|ss|to)\b)[a-z]))
    | (?=\S)(?:  # at a blank nothing else need be tried
      (?P<sep0>[,;.:]) | (?P<open0>[(\[]) | (?P<close0>[)\]])  # what is met most, and begins nothing else, first
    | (?P<word0>(?:in|each|next|from|across|around|same|last|rep|turn|join|and|of|to|sts|st)(?![^\W\d_]|['’]))
    | (?P<blank>\{{(?!\s*\d+\s*[a-z])[^{{}}()\[\],;\n]{{1,60}}\}}(?!\s?(?:[x×*]\s?\d|\d{{1,3}}\s?(?:x|times)\b)))
    | (?P<star>\*\*\*|\*\*|\*|†|‡|✕(?=\s)|\+(?=\s*[a-z(])(?!\s*\d)|\#(?=\s*[a-z(]))
    | (?P<timesx>(?:(?<![a-z])[x×✕]\s*|(?<=[a-z])x)(?P<tx>\d{{1,9}})(?![a-z]))
    | (?P<times>(?:(?P<tn>\d{{1,9}}|{numbers})\s*(?:more\s+)?(?:times?|x(?![a-z])|×))(?P<tmore>\s+more)?|twice(?P<tm2>\s+more)?|thrice|once(?P<tm1>\s+more)?|once\s+again)(?![a-z])
    | (?P<ord>(?:(?:(?P<on>\d{{0,8}}(?:(?<!1)1(?=st)|(?<!1)2(?=nd)|(?<!1)3(?=rd)|\d(?=th)))(?:st|nd|rd|th)|(?P<od>\d{{0,3}}(?<!1)[23])d(?=\s+(?:rows?|rounds?|of|sts?|stitch|ch|chains?|trebles?|doubles?|loop|lp|sp|space|one|from|and|sc|dc|s\.?\s?c|d\.?\s?c|tr|long)\b))|(?P<ow>{ordinals}))(?![a-z]))
    | (?P<postb>(?<![a-z])(?P<pbr>r)?(?P<pbk>tr|dc|htr|hdc|sc)(?:\s(?=r?[fb]p))?(?:r)?(?P<pbs>[fb])(?P<pbp>p)?(?![a-z]))
    | (?P<ntog>(?<![\d.])(?P<nt>[2-9]|1\d)\s*(?P<ntk>{stitches})(?:\.(?=\s*tog))?\s*tog(?:ether)?(?![a-z]))
    | (?P<kind>(?<![a-z])(?P<fp>{post})?(?P<k>{stitches})(?:\s*(?P<gn>\d{{1,9}}|two|three|four|five)\s*(?:tog|together|tg)(?![a-z])|(?!(?!x\d)[a-z])(?:\.(?=\s*[a-z\d(,;]))?))
    | (?P<num>\d{{1,9}}(?:[.,]\d{{1,9}}(?=\s*(?:cm|in|mm|"|″|”|inch)))?(?:\s?[½¼¾]|-\d/\d|\s\d/\d)?)
    | (?P<numword>(?<![a-z])(?:{numbers})(?![a-z]))
    | (?P<word>[^\W\d_]+(?:['’][^\W\d_]+)?)
    | (?P<open>[(\[{{])
    | (?P<close>[)\]}}])
    | (?P<sep>[,;.:]|--+|—|–|-|/|\+|&|=)
    | (?P<punct>[^\s]))
    """
    return re.compile(pattern, re.IGNORECASE | re.VERBOSE)


@cache
def _kind_of(dialect: Dialect, text: str) -> str | None:
    spaced = " ".join(re.sub(r"[.\-]", " ", text.lower()).split())
    known = dialect.kind_of(spaced)
    if known:
        return known
    glued = spaced.replace(" ", "")
    return dialect.kind_of(glued)


def scan(text: str, start: int, end: int, dialect: Dialect) -> list[Token]:
    """Tokens of text[start:end]; spans are offsets in the whole text. Whatever the text, every character but space is in a token."""
    tokens = _tokens(text, start, end, dialect)
    low = text[start:end].lower()
    if ("lo" in low or "bl" in low or "fl" in low or "chsp" in low or "chlp" in low or "cinc" in low or "cdec" in low or "rinc" in low or "rdec" in low) and any(t.kind == "word" and t.low.endswith(_GLUED_ON) and _GLUED.fullmatch(t.low) for t in tokens):
        tokens = [part for t in tokens for part in _parted(t, dialect)]
    if "V" in text[start:end] and any(t.text in _VS and t.kind == "word" for t in tokens):
        tokens = [t._replace(kind="kind", value="v-st") if t.text in _VS and t.kind == "word" and not _shapes(tokens, i) else t for i, t in enumerate(tokens)]
    if ")*" in low and "times" in low:
        tokens = _closed_by_star(tokens)
    if dialect.id == "old" and tokens:
        tokens = _of_old(tokens)
    return tokens


def _closed_by_star(tokens: list[Token]) -> list[Token]:
    """ "*3 sc, (dec)* 6 times": the star closes the one before, where "(3 sc, dec)* 6" says six times."""
    made: list[Token] = []
    stars = 0
    for token in tokens:
        before = made[-1] if made else None
        if before is not None and before.kind == "times" and before.text[0] == "*" and token.low == "times" and stars % 2:
            made[-1:] = [_made("star", "*", None, before.start, before.start + 1), _made("times", f"{before.value[0]} times", before.value, before.start + 1, token.end)]
            stars += 1
            continue
        stars += token.kind == "star" and token.text == "*"
        made.append(token)
    return made


MOST_KEPT, LONGEST_KEPT = 20_000, 40
_OF_THEIR_TEXT = frozenset("word word0 open open0 close close0 sep sep0 punct kind num star".split())  # what these are, their own text alone tells


@cache
def _met(_dialect: Dialect) -> dict[tuple[str | None, str], tuple[str, Any, str]]:
    """Sort, value and lower case of the tokens met so far in a dialect: a text is made of few words."""
    return {}


def _tokens(text: str, start: int, end: int, dialect: Dialect) -> list[Token]:
    table, met = words(), _met(dialect)
    tokens: list[Token] = []
    for m in _expression(dialect).finditer(text, start, end):
        found = m.group()
        key = m.lastgroup, found
        known = met.get(key)
        if known is not None:
            a, b = m.span()
            tokens.append(Token(known[0], found, known[1], a, b, known[2]))
            continue
        token = _token(m, dialect, table)
        tokens.append(token)
        if key[0] in _OF_THEIR_TEXT and len(found) <= LONGEST_KEPT and len(met) < MOST_KEPT:
            met[key] = token.kind, token.value, token.low
    return tokens


_VS = frozenset(("V", "Vs", "V's", "V’s"))  # V stitches


def _shapes(tokens: list[Token], at: int) -> bool:
    """Whether a V tells a shape or names a yarn: "V-neck", "with V"."""
    after = tokens[at + 1].low if at + 1 < len(tokens) else ""
    return after in ("-", "neck", "shape", "shaped", "edge") or at > 0 and tokens[at - 1].low in ("with", "yarn", "color", "colour", "using")


_NO_STITCH = frozenset("side sides edge edges end ends loop loops strip strips piece tail thread threads needle way straight double enough".split())  # a long …
_TELLS_LONG = frozenset("each every first last next the centre center middle both same following of".split())
_PLAINLY = frozenset("sc hdc dc tr dtr".split())


def _to_centre(tokens: list[Token], at: int) -> bool:
    """ "single crochet to the centre of the first scallop": slip stitches, so that the row begins there."""
    return any(t.low in ("centre", "center", "middle", "point") for t in tokens[at + 2 : at + 4])


def _of_old(tokens: list[Token]) -> list[Token]:
    """Old books' names: "3 long", "each long" as tall stitches, "2 double long" as taller ones; "plain double crochet" as the stitch alone, a purl as a picot."""
    out: list[Token] = []
    for i, (t, after) in enumerate(zip(tokens, [*tokens[1:], None], strict=True)):
        before, kind = out[-1] if out else None, None
        if t.low == "long" and before is not None and (after is None or after.kind != "kind" and after.low not in _NO_STITCH):
            if before.low in ("double", "treble"):
                out[-1] = t._replace(kind="kind", value="dtr", start=before.start)
                continue
            if before.kind in ("num", "ord") or before.low in _TELLS_LONG:
                kind = "tr"
        elif t.low == "long" and before is None and after is not None and after.low in ("all", "round", "around", "on", "in", "only"):
            kind = "tr"  # "Long all round."
        elif t.low in ("l", "l's") and before is not None and before.kind in ("num", "ord", "word") and (before.kind != "word" or before.low in _TELLS_LONG):
            kind = "tr"  # "1 l, 1 ch"
        elif t.low == "." and before is not None and before.kind == "kind" and before.text in ("l", "L") and after is not None and not after.text[:1].isupper():
            continue  # "3 l. under the 3 ch."
        elif before is not None and before.low == "plain" and t.kind == "kind" and t.value in _PLAINLY:
            out.pop()
        elif t.kind == "kind" and t.value == "sc" and t.low.startswith("single") and after is not None and after.low == "to" and _to_centre(tokens, i):
            kind = "sl st"
        elif t.low in ("purl", "purls"):
            kind = "picot"
        out.append(t if kind is None else t._replace(kind="kind", value=kind))
    return out


def _parted(t: Token, dialect: Dialect) -> tuple[Token, ...]:
    """ "scblo", "blsc", "chsp" as the two words they are."""
    glued = _GLUED.fullmatch(t.low) if t.kind == "word" else None
    if glued is None:
        return (t,)
    cut = len(next(filter(None, glued.groups())))
    parts = (t.text[:cut], t.start), (t.text[cut:], t.start + cut)
    return tuple(_part(text, start, _kind_of(dialect, text)) for text, start in parts)


def _part(text: str, start: int, kind: str | None) -> Token:
    """A stitch, or the loop or space that is told with it."""
    low = text.lower()
    if low in ("bl", "fl"):
        kind = None  # no block here
    elif kind is None and low in ("htr", "hdc"):
        kind = "hdc"  # of the other dialect
    return _made("kind" if kind else "word", text, kind or low, start, start + len(text))


_LETTERS = {"X": "sc", "x": "sc", "V": "inc", "v": "inc", "A": "dec", "a": "dec", "T": "hdc", "F": "dc"}
_LETTERS_ONLY = re.compile(r"(?:[\s\dXxVvAaTF,;.()\[\]*×:-]|in\s+(?:a\s+)?(?:MR|magic\s+ring)\b)*$")

_LETTERS_TELL = re.compile(r"[XVA]|^\s*\d{1,4}\s?x\s*$")
_SMALL = re.compile(r"[va]\b"), re.compile(r"\dx\b")


def letters(text: str, tokens: list[Token]) -> list[Token]:
    """Rounds told in single letters ("3X, V"): X a single, V an increase, A a decrease. Common practice, no source."""
    if not _LETTERS_ONLY.match(text) or not (_LETTERS_TELL.search(text) or all(small.search(text) for small in _SMALL)):
        return tokens
    made: list[Token] = []
    for t in tokens:
        glued = re.fullmatch(r"(\d{1,9})\s*[Xx]", t.text)
        if glued and (not made or made[-1].kind in ("sep", "open")):
            middle = t.start + len(glued[1])
            made += [_made("num", glued[1], int(glued[1]), t.start, middle), _made("kind", "X", "sc", middle, t.end)]
        elif t.kind == "times" and re.fullmatch(r"[Xx]\s*(\d{1,9})", t.text) and made and made[-1].kind in ("sep", "open"):
            made += [_made("kind", "X", "sc", t.start, t.start + 1), _made("num", t.text[1:].strip(), t.value[0], t.start + 1, t.end)]
        elif t.text in _LETTERS:
            made.append(_made("kind", t.text, _LETTERS[t.text], t.start, t.end))
        else:
            made.append(t)
    return made


def _token(m: re.Match[str], dialect: Dialect, table: dict[str, dict[str, Any]]) -> Token:
    kind, text = (m.lastgroup or "punct").removesuffix("0"), m.group()
    if text == "&":
        return Token("word", text, "and", m.start(), m.end(), "and")
    if kind in ("word", "open", "close", "sep", "punct"):
        low = text.lower()
        if kind == "word":
            low = same_words().get(low, low)
        return Token(kind, text, low, m.start(), m.end(), low)
    if kind == "kind":
        known = _kind_of(dialect, m["k"])
        if m["gn"] or m["fp"]:
            return _composed(m, known)
        return _made("kind", text, known, m.start(), m.end()) if known else _made("word", text, text.lower(), m.start(), m.end())
    if kind == "num":
        return _made("num", text, min(int(text), MAX_NUMBER) if text.isdecimal() else _number(text), m.start(), m.end())
    return _rarer(m, kind, dialect, table)


def _composed(m: re.Match[str], known: str | None) -> Token:
    """ "dc3tog", "front post dc", "bpdc2tog"."""
    post = "" if not m["fp"] else "bp" if m["fp"].lower().startswith("b") or m["fp"].lower().rstrip(" -").endswith(("rb", "back")) else "fp"
    tog = f"{min(int(words()['numbers'].get(m['gn'].lower(), 0) or m['gn']), 99)}tog" if m["gn"] else ""
    return _made("kind", m.group(), f"{post}{known or ('dc' if post else 'sc')}{tog}", m.start(), m.end())


def _rarer(m: re.Match[str], kind: str, dialect: Dialect, table: dict[str, dict[str, Any]]) -> Token:
    text, low = m.group(), m.group().lower()
    at = (m.start(), m.end())
    if kind == "blank":
        return _made("blank", text, " ".join(text[1:-1].split()), *at)
    if kind == "star":
        return _made("star", text, text, *at)
    if kind in ("timesx", "timesx2"):
        return _made("times", text, (min(int(m["tx"] or m["tx2"]), MAX_NUMBER), False), *at)
    if kind == "times":
        return _made("times", text, _times(m, low, table), *at)
    if kind == "ord":
        value = int(m["on"] or m["od"]) if m["on"] or m["od"] else table["ordinals"][m["ow"].lower()]
        return _made("ord", text, min(value, MAX_NUMBER), *at)
    if kind == "ntog":  # "5tr tog": the number of legs, told first
        return _made("kind", text, f"{_kind_of(dialect, m['ntk']) or 'dc'}{m['nt']}tog", *at)
    if kind == "numword":
        return _made("num", text, _in_words(low, table), *at)
    if not (m["pbr"] or m["pbp"] or m["pbk"].lower() in ("dc", "tr", "htr", "hdc")):
        return _made("word", text, low, *at)
    return _made("kind", text, f"{'bp' if m['pbs'].lower() == 'b' else 'fp'}{_kind_of(dialect, m['pbk']) or 'dc'}", *at)


def _in_words(low: str, table: dict[str, dict[str, Any]]) -> int:
    """ "twelve", "twenty-one"."""
    return sum(int(table["numbers"][part]) for part in re.split(r"[\s-]+", low))


def _times(m: re.Match[str], low: str, table: dict[str, dict[str, Any]]) -> tuple[int, bool]:
    more = "more" in low or "again" in low
    if low.startswith("twice"):
        return 2, more
    if low.startswith("thrice"):
        return 3, more
    if low.startswith("once"):
        return 1, more
    word = m["tn"].lower()
    number = int(word) if word.isdigit() else _in_words(word, table)
    return min(number, MAX_NUMBER), more


def _number(text: str) -> int | float:
    m = re.match(r"(\d{1,9})([.,]\d{1,9})?(?:\s?([½¼¾])|-(\d)/(\d)|\s(\d)/(\d))?$", text)
    if m is None:
        return 0
    value: float = min(int(m[1]), MAX_NUMBER)
    if m[2]:
        value += float("0." + m[2][1:])
    if m[3]:
        value += _FRACTION[m[3]]
    over, under = m[4] or m[6], m[5] or m[7]
    if over and int(under):
        value += int(over) / int(under)
    return int(value) if value == int(value) else value
