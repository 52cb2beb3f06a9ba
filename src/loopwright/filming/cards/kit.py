"""All cards of a film: title, materials, gauge, cautions; one for every row; measures; other sizes; the work at the end of a section."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence

from loopwright.filming.cards.card import SHAPES, Card, Shape, sheet
from loopwright.filming.cards.panel import panel
from loopwright.filming.cards.picture import picture
from loopwright.filming.cards.square import Square, square
from loopwright.filming.facts import FilmFacts
from loopwright.filming.heading import gauge_of, materials_of, sizes_of
from loopwright.filming.phrases import Phrases
from loopwright.filming.rows import FilmRow, FilmSection
from loopwright.filming.shots import MM_PER_INCH, Plan

_MOST_CAUTIONS = 4


def cards(facts: FilmFacts, made: Plan, pictures: Mapping[int, str] | None = None, shapes: Sequence[Shape] = SHAPES) -> tuple[Card, ...]:
    """Cards in the order of the film, each in every shape. `pictures`: drawings of the work by row of the fabric, SVG, clear ground."""
    kit = _Kit(facts, made, pictures or {})
    return tuple(c for shape in shapes for c in kit.all(shape))


class _Kit:
    def __init__(self, facts: FilmFacts, made: Plan, pictures: Mapping[int, str]) -> None:
        self.facts, self.plan, self.pictures = facts, made, pictures
        self.say = Phrases(facts.language)
        self.sizes = sizes_of(facts)
        self.number = 0

    def all(self, shape: Shape) -> Iterator[Card]:
        self.number = 0
        yield from self._opening(shape)
        for i, section in enumerate(self.plan.sections):
            yield from self._goal(i, section, shape)
            for n, row in enumerate(section.rows):
                yield self._row(i, n, section, row, shape)
                if row.at == row.many - 1 and (card := self._sizes(i, n, row, shape)) is not None:
                    yield card
            yield from self._measures(i, section, shape)

    def _card(
        self, kind: str, words: str, shape: Shape, done: tuple[list[str], tuple[float, float, float, float], bool], told: str, *,
        section: int = -1, row: int = -1, label: str = "",
    ) -> Card:
        self.number += 1
        name = f"{self.number:03}-{_slug(words)}"
        ident = f"card-{shape}-{self.number}"
        return Card(name, kind, section, row, shape, told, sheet(shape, ident, (words, told), done[0]), done[1], done[2], label)

    def _opening(self, shape: Shape) -> Iterator[Card]:
        facts, say = self.facts, self.say
        title, sizes = facts.document.title or "", self.sizes
        lines = []
        if len(sizes) > 1:
            lines += [say("filmed_in", size=sizes[facts.size]), say("sizes_from_to", n=len(sizes), first=sizes[0], last=sizes[-1])]
        if facts.language == "en":
            lines.append(say(f"terms_{facts.terms}"))
        if title:
            yield self._card("title", f"title {title}", shape, panel(title, lines, shape, big=True), f"{title}: {', '.join(lines)}")
        materials = [f"{name}: {value}" for name, value in materials_of(facts)]
        if materials:
            yield self._card("materials", say("materials"), shape, panel(say("materials"), materials, shape), "; ".join(materials))
        if gauge := gauge_of(facts):
            yield self._card("gauge", say("gauge"), shape, panel(say("gauge"), gauge, shape), "; ".join(gauge))
        due = [c.text for c in facts.cautions if not c.hidden and (not c.sizes or facts.sizes[facts.size] in c.sizes or len(sizes) > 1)]
        for text in due[:_MOST_CAUTIONS]:
            yield self._card("caution", say("caution"), shape, panel(say("caution"), [text], shape), text)

    def _goal(self, i: int, section: FilmSection, shape: Shape) -> Iterator[Card]:
        """The work at the section's end, drawn, where it can be drawn."""
        last = next((r for r in reversed(section.rows) if r.fabric in self.pictures), None)
        if last is None:
            return
        done = picture(self.pictures[last.fabric], section.title or last.label, shape)
        yield self._card("round", f"goal {section.title}", shape, done, f"{section.title}: {last.label}", section=i)

    def _row(self, i: int, n: int, section: FilmSection, row: FilmRow, shape: Shape) -> Card:
        below = self._others(row)
        figure = "" if row.count is None else str(row.count)
        done = square(Square(row.label, figure, "", row.words, row.nth, row.of, below), shape)
        told = f"{section.title}, {row.label}: {row.words}" + (f"; {row.count}" if figure else "") + (f" ({below[0]})" if below else "")
        return self._card("row", f"{section.title} {row.label}", shape, done, told, section=i, row=n)

    def _others(self, row: FilmRow) -> tuple[str, ...]:
        """What the other sizes have at this row, in few words."""
        if len(self.facts.sizes) == 1 or row.count is None:
            return ()
        known = [n for n in row.others if n is not None]
        if known == [row.count] * len(self.facts.sizes):
            return (self.say("every_size"),)
        return (self.say("other_sizes", low=min(known), high=max(known)),) if len(set(known)) > 1 else ()

    def _sizes(self, i: int, n: int, row: FilmRow, shape: Shape) -> Card | None:
        """The counts of all sizes as a small table, after a row in which they differ."""
        pairs = [(name, str(c)) for name, c in zip(self.sizes, row.others, strict=False) if c is not None]
        if len({c for _, c in pairs}) < 2:
            return None
        done = square(Square(row.label, str(row.count or ""), "", self.say("sizes"), 0, 0, (), tuple(pairs)), shape)
        told = f"{row.label}: {', '.join(f'{a} {b}' for a, b in pairs)}"
        return self._card("sizes", f"{row.label} {self.say('sizes')}", shape, done, told, section=i, row=n)

    def _measures(self, i: int, section: FilmSection, shape: Shape) -> Iterator[Card]:
        say, size = self.say, self.facts.size
        for name, values in section.measures:
            own = values[size]
            if own is None:
                continue
            value, inches = say.number(own / 10), f"{say.number(own / MM_PER_INCH)} {say('inch')}"
            words = f"{section.title} {say.measure(name)}, {inches}"
            pairs = [(n, say.number(v / 10)) for n, v in zip(self.sizes, values, strict=True) if v is not None]
            table = tuple(pairs) if len({v for _, v in pairs}) > 1 else ()
            below = () if table or len(pairs) < 2 else (say("every_size"),)
            done = square(Square(say.measure(name), value, say("cm"), words, 0, 0, below, table), shape)
            told = f"{words}: {value} cm"
            yield self._card("measure", f"{section.title} {say.measure(name)}", shape, done, told, section=i, label=say.measure(name))


def _slug(words: str) -> str:
    plain = unicodedata.normalize("NFKD", words.lower()).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:50] or "card"
