"""SVG to PNG, with the letters that come with the program and no others."""

from __future__ import annotations

from importlib.resources import files

import resvg_py

FONTS = tuple(str(f) for f in files("loopwright.drawing").joinpath("fonts").iterdir() if f.name.endswith(".ttf"))


def svg_png(svg: str, width_px: int) -> bytes:
    """The picture of an SVG, so many pixels wide, on white. Raises ValueError for what is no SVG."""
    done = resvg_py.svg_to_bytes(svg_string=svg, width=width_px, font_files=list(FONTS), skip_system_fonts=True, background="white")
    return bytes(done)
