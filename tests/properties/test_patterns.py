"""What holds for every pattern: made by chance out of the trade's ordinary rows."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.terms import dialect
from loopwright.working import work

KINDS = st.sampled_from(["sc", "hdc", "dc", "tr"])
ROUNDS = st.sampled_from(
    [
        "{k} in each st around",
        "2 {k} in each st around",
        "*{k} in next st, 2 {k} in next st; rep from * around",
        "({k} in next {n} sts, 2 {k} in next st) {t} times",
        "*{k} in next st, ch 1, sk next st; rep from * around",
        "{k} in next {n} sts, sk next st, {k} in each st around",
        "(2 {k}, ch 2, 2 {k}) in next st, {k} in each st around",
        "*{k}2tog, {k} in next {n} sts; rep from * around",
        "inc {t} sts evenly around",
    ]
)


@st.composite
def patterns(draw: st.DrawFn) -> list[tuple[str, str, int, int]]:
    """Rounds as (wording, kind, n, times)."""
    return [(draw(ROUNDS), draw(KINDS), draw(st.integers(1, 4)), draw(st.integers(1, 4))) for _ in range(draw(st.integers(1, 5)))]


def text_of(rounds: list[tuple[str, str, int, int]], terms: str) -> str:
    said = dialect(terms)
    lines = [f"Rnd 1: 12 {said.term('sc').short} in magic ring; join."]
    for number, (words, kind, n, times) in enumerate(rounds, 2):
        lines.append(f"Rnd {number}: {words.format(k=said.term(kind).short, n=n, t=times)}.")
    return "\n".join(lines) + "\n"


def counts(text: str, terms: str) -> list[object]:
    return [(r.counts, r.made) for r in work(read(Source.of(text), terms)).rows]


@settings(max_examples=40, deadline=None)
@given(patterns())
def test_counts_do_not_change_between_dialects(rounds):
    assert counts(text_of(rounds, "us"), "us") == counts(text_of(rounds, "uk"), "uk")


@settings(max_examples=25, deadline=None)
@given(patterns())
def test_working_is_the_same_every_time_and_with_a_memo(rounds):
    text = text_of(rounds, "us")
    memo: dict[object, object] = {}
    first = work(read(Source.of(text), "us"))
    assert work(read(Source.of(text), "us")) == first
    for _ in range(2):
        assert work(read(Source.of(text), "us", memo), memo) == first


@settings(max_examples=25, deadline=None)
@given(patterns())
def test_every_stitch_leads_back_to_words_and_stitches_below(rounds):
    text = text_of(rounds, "us")
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    for stitch in range(len(fabric)):
        assert fabric.into[stitch] < stitch
        assert 0 <= fabric.origin[stitch] <= len(text)
    assert [row.start for row in fabric.rows][1:] == [row.end for row in fabric.rows][:-1]


@settings(max_examples=25, deadline=None)
@given(patterns(), st.sampled_from(["\n", "\r\n", "\r"]), st.booleans())
def test_line_ends_and_a_byte_order_mark_change_nothing(rounds, newline, mark):
    text = text_of(rounds, "us")
    other = Source.of(("\ufeff" if mark else "") + text.replace("\n", newline))
    assert write(read(other)) == text
    assert replace(other, name="pattern") == Source.of(text)


@given(st.text(max_size=60))
def test_positions_count_as_people_and_editors_count(text):
    source = Source.of(text)
    for offset in range(len(source.text) + 1):
        place = source.position(offset)
        lines = source.text[:offset].split("\n")
        assert (place.line, place.column) == (len(lines), len(lines[-1]) + 1)
        assert source.utf16(offset) == len(source.text[:offset].encode("utf-16-le", "surrogatepass")) // 2
        assert source.text[offset:].startswith(source.line_text(place.line)[place.column - 1 :])
