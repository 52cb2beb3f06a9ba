"""The pattern in words, for all sizes of an edition at once and for each of them alone."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from loopwright.model.tree import Document, HeadLine
from loopwright.publishing.document.edition import Edition
from loopwright.publishing.document.pattern import Pattern
from loopwright.record import record
from loopwright.wording import Heading, Said, heading, instructions, voice_for


@record
class Words:
    """`shown`: instructions as the edition prints them; `by_size`: as each of its sizes alone has them.

    `indexes`: of the sizes. `name`: a part's or a size's name as these words have it; `own`: the designer's own sentences.
    """

    heading: Heading
    shown: tuple[Said, ...]
    by_size: tuple[tuple[Said, ...], ...]
    indexes: tuple[int, ...]
    name: Callable[[str], str]
    own: Callable[[str], str]


def words_of(pattern: Pattern, edition: Edition) -> Words:
    """The words of an edition. Raises IndexError for a size that there is none of."""
    document, report = pattern.document, pattern.report
    full, spelled = edition.full_words or edition.large_print, edition.spelled_out or edition.large_print
    indexes = tuple(range(len(pattern.sizes))) if edition.size is None else (edition.size,)
    voice_of = partial(
        voice_for, document, edition.terms, full_words=full, spelled_out=spelled, language=edition.language,
        translations=pattern.translations.get(edition.language),
    )
    voices = [voice_of(i) for i in indexes]
    by_size = tuple(instructions(v, document, report) for v in voices)
    if len(indexes) == 1:
        voice, shown = voices[0], by_size[0]
    else:
        voice = voice_of(None)
        shown = instructions(voice, document, report)
    body = "\n".join(part.text for part in shown)
    return Words(heading(voice, document, report, body), shown, by_size, indexes, voice.name, voice.prose)


def told(pattern: Pattern, *names: str) -> str:
    """What the design's heading says under one of these names; "" for nothing."""
    return next((i.value.strip() for i in pattern.document.items if isinstance(i, HeadLine) and i.name in names), "")


def all_told(pattern: Pattern, *names: str) -> tuple[str, ...]:
    """All lines of the heading under one of these names."""
    return tuple(i.value.strip() for i in pattern.document.items if isinstance(i, HeadLine) and i.name in names)


def worked_in(document: Document) -> int | None:
    """Index of the size that the sample was worked in, where the heading tells it."""
    name = next((i.value.strip().lower() for i in document.items if isinstance(i, HeadLine) and i.name == "worked in"), "")
    return next((i for i, size in enumerate(document.sizes) if size.lower() == name), None)
