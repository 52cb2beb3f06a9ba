"""The guided beginning over the wire: what a pattern tells, reasons proposed, changed and kept; and whatever is no pattern."""

from __future__ import annotations

import pytest

from loopwright.workshop.begin import KEEP, begin, look

WORKED = "samphire-as-worked.txt"


@pytest.fixture
def studio(open_studio):
    return open_studio(WORKED)


@pytest.fixture
def text(studio):
    return studio.get(f"/api/designs/{WORKED}").json()["text"]


def test_what_a_pattern_tells_by_itself(studio, text):
    told = studio.post("/api/begin/look", json={"text": text}).json()
    assert (told["worked_in"], told["item"], told["gauge"]) == ("child", "hat", "17 hdc and 13 rnds = 10 cm, 4 mm hook")
    assert "adult large" in told["usual_sizes"]
    assert told["known_sizes"].index("child") < told["known_sizes"].index("adult")
    assert not told["graded"]


def test_reasons_are_proposed_with_their_evidence_and_her_numbers_come_out_again(studio, text):
    made = studio.post("/api/begin", json={"text": text, "sizes": ["newborn", "child", "adult"]}).json()
    assert made["sizes"] == ["newborn", "child", "adult"]
    values = {b["name"]: b["value"] for b in made["blanks"]}
    assert values == {"crown rounds": 9, "body sts": 80, "body rounds": 12, "band rounds": 4}
    assert {name: row[1] for name, row in made["table"]["blanks"].items()} == values
    assert all(b["reasons"][0]["evidence"] for b in made["blanks"])
    assert made["text"].startswith("Samphire Beanie\n")


def test_a_reason_is_changed_another_written_a_number_kept(text):
    first = begin(text, {"sizes": ["child", "adult"]}, {})
    other = first["blanks"][1]["reasons"][1]["sentence"]
    made = begin(text, {"sizes": ["child", "adult"]}, {"body sts": other, "band rounds": "rnds to measure 5 cm", "crown rounds": KEEP})
    assert made["now"] == {"body sts": other, "body rounds": first["now"]["body rounds"], "band rounds": "rnds to measure 5 cm"}
    assert "Rnds 4-9:" in made["text"]
    assert made["table"]["blanks"]["band rounds"] == [6, 6]
    assert any("crown rounds" in k for k in made["kept"])
    assert [b["name"] for b in made["blanks"]] == [b["name"] for b in first["blanks"]]


def test_a_sentence_that_is_not_understood_is_told_and_left_out(text):
    made = begin(text, {"sizes": ["child"]}, {"body sts": "sts to go around head, whatever looks nice"})
    assert list(made["problems"]) == ["body sts"]
    assert "whatever looks nice" not in made["text"]


@pytest.mark.parametrize(("given", "said"), [
    ({"text": "Hat\n\nRnd 1: 6 sc in magic ring. (6)"}, "size"), ({"text": "Hat\nSize: child\n\nRnd 1: 6 sc in magic ring. (6)"}, "gauge"),
    ({"text": "Hat\nSizes: S, M\nGauge: 17 hdc and 13 rnds = 10 cm\n\nRnd 1: 6 (8) sc in magic ring. 6 (8)"}, "several sizes"),
    ({"text": "Hat\nSize: child\nGauge: 17 hdc and 13 rnds = 10 cm\n\nRnd 1: 6 sc in magic ring.", "sizes": ["giant"]}, "giant"),
    ({"text": "Hat\nSize: child\n\nRnd 1: 6 sc in magic ring.", "gauge": "tight"}, "tight"),
])
def test_what_is_missing_is_said_with_the_way_out(studio, given, said):
    answer = studio.post("/api/begin", json=given)
    assert answer.status_code == 200
    assert said in answer.json()["problem"]
    assert "--" not in answer.json()["problem"]


@pytest.mark.parametrize("given", [
    {"text": 4}, {"sizes": "child"}, {"sizes": [1]}, {"sizes": ["x"] * 99}, {"choices": []}, {"choices": {"a": 4}}, {"choices": {"a": ""}},
    {"choices": {"a": "x\ny"}}, {"choices": {"a": "x" * 3000}}, {"worked_in": "x" * 99}, {"gauge": ["x"]},
])
def test_requests_that_are_none(studio, text, given):
    answer = studio.post("/api/begin", json={"text": text, **given})
    assert answer.status_code == 422
    assert len(answer.json()["error"]) > 10


@pytest.mark.parametrize("text", ["", "\n\n", "{", "x" * 5000, "Rnd 1: 6 sc in magic ring.\n" * 50, "\ud83d\ude00 Hat\nSize: child"])
def test_any_text_is_looked_at(text):
    assert set(look(text)) >= {"title", "worked_in", "gauge", "item", "usual_sizes"}
