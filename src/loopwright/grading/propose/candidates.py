"""From a number and its gauge to the sentences that bring it back: measures of the size in part, with an offset; or a plain length."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from typing import Any

from loopwright.grading.counting import Legal
from loopwright.grading.gauge import Gauge
from loopwright.grading.lengths import in_cm
from loopwright.grading.propose.blanks import Blank, Reason
from loopwright.grading.propose.phrases import INCH_MM, SHARES, legal, length, plus, share_of
from loopwright.record import record
from loopwright.shipped import shipped_table

MANY = 4
LOOSE_MM = 20.0  # offset of a share that no habit names
NARROW_MM = 150.0  # a strip that is narrower has a width of its own
LAST = 10  # such a share comes after every habit
BAND = 6  # so many rows or fewer are a band, whose depth is its own
SAFE = 0.45  # of the distance between legal numbers: a target nearer to the middle of two would hang on rounding
GRAINS_CM = ((10.0, 0.0), (5.0, 0.3))
GRAINS_IN = ((INCH_MM, 0.0), (INCH_MM / 2, 0.15), (INCH_MM / 4, 0.3))


@record
class Habit:
    """A reason that designers of an item give, with the offsets that are usual; `where`: a word that the section must have."""

    role: str
    measure: str
    part: Fraction
    low_mm: float
    high_mm: float
    where: str = ""


@record
class Item:
    """A kind of item: the words it is known by, the sizes it is commonly made in, its habits in order.

    `scaled`: its size comes from yarn and hook, not from other numbers. `title_only`: those of its words that mean it in the title alone.
    `other_sizes`: further ranges that it is made in.
    """

    name: str
    words: tuple[str, ...]
    sizes: tuple[str, ...]
    habits: tuple[Habit, ...]
    source: str
    scaled: bool = False
    title_only: tuple[str, ...] = ()
    other_sizes: tuple[tuple[str, ...], ...] = ()


@record
class Ground:
    """What sentences stand on: gauge, size, its measures by name (mm), item, unit of length, how many sizes there will be."""

    gauge: Gauge
    size: str
    measure: Callable[[str], float | None]
    item: Item
    inches: bool = False
    sizes: int = 1


@cache
def items() -> tuple[Item, ...]:
    """The table of habits."""
    data = shipped_table("loopwright.grading.propose", "habits.toml")
    return tuple(_item(e) for e in data["item"])


def _item(e: dict[str, Any]) -> Item:
    source = e.get("source", "common practice, no source")
    others = tuple(tuple(sizes) for sizes in e.get("other_sizes", ()))
    return Item(
        e["name"], tuple(e["words"]), tuple(e["sizes"]), tuple(map(_habit, e["reasons"])), source, e.get("scaled", False),
        tuple(e.get("title_only", ())), others,
    )


def _habit(r: dict[str, Any]) -> Habit:
    return Habit(r["role"], r["measure"], Fraction(r["part"]), 10.0 * r["low_cm"], 10.0 * r["high_cm"], r.get("where", ""))


def item_of(text: str) -> Item:
    """The item that a title (the first line) names first, else the text; a piece of its own size where none does."""
    title, _, rest = text.partition("\n")
    return _first(title, everywhere=False) or _first(rest, everywhere=True) or items()[-1]


def _first(text: str, *, everywhere: bool) -> Item | None:
    """The item whose word stands first; `everywhere`: leave out the words that only a title may mean it by."""
    best: tuple[int, Item] | None = None
    for item in items():
        for word in item.words:
            if everywhere and word in item.title_only:
                continue
            m = re.search(rf"\b{word}s?\b", text, re.IGNORECASE)
            if m and (best is None or m.start() < best[0]):
                best = (m.start(), item)
    return best[1] if best else None


def reasons_for(blank: Blank, ground: Ground) -> tuple[Reason, ...]:
    """All sentences that bring the number back, best first; at least one where the gauge tells the step."""
    if blank.given:
        return blank.given
    step = step_mm(blank, ground.gauge)
    if step is None:
        return ()
    habits = [(i - 50 if h.where else i, h) for i, h in enumerate(ground.item.habits) if h.role == blank.role and h.where in blank.name]
    found = [r for i, h in habits for r in _by_habit(blank, h, i, step, ground)]
    found += blank.also
    narrow = blank.role == "width" and _reached(blank, step) < NARROW_MM
    found += [r for h in (() if narrow else _loose(blank, ground.item)) for r in _by_habit(blank, h, LAST, step, ground)]
    found += _plain(blank, step, ground, base=0.0 if _fixed(blank) else 20.0)
    once = {r.sentence: r for r in sorted(found, key=lambda r: r.score, reverse=True)}
    return tuple(sorted(once.values(), key=lambda r: r.score))[:MANY]


def _loose(blank: Blank, item: Item) -> list[Habit]:
    """Any plain share of the measure that an item goes by, for where none of the usual reasons fits."""
    if _fixed(blank):
        return []
    own = [h for h in item.habits if h.role == blank.role and h.where in blank.name]
    measure = next((h.measure for h in sorted(own, key=lambda h: not h.where)), None)
    return [] if measure is None else [Habit(blank.role, measure, s, -LOOSE_MM, LOOSE_MM) for s in (Fraction(1), *SHARES)]


def _fixed(blank: Blank) -> bool:
    """Bands and cords have lengths of their own, whatever the body."""
    return blank.role == "cord" or blank.name == "sleeve neck" or blank.role in ("part", "length") and blank.value <= BAND


def step_mm(blank: Blank, gauge: Gauge) -> float | None:
    """What one more adds: a stitch's width, a row's height, two for a disc's diameter."""
    if blank.unit in ("rnds", "rows"):
        row = blank.rows_mm[0] if blank.rows_mm is not None else gauge.row_mm
        return None if gauge.row_mm is None or row is None else row * (2 if blank.role == "across" else 1)
    if gauge.stitch_mm is not None:
        return gauge.stitch_mm
    return gauge.repeat_mm / blank.legal.multiple if gauge.repeat_mm is not None and blank.legal.multiple > 1 else None


def _by_habit(blank: Blank, habit: Habit, order: int, step: float, ground: Ground) -> list[Reason]:
    body = ground.measure(habit.measure)
    if body is None:
        return []
    base = float(habit.part) * body
    has = _reached(blank, step)
    found: list[tuple[float, float]] = []
    for grain, dear in GRAINS_IN if ground.inches else GRAINS_CM:
        low, high = _ceil(habit.low_mm, grain), int(habit.high_mm // grain)
        for n in range(low, high + 1):
            off = n * grain
            if _brings_back(blank, base + off, step):
                found.append((abs(base + off - has) / (step * blank.legal.multiple) + dear, off))
    if not found:
        return []
    cost, off = min(found, key=lambda f: (round(f[0], 6), abs(f[1])))
    words = _sentence(blank, share_of(habit.part, habit.measure) + plus(off, ground.inches))
    plain = habit.part.denominator / 20 + abs(off) / 100
    return [Reason(words, _because(blank, habit, body, off, step, ground), order + cost + plain, base + off, has)]


def _ceil(mm: float, grain: float) -> int:
    return -int(-mm // grain)


def _reached(blank: Blank, step: float) -> float:
    return blank.value * step + _besides(blank, step)


def _besides(blank: Blank, step: float) -> float:
    """What is there whatever the number is: the rows before those it counts, and what these are taller or less tall."""
    if blank.rows_mm is not None:
        return blank.rows_mm[1] * (2 if blank.role == "across" else 1)
    return (blank.before if blank.role == "depth" else 0) * step


def _brings_back(blank: Blank, target_mm: float, step: float) -> bool:
    """Whether the nearest legal number to a target is hers, and clearly so."""
    wanted = (target_mm - _besides(blank, step)) / step
    rule: Legal = blank.legal
    return rule.nearest(wanted) == (blank.value,) and abs(wanted - blank.value) <= SAFE * rule.multiple


def _sentence(blank: Blank, what: str) -> str:
    many = legal(blank.legal)
    if blank.role == "across":
        return f"{blank.unit} until {blank.subject} measures {what} across"
    if blank.role == "depth":
        return f"{blank.unit} until {blank.subject} measures {what} from the centre{many}"
    if blank.role == "around":
        return f"sts to go around {what}{many}"
    if blank.role == "width":
        return f"sts to measure {what} wide{many}"
    if blank.role == "cord":
        return f"ch to measure {what}"
    return f"{blank.unit} to measure {what}{many}"


def _because(blank: Blank, habit: Habit, body: float, off: float, step: float, ground: Ground) -> str:
    """As in "9 rnds are 13.8 cm across; a third of the head circumference of child (49.5 cm) less 3 cm is 13.5 cm"."""
    where = {"across": "across", "around": "around", "width": "wide", "depth": "from the centre"}.get(blank.role, "long")
    many = blank.value + (blank.before if blank.role == "depth" else 0)
    has = _length(_reached(blank, step), ground)
    what = share_of(habit.part, f"the {habit.measure} of {ground.size} ({_length(body, ground)})")
    target = _length(float(habit.part) * body + off, ground)
    return f"{many} {blank.unit} are {has} {where}; {what}{plus(off, ground.inches)} is {target}"


def _length(mm: float, ground: Ground) -> str:
    return length(round(mm / INCH_MM, 1) * INCH_MM, inches=True) if ground.inches else in_cm(mm)


def _plain(blank: Blank, step: float, ground: Ground, base: float) -> list[Reason]:
    """A length of its own: the roundest that brings the number back."""
    has = _reached(blank, step)
    grains = (2.0 * INCH_MM, INCH_MM, INCH_MM / 2, INCH_MM / 4) if ground.inches else (50.0, 10.0, 5.0, 1.0)
    for grain in grains:
        target = max(grain, round(has / grain) * grain)
        if _brings_back(blank, target, step):
            own = not ground.item.habits and not _fixed(blank)
            listed = own and blank.role in ("width", "length", "around", "part") and ground.sizes > 1
            said = _listed(target, ground) if listed else length(target, ground.inches)
            where = "a length of its own" + (": put each size's own measure in the list" if listed else ", the same in every size")
            many = blank.value + (blank.before if blank.role == "depth" else 0)
            because = f"{many} {blank.unit} measure {_length(has, ground)}: {where}"
            return [Reason(_sentence(blank, said), because, base, target, has)]
    return []


def _listed(mm: float, ground: Ground) -> str:
    """As in "76 (76, 76) cm": her measure for every size, to be changed by her."""
    value, _, unit = length(mm, ground.inches).partition(" ")
    return f"{value} ({', '.join([value] * (ground.sizes - 1))}) {unit}"
