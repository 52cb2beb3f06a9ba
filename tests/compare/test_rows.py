"""Rows of two versions: what is otherwise in the fabric, in which sizes, and what only follows from it."""

from __future__ import annotations

import pytest

from tests.compare.texts import CUFF, changed, only


def test_a_count_that_changed_in_two_sizes_is_one_erratum_with_all_that_follows():
    c = only(changed("8 (10, 11, 12) sc in magic ring; join. (8 (10, 11, 12) sc)", "8 (10, 12, 13) sc in magic ring; join. (8 (10, 12, 13) sc)",
                     "(16 (20, 22, 24) sc)", "(16 (20, 24, 26) sc)", "(24 (30, 33, 36) sc)", "(24 (30, 36, 39) sc)",
                     "(24 (30, 33, 36) hdc)", "(24 (30, 36, 39) hdc)"))
    assert (c.what, c.section, c.label, c.sizes) == ("count", "Cuff", "Rnd 1", ("teen", "adult"))
    assert (c.was, c.now, c.noun, c.severity) == ((11, 12), (12, 13), "sc", "size")
    assert [f.label for f in c.follows] == ["Rnd 2", "Rnd 3", "Rnd 4", "Rnd 5", "Rnd 6", "Rnd 7", "Rnd 1", "Rnd 2"]
    assert [f.section for f in c.follows] == ["Cuff"] * 6 + ["Edge"] * 2
    assert c.follows[1].was == (33, 36)
    assert c.follows[1].now == (36, 39)
    assert all(f.sizes == ("teen", "adult") for f in c.follows)


def test_other_stitches_at_the_same_count():
    c = only(changed("hdc in each st around; join. (24 (30, 33, 36) hdc)", "dc in each st around; join. (24 (30, 33, 36) dc)"))
    assert (c.what, c.label, len(c.sizes)) == ("stitches", "Rnd 7", 4)
    assert c.was[0] == "24 hdc"
    assert c.now[0] == "24 dc"


def test_increases_that_sit_elsewhere():
    c = only(changed("*sc in next st, 2 sc in next st; rep", "*2 sc in next st, sc in next st; rep"))
    assert (c.what, c.label) == ("places", "Rnd 3")
    assert str(c.was[0]).startswith("increases in sts 2, 4, 6")
    assert str(c.now[0]).startswith("increases in sts 1, 3, 5")


def test_another_loop():
    c = only(changed("in back loop only of", "in front loop only of"))
    assert (c.what, c.section, c.label) == ("places", "Edge", "Rnd 1")
    assert (c.was[0], c.now[0]) == ("24 in back loops", "24 in front loops")


def test_more_rows_of_a_range_and_the_numbers_after_it():
    c = changed("Rnds 4-6", "Rnds 4-8", "Rnd 7:", "Rnd 9:")
    rows = only(c, lambda x: x.what == "rows")
    assert (rows.section, rows.label, rows.was, rows.now) == ("Cuff", "Rnds 4-8", (3,) * 4, (5,) * 4)
    assert rows.begun == "Rnd 7"
    assert only(c, lambda x: x.what == "renumbered").now == ("Rnd 9",)
    assert len(c.changes) == 2


def test_a_row_put_in_and_one_taken_out():
    put = only(changed("Rnds 4-6", "Rnd 3a: Ch 1, hdc in each st around; join.\nRnds 4-6"), lambda x: x.what != "renumbered")
    assert (put.what, put.section, put.now) == ("added", "Cuff", (1,) * 4)
    out = only(changed("Rnd 2: Ch 1, sc in each st around; join.\nFasten", "Fasten"))
    assert (out.what, out.section, out.label, out.was) == ("removed", "Edge", "Rnd 2", (1,) * 4)


def test_a_printed_count_is_wrong_and_the_stitches_are_right():
    c = only(changed("(24 (30, 33, 36) hdc)", "(24 (30, 34, 36) hdc)"))
    assert (c.what, c.label, c.sizes, c.severity) == ("printed", "Rnd 7", ("teen",), "count")
    assert (c.was, c.now) == (("33 hdc",), ("34 hdc",))
    assert c.follows == ()


def test_rows_told_one_by_one_and_together_are_no_change_of_the_fabric():
    each = "\n".join(f"Rnd {n}: Ch 1, sc in each st around; join." for n in (4, 5, 6))
    there, back = changed("Rnds 4-6: Ch 1, sc in each st around; join.", each), changed(each, "Rnds 4-6: Ch 1, sc in each st around; join.", text=CUFF.replace("Rnds 4-6: Ch 1, sc in each st around; join.", each))
    assert there.wording_only
    assert back.wording_only


def test_a_row_that_moved_is_told_once():
    moved = changed("Rnd 7: Ch 1, hdc in each st around; join. (24 (30, 33, 36) hdc)\n", "", "Edge\n", "Edge\nRnd 7: Ch 1, hdc in each st around; join. (24 (30, 33, 36) hdc)\n")
    c = only(moved)
    assert (c.what, c.section) == ("moved", "Edge")


def test_sections_renamed_moved_and_made_more_often():
    renamed = only(changed("\nEdge\n", "\nBorder\n"))
    assert (renamed.what, renamed.was, renamed.now, renamed.severity) == ("renamed", ("Edge",), ("Border",), "wording")
    copies = only(changed("\nCuff\n", "\nCuff (make 2)\n"), lambda x: x.what == "copies")
    assert (copies.was, copies.now) == ((1,) * 4, (2,) * 4)
    body, edge = CUFF[CUFF.index("\nCuff\n") : CUFF.index("\nEdge\n")], CUFF[CUFF.index("\nEdge\n") :]
    assert any(c.what == "moved" and c.label == "" for c in changed(body + edge, edge + body).changes)


def test_a_section_taken_out_is_one_change():
    c = only(changed(CUFF[CUFF.index("\nEdge\n") :], "\n"))
    assert (c.what, c.section, c.label, c.was) == ("removed", "Edge", "", (2,) * 4)


def test_words_that_change_nothing_are_apart():
    c = changed("sc in each st around; join.\nFasten", "1 sc into every st around; join.\nFasten")
    assert c.wording_only
    assert (only(c).section, only(c).label) == ("Edge", "Rnd 2")


def test_a_number_that_changes_no_stitch_is_not_called_wording():
    c = only(changed("Rnd 2: Ch 1, 2 sc", "Rnd 2: Ch 0, 2 sc"))
    assert c.severity == "count"


def test_a_row_that_can_no_longer_be_worked_is_said():
    c = changed("Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join. (24 (30, 33, 36) sc)", "Rnd 3: Blorp the wibbled flange.")
    assert any(x.what == "unworkable" and x.label == "Rnd 3" for x in c.changes)
    assert any("cannot be read or worked: Rnd 3" in n for n in c.notes)


@pytest.mark.parametrize(("was", "now"), [("\n", "\n\n"), (": Ch 1", ":  Ch   1"), ("Rnds 4-6", "Rnds 4–6")])
def test_spaces_lines_and_dashes_are_no_change(was, now):
    text = CUFF[CUFF.index("\nCuff\n") :]
    assert changed(text, text.replace(was, now)).none


def test_nothing_changed_at_all():
    c = changed()
    assert c.identical
    assert c.none
    assert not c.warnings


def test_a_very_long_pattern_is_aligned_row_by_row():
    lines = [f"Row {n}: Ch 1, sc in each of next 20 sts, turn. (20 sc)" for n in range(2, 602)]
    start = ["Gauge: 20 sc and 22 rows = 10 cm", "", "Ch 21.", "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)"]
    text = "\n".join([*start, *lines, ""])
    now = [line.replace("sc", "hdc") if line.startswith(("Row 2:", "Row 300:", "Row 600:")) else line for line in lines]
    other = changed("\n".join(lines), "\n".join(now), text=text)
    assert [(c.what, c.label) for c in other.changes] == [("stitches", "Row 2"), ("stitches", "Row 300"), ("stitches", "Row 600")]
    more = changed("\n".join(lines), "\n".join([*lines, "Row 602: Ch 1, hdc in each of next 20 sts, turn. (20 hdc)"]), text=text)
    assert [(c.what, c.label) for c in more.changes] == [("added", "Row 602")]
