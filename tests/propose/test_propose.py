"""Reasons proposed for plain patterns, and her own numbers again when the design is graded back."""

import re
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.grading import parse_gauge
from loopwright.grading.propose import Task, item_of, phrases, propose
from loopwright.grading.propose.candidates import items
from loopwright.grading.sentence import parse_fit
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade import sizes
from loopwright.working import work
from loopwright.workshop.designs import find
from loopwright.workshop.propose import CannotPropose, Wanted, as_json, evidence, measures_of, propose_design, sizes_for

TEXTS = Path(__file__).with_name("texts")


def hat():
    shipped = find("samphire-as-worked")
    assert shipped is not None
    return Source.of(shipped.text, "hat.txt")


@cache
def made_of(name):
    return propose_design(hat() if name == "hat" else text(name), Wanted())


def text(name):
    return Source.of((TEXTS / f"{name}.txt").read_text(encoding="utf-8"), f"{name}.txt")


def sentences(made):
    return {p.blank.name: p.reasons[0].sentence for p in made.proposal.blanks}


def test_the_hat_has_the_reasons_of_its_designer():
    made = made_of("hat")
    assert sentences(made) == {
        "crown rounds": "rnds until crown measures a third of head circumference less 3 cm across",
        "body sts": "sts to go around head circumference less 3 cm, multiple of 4",
        "body rounds": "rnds until hat measures hat height less 3 cm from the centre",
        "band rounds": "rnds to measure 3 cm",
    }
    assert made.proposal.values == {"crown rounds": 9, "body sts": 80, "body rounds": 12, "band rounds": 4}
    assert len(made.sized.graded.sizes) == 10


def test_the_bonnet_leaves_a_share_of_its_edge_for_the_neck():
    made = made_of("avocet-as-worked")
    assert sentences(made) == {
        "back rounds": "rnds until back measures a third of head circumference less 1 cm across",
        "back sts": "8 times {back rounds}",
        "front sts": "four fifths of {back sts}, multiple of 3 plus 2",
        "v repeats": "{front sts} less 2, divided by 3",
        "neck sts": "{back sts} less {front sts}",
        "front rows": "rows to measure a quarter of head circumference less 1 cm, multiple of 2",
        "tie": "ch to measure 20 cm",
        "neck edge sts": "twice {front rows} plus {neck sts}",
    }
    assert "First tie: Ch {tie}, ss in 2nd ch" in made.text
    assert "dc in each of the {neck sts} free sts of the back" in made.text


def test_the_blanket_has_its_multiple_and_its_turning_chain():
    short = text("tideline-as-worked").text.replace("Rows 3-72", "Rows 3-32").replace("(144 sc)", "(64 sc)")
    made = propose_design(Source.of(short), Wanted(sizes=("pram", "lap", "throw")))
    assert sentences(made) == {
        "blanket sts": "sts to measure 75 (75, 75) cm wide, multiple of 16",
        "blanket rows": "rows to measure 40 (40, 40) cm, multiple of 2",
        "side edges sts": "twice {blanket rows}",
    }
    assert "Ch {blanket sts} + 3." in made.text
    assert "Rows 3-{blanket rows}: Rep Row 2." in made.text


@pytest.mark.parametrize("name", ["hat", "avocet-as-worked", "tideline-as-worked"])
def test_graded_back_to_her_own_size_her_own_numbers_come_again(name):
    made = made_of(name)
    assert made.own == made.proposal.values
    assert not [f for f in made.findings if f.code == "G043"]


def test_her_own_size_alone_makes_her_own_rows():
    """The hat's text for its own size, worked, has the counts of the hat as it was worked."""
    from loopwright.workshop.check import check_source
    from loopwright.workshop.grade import grade_design

    made = made_of("hat")
    again = grade_design(Source.of(made.text), sizes=["child"])
    before = [r.counts[0] for r in check_source(hat()).rows]
    after = [r.counts[0] for r in check_source(Source.of(again.texts[0])).rows]
    assert after == before


def test_every_proposed_sentence_is_understood():
    for name in ("hat", "avocet-as-worked", "tideline-as-worked"):
        for p in made_of(name).proposal.blanks:
            for r in p.reasons:
                parse_fit(p.blank.name, r.sentence)


def test_a_gauge_in_inches_gives_inches():
    source = Source.of(hat().text.replace("17 hdc and 13 rnds = 10 cm", "17 hdc and 13 rnds = 4 in"), "hat.txt")
    said = sentences(propose_design(source, Wanted()))
    assert " in" in said["body sts"]
    assert "cm" not in said["body sts"]


def test_a_pattern_without_any_heading():
    rows = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-30: Ch 1, sc in each st across, turn. (20 sc)\n"
    made = propose_design(Source.of(rows), Wanted(worked_in="small", sizes=("small", "large"), gauge="16 sc and 20 rows = 10 cm"))
    assert made.own == made.proposal.values
    assert [p.blank.value for p in made.proposal.blanks] == [20, 30]
    assert "Sizes: small, large" in made.text
    assert "Gauge: 16 sc and 20 rows = 10 cm" in made.text
    assert not [f for f in made.sized.findings if f.code.startswith("W")]


def test_nothing_to_grade_is_said():
    made = propose_design(Source.of("Weave in the ends.\n"), Wanted(worked_in="child", gauge="16 sc and 20 rows = 10 cm"))
    assert [f.code for f in made.findings] == ["G040"]


def test_the_size_must_be_known():
    with pytest.raises(CannotPropose, match="--worked-in"):
        propose_design(Source.of("Rnd 1: 6 sc in ring.\n"), Wanted(gauge="16 sc and 20 rows = 10 cm"))
    with pytest.raises(CannotPropose, match="several sizes"):
        propose_design(Source.of("Sizes: child, adult\nRnd 1: 6 sc in ring.\n"), Wanted(gauge="16 sc and 20 rows = 10 cm"))


def test_a_size_without_measures_is_said():
    made = propose_design(hat(), Wanted(worked_in="my own"))
    assert "G042" in [f.code for f in made.findings]


def test_sizes_stand_in_order():
    item = item_of("A hat")
    assert sizes_for(item, "4 years", None)[5:8] == ("2 years", "4 years", "child")
    assert sizes_for(item, "6 years", None)[6] == "6 years"
    assert sizes_for(item, "child", ("adult",)) == ("child", "adult")


def test_everything_is_in_the_data():
    data = as_json(made_of("hat"))
    assert data["version"] == 1
    assert [b["value"] for b in data["blanks"]] == [b["graded_back"] for b in data["blanks"]]
    assert all(b["reasons"][0]["evidence"] for b in data["blanks"])
    assert "because" in evidence(made_of("hat"))


def test_the_table_of_habits_is_in_order():
    chart = sizes.chart("trade")
    for item in items():
        for size in item.sizes:
            chart.find(size)
        for habit in item.habits:
            assert sizes.measure_name(habit.measure) == habit.measure
            assert habit.low_mm <= habit.high_mm
            assert parse_fit("x", f"sts to measure {phrases.share_of(habit.part, habit.measure)}")




def test_a_sideways_brim_follows_the_round_it_carries():
    made = made_of("bulrush-as-worked")
    said = sentences(made)
    assert said["body sts"] == "sts to go around head circumference less 4 cm, multiple of 8"
    assert said["brim rows"] == "{body sts}"
    assert said["brim sts"] == "sts to measure 6 cm wide"
    assert made.own == made.proposal.values


def test_an_oval_has_one_side_and_counts_that_follow():
    said = sentences(made_of("dunlin-as-worked"))
    assert said["sole side sts"] == "sts to measure foot length less 3.5 cm"
    assert said["rnd 3 sts"] == "twice {sole side sts} plus 18"
    text_ = made_of("dunlin-as-worked").text
    assert "Ch {sole side sts} + 3." in text_
    assert text_.count("sc in each of next {sole side sts} sts") == 4


def test_rounds_that_close_take_their_share():
    said = sentences(made_of("sandpiper-as-worked"))
    assert said["cuff sts"] == "sts to go around hand circumference, multiple of 8"
    assert said["top sts"] == "seven eighths of {cuff sts}"
    assert said["thumb rounds"] == "rnds to measure thumb length less 1 cm"


def test_a_triangle_grows_by_its_rows():
    said = sentences(made_of("thrift-as-worked"))
    assert said["body rows"] == "rows to measure 40 cm"
    assert said["body sts"] == "8 times {body rows} less 2"


def test_shells_ask_for_their_multiple():
    said = sentences(made_of("reedmace-as-worked"))
    assert said["scarf sts"] == "sts to measure 20 cm wide, multiple of 6 plus 1"
    assert said["scarf rows"].endswith("multiple of 2 plus 1")


def test_a_toy_is_left_as_it_is():
    toy = "Curlew Toy\nGauge: 24 sc and 26 rnds = 10 cm\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    made = propose_design(Source.of(toy), Wanted(worked_in="one size"))
    assert [f.code for f in made.findings] == ["G044"]
    assert not made.proposal.blanks


def test_a_blank_whose_rows_fail_in_other_sizes_goes_back_to_her_number():
    """Plain runs that add up to the row of one size alone: its width cannot be graded."""
    rows = (
        "Vest, as worked\n\nSize: 4 years\nTerms: US\nGauge: 16 sc and 20 rows = 10 cm\nTurning chain: ch 1 does not count as a st\n\n"
        "Back\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\n"
        "Row 2: Ch 1, sc in each of next 19 sts, sc2tog, sc in each of next 19 sts, turn. (39 sc)\n"
        "Rows 3-20: Ch 1, sc in each st across, turn. (39 sc)\n"
    )
    made = propose_design(Source.of(rows), Wanted(sizes=("2 years", "4 years")))
    assert "back sts" not in made.proposal.values
    assert any("for 40 sts alone" in k for k in made.proposal.kept)
    assert "Ch 41." in made.text
    assert made.own == made.proposal.values


def test_a_raglan_is_parted_as_its_designer_parted_it():
    made = made_of("plover-as-worked")
    said = sentences(made)
    assert said["back neck"] == "sts to measure a quarter of chest less 2 cm, multiple of 2"
    assert said["front neck"] == "half of {back neck}"
    assert said["yoke sts"] == "{neck ch} less 4 plus 8 times {yoke rows}"
    assert said["underarm"] == "half of {body sts} less half of {yoke sts} plus {sleeve top}"
    assert said["bands sts"] == "4 times {yoke rows} plus 4 times {body rows} plus {neck ch}"
    assert said["sleeve end sts"].startswith("sts to go around wrist")
    assert "{neck ch} ch + 2." in made.text
    assert made.own == made.proposal.values


PLAIN = """Beanie in a spiral
R1: 6 sc in magic ring (6)
R2: inc x 6 (12)
R3: (sc, inc) x 6 (18)
R4: (2 sc, inc) x 6 (24)
R5: (3 sc, inc) x 6 (30)
R6: (4 sc, inc) x 6 (36)
R7: (5 sc, inc) x 6 (42)
R8: (6 sc, inc) x 6 (48)
R9: (7 sc, inc) x 6 (54)
R10: (8 sc, inc) x 6 (60)
R11: sc in each st around (60)
R12: sc in each st around (60)
R13: sc in each st around (60)
R14: sc in each st around (60)
"""


def test_a_pattern_without_sections_gets_the_headings_it_needs():
    made = propose_design(Source.of(PLAIN), Wanted(worked_in="child", sizes=("child", "adult"), gauge="13 sc and 15 rnds = 10 cm"))
    assert made.own == made.proposal.values
    assert "Next rnd: Sc around, increasing evenly to {body sts} sts. ({body sts})" in made.text
    assert "\nBody\nRnds 1-{body rounds}: sc in each st around ({body sts})\n" in made.text
    assert made.proposal.values["body rounds"] == 4
    assert not [f for f in made.sized.findings if f.code.startswith("W")]


def test_a_row_over_a_part_of_the_edge_without_repeats():
    rows = "\n".join(
        ["Bonnet", "Rnd 1: 10 dc in ring; join. (10)", "Rnd 2: ch 3, dc in same st, 2 dc in each st around; join. (20)"]
        + [
            f"Rnd {n}: ch 3, {f'dc in next {n - 3} sts, ' if n > 3 else ''}2 dc in next st, *dc in next {n - 2} sts, 2 dc in next st; rep from * around; join. ({10 * n})"
            for n in range(3, 7)
        ]
        + ["Row 7: ch 3, dc in each of next 49 sts, leave remaining 10 sts unworked for neck, turn. (50 dc)", "Rows 8-13: ch 3, dc in each st across, turn. (50 dc)"]
    )
    made = propose_design(Source.of(rows), Wanted(worked_in="3 months", gauge="18 dc and 9 rnds = 10 cm"))
    said = sentences(made)
    assert said["front sts"] == "five sixths of {edge sts}"
    assert said["front run sts"] == "{front sts} less 1"
    assert said["neck sts"] == "{edge sts} less {front sts}"
    assert "\nFront\nRow 1: ch 3, dc in each of next {front run sts} sts, leave remaining {neck sts} sts unworked" in made.text
    assert made.own == made.proposal.values


def test_the_page_about_it_shows_what_it_does():
    page = (Path(__file__).parents[2] / "docs" / "from-a-plain-pattern.md").read_text(encoding="utf-8")
    shown = page.partition("```text\n")[2].partition("```")[0].splitlines()
    said = evidence(made_of("hat")).splitlines()
    assert [line for line in shown if line not in said] == []


@given(st.randoms(use_true_random=False))
@settings(max_examples=15, deadline=None)
def test_odd_patterns_are_no_trouble(chance):
    lines = hat().text.split("\n")
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(lines))
        how = chance.randrange(3)
        if how == 0 and len(lines) > 1:
            del lines[at]
        elif how == 1:
            lines.insert(at, chance.choice(lines))
        else:
            lines[at] = re.sub(r"\d+", lambda m: str(chance.choice([0, 1, 3, int(m[0]) + 1, 999])), lines[at])
    document = read(Source.of("\n".join(lines)))
    task = Task("child", ("child", "adult"), parse_gauge("17 hdc and 13 rnds = 10 cm"), measures_of("child"))
    proposal = propose(document, work(document), task)
    assert proposal.text()
    for name in proposal.values:
        assert f"{{{name}}}" not in proposal.without(name, "for a test").text().partition("Fit\n")[2].partition("\n\n")[2]


def test_a_row_named_by_its_number_is_named_anew_once_the_number_is_lost():
    rows = "Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (30 sc)\n" + "".join(
        f"Row {n}: Ch 1, turn, sc in each st across. (30 sc)\n" for n in range(2, 9)
    ) + "Rep Row 8 28 times more.\n"
    made = propose_design(Source.of("Wrist warmers\n" + rows), Wanted(worked_in="woman M", gauge="18 sc and 20 rows = 10 cm"))
    assert "Rows 2-{even rows}: Ch 1, turn, sc in each st across. ({width sts} sc)\nRep last row {even 2 rows} times more." in made.text
    assert made.own == made.proposal.values


def test_sl_st_to_join_ends_a_round():
    rows = ["Cap", "Rnd 1: 2 ch, 8 htr in ring, ss to join. (8 sts)", "Rnd 2: 2 ch, 2 htr in each st around, ss to join. (16 sts)"]
    rows += [f"Rnd {n}: 2 ch, (htr in next {n - 2} sts, 2 htr in next st) repeat around, ss to join. ({8 * n} sts)" for n in range(3, 7)]
    rows += ["Rnds 7-15: 2 ch, htr in each st around, ss to join. (48 sts)"]
    made = propose_design(Source.of("\n".join(rows)), Wanted(worked_in="woman M", gauge="10 htr and 8 rows = 10 cm"))
    assert made.own == made.proposal.values
    assert "htr around, increasing evenly to {body sts} sts; join." in made.text


def test_a_bonnet_in_inches_with_pairs_and_ties():
    made = made_of("bunting-as-worked")
    said = sentences(made)
    assert said["back rounds"] == "rnds until back measures a third of head circumference less 0.5 in across"
    assert said["sides sts"] == "five sixths of {back sts}, multiple of 2"
    assert said["last sts"] == "{free sts} plus 1"
    assert said["tie sts"] == "{tie} less 1"  # a chain worked back over in slip stitches has one chain more than the stitches
    assert made.text.count("{tie}") == 4
    assert made.own == made.proposal.values


def test_rows_told_by_a_measure_become_a_number():
    scarf = (
        "Coot Scarf\n\nSize: adult\nTerms: US\nGauge: 16 dc and 8 rows = 10 cm\n\nCh 34.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (32 dc)\n"
        "Row 2: Ch 3, dc in next st and in each st across, turn. (32 dc)\nRep Row 2 until scarf measures 150 cm.\nFasten off.\n"
    )
    made = propose_design(Source.of(scarf), Wanted())
    assert sentences(made)["scarf rows"] == "rows to measure 150 cm"
    assert made.proposal.values["scarf rows"] == 120
    assert "\nRows 3-{scarf rows}: Rep Row 2.\n" in made.text
    cap = PLAIN.partition("R11")[0] + "Work even in sc until hat measures 18 cm from the crown.\n"
    made = propose_design(Source.of(cap), Wanted(worked_in="child", gauge="13 sc and 15 rnds = 10 cm"))
    assert sentences(made)["hat rounds"] == "rnds until hat measures hat height less 2 cm from the centre"
    assert "Work even in sc for {hat rounds} rnds." in made.text
    assert made.own == made.proposal.values


def test_a_mesh_is_as_wide_as_its_stitches_and_the_chains_between():
    mesh = (
        "Baby blanket\nCh 104.\nRow 1: Dc in 4th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to last ch, dc in last ch, turn.\n"
        "Row 2: Ch 3, dc in next dc, *ch 1, sk ch-1 sp, dc in next dc; rep from * to end, dc in top of ch-3, turn.\nRows 3-60: Rep Row 2.\n"
    )
    made = propose_design(Source.of(mesh), Wanted(worked_in="pram", gauge="14 dc and 8 rows = 10 cm"))
    assert sentences(made)["width sts"].endswith("wide, multiple of 2 plus 1")
    assert made.own == made.proposal.values
