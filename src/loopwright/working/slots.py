"""The places that a row's stitches went into, as columns that can be repeated without touching each stitch."""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Iterator, Sequence

from loopwright.working.lanes import shifted
from loopwright.working.view import Slot

HOWS = (
    "", "top", "back", "front", "third", "front-post", "back-post", "space", "ring", "chain", "between", "row-end", "underside",
    "own-chain", "free", "corner", "below-1", "below-2", "below-3", "below-4", "below-5", "below-6", "below-7", "below-8", "below-9",
)
HOW = {how: i for i, how in enumerate(HOWS)}
NOTHING, TOP = 0, 1
_NOWHERE = (-1, -1, "")


class Slots:
    """A list of `Slot | None`, kept as three columns: 9 bytes a stitch instead of an object."""

    __slots__ = ("end", "how", "start")

    def __init__(self) -> None:
        self.start: array[int] = array("i")
        self.end: array[int] = array("i")
        self.how = bytearray()

    @classmethod
    def of(cls, slots: Iterable[Slot | None]) -> Slots:
        """The columns of a sequence of slots."""
        if isinstance(slots, Slots):
            return slots
        found = cls()
        found.extend(slots)
        return found

    def append(self, slot: Slot | None) -> None:
        """One more."""
        start, end, how = _NOWHERE if slot is None else slot
        self.start.append(start)
        self.end.append(end)
        self.how.append(HOW.get(how, TOP))

    def alike(self, slot: Slot | None, times: int) -> None:
        """So many more into the same place."""
        start, end, how = _NOWHERE if slot is None else slot
        self.start.extend(array("i", (start,)) * times)
        self.end.extend(array("i", (end,)) * times)
        self.how.extend(bytes((HOW.get(how, TOP),)) * times)

    def extend(self, slots: Iterable[Slot | None]) -> None:
        """Many more."""
        found = [_NOWHERE if slot is None else slot for slot in slots]
        self.start.extend([s[0] for s in found])
        self.end.extend([s[1] for s in found])
        self.how.extend([HOW.get(s[2], TOP) for s in found])

    def heaps(self, slots: list[Slot], times: int) -> None:
        """Several places, so many stitches into each."""
        self.start.extend([s[0] for s in slots for _ in range(times)])
        self.end.extend([s[1] for s in slots for _ in range(times)])
        self.how.extend([HOW.get(s[2], TOP) for s in slots for _ in range(times)])

    def tops(self, starts: Sequence[int], ends: Sequence[int]) -> None:
        """Many more, each into tops from its own start to its own end."""
        self.start.extend(starts)
        self.end.extend(ends)
        self.how.extend(bytes((TOP,)) * len(starts))

    def nothing(self, count: int) -> None:
        """So many stitches that went into nothing: chains."""
        fill = array("i", (-1,)) * count
        self.start.extend(fill)
        self.end.extend(fill)
        self.how.extend(bytes(count))

    def each(self, positions: range | list[int], times: int, how: str) -> None:
        """`times` stitches in each of many single items."""
        if times == 1:
            self.start.extend(positions)
        else:
            self.start.extend(p for p in positions for _ in range(times))
        count = len(positions) * times
        self.end.extend(shifted(self.start[-count:] if count else array("i"), 1))
        self.how.extend(bytes((HOW.get(how, TOP),)) * count)

    def tile(self, begin: int, times: int, step: int) -> None:
        """Repeats the slots from `begin` to the end so many times more, each time `step` places further on."""
        how = bytes(self.how[begin:])
        for column in (self.start, self.end):
            column.extend(tiled(column[begin:], times, step))
        self.how.extend(how * times)

    def pop(self) -> Slot | None:
        """Takes the last one off."""
        last = self[len(self.how) - 1]
        del self.start[-1:], self.end[-1:], self.how[-1:]
        return last

    def clear(self) -> None:
        """Takes all off."""
        del self.start[:], self.end[:], self.how[:]

    def __len__(self) -> int:
        return len(self.how)

    def __getitem__(self, index: int) -> Slot | None:
        how = self.how[index]
        return Slot(self.start[index], self.end[index], HOWS[how]) if how else None

    def __delitem__(self, index: int | slice) -> None:
        del self.start[index], self.end[index], self.how[index]

    def __iter__(self) -> Iterator[Slot | None]:
        return (self[i] for i in range(len(self.how)))


def empty(count: int) -> Slots:
    """So many stitches of which nobody knows what they went into."""
    found = Slots()
    found.nothing(count)
    return found


def tiled(column: array[int], times: int, step: int) -> array[int]:
    """A column repeated, each copy `step` further on; items below zero stand for no place of the row below and stay."""
    found = shifted(column, step)
    done = 1
    while done < times:
        more = min(done, times - done)
        found.extend(shifted(found[: more * len(column)], done * step))
        done += more
    return found
