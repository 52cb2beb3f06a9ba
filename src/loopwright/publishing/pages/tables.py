"""Tables as the template takes them: cut into as many as fit the page, inches on a line of their own where columns are narrow."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from typing import Any

from loopwright.publishing.document import Table
from loopwright.publishing.pages.faces import Faces
from loopwright.publishing.pages.sheet import POINT_MM, Sheet
from loopwright.publishing.pages.signs import plain
from loopwright.publishing.pages.texts import pieces

_BRACKET = re.compile(r"(?P<main>[^()]+?) (?P<sub>\([^()]+\))$")
_AIR_MM = 2.4  # beside the words of a cell
SMALLEST_PT = 7.0
_LEAST_MM = {"columns": 10.4, "brackets": 10.4, "ledger": 14.0, "far": 200.0}
_LEAST_PHONE_MM = 12.8
_WIDEST_MM = 30.0
_BARS_MM = 8.0  # two bars with their lines, as short as they may be


def laid(table: Table, sheet: Sheet, faces: Faces) -> dict[str, Any]:
    """A table with its columns' width and type; `chunks` are tables below one another, each with some of the columns."""
    head_mm = _head_mm(table, sheet)
    least = _LEAST_PHONE_MM if sheet.paper == "phone" else _LEAST_MM[sheet.form]
    most = max(1, int((sheet.inner_mm - head_mm) / least))
    if sheet.form == "far":
        most, head_mm = 1, sheet.inner_mm * 0.56
    count = max(1, len(table.columns))
    parts = math.ceil(count / most)
    each = math.ceil(count / parts)
    width_mm = min(_WIDEST_MM, (sheet.inner_mm - head_mm) / each) if sheet.form != "far" else sheet.inner_mm - head_mm
    cells = [_BRACKET.match(plain(c)) for row in table.rows for c in row.cells]
    base_pt = sheet.words_pt if sheet.form == "far" else 9.5
    room_pt = (width_mm - _AIR_MM) / POINT_MM
    widest = max((faces.width_em(plain(c)) for row in table.rows for c in row.cells), default=1.0)
    split = sheet.form != "far" and widest * base_pt > room_pt and any(cells)
    if split:
        widest = max((faces.width_em(part) for row in table.rows for c in row.cells for part in _parts(c)), default=1.0)
    size_pt = max(SMALLEST_PT, min(base_pt, room_pt / max(widest, 0.1)))

    def fits(cell: str, columns: int) -> bool:
        """Whether one value for all sizes has room in the middle of a line with bars."""
        return faces.width_em(plain(cell)) * size_pt <= ((columns - 1) * width_mm - _BARS_MM) / POINT_MM

    return {
        "kind": "table", "caption": plain(table.caption), "corner": plain(table.corner), "note": pieces(table.note),
        "head_mm": head_mm, "column_mm": round(width_mm, 3),
        "size_pt": round(size_pt, 2),
        "turned": sheet.form != "far" and any(faces.width_em(plain(c)) * 9.5 > room_pt for c in table.columns),
        "chunks": [_chunk(table, at, min(at + each, count), split=split, fits=fits) for at in range(0, count, each)],
    }


def _head_mm(table: Table, sheet: Sheet) -> float:
    longest = max((len(row.head) for row in table.rows), default=10)
    if sheet.paper == "phone":
        return 24.0
    return 38.0 if len(table.columns) > 7 else min(60.0, max(42.0, longest * 1.9))


def _parts(cell: str) -> tuple[str, str]:
    m = _BRACKET.match(plain(cell))
    return (m["main"], m["sub"]) if m else (plain(cell), "")


def _chunk(table: Table, start: int, end: int, *, split: bool, fits: Callable[[str, int], bool]) -> dict[str, Any]:
    rows = []
    for row in table.rows:
        cells = row.cells[start:end]
        same = len(cells) > 1 and len(set(cells)) == 1 and bool(cells[0]) and fits(cells[0], len(cells))
        shown = [(plain(c), "") if not split or same else _parts(c) for c in (cells[:1] if same else cells)]
        rows.append({"group": plain(row.group), "head": plain(row.head), "cells": [list(c) for c in shown], "same": same})
    return {"columns": [plain(c) for c in table.columns[start:end]], "rows": rows}
