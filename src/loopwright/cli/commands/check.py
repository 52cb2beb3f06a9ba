"""`loopwright check`: rows, counts and findings of patterns."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from typing import Any

from loopwright.cli.terminal import coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import severity
from loopwright.source import Source
from loopwright.terms.reading import LANGUAGES
from loopwright.workshop.check import as_json, check_source
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.mend import mend_file

MANY = 3  # from so many files on, progress is worth a line


def run(names: Sequence[str], terms: str | None, as_data: bool, fix: bool = False) -> int:
    """Checks the files, with `fix` after the safe mends were put in; 1 when a finding is an error, 2 when a file cannot be used."""
    try:
        sources = [open_source(n) for n in names]
        if fix:
            sources = [_mended(s.name, terms) for s in sources]
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    found: list[Finding] = []
    files = []
    for number, source in enumerate(sources, 1):
        _progress(number, len(sources), source.name)
        report = check_source(source, terms)
        found += report.findings
        entry = as_json(source, report)
        files.append(entry)
        if not as_data:
            _progress(0, len(sources), "")
            print(table(entry))
            sys.stdout.flush()  # so that a file's findings come after its rows when both go to one place
            if report.findings:
                print(render_text.text(source, report.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    _progress(0, len(sources), "")
    if as_data:
        json.dump({"version": 1, "files": files}, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        print(render_text.summary(found), file=sys.stderr)
    return int(any(severity(f) == "error" for f in found))


def _mended(name: str, terms: str | None) -> Source:
    """Mends a file, says on standard error what was changed, and gives its text as it stands now."""
    if name == "-":
        raise CannotOpen("--fix changes files where they stand, and standard input is none: save the pattern as a file first")
    done = mend_file(name, terms)
    for m in done:
        print(f"{name}:{m.line}: {m.title}\n  - {m.before}\n  + {m.after}", file=sys.stderr)
    if not done:
        print(f"{name}: nothing that is safe to mend", file=sys.stderr)
    return open_source(name)


def _progress(number: int, of: int, name: str) -> None:
    """One line on a terminal that overwrites itself; number 0 wipes it."""
    if of >= MANY and sys.stderr.isatty():
        sys.stderr.write(f"\r\x1b[K{f'{number} of {of}: {name}' if number else ''}")
        sys.stderr.flush()


def table(entry: dict[str, Any]) -> str:
    """The rows of one file, aligned: label, count per size, printed count, and whether they agree."""
    rows = [("row", "makes", "printed", "")]
    section = None
    for r in entry["rows"]:
        unnamed = "then"
        if r["section"] != section or len(rows) == 1:
            section, unnamed = r["section"], "first" if set(r["made"] or ()) - {"ch"} else "start"
            if section or len(rows) > 1:
                rows.append((section or "", "", "", ""))
        rows.append(("  " + (r["label"] or unnamed), *_figures(r)))
    widths = [max(len(r[i]) for r in rows) for i in range(3)]
    lines = [f"{a:<{widths[0]}}  {b:>{widths[1]}}  {c:>{widths[2]}}  {d}".rstrip() for a, b, c, d in rows]
    terms = f"{str(entry['terms']).upper()} terms" if entry["language"] == "en" else f"in {LANGUAGES[entry['language']]}"
    head = f"{entry['title'] or entry['file']} ({terms})"
    said = [f"assumed, line {a['line']}: {a['message']}" for a in entry["assumptions"]]
    return "\n".join([head, *lines, *said])


def _figures(row: dict[str, Any]) -> tuple[str, str, str]:
    made = _list(row["counts"], "-") if row["read"] else "not read"
    told = _list(row["printed"], "-") if row["printed"] else ""
    return made, told, {True: "agrees", False: "DISAGREES", None: ""}[row["agrees"]]


def _list(counts: Sequence[int | None], none: str) -> str:
    """Counts of the sizes, short where all are the same."""
    said = [none if c is None else str(c) for c in counts]
    return said[0] if len(set(said)) == 1 else " ".join(said)
