"""Texts for the shop page and under the film: what is made, in which sizes, of what; only what was measured, or what the designer says."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from typing import Any

from loopwright.model.cautions import CautionDue
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension, Measures, YarnNeed
from loopwright.model.tree import Document, HeadLine, Prose, Section
from loopwright.publishing.danger import speaks_of_danger
from loopwright.publishing.skills import skills, ways
from loopwright.terms import dialect
from loopwright.trade.cautions import TOLD
from loopwright.wording.as_written import translate
from loopwright.wording.heading import heading_end
from loopwright.wording.write import voice_for

SHORT, MEDIUM = 160, 500  # characters: a line in a list of results, and a paragraph above the fold
MM_PER_INCH, YARDS_PER_METRE = 25.4, 1 / 0.9144  # international yard and inch, exact since 1959
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[^\W\d_a-z])")
_MEASURES = 3  # of one size in the table


@dataclass(frozen=True, slots=True)
class ListingFacts:
    """What a listing is made of. `fabrics` and `measures`: one per size. `version`: as in "1.3 (2026-11-20)".

    `files`: what is handed out, name and what it is. `filmed`: the size of the film; `chapters`: (time, title), made of the sections where
    there are none. `pattern_link`, `corrections_link`: addresses, "" for none.
    """

    document: Document
    measures: tuple[Measures, ...]
    fabrics: tuple[Fabric | None, ...] = ()
    cautions: tuple[CautionDue, ...] = ()
    version: str = ""
    files: tuple[tuple[str, str], ...] = ()
    filmed: str = ""
    chapters: tuple[tuple[str, str], ...] = ()
    pattern_link: str = ""
    corrections_link: str = ""


@dataclass(frozen=True, slots=True)
class ListingPart:
    """One part: its key in `listing.toml`, its heading, its text; lines are apart."""

    key: str
    heading: str
    text: str


@dataclass(frozen=True, slots=True)
class Listing:
    """The texts. `short` has at most SHORT characters, `medium` at most MEDIUM; `full` has every part; `film` goes under the film."""

    title: str
    short: str
    medium: str
    full: str
    film: str
    parts: tuple[ListingPart, ...] = field(default=())

    def part(self, key: str) -> str:
        """The text of a part, "" where the design has nothing to say in it."""
        return next((p.text for p in self.parts if p.key == key), "")


def listing(facts: ListingFacts, terms: str | None = None) -> Listing:
    """All texts in US or UK terms, the design's own unless asked for. Raises ValueError for terms that there are none of."""
    kit = _Kit(facts, terms or facts.document.terms)
    parts = tuple(ListingPart(key, phrases()["parts"][key], text) for key, text in kit.texts() if text)
    about = kit.about()
    lead = [about, kit.in_short("sizes"), kit.in_short("yarn"), kit.in_short("gauge"), phrases()["terms"][kit.terms]]
    full = "\n\n".join(p.text if p.key == "about" else f"{p.heading}\n{p.text}" for p in parts)
    title = facts.document.title or phrases()["about"]["untitled"]
    return Listing(title, bounded(about, SHORT), bounded(" ".join(x for x in lead if x), MEDIUM), f"{title}\n\n{full}\n", kit.film(), parts)


@cache
def phrases() -> dict[str, Any]:
    """Tables of phrases by part."""
    return tomllib.loads(files("loopwright.publishing").joinpath("listing.toml").read_text(encoding="utf-8"))


def bounded(text: str, most: int) -> str:
    """As many whole sentences as fit into so many characters; where not one does, whole words and "…"."""
    text = " ".join(text.split())
    if len(text) <= most:
        return text
    kept = ""
    for sentence in _SENTENCE.split(text):
        if len(kept) + len(sentence) + bool(kept) > most:
            break
        kept = f"{kept} {sentence}".strip()
    if kept:
        return kept
    cut = text[: most - 1]
    return f"{cut.rpartition(' ')[0].rstrip(' ,;:(–-') or cut}…"


class _Kit:
    """The parts of one listing."""

    def __init__(self, facts: ListingFacts, terms: str) -> None:
        self.facts, self.terms = facts, terms
        self.document = facts.document
        self.voice = voice_for(facts.document, terms)
        self.names = facts.document.sizes or ("one size",)
        self.fabric = next((f for f in facts.fabrics if f is not None), None)

    def texts(self) -> list[tuple[str, str]]:
        """Key and text of every part, in the order of the page."""
        return [
            ("about", self.about()), ("sizes", self.sizes()), ("skills", self.skills()), ("materials", self.materials()),
            ("yarn", self.yarn()), ("gauge", self.heads("gauge", "tension")), ("terms", phrases()["terms"][self.terms]),
            ("included", self.included()), ("cautions", self.cautions()), ("version", self.facts.version),
        ]

    def heads(self, *names: str) -> str:
        """Lines of the heading, in these terms, blanks filled."""
        found = (i.value for i in self.document.items if isinstance(i, HeadLine) and i.name in names)
        return "\n".join(translate(self.voice, v).strip() for v in found)

    def about(self) -> str:
        """Her own words: the line Description, else what stands under the title, else the facts."""
        own = self.heads("description")
        if not own:
            head = self.document.items[: heading_end(self.document)]
            stop = next((n for n, i in enumerate(head) if not isinstance(i, Prose)), len(head))
            said = [i.text.strip() for i in head[:stop] if isinstance(i, Prose) and i.text.strip() != (self.document.title or "")]
            own = translate(self.voice, " ".join(s for s in said if s.endswith((".", "!", "?"))))
        return " ".join(own.split()) or self.from_facts()

    def from_facts(self) -> str:
        """Title, sizes and how it is worked."""
        told = phrases()["about"]
        lead = told["titled"].format(title=self.document.title) if self.document.title else told["untitled"]
        how = told["worked"].format(how=self.how()) if self.how() else ""
        key = "sizes" if len(self.names) > 1 else "one_size" if self.names[0] == "one size" else "one_named_size"
        return str(told[key].format(lead=lead, n=len(self.names), first=self.names[0], last=self.names[-1], how=how))

    def how(self) -> str:
        """As in "in joined rounds"; "" where nothing was worked."""
        if self.fabric is None:
            return ""
        joined, turned, rounds = ways(self.fabric, self.document)
        told = phrases()["about"]
        if rounds:
            return str(told["how_both" if turned else "how_rounds" if joined else "how_spiral"])
        return str(told["how_rows" if turned else "how_one_way"])

    # --- sizes and yarn --------------------------------------------------------------------------------------------

    def sizes(self) -> str:
        """A line per size: what it measures when finished."""
        told = phrases()["sizes"]
        lines = []
        keys = self.keys()
        for name, m in zip(self.names, self.facts.measures, strict=False):
            shown = told["one_size"] if name == "one size" else name
            measures = ", ".join(_length(k, d) for k in keys if (d := _find(m, k)) is not None)
            lines.append(told["line"].format(size=shown, measures=measures) if measures else told["unmeasured"].format(size=shown))
        return "\n".join([*lines, told["flat"]] if keys else lines)

    def keys(self) -> list[tuple[str | None, str]]:
        """The measurements to tell: of the whole where it has any, else of the sections; first those in which sizes differ."""
        found = [(d.section, d.name) for m in self.facts.measures for d in m.dimensions if not d.worn and not d.relaxed and d.value_mm > 0]
        ordered = list(dict.fromkeys(found))
        whole = [k for k in ordered if k[0] is None]
        return (whole or sorted(ordered, key=lambda k: (self._alike(k), -found.count(k))))[:_MEASURES]

    def _alike(self, key: tuple[str | None, str]) -> bool:
        """Whether a measurement tells sizes apart in no size."""
        return len({round(d.value_mm) for m in self.facts.measures if (d := _find(m, key)) is not None}) == 1 < len(self.names)

    def yarn(self) -> str:
        """A line per size: metres and yards, with the range that hands leave."""
        told = phrases()["yarn"]
        lines = []
        for name, m in zip(self.names, self.facts.measures, strict=False):
            if m.yarn:
                needs = told["between"].join(_need(y) for y in m.yarn)
                lines.append(needs if len(self.names) == 1 else told["line"].format(size=name, needs=needs))
        return "\n".join([*lines, told["weak"]]) if lines else ""

    def in_short(self, key: str) -> str:
        """One sentence of a part, for the paragraph."""
        head = phrases()["parts"][key]
        if key == "sizes":
            named = self.names if len(self.names) < 4 else (f"{self.names[0]} to {self.names[-1]}",)
            return "" if self.names == ("one size",) else f"{head}: {', '.join(named)}."
        if key == "gauge":
            first = self.heads("gauge", "tension").split("\n")[0].rstrip(".")
            return f"{head}: {first}." if first else ""
        lengths = [(sum(y.low_m for y in m.yarn), sum(y.high_m for y in m.yarn)) for m in self.facts.measures if m.yarn]
        if not lengths:
            return ""
        need = YarnNeed("", 0.0, min(low for low, _ in lengths), max(high for _, high in lengths))
        return f"{head}: {_need(need)}."

    # --- the rest --------------------------------------------------------------------------------------------------

    def skills(self) -> str:
        """Stitches and techniques, one a line."""
        return "" if self.fabric is None else "\n".join(skills(self.document, self.fabric, dialect(self.terms), phrases()["skills"]))

    def materials(self) -> str:
        """Her own lines of what is needed."""
        told = phrases()["materials"]
        found = [i for i in self.document.items if isinstance(i, HeadLine) and i.name in told["names"]]
        ordered = sorted(found, key=lambda i: told["names"].index(i.name))
        return "\n".join(told["line"].format(name=i.name.capitalize(), value=translate(self.voice, i.value).strip()) for i in ordered)

    def included(self) -> str:
        """The files that are handed out."""
        told = phrases()["included"]
        return "\n".join(told["file" if what else "plain"].format(name=name, what=what) for name, what in self.facts.files)

    def cautions(self) -> str:
        """Her own cautions, then those that are due and that she has not told; where local rules are to be asked, last."""
        heads = [i for i in self.document.items if isinstance(i, HeadLine)]
        told = [i for i in heads if i.name in TOLD or i.name in ("note", "notes") and speaks_of_danger(i.value)]
        own = [translate(self.voice, i.value).strip() for i in told]
        due = [c for c in self.facts.cautions if not c.hidden]
        said = [*own, *(c.text for c in due if c.text not in " ".join(own))]
        refers = [d for d in dict.fromkeys(c.defer for c in due if c.defer) if d not in " ".join(own)]
        return "\n".join([*said, *refers])

    def film(self) -> str:
        """The block under a film: terms, materials, size filmed, gauge, sizes, links, chapters."""
        told, facts = phrases()["film"], self.facts
        yarn = self.in_short("yarn").rstrip(".")
        lines = [
            facts.document.title or "", told["terms"].format(terms=told[f"terms_{self.terms}"]), *self.materials().split("\n"), yarn,
            told["filmed"].format(size=facts.filmed) if facts.filmed else "",
            *(told["gauge"].format(gauge=g) for g in self.heads("gauge", "tension").split("\n") if g),
            told["others"].format(sizes=", ".join(self.names)) if len(self.names) > 1 else "",
            told["written"].format(link=facts.pattern_link) if facts.pattern_link else "",
            told["corrections"].format(link=facts.corrections_link) if facts.corrections_link else "",
        ]
        chapters = [told["chapter"].format(at=at, title=title) for at, title in facts.chapters or self.sections()]
        return "\n".join([*(x for x in lines if x), "", told["chapters"], *chapters]) + "\n"

    def sections(self) -> list[tuple[str, str]]:
        """A chapter for each section, its time still to be put in; the first must begin at nought."""
        told = phrases()["film"]
        after = self.document.items[heading_end(self.document) :]
        titles = [translate(self.voice, i.title).strip() for i in after if isinstance(i, Section) and i.title.strip()]
        return [(told["start"], told["beginning"]), *((told["later"], t[:50]) for t in titles)]


def _find(m: Measures, key: tuple[str | None, str]) -> Dimension | None:
    return next((d for d in m.dimensions if (d.section, d.name) == key and not d.worn and not d.relaxed), None)


def _length(key: tuple[str | None, str], d: Dimension) -> str:
    told = phrases()["sizes"]
    name = told["whole" if key[0] is None else "of_section"].format(section=key[0], name=key[1])
    return str(told["measure"].format(name=name, cm=f"{d.value_mm / 10:.1f}".removesuffix(".0"), inches=_inches(d.value_mm)))


def _inches(mm: float) -> str:
    """Inches to the nearest quarter, as the trade writes them."""
    quarters = round(mm / MM_PER_INCH * 4)
    whole, rest = divmod(quarters, 4)
    part = ("", "1/4", "1/2", "3/4")[rest]
    return " ".join(p for p in (str(whole) if whole or not part else "", part) if p)


def _need(y: YarnNeed) -> str:
    told = phrases()["yarn"]
    yards = [f"{v * YARDS_PER_METRE:.0f}" for v in (y.low_m, y.high_m)]
    colour = told["of_colour"].format(colour=y.colour) if y.colour else ""
    balls = "" if not y.balls else told["ball"] if y.balls == 1 else told["balls"].format(n=y.balls)
    return f"{told['one'].format(colour=colour, low=f'{y.low_m:.0f}', high=f'{y.high_m:.0f}', low_yd=yards[0], high_yd=yards[1])}{balls}"

