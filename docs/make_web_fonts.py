# ruff: noqa: INP001, T201 (a script, no package)
"""Makes the fonts of web pages, EPUBs and the studio out of those that drawings use: the letters of European languages, as WOFF2.

Run it as `python docs/make_web_fonts.py` when a font is changed; needs fonttools and brotli. Names, licence and copyright stay inside.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from fontTools import subset

ROOT = Path(__file__).parents[1]
SOURCE = ROOT / "src" / "loopwright" / "drawing" / "fonts"
TARGET = ROOT / "src" / "loopwright" / "publishing" / "fonts"
FACES = (
    "AtkinsonHyperlegibleNext_400Regular", "AtkinsonHyperlegibleNext_600SemiBold", "AtkinsonHyperlegibleNext_700Bold", "Besley_500Medium",
    "Besley_700Bold",
)
LICENCES = ("OFL-AtkinsonHyperlegibleNext.txt", "OFL-Besley.txt")
LETTERS = (
    *range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x218, 0x21C), *range(0x2010, 0x2040),
    0x2044, 0x20AC, 0x2122, *range(0x2150, 0x215F), 0x2212,
)
FEATURES = ("kern", "liga", "mark", "mkmk", "ccmp", "locl", "tnum", "lnum", "pnum", "frac")


def main() -> None:
    """Writes the fonts and their licences, and says how large they are."""
    TARGET.mkdir(exist_ok=True)
    for name in FACES:
        options = subset.Options(flavor="woff2", hinting=False, layout_features=list(FEATURES), name_IDs=["*"])
        font = subset.load_font(str(SOURCE / f"{name}.ttf"), options)
        cutter = subset.Subsetter(options)
        cutter.populate(unicodes=LETTERS)
        cutter.subset(font)
        made = TARGET / f"{name}.woff2"
        subset.save_font(font, str(made), options)
        print(f"{made.name}: {made.stat().st_size} bytes")
    for name in LICENCES:
        shutil.copy(SOURCE / name, TARGET / name)


if __name__ == "__main__":
    main()
