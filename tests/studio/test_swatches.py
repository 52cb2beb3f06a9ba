"""The shelf over the wire: yarns and swatches, their lines for a pattern, where they are used; and whatever cannot be kept."""

from __future__ import annotations

import pytest

from loopwright.workshop.live import Live

NAME = "samphire-beanie.txt"
HDC = {
    "hook_mm": 4.5, "stitch": "hdc", "stitches": 16, "width_mm": 100, "rows": 12.5, "height_mm": 100, "rounds": True, "washed": True, "mass_g": 5,
    "note": "soft", "yarn": 0,
}
REEDMACE = {"name": "Reedmace", "weight": 4, "fibre": "wool", "ball_g": 100, "ball_m": 200, "colours": ["tide", " "]}


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME, "sandpiper-mitts.txt")


def put(studio, kind, thing):
    answer = studio.post(f"/api/shelf/{kind}", json=thing)
    assert answer.status_code == 201, answer.text
    return answer.json()["id"]


def test_an_empty_shelf(studio):
    found = studio.get("/api/shelf").json()
    assert (found["yarns"], found["swatches"], found["read_only"]) == ([], [], False)
    assert [w["number"] for w in found["weights"]] == list(range(8))
    assert not (studio.folder / ".loopwright").exists()


def test_a_swatch_with_what_it_comes_to(studio):
    yarn = put(studio, "yarns", REEDMACE)
    put(studio, "swatches", {**HDC, "yarn": yarn})
    found = studio.get("/api/shelf").json()
    swatch = found["swatches"][0]
    assert found["yarns"][0]["colours"] == ["tide"]
    assert swatch["gauge"] == "16 hdc and 12.5 rnds = 10 cm after washing"
    assert swatch["hook"] == "4.5 mm (7)"
    assert swatch["m_per_100"] == 5.0
    assert swatch["used_in"] == []


def test_it_is_picked_for_a_design_and_known_there(studio):
    yarn = put(studio, "yarns", REEDMACE)
    number = put(studio, "swatches", {**HDC, "yarn": yarn})
    opened = studio.get(f"/api/designs/{NAME}").json()
    made = studio.post(f"/api/shelf/swatches/{number}/into", json={"text": opened["text"]}).json()["text"]
    lines = made.split("\n")
    assert "Gauge: 16 hdc and 12.5 rnds = 10 cm after washing, 4.5 mm hook" in lines
    assert "Hook: 4.5 mm (7)" in lines
    assert "Yarn: Reedmace, medium, wool, 100 g = 200 m" in lines
    assert len(lines) == len(opened["text"].split("\n"))
    seen = Live(NAME).see(made)
    assert seen.graded is not None
    assert seen.graded.gauge.stitch_mm == pytest.approx(100 / 16)
    studio.put(f"/api/designs/{NAME}", json={"text": made, "base": opened["sum"]})
    found = studio.get("/api/shelf").json()
    assert found["swatches"][0]["used_in"] == [{"id": NAME, "title": "Samphire Beanie", "yarn": True}]
    assert found["yarns"][0]["used_in"] == [{"id": NAME, "title": "Samphire Beanie"}]


def test_a_design_in_uk_terms_gets_the_stitch_in_its_own(studio):
    number = put(studio, "swatches", HDC)
    text = (studio.folder / "sandpiper-mitts.txt").read_text(encoding="utf-8")
    made = studio.post(f"/api/shelf/swatches/{number}/into", json={"text": text}).json()["text"]
    assert "16 htr and 12.5 rnds = 10 cm after washing" in made


def test_a_pattern_without_a_heading_gets_one(studio):
    number = put(studio, "swatches", HDC)
    made = studio.post(f"/api/shelf/swatches/{number}/into", json={"text": "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"}).json()["text"]
    assert [r.counts for r in Live("x").see(made).report.rows] == [(6,), (12,)]
    assert made.startswith("Gauge: 16 hdc")


def test_changing_taking_off_and_putting_back(studio):
    number = put(studio, "swatches", HDC)
    assert studio.put(f"/api/shelf/swatches/{number}", json={**HDC, "stitches": 18}).status_code == 200
    assert studio.get("/api/shelf").json()["swatches"][0]["stitches"] == 18
    assert studio.delete(f"/api/shelf/swatches/{number}").status_code == 200
    assert studio.get("/api/shelf").json()["swatches"] == []
    assert studio.delete(f"/api/shelf/swatches/{number}").status_code == 404
    assert studio.post(f"/api/shelf/swatches/{number}/into", json={"text": ""}).status_code == 404
    assert studio.post(f"/api/shelf/swatches/{number}/back").status_code == 200
    assert studio.get("/api/shelf").json()["swatches"][0]["stitches"] == 18


@pytest.mark.parametrize(("kind", "thing"), [
    ("swatches", {}), ("swatches", {**HDC, "stitches": 0}), ("swatches", {**HDC, "rows": -1}), ("swatches", {**HDC, "stitches": "17"}),
    ("swatches", {**HDC, "yarn": 99}), ("swatches", {**HDC, "note": "x" * 501}), ("swatches", {**HDC, "stitches": True}), ("swatches", {**HDC, "hook_mm": 1e12}),
    ("swatches", []), ("yarns", {}), ("yarns", {**REEDMACE, "weight": 9}), ("yarns", {**REEDMACE, "colours": "tide"}), ("yarns", {**REEDMACE, "name": "a\nb"}),
    ("yarns", {**REEDMACE, "ball_g": -1}), ("yarns", {**REEDMACE, "name": "x" * 5000}),
])
def test_what_cannot_be_kept_is_refused_with_a_word(studio, kind, thing):
    answer = studio.post(f"/api/shelf/{kind}", json=thing)
    assert answer.status_code == 422
    assert len(answer.json()["error"]) > 10
    assert studio.get("/api/shelf").json()[kind] == []


@pytest.mark.parametrize("number", ["x", "-1", "1.5", "99999999999999999999", "%00"])
def test_numbers_that_are_none(studio, number):
    assert studio.delete(f"/api/shelf/yarns/{number}").status_code in (404, 422)
    assert studio.post(f"/api/shelf/swatches/{number}/into", json={"text": "x"}).status_code in (404, 422)


def test_a_studio_that_only_reads(open_studio):
    studio = open_studio(NAME, read_only=True)
    assert studio.get("/api/shelf").json()["read_only"] is True
    assert studio.post("/api/shelf/swatches", json=HDC).status_code == 422
    assert not (studio.folder / ".loopwright").exists()
