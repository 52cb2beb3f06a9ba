"""The editing desk over the wire: findings of the folder, safe mends, the report as a file."""

import pytest

from loopwright.studio.folder import sum_of

NAME = "samphire-beanie.txt"
FAULTY = (
    "Sedge Cowl\nTerms: US\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n"
    "Abbreviations: ch = chain, st(s) = stitch(es), dtr = double treble crochet, rep = repeat\n\nCowl\nCh 13.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, *sc in next st; rep from * across. (13 sc)\n"
)
MENDED = "sc = single crochet"


@pytest.fixture
def studio(open_studio):
    made = open_studio(NAME)
    (made.folder / "sedge.txt").write_text(FAULTY)
    return made


def one(studio, name):
    return next(d for d in studio.get("/api/editing").json()["designs"] if d["id"] == name)


def test_every_design_of_the_folder_is_listed_with_what_is_open(studio):
    found = one(studio, "sedge.txt")
    assert [(f["code"], f["place"], f["word"]) for f in found["findings"] if f["code"] == "W001"] == [("W001", "Row 2", "look")]
    assert found["checked"]["counts"] == 2
    assert found["checked"]["agree"] == 1


def test_what_was_checked_counts_printed_counts_of_every_size(studio):
    checked = one(studio, NAME)["checked"]
    assert checked["agree"] == checked["counts"] > 30
    assert checked["sizes"] == 10
    assert checked["right"] == checked["agree"] + checked["quiet"]


def test_a_file_that_is_no_text_is_listed_with_a_word(studio):
    (studio.folder / "odd.txt").write_bytes(b"\xff\xfe\x00")
    assert "UTF-8" in one(studio, "odd.txt")["error"]


def test_safe_mends_are_put_into_a_given_text_and_nothing_is_saved(studio):
    found = studio.post("/api/editing/sedge.txt/mended", json={"text": FAULTY}).json()
    assert found["done"]
    assert MENDED in found["text"]
    assert (studio.folder / "sedge.txt").read_text() == FAULTY


def test_safe_mends_of_the_folder_are_saved_and_can_be_taken_back(studio):
    found = studio.post("/api/editing/sedge.txt/mend", json={"base": sum_of(FAULTY)}).json()
    after = (studio.folder / "sedge.txt").read_text()
    assert MENDED in after
    assert "(13 sc)" in after  # which of the two is wrong is for her to say
    assert found["before"] == FAULTY
    assert found["sum"] == sum_of(after)
    back = studio.put("/api/designs/sedge.txt", json={"text": found["before"], "base": found["sum"]})
    assert back.status_code == 200
    assert (studio.folder / "sedge.txt").read_text() == FAULTY


def test_a_design_that_was_changed_elsewhere_is_not_mended(studio):
    refused = studio.post("/api/editing/sedge.txt/mend", json={"base": sum_of("something older")})
    assert refused.status_code == 409
    assert (studio.folder / "sedge.txt").read_text() == FAULTY


def test_nothing_is_mended_where_the_studio_is_only_for_reading(open_studio):
    studio = open_studio(NAME, read_only=True)
    (studio.folder / "sedge.txt").write_text(FAULTY)
    assert studio.post("/api/editing/sedge.txt/mend", json={"base": sum_of(FAULTY)}).status_code == 422
    assert (studio.folder / "sedge.txt").read_text() == FAULTY


def test_the_report_is_a_text_file_with_places_reasons_and_what_is_left(studio):
    text = FAULTY.replace("Finished", "Left as it is: W001 in Row 2, because the last one is the join\nFinished")
    (studio.folder / "sedge.txt").write_text(text)
    found = studio.get("/api/editing/sedge.txt/report")
    assert found.headers["content-disposition"].startswith("attachment")
    assert found.text.startswith("Technical editing: Sedge Cowl\n")
    assert "1 of 2 printed counts are right" in found.text
    assert "Left, because the last one is the join" in found.text


def test_the_report_tells_each_finding_with_its_line(studio):
    found = studio.get("/api/editing/sedge.txt/report").text
    assert "Row 2 (line 12, W001)" in found
    assert "> Row 2: Ch 1, *sc in next st; rep from * across. (13 sc)" in found


@pytest.mark.parametrize(("path", "body"), [
    ("/api/editing/sedge.txt/mended", {"text": 5}), ("/api/editing/sedge.txt/mended", {"text": "x" * 500_000}), ("/api/editing/sedge.txt/mend", {"base": []}),
])
def test_bad_requests_are_refused_with_a_word(studio, path, body):
    found = studio.post(path, json=body)
    assert found.status_code == 422
    assert found.json()["error"]


@pytest.mark.parametrize("name", ["nowhere.txt", "..sedge.txt", ".x.txt"])
def test_other_files_are_neither_mended_nor_reported(studio, name):
    assert studio.post(f"/api/editing/{name}/mend", json={"base": ""}).status_code == 404
    assert studio.get(f"/api/editing/{name}/report").status_code == 404
