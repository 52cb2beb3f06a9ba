"""A column as it stands in a row: over which feet, from which height to which."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.drawing.chart.columns import Column

FAN = 3
MANY_FEET = 8


@dataclass(slots=True)
class Stood:
    """A column as it stands: `aims` u of its feet, `u` of its top, heights of foot and top; `key` is the same for stitches of one place."""

    column: Column
    aims: list[float]
    key: object = None
    u: float = 0.0
    low: float = 0.0
    high: float = 0.0
    tall: float = 0.0
    known: bool = False
    bend: tuple[float, float, float] | None = None



def part_ends(stood: Sequence[Stood]) -> None:
    """In an unrolled round the last stitches may go where the first went, at the other end: they stand where they are."""
    feet = [s for s in stood if s.known and s.column.what != "join"]
    if len(feet) < MANY_FEET:
        return
    far = abs(feet[-1].aims[0] - feet[0].aims[0])
    span = max(s.aims[0] for s in feet) - min(s.aims[0] for s in feet)
    if far > span / 2:
        return
    first, middle = feet[0].aims[0], feet[len(feet) // 2].aims[0]
    for s in reversed(feet):
        far = s.aims[0] - middle
        if abs(far) < abs(first - middle) * 1.05 and far * (first - middle) <= 0:
            break
        s.known, s.aims, s.key = False, [], None


def together(stood: Sequence[Stood]) -> list[list[Stood]]:
    """Standing columns that share a place, else each alone."""
    found: list[list[Stood]] = []
    for s in stood:
        if s.column.what in ("tab", "chain"):
            continue
        same = found and s.key is not None and isinstance(s.key, tuple) and len(s.key) == 3 and _fan_of(found[-1][0]) == _fan_of(s)
        if same:
            found[-1].append(s)
        else:
            found.append([s])
    return found


def _fan_of(s: Stood) -> object:
    return s.key[0] if isinstance(s.key, tuple) and len(s.key) == 3 else id(s)


def runs(stood: Sequence[Stood]) -> list[tuple[list[Stood], Stood | None, Stood | None]]:
    """Runs of chains with the standing column on either side."""
    found: list[tuple[list[Stood], Stood | None, Stood | None]] = []
    i = 0
    while i < len(stood):
        j = i
        while j < len(stood) and stood[j].column.what == "chain":
            j += 1
        if j > i:
            before = stood[i - 1] if i and stood[i - 1].column.what not in ("tab", "join") else None
            after = stood[j] if j < len(stood) and stood[j].column.what not in ("tab", "join") else None
            found.append((list(stood[i:j]), before, after))
        i = max(j, i + 1)
    return found

