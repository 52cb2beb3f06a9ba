"""Rules take any text: none raises, and every finding lies inside the text and has words."""

from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.findings.registry import hints, message
from loopwright.workshop.check import check_text

WORDS = [
    "Row 1:", "Rnd 2 (RS):", "Rows 3-9:", "1)", "Sizes: S, M, L", "Yarn: DK, 50 g = 0 m, 3 balls (12 m), A (x), B (y)", "Hook: 0 mm", "Gauge: 0 sc and 0 rows = 0 cm",
    "Gauge: 16 sts = 10 cm", "Gauge: = cm", "Abbreviations: ch = chain, = , sc = , x = y, st(s) = stitches", "Turning chain: ch 3 does not count, 2 ch counts", "Finished size: 0 (0, 0) cm around",
    "multiple of 0 + 2", "multiple of 6 plus 1, plus 2 for the turning chain", "sample: ch 44", "Ch 0.", "ch 60 (64, 72)", "sc in each st across", "(2 sc, 4 dc) 4 times", "*sc in next st; rep from *",
    "rep from ** 0 times", "(60 (64, 72) sc)", "(0 (0, 0))", "(12)", "turn", "join with sl st to first sc", "sk 2 sts", "with C", "MC", "4 x 8 = 28 + 1 = 29", ".025 in", "2.5 sts", "until piece measures 3 cm",
    "60 sc along the edge", "Fit", "{a}: sts to measure 10 cm", "{a}", "htr", "Baby", "toy", "ties", "(", ")", "[", "*", "\n", "\n\n", "\t", "Body", "Notes: x", "é", "🧶", "99999999999999999999",
]  # fmt: skip


@settings(deadline=None, max_examples=150)
@given(st.lists(st.sampled_from(WORDS), max_size=40), st.sampled_from([" ", "\n", ". ", ", "]))
def test_any_text_is_taken(words, between):
    text = between.join(words)
    for found in check_text(text).findings:
        assert 0 <= found.span.start <= found.span.end <= len(text)
        assert message(found)
        assert all(hints(found))
        assert all(0 <= e.span.start <= e.span.end <= len(text) for e in (found.fix.edits if found.fix else ()))
