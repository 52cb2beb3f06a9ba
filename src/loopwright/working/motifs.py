"""Motifs joined as you go: "sl st in corner sp of first square" goes into the edge of another piece.

The worker takes such a stitch for one of the row at hand; here it gets its real parent. A motif is joined side by side with the
finished one, so its edge is met in the other direction: from the first corner that is named backwards.
"""

from __future__ import annotations

import re
from array import array
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import groupby

from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow
from loopwright.working.looked import Looked

ANOTHER = frozenset("first finished adjoining adjacent previous last other neighbour neighbor neighbouring neighboring completed second".split())
PIECES = frozenset("square motif hexagon piece block medallion flower granny".split())
_OF_ANOTHER = re.compile(
    rf"\b(?:of|on|from)\s+(?:the\s+|a\s+)?(?P<which>{'|'.join(sorted(ANOTHER))})\s+(?:{'|'.join(sorted(PIECES))})\b", re.IGNORECASE,
)
_ROWS_OF = re.compile(r"\b(?:rows?|rnds?|rounds?)\b[\s\d,&–-]*(?:and\s+\d+\s*)?$", re.IGNORECASE)  # "as Rnds 1-3 of first square": no join
_NEAR = 40
LONGEST = max(map(len, PIECES)) + 1  # and a character behind, which must be no letter
_SPACE, _EDGE = PLACES.index("space"), ROLES.index("edge")


def of_another(words: str) -> bool:
    """Whether words only name another piece: "finished square"."""
    told = words.lower().split()
    return len(told) == 2 and told[0] in ANOTHER and told[1] in PIECES


def _of_another(text: str) -> Iterator[re.Match[str]]:
    """All that name another piece, in the order of the text: looked for before the words that mean a piece, which most patterns hardly have."""
    low = text.lower()
    done = 0
    for at in sorted(m.start() for piece in PIECES if piece in low for m in re.finditer(piece, low)):
        for m in _OF_ANOTHER.finditer(text, max(done, at - _NEAR), at + LONGEST):
            done = m.end()
            yield m


_APART = re.compile(r"[,;.*]")


@dataclass(slots=True)
class Joins:
    """Where in a text stitches are told to go into another piece."""

    text: str = ""
    ends: list[int] = field(default_factory=list)
    first: set[int] = field(default_factory=set)
    known: dict[int, tuple[object, list[tuple[int, bool, bool]], list[tuple[int, int]]]] = field(default_factory=dict)

    @classmethod
    def of(cls, text: str) -> Joins:
        """The joins of a text."""
        found = [m for m in _of_another(text) if not _ROWS_OF.search(text, max(0, m.start() - _NEAR), m.start())]
        return cls(text, [m.start() for m in found], {m.start() for m in found if m["which"].lower() == "first"})

    def told(self, columns: object, origins: array[int], looked: Looked) -> list[tuple[int, bool, bool]]:
        """Stitches of a row that are joins: (index, into a corner, of the first piece)."""
        kept = self.known.get(id(columns))
        if kept is None:
            kept = self.known[id(columns)] = (columns, *self._told(origins))
        for start, end in kept[2]:
            looked.cut(start, end)
        return kept[1]

    def _told(self, origins: array[int]) -> tuple[list[tuple[int, bool, bool]], list[tuple[int, int]]]:
        """The joins, and the pieces of the text that were looked at for them."""
        starts = sorted(set(origins))
        joins: dict[int, int] = {}
        pieces = []
        for end in self.ends:
            at = bisect_right(starts, end) - 1
            if at >= 0:
                apart = _APART.search(self.text, starts[at], end)
                pieces.append((starts[at], apart.end() if apart else end))
                if apart is None:
                    joins[starts[at]] = end
        return [(i, "corner" in self.text[o : joins[o]].lower(), joins[o] in self.first) for i, o in enumerate(origins) if o in joins], pieces

    def resolve(self, fabric: Fabric, start: int, columns: object, origins: array[int], piece: int, looked: Looked) -> None:
        """Gives the joins of a row that begins at stitch `start` their parents in another piece."""
        told = self.told(columns, origins, looked)
        if not told or piece < 1:
            return
        other = 0 if told[0][2] else piece - 1
        rows = [r for r in fabric.rows if r.piece == other]
        spaces = _spaces(fabric, rows[-1]) if rows else []
        if not spaces:
            return
        longest = max(len(s) for s in spaces)
        at = next(i for i, s in enumerate(spaces) if len(s) == longest) + 1
        for stitch, corner, _ in told:
            at -= 1
            while corner and len(spaces[at % len(spaces)]) != longest:
                at -= 1
            space = spaces[at % len(spaces)]
            fabric.into[start + stitch], fabric.many[start + stitch] = space[0], len(space) - 1
            fabric.place[start + stitch] = _SPACE


def _spaces(fabric: Fabric, row: FabricRow) -> list[list[int]]:
    """The chain spaces on a row's edge, in the order of making."""
    chain = [fabric.kinds[fabric.kind[s]] == "ch" and fabric.role[s] == _EDGE for s in range(row.start, row.end)]
    return [list(g) for is_chain, g in groupby(range(row.start, row.end), key=lambda s: chain[s - row.start]) if is_chain]


__all__ = ["Joins"]
