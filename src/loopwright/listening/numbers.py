"""Numbers in spoken words: "thirty one", "twenty-fourth", "a couple", "two point five", "six and a half"."""

from __future__ import annotations

from collections.abc import Sequence

_UNITS = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
).split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_ORDINALS = (
    "zeroth first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth "
    "seventeenth eighteenth nineteenth"
).split()
_VALUES = {w: i for i, w in enumerate(_UNITS)} | {w: 20 + 10 * i for i, w in enumerate(_TENS)} | {"fourty": 40, "couple": 2, "dozen": 12}
_RANKS = {w: i for i, w in enumerate(_ORDINALS) if i} | {w[:-1] + "ieth": 20 + 10 * i for i, w in enumerate(_TENS)}
HIGHEST = 2000
_HUNDRED = 100
_TEN, _TWENTY = 10, 20


def number(words: Sequence[str], at: int) -> tuple[float, int, bool] | None:
    """The number that begins at `at`: its value, how many words it takes, whether it is an ordinal. None where there is none."""
    got = _digits(words[at]) or _spelled(words, at)
    if got is None:
        return None
    value, taken, rank = got
    if not rank:
        value, taken = _parts(words, at, value, taken)
    return None if value > HIGHEST else (value, taken, rank)


def _digits(word: str) -> tuple[float, int, bool] | None:
    bare = word.replace(",", "")
    if bare[:-2].isdecimal() and bare[-2:] in ("st", "nd", "rd", "th"):
        return float(bare[:-2][:6]), 1, True
    if bare.replace(".", "", 1).isdecimal():
        return float(bare[:8].rstrip(".")), 1, False
    return None


def _spelled(words: Sequence[str], at: int) -> tuple[float, int, bool] | None:
    word = words[at]
    if word in _RANKS:
        return _RANKS[word], 1, True
    if word == "a" and list(words[at + 1 : at + 2]) == ["hundred"]:
        return _hundreds(words, at, 1.0, 1)
    if word not in _VALUES:
        return None
    value, taken = float(_VALUES[word]), 1
    if _TWENTY <= value < _HUNDRED and at + 1 < len(words):
        after = words[at + 1]
        if 0 < _VALUES.get(after, 0) < _TEN and after != "couple":
            return _hundreds(words, at, value + _VALUES[after], 2)
        if 0 < _RANKS.get(after, 0) < _TEN:
            return value + _RANKS[after], 2, True
    return _hundreds(words, at, value, taken)


def _hundreds(words: Sequence[str], at: int, value: float, taken: int) -> tuple[float, int, bool]:
    """Goes on over "hundred", and over what follows it."""
    after = at + taken
    if value < _TEN and after < len(words) and words[after] == "hundred":
        value, after = value * _HUNDRED, after + 1
        skip = 1 if after < len(words) and words[after] == "and" else 0
        rest = number(words, after + skip) if after + skip < len(words) else None
        if rest and not rest[2] and rest[0] < _HUNDRED and float(rest[0]).is_integer():
            return value + rest[0], after + skip + rest[1] - at, False
    return value, after - at, False


def _parts(words: Sequence[str], at: int, value: float, taken: int) -> tuple[float, int]:
    """Goes on over "point five" and "and a half"."""
    after = list(words[at + taken : at + taken + 3])
    if len(after) > 1 and after[0] == "point" and after[1] in _VALUES and _VALUES[after[1]] < _HUNDRED:
        shift = _TEN if _VALUES[after[1]] < _TEN else _HUNDRED
        return value + _VALUES[after[1]] / shift, taken + 2
    if after[:3] == ["and", "a", "half"]:
        return value + 0.5, taken + 3
    if after[:3] == ["and", "a", "quarter"]:
        return value + 0.25, taken + 3
    return value, taken
