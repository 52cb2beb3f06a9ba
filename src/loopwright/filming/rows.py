"""The rows of the size on camera, one by one, under their sections: called, said and counted as in the written pattern."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from loopwright.filming.facts import FilmFacts
from loopwright.filming.few import few_words, without_marks
from loopwright.filming.pace import Pacer
from loopwright.filming.phrases import Phrases
from loopwright.model.fabric import ROLES, FabricRow
from loopwright.model.measures import Dimension
from loopwright.model.report import RowReport
from loopwright.model.tree import Section
from loopwright.record import record
from loopwright.terms import dialect
from loopwright.terms.languages import LANGUAGES, language
from loopwright.wording import ProseWords, RowWords, SectionWords, instructions, voice_for

_NUMBERED = re.compile(r"^(?P<word>[^\d]*?)\s*(?P<first>\d+)")
_LABEL_END = ": \u00a0"
_LOOK_BACK = 12  # rows that may have passed since the words said "join"
_COPIES = re.compile(r"\s*\(.*\)\s*$")


@record
class FilmRow:
    """One worked row of the size on camera.

    `label`: "Rnd 5", "Rnd 3 of 12" where the pattern gives no number. `words`: few, for a card; `said`: the instruction as spoken, in full
    words. `count`: stitches at its end, None where none is counted; `noun`: what is counted, spoken ("half double crochets").
    `others`: counts of all sizes, None for a size that does not work the row. `nth` of `of`: within its section. `step`: number of the
    instruction in the section, which may stand for several rows: `at` of `many`. `fabric`: index of the fabric's row, -1 for none.
    `times`: how often its repeat is worked, 0 for none; `repeat_s`, `work_s`: seconds that one repeat and the whole row take.
    `stitch_s`: seconds for one of its stitches. `line`: of the design. `end`: "join", "turn" or "". `piece`: number of the fabric's piece.
    """

    label: str
    words: str
    said: str
    count: int | None
    noun: str
    others: tuple[int | None, ...]
    nth: int
    of: int
    step: int
    at: int
    many: int
    fabric: int
    times: int
    work_s: float
    stitch_s: float
    line: int
    end: str
    piece: int = 0
    made: tuple[str, ...] = ()

    @property
    def repeat_s(self) -> float:
        """Seconds for one repeat; of the whole row where it has none."""
        return self.work_s / max(1, self.times)


@record
class FilmSection:
    """A section: its title in the words' language, its own name in the design, rows, remarks after a row (its number, the words), measures.

    `measures`: per measure its name and its value per size, mm, None where not known.
    """

    title: str
    own: str
    rows: tuple[FilmRow, ...]
    remarks: tuple[tuple[int, str], ...]
    measures: tuple[tuple[str, tuple[float | None, ...]], ...] = ()

    @property
    def work_s(self) -> float:
        """Seconds for all of its rows."""
        return sum(r.work_s for r in self.rows)


def sections(facts: FilmFacts, say: Phrases) -> tuple[FilmSection, ...]:
    """The sections of the size on camera, those without rows and remarks left out."""
    voices = [
        voice_for(facts.document, facts.terms, facts.size, full_words=full, language=facts.language) for full in (False, True)
    ]
    short, full = (instructions(v, facts.document, facts.report) for v in voices)
    return _Gathering(facts, say, {s.item: s for s in full if isinstance(s, RowWords)}).all(short)


class _Gathering:
    def __init__(self, facts: FilmFacts, say: Phrases, full: dict[int, RowWords]) -> None:
        self.facts, self.say, self.full = facts, say, full
        self.pacer = Pacer(facts.speeds)
        self.reports = _by_nth(facts.report.rows, facts.size)
        self.called: dict[bool, str] = {}
        self.fabric_rows: dict[int, list[tuple[int, FabricRow]]] = {}
        for i, row in enumerate(facts.fabric.rows if facts.fabric is not None else ()):
            self.fabric_rows.setdefault(row.item, []).append((i, row))

    def all(self, said: Sequence[object]) -> tuple[FilmSection, ...]:
        found: list[tuple[str, str, list[FilmRow], list[tuple[int, str]]]] = []
        self._learn_words([s for s in said if isinstance(s, RowWords)])
        for s in said:
            if isinstance(s, SectionWords):
                found.append((s.title, self._own(s), [], []))
                continue
            if not found:
                found.append(("", "", [], []))
            rows, remarks = found[-1][2], found[-1][3]
            if isinstance(s, ProseWords):
                remarks.append((len(rows), s.text))
            elif isinstance(s, RowWords):
                rows.extend(self._rows(s, 1 + max((r.step for r in rows), default=0)))
        return tuple(self._section(*f) for f in found if f[2] or f[3])

    def _learn_words(self, said: Sequence[RowWords]) -> None:
        """What one round and one row are called where they stand alone."""
        for s in said:
            numbered, worked = _NUMBERED.match(s.label.strip(_LABEL_END)), self.fabric_rows.get(s.item, [])
            if numbered and len(worked) == 1 and numbered["word"]:
                row = worked[0][1]
                self.called.setdefault(self._joined(row) or row.label.lower().startswith("rnd"), numbered["word"])

    def _own(self, said: SectionWords) -> str:
        item = self.facts.document.items[said.item] if 0 <= said.item < len(self.facts.document.items) else None
        return item.title if isinstance(item, Section) else said.title

    def _section(self, title: str, own: str, rows: list[FilmRow], remarks: list[tuple[int, str]]) -> FilmSection:
        numbered = tuple(replace(r, nth=i, of=len(rows)) for i, r in enumerate(rows, 1))
        return FilmSection(title, own, numbered, tuple(remarks), self._measures(own))

    def _measures(self, own: str) -> tuple[tuple[str, tuple[float | None, ...]], ...]:
        """What one lays a tape on first, at most two measures."""
        by_size = [_dimensions(m.dimensions, own) for m in self.facts.measures]
        names = [n for n in ("across", "width", "around", "length", "depth") if n in by_size[self.facts.size]][:2] if by_size else []
        return tuple((n, tuple(d[n].value_mm if n in d else None for d in by_size)) for n in names)

    def _rows(self, said: RowWords, step: int) -> list[FilmRow]:
        worked = self.fabric_rows.get(said.item, [])
        full = self.full.get(said.item, said)
        if not worked:
            return [self._row(said, full, step, 0, 1, None)]
        return [self._row(said, full, step, at, len(worked), w) for at, w in enumerate(worked)]

    def _row(self, said: RowWords, full: RowWords, step: int, at: int, many: int, worked: tuple[int, FabricRow] | None) -> FilmRow:
        facts = self.facts
        row = worked[1] if worked else None
        told = (self.reports.get(said.item) or [None] * many)[at : at + 1]
        report = told[0] if told else None
        made = self._made(row) if row else {}
        again = facts.as_made(row) if row is not None and facts.language == "en" and _says_to_go_on(said.words, many) else None
        times = again[1] if again else self._times(row)
        words = few_words(said.words, times, self.say) if again is None else few_words(again[0], 0, self.say, times)
        item = facts.document.items[said.item]
        seconds = self.pacer.seconds(made)
        count = None if report is None or not report.read else _count(report, facts.size)
        spoken = without_marks(full.lead + full.words, times, self.say)
        if again is not None and (times > 1 or "in each" not in said.words):
            spoken = f"{spoken} {self._aloud(again[0], made)}" + (f" {self.say('that_times', n=times)}" if times > 1 else "")
        return FilmRow(
            self._label(said, step, at, many, row), words, spoken, count, self._noun(made, count),
            tuple(_count(report, i) for i in range(len(facts.sizes))) if report is not None else (), 0, 0, step, at, many,
            worked[0] if worked else -1, times if times > 1 else 0, seconds, seconds / max(1, sum(made.values())),
            facts.line_of(item.span.start), "join" if row and self._joined(row) else "turn" if row and row.turned else "",
            row.piece if row else 0, tuple(sorted(k for k in made if k != "ch")),
        )

    def _label(self, said: RowWords, step: int, at: int, many: int, row: FabricRow | None) -> str:
        label = said.label.strip(_LABEL_END)
        lead = said.lead.strip(_LABEL_END)
        if many == 1 or not label and lead:
            return label or lead or self.say("foundation" if step == 1 else "next_step")
        numbered = _NUMBERED.match(label)
        word = self._word(label, row)
        if numbered:
            return f"{word} {int(numbered['first']) + at}"
        return self.say("row_of", row=word, n=at + 1, of=many)

    def _word(self, label: str, row: FabricRow | None) -> str:
        rounds = (row is not None and (row.label.lower().startswith("rnd") or self._joined(row))) or "rnd" in label.lower()
        if self.facts.language in LANGUAGES:
            if rounds in self.called:
                return self.called[rounds]
            noun = language(self.facts.language).nouns.get("rnd" if rounds else "row")
            return noun.short[:1].upper() + noun.short[1:] if noun else label
        return "Rnd" if rounds else "Row"

    def _joined(self, row: FabricRow) -> bool:
        """Whether a row is a joined round; one that goes on "as established" is, where those before it are."""
        if row.joined or row.turned or self.facts.fabric is None:
            return row.joined
        before = [r for r in self.facts.fabric.rows if r.piece == row.piece and r.start < row.start]
        return bool(before) and any(r.joined for r in before[-_LOOK_BACK:]) and not before[-1].turned

    def _made(self, row: FabricRow) -> dict[str, int]:
        """Everything made in a row by kind, chains and joins too."""
        fabric = self.facts.fabric
        assert fabric is not None  # noqa: S101 - a row comes from it
        assumed = ROLES.index("assumed")
        kinds = Counter(fabric.kind[s] for s in range(row.start, row.end) if fabric.role[s] != assumed)
        return {fabric.kinds[k]: n for k, n in kinds.items()}

    def _times(self, row: FabricRow | None) -> int:
        fabric = self.facts.fabric
        return max((fabric.round[s] for s in range(row.start, row.end)), default=0) if fabric is not None and row is not None else 0

    def _aloud(self, words: str, made: dict[str, int]) -> str:
        """One round of a repeat, told in abbreviations, as it is said."""
        kind = next((k for k in made if k not in ("ch", "sl st")), "")
        term = dialect(self.facts.terms).term(kind)
        long = re.sub(rf"\b(\d+) {re.escape(term.short)}\b", rf"\1 {term.plural}", words).replace(term.short, term.long)
        said = re.sub(r"\bst\b", "stitch", re.sub(r"\bsts\b", "stitches", long)).replace("in next", "in the next")
        return f"{said[:1].upper()}{said[1:]}."

    def _noun(self, made: dict[str, int], count: int | None) -> str:
        """The one kind that a row is made of, in full words; "" where there are several."""
        kinds = [k for k in made if k not in ("ch", "sl st")]
        if len(kinds) != 1 or made[kinds[0]] != count:
            return ""
        voice = voice_for(self.facts.document, self.facts.terms, self.facts.size, full_words=True, language=self.facts.language)
        return self.say.noun(voice, kinds[0])


def _says_to_go_on(words: str, many: int) -> bool:
    """Whether a row's own words do not tell what is worked into which stitch."""
    return many > 1 or "evenly" in words


def _by_nth(rows: Sequence[RowReport], size: int) -> dict[int, list[RowReport | None]]:
    """Rows that a size works, by the item that asked for them."""
    found: dict[int, list[RowReport | None]] = {}
    for row in rows:
        if size < len(row.counts) and row.counts[size] is not None:
            found.setdefault(row.item, []).append(row)
    return found


def _count(row: RowReport | None, size: int) -> int | None:
    """The stitches of a row; with the chains in it where the pattern's own count has them."""
    if row is None or size >= len(row.counts):
        return None
    if row.with_chains is not None and row.printed is not None and row.printed[size] == row.with_chains[size]:
        return row.with_chains[size]
    return row.counts[size]


def _dimensions(all_of: Sequence[Dimension], title: str) -> dict[str, Dimension]:
    found: dict[str, Dimension] = {}
    name = _COPIES.sub("", title).lower()
    for d in all_of:
        if d.section and _COPIES.sub("", d.section).lower() == name and not d.worn and not d.relaxed and d.value_mm > 0:
            found.setdefault(d.name, d)
    return found
