"""Letters carried inside a drawing, so that a file that stands alone looks the same everywhere."""

from __future__ import annotations

import base64
import io
import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from html import unescape
from importlib.resources import files
from string import ascii_lowercase, ascii_uppercase, digits

FACES: dict[str, dict[int, str]] = {
    "Atkinson Hyperlegible Next": {
        400: "AtkinsonHyperlegibleNext_400Regular.ttf",
        600: "AtkinsonHyperlegibleNext_600SemiBold.ttf",
        700: "AtkinsonHyperlegibleNext_700Bold.ttf",
    },
    "Besley": {500: "Besley_500Medium.ttf", 700: "Besley_700Bold.ttf"},
}  # fmt: skip
"""Files of the type that comes with the program, by family and weight."""
KEPT_NAMES = (0, 1, 2, 13, 14)  # copyright, family, style, licence and its address stay inside, as the fonts' licence asks
MANY = 12
_RULE = re.compile(r"([^{}@]+)\{([^{}]*)\}")
_TEXT = re.compile(r"<text([^>]*)>([^<]*)</text>")
_CLASS = re.compile(r'class="([^"]*)"')
_WEIGHT = re.compile(r"font(?:-weight)?:(\d{3})\b")
_FAMILY = re.compile(r"font(?:-family)?:[^;]*?'?(" + "|".join(FACES) + r")'?[,;]")


def embed_fonts(svg: str) -> str:
    """The same drawing with the letters it uses, and no others, of the type it names; as it was where it has no text.

    For files that stand alone. In a page that brings its own type this is only weight.
    """
    used: dict[tuple[str, int], set[str]] = {}
    for family, weight, text in _texts(svg):
        used.setdefault((family, weight), set()).update(text)
    if not used or "</style>" not in svg:
        return svg
    faces = "".join(_face(family, weight, _rounded(letters)) for (family, weight), letters in sorted(used.items()))
    return svg.replace("</style>", f"</style><style>{faces}</style>", 1)


def embed_together(svgs: Sequence[str]) -> list[str]:
    """The same for drawings that belong together: what is cut of a type is cut once, with the letters of all of them."""
    texts = [list(_texts(svg)) for svg in svgs]
    used: dict[tuple[str, int], set[str]] = {}
    for family, weight, text in (t for of_one in texts for t in of_one):
        used.setdefault((family, weight), set()).update(text)
    faces = {(family, weight): _face(family, weight, _rounded(letters)) for (family, weight), letters in sorted(used.items())}
    found = []
    for svg, of_one in zip(svgs, texts, strict=True):
        own = "".join(faces[key] for key in sorted({(family, weight) for family, weight, _ in of_one}))
        found.append(svg.replace("</style>", f"</style><style>{own}</style>", 1) if own else svg)
    return found


def _rounded(letters: set[str]) -> str:
    """The letters, with all figures, and with all letters of a sort of which there are many: pictures of one pattern share what is cut."""
    more = (set(sort) for sort in (ascii_lowercase, ascii_uppercase, digits) if len(letters & set(sort)) > (0 if sort == digits else MANY))
    return "".join(sorted(letters.union(*more)))


def _texts(svg: str) -> Iterator[tuple[str, int, str]]:
    """Each text with the family and weight that the drawing's style gives it."""
    style = " ".join(re.findall(r"<style>(.*?)</style>", svg, re.DOTALL))
    rules = [(s.strip(), f"{found[2]};") for found in _RULE.finditer(style) if "font" in found[2] for s in found[1].split(",")]
    for attributes, inside in _TEXT.findall(svg):
        named = _CLASS.search(attributes)
        classes = named[1].split() if named else []
        family, weight = "", 400
        for selector, body in rules:
            last = selector.split()[-1] if selector else ""
            if last == "text" or last.rsplit(".", 1)[-1] in classes:
                told, heavy = _FAMILY.search(body), _WEIGHT.search(body)
                family = told[1] if told else family
                weight = int(heavy[1]) if heavy else 400 if told and "font:" in body else weight
        if family:
            nearest = min(FACES[family], key=lambda w: (abs(w - weight), w))
            yield family, nearest, unescape(inside)


@lru_cache(maxsize=256)
def _face(family: str, weight: int, letters: str) -> str:
    data = base64.b64encode(_subset(FACES[family][weight], letters)).decode("ascii")
    return f"@font-face{{font-family:'{family}';font-weight:{weight};src:url(data:font/woff;base64,{data}) format('woff')}}"


def _subset(name: str, letters: str) -> bytes:
    """A font with these letters alone, as WOFF 1.0 (https://www.w3.org/TR/WOFF/); the same letters give the same bytes."""
    from fontTools import subset  # noqa: PLC0415 - heavy, only where a file is written
    from fontTools.ttLib import TTFont  # noqa: PLC0415

    font = TTFont(io.BytesIO(files("loopwright.drawing").joinpath("fonts", name).read_bytes()), recalcTimestamp=False)
    options = subset.Options(hinting=False, layout_features=[], name_IDs=list(KEPT_NAMES), notdef_outline=True, glyph_names=False)
    cutter = subset.Subsetter(options)
    cutter.populate(text=letters)
    cutter.subset(font)
    font.flavor = "woff"
    found = io.BytesIO()
    font.save(found)
    return found.getvalue()
