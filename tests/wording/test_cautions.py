"""The cautions in the written pattern: before the instructions, each once, none that the designer tells; rows stay what they were."""

import pytest
from law import WAYS, again, graded, same  # type: ignore[import-not-found,unused-ignore]

from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.cautions import cautions, defer
from loopwright.wording import write
from loopwright.working import work

BONNET = (
    "Teal Bonnet\nSizes: newborn, 6 months, 12 months, woman\nTerms: US\nHook: 4 mm\nYarn: DK, mohair\nGauge: 20 hdc and 14 rnds = 10 cm\n{more}"
    "\nCrown\nRnd 1: 8 hdc in magic ring; join. (8 hdc)\nRnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)\n"
    "\nTies (make 2)\nCh 40 (44, 48, 60), sl st in 2nd ch from hook and in each ch.\n"
)
# brings up everything that a text can bring up at once: every caution of the table is written at least by one of these
MANY = [
    "Teal Baby Bonnet\nSize: newborn\nNotes: Two beads.\n\nRnd 1: 6 sc in magic ring. (6)\nTies\nCh 20.\n",
    "Otter Pull Toy\nMaterials: stuffing, safety eyes, a magnet, cord\nNotes: You may sell what you make.\n\nRnd 1: 6 sc in magic ring. (6)\n",
    "Goose Weighted Baby Blanket in brushed mohair lace\nNotes: Fringe all round and a hanging loop.\n\nRnd 1: 6 sc in magic ring. (6)\n",
    "Tern Baby Slippers and Mitts\nNotes: A connecting chain joins them.\n\nRnd 1: 6 sc in magic ring. (6)\n",
    "Smew Baby Set\nCocoon, snowsuit, pyjamas and hooded jacket, with waist tie and hood cord.\n\nRnd 1: 6 sc in magic ring. (6)\n",
    "Dunlin Trivet\nYarn: acrylic\n\nRnd 1: 6 sc in magic ring. (6)\n",
]


def written(text, **how):
    document = read(Source.of(text))
    return write(document, work(document), **{"terms": "us", **how})


def safety(text):
    return [line for line in text.split("\n") if line.startswith(("Safety:", "Caution:", "Warning:"))]


def test_they_stand_before_the_instructions_each_once_and_defer_last():
    text = written(BONNET.format(more=""))
    said = safety(text)
    assert said[0].startswith("Safety: For newborn to 12 months: Ties at a small child's neck")
    assert said[-1] == f"Safety: {defer()}"
    assert len(said) == len(set(said)) == 4
    assert text.index(said[0]) > text.index("Abbreviations:")
    assert text.index(said[-1]) < text.index("\nCrown\n")


def test_one_size_has_its_own_and_a_grown_ups_none():
    assert [len(safety(written(BONNET.format(more=""), size=i))) for i in range(4)] == [4, 4, 4, 0]
    assert "For newborn" not in written(BONNET.format(more=""), size=0)


def test_what_the_designer_tells_is_not_said_again():
    more = "Notes: Take the bonnet off a baby who sleeps.\nWarning: Ties can strangle.\n"
    said = safety(written(BONNET.format(more=more)))
    assert [s.split(":")[0] for s in said] == ["Warning", "Safety", "Safety"]
    assert "sheds" in said[1]


def test_hidden_ones_are_left_out():
    text = written(BONNET.format(more="Hidden cautions: neck ties, fluff, sleep hat\n"))
    assert safety(text) == []
    assert "Hidden" not in text


def test_a_thing_for_grown_ups_has_no_such_lines():
    assert safety(written(BONNET.format(more="").replace("newborn, 6 months, 12 months", "teen, man, lady"))) == []


@pytest.mark.parametrize(("terms", "full", "spelled"), WAYS)
def test_rows_and_cautions_come_back(terms, full, spelled):
    first = graded(BONNET.format(more="Caution: Sew the ties on well, in the last st.\n"))
    text, second = again(first, terms, None, full, spelled)
    assert same(first.report, second)
    assert safety(write(read(Source.of(text)), None, terms=terms, full_words=full)) == safety(text)
    for size in range(4):
        one, back = again(first, terms, size, full, spelled)
        assert same(first.report, back, size)
        assert safety(write(read(Source.of(one)), None, terms=terms, full_words=full)) == safety(one)


@pytest.mark.parametrize("terms", ["us", "uk", "old"])
def test_every_caution_can_be_written_and_read_back_in_the_same_words(terms):
    seen = set()
    for text in MANY:
        once = written(text, terms=terms)
        assert safety(write(read(Source.of(once)), None, terms=terms, full_words=True)) == safety(once)
        seen |= {c.key for c in cautions() if c.text in once}
    assert seen == {c.key for c in cautions()}
