"""Whatever stands in a design, grading ends, soon, with numbers or with findings."""

from __future__ import annotations

import time

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.findings.registry import hints, message
from loopwright.grading import grade, written
from loopwright.notation import read
from loopwright.source import Source

NAMES = st.sampled_from(["a", "b", "c", "body sts"])
BLANK = NAMES.map(lambda n: "{" + n + "}")
NUMBER = st.integers(-3, 10**6).map(str) | st.sampled_from(["0", "1", "4", "5½", "1/0", "999999999999", "2.5"])
LENGTH = st.tuples(NUMBER, st.sampled_from([" cm", " in", '"', " mm", ""])).map("".join)
ATOM = BLANK | LENGTH | st.sampled_from(["head circumference", "chest", "wing span", "hat height", "15 (17, 19) cm", "10 (12) cm"])
PART = st.tuples(st.sampled_from(["", "twice ", "half of ", "a third of ", "8 times ", "90% of "]), ATOM).map("".join)
SUM = st.lists(PART, min_size=1, max_size=3).map(" less ".join) | st.lists(PART, min_size=1, max_size=3).map(" plus ".join)
HEAD = st.sampled_from(["", "sts to measure ", "rnds until crown measures ", "sts to go around ", "ch to measure ", "repeats to measure "])
CLAUSE = st.sampled_from(["", ", multiple of 4", ", multiple of 6 plus 1", ", even", ", at least 3", ", at most {a}", ", at least {b} plus 2", ", divides {c}",
                          ", divided by 3", ", rounded down", " across", " from the centre", ", same parity in all sizes"])
LINE = st.tuples(BLANK, st.just(": "), HEAD, SUM, CLAUSE, CLAUSE).map("".join)
ROWS = st.lists(st.sampled_from([
    "Rnds 2-{a}: Ch 1, sc in each st around.", "Ch {b} + 3.", "Rnd 1: {b} sc in magic ring. ({b} sc)", "Work even for {c} rnds.",
    "Next rnd: Sc around, increasing evenly to {body sts} sts.", "Rnds 4-{a}: Continue as established, inc 8 sts each rnd.", "Crown", "Row 1: {oops} sc.",
]), max_size=6)
GAUGE = st.sampled_from(["Gauge: 17 sts and 13 rows = 10 cm", "Gauge: 17 sts = 10 cm", "Gauge: 5 repeats = 11 cm", "Gauge: 0 sts = 10 cm", ""])
SIZES = st.sampled_from(["Sizes: child, adult", "Sizes: small, large", "Size: child", "", "Sizes: child, adult, teen, newborn"])


@given(SIZES, GAUGE, st.lists(LINE, max_size=5), ROWS)
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_grading_ends_with_numbers_or_findings(sizes: str, gauge: str, fit: list[str], rows: list[str]) -> None:
    text = "\n".join(["Tern", sizes, gauge, "", "Fit", *fit, "", "Crown", *rows])
    begun = time.monotonic()
    result = grade(read(Source.of(text)))
    written(result.document, result.values)
    assert time.monotonic() - begun < 10
    for found in result.findings:
        assert message(found)
        assert hints(found)
    for size in result.sizes:
        for n in size.numbers:
            assert n.value >= 0
