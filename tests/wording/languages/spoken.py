"""Designs and lines in every language, worked once."""

import re
from functools import cache

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import voice_for, write
from loopwright.wording.write import instructions
from loopwright.working import work
from loopwright.workshop.designs import find

KEPT = re.compile(r"\[en: (?:[^\[\]]|\[[^\[\]]*\])*\]")


@cache
def graded(name):
    """(document, report) of a shipped design with its blanks filled."""
    from loopwright.grading import grade

    made = grade(read(Source.of(find(name).text)), work)
    return made.document, made.report


@cache
def worked(text):
    document = read(Source.of(text))
    return document, work(document)


@cache
def said(name, code, size=None):
    """A shipped design in a language."""
    document, report = graded(name)
    return write(document, report, terms=document.terms, language=code, size=size)


def rows_in(text, code, **how):
    """The rows of a text in a language, one string each; sections and prose left out."""
    document, report = worked(text)
    voice = voice_for(document, document.terms, language=code, **how)
    return [p.text for p in instructions(voice, document, report) if hasattr(p, "words")]


def own(text):
    """A text without the words that stayed as they were."""
    return KEPT.sub(" ", text)
