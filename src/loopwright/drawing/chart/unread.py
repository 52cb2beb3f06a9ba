"""Rows that could not be read: a torn edge where the chart ends for want of them, and the words that say so."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.chart.drawn import Mark, Point, UnreadRow
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.lettering import plain
from loopwright.drawing.speech import Speech
from loopwright.model.fabric import Fabric
from loopwright.record import record

AWAY, TOOTH, STEP = 14.0, 4.0, 9.0  # from the last row; height and length of a tooth
LONGEST = 60  # letters that are quoted
MOST = 3  # rows that are quoted


@record
class Gaps:
    """The sections of a fabric, in the order of making, and the rows between them that could not be read."""

    fabric: Fabric
    sections: Sequence[Section]
    unread: Sequence[UnreadRow]
    speech: Speech

    def after(self, at: int) -> list[UnreadRow]:
        """The rows that come after a section and before the next."""
        last = self.fabric.rows[self.sections[at].rows[-1]]
        ahead = self.fabric.rows[self.sections[at + 1].rows[0]].item if at + 1 < len(self.sections) else math.inf
        return [u for u in self.unread if last.item < u.item < ahead and u.section == last.section]

    def before(self, at: int) -> list[UnreadRow]:
        """The rows of its own part that a section should stand on."""
        first = self.fabric.rows[self.sections[at].rows[0]]
        below = self.fabric.rows[self.sections[at - 1].rows[-1]].item if at else -1
        return [u for u in self.unread if below < u.item < first.item and u.section == first.section]

    def told(self, at: int) -> list[str]:
        """What is said of them below the chart of a section."""
        return [*_told(self.before(at), self.speech, ends=False), *_told(self.after(at), self.speech, ends=True)]

    def headline(self, at: int) -> str:
        """The word at the torn edge of a section's chart; "" where it is whole."""
        names = [self.speech.row(u.label) if u.label else self.speech.say("a-row") for u in self.after(at)]
        key = "unread-one" if len(names) == 1 else "unread-range"
        return self.speech.say(key, row=names[0], first=names[0], last=names[-1]) if names else ""


def _told(rows: Sequence[UnreadRow], speech: Speech, *, ends: bool) -> list[str]:
    """What is said of rows; `ends`: the chart ends before them, else it begins after them."""
    said = []
    for u in rows[:MOST]:
        name = speech.row(u.label) if u.label else speech.say("a-row")
        said.append(speech.say("row-unread", row=f"{name[:1].upper()}{name[1:]}", words=_short(u)))
    if len(rows) > MOST:
        said.append(speech.say("rows-unread", n=len(rows) - MOST))
    if said:
        said.append(speech.say("drawn-up-to" if ends else "begins-after"))
    return said


def _short(row: UnreadRow) -> str:
    words = plain(row.words)
    words = (words.removeprefix(row.label) if row.label else words).strip(" :.")
    return words if len(words) <= LONGEST else words[: LONGEST - 1].rsplit(" ", 1)[0] + " ..."


def torn_edge(section: Section, marks: Sequence[Mark]) -> list[Point]:
    """A jagged line just beyond the last row: around a disc, else above."""
    points = [p for m in marks for p in (*m.feet, m.top)]
    if section.kind == "disc":
        reach = max(math.hypot(*p) for p in points) + AWAY
        many = 2 * max(12, round(math.pi * reach / STEP))
        ring = [(reach + TOOTH * (k % 2), 2 * math.pi * k / many) for k in range(many + 1)]
        return [(r * math.cos(a), r * math.sin(a)) for r, a in ring]
    last = section.rows[-1]
    xs = [p[0] for m in marks if m.row == last for p in (*m.feet, m.top)] or [p[0] for p in points]
    high = max(p[1] for p in points) + AWAY
    many = max(2, round((max(xs) - min(xs) + 2 * STEP) / STEP))
    left = min(xs) - STEP
    return [(left + STEP * k, high + TOOTH * (k % 2)) for k in range(many + 1)]
