"""Where rows begin: "round three", "the next row", a ring, a chain. Each block holds what was said of one row or of a range."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.listening.forms import form
from loopwright.listening.words import Line
from loopwright.record import record

_NO_START = frozenset({"finished", "until", "asbefore", "goon", "not", "to", "as", "each", "was", "no", "if", "from"})
_LEAD = re.compile(r"(?<= )\d+ (?:st|sc|hdc|dc|tr|htr) in (?:~ |this |that )?$")
_WORK = frozenset({"sc", "hdc", "dc", "tr", "htr", "inc", "dec", "ch", "fp", "bp", "asbefore", "asrow", "fasten", "1"})
_START_SCAN = 45
_NEAR = 10  # words between "one more row" and "so row nine"


@record
class Block:
    """What was said of the rows `first` to `last`. Token indexes: `at` where it begins, `start` behind its label, `end`.

    `kind`: "Row" or "Rnd". `told`: the label was said, not taken from the start. `fresh`: what it begins on ("magic", "ring", "chain"
    or "").
    """

    kind: str
    first: int
    last: int
    at: int
    start: int
    end: int
    told: bool = True
    fresh: str = ""
    chain: int = 0
    section: str | None = None
    begins: bool = False


@record
class _Mark:
    kind: str
    first: int
    last: int
    at: int
    end: int
    sure: bool
    fresh: str = ""
    chain: int = 0
    section: bool = False
    cut: int = -1


def blocks(line: Line) -> tuple[Block, ...]:
    """The blocks of a lesson in order."""
    starts = _starts(line)
    labels = _labels(line)
    marks = _in_order(line, labels, starts)
    out: list[Block] = []
    for i, m in enumerate(marks):
        end = (marks[i + 1].at if marks[i + 1].cut < 0 else marks[i + 1].cut) if i + 1 < len(marks) else len(line.tokens)
        out.append(Block(m.kind, m.first, m.last, m.at, m.end, end, told=m.sure, fresh=m.fresh, chain=m.chain, begins=m.section))
    return tuple(out)


def _labels(line: Line) -> list[_Mark]:
    out: list[_Mark] = []
    for m in form("rows", "label").finditer(line.text):
        at, end = line.index(m.start()), line.index(m.end() - 1) + 1
        kind = "Rnd" if (m["kind"] or m["kind2"]) == "rnd" else "Row"
        if m["kind"]:
            first = int(m["n"])
            last, taken = _range(first, m["more"] or "", line.text[m.end() :][:12])
            if m["more"] and not taken:
                end = line.index(m.start("more") - 1) + 1
        else:
            rank = m["rank"]
            first = last = 1 if rank == "first" else int(rank[:-2]) if rank.endswith("th") else 0
        before = _same_sentence(line, at)
        after = line.tokens[end].text if end < len(line.tokens) else ""
        sure = not (set(before[-1:]) & _NO_START or set(before) & {"goon", "asbefore", "until", "not"} or after == "again")
        same = last > first and bool({"goon", "asrow"} & set(before))
        sure = sure or same
        if m["kind"] and last == first and _many(line, at):
            sure = False
        if after == "was" or (before[-1:] == ["gives"] and after in ("finished", "gives", "again", "was")):
            sure = False
        out.append(_Mark(kind, first, last, at, end, sure))
    return [m for i, m in enumerate(out) if m.first or i + 1 == len(out) or out[i + 1].at - m.end > _NEAR or not out[i + 1].first]


def _many(line: Line, at: int) -> bool:
    """Whether a number before the label counts rows: "six rounds of eighteen"."""
    counted = at > 0 and line.tokens[at - 1].text.isdecimal() and not line.tokens[at - 1].pause
    return counted and at + 1 < len(line.tokens) and line.tokens[at + 1].text == "of"


def _same_sentence(line: Line, at: int) -> list[str]:
    """The two words before, as far as no sentence ends between."""
    out: list[str] = []
    for t in reversed(line.tokens[max(0, at - 2) : at]):
        if t.stop:
            break
        out.insert(0, t.text)
    return out


def _range(first: int, more: str, after: str) -> tuple[int, bool]:
    """The last row of "3 to 6", "6 7 and 8"; the first alone where the numbers do not go on, or count stitches."""
    numbers = [int(n) for n in re.findall(r"\d+", more)]
    if not numbers:
        return first, False
    kinds = r"sc|hdc|dc|tr|htr|dtr|in|st|times"
    stitches = re.match(rf" (?:{kinds}|rnd|row|cm|inch)\b" if " and " in more else rf" (?:{kinds}|ch)\b", after)
    listed = numbers == list(range(first + 1, first + 1 + len(numbers)))
    if re.search(r"\b(?:to|through|until)\b", more) and len(numbers) == 1 and first < numbers[0] <= first + 300:
        return numbers[0], True
    if listed and not stitches and (len(numbers) > 1 or " and " in more):
        return numbers[-1], True
    return first, False


def _starts(line: Line) -> list[_Mark]:
    """Rings and chains that something begins on."""
    out: list[_Mark] = []
    for m in re.finditer(r"(?<= )magic(?= )", line.text):
        lead = _LEAD.search(line.text[max(0, m.start() - 40) : m.start()])
        at = line.index(m.start() - len(lead[0]) if lead else m.start())
        if not out or at - out[-1].at > _START_SCAN or _made_between(line, out[-1].at, at):
            out.append(_Mark("Rnd", 1, 1, at, at, sure=False, fresh="magic"))
    for m in form("rows", "foundation").finditer(line.text):
        n = int(m[1] or m[2])
        at = line.index(m.start())
        tail = line.text[m.end() : m.end() + 330]
        hooked = form("rows", "hooked").search(tail)
        ringed = form("rows", "ringed").match(tail)
        again = form("rows", "foundation").search(tail)
        if ringed and n in range(2, 200):
            out.append(_Mark("Rnd", 1, 1, at, at, sure=False, fresh="ring", chain=n))
        elif hooked and n >= int(hooked["kth"]) and not (again and again.start() < hooked.start() and not _same_start(again, hooked, n)):
            out.append(_Mark("Row", 1, 1, at, at, sure=False, fresh="chain", chain=n))
    out.sort(key=lambda s: s.at)
    return [a for a, b in zip(out, [*out[1:], None], strict=False) if b is None or _apart(line, a, b)]


def _apart(line: Line, a: _Mark, b: _Mark) -> bool:
    """Whether two starts are two, not one said twice."""
    return b.at - a.at > _START_SCAN or a.fresh != b.fresh or _made_between(line, a.at, b.at)


def _same_start(again: re.Match[str], hooked: re.Match[str], n: int) -> bool:
    """Whether a chain said again before the hook is the same one ("I've got 22 chains there") or too short to begin on."""
    other = int(again[1] or again[2])
    return other == n or other < int(hooked["kth"])


def _made_between(line: Line, a: int, b: int) -> bool:
    return any(t.text in ("sc", "hdc", "dc", "tr", "htr", "rnd", "row") for t in line.tokens[a:b])


def _in_order(line: Line, labels: Sequence[_Mark], starts: Sequence[_Mark]) -> list[_Mark]:
    """Labels that begin rows, in the order of their numbers, with the starts that carry no label of their own."""
    out: list[_Mark] = []
    k, fresh, kind = 0, None, ""
    pending: list[_Mark] = [*labels, *starts]
    pending.sort(key=lambda m: (m.at, not m.fresh))
    for m in pending:
        if m.fresh:
            if fresh is not None and not _made_between(line, fresh.at, m.at):
                out = [o for o in out if o is not fresh]
            fresh = replace(m, section=True)
            out.append(fresh)
            k, kind = 0, ""
            continue
        turned = bool(kind) and m.kind != kind and m.first in (1, 2) and m.sure and _acts_soon(line, m)
        taken = replace(m, section=True) if turned else _taken(line, m, k, fresh, out)
        if taken is None:
            continue
        if fresh is not None and taken.first == 1:
            at = fresh.at
            out = [o for o in out if o is not fresh]
            near = not _made_between(line, at, m.at)
            at_end = (m.at, taken.end) if near else (at, at)
            taken = replace(taken, fresh=fresh.fresh, chain=fresh.chain, section=True, cut=at, at=at_end[0], end=at_end[1])
        fresh = None
        k, kind = taken.last, taken.kind
        out.append(taken)
    return out


def _taken(line: Line, m: _Mark, k: int, fresh: _Mark | None, out: list[_Mark]) -> _Mark | None:
    """The mark as a row's beginning, or None where it only speaks of a row."""
    k = 1 if fresh is not None and m.first != 1 else k
    if not m.sure:
        return None
    if m.first == 0:
        return replace(m, first=k + 1, last=k + 1) if k else None
    if m.first == k + 1 or (m.first == 1 and (fresh is not None or not out)):
        return replace(m, section=m.first == 1)
    if m.first == 1 and k > 1 and _acts_soon(line, m):
        return replace(m, section=True)
    if m.first > k + 1 and m.first <= k + 400 and _acts_soon(line, m):
        return m
    return None


def _acts_soon(line: Line, m: _Mark) -> bool:
    return any(t.text in _WORK for t in line.tokens[m.end : m.end + 26])
