"""The table of sizes: body, finished measurements, yarn, time; and what another gauge makes of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from loopwright.model.measures import Dimension, Measures
from loopwright.publishing.document.blocks import Paragraph, Table, TableRow
from loopwright.publishing.document.pattern import Pattern
from loopwright.publishing.phrases import Phrases

_INCH_MM = 25.4
_QUARTERS = ("", "¼", "½", "¾")
Named = Callable[[str], str]
MANY = 14  # rows: beyond this only whole pieces and what the design aims for are listed
OTHERS = (-2, -1, 1, 2)  # stitches to 10 cm


def length(say: Phrases, mm: float | None, *, inches: bool = True) -> str:
    """A length in cm, with inches to the quarter in brackets; "" for none."""
    if mm is None:
        return ""
    cm = say.number(mm / 10, 1)
    return f"{cm} ({in_quarters(mm)})" if inches else cm


def in_quarters(mm: float) -> str:
    """Inches to the nearest quarter, as the trade writes them: "4¼"."""
    quarters = round(mm / _INCH_MM * 4)
    whole, rest = divmod(quarters, 4)
    return f"{whole or ''}{_QUARTERS[rest]}" or "0"


def size_table(pattern: Pattern, indexes: Sequence[int], say: Phrases, name: Named) -> Table:
    """One row per measure, one column per size of the edition. `name`: of a part or size, as the document has it."""
    measures = [pattern.measures[i] for i in indexes]
    rows = [*_body(pattern, indexes, say), *_finished(pattern, measures, say, name), *_needs(pattern, measures, say)]
    names = tuple(name(pattern.sizes[i]) for i in indexes)
    return Table(say.say("part-sizes"), say.say("in-cm"), names, tuple(rows), of_sizes=True, note=_note(pattern, measures, say))


def _body(pattern: Pattern, indexes: Sequence[int], say: Phrases) -> Iterator[TableRow]:
    if pattern.body is None or all(pattern.body[1][i] is None for i in indexes):
        return
    name = pattern.body[0]
    key = f"body-{name.replace(' ', '-')}"
    head = say.say("to-fit", measure=say.say(key) if say.has(key) else name)
    yield TableRow(head, tuple(length(say, pattern.body[1][i]) for i in indexes))


def _finished(pattern: Pattern, measures: Sequence[Measures], say: Phrases, name: Named) -> Iterator[TableRow]:
    found = _listed(pattern, measures)
    group = say.say("finished")
    for key in found:
        values = [next((d for d in m.dimensions if _key(d) == key), None) for m in measures]
        yield TableRow(_name(key, say, name), tuple(length(say, None if d is None else d.value_mm) for d in values), group)
        group = ""
    worn = list(dict.fromkeys(_key(d) for m in measures for d in m.dimensions if d.worn))
    group = say.say("worn")
    for key in worn:
        values = [next((d for d in m.dimensions if _key(d) == key), None) for m in measures]
        cells = tuple(length(say, None if d is None else d.value_mm) for d in values)
        yield TableRow(_measure(key[1].removesuffix(" worn"), say), cells, group)
        group = ""


def _key(d: Dimension) -> tuple[str, str]:
    return d.section or "", d.name


def _listed(pattern: Pattern, measures: Sequence[Measures]) -> list[tuple[str, str]]:
    """What is printed: every measure, or the whole piece's and those that the design aims for where there are many. Edgings' depths go."""
    keys = list(dict.fromkeys(_key(d) for m in measures for d in m.dimensions if not d.worn and not d.relaxed))
    if len(keys) <= MANY:
        return keys
    aimed = {name.lower() for name in pattern.targets}
    return [k for k in keys if not k[0] or f"{k[0]} {k[1]}".lower() in aimed][:MANY] or keys[:MANY]


def _name(key: tuple[str, str], say: Phrases, name: Named) -> str:
    section, measure = key
    return say.say("measure-of", section=name(section) if section else say.say("whole"), measure=_measure(measure, say))


def _measure(name: str, say: Phrases) -> str:
    key = f"measure-{name.replace(' ', '-')}"
    return say.say(key) if say.has(key) else name


def _needs(pattern: Pattern, measures: Sequence[Measures], say: Phrases) -> Iterator[TableRow]:
    for colour in dict.fromkeys(y.colour for m in measures for y in m.yarn):
        found = [next((y for y in m.yarn if y.colour == colour), None) for m in measures]
        head = say.say("yarn-of", colour=_colour(pattern, colour)) if colour else say.say("yarn")
        yield TableRow(f"{head}, {say.say('metres')}", tuple("" if y is None else f"{y.low_m:.0f}-{y.high_m:.0f}" for y in found))
        if any(y is not None and y.balls is not None for y in found):
            yield TableRow(f"{head}, {say.say('balls')}", tuple("" if y is None or y.balls is None else str(y.balls) for y in found))
    if any(m.time is not None for m in measures):
        hours = tuple("" if m.time is None else _hours(m.time.low_min, m.time.high_min, say) for m in measures)
        yield TableRow(f"{say.say('hours')}, {say.say('hours-unit')}", hours)


def _colour(pattern: Pattern, colour: str) -> str:
    name = pattern.yarn.colours.get(colour, "")
    return f"{colour} ({name})" if name else colour


def _hours(low_min: float, high_min: float, say: Phrases) -> str:
    digits = 0 if high_min >= 600 else 1
    low, high = say.number(low_min / 60, digits), say.number(high_min / 60, digits)
    return low if low == high else f"{low}-{high}"


def _note(pattern: Pattern, measures: Sequence[Measures], say: Phrases) -> str:
    yarn = pattern.yarn
    if not any(m.yarn for m in measures):
        return ""
    if yarn.ball_g and yarn.ball_m:
        return say.say("ball-note", grams=say.number(yarn.ball_g), metres=say.number(yarn.ball_m))
    return say.say("ball-note-plain")


def other_gauges(pattern: Pattern, indexes: Sequence[int], say: Phrases, name: Named) -> tuple[Paragraph | Table, ...]:
    """What the first measure around or across comes to when the stitches are narrower or wider; nothing where no gauge is known."""
    gauge = pattern.gauge
    if gauge is None or gauge.guessed or gauge.width_mm <= 0:
        return ()
    wanted = ("around", "width", "across", "length")
    keys = [k for k in _listed(pattern, [pattern.measures[i] for i in indexes]) if k[1] in wanted]
    if not keys:
        return ()
    key = min(keys, key=lambda k: (bool(k[0]), wanted.index(k[1])))
    per_10 = 100 / gauge.width_mm
    found = [next((d for d in pattern.measures[i].dimensions if _key(d) == key), None) for i in indexes]
    rows = []
    for more in OTHERS:
        if per_10 + more < 1:
            continue
        head = say.say("gauge-other-corner", stitches=say.number(per_10 + more, 1))
        share = per_10 / (per_10 + more)
        rows.append(TableRow(head, tuple(length(say, None if d is None else d.value_mm * share) for d in found)))
    names = tuple(name(pattern.sizes[i]) for i in indexes)
    corner = f"{_name(key, say, name)}, {say.say('in-cm')}"
    return Paragraph((say.say("gauge-other-note"),), heading=say.say("gauge-other")), Table(
        say.say("gauge-other"), corner, names, tuple(rows), of_sizes=True,
    )
