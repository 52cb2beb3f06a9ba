"""The design's own words with the numbers in: a list per size, or one size alone. Line by line; only blanks and the heading change."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.grading.bodies import table_span
from loopwright.model.tree import Document, FitLine, HeadLine, Row

DASH = "–"
_BLANK = re.compile(r"\{(?P<name>[^{}\n]+)\}(?:(?P<word>\s*ch)?\s*(?P<sign>[+−-])\s*(?P<more>\d{1,6})(?!\s*(?:-|st|times)))?")
_RANGE = re.compile(
    r"(?P<word>\b(?:Rows?|Rnds?|Rounds?))\s+(?P<first>\d+)\s*(?:-|–|to)\s*(?P<last>\{[^{}\n]+\})(?=\s*(?:\(|:|\.))", re.IGNORECASE,
)


def written(document: Document, values: Mapping[str, Sequence[int]], size: int | None = None, gauge: str | None = None) -> str:
    """The text with numbers. `size`: an index for one size alone. `gauge`: the words of another gauge for the heading.

    A row that no shown size works is left out; a size in a list that does not work a range has a dash.
    """
    shown = [size] if size is not None else list(range(len(document.sizes)))
    fits = {i.span.start for i in document.items if isinstance(i, FitLine)}
    heads = {i.span.start: i for i in document.items if isinstance(i, HeadLine)}
    unworked = {i.span.start for i in document.items if isinstance(i, Row) and i.sizes is not None and not any(s in i.sizes for s in shown)}
    chart = table_span(document)
    lines: list[str] = []
    at = 0
    for line in document.text.split("\n"):
        start = at + len(line) - len(line.lstrip())
        at += len(line) + 1
        if chart is not None and chart.start <= start < chart.end:
            continue
        if start in fits or start in unworked or (fits and line.strip().rstrip(":").lower() == "fit"):
            continue
        if start in heads:
            head = _heading(heads[start], document, size, gauge)
            if head is not None:
                lines.append(head)
            continue
        lines.append(_line(line, values, shown, len(document.sizes)))
    return re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).strip("\n") + "\n"


def _heading(head: HeadLine, document: Document, size: int | None, gauge: str | None) -> str | None:
    if head.name in ("sizes", "size"):
        names = [document.sizes[size]] if size is not None else document.sizes
        return f"Size: {names[0]}" if len(names) == 1 else f"Sizes: {', '.join(names)}"
    if head.name == "worked in":
        return None
    line = document.text[head.span.start : head.span.end]
    if head.name in ("gauge", "tension") and gauge:
        return f"{line.split(':')[0]}: {gauge}"
    return _one_size(line, [size], len(document.sizes)) if size is not None else line


def _line(line: str, values: Mapping[str, Sequence[int]], shown: Sequence[int], sizes: int) -> str:
    line = _one_size(line, shown, sizes)
    line = _RANGE.sub(lambda m: _range(m, values, shown), line)
    line = _BLANK.sub(lambda m: _blank(m, values, shown), line)
    return _tidied(line) if len(shown) == 1 else line


def _range(m: re.Match[str], values: Mapping[str, Sequence[int]], shown: Sequence[int]) -> str:
    """A label's range; one row where it is one, a dash for a size in which it is empty."""
    name = " ".join(m["last"].strip("{}").split())
    if name not in values:
        return m.group()
    first = int(m["first"])
    last = [values[name][s] for s in shown]
    if len(set(last)) == 1:
        one = m["word"][:-1] if m["word"].lower() in ("rows", "rnds", "rounds") else m["word"]
        return f"{one} {first}" if last[0] == first else f"{m['word']} {first}-{last[0]}"
    return f"{m['word']} {first}-{_listed([n if n >= first else None for n in last])}"


def _blank(m: re.Match[str], values: Mapping[str, Sequence[int]], shown: Sequence[int]) -> str:
    name = " ".join(m["name"].split())
    if name not in values:
        return m.group()
    more = int(m["more"] or 0) * (-1 if (m["sign"] or "+") in "−-" else 1)
    return _listed([values[name][s] + more for s in shown]) + (m["word"] or "")


def _listed(numbers: Sequence[int | None]) -> str:
    """A list as "60 (64, 72)", one number where all are the same."""
    said = [DASH if n is None else str(n) for n in numbers]
    return said[0] if len(set(said)) == 1 else f"{said[0]} ({', '.join(said[1:])})"


def _one_size(line: str, shown: Sequence[int | None], sizes: int) -> str:
    """Lists per size that the designer wrote herself, cut down to the sizes shown."""
    if sizes < 2 or len(shown) == sizes:
        return line

    def cut(m: re.Match[str]) -> str:
        every = [m["a"], *re.findall(r"[\d.½¼¾–—-]+", m["rest"])]
        return m.group() if len(every) != sizes else _listed_text([every[s] for s in shown if s is not None])

    return re.sub(r"(?P<a>\d+(?:\.\d+)?|[–—-](?=\s\())\s*\((?P<rest>(?:\s*(?:\d+(?:\.\d+)?|[–—-])\s*,?)+)\)", cut, line)


def _listed_text(said: Sequence[str]) -> str:
    return said[0] if len(set(said)) == 1 else f"{said[0]} ({', '.join(said[1:])})"


def _tidied(line: str) -> str:
    """The grammar of one: "1 times" is once, "1 rnds" is 1 rnd."""
    line = re.sub(r"\b1 times in all\b|\b1 times\b", "once", line)
    return re.sub(r"(?<![\d-])\b1 (rnd|row|st|shell|round|picot|V st)s\b", r"1 \1", line)
