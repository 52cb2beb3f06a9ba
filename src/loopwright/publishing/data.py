"""A document as data that any program can read: JSON by the schema beside this file. Pictures are told by the name of their file.

Lengths are millimetres, yarn metres and grams, time minutes; lists per size follow the order of `sizes`.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from importlib.resources import files
from typing import Any

from loopwright.model.measures import Measures
from loopwright.publishing.document import (
    Block,
    Facts,
    Figure,
    Listing,
    Paragraph,
    Publication,
    Remark,
    Step,
    StepOfSize,
    Table,
    Text,
)

VERSION = 1


def as_json(publication: Publication, measures: Sequence[Measures] = ()) -> str:
    """The document as JSON text.

    `measures`: of the document's sizes, in their order; none where nothing was measured. Raises ValueError for as many as there are not.
    """
    if measures and len(measures) != len(publication.sizes):
        raise ValueError(f"{len(measures)} measures for {len(publication.sizes)} sizes")
    return json.dumps(_whole(publication, measures), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) that every export follows."""
    found: dict[str, Any] = json.loads(files("loopwright.publishing").joinpath("publication.schema.json").read_text(encoding="utf-8"))
    return found


def _whole(held: Publication, measures: Sequence[Measures]) -> dict[str, Any]:
    edition = held.edition
    return {
        "version": VERSION, "title": held.title, "description": held.description, "author": held.author, "pattern_version": held.version,
        "date": held.date, "corrections": held.corrections, "draft": held.draft, "language": held.language,
        "own_language": held.own_language,
        "terms": edition.terms if edition.language == "en" else None, "sizes": list(held.sizes), "sample": held.sample,
        "edition": {
            "one_size": edition.size is not None, "large_print": edition.large_print, "left_handed": edition.left_handed,
            "ink_saving": edition.ink_saving, "words_only": edition.words_only, "spelled_out": edition.spelled_out or edition.large_print,
            "full_words": edition.full_words or edition.large_print,
        },
        "parts": [{"key": p.key, "heading": p.heading, "blocks": [_block(b) for b in p.blocks]} for p in held.parts],
        "measures": [_measures(m) for m in measures],
    }


def _text(text: Text) -> list[Any]:
    return [part if isinstance(part, str) else {"values": list(part.values), "said": part.said} for part in text]


def _block(held: Block) -> dict[str, Any]:
    if isinstance(held, Paragraph):
        return {"kind": "paragraph", "heading": held.heading, "text": _text(held.text), "own": held.own}
    if isinstance(held, Listing):
        return {"kind": "list", "ordered": held.ordered, "items": [_text(t) for t in held.items], "own": held.own}
    if isinstance(held, Facts):
        return {"kind": "facts", "pairs": [{"name": name, "text": _text(text)} for name, text in held.pairs]}
    if isinstance(held, Table):
        return {
            "kind": "table", "caption": held.caption, "corner": held.corner, "columns": list(held.columns), "of_sizes": held.of_sizes,
            "rows": [{"group": r.group, "head": r.head, "cells": list(r.cells)} for r in held.rows], "note": held.note,
        }
    if isinstance(held, Figure):
        return _figure(held)
    return {
        "kind": "section", "id": held.ident, "title": held.title, "film": held.film,
        "steps": [_remark(s) if isinstance(s, Remark) else _row(s) for s in held.steps], "pictures": [_figure(f) for f in held.figures],
    }


def _figure(held: Figure) -> dict[str, Any]:
    return {
        "kind": "picture", "file": held.picture.name, "type": held.picture.kind, "alt": held.alt, "caption": held.caption,
        "description": held.description, "cover": held.cover,
    }


def _remark(held: Remark) -> dict[str, Any]:
    return {"kind": "remark", "text": _text(held.text), "by_size": [t or None for t in held.by_size], "own": held.own}


def _row(held: Step) -> dict[str, Any]:
    return {
        "kind": "row", "id": held.ident, "lead": held.lead, "label": _text(held.label), "words": _text(held.words),
        "count": _text(held.count), "stitches": list(held.counts), "each": [list(e) for e in held.each],
        "by_size": [None if s is None else _of_size(s) for s in held.by_size], "film": held.film,
    }


def _of_size(held: StepOfSize) -> dict[str, str]:
    return {"lead": held.lead, "label": held.label, "words": held.words, "count": held.count}


def _measures(held: Measures) -> dict[str, Any]:
    time = held.time
    minutes = time and {"value_min": round(time.value_min), "low_min": round(time.low_min), "high_min": round(time.high_min)}
    return {
        "size": held.size,
        "dimensions": [
            {
                "section": d.section, "name": d.name, "value_mm": round(d.value_mm, 1), "low_mm": round(d.low_mm, 1),
                "high_mm": round(d.high_mm, 1), "worn": d.worn, "from_shape": d.relaxed,
            }
            for d in held.dimensions
        ],
        "yarn": [
            {
                "colour": y.colour, "length_m": round(y.length_m, 1), "low_m": round(y.low_m, 1), "high_m": round(y.high_m, 1),
                "mass_g": None if y.mass_g is None else round(y.mass_g, 1), "balls": y.balls,
            }
            for y in held.yarn
        ],
        "time": minutes,
        "stitches": dict(held.stitches),
    }
