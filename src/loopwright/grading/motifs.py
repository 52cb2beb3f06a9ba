"""Motifs, blocks and shapes that grow by area: how many squares make a throw, how wide the same yarn makes a smaller shawl."""

from __future__ import annotations

import math

from loopwright.grading.counting import Number
from loopwright.record import record


@record
class Grid:
    """Motifs side by side; `motif_mm` includes the join."""

    columns: int
    rows: int
    motif_mm: Number

    @property
    def motifs(self) -> int:
        """All motifs."""
        return self.columns * self.rows

    @property
    def width_mm(self) -> Number:
        """Finished width."""
        return self.columns * self.motif_mm

    @property
    def length_mm(self) -> Number:
        """Finished length."""
        return self.rows * self.motif_mm


def covering(width_mm: Number, length_mm: Number, motif_mm: Number) -> Grid:
    """The fewest whole motifs that are at least so wide and long: ceil(W / s), ceil(L / s)."""
    return Grid(math.ceil(width_mm / motif_mm), math.ceil(length_mm / motif_mm), motif_mm)


def joins(grid: Grid) -> int:
    """Sides along which motifs meet: between columns and between rows."""
    return (grid.columns - 1) * grid.rows + (grid.rows - 1) * grid.columns


def granny_rectangle(long: int, short: int) -> tuple[int, int]:
    """Foundation chain and rounds of a granny rectangle of so many groups by so many: 4z - 1 chains for z = long - short, short - 1 rounds.

    Source: brightbag.blogspot.com, September 2012.
    """
    return 4 * (long - short) - 1, short - 1


def half_square_shawl(long_edge_mm: Number, diagonal_mm: Number) -> tuple[int, int]:
    """Whole and half squares of a triangular shawl whose long edge runs along diagonals: n = floor(edge / diagonal), n(n - 1)/2 and n."""
    n = math.floor(long_edge_mm / diagonal_mm)
    return n * (n - 1) // 2, n


def corner_to_corner(wide: int, high: int) -> tuple[int, int, int]:
    """Blocks of a corner-to-corner rectangle: the row after which the short side stops growing, diagonal rows, blocks in all."""
    return min(wide, high), wide + high - 1, wide * high


def triangle_mm2(width_mm: Number, depth_mm: Number) -> Number:
    """Area of a triangle: W * D / 2."""
    return width_mm * depth_mm / 2


def depth_for_area_mm(area_mm2: Number) -> float:
    """Depth of a shawl twice as wide as deep with that area: W * D / 2 = D * D."""
    return math.sqrt(float(area_mm2))


def area_ratio(length_ratio: Number) -> Number:
    """Area, and so yarn, of the same shape when its lengths change by a ratio: the square of it."""
    return length_ratio * length_ratio


def border_share(depth_ratio: Number) -> Number:
    """Yarn of a border against its triangle, when the border is `depth_ratio` of the triangle's depth: (1 + d)^2 - 1."""
    return (1 + depth_ratio) ** 2 - 1


def stitches_of_rectangle(width_mm: Number, length_mm: Number, stitch_mm: Number, row_mm: Number) -> tuple[int, int, int]:
    """Whole stitches across and rows that fit inside, and all stitches."""
    across, rows = math.floor(width_mm / stitch_mm), math.floor(length_mm / row_mm)
    return across, rows, across * rows
