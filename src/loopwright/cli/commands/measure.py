"""`loopwright measure`: how big, how it lies, how much yarn, how long; and its shape."""

from __future__ import annotations

import json
import sys

from loopwright.cli.terminal import Progress, coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.source import Span
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.measure import Wanted, measure_source
from loopwright.workshop.yarn_at_hand import CannotTellError, with_other_yarn, with_yarn_at_hand


def run(name: str, wanted: Wanted, shapes_in: str | None, *, have: str | None, other_yarn: str | None, as_data: bool) -> int:
    """Measures a pattern; 1 when a finding is an error, 2 when the file, the gauge or the folder cannot be used."""
    progress = Progress() if wanted.shape and sys.stderr.isatty() else None
    try:
        source = open_source(name)
        measured = measure_source(source, wanted)
        if have is not None:
            measured = with_yarn_at_hand(measured, have)
        if other_yarn is not None:
            measured = with_other_yarn(measured, other_yarn)
        written: list[dict[str, str]] = []
        if wanted.shape:
            from loopwright.workshop.shapes import with_shapes, write_shapes

            measured = with_shapes(measured, wanted if progress is None else wanted.with_progress(progress))
            if progress is not None:
                progress.done()
            written = write_shapes(measured, shapes_in) if shapes_in is not None else []
    except (CannotOpen, CannotSave, CannotTellError) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        print(f"loopwright: --gauge: {message(found)}; {'; '.join(hints(found))}", file=sys.stderr)
        return 2
    if as_data:
        from loopwright.workshop.measure_json import as_json

        json.dump({**as_json(measured), **({"files": written} if wanted.shape else {})}, sys.stdout, ensure_ascii=False, allow_nan=False)
        sys.stdout.write("\n")
    else:
        from loopwright.workshop.measure_table import text

        print(text(measured), end="")
        for path in written:
            print(f"written: {path['path']}")
        sys.stdout.flush()
        if measured.findings:
            print(render_text.text(source, measured.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in measured.findings))
