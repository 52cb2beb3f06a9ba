"""What the words of a pattern say of its shape: which pieces are stuffed, which rounds are drawn together, what lies flat."""

from __future__ import annotations

from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.shapes import drawn_together, lies_flat, stuffed

BIRD = (
    "Whimbrel\n\nBody\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: Sc in each st around. (12)\n"
    "Rnd 4: Sc2tog around. (6)\nStuff firmly. Thread the end through the last 6 sts and draw them together.\n"
    "Wing\nRnd 1: 6 sc in magic ring. (6)\nRnds 2-3: Sc in each st around. (6)\nDo not stuff. Press flat.\n"
)


def both(text: str) -> tuple[Document, Fabric]:
    document = read(Source.of(text), "us")
    fabric = work(document).fabrics[0]
    assert fabric is not None
    return document, fabric


def test_a_piece_is_stuffed_where_its_section_says_so():
    document, fabric = both(BIRD)
    assert stuffed(document, fabric) == {next(r.piece for r in fabric.rows if r.section == "Body")}


def test_the_last_round_of_a_section_is_drawn_together_where_it_says_so():
    document, fabric = both(BIRD)
    (last,) = drawn_together(document, fabric)
    assert (fabric.rows[last].section, fabric.rows[last].label) == ("Body", "Rnd 4")


def test_rows_alone_lie_flat_and_rounds_do_not():
    sizes = StitchSizes(5.0, 5.0, "sc")
    rows = both("Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across. (10)\n")[1]
    assert lies_flat(rows, sizes)
    assert not lies_flat(both(BIRD)[1], sizes)
