"""Captions over the wire: the draft, its rows in time, the words beside it, doubts; cooking makes no rows."""

from pathlib import Path

import pytest

from loopwright.workshop.listen import listen_to

LESSONS = Path(__file__).parents[1] / "outside" / "lessons"
COOKING = "WEBVTT\n\n" + "".join(
    f"00:00:{n:02}.000 --> 00:00:{n + 2:02}.000\n{words}\n\n" for n, words in enumerate((
        "fold the flour into the egg whites", "stir it round three times", "now chop two onions", "add a stitch of salt and bake for ten minutes",
    ))
)


@pytest.fixture
def studio(open_studio):
    return open_studio()


def heard(studio, captions, **more):
    return studio.post("/api/listen", json={"captions": captions, **more})


@pytest.mark.parametrize("name", ["bulrush_hat.vtt", "avocet_bonnet.srt", "sandpiper_mitten.txt", "reed_cloth_uk.vtt"])
def test_the_draft_is_that_of_the_command(studio, name):
    text = (LESSONS / name).read_text()
    found = heard(studio, text, name=name).json()
    want = listen_to(text, name).as_json()
    assert {k: found[k] for k in want} == want
    assert found["timed"]


def test_rows_and_words_point_at_one_another(studio):
    found = heard(studio, (LESSONS / "bulrush_hat.vtt").read_text()).json()
    spans: dict[int, list[float]] = {}
    for cue in found["cues"]:
        assert cue["at_s"] <= cue["until_s"]
        for piece in cue["pieces"]:
            assert piece["words"].strip()
            if piece["line"] is not None:
                spans.setdefault(piece["line"], []).append(cue["at_s"])
    rows = {r["line"]: r for r in found["rows"]}
    assert spans.keys() == rows.keys()
    for line, times in spans.items():
        assert rows[line]["at_s"] - 12 <= min(times) <= rows[line]["at_s"] + 12
        assert max(times) <= rows[line]["until_s"]
    assert [d for d in found["doubts"] if d["words"] and d["at_s"] is not None and d["line"] in rows]


def test_the_times_of_the_rows_are_a_log_of_the_design_that_is_made(studio):
    found = heard(studio, (LESSONS / "bulrush_hat.vtt").read_text()).json()
    made = studio.post("/api/designs", json={"text": found["text"], "title": found["title"]}).json()
    assert (studio.folder / made["id"]).read_text() == found["text"]
    told = studio.post(f"/api/film/{made['id']}/times", json={"log": found["log"]}).json()
    assert told["why"] == ""
    assert not [n for n in told["notes"] if "nothing in the plan" in n]
    hat = [r["at_s"] for r in told["rows"] if r["section"] == 0]
    assert hat[:3] == [r["at_s"] for r in found["rows"][:3]] or all(abs(a - b["at_s"]) < 0.2 for a, b in zip(hat, found["rows"][:8], strict=False))


def test_making_a_design_never_overwrites_one(studio):
    (studio.folder / "Bulrush Hat.txt").write_text("mine\n")
    made = studio.post("/api/designs", json={"text": "Bulrush Hat\n", "title": "Bulrush Hat"}).json()
    assert made["id"] == "Bulrush Hat 2.txt"
    assert (studio.folder / "Bulrush Hat.txt").read_text() == "mine\n"


def test_cooking_makes_no_rows_and_says_why(studio):
    found = heard(studio, COOKING, name="cooking.vtt").json()
    assert found["rows"] == []
    assert found["text"] == ""
    assert "no row was heard" in found["note"]
    assert "flour" in " ".join(p["words"] for c in found["cues"] for p in c["pieces"])


@pytest.mark.parametrize("captions", ["", " \n", "WEBVTT\n", "\ufeff", "-->\n-->", "<script>alert(1)</script>", "00:00:01,000 --> 00:00:00,500\n"])
def test_captions_that_are_none_are_told(studio, captions):
    found = heard(studio, captions).json()
    assert found["note"]
    assert found["rows"] == []


def test_captions_without_times_have_a_draft_and_no_seconds(studio):
    found = heard(studio, "crochet a circle: round one, six single crochet in a magic ring\nround two, two single crochet in each stitch around, twelve\n").json()
    assert found["timed"] is False
    assert {c["at_s"] for c in found["cues"]} == {None}
    assert {p["line"] for c in found["cues"] for p in c["pieces"]} == {None}
    assert found["log"] == ""


@pytest.mark.parametrize("given", [{"captions": 5}, {"captions": "x" * 2_000_001}, {"captions": "x", "terms": "old"}, {"captions": "x", "name": ["a"]}, {"captions": "a\0b"}])
def test_what_is_no_text_is_refused(studio, given):
    found = studio.post("/api/listen", json=given)
    assert found.status_code == 422
    assert found.json()["error"]


def test_a_body_that_is_too_large_is_refused(studio):
    assert studio.post("/api/listen", content=b'{"captions":"' + b"x" * 4_100_000 + b'"}').status_code == 413
