"""Lessons as they are spoken, with their rows worked by hand beside them.

Source: our own lessons (tests/outside/lessons), invented and written down before there was a reader; two of them were
not run until it was built, but come from the same hand.
"""

from pathlib import Path

import pytest

from benchmarks.score_lessons import score

LESSONS = sorted((Path(__file__).parent / "lessons").glob("*.toml"))


@pytest.mark.parametrize("truth", LESSONS, ids=lambda p: p.stem)
def test_no_row_is_made_up(truth):
    assert score(truth).invented == 0


def test_rows_counts_corrections_and_times_over_all_lessons():
    scores = [score(p) for p in LESSONS]
    rows = sum(s.rows for s in scores)
    assert len(scores) >= 10
    assert sum(s.found for s in scores) >= 0.95 * rows
    assert sum(s.counts for s in scores) >= 0.95 * rows
    assert sum(s.near for s in scores) >= 0.95 * sum(s.found for s in scores)
    assert sum(s.followed for s in scores) == sum(s.corrected for s in scores)
