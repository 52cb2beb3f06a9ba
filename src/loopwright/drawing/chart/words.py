"""A chart in words, row by row, for those who cannot see it; and the names in its key."""

from __future__ import annotations

import re
from collections.abc import Container, Sequence

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
SKIPPING = ("top", "chain", "back", "front", "third", "front-post", "back-post", "underside")
ORDINAL = {2: "nd", 3: "rd"}
MOST_SKIPPED = 12  # chains from the hook
LONGEST, OFTEN = 12, 3  # of a stretch that is told once; times that it must come
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
        found.append(f"Begins on {base.end - base.start} ch{', joined into a ring' if section.kind == 'disc' else ''}.")
    for index in section.rows:
        row = fabric.rows[index]
        way = ways[0] if section.kind in ("disc", "oval") else ways[1] if section.closed or row.right_side else ways[2]
        side = "" if section.closed and row.right_side else ", right side" if row.right_side else ", wrong side"
        total = count(fabric, row, terms)
        told = f" ({total})" if total else ""
        label = row.label or ("Next round" if section.closed else "Next row")
        found.append(f"{label}{side}, {way}{_with(fabric, row)}: {_worked(fabric, row, terms)}{told}.")
    return "\n".join(plain(line) for line in (*found, *notes))


def _with(fabric: Fabric, row: FabricRow) -> str:
    """The yarns of a row, where the fabric has several."""
    used = dict.fromkeys(fabric.colours[fabric.colour[s]] for s in range(row.start, row.end))
    names = [name for name in used if name]
    return f", yarn {' and '.join(names)}" if len(set(fabric.colours) - {""}) > 1 and names else ""


def _worked(fabric: Fabric, row: FabricRow, terms: str) -> str:
    pieces = _places(columns(fabric, row, tab=False))
    used = {p for s in range(row.start, row.end) for p in fabric.parents(s)}
    said: list[tuple[int, str]] = []
    last = -1
    for group in pieces:
        first = group[0]
        in_repeat = max((fabric.round[n] for c in group for n in c.stitches), default=0)
        passed = _passed(fabric, last, first, used)
        told = _say(group, terms) if last >= 0 else _from_hook(fabric, first, _say(group, terms))
        said += [(in_repeat, x) for x in (passed, told) if x]
        last = first.parents[-1] if first.parents and first.what != "join" else last
    times = max((r for r, _ in said), default=0)
    if times < 2:
        return _list([s for _, s in said])
    before = [s for k, (r, s) in enumerate(said) if r == 0 and not any(x for x, _ in said[:k])]
    once = [s for r, s in said if r == 1]
    last = max(k for k, (r, _) in enumerate(said) if r)
    after = [s for r, s in said[last + 1 :]]
    return ", ".join(x for x in (_list(before), f"({_list(once)}) {times} times", _list(after)) if x)


def _from_hook(fabric: Fabric, column: Column, said: str) -> str:
    """The first stitch of a row on a foundation chain, counted from the hook."""
    if column.place != "chain" or len(column.parents) != 1:
        return said
    base = fabric.rows[fabric.row[column.parents[0]]]
    k = base.end - column.parents[0]
    plain_chain = all(fabric.name(s) == "ch" for s in range(base.start, base.end))
    if not plain_chain or not said.endswith(" next ch") or not 1 < k <= MOST_SKIPPED:
        return said
    return f"{said.removesuffix('next ch')}{k}{ORDINAL.get(k, 'th')} ch from hook"


def _passed(fabric: Fabric, last: int, column: Column, used: Container[int]) -> str:
    """The stitches left free between a place and the next in the same row: "skip 2 sts"."""
    stands = column.parents and column.what != "join" and column.place in SKIPPING
    if last < 0 or not stands or fabric.row[column.parents[0]] != fabric.row[last]:
        return ""
    one, two = sorted((last, column.parents[0]))
    free = [s for s in range(one + 1, two) if s not in used and fabric.part_of(s) in ("edge", "counts")]
    noun = "ch" if free and all(fabric.name(s) == "ch" and fabric.part_of(s) == "edge" for s in free) else "st"
    return f"skip {len(free)} {noun}{'s' * (len(free) > 1)}" if free else ""


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
        return "in next ch sp"
    if c.place == "ring":
        return "in ring"
    if c.place == "row-end":
        return "in next row end"
    if c.place == "none":
        return ""
    if c.place.endswith("-post") and c.kind.startswith(("fp", "bp")):
        return "around next st"
    many = len(c.parents)
    noun = "ch" if c.place in ("chain", "underside") else "st"
    return f"{_WHERE.get(c.place, 'in')} next {many} {noun}s" if many > 1 else f"{_WHERE.get(c.place, 'in')} next {noun}"


def _list(said: Sequence[str]) -> str:
    """Equal things told once: "dc in next st" five times over is "dc in each of next 5 sts", what comes again and again "(…) 5 times"."""
    found: list[tuple[str, int]] = []
    for s in said:
        if found and found[-1][0] == s:
            found[-1] = (s, found[-1][1] + 1)
        else:
            found.append((s, 1))
    words = [s if n == 1 else _each(s, n) for s, n in found]
    told: list[str] = []
    at = 0
    while at < len(words):
        period, times = _again(words, at)
        if times > 1:
            told.append(f"({', '.join(words[at : at + period])}) {times} times")
        else:
            told.append(words[at])
        at += period * times
    return ", ".join(told)


def _again(words: Sequence[str], at: int) -> tuple[int, int]:
    """The stretch from a place on that comes most often again, as its length and how often; (1, 1) where none comes thrice."""
    best = (1, 1)
    for period in range(2, LONGEST + 1):
        times = 1
        while words[at : at + period] == words[at + period * times : at + period * (times + 1)] and at + period * (times + 1) <= len(words):
            times += 1
        if times >= OFTEN and period * times > best[0] * best[1]:
            best = (period, times)
    return best


def _each(said: str, times: int) -> str:
    for noun in ("st", "ch sp", "ch", "row end"):
        if said.endswith(f" next {noun}"):
            return f"{said.removesuffix(f'next {noun}')}each of next {times} {noun}s"
    return f"({said}) {times} times"
