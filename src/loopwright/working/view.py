"""A row as the next one sees it: items in working order, chain runs, groups, the turning chain.

Small, immutable and hashable: the search keeps many of them.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import field
from functools import partial
from itertools import chain, pairwise, repeat
from typing import NamedTuple

from loopwright.record import record
from loopwright.working.kinds import ANY, CHAIN


class Slot(NamedTuple):
    """A place taken: items start … end - 1 of the view (a gap has start == end), and how it is entered."""

    start: int
    end: int
    how: str = "top"


class Group(NamedTuple):
    """Items start … end - 1, made together; `name` as the pattern calls it, "" when it has none."""

    start: int
    end: int
    name: str


_group = partial(tuple.__new__, Group)  # of a tuple of its fields, in a third of the time


def groups_again(groups: Sequence[Group], by: int, times: int) -> Iterator[Group]:
    """The same groups over and over, each time `by` items further on: the first times all of them, and so on.

    Here and in runs_again no step of the interpreter is taken for each of them: a row may have thousands.
    """
    columns = (map(_group, zip(*_further(g.start, g.end, by, times), repeat(g.name))) for g in groups)
    return chain.from_iterable(zip(*columns, strict=True))


def runs_again(runs: Sequence[tuple[int, int]], by: int, times: int) -> Iterator[tuple[int, int]]:
    """As groups_again, for chain spaces."""
    return chain.from_iterable(zip(*(zip(*_further(s, e, by, times), strict=True) for s, e in runs), strict=True))


def _further(start: int, end: int, by: int, times: int) -> tuple[range, range]:
    return range(start + by, start + by * times + 1, by), range(end + by, end + by * times + 1, by)


@record
class Index:
    """What is looked up again and again in a row.

    Its groups by name, in order; the lengths of its chain spaces; whether both stand in the order of the row.
    """

    by_name: dict[str, list[Group]]
    lengths: frozenset[int]
    in_order: bool
    _kinds: frozenset[int] | None = field(default=None, init=False, compare=False, repr=False)
    _open: list[Group] | None = field(default=None, init=False, compare=False, repr=False)

    def kinds_of(self, items: bytes) -> frozenset[int]:
        """The kinds that stand in the row, found out once."""
        if self._kinds is None:
            object.__setattr__(self, "_kinds", frozenset(items))
        assert self._kinds is not None
        return self._kinds

    def open_groups(self, spaces: list[tuple[int, int]]) -> list[Group]:
        """The groups that nobody named and that have a chain space in them, found out once; `spaces`: those of the row."""
        if self._open is None:
            unnamed = self.by_name.get("", [])
            within = [g for g in unnamed if (i := bisect_left(spaces, (g.start + 1,))) < len(spaces) and spaces[i][1] < g.end]
            object.__setattr__(self, "_open", within)
        assert self._open is not None
        return self._open

    @classmethod
    def of(cls, groups: tuple[Group, ...], runs: tuple[tuple[int, int], ...]) -> Index:
        """The index of a row's groups and chain spaces."""
        by_name: dict[str, list[Group]] = {}
        for group in sorted(groups):
            by_name.setdefault(group.name, []).append(group)
        in_order = all(a <= b for a, b in pairwise(groups)) and all(a <= b for a, b in pairwise(runs))
        return cls(by_name, frozenset(e - s for s, e in runs), in_order)


@record
class View:
    """What can be worked into.

    `items`: one byte per item; chains are items. `runs`: (start, end) of each chain space. `tch`: length of a turning
    chain that is no item (0: none), `tch_first` whether it stands at the start of this view (round) or its end (turned).
    `ring`: everything goes into one place. `foundation`: the items are a foundation chain, hook at item 0.
    `divisions`: equal parts that the row was told in (0: not told so).
    `mesh`: 1 where chains stand over skipped stitches, so they may be worked into like stitches; 2 where they bridge an opening.
    `markers`: (item, whether it is in that stitch rather than before it) of each marker.
    `half`: a stitch closed the round by half a loop, in which the hook still is.
    `open_end`: nobody knows how many there are; items beyond the end are plain stitches.
    """

    items: bytes
    runs: tuple[tuple[int, int], ...] = ()
    groups: tuple[Group, ...] = ()
    tch: int = 0
    tch_first: bool = True
    ring: bool = False
    foundation: bool = False
    open_end: bool = False
    joined: bool = False
    turned: bool = False
    divisions: int = 0
    mesh: int = 0
    markers: tuple[tuple[int, bool], ...] = ()
    half: bool = False
    _hash: int = field(default=0, init=False, compare=False, repr=False)
    _index: Index | None = field(default=None, init=False, compare=False, repr=False)

    def __hash__(self) -> int:
        """Worked out once: the search looks the same views up again and again."""
        if not self._hash:
            flags = self.tch, self.tch_first, self.ring, self.foundation, self.open_end, self.joined, self.turned, self.divisions, self.mesh, self.markers, self.half
            object.__setattr__(self, "_hash", hash((self.items, self.runs, self.groups, flags)) or 1)
        return self._hash

    @property
    def index(self) -> Index:
        """The groups by name and the lengths of the chain spaces, worked out once."""
        if self._index is None:
            object.__setattr__(self, "_index", Index.of(self.groups, self.runs))
        assert self._index is not None
        return self._index

    def flipped(self) -> View:
        """The same row seen after turning."""
        n = len(self.items)
        return View(
            self.items[::-1],
            tuple((n - e, n - s) for s, e in reversed(self.runs)),
            tuple(Group(n - e, n - s, g) for s, e, g in reversed(self.groups)),
            self.tch,
            not self.tch_first,
            self.ring,
            self.foundation,
            self.open_end,
            self.joined,
            not self.turned,
            self.divisions,
            self.mesh,
            tuple((n - at - inside, inside) for at, inside in reversed(self.markers)),
        )

    @property
    def stitches(self) -> int:
        """Items that are no chains."""
        return len(self.items) - self.items.count(CHAIN)


def foundation(chains: int) -> View:
    """A foundation chain, the hook at item 0."""
    return View(bytes([CHAIN]) * chains, ((0, chains),), foundation=True)


def ring(chains: int = 0) -> View:
    """A ring: magic (0 chains) or of chains."""
    return View(bytes([CHAIN]) * chains, (), ring=True, joined=True)


def plain_row(stitches: int, kind: int = ANY, *, joined: bool = False) -> View:
    """A row of equal stitches: what is assumed where the text does not tell what was there."""
    return View(bytes([kind]) * stitches, joined=joined)
