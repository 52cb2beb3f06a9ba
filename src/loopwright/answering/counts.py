"""A count that is off: "she has 57 after Rnd 7 in child"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from loopwright.answering.answer import Answer, Cause
from loopwright.answering.phrases import cause, in_words, say, times
from loopwright.model.fabric import ROLES, Fabric, FabricRow
from loopwright.model.report import Report, RowReport
from loopwright.terms import dialect

_COUNTS, _STANDS, _TURNING = (ROLES.index(r) for r in ("counts", "stands", "turning"))
MOST_MENDED = 2  # stitches that do not show when they are evened out in the next row; common practice, no source
MOST_CAUSES = 4


@dataclass(frozen=True, slots=True)
class CountAsked:
    """What is asked: the row by its place among the report's rows, the size by its index, how many she has; how many before it, if said."""

    row: int
    size: int
    have: int
    before: int | None = None
    terms: str = "us"


@dataclass(frozen=True, slots=True)
class _Case:
    """The row in question and what stands around it."""

    asked: CountAsked
    report: Report
    row: RowReport
    want: int
    above: RowReport | None
    below: RowReport | None
    woven: FabricRow | None
    fabric: Fabric | None

    @property
    def off(self) -> int:
        return self.asked.have - self.want

    @property
    def size_name(self) -> str:
        return self.report.sizes[self.asked.size] if self.report.sizes else "one size"

    @property
    def round(self) -> bool:
        return self.joined or self.row.label.lower().startswith("rnd")

    @property
    def joined(self) -> bool:
        """Whether the round is joined; one that goes on "as established" is, where those before it are."""
        if self.woven is None or self.fabric is None or self.woven.turned:
            return False
        section = [r for r in self.fabric.rows if r.section == self.woven.section and r.start <= self.woven.start]
        return any(r.joined for r in section[-12:])

    @property
    def word(self) -> str:
        return "round" if self.round else "row"

    @property
    def stitch(self) -> str:
        kinds = [k for k, n in self.row.made.items() if k not in ("ch", "ch-sp", "group", "repeat") and n[self.asked.size]]
        return dialect(self.asked.terms).term(kinds[0]).short if kinds else "st"

    def count(self, row: RowReport | None) -> int | None:
        return None if row is None else row.counts[self.asked.size]


def count_is_off(report: Report, asked: CountAsked) -> Answer:
    """What most likely happened, how to see it, and how to go on. Raises IndexError for a row or size that there is none of.

    A row that the size does not work, or whose count is not known, raises ValueError.
    """
    row = report.rows[asked.row]
    want = row.counts[asked.size]
    if want is None or asked.have < 0:
        raise ValueError("this size has no count in this row")
    case = _case(report, asked, row, want)
    sts = "st" if want == 1 else "sts"
    facts = [say("count", "fact", label=_label(row), want=want, sts=sts, size=case.size_name)]
    if case.off == 0:
        text = say("count", "right_text", label=_label(row), size=case.size_name, want=want, sts=sts, have=asked.have)
        return Answer(say("count", "right"), tuple(facts), (), text)
    before = case.count(case.above)
    if case.above is not None and before is not None:
        facts.append(say("count", "fact_before", before=_label(case.above), want=before, sts="sts", size=case.size_name))
    causes = _mended(case, list(_causes(case))[:MOST_CAUSES])
    heading = say("count", "off_more" if case.off > 0 else "off_less", n=in_words(abs(case.off)).capitalize())
    return Answer(heading, tuple(facts), tuple(causes), _text(case, causes, sts))


def _case(report: Report, asked: CountAsked, row: RowReport, want: int) -> _Case:
    same = [r for r in report.rows if r.counts[asked.size] is not None]
    at = next(i for i, r in enumerate(same) if r is row)
    above = same[at - 1] if at and same[at - 1].section == row.section else None
    below = same[at + 1] if at + 1 < len(same) and same[at + 1].section == row.section else None
    fabric = report.fabrics[asked.size] if asked.size < len(report.fabrics) else None
    at_woven = woven_row(report, asked.row, asked.size)
    woven = fabric.rows[at_woven] if fabric is not None and at_woven is not None else None
    return _Case(asked, report, row, want, above, below, woven, fabric)


def woven_row(report: Report, row: int, size: int) -> int | None:
    """Index of the fabric's row that a row of the report became in a size; None where there is none.

    A written row may stand for several, and a ring of chains before a round is a row of the fabric too: the count tells them apart.
    """
    fabric = report.fabrics[size] if size < len(report.fabrics) else None
    asked = report.rows[row]
    if fabric is None or asked.counts[size] is None:
        return None
    same = [r for r in report.rows if r.item == asked.item and r.counts[size] is not None]
    nth = next(i for i, r in enumerate(same) if r is asked)
    found = [i for i, r in enumerate(fabric.rows) if r.item == asked.item]
    told = (asked.counts[size], asked.with_chains[size] if asked.with_chains else None)
    fits = [i for i in found if sum(fabric.counted(fabric.rows[i]).values()) in told]
    if nth < len(found) and (found[nth] in fits or not fits):
        return found[nth]
    return next((i for i in fits if fabric.rows[i].label == asked.label), fits[0] if fits else None)


def _label(row: RowReport) -> str:
    return row.label or row.section or "this row"


def _causes(case: _Case) -> Iterator[Cause]:
    """The likeliest first: what she said of the row before; another size or row; the customary slips; increases; what is left."""
    off, stitch = case.off, case.stitch
    yield from _from_before(case)
    exact = list(_looks_like(case))
    if abs(off) > MOST_MENDED:
        yield from exact
    if abs(off) == 1:
        yield from _slips(case)
    yield from _shaping(case)
    if abs(off) <= MOST_MENDED:
        yield from exact
    before = case.count(case.above)
    if case.asked.before is None and case.above is not None and before is not None and before + off > 0:
        yield cause("before likely", before=_label(case.above), had=before + off, should=before)
    n = abs(off)
    yield cause(
        "unknown", n=in_words(n), sts=stitch if n == 1 else "stitches", are="is" if n == 1 else "are",
        sort=say("count", "sort_more" if off > 0 else "sort_less"),
    )


def _from_before(case: _Case) -> Iterator[Cause]:
    before = case.count(case.above)
    if case.asked.before is None or case.above is None or before is None or case.asked.before == before:
        return
    yield cause("before told", before=_label(case.above), had=case.asked.before, should=before)


def _looks_like(case: _Case) -> Iterator[Cause]:
    """Counts of this row in another size, or of a row near it in this size."""
    have = case.asked.have
    if case.row.with_chains and case.row.with_chains[case.asked.size] == have:
        yield cause("with chains", want=case.want)
    for i, n in enumerate(case.row.counts):
        if i != case.asked.size and n == have:
            yield cause("other size", have=have, other=case.report.sizes[i])
            break
    for row in (case.below, case.above):
        if row is not None and case.count(row) == have:
            yield cause("other row", have=have, other=_label(row))
            break


def _slips(case: _Case) -> Iterator[Cause]:
    """One more or one fewer at the join of a round, or at the ends of a row."""
    more, joined = case.off > 0, case.joined
    counted = _starts_with(case, _COUNTS)
    chained = counted or _starts_with(case, _TURNING) or _starts_with(case, _STANDS)
    given = {"stitch": case.stitch, "want": case.want}
    if joined:
        yield cause("join over" if more else "join short", **given)
    elif counted:
        yield cause("first over" if more else "last short", **given)
    elif not more:
        yield cause("first short", **given)
    if chained and more and not counted:
        yield cause("chain counted", **given)
    elif counted and not more:
        yield cause("chain not counted", **given)


def _starts_with(case: _Case, role: int) -> bool:
    if case.fabric is None or case.woven is None:
        return False
    first = range(case.woven.start, min(case.woven.start + 4, case.woven.end))
    return any(case.fabric.role[i] == role for i in first)


def _shaping(case: _Case) -> Iterator[Cause]:
    """An increase or a decrease more or fewer, where the row has any."""
    gains = _increases(case)
    n = abs(case.off)
    if gains > 0 and n <= gains:
        key = "increase over" if case.off > 0 else "increase short"
        made = gains + case.off
    elif gains < 0 and n <= -gains:
        key = "decrease over" if case.off > 0 else "decrease short"
        made = -gains - case.off
    else:
        return
    yield cause(key, n_words=in_words(n).capitalize(), s="" if n == 1 else "s", made=made, increases=abs(gains), row=f"{case.word}")


def _increases(case: _Case) -> int:
    """How many stitches the row gains; below nought what it loses; 0 where the row above it is not known."""
    before = case.count(case.above)
    return 0 if before is None else case.want - before


def _mended(case: _Case, causes: Sequence[Cause]) -> list[Cause]:
    """The same with the way on that needs no pulling back, on the first cause that is in the fabric, where few stitches are off."""
    n, below, then = abs(case.off), case.below, case.count(case.below)
    if n > MOST_MENDED or below is None or then is None:
        return list(causes)
    gain = then - case.want
    key = "increase" if gain >= n else "even"
    if case.off < 0:
        key += "_short"
    on = say(
        "mend_on", key, next=_label(below), stitch=case.stitch, n_words=in_words(n), s="" if n == 1 else "s", es="" if n == 1 else "es",
        n_times=times(n), then=then,
    )
    at = next((i for i, c in enumerate(causes) if c.mark in ("join", "first", "last", "increase", "decrease", "unknown")), None)
    return [Cause(c.title, c.see, f"{c.mend} {on}" if i == at else c.mend, c.mark) for i, c in enumerate(causes)]


def _text(case: _Case, causes: Sequence[Cause], sts: str) -> str:
    n = abs(case.off)
    said = [say(
        "count", "thanks", label=_label(case.row), size=case.size_name, want=case.want, sts=sts, are="is" if n == 1 else "are",
        n=in_words(n), sort=say("count", "sort_more" if case.off > 0 else "sort_less"),
    )]
    if causes:
        first = causes[0]
        said.append(say("count", "most_often", cause=first.title, see=_small(first.see), mend=first.mend))
    if len(causes) > 1:
        said.append(say("count", "or_else", cause=causes[1].title, see=_small(causes[1].see)))
    said.append(say("count", "marker", row=case.word) if case.round else say("count", "marker_rows"))
    return "\n\n".join(said)


def _small(sentence: str) -> str:
    """A sentence that goes on after a colon."""
    return sentence[:1].lower() + sentence[1:]
