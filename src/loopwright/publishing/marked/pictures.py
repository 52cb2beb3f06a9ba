"""Pictures for pages and EPUBs: drawings that hold nothing but shapes, photographs brought down to the size they are shown at."""

from __future__ import annotations

import base64
import io
import re
from functools import lru_cache
from typing import TYPE_CHECKING, Literal
from xml.parsers import expat

from loopwright.publishing.document import Picture
from loopwright.publishing.marked import Markup
from loopwright.publishing.marked.element import escaped

if TYPE_CHECKING:
    from PIL import Image

COVER_PX = 800
PHOTO_PX = 1200
_QUALITY = 82
_EFFORT = 2  # of WebP, out of 6: a tenth larger than at the usual 4, in half the time
_ELEMENTS = frozenset(
    "svg g path rect circle ellipse line polyline polygon text tspan title desc style defs use symbol pattern clipPath marker".split()
)
_LINKS = ("href", "xlink:href")
_ROOT = re.compile(r"<svg\b[^>]*>")
_TOLD = re.compile(r"<(title|desc|metadata)\b[^>]*>.*?</\1>", re.DOTALL)
_STYLE = re.compile(r"<style\b[^>]*>(.*?)</style>", re.DOTALL)
_LEADS_BACK = re.compile(r' data-[a-z-]+="[^"]*"')
_FETCHES = re.compile(r"@import|url\(|expression|</|\\", re.IGNORECASE)


class NotDrawnError(ValueError):
    """An SVG that holds more than shapes and text."""


def drawn(picture: Picture, alt: str) -> tuple[Markup, str]:
    """A drawing as an element with its words, and its style sheet, which a page holds once.

    What leads from its signs to the lines of the design is left out. Raises NotDrawnError for one that holds anything but shapes, text and
    plain styles.
    """
    attributes, inside, style = _apart(picture)
    return Markup(f'<svg{attributes} role="img" aria-label="{escaped(alt)}">{inside}'), style


def drawing_file(picture: Picture, alt: str) -> bytes:
    """A drawing as a file of its own, made plain as by `drawn`. Raises NotDrawnError as it does."""
    attributes, inside, style = _apart(picture)
    head = f'<svg xmlns="http://www.w3.org/2000/svg"{attributes} role="img"><title>{escaped(alt)}</title>'
    return f"{head}<style>{style}</style>{inside}".encode()


def _apart(picture: Picture) -> tuple[str, str, str]:
    """Attributes of the root, what stands in it, to its end, and the style sheet."""
    text = picture.data.decode("utf-8", "replace")
    _check(text)
    text = text[_start(text) :]
    styles = _STYLE.findall(text)
    if any(_FETCHES.search(s) for s in styles):
        raise NotDrawnError(f"{picture.name}: its style sheet fetches something")
    text = _LEADS_BACK.sub("", _STYLE.sub("", _TOLD.sub("", text)))
    root = _ROOT.match(text)
    if root is None:
        raise NotDrawnError(f"{picture.name}: no drawing")
    kept = {name: m[1] for name in ("class", "viewBox", "width", "height") if (m := re.search(rf'\s{name}="([^"<]*)"', root[0]))}
    return "".join(f' {name}="{value}"' for name, value in kept.items()), text[root.end() :].strip(), "".join(styles)


def _start(text: str) -> int:
    m = _ROOT.search(text)
    return m.start() if m else 0


def _check(text: str) -> None:
    """Well-formed, no document type, no element or attribute that could run or fetch."""

    def begins(name: str, attributes: dict[str, str]) -> None:
        if name not in _ELEMENTS:
            raise NotDrawnError(f"an element '{name}' in a drawing")
        for key, value in attributes.items():
            elsewhere = key in _LINKS and not value.startswith("#") or "url(" in value and not value.startswith("url(#")
            if key.startswith("on") or key == "style" or elsewhere:
                raise NotDrawnError(f"an attribute '{key}' in a drawing")

    def refuses(*_: object) -> None:
        raise NotDrawnError("a document type in a drawing")

    parser = expat.ParserCreate()
    parser.StartElementHandler = begins
    parser.StartDoctypeDeclHandler = refuses
    parser.StartCdataSectionHandler = refuses
    try:
        parser.Parse(text, True)
    except expat.ExpatError as error:
        raise NotDrawnError(str(error)) from error


def data_address(picture: Picture, *, cover: bool = False) -> str:
    """A picture as an address that holds it; photographs and covers brought down to the size of a page."""
    if picture.kind == "svg":
        return f"data:image/svg+xml;base64,{base64.b64encode(picture.data).decode('ascii')}"
    kind, data = smaller(picture.data, COVER_PX if cover else PHOTO_PX, "WEBP")
    return f"data:image/{kind or picture.kind};base64,{base64.b64encode(data).decode('ascii')}"


@lru_cache(maxsize=32)
def smaller(data: bytes, most_px: int, kind: Literal["WEBP", "JPEG"]) -> tuple[str, bytes]:
    """A photograph no wider or higher than so many pixels, and the name of its kind; "" and as it was where it cannot be opened.

    JPEG stands on white where the picture is transparent.
    """
    from PIL import Image  # noqa: PLC0415 - only where there are photographs

    image = _reduced(data, most_px)
    if image is None:
        return "", data
    if kind == "JPEG" and image.mode == "RGBA":
        paper = Image.new("RGB", image.size, "#FFFFFF")
        paper.paste(image, mask=image.getchannel("A"))
        image = paper
    held = io.BytesIO()
    image.save(held, kind, quality=_QUALITY, method=_EFFORT)
    return kind.lower(), held.getvalue()


def _reduced(data: bytes, most_px: int) -> Image.Image | None:
    """Brought down by a whole number, which is quick and even; None where it cannot be opened."""
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - as above

    try:
        with Image.open(io.BytesIO(data)) as opened:
            factor = -(-max(opened.size) // most_px)
            return _by(data, factor)
    except (OSError, ValueError, UnidentifiedImageError, Image.DecompressionBombError):
        return None


@lru_cache(maxsize=8)
def _by(data: bytes, factor: int) -> Image.Image:
    from PIL import Image  # noqa: PLC0415 - as above

    with Image.open(io.BytesIO(data)) as opened:
        mode = "RGBA" if opened.has_transparency_data else "RGB"
        image = opened if opened.mode == mode else opened.convert(mode)
        return image.reduce(factor)
