"""Motifs laid out in a rectangle, and the border around them."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.working.layouts import layout_of

SQUARES = """Tern Square
Notes: Lay out {across} across and {down} down.

Square
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join with sl st to top of ch-3. (12 dc)
Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join. (24 dc)

Border
Rnd 1: Join yarn in any st, ch 1, sc in each dc and in each ch-1 sp around, working 3 sc in each corner ch-2 sp; join with sl st to first sc.
"""


@pytest.mark.parametrize(("across", "down"), [(1, 1), (2, 3), (4, 4), (3, 1)])
def test_a_border_goes_around_all_motifs(across, down):
    """Two groups of three and a space between them along each side of a motif, a join between two motifs, three in each corner."""
    report = work(read(Source.of(SQUARES.format(across=across, down=down))))
    sides = 2 * (across + down)
    assert report.rows[-1].counts == (7 * sides + sides - 4 + 12,)
    fabric = report.fabrics[0]
    assert fabric is not None
    assert fabric.layout == (across, down)
    border = fabric.rows[-1]
    assert fabric.rows[-2].piece == border.piece != fabric.rows[-3].piece
    assert {fabric.part_of(s) for s in range(fabric.rows[-2].start, fabric.rows[-2].end)} == {"assumed"}
    corners = [s for s in range(border.start, border.end) if len(fabric.parents(s)) == 2]
    assert len(corners) == 12
    assert any("motifs as they are laid out" in a.message for a in report.assumptions)


def test_without_a_layout_nothing_is_made_up():
    report = work(read(Source.of(SQUARES.replace("Notes: Lay out {across} across and {down} down.\n", ""))))
    assert report.fabrics[0].layout is None
    assert report.rows[-1].counts == (4 * 7 + 12,)


def test_too_many_motifs_are_left_alone():
    report = work(read(Source.of(SQUARES.format(across=999, down=999))))
    assert not any("motifs" in a.message for a in report.assumptions)


def test_the_numbers_of_a_size_are_its_own():
    text = (Path(__file__).parents[2] / "designs" / "sea-lavender-blanket.txt").read_text(encoding="utf-8")
    document = read(Source.of(text))
    assert [layout_of(document, s) for s in range(3)] == [(7, 9), (9, 12), (12, 15)]
    report = work(document)
    assert report.rows[-2].counts == (396, 516, 660)
    assert report.rows[-1].counts == (536, 696, 888)
    assert report.rows[-2].agrees
    assert report.rows[-1].agrees
