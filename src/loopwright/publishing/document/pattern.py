"""What a document is built from: the pattern, its measures, its pictures. All of it is given; nothing is read or worked here."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.yarn import YarnKnown
from loopwright.model.measures import Measures
from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.publishing.document.blocks import Picture
from loopwright.record import record


@record
class Photograph:
    """A photograph that the design names. `section`: "" for one of the whole; `cover`: the one for the front. `alt`: her words for it, "".

    `picture`: None where the file is missing or cannot be opened; `there`: whether there is such a file.
    """

    file: str
    section: str
    alt: str
    cover: bool
    picture: Picture | None
    there: bool = True


@record
class Drawn:
    """A drawing: its picture, what it shows in words, and the section that it belongs to."""

    picture: Picture
    section: str
    description: str
    notes: tuple[str, ...] = ()


@record
class Change:
    """A change, in words. `since`: "Changes since version 1.2" before the first that is counted from there, "" before those that follow."""

    since: str
    text: str


@record
class Pattern:
    """A pattern worked and measured in all its sizes.

    `measures`: one per size of the document. `body`: the body's measure that it is made to ("head circumference") with its value per size,
    mm, None where not known. `targets`: what each measured part comes to, mm per size, by its name. `line_of`: line of the design by a
    position in its text. `errors`: what is wrong in which sizes, in words; a document with any is a draft. `film`: addresses by section in
    small letters, "" for the whole; `film_rows`: where a row is in its film, by line of the design. `translations`: of the designer's own
    words, by language (see wording/translations.py).
    """

    document: Document
    report: Report
    gauge: StitchSizes | None
    yarn: YarnKnown
    measures: tuple[Measures, ...]
    line_of: Callable[[int], int]
    body: tuple[str, tuple[float | None, ...]] | None = None
    targets: Mapping[str, tuple[float | None, ...]] = field(default_factory=dict)
    photographs: tuple[Photograph, ...] = ()
    changes: tuple[Change, ...] = ()
    film: Mapping[str, str] = field(default_factory=dict)
    film_rows: Mapping[int, str] = field(default_factory=dict)
    errors: tuple[str, ...] = ()
    translations: Mapping[str, Mapping[str, str]] = field(default_factory=dict)

    @property
    def sizes(self) -> tuple[str, ...]:
        """Names of the sizes; "one size" where it has one without a name."""
        return self.document.sizes or ("one size",)


@record
class Pictures:
    """The drawings of an edition. `cover`: the fabric as it looks, for where there is no photograph."""

    charts: tuple[Drawn, ...] = ()
    schematics: tuple[Drawn, ...] = ()
    cover: Drawn | None = None
