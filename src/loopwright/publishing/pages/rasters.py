"""Photographs and rendered pictures for paper: no more dots than print shows, kept on disk for the typesetter."""

from __future__ import annotations

import hashlib
import io
from threading import Lock
from typing import TYPE_CHECKING

from loopwright.publishing.document import Picture
from loopwright.publishing.errors import PageError
from loopwright.publishing.pages.folder import Folder

if TYPE_CHECKING:
    from PIL import Image

DOTS_PER_MM = 300 / 25.4
_SPARE = 1.25  # pictures with hardly more dots than needed stay as they are
_QUALITY = 88


class Rasters:
    """A folder of pictures, each in it once for each width it is wanted in."""

    def __init__(self) -> None:
        self._folder = Folder("pictures")
        self._lock = Lock()
        self._names: dict[tuple[bytes, int], str] = {}

    @property
    def root(self) -> str:
        """Where the typesetter looks for them."""
        return str(self._folder.path)

    def name(self, picture: Picture, width_mm: float) -> str:
        """The name of a picture's file in the folder. Raises PageError for one that cannot be read."""
        wanted_px = round(width_mm * DOTS_PER_MM)
        key = (hashlib.sha256(picture.data).digest(), wanted_px)
        with self._lock:
            if key not in self._names:
                name = f"{key[0].hex()[:24]}-{wanted_px}.jpg"
                self._folder.put(name, _printed(picture, wanted_px))
                self._names[key] = name
            return self._names[key]

    def close(self) -> None:
        """Takes the folder away."""
        self._folder.close()


def _printed(picture: Picture, wanted_px: int) -> bytes:
    """A picture as JPEG on white, brought down to the dots that are wanted."""
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - only where there are photographs

    try:
        with Image.open(io.BytesIO(picture.data)) as opened:
            if picture.kind == "jpeg" and opened.mode in ("RGB", "L") and opened.width <= wanted_px * _SPARE:
                return picture.data
            opened.draft("RGB", (wanted_px, wanted_px))
            image = _on_white(opened)
            if image.width > wanted_px * _SPARE:
                image.thumbnail((wanted_px, 4 * wanted_px), reducing_gap=2.0)
            held = io.BytesIO()
            image.save(held, "JPEG", quality=_QUALITY)
            return held.getvalue()
    except (OSError, ValueError, UnidentifiedImageError, Image.DecompressionBombError) as error:
        raise PageError(f"picture {picture.name}: it cannot be read") from error


def _on_white(opened: Image.Image) -> Image.Image:
    """A picture without transparency: paper shows where it had any."""
    from PIL import Image  # noqa: PLC0415 - only where there are photographs

    if opened.mode in ("RGB", "L"):
        return opened.convert("RGB")
    image = opened.convert("RGBA")
    ground = Image.new("RGB", image.size, "white")
    ground.paste(image, mask=image.getchannel("A"))
    return ground
