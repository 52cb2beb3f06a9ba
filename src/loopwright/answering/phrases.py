"""The words of answers, out of phrases.toml."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from loopwright.answering.answer import Cause

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


@cache
def _data() -> dict[str, Any]:
    return tomllib.loads(files("loopwright.answering").joinpath("phrases.toml").read_text(encoding="utf-8"))


def say(table: str, key: str, **slots: object) -> str:
    """A phrase of a table with its slots filled."""
    return str(_data()[table][key]).format(**slots)


def cause(key: str, **slots: object) -> Cause:
    """A cause of the list with its slots filled. Raises KeyError for one that there is none of."""
    found = next((c for c in _data()["cause"] if c["key"] == key), None)
    if found is None:
        raise KeyError(key)
    title, see, mend = (str(found[part]).format(**slots) for part in ("title", "see", "mend"))
    return Cause(title, see, mend, found["mark"])


def looks() -> tuple[str, ...]:
    """What can be said of how a piece looks, by key."""
    return tuple(_data()["look"])


def look(key: str) -> dict[str, Any]:
    """One of them: what she says ("said"), the heading of the answer, the keys of its causes. Raises KeyError where there is none."""
    found: dict[str, Any] = _data()["look"][key]
    return found


def in_words(n: int) -> str:
    """A small number in words."""
    return _NUMBERS[n] if 0 <= n < len(_NUMBERS) else str(n)


def times(n: int) -> str:
    """As in "once", "twice", "3 times"."""
    return ("", "once", "twice")[n] if 0 < n < 3 else f"{n} times"


def cm(mm: float) -> str:
    """A length in cm with one figure after the point."""
    return f"{mm / 10:.1f}".removesuffix(".0") + " cm"
