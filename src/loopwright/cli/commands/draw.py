"""`loopwright draw`: charts, schematics, pictures of the fabric and its solid shape, into a folder."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict

from loopwright.cli.terminal import Progress, coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.source import Span
from loopwright.workshop.draw import Sheet, draw
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.measure import Wanted, measure_source


def run(name: str, wanted: Wanted, sheet: Sheet, folder: str, *, as_data: bool) -> int:
    """Draws a pattern; 1 when a finding is an error, 2 when the file, the gauge or the folder cannot be used."""
    progress = Progress() if sys.stderr.isatty() else None
    try:
        source = open_source(name)
        measured = measure_source(source, wanted)
        measured, files = draw(measured, wanted if progress is None else wanted.with_progress(progress), sheet, folder)
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        print(f"loopwright: --gauge: {message(found)}; {'; '.join(hints(found))}", file=sys.stderr)
        return 2
    finally:
        if progress is not None:
            progress.done()
    if as_data:
        data = {"version": 1, "title": measured.document.title, "files": [asdict(f) for f in files], "notes": list(measured.notes)}
        json.dump(data, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        print("\n".join(f"{f.what:<10} {f.size:<12} {f.path}" for f in files) or "nothing was drawn")
        print("".join(f"note: {note}\n" for note in measured.notes), end="")
        sys.stdout.flush()
        if measured.findings:
            print(render_text.text(source, measured.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in measured.findings))
