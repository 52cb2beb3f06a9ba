"""Chapters of a book: one file for each part of the document, and one for each section of its rows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from loopwright.publishing.document import Block, Figure, Instructions, Publication, Remark, Step, Table, in_brackets
from loopwright.publishing.marked import Markup, block, el, figure_words, join, void
from loopwright.publishing.marked.blocks import linked, own_language, safe_address
from loopwright.publishing.marked.pictures import NotDrawnError, drawing_file, smaller
from loopwright.record import record

MOST_COLUMNS = 4
"""Columns that a small screen holds beside the heads of rows; a wider table is cut into several."""
PICTURE_PX = 1200
_XHTML = "http://www.w3.org/1999/xhtml"
_OPS = "http://www.idpf.org/2007/ops"


@record
class Chapter:
    """A file of text. `under`: the heading that it stands below in the contents, "" for none."""

    name: str
    heading: str
    content: str
    under: str = ""


@record
class Held:
    """A file of the book that is no chapter."""

    name: str
    kind: str
    data: bytes


@dataclass(slots=True)
class Chapters:
    """Makes the chapters and gathers the pictures in them."""

    publication: Publication
    pictures: list[Held] = field(default_factory=list)
    cover: str = ""

    def made(self) -> Iterator[Chapter]:
        """All chapters, in order."""
        for part in self.publication.parts:
            sections = [b for b in part.blocks if isinstance(b, Instructions)]
            if not sections:
                yield self._chapter(part.key, part.heading or self.publication.title, [self._block(b) for b in part.blocks], "")
                continue
            others = [self._block(b) for b in part.blocks if not isinstance(b, Instructions)]
            for at, section in enumerate(sections):
                before, others = others, []
                under = part.heading if len(sections) > 1 or section.title else ""
                name = f"{part.key}-{at + 1}-{section.ident}"
                yield self._chapter(name, section.title or part.heading, [*before, *self._section(section)], under)

    def _chapter(self, name: str, heading: str, inside: list[Markup], under: str) -> Chapter:
        held = self.publication
        lang = own_language(held, own=True) if heading == held.title else None
        facts = [el("p", " · ".join(x for x in (held.terms, held.version, held.date, held.author) if x))] if name == "title" else []
        facts += [el("p", f"{held.phrases['draft']}: {held.draft}", class_="draft")] if name == "title" and held.draft else []
        kind = "titlepage" if name == "title" else "chapter"
        content = el("section", el("h1", heading, lang=lang, xml__lang=lang), *facts, *inside, epub__type=kind)
        return Chapter(f"{name}.xhtml", heading, document(held, heading, content), under)

    def _section(self, held: Instructions) -> Iterator[Markup]:
        if held.film and safe_address(held.film):
            yield el("p", el("a", f"{self.publication.phrases['film-of']}: {held.title}", href=held.film))
        rows = [self._remark(s) if isinstance(s, Remark) else self._step(s) for s in held.steps]
        if rows:
            yield el("ol", *rows, class_="rows")
        for figure in held.figures:
            yield self._figure(figure)

    def _remark(self, held: Remark) -> Markup:
        lang = own_language(self.publication, own=held.own)
        return el("li", el("p", linked(in_brackets(held.text)), lang=lang, xml__lang=lang), class_="remark")

    def _step(self, held: Step) -> Markup:
        label, count = in_brackets(held.label), in_brackets(held.count)
        parts: list[str] = [el("b", f"{held.lead}{f'{label}:' if label else ''}".strip()), " "] if held.lead or label else []
        parts.append(in_brackets(held.words))
        if count:
            parts += [" ", el("span", f"({count})", class_="count")]
        if held.film and safe_address(held.film):
            parts += [" ", el("a", self.publication.phrases["film-of"], href=held.film)]
        return el("li", el("p", *parts), id=held.ident)

    def _block(self, held: Block) -> Markup:
        if isinstance(held, Figure):
            return self._figure(held)
        if isinstance(held, Instructions):
            return join(self._section(held))
        made = [block(b, self.publication, 2) for b in (_narrow(held) if isinstance(held, Table) else [held])]
        return join([*made, el("p", held.note, class_="note")] if isinstance(held, Table) and held.note else made)

    def _figure(self, held: Figure) -> Markup:
        """The picture as an image, so that readers can enlarge it; its words alone where it cannot be shown."""
        caption = el("figcaption", held.caption) if held.caption else ""
        name = self._kept(held)
        shown = void("img", xml=True, src=name, alt=held.alt) if name else el("p", held.alt)
        return join([el("figure", shown, caption, class_="cover" if held.cover else None), figure_words(held, self.publication)])

    def _kept(self, held: Figure) -> str:
        """Keeps a picture once and gives its name in the book; "" for one that cannot be shown."""
        picture = held.picture
        stem = picture.name.rsplit(".", 1)[0]
        if picture.kind == "svg":
            try:
                made = Held(f"images/{stem}.svg", "image/svg+xml", drawing_file(picture, held.alt))
            except NotDrawnError:
                return ""
        else:
            kind, data = smaller(picture.data, PICTURE_PX, "JPEG")
            if not kind:
                return ""
            made = Held(f"images/{stem}.jpg", "image/jpeg", data)
            if held.cover:
                self.cover = made.name
        if all(p.name != made.name for p in self.pictures):
            self.pictures.append(made)
        return made.name


def document(publication: Publication, title: str, *body: Markup) -> str:
    """A file of XHTML."""
    head = el("head", el("title", title), void("link", xml=True, rel="stylesheet", type="text/css", href="style.css"))
    language = publication.language
    large = "large" if publication.edition.large_print else None
    whole = el("html", head, el("body", *body, class_=large), xmlns=_XHTML, xmlns__epub=_OPS, lang=language, xml__lang=language)
    return f'<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE html>\n{whole}\n'


def _narrow(held: Table) -> list[Table]:
    """A table as one or several that a small screen can hold."""
    if len(held.columns) <= MOST_COLUMNS + 1:
        return [held]
    found = []
    for at in range(0, len(held.columns), MOST_COLUMNS):
        columns = held.columns[at : at + MOST_COLUMNS]
        rows = tuple(replace(r, cells=r.cells[at : at + MOST_COLUMNS]) for r in held.rows)
        found.append(replace(held, caption=f"{held.caption}: {', '.join(columns)}", columns=columns, rows=rows))
    return found


def part_headings(chapters: list[Chapter]) -> list[tuple[str, list[Chapter]]]:
    """Chapters for the contents: those under one heading together, under their heading; others alone under ""."""
    found: list[tuple[str, list[Chapter]]] = []
    for chapter in chapters:
        if chapter.under and found and found[-1][0] == chapter.under:
            found[-1][1].append(chapter)
        else:
            found.append((chapter.under, [chapter]))
    return found
