"""Numbers of a plain pattern that follow from others or must not be let loose, and the sizes a thing is made in."""

from functools import cache
from pathlib import Path

import pytest

from loopwright.grading.propose import item_of
from loopwright.source import Source
from loopwright.workshop.propose import Wanted, propose_design, sizes_for

TEXTS = Path(__file__).with_name("texts")
HEAD = "Terms: US\nGauge: 15 hdc and 12 rnds = 10 cm, 4.5 mm hook\nTurning chain: ch 1 does not count as a st, ch 3 counts as dc\n\n"
MITTEN = (
    "Eider Mitten\n\nSize: women\n" + HEAD + "Cuff\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
    "Rows 2-30: Ch 1, sc in back loop only of each st across, turn. (12 sc)\nSl st the short ends together to form a tube; do not fasten off.\n\n"
    "Hand\nRnd 1: Ch 1, hdc in end of each row around; join with sl st to first hdc. (30 hdc)\nRnds 2-6: Ch 1, hdc in each st around; join. (30 hdc)\n"
    "Rnd 7: Ch 1, hdc in next 2 sts, ch 6, sk next 6 sts, hdc in each st around; join. (24 hdc)\n"
    "Rnd 8: Ch 1, hdc in each st and in each ch around; join. (30 hdc)\nFasten off.\n"
)
PANEL = (
    "Godwit Vest\n\nSize: woman M\n" + HEAD.replace("15 hdc and 12 rnds", "14 dc and 8 rows") + "Back and front (both alike)\nCh 70.\n"
    "Row 1: Dc in 4th ch from hook and in each ch across, turn. (68 dc)\nRows 2-24: Ch 3, dc in each st across, turn. (68 dc)\n"
    "Row 25: Sl st in each of first 7 sts, ch 3, dc in each st to last 6 sts, leave last 6 sts unworked, turn. (56 dc)\n"
    "Rows 26-40: Ch 3, dc in each st across, turn. (56 dc)\nFasten off.\n"
)
HAT = (
    "Reed Hat\n\nSize: adult\n" + HEAD.replace("15 hdc and 12 rnds", "14 hdc and 11 rnds") + "Brim\nCh 9.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-70: Ch 1, sc in each st across, turn. (8 sc)\n"
    "Sl st the last row to the foundation chain to form a tube.\n\n"
    "Body\nRnd 1: Ch 1, hdc in end of each row around; join with sl st to first hdc. (70 hdc)\nRnds 2-13: Ch 1, hdc in each st around; join. (70 hdc)\n\n"
    "Crown\nRnd 1: Ch 1, *hdc in each of next 5 sts, hdc2tog; rep from * around; join. (60 hdc)\n"
    "Rnd 2: Ch 1, *hdc in each of next 4 sts, hdc2tog; rep from * around; join. (50 hdc)\nFasten off.\n"
)


@cache
def _made(text: str):
    return propose_design(Source.of(text), Wanted())


def _sentences(text: str) -> dict[str, str]:
    return {p.blank.name: p.reasons[0].sentence for p in _made(text).proposal.blanks}


def test_a_count_beside_an_opening_is_what_is_left() -> None:
    assert _sentences(MITTEN)["hand 2 sts"] == "{hand sts} less {opening sts}"


def test_ends_that_are_alike_in_every_size_take_as_many_in_every_size() -> None:
    said = _sentences(PANEL)
    assert said["back and front sts"].startswith("sts to measure half of chest")
    assert "{back and front sts} less 12" in said.values()


def test_a_brim_of_an_odd_number_of_rows_is_better_than_a_hat_too_wide() -> None:
    assert _sentences(HAT)["body sts"].endswith("multiple of 7")


def test_a_yoke_in_the_round_has_its_parts() -> None:
    text = (TEXTS / "sanderling-as-worked.txt").read_text(encoding="utf-8")
    said = _sentences(text)
    assert said["neck ch"] == "twice {back neck} plus twice {sleeve neck} plus 4"
    assert said["parted sts"] == "{body sts} less twice {underarm}"
    assert said["yoke sts"] == "{neck ch} less 4 plus 8 times {yoke rounds}"
    graded = _made(text).sized.graded
    assert [s.blanks["body sts"] for s in graded.sizes] == [108, 116, 124, 132]
    assert all(s.blanks["neck ch"] + 4 * (2 * s.blanks["yoke rounds"] - 1) == s.blanks["yoke sts"] for s in graded.sizes)
    assert not [f for f in graded.findings if f.code.startswith(("W", "G0"))]


def test_a_round_told_for_one_count_keeps_its_chain() -> None:
    text = (
        "Reed Cowl\n\nSize: adult\n" + HEAD + "Ch 72, join with sl st to first ch to form a ring.\n"
        "Rnd 1: Ch 3, dc in each of next 23 ch, ch 2, dc in each of next 24 ch, ch 2, dc in each of next 24 ch, ch 2; join. (72 dc)\n"
        "Rnds 2-20: Ch 3, dc in each st around; join. (72 dc)\nFasten off.\n"
    )
    assert not [name for name in _sentences(text) if name.endswith("sts")]


@pytest.mark.parametrize(("title", "worked", "has", "lacks"), [
    ("Mudflat Slippers", "woman", "man", "newborn"),
    ("Dunlin Booties", "3 months", "newborn", "man"),
    ("Godwit Vest", "woman M", "woman 1X", "4 years"),
    ("Godwit Vest", "man L", "man S", "woman S"),
    ("Plover Cardigan", "4 years", "6 years", "woman M"),
])
def test_the_sizes_are_those_of_the_one_it_was_worked_in(title: str, worked: str, has: str, lacks: str) -> None:
    sizes = sizes_for(item_of(title), worked, None)
    assert {has, worked} <= set(sizes)
    assert lacks not in sizes


@pytest.mark.parametrize("rest", ["Rnd 1: 12 dc in ring; join with sl st to top of ch 3.", "Yarn: DK, 1 ball"])
def test_some_words_name_a_thing_in_its_title_alone(rest: str) -> None:
    assert item_of(f"Marram Tote\n{rest}").name == "piece"
    assert item_of("Sanderling Tee\n").name == "garment"


def test_a_heel_is_a_share_of_its_foot() -> None:
    text = (
        "Mudflat Sock\n\nSize: woman\n" + HEAD + "Foot\nCh 36, join with sl st to first ch to form a ring.\n"
        "Rnds 1-20: Ch 1, hdc in each st around; join. (36 hdc)\n\n"
        "Heel\nRow 1: Ch 1, hdc in each of next 26 sts, leave last 10 sts unworked, turn. (26 hdc)\n"
        "Rows 2-14: Ch 1, hdc in each st across, turn. (26 hdc)\nFasten off.\n"
    )
    assert "less 10" not in " ".join(_sentences(text).values())
