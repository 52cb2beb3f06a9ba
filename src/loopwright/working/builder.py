"""Building the columns of one row: its items all at once where their places lie plainly, else one by one; then what is no item."""

from __future__ import annotations

import itertools
from array import array
from collections.abc import Callable
from functools import cached_property

from loopwright.model.fabric import PLACES, ROLES
from loopwright.working.columns import BELOW, NO_CHAIN, NO_PARENT, OWN, Below, Columns
from loopwright.working.kinds import CHAIN, code, name, plain
from loopwright.working.lanes import add, mask_of, mirrored, shifted
from loopwright.working.rows import OF_BEFORE, Made
from loopwright.working.slots import HOW, HOWS, NOTHING, TOP, Slots
from loopwright.working.tape import Note
from loopwright.working.view import Slot

PLACE = {p: i for i, p in enumerate(PLACES)}
ROLE = {r: i for i, r in enumerate(ROLES)}
_POST_OF = {"fp": "front-post", "bp": "back-post"}
PICOT_CHAINS = 3  # the trade's usual picot; a picot that the pattern defines with another length is laid down as that

_PLACE_OF = {"": "none", "own-chain": "chain", "free": "top", "corner": "space"} | {f"below-{i}": "top" for i in range(1, 10)}
_TO_PLACE = bytes(PLACE[_PLACE_OF.get(h, h)] for h in HOWS) + bytes(256 - len(HOWS))
_SIMPLE = bytes(HOW[h] for h in ("", "top", "back", "front", "third", "front-post", "back-post", "space", "ring", "chain"))
_DEEP = bytes(HOW[f"below-{i}"] for i in range(1, 10))
_HAS_PARENT = bytes(int(i != NOTHING) for i in range(256))


class Builder:
    """Builds the columns of one row out of what the search kept of it."""

    def __init__(self, made: Made, below: Below, kinds: bytes, ends: dict[int, int], fallback: tuple[int, int]) -> None:
        self.made, self.below, self.kinds, self.ends, self.fallback = made, below, kinds, ends, fallback
        self.into: Slots = Slots.of(made.into)
        self.cols = Columns()
        self.base = -1
        self.rounds, self.inners = _rounds(made.tape, len(made.out))
        self.joins: list[int] = []

    def build(self) -> Columns:
        """The columns."""
        at, done = 0, len(self.made.out)
        for note in sorted((n for n in self.made.tape if n.what != "round"), key=lambda n: n.at):
            stop = min(max(note.at, at), done)
            self._items(at, stop)
            at = stop
            emit = _EMIT.get(note.what)
            if emit is not None:
                at = emit(self, note, at)
        self._items(at, done)
        first = self.cols.ids[0] if self.cols.ids else -1
        for stitch in self.joins:
            if first >= 0 or not self.cols.borrowed:
                self._point(stitch, first)
            else:
                self.cols.into[stitch], self.cols.refs[stitch] = first + self.below.length, BELOW
        self.cols.finish()
        return self.cols

    # --- the row's items -----------------------------------------------------------------------------------------

    def _items(self, a: int, b: int) -> None:
        """Items a … b - 1, all at once where their places lie plainly in the row below."""
        if a >= b:
            return
        cols, begin = self.cols, len(self.cols.kind)
        how = bytes(self.into.how[a:b])
        start = self.into.start[a:b]
        cols.kind += self.made.out[a:b].translate(self.kinds)
        cols.role += bytes(b - a)
        cols.ids.extend(range(begin, begin + b - a))
        self._words(self.made.origins[a:b])
        cols.round.extend(self.rounds[a:b] if self.rounds else array("i", bytes(4 * (b - a))))
        cols.inner.extend(self.inners[a:b] if self.inners else array("H", bytes(2 * (b - a))))
        plain = not how.translate(None, _SIMPLE + _DEEP)
        within = self.below.items and max(self.into.end[a:b]) <= len(self.below.items)
        if plain and (how.count(NOTHING) == b - a or within and self._whole(a, b)):
            self._straight(a, b, how, start)
        else:
            for i in range(a, b):
                self._one(self.into[i])
        for i in range(b - a):
            if how[i] in _DEEP:
                cols.deep.append((begin + i, int(HOWS[how[i]][-1])))
        self._posts(begin, a, b)
        if CHAIN in self.below.items and (self.below.foundation or TOP in how):
            self._on_chains(begin)

    def _whole(self, a: int, b: int) -> bool:
        """Whether no slot is empty: a gap, or the turning chain after the last stitch."""
        start: array[int] = self.into.start[a:b]
        end: array[int] = self.into.end[a:b]
        if shifted(start, 1).tobytes() == end.tobytes() and min(start) >= 0:
            return True  # each takes one place: the usual row
        return all(s < e for s, e in zip(start, end, strict=True) if s >= 0)

    def _straight(self, a: int, b: int, how: bytes, start: array[int]) -> None:
        cols, below, count = self.cols, self.below, b - a
        flags = how.translate(_HAS_PARENT)
        cols.refs += flags
        cols.place += how.translate(_TO_PLACE)
        if below.ids is not None:
            ids = below.ids
            cols.into.extend(array("i", [ids[s] if s >= 0 else -1 for s in start]))
        elif below.step > 0:
            cols.into.extend(add(start, below.first, mask_of(flags)))
        else:
            cols.into.extend(mirrored(start, below.first, mask_of(flags)))
        end = self.into.end[a:b]
        if shifted(start, 1).tobytes() == end.tobytes():
            cols.many.extend(array("h", bytes(2 * count)))
        elif below.step:
            step = below.step
            cols.many.extend(array("h", [(e - s - 1) * step if e > s else 0 for s, e in zip(start, end, strict=True)]))
        else:
            self._scattered(len(cols.many), start, end)

    def _scattered(self, begin: int, start: array[int], end: array[int]) -> None:
        ids = self.below.ids
        assert ids is not None
        for i, (s, e) in enumerate(zip(start, end, strict=True)):
            self.cols.many.append(0)
            if e - s > 1:
                self._several(begin + i, list(ids[s:e]))

    def _several(self, stitch: int, parents: list[int]) -> None:
        """Parents of a stitch: in a line where they are, listed where they are not."""
        more = len(parents) - 1
        for step in (1, -1):
            if all(b - a == step for a, b in itertools.pairwise(parents)):
                self.cols.many[stitch] = more * step
                return
        self.cols.extra[stitch] = tuple(parents[1:])

    def _one(self, slot: Slot | None) -> None:
        """One stitch into any place."""
        cols, below = self.cols, self.below
        stitch, n = len(cols.into), len(below.items)
        cols.into.append(-1)
        cols.many.append(0)
        cols.refs.append(NO_PARENT)
        cols.place.append(PLACE[_PLACE_OF.get(slot.how, slot.how)] if slot is not None else PLACE["none"])
        if slot is None:
            return
        if slot.how in ("row-end", "free", "corner") or slot.how == "underside" and not below.foundation:
            cols.edges.append((stitch, slot.how))
        elif slot.start < 0:
            if self.base >= 0 and slot.start <= -2:
                self._point(stitch, self.base - slot.start - 2)
        elif n:
            self._into_below(stitch, slot, n)

    def _into_below(self, stitch: int, slot: Slot, n: int) -> None:
        cols, below = self.cols, self.below
        if below.foundation and slot.start >= n:
            # round the last chain, whose other side those stitches fill that went into it
            where, parents = "underside", [below.at(max(0, n - 2 - (i - n))) for i in range(slot.start, max(slot.end, slot.start + 1))]
        elif slot.how == "between":
            where, parents = "between", [below.at((slot.start - 1) % n), below.at(slot.start % n)]
        elif slot.start == slot.end and below.turning != NO_CHAIN:
            where, parents = "chain", [below.turning]
        else:
            where, parents = "", [below.at(i % n) for i in range(slot.start, min(max(slot.end, slot.start + 1), slot.start + n))]
        if where:
            cols.place[stitch] = PLACE[where]
        cols.into[stitch], cols.refs[stitch] = parents[0], BELOW
        if len(parents) > 1:
            self._several(stitch, parents)

    def _on_chains(self, begin: int) -> None:
        """A stitch whose single parent is a chain goes into the chain itself, not into a stitch's top."""
        cols, top, chain = self.cols, PLACE["top"], PLACE["chain"]
        if self.below.foundation:
            cols.place[begin:] = cols.place[begin:].replace(bytes((top,)), bytes((chain,)))
            return
        for i in range(begin, len(cols.kind)):
            if cols.place[i] == top and cols.into[i] in self._chains_below and cols.refs[i] == BELOW:
                cols.place[i] = chain

    @cached_property
    def _chains_below(self) -> frozenset[int]:
        return frozenset(self.below.at(i) for i, kind in enumerate(self.below.items) if kind == CHAIN)

    def _posts(self, begin: int, a: int, b: int) -> None:
        """Front and back post stitches go around the post whether the words say so or not."""
        made = self.made.out[a:b]
        for number in set(made):
            side = _POST_OF.get(name(number)[:2])
            if side is None or plain(name(number)) == name(number):
                continue
            for i, kind in enumerate(made):
                if kind == number and self.cols.place[begin + i] == PLACE["top"]:
                    self.cols.place[begin + i] = PLACE[side]

    def _words(self, origins: array[int]) -> None:
        ends, cols = self.ends, self.cols
        a, b = self.fallback
        told = {o: (o, ends[o]) if o in ends else (o, OF_BEFORE + ends.get(o - OF_BEFORE, o)) if o >= OF_BEFORE else (a, b) for o in set(origins)}
        if len(told) == 1:
            ((start, end),) = told.values()
            cols.origin.extend(array("i", (start,)) * len(origins))
            cols.origin_end.extend(array("i", (end,)) * len(origins))
            return
        cols.origin.extend(array("i", [told[o][0] for o in origins]))
        cols.origin_end.extend(array("i", [told[o][1] for o in origins]))

    # --- what is no item -----------------------------------------------------------------------------------------

    def hidden(self, kind: str, role: str, note: Note, *, at: int, place: str = "none") -> int:
        """A stitch that is no item of the row; its number."""
        cols = self.cols
        stitch = len(cols.kind)
        cols.kind.append(self.kinds[code(kind)])
        cols.into.append(-1)
        cols.many.append(0)
        cols.refs.append(NO_PARENT)
        cols.place.append(PLACE[place])
        cols.role.append(ROLE[role])
        self._words(array("i", (note.origin,)))
        within = role in ("picot", "base") and 0 < at <= len(self.made.out)
        cols.round.append(self.rounds[at - 1] if within and self.rounds else 0)
        cols.inner.append(self.inners[at - 1] if within and self.inners else 0)
        return stitch

    def _point(self, stitch: int, parent: int) -> None:
        """Makes a stitch of the row itself the parent."""
        if parent >= 0:
            self.cols.into[stitch], self.cols.refs[stitch] = parent, OWN
            if self.cols.place[stitch] == PLACE["none"]:
                self.cols.place[stitch] = PLACE["top"]

    def into_slot(self, stitch: int, slot: Slot) -> None:
        """Gives a hidden stitch a place of the row below."""
        if self.below.items and slot.start >= 0:
            self._into_below(stitch, slot, len(self.below.items))
            self.cols.place[stitch] = PLACE[_PLACE_OF.get(slot.how, slot.how)] if slot.end > slot.start else self.cols.place[stitch]


def _turning(b: Builder, note: Note, at: int) -> int:
    for _ in range(note.n):
        b.cols.turning = b.hidden("ch", "turning", note, at=at)
    return at


def _passed(b: Builder, _: Note, at: int) -> int:
    """The chains passed over in the foundation only turn; their top is the last that was made, where the hook is."""
    if b.below.items:
        b.cols.turning = b.below.at(0) - b.below.length
    return at


def _stands(b: Builder, note: Note, at: int) -> int:
    """The start chain that counts: the item itself is its top chain."""
    for _ in range(note.n - 1):
        b.hidden("ch", "stands", note, at=at)
    if at >= len(b.made.out):
        return at
    kind = b.made.out[at]
    b._items(at, at + 1)
    top = len(b.cols.kind) - 1
    b.cols.counts_as[top] = b.kinds[kind]
    b.cols.kind[top] = b.kinds[CHAIN]
    b.cols.role[top] = ROLE["counts"]
    return at + 1


def _skipped(b: Builder, note: Note, at: int) -> int:
    """The chains skipped in the foundation count as a stitch, and as a chain space where there are more of them."""
    below, extra = b.below, note.first
    if not below.items:
        return at
    for j in range(extra, -1, -1):
        b.cols.ids.append(below.at(min(j, len(below.items) - 1)) - below.length)
    b.cols.borrowed = (b.cols.ids[0],)
    b.cols.counts_as[b.cols.ids[0]] = b.kinds[b.made.out[at]]
    return at + 1 + extra


def _move(b: Builder, note: Note, at: int) -> int:
    for i in range(note.n):
        stitch = b.hidden("sl st", "move", note, at=at, place="top")
        if note.slot is not None:
            back = note.n - 1 - i
            b.into_slot(stitch, note.slot if not back else Slot(max(0, note.slot.start - back), max(1, note.slot.start - back + 1)))
    return at


def _join(b: Builder, note: Note, at: int) -> int:
    stitch = b.hidden("sl st", "join", note, at=at, place="top")
    if note.slot is not None:
        b.into_slot(stitch, note.slot)
    else:
        b.joins.append(stitch)
    return at


def _half(b: Builder, note: Note, at: int) -> int:
    stitch = b.hidden(note.word, "join", note, at=at, place="top")
    b.joins.append(stitch)
    b.cols.ids.extend([stitch] * note.n)
    return at + note.n


def _base(b: Builder, note: Note, at: int) -> int:
    b.base = len(b.cols.kind)
    for _ in range(note.n):
        b.hidden("ch", "base", note, at=at)
    return at


def _picot(b: Builder, note: Note, at: int) -> int:
    for _ in range(note.n):
        first = b.hidden("ch", "picot", note, at=at)
        for _ in range(PICOT_CHAINS - 1):
            b.hidden("ch", "picot", note, at=at)
        b._point(b.hidden("sl st", "picot", note, at=at, place="chain"), first)
    return at


def _close(b: Builder, note: Note, at: int) -> int:
    """The last chains closed to a loop: a slip stitch so many chains back."""
    stitch = b.hidden("sl st", "picot", note, at=at, place="chain")
    b._point(stitch, stitch - note.n)
    return at


_EMIT: dict[str, Callable[[Builder, Note, int], int]] = {
    "turning": _turning, "passed": _passed, "stands": _stands, "skipped": _skipped, "move": _move, "join": _join, "half": _half,
    "base": _base, "picot": _picot, "close": _close,
}


def _rounds(tape: tuple[Note, ...], count: int) -> tuple[array[int] | None, array[int] | None]:
    """Per item: the round of the outermost repeat and of the one within it; None where the row has no repeat."""
    notes = [n for n in tape if n.what == "round"]
    if not notes:
        return None, None
    found = []
    for word, code_ in (("outer", "i"), ("inner", "H")):
        column: array[int] = array(code_)
        now = 0
        for note in notes:
            if note.word != word:
                continue
            column.extend(array(code_, (now,)) * max(0, min(note.at, count) - len(column)))
            for k in range(note.n - 1):
                column.extend(array(code_, (note.first + k,)) * note.length)
            now = note.first + max(0, note.n - 1)
        column.extend(array(code_, (now,)) * (count - len(column)))
        found.append(column[:count])
    return found[0], found[1]


def into_tops(cols: Columns) -> bool:
    """Whether a row goes into stitches of the row below, its start chain aside."""
    live = (ROLE["edge"], ROLE["counts"])
    tops = [i for i, ref in enumerate(cols.refs) if ref == BELOW and cols.role[i] in live]
    return len(tops) > 1 or bool(tops) and cols.role[tops[0]] == ROLE["edge"]
