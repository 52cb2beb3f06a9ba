"""Readings of a row: what was said of it becomes a few written rows, the likeliest first, for the fabric to judge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from loopwright.listening.actions import Act
from loopwright.record import record

_STEPS = frozenset({"make", "dec", "run", "chain", "skip", "slip", "group", "leave"})
_LONGEST_START = 5  # chains that a row may begin with
_MOST = 14  # readings of one row


@record
class Reading:
    """A row as it may have been meant: its words without label and end, and how far it departs from what was said."""

    words: str
    cost: float


@record
class Said:
    """What was said of one row, sorted.

    `counts`: the counts said, the surest first; `times`: "six times", 0 unless said;
    `moved`: slip stitches lead to the place that the row begins in.
    """

    steps: tuple[Act, ...]
    start: Act | None
    start_counts: bool | None
    counts: tuple[int, ...]
    joined: bool
    turned: bool
    around: bool
    times: int
    retracted: int = -1
    after: tuple[Act, ...] = ()
    moved: bool = False


def said(acts: Sequence[Act], *, fresh: str = "") -> Said:
    """Sorts what was said of a row: steps up to where it is complete, its end, its counts."""
    sorter = _Sorter(_once(acts))
    sorter.sort()
    steps = _grouped(_ringed(sorter.steps) if fresh in ("magic", "ring") else sorter.steps)
    if sorter.moved and steps:
        steps[0] = replace(steps[0], words=steps[0].words.replace(" in next ", " in same "))
    counts = tuple(dict.fromkeys([*reversed(sorter.sure), *reversed(sorter.weak)]))
    return Said(
        tuple(steps), sorter.start, sorter.counted, counts, sorter.joined, sorter.turned, sorter.around, sorter.times, sorter.retracted,
        tuple(sorter.after), sorter.moved,
    )


class _Sorter:
    """Sorts acts as they come: steps of the row, its start chain, counts, its end, and what comes after it is complete."""

    def __init__(self, acts: Sequence[Act]) -> None:
        self.acts = acts
        self.steps: list[Act] = []
        self.after: list[Act] = []
        self.start: Act | None = None
        self.counted: bool | None = None
        self.sure: list[int] = []
        self.weak: list[int] = []
        self.joined = self.turned = self.around = self.complete = self.recapped = self.moved = False
        self.times = 0
        self.retracted = -1

    def sort(self) -> None:
        """Takes the acts one by one."""
        for i, a in enumerate(self.acts):
            if (self.recapped and (a.do != "claim" or self.sure)) or (a.do == "group" and a.weak):
                continue
            if a.do in _STEPS or a.do == "place":
                self._step(a, i)
            elif a.do == "claim":
                self._claim(a)
            else:
                self._sign(a)

    def _step(self, a: Act, i: int) -> None:
        lead = all(s.do == "slip" or s.place == "sp" for s in self.steps)
        if a.do == "chain" and self.start is None and a.n <= _LONGEST_START and lead:
            self.start, self.moved = a, bool(self.steps)
            self.steps = []
        elif a.do == "make" and not a.words and a.n > _FEW and any(s.whole for s in self.steps):
            self.sure.append(a.n)
        elif self.steps and a.do == self.steps[-1].do and (a.do == "leave" or (a.do == "chain" and a.n == self.steps[-1].n)):
            return
        elif not self.complete or a.do == "leave" or _goes_on(self.acts, i):
            self.steps.append(a)
        else:
            self.after.append(a)

    def _claim(self, a: Act) -> None:
        (self.weak if a.weak else self.sure).append(a.n)
        whole = self.around or self.times > 0 or any(s.whole for s in self.steps)
        self.complete = self.complete or (not a.weak and whole and _full(self.steps))

    def _sign(self, a: Act) -> None:
        if a.do == "recap":
            self.recapped = bool(self.steps)
        elif a.do in ("join", "turn"):
            self.joined, self.turned = self.joined or a.do == "join", self.turned or a.do == "turn"
            self.complete = self.complete or bool(self.steps)
        elif a.do in ("counts", "nocount") and not (self.counted is not None and a.do == "counts"):
            self.counted = a.do == "counts"
        elif a.do == "times":
            self.times = self.times or a.n
        elif a.do == "goon":
            self.around = True
        elif a.do == "retract":
            self.retracted = len(self.steps)


def _full(steps: Sequence[Act]) -> bool:
    return any(s.do in ("make", "dec", "run") for s in steps)


def _goes_on(acts: Sequence[Act], i: int) -> bool:
    """Whether nothing but a count lies between this and the step before: "so that's two, and in the space …"."""
    for a in reversed(acts[:i]):
        if a.do in ("join", "turn", "fasten"):
            return False
        if a.do in _STEPS:
            return acts[i].at - a.end < _NEAR
    return True


_NEAR = 9
_FEW = 2
_ONCE = ("each st", "each ch", " across", " last", "leave", " to ch", "same st")  # in a step that is no part of a repeat
_TIGHT = 2  # from the end of one to the beginning of the next in a group
_CLOSE = 5  # words between "in the last stitch" and what goes into it


def _once(acts: Sequence[Act]) -> list[Act]:
    """Chains said twice one after the other ("chain thirty one. Chain thirty one.") are one."""
    out: list[Act] = []
    for a in acts:
        if a.do == "chain" and out and out[-1].do == "chain" and out[-1].n == a.n:
            continue
        if a.do != "noun":
            out.append(a)
    return out


def _ringed(steps: Sequence[Act]) -> list[Act]:
    """In the first round, stitches without a place go into the ring."""
    return [
        replace(s, words=f"{s.n} {s.kind} in ring" if s.n > 1 else f"{s.kind} in ring", place="ring")
        if s.do == "make" and (s.place in (None, "same") or (s.place == "next" and s.n > 1)) and not (s.weak and s.n == 1)
        else s
        for s in steps
        if not (s.do == "place" and s.place == "ring")
    ]


def _grouped(steps: Sequence[Act]) -> list[Act]:
    """Stitches and chains that go into one space become a group; the rest gets the place that is meant: the next stitches."""
    out: list[Act] = []
    i = 0
    while i < len(steps):
        a = steps[i]
        if a.do == "place":
            after = steps[i + 1] if i + 1 < len(steps) else None
            if a.place not in ("sp", "ring"):
                bare = after is not None and after.do == "make" and not after.words
                if after is not None and bare and (not after.weak or a.place == "hook") and after.at - a.end <= _CLOSE:
                    words = f"{after.n} {after.kind} {a.words}" if after.n > 1 else f"{after.kind} {a.words}"
                    out.append(replace(after, words=words, place=a.place, whole=a.whole))
                    i += 1
                i += 1
                continue
            inside = _inside(steps, i + 1)
            if inside:
                out.append(_group(inside, a))
                i += 1 + len(inside)
                continue
            i += 1
            continue
        if a.do == "make" and a.place == "sp" and not a.whole:
            before = _before(out)
            if before:
                del out[-len(before) :]
                a = _group([*before, replace(a, words="")], a, a.words.split(" in ", 1)[-1])
        out.append(a)
        i += 1
    return [_placed(a) for a in out]


def _inside(steps: Sequence[Act], i: int) -> list[Act]:
    got: list[Act] = []
    while i < len(steps) and steps[i].do in ("make", "chain") and (steps[i].do == "chain" or steps[i].place is None):
        if got and steps[i].at - got[-1].end > _TIGHT:
            break
        got.append(steps[i])
        i += 1
    while got and got[-1].do == "chain":
        got.pop()
    if not got or got[0].do == "chain":
        return []
    return got if all(x.do != y.do for x, y in pairwise(got)) else got[:1]


def _before(out: Sequence[Act]) -> list[Act]:
    got: list[Act] = []
    for a in reversed(out):
        wants = "chain" if not got or got[-1].do == "make" else "make"
        if got and got[-1].at - a.end > _TIGHT:
            break
        if a.do != wants or (a.do == "make" and (a.place is not None or a.words)) or (a.do == "chain" and a.n < 1):
            break
        got.append(a)
    got.reverse()
    while got and got[0].do == "chain":
        got.pop(0)
    return got


def _group(inside: Sequence[Act], place: Act, where: str | None = None) -> Act:
    said = [f"{a.n} {a.kind}" if a.do == "make" and a.n > 1 else str(a.kind) if a.do == "make" else f"ch {a.n}" for a in inside]
    target = where or place.words.removeprefix("in ")
    words = f"({', '.join(said)}) in {target}" if len(said) > 1 else f"{said[0]} in {target}"
    return Act("group", words, inside[0].at, place.end, kind=inside[0].kind, place="sp", whole=place.whole)


def _placed(a: Act) -> Act:
    if a.do == "make" and not a.words:
        how = "around" if a.kind and a.kind[:2] in ("fp", "bp") else "in"
        return replace(a, words=f"{a.kind} {how} next {a.n} sts" if a.n > 1 else f"{a.kind} {how} next st")
    return a


def _spread(steps: Sequence[Act]) -> list[str]:
    """The words of steps; "three and an increase" becomes its two steps."""
    out: list[str] = []
    for s in steps:
        if s.do == "run":
            kind = s.kind or "sc"
            out.append(f"{kind} in next {s.n} sts" if s.n > 1 else f"{kind} in next st")
            out.append(f"2 {kind} in next st" if s.words == "inc" else f"{kind}2tog")
        elif s.do == "dec" and s.n > 1:
            out.append(f"({s.words}) {s.n} times")
        else:
            out.append(s.words)
    return [w for w in out if w]


def readings(row: Said) -> list[Reading]:
    """Written readings of a row, the likeliest first, without its label, its start chain and its end."""
    found: dict[str, float] = {}
    for words, cost in _all(row):
        if words and (words not in found or cost < found[words]):
            found[words] = cost
    return [Reading(w, c) for w, c in sorted(found.items(), key=lambda p: p[1])][:_MOST]


def _all(row: Said) -> Iterator[tuple[str, float]]:
    yield from _of(row, row.steps, 0.0)
    if row.retracted > 0:
        for n in (1, 2, 3):
            kept = (*row.steps[: max(0, row.retracted - n)], *row.steps[row.retracted :])
            yield from _of(row, kept, -0.2 + 0.1 * n)
    firm = tuple(s for s in row.steps if not s.weak)
    if firm != row.steps:
        yield from _of(row, firm, 0.15)
    if row.after:
        yield from _of(row, (*row.steps, *_grouped(row.after)), 1.2)


def _of(row: Said, steps: Sequence[Act], cost: float) -> Iterator[tuple[str, float]]:
    wholes = [i for i, s in enumerate(steps) if s.whole and s.do in ("make", "group")]
    if len(wholes) > 1:
        yield from _sides(steps, wholes, cost)
        steps = [_in_passing(s) if i in wholes[1:] else s for i, s in enumerate(steps)]
    words = _spread(steps)
    if not words:
        return
    yield ", ".join(words), cost + (0.6 if (row.around or row.times) and not any(s.whole for s in steps) else 0.0)
    if wholes:
        i = wholes[0]
        yield ", ".join(_spread(steps[: i + 1])), cost + 0.1 * (len(steps) - i - 1)
        yield ", ".join(_spread([steps[i]])), cost + 0.1 * (len(steps) - 1)
        if len(wholes) > 1:
            yield ", ".join(_spread([*steps[:i], steps[wholes[-1]]])), cost + 0.3
    yield from _after_start(row, steps, words, cost)
    yield from _repeats(row, words, cost)


def _after_start(row: Said, steps: Sequence[Act], words: Sequence[str], cost: float) -> Iterator[tuple[str, float]]:
    """A start chain and a stitch at its foot are two in one place: told once, "and repeat that around" means two in one from there on."""
    first = steps[0]
    if row.start is None or first.place != "same" or first.do != "make" or not (row.around or row.times):
        return
    for p in range(1, min(4, len(words)) + 1):
        if any("each" in w or " last" in w for w in words[1:p]):
            return
        unit = ", ".join([f"{first.n + 1} {first.kind} in next st", *words[1:p]])
        yield f"{', '.join(words[:p])}, *{unit}; rep from * around", cost + 0.3 + 0.11 * (len(words) - p)


def _in_passing(s: Act) -> Act:
    """A step of the whole way that goes along with another one."""
    return replace(s, words=s.words.removesuffix(" around").removesuffix(" across"))


def _sides(steps: Sequence[Act], wholes: Sequence[int], cost: float) -> Iterator[tuple[str, float]]:
    """"Three in each space along the sides, and a corner in each corner": side by side around."""
    side = next((steps[i] for i in wholes if steps[i].place == "sp" and "corner" not in steps[i].words), None)
    corner = next((steps[i] for i in wholes if steps[i].do == "group" and "corner" in steps[i].words), None)
    if side is None or corner is None:
        return
    what, _, space = side.words.removesuffix(" around").partition(" in each ")
    along = f"ch 1, ({what}, ch 1) in each {space} to next corner"
    lead = [s.words for s in steps[: wholes[0]] if s.do == "group"]
    turned = corner.words.replace("each corner sp around", "next corner sp")
    yield ", ".join([*lead, along, f"*{turned}, {along}; rep from * around"]), cost - 0.1


def _repeats(row: Said, words: Sequence[str], cost: float) -> Iterator[tuple[str, float]]:
    """The steps as a repeat: what was said once or a few times and then "all the way around"."""
    same = [w.replace("in first ", "in next ").replace("around first ", "around next ") for w in words]
    told = 0.0 if row.around or row.times else 0.7
    for lead in range(1 if row.moved or "from hook" in words[0] else 0, min(7, len(words))):
        if any("each st around" in w or "each st across" in w for w in words[:lead]):
            break
        for p in range(1, min(9, len(words) - lead) + 1):
            unit, rest = same[lead : lead + p], same[lead + p :]
            if any(once in u for u in unit for once in _ONCE):
                continue
            off = next((i for i, w in enumerate(rest) if w != unit[i % p]), len(rest))
            left = len(rest) - off
            tail = [w for w in rest[off:] if "last" in w or "leave" in w or (w.startswith("ch ") and w == rest[-1])][-2:]
            body = ", ".join(unit)
            price = cost + told + 0.12 * lead + 0.11 * left + 0.02 * p
            front = f"{', '.join(words[:lead])}, " if lead else ""
            end = f", {', '.join(tail)}" if tail else ""
            part = len(rest) % p
            if off == len(rest) and part and row.moved:
                yield f"{front}*{body}; rep from * around, {', '.join(rest[-part:])}", price - 0.01
            yield f"{front}*{body}; rep from * around{end}", price
            if row.times > 1 and not lead:
                yield f"({body}) {row.times} times{end}", price + 0.05
            if lead == 0 and rest and off < len(rest) and left <= p + 2:
                yield f"{front}*{body}; rep from * around, {', '.join(rest[off:])}", price + 0.2
