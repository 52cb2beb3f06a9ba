"""Changes in words: what makers read. The whole page of one planted case was read by eye."""

from __future__ import annotations

import pytest

from loopwright.publishing.changes.errata import change_list, errata
from loopwright.publishing.changes.page import page
from loopwright.publishing.changes.phrases import labels_joined, some_sizes, span_of, values
from tests.compare.texts import CUFF, changed

CORRECTED = (
    "8 (10, 11, 12) sc in magic ring; join. (8 (10, 11, 12) sc)", "8 (10, 12, 13) sc in magic ring; join. (8 (10, 12, 13) sc)",
    "(16 (20, 22, 24) sc)", "(16 (20, 24, 26) sc)", "(24 (30, 33, 36) sc)", "(24 (30, 36, 39) sc)", "(24 (30, 33, 36) hdc)", "(24 (30, 36, 39) hdc)",
    "Version: 1.2 (2026-09-01)", "Version: 1.3 (2026-11-20)", "Hook: 4 mm", "Hook: 3.75 mm", "Rnd 2: Ch 1, sc in each st around; join.\nFasten", "Rnd 2: Ch 1, 1 sc into every st around; join.\nFasten",
)
PAGE = """Sandpiper Cuff: corrections

Version 1.3 (2026-11-20), since version 1.2 (2026-09-01).

SIZE OR FIT

Hook: now “3.75 mm”, was “4 mm”.
  Which makers are concerned: anyone who has chosen a size, made a swatch or begun.

Cuff, Rnd 1, sizes teen and adult: 12 (13) sc, was 11 (12).
  Which makers are concerned: anyone who makes teen or adult and has begun Rnd 1 of “Cuff”.
  Sizes baby and child are as they were.
  Now: Rnd 1: Ch 1, 8 (10, 12, 13) sc in magic ring; join. (8 (10, 12, 13) sc)
  Was: Rnd 1: Ch 1, 8 (10, 11, 12) sc in magic ring; join. (8 (10, 11, 12) sc)
  Follows from it: Cuff, Rnds 2-7; Edge, Rnds 1-2.

WORDING ONLY

Nobody has to undo anything: these rows and notes read otherwise, and mean what they meant.

Edge, Rnd 2: reads otherwise.
  Now: Rnd 2: Ch 1, 1 sc into every st around; join.
  Was: Rnd 2: Ch 1, sc in each st around; join.

FINISHED MEASUREMENTS THAT CHANGED

"""


def test_the_page_of_a_planted_case():
    told = page(changed(*CORRECTED))
    head, _, rest = told.partition("- Cuff, ")
    assert head == PAGE
    assert "- Edge, around, sizes teen and adult: 20 (21.7) cm, was 18.3 (20) cm\n" in f"- Cuff, {rest}"
    assert "YARN THAT IS NEEDED" in rest


def test_the_change_list_of_the_document():
    head, lines = change_list(changed(*CORRECTED))
    assert head == "Changes since version 1.2 (2026-09-01)"
    assert lines[1] == "Cuff, Rnd 1, sizes teen and adult: 12 (13) sc, was 11 (12)."
    assert len(lines) == 3


def test_signs_in_words_are_no_marks_in_markdown():
    told = page(changed("*sc in next st, 2 sc in next st", "*2 sc in next st, sc in next st"), markdown=True)
    assert "\\*" in told
    assert "\n- *Now*: Rnd 3" in told


def test_one_size_says_no_size():
    text = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    (erratum,) = errata(changed("6 sc in magic ring. (6)", "7 sc in magic ring. (7)", "(12)", "(14)", text=text))
    assert erratum.line == "Rnd 1: 7 sc, was 6"
    assert erratum.concerned == "anyone who has begun Rnd 1"
    assert erratum.unconcerned == ""


@pytest.mark.parametrize(
    ("sizes", "said"),
    [
        (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a to c"), (["a", "b", "c", "e"], "a to c and e"), (["e", "a", "c"], "a, c and e"),
        (["b", "c", "d", "e"], "b to e"), (["z", "a"], "a and z"), ([], ""),
    ],
)
def test_sizes_side_by_side_are_a_range(sizes, said):
    assert some_sizes(sizes, list("abcde")) == said


def test_labels_that_count_on_are_one():
    assert labels_joined(["Rnd 1", "Rnd 2", "Rnd 3", "Next rnd", "Row 7"]) == "Rnds 1-3, Next rnd and Row 7"
    assert labels_joined([""]) == ""
    assert span_of(["Rnd 4"] * 3, ["Rnd 6", "Rnd 7", "Rnd 7"]) == "Rnds 4-6 (7, 7)"
    assert span_of(["Rnd 4"] * 2, ["Rnd 6"] * 2) == "Rnds 4-6"
    assert values([3, 3, 3]) == "3"
    assert values([3, None, 4]) == "3 (–, 4)"


def test_nothing_changed_is_said_in_a_sentence():
    assert "No difference: the two texts are the same." in page(changed())
    assert "No difference: every row of every size" in page(changed("\n\nCuff", "\n\n\nCuff", text=CUFF))
