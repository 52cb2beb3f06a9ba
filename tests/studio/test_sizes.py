"""Changes from the table of sizes over the wire: what becomes of the text, and whatever is no change."""

from __future__ import annotations

import pytest

from loopwright.workshop import views
from loopwright.workshop.live import Live

NAME = "samphire-beanie.txt"
CHILD = 6


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


@pytest.fixture
def text(studio):
    return studio.get(f"/api/designs/{NAME}").json()["text"]


def changed(studio, text, **what):
    answer = studio.post("/api/change", json={"text": text, **what})
    assert answer.status_code == 200, answer.text
    return answer.json()["text"]


def refused(studio, text, **what):
    answer = studio.post("/api/change", json={"text": text, **what})
    assert answer.status_code == 422
    return answer.json()["error"]


def table_of(text):
    return views.sizes(Live(NAME).see(text))


def cell(table, blank, size=CHILD):
    return next(b for b in table["blanks"] if b["name"] == blank)["sizes"][size]


def lines_that_differ(a, b):
    return [y for x, y in zip(a.split("\n"), b.split("\n"), strict=True) if x != y]


def test_another_number_is_written_into_the_sentence_and_taken(studio, text):
    assert cell(table_of(text), "body sts")["value"] == 80
    new = changed(studio, text, do="number", blank="body sts", size="child", number=84)
    assert lines_that_differ(text, new) == ["{body sts}: sts to go around head circumference less 3 cm, multiple of 4, in child: 84"]
    taken = cell(table_of(new), "body sts")
    assert (taken["value"], taken["kept"]) == (84, True)
    assert cell(table_of(new), "body sts", CHILD + 1)["kept"] is False
    assert changed(studio, new, do="number", blank="body sts", size="child", number=None) == text


def test_a_figure_of_a_sentence(studio, text):
    new = changed(studio, text, do="figure", blank="body sts", nth=0, said="5")
    assert lines_that_differ(text, new) == ["{body sts}: sts to go around head circumference less 5 cm, multiple of 4"]
    assert cell(table_of(new), "body sts")["value"] == 76


def test_the_words_of_a_sentence(studio, text):
    new = changed(studio, text, do="sentence", blank="band rounds", sentence="rnds to  measure 5 cm")
    assert lines_that_differ(text, new) == ["{band rounds}: rnds to measure 5 cm"]


def test_the_gauge_keeps_what_stands_beside_it(studio, text):
    new = changed(studio, text, do="gauge", gauge="16 hdc and 12.5 rnds = 10 cm")
    assert lines_that_differ(text, new) == ["Gauge: 16 hdc and 12.5 rnds = 10 cm, 4 mm hook"]
    assert table_of(new)["gauge"]["stitches"] == 16


def test_a_chart_of_her_own(studio, text):
    before = table_of(text)
    own = changed(studio, text, do="own chart")
    after = table_of(own)
    assert (before["own_chart"], after["own_chart"]) == (False, True)
    assert [b["name"] for b in after["bodies"]] == ["head circumference", "hat height"]
    assert after["bodies"][0]["mm"][CHILD] == pytest.approx(before["bodies"][0]["mm"][CHILD], abs=0.51)
    assert "own chart" in refused(studio, own, do="own chart") or "already" in refused(studio, own, do="own chart")
    larger = changed(studio, own, do="measurement", size="child", measure="head circumference", said="54")
    assert table_of(larger)["bodies"][0]["mm"][CHILD] == 540
    assert cell(table_of(larger), "body sts")["value"] == 88
    inches = changed(studio, own, do="measurement", size="child", measure="head circumference", said="20 1/2 in")
    assert table_of(inches)["bodies"][0]["mm"][CHILD] == pytest.approx(520.7)


def test_a_size_less(studio, text):
    new = changed(studio, text, do="without size", size="preemie")
    assert table_of(new)["sizes"][0] == "newborn"


@pytest.mark.parametrize("what", [
    {"do": "number", "blank": "nothing", "size": "child", "number": 84}, {"do": "number", "blank": "body sts", "size": "a, b", "number": 84},
    {"do": "number", "blank": "body sts", "size": "child", "number": -4}, {"do": "number", "blank": "body sts", "size": "", "number": 4},
    {"do": "number", "blank": "body sts", "size": "child", "number": "84"}, {"do": "number", "blank": "body sts", "size": "child", "number": 1e400},
    {"do": "figure", "blank": "body sts", "nth": 9, "said": "3"}, {"do": "figure", "blank": "body sts", "nth": 0, "said": "three"},
    {"do": "figure", "blank": "body sts", "nth": 0, "said": "3\nRnd 1: ch 1"}, {"do": "figure", "blank": "body sts", "nth": -1, "said": "3"},
    {"do": "sentence", "blank": "body sts", "sentence": "  "}, {"do": "sentence", "blank": "body sts", "sentence": "x" * 3000},
    {"do": "gauge", "gauge": "as tight as you like"}, {"do": "gauge", "gauge": "0 hdc = 10 cm"}, {"do": "gauge", "gauge": ""},
    {"do": "measurement", "size": "child", "measure": "head circumference", "said": "50"}, {"do": "without size", "size": "giant"},
    {"do": "burn"}, {}, {"do": 7},
])
def test_what_is_no_change_is_refused_with_a_word(studio, text, what):
    import json

    body = json.dumps({"text": text, **what})
    answer = studio.post("/api/change", content=body, headers={"content-type": "application/json"})
    assert answer.status_code == 422
    assert len(answer.json()["error"]) > 10


@pytest.mark.parametrize("said", ["", "fifty", "0", "-3", "5000 cm", "50\t60", "50 | 60", "50 cm; 60 cm", "x" * 90])
def test_a_measurement_that_is_none_leaves_the_chart(studio, text, said):
    own = changed(studio, text, do="own chart")
    answer = studio.post("/api/change", json={"text": own, "do": "measurement", "size": "child", "measure": "head circumference", "said": said})
    if said:
        assert answer.status_code == 422
    else:
        assert table_of(answer.json()["text"])["bodies"][0]["mm"][CHILD] == table_of(text)["bodies"][0]["mm"][CHILD]


@pytest.mark.parametrize("body", [b"", b"[]", b"{", b"null", b'"x"', b'{"text": 4, "do": "gauge"}'])
def test_bodies_that_are_none(studio, body):
    assert studio.post("/api/change", content=body).status_code == 422


def test_the_table_tells_sources_without_addresses_and_thoughts(text):
    table = table_of(text)
    for body in table["bodies"]:
        for source in body["sources"]:
            assert "http" not in source["name"]
    lavish = text.replace("teen, adult,", "teen, woman M, adult,")
    same = [t for t in table_of(lavish)["thoughts"] if t["what"] == "same"]
    assert all(len(t["sizes"]) == 2 for t in same)
    kept = text.replace("multiple of 4", "multiple of 4, in child: 92")
    falls = [t for t in table_of(kept)["thoughts"] if t["what"] == "falls"]
    assert [t["text"] for t in falls] == ["body sts falls from 92 in child to 84 in teen, and what it must reach does not."]


def test_the_nest_has_every_size_larger_than_the_one_before(text):
    figure = views.nest(Live(NAME).see(text))["figures"][0]
    widths = [s["width_mm"] for s in figure["sizes"]]
    assert widths == sorted(widths)
    assert figure["box_mm"][2] == widths[-1]
    assert all(s["path"].startswith("M") for s in figure["sizes"])
    assert views.nest(Live("x").see("Row 1: sc in next st."))["figures"] == []
