"""Which documents are made: the editions that are asked for, or all that a designer hands out, each in its formats."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import field, replace
from typing import Literal

from loopwright.publishing.document import Edition, Paper
from loopwright.publishing.document.steps import slug
from loopwright.record import record

Format = Literal["pdf", "html", "epub", "text", "markdown", "data"]
FORMATS: tuple[Format, ...] = ("pdf", "html", "epub", "text", "markdown", "data")
ENDINGS: dict[Format, str] = {"pdf": "pdf", "html": "html", "epub": "epub", "text": "txt", "markdown": "md", "data": "json"}
USUAL: tuple[Format, ...] = ("pdf", "html", "epub", "text")


@record
class Job:
    """One file: an edition in a format, under a name."""

    edition: Edition
    format: Format
    name: str


@record
class Asked:
    """What is asked for. `papers`, `terms`, `languages`: each of them is an edition of its own.

    `sizes`: indexes of sizes that get one of their own, () for all in one.
    `package`: everything that is handed out, on top of what is named. `typeface`: a font file of her own, `family`: its name.
    `translations`: of her own words, by language.
    """

    papers: tuple[Paper, ...] = ("a4",)
    terms: tuple[str, ...] = ()
    languages: tuple[str, ...] = ("en",)
    sizes: tuple[int, ...] = ()
    formats: tuple[Format, ...] = USUAL
    large_print: bool = False
    left_handed: bool = False
    ink_saving: bool = False
    words_only: bool = False
    section_per_page: bool = False
    package: bool = False
    accent: str = ""
    typeface: str = ""
    family: str = ""
    translations: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


def jobs(asked: Asked, title: str, sizes: Sequence[str], own_terms: str) -> tuple[Job, ...]:
    """The files to be made, in order; none twice."""
    base = Edition(
        large_print=asked.large_print, left_handed=asked.left_handed, ink_saving=asked.ink_saving, words_only=asked.words_only,
        section_per_page=asked.section_per_page, accent=asked.accent, typeface=asked.family,
    )
    found: list[Job] = []
    for edition in _editions(base, asked, own_terms):
        found.extend(_formats(edition, asked.formats, asked.papers, title, sizes, own_terms))
    if asked.package:
        found.extend(_package(base, asked, title, sizes, own_terms))
    return tuple(_told_apart(dict.fromkeys((j.edition, j.format) for j in found), title, sizes, own_terms))


def _told_apart(wanted: Iterable[tuple[Edition, Format]], title: str, sizes: Sequence[str], own_terms: str) -> Iterator[Job]:
    """Names that would be alike get a number."""
    taken: set[str] = set()
    for edition, kind in wanted:
        name = name_of(edition, kind, title, sizes, own_terms)
        stem, n = name.removesuffix(f".{ENDINGS[kind]}"), 2
        while name in taken:
            name, n = f"{stem}-{n}.{ENDINGS[kind]}", n + 1
        taken.add(name)
        yield Job(edition, kind, name)


def _editions(base: Edition, asked: Asked, own_terms: str) -> Iterator[Edition]:
    for language in asked.languages:
        for terms in (asked.terms or (own_terms,)) if language == "en" else (own_terms,):
            for size in asked.sizes or (None,):
                yield replace(base, language=language, terms=terms, size=size)


def _formats(
    edition: Edition, formats: Iterable[Format], papers: Sequence[Paper], title: str, sizes: Sequence[str], own_terms: str,
) -> Iterator[Job]:
    """Paper matters to PDF alone."""
    for kind in formats:
        for paper in papers if kind == "pdf" else papers[:1]:
            made = replace(edition, paper=paper)
            yield Job(made, kind, name_of(made, kind, title, sizes, own_terms))


def _package(base: Edition, asked: Asked, title: str, sizes: Sequence[str], own_terms: str) -> Iterator[Job]:
    """Both papers, large print, each size alone, the other terms, and the formats for screens and for whoever has none."""
    def some(edition: Edition, formats: Sequence[Format], papers: Sequence[Paper] = ("a4",)) -> Iterator[Job]:
        return _formats(edition, formats, papers, title, sizes, own_terms)

    for language in asked.languages:
        whole = replace(base, language=language, terms=own_terms, size=None)
        yield from some(whole, ("pdf",), ("a4", "letter"))
        yield from some(whole, ("html", "epub", "text"))
        yield from some(replace(whole, large_print=True), ("pdf",))
        if len(sizes) > 1:
            for size in range(len(sizes)):
                yield from some(replace(whole, size=size), ("pdf",))
        if language == "en":
            other = "us" if own_terms != "us" else "uk"
            yield from some(replace(whole, terms=other), ("pdf", "text"))


def name_of(edition: Edition, kind: Format, title: str, sizes: Sequence[str], own_terms: str) -> str:
    """A file's name out of what makes the edition what it is: "samphire-beanie-child-uk-large-print-letter.pdf"."""
    words = [slug(title)]
    if edition.size is not None and len(sizes) > 1:
        words.append(slug(sizes[edition.size]).removeprefix("r-"))
    words.append(edition.language if edition.language != "en" else edition.terms if edition.terms != own_terms else "")
    words += ["large-print"] * edition.large_print + ["left-handed"] * edition.left_handed
    words += ["ink-saving"] * edition.ink_saving + ["words-only"] * edition.words_only
    words.append(edition.paper if kind == "pdf" else "")
    return "-".join(w for w in words if w) + f".{ENDINGS[kind]}"
