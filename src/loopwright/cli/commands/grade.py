"""`loopwright grade`: a design in every size, with the numbers, their errors, and the written pattern."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence

from loopwright.cli.terminal import coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.source import Span
from loopwright.workshop.files import CannotOpen, open_source
from loopwright.workshop.grade import as_json, grade_design, sources, tables


def run(name: str, sizes: Sequence[str] | None, gauge: str | None, terms: str | None, own_words: bool, as_data: bool) -> int:
    """Grades a design; 1 when a finding is an error, 2 when the file or the gauge cannot be used."""
    try:
        source = open_source(name)
        sized = grade_design(source, sizes, gauge, terms, own_words=own_words)
    except CannotOpen as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        print(f"loopwright: --gauge: {message(found)}; {'; '.join(hints(found))}", file=sys.stderr)
        return 2
    if as_data:
        json.dump(as_json(sized), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        held = sized.graded.gauge.text if sized.graded.gauge else "no gauge"
        many = len(sized.graded.sizes)
        print(f"{sized.graded.document.title or source.name}: {many} size{'s' if many > 1 else ''} at {held} (lengths in cm)\n")
        print(tables(sized.graded))
        told = sources(sized.graded)
        print(f"\nBody measurements\n{told}" if told else "")
        print(f"\n{sized.texts[0] if len(sized.texts) == 1 else sized.text}", end="")
        sys.stdout.flush()
        if sized.findings:
            print(render_text.text(source, sized.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in sized.findings))
