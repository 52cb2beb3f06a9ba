"""Patterns made by chance: written, read back and worked, they are what they were, in every set of terms."""

from __future__ import annotations

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from law import Worked, again, facts, same  # type: ignore[import-not-found,unused-ignore]
from rows_made import documents, sized  # type: ignore[import-not-found,unused-ignore]

from loopwright.model.tree import Document
from loopwright.working import work


@given(documents(), st.sampled_from(["us", "uk"]), st.booleans(), st.booleans())
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_written_and_read_again(document: Document, terms: str, full: bool, spelled: bool) -> None:
    first = Worked(document, work(document))
    assume(all(r.read for r in first.report.rows))
    text, second = again(first, terms, None, full, spelled)
    assert facts(second) == facts(first.report), text


@given(documents())
@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
def test_counts_do_not_change_between_terms(document: Document) -> None:
    first = Worked(document, work(document))
    counts = [[r.counts for r in again(first, terms, None, full=False, spelled=False)[1].rows] for terms in ("us", "uk", "old")]
    assert counts[0] == counts[1] == counts[2]


@given(sized(), st.sampled_from(["us", "uk"]), st.booleans(), st.booleans(), st.sampled_from([None, 0, 1, 2]))
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_in_sizes(document: Document, terms: str, full: bool, spelled: bool, size: int | None) -> None:
    first = Worked(document, work(document))
    assume(all(r.read for r in first.report.rows))
    text, second = again(first, terms, size, full, spelled)
    assert same(first.report, second, size), text
