"""Rows as the trade writes them, read and worked."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work


def counts(text, terms="us"):
    return [r.counts[0] for r in work(read(Source.of(text), terms)).rows]


HAT = """Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
Rnd 4: (Sc in next 2 sts, 2 sc in next st) 6 times. (24)
Rnds 5-7: Sc in each st around. (24)
"""


def test_a_crown_in_the_round():
    assert counts(HAT) == [6, 12, 18, 24, 24, 24, 24]


def test_shaping_told_in_words():
    assert counts(HAT + "Rnd 8: Inc 6 sts evenly around. (30)\nRnd 9: Inc in every 3rd st around. (40)\n")[-2:] == [30, 40]


def test_rounds_that_continue():
    assert counts(HAT + "Rnds 8-10: Continue as established, inc 6 sts each rnd. (42)\n")[-3:] == [30, 36, 42]


def test_rows_on_a_chain():
    assert counts("Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across. (20)\n")[-2:] == [20, 20]


def test_uk_terms_shift_the_stitches():
    report = work(read(Source.of(HAT.replace("sc", "dc").replace("Sc", "Dc")), "uk"))
    assert [r.counts[0] for r in report.rows] == counts(HAT)
    assert report.rows[0].made["sc"] == (6,)


def test_several_sizes():
    report = work(read(Source.of("Ch 21 (25, 31).\nRow 1: Sc in 2nd ch from hook and in each ch across. [20 (24, 30) sc]\n"), "us"))
    assert report.rows[-1].counts == (20, 24, 30)


def test_a_wrong_count_is_an_error_at_the_number():
    source = Source.of(HAT.replace("(18)", "(19)"))
    found = [f for f in work(read(source, "us")).findings if f.code == "W001"]
    assert [source.cut(f.span) for f in found] == ["19"]


@pytest.mark.parametrize("text", ["", "{", "((((((", "* * *", "rep 999999999 times", "Row 2: as row 2", "Rnd 1: " + "9" * 5000, "Rnd 1: " + "(" * 3000, "Rnd 1: " + "sc, " * 9000, "Rows 1-999999999: sc around", "\0", "Row"])
def test_odd_input_is_survived(text):
    assert write(read(Source.of(text))) == text
    work(read(Source.of(text)))


WORDS = st.sampled_from(["Rnd", "Row", "1:", "2:", "sc", "dc", "ch", "3", "in", "next", "each", "st", "rep", "from", "*", "(", ")", "[", "]", ",", ";", ".", "around", "turn", "inc", "dec", "sk", "sl", "x6", "magic", "ring", "(12)", "{a}", "evenly", "every", "3rd", "end", "to", "both"])


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(WORDS, max_size=14), max_size=4))
def test_any_words_are_read_worked_and_kept(lines):
    text = "\n".join(" ".join(line) for line in lines)
    document = read(Source.of(text))
    assert write(document) == text
    assert len(work(document).sizes) == len(document.sizes)
