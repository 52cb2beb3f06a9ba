"""Text in drawings: made plain, how wide it comes out, and broken into lines."""

from __future__ import annotations

import re

_ILLEGAL = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

# Widths of characters as shares of the type's size: of DejaVu Sans, the widest of the fonts named, so that nothing overlaps in any of them.
_NARROW, _SPACE, _DIGIT, _UPPER, _LOWER, _WIDE, _WIDEST = 0.34, 0.32, 0.636, 0.70, 0.60, 0.86, 1.05
_HEAVY = 1.2  # how many times as wide bold type comes out, and that of names; measured on the fonts that come with the program


def plain(text: str) -> str:
    """Without characters that XML cannot hold, on one line."""
    return " ".join(_ILLEGAL.sub("", text).split())


def width_px(text: str, size_px: float, *, heavy: bool = False) -> float:
    """At most how wide a text comes out; `heavy`: in bold type, or in the type of names."""
    return (_HEAVY if heavy else 1.0) * size_px * sum(_width(c) for c in text)


def _width(c: str) -> float:
    if c in " .,;:!'|ijl·":
        return _SPACE if c == " " else _NARROW
    if c in "mMW@%—w¼½¾" or ord(c) > 0x2E7F:
        return _WIDE if c == "w" else _WIDEST
    return _DIGIT if c.isdigit() else _UPPER if c.isupper() else _LOWER


def wrapped(text: str, size_px: float, room_px: float, *, heavy: bool = False) -> list[str]:
    """Lines no wider than the room where words allow it."""
    lines: list[str] = []
    for word in text.split(" "):
        if lines and width_px(f"{lines[-1]} {word}", size_px, heavy=heavy) <= room_px:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
