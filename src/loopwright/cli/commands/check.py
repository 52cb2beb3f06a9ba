"""`loopwright check`: rows, counts and findings of patterns."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence

from loopwright.findings.registry import severity
from loopwright.workshop.check import as_json, check_source
from loopwright.workshop.files import CannotOpen, open_source


def run(names: Sequence[str], terms: str | None, as_data: bool) -> int:
    """Checks the files; 1 when a finding is an error, 2 when a file cannot be used."""
    try:
        sources = [open_source(n) for n in names]
    except CannotOpen as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    worst = 0
    files = []
    for source in sources:
        report = check_source(source, terms)
        worst = max(worst, int(any(severity(f) == "error" for f in report.findings)))
        entry = as_json(source, report)
        files.append(entry)
        if not as_data:
            print(table(entry))
            for found in entry["findings"]:
                print(caret(source.name, source.line_text(found["line"]), found), file=sys.stderr)
    if as_data:
        json.dump({"version": 1, "files": files}, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    return worst


def table(entry: dict[str, object]) -> str:
    """The rows of one file, aligned: label, count per size, printed count, and whether they agree."""
    rows = [("row", "makes", "printed", "")]
    section = None
    for r in entry["rows"]:  # type: ignore[attr-defined]
        if r["section"] != section:
            section = r["section"]
            rows.append((f"{section}", "", "", ""))
        made = " ".join("?" if c is None else str(c) for c in r["counts"]) if r["read"] else "not read"
        told = " ".join("-" if c is None else str(c) for c in r["printed"]) if r["printed"] else ""
        rows.append(("  " + (r["label"] or "start"), made, told, {True: "agrees", False: "DISAGREES", None: ""}[r["agrees"]]))
    widths = [max(len(r[i]) for r in rows) for i in range(3)]
    lines = [f"{a:<{widths[0]}}  {b:>{widths[1]}}  {c:>{widths[2]}}  {d}".rstrip() for a, b, c, d in rows]
    head = f"{entry['title'] or entry['file']} ({str(entry['terms']).upper()} terms)"
    said = [f"assumed, line {a['line']}: {a['message']}" for a in entry["assumptions"]]  # type: ignore[attr-defined]
    return "\n".join([head, *lines, *said])


def caret(name: str, line: str, found: dict[str, object]) -> str:
    """A finding under its line, the place marked."""
    column = int(str(found["column"]))
    width = max(1, int(str(found["end_column"])) - column) if found["line"] == found["end_line"] else max(1, len(line) - column + 1)
    shown, offset = (line, 0) if len(line) <= 160 else (line[max(0, column - 60) : column + 80], max(0, column - 60))
    mark = " " * (column - 1 - offset) + "^" * max(1, min(width, len(shown) - (column - 1 - offset)))
    hints = "".join(f"\n    {h}" for h in found["hints"])  # type: ignore[attr-defined]
    return f"{name}:{found['line']}:{column}: {found['severity']} {found['code']}: {found['message']}\n    {shown}\n    {mark}{hints}"
