"""One slip gives one finding: what only follows from it is not told again."""

import pytest

from loopwright.workshop.check import check_text

HEAD = """Avocet Cowl
Terms: US
Gauge: 16 sc and 18 rnds = 10 cm
Hook: 4 mm
Yarn: DK, wool, 100 g = 240 m, 1 ball
Finished size: 60 cm around
Abbreviations: ch = chain, sc = single crochet, sk = skip, sl st = slip stitch, st(s) = stitch(es), rnd(s) = round(s), rep = repeat
Turning chain: ch 1 does not count as a st

"""
SOUND = (
    HEAD
    + """Ch 96, join with sl st to first ch to form a ring.
Rnd 1: Ch 1, sc in each ch around; join with sl st to first sc. (96 sc)
Rnd 2: Ch 1, *sc in each of next 7 sts, 2 sc in next st; rep from * around; join. (108 sc)
Rnd 3: Ch 1, sc in each st around; join. (108 sc)
Rnd 4: Ch 1, *sc in each of next 7 sts, sk next 2 sts; rep from * around; join. (84 sc)
Rnd 5: Ch 1, (sc in each of next 6 sts, 2 sc in next st) 12 times; join. (96 sc)
Fasten off.
"""
)
ONCE = [
    ("a star", "*sc in each of next 7 sts, 2 sc", "sc in each of next 7 sts, 2 sc", {"C036"}),
    ("a bracket", "2 sc in next st) 12 times", "2 sc in next st 12 times", {"C037"}),
    ("a number", "Rnd 3: Ch 1", "Rnd 2: Ch 1", {"C012"}),
    ("a number further back", "Rnd 4: Ch 1", "Rnd 2: Ch 1", {"C013"}),
    ("a point", "(84 sc)", "(8.4 sc)", {"C030"}),
    ("another dialect", "Rnd 3: Ch 1, sc", "Rnd 3: Ch 1, htr", {"C007", "C008", "C047"}),
    ("stitches too few", "2 sc in next st; rep from * around", "sc in next st; rep from * around", {"W001"}),
]


def _codes(text: str) -> list[str]:
    return sorted(f.code for f in check_text(text).findings)


def test_nothing_is_said_of_the_sound_one() -> None:
    assert _codes(SOUND) == []


@pytest.mark.parametrize(("right", "slip", "codes"), [s[1:] for s in ONCE], ids=[s[0] for s in ONCE])
def test_a_slip_is_told_once(right: str, slip: str, codes: set[str]) -> None:
    assert SOUND.count(right) == 1
    found = _codes(SOUND.replace(right, slip))
    assert found
    assert set(found) <= codes
    assert len(found) == len(set(found))


def test_a_second_slip_above_the_first_is_told_too() -> None:
    text = SOUND.replace("2 sc in next st; rep from * around", "sc in next st; rep from * around").replace("12 times; join. (96 sc)", "12 times; join. (99 sc)")
    report = check_text(text)
    assert [text.count("\n", 0, f.span.start) + 1 for f in report.findings if f.code == "W001"] == [12, 15]


LEAVES = [
    ("a repeat to the end", "Ch 51.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (50 sc)\n", "Row 2: Ch 1, *sc in each of next 4 sts, sc2tog; rep from * across, turn. (40 sc)"),
    ("a round", "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n", "Rnd 3: (Sc in next st, sc2tog) 3 times. (6)"),
]


@pytest.mark.parametrize(("before", "row"), [x[1:] for x in LEAVES], ids=[x[0] for x in LEAVES])
def test_stitches_left_over_are_told_of_where_the_count_is_as_printed(before: str, row: str) -> None:
    report = check_text(before + row + "\n")
    assert report.rows[-1].agrees
    assert [f.code for f in report.findings] in (["W004"], ["C001"])


def test_a_row_that_turns_may_leave_stitches() -> None:
    text = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRow 3: Ch 1, sc in each of next 6 sts, turn. (6)\n"
    assert "W004" not in _codes(text)


def test_no_count_is_offered_that_the_next_row_would_contradict() -> None:
    text = SOUND.replace("2 sc in next st; rep from * around", "sc in next st; rep from * around")
    found = [f for f in check_text(text).findings if f.code == "W001"]
    assert [f.fix for f in found] == [None]


def test_groups_told_by_what_they_hold_are_counted_by_name() -> None:
    text = "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (13 sc)\nRow 2: Ch 1, sc in first st, *sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st; rep from * across. (3 shells)\n"
    (found,) = [f for f in check_text(text).findings if f.code == "W001"]
    assert found.args["made"] == "2"
    assert found.fix is not None
    assert found.fix.edits[0].text == "2"
