"""The cautions of a worked pattern, with lengths at its gauge, and as the commands' JSON."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from loopwright.grading.gauge import StitchSizes
from loopwright.model.cautions import CautionDue
from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.source import Source
from loopwright.trade.cautions import cautions_due


def with_cautions(document: Document, report: Report, sizes: StitchSizes | None) -> Report:
    """The report with the cautions that are due, their lengths by `sizes`."""
    return replace(report, cautions=cautions_due(document, sizes, report.fabrics))


def as_json(source: Source, due: Sequence[CautionDue]) -> list[dict[str, Any]]:
    """The cautions as data; one that is hidden from the written pattern is among them, marked."""
    return [
        {
            "name": c.name, "topic": c.topic, "text": c.text, "defer": c.defer, "standard": c.standard or None, "source": c.source,
            "weak": c.weak, "sizes": list(c.sizes) or None, "why": c.why, "told": c.told, "hidden": c.hidden,
            "figures": [
                {
                    "what": f.what, "size": f.size, "line": source.line_of(f.span.start), "found_mm": round(f.found_mm, 1),
                    "from_mm": f.from_mm, "to_mm": f.to_mm, "over": f.over, "by_mm": round(f.by_mm, 1), "how": f.how,
                }
                for f in c.figures
            ],
        }
        for c in due
    ]
