"""One row told in many ways comes to one count, worked by hand: rows that go on, increase and decrease at their ends, rounds that grow and shrink.

Common practice, no source: the wordings are those of printed patterns and of pages of today.
"""

import itertools

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

N = 12
STITCHES = {"sc": (1, "2nd"), "hdc": (2, "3rd"), "dc": (3, "4th")}
CALLED = ("st", "{K}", "stitch")
EVEN = (
    "{K} in each {P}", "{K} in each {P} across", "1 {K} in each {P}", "work 1 {K} in each {P} to end", "{K} in every {P}", "{K} in first {P} and in each {P} across", "{K} across", "{K} to end",
    "{K} in each of next 12 {P}s", "12 {K}", "{K} in each {P} to the end of the row", "{K} in same {P} and in each {P} across", "{K} in ea {P}", "{K} in the first {P}, {K} in each remaining {P}",
)
GO_ON = ("{K} in each {P}", "{K} in each {P} across", "1 {K} in each {P}", "work 1 {K} in each {P} to end", "{K} to end", "{K} in each remaining {P}", "{K} in rem {P}s")
TO_LAST = (
    "{K} in each {P} to last {P}", "{K} in each {P} across to last {P}", "{K} to last {P}", "{K} in each {P} until last {P}", "1 {K} in each {P} to within last {P}", "{K} in each {P} up to the last {P}",
    "{K} in each {P} until 1 {P} remains", "{K} in each {P}", "{K} in each {P} across",
)
TO_LAST_TWO = ("{K} in each {P} to last 2 {P}s", "{K} in each {P} across to last 2 {P}s", "{K} to last 2 {P}s", "{K} in each {P} until 2 {P}s remain", "{K} in each {P} to within last 2 {P}s")
INC_FIRST = ("2 {K} in first {P}", "2 {K} in 1st {P}", "inc in first {P}", "work 2 {K} in first {P}", "two {K} in the first {P}", "inc", "{K} twice in first {P}")
INC_LAST = ("2 {K} in last {P}", "2 {K} in the last {P}", "inc in last {P}", "work 2 {K} in last {P}", "inc", "{K} twice in last {P}")
DEC_FIRST = ("{K}2tog over first 2 {P}s", "{K}2tog", "dec", "dec over first 2 {P}s", "skip first {P}", "{K} first 2 {P}s tog", "{K} 2 tog", "work first 2 {P}s together")
DEC_LAST = ("{K}2tog over last 2 {P}s", "{K}2tog", "dec over last 2 {P}s", "dec", "{K} last 2 {P}s tog", "{K} last 2 {P}s together", "{K} 2 tog", "decrease over last 2 {P}s")
ROWS = [
    *((one, 0) for one in EVEN),
    *((f"{a}, {b}", 1) for a, b in itertools.product(INC_FIRST, GO_ON)),
    *((f"{a}, {b}", 1) for a, b in itertools.product(TO_LAST, INC_LAST)),
    *((f"{a}, {b}, {c}", 2) for a, b, c in itertools.islice(itertools.product(INC_FIRST, TO_LAST, INC_LAST[:4]), 0, None, 5)),
    *((f"{a}, {b}", -1) for a, b in itertools.product(DEC_FIRST, GO_ON[:6])),
    *((f"{a}, {b}", -1) for a, b in itertools.product(TO_LAST_TWO, DEC_LAST)),
    *((f"{a}, {b}, {c}", -2) for a, b, c in itertools.islice(itertools.product(DEC_FIRST, TO_LAST_TWO, DEC_LAST), 0, None, 7)),
]
DOUBLED = (
    "2 {K} in each {P} around", "inc in each {P} around", "inc x6", "(inc) x 6", "6 inc", "*inc; rep from * around", "[inc] around", "2 {K} into each {P} all the way around", "(2 {K} in next {P}) 6 times",
    "*2 {K} in next {P}; repeat from * around", "*2 {K} in next {P}* 6 times", "2 {K} in each of next 6 {P}s", "{K} 2 in each {P}", "{K} twice in each {P} around", "2 {K} in next {P}, repeat around",
)
GROWN = (
    "(1 {K}, inc) x 6", "(1 {K} in next {P}, 2 {K} in next {P}) 6 times", "*{K} in next {P}, 2 {K} in next {P}; rep from * around", "[{K}, inc] around", "{K}, inc, repeat around", "*{K} 1, inc* around",
    "*1 {K} in next {P}, 2 {K} in following {P}, rep from * to end", "*inc, {K}; rep from * 5 more times", "*2 {K} in next {P}, {K} in next {P}; rep from * 5 times more", "*{K}, inc* repeat from * to * 6 times",
    "1 {K} in first {P}, 2 {K} in second {P}, repeat around", "inc in every 2nd {P}", "[{K}1, inc1] x6", "{K} in next {P}, {K} twice in next {P}; repeat all around", "6 inc evenly", "increase 6 evenly spaced",
)
SHRUNK = (
    "(1 {K}, dec) x 4", "({K}, {K}2tog) around", "*{K} in next {P}, {K}2tog over next 2 {P}s; rep from * around", "[{K} 1, dec] 4 times", "*{K}2tog, {K} in next {P}* around", "{K} 1, dec, repeat around",
    "*1 {K}, dec; repeat from * 3 more times", "({K}, invdec) x 4", "[{K} in next {P}, {K} 2 tog] rep around", "({K} in next {P}, {K} next 2 {P}s together) 4 times",
)


def told(words: str, kind: str, called: str) -> str:
    said = words.replace("{P}", called).replace("{K}", kind)
    return said.replace("stitchs", "stitches").replace("scs", "sc")


@pytest.mark.parametrize("called", CALLED)
@pytest.mark.parametrize("kind", STITCHES)
def test_a_row_comes_to_the_same_in_all_its_wordings(kind: str, called: str) -> None:
    chains, hook = STITCHES[kind]
    begin = f"Panel\n\nCh {N + chains}.\nRow 1: {kind.capitalize()} in {hook} ch from hook (skipped chs do not count as a st) and in each ch across. ({N} {kind})\nRow 2: Ch {chains} (does not count as a st), turn, "
    wrong = []
    for words, more in ROWS:
        said = told(words, kind, called)
        made = work(read(Source.of(f"{begin}{said}.\n"), "us")).rows[-1].counts
        if made != (N + more,):
            wrong.append((said, made))
    assert wrong == []


@pytest.mark.parametrize("called", CALLED)
@pytest.mark.parametrize("kind", STITCHES)
@pytest.mark.parametrize("end", [".", ", join."])
def test_a_round_comes_to_the_same_in_all_its_wordings(kind: str, called: str, end: str) -> None:
    first = f"Ball\n\nRnd 1: 6 {kind} in magic ring.\n"
    second = f"{first}Rnd 2: 2 {kind} in each st around.\n"
    wrong = []
    for begin, number, all_words, count in ((first, 2, DOUBLED, 12), (second, 3, GROWN, 18), (second, 3, SHRUNK, 8)):
        for words in all_words:
            said = told(words, kind, called)
            made = work(read(Source.of(f"{begin}Rnd {number}: {said}{end}\n"), "us")).rows[-1].counts
            if made != (count,):
                wrong.append((said, made))
    assert wrong == []


@pytest.mark.parametrize(
    "words",
    [
        "*ch 3, sc in next dc; rep from * around", "(sc in next dc, ch 3) around, join", "sc in each dc with ch 3 between, join", "sc in each dc around with 3 ch between, join", "(sc, ch 3) in each dc around, join",
        "ch 1, sc in same st, *ch 3, sc in next dc; rep from * around. Join", "sc in same place as sl st, * ch 3, sc in next dc. Repeat from * around, ending with ch 3, sl st in first sc",
        "ch 1, sc in same st, (ch 3, sc in next dc) 11 times, ch 3, join",
    ],
)
def test_a_round_of_loops_has_as_many_as_stitches(words: str) -> None:
    row = work(read(Source.of(f"Mat\n\nRnd 1: 12 dc in magic ring, join.\nRnd 2: {words}.\n"), "us")).rows[-1]
    assert row.counts == (12,)
    assert row.made["ch-sp"] == (12,)
