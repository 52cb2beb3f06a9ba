"""Words with numbers that differ by size, taken apart and put together again."""

from hypothesis import given
from hypothesis import strategies as st

from loopwright.publishing.document import Varies, in_brackets, of_size, running


def test_a_list_of_as_many_numbers_as_sizes_is_taken_apart():
    text = running("Rnds 5-9 (9, 10): inc 8 sts each rnd.", 3)
    assert text == ("Rnds 5-", Varies(("9", "9", "10"), "9 (9, 10)"), ": inc 8 sts each rnd.")


def test_brackets_of_other_lengths_are_words():
    words = "Ch 3 (counts as dc), sc in next 5 (6) sts, (2 dc, ch 1) in sp."
    assert running(words, 3) == (words,)


def test_one_size_has_no_lists():
    assert running("Work 9 (10) rows.", 1) == ("Work 9 (10) rows.",)


def test_a_dash_stands_for_a_size_that_has_none():
    assert of_size(running("Work – (2, 4) more rows.", 3), 0) == "Work – more rows."


def test_decimal_commas_are_set_apart_by_semicolons():
    assert of_size(running("10,6 (11,8; 12,9) cm", 3), 2) == "12,9 cm"


_WORDS = st.text("abc ,.;*[]", min_size=1, max_size=12)


@given(st.integers(2, 9).flatmap(lambda n: st.lists(
    st.one_of(_WORDS, st.lists(st.integers(0, 400), min_size=n, max_size=n)), min_size=1, max_size=5,
).map(lambda parts: (n, parts))))
def test_what_is_taken_apart_reads_the_same(case):
    sizes, parts = case
    said = " x ".join(p if isinstance(p, str) else f"{p[0]} ({', '.join(map(str, p[1:]))})" for p in parts)
    text = running(said, sizes)
    assert in_brackets(text) == said
    lists = [p for p in parts if not isinstance(p, str)]
    assert [t.values for t in text if isinstance(t, Varies)] == [tuple(map(str, p)) for p in lists]
    for size in range(sizes):
        assert of_size(text, size) == " x ".join(p if isinstance(p, str) else str(p[size]) for p in parts)
