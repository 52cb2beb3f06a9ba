"""Into which parts a fabric falls, and what that makes of its measures."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.parts import Part, parts
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.measure import measure_source

SIZES = StitchSizes(5.0, 5.0, "sc")
DESIGNS = Path(__file__).parents[2] / "designs"


def fabric(text: str) -> Fabric:
    found = work(read(Source.of(text), "us")).fabrics[0]
    assert found is not None
    return found


def cut(text: str, sizes: StitchSizes = SIZES) -> list[Part]:
    woven = fabric(text)
    return parts(woven, courses(woven, sizes))


def named(text: str, sizes: StitchSizes = SIZES) -> dict[tuple[str | None, str], Dimension]:
    return {(d.section, d.name): d for d in dimensions(fabric(text), sizes)}


def plain_rounds(counts: list[int]) -> str:
    told = {True: "Sc around, increasing evenly to {0} sts. ({0})", False: "Sc in each st around. ({0})"}
    lines = [f"Rnd 1: {counts[0]} sc in magic ring. ({counts[0]})"]
    lines += [f"Rnd {i + 2}: {told[n > counts[i]].format(n)}" for i, n in enumerate(counts[1:])]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("start", ["Rnd 1: 8 sc in magic ring. (8)", "Ch 2.\nRnd 1: 8 sc in 2nd ch from hook. (8)", "Ch 4, join with sl st to form a ring.\nRnd 1: 8 sc in ring. (8)"])
def test_a_disc_however_it_begins(start):
    (disc,) = cut(f"{start}\nRnd 2: 2 sc in each st around. (16)\n")
    assert (disc.kind, disc.radius_mm) == ("disc", 10.0)


def test_a_chain_joined_and_worked_around_is_a_tube():
    (tube,) = cut("Ch 20, join with sl st to form a ring.\nRnd 1: Sc in each ch around. (20)\nRnd 2: Sc in each st around. (20)\n")
    assert tube.kind == "tube"


def test_a_row_along_row_ends_and_chain_does_not_close():
    text = (
        "Sanderling Panel\n\nBody\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30)\nRows 2-6: Ch 1, sc in each st across, turn. (30)\n"
        "Band\nRow 1: Ch 1, sc in end of each of the 6 rows, sc in each of the 30 ch, sc in end of each of the 6 rows, turn. (42)\nRow 2: Ch 1, sc in each st across. (42)\n"
    )
    assert [p.kind for p in cut(text)] == ["flat", "edge"]
    found = named(text)
    assert found["Band", "length"].value_mm == pytest.approx(42 * 5)
    assert found["Band", "depth"].rows == (7, 8)
    assert not any(name.startswith("around") for _, name in found)


def test_the_bands_of_a_cardigan_go_along_and_its_sleeves_are_not_its_depth():
    size = measure_source(Source.of((DESIGNS / "plover-cardigan.txt").read_text(encoding="utf-8"))).sizes[0]
    found = {(d.section, d.name): d.value_mm for d in size.dimensions}
    assert ("Bands", "around") not in found
    assert found[None, "depth"] == pytest.approx(found["Yoke", "depth"] + found["Body", "depth"])
    assert found[None, "around worn"] == pytest.approx(found["Body", "width"])


def test_a_brim_that_grows_again_after_straight_sides_is_no_disc():
    kinds = [p.kind for p in cut("Curlew Hat\n\nCrown\n" + plain_rounds([8, 16, 24]) + "Sides\nRnds 4-9: Sc in each st around. (24)\nBrim\nRnd 10: 2 sc in each st around. (48)\n")]
    assert kinds == ["disc", "tube", "tube"]


def test_a_crown_with_two_even_rounds_between_its_increases_is_one_disc():
    assert [p.kind for p in cut(plain_rounds([8, 16, 16, 16, 24, 24, 24, 32]))] == ["disc"]


def test_a_disc_that_goes_on_as_a_tube_tells_its_rim_once():
    found = [d for d in dimensions(fabric(plain_rounds([8, 16, 16, 16, 16, 32])), SIZES) if d.name == "around"]
    assert [d.value_mm for d in found] == [32 * 5.0]


CORNER = (
    "Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn.\n"
    "Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of next block, ch 3, 3 dc in same sp, turn.\n"
    "Row 3: Ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * once, turn.\n"
    "Row 4: Ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * 2 more times, turn.\n"
)
FEWER = "Row {0}: Ch 1, sl st in next 3 dc, sl st in ch-3 sp, *ch 3, 3 dc in same sp, sl st in ch-3 sp of next block; rep from * across, turn.\n"


@pytest.mark.parametrize("rows", ["", FEWER.format(5), FEWER.format(5) + FEWER.format(6)])
def test_a_piece_from_corner_to_corner_is_as_wide_as_its_blocks(rows):
    """Four blocks to a side: posts lie along an edge in every other block, so that one takes up half of three widths and a height."""
    found = named(CORNER + rows, StitchSizes(5.0, 11.0, "dc"))
    assert found[None, "width"].value_mm == pytest.approx(4 * (3 * 5.0 + 11.0) / 2)
    assert found[None, "depth"].value_mm == found[None, "width"].value_mm


def test_shells_in_straight_rows_are_not_worked_from_corner_to_corner():
    text = (
        "Ch 17.\nRow 1: 3 dc in 4th ch from hook, *sk 3 ch, sl st in next ch, ch 3, 3 dc in same ch; rep from * 2 times, turn.\n"
        "Row 2: *Ch 3, 3 dc in next ch-3 sp, sl st in same sp; rep from * across, turn.\nRow 3: *Ch 3, 3 dc in next ch-3 sp, sl st in same sp; rep from * across, turn.\n"
    )
    assert not any(p.blocks for p in cut(text))
