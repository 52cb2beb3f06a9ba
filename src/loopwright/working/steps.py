"""The rows that a size works, in order: ranges laid out, "rep Rows 2 and 3" looked up, "work even" put into words.

Not the decoding: a step says what is asked for, the search finds out how it was meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, Literal

from loopwright.model.still import Still, Stills
from loopwright.model.tree import (
    NOWHERE,
    Chain,
    Count,
    Document,
    Evenly,
    Join,
    Make,
    Mark,
    Node,
    Num,
    PatternRun,
    Place,
    Ring,
    Row,
    RowOrder,
    Section,
    Skip,
    Thing,
    Unknown,
)
from loopwright.record import changed, record
from loopwright.source import Span
from loopwright.working.altered import altered, rows_to
from loopwright.working.between import rounds_until
from loopwright.working.bodies import for_row, together, without_chain
from loopwright.working.numbered import (
    MAX_ROWS,
    comes_again,
    cycle_of,
    known_as,
    label_of,
    numbers_of,
    printed_counts,
    times_of,
    told_of,
    told_of_each,
    up_to,
)
from loopwright.working.openings import printed_total
from loopwright.working.rows import from_hook
from loopwright.working.said import worked_flat
from loopwright.working.schedules import alternates, rows_needed, shaped_rows, shapes, turn_of
from loopwright.working.sizes import of_size
from loopwright.working.visits import visits

_OF_A_ROW = re.compile(r"\bof\s+(?:row|rnd|round)\s+\d", re.IGNORECASE)  # of one further down
EVEN: tuple[Node, ...] = (Make("*same*", Num((1,)), Place("each", None, Thing("st"))),)


@record
class Step:
    """One row to be worked. `item` is the tree item that asks for it, `part` which of its rows this is.

    `body`, `printed` and `order` are free of the place they stand at; `at`: what is to be added to their spans to have them in the text.
    `turn`: what rows do, one after the other and over again, that are worked until there are so many stitches. `layout`: of a row around
    motifs that are joined, how many of them stand across and down. `awaits`: the number printed for the last of equal rows, of the first of them
    where rows before it are left out. `goes_on`: it begins and ends as the row before did, where it tells neither.
    """

    item: int
    part: int
    section: str | None
    label: str
    number: int | None
    kind: str
    body: tuple[Node, ...]
    printed: tuple[Count, ...] = ()
    also: tuple[Count, ...] = ()
    order: RowOrder | None = None
    new_section: bool = False
    gap: bool = False
    doubt: int = 0
    span: Span = NOWHERE
    problem: str | None = None
    problem_facts: tuple[tuple[str, Any], ...] = ()
    same: bool = False
    last_of_item: bool = True
    side: str | None = None
    guess: str | None = None
    turn: tuple[tuple[Node, ...], ...] = ()
    layout: tuple[int, int] | None = None
    at: int = 0
    goes_on: bool = False
    awaits: int | None = None


@dataclass(slots=True)
class _Shelf:
    """Rows by number, in the section and before it. `title`: what a text that begins with a part is called, and so the part."""

    title: str = ""
    section: str | None = None
    rows: dict[int, Step] = field(default_factory=dict)
    others: dict[str, dict[int, Step]] = field(default_factory=dict)
    done: list[Step] = field(default_factory=list)
    number: int = 0
    fresh: bool = False
    total: int = 0
    flat: bool = False  # what stands before the rows says that they are rows, whatever they begin in


def expand(document: Document, size: int, stills: Stills | None = None) -> list[Step]:
    """The steps of one size. Bounded: past 2,000 rows the rest is left out and the last step says so."""
    shelf, stills = _Shelf((document.title or "").lower().strip(" :"), flat=worked_flat(document)), stills if stills is not None else Stills(None)
    lead: Step | None = None  # "Skip next 17 sts, join yarn in next st." in a line of its own: where the next row begins
    for index, item, numbers, part in visits(document, size):
        if isinstance(item, Section):
            shelf.others[(shelf.section or "").lower()] = shelf.rows
            shelf.section, shelf.fresh = item.title, True
            continue
        for told in _asked(stills.of(item), size, index, shelf, item.span, numbers, part):
            if _is_way_in(told) and not _OF_A_ROW.search(document.text, told.span.start, told.span.end):
                lead = told
                continue
            step, lead = told if lead is None else _led(lead, told), None
            shelf.total += 1
            if shelf.total > MAX_ROWS:
                shelf.done.append(changed(step, problem="too-many-rows", problem_facts=(("limit", MAX_ROWS),)))
                return shelf.done
            shelf.done.append(step)
    return shelf.done


def _is_way_in(step: Step) -> bool:
    """Whether a line without a label only tells where the yarn is joined, some stitches further on."""
    if step.label or step.printed or step.order is not None:
        return False
    kinds = {type(n) if not isinstance(n, Mark) else n.what for n in step.body}
    return {Skip, "attach"} <= kinds <= {Skip, "attach", "note", "colour"}


def _led(lead: Step, step: Step) -> Step:
    """A row that begins where the line before it says."""
    parts, at = together([(lead.body, lead.at), (step.body, step.at)])
    return changed(step, body=parts[0] + parts[1], at=at, new_section=lead.new_section or step.new_section)


def _asked(
    still: Still, size: int, index: int, shelf: _Shelf, span: Span, only: tuple[int, ...] | None, before: int,
) -> Iterable[Step]:
    """What a row of the text asks for in a size. `only`: numbers of its label that are worked now; `before`: parts of the item that were."""
    at = still.offset + span.start
    held: Step | None = still.asked.get(size) if only is None else None
    if held is not None and held.item == index and held.at == at and held.span == span and held.section == shelf.section and held.kind == _called(still.row, shelf)[0]:
        gap, restart = _where(held.number, shelf, still.row)
        if held.gap == gap and held.new_section == (shelf.fresh or restart):
            return (_shelved(shelf, held),)  # as it stood when it was worked before
    row = of_size(still, size)
    if not row.body and row.order is None and not row.printed and row.label is None:
        return ()
    numbers, ranged = numbers_of(row)
    if row.order is None and len(numbers) == 1 and only is None:  # nearly all rows: made at once
        n, (kind, text) = numbers[0], _called(row, shelf)
        gap, restart = _where(n, shelf, row)
        step = still.asked[size] = Step(
            index, 0, shelf.section, label_of(kind, text, n, ranged), n, kind, for_row(row.body, True), printed_counts(row), row.also_printed,
            None, shelf.fresh or restart, gap, row.doubt, span, same=ranged, side=row.side, at=at,
        )
        return (_shelved(shelf, step),)
    return _several(row, index, shelf, at, span, only, before)


def _called(row: Row, shelf: _Shelf) -> tuple[str, str]:
    if row.label is None:
        return "none", ""
    return "row" if shelf.flat and row.label.kind == "none" else row.label.kind, row.label.text


def _several(row: Row, index: int, shelf: _Shelf, at: int, span: Span, only: tuple[int, ...] | None, before: int) -> Iterator[Step]:
    """The rows of an item that asks for more than one, or for rows told elsewhere."""
    numbers, ranged = numbers_of(row)
    if only is not None:
        numbers, ranged = [*only], True
    kind, text = _called(row, shelf)
    base = Step(
        index, 0, shelf.section, text, None, kind, row.body, (), row.also_printed, None, shelf.fresh, False, row.doubt, span, side=row.side, at=at,
    )
    bodies = _bodies(row, numbers, ranged, shelf, base)
    total = len(bodies)
    each = told_of_each(row, total) if only is None else ()
    awaits = printed_total(printed_counts(row)) if total > 1 and row.order is None and not each and only is None else None
    for part, made in enumerate(bodies, before):
        gap, restart = _where(made.number, shelf, row)
        missing = gap and part == before
        yield _shelved(shelf, changed(
            made, part=part, new_section=(shelf.fresh or restart) and part == before, gap=missing, awaits=awaits if missing else None, last_of_item=part == before + total - 1 and (only is None or not comes_again(row, only)),
            printed=each[part - before] if each else printed_counts(row) if part == before + total - 1 and told_of(row, only, before) else (),
        ))


def _where(number: int | None, shelf: _Shelf, row: Row) -> tuple[bool, bool]:
    """Whether rows are missing before a row of that number, and whether the numbers begin anew with it; where they do, the rows so far are put aside."""
    restart = number == 1 and shelf.number >= 1
    if restart:
        shelf.others.setdefault((shelf.section or "").lower(), dict(shelf.rows))
    missing = number is not None and number > 1 and (number > shelf.number + 1 or number <= shelf.number and row.printed != ())
    return missing, restart


def _shelved(shelf: _Shelf, step: Step) -> Step:
    """The step, where later rows find it by its number."""
    if step.number is not None:
        shelf.number = step.number
    elif step.body and _counts_as_row(step):
        shelf.number += 1
    shelf.fresh = False
    if step.number is not None or step.body and (shelf.number not in shelf.rows or _counts_as_row(step)):
        shelf.rows[shelf.number] = step
    return step


def _counts_as_row(step: Step) -> bool:
    return not (len(step.body) <= 3 and all(isinstance(n, (Chain, Mark, Ring, Join)) for n in step.body))


def _bodies(row: Row, numbers: list[int | None], ranged: bool, shelf: _Shelf, base: Step) -> list[Step]:
    order = row.order
    if order is None:
        return [
            changed(base, number=n, body=for_row(base.body, i == len(numbers) - 1), label=label_of(base.kind, base.label, n, ranged), same=ranged)
            for i, n in enumerate(numbers)
        ]
    if order.what == "even":
        return _straight(row, up_to(order, numbers, shelf.number), numbers, ranged, base)
    if order.what == "shape":
        return _shaped(row, order, numbers, ranged, shelf, base)
    if order.what == "continue" or order.delta is not None:
        return _continued(row, up_to(rounds_until(order, shelf.done), numbers, shelf.number), numbers, ranged, base, shelf.done[-1:])
    sources = _sources(order, shelf)
    own = numbers[0] if numbers else None
    if order.section is None and order.rows and own is not None and min(order.rows) >= own > 0 and not sources:
        facts = (("rows", ", ".join(map(str, order.rows))),)  # a row told by itself, or by one that is yet to come
        return [changed(base, number=own, problem="unknown-row", problem_facts=facts, order=order, label=label_of(base.kind, base.label, own, ranged))]
    if not sources and shelf.done and (order.section is None or order.what == "repeat"):
        sources, base = [changed(base, body=(PatternRun(None),) if order.section else EVEN, kind=shelf.done[-1].kind)], changed(base, guess="rows-not-told")
    if not sources:
        facts = (("rows", ", ".join(map(str, order.rows)) or "the row before"),)
        return [changed(base, number=n, problem="unknown-row", problem_facts=facts, order=order, label=label_of(base.kind, base.label, n, ranged)) for n in numbers[:1] or [None]]
    if order.until_sts is not None and not ranged and not order.grow:
        turn, at = together([(s.body, s.at) for s in sources])
        return [changed(base, body=turn[0], turn=turn, order=order, kind=sources[0].kind if base.kind == "none" else base.kind, same=True, at=at)]
    loops = rows_to(order, sources[0].body) if order.grow and not ranged else None
    order, sources = order if order.until_sts is None else changed(order, until_sts=None), _numbered(order, sources, numbers)
    many = cycle_of(order, numbers, ranged, len(sources), shelf.number) if loops is None else [None] * loops
    lead = _lead(sources[0], shelf) if base.new_section and order.section is not None else ((), 0)
    steps = []
    for i, n in enumerate(many):
        source = sources[i % len(sources)]
        words, told = altered(order, source.body, i // len(sources) + 1)
        bare = (last := i == len(many) - 1) and any(isinstance(x, Mark) and x.what == "no-chain" for x in row.body)
        extra = tuple(x for x in row.body if not isinstance(x, Mark) or bare and x.what == "turn") if last and (bare or order.what == "same-as") else ()
        parts, at = together([lead if not i else ((), 0), (without_chain(words) if bare else words, source.at), (extra, base.at)])
        body = parts[1] if not parts[0] and not parts[2] else tuple(n for part in parts for n in part)
        steps.append(changed(base, number=n, body=body, at=at, label=label_of(base.kind, base.label, n, ranged), order=told, kind=source.kind if base.kind == "none" else base.kind, same=True))
    return steps


def _numbered(order: RowOrder, sources: list[Step], numbers: list[int | None]) -> list[Step]:
    """ "Rows 2-7: same as first earflap": its rows of those numbers; all of its rows where it has not those."""
    told = {s.number: s for s in sources}
    wanted = order.section and not order.rows and numbers != [None]
    return [told[n] for n in numbers] if wanted and all(n in told for n in numbers) else sources


def _lead(first: Step, shelf: _Shelf) -> tuple[tuple[Node, ...], int]:
    """The ring or chain that a first row is worked into where it is told in a line of its own: whoever works the row as told there makes it too."""
    at = next((i for i, step in enumerate(shelf.done) if step is first), 0)
    before = shelf.done[at - 1] if at else None
    if first.number != 1 or before is None or before.number is not None or before.section != first.section:
        return (), 0
    rings = any(isinstance(n, Ring) for n in before.body) and not any(isinstance(n, Ring) for n in first.body)
    chain = from_hook(first.body) and any(isinstance(n, Chain) for n in before.body) and all(isinstance(n, (Chain, Mark, Unknown)) for n in before.body)
    return (before.body, before.at) if rings or chain else ((), 0)


def _straight(row: Row, order: RowOrder, numbers: list[int | None], ranged: bool, base: Step) -> list[Step]:
    many = times_of(order, numbers, ranged)
    return [
        changed(base, number=n, body=_even_body(order, row, i == len(many) - 1), label=label_of(base.kind, base.label, n, ranged), same=True, goes_on=True)
        for i, n in enumerate(many)
    ]


def _even_body(order: RowOrder, row: Row, last: bool) -> tuple[Node, ...]:
    """A stitch in each; the chain for the row behind it where this is the last of the rows."""
    kind = order.kind or "*same*"
    told = tuple(n for n in row.body if isinstance(n, (Chain, Mark)))
    turned = bool(told) and isinstance(told[-1], Mark) and told[-1].what == "turn"
    lead, behind = ((), told if last else ()) if turned else (told, ())
    return (*lead, PatternRun(None) if kind == "pattern" else Make(kind, Num((1,)), Place("each", None, Thing("st"))), *behind)


def _shaped(row: Row, order: RowOrder, numbers: list[int | None], ranged: bool, shelf: _Shelf, base: Step) -> list[Step]:
    """Shaping rows among rows worked even; until there are so many stitches where a number tells that."""
    does, at, kind = row.body, base.at, base.kind
    if not does:
        source = _shaping_row(order, shelf)
        if source is None:
            facts = (("rows", ", ".join(map(str, order.rows)) or "the shaping row"),)
            return [changed(base, number=n, problem="unknown-row", problem_facts=facts, order=order) for n in numbers[:1] or [None]]
        does, at, kind = source.body, source.at, source.kind if base.kind == "none" else base.kind
    found = shaped_rows(order, len(numbers) if ranged else None)
    if found is None or isinstance(found, str):
        needs: tuple[tuple[str, Any], ...] = (("rows", len(numbers)), ("needs", rows_needed(order))) if found else ()
        first = numbers[0] if numbers else None
        wrong = "shaping-too-long" if found else "blank"
        return [changed(base, number=first, problem=wrong, problem_facts=needs, order=order, label=label_of(base.kind, base.label, first, ranged))]
    base = changed(base, at=at, kind=kind, same=True)
    later = []
    if order.until_sts is not None and not ranged:
        found = found if len(order.spaced) > 1 else ()
        turn = tuple(does if shapes_here else EVEN for shapes_here in turn_of(order))
        later = [changed(base, body=turn[0], turn=turn, order=order)]
    named = numbers if ranged else [None] * len(found)
    rows = [
        changed(base, number=n, body=does if shapes_here else EVEN, label=label_of(base.kind, base.label, n, ranged), order=None)
        for n, shapes_here in zip(named, found, strict=False)
    ]
    return [*rows, *later]


def _shaping_row(order: RowOrder, shelf: _Shelf) -> Step | None:
    return next(iter(_sources(order, shelf)), None)


def _sources(order: RowOrder, shelf: _Shelf) -> list[Step]:
    if order.section:
        order = changed(order, section=known_as(order.section.lower(), (*shelf.others, shelf.title)))
    if order.section and order.section.lower() == shelf.title and "" in shelf.others:
        rows = shelf.others[""]
        return [rows[n] for n in order.rows or sorted(rows) if n in rows]
    if order.section and order.section.lower() in shelf.others:
        shelves = [shelf.others[order.section.lower()]]
    else:
        shelves = [shelf.rows, *reversed(list(shelf.others.values()))]
    elsewhere = order.section.lower() if order.section else ""
    if elsewhere and order.rows and elsewhere.rstrip("s") == (shelf.section or "").lower().rstrip("s") and all(n in shelf.rows for n in order.rows):
        return [shelf.rows[n] for n in order.rows]  # "Rep Round 1 of brim", said in the brim
    if elsewhere and not any(elsewhere.rstrip("s") in (name or "") for name in (*shelf.others, (shelf.section or "").lower())):
        return []  # another piece, which this text does not tell
    if elsewhere and not order.rows and order.last_n is None and order.delta_kind is None:  # "same as head": all of its rows
        named = {s.number: s for s in shelf.done if elsewhere.rstrip("s") in (s.section or "").lower() and s.number is not None}
        return [named[n] for n in sorted(named)]
    if order.delta_kind and not order.rows and order.last_n is None and order.what in ("repeat", "shape", "same-as"):  # "rep dec row": the last one that shapes so
        return [s for s in shelf.done if shapes(s.body, order.delta_kind)][-1:]
    if order.last_n:
        return shelf.done[-order.last_n :]
    if not order.rows:
        return shelf.done[-1:]
    if elsewhere and 1 in order.rows and shelves[0] and 1 not in shelves[0]:
        first = next((s for s in shelf.done if s.number is None and (s.section or "").lower() == elsewhere and s.body), None)
        shelves[0] = {**shelves[0], 1: first} if first is not None else shelves[0]  # told without a number: "FLOWER: Ch 4, join, work 8 sc in ring"
    for rows in shelves:
        if all(n in rows for n in order.rows):
            return [rows[n] for n in order.rows]
    for rows in shelves:
        if any(n in rows for n in order.rows):
            return [rows[n] for n in order.rows if n in rows]
    return []


def _continued(row: Row, order: RowOrder, numbers: list[int | None], ranged: bool, base: Step, before: list[Step]) -> list[Step]:
    """ "Continue as established, inc 8 sts each rnd": the change spread evenly; unsaid: what the rows before did."""
    many = numbers if ranged or numbers != [None] else times_of(order, numbers, ranged)
    if order.until_sts is not None and not ranged:
        return [changed(base, body=row.body, order=order, problem=None, label=label_of(base.kind, base.label, n, False), same=True) for n in many[:1]]
    delta = order.delta.at(0) if order.delta is not None else None
    if delta is None:
        return [changed(base, number=n, body=(), order=order, label=label_of(base.kind, base.label, n, ranged), same=True) for n in many]
    op: Literal["inc", "dec"] = "dec" if delta < 0 else "inc"
    body: tuple[Node, ...] = (Evenly(op, Num((abs(delta),)), kind=order.delta_kind or order.kind),)
    lead = tuple(n for n in row.body if isinstance(n, (Chain, Mark)))
    does = alternates(order, many, shaped_before=bool(before) and shapes(before[0].body, op))
    return [
        changed(base, number=n, body=(*lead, *body) if shapes_here else EVEN, label=label_of(base.kind, base.label, n, ranged), order=None, same=True, goes_on=True)
        for n, shapes_here in zip(many, does, strict=True)
    ]
