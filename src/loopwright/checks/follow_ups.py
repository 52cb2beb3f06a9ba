"""Findings that only follow from another one: the slip is told once, where it is. Not a rule.

A star that is missing makes the count of its row wrong, and the counts of the rows above it. Told together they bury the star.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from loopwright.findings import Finding
from loopwright.model.report import Report
from loopwright.source import Span

# a slip of the words, and what it brings along in its row and in the rows worked on it
_OF_THE_WORDS = frozenset({"C019", "C030", "C036", "C037"})
_OF_THE_COUNTS = frozenset({"C001", "C002", "C022", "C035", "C042", "C043", "D001", "W001", "W003", "W004"})
SLIP = 2  # stitches
_IN_DOUBT = frozenset({"W001", "W003", "W004", "W007", "W009", "N001"})
# where one of the first stands in a row, the others of the same row say no more
_SAME = {"C001": {"C022", "W004"}, "W001": {"C022"}, "W004": {"C022"}}


def without_follow_ups(report: Report, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings without those that another one brings along."""
    found = tuple(findings)
    spans: dict[int, Span] = {r.item: r.span for r in report.rows}
    at: dict[int, set[str]] = defaultdict(set)  # codes by the row that they are said of
    of: list[int | None] = [_row(spans, f) for f in found]
    for f, item in zip(found, of, strict=True):
        if item is not None:
            at[item].add(f.code)
    slipped, doubted = _shaken(report, at)
    names = {str(f.args.get("word", "")).lower() for f in found if f.code == "C007"}
    twice = {str(f.args.get("other", "")).lower() for f in found if f.code == "C010"}  # the stitch's own name is in use as well
    renumbered = {f.args.get("number") for f in found if f.code in ("C012", "C013")}
    unsure = any(r.agrees is False or not r.read for r in report.rows)

    def follows(f: Finding, item: int | None) -> bool:
        if f.code in ("C008", "C010"):
            return str(f.args.get("abbreviation" if f.code == "C008" else "other", "")).lower() in names & twice
        if f.code == "C011":
            return f.args.get("before") in renumbered
        if f.code == "C040":
            return unsure  # reckoned from rows that are in doubt
        if item is None:
            return False
        if item in slipped and f.code in _OF_THE_COUNTS and not _near(f) or item in doubted and f.code.startswith("M"):
            return True
        return any(f.code in less for code, less in _SAME.items() if code in at[item])

    return tuple(f for f, item in zip(found, of, strict=True) if not follows(f, item))


def _near(found: Finding) -> bool:
    """Whether a count is out by a stitch or two, which no lost star or bracket brings about."""
    if found.code != "W001":
        return False
    printed, made = (str(found.args.get(which)).split(" ")[0] for which in ("printed", "made"))
    return printed.isdecimal() and made.isdecimal() and abs(int(printed) - int(made)) <= SLIP


def _row(spans: dict[int, Span], found: Finding) -> int | None:
    """The row that a finding is said of."""
    return next((item for item, s in spans.items() if s.start <= found.span.start < max(s.end, s.start + 1)), None)


def _shaken(report: Report, at: dict[int, set[str]]) -> tuple[set[int], set[int]]:
    """Rows that stand on a slip of the words; and on a row whose count is in doubt. Each until a count comes out again."""
    slipped: set[int] = set()
    doubted: set[int] = set()
    slip = doubt = False
    rows: Sequence[tuple[int, bool | None]] = [(r.item, r.agrees) for r in report.rows]
    for item, agrees in rows:
        own = bool(at[item] & _OF_THE_WORDS)
        slip = own or slip and agrees is not True
        doubt = slip or bool(at[item] & _IN_DOUBT) or doubt and agrees is not True
        if slip:
            slipped.add(item)
        slip = slip and agrees is not True  # the row was understood all the same
        if doubt:
            doubted.add(item)
    return slipped, doubted
