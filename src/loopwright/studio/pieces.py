"""Pieces of work besides the views, done in a process of its own: what the places ask of a design.

Each function gets the design's name and text first and gives what can be sent to another process. What cannot be done is told in words.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache, wraps
from pathlib import Path
from typing import Any, ParamSpec, cast, get_args

from loopwright.publishing.document import Edition, Paper
from loopwright.publishing.phrases import languages
from loopwright.source import Source
from loopwright.studio.routes.given import some, whole, words
from loopwright.studio.seeing import seen_of
from loopwright.workshop import begin as begun
from loopwright.workshop import left, resize
from loopwright.workshop.asked import Asked, CannotAnswerError, Question
from loopwright.workshop.compare.kept import kept_versions
from loopwright.workshop.files import CannotOpen, CannotSave
from loopwright.workshop.live import Live, Seen
from loopwright.workshop.mend import mend_text
from loopwright.workshop.proof import proof, report_text
from loopwright.workshop.publish import editions
from loopwright.workshop.publish.before import MOST_FILES, edition_of, files_of, missing
from loopwright.workshop.swatched import Worked, written_in

_HELD = 4  # texts that were read and worked for questions
_SWITCHES = ("large_print", "left_handed", "ink_saving", "words_only", "section_per_page", "package")
Given = Mapping[str, Any]
P = ParamSpec("P")


def _told(make: Callable[P, Any]) -> Callable[P, tuple[bool, Any]]:
    """The same, giving whether it could be done, and what it gave or why it could not, in words."""
    @wraps(make)
    def told(*given: P.args, **named: P.kwargs) -> tuple[bool, Any]:
        try:
            return True, make(*given, **named)
        except (CannotOpen, CannotSave, CannotAnswerError, resize.CannotChange) as e:
            return False, str(e)

    return told


@_told
def looked_at(name: str, text: str) -> dict[str, Any]:
    """The findings of a design, those that are left, and what was checked."""
    seen = Live(name).see(text)
    wire = seen.as_wire()
    return {**{k: wire[k] for k in ("terms", "sizes", "findings", "left")}, "title": wire["title"] or name, "checked": proof(seen)}


@_told
def mended(name: str, text: str) -> tuple[str, list[dict[str, Any]]]:
    """The text with all its safe mends, and what they did."""
    made, done = mend_text(Source.of(text, name))
    return made, [{"line": d.line, "title": d.title, "before": d.before, "after": d.after} for d in done]


@_told
def report(name: str, text: str) -> str:
    """The technical-editing report."""
    return report_text(seen_of(name, text, None))


@_told
def left_as_it_is(name: str, text: str, code: str, place: str, why: str) -> str:
    """The text with the line of its heading that leaves a finding as it is."""
    if not why.strip():
        raise CannotOpen("a reason is needed: it stands in the design, for whoever reads it later")
    return left.with_line(seen_of(name, text, None).document, code, place, why)


@_told
def changed(name: str, text: str, given: Given) -> str:
    """The text with one change of its sizes made."""
    make = CHANGES.get(words(given, "do"))
    if make is None:
        raise CannotOpen(f"a change is one of {', '.join(CHANGES)}")
    return make(name, text, given)


def _number(_name: str, text: str, given: Given) -> str:
    number = None if given.get("number") is None else whole(given, "number")
    return resize.with_number(text, words(given, "blank"), words(given, "size"), number)


def _own_chart(name: str, text: str, _given: Given) -> str:
    graded = seen_of(name, text, None).graded
    if graded is None:
        raise resize.CannotChange("nothing is graded in this pattern yet")
    return resize.with_own_chart(text, graded)


CHANGES: dict[str, Callable[[str, str, Given], str]] = {
    "sentence": lambda _, t, g: resize.with_sentence(t, words(g, "blank"), words(g, "sentence", resize.LONGEST)),
    "figure": lambda _, t, g: resize.with_ease(t, words(g, "blank"), whole(g, "nth"), words(g, "said")),
    "number": _number,
    "gauge": lambda _, t, g: resize.with_gauge(t, words(g, "gauge")),
    "own chart": _own_chart,
    "measurement": lambda _, t, g: resize.with_measurement(t, words(g, "size"), words(g, "measure"), words(g, "said")),
    "without size": lambda _, t, g: resize.without_size(t, words(g, "size")),
}
"""Every change of the sizes by its name on the wire."""


@_told
def swatched(_name: str, text: str, worked: Worked) -> str:
    """The text with gauge, hook and yarn of a swatch in its heading."""
    return written_in(text, worked)


@lru_cache(_HELD)
def _asked(name: str, text: str) -> Asked:
    return Asked(text, name, seen_of(name, text, None))


@_told
def rows(name: str, text: str, size: int) -> list[dict[str, Any]]:
    """The rows of a size that can be asked about."""
    return _asked(name, text).rows(size)


@_told
def measures(name: str, text: str, size: int) -> list[dict[str, Any]]:
    """The measures of a size that can be asked about."""
    return _asked(name, text).measures(size)


@_told
def answer(name: str, text: str, question: Question) -> dict[str, Any]:
    """The answer to a question, with its causes drawn."""
    return _asked(name, text).as_wire(question)


@_told
def note(name: str, text: str, row: int, said: str) -> str:
    """The text with a note below one of its rows."""
    return _asked(name, text).note(row, said)


@_told
def begin_look(_name: str, text: str) -> dict[str, Any]:
    """What a plain pattern tells by itself."""
    return begun.look(text)


@_told
def plan(name: str, text: str, path: str, given: Given) -> dict[str, Any]:
    """The files that would be written, what is missing, the versions that are kept, and the languages there are."""
    seen = seen_of(name, text, None)
    found = files_of(seen, _editions(given, seen))
    return {
        "files": found[:MOST_FILES], "many": len(found), "missing": missing(seen, Path(path)),
        "kept": [k.name for k in kept_versions(Path(path))], "languages": list(languages()),
    }


@_told
def edition(name: str, text: str, given: Given) -> Edition:
    """The edition that one file of a publishing is."""
    seen = seen_of(name, text, None)
    found = edition_of(seen, _editions(given, seen), words(given, "file"))
    if found is None:
        raise CannotOpen("there is no such file in this publishing")
    return found


@_told
def asked_for(name: str, text: str, given: Given) -> editions.Asked:
    """What is to be published; refused where that is nothing, or too much at once."""
    seen = seen_of(name, text, None)
    asked = _editions(given, seen)
    many = len(files_of(seen, asked))
    if not 0 < many <= MOST_FILES:
        raise CannotSave(f"between 1 and {MOST_FILES} files are published at once; this would be {many}")
    return asked


def _editions(given: Given, seen: Seen) -> editions.Asked:
    """What is asked for. Raises CannotOpen for what there is not."""
    known = seen.report.sizes or ("one size",)
    sizes = given.get("sizes", [])
    if not isinstance(sizes, list) or not all(type(s) is int and 0 <= s < len(known) for s in sizes):
        raise CannotOpen("sizes should be numbers of sizes that the design has")
    own = "uk" if seen.document.terms == "uk" else "us"
    return editions.Asked(
        papers=cast("tuple[Paper, ...]", some(given, "papers", get_args(Paper))) or ("a4",),
        terms=some(given, "terms", ("us", "uk")) or (own,), languages=some(given, "languages", languages()) or ("en",),
        sizes=tuple(dict.fromkeys(sizes)), formats=cast("tuple[editions.Format, ...]", some(given, "formats", editions.FORMATS)),
        **{name: given.get(name) is True for name in _SWITCHES},  # type: ignore[arg-type]
    )
