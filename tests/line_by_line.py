"""A pattern given as lines, worked, and looked at line by line."""

from itertools import pairwise

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work


def last_rows(lines, terms):
    """For each line its last row as it was worked, None where it has none; the text comes back unchanged."""
    text = "\n".join(lines) + "\n"
    document = read(Source.of(text), terms)
    assert write(document) == text
    report = work(document)
    starts = [0]
    for line in lines:
        starts.append(starts[-1] + len(line) + 1)
    return [next((r for r in reversed(report.rows) if at <= r.span.start < end), None) for at, end in pairwise(starts)]


def first_counts(text, terms="us"):
    """The count of each row in the first size, None where it was not read; what is only a chain is a row too."""
    return [row.counts[0] for row in work(read(Source.of(text), terms)).rows]
