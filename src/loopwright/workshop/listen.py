"""A lesson's captions, taken down, worked and checked like any pattern: the draft with the time of each of its rows."""

from __future__ import annotations

from typing import Any

from loopwright.listening import Draft, listen
from loopwright.model.report import Report
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source


@record
class Listened:
    """What became of a lesson. `source`: the draft as a pattern; `report`: what is true of it, None where no row was heard."""

    name: str
    draft: Draft
    source: Source
    report: Report | None

    def rows(self) -> list[dict[str, Any]]:
        """The rows as `check` tells them, each with `at_s` and `until_s`: seconds, None without times."""
        return self.as_json()["rows"] if self.report else []

    def as_json(self) -> dict[str, Any]:
        """The file's entry: as `check`, with `at_s` and `until_s` per row, `text`, `doubts`, and `note` where there is no row."""
        if self.report is None:
            head: dict[str, Any] = {"file": self.name, "title": None, "terms": self.draft.terms, "language": "en"}
            nothing: dict[str, Any] = {name: [] for name in ("sizes", "rows", "assumptions", "findings", "cautions", "doubts")}
            return {**head, **nothing, "text": "", "note": self.draft.note}
        entry = as_json(self.source, self.report)
        times = {t.line: (t.at_s, t.until_s) for t in self.draft.rows}
        for row in entry["rows"]:
            row["at_s"], row["until_s"] = times.get(row["line"], (None, None))
        entry["rows"] = [r for r in entry["rows"] if r["line"] in times]
        doubts = [{"at_s": d.at_s, "words": d.words, "assumed": d.assumed, "line": d.line} for d in self.draft.doubts]
        return {**entry, "file": self.name, "text": self.draft.text, "doubts": doubts, "note": None}


def listen_to(captions: str, name: str = "captions", terms: str | None = None) -> Listened:
    """The draft of a lesson out of the text of its captions, worked and checked. Never raises for bad captions: `draft.note` says why."""
    draft = listen(captions, terms)
    source = Source.of(draft.text, f"draft of {name}")
    return Listened(name, draft, source, check_source(source, None) if draft.text else None)


def clock(at_s: float | None) -> str:
    """A second of a film as its clock shows it: "12:05", "1:02:05"; a dash without times."""
    if at_s is None:
        return "-"
    whole = int(at_s)
    minutes = f"{whole // 60 % 60}:{whole % 60:02}"
    return minutes if whole < 3600 else f"{whole // 3600}:{minutes.zfill(5)}"
