"""Row by row and size by size: what is otherwise in the fabric, and whether the row's own words made it so."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from loopwright.model.tree import Row
from loopwright.publishing.changes.content import RowContent
from loopwright.publishing.changes.entries import Entry, extent, instruction
from loopwright.publishing.changes.model import Diff, Pairing, Value, What

READ_BY_IT = "and the row is read by it"
MANY_PLACES = 8  # places of increases that are listed


@dataclass(frozen=True, slots=True)
class Looking:
    """What rows are compared with: the sizes, how a stitch is said, and items that could not be worked (old and new)."""

    pairing: Pairing
    say: Callable[[str], str]
    old_unread: frozenset[int]
    new_unread: frozenset[int]


def row_diffs(entries: Sequence[tuple[Entry | None, Entry | None]], moved: frozenset[int], looking: Looking) -> list[Diff]:
    """All differences of rows, by size and then in the order of the new text. `moved`: new items that only stand elsewhere."""
    found: list[Diff] = []
    for pair, (old_size, new_size) in enumerate(looking.pairing.pairs):
        for order, (a, b) in enumerate(entries):
            found.extend(_Entry(pair, old_size, new_size, order, a, b, looking, b is not None and b.index in moved).diffs())
    return found


@dataclass(slots=True)
class _Entry:
    """One entry in one size."""

    pair: int
    old_size: int
    new_size: int
    order: int
    a: Entry | None
    b: Entry | None
    looking: Looking
    moved: bool

    def diffs(self) -> list[Diff]:
        was = self.a.rows[self.pair] if self.a is not None else ()
        now = self.b.rows[self.pair] if self.b is not None else ()
        if self.a is None:
            return [self._diff("added", now=len(now), own=True)] if now else []
        if self.b is None:
            return [self._diff("removed", was=len(was), own=True)] if was else []
        if self.moved and (was or now):
            return [self._diff("moved", was=self.a.label, now=self.b.label, own=True), *self._paired(was, now)]
        return self._paired(was, now) if was or now or self.a.is_row and self.b.is_row else []

    def _paired(self, was: Sequence[RowContent], now: Sequence[RowContent]) -> list[Diff]:
        if self.a is None or self.b is None:
            return []
        found = [d for k in range(min(len(was), len(now))) if (d := self._row(was[k], now[k], k)) is not None]
        if len(was) != len(now):
            what, row = self._number(len(was), len(now)), (now or was)[0]
            found.append(self._diff(what, "", len(was), len(now), own=self._own() or self._asked_more(), noun=_rounds(row)))
        printed = self._printed()
        counts = [d for d in found if d.what in ("count", "unworkable")]
        if printed is None or any(d.own for d in found if d.what in ("count", "unworkable", "rows")):
            return found
        return [replace(printed, detail=READ_BY_IT if counts else ""), *found]

    def _number(self, was: int, now: int) -> What:
        if self.a is None or self.b is None:
            return "rows"
        if now < was and (self.b.index in self.looking.new_unread or not self.b.is_row):
            return "unworkable"
        return "workable" if was < now and (self.a.index in self.looking.old_unread or not self.a.is_row) else "rows"

    def _row(self, was: RowContent, now: RowContent, part: int) -> Diff | None:
        if was.same(now):
            return None
        if was.count != now.count:
            noun = now.noun if now.noun == was.noun else ""
            return self._diff("count", now.label, was.count, now.count, noun=noun, own=self._own(), part=part)
        if was.kinds != now.kinds:
            kinds = [k for k in {**now.kinds, **was.kinds} if was.kinds.get(k, 0) != now.kinds.get(k, 0)]
            said = [", ".join(f"{c.kinds[k]} {self.looking.say(k)}" for k in kinds if k in c.kinds) or "none" for c in (was, now)]
            return self._diff("stitches", now.label, *said, own=self._own(), part=part)
        return self._diff("places", now.label, *_places(was, now), own=self._own(), part=part)

    def _own(self) -> bool:
        """Whether the words of the row ask this size for something else than before."""
        if self.a is None or self.b is None:
            return True
        return bool(instruction(self.a.item, self.old_size) != instruction(self.b.item, self.new_size))

    def _asked_more(self) -> bool:
        """Whether the words ask this size for another number of rows."""
        return self.a is not None and self.b is not None and bool(extent(self.a.item, self.old_size) != extent(self.b.item, self.new_size))

    def _printed(self) -> Diff | None:
        """A printed count that is another while the row makes what it made."""
        if self.a is None or self.b is None or not isinstance(self.a.item, Row) or not isinstance(self.b.item, Row):
            return None
        was, now = _told(self.a.item, self.old_size), _told(self.b.item, self.new_size)
        if was == now or not was or not now:
            return None
        said = [", ".join(str(n) if noun is None else f"{n} {self.looking.say(noun)}" for n, noun in told) for told in (was, now)]
        if [n for n, _ in was] == [n for n, _ in now]:
            return None  # another noun is a matter of words
        return self._diff("printed", "", *said, own=True)

    def _diff(
        self, what: What, label: str = "", was: Value = None, now: Value = None, *, own: bool, noun: str = "", part: int = 0,
    ) -> Diff:
        section = (self.b or self.a).section  # type: ignore[union-attr]
        old, new = self.a.index if self.a else None, self.b.index if self.b else None
        own = own and (what == "moved" or not self.moved)
        return Diff(what, self.pair, old, new, self.order, section, label, was, now, noun, own=own, part=part)


def _told(row: Row, size: int) -> tuple[tuple[int | None, str | None], ...]:
    if row.sizes is not None and size not in row.sizes:
        return ()
    return tuple((c.n.at(size), c.noun) for c in row.printed if c.n.values)


def _rounds(row: RowContent) -> str:
    return "row" if row.row.turned or row.row.turned_before else "rnd"


def _places(was: RowContent, now: RowContent) -> tuple[str, str]:
    """What stands elsewhere, in words: increases, decreases, the place worked into, colours, else the order alone."""
    for told in (RowContent.doubled, RowContent.joined_up):
        a, b = told(was), told(now)
        if a != b and (a or b):
            word = "increases in st" if told is RowContent.doubled else "decreases from st"
            return _listed(word, a), _listed(word, b)
    if was.where() != now.where():
        return _where(was), _where(now)
    if was.colours != now.colours:
        return _colours(was), _colours(now)
    if was.ends_unlike(now):
        return _ends(was), _ends(now)
    if was.row.turned != now.row.turned:
        return ("turned" if was.row.turned else "not turned"), ("turned" if now.row.turned else "not turned")
    if was.roles != now.roles:
        return "start chain", "start chain counted otherwise"
    return "in another order", "in this order" if was.named != now.named else "into other stitches"


def _listed(word: str, places: Sequence[int]) -> str:
    if not places:
        return f"no {word.partition(' ')[0]}"
    shown = ", ".join(map(str, places[:MANY_PLACES])) + (" …" if len(places) > MANY_PLACES else "")
    return f"{word}{'s' if len(places) > 1 else ''} {shown}"


def _where(row: RowContent) -> str:
    names = {"top": "both loops", "back": "back loops", "front": "front loops", "front-post": "front posts", "back-post": "back posts",
             "space": "spaces", "third": "third loops", "row-end": "row ends", "underside": "the underside", "chain": "chains",
             "between": "between sts", "ring": "the ring"}
    return ", ".join(f"{n} in {names[p]}" for p, n in row.where().items() if p in names) or "nothing below"


def _ends(row: RowContent) -> str:
    said = {"turning": "{} ch to begin", "join": "{} sl st to join", "move": "{} sl sts to move on"}
    return ", ".join(said[q].format(n) for q, n in row.ends.items())


def _colours(row: RowContent) -> str:
    found: dict[str, int] = {}
    for c in row.colours:
        found[c] = found.get(c, 0) + 1
    return ", ".join(f"{n} in {c}" if c else f"{n} in no colour told" for c, n in found.items())
