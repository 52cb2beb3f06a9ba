"""Which pieces are drawn as squares: filet, rows of one stitch in several colours, blocks from corner to corner. From the fabric alone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from loopwright.drawing.chart.grid import BLOCK, OPEN, Cell, Grid, GridKind, GridRow
from loopwright.drawing.chart.sections import Section
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import ROLES, Fabric, FabricRow

MESHES = (3, 2)  # places that a mesh is wide: ch 2 and a stitch, or ch 1 and a stitch (common practice, no source)
FEWEST = 3  # rows, and squares in a row
_TOP = tuple(ROLES.index(r) for r in ("edge", "counts"))
Spot = tuple[int, int]


def grid_of(fabric: Fabric, section: Section, sizes: StitchSizes) -> Grid | None:
    """The squares of a part of the fabric with all its rows; None where it is no grid.

    Filet: every row one stitch and whole meshes, posts on posts, meshes open and filled. Colours: every row as many stitches of one
    kind, each on one of the row below, some row with several colours. Corner to corner: the blocks that `section` has.
    """
    if section.blocks:
        return _corner(fabric, section)
    if section.kind in ("disc", "oval") or len(section.rows) < FEWEST:
        return None
    tops = [_top(fabric, fabric.rows[i]) for i in section.rows]
    if any(len(top) < FEWEST for top in tops):
        return None
    return _filet(fabric, section, tops, sizes) or _coloured(fabric, section, tops, sizes)


def _top(fabric: Fabric, row: FabricRow) -> list[int]:
    """What stands along a row's top, in the order of making."""
    return [*row.borrowed, *(s for s in range(row.start, row.end) if fabric.role[s] in _TOP)]


def _kind(fabric: Fabric, stitch: int, row: FabricRow) -> str:
    """The stitch it is, or stands for; "ch" for a chain that is none."""
    if stitch < row.start or fabric.part_of(stitch) == "counts":
        return fabric.kinds[fabric.counts_as.get(stitch, fabric.kind[stitch])]
    return fabric.name(stitch)


def _seat(at: int, many: int, row: FabricRow) -> int:
    """A place along a row, counted from the right as the right side is seen."""
    return at if row.right_side else many - 1 - at


def _upright(fabric: Fabric, stitches: Sequence[int], seats: dict[int, int], seat: int) -> bool:
    """Whether the last of some stitches that knows its parent stands straight on it."""
    into = fabric.into[stitches[-1]]
    return into not in seats or seats[into] == seat


# --- filet -----------------------------------------------------------------------------------------------------------------------


def _filet(fabric: Fabric, section: Section, tops: Sequence[list[int]], sizes: StitchSizes) -> Grid | None:
    for wide in MESHES:
        rows: list[GridRow] = []
        posts: dict[int, int] = {}
        for y, (index, top) in enumerate(zip(section.rows, tops, strict=True)):
            row = fabric.rows[index]
            cells = _meshes(fabric, row, _opened(fabric, section, row, top, wide), wide, y, posts)
            if cells is None or rows and len(cells) != len(rows[0].cells):
                break
            rows.append(GridRow(index, tuple(cells)))
        else:
            if any({c.what for c in r.cells} == {OPEN, BLOCK} for r in rows):
                kinds = {_kind(fabric, s, fabric.rows[i]) for i, top in zip(section.rows, tops, strict=True) for s in top} - {"ch"}
                kind = min(kinds)
                cell_mm = wide * sizes.width(kind), sizes.height(kind)
                return _whole("filet", rows, cell_mm, (kind, wide), closed=False) if len(kinds) == 1 else None
    return None


def _opened(fabric: Fabric, section: Section, row: FabricRow, top: list[int], wide: int) -> list[int]:
    """The top of a row; of a first row that begins with an open mesh with the last chains of the foundation, which lie over it."""
    if section.base < 0 or len(row.borrowed) != 1 or (len(top) + wide - 2) % wide:
        return top
    end = fabric.rows[section.base].end
    return [top[0], *range(end - wide + 1, end), *top[1:]]


def _meshes(fabric: Fabric, row: FabricRow, top: Sequence[int], wide: int, y: int, posts: dict[int, int]) -> list[Cell] | None:
    """A row as meshes, each wide - 1 chains or stitches and a post; None where it is something else. `posts`: seats of all posts so far."""
    many, odd = divmod(len(top) - 1, wide)
    if odd or many < FEWEST:
        return None
    solid = [_kind(fabric, s, row) != "ch" for s in top]
    cells = []
    here: dict[int, int] = {top[0]: _seat(0, many + 1, row)}
    if not solid[0] or not _upright(fabric, top[:1], posts, here[top[0]]):
        return None
    for k in range(many):
        part = range(1 + k * wide, 1 + (k + 1) * wide)
        inside = {solid[i] for i in part[:-1]}
        post = top[part[-1]]
        here[post] = _seat(k + 1, many + 1, row)
        if len(inside) != 1 or not solid[part[-1]] or not _upright(fabric, (post,), posts, here[post]):
            return None
        cells.append(Cell(_seat(k, many, row), y, BLOCK if True in inside else OPEN, top[part[0]], wide))
    posts.update(here)
    return cells


# --- colours ---------------------------------------------------------------------------------------------------------------------


def _coloured(fabric: Fabric, section: Section, tops: Sequence[list[int]], sizes: StitchSizes) -> Grid | None:
    many = len(tops[0])
    kinds = {_kind(fabric, s, fabric.rows[i]) for i, top in zip(section.rows, tops, strict=True) for s in top}
    mixed = any(len({fabric.colour[s] for s in top}) > 1 for top in tops)
    if not mixed or len(kinds) != 1 or kinds & {"ch", "sl st"} or any(len(top) != many for top in tops):
        return None
    rows: list[GridRow] = []
    seats: dict[int, int] = {}
    for y, (index, top) in enumerate(zip(section.rows, tops, strict=True)):
        row = fabric.rows[index]
        here = {s: _seat(at, many, row) for at, s in enumerate(top)}
        if any(fabric.many[s] or not _upright(fabric, (s,), seats, x) for s, x in here.items()):
            return None
        seats = here
        rows.append(GridRow(index, tuple(Cell(x, y, fabric.colours[fabric.colour[s]], s, 1) for s, x in here.items())))
    kind = kinds.pop()
    return _whole("colour", rows, (sizes.width(kind), sizes.height(kind)), (kind, 1), closed=section.closed)


# --- corner to corner ------------------------------------------------------------------------------------------------------------


def _corner(fabric: Fabric, section: Section) -> Grid | None:
    """Blocks by what they are worked into: beside the block below in the way the row goes, a first one without any at the corner.

    Row 1 lies at the lower right, right-side rows run down to the left and wrong-side rows back up (common practice, no source).
    """
    rows: list[GridRow] = []
    held: dict[int, Spot] = {}
    kinds: set[str] = set()
    for index in section.rows:
        row = fabric.rows[index]
        cells: list[Cell] = []
        for block in _blocks(fabric, row):
            under = next((held[p] for s in block for p in fabric.parents(s) if p in held), None)
            right = row.right_side
            if under is None and cells:
                return None
            x, y = (under[0] + right, under[1] + (not right)) if under else _outer(held.values(), right_side=right)
            stitches = [s for s in block if fabric.name(s) != "ch"]
            kinds.update(fabric.name(s) for s in stitches)
            cells.append(Cell(x, y, fabric.colours[fabric.colour[stitches[0]]], block[0], len(block)))
            held.update(dict.fromkeys(block, (x, y)))
        rows.append(GridRow(index, tuple(cells)))
    spots = [(c.x, c.y) for r in rows for c in r.cells]
    if not spots or len(set(spots)) != len(spots) or len(kinds) != 1:
        return None
    return _whole("corner", rows, (1.0, 1.0), (kinds.pop(), 1), closed=False)


def _outer(spots: Iterable[Spot], *, right_side: bool) -> Spot:
    """Where a row begins that grows: above the blocks of the right edge, or beside those of the lower edge."""
    edge = [s[1] if right_side else s[0] for s in spots if s[0 if right_side else 1] == 0]
    new = 1 + max(edge, default=-1)
    return (0, new) if right_side else (new, 0)


def _blocks(fabric: Fabric, row: FabricRow) -> list[list[int]]:
    """The stitches of each block of a row: its chains and the stitches beside them."""
    made = [s for s in range(row.start, row.end) if fabric.role[s] in _TOP and fabric.name(s) != "sl st"]
    found: list[list[int]] = []
    for solid, own in groupby(made, key=lambda s: fabric.name(s) != "ch"):
        if solid and found:
            found[-1] += own
        else:
            found.append(list(own))
    return [block for block in found if fabric.name(block[-1]) != "ch"]


def _whole(kind: GridKind, rows: Sequence[GridRow], cell_mm: tuple[float, float], of: tuple[str, int], *, closed: bool) -> Grid:
    cells = [c for r in rows for c in r.cells]
    wide, high = (1 + max(c.x for c in cells), 1 + max(c.y for c in cells))
    whats = tuple(dict.fromkeys((OPEN, BLOCK) if kind == "filet" else (c.what for c in cells)))
    return Grid(kind, tuple(rows), wide, high, cell_mm, of[0], of[1], closed, whats)
