"""The plan as a table, comma-separated, for a spreadsheet."""

from __future__ import annotations

import csv
import io

from loopwright.filming.shots import Plan

COLUMNS = ("shot", "kind", "section", "row", "say", "show", "on the picture", "count", "planned s", "from")
_RISKY = ("=", "+", "-", "@", "\t")


def table(plan: Plan) -> str:
    """One line a shot under a line of names; a cell that a spreadsheet would take for a formula gets an apostrophe before it."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    at = 0.0
    for s in plan.shots:
        section = plan.sections[s.section].title if s.section >= 0 else ""
        row = plan.sections[s.section].rows[s.row].label if s.row >= 0 else ""
        cells = (str(s.number), s.kind, section, row, s.say, s.show, s.screen, "" if s.count is None else str(s.count),
                 f"{s.length_s:.1f}", clock(at))
        writer.writerow([f"'{c}" if c.startswith(_RISKY) else c for c in cells])
        at += s.length_s
    return "\ufeff" + out.getvalue()


def clock(seconds: float) -> str:
    """As in "1:12" or "1:02:03"."""
    whole = int(seconds)
    hours, minutes = whole // 3600, whole // 60 % 60
    return f"{hours}:{minutes:02}:{whole % 60:02}" if hours else f"{minutes}:{whole % 60:02}"
