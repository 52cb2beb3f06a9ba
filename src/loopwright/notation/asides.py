"""Asides within rows that ask for no stitch: yarn cut, markers placed, which part is meant. They stand in asides.toml.

Common practice, no source: the forms were met in printed books and leaflets, and on pages of today.
Where an aside says which part of the piece is meant ("for thumb", "across sleeve"), the rows and stitches before it tell where the work goes on.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

from loopwright.shipped import shipped_table
from loopwright.source.expressions import Expression


@cache
def _asides() -> tuple[tuple[Expression, ...], tuple[tuple[str, int], ...]]:
    """The expressions of asides.toml; and the words of which one stands in every line in which an expression finds something, with its number."""
    table = shipped_table("loopwright.notation", "asides.toml")["aside"]
    return tuple(Expression(one["finds"], re.IGNORECASE) for one in table), tuple((word, i) for i, one in enumerate(table) for word in one["words"])


def without_asides(text: str, instead: Callable[[re.Match[str]], str]) -> str:
    """A line with each aside put as `instead` says. As one alternation of all of them finds them: the leftmost, of equals the first; only those are tried that can be there."""
    low = text.lower()
    expressions, words = _asides()
    found = [(m.start(), i, m, expressions[i]) for i in {i for word, i in words if word in low} if (m := expressions[i].search(text)) is not None]
    parts: list[str] = []
    at = 0
    while found:
        found.sort(key=lambda one: one[:2])
        _, _, first, _ = found[0]
        parts += [text[at : first.start()], instead(first)]
        at = first.end()
        found = [one if one[0] >= at else again for one in found if (again := _after(one, text, at)) is not None]
    return "".join([*parts, text[at:]])


def _after(one: tuple[int, int, re.Match[str], Expression], text: str, at: int) -> tuple[int, int, re.Match[str], Expression] | None:
    """An aside found, or the next of its kind where it begins before `at`."""
    if one[0] >= at:
        return one
    m = one[3].search(text, at)
    return None if m is None else (m.start(), one[1], m, one[3])
