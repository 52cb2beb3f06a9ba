"""Rows labelled "of pattern", increases told to lie over others, a stitch of the turning chain passed over."""

from tests.line_by_line import first_counts, last_rows


def counted(lines, terms="us"):
    return [row.counts[0] if row is not None else None for row in last_rows(lines, terms)]


def test_a_row_of_the_pattern_is_a_row_with_its_number():
    lines = [
        "Ch 31, sc in 2nd ch from hook and in all other ch, ch 1, turn.",
        "1st Row of pattern. (Right side of work) Sc in each sc across, ch 1, turn.",
        "2nd Row of pattern: Dc in each st across, ch 1, turn.",
        "3rd and 4th Rows. Same as 1st and 2nd rows.",
    ]
    assert counted(lines) == [30, 30, 30, 30]
    assert last_rows(lines, "us")[2].made["dc"][0] == 30


def test_the_third_row_is_as_the_first_of_the_pattern():
    lines = [
        "Ch 21, sc in 2nd ch from hook and in all other ch.",
        "1st row of the pattern. Dc in each sc across.",
        "2nd row of the pattern. Sc in each dc across.",
        "3rd row. Same as 1st row.",
    ]
    assert [row.made.get("dc", (0,))[0] for row in last_rows(lines, "us")[1:]] == [20, 0, 20]


def test_increases_that_lie_over_others_are_made_once():
    begin = ["Ch 2. 1st rnd: 7 sc in 2nd ch from hook.", "2nd rnd: 2 sc in each sc around.", "3rd rnd: * Sc in next sc, 2 sc in next sc. Repeat from * around."]
    for said in (
        "having increases directly over previous increases",
        "having the incs directly over incs of previous rnd",
        "making increases over those of the last round",
        "keeping increases exactly above the preceding increases",
    ):
        assert counted([*begin, f"4th to 6th rnds incl: Sc in each sc around, increasing 7 sc in each rnd, {said} (42 sc on 6th rnd)."]) == [7, 14, 21, 42]


def test_a_chain_of_the_turning_chain_is_passed_over():
    lines = [
        "Ch 28.",
        "Row 1: Dc in 6th ch from hook, (ch 1, skip next ch, dc in next ch) across, ch 4, turn.",
        "Row 2: Skip first dc, * dc in next dc, ch 1; rep from *, end dc in last dc, ch 1, skip 1 st of turning chain, dc in next st.",
    ]
    assert counted(lines)[1:] == [13, 13]


def test_what_is_told_of_increases_elsewhere_still_counts():
    assert first_counts("Rnd 1: 6 sc in ring.\nRnd 2: Inc in each sc around.\n") == [6, 12]


def test_the_last_stitch_before_the_turning_chain_is_not_that_chain():
    for end in ("dc in top of turning ch", "dc in 3rd ch of turning ch", "skip 1 st of turning ch, work 1 dc in next st"):
        lines = [
            "Ch 28.",
            "Row 1: Dc in 6th ch from hook, (ch 1, skip next ch, dc in next ch) across, ch 4, turn.",
            f"Row 2: Skip first dc, * dc in next dc, ch 1; rep from *, end dc in last dc, ch 1, {end}, ch 4, turn.",
            "3rd to 7th rows incl: Same as 2nd row.",
        ]
        assert counted(lines)[1:] == [13, 13, 13]  # 12 spaces
        assert last_rows(lines, "us")[3].made["ch-sp"][0] == 12


def test_a_row_that_begins_and_ends_on_a_turning_chain_keeps_its_width():
    lines = [
        "Ch 16, dc in 4th ch from hook and in all other ch, ch 3, turn.",
        "2nd row: Skip first dc, * dc in next dc; rep from *, end dc in last dc, dc in top of turning ch, ch 3, turn.",
        "3rd to 6th rows: Same as 2nd row.",
    ]
    assert counted(lines) == [14, 14, 14]
