"""Which words of a pattern say what it is, for whom, what is on it, and what its notes warn of already."""

from __future__ import annotations

import re
from functools import lru_cache

from loopwright.kept import of_short
from loopwright.model.tree import Document, FitLine, HeadLine, Prose, Row, Section, SpecialStitch
from loopwright.record import record
from loopwright.trade.cautions.table import cautions, defer, plain, said_plainly

TOLD = ("caution", "cautions", "safety", "safety note", "safety notes", "warning", "warnings")
NOTES = ("note", "notes", *TOLD, "level")
STUFF = ("yarn", "materials", "supplies", "notions", "needed", "used", "yarn needed", "yarn used", "colours", "colors")
HIDDEN = ("hidden cautions", "hidden caution")
_NOT_FOR_WHOM = (
    *NOTES, *STUFF, *HIDDEN, "hook", "gauge", "tension", "abbreviations", "abbreviation", "special stitches", "turning chain", "terms",
)
LONGEST_TITLE = 80
ABOUT = 600  # characters before the heading that may tell what the thing is
_NEGATED = re.compile(
    r"\b(?:without|no|not|never|none|instead|rather than|leave (?:\w+ )?(?:off|out)|omit|avoid|can|must|keep|safer"
    r"|take care|beware|swallow\w*|strangl\w*)\b",
)
_CLAUSE = re.compile(r"\b(?:without|no|instead of|rather than|leave off|leave out|omit)\b[^.,;:\n]*")
_ELSEWHERE = re.compile(r"\b(waist|belt|hem|ankle|wrap|side|shoe)[ -](ties?|cords?|strings?|ribbons?)\b")
_HEADED = re.compile(r"^[ \t]*[A-Z][A-Za-z ]{1,30}:", re.MULTILINE)
_LISTED = re.compile(
    r"\s*(?:[-*•–]\s|\d+\s?(?:g|m|oz|balls?|skeins?)\b|materials|you(?: will| also)* need|also needed|needed|yarn|supplies|notions)",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"(?<=[.!?;])\s+|\n")
# words of the work that only look like cords, buttons and caps
_WORK = re.compile(
    r"\btie(?:d)?[ -](?:off|in|the (?:ends?|yarn|knot|tails?)|a (?:knot|new)|ends?|on|yarn|together)\b"
    r"|\b(?:sleeve|shoulder) caps?\b|\bcap sleeves?\b|\bcap shaping\b|\bmug rugs?\b|\bmobile phones?\b|\bcap off\b|\bback straps?\b",
)


@record
class Scopes:
    """Texts made plain, and the notes as they stand.

    `item`: its title, and what it says before the heading. `whom`: words that tell for whom it is. `risks`: what is made and put on,
    without sentences that warn of it or leave it out. `stuff`: yarn and materials.
    """

    item: str
    whom: str
    risks: str
    stuff: str
    notes: tuple[str, ...]


def scopes(document: Document) -> Scopes:
    """The texts of a pattern that cautions go by."""
    head, body = _parts(document)
    about = _about(head)
    sections = [i.title for i in document.items if isinstance(i, Section)]
    title = _first_line(document.text) or document.title or ""
    item = "\n".join([title, about] if about else [title, *sections])
    heads = [i for i in head if isinstance(i, HeadLine)]
    whom = "\n".join([item, *(i.value for i in heads if not _is(i, _NOT_FOR_WHOM))])
    prose = [i.text for i in document.items if isinstance(i, Prose) and i.text.strip() != title and not _is_list(i.text)]
    notes = (*(i.value for i in heads if _is(i, NOTES)), *prose)
    stuff = "\n".join([*(i.value for i in heads if _is(i, STUFF)), *(i.text for i in head if isinstance(i, Prose) and _is_list(i.text))])
    fits = [f"{i.blank} {i.sentence}" for i in head if isinstance(i, FitLine)]
    told = [i.value for i in heads if not _is(i, (*HIDDEN, "abbreviations", "abbreviation"))]
    told += [i.text for i in head if isinstance(i, Prose)]
    risks = _plain("\n".join([title, *_plainly(tuple(told)), *fits, *sections]))
    worked = " ".join(w for line in body.split("\n") if (w := (_kept if len(line) < KEPT else _of_line)(line)))
    return Scopes(_plain(item), _for_whom(whom), f"{risks} {worked}", said_plainly(stuff), notes)


@of_short(16)
def _plain(text: str) -> str:
    """A text of the heading made plain; kept, as rows are written more often than headings."""
    return plain(_worked_out(text))


def _of_line(line: str) -> str:
    """A line of the rows made plain, without what it leaves out."""
    return plain(_worked_out(_CLAUSE.sub(" ", line.lower()))).strip()


KEPT = 2_000  # longer lines are not kept: none of a pattern is, and they would fill the memory
_kept = lru_cache(maxsize=4096)(_of_line)


@lru_cache(maxsize=8)
def of_text(text: str) -> Scopes:
    """A text of which nothing is known but its lines: what it is stands before the first "Name: value", else anywhere."""
    m = _HEADED.search(text)
    item = text[: m.start()] if m and text[: m.start()].strip() else text
    return Scopes(plain(_worked_out(item)), _for_whom(text), plain(_worked_out(text)), plain(text), ())


def _parts(document: Document) -> tuple[list[object], str]:
    """The items before the first row, and the text behind them."""
    first = next((n for n, i in enumerate(document.items) if isinstance(i, Row)), len(document.items))
    rest = document.items[first:]
    return list(document.items[:first]), document.text[rest[0].span.start :] if rest else ""


def _about(head: list[object]) -> str:
    """What is said before the first line of the heading, the title aside."""
    said: list[str] = []
    for item in head[1:]:
        if isinstance(item, (HeadLine, FitLine, SpecialStitch, Section)):
            break
        if isinstance(item, Prose) and not _is_list(item.text):
            said.append(item.text)
    return "\n".join(said)[:ABOUT]


def _is(line: HeadLine, names: tuple[str, ...]) -> bool:
    return line.name in names or line.name.startswith(("special", "safety"))


def _is_list(text: str) -> bool:
    """Whether a line is one of a list of what is needed."""
    return _LISTED.match(text) is not None


@of_short(16)
def _plainly(lines: tuple[str, ...]) -> tuple[str, ...]:
    """Sentences that neither warn nor leave out."""
    said = [line for line in lines if line != defer() and not any(c.text in line for c in cautions())]
    return tuple(s for line in said for s in _SENTENCE.split(line.lower()) if not _NEGATED.search(s))


def _worked_out(text: str) -> str:
    """Without what only looks like a cord, and ties that are not at the neck in one word: "waist-tie"."""
    return _ELSEWHERE.sub(r"\1-\2", _WORK.sub(" ", text.lower()))


def _first_line(text: str) -> str:
    """The title as it is written; "" where the text begins otherwise. Reading leaves colours and the like out of the one it gives."""
    line = text.lstrip().split("\n", 1)[0].strip()
    return line if len(line) < LONGEST_TITLE and ":" not in line else ""


@of_short(16)
def _for_whom(text: str) -> str:
    return re.sub(r"[^a-z0-9/–-]+", " ", _CLAUSE.sub(" ", text.lower().replace("’", "'").replace("'s", " ")))
