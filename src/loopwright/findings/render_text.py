"""Findings for a terminal: each under its line of the text, the place marked with carets. Not a table of rows."""

from __future__ import annotations

from collections.abc import Iterable

from loopwright.findings.model import Finding
from loopwright.findings.registry import hints, message, severity, title
from loopwright.source import Source

WIDE = 160  # longer lines are cut around the place
BEFORE = 60
_COLOURS = {"error": "\x1b[31m", "warning": "\x1b[33m", "advice": "\x1b[36m"}
_OFF = "\x1b[0m"


def text(source: Source, findings: Iterable[Finding], colour: bool = False) -> str:
    """All findings, one after the other; "" when there are none. Escape codes only with `colour`."""
    return "\n".join(one(source, f, colour) for f in findings)


def summary(findings: Iterable[Finding]) -> str:
    """How many there are: "1 error, 2 warnings, 3 pieces of advice"; "nothing to mend" when there are none."""
    grades = [severity(f) for f in findings]
    said = [(grades.count("error"), "error", "errors"), (grades.count("warning"), "warning", "warnings")]
    said.append((grades.count("advice"), "piece of advice", "pieces of advice"))
    return ", ".join(f"{n} {single if n == 1 else several}" for n, single, several in said if n) or "nothing to mend"


def one(source: Source, found: Finding, colour: bool = False) -> str:
    """A finding: place and message, the line, carets under the place, hints, and the mend if there is one."""
    place = source.position(found.span.start)
    grade = severity(found)
    on, off = (_COLOURS[grade], _OFF) if colour else ("", "")
    sizes = f" [{', '.join(found.sizes)}]" if found.sizes else ""
    head = f"{source.name}:{place.line}:{place.column}: {on}{grade}{off} {found.code} {title(found)}: {message(found)}{sizes}"
    shown, mark = _marked(source, found)
    lines = [head, f"    {shown}", f"    {on}{mark}{off}"] if shown.strip() else [head]
    lines += [f"    hint: {h}" for h in hints(found)]
    if found.fix is not None:
        lines.append(f"    fix: {found.fix.title}" + ("" if found.fix.safe else " (look at it first)"))
    return "\n".join(lines)


def _marked(source: Source, found: Finding) -> tuple[str, str]:
    place = source.position(found.span.start)
    line = source.line_text(place.line)
    at = place.column - 1
    width = max(1, min(found.span.end - found.span.start, len(line) - at))
    if len(line) > WIDE:
        cut = max(0, at - BEFORE)
        line = ("…" if cut else "") + line[cut : cut + WIDE]
        at -= cut - (1 if cut else 0)
    # tabs stay tabs, so that the carets stand under the right letters whatever a tab is worth
    lead = "".join("\t" if c == "\t" else " " for c in line[:at])
    return line, lead + "^" * max(1, min(width, len(line) - at))
