"""Answers to makers against what crochet teachers say, each with its page; the pages were read for their rule, no sentence is theirs."""

import tomllib
from importlib.resources import files

import pytest

from loopwright.answering import CountAsked, count_is_off, gauge_is_other
from loopwright.model.measures import Dimension, Measures
from loopwright.workshop.check import check_text

JOINED = (
    "Rnd 1: Ch 1, 6 sc in magic ring; join with sl st to first sc. (6 sc)\nRnd 2: Ch 1, 2 sc in each st around; join. (12 sc)\n"
    "Rnd 3: Ch 1, sc in each st around; join. (12 sc)\n"
)
ROWS = (
    "Row 1: Ch 14, dc in 4th ch from hook and in each ch across, turn. (12 dc)\nRow 2: Ch 3 (counts as dc), dc in next st and in each st across, turn. (12 dc)\n"
    "Row 3: Ch 3 (counts as dc), dc in next st and in each st across, turn. (12 dc)\n"
)


def first(text, row, have):
    return count_is_off(check_text(text), CountAsked(row, 0, have)).causes[0]


def test_one_over_each_round_is_a_stitch_in_the_slip_stitch():
    """https://theloopholefox.com/slip-stitches-in-joined-rounds/: the join is not worked into; who does gains a stitch each round."""
    found = first(JOINED, 2, 13)
    assert found.mark == "join"
    assert "slip stitch" in found.title


def test_one_short_each_round_is_a_join_past_the_first_stitch():
    """https://fruitofthesehands.com/2018/06/19/why-are-my-rounds-shrinking/: rounds shrink by joining into the second stitch."""
    found = first(JOINED, 2, 11)
    assert found.mark == "first"
    assert "second stitch" in found.title


def test_a_piece_that_narrows_has_its_last_stitch_missed():
    """https://flamingocrochet.com/crochet-edges-straight/: the last stitch goes into the top of the turning chain and is easily missed."""
    found = first(ROWS, 1, 11)
    assert found.mark == "last"
    assert "turning chain" in found.mend


def test_a_piece_that_widens_has_its_first_stitch_doubled():
    """https://gs-crafts-n-things.blogspot.com/2011/07/is-your-square-crochet-slanting.html: a stitch at the foot of a chain that counts."""
    found = first(ROWS, 1, 13)
    assert found.mark == "first"
    assert "turning chain already stands for one" in found.title


def test_first_and_last_stitch_are_marked_from_then_on():
    """https://flamingocrochet.com/crochet-edges-straight/: a marker in the first and the last stitch."""
    assert "first and the last stitch of each row" in count_is_off(check_text(ROWS), CountAsked(1, 0, 11)).text


@pytest.mark.parametrize(("stitches", "hook"), [(22, "larger"), (18, "smaller")])
def test_too_many_stitches_ask_for_a_larger_hook_too_few_for_a_smaller(stitches, hook):
    """https://millabilla.dk/en/projekter/tip-7-the-golden-loop/: too many to 10 cm, a larger hook; too few, a smaller one.

    http://www.crochetkitten.com/tutorials/measuringgauge.html has it the other way round, against all others.
    """
    sizes = [Measures("one", (Dimension(None, "around", 500, 490, 510, (0, 0), ""),))]
    said = gauge_is_other(sizes, 0, "20 sc", (5.0, 5.0), f"{stitches} sc", (100 / stitches, 5.0)).text
    assert f"a {hook} hook" in said


def test_every_cause_names_a_source_that_is_listed():
    table = tomllib.loads(files("loopwright.answering").joinpath("phrases.toml").read_text(encoding="utf-8"))
    assert {c["source"] for c in table["cause"]} <= set(table["sources"])
    assert all(s.startswith(("https://", "http://", "common practice", "ours")) for s in table["sources"].values())
