"""Wording of British leaflets: what each row comes to, in lines of our own in that wording."""

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

BASE = "Make 33 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch. to end. (32 d.c.)\n"

TOLD: list[tuple[str, str, list[int]]] = [
    ("so many together, with stops", BASE + "2nd row: 1 ch., * 2 d.c. tog., 1 d.c. into each of next 2 d.c.; rep. from * to end. 24 d.c.", [32, 24]),
    ("so many together, next ones", BASE + "2nd row: 1 ch., (work next 2 d.c. tog.) 16 times.", [32, 16]),
    ("so many together, without stops", BASE + "2nd row: 1 ch, (2 dc tog) 8 times, 1 dc into each dc to end. (24 dc) Stuff the head.", [32, 24]),
    ("a turning chain counted with the rest", "Make 30 ch.\n1st row: 1 htr. into 3rd ch. from hook, 1 htr. into each ch. to end. 29 htr., counting turning ch. as 1 st.", [29]),
    ("chains counted with the rest, in brackets", "Make 52 ch.\n1st row: 1 tr. into 4th ch. from hook, 1 tr. into each ch. to end. (50 tr. including 3 ch. at beginning.)", [50]),
    ("a row's own name and its count behind colons", "Make 28 ch. Foundation row: 1 tr into 4th ch from hook, 1 tr into each ch to end, turn: 26 tr.", [26]),
    ("two chains for the first double crochet", ("Make 21 ch.\n1st row: 1 dc into 3rd ch from hook, 1 dc into each ch to end. 20 sts.\n"
     "2nd row: 1 ch (counts as first dc), miss first dc, 1 dc into each dc to end, last dc into t.ch.\n"
     "3rd row: 1 ch, miss first dc, * 1 tr into next dc, 1 dc into next dc; rep from * to last st, 1 tr into t.ch."), [20, 20, 20]),
    ("the third of five", ("Ch 38.\n1st row: 1 d.c. in 2nd ch. from hook, * miss 2 ch., 5 tr. in next ch., miss 2 ch., 1 d.c. in next ch.; rep. from * to end. (6 shells.)\n"
     "2nd row: 3 ch., 2 tr. in first d.c., * 1 d.c. in 3rd of 5 tr., 5 tr. in next d.c.; rep. from *, ending last rep. with 3 tr. in last d.c."), [37, 37]),
    ("into every st. to end", BASE + "2nd row: 1 ch., 1 d.c. in every st. to end.", [32, 32]),
    ("a yarn told before the chain", "Using double wool make 21 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. (20 dc)", [20]),
    ("a hook told before the chain", "With No. 3 steel hook, commence with 26 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. (25 dc)", [25]),
    ("joined to the third of five chains", (
        "Make 6 ch. and join into a ring with a s.s.\n1st round: 5 ch., (3 tr. into ring, 2 ch.) 3 times, 2 tr. into ring, s.s. to 3rd of 5 ch.\n"
        "2nd round: s.s. into first sp., 5 ch., 2 tr. into same sp., * 1 tr. into each of next 3 tr., (2 tr., 2 ch., 2 tr.) into next sp.; rep. from * twice more, "
        "1 tr. into each of next 3 tr., 1 tr. into first sp., s.s. to 3rd of 5 ch."), [12, 28]),
    ("with a numbered colour as another round", (
        "Make 4 ch., join with s.s. 1st round: Using 1st colour work 12 dc into ring. (12 dc) Break off 1st colour.\n"
        "2nd round: 2 dc into each dc. (24 dc)\n3rd round: Using 2nd colour work as 2nd round. (48 dc)"), [12, 24, 48]),
]


OVAL = "Make 14 ch.\n1st round: 2 d.c. into 2nd ch. from hook, 1 d.c. into each of next 11 ch., 4 d.c. into last ch., "
OTHER_SIDE = [
    "then along other side of ch. work 1 d.c. into each of next 11 ch., 2 d.c. into next ch.",
    "then working along the other side of the ch, 1dc in each of next 11ch, 2dc in last ch.",
    "now on the other side of the chain: 1 dc into each of next 11 ch, 2 dc in last ch.",
    "work down other side of chain: 1 dc in each of next 11 ch, 2 dc in same place as first dc.",
]


@pytest.mark.parametrize(("text", "counts"), [t[1:] for t in TOLD], ids=[t[0] for t in TOLD])
def test_it_comes_to_what_it_says(text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text + "\n"), "uk")
    assert [row.counts[0] for row in report.rows][-len(counts) :] == counts
    assert [f for f in report.findings if f.code[0] == "W"] == []


@pytest.mark.parametrize("other_side", OTHER_SIDE)
def test_the_other_side_of_the_chain(other_side: str) -> None:
    report = check_source(Source.of(OVAL + other_side + " (30 d.c.)\n"), "uk")
    assert [(row.counts, row.agrees) for row in report.rows][-1] == ((30,), True)
