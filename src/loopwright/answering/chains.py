"""Chains: "I chained 57, how many stitches is that?", "does the chain at the beginning count?"."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.answering.answer import Answer
from loopwright.answering.counts import woven_row
from loopwright.answering.phrases import in_words, say
from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow
from loopwright.model.report import Report
from loopwright.terms import dialect

_COUNTS, _STANDS, _TURNING = (ROLES.index(r) for r in ("counts", "stands", "turning"))
_RING = PLACES.index("ring")
MOST_PASSED_OVER = 6  # chains that a row passes over for its turn


def chained(report: Report, row: int, size: int) -> int:
    """How many chains a row is worked into; 0 where it is not worked into a chain. Raises IndexError for a row or size there is not."""
    fabric, woven = _woven(report, row, size)
    if fabric is None or woven is None:
        return 0
    at = next(i for i, r in enumerate(fabric.rows) if r is woven)
    below = fabric.rows[at - 1] if at else None
    if below is None or below.piece != woven.piece or below.start == below.end:
        return 0
    return below.end - below.start if all(fabric.kinds[fabric.kind[i]] == "ch" for i in range(below.start, below.end)) else 0


def turned_by(report: Report, row: int, size: int) -> tuple[int, bool]:
    """With how many chains a row begins, and whether they count as a stitch; 0 where it begins without. Raises IndexError as above."""
    fabric, woven = _woven(report, row, size)
    if fabric is None or woven is None:
        return 0, False
    n, counts = 0, False
    for i in range(woven.start, woven.end):
        if fabric.kinds[fabric.kind[i]] != "ch" or fabric.role[i] not in (_COUNTS, _STANDS, _TURNING):
            break
        n += 1
        counts = counts or fabric.role[i] in (_COUNTS, _STANDS)
    return n, counts


def chain_is(report: Report, row: int, size: int, have: int, terms: str = "us") -> Answer:
    """What so many chains come to in the row that is worked into them. Raises IndexError, ValueError where the row is on no chain."""
    want, worked = chained(report, row, size), report.rows[row]
    count = worked.counts[size]
    if not want or count is None or have < 0:
        raise ValueError("this row is not worked into a chain")
    name, stitch, label = _size(report, size), _stitch(report, row, size, terms), worked.label or worked.section or "the first row"
    over = want - count
    facts = [say("chain", "fact", size=name, want=want, label=label, count=count, stitch=stitch)]
    plain = 0 <= over <= MOST_PASSED_OVER
    if plain and over:
        one = over == 1
        facts.append(say("chain", "over", n=in_words(over).capitalize(), chains="chain" if one else "chains", are="is" if one else "are"))
    if have != want:
        key = "more" if have > want else "less"
        facts.append(say("chain", key, n=in_words(abs(have - want))))
        if plain and have > over:
            facts.append(say("chain", "comes", have=have, made=have - over, stitch=stitch))
        facts.append(say("chain", f"mend_{key}"))
    kinds = [k for k, n in worked.made.items() if k not in ("ch", "ch-sp", "group", "repeat") and n[size]]
    if plain and len(kinds) == 1:
        facts.append(say("chain", "foundation", count=count, stitch=stitch, label=label))
    heading = say("chain", "heading_same" if have == want else "heading", have=have, want=want)
    return Answer(heading, tuple(facts), (), say("chain", "text", facts=" ".join(facts)))


def turning_chain(report: Report, row: int, size: int, terms: str = "us") -> Answer:
    """Whether the chain that a row begins with counts, and what follows. Raises IndexError, ValueError where it begins with none."""
    n, counts = turned_by(report, row, size)
    worked = report.rows[row]
    count = worked.counts[size]
    if not n or count is None:
        raise ValueError("this row begins with no chain")
    told = {
        "n": n, "label": worked.label or worked.section or "the row", "count": count, "stitch": _stitch(report, row, size, terms),
        "with": count + (0 if counts else 1),
    }
    key = "counts" if counts else "not"
    so = () if _in_ring(report, row, size) else (say("turning", f"{key}_so", **told),)
    facts = [say("turning", key, **told), *so, *_others(report, row, size, counts)]
    return Answer(say("turning", f"heading_{key}", n=n), tuple(facts), (), say("turning", "text", facts=" ".join(facts)))


def _in_ring(report: Report, row: int, size: int) -> bool:
    """Whether a row is worked into a ring: there are no stitches below it to begin in."""
    fabric, woven = _woven(report, row, size)
    return fabric is not None and woven is not None and any(fabric.place[i] == _RING for i in range(woven.start, woven.end))


def _others(report: Report, row: int, size: int, counts: bool) -> Iterator[str]:
    """Whether it is so in all rows that begin with a chain, or which are otherwise."""
    found = [(r, turned_by(report, i, size)) for i, r in enumerate(report.rows) if i != row and r.counts[size] is not None]
    with_chain = [(r, c) for r, (n, c) in found if n]
    other = [r.label or r.section or "a row" for r, c in with_chain if c != counts]
    if other:
        yield say("turning", "otherwise", rows=", ".join(dict.fromkeys(other[:6])))
    elif with_chain:
        yield say("turning", "everywhere")


def _woven(report: Report, row: int, size: int) -> tuple[Fabric | None, FabricRow | None]:
    worked = report.rows[row]
    fabric = report.fabrics[size] if size < len(report.fabrics) else None
    at = woven_row(report, row, size) if fabric is not None and worked.counts[size] is not None else None
    return fabric, None if fabric is None or at is None else fabric.rows[at]


def _size(report: Report, size: int) -> str:
    return report.sizes[size] if report.sizes else "one size"


def _stitch(report: Report, row: int, size: int, terms: str) -> str:
    kinds = [k for k, n in report.rows[row].made.items() if k not in ("ch", "ch-sp", "group", "repeat") and n[size]]
    return dialect(terms).term(kinds[0]).short if kinds else "st"
