"""The technical editor's proof of a design: what was checked and found right, what is open, what is left; and her report as text."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from loopwright.checks import RULES
from loopwright.findings import Finding
from loopwright.findings.registry import hints, message, severity
from loopwright.record import record
from loopwright.workshop.left import place_of
from loopwright.workshop.live import Seen

_SAID = {"error": "Stops here", "warning": "Look again", "advice": "A thought"}


@record
class Checked:
    """What was looked at.

    `counts`: printed counts, one for each row and size, and how many `agree` with what is worked; `rows`: rows that were worked, of
    `of_rows`; `rules` of the technical editor's, and how many are `quiet`; `stitches`: of all `sizes` together.
    """

    counts: int
    agree: int
    rows: int
    of_rows: int
    rules: int
    quiet: int
    stitches: int
    sizes: int

    @property
    def right(self) -> int:
        """Things that were checked and found right: counts that agree, and rules that found nothing."""
        return self.agree + self.quiet


def checked(seen: Seen) -> Checked:
    """What was checked of a text."""
    report = seen.report
    counts = agree = 0
    for row in report.rows:
        for i, printed in enumerate(row.printed or ()):
            if printed is not None:
                counts += 1
                agree += printed == row.counts[i] or (row.agrees is True and row.with_chains is not None and printed == row.with_chains[i])
    found = {f.code for f in (*report.findings, *(f for f, _ in seen.left)) if f.code.startswith("C")}
    stitches = sum(len(f) for f in report.fabrics if f is not None)
    quiet = max(0, len(RULES) - len(found))
    rows = sum(r.read for r in report.rows)
    return Checked(counts, agree, rows, len(report.rows), len(RULES), quiet, stitches, max(1, len(report.sizes)))


def proof(seen: Seen) -> dict[str, Any]:
    """What was checked, as data: the line that says what was found right."""
    c = checked(seen)
    return {
        "right": c.right, "counts": c.counts, "agree": c.agree, "rows": c.rows, "of_rows": c.of_rows, "rules": c.rules, "quiet": c.quiet,
        "stitches": c.stitches, "sizes": c.sizes, "left": len(seen.left),
        "safe": sum(f.fix is not None and f.fix.safe for f in seen.report.findings),
    }


def report_text(seen: Seen) -> str:
    """The technical-editing report as plain text: every finding with its place and reason, what is left and why, what was found right."""
    lines = [f"Technical editing: {seen.document.title or seen.source.name}"]
    version = next((i.value for i in seen.document.items if getattr(i, "name", None) == "version" and hasattr(i, "value")), "")
    lines += [f"Version {version}"] * bool(version) + [_counted(seen), ""]
    findings = seen.report.findings
    for word in ("error", "warning", "advice"):
        these = [f for f in findings if severity(f) == word]
        if these:
            lines += [_SAID[word], "-" * len(_SAID[word])]
            for f in these:
                lines += _entry(seen, f)
            lines.append("")
    if seen.left:
        lines += ["Left as it is", "-------------"]
        for f, why in seen.left:
            lines += [*_entry(seen, f), f"    Left, because {why}" if why else "    Left without a reason"]
        lines.append("")
    lines += list(_assumed(seen))
    return "\n".join(lines).rstrip() + "\n"


def _counted(seen: Seen) -> str:
    c = checked(seen)
    sizes = "1 size" if c.sizes == 1 else f"{c.sizes} sizes"
    open_ones = len(seen.report.findings)
    said = f"{c.rows} of {c.of_rows} rows worked in {sizes}, {c.stitches:,} stitches. {c.agree} of {c.counts} printed counts are right; "
    return said + f"{c.quiet} of {c.rules} rules found nothing. {open_ones or 'Nothing'} open, {len(seen.left)} left as they are."


def _entry(seen: Seen, found: Finding) -> Iterator[str]:
    line = seen.source.line_of(found.span.start)
    yield f"{place_of(seen.document, found.span.start)} (line {line}, {found.code}): {_sentence(message(found))}"
    yield f"    > {seen.source.line_text(line).strip()}"
    if found.sizes:
        yield f"    Sizes: {', '.join(found.sizes)}"
    for hint in hints(found):
        yield f"    {_sentence(hint)}"
    if found.fix is not None:
        yield f"    Mend: {_sentence(found.fix.title)}"


def _assumed(seen: Seen) -> Iterator[str]:
    if seen.report.assumptions:
        yield from ("Taken as", "--------")
        for a in seen.report.assumptions:
            yield f"Line {seen.source.line_of(a.span.start)}: {_sentence(a.message)}"


def _sentence(words: str) -> str:
    said = words[:1].upper() + words[1:]
    return said if said.endswith((".", "!", "?")) else f"{said}."
