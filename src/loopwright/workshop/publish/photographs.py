"""Photographs that a design names: found in its folder, turned upright, brought down to a size that pages need."""

from __future__ import annotations

import io
import re
import warnings
from collections.abc import Iterable
from pathlib import Path

from loopwright.model.tree import HeadLine
from loopwright.publishing.document import Picture
from loopwright.publishing.document.pattern import Photograph
from loopwright.publishing.document.steps import slug

FOLDERS = ("", "photographs", "photos")
MOST_PX = 2000  # the longer side: 170 mm at 300 dots to the inch
MOST_BYTES = 80_000_000
MOST_PIXELS = 200_000_000
_LINE = re.compile(r"(?P<file>[^():]+?)\s*+(?:\((?P<section>[^()]*)\))?\s*+(?::\s*(?P<alt>.*))?$")
_QUALITY = 85


def photographs(lines: Iterable[HeadLine], folder: Path) -> tuple[Photograph, ...]:
    """One per line "Photograph: crown.jpg (Crown): the crown, laid flat beside a tape"; "(cover)" for the front.

    A file is looked for in `folder` and in its folders `photographs` and `photos`, never outside; what is missing, no picture, or too
    large to open has no picture.
    """
    found: list[Photograph] = []
    for line in lines:
        if line.name not in ("photograph", "photographs"):
            continue
        for told in re.split(r";\s*", line.value) if line.name == "photographs" else [line.value]:
            m = _LINE.match(told.strip())
            if m is None:
                continue
            section = (m["section"] or "").strip()
            cover = section.lower() == "cover"
            path = _path(m["file"].strip(), folder)
            picture = None if path is None else _picture(path, len(found))
            alt = (m["alt"] or "").strip()
            found.append(Photograph(m["file"].strip(), "" if cover else section, alt, cover, picture, path is not None))
    return tuple(found)


def _picture(path: Path, number: int) -> Picture | None:
    from PIL import Image, ImageOps, UnidentifiedImageError  # noqa: PLC0415 - only where there are photographs

    try:
        if path.stat().st_size > MOST_BYTES:
            return None
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            Image.MAX_IMAGE_PIXELS = MOST_PIXELS
            with Image.open(path) as opened:
                opened.draft("RGB", (MOST_PX, MOST_PX))
                image = ImageOps.exif_transpose(opened).convert("RGB")
                image.thumbnail((MOST_PX, MOST_PX))
                held = io.BytesIO()
                image.save(held, "JPEG", quality=_QUALITY, optimize=True)
    except (OSError, ValueError, UnidentifiedImageError, Image.DecompressionBombError, Image.DecompressionBombWarning):
        return None
    return Picture(f"photograph-{number + 1}-{slug(path.stem)[:40]}.jpg", "jpeg", held.getvalue())


def _path(name: str, folder: Path) -> Path | None:
    """The file, where it is a plain name below the folder."""
    base = folder.resolve()
    for inside in FOLDERS:
        path = base / inside / name
        try:
            real = path.resolve()
            if real.is_relative_to(base) and real.is_file():
                return real
        except (OSError, ValueError):
            continue
    return None
