"""`loopwright listen`: a draft of the written pattern out of a lesson's captions."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from loopwright.cli.terminal import coloured
from loopwright.findings import render_text
from loopwright.findings.registry import severity
from loopwright.workshop.files import CannotOpen, CannotSave, open_source, write_whole
from loopwright.workshop.listen import Listened, clock, listen_to


def run(captions: str, out: str | None, terms: str | None, *, force: bool, as_data: bool) -> int:
    """Writes the draft; 1 when no row was heard or a finding is an error, 2 when a file cannot be used."""
    try:
        source = open_source(captions)
        path = None if out is None else Path(out)
        if path is not None and path.exists() and not force:
            print(f"loopwright: {path} is there already: choose another name with -o, or replace it with --force", file=sys.stderr)
            return 2
        heard = listen_to(source.text, source.name, terms)
        if path is not None and heard.report:
            write_whole(path, heard.draft.text)
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    if as_data:
        json.dump({"version": 1, "files": [heard.as_json()]}, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        _told(heard, path)
    if heard.report is None:
        if not as_data:
            print(f"loopwright: {source.name}: {heard.draft.note}", file=sys.stderr)
        return 1
    return int(any(severity(f) == "error" for f in heard.report.findings))


def _told(heard: Listened, path: Path | None) -> None:
    """The draft, or where it was written; then, on standard error, when each row is worked, what was found, and what was assumed."""
    if heard.report is None:
        return
    if path is None:
        sys.stdout.write(heard.draft.text)
        sys.stdout.flush()
    else:
        print(f"written: {path}\nnext:    loopwright check {path}")
    for row in heard.rows():
        count = "-" if row["counts"][0] is None else row["counts"][0]
        print(f"{clock(row['at_s'])}  {row['label']}  {count}", file=sys.stderr)
    for doubt in heard.draft.doubts:
        quoted = f"“{doubt.words}”: " if doubt.words else ""
        print(f"assumed, {clock(doubt.at_s)}: {quoted}{doubt.assumed}", file=sys.stderr)
    if heard.report.findings:
        print(render_text.text(heard.source, heard.report.findings, colour=coloured(sys.stderr)), file=sys.stderr)
