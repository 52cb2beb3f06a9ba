"""Numbers for each size told in other ways than "26 (30, 34)", put so before anything else is read; the text keeps its length.

Behind what they count, "19 sts (15-23)"; by turns, "26 (30) 34 (38)"; in braces, "26 {30, 34}"; all in one bracket, "ch (26, 30, 34)"; in words, "one (two, two) times".
Common practice, no source.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import lru_cache

from loopwright.notation.scanner import words
from loopwright.source.expressions import Expression

_BY_TURNS = Expression(r"(?<![\d.(\[/-])\d{1,4}(?: ?[(\[]\d{1,4}[)\]] \d{1,4}(?![\d.])){1,15}(?: ?[(\[]\d{1,4}[)\]])?(?! ?[(\[]\d)")
_IN_BRACES = Expression(r"(?<=\d)(?P<gap> ?)\{(?P<others> ?\d{1,4}(?: ?[,;:/] ?\d{1,4}){0,29} ?)\}")
_IN_ONE = Expression(
    r" [(\[](?<=[a-z,.:–-] [(\[])\d{1,4}(?:, ?\d{1,4}){2,29}[)\]](?= (?!times\b)[a-z]{2}|[.,;: ]*$| ?[:,])", re.IGNORECASE | re.MULTILINE
)
_TURNS_BEGIN, _ONE_BEGINS = re.compile(r"[)\]](?<=\d.) \d"), re.compile(r"[(\[]\d{1,4}, ?\d")  # a look before the dearer ones
_SMALL = r"(?:zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_WORDS_BEGIN = re.compile(rf"[(\[]{_SMALL}", re.IGNORECASE)
_IN_WORDS = Expression(rf"\b{_SMALL} ?[(\[]{_SMALL}(?:, ?{_SMALL}){{0,29}}[)\]]", re.IGNORECASE)
_BEHIND = Expression(
    r"(?<![\d.(\[/-])(?P<n>\d{1,3})(?P<noun>(?:\s(?:s d c|s c|d c|sc|dc|hdc|sts|st|rows|rounds|chs?))?(?: of ch)?)(?P<comma>,?)(?P<gap> ?)\((?P<a>\d{1,3})-(?P<b>\d{1,3})\)", re.IGNORECASE,
)
_BEHIND_BEGINS = re.compile(r"[a-z],? \(\d{1,3}-\d{1,3}\)", re.IGNORECASE)
_WORD, _NUMBER = re.compile("[a-z]+", re.IGNORECASE), re.compile(r"\d+")
KEPT = 2_000  # longer lines are looked at anew each time: they would fill the memory
LEAST, LEAST_IN_ONE, LEAST_BEHIND = 2, 3, 3  # so many lists of one length: fewer do not tell sizes


def plain_lists(text: str) -> str:
    """The text with each list of numbers for the sizes as "26 (30, 34)", filled up with spaces behind its first comma."""
    seen = 0
    for line in text.split("\n"):
        seen |= _seen(line) if len(line) < KEPT else _seen.__wrapped__(line)
    if seen & _BRACES:
        text = _IN_BRACES.sub(lambda m: f"{m['gap']}({m['others']})", text)
    if seen & _TURNS:
        text = _same(_BY_TURNS, text, LEAST)
    if seen & _ONE:
        text = _same(_IN_ONE, text, LEAST_IN_ONE)
    if seen & _AFTER:
        text = _in_front(text)
    if seen & _WORDED:
        text = _IN_WORDS.sub(lambda m: _WORD.sub(_digits, m.group()), text)
    return text


_BRACES, _TURNS, _ONE, _WORDED, _AFTER = 1, 2, 4, 8, 16


@lru_cache(maxsize=4096)
def _seen(line: str) -> int:
    """Which of the ways a line may tell sizes in: a look before the dearer ones, at each line once."""
    return (
        _BRACES * ("{" in line) | _TURNS * (_TURNS_BEGIN.search(line) is not None)
        | _ONE * (_ONE_BEGINS.search(line) is not None) | _WORDED * (_WORDS_BEGIN.search(line) is not None)
        | _AFTER * ("-" in line and "(" in line and _BEHIND_BEGINS.search(line) is not None)
    )


def _in_front(text: str) -> str:
    """ "19 sts (15-23)" as "19 (15,23) sts" where three sizes are told so time and again, the first the middle one or the smallest."""
    found = [tuple(int(m[k]) for k in ("n", "a", "b")) for m in _BEHIND.finditer(text)]
    kinds = Counter((a < n < b, n < a < b) for n, a, b in found)
    order, often = kinds.most_common(1)[0] if kinds else ((False, False), 0)
    if often < LEAST_BEHIND or not any(order) or often < len(found):
        return text
    return _BEHIND.sub(lambda m: f"{m['n']}{m['gap'] if m['comma'] or not m['noun'] else ''}({m['a']},{m['b']}){m['noun']}{',' if m['noun'] else ''}".ljust(len(m.group())), text)


def _same(form: Expression, text: str, least: int) -> str:
    """Lists of a form that are as long as most of them are, told plainly; none where they are too few to tell sizes."""
    many = Counter(len(_NUMBER.findall(m.group())) for m in form.finditer(text))
    if not many:
        return text
    length, often = many.most_common(1)[0]
    return text if often < least else form.sub(lambda m: _told(m.group(), length), text)


def _told(found: str, length: int) -> str:
    """A list of so many numbers told plainly; any other as it stands."""
    first, *others = _NUMBER.findall(found)
    led = found[0] if found[0] == " " else ""
    made = f"{led}{first} ({others[0]}," + "{}" + ",".join(others[1:]) + ")"
    room = len(found) - len(made) + 2
    return made.format(" " * room) if len(others) + 1 == length and room >= 0 else found


def _digits(m: re.Match[str]) -> str:
    low = m.group().lower()
    return str(0 if low == "zero" else words()["numbers"][low]).ljust(len(low))
