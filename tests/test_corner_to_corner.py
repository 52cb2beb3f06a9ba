"""Blocks from corner to corner, told in rows and in sentences: each row has one block more, or one less."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SENTENCES = """
Tidal corner cloth

To start, chain 6. Work a dc into the 4th chain from the hook, then one into each of the next 2 chains. That is your first block.
Row 2: Turn, chain 6, dc in the 4th ch from the hook and in the next 2 chs. Flip the block over and slip stitch into the chain-3 space of the block below, ch 3, work 3 dc into the same space. (2 blocks)
Row 3: Turn. Ch 6, dc in 4th ch from hook and next 2 ch. Slip stitch into the ch-3 space of the block below, ch 3, 3 dc in the same space. Repeat for each remaining block. (3 blocks)
Row 4: Turn. Ch 6, dc in 4th ch from hook and next 2 ch. Slip stitch into the ch-3 space of the next block, ch 3, 3 dc in the same space. Repeat from the slip stitch to the end of the row. (4 blocks)
Keep adding one block in every row until you have 8 blocks.
"""
BETWEEN = """
Tidal corner cloth

Row 1: Ch 6, dc in 4th ch from hook, and in next two chs. Turn. (1 block)
Row 2: Ch 6, dc in 4th ch from hook, and in next two chs, sk 3 dcs, sl st in space between 3rd and 4th dc, ch 3, 3 dc in same space as ch 3. Turn. (2 blocks)
Row 3: Ch 6, dc in 4th ch from hook, and in next two chs, *sk 3 dcs, sl st in space between 3rd and 4th dc, ch 3, 3 dc in same space as ch 3; rep from * to end. Turn. (3 blocks)
Rep Row 3 until you have 6 blocks.
"""
IN_SPACE = """
Tidal corner cloth

Row 1: Ch 6, dc into 4th ch from hook and next 2 ch. Turn. (1 block)
Row 2: Ch 6, dc into 4th ch from hook and next 2 ch. Working in ch 3 space from block in previous row, (ss, ch 3, 3 dc) all in same space. Turn. (2 blocks)
Row 3: Ch 6, dc into 4th ch from hook and next 2 ch. Working in ch-3 space of block in previous row, *ss, ch 3, 3 dc* all in same space, repeat from * to * for next block. Turn. (3 blocks)
Row 4: Ch 6, dc into 4th ch from hook and next 2 ch. Working in ch-3 space of block in previous row, *ss, ch 3, 3 dc* all in same space, repeat from * to * for next 2 blocks. Turn. (4 blocks)
Rows 5-7: Continue in the same manner, adding one block in each row. (7 blocks)
"""


@pytest.mark.parametrize(
    ("text", "blocks"),
    [(SENTENCES, [1, 2, 3, 4, 5, 6, 7, 8]), (BETWEEN, [1, 2, 3, 4, 5, 6]), (IN_SPACE, [1, 2, 3, 4, 5, 6, 7])],
)
def test_each_row_has_one_block_more(text: str, blocks: list[int]) -> None:
    report = work(read(Source.of(text), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == [3 * n for n in blocks]


def test_a_wrong_number_of_blocks_is_found() -> None:
    report = work(read(Source.of(BETWEEN.replace("(3 blocks)", "(4 blocks)")), "us"))
    assert [f.code for f in report.findings] == ["W001"]


def test_a_remark_in_brackets_stands_before_the_rest_of_the_places() -> None:
    report = work(read(Source.of("Hem\n\nCh 20.\nRow 1: Dc in 4th ch from hook (counts as 2 dc), and in each ch across. (18 dc)\n"), "us"))
    assert [row.counts[0] for row in report.rows] == [20, 18]
