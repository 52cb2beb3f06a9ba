"""Sections of rows, as steps to be ticked off, out of the words and the report."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from loopwright.model.report import RowReport
from loopwright.model.tree import Row, Section
from loopwright.publishing.document.blocks import Instructions, Remark, Step, StepOfSize
from loopwright.publishing.document.pattern import Pattern
from loopwright.publishing.document.running import running
from loopwright.publishing.document.words import Words
from loopwright.wording import ProseWords, RowWords, SectionWords

_LABEL_END = ": "


def sections(pattern: Pattern, words: Words) -> tuple[Instructions, ...]:
    """The instructions section by section, rows before any heading under an empty title; no photographs yet."""
    rows, each = _last_rows(pattern.report.rows), _each(pattern.report.rows)
    of_sizes = [{s.item: s for s in said} for said in words.by_size]
    sizes = len(words.indexes)
    found: list[Instructions] = []
    names: set[str] = set()
    for said in words.shown:
        if isinstance(said, SectionWords):
            own = _own(pattern, said)
            found.append(Instructions(_unique(own or said.title, names), said.title, (), film=_film(pattern, own), own=own))
            continue
        if not found:
            found.append(Instructions(_unique("instructions", names), "", ()))
        step: Step | Remark
        if isinstance(said, ProseWords):
            alone = tuple(s.text if isinstance(s := of.get(said.item), ProseWords) else "" for of in of_sizes)
            step = Remark(running(said.text, sizes), alone)
        else:
            step = _step(pattern, said, found[-1].ident, rows.get(said.item), of_sizes, words.indexes, names)
            step = replace(step, each=tuple(tuple(each.get((said.item, i), ())) for i in words.indexes),
                           film=pattern.film_rows.get(step.line, ""))
        found[-1] = replace(found[-1], steps=(*found[-1].steps, step))
    return tuple(s for s in found if s.steps or s.title)


def _last_rows(rows: Sequence[RowReport]) -> dict[int, RowReport]:
    """The last worked row of every item, whose counts are those at its end; a size that stops earlier keeps its own last count."""
    found: dict[int, RowReport] = {}
    for row in rows:
        before = found.get(row.item)
        counts = row.counts if before is None else tuple(b if n is None else n for n, b in zip(row.counts, before.counts, strict=True))
        found[row.item] = replace(row, counts=counts)
    return found


def _each(rows: Sequence[RowReport]) -> dict[tuple[int, int], list[int | None]]:
    """Stitches at the end of each row that an item stands for, by item and size."""
    found: dict[tuple[int, int], list[int | None]] = {}
    for row in rows:
        for i, n in enumerate(row.counts):
            if n is not None:
                found.setdefault((row.item, i), []).append(_count(row, i))
    return found


def _step(
    pattern: Pattern, said: RowWords, section: str, row: RowReport | None, of_sizes: Sequence[Mapping[int, object]], indexes: Sequence[int],
    names: set[str],
) -> Step:
    sizes = len(indexes)
    label = said.label.removesuffix(_LABEL_END).rstrip(": ")
    alone = tuple(_alone(of.get(said.item)) for of in of_sizes)
    counts = tuple(_count(row, i) if row is not None and row.read else None for i in indexes)
    counts = tuple(None if a is None else n for a, n in zip(alone, counts, strict=True))
    item = pattern.document.items[said.item]
    first = re.split(r"[ (]", re.sub(r"^(?:Rnd|Row|Round)s? ", "", label))[0] if label else ""
    ident = _unique(f"{section} {first or said.lead or 'row'}", names)
    return Step(
        ident, said.lead, running(label, sizes), running(said.words, sizes), running(_bare(said.count), sizes),
        counts, alone, pattern.line_of(item.span.start) if isinstance(item, Row) else 0,
    )


def _count(row: RowReport, size: int) -> int | None:
    """The stitches of a row; with the chains in it where the pattern's own count has them."""
    if row.with_chains is not None and row.printed is not None and row.printed[size] == row.with_chains[size]:
        return row.with_chains[size]
    return row.counts[size] if size < len(row.counts) else None


def _bare(count: str) -> str:
    """A count without its outer bracket: "72 (72, 80) hdc" of " (72 (72, 80) hdc)"."""
    said = count.strip()
    return said[1:-1] if said.startswith("(") and said.endswith(")") else said


def _alone(said: object) -> StepOfSize | None:
    if not isinstance(said, RowWords):
        return None
    return StepOfSize(said.label.removesuffix(_LABEL_END).rstrip(": "), said.words, _bare(said.count), said.lead)


def _own(pattern: Pattern, said: SectionWords) -> str:
    """A section's name as the design has it."""
    item = pattern.document.items[said.item] if 0 <= said.item < len(pattern.document.items) else None
    return item.title if isinstance(item, Section) else said.title


def _film(pattern: Pattern, title: str) -> str:
    name = re.sub(r"\s*\(.*\)\s*$", "", title).strip().lower()
    return pattern.film.get(name, "")


def slug(words: str) -> str:
    """Small letters, figures and hyphens, a letter first: for links and names."""
    said = re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-")
    return said if said[:1].isalpha() else f"r-{said}".rstrip("-")


def _unique(words: str, taken: set[str]) -> str:
    base = slug(words)
    name, n = base, 2
    while name in taken:
        name, n = f"{base}-{n}", n + 1
    taken.add(name)
    return name
