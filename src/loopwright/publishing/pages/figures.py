"""Pictures as the template takes them: how wide, upright or across, whole or cut into parts that can be read."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from loopwright.publishing.document import Figure, Picture
from loopwright.publishing.errors import PageError
from loopwright.publishing.pages.drawings import LETTERING_PX, room_to_grow
from loopwright.publishing.pages.faces import Faces
from loopwright.publishing.pages.sheet import POINT_MM, Sheet
from loopwright.publishing.pages.signs import plain
from loopwright.publishing.pages.texts import pieces
from loopwright.record import record

LEAST_PT = 7.0
BEST = 0.62  # points to a unit of a drawing: lettering of 8 pt
OVERLAP_PX = 24.0
MOST_BESIDE = 3
SMALLEST_SHARE = 0.68  # of its own size: how small a picture may get so that it stands beside another
_HALF = 0.39  # of a page's height: two pictures of it with captions and a heading fill a page
_GAP_MM = 6.0
_CAPTION_MM = 16.0
_LETTER_MM, _LINE_MM = 2.0, 5.0  # of a caption on a phone's page
_HEADING_MM = 14.0  # the first picture of a part leaves room for it
ACROSS_MM = (10.0, 17.0)  # top and bottom margins of a page turned to landscape
_PHOTO_MM = 110.0
_SIZE = re.compile(r'viewBox="[-\d.]+ [-\d.]+ (?P<width>[\d.]+) (?P<height>[\d.]+)"')


@record
class Placed:
    """A figure with its size on the page, mm. `across`: on a page of its own turned to landscape. `tiles`: (x, y, width, height), mm.

    `grown`: how much larger its lettering is set; `shrunk`: how much smaller it is than it would be alone;
    `room`: how large its lettering may get in it.
    """

    figure: Figure
    width_mm: float
    height_mm: float
    file: str = ""
    across: bool = False
    tiles: tuple[tuple[float, float, float, float], ...] = ()
    grown: float = 1.0
    shrunk: float = 1.0
    room: float = 1.0

    @property
    def data(self) -> dict[str, Any]:
        """For the template."""
        return {
            "kind": "figure", "file": self.file, "alt": plain(self.figure.alt),
            "told": plain(_in_full(self.figure)),
            "caption": pieces(self.figure.caption),
            "description": [], "width_mm": round(self.width_mm, 2),
            "height_mm": round(self.height_mm, 2), "across": self.across, "tiles": [[round(v, 2) for v in t] for t in self.tiles],
        }


def _in_full(figure: Figure) -> str:
    """All that there is to say of a picture, as its alternative: a page has no other place for it."""
    if not figure.description or figure.description.startswith(figure.alt.removesuffix(" …")):
        return figure.description or figure.alt
    return f"{figure.alt.rstrip('.')}. {figure.description}"


def size_px(picture: Picture) -> tuple[float, float]:
    """Width and height of a picture in its own units. Raises PageError for one that cannot be read."""
    if picture.kind == "svg":
        m = _SIZE.search(picture.data[:4000].decode("utf-8", "replace"))
        if m is None or not float(m["width"]) or not float(m["height"]):
            raise PageError(f"picture {picture.name}: it does not say how large it is")
        return float(m["width"]), float(m["height"])
    import io  # noqa: PLC0415 - only where there are photographs

    from PIL import Image, UnidentifiedImageError  # noqa: PLC0415 - the same

    try:
        with Image.open(io.BytesIO(picture.data)) as image:
            return float(image.width), float(image.height)
    except (OSError, UnidentifiedImageError, Image.DecompressionBombError) as error:
        raise PageError(f"picture {picture.name}: it cannot be read") from error


def placed(figure: Figure, sheet: Sheet, faces: Faces, *, first: bool = False) -> Placed:
    """Where and how large a figure stands; `first`: below the heading of its part."""
    width, height = size_px(figure.picture)
    ratio = height / width
    if figure.cover:
        return _fitted(figure, ratio, *_cover_mm(sheet))
    spare_mm = _caption_mm(figure, sheet) + (_HEADING_MM if first else 0.0) + (20.0 if sheet.form == "far" else 0.0)
    high_mm = sheet.high_mm - spare_mm
    if figure.picture.kind != "svg":
        wanted = min(figure.picture.width_mm or _PHOTO_MM, sheet.inner_mm)
        return _fitted(figure, ratio, wanted, high_mm * 0.45)
    if sheet.form == "far":  # as large as the page lets it be: nothing that is needed stands in it alone
        return _fitted(figure, ratio, sheet.inner_mm, high_mm)
    room = room_to_grow(figure.picture.data.decode("utf-8", "replace"), width, faces)
    return _drawing(figure, sheet, (width, height), (high_mm, sheet.width_mm - sum(ACROSS_MM) - spare_mm + 4.0), room)


def _caption_mm(figure: Figure, sheet: Sheet) -> float:
    """Room for a caption; on the narrow pages of a phone it takes more lines the longer it is."""
    if sheet.paper != "phone":
        return _CAPTION_MM
    letters = sum(len(p if isinstance(p, str) else str(next(iter(p.values())))) for p in pieces(figure.caption))
    return max(_CAPTION_MM, 6.0 + _LINE_MM * math.ceil(letters * _LETTER_MM / sheet.inner_mm))


def _cover_mm(sheet: Sheet) -> tuple[float, float]:
    if sheet.paper == "phone":
        return sheet.inner_mm, 74.0
    if sheet.form == "far":
        return sheet.inner_mm, 84.0
    return 72.0, 68.0


def _fitted(figure: Figure, ratio: float, width_mm: float, high_mm: float) -> Placed:
    width_mm = min(width_mm, high_mm / ratio)
    return Placed(figure, width_mm, width_mm * ratio)


_Size = tuple[float, float]


def _drawing(figure: Figure, sheet: Sheet, size: _Size, high_mm: _Size, room: float) -> Placed:
    """Upright where the lettering can be read so; else across; else in parts. `high_mm`: of the page's room, upright and across."""
    width, height = size
    best = BEST * POINT_MM if figure.picture.width_mm is None else figure.picture.width_mm / width
    upright = min(best, sheet.inner_mm / width, high_mm[0] / height)
    need = LEAST_PT / LETTERING_PX * POINT_MM  # mm to a unit
    if upright * room >= need or sheet.paper == "phone":
        return Placed(figure, width * upright, height * upright, grown=min(room, max(1.0, need / upright)), room=room)
    across = min(best, (sheet.height_mm - 2 * sheet.side_mm) / width, high_mm[1] / height)
    if across * room >= need:
        return Placed(figure, width * across, height * across, across=True, grown=max(1.0, need / across), room=room)
    return _in_parts(figure, sheet, size, high_mm, room)


def _in_parts(figure: Figure, sheet: Sheet, size: _Size, high_mm: _Size, room: float) -> Placed:
    """Cut into parts of the page's width, each with a little of its neighbours; the way round that takes fewer pages."""
    width, height = size
    scale = LEAST_PT / LETTERING_PX * POINT_MM / room
    found = []
    for across in (False, True):
        wide_mm, tall_mm = (sheet.height_mm - 2 * sheet.side_mm, high_mm[1]) if across else (sheet.inner_mm, high_mm[0])
        columns, rows = _cuts(width, wide_mm / scale), _cuts(height, tall_mm / scale)
        tiles = tuple((x * scale, y * scale, w * scale, h * scale) for y, h in rows for x, w in columns)
        a_page = max(1, int((tall_mm + _CAPTION_MM) / (rows[0][1] * scale + _CAPTION_MM)))
        found.append((math.ceil(len(tiles) / a_page), across, tiles))
    _, across, tiles = min(found, key=lambda f: f[:2])
    return Placed(figure, width * scale, height * scale, across=across, tiles=tiles, grown=room, room=room)


def _cuts(length: float, room: float) -> list[tuple[float, float]]:
    """Where parts begin and how long they are, all alike."""
    if length <= room:
        return [(0.0, length)]
    count = math.ceil((length - OVERLAP_PX) / (room - OVERLAP_PX))
    each = (length + (count - 1) * OVERLAP_PX) / count
    return [(i * (each - OVERLAP_PX), each) for i in range(count)]


def grouped(figures: Sequence[Placed], sheet: Sheet) -> list[list[Placed]]:
    """Figures that stand beside one another, made a little smaller where they then fit; large ones alone."""
    lines: list[list[Placed]] = []
    open_line = False
    for figure in figures:
        alone = figure.across or bool(figure.tiles) or sheet.form == "far" or sheet.paper == "phone"
        if not alone and open_line and (smaller := _beside([*lines[-1], figure], sheet)):
            lines[-1] = smaller
        else:
            lines.append([figure])
            open_line = not alone
    return [_halved(line, sheet) for line in lines]


def _halved(line: list[Placed], sheet: Sheet) -> list[Placed]:
    """A line a little taller than half a page, made to fit one."""
    share = _HALF * sheet.high_mm / max(f.height_mm for f in line)
    whole = share >= 1 or any(f.across or f.tiles or not _stays_legible(f, share) for f in line)
    return line if whole or sheet.form == "far" or sheet.paper == "phone" else [_smaller(f, share) for f in line]


def _stays_legible(figure: Placed, share: float) -> bool:
    """Whether a picture can be so much smaller: its lettering grows in it as far as it has room."""
    left = figure.shrunk * share
    return left >= SMALLEST_SHARE and (figure.figure.picture.kind != "svg" or BEST * left * LETTERING_PX * figure.room >= LEAST_PT)


def _smaller(figure: Placed, share: float) -> Placed:
    return replace(
        figure, width_mm=figure.width_mm * share, height_mm=figure.height_mm * share, grown=min(figure.room, figure.grown / share),
        shrunk=figure.shrunk * share,
    )


def _beside(line: Sequence[Placed], sheet: Sheet) -> list[Placed]:
    """A line of figures in the page's width; none where their lettering would get too small or three stand there already."""
    wide_mm = sum(f.width_mm for f in line)
    share = min(1.0, (sheet.inner_mm - _GAP_MM * (len(line) - 1)) / wide_mm)
    if len(line) > MOST_BESIDE or not all(_stays_legible(f, share) for f in line):
        return []
    return [_smaller(f, share) for f in line]

