"""A lesson's captions, taken down, worked and checked like any pattern: the draft with the time of each of its rows."""

from __future__ import annotations

from bisect import bisect_right
from typing import Any

from loopwright.listening import Draft, listen
from loopwright.listening.captions import heard as heard_words
from loopwright.listening.draft import MOST_WORDS
from loopwright.model.report import Report
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source

_ROUNDED_S = 0.005  # times of rows are told in hundredths


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


def beside(heard: Listened, captions: str) -> list[dict[str, Any]]:
    """The words of the captions, cue by cue, cut where another row begins: to stand beside the draft.

    Each cue has `at_s` and `until_s`, its `line` of the captions, and `pieces`: `words` and the `line` of the draft that is worked while
    they are said, None where no row is.
    """
    cues: list[dict[str, Any]] = []
    times = sorted(((t.at_s, t.until_s, t.line) for t in heard.draft.rows if t.at_s is not None), key=lambda t: t[0] or 0.0)
    starts = [at for at, _, _ in times if at is not None]
    for word in heard_words(captions)[:MOST_WORDS]:
        row: int | None = None
        if word.at_s is not None and (n := bisect_right(starts, word.at_s + _ROUNDED_S)):
            _, until, line = times[n - 1]
            row = line if until is None or word.at_s < until else None
        if not cues or cues[-1]["line"] != word.line:
            cues.append({"at_s": _tenth(word.at_s), "until_s": _tenth(word.end_s), "line": word.line, "pieces": []})
        cue = cues[-1]
        cue["until_s"] = _tenth(word.end_s)
        if cue["pieces"] and cue["pieces"][-1]["line"] == row:
            cue["pieces"][-1]["words"] += f" {word.word}"
        else:
            cue["pieces"].append({"words": word.word, "line": row})
    return cues


def as_log(heard: Listened) -> str:
    """The times of the rows as the log of a film: lines that `loopwright film --log` reads; "" without times."""
    lines = [f"{exact(t['at_s'])} {', '.join(x for x in (t['section'], t['label']) if x)}" for t in heard.rows() if t["at_s"] is not None]
    first: dict[str, str] = {}
    for line in lines:
        first.setdefault(line.partition(" ")[0], line)
    return "".join(f"{line}\n" for line in first.values())


def exact(at_s: float) -> str:
    """A second of a film to a tenth: "12:05.3"."""
    return f"{clock(at_s)}.{int(at_s * 10) % 10}"


def _tenth(at_s: float | None) -> float | None:
    return None if at_s is None else round(at_s, 1)


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
