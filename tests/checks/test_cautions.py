"""Cautions in what `check` says: untold, partly told, over a limit, hidden; and in the commands' data."""

import pytest

from loopwright.findings.registry import message, severity
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source
from loopwright.workshop.grade import as_json as grade_json
from loopwright.workshop.grade import grade_design

HEAD = "Terms: US\nHook: 4 mm\nYarn: DK, cotton\nGauge: 20 sc and 22 rnds = 10 cm\nFinished size: 40 cm around\n"
ROWS = "\nBody\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
TIES = "\nTies\nCh 60, sl st in 2nd ch from hook and in each ch.\n"
KINDS = ("C033", "C060", "C061", "C062", "C063", "G035")


def said(text):
    return {f.code: f for f in check_source(Source.of(text)).findings if f.code in KINDS}


def test_all_that_is_untold_stands_in_one_finding():
    found = said("Teal Baby Bonnet\n" + HEAD + ROWS + TIES)
    assert found["C033"].args["names"] == "neck ties, sleep hat"
    assert severity(found["C033"]) == "warning"
    assert found["C033"].hints[-1].startswith("Rules differ from country to country")


def test_where_some_are_told_the_others_are_advice():
    found = said("Teal Baby Bonnet\n" + HEAD + "Notes: Take the bonnet off a baby who sleeps.\n" + ROWS + TIES)
    assert (severity(found["C060"]), found["C060"].args["names"]) == ("advice", "neck ties")
    assert "C033" not in found


def test_a_limit_that_was_seen_warns_and_one_from_memory_advises():
    waist = said("Snipe Cardigan\nSizes: 2 years, 10 years\n" + HEAD + ROWS + TIES.replace("Ties", "Waist tie"))["C061"]
    neck = said("Teal Baby Bonnet\n" + HEAD + ROWS + TIES)["C061"]
    assert (severity(waist), severity(neck)) == ("warning", "advice")
    assert waist.sizes == ("2 years", "10 years")
    assert message(waist) == "tie of 30 cm, 22.5 cm more than 7.5 cm: 16 CFR 1120 lets 7.5 cm hang out"
    assert message(neck).endswith("(from memory)")


def test_a_tie_of_a_blank_is_told_once():
    found = check_source(Source.of("Teal Bonnet\nSizes: newborn, 6 months\n" + HEAD + "\nFit\n{tie}: ch to measure 30 cm\n" + ROWS + TIES.replace("60", "{tie}"))).findings
    assert [f.code for f in found if f.code in ("G035", "C061")] == ["G035"]
    assert "22.5 cm too long" in message(next(f for f in found if f.code == "G035"))


@pytest.mark.parametrize(("yarn", "found"), [("acrylic", ["warning"]), ("any fibre", ["advice"]), ("cotton", [])])
def test_a_pot_holder_goes_by_its_yarn(yarn, found):
    text = "Dunlin Potholder\n" + HEAD.replace("cotton", yarn) + ROWS
    assert [severity(f) for c, f in said(text).items() if c == "C033"] == found


def test_a_hidden_caution_is_listed_and_stays_in_the_data():
    text = "Coot Baby Hat\nSizes: newborn, 6 months, woman\nHidden cautions: sleep hat, neck ties, kites\n" + HEAD + ROWS
    source = Source.of(text)
    report = check_source(source)
    found = [(f.code, f.args["name"]) for f in report.findings if f.code in KINDS]
    assert sorted(found) == [("C062", "sleep hat"), ("C063", "kites"), ("C063", "neck ties")]
    (one,) = as_json(source, report)["cautions"]
    assert (one["name"], one["hidden"], one["told"], one["sizes"]) == ("sleep hat", True, False, ["newborn", "6 months"])
    assert one["source"].startswith("American Academy of Pediatrics")
    graded = grade_design(source)
    assert [c["hidden"] for c in grade_json(graded)["cautions"]] == [True]
    assert "Safety" not in graded.text
    assert "Hidden cautions" not in graded.text


def test_figures_stand_in_the_data_with_their_line():
    source = Source.of("Teal Bonnet\nSizes: newborn\n" + HEAD + ROWS + TIES)
    figure = as_json(source, check_source(source))["cautions"][0]["figures"][0]
    assert {k: figure[k] for k in ("what", "size", "found_mm", "from_mm", "to_mm", "over", "by_mm")} == {
        "what": "tie", "size": "newborn", "found_mm": 300.0, "from_mm": 75.0, "to_mm": None, "over": True, "by_mm": 225.0,
    }
    assert source.line_text(figure["line"]).startswith("Ch 60")


def test_another_gauge_measures_another_tie():
    text = "Teal Bonnet\nSizes: newborn\n" + HEAD + "\nFit\n{body}: sts to measure 10 cm\n" + ROWS + TIES
    figures = [grade_json(grade_design(Source.of(text), gauge=g))["cautions"][0]["figures"][0]["found_mm"] for g in (None, "10 sc and 11 rnds = 10 cm")]
    assert figures == [300.0, 600.0]


def test_pieces_of_a_pattern_are_left_in_peace():
    assert said("Baby bonnet\nRnd 1: 6 sc in magic ring. (6)\nTies: Ch 60.\n").get("C033") is None
