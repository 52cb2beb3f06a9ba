"""What is true of a worked pattern, row by row: counts per size, printed counts, assumptions, findings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import field
from typing import TYPE_CHECKING

from loopwright.record import record

if TYPE_CHECKING:
    from loopwright.findings import Finding
    from loopwright.model.cautions import CautionDue
    from loopwright.model.fabric import Fabric
    from loopwright.source import Span


@record
class RowReport:
    """One worked row. Lists are per size; None where the size does not work the row or its count is not known.

    `item` is the index of the tree's item that asked for it. `confirmed`: its printed count says the same, or a confirmed row
    that is worked on every stitch of it does; a count that told where an earlier row began confirms nothing.
    """

    section: str | None
    label: str
    span: Span
    item: int
    read: bool
    counts: tuple[int | None, ...]
    with_chains: tuple[int | None, ...] | None
    made: dict[str, tuple[int | None, ...]]
    printed: tuple[int | None, ...] | None
    printed_noun: str | None
    agrees: bool | None
    confirmed: bool
    why_not: str | None = None


@record
class Assumption:
    """A choice that the words left open and that the result depends on."""

    span: Span
    message: str


@record
class Report:
    """A pattern worked in all its sizes. `fabrics` has one fabric per size (None where it could not be worked), woven when it is looked at.

    `language`: code of the language the pattern is written in. `cautions`: those that are due, None where nobody looked for them.
    """

    title: str | None
    terms: str
    sizes: tuple[str, ...]
    rows: tuple[RowReport, ...]
    assumptions: tuple[Assumption, ...]
    findings: tuple[Finding, ...]
    fabrics: Sequence[Fabric | None] = field(default=(), compare=False)
    cautions: tuple[CautionDue, ...] | None = None
    language: str = "en"
