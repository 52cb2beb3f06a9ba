"""Links from rows to their moment in the film."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl, urlencode, urlsplit, urlunsplit

from loopwright.filming.shots import Plan
from loopwright.filming.timed import Timed
from loopwright.model.tree import Document, HeadLine, Row, Section
from loopwright.source import Source
from loopwright.workshop.files import CannotOpen, open_source

_FILE = re.compile(r"\.(mp4|m4v|mov|webm|mkv|ogv)$", re.IGNORECASE)
_LINKS = re.compile(r"(?<![\w/:])[\w./ -]{1,200}\.json\b")
_ADDRESS = re.compile(r"(?:(?P<section>[^=:,;]{1,60}?)\s*=\s*)?(?P<address>https?://[^\s,;]+)")


def at_moment(address: str, seconds: float) -> str:
    """An address that opens at a second.

    Of files a media fragment (https://www.w3.org/TR/media-frags/), else the query "t" that film sites read (common practice, no source).
    """
    parts = urlsplit(address)
    whole = int(seconds)
    if _FILE.search(parts.path):
        return urlunsplit(parts._replace(fragment=f"t={whole}"))
    query = [(k, v) for k, v in parse_qsl(parts.query, keep_blank_values=True) if k != "t"] + [("t", str(whole))]
    return urlunsplit(parts._replace(query=urlencode(query)))


def addresses(document: Document) -> dict[str, str]:
    """Films that the heading names, by section in small letters, "" for the whole."""
    found: dict[str, str] = {}
    for item in document.items:
        if isinstance(item, HeadLine) and item.name == "film":
            for m in _ADDRESS.finditer(item.value):
                found.setdefault((m["section"] or "").strip().lower(), m["address"])
    return found


def row_films(source: Source, document: Document, folder: Path) -> dict[int, str]:
    """Where each row is in its film, by line of the design, as the links say that the heading names ("Film: film/links.json, https://…").

    Rows are known by their section and their words, so that a design may have changed elsewhere. {} where there are no links, or they
    cannot be read: a document goes without them.
    """
    known = addresses(document)
    named = [m[0] for i in document.items if isinstance(i, HeadLine) and i.name == "film" for m in _LINKS.finditer(i.value)]
    moments: dict[tuple[str, str], float] = {}
    for name in named[:1]:
        try:
            told = json.loads(open_source(str(folder / name)).text)["rows"]
            for row in told:
                moments.setdefault((str(row["section"]), str(row["text"])), float(row["at_s"]))
        except (CannotOpen, ValueError, KeyError, TypeError):
            return {}
    found: dict[int, str] = {}
    section, lines = "", source.text.splitlines()
    for item in document.items:
        if isinstance(item, Section):
            section = item.title
        elif isinstance(item, Row):
            line = source.line_of(item.span.start)
            at = moments.get((section, lines[line - 1].strip() if line <= len(lines) else ""))
            address = known.get(section.split(" (")[0].strip().lower(), known.get("", ""))
            if at is not None and math.isfinite(at) and at >= 0 and address:
                found[line] = at_moment(address, at)
    return found


def links(plan: Plan, film: Timed, document: Document, source: Source) -> dict[str, Any]:
    """Every row with its moment, and the address that opens there where the heading names a film.

    Rows of an instruction that stands for several have the moment of the one that is in the film.
    """
    known = addresses(document)
    whole = known.get("", "")
    rows = []
    lines = source.text.splitlines()
    first: Mapping[tuple[int, int], float] = film.rows
    for i, section in enumerate(plan.sections):
        address = known.get(section.own.split(" (")[0].strip().lower(), whole)
        began: dict[int, float] = {}
        for n, row in enumerate(section.rows):
            at = first.get((i, n), began.get(row.step))
            if at is None:
                continue
            began.setdefault(row.step, at)
            rows.append({
                "section": section.own, "label": row.label, "line": row.line,
                "text": lines[row.line - 1].strip() if 0 < row.line <= len(lines) else "", "at_s": round(at, 3),
                "film": at_moment(address, at) if address else None,
            })
    return {"version": 1, "film": whole or None, "length_s": round(film.length_s, 3), "rows": rows}
