"""Grade one design: read it, choose its numbers, work it in every size, and lay the result out as the command's JSON and tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from loopwright.findings import Finding, in_order
from loopwright.findings.render_json import as_json as findings_json
from loopwright.grading import Graded, Number, grade, parse_gauge, written
from loopwright.grading.gauge import stitch_sizes
from loopwright.model.report import RowReport
from loopwright.model.tree import Document, HeadLine, Section
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source
from loopwright.wording import write
from loopwright.working import work
from loopwright.workshop import cautions
from loopwright.workshop.languages import Told, in_language
from loopwright.workshop.languages import as_json as language_json
from loopwright.workshop.original import cautions_in_original, findings_in_original, line_of

WIDE = 112


@record
class Sized:
    """A graded design with its texts: all sizes in one, and each size alone."""

    source: Source
    graded: Graded
    text: str
    texts: tuple[str, ...]
    findings: tuple[Finding, ...]
    language: Told | None = None


def grade_design(
    source: Source, sizes: Sequence[str] | None = None, gauge: str | None = None, terms: str | None = None, *, own_words: bool = False,
    language: str = "en", translations: Mapping[str, str] | None = None,
) -> Sized:
    """Grades a design to its sizes, or to some of them, at its own gauge or another.

    `terms`: which terms the texts are to be in; its own when None. `own_words`: the design's own text with the numbers put in,
    and nothing else changed. `language`: a code ("de"); English unless told; `translations`: of the designer's own words
    into it, see wording/translations.py. Raises GaugeError for a `gauge` that cannot be used,
    ValueError for a language that there is none of.
    """
    other = parse_gauge(gauge) if gauge is not None else None
    document = read(source)
    graded = grade(document, work, other, sizes)
    if graded.report is not None:
        graded = replace(graded, report=cautions.with_cautions(graded.document, graded.report, stitch_sizes(graded.document, other).sizes))
    report = graded.report
    found = in_order((*graded.findings, *(report.findings if report is not None else ())))
    given = graded.gauge.text if gauge is not None and graded.gauge is not None else None
    told = _with_gauge(graded.document, given) if given else graded.document
    words = [
        written(graded.document, graded.values, i, given) if own_words
        else write(
            told, report, terms=terms or document.terms, size=i, measurements=finished(graded), language=language,
            translations=translations,
        )
        for i in (None, *range(len(graded.sizes)))
    ]
    spoken = in_language(told, report, language, finished(graded), translations) if language != "en" and not own_words else None
    return Sized(source, graded, words[0], tuple(words[1:]), findings_in_original(graded.document, found), spoken)


def _with_gauge(document: Document, gauge: str) -> Document:
    """The document with another gauge in its heading."""
    items = (replace(i, value=gauge) if isinstance(i, HeadLine) and i.name in ("gauge", "tension") else i for i in document.items)
    return replace(document, items=tuple(items))


def finished(graded: Graded) -> dict[str, tuple[float | None, ...]]:
    """What each measured part comes to, in mm per size, by a name for the text; none where the design tells finished sizes itself."""
    if any(isinstance(i, HeadLine) and i.name.startswith("finished") for i in graded.document.items):
        return {}
    names = {n.blank: f"{n.name} {n.way}" for s in graded.sizes for n in s.numbers if n.achieved_mm is not None}
    by_size = [{n.blank: n.achieved_mm for n in s.numbers} for s in graded.sizes]
    return {name: tuple(found.get(blank) for found in by_size) for blank, name in names.items()}


def as_json(sized: Sized) -> dict[str, Any]:
    """The command's JSON."""
    graded = sized.graded
    return {
        "version": 1, "title": graded.document.title, "gauge": graded.gauge.text if graded.gauge else None, "text": sized.text,
        "sizes": [_size(sized, i) for i in range(len(graded.sizes))],
        "findings": findings_json(sized.source, sized.findings),
        "cautions": cautions.as_json(
            sized.source, cautions_in_original(graded.document, (graded.report.cautions if graded.report else None) or ()),
        ),
        **({"language": language_json(sized.language)} if sized.language is not None else {}),
    }


def _size(sized: Sized, index: int) -> dict[str, Any]:
    size, line = sized.graded.sizes[index], line_of(sized.graded.document, sized.source)
    rows = [r for r in (sized.graded.report.rows if sized.graded.report else ()) if r.counts[index] is not None or not r.read]
    return {
        "size": size.size, "blanks": size.blanks,
        "dimensions": [_dimension(n) for n in size.numbers if n.target_mm is not None],
        "links": [{"blank": n.blank, "value": n.value, "reason": n.reason} for n in size.numbers if n.target_mm is None],
        "rows": [_row(line, r, index) for r in rows], "stitches": stitches(sized.graded, index), "text": sized.texts[index],
    }


def _dimension(n: Number) -> dict[str, Any]:
    return {
        "name": n.name, "way": n.way, "blank": n.blank, "value": n.value, "unit": n.unit,
        "target_mm": _mm(n.target_mm), "achieved_mm": _mm(n.achieved_mm), "error_mm": _mm(n.error_mm), "step_mm": _mm(n.step_mm),
        "reason": n.reason, "as_near": n.equal,
        "measurements": [{"name": name, "mm": _mm(b.mm), "source": b.source, "weak": b.weak} for name, b in n.bodies],
        "neighbours": [{"value": m.value, "achieved_mm": _mm(m.achieved_mm)} for m in n.neighbours],
    }


def _mm(value: float | None) -> float | None:
    return None if value is None else round(value, 2) + 0.0


def _row(line: Callable[[int], int], row: RowReport, index: int) -> dict[str, Any]:
    return {
        "section": row.section, "label": row.label, "line": line(row.span.start), "read": row.read,
        "counts": [row.counts[index]], "with_chains": [row.with_chains[index]] if row.with_chains else None, "confirmed": row.confirmed,
        "made": {k: [v[index]] for k, v in row.made.items()}, "printed": [row.printed[index]] if row.printed else None,
        "agrees": row.agrees,
    }


def stitches(graded: Graded, index: int) -> int:
    """Stitches of all rows of one size, pieces made more than once counted so often."""
    copies, total, at = 1, 0, 0
    items = graded.document.items
    for row in graded.report.rows if graded.report else ():
        for item in items[at : row.item + 1]:
            copies = item.copies if isinstance(item, Section) else copies
        at = max(at, row.item + 1)
        total += (row.counts[index] or 0) * copies
    return total


def tables(graded: Graded) -> str:
    """Sizes by blanks: the number, and for what is measured its target, what is reached, and the error, in cm."""
    blocks = [_block(graded, name) for name in (n.blank for n in graded.sizes[0].numbers)] if graded.sizes else []
    first = ["size", "", *(s.size for s in graded.sizes)]
    lead = max(len(x) for x in first)
    sheets: list[list[list[str]]] = [[]]
    for block in blocks:
        if sheets[-1] and lead + sum(2 + len(b[0]) for b in [*sheets[-1], block]) > WIDE:
            sheets.append([])
        sheets[-1].append(block)
    return "\n\n".join("\n".join(_line(name, [b[i] for b in sheet], lead) for i, name in enumerate(first)) for sheet in sheets if sheet)


def sources(graded: Graded) -> str:
    """Where the body measurements come from, one line each; "" where none is used. Weak ones are marked."""
    found: dict[tuple[str, str, bool], list[str]] = {}
    for size in graded.sizes:
        for name, body in dict(b for n in size.numbers for b in n.bodies).items():
            found.setdefault((name, body.source, body.weak), []).append(size.size)
    lines = []
    for (name, source, weak), named in found.items():
        which = f" ({', '.join(named)})" if len(named) < len(graded.sizes) else ""
        lines.append(f"{name}{which}: {source}{' [weak]' if weak else ''}")
    return "\n".join(lines)


def _line(name: str, cells: Sequence[str], lead: int) -> str:
    return "  ".join([f"{name:<{lead}}", *cells]).rstrip()


def _block(graded: Graded, blank: str) -> list[str]:
    """One blank's columns: its name, the headings, a line per size."""
    found = [next((n for n in s.numbers if n.blank == blank), None) for s in graded.sizes]
    measured = any(n is not None and n.target_mm is not None for n in found)
    lines = [f"{'n':>5} {'target':>7} {'made':>7} {'error':>6}" if measured else f"{'n':>5}"]
    for n in found:
        if n is None:
            lines.append(f"{'–':>5}")
        elif n.target_mm is None or n.achieved_mm is None or n.error_mm is None:
            lines.append(f"{n.value:>5}")
        else:
            lines.append(f"{n.value:>5} {n.target_mm / 10:>7.1f} {n.achieved_mm / 10:>7.1f} {round(n.error_mm / 10, 1) + 0.0:>+6.1f}")
    width = max(len(blank), *(len(x) for x in lines))
    return [f"{blank:>{width}}", *(f"{x:>{width}}" for x in lines)]


