"""A chart in words, row by row, for those who cannot see it; and the names in its key."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.drawing.chart.columns import Column, columns
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.lettering import plain
from loopwright.model.fabric import Fabric, FabricRow
from loopwright.terms import dialect

_NUMBER = re.compile(r"(\d+)(?!.*\d)")
_WHERE = {
    "back": "in the back loop of", "front": "in the front loop of", "third": "in the third loop of", "front-post": "around the front of",
    "back-post": "around the back of", "underside": "in the other side of", "chain": "in", "top": "in", "between": "between",
}  # fmt: skip
SIDES = {3: "a triangle", 4: "a square", 5: "a pentagon", 6: "a hexagon", 8: "an octagon"}


def row_number(row: FabricRow) -> str:
    """The number on a row's tab: its own, or nothing."""
    m = _NUMBER.search(row.label)
    return m[1] if m else ""


def count(fabric: Fabric, row: FabricRow, terms: str) -> str:
    """What a row has, as the trade counts it: "24 dc"."""
    names = dialect(terms)
    return ", ".join(f"{n} {names.term(kind).short}" for kind, n in fabric.counted(row).items())


def describe(fabric: Fabric, section: Section, notes: Sequence[str], terms: str, *, left_handed: bool) -> str:
    """The whole chart in words."""
    ways = ("clockwise", "left to right", "right to left") if left_handed else ("counter-clockwise", "right to left", "left to right")
    shape = {"disc": "Rounds about a centre", "oval": "Rounds about both sides of a chain"}.get(section.kind, "Rows")
    if section.kind == "disc" and section.sides:
        shape = f"Rounds of {SIDES.get(section.sides, f'a shape of {section.sides} corners')}"
    if section.closed and section.kind not in ("disc", "oval"):
        shape = "Rounds, unrolled"
    found = [f"{section.name or 'Chart'}. {shape}, seen from the right side."]
    if section.base >= 0:
        base = fabric.rows[section.base]
        found.append(f"Begins on {base.end - base.start} ch.")
    for index in section.rows:
        row = fabric.rows[index]
        way = ways[0] if section.kind in ("disc", "oval") else ways[1] if section.closed or row.right_side else ways[2]
        side = "" if section.closed and row.right_side else ", right side" if row.right_side else ", wrong side"
        total = count(fabric, row, terms)
        told = f" ({total})" if total else ""
        found.append(f"{row.label or 'Row'}{side}, {way}: {_worked(fabric, row, terms)}{told}.")
    return "\n".join(plain(line) for line in (*found, *notes))


def _worked(fabric: Fabric, row: FabricRow, terms: str) -> str:
    pieces = _places(columns(fabric, row, tab=False))
    said = [(max((fabric.round[n] for c in group for n in c.stitches), default=0), _say(group, terms)) for group in pieces]
    times = max((r for r, _ in said), default=0)
    if times < 2:
        return _list([s for _, s in said])
    before = [s for k, (r, s) in enumerate(said) if r == 0 and not any(x for x, _ in said[:k])]
    once = [s for r, s in said if r == 1]
    last = max(k for k, (r, _) in enumerate(said) if r)
    after = [s for r, s in said[last + 1 :]]
    return ", ".join(x for x in (_list(before), f"({_list(once)}) {times} times", _list(after)) if x)


def _places(found: Sequence[Column]) -> list[list[Column]]:
    """Columns that stand in one place together, chains by runs."""
    groups: list[list[Column]] = []
    for c in found:
        last = groups[-1][0] if groups else None
        alike = last is not None and last.what == c.what and last.kind == c.kind
        together = last is not None and c.parents == last.parents and c.place == last.place and c.place not in ("row-end", "none")
        if alike and (c.what == "chain" or together):
            groups[-1].append(c)
        else:
            groups.append([c])
    return groups


def _say(group: Sequence[Column], terms: str) -> str:
    first, names = group[0], dialect(terms)
    name = names.term(first.kind).short
    if first.what == "chain":
        text = f"ch {len(group)}"
    elif first.what == "stack":
        text = f"ch {len(first.stitches)}"
    elif first.what == "join":
        text = "join with sl st" if terms == "us" else "join with ss"
    else:
        many = f"{len(group)} {name}" if len(group) > 1 else name
        text = f"{many} {_into(first)}".rstrip()
    return text + (" with a picot" if any(c.knob for c in group) else "")


def _into(c: Column) -> str:
    if c.place == "space":
        return "in ch sp"
    if c.place == "ring":
        return "in ring"
    if c.place == "row-end":
        return "in end of row"
    if c.place == "none":
        return ""
    many = len(c.parents)
    noun = "ch" if c.place in ("chain", "underside") else "st"
    return f"{_WHERE.get(c.place, 'in')} next {many} {noun}s" if many > 1 else f"{_WHERE.get(c.place, 'in')} next {noun}"


def _list(said: Sequence[str]) -> str:
    """Equal things told once: "dc in next st" five times over is "dc in each of next 5 sts"."""
    found: list[tuple[str, int]] = []
    for s in said:
        if found and found[-1][0] == s:
            found[-1] = (s, found[-1][1] + 1)
        else:
            found.append((s, 1))
    return ", ".join(s if n == 1 else _each(s, n) for s, n in found)


def _each(said: str, times: int) -> str:
    for noun in ("st", "ch"):
        if said.endswith(f" next {noun}"):
            return f"{said.removesuffix(f'next {noun}')}each of next {times} {noun}s"
    return f"({said}) {times} times"
