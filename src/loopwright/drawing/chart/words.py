"""A chart in words, row by row, for those who cannot see it; and the names in its key."""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import replace

from loopwright.drawing.chart.columns import Column, columns
from loopwright.drawing.chart.numbering import row_label
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.lettering import plain
from loopwright.drawing.speech import Again, Each, Made, Speech, Thing
from loopwright.drawing.speech.things import Where
from loopwright.model.fabric import Fabric, FabricRow

_WHERE: dict[str, Where] = {
    "back": "back", "front": "front", "third": "third", "front-post": "front-post", "back-post": "back-post", "underside": "underside",
    "between": "between", "space": "space", "ring": "ring", "row-end": "row-end", "none": "",
}  # fmt: skip
SKIPPING = ("top", "chain", "back", "front", "third", "front-post", "back-post", "underside")
MOST_SKIPPED = 12  # chains from the hook
NEVER_SAME = ("none", "ring", "row-end")
LONGEST, OFTEN = 12, 3  # of a stretch that is told once; times that it must come
_NAMED_SHAPES = (3, 4, 5, 6, 8)  # corners


def count(fabric: Fabric, row: FabricRow, speech: Speech) -> str:
    """What a row has, as the trade counts it: "24 dc"."""
    return ", ".join(f"{n} {speech.stitch(kind, n)}" for kind, n in fabric.counted(row).items())


def named(section: Section, speech: Speech) -> str:
    """What a chart is called: its part's name."""
    return plain(speech.name(section.name)) if section.name and plain(section.name) else speech.say("chart")


def describe(fabric: Fabric, section: Section, notes: Sequence[str], speech: Speech, *, left_handed: bool) -> str:
    """The whole chart in words."""
    ways = ("clockwise", "left-to-right", "right-to-left") if left_handed else ("counter-clockwise", "right-to-left", "left-to-right")
    found = [speech.say("begins", name=named(section, speech), shape=_shape(section, speech))]
    if section.base >= 0:
        base = fabric.rows[section.base]
        found.append(speech.say("begins-on-ring" if section.kind == "disc" or section.fan else "begins-on", n=base.end - base.start))
    for index in section.rows:
        row = fabric.rows[index]
        rings = section.edge is not None or section.kind in ("disc", "oval")
        way = _around(section, row, ways) if rings else ways[1] if section.closed or row.right_side else ways[2]
        side = "" if section.closed and row.right_side else speech.say("right-side" if row.right_side else "wrong-side")
        label = speech.row(known) if (known := row_label(fabric, index)) else speech.say("next-round" if section.closed else "next-row")
        head = ", ".join(x for x in (label, side, speech.say(way), _yarns(fabric, row, speech)) if x)
        total, worked = count(fabric, row, speech), speech.worked(things(fabric, row))
        found.append(speech.say("row-told-count" if total else "row-told", head=head, worked=worked, count=total))
    return "\n".join(plain(line) for line in (*found, *notes))


def _around(section: Section, row: FabricRow, ways: Sequence[str]) -> str:
    other = "counter-clockwise" if ways[0] == "clockwise" else "clockwise"
    return ways[0] if row.right_side or section.edge is None else other


def _shape(section: Section, speech: Speech) -> str:
    if section.edge is not None:
        return speech.say("shape-edge")
    if section.kind == "disc" and section.sides:
        return speech.say(f"shape-{section.sides if section.sides in _NAMED_SHAPES else 'n'}", n=section.sides)
    if section.kind in ("disc", "oval"):
        return speech.say(f"shape-{section.kind}")
    return speech.say("shape-unrolled" if section.closed else "shape-rows")


def _yarns(fabric: Fabric, row: FabricRow, speech: Speech) -> str:
    """The yarns of a row, where the fabric has several."""
    used = dict.fromkeys(fabric.colours[fabric.colour[s]] for s in range(row.start, row.end))
    names = [name for name in used if name]
    return speech.say("with-yarn", yarns=speech.listed(names)) if len(set(fabric.colours) - {""}) > 1 and names else ""


def things(fabric: Fabric, row: FabricRow) -> list[Thing]:
    """What is worked in a row; its repeat told once."""
    pieces = _places(columns(fabric, row, tab=False))
    used = {p for s in range(row.start, row.end) for p in fabric.parents(s)}
    said: list[tuple[int, Made]] = []
    last = -1
    into: tuple[tuple[int, ...], str] = (), ""
    for group in pieces:
        first = group[0]
        in_repeat = max((fabric.round[n] for c in group for n in c.stitches), default=0)
        passed = _passed(fabric, last, first, used)
        told = _made(group) if last >= 0 else _from_hook(fabric, first, _made(group))
        if first.parents and first.what != "join" and first.place not in NEVER_SAME:
            told = replace(told, same=told.what == "stitch" and into == (first.parents, first.place))
            into = first.parents, first.place
        said += [(in_repeat, x) for x in (passed, told) if x is not None]
        last = first.parents[-1] if first.parents and first.what != "join" else last
    times = max((r for r, _ in said), default=0)
    if times < 2:
        return _list([s for _, s in said])
    before = [s for k, (r, s) in enumerate(said) if r == 0 and not any(x for x, _ in said[:k])]
    once = [s for r, s in said if r == 1]
    last = max(k for k, (r, _) in enumerate(said) if r)
    after = [s for r, s in said[last + 1 :]]
    return [*_list(before), Again(tuple(_list(once)), times), *_list(after)]


def _from_hook(fabric: Fabric, column: Column, said: Made) -> Made:
    """The first stitch of a row on a foundation chain, counted from the hook."""
    if column.place != "chain" or len(column.parents) != 1:
        return said
    base = fabric.rows[fabric.row[column.parents[0]]]
    k = base.end - column.parents[0]
    plain_chain = all(fabric.name(s) == "ch" for s in range(base.start, base.end))
    return replace(said, hook=k) if plain_chain and said.what == "stitch" and not said.picot and 1 < k <= MOST_SKIPPED else said


def _passed(fabric: Fabric, last: int, column: Column, used: Container[int]) -> Made | None:
    """The stitches left free between a place and the next in the same row: "skip 2 sts"."""
    stands = column.parents and column.what != "join" and column.place in SKIPPING
    if last < 0 or not stands or fabric.row[column.parents[0]] != fabric.row[last]:
        return None
    one, two = sorted((last, column.parents[0]))
    free = [s for s in range(one + 1, two) if s not in used and fabric.part_of(s) in ("edge", "counts")]
    chains = bool(free) and all(fabric.name(s) == "ch" and fabric.part_of(s) == "edge" for s in free)
    return Made("skip", len(free), of_chain=chains) if free else None


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


def _made(group: Sequence[Column]) -> Made:
    first = group[0]
    picot = any(c.knob for c in group)
    if first.what in ("chain", "stack"):
        return Made("chain", len(group) if first.what == "chain" else len(first.stitches), picot=picot)
    if first.what == "join":
        return Made("join", picot=picot)
    where = _WHERE.get(first.place, "in")
    if first.place.endswith("-post") and first.kind.startswith(("fp", "bp")):
        where = "around"
    several = len(first.parents) if where not in ("", "space", "ring", "row-end", "around") else 1
    return Made("stitch", len(group), first.kind, where, max(1, several), first.place in ("chain", "underside"), picot=picot)


def _list(said: Sequence[Made]) -> list[Made | Each | Again]:
    """Equal things told once: "dc in next st" five times over is "dc in each of next 5 sts", what comes again and again "(…) 5 times"."""
    runs: list[tuple[Made, int]] = []
    for s in said:
        if runs and runs[-1][0] == s:
            runs[-1] = (s, runs[-1][1] + 1)
        else:
            runs.append((s, 1))
    found = [s if n == 1 else Each(s, n) for s, n in runs]
    told: list[Made | Each | Again] = []
    at = 0
    while at < len(found):
        period, times = _again(found, at)
        if times > 1:
            told.append(Again(tuple(found[at : at + period]), times))
        else:
            told.append(found[at])
        at += period * times
    return told


def _again(found: Sequence[Made | Each], at: int) -> tuple[int, int]:
    """The stretch from a place on that comes most often again, as its length and how often; (1, 1) where none comes thrice."""
    best = (1, 1)
    for period in range(2, LONGEST + 1):
        times = 1
        while found[at : at + period] == found[at + period * times : at + period * (times + 1)] and at + period * (times + 1) <= len(found):
            times += 1
        if times >= OFTEN and period * times > best[0] * best[1]:
            best = (period, times)
    return best
