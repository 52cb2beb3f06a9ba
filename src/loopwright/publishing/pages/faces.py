"""Typefaces of pages: ours and the designer's own, which characters they hold, how wide figures come out."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from importlib.resources import files
from pathlib import Path

from loopwright.publishing.errors import PageError
from loopwright.publishing.pages.folder import Folder

WORDS = "Atkinson Hyperlegible Next"
WORKED = "Besley"
_OURS = (
    "AtkinsonHyperlegibleNext_400Regular.ttf", "AtkinsonHyperlegibleNext_600SemiBold.ttf", "AtkinsonHyperlegibleNext_700Bold.ttf",
    "Besley_500Medium.ttf", "Besley_700Bold.ttf",
)
_MEASURED = "Besley_700Bold.ttf"
_PLAIN = "AtkinsonHyperlegibleNext_400Regular.ttf"
_WIDEST = 0.75  # of an em: for what Besley does not hold
_ENDINGS = {b"\x00\x01\x00\x00": ".ttf", b"true": ".ttf", b"OTTO": ".otf", b"ttcf": ".ttc"}


class Faces:
    """Font files in a folder of their own, as the typesetter wants them; kept until `close`."""

    def __init__(self, own: Sequence[bytes | Path] = ()) -> None:
        """`own`: font files of the designer's, TrueType or OpenType. Raises PageError for one that cannot be read."""
        import typst  # noqa: PLC0415 - only where pages are made

        self._folder = Folder("fonts")
        ours = {name: (files("loopwright.drawing.fonts") / name).read_bytes() for name in _OURS}
        for name, data in ours.items():
            self._folder.put(name, data)
        self._held, self._advances = _read(ours)  # at once: the library that reads them is not for several threads
        self.own_families: dict[str, set[int]] = {}
        for at, font in enumerate(own):
            self._add(font, at)
        self.fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(self._folder.path)])

    def _add(self, font: bytes | Path, at: int) -> None:
        name = font.name if isinstance(font, Path) else f"number {at + 1}"
        try:
            data = font.read_bytes() if isinstance(font, Path) else font
        except OSError as error:
            raise PageError(f"typeface {name}: {error.strerror or 'it cannot be read'}") from error
        ending = _ENDINGS.get(data[:4])
        if ending is None:
            raise PageError(f"typeface {name}: it is no TrueType or OpenType font; web fonts (WOFF) must be had in one of these forms")
        try:
            from fontTools.ttLib import TTFont  # noqa: PLC0415 - only where a typeface is given

            opened = TTFont(io.BytesIO(data), fontNumber=0, lazy=True)
            family = str(opened["name"].getBestFamilyName())
            held = set(opened.getBestCmap())
        except Exception as error:
            raise PageError(f"typeface {name}: the file is damaged") from error
        self.own_families.setdefault(family, set()).update(held)
        self._folder.put(f"own-{at}{ending}", data)

    def family(self, asked: str) -> str:
        """The family for words. Raises PageError for one that was not given."""
        if not asked or asked == WORDS:
            return WORDS
        if asked not in self.own_families:
            given = ", ".join(sorted(self.own_families)) or "none"
            raise PageError(f"typeface '{asked}' is not among the fonts that are given ({given}); give its font file, or leave it out")
        return asked

    def held(self, asked: str) -> set[int]:
        """Code points that some font of a document holds, by its family for words."""
        return self._held | self.own_families.get(asked, set())

    def width_em(self, text: str) -> float:
        """At most how wide a text comes out, as a share of the type's size: in the widest of our faces."""
        widths = self._advances[_MEASURED]
        return sum(widths.get(ord(c), _WIDEST) for c in text)

    def plain_em(self, text: str) -> float:
        """How wide a text comes out in our face for words."""
        widths = self._advances[_PLAIN]
        return sum(widths.get(ord(c), _WIDEST) for c in text)

    def close(self) -> None:
        """Takes the font files away."""
        self._folder.close()


def _read(ours: Mapping[str, bytes]) -> tuple[set[int], dict[str, dict[int, float]]]:
    """What all weights of Atkinson hold, and so what any text may be set in; advances of two faces by code point, as shares of an em."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - only where pages are made

    held: set[int] | None = None
    advances = {}
    for name, data in ours.items():
        font = TTFont(io.BytesIO(data), lazy=True)
        cmap = font.getBestCmap()
        if name.startswith("Atkinson"):
            held = set(cmap) if held is None else held & set(cmap)
        if name in (_MEASURED, _PLAIN):
            em, widths = font["head"].unitsPerEm, font["hmtx"]
            advances[name] = {code: widths[glyph][0] / em for code, glyph in cmap.items()}
    return held or set(), advances
