"""The JSON of `loopwright compare`: changes with their values per size; lengths in mm, yarn in metres."""

from __future__ import annotations

from typing import Any

from loopwright.publishing.changes import Change, Changes, Version
from loopwright.publishing.changes.errata import Erratum, change_list, errata
from loopwright.publishing.changes.page import page
from loopwright.source import Source


def as_json(changes: Changes, old: Source, new: Source) -> dict[str, Any]:
    """The command's JSON. Values per size follow the order of the `sizes` beside them."""
    told = errata(changes)
    head, lines = change_list(changes)
    p = changes.pairing
    return {
        "version": 1, "title": changes.title, "identical": changes.identical, "wording_only": changes.wording_only, "none": changes.none,
        "old": _side(old, changes.old_title, changes.old_version, changes.terms[0], changes.old_errors),
        "new": _side(new, changes.title, changes.new_version, changes.terms[1], changes.new_errors),
        "sizes": list(changes.sizes),
        "renamed_sizes": [{"was": a, "now": b} for a, b in p.renamed], "added_sizes": list(p.added), "removed_sizes": list(p.removed),
        "changes": [_change(c, e, old, new) for c, e in zip(changes.changes, told, strict=True)],
        "measurements": [
            {
                "section": n.section, "name": n.name, "worn": n.worn, "sizes": list(n.sizes), "was_mm": list(n.was_mm),
                "now_mm": list(n.now_mm),
            }
            for n in changes.lengths
        ],
        "yarn": [{"colour": y.colour, "sizes": list(y.sizes), "was_m": list(y.was_m), "now_m": list(y.now_m)} for y in changes.yarn],
        "change_list": {"heading": head, "lines": list(lines)},
        "notes": list(changes.notes), "warnings": list(changes.warnings), "text": page(changes, notes=False),
    }


def _side(source: Source, title: str | None, version: Version | None, terms: str, errors: int) -> dict[str, Any]:
    return {
        "file": source.name, "title": title, "terms": terms, "errors": errors,
        "edition": None if version is None else {"name": version.name, "date": version.date, "numbers": list(version.numbers)},
    }


def _change(c: Change, e: Erratum, old: Source, new: Source) -> dict[str, Any]:
    return {
        "severity": c.severity, "what": c.what, "section": c.section, "label": c.label or None, "heading": c.heading or None,
        "sizes": list(c.sizes), "was": list(c.was), "now": list(c.now), "of": c.noun or None, "detail": c.detail or None,
        "old_text": c.old_text, "new_text": c.new_text,
        "old_line": None if c.old_at is None else old.line_of(c.old_at), "new_line": None if c.new_at is None else new.line_of(c.new_at),
        "follows": [
            {"section": f.section, "label": f.label, "what": f.what, "sizes": list(f.sizes), "was": list(f.was), "now": list(f.now)}
            for f in c.follows
        ],
        "erratum": {"where": e.where, "what": e.what, "concerned": e.concerned, "unconcerned": e.unconcerned, "follows": e.follows},
    }
