"""A design's text with one thing of its sizes changed: a number, a sentence, the gauge, a figure of the chart, a size left out."""

from __future__ import annotations

import re
from typing import Any

from loopwright.grading import GaugeError, Graded, parse_gauge
from loopwright.grading.bodies import table_span
from loopwright.grading.fill import per_size
from loopwright.grading.gauge.written import gauge_end
from loopwright.grading.kept import with_kept
from loopwright.grading.sentence import NotUnderstoodError, parse_fit
from loopwright.model.tree import Document, FitLine, HeadLine, Prose, Row, Section
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.own_chart import ChartError
from loopwright.trade.own_chart_text import laid_out, one_line, with_figure

_HEADS = re.compile(r"[A-Z][A-Za-z ]{1,30}")
_PART = r"(?: ?[½¼¾⅓⅔⅛⅜⅝⅞]| \d{1,2}/\d{1,2}|/\d{1,2})?"
LONGEST = 2000  # characters of a sentence or a line


class CannotChange(Exception):  # noqa: N818 (read as a sentence: "except CannotChange")
    """A change that cannot be made; the message says why and what would do."""


def with_sentence(text: str, blank: str, sentence: str) -> str:
    """The text with another Fit sentence for a blank, which need not be understood. Raises CannotChange where there is no such blank."""
    said = " ".join(sentence.split())
    if not said or len(said) > LONGEST:
        raise CannotChange("a sentence is needed here, on one line")
    line = _line_of(text, blank)
    return text[: line.sentence_span.start] + said + text[line.sentence_span.end :]


def with_number(text: str, blank: str, size: str, number: int | None) -> str:
    """The text in which a blank's sentence gives a number for a size; None: in which it does not. Raises CannotChange."""
    if number is not None and not 0 <= number <= 100_000:
        raise CannotChange("a number of stitches or rows is needed here")
    if not size or re.search(r"[,;:{}\n]", size):
        raise CannotChange(f"a size called {size} cannot be named in a sentence: take the commas and colons out of its name")
    line = _line_of(text, blank)
    return with_sentence(text, blank, with_kept(line.sentence, size, number))


def with_ease(text: str, blank: str, nth: int, said: str) -> str:
    """The text with another figure as the `nth` number of a blank's sentence (from 0). Raises CannotChange."""
    if not re.fullmatch(r"\d{1,5}(?:[.,]\d{1,3})?(?: ?[½¼¾⅓⅔⅛⅜⅝⅞])?|[½¼¾⅓⅔⅛⅜⅝⅞]|\d{1,3}(?: \d{1,2})?/\d{1,2}", said.strip()):
        raise CannotChange(f"{said.strip() or 'nothing'} is no figure: write it as 3, 3.5 or 3 1/2")
    line = _line_of(text, blank)
    found = list(figures_in(line.sentence))
    if not 0 <= nth < len(found):
        raise CannotChange("there is no such figure in the sentence any more")
    start, end = found[nth]
    changed = line.sentence[:start] + said.strip() + line.sentence[end:]
    try:
        parse_fit(line.blank, changed)
    except (NotUnderstoodError, ValueError) as e:
        raise CannotChange(f"with {said.strip()} the sentence cannot be read: {e}") from None
    return with_sentence(text, blank, changed)


def figures_in(sentence: str) -> list[tuple[int, int]]:
    """Where the figures of a sentence stand, those within names of blanks and sizes left out."""
    masked = re.sub(r"\{[^{}]*\}|\bin\s[^,;:{}]{1,60}?:", lambda m: "x" * len(m[0]), sentence)
    return [m.span() for m in re.finditer(rf"(?<![\w/.])\d{{1,5}}(?:[.,]\d{{1,3}})?{_PART}(?![\w/]|\.\d)", masked)]


def with_gauge(text: str, words: str) -> str:
    """The text with another gauge; what its line says beside (the hook) stays. Raises CannotChange for one that cannot be used."""
    said = " ".join(words.split())
    try:
        parse_gauge(said)
    except GaugeError:
        raise CannotChange(f"{said or 'nothing'} is no gauge that can be used: write it as 17 hdc and 13 rnds = 10 cm") from None
    document = read(Source.of(text))
    old = next((i for i in document.items if isinstance(i, HeadLine) and i.name in ("gauge", "tension")), None)
    beside = old.value[gauge_end(old.value) :] if old is not None and gauge_end(said) == len(said) else ""
    return with_line(text, "Tension" if document.terms == "uk" and old is None else "Gauge", said + beside, also=("tension",))


def with_line(text: str, name: str, value: str, also: tuple[str, ...] = ()) -> str:
    """The text with "Name: value" in its heading, in place of the line of that name or of one of `also`. Raises CannotChange."""
    said = " ".join(value.split())
    if not _HEADS.fullmatch(name) or not said or len(said) > LONGEST:
        raise CannotChange("a line of the heading needs a name and words")
    document = read(Source.of(text))
    heads = [i for i in document.items if isinstance(i, HeadLine)]
    old = next((i for i in heads if i.name in (name.lower(), *also)), None)
    if old is not None:
        return text[: old.value_span.start] + said + text[old.value_span.end :]
    if heads:
        at = _end_of_line(text, heads[-1].span.end)
        return f"{text[:at]}\n{name}: {said}{text[at:]}"
    at = _before_rows(document)
    gap = "" if not text[:at].strip() or text[:at].endswith("\n\n") else "\n"
    return f"{text[:at]}{gap}{name}: {said}\n\n{text[at:]}"


def with_own_chart(text: str, graded: Graded) -> str:
    """The text with a size chart of its own: the measurements that its sentences ask for, as they are now. Raises CannotChange."""
    document = read(Source.of(text))
    if table_span(document) is not None:
        raise CannotChange("the pattern has a size chart of its own already")
    figures: dict[str, list[float | None]] = {}
    for n, size in enumerate(graded.sizes):
        for number in size.numbers:
            for name, body in number.bodies:
                figures.setdefault(name, [None] * len(graded.sizes))[n] = body.mm
    if not figures:
        raise CannotChange("no sentence of this pattern asks for a measurement of the body")
    table = laid_out([one_line(s.size) for s in graded.sizes], figures)
    at = _before_rows(document)
    gap = "" if not text[:at].strip() or text[:at].endswith("\n\n") else "\n"
    return f"{text[:at]}{gap}Size chart\n{table}\n{text[at:]}"


def with_measurement(text: str, size: str, measure: str, said: str) -> str:
    """The text with one figure of its own size chart changed. Raises CannotChange where there is no chart or the figure is none."""
    span = table_span(read(Source.of(text)))
    if span is None:
        raise CannotChange("the pattern has no size chart of its own")
    head, _, table = text[span.start : span.end].partition("\n")
    figure = " ".join(said.split())
    if not size.strip() or len(figure) > 40 or re.search(r"[\t|;,]", figure.replace(",", ".", 1)):
        raise CannotChange(f"{figure[:40]} is no length: write it as 50 cm or 19 1/2 in")
    if re.fullmatch(r"[\d.,]+", figure):
        figure = f"{figure.replace(',', '.')} cm"
    try:
        changed = with_figure(table, one_line(size), measure, figure)
    except ChartError as e:
        raise CannotChange(e.problem) from None
    return text[: span.start] + f"{head}\n{changed}" + text[span.end :]


def without_size(text: str, size: str) -> str:
    """The text without one of its sizes. Raises CannotChange where numbers stand in brackets, one for each size."""
    document = read(Source.of(text))
    line = next((i for i in document.items if isinstance(i, HeadLine) and i.name == "sizes"), None)
    names = list(document.sizes)
    if line is None or size not in names or len(names) < 3:
        raise CannotChange(f"the heading has no line of sizes with {size} in it that could do without")
    lists = any(len(a.lengths_mm) > 1 for f in document.items if isinstance(f, FitLine) for _, a in _terms(f))
    if per_size(document) or lists:
        raise CannotChange(f"numbers stand in brackets, one for each size: take {size} out of them on the sheet")
    changed = text[: line.value_span.start] + ", ".join(n for n in names if n != size) + text[line.value_span.end :]
    for fit in [i for i in document.items if isinstance(i, FitLine)]:
        changed = with_sentence(changed, fit.blank, with_kept(fit.sentence, size, None))
    return changed


def _terms(line: FitLine) -> tuple[tuple[object, Any], ...]:
    try:
        return parse_fit(line.blank, line.sentence).target.terms
    except (NotUnderstoodError, ValueError):
        return ()


def _line_of(text: str, blank: str) -> FitLine:
    found = next((i for i in read(Source.of(text)).items if isinstance(i, FitLine) and i.blank == blank), None)
    if found is None:
        raise CannotChange(f"no sentence stands for {{{blank}}} in the pattern any more")
    return found


def _end_of_line(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def _before_rows(document: Document) -> int:
    """Where the Fit begins, else the first section or row: the start of that line."""
    first = next((i.span.start for i in document.items if isinstance(i, (FitLine, Section, Row)) or _is_fit(i)), len(document.text))
    return document.text.rfind("\n", 0, first) + 1


def _is_fit(item: object) -> bool:
    return isinstance(item, Prose) and item.text.strip().rstrip(":").lower() == "fit"
