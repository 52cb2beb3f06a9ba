"""How wide words come out in the type that comes with the program, which every card carries inside."""

from __future__ import annotations

import io
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING

from loopwright.drawing.embedding import FACES

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

WRITTEN, WORKED = "Atkinson Hyperlegible Next", "Besley"
SMALLEST_PX = 34.0
"""The smallest type on a card of 720 lines, so that it is read on a telephone."""
_UNITS = 200


def width_px(words: str, size_px: float, family: str = WRITTEN, weight: int = 400) -> float:
    """How wide a line comes out."""
    return float(_face(family, weight).getlength(words)) * size_px / _UNITS


def fitted_px(words: str, size_px: float, room_px: float, family: str = WRITTEN, weight: int = 400, least_px: float = SMALLEST_PX) -> float:
    """The largest size up to `size_px`, and down to `least_px`, in which a line has room."""
    return max(least_px, min(size_px, size_px * room_px / max(1.0, width_px(words, size_px, family, weight))))


def wrapped(words: str, size_px: float, room_px: float, most: int, weight: int = 400) -> tuple[list[str], bool]:
    """At most so many lines that have room, and whether that is all of it; what is left out is told by "…"."""
    lines: list[str] = []
    whole = words.split()
    for at, word in enumerate(whole):
        if lines and width_px(f"{lines[-1]} {word}", size_px, weight=weight) <= room_px:
            lines[-1] += f" {word}"
        elif len(lines) == most:
            lines[-1] = _cut(lines[-1], size_px, room_px, weight)
            return lines, at == len(whole)
        else:
            lines.append(word)
    return [_cut(x, size_px, room_px, weight) if width_px(x, size_px, weight=weight) > room_px else x for x in lines], True


def _cut(line: str, size_px: float, room_px: float, weight: int) -> str:
    kept = line.rstrip(" ,;")
    while kept and width_px(f"{kept} …", size_px, weight=weight) > room_px:
        kept = kept.rpartition(" ")[0] if " " in kept else kept[:-1]
    return f"{kept.rstrip(' ,;')} …"


@lru_cache(maxsize=8)
def _face(family: str, weight: int) -> FreeTypeFont:
    from PIL import ImageFont  # noqa: PLC0415 - only where cards are drawn

    data = files("loopwright.drawing").joinpath("fonts", FACES[family][weight]).read_bytes()
    return ImageFont.truetype(io.BytesIO(data), _UNITS)
