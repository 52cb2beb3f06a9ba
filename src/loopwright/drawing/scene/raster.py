"""Triangles into samples: which triangle each sample of a picture shows. Depth-buffered, without a graphics card.

Each triangle is cut into spans, one per line of samples; every sample of every span offers its depth, and the nearest stays.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene.body import Floats, Ints

SAMPLES_AT_ONCE = 200_000
TRIANGLES_AT_ONCE = 4_000
"""So many in one go: what is worked on stays near the processor, which takes a third less time, and memory is bounded."""
_DEPTHS = (1 << 30) - 1


def nearest(corners: Floats, width: int, height: int) -> tuple[Ints, NDArray[np.float32]]:
    """For each sample of a height × width picture the triangle nearest to the eye, -1 for none, and how near (height * width,) both.

    `corners` (t, 3, 3): x to the right and y downward in samples, the third nearer to the eye the larger it is.
    """
    best = np.full(width * height, -1, dtype=np.int64)
    if not len(corners):
        return best, np.full(width * height, -np.inf, dtype=np.float32)
    low, high = float(corners[:, :, 2].min()), float(corners[:, :, 2].max())
    scale = _DEPTHS / max(high - low, 1e-9)
    for first in range(0, len(corners), TRIANGLES_AT_ONCE):
        lines = _lines(corners[first : first + TRIANGLES_AT_ONCE], first, width, height)
        ends = np.cumsum(lines.samples)
        start = 0
        while start < len(ends):
            before = ends[start - 1] if start else 0
            stop = max(int(np.searchsorted(ends, before + SAMPLES_AT_ONCE, side="right")), start + 1)
            lines.offer(best, slice(start, stop), (low, scale))
            start = stop
    depth = ((best >> 32) / scale + low).astype(np.float32)
    return np.where(best >= 0, best & 0xFFFFFFFF, -1), np.where(best >= 0, depth, np.float32(-np.inf))


class _Lines:
    """Spans of samples: of which triangle, where they begin, how many, and their depth as a straight line in x."""

    def __init__(self, triangle: Ints, first: Ints, samples: Ints, depth: Floats, slope: Floats) -> None:
        self.triangle, self.first, self.samples = triangle, first, samples
        self.depth, self.slope = depth, slope

    def offer(self, best: Ints, part: slice, scale: tuple[float, float]) -> None:
        """Put the samples of a part of the spans where they are nearer than what is there."""
        samples = self.samples[part]
        before = np.cumsum(samples) - samples
        count = np.arange(int(samples.sum()))
        place = np.repeat(self.first[part] - before, samples)
        place += count
        slope = self.slope[part] * scale[1]
        depth = np.repeat(slope, samples)
        depth *= count
        depth += np.repeat((self.depth[part] - scale[0]) * scale[1] - before * slope, samples)
        key = np.clip(depth, 0, _DEPTHS, out=depth).astype(np.int64)
        key <<= 32
        key |= np.repeat(self.triangle[part], samples)
        np.maximum.at(best, place, key)


def _lines(corners: Floats, first_triangle: int, width: int, height: int) -> _Lines:
    x, y, z = corners[:, :, 0], corners[:, :, 1], corners[:, :, 2]
    area = (x[:, 1] - x[:, 0]) * (y[:, 2] - y[:, 0]) - (x[:, 2] - x[:, 0]) * (y[:, 1] - y[:, 0])
    top = np.clip(np.ceil(y.min(axis=1) - 0.5), 0, height).astype(np.int64)
    bottom = np.clip(np.ceil(y.max(axis=1) - 0.5), 0, height).astype(np.int64)
    count = np.where(np.abs(area) > 1e-9, np.maximum(bottom - top, 0), 0)
    triangle = np.repeat(np.arange(len(corners)), count)
    line = np.arange(len(triangle)) - np.repeat(np.cumsum(count) - count, count) + top[triangle]
    left, right = _span(x[triangle], y[triangle], line + 0.5)
    first = np.clip(np.ceil(left - 0.5), 0, width).astype(np.int64)
    last = np.clip(np.ceil(right - 0.5), 0, width).astype(np.int64)
    real = last > first
    triangle, line, first, last = triangle[real], line[real], first[real], last[real]
    safe = np.where(np.abs(area) > 1e-9, area, 1.0)
    slope_x = ((z[:, 1] - z[:, 0]) * (y[:, 2] - y[:, 0]) - (z[:, 2] - z[:, 0]) * (y[:, 1] - y[:, 0])) / safe
    slope_y = ((x[:, 1] - x[:, 0]) * (z[:, 2] - z[:, 0]) - (x[:, 2] - x[:, 0]) * (z[:, 1] - z[:, 0])) / safe
    depth = z[triangle, 0] + slope_x[triangle] * (first + 0.5 - x[triangle, 0]) + slope_y[triangle] * (line + 0.5 - y[triangle, 0])
    return _Lines(triangle + first_triangle, line * width + first, last - first, depth, slope_x[triangle])


def _span(x: Floats, y: Floats, line: Floats) -> tuple[Floats, Floats]:
    """Where the sides of triangles (l, 3) cross a line: leftmost and rightmost (l,)."""
    left, right = np.full(len(line), np.inf), np.full(len(line), -np.inf)
    for k in range(3):
        y0, y1 = y[:, k], y[:, (k + 1) % 3]
        crosses = (y0 < line) != (y1 < line)
        rise = np.where(crosses, y1 - y0, 1.0)
        at = x[:, k] + (line - y0) / rise * (x[:, (k + 1) % 3] - x[:, k])
        left = np.where(crosses, np.minimum(left, at), left)
        right = np.where(crosses, np.maximum(right, at), right)
    return left, right


def shares(corners: Floats, triangle: Ints, width: int, sample: Ints) -> NDArray[np.float32]:
    """Barycentric shares (s, 3) of samples within the triangles that they show."""
    x, y = corners[:, :, 0].astype(np.float32), corners[:, :, 1].astype(np.float32)
    area = (x[:, 1] - x[:, 0]) * (y[:, 2] - y[:, 0]) - (x[:, 2] - x[:, 0]) * (y[:, 1] - y[:, 0])
    px, py = (sample % width + 0.5).astype(np.float32), (sample // width + 0.5).astype(np.float32)
    found = np.empty((len(sample), 3), dtype=np.float32)
    dx, dy = px - x[triangle, 0], py - y[triangle, 0]
    inverse = (1 / np.where(np.abs(area) > 1e-9, area, 1.0))[triangle]
    found[:, 1] = (dx * (y[:, 2] - y[:, 0])[triangle] - dy * (x[:, 2] - x[:, 0])[triangle]) * inverse
    found[:, 2] = (dy * (x[:, 1] - x[:, 0])[triangle] - dx * (y[:, 1] - y[:, 0])[triangle]) * inverse
    np.clip(found, 0, 1, out=found)
    found[:, 0] = np.maximum(1 - found[:, 1] - found[:, 2], 0)
    return found
