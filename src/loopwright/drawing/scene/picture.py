"""A picture of a scene from any side, with light and shade: numpy alone, no graphics card."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene.body import Floats, Ints
from loopwright.drawing.scene.buffers import Buffers
from loopwright.drawing.scene.raster import nearest, shares

Pixels = NDArray[np.uint8]
_OVER = 2
"""Samples of a pixel in each direction."""
_MARGIN = 0.05
_QUICK = 3
"""Deflate's level: a third of the time of the usual one, files a twentieth larger."""
LARGEST_PX = 4000
"""Largest side of a picture: 16 million pixels take about two gigabytes on the way."""

# Light, by eye: one lamp over the left shoulder, the rest from all around; creases lose up to the share named.
_LAMP = np.asarray([-0.45, 0.65, 0.75])
_AROUND, _FROM_LAMP = 0.42, 0.66
_CREASE = 0.55
_WAYS = ((1, 0), (0, 1), (-1, 0), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1))
_BAND = 32
"""Lines of pixels that are shaded at once."""


def picture(
    buffers: Buffers,
    *,
    view: tuple[float, float] = (30.0, 25.0),
    width_px: int = 800,
    height_px: int = 700,
    background: tuple[int, int, int, int] = (255, 255, 255, 255),
) -> Pixels:
    """The scene (height, width, 4) as sRGB bytes with alpha, in parallel projection, as large as fits.

    `view`: degrees. Azimuth 0 looks along +y (x to the right, z upward), 90 from +x; elevation 90 looks down on it, -90 up.
    Raises ValueError for a size that is not from 1 to LARGEST_PX.
    """
    if not (1 <= width_px <= LARGEST_PX and 1 <= height_px <= LARGEST_PX):
        raise ValueError(f"a picture is 1 to {LARGEST_PX} pixels wide and high, not {width_px} × {height_px}")
    wide, high = width_px * _OVER, height_px * _OVER
    to_eye = turned_to_eye(view)
    seen = buffers.positions.astype(np.float64) @ to_eye.T
    facing = buffers.normals.astype(np.float64) @ to_eye.T
    screen = _fitted(seen, wide, high)
    corners = buffers.indices.astype(np.int64)
    drawn = np.flatnonzero(buffers.sheet | _front(screen, corners))
    places = screen[corners[drawn]]
    hit, depth = nearest(places, wide, high)
    creases = _Creases(depth.reshape(high, wide))
    seen_as = _Seen(places, corners[drawn], _lit(buffers, facing), hit.reshape(high, wide), creases, background)
    return np.concatenate([seen_as.band(top, min(top + _BAND, height_px)) for top in range(0, height_px, _BAND)])


class _Seen:
    """What each sample shows, brought to the light a few lines at a time, so that what is worked on stays near the processor."""

    def __init__(
        self, places: Floats, vertices: Ints, light: NDArray[np.float32], hit: Ints, creases: _Creases,
        background: tuple[int, int, int, int],
    ) -> None:
        self.places, self.vertices, self.light, self.hit = places, vertices, light, hit
        self.creases, self.background = creases, background

    def band(self, top: int, bottom: int) -> Pixels:
        """Some lines of pixels (lines, width, 4), each the mean of its samples."""
        first, last, wide = top * _OVER, bottom * _OVER, self.hit.shape[1]
        hit = self.hit[first:last].reshape(-1)
        sample = np.flatnonzero(hit >= 0)
        triangle = hit[sample]
        weight = shares(self.places, triangle, wide, sample + first * wide)
        colour = np.zeros((len(hit), 4), dtype=np.float32)
        lit = np.zeros((len(sample), 3), dtype=np.float32)
        for k in range(3):
            lit += weight[:, [k]] * self.light.take(self.vertices[:, k].take(triangle), axis=0)
        colour[sample, :3] = lit * self.creases.lines(first, last).reshape(-1)[sample, None]
        colour[sample, 3] = 1.0
        of_pixel = colour.reshape(bottom - top, _OVER, wide // _OVER, _OVER, 4)
        whole = sum(of_pixel[:, i, :, j] for i in range(_OVER) for j in range(_OVER))
        return _developed(np.asarray(whole / np.float32(_OVER**2)), self.background)


def as_png(pixels: Pixels) -> bytes:
    """A picture (height, width, 4) as a PNG file."""
    from PIL import Image  # noqa: PLC0415 -- only to write the file

    out = io.BytesIO()
    Image.fromarray(pixels, "RGBA").save(out, format="PNG", compress_level=_QUICK)
    return out.getvalue()


def turned_to_eye(view: tuple[float, float]) -> Floats:
    """From the scene to the eye (3, 3): x to the right, y upward, z towards the eye."""
    azimuth, elevation = np.radians(view)
    right = np.asarray([np.cos(azimuth), np.sin(azimuth), 0.0])
    towards = np.asarray([np.sin(azimuth) * np.cos(elevation), -np.cos(azimuth) * np.cos(elevation), np.sin(elevation)])
    return np.stack((right, np.cross(towards, right), towards))


def _fitted(seen: Floats, wide: int, high: int) -> Floats:
    """Places on the screen (v, 3): x and y in samples, y downward; the third nearer the larger."""
    if not len(seen):
        return seen
    low, top = seen.min(axis=0), seen.max(axis=0)
    size = np.maximum(top - low, 1e-9)
    scale = (1 - 2 * _MARGIN) * min(wide / size[0], high / size[1])
    middle = (low + top) / 2
    found = (seen - middle) * scale
    found[:, 0] += wide / 2
    found[:, 1] = high / 2 - found[:, 1]
    return np.asarray(found)


def _front(screen: Floats, corners: Ints) -> NDArray[np.bool_]:
    """Triangles that turn their outside to the eye."""
    a, b, c = screen[corners[:, 0]], screen[corners[:, 1]], screen[corners[:, 2]]
    return np.asarray((b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (c[:, 0] - a[:, 0]) * (b[:, 1] - a[:, 1]) < 0)


def _lit(buffers: Buffers, facing: Floats) -> NDArray[np.float32]:
    """Linear light of each vertex (v, 3): Lambert's cosine of one lamp, and light from all around."""
    open_sheet = np.zeros(len(facing), dtype=bool)
    open_sheet[buffers.indices[buffers.sheet].reshape(-1)] = True
    away = open_sheet & (facing[:, 2] < 0)
    normal = np.where(away[:, None], -facing, facing)
    lamp = _LAMP / np.linalg.norm(_LAMP)
    light = _AROUND * (0.8 + 0.2 * normal[:, 1]) + _FROM_LAMP * np.clip(normal @ lamp, 0, None)
    return np.asarray((buffers.colours / 255.0) ** 2.2 * light[:, None], dtype=np.float32)


class _Creases:
    """Share of the light that reaches each sample: less where what lies around is nearer to the eye."""

    def __init__(self, depth: NDArray[np.float32]) -> None:
        self.high, self.wide = depth.shape
        self.reach = max(2, round(min(depth.shape) / 250))
        self.around = np.pad(np.maximum(depth, np.float32(-1e9)), 3 * self.reach, mode="edge")

    def lines(self, first: int, last: int) -> NDArray[np.float32]:
        """Of some lines (last - first, width)."""
        edge, wide = 3 * self.reach, self.wide
        known = self.around[edge + first : edge + last, edge : edge + wide]
        hidden, nearer = np.zeros_like(known), np.empty_like(known)
        for far in (self.reach, 3 * self.reach):
            for dy, dx in _WAYS:
                y, x = edge + dy * far, edge + dx * far
                np.subtract(self.around[y + first : y + last, x : x + wide], known, out=nearer)
                nearer *= np.float32(1 / (2.0 * far))
                hidden += np.clip(nearer, 0, 1, out=nearer)
        return np.asarray(1 - _CREASE * np.clip(hidden / (2 * len(_WAYS)) * 2.2, 0, 1), dtype=np.float32)


def _developed(colour: NDArray[np.float32], background: tuple[int, int, int, int]) -> Pixels:
    """Light and cover (height, width, 4) over the background, as bytes."""
    cover = colour[:, :, 3:]
    inside = np.clip(colour[:, :, :3] / np.maximum(cover, 1e-6), 0, 1) ** (1 / 2.2) * 255
    behind = np.asarray(background[:3], dtype=np.float32)
    opaque = background[3] / 255
    alpha = cover + opaque * (1 - cover)
    mixed = (inside * cover + behind * opaque * (1 - cover)) / np.maximum(alpha, 1e-6)
    pixels: Pixels = np.rint(np.concatenate((mixed, alpha * 255), axis=2)).astype(np.uint8)
    return pixels
