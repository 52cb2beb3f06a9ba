"""Films over the wire: plan, cards, what a log gives, the kit into a folder or one file; the same as the command makes."""

import io
import json
import re
import time
import zipfile

import pytest

from loopwright.cli.main import main
from tests.studio.running import finished

NAME = "samphire-beanie.txt"
AT = f"/api/film/{NAME}"
CHILD = {"size": "child"}
LOG = "0:00 shot 1\n0:30 Crown\n1:12 Rnd 2\n2:40 Rnd 3 count\n4:00 Body, Rnd 1\n6:00 Band, Rnd 1\n7:00 shot 46\n"


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


def test_the_plan_is_that_of_the_command(studio, tmp_path, capsys):
    found = studio.post(f"{AT}/plan", json=CHILD).json()
    assert main(["film", str(studio.folder / NAME), "--size", "child", "--out", str(tmp_path / "film"), "--json"]) in (0, 1)
    told = json.loads(capsys.readouterr().out)
    own = [(s["number"], s["kind"], s["label"], s["say"], s["show"], s["screen"], s["count"], s["length_s"]) for s in found["shots"]]
    assert [(n, k, say, show, screen, c, length) for n, k, _, say, show, screen, c, length in own] == [
        (s["shot"], s["kind"], s["say"], s["show"], s["screen"], s["count"], s["length_s"]) for s in told["shots"]
    ]
    assert [(p["section"], p["label"], p["count"], p["work_s"]) for p in found["pieces"]] == [
        (p["section"], p["label"], p["count"], p["work_s"]) for p in told["pieces"]
    ]
    assert found["size"] == "child"
    assert len(found["sizes"]) == 10
    assert {"en", "de", "fr"} <= set(found["languages"])


def test_the_size_of_the_sample_is_taken_where_none_is_named(studio):
    assert studio.post(f"{AT}/plan", json={}).json()["size"] == "child"


@pytest.mark.parametrize("asked", [
    {"size": 3}, {"size": "x" * 99}, {"size": "a\nb"}, {"terms": "old"}, {"language": "../de"}, {"language": 7},
])
def test_what_cannot_be_filmed_is_refused_with_a_word(studio, asked):
    for path in ("plan", "cards", "times"):
        found = studio.post(f"{AT}/{path}", json={**CHILD, **asked})
        assert found.status_code == 422
        assert found.json()["error"][:1].isupper()
        assert "--" not in found.json()["error"]


@pytest.mark.parametrize("asked", [{"size": "giant"}, {"language": "xx"}])
def test_what_the_design_or_the_languages_do_not_have_is_told(studio, asked):
    for path in ("plan", "cards", "times"):
        found = studio.post(f"{AT}/{path}", json={**CHILD, **asked, "log": LOG})
        assert found.status_code == 200
        assert re.search("no size 'giant'|no words for a film in 'xx'", found.json()["why"])
        assert "--" not in found.json()["why"]


def test_a_design_without_rows_has_no_film(studio):
    (studio.folder / "empty.txt").write_text("Only a title\n")
    found = studio.post("/api/film/empty.txt/plan", json={})
    assert "no row that could be worked" in found.json()["why"]
    assert "loopwright check" not in found.json()["why"]


def test_cards_are_drawings_in_both_shapes(studio):
    for shape, wide in (("16x9", "1280"), ("9x16", "720")):
        found = studio.post(f"{AT}/cards", json={**CHILD, "shape": shape}).json()
        assert {c["kind"] for c in found["cards"]} >= {"title", "row", "measure", "gauge"}
        one = next(n for n, c in enumerate(found["cards"]) if c["kind"] == "row")
        card = studio.get(f"{AT}/cards/{found['key']}/{one}")
        assert card.headers["content-type"] == "image/svg+xml"
        assert "script-src 'self'" in card.headers["content-security-policy"]
        assert f'width="{wide}"' in card.text[:400]
        assert studio.get(f"{AT}/cards/{found['key']}/{len(found['cards'])}").status_code == 404
    assert studio.get(f"{AT}/cards/{'0' * 32}/0").status_code == 404
    assert studio.get(f"{AT}/cards/{found['key']}/-1").status_code == 422
    assert studio.post(f"{AT}/cards", json={**CHILD, "shape": "1x1"}).status_code == 422


def test_script_in_a_title_stays_words_on_a_card(studio):
    (studio.folder / "bad.txt").write_text('<script>alert(1)</script> & "x"\n\nRnd 1: 6 sc in magic ring. (6)\n')
    found = studio.post("/api/film/bad.txt/cards", json={}).json()
    card = studio.get(f"/api/film/bad.txt/cards/{found['key']}/0").text
    assert "<script" not in card
    assert "&lt;script&gt;" in card


def test_a_log_gives_chapters_captions_and_the_description(studio, tmp_path):
    found = studio.post(f"{AT}/times", json={**CHILD, "log": LOG}).json()
    assert found["why"] == ""
    assert found["chapters"][0]["at"] == "0:00"
    assert {"Crown", "Body"} <= {c["title"] for c in found["chapters"]}
    assert [s["called"] for s in found["captions"]] == ["US terms", "UK terms"]
    log = tmp_path / "log.txt"
    log.write_text(LOG)
    assert main(["film", str(studio.folder / NAME), "--size", "child", "--out", str(tmp_path / "film"), "--log", str(log)]) in (0, 1)
    for file in found["files"]:
        assert (tmp_path / "film" / file["name"]).read_text() == file["text"], file["name"]
    assert {f["name"] for f in found["files"]} >= {"captions-us.vtt", "captions-uk.srt", "chapters.txt", "description.txt", "links.json"}


def test_a_log_that_names_nothing_of_the_plan_says_so(studio):
    found = studio.post(f"{AT}/times", json={**CHILD, "log": "0:10 nonsense\n"}).json()
    assert "nothing that is in the plan" in found["why"]
    assert found["files"] == []


def test_the_kit_is_taken_away_as_one(studio):
    told = finished(studio, AT, {**CHILD, "log": LOG})
    assert told["why_not"] == ""
    got = studio.get(f"{AT}/runs/{told['id']}/files.zip")
    with zipfile.ZipFile(io.BytesIO(got.content)) as z:
        names = z.namelist()
    assert {"plan.html", "camera.html", "plan.csv", "captions-us.vtt", "chapters.txt", "description.txt"} <= set(names)
    assert any(n.startswith("cards-9x16/") and n.endswith(".png") for n in names)
    assert got.headers["content-disposition"] == 'attachment; filename="samphire-beanie-film.zip"'
    assert sorted(p.name for p in studio.folder.iterdir()) == [NAME]


def test_the_kit_goes_into_a_folder_and_never_over_what_was_changed(studio):
    told = finished(studio, AT, {**CHILD, "into": "Film"})
    assert told["why_not"] == ""
    assert (studio.folder / "Film" / "cards-16x9").is_dir()
    assert not list(studio.folder.rglob("*captions*"))
    mine = studio.folder / "Film" / "plan.csv"
    mine.write_text("my own")
    card = next((studio.folder / "Film" / "cards-16x9").glob("*.svg"))
    (studio.folder / NAME).write_text((studio.folder / NAME).read_text().replace("Samphire Beanie", "Samphire Hat"))
    was = card.read_text()
    told = finished(studio, AT, {**CHILD, "into": "Film"})
    assert "was changed since it was published" in told["why_not"]
    assert mine.read_text() == "my own"
    assert card.read_text() == was


@pytest.mark.parametrize("into", ["../out", "/out", "a/b", ".hidden", "versions", "..", "a\\b", "x\0", 7])
def test_folders_that_lie_elsewhere_are_refused(studio, into):
    assert studio.post(f"{AT}/runs", json={**CHILD, "into": into}).status_code == 422


def test_a_kit_can_be_stopped(studio):
    run = studio.post(f"{AT}/runs", json={**CHILD, "into": "Film"}).json()
    assert studio.delete(f"{AT}/runs/{run['id']}").json() == {"stopped": True}
    assert studio.get(f"{AT}/runs/{run['id']}").status_code == 404
    assert studio.get(f"{AT}/runs/{run['id']}/files.zip").status_code == 404
    time.sleep(1.0)
    assert not (studio.folder / "Film").exists()


def test_a_studio_only_for_reading_makes_kits_to_take_away_alone(open_studio):
    studio = open_studio(NAME, read_only=True)
    assert studio.post(f"{AT}/runs", json={**CHILD, "into": "Film"}).status_code == 422
    assert finished(studio, AT, CHILD)["packed"]
    assert sorted(p.name for p in studio.folder.iterdir()) == [NAME]


@pytest.mark.parametrize("name", ["nowhere.txt", "..x.txt", ".x.txt"])
def test_designs_that_are_not_in_the_folder_have_no_film(studio, name):
    for path in ("plan", "cards", "times", "runs", "log"):
        assert studio.post(f"/api/film/{name}/{path}", json=CHILD).status_code == 404
    assert studio.get(f"/api/film/{name}/log?size=child").status_code == 404


def test_nobody_without_the_token_or_from_another_page_is_let_in(studio):
    asked = {"json": CHILD, "headers": {"origin": "http://elsewhere.example"}}
    for path in (f"{AT}/plan", f"{AT}/runs", f"{AT}/log", "/api/listen"):
        assert studio.post(path, **asked).status_code == 403
    studio.cookies.clear()
    for path in (f"{AT}/plan", f"{AT}/runs", f"{AT}/log", "/api/listen"):
        assert studio.post(path, json=CHILD).status_code == 403
    assert studio.get(f"{AT}/log").status_code == 403


def test_bodies_that_are_no_object_are_refused(studio):
    for path in ("plan", "cards", "times", "runs", "log"):
        for body in (b"[]", b"{", b"null", b"\xff"):
            found = studio.post(f"{AT}/{path}", content=body)
            assert found.status_code == 422
            assert re.search(r"[a-z]", found.json()["error"])
