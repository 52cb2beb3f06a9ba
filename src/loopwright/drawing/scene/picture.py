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
LARGEST_PX = 4000
"""Largest side of a picture: 16 million pixels take about two gigabytes on the way."""

# Light, by eye: one lamp over the left shoulder, the rest from all around; creases lose up to the share named.
_LAMP = np.asarray([-0.45, 0.65, 0.75])
_AROUND, _FROM_LAMP = 0.42, 0.66
_CREASE = 0.55


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
    hit = nearest(places, wide, high)
    sample = np.flatnonzero(hit >= 0)
    weight = shares(places, hit[sample], wide, sample)
    vertex = corners[drawn][hit[sample]]
    light = _lit(buffers, facing)
    colour = np.zeros((high * wide, 4), dtype=np.float32)
    depth = np.full(high * wide, -np.inf, dtype=np.float32)
    far = screen[:, 2].astype(np.float32)
    total = np.zeros(len(sample), dtype=np.float32)
    for k in range(3):
        colour[sample, :3] += weight[:, [k]] * light[vertex[:, k]]
        total += weight[:, k] * far[vertex[:, k]]
    depth[sample], colour[sample, 3] = total, 1.0
    shade = _creases(depth.reshape(high, wide))
    colour[:, :3] *= shade.reshape(-1, 1)
    return _developed(colour.reshape(height_px, _OVER, width_px, _OVER, 4).mean(axis=(1, 3)), background)


def as_png(pixels: Pixels) -> bytes:
    """A picture (height, width, 4) as a PNG file."""
    from PIL import Image  # noqa: PLC0415 -- only to write the file

    out = io.BytesIO()
    Image.fromarray(pixels, "RGBA").save(out, format="PNG", optimize=False)
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


def _creases(depth: NDArray[np.float32]) -> NDArray[np.float32]:
    """Share of the light (height, width) that reaches each sample: less where what lies around is nearer to the eye."""
    high, wide = depth.shape
    reach = max(2, round(min(high, wide) / 250))
    hidden = np.zeros_like(depth)
    ways = [(1, 0), (0, 1), (-1, 0), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1)]
    known = np.where(np.isfinite(depth), depth, -1e9).astype(np.float32)
    for far in (reach, 3 * reach):
        around = np.pad(known, far, mode="edge")
        for dy, dx in ways:
            other = around[far + dy * far: far + dy * far + high, far + dx * far: far + dx * far + wide]
            hidden += np.clip((other - known) / (2.0 * far), 0, 1)
    return np.asarray(1 - _CREASE * np.clip(hidden / (2 * len(ways)) * 2.2, 0, 1), dtype=np.float32)


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
