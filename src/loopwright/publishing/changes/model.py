"""What changed between two versions of a design: frozen data, that errata, change lists and JSON are made of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from loopwright.model.cautions import CautionDue
from loopwright.model.measures import Measures
from loopwright.model.report import Report
from loopwright.model.tree import Document

Severity = Literal["safety", "size", "count", "materials", "wording"]
SEVERITIES: tuple[Severity, ...] = ("safety", "size", "count", "materials", "wording")
"""From the gravest. "safety": cautions and lengths that endanger; "size": size or fit comes out otherwise; "count": stitches or rows;
"materials": what is bought; "wording": words only, on the same fabric."""

What = Literal[
    "count", "stitches", "places", "rows", "added", "removed", "moved", "renamed", "renumbered", "printed", "unworkable", "workable",
    "heading", "caution", "sizes", "copies", "wording",
]
Value = int | str | None


@dataclass(frozen=True, slots=True)
class Version:
    """A version as the heading tells it: "1.3", and its date as written, "" for none. `numbers`: (1, 3), () where it has no number."""

    name: str
    date: str = ""
    numbers: tuple[int, ...] = ()

    @property
    def text(self) -> str:
        """As in "1.3 (2026-11-20)"."""
        return " ".join(p for p in (self.name, f"({self.date})" if self.date and self.name else self.date) if p)


@dataclass(frozen=True, slots=True)
class GaugeFact:
    """The gauge in numbers: kind of stitch (US key), width and height of one stitch in mm. `guessed`: nobody measured it."""

    kind: str
    stitch_mm: float
    row_mm: float
    guessed: bool = False


@dataclass(frozen=True, slots=True)
class Worked:
    """One version, read, graded and worked: all that comparing needs.

    `document` has its blanks filled. `measures`: one per size, or none where nothing was measured. `errors`: how many findings of
    severity error it has.
    """

    document: Document
    report: Report | None
    measures: tuple[Measures, ...] = ()
    gauge: GaugeFact | None = None
    cautions: tuple[CautionDue, ...] = ()
    version: Version | None = None
    errors: int = 0

    @property
    def sizes(self) -> tuple[str, ...]:
        """Names of its sizes, at least one."""
        return self.document.sizes or ("one size",)


@dataclass(frozen=True, slots=True)
class Pairing:
    """Which size of the old version is which of the new: `pairs` of indexes, in the new version's order."""

    pairs: tuple[tuple[int, int], ...]
    renamed: tuple[tuple[str, str], ...] = ()
    added: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Diff:
    """One row of one size that is not what it was. `own`: its own words changed; else it follows from something that stands before it.

    `pair`: index of the pair of sizes. `old`, `new`: indexes of the items, None for none. `order`: place in the text. `detail`: words.
    """

    what: What
    pair: int
    old: int | None
    new: int | None
    order: int
    section: str | None
    label: str
    was: Value = None
    now: Value = None
    noun: str = ""
    detail: str = ""
    own: bool = True
    part: int = 0


@dataclass(frozen=True, slots=True)
class Follow:
    """A row that is otherwise because of a change before it; values per size, in the order of `sizes`."""

    section: str | None
    label: str
    sizes: tuple[str, ...]
    was: tuple[Value, ...] = ()
    now: tuple[Value, ...] = ()
    noun: str = ""
    what: What = "count"


@dataclass(frozen=True, slots=True)
class Change:
    """One entry of the change list.

    `sizes`: the sizes it concerns, by their new names, () where it concerns the design as a whole; `was` and `now` have a value for each of
    them. `noun`: what the values count. `detail`: what is not said in values. `old_text`, `new_text`: the words, "" for none. `heading`:
    name of the heading's line. `follows`: rows that are otherwise because of it. `old_item`, `new_item`: the items of the trees, and
    `old_at`, `new_at`: where these begin in the texts. `begun`: the row from which on a maker is concerned.
    """

    what: What
    severity: Severity
    section: str | None = None
    label: str = ""
    sizes: tuple[str, ...] = ()
    was: tuple[Value, ...] = ()
    now: tuple[Value, ...] = ()
    noun: str = ""
    detail: str = ""
    old_text: str = ""
    new_text: str = ""
    heading: str = ""
    follows: tuple[Follow, ...] = ()
    old_item: int | None = None
    new_item: int | None = None
    old_at: int | None = None
    new_at: int | None = None
    begun: str = ""


@dataclass(frozen=True, slots=True)
class Length:
    """A finished measurement that changed, per size, in mm; None where a size has it in one version alone."""

    section: str | None
    name: str
    worn: bool
    sizes: tuple[str, ...]
    was_mm: tuple[float | None, ...]
    now_mm: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Yarn:
    """Yarn that is needed otherwise, per size, in metres; None where a size has this colour in one version alone."""

    colour: str
    sizes: tuple[str, ...]
    was_m: tuple[float | None, ...]
    now_m: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Changes:
    """Everything that changed. `sizes`: those that both versions have, by their new names; `identical`: not a character differs.

    `all_sizes`: every size of the new version. `notes`: what a reader of the comparison must know of it, `warnings` what is to be mended.
    """

    title: str | None
    old_title: str | None
    old_version: Version | None
    new_version: Version | None
    terms: tuple[str, str]
    sizes: tuple[str, ...]
    all_sizes: tuple[str, ...]
    pairing: Pairing
    changes: tuple[Change, ...] = ()
    lengths: tuple[Length, ...] = ()
    yarn: tuple[Yarn, ...] = ()
    notes: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    identical: bool = False
    old_errors: int = 0
    new_errors: int = 0

    @property
    def none(self) -> bool:
        """Whether nothing that a maker would notice changed."""
        return not (self.changes or self.lengths or self.yarn)

    @property
    def wording_only(self) -> bool:
        """Whether the fabric of every size is as it was, and only words changed."""
        return bool(self.changes) and all(c.severity == "wording" for c in self.changes) and not (self.lengths or self.yarn)


@dataclass(frozen=True, slots=True)
class Told:
    """Diffs of one item gathered over the sizes, before they are worded."""

    head: Diff
    by_pair: dict[int, Diff] = field(default_factory=dict)
    follows: list[Diff] = field(default_factory=list)

    @property
    def pairs(self) -> Sequence[int]:
        """Indexes of the pairs of sizes, in order."""
        return sorted(self.by_pair)
