"""Photographs of a design: files put into the folder beside the designs, and the lines of the heading that name them.

No file is ever written over or thrown away: a name that is taken gets a number, and what is laid aside lies in a hidden folder.
"""

from __future__ import annotations

import io
import re
import threading
import warnings
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from loopwright.record import record
from loopwright.studio.folder import Folder
from loopwright.workshop.files import CannotOpen, CannotSave, write_bytes
from loopwright.workshop.publish.photographs import FOLDERS, MOST_PIXELS

PLACE = "photographs"
ASIDE = Path(".loopwright") / "laid aside"
KINDS = {"JPEG": ".jpg", "PNG": ".png", "WEBP": ".webp"}
ENDINGS = (".jpg", ".jpeg", ".png", ".webp")
MOST_FILES = 500
LONGEST_STEM = 60
SHOWN_PX = 480
SHOW_S = 20.0
_STRANGE = re.compile(r"[^\w .-]+")
_ONE = threading.Lock()


@record
class Stored:
    """A photograph in the folder: its name for the pattern, and its file."""

    name: str
    path: Path


class Photographs:
    """The photographs of a folder of designs; nothing outside it is read or written, by whatever name or link."""

    def __init__(self, folder: Folder) -> None:
        """`folder`: of the designs."""
        self.folder = folder

    def find(self, name: str) -> Path | None:
        """The file that a line of a pattern means by a name, as publishing looks for it; None where there is none."""
        if not name or "\0" in name or Path(name).is_absolute():
            return None
        for inside in FOLDERS:
            with suppress(OSError, ValueError, RuntimeError):
                real = (self.folder.path / inside / name).resolve()
                if real.is_relative_to(self.folder.path) and real.is_file():
                    return real
        return None

    def all(self) -> list[Stored]:
        """What lies in the places where photographs are looked for, by name; hidden files and links that lead out are left out."""
        found: dict[str, Stored] = {}
        for inside in FOLDERS:
            with suppress(OSError):
                for path in sorted((self.folder.path / inside).iterdir()):
                    plain = path.suffix.lower() in ENDINGS and not path.name.startswith(".") and self.find(path.name) == path
                    if plain and len(found) < MOST_FILES:
                        found.setdefault(path.name, Stored(path.name, path))
        return [found[name] for name in sorted(found, key=str.lower)]

    def put(self, name: str, kind: str, data: bytes) -> str:
        """Puts a photograph into the folder, and gives the name that it got. The same picture under the same name is not put there twice.

        `kind`: what it was found to be, a key of KINDS. Raises CannotSave.
        """
        if self.folder.read_only:
            raise CannotSave("this studio is only for reading: put photographs into the folder yourself")
        place = self.folder.path / PLACE
        if place.resolve() != place:
            raise CannotSave(f"{PLACE} is a link to another place: nothing is put there")
        stem = _plain(Path(name.replace("\\", "/")).stem)
        with _ONE:
            for path in _names(place, stem, KINDS[kind]):
                there = self.find(path.name)
                if there is None and not path.exists():
                    write_bytes(path, data)
                    return path.name
                if there is not None and there.stat().st_size == len(data) and there.read_bytes() == data:
                    return path.name
        raise CannotSave("there are too many photographs of this name: give it another")

    def lay_aside(self, name: str) -> str:
        """Moves a photograph that no design names out of sight, and gives where it lies then. Raises CannotSave, CannotOpen."""
        if self.folder.read_only:
            raise CannotSave("this studio is only for reading: move the file yourself")
        path = next((s.path for s in self.all() if s.name == name), None)
        if path is None:
            raise CannotOpen(f"there is no photograph {name} in this folder")
        with _ONE:
            for design in self.folder.all():
                if isinstance(design, tuple) or _named(name, design.text):
                    called = design[0] if isinstance(design, tuple) else design.id
                    raise CannotSave(f"{name} may belong to {called} too: it stays where it is")
            place = self.folder.path / ASIDE
            if place.resolve() != place:
                raise CannotSave(f"{ASIDE} is a link to another place: nothing is put there")
            place.mkdir(parents=True, exist_ok=True)
            for to in _names(place, path.stem, path.suffix):
                if not to.exists():
                    path.rename(to)
                    return str(to.relative_to(self.folder.path))
        raise CannotSave(f"there are too many photographs {name} laid aside: move them elsewhere")


def kind_of(data: bytes) -> tuple[bool, str]:
    """In the other process: what a picture is by its content, a key of KINDS; or that it is none, and why, in words."""
    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - only where a photograph comes in

    try:
        with _opened(data) as image:
            if image.width * image.height > MOST_PIXELS:
                return False, f"this photograph has more than {MOST_PIXELS // 1_000_000} million pixels: make it smaller"
            kind = str(image.format)
            image.draft("RGB", (SHOWN_PX, SHOWN_PX))
            image.load()
    except UnidentifiedImageError:
        return False, "this is no photograph that pages can hold: it should be JPEG, PNG or WebP"
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        return False, f"this photograph has more than {MOST_PIXELS // 1_000_000} million pixels: make it smaller"
    except (OSError, ValueError, SyntaxError):
        return False, "this photograph is damaged, or not all of it is there: save it anew"
    return True, kind


def shown(path: str) -> bytes | None:
    """In the other process: a photograph made small and turned upright, as JPEG; None where it cannot be opened."""
    from PIL import Image, ImageOps  # noqa: PLC0415 - only where photographs are looked at

    try:
        with _opened(Path(path).read_bytes()) as opened:
            opened.draft("RGB", (SHOWN_PX, SHOWN_PX))
            image = ImageOps.exif_transpose(opened).convert("RGB")
            image.thumbnail((SHOWN_PX, SHOWN_PX))
            held = io.BytesIO()
            image.save(held, "JPEG", quality=80)
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError, Image.DecompressionBombWarning):
        return None
    return held.getvalue()


def _opened(data: bytes):  # type: ignore[no-untyped-def]  # noqa: ANN202 - a picture; Pillow is loaded where it is used
    from PIL import Image  # noqa: PLC0415

    with warnings.catch_warnings():
        warnings.simplefilter("error", Image.DecompressionBombWarning)
        Image.MAX_IMAGE_PIXELS = MOST_PIXELS
        return Image.open(io.BytesIO(data), formats=tuple(KINDS))


def _plain(stem: str) -> str:
    """A name that a line of the pattern can hold: letters, figures, spaces, hyphens."""
    return _STRANGE.sub("-", stem).strip(" .-_")[:LONGEST_STEM].strip(" .-_") or "photograph"


def _names(place: Path, stem: str, ending: str) -> Iterator[Path]:
    yield place / f"{stem}{ending}"
    for n in range(2, 1000):
        yield place / f"{stem} {n}{ending}"


def _named(name: str, text: str) -> bool:
    return name.lower() in text.lower()
