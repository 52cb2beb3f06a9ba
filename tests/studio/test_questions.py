"""Makers' questions over the wire: rows, answers, what is kept, notes; and whatever is no question."""

import pytest

NAME = "samphire-beanie.txt"
AT = f"/api/questions/{NAME}"
CHILD = 6


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


def row_of(studio, label, size=CHILD):
    rows = studio.get(AT, params={"size": size}).json()["rows"]
    return next(r for r in rows if r["label"] == label)


def test_rows_can_be_asked_about_one_by_one_with_their_counts(studio):
    rows = studio.get(AT, params={"size": CHILD}).json()["rows"]
    crown = [(r["label"], r["count"]) for r in rows if r["section"] == "Crown"][:5]
    assert crown == [("Rnd 1", 8), ("Rnd 2", 16), ("Rnd 3", 24), ("Rnd 4", 32), ("Rnd 5", 40)]


def test_one_over_at_a_joined_round_is_found_at_the_join_and_drawn(studio):
    row = row_of(studio, "Rnd 7")
    found = studio.post(f"{AT}/answer", json={"kind": "count", "size": CHILD, "row": row["row"], "have": row["count"] + 1}).json()
    first = found["causes"][0]
    assert found["heading"] == "One over. Most likely:"
    assert first["mark"] == "join"
    assert first["svg"].startswith("<svg")
    assert "Rnd 7" in first["description"]
    assert found["label"] == "Rnd 7"
    assert found["size"] == "child"


def test_the_text_to_send_is_in_the_terms_that_are_asked_for(studio):
    row = row_of(studio, "Rnd 7")
    asked = {"kind": "count", "size": CHILD, "row": row["row"], "have": row["count"] - 1}
    us, uk = (studio.post(f"{AT}/answer", json={**asked, "terms": t}).json()["text"] for t in ("us", "uk"))
    assert " hdc" in us
    assert " hdc" not in uk
    assert " htr" in uk


@pytest.mark.parametrize(("asked", "word"), [
    ({"kind": "gauge", "stitches": 16, "rows": 12}, "smaller hook"), ({"kind": "yarn", "amount": "60 m"}, "missing"),
    ({"kind": "measure", "section": "Body", "measure": "around", "want_mm": 540}, "adult"),
])
def test_gauge_yarn_and_measure_are_answered(studio, asked, word):
    found = studio.post(f"{AT}/answer", json={"size": CHILD, **asked})
    assert found.status_code == 200
    assert word in found.json()["text"]


@pytest.mark.parametrize("asked", [
    {"kind": "count"}, {"kind": "count", "row": 10**6, "have": 5}, {"kind": "count", "row": 0, "have": -5}, {"kind": "count", "row": 0, "have": 2.5},
    {"kind": "count", "row": 0, "have": 10**30}, {"kind": "count", "row": True, "have": 1}, {"kind": "count", "size": 99, "row": 0, "have": 1},
    {"kind": "count", "size": -1, "row": 0, "have": 1}, {"kind": "gauge"}, {"kind": "gauge", "stitches": 0, "rows": 5},
    {"kind": "gauge", "stitches": "16", "rows": 5}, {"kind": "gauge", "stitches": -3, "rows": 5}, {"kind": "yarn"}, {"kind": "yarn", "amount": "much"},
    {"kind": "yarn", "amount": "0 m"}, {"kind": "measure", "measure": "nowhere", "want_mm": 5}, {"kind": "measure", "measure": "around", "want_mm": 0},
    {"kind": "weather"}, {}, {"kind": ["count"]}, {"kind": "yarn", "amount": "9" * 500},
])
def test_what_is_no_question_is_answered_with_a_word(studio, asked):
    found = studio.post(f"{AT}/answer", json=asked)
    assert found.status_code == 422
    assert len(found.json()["error"].split()) > 4
    assert "Traceback" not in found.text


@pytest.mark.parametrize("body", [b"", b"[]", b"{", b"null", b'"x"', b"[" * 5000])
def test_a_body_that_is_no_object_is_refused(studio, body):
    assert studio.post(f"{AT}/answer", content=body).status_code == 422


def test_not_a_number_and_infinite_are_refused(studio):
    for said in (b'{"kind":"gauge","stitches":NaN,"rows":5}', b'{"kind":"gauge","stitches":Infinity,"rows":5}'):
        assert studio.post(f"{AT}/answer", content=said).status_code == 422


@pytest.mark.parametrize("name", ["nowhere.txt", "..secret.txt", ".hidden.txt", "x"])
def test_designs_that_are_not_in_the_folder_have_no_questions(studio, name):
    assert studio.get(f"/api/questions/{name}").status_code == 404
    assert studio.post(f"/api/questions/{name}/answer", json={"kind": "count"}).status_code == 404


def test_a_question_is_kept_listed_and_let_go(studio):
    given = {
        "kind": "count", "size": "child", "section": "Crown", "label": "Rnd 7", "version": "2", "asked": {"have": 57, "want": 56},
        "heading": "One over. Most likely:", "sent": "Thank you.",
    }
    made = studio.post(f"{AT}/kept", json=given)
    assert made.status_code == 201
    kept = studio.get(AT, params={"size": CHILD}).json()["kept"]
    assert [(k["label"], k["version"], k["asked"], k["sent"]) for k in kept] == [("Rnd 7", "2", {"have": 57, "want": 56}, "Thank you.")]
    assert (studio.folder / ".loopwright" / "shelf.sqlite").is_file()
    assert studio.delete(f"{AT}/kept/{made.json()['id']}").json() == {"gone": True}
    assert studio.delete(f"{AT}/kept/{made.json()['id']}").status_code == 404
    assert studio.get(AT, params={"size": CHILD}).json()["kept"] == []


def test_kept_questions_of_one_design_are_not_those_of_another(open_studio):
    studio = open_studio(NAME, "thrift-shawl.txt")
    studio.post(f"{AT}/kept", json={"kind": "yarn", "size": "child", "heading": "It will do", "sent": "x"})
    assert studio.get("/api/questions/thrift-shawl.txt").json()["kept"] == []


@pytest.mark.parametrize("given", [{"kind": "weather"}, {"kind": "count", "sent": "x" * 9000}, {"kind": "count", "size": "x" * 999}, {"kind": "count", "sent": 7}])
def test_what_cannot_be_kept_is_refused(studio, given):
    assert studio.post(f"{AT}/kept", json=given).status_code == 422


def test_a_studio_that_is_only_for_reading_answers_and_keeps_nothing(open_studio):
    studio = open_studio(NAME, read_only=True)
    row = row_of(studio, "Rnd 7")
    assert studio.post(f"{AT}/answer", json={"kind": "count", "size": CHILD, "row": row["row"], "have": 57}).status_code == 200
    refused = studio.post(f"{AT}/kept", json={"kind": "count", "size": "child", "heading": "x", "sent": "x"})
    assert refused.status_code == 422
    assert "read" in refused.json()["error"]
    assert not (studio.folder / ".loopwright").exists()


def test_a_note_goes_below_its_row_and_changes_no_count(studio):
    row = row_of(studio, "Rnd 3")
    before = (studio.folder / NAME).read_text()
    found = studio.post(f"{AT}/note", json={"row": row["row"], "words": "Join into the first hdc (not the slip stitch)."}).json()
    lines = found["text"].split("\n")
    at = next(i for i, line in enumerate(lines) if line.startswith("Rnd 3"))
    assert lines[at + 1] == "(Note: Join into the first hdc not the slip stitch .)"
    assert (studio.folder / NAME).read_text() == before


@pytest.mark.parametrize("given", [{"row": 999, "words": "x"}, {"row": 0, "words": ""}, {"row": 0, "words": "x" * 350}, {"words": "x"}, {"row": 0, "words": ["x"]}])
def test_a_note_without_row_or_words_is_refused(studio, given):
    assert studio.post(f"{AT}/note", json=given).status_code == 422


def test_script_in_a_title_or_a_note_comes_back_as_text_only(studio):
    (studio.folder / NAME).write_text("<script>alert(1)</script>\n\nRnd 1: 6 sc in magic ring.\nRnd 2: 2 sc in each st around.\n")
    found = studio.post(f"{AT}/answer", json={"kind": "count", "row": 1, "have": 13}).json()
    assert all("<script" not in c.get("svg", "") for c in found["causes"])
