"""The technical editor's work: rules over a document and its report, one rule, one file. The worker's own findings are not repeated."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from loopwright.checks import (
    abbreviations,
    ball_length,
    caution_figures,
    caution_hidden,
    cautions,
    colours,
    counted_noun,
    counts_missing,
    decimals,
    edges_balance,
    finished_around,
    free_length,
    gauge_possible,
    gauge_stitch,
    groups,
    hook_label,
    just_made,
    marks,
    materials,
    mixed_terms,
    multiples,
    parity,
    repeat_divides,
    repeat_label,
    repeat_times,
    row_numbers,
    row_or_round,
    row_sum,
    sides,
    size_gauges,
    size_named,
    size_order,
    sizes_unequal,
    skipped,
    sums,
    turning_chain,
    turns_told,
    yarn_need,
)
from loopwright.checks.lies import lie_findings
from loopwright.checks.pattern import Pattern, look
from loopwright.findings import Finding
from loopwright.model.lies import LieFault
from loopwright.model.report import Report
from loopwright.model.tree import Document

RULES: tuple[Callable[[Pattern], Iterable[Finding]], ...] = (
    abbreviations.rule,
    ball_length.rule,
    caution_figures.rule,
    caution_hidden.rule,
    cautions.rule,
    colours.rule,
    counted_noun.rule,
    counts_missing.rule,
    decimals.rule,
    edges_balance.rule,
    finished_around.rule,
    free_length.rule,
    gauge_possible.rule,
    gauge_stitch.rule,
    just_made.rule,
    groups.rule,
    hook_label.rule,
    marks.rule,
    materials.rule,
    mixed_terms.rule,
    multiples.rule,
    parity.rule,
    repeat_divides.rule,
    repeat_label.rule,
    repeat_times.rule,
    row_numbers.rule,
    row_or_round.rule,
    row_sum.rule,
    sides.rule,
    size_gauges.rule,
    size_named.rule,
    size_order.rule,
    sizes_unequal.rule,
    skipped.rule,
    sums.rule,
    turning_chain.rule,
    turns_told.rule,
    yarn_need.rule,
)


def check(document: Document, report: Report, faults: Sequence[LieFault] = ()) -> tuple[Finding, ...]:
    """The findings of all rules, in the order of the text. Accepts any document and its report; never raises for what they hold.

    `faults`: what was measured of how its fabric lies.
    """
    pattern = look(document, report)
    found = [*(f for rule in RULES for f in rule(pattern)), *lie_findings(pattern, faults)]
    return tuple(sorted(found, key=lambda f: (f.span.start, f.code)))


__all__ = ["RULES", "check"]
