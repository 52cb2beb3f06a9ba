"""Printed counts that are wrong by a slip are reported, whatever else in the row or the pattern would excuse them."""

import pytest

from loopwright.findings.registry import severity
from loopwright.workshop.check import check_text

DECREASES = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. ({} sc)\n"
SLIPPED = "Ch 6, join with sl st to form a ring.\nRnd 1: *Ch 7, sl st in ring; rep from * 4 more times. (5 loops)\nRnd 2: Sl st in ch-7 loop, ch 1, 8 sc in same loop, 8 sc in each of next 4 loops, join. ({} sc)\n"
STARLESS = "Rnd 1: 7 sc in magic ring. (7)\nRnd 2: 2 sc in each st. (14)\nRnd 3: Sc in next st, then 2 sc in the next one. Repeat from * around. (21)\nRnd 4: (Sc in each of next 2 sts, 2 sc in next st) 7 times. ({})\n"
OPEN = "Rnd 1: 7 sc in magic ring. (7)\nRnd 2: 2 sc in each st. (14)\nRnd 3: (Sc in next st, 2 sc in next st 7 times. ({})\n"
SWAPPED = "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: (Sc in next st, 2 sc in next st) 4 times. ({})\n"
SPACES = "Ch 19.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (17 dc)\nRow 2: Ch 3, dc in next dc, (ch 2, skip 2, 3 dc in next) across. {} chain-2 spaces.\n"
SCALES = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, *sk 2 sts, 7 dc in next st, sk next st, sl st in next st; rep from * across, turn. ({} dc)\n"


@pytest.mark.parametrize(
    ("text", "right", "wrong"),
    [
        pytest.param(DECREASES, 10, 8, id="stitches drawn together are left out"),
        pytest.param(SLIPPED, 40, 41, id="the slip stitch on the way to the start"),
        pytest.param(STARLESS, 28, 29, id="above a row without its star"),
        pytest.param(OPEN, 21, 22, id="a bracket that is open"),
        pytest.param(SWAPPED, 12, 21, id="digits the wrong way round"),
        pytest.param(SPACES, 5, 6, id="spaces more than the row has"),
        pytest.param(SCALES, 28, 32, id="slip stitches among stitches of a kind"),
    ],
)
def test_a_wrong_count_is_an_error(text: str, right: int, wrong: int) -> None:
    def errors(number: int) -> list[str]:
        return [f.code for f in check_text(text.format(number)).findings if severity(f) == "error"]

    assert errors(right) == []
    assert errors(wrong) == ["W001"]


def test_stitches_drawn_together_may_be_counted_by_themselves() -> None:
    text = DECREASES.replace("({} sc)", "(8 sc, 2 sc2tog)")
    assert [f.code for f in check_text(text).findings if severity(f) == "error"] == []


def test_meshes_in_rounds_have_no_stitch_to_close_them() -> None:
    text = "Ch 30, join with sl st to form a ring.\nRnd 1: Ch 5, *sk 2 ch, dc in next ch, ch 2; rep from * 8 more times, sk 2 ch; join with sl st to 3rd ch of ch-5. ({} meshes)\n"
    assert [check_text(text.format(n)).rows[-1].agrees for n in (10, 9)] == [True, False]


def test_chains_of_a_mesh_are_not_counted_as_stitches_of_a_kind() -> None:
    text = "Ch 24.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (22 dc)\nRow 2: Ch 3, dc in next dc, *ch 1, skip next dc, dc in next dc; rep from * across, turn. ({})\n"
    assert [check_text(text.format(n)).rows[-1].agrees for n in ("12 dc", "22 sts", "22 dc")] == [True, True, False]


def test_of_two_counts_that_differ_both_are_told() -> None:
    rows = (
        "Rnd 1: 14 dc in 3rd ch from hook, join to first dc. (15 sts)\nRnd 2: Ch 2, 2 dc in each dc, join. (29 sts)\n"
        "Rnd 3: Ch 2, 2 dc in first st, dc in each of next 2 sts, *2 dc in next st, dc in each of next 2 sts*, repeat between *s, dc in last st, join. ({} sts)\n"
        "Rnd 4: Ch 2, dc in each st around, join. ({} sts)\n"
    )
    found = check_text(rows.format(40, 38)).findings
    assert [f.code for f in found if severity(f) == "error"] == ["W016", "W001"]
