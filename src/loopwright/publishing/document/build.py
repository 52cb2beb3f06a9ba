"""A document out of a pattern, its measures and its pictures: parts in the trade's order, for one edition."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopwright.model.tree import Chain, Row
from loopwright.publishing import changes
from loopwright.publishing.document.blocks import (
    Block,
    Facts,
    Figure,
    Instructions,
    Listing,
    Paragraph,
    Part,
    PartKey,
    Publication,
)
from loopwright.publishing.document.covered import covered
from loopwright.publishing.document.edition import Edition
from loopwright.publishing.document.measured import with_measures
from loopwright.publishing.document.pattern import Drawn, Pattern, Pictures
from loopwright.publishing.document.running import Text, running
from loopwright.publishing.document.sizing import other_gauges, size_table
from loopwright.publishing.document.steps import sections
from loopwright.publishing.document.words import Words, all_told, told, words_of
from loopwright.publishing.phrases import Phrases

# Lines of the heading that have a place of their own in the document; all others are told under Materials, as she names them.
_PLACED = frozenset((
    "terms", "sizes", "gauge", "turning chain", "abbreviations", "special", "notes", "measurements", "safety", "worked in", "version",
    "date", "author", "designer", "description", "care", "photograph", "photographs", "film", "help", "contact", "corrections",
    "copyright", "terms of use", "accent", "timed", "sample", "weighed", "swatch", "swatches", "level", "",
))
_FINISHING = re.compile(r"\b(?:finishing|making up|assembly|to finish|make up|joining the pieces|blocking)\b", re.IGNORECASE)
_FINISHED = "finished"  # what the design says of its size stands with the sizes
_ENGLISH = {"us": "en-US", "uk": "en-GB", "old": "en-GB"}
POINTS_FAR = 24
LONGEST_ALT = 240


def build(pattern: Pattern, pictures: Pictures, edition: Edition) -> Publication:
    """The document of an edition. Raises IndexError for a size that there is none of, LookupError for a language without words."""
    say = Phrases(edition.language)
    words = words_of(pattern, edition)
    document = pattern.document
    version, date = version_of(pattern)
    top = [t for t in words.heading.top if t.strip() != (document.title or "").strip()]
    description = words.own(told(pattern, "description")) or " ".join(top[:1])
    parts = tuple(p for p in _parts(pattern, pictures, edition, words, say) if p.blocks)
    sample = told(pattern, "worked in")
    made = Publication(
        title=document.title or say.say("part-instructions"), description=description, edition=edition,
        language=_ENGLISH[edition.terms] if edition.language == "en" else edition.language, own_language=_ENGLISH[document.terms],
        sizes=tuple(words.name(pattern.sizes[i]) for i in words.indexes),
        sample=next((at for at, i in enumerate(words.indexes) if pattern.sizes[i] == sample), None),
        terms=say.say(f"terms-{edition.terms}") if edition.language == "en" else "", version=version, date=date,
        author=told(pattern, "designer", "author"), corrections=told(pattern, "corrections"), parts=parts, phrases=furniture(say),
        draft="; ".join(pattern.errors), reported=tuple(_reported(pattern, edition, say)),
    )
    return covered(made, pictures.cover) if pictures.cover is not None else made


def version_of(pattern: Pattern) -> tuple[str, str]:
    """Version and date as the heading tells them, "" for none: "Version: 1.3 (2026-11-20)", or a Date line of its own."""
    found = changes.version_of(pattern.document)
    return (found.name, found.date) if found is not None else ("", "")


def furniture(say: Phrases) -> dict[str, str]:
    """Words that pages put around the document; {page}, {pages}, {row}, {n} and {all} are filled by the pages themselves."""
    keys = (
        "tick", "notes-of-mine", "your-column", "every-size", "not-in-this-size", "choose-size", "in-words", "draft", "size", "sizes",
        "all-sizes", "web-skip", "web-contents", "web-back", "web-finished", "web-kept", "web-not-kept", "web-untick", "web-undo",
        "web-larger", "epub-summary",
    )
    found = {key: say.say(key) for key in keys}
    found["page-of"] = say.say("page-of", page="{page}", pages="{pages}")
    found["film-of"] = say.say("film")
    for key in ("web-of", "web-of-all", "web-done", "web-done-of"):
        found[key] = say.say(key, row="{row}", n="{n}", all="{all}")
    return found


def _parts(pattern: Pattern, pictures: Pictures, edition: Edition, words: Words, say: Phrases) -> Iterator[Part]:
    def part(key: PartKey, blocks: Sequence[Block], **slots: str) -> Part:
        return Part(key, say.say(f"part-{key}", **slots), tuple(blocks))

    pictured = not edition.words_only
    found = with_measures(_with_photographs(sections(pattern, words), pattern, edition), pattern, words.indexes, say)
    gauge_word = next((x.name.lower() for x in words.heading.lines if x.key == "gauge"), "gauge")
    yield Part("title", "", tuple(_title(pattern, edition, words, say)))
    told_sizes = [Paragraph((x.text,), own=True) for x in words.heading.lines if x.key.startswith(_FINISHED)]
    yield part("sizes", [*told_sizes, size_table(pattern, words.indexes, say, words.name)])
    yield part("materials", list(_materials(words)))
    yield part("gauge", [*_gauge(pattern, words, say), *other_gauges(pattern, words.indexes, say, words.name)], word=gauge_word)
    short = tuple((s, (long,)) for s, long in words.heading.abbreviations)
    yield part("abbreviations", [Facts(short, close=True)] if short else [])
    yield part("special", _listed([x.value for x in words.heading.lines if x.key == "special"], words))
    yield part("notes", _notes(pattern, edition, words, say))
    yield part("schematic", [_figure(d) for d in pictures.schematics] if pictured else [])
    yield part("instructions", [s for s in found if not _FINISHING.search(s.own)])
    yield part("charts", [_figure(d) for d in pictures.charts] if pictured else [])
    yield part("finishing", [s for s in found if _FINISHING.search(s.own)])
    yield part("care", [Paragraph((words.own(t),), own=True) for t in all_told(pattern, "care")])
    yield part("cautions", _listed([x.value for x in words.heading.cautions], words))
    yield part("help", list(_help(pattern, words, say)))
    yield part("changes", list(_changes(pattern)))
    yield part("version", list(_about(pattern, words, say)))
    yield part("terms-of-use", [Paragraph((words.own(t),), own=True) for t in all_told(pattern, "terms of use", "copyright")])


def _title(pattern: Pattern, edition: Edition, words: Words, say: Phrases) -> Iterator[Block]:
    """Her photograph for the front, then what she says of the piece."""
    if not edition.words_only and not edition.ink_saving:
        shown = next((p for p in pattern.photographs if p.cover and p.picture is not None), None)
        if shown is not None and shown.picture is not None:
            yield Figure(shown.picture, shown.alt or say.say("photograph-alt", title=pattern.document.title or ""), cover=True)
    top = [t for t in words.heading.top if t.strip() != (pattern.document.title or "").strip()]
    description = words.own(told(pattern, "description"))
    for text in ([description] if description else []) + top:
        yield Paragraph((text,), own=True)


def _materials(words: Words) -> Iterator[Block]:
    pairs = tuple((x.name, (x.value,)) for x in words.heading.lines if x.key not in _PLACED and not x.key.startswith(_FINISHED))
    if pairs:
        yield Facts(pairs)
    for x in words.heading.lines:
        if x.key == "" and x.value:
            yield Paragraph((x.value,), own=True)


def _gauge(pattern: Pattern, words: Words, say: Phrases) -> Iterator[Block]:
    lines = [x.value for x in words.heading.lines if x.key == "gauge"]
    for value in lines:
        yield Paragraph((value,), own=True)
    if pattern.gauge is not None and pattern.gauge.guessed:
        yield Paragraph((say.say("gauge-guess"),))


def _changes(pattern: Pattern) -> Iterator[Block]:
    """Lines under the version that they are counted from."""
    groups: list[tuple[str, list[Text]]] = []
    for change in pattern.changes:
        if change.since or not groups:
            groups.append((change.since, []))
        groups[-1][1].append((change.text,))
    for since, lines in groups:
        if since:
            yield Paragraph((f"{since}:",), own=True)
        yield Listing(tuple(lines), own=True)


def _listed(texts: Sequence[str], words: Words) -> list[Block]:
    items: tuple[Text, ...] = tuple(running(t, len(words.indexes)) for t in texts)
    return [Listing(items, own=True)] if items else []


def _notes(pattern: Pattern, edition: Edition, words: Words, say: Phrases) -> list[Block]:
    """What a reader must know before the first row: terms, sizes, repeats, conventions; then the designer's own notes."""
    ours: list[Text] = []
    if edition.language == "en":
        ours.append((say.say("terms-note", terms=say.say(f"terms-{edition.terms}")),))
    if len(words.indexes) > 1:
        ours.append((say.say("all-sizes-note", sizes=say.say("list-separator").join(words.name(pattern.sizes[i]) for i in words.indexes)),))
    ours += [(f"{x.name}: {x.value}",) for x in words.heading.lines if x.key == "turning chain"]
    ours += [(say.say("open-chain-note", n=n),) for n in _samples(pattern)]
    ours.append((say.say("spelled-out-note" if edition.spelled_out or edition.large_print else "repeats-note"),))
    if edition.left_handed:
        ours.append((say.say("left-handed-note"),))
    if edition.words_only:
        ours.append((say.say("no-pictures"),))
    if edition.large_print:
        ours.append((say.say("meets", points=POINTS_FAR),))
    own = _listed([x.value for x in words.heading.lines if x.key in ("notes", "level")], words)
    return [Listing(tuple(ours)), *own]


def _samples(pattern: Pattern) -> list[int]:
    """Chains of the samples that stand for foundations whose length the pattern leaves open."""
    rows = ((i, item.body) for i, item in enumerate(pattern.document.items) if isinstance(item, Row))
    left_open = {i for i, body in rows if any(isinstance(n, Chain) and n.every for n in body)}
    chains = (row.made.get("ch", (None,))[0] for row in pattern.report.rows if row.item in left_open)
    return list(dict.fromkeys(n for n in chains if n))


def _figure(drawn: Drawn) -> Figure:
    first, _, rest = drawn.description.partition("\n")
    alt = first if len(first) <= LONGEST_ALT else first[: first.rfind(" ", 0, LONGEST_ALT)] + " …"
    caption = " ".join((f"{drawn.section}." if drawn.section else "", *drawn.notes)).strip() if drawn.notes else drawn.section
    return Figure(drawn.picture, alt, caption, drawn.description if rest or alt != first else "")


def _with_photographs(found: tuple[Instructions, ...], pattern: Pattern, edition: Edition) -> tuple[Instructions, ...]:
    """Photographs at the section that they are of; those of no section stand with the first."""
    if edition.words_only or edition.ink_saving:
        return found
    result = list(found)
    for photo in pattern.photographs:
        if photo.cover or photo.picture is None or not result:
            continue
        name = photo.section.lower()
        at = next((i for i, s in enumerate(result) if name and s.own.lower().startswith(name)), 0)
        result[at] = replace(result[at], figures=(*result[at].figures, Figure(photo.picture, photo.alt or result[at].title, photo.alt)))
    return tuple(result)


def _help(pattern: Pattern, words: Words, say: Phrases) -> Iterator[Block]:
    for text in all_told(pattern, "help", "contact"):
        yield Paragraph((words.own(text),), own=True)
    if pattern.film.get(""):
        yield Paragraph((say.say("film-at", address=pattern.film[""]),))
    if corrections := told(pattern, "corrections"):
        yield Paragraph((say.say("corrections-at", address=corrections),))


def _about(pattern: Pattern, words: Words, say: Phrases) -> Iterator[Block]:
    version, date = version_of(pattern)
    if author := told(pattern, "designer", "author"):
        yield Paragraph((say.say("made-by", author=author),))
    if version:
        yield Paragraph((say.say("version-dated" if date else "version-line", version=version, date=date),))
    if sample := told(pattern, "worked in"):
        yield Paragraph((say.say("worked-in", size=words.name(sample)),))


def _reported(pattern: Pattern, edition: Edition, say: Phrases) -> Iterator[str]:
    """What whoever publishes should know: what is missing."""
    for photo in pattern.photographs:
        if not photo.there:
            yield f"photograph {photo.file}: there is no such file beside the design or in a folder photographs; it is left out"
        elif photo.picture is None:
            yield f"photograph {photo.file}: it is damaged, no picture, or too large to open; the document goes without it"
        elif not photo.alt:
            yield f"photograph {photo.file}: say what it shows for those who cannot see it: 'Photograph: {photo.file}: …'"
    if not told(pattern, "version"):
        yield "no version is told: add a line such as 'Version: 1.0 (2026-11-28)', so that corrections can name it"
    if edition.language != "en":
        yield (f"what is said in {edition.language} is still to be checked by a native maker: loopwright grade DESIGN --language "
               f"{edition.language} lists the terms, and with --translations FILE what there is to translate")
    yield from (f"no words in {edition.language} for '{key}'; said in English" for key in sorted(say.missing))

