"""The plan: shots section by section, each with what is said, shown, and stands on the picture, its count and its length."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

from loopwright.filming import speech
from loopwright.filming.facts import FilmFacts
from loopwright.filming.heading import gauge_of, materials_of, sizes_of
from loopwright.filming.phrases import Phrases
from loopwright.filming.rows import FilmRow, FilmSection, sections
from loopwright.filming.wrong import wrong_in
from loopwright.record import record

Kind = Literal[
    "title", "materials", "gauge", "goal", "start", "same", "repeat", "end", "count", "wrong", "meet", "swap", "remark", "measure", "done",
]
SLOW_STITCHES, SLOWER, TWICE = 3, 2.5, 2
"""First stitches: so many, so many times slower than her own speed, so often. Slowly and twice: a teacher's advice on filming; the factor
is common practice, no source."""
POINT_S, TAPE_S, TURN_S, LOOK_S, LEAD_S = 0.35, 5.0, 4.0, 4.0, 0.8
"""Seconds to point at a stitch while counting, lay a tape, turn or join, look at a piece, and before the first word (common practice, no
source)."""
LONGEST_COUNT_S = 20.0  # longer rows are counted by their repeats
MM_PER_INCH = 25.4  # exact since 1959
_SPACES = re.compile(r"\s+")


@record
class Shot:
    """One shot. `section`, `row`: numbers in the plan, -1 for none. `say`, `show`, `screen`: words; `count`: of the row, None for none.

    `length_s`: planned, the longer of what is said and what is worked. `label`: what the log calls it.
    """

    number: int
    kind: Kind
    section: int
    row: int
    label: str
    say: str
    show: str
    screen: str
    count: int | None
    length_s: float


@record
class Swap:
    """A piece to have ready: worked to the end of a row of a section; `work_s`: seconds that it takes to make it."""

    section: str
    label: str
    count: int | None
    work_s: float


@record
class Plan:
    """A film's plan for one size."""

    title: str
    size: str
    terms: str
    language: str
    sections: tuple[FilmSection, ...]
    shots: tuple[Shot, ...]
    swaps: tuple[Swap, ...]
    left_handed: bool
    notes: tuple[str, ...]

    @property
    def length_s(self) -> float:
        """Planned length of the whole film."""
        return sum(s.length_s for s in self.shots)


def plan(facts: FilmFacts) -> Plan:
    """The plan of a film. Raises LookupError for a language that there are no words in."""
    say = Phrases(facts.language)
    found = sections(facts, say)
    planner = _Planner(facts, say, found)
    shots = tuple(planner.all())
    notes = [say("way_left" if facts.left_handed else "way_right")]
    return Plan(
        facts.document.title or "", facts.sizes[facts.size], facts.terms, facts.language, found, shots, tuple(planner.swaps),
        facts.left_handed, tuple(notes),
    )


class _Planner:
    def __init__(self, facts: FilmFacts, say: Phrases, found: tuple[FilmSection, ...]) -> None:
        self.facts, self.say, self.sections = facts, say, found
        self.swaps: list[Swap] = []
        self.seen: set[tuple[str, tuple[str, ...]]] = set()
        self.measured: set[tuple[str, int]] = set()
        self.number = 0
        self.one = len(facts.sizes) == 1
        self.sizes = sizes_of(facts)

    def all(self) -> Iterator[Shot]:
        yield from self._opening()
        for i, section in enumerate(self.sections):
            yield from self._section(i, section)
        yield self._shot("done", -1, -1, self.say("say_done"), self.say("show_done"), "", None, LOOK_S)

    def _shot(
        self, kind: Kind, section: int, row: int, say: str, show: str, screen: str, count: int | None, work_s: float,
    ) -> Shot:
        self.number += 1
        words = _SPACES.sub(" ", say).strip()
        label = self.sections[section].rows[row].label if row >= 0 else self.sections[section].title if section >= 0 else kind
        length = LEAD_S + max(speech.seconds(words), work_s)
        return Shot(self.number, kind, section, row, label, words, show, screen, count, round(length, 1))

    def _opening(self) -> Iterator[Shot]:
        facts, say = self.facts, self.say
        title, size = facts.document.title or "", self.sizes[facts.size]
        terms = say(f"say_terms_{facts.terms}") if facts.language == "en" else ""
        lead = say("say_title_one", title=title) if self.one else say("say_title", title=title, size=size)
        screen = title if self.one else f"{title}, {say('filmed_in', size=size)}"
        yield self._shot("title", -1, -1, f"{lead} {terms}", say("show_title"), screen, None, LOOK_S)
        materials = materials_of(facts)
        if materials:
            said = say("say_materials", materials="; ".join(_aloud(n.lower() if facts.language == "en" else n, v) for n, v in materials))
            yield self._shot("materials", -1, -1, said, say("show_materials"), say("materials"), None, LOOK_S)
        gauge = gauge_of(facts)
        if gauge:
            said = say("say_gauge", gauge=gauge[0].rstrip(".").replace("=", say("to")))
            yield self._shot("gauge", -1, -1, said, say("show_gauge"), gauge[0], None, TAPE_S)

    def _section(self, i: int, section: FilmSection) -> Iterator[Shot]:
        say, size = self.say, self.sizes[self.facts.size]
        said = say("say_goal_one", section=section.title) if self.one else say("say_goal", section=section.title, size=size)
        if section.title:
            yield self._shot("goal", i, -1, said, say("show_goal"), section.title, None, LOOK_S)
        warned = False
        remarks = list(section.remarks)
        steps = sorted({r.step for r in section.rows})
        for step in steps:
            rows = [n for n, r in enumerate(section.rows) if r.step == step]
            yield from self._remarks(i, remarks, rows[0])
            for shot in self._step(i, section, rows):
                yield shot
                if shot.kind == "count" and not warned and (wrong := self._wrong(i, section, rows[0])) is not None:
                    warned = True
                    yield wrong
        yield from self._remarks(i, remarks, len(section.rows))
        yield from self._measures(i, section)

    def _remarks(self, i: int, remarks: list[tuple[int, str]], before: int) -> Iterator[Shot]:
        while remarks and remarks[0][0] <= before:
            words = remarks.pop(0)[1]
            yield self._shot("remark", i, -1, self.say("said_remark", words=words), self.say("show_remark"), "", None, LOOK_S)

    def _step(self, i: int, section: FilmSection, rows: list[int]) -> Iterator[Shot]:
        """An instruction: its first row in full or, where nothing of it is new, in short; then where they meet again."""
        first = section.rows[rows[0]]
        key = (_plain(first.words), first.made)
        new = key not in self.seen
        self.seen.add(key)
        yield from self._row(i, first, rows[0], new=new)
        if len(rows) > 1:
            yield from self._meet(i, section, rows)

    def _row(self, i: int, row: FilmRow, n: int, *, new: bool) -> Iterator[Shot]:
        say = self.say
        label, screen = self._spoken(row.label), _screen(row)
        slow = min(SLOW_STITCHES * row.stitch_s * SLOWER * TWICE, max(row.work_s, row.stitch_s))
        if new:
            said = say("say_row", label=label, words=row.said)
            yield self._shot("start", i, n, said, say("show_start", n=SLOW_STITCHES), screen, row.count, slow)
        else:
            said = say("say_row", label=label, words=row.said)
            yield self._shot("same", i, n, said, say("show_same"), screen, row.count, SLOW_STITCHES * row.stitch_s)
        if new and row.times > 1:
            yield self._shot("repeat", i, n, say("say_repeat"), say("show_repeat"), screen, row.count, row.repeat_s)
        if new and row.count is not None:
            key = row.end or ("close" if self._rounds(row) else "end")
            yield self._shot("end", i, n, say(f"say_{key}"), say(f"show_{key}"), screen, row.count, TURN_S)
        if row.count is not None:
            said = say("say_count", count=row.count, noun=self._noun(row))
            long = min(LONGEST_COUNT_S, row.count * POINT_S)
            yield self._shot("count", i, n, said, say("show_count"), f"{row.label}: {row.count}", row.count, long if new else LOOK_S)

    def _rounds(self, row: FilmRow) -> bool:
        return row.label.lower().startswith(("rnd", "rd", "tour", "vuelta", "toer", "varv", "omg", "volta", "carr", "giro"))

    def _meet(self, i: int, section: FilmSection, rows: list[int]) -> Iterator[Shot]:
        say, last = self.say, section.rows[rows[-1]]
        label = self._spoken(last.label)
        self.swaps.append(Swap(section.title, last.label, last.count, self._work_s(i, rows[-1])))
        if last.count is None:
            said = say("say_meet_plain", label=label)
        else:
            said = say("say_meet", label=label, count=last.count, noun=self._noun(last))
        yield self._shot("meet", i, rows[-1], said, say("show_meet", label=last.label), _screen(last), last.count, LOOK_S)
        swapped = say("say_swap", label=label)
        yield self._shot("swap", i, rows[-1], swapped, say("show_count"), f"{last.label}: {last.count or ''}", last.count, LOOK_S)

    def _work_s(self, i: int, n: int) -> float:
        """Seconds for everything of the piece up to a row."""
        piece = self.sections[i].rows[n].piece
        rows = [r for s in self.sections[:i] for r in s.rows] + list(self.sections[i].rows[: n + 1])
        return sum(r.work_s for r in rows if r.piece == piece)

    def _wrong(self, i: int, section: FilmSection, n: int) -> Shot | None:
        """English alone: answers are in it."""
        row = section.rows[n]
        found = wrong_in(self.facts, row, section.own) if self.facts.language == "en" else None
        if found is None:
            return None
        say = self.say
        said = say("wrong_lead", have=found.have, want=found.want, cause=found.cause, see=found.see)
        show = say("show_wrong", have=found.have, want=found.want)
        return self._shot("wrong", i, n, said, show, f"{found.have} – {found.want}", row.count, LOOK_S)

    def _measures(self, i: int, section: FilmSection) -> Iterator[Shot]:
        say, size = self.say, self.facts.size
        for name, values in section.measures:
            own = values[size]
            if own is None or (name, round(own)) in self.measured:
                continue
            self.measured.add((name, round(own)))
            value, inches = say.number(own / 10), f" ({own / MM_PER_INCH:.1f} in)"
            told = [f"{n} {say.number(v / 10)}" for n, v in zip(self.sizes, values, strict=True) if v is not None and v != own]
            show = say("show_measure_mirrored" if self.facts.left_handed else "show_measure", value=value, inches=inches)
            show += f" {say('show_others', others=', '.join(told))}" if told else ""
            said = say("say_measure", measure=say.measure(name), value=value) + (f" {say('say_other_sizes')}" if told else "")
            yield self._shot("measure", i, -1, said, show, f"{say.measure(name)} {value} {say('cm')}{inches}", None, TAPE_S)

    def _noun(self, row: FilmRow) -> str:
        return row.noun or self.say("stitches")

    def _spoken(self, label: str) -> str:
        """A label as it is said: "Round 5"."""
        return re.sub(r"\b([Rr])nd\b", r"\1ound", label) if self.facts.language == "en" else label


def _aloud(name: str, value: str) -> str:
    """A line of materials as it is said: "yarn, worsted, wool, 100 g is 200 m"."""
    return f"{name}, {value.rstrip('.').replace(' = ', ', ')}"


def _screen(row: FilmRow) -> str:
    return f"{row.label}: {row.words}" + (f" ({row.count})" if row.count is not None else "")


def _plain(words: str) -> str:
    """Words without their numbers: "hdc in 3, 2 hdc in next" is nothing new after "hdc in 2, 2 hdc in next"."""
    return re.sub(r"\d+", "#", words)
