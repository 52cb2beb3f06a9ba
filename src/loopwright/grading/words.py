"""The words that sentences and gauges are read with, from words.toml."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from loopwright.shipped import shipped_table

_TABLE: dict[str, Any] = shipped_table("loopwright.grading", "words.toml")

COUNTS: dict[str, str] = {word: kind for kind, words in _TABLE["counts"].items() for word in words}
SWATCH: dict[str, str] = {word: kind for kind, words in _TABLE["swatch"].items() for word in words}
SIDES: dict[str, str] = {word: side for side, words in _TABLE["sides"].items() for word in words}
OPENINGS: frozenset[str] = frozenset(_TABLE["things"]["opening"])
EDGES: frozenset[str] = frozenset(_TABLE["things"]["edge"])
NUMBERS: dict[str, int] = _TABLE["numbers"]
PARTS: dict[str, int] = _TABLE["parts"]
SIGNS: dict[str, Fraction] = {sign: Fraction(value) for sign, value in _TABLE["signs"].items()}
UNITS_MM: dict[str, Fraction] = {unit: Fraction(value) for unit, value in _TABLE["lengths_mm"].items()}
