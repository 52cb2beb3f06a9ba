"""A document as plain text and as Markdown: complete, in order, every picture in words.

The plain text can be read again as a pattern. What stands under names ("Gauge: …") does so as patterns print it; a long line goes on
indented; what a chart shows in words is quoted with ">", as it would be worked twice otherwise.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator, Sequence

from loopwright.publishing.document import (
    Block,
    Facts,
    Figure,
    Instructions,
    Listing,
    Paragraph,
    Part,
    Publication,
    Remark,
    Step,
    Table,
    Text,
    in_brackets,
)

WIDTH = 78
_INDENT = "  "
_UNBROKEN = re.compile(r"\b((?:Rows?|Rnds?|Rounds?|rows?|rnds?|rounds?)) (?=\d)|(?<=\() | (?=\))|(?<=\[) | (?=\])")
_HELD = "\x1f"  # stands for a space that no line is broken at
_MARKED = re.compile(r"([\\`*_{}\[\]<>#|~&])")
_BEGINS = re.compile(r"^(\s*\d*)([-+.)=])(?=[\s=-]|$)")  # at the start of a line a list, or the rule under a heading
_AFTER = frozenset(("charts", "care", "cautions", "help", "changes", "version", "terms-of-use"))


def text(publication: Publication) -> str:
    """The document as plain text in lines of at most 78 characters, where words allow it."""
    lines: list[str] = [*_wrapped(publication.title), ""]
    for part in publication.parts:
        lines += [*_part(part, publication), ""]
    return _tidy(lines)


def _part(part: Part, publication: Publication) -> Iterator[str]:
    if part.key == "title":
        if publication.draft:
            yield from _wrapped(f"{publication.phrases['draft']}: {publication.draft}")
        yield from _front(part.blocks, publication)
        return
    if part.key == "instructions":
        yield from _sections(part.blocks, publication)
        return
    if part.key in _AFTER:
        yield from _quoted([*_wrapped(part.heading), *(line for b in part.blocks for line in _block(b, publication))])
        return
    named = part.key in ("gauge", "special")
    if not named:
        yield from _wrapped(part.heading)
    if part.key == "sizes":
        yield from _named(publication.phrases["sizes" if len(publication.sizes) > 1 else "size"], _size_names(publication))
    for at, block in enumerate(part.blocks):
        if named:
            yield from _under_name(block, part, first=at == 0)
        elif isinstance(block, Instructions):
            yield from ["", *_section(block)]
        else:
            yield from _block(block, publication)


def _size_names(publication: Publication) -> str:
    return ", ".join(publication.sizes)


def _front(blocks: Sequence[Block], publication: Publication) -> Iterator[str]:
    for block in sorted(blocks, key=lambda b: isinstance(b, Figure)):
        yield from _block(block, publication)
    if publication.terms:
        yield from ["", *_named("Terms", publication.terms)]


def _sections(blocks: Sequence[Block], publication: Publication) -> Iterator[str]:
    for block in blocks:
        yield from ["", *_section(block)] if isinstance(block, Instructions) else _block(block, publication)


def _section(held: Instructions) -> Iterator[str]:
    if held.title:
        yield from _wrapped(held.title)
    for row in held.steps:
        said = in_brackets(row.text) if isinstance(row, Remark) else step_text(row)
        yield from _quoted(_wrapped(said)) if isinstance(row, Remark) and not row.own else _wrapped(said)
        if isinstance(row, Step) and row.film:
            yield from _quoted([row.film])
    if held.film:
        yield from _quoted([held.film])
    for figure in held.figures:
        yield from _quoted(_wrapped(figure.alt))


def step_text(step: Step) -> str:
    """A row as the trade prints it, on one line."""
    label, count = in_brackets(step.label), in_brackets(step.count)
    return f"{step.lead}{f'{label}: ' if label else ''}{in_brackets(step.words)}{f' ({count})' if count else ''}"


def _under_name(block: Block, part: Part, *, first: bool) -> Iterator[str]:
    """Blocks of parts that patterns print as lines under a name."""
    if isinstance(block, Paragraph) and part.key == "gauge" and first:
        yield from _named(part.heading, in_brackets(block.text))
    elif isinstance(block, Listing):
        for item in block.items:
            yield from _named(part.heading, in_brackets(item))
    else:
        yield from ["", *_block(block, None)] if isinstance(block, Table) else _block(block, None)


def _block(block: Block, publication: Publication | None) -> Iterator[str]:
    if isinstance(block, Paragraph):
        if block.heading:
            yield from ["", *_wrapped(block.heading)]
        yield from _wrapped(in_brackets(block.text))
    elif isinstance(block, Listing):
        for item in block.items:
            yield from _wrapped(in_brackets(item))
    elif isinstance(block, Facts):
        for name, said in block.pairs:
            yield from _wrapped(f"{name} = {in_brackets(said)}" if block.close else f"{name}: {in_brackets(said)}")
    elif isinstance(block, Table):
        yield from _table(block)
    elif isinstance(block, Figure):
        yield from _quoted(_figure(block, publication))
    else:
        yield from _section(block)


def _table(held: Table) -> Iterator[str]:
    """Row by row, each cell with the head of its column: it can be read aloud, and no screen is too narrow."""
    yield from _wrapped(held.corner)
    for row in held.rows:
        if row.group:
            yield from ["", *_wrapped(row.group)]
        if row.same or len(row.cells) == 1:
            said = row.cells[0]
        else:
            said = "; ".join(f"{c} {cell}" for c, cell in zip(held.columns, row.cells, strict=True) if cell)
        yield from _wrapped(f"{row.head}: {said}")
    if held.note:
        yield from _wrapped(held.note)


def _figure(held: Figure, publication: Publication | None) -> Iterator[str]:
    if held.caption:
        yield from _wrapped(held.caption)
    told = held.description or held.alt
    if publication is not None and held.description:
        yield f"{publication.phrases['in-words']}:"
    for line in told.split("\n"):
        yield from _wrapped(line)


def _named(name: str, said: str) -> list[str]:
    return _wrapped(f"{name}: {said}")


def _quoted(lines: Iterable[str]) -> Iterator[str]:
    for line in lines:
        yield line if line.startswith(">") else f"> {line}".rstrip()


def _wrapped(said: str, first: str = "", further: str = _INDENT, width: int = WIDTH - 2) -> list[str]:
    """Lines of a text, those after the first indented; never broken between "Rnd" and its number."""
    held = _UNBROKEN.sub(lambda m: f"{m[1] or ''}{_HELD}", " ".join(said.split()))
    lines = textwrap.wrap(held, width, initial_indent=first, subsequent_indent=further, break_long_words=False, break_on_hyphens=False)
    return [line.replace(_HELD, " ") for line in lines]


def _tidy(lines: Iterable[str]) -> str:
    """Joined, without spaces at the ends and without more than one empty line."""
    said = "\n".join(line.rstrip() for line in lines)
    return re.sub(r"\n{3,}", "\n\n", said).strip("\n") + "\n"


def markdown(publication: Publication) -> str:
    """The document as Markdown: headings, tables, a box to tick before every row; pictures in words. What would be a mark is escaped."""
    lines: list[str] = [f"# {_escaped(publication.title)}", ""]
    if publication.draft:
        lines += [f"**{_escaped(publication.phrases['draft'])}:** {_escaped(publication.draft)}", ""]
    for part in publication.parts:
        if part.heading:
            lines += [f"## {_escaped(part.heading)}", ""]
        for block in part.blocks:
            lines += [*_md_block(block, publication), ""]
    return _tidy(lines)


def _md_block(block: Block, publication: Publication) -> Iterator[str]:
    if isinstance(block, Paragraph):
        if block.heading:
            yield from [f"### {_escaped(block.heading)}", ""]
        yield from _md_wrapped(block.text)
    elif isinstance(block, Listing):
        for at, item in enumerate(block.items, 1):
            mark = f"{at}. " if block.ordered else "- "
            yield from _md_wrapped(item, mark, " " * len(mark))
    elif isinstance(block, Facts):
        for name, said in block.pairs:
            yield from _md_wrapped((f"{name}: ", *said), "- ", "  ", bold=len(name) + 1)
    elif isinstance(block, Table):
        yield from _md_table(block)
    elif isinstance(block, Figure):
        yield from _md_figure(block, publication)
    else:
        yield from _md_section(block)


def _md_section(held: Instructions) -> Iterator[str]:
    if held.title:
        yield from [f"### {_escaped(held.title)}", ""]
    if held.film:
        yield from [f"<{held.film}>", ""]
    for row in held.steps:
        if isinstance(row, Remark):
            yield from ["", *_md_wrapped(row.text), ""]
            continue
        bold = len(f"{row.lead}{in_brackets(row.label)}:") if row.label else len(row.lead.rstrip())
        yield from _md_wrapped((step_text(row),), "- [ ] ", "      ", bold=bold)
    for figure in held.figures:
        yield from ["", *_md_wrapped((figure.alt,))]


def _md_table(held: Table) -> Iterator[str]:
    yield f"| {' | '.join(_escaped(c) for c in (held.corner, *held.columns))} |"
    yield f"|{' --- |' * (len(held.columns) + 1)}"
    for row in held.rows:
        if row.group:
            yield f"| **{_escaped(row.group)}** |{'  |' * len(held.columns)}"
        yield f"| {' | '.join(_escaped(c) for c in (row.head, *row.cells))} |"
    if held.note:
        yield from ["", *_md_wrapped((held.note,))]


def _md_figure(held: Figure, publication: Publication) -> Iterator[str]:
    if held.caption:
        yield from [*_md_wrapped((held.caption,)), ""]
    if held.description:
        yield f"> **{_escaped(publication.phrases['in-words'])}:**"
    for line in (held.description or held.alt).split("\n"):
        yield ">"
        yield from _md_wrapped((line,), "> ", "> ")


def _md_wrapped(said: Text, first: str = "", further: str = "", bold: int = 0) -> list[str]:
    """Escaped and wrapped; the first `bold` characters bold."""
    plain = in_brackets(said)
    words = f"**{_escaped(plain[:bold])}**{_escaped(plain[bold:])}" if bold else _escaped(plain)
    lines = _wrapped(words, first, further, WIDTH)
    return [lines[0], *(_BEGINS.sub(r"\1\\\2", line) for line in lines[1:])] if lines else []


def _escaped(said: str) -> str:
    return _BEGINS.sub(r"\1\\\2", _MARKED.sub(r"\\\1", " ".join(said.split())))
