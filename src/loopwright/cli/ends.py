"""How commands end: what was found, on standard error, with its exit code; what they cannot use, in one sentence."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from loopwright.cli.terminal import coloured
from loopwright.findings import Finding
from loopwright.findings.registry import hints, message, severity
from loopwright.source import Source, Span
from loopwright.workshop.files import CannotOpen, CannotSave


def refusal(error: Exception) -> str | None:
    """What is said of a file, a folder, a gauge or an amount that cannot be used; None for any other error."""
    from loopwright.grading import GaugeError
    from loopwright.workshop.yarn_at_hand import CannotTellError

    if isinstance(error, (CannotOpen, CannotSave, CannotTellError)):
        return str(error)
    if isinstance(error, GaugeError):
        found = Finding(error.code, Span(0, 0), error.facts)
        return f"--gauge: {message(found)}; {'; '.join(hints(found))}"
    return None


def found(source: Source, findings: Sequence[Finding], *, silent: bool = False) -> int:
    """Prints what was found after what was written to standard output, unless `silent`; 1 where a finding is an error."""
    sys.stdout.flush()
    if findings and not silent:
        from loopwright.findings import render_text

        print(render_text.text(source, findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in findings))
