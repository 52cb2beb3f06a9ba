"""Rows told in few words, as makers jot them down. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize("pair", ["(dc {n}, 2dc) around", "(dc {n}, 2 dc) around", "*dc {n}, 2 dc in next* around"])
def test_a_number_before_the_stitch_is_of_one_place_and_behind_it_of_several(pair):
    rows = "".join(f"R{n + 2}: {pair.format(n=n)}.\n" for n in (1, 2, 3))
    assert first_counts(f"R1: 9 dc in magic ring.\nR2: 2dc in ea st around.\n{rows}") == [9, 18, 27, 36, 45]


@pytest.mark.parametrize("said", ["Ch 4, sl st in 1st ch. ", "Ch 4, sl st in first ch; ", "Ch 5, sl st to 1st ch, ", "Ch 5, sl st in first ch to form ring. "])
def test_a_ring_closed_in_its_first_chain(said):
    assert first_counts(f"Rnd 1: {said}Ch 3, 11 dc in ring, sl st in top of ch-3.\n") == [12]


@pytest.mark.parametrize("first", ["ch 3 (1st dc), 14 dc in ring", "ch 3 (first dc), 14 dc in ring", "ch 3 (the first dc made), 14 dc in ring", "ch 3 (= dc), 14 dc in ring"])
@pytest.mark.parametrize("end", [". sl st 15 dc", ", join 15 dc", ", join. 15 dc", ", sl st. (15 dc)"])
def test_the_first_stitch_and_the_count_told_in_passing(first, end):
    assert first_counts(f"Rnd 1: {first}{end}\nRnd 2: ch 3, dc in same st, *2 dc in next st* around.\n") == [15, 30]


@pytest.mark.parametrize("same", ["1 dc same st", "dc in same st", "1 dc same stitch", "1 dc in same"])
def test_places_without_in(same):
    """A round of 8, each round after it with one plain stitch more between the increases."""
    rows = (
        "1) ch 3, 7 dc in ring, join (8)",
        f"2) ch 3, {same}, 2 dc ea st around, join",
        "3) ch 3, 2 dc nxt st, (1 dc, 2 dc nxt st) around",
        "4) ch 3, dc nxt st, 2 dc nxt st, (dc nxt 2, 2 dc nxt) around",
    )
    assert first_counts("\n".join(rows) + "\n") == [8, 16, 24, 32]


@pytest.mark.parametrize("second", ["[3 dc, ch 3, 3 dc] in each corner", "[3 dc, ch 3, 3 dc, ch 1] in each corner"])
@pytest.mark.parametrize("third", ["[3 dc, ch 3, 3 dc] in each corner sp and 3 dc in each side sp", "*[3 dc, ch 3, 3 dc] in corner sp, 3 dc in side sp; rep from * around"])
def test_side_spaces_lie_between_the_groups(second, third):
    assert first_counts(f"Rnd 1: [3 dc, ch 3] 4 times in ring. Join.\nRnd 2: {second}\nRnd 3: {third}\n") == [12, 24, 36]


@pytest.mark.parametrize("lead", ["Multiple of 12 plus 3. ", "Base: multiple of 12 + 3. ", "Foundation: (multiple of 12 plus 3) ", "A multiple of 12 sts plus 3 for the turning chain. ", "Multiple of 12 + 3.\n"])
def test_a_multiple_told_before_the_chain_is_no_chain(lead):
    assert first_counts(f"{lead}Chain 39.\nRow 1: sc in 2nd ch and each ch.\n") == [39, 38]


def test_numbers_alone_beside_increases_are_stitches():
    rows = ["1: 6 sc", "2: inc, 2, inc, 2, turn (8)", "3: 3, inc, 2, inc, 1 (10)", "4: dec, 6, dec (8)", "5: (2, dec) x 2 (6)"]
    assert first_counts("\n".join(rows) + "\n") == [6, 8, 10, 8, 6]


@pytest.mark.parametrize("goes_on", ["Continue, inc every 3rd row 4 times.", "Cont in this manner, increasing every 3rd row 4 more times.", "Continue as set and inc every 3rd row 4 times.", "Rep inc row every 3rd row 4 times."])
def test_shaping_goes_on_as_the_last_row_of_it(goes_on):
    """One stitch at each end of it, so two a time."""
    start = "Ch 22.\nRow 1: Hdc in 3rd ch and in each ch across. 20 hdc.\nRow 2: (inc row) Ch 2, turn, 2 hdc in first, hdc to last st, 2 hdc in last. 22 hdc\nRows 3-4: Work even.\n"
    assert first_counts(f"{start}{goes_on}\n")[-1] == 22 + 2 * 4
