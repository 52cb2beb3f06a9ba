"""A plan, and what a log makes of it, as the studio shows them: the same plan, cards and texts as the command writes."""

from __future__ import annotations

from typing import Any

from loopwright.filming.log import row_name, shot_name
from loopwright.filming.phrases import languages
from loopwright.filming.shots import Plan, plan
from loopwright.source import Source
from loopwright.workshop.film.along import Along, along
from loopwright.workshop.film.choice import Choice
from loopwright.workshop.film.gather import CannotFilm, Filmed, gather


def planned(source: Source, choice: Choice) -> tuple[Filmed, Plan]:
    """The plan of a choice. Raises CannotFilm."""
    filmed = gather(
        source, choice.size or None, terms=choice.terms or None, language=choice.language, left_handed=choice.left_handed,
    )
    try:
        return filmed, plan(filmed.facts)
    except LookupError:
        raise CannotFilm(f"there are no words for a film in {choice.language!r}: choose one of {', '.join(languages())}") from None


def plan_as_wire(filmed: Filmed, made: Plan) -> dict[str, Any]:
    """The plan for the pages: sections with their rows, shots, pieces to have ready; what the log calls each row and shot."""
    at_s = 0.0
    shots = []
    for s in made.shots:
        shots.append({
            "number": s.number, "kind": s.kind, "section": s.section, "row": s.row, "label": s.label, "say": s.say, "show": s.show,
            "screen": s.screen, "count": s.count, "length_s": s.length_s, "at_s": round(at_s, 1), "log": shot_name(made, s),
        })
        at_s += s.length_s
    notes = [*made.notes]
    if filmed.measured.gauge.sizes is None:
        notes.append("The design has no gauge: no measures and no pictures of the work; add a Gauge line.")
    return {
        "title": made.title, "size": made.size, "sizes": list(filmed.facts.sizes), "terms": made.terms, "language": made.language,
        "languages": list(languages()), "left_handed": made.left_handed, "length_s": round(made.length_s, 1), "shots": shots,
        "sections": [{"title": s.title, "rows": _rows(made, i)} for i, s in enumerate(made.sections)],
        "pieces": [{"section": s.section, "label": s.label, "count": s.count, "work_s": round(s.work_s)} for s in made.swaps],
        "notes": notes,
    }


def _rows(made: Plan, section: int) -> list[dict[str, Any]]:
    return [
        {
            "label": r.label, "words": r.words, "count": r.count, "others": list(r.others), "line": r.line,
            "log": row_name(made, section, n),
        }
        for n, r in enumerate(made.sections[section].rows)
    ]


def log_as_wire(source: Source, filmed: Filmed, made: Plan, log: str) -> dict[str, Any]:
    """What a log gives: when shots and rows begin, chapters, captions, the description; all files as texts. `why`: why there is nothing."""
    try:
        found = along(source, filmed, made, log)
    except CannotFilm as e:
        return {"why": str(e), "shots": [], "rows": [], "notes": [], "chapters": [], "captions": [], "files": [], "length_s": 0.0}
    return {**_times(found), "why": "", "notes": list(found.notes), "length_s": round(found.film.length_s, 3)}


def _times(found: Along) -> dict[str, Any]:
    return {
        "shots": [
            {"number": e.shot, "section": e.section, "row": e.row, "at_s": e.at_s, "line": e.line, "alone": e.alone}
            for e in found.log.entries
        ],
        "rows": [{"section": i, "row": n, "at_s": at} for (i, n), at in sorted(found.film.rows.items())],
        "chapters": [{"at": at, "title": title} for at, title in found.chapters.lines()],
        "captions": [
            {
                "called": s.called, "tag": s.tag,
                "cues": [{"start_s": c.start_s, "end_s": c.end_s, "lines": list(c.lines)} for c in s.captions.cues],
            }
            for s in found.spoken
        ],
        "files": [{"name": t.name, "text": t.text, "description": t.description} for t in found.texts],
    }
