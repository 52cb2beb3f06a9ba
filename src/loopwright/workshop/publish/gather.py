"""The pattern that a document is built from: worked, measured, with its photographs and films."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from loopwright.findings.registry import message, severity
from loopwright.model.tree import HeadLine
from loopwright.publishing.changes import compare
from loopwright.publishing.changes.errata import change_list
from loopwright.publishing.document.pattern import Change, Pattern
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.compare.kept import last_kept
from loopwright.workshop.compare.versions import of_measured, worked
from loopwright.workshop.files import open_source
from loopwright.workshop.film.links import row_films
from loopwright.workshop.grade import finished
from loopwright.workshop.measure import Measured, Wanted, bodies_of, item_of, measure_source
from loopwright.workshop.publish.photographs import photographs

_FILM_OF = re.compile(r"(?:(?P<section>[^=:]{1,60}?)\s*=\s*)?(?P<address>https?://\S+?)(?=[,;]?\s|[,;]?$)")


@record
class Gathered:
    """The pattern for documents, and the measured design it was made from."""

    pattern: Pattern
    measured: Measured


class NothingToPublishError(Exception):
    """A text that holds no row that could be worked."""


def gather(source: Source, wanted: Wanted, folder: Path, design: Path | None = None) -> Gathered:
    """Reads, grades, works and measures a design for publishing; `folder`: where its photographs are looked for.

    `design`: its file, whose last kept version tells what changed since; None for a text without one.

    Raises GaugeError for a gauge that cannot be used, NothingToPublishError where nothing could be worked.
    """
    measured = measure_source(source, wanted)
    report = measured.graded.report
    if report is None or not report.rows:
        raise NothingToPublishError
    document = measured.document
    item, names = item_of(document), document.sizes or ("one size",)
    body = None
    if item is not None:
        what = item.measure or "chest"
        body = (what, tuple(bodies_of(document, what, names)))
    lines = [i for i in document.items if isinstance(i, HeadLine)]
    return Gathered(
        Pattern(
            document, report, measured.gauge.sizes, measured.yarn, measured.sizes, source.line_of, body, finished(measured.graded),
            photographs(lines, folder), _changes(measured, design), _films(lines), row_films(source, document, folder), _errors(measured),
        ),
        measured,
    )


def _changes(measured: Measured, design: Path | None) -> tuple[Change, ...]:
    """What changed since the version that was published last."""
    kept = last_kept(design) if design is not None else None
    before = open_source(str(kept)) if kept is not None else None
    if before is None or before.text == measured.source.text:
        return ()
    changes = compare(worked(before), of_measured(measured))
    heading, lines = change_list(changes)
    return tuple(Change(heading if i == 0 else "", line) for i, line in enumerate(lines))


def _films(lines: list[HeadLine]) -> Mapping[str, str]:
    """Addresses of films by section in small letters, "" for the whole: "Film: https://…" or "Film: Crown = https://…, Body = https://…"."""
    found: dict[str, str] = {}
    for line in lines:
        if line.name == "film":
            for m in _FILM_OF.finditer(line.value):
                found.setdefault((m["section"] or "").strip(" ,;").lower(), m["address"])
    return found


def _errors(measured: Measured) -> tuple[str, ...]:
    """Findings of severity error, in words with their line and sizes."""
    source = measured.source
    return tuple(
        f"line {source.line_of(f.span.start)}: {message(f)}" + (f" [{', '.join(f.sizes)}]" if f.sizes else "")
        for f in measured.findings if severity(f) == "error"
    )
