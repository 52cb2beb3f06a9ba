"""From blocks of speech to the rows of the draft: each worked on the rows before it, with its time and its doubts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from loopwright.listening.about import About, part_named
from loopwright.listening.actions import Act, acts
from loopwright.listening.blocks import Block, blocks
from loopwright.listening.bodies import Reading, Said, readings, said
from loopwright.listening.hearing import Hearing
from loopwright.listening.judge import Judge, Verdict, sentence
from loopwright.listening.repeats import Repeats, cycle, last_row, reference, repeats

_HIGHEST = 2000
_HOOK = 3  # words from "second" to "hook" in "second chain from hook"
_MODEL = 14  # words after a label in which another row is its model


@dataclass
class Drafted:
    """A line of the draft with what goes before it.

    `section`: a heading first, "" for a gap only; times in seconds; doubts as token indexes and what was assumed.
    """

    label: str
    line: str
    at_s: float | None
    until_s: float | None = None
    section: str | None = None
    before: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    fits: list[str] = field(default_factory=list)
    doubts: list[tuple[int, int, str]] = field(default_factory=list)


def drafted(hearing: Hearing, facts: About) -> list[Drafted]:
    """The rows of a lesson in order. Nothing is made up: a block that no words of work stand in gives no row."""
    found = _split_all(hearing, blocks(hearing.line))
    teller = _Teller(hearing, found, facts)
    for i in range(len(found)):
        teller.tell(i)
    rows = teller.rows
    for a, b in pairwise(rows):
        a.until_s = b.at_s
    if rows and hearing.line.tokens:
        rows[-1].until_s = hearing.at_s(len(hearing.line.tokens) - 1) if rows[-1].at_s is not None else None
    return rows


def _split_all(hearing: Hearing, found: Sequence[Block]) -> list[Block]:
    """Blocks cut where rows begin without a label: a turn or join, then a chain and stitches."""
    out: list[Block] = []
    for i, b in enumerate(found):
        after = found[i + 1] if i + 1 < len(found) else None
        switch = after is not None and after.begins and after.first == 2 and not after.fresh
        missing = 1 if switch else after.first - b.last - 1 if after is not None and not after.begins else 400
        told = repeats(hearing.line, b.start, b.end, b.last)
        cuts = _cuts(hearing, b, told.at if told.at >= 0 else b.end)[:missing] if missing > 0 and b.first == b.last else []
        if switch:
            cuts = cuts[-1:] or _cuts(hearing, b, b.end)[-1:]
        ends = [*cuts, b.end]
        out.append(replace(b, end=ends[0]))
        for n, (start, end) in enumerate(zip(cuts, ends[1:], strict=False)):
            kind = after.kind if switch and after else b.kind
            number = 1 if switch else b.last + n + 1
            out.append(Block(kind, number, number, start, start, end, told=False, begins=switch and n == 0))
    return [replace(b, begins=False) if b.begins and b.first == 2 and not b.fresh else b for b in out]


def _cuts(hearing: Hearing, b: Block, limit: int) -> list[int]:
    done, _ = acts(hearing.line, b.start, b.end, "sc", in_rows=b.kind == "Row")
    cuts = []
    made = ended = False
    for i, a in enumerate(done):
        if a.do == "recap":
            break
        if a.do in ("make", "dec", "run") and a.at < limit:
            made = made or not a.weak
        elif a.do in ("turn", "join"):
            ended = ended or made
        elif a.do == "chain" and ended and a.n <= 5 and any(x.do in ("make", "dec", "run") and not x.weak for x in done[i + 1 : i + 6]):
            if a.at <= limit:
                cuts.append(a.at)
            made = ended = False
    return cuts


class _Teller:
    """Writes the rows block by block; knows the section, the stitch in hand, and what was said to hold for all rows."""

    def __init__(self, hearing: Hearing, found: Sequence[Block], facts: About) -> None:
        self.h, self.blocks, self.facts = hearing, found, facts
        self.rows: list[Drafted] = []
        self.lines: list[str] = []
        self.judge = Judge(hearing.terms)
        self.kind: str | None = _main_kind(hearing)
        self.joins = self.turns = False
        self.chains: dict[int, bool] = {}
        self.parts = 0
        self.bodies: dict[int, str] = {}
        self.named: str | None = None

    def tell(self, i: int) -> None:
        """Writes the rows of one block."""
        b = self.blocks[i]
        after = self.blocks[i + 1] if i + 1 < len(self.blocks) else None
        following = after.first if after is not None and not after.begins else None
        done, kind = acts(self.h.line, b.start, b.end, self.kind, in_rows=b.kind == "Row")
        done = _without_foundation(b, done)
        told = repeats(self.h.line, b.start, b.end, b.last)
        stop = b.end if following == b.last + 1 else _own_end(b, done, told)
        done = _hooked(self.h, b, done)
        row = said([a for a in done if a.at < stop], fresh=b.fresh)
        models = reference(self.h.line, b.start, min(b.end, b.start + _MODEL), b.first - 1)
        if not row.steps and not models and not told.same and not row.counts:
            return
        d = Drafted("", "", self.h.at_s(b.at))
        self._section(i, b, d)
        if not self._row(b, row, models, told, d, kind):
            if d.section is not None and b.fresh:
                self.lines = self.lines[: len(self.lines) - len(d.before)]
            return
        self.rows.append(d)
        self.kind = kind or self.kind
        self.joins, self.turns = self.joins or row.joined, self.turns or row.turned
        if b.first == b.last:
            self._further(b, [*row.after, *(a for a in done if a.at >= stop)], told, following)

    def _section(self, i: int, b: Block, d: Drafted) -> None:
        if not b.begins and self.rows:
            return
        start = self.blocks[i - 1].start if i else 0
        tokens = self.h.line.tokens
        first = tokens[start].first if start < len(tokens) else 0
        name = part_named(self.h.said, first if i else max(0, tokens[b.at].first - 60), tokens[min(b.start + 3, len(tokens) - 1)].last + 1)
        self.parts += 1
        more = any(x.begins for x in self.blocks[i + 1 :])
        self.named = name
        thing = self.facts.title.split()[-1] if self.facts.title and self.parts == 1 else f"Part {self.parts}"
        d.section = name.title() if name else thing if more or self.parts > 1 else ""
        self.bodies = {}
        if b.fresh:
            self.lines = []
        self.lines += ["", d.section or "Part"]
        if b.fresh == "ring":
            d.before.append(f"Ch {b.chain}, join with sl st to form a ring.")
        elif b.fresh == "chain":
            d.before.append(f"Ch {b.chain}.")
        self.lines += d.before
        self.joins = self.turns = False

    def _row(self, b: Block, row: Said, models: tuple[int, ...], told: Repeats, d: Drafted, kind: str | None) -> bool:
        """Puts the row into the draft; False where its words do not make one."""
        label = _label(b.kind, b.first, b.last)
        counts = _plausible(row.counts)
        choices = [Reading(c.words.replace(" in ring", " in magic ring") if b.fresh == "magic" else c.words, c.cost) for c in readings(row)]
        verdict = self._same_as(b, label, row, models, told, choices, counts)
        if verdict is None and choices:
            verdict = self.judge.choose(self.lines, label, choices, self._frame(b, row, kind), counts)
        if verdict is None or (verdict.agreed is False and counts and self.lines):
            verdict = self._by_count(b, label, row, counts, kind, verdict)
        if verdict is None:
            return False
        line = _with_count(verdict, counts)
        d.label, d.line = label, line
        self._doubt(b, verdict, counts, d)
        self.bodies[b.last] = line.split(": ", 1)[1]
        self.lines.append(line)
        return True

    def _same_as(
        self, b: Block, label: str, row: Said, models: tuple[int, ...], told: Repeats, choices: list[Reading], counts: Sequence[int],
    ) -> Verdict | None:
        """The row as "Rep Row 2", where that was said and agrees with what was counted."""
        known = tuple(m for m in models if m in self.bodies)
        if not known and told.same and not any(s.do == "make" and not s.weak for s in row.steps) and b.first - 1 in self.bodies:
            known = (b.first - 1,)
        if not known:
            return None
        reading = Reading(f"rep {b.kind}{'s' if len(known) > 1 else ''} {cycle(known)}", 0.0)
        verdict = self.judge.choose(self.lines, label, [reading], ("", ""), counts)
        if verdict is None or (verdict.agreed is False and choices) or verdict.cost >= 1:
            return None if choices else verdict
        return verdict

    def _by_count(
        self, b: Block, label: str, row: Said, counts: Sequence[int], kind: str | None, verdict: Verdict | None,
    ) -> Verdict | None:
        """What was said makes no row that agrees; the count that was said, spread evenly over the row below, where that can be."""
        last, _ = self.judge.last_row(self.lines) if self.bodies else (None, 0)
        below = last.counts[0] if last is not None and last.counts else None
        if below is None or not (row.steps or row.around) or not counts:
            return verdict
        want = counts[0]
        stitch = kind or self.kind or "sc"
        way = "around" if b.kind == "Rnd" else "across"
        if want == below:
            words = f"{stitch} in each st {way}"
        elif want == 2 * below:
            words = f"2 {stitch} in each st {way}"
        elif below < want < 2 * below:
            words = f"{stitch} {way}, inc {want - below} sts evenly"
        elif below / 2 <= want < below:
            words = f"{stitch} {way}, dec {below - want} sts evenly"
        else:
            return verdict
        other = self.judge.choose(self.lines, label, [Reading(words, 1.0)], self._frame(b, row, kind), counts)
        if other is None or (verdict is not None and verdict.cost <= other.cost):
            return verdict
        return replace(other, others=-1)

    def _frame(self, b: Block, row: Said, kind: str | None) -> tuple[str, str]:
        """What stands before and after the words of a row: its start chain, its join or turn."""
        front = ""
        if row.start is not None:
            n = row.start.n
            counted = row.start_counts if row.start_counts is not None else self.chains.get(n)
            if row.start_counts is not None:
                self.chains[n] = row.start_counts
            stitch = next((s.kind for s in row.steps if s.kind and s.do == "make"), kind) or "dc"
            how = "" if counted is None else f" (counts as {stitch})" if counted else " (does not count as a st)" if n > 1 else ""
            front = f"{'sl st to next corner sp, ' if row.moved else ''}ch {n}{how}, "
        if b.kind == "Rnd":
            return front, "; join" if row.joined or self.joins else ""
        return front, ", turn" if row.turned or self.turns else ""

    def _doubt(self, b: Block, verdict: Verdict, counts: Sequence[int], d: Drafted) -> None:
        where = (b.at, b.end)
        if verdict.others < 0:
            d.doubts.append((*where, f"{d.label}: only its count is clear; taken as {verdict.line.split(': ', 1)[1].rstrip('.')}"))
        elif verdict.agreed is False:
            d.doubts.append((*where, f"{d.label}: she counts {counts[0]}, and the words as understood make {verdict.count}"))
        elif verdict.cost >= 1:
            d.doubts.append((*where, f"{d.label}: taken as {verdict.line.split(': ', 1)[1].rstrip('.')}"))
        if verdict.agreed is None and verdict.count is None:
            d.doubts.append((*where, f"{d.label}: what it makes could not be worked"))
        if self.bodies and b.first - 1 not in self.bodies and b.first > 1:
            d.doubts.append((b.at, b.start + 1, f"nothing was heard of the rows before {d.label}"))

    def _further(self, b: Block, rest: Sequence[Act], told: Repeats, following: int | None) -> None:
        """Rows that are not told anew: "and every row from here is the same"."""
        k = b.last
        own = [a for a in rest if a.do in ("make", "dec", "run") and (a.whole or not a.weak)]
        owned = bool(own) and (told.of_at >= 0 or (told.at >= 0 and own[0].at <= told.at))
        last = min(last_row(told, k, following, own=owned), _HIGHEST)
        if last <= k and not (told.measure and told.measure_at >= 0 and following is None):
            return
        at = own[0].at if owned else told.at if told.at >= 0 else b.end - 1
        d = Drafted("", "", self.h.at_s(at))
        if last > k:
            self._up_to(b, d, (k + 1, last), rest if owned else (), at)
        if told.measure:
            self._measured(b, d, told, k, last)
        if d.label:
            self.rows.append(d)

    def _up_to(self, b: Block, d: Drafted, span: tuple[int, int], own: Sequence[Act], at: int) -> None:
        label = _label(b.kind, *span)
        verdict = None
        if own:
            later = said(own)
            verdict = self.judge.choose(self.lines, label, readings(later), self._frame(b, later, self.kind), ())
            verdict = verdict if verdict is not None and verdict.cost < 1 else None
        if verdict is None:
            models = reference(self.h.line, b.start, b.end, b.last)
            known = tuple(m for m in models if m in self.bodies) or (b.last,)
            words = f"rep {b.kind}{'s' if len(known) > 1 else ''} {cycle(known)}"
            verdict = Verdict(f"{label}: {sentence(words)}", None, None, 0.0)
        d.label, d.line = label, verdict.line
        d.doubts.append((at, min(b.end, at + 14), f"{label}: {verdict.line.split(': ', 1)[1].rstrip('.')}"))
        self.lines.append(d.line)
        self.bodies[span[1]] = d.line.split(": ", 1)[1]

    def _fits(self, b: Block, told: Repeats, last: int, k: int) -> bool:
        """Whether the gauge that was said gives the number of rows, the same as was counted where it was."""
        row_mm = _rows_over_mm(self.facts.gauge)
        if row_mm is None or told.measure is None or self.facts.size is None:
            return False
        of_gauge = (self.facts.gauge or "").split()[1]
        if of_gauge not in ("sts", self.kind):
            return False
        rows = round(told.measure[2] / row_mm)
        return rows > k and last in (k, rows) and rows <= _HIGHEST and b.first == b.last

    def _from_centre(self, told: Repeats) -> bool:
        words = self.h.words(told.measure_at, told.measure_at + 24).lower().split()
        return any(w.strip(".,") in ("centre", "center", "middle") for w in words)

    def _measured(self, b: Block, d: Drafted, told: Repeats, k: int, last: int) -> None:
        n, unit, _ = told.measure or ("", "", 0.0)
        length = f"{n} {'in' if unit == 'inch' else unit}"
        what = (self.named or (self.facts.title or "piece").split()[-1]).lower()
        if self._fits(b, told, last, k):
            rows = "rnds" if b.kind == "Rnd" else "rows"
            blank = f"{what} {'rounds' if b.kind == 'Rnd' else 'rows'}"
            centre = " from the centre" if self._from_centre(told) else ""
            d.fits.append(f"{{{blank}}}: {rows} until {what} measures {length}{centre}")
            words = d.line.split(": ", 1)[1] if d.line else f"Rep {b.kind} {k}."
            d.label = f"{b.kind}s {k + 1}-{{{blank}}}"
            d.line = f"{d.label}: {words}"
            return
        if last > k:
            d.notes.append(f"{_label(b.kind, k, last)} are worked until the {what} measures {length}.")
            return
        models = reference(self.h.line, b.start, b.end, k)
        known = tuple(m for m in models if m in self.bodies) or (k,)
        words = f"Rep {b.kind}{'s' if len(known) > 1 else ''} {cycle(known)} until piece measures {length}."
        d.label, d.line = f"{b.kind} {k + 1}", words
        where = told.measure_at, min(b.end, told.measure_at + 12)
        d.doubts.append((*where, f"how many rows that is was not said: worked until it measures {length}"))
        self.lines.append(words)


def _main_kind(hearing: Hearing) -> str | None:
    """The stitch that is named most often in a lesson."""
    names = [t.text for t in hearing.line.tokens if t.text in ("sc", "hdc", "dc", "tr", "htr")]
    return max(sorted(set(names)), key=names.count) if names else None


def _hooked(hearing: Hearing, b: Block, done: list[Act]) -> list[Act]:
    """"Starting in the second chain from the hook, … into each chain": the first stitch goes there."""
    first = next((i for i, a in enumerate(done) if a.do == "make"), -1)
    if b.fresh != "chain" or first < 0 or " each ch" not in done[first].words or any("from hook" in a.words for a in done):
        return done
    tokens = hearing.line.tokens[b.at : done[first].at]
    hook = next((i for i, t in enumerate(tokens) if t.text == "hook" and i > _HOOK), -1)
    kth = tokens[hook - _HOOK].text.removesuffix("th") if hook > 0 else ""
    if not kth.isdecimal():
        return done
    rank = {"2": "2nd", "3": "3rd"}.get(kth, f"{kth}th")
    hooked = replace(done[first], words=f"{done[first].kind} in {rank} ch from hook", whole=False, place="hook")
    return [*done[:first], hooked, *done[first:]]


def _own_end(b: Block, done: Sequence[Act], told: Repeats) -> int:
    """Where what was said of the row itself ends, and further rows are spoken of."""
    for at in (told.of_at, told.at):
        if at >= 0 and any(a.do in ("make", "dec", "run") and not a.weak and a.end < at for a in done):
            return at
    return b.end


def _rows_over_mm(gauge: str | None) -> float | None:
    """Millimetres of one row, out of a gauge as the heading has it: "14 hdc and 11 rnds = 10 cm"."""
    m = re.search(r"(\d+) (?:rnds|rows) = (\d+(?:\.\d+)?) (cm|in)", gauge or "")
    return float(m[2]) * (10.0 if m[3] == "cm" else 25.4) / int(m[1]) if m and int(m[1]) else None


def _without_foundation(b: Block, done: Sequence[Act]) -> list[Act]:
    """The acts without the ring or the chain that the row begins on."""
    out = list(done)
    ring = next((i for i, a in enumerate(out) if a.do == "ring"), -1)
    if ring >= 0:
        out = out[ring + 1 :]
    if b.fresh == "chain" and not ring >= 0:
        at = next((i for i, a in enumerate(out) if a.do == "chain" and a.n == b.chain), -1)
        if at >= 0 and not any(a.do == "make" and not a.weak for a in out[:at]):
            out = out[at + 1 :]
    return [a for a in out if a.do != "magic"]


def _label(kind: str, first: int, last: int) -> str:
    return f"{kind} {first}" if first == last else f"{kind}s {first}-{last}"


def _plausible(counts: Sequence[int]) -> tuple[int, ...]:
    return tuple(c for c in counts if 3 <= c <= _HIGHEST)[:4]


def _with_count(verdict: Verdict, counts: Sequence[int]) -> str:
    """The line with the count that was said, where the row makes it."""
    if verdict.agreed and verdict.count is not None:
        return f"{verdict.line} ({verdict.count if verdict.count in counts else counts[0]})"
    if verdict.agreed is False and counts:
        return f"{verdict.line} ({counts[0]})"
    return verdict.line

