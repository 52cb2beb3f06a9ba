"""Tones of yarns: the same in charts and in pictures of the fabric, by what a pattern calls its yarns."""

from __future__ import annotations

from functools import cache

from loopwright.drawing.palette import colours
from loopwright.shipped import shipped_table

_MIXED = {"dark": ("#000000", 0.3), "deep": ("#000000", 0.3), "light": ("#FFFFFF", 0.35), "pale": ("#FFFFFF", 0.5)}


@cache
def _table() -> dict[str, str]:
    found: dict[str, str] = shipped_table("loopwright.drawing", "tones.toml")["tones"]
    return found


def tone(name: str) -> str | None:
    """The tone (#RRGGBB) of "cream", "dark grey", "speckled brown"; None where no word of it is one of colour."""
    words = name.lower().replace("-", " ").split()
    for word in reversed(words):
        if word in _table():
            found = _table()[word]
            for other in words:
                if other in _MIXED:
                    found = mixed(found, *_MIXED[other])
            return found
    return None


def usual(at: int) -> str:
    """The tone of a yarn that is called by a letter alone: the first from 0."""
    yarns: list[str] = colours("light")["yarns"]
    return yarns[at % len(yarns)]


def mixed(one: str, other: str, share: float) -> str:
    """A colour with a share of another."""
    parts = ((int(one[i : i + 2], 16), int(other[i : i + 2], 16)) for i in (1, 3, 5))
    return "#" + "".join(f"{round(a + share * (b - a)):02X}" for a, b in parts)


def _light(colour: str) -> float:
    """Relative luminance as the Web Content Accessibility Guidelines 2.2 define it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: str, two: str) -> float:
    """How far two colours (#RRGGBB) stand apart, by the formula of the same guidelines."""
    low, high = sorted((_light(one), _light(two)))
    return (high + 0.05) / (low + 0.05)


def legible(colour: str, sheet: str, ink: str, least: float = 3.0) -> str:
    """A tone for lines on a sheet: with as much ink in it as makes it stand out (3:1, WCAG 2.2, 1.4.11)."""
    found = colour
    for step in range(1, 20):
        if contrast(found, sheet) >= least:
            break
        found = mixed(colour, ink, step / 20)
    return found
