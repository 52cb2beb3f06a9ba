"""Which cautions a pattern brings up, for which sizes, with which figures; and that things for grown-ups bring up none."""

import math
from pathlib import Path

import pytest

from loopwright.grading.gauge import stitch_sizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.cautions import cautions, cautions_due, hidden_names, in_words, openings_mm
from loopwright.trade.cautions.ages import by_size, months_of, spoken_of
from loopwright.working import work

ROOT = Path(__file__).parents[2]
DESIGNS = sorted((ROOT / "designs").glob("*.txt"))
HEAD = "Terms: US\nHook: 4 mm\nGauge: 20 dc and 10 rows = 10 cm\n"
ROUND = "\nBody\nRnd 1: 8 hdc in magic ring; join. (8 hdc)\n"
MESH = (
    "\nBody\nCh 42.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (41 sc)\n"
    "Row 2: Ch 4 (counts as dc and ch 1), sk next st, *dc in next st, ch 1, sk next st; rep from * across to last st, dc in last st, turn. (21 dc)\n"
)


def due(text):
    document = read(Source.of(text))
    report = work(document)
    return {c.key: c for c in cautions_due(document, stitch_sizes(document).sizes, report.fabrics)}


GROWN = {
    "hat": "Heron Beanie\nA slouchy hat in bulky yarn with a pompom.\nSizes: S, M, L\n" + HEAD + "Yarn: bulky, brushed acrylic\n" + ROUND,
    "hat with ties": "Bittern Earflap Hat\nSizes: woman, man\n" + HEAD + "Yarn: baby alpaca\n" + ROUND + "\nTies\nCh 60, sl st in each ch.\n",
    "bag": "Saltwort Tote\nA bag with a drawstring.\n" + HEAD + "Notes: No toy for children.\n" + MESH,
    "shawl": "Egret Lace Shawl\nWith a fringe.\n" + HEAD + "Yarn: lace, mohair\n" + MESH,
    "scarf": "Gannet Scarf\nTie off each colour; weave in the ends.\n" + HEAD + MESH,
    "pincushion": "Whelk Pincushion\n" + HEAD + "Materials: stuffing\n" + ROUND + "Stuff. Sew the wings to the body.\n",
    "bootie to look at": "Dunlin Bootie Ornament\n" + HEAD + ROUND,
    "coasters": "Limpet Coasters and mug rug\n" + HEAD + "Yarn: acrylic\n" + ROUND,
    "pouch": "Reed Mobile Phone Pouch\nWith a cord.\n" + HEAD + ROUND + "\nCord\nCh 100.\n",
    "pot holder of cotton": "Plover Potholder\n" + HEAD + "Yarn: worsted, cotton\n" + ROUND,
    "throw": "Tern Blanket\nSizes: lap, throw\n" + HEAD + MESH,
    "sweater": "Stilt Sweater\nSizes: 4 years, 8 years\n" + HEAD + "Notes: Cap shaping follows; tie in the new yarn.\n" + MESH,
}


@pytest.mark.parametrize("name", GROWN)
def test_nothing_is_said_where_nothing_is_due(name):
    assert due(GROWN[name]) == {}


CASES = [
    ("Teal Baby Bonnet\n" + HEAD + "Yarn: mohair\n" + ROUND + "\nTies\nCh 60.\n", {"neck-ties", "sleep-hat", "fluff"}),
    ("Goose Weighted Blanket\nSize: pram\n" + HEAD + "Yarn: chenille\n" + ROUND, {"sleep-bedding", "sleep-weight", "fluff"}),
    ("Smew Pyjamas\nSizes: 3 months, 4 years\n" + HEAD + ROUND, {"nightwear"}),
    ("Tern Mitts\nSizes: newborn\n" + HEAD + "Notes: A connecting chain joins the mitts.\n" + ROUND, {"mitten-string", "loose-threads"}),
    ("Bog Bear\n" + HEAD + "Materials: 8 mm safety eyes, stuffing\n" + ROUND + "\nHead\nRnd 1: 6 sc in magic ring. (6)\nStuff.\n", {"soft-toy", "toy-eyes", "toy-filling"}),
    ("Mallard Car Seat Blanket\nFor a new baby.\n" + HEAD + ROUND, {"sleep-bedding", "harness"}),
    ("Redshank Oven Glove\n" + HEAD + "Yarn: worsted\n" + ROUND, {"hot-pots"}),
    ("Snipe Cardigan\nSizes: 2 years, 10 years\n" + HEAD + "Notes: Three buttons close the front.\n" + ROUND + "\nWaist tie\nCh 60.\n", {"waist-cords", "small-parts"}),
    ("Knot Pram Blanket\nWith a fringe.\n" + HEAD + ROUND, {"sleep-bedding", "fringe"}),
    ("Otter Cocoon\nA photo prop for a newborn.\n" + HEAD + ROUND, {"cocoon"}),
]


@pytest.mark.parametrize(("text", "keys"), CASES)
def test_what_is_due(text, keys):
    assert set(due(text)) == keys


def test_melting_yarn_shows_the_fault_itself():
    text = "Dunlin Trivet\n" + HEAD + "Yarn: worsted, {}\n" + ROUND
    assert due(text.format("acrylic"))["hot-pots"].sharp
    assert due(text.format("cotton and polyester"))["hot-pots"].sharp
    assert not due(text.format("any"))["hot-pots"].sharp
    assert due(text.format("wool")) == {}


def test_a_tie_is_measured_in_every_size_and_held_against_the_limit():
    found = due("Teal Bonnet\nSizes: newborn, 2 years, woman\n" + HEAD + ROUND + "\nTies\nCh 60 (70, 80).\n")["neck-ties"]
    assert found.sizes == ("newborn", "2 years")
    assert [(f.size, f.found_mm, f.over, f.by_mm) for f in found.figures] == [("newborn", 300, True, 225), ("2 years", 350, True, 275)]
    assert in_words(found.figures[0]) == "30 cm, 22.5 cm more than 7.5 cm"


def test_a_length_told_in_words_counts_and_one_that_runs_through_is_not_judged():
    told = due("Teal Baby Bonnet\n" + HEAD + ROUND + "\nSew on two ribbons 40 cm long.\n")["neck-ties"].figures
    assert [(f.found_mm, f.over) for f in told] == [(400, True)]
    through = due("Snipe Cardigan\nSizes: 2 years\n" + HEAD + ROUND + "\nDrawstring\nCh 100. Thread the cord through the hem.\n")["waist-cords"].figures
    assert all(not f.over for f in through)


def test_a_loop_is_measured_around():
    found = due("Teal Baby Vest\n" + HEAD + ROUND + "\nHanging loop\nCh 20, join with sl st.\n")["loops"].figures
    assert [(f.what, f.found_mm, f.over) for f in found] == [("loop", 100, True)]


def test_holes_of_mesh_are_due_by_their_size_not_by_the_word():
    wide = "Wigeon Baby Blanket\n" + HEAD.replace("20 dc and 10", "12 dc and 6") + MESH
    (hole,) = due(wide)["finger-holes"].figures
    assert hole.found_mm == pytest.approx(100 / 12)
    assert "finger-holes" not in due("Wigeon Baby Mesh Blanket\n" + HEAD + MESH)
    document = read(Source.of("Wigeon Baby Mesh Blanket\n" + MESH))
    assert "finger-holes" in {c.key for c in cautions_due(document)}


def test_openings_leave_thumb_holes_and_buttonholes_out():
    text = "Ch 42.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (41 sc)\nRow 2: Ch 1, sc in each of next 18 sts, ch 6, sk next 6 sts, sc in each st to end.\n"
    document = read(Source.of(HEAD + "\n" + text))
    fabric, sizes = work(document).fabrics[0], stitch_sizes(document).sizes
    assert fabric is not None
    assert sizes is not None
    assert openings_mm(fabric, sizes) == ()


def test_what_the_notes_tell_is_told_and_not_brought_up_by_the_note_itself():
    found = due("Teal Baby Bonnet\n" + HEAD + "Notes: Take the bonnet off a baby who sleeps.\nNotes: Sew on no buttons: they can be swallowed.\n" + ROUND)
    assert {k: c.told for k, c in found.items()} == {"sleep-hat": True}


def test_hidden_ones_stay_marked():
    document = read(Source.of("Coot Baby Hat\nHidden cautions: Sleep hat, kites\n" + HEAD + ROUND))
    (one,) = cautions_due(document)
    assert (one.key, one.hidden) == ("sleep-hat", True)
    assert [key for key, _ in hidden_names(document)] == ["sleep-hat", "kites"]


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_the_designs_tell_what_is_due_in_them(path):
    found = due(path.read_text(encoding="utf-8"))
    assert [k for k, c in found.items() if not c.told] == []
    assert all(math.isfinite(f.found_mm) for c in found.values() for f in c.figures)


def test_the_page_of_the_notation_names_every_caution():
    page = " ".join((ROOT / "docs" / "notation.md").read_text(encoding="utf-8").split())
    names = page.split("The names: ")[1].split(". ")[0].replace(" · ", ", ").split(", ")
    assert sorted(names) == sorted(c.key.replace("-", " ") for c in cautions())


@pytest.mark.parametrize(
    ("name", "months"),
    [("0-3 months", 3), ("6m", 6), ("18-24 mths", 24), ("2T", 24), ("5 yrs", 60), ("pram", 0), ("Preemie", 0), ("S", None), ("woman", None), ("lap", None), ("one size", None), ("medium", None)],
)
def test_months_of_sizes(name, months):
    assert months_of(name) == months


def test_words_tell_the_age_only_where_no_size_does():
    assert by_size(("small", "large"), frozenset({"baby"})) == (frozenset({"baby"}),) * 2
    assert by_size(("pram", "lap"), frozenset({"baby"})) == (frozenset({"baby"}), frozenset())
    assert spoken_of("a hat in baby alpaca and baby blue") == frozenset()
    assert spoken_of("booties for women") == frozenset()
    assert spoken_of("booties") == frozenset({"baby"})
    assert "baby" in spoken_of("to fit 3-6 months")
