"""What a row of the fabric is, so that two of them can be held against each other wherever they stand."""

from __future__ import annotations

import re
from functools import cached_property

from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow

BEGINNING = "beginning"  # what stands before the first labelled row of a section
_RANGE = re.compile(r"^(?P<word>[^\W\d_]+?)s?\s+(?P<first>\d+)\s*[-–—].*$", re.DOTALL)  # a range that is one row in this size
_QUIET = tuple(ROLES.index(r) for r in ("turning", "join", "move"))  # what begins and ends a row and is no stitch of it
_ASSUMED = ROLES.index("assumed")
_FAR = 1 << 20  # more stitches than a row may have


class Sheet:
    """A fabric with the place of every stitch among those of its row, what begins and ends the row left aside."""

    def __init__(self, fabric: Fabric) -> None:
        self.fabric = fabric
        self.places: list[int] = []
        quiet = frozenset(_QUIET)
        for row in fabric.rows:
            at, aside = 0, _FAR // 2
            for role in fabric.role[row.start : row.end]:
                if role in quiet:
                    self.places.append(aside)
                    aside += 1
                else:
                    self.places.append(at)
                    at += 1

    def rows(self) -> dict[int, list[RowContent]]:
        """The rows by the item of the tree that asked for them, in the order of making; what no words made is left out."""
        found: dict[int, list[RowContent]] = {}
        labels = _labels(self.fabric)
        for index in range(len(self.fabric.rows)):
            content = RowContent(self, index, labels[index])
            if not content.assumed:
                found.setdefault(content.row.item, []).append(content)
        return found


class RowContent:
    """One row of one size: its count, its kinds, and every stitch with what it is worked into, told from the row itself."""

    def __init__(self, sheet: Sheet, index: int, label: str = "") -> None:
        self.sheet = sheet
        self.fabric = sheet.fabric
        self.index = index
        self.label = label
        self.row: FabricRow = self.fabric.rows[index]

    @cached_property
    def counted(self) -> dict[str, int]:
        """Stitches by kind as the trade counts them."""
        return self.fabric.counted(self.row)

    @cached_property
    def count(self) -> int:
        """Stitches as the trade counts them; the chains of a row that is nothing else."""
        return sum(self.counted.values()) or self.kinds.get("ch", 0)

    @property
    def noun(self) -> str:
        """The one kind that it is counted in; "" where there are several, "ch" for a row of chains."""
        if not self.counted:
            return "ch" if "ch" in self.kinds else ""
        return next(iter(self.counted)) if len(self.counted) == 1 else ""

    @cached_property
    def stitches(self) -> tuple[int, ...]:
        """The stitches of the row without what begins and ends it."""
        role = self.fabric.role
        return tuple(s for s in range(self.row.start, self.row.end) if role[s] not in _QUIET)

    @cached_property
    def named(self) -> tuple[str, ...]:
        """Their kinds, in the order of making."""
        kinds, kind = self.fabric.kinds, self.fabric.kind
        return tuple(kinds[kind[s]] for s in self.stitches)

    @cached_property
    def kinds(self) -> dict[str, int]:
        """How many there are of each kind, chains and slip stitches too."""
        found: dict[str, int] = {}
        for name in self.named:
            found[name] = found.get(name, 0) + 1
        return found

    @cached_property
    def into(self) -> tuple[int, ...]:
        """What each was worked into: its place in its row, and how many rows below it lies; -1 for nothing."""
        at, places, rows, into = self.index, self.sheet.places, self.fabric.row, self.fabric.into
        return tuple(-1 if (p := into[s]) < 0 else places[p] + _FAR * (at - rows[p]) for s in self.stitches)

    @cached_property
    def colours(self) -> tuple[str, ...]:
        """The colour of each."""
        names, colour = self.fabric.colours, self.fabric.colour
        return tuple(names[colour[s]] for s in self.stitches)

    @cached_property
    def places(self) -> bytes:
        """Where in its parent each was worked: indexes into PLACES."""
        return bytes(self.fabric.place[s] for s in self.stitches)

    @cached_property
    def roles(self) -> bytes:
        """What each is to the row: indexes into ROLES."""
        return bytes(self.fabric.role[s] for s in self.stitches)

    @cached_property
    def many(self) -> tuple[int, ...]:
        """How many more stitches each was worked into."""
        return tuple(self.fabric.many[s] for s in self.stitches)

    @cached_property
    def ends(self) -> dict[str, int]:
        """What begins and ends the row, by role: chains that turn, slip stitches that join or move."""
        role, row = self.fabric.role, self.row
        found = {ROLES[q]: role.count(q, row.start, row.end) for q in _QUIET}
        return {name: n for name, n in found.items() if n}

    @property
    def assumed(self) -> bool:
        """Whether no words made any of it."""
        return self.fabric.role.count(_ASSUMED, self.row.start, self.row.end) == self.row.end - self.row.start > 0

    def where(self) -> dict[str, int]:
        """How many stitches are worked into which place, by name."""
        return {PLACES[p]: self.places.count(p) for p in sorted(set(self.places))}

    def doubled(self) -> tuple[int, ...]:
        """Which stitches of the row below are worked into more than once (1 for the first): where the increases sit."""
        seen: dict[int, int] = {}
        for kind, into, role in zip(self.named, self.into, self.roles, strict=True):
            if into >= _FAR and kind not in ("ch", "sl st") and ROLES[role] in ("edge", "counts"):
                seen[into] = seen.get(into, 0) + 1
        return tuple(sorted(into % _FAR + 1 for into, n in seen.items() if n > 1))

    def joined_up(self) -> tuple[int, ...]:
        """At which stitch of the row below the decreases begin (1 for the first)."""
        return tuple(sorted(i % _FAR + 1 for i, m, k in zip(self.into, self.many, self.named, strict=True) if m and i >= 0 and "tog" in k))

    def same(self, other: RowContent) -> bool:
        """Whether the other is the same row: every stitch of its kind, colour and place, into the same stitch; begun and ended alike.

        A row that is told in short ("work even") says nothing of its beginning and its join: then these are no difference.
        """
        return (
            self.named == other.named and self.places == other.places and self.roles == other.roles and self.into == other.into
            and self.many == other.many and self.colours == other.colours and self._more() == other._more()
            and not self.ends_unlike(other) and (self.row.turned == other.row.turned or not self.ends or not other.ends)
        )

    def ends_unlike(self, other: RowContent) -> bool:
        """Whether both tell how the row begins and ends, and not the same."""
        return any(self.ends[q] != other.ends[q] for q in self.ends if q in other.ends)

    def _more(self) -> tuple[tuple[object, ...], ...]:
        """What single stitches have beside the columns: several parents that do not stand in a line, and what a start chain counts as."""
        fabric, row = self.fabric, self.row
        extra, counts = fabric.extra, fabric.counts_as
        several = [(n, len(extra[s])) for n, s in enumerate(self.stitches) if s in extra] if extra else []
        stand = [(n, fabric.kinds[counts[s]]) for n, s in enumerate(self.stitches) if s in counts] if counts else []
        return (*several, *stand, (len(row.borrowed),))


def rows_by_item(fabric: Fabric | None) -> dict[int, list[RowContent]]:
    """The rows of a fabric by the item of the tree that asked for them; none where there is no fabric."""
    return {} if fabric is None else Sheet(fabric).rows()


def _labels(fabric: Fabric) -> list[str]:
    """What each row is called: its label, else "rnd 3" for the third round of its section; "" for those of a section that is one line."""
    sections: dict[str | None, list[int]] = {}
    for index, row in enumerate(fabric.rows):
        sections.setdefault(row.section, []).append(index)
    found = [_RANGE.sub(r"\g<word> \g<first>", row.label) for row in fabric.rows]
    for indexes in sections.values():
        without = [i for i in indexes if not found[i]]
        if len(without) == len(indexes) and len({fabric.rows[i].item for i in indexes}) == 1:
            continue
        for n, i in enumerate(indexes):
            if found[i]:
                continue
            if i == indexes[0] and len(without) < len(indexes):
                found[i] = BEGINNING
            else:
                row = fabric.rows[i]
                found[i] = f"{'row' if row.turned or row.turned_before else 'rnd'} {n + 1}"
    return found
