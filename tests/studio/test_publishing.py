"""Publishing over the wire: what there would be, pages, runs with progress into a folder or one file, versions compared."""

import io
import zipfile

import pytest

from loopwright.source import Source
from loopwright.workshop.live import Live
from loopwright.workshop.publish.before import edition_of, files_of, pages
from loopwright.workshop.publish.editions import Asked
from tests.studio.running import finished

NAME = "glasswort-bag.txt"
AT = f"/api/publishing/{NAME}"
WORDS = {"formats": ["text"], "words_only": True}
PNG = b"\x89PNG\r\n\x1a\n"


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


def test_the_plan_names_every_file_and_what_is_missing(studio):
    found = studio.post(f"{AT}/plan", json={"papers": ["a4", "letter"], "formats": ["pdf", "html"], "terms": ["us", "uk"]}).json()
    names = [f["name"] for f in found["files"]]
    assert found["many"] == len(names) == len(set(names)) == 6
    assert "glasswort-bag-us-letter.pdf" in names
    assert any("photograph" in m for m in found["missing"])
    assert any("Version" in m for m in found["missing"])


def test_a_version_a_photograph_and_its_words_are_not_missed_where_they_are(studio):
    from PIL import Image

    Image.new("RGB", (40, 30), (10, 120, 90)).save(studio.folder / "bag.jpg")
    path = studio.folder / NAME
    text = path.read_text()
    at = text.index("Terms:")
    path.write_text(f"{text[:at]}Version: 1\nPhotograph: bag.jpg (cover): the bag on a peg\n{text[at:]}")
    found = studio.post(f"{AT}/plan", json=WORDS).json()["missing"]
    assert [m for m in found if "photograph" in m.lower() or "Version" in m] == []


@pytest.mark.parametrize("asked", [
    {"papers": ["a3"]}, {"papers": "a4"}, {"terms": ["old"]}, {"languages": ["xx"]}, {"languages": ["../de"]}, {"formats": ["exe"]}, {"sizes": [99]},
    {"sizes": [-1]}, {"sizes": ["child"]}, {"sizes": [True]}, {"sizes": 5}, {"formats": [["pdf"]]},
])
def test_what_cannot_be_made_is_refused(studio, asked):
    for path in ("plan", "pages", "runs"):
        found = studio.post(f"{AT}/{path}", json=asked)
        assert found.status_code == 422
        assert found.json()["error"]


def test_pages_are_seen_as_pictures_before_they_are_written(studio):
    asked = {"formats": ["pdf"], "words_only": True}
    made = studio.post(f"{AT}/pages", json={**asked, "file": studio.post(f"{AT}/plan", json=asked).json()["files"][0]["name"]}).json()
    assert made["pages"] >= 1
    page = studio.get(f"{AT}/pages/{made['key']}/0")
    assert page.headers["content-type"] == "image/png"
    assert page.content.startswith(PNG)
    assert studio.get(f"{AT}/pages/{made['key']}/{made['pages']}").status_code == 404
    assert studio.get(f"{AT}/pages/nothing/0").status_code == 404
    assert studio.get(f"{AT}/pages/{made['key']}/-1").status_code == 422
    assert not list(studio.folder.glob("**/*.pdf"))


def test_pages_tell_how_far_they_are_and_nothing_is_told_where_none_are_made(studio):
    assert studio.get(f"{AT}/looking").json() == {"what": "", "share": 1.0}
    assert studio.delete(f"{AT}/looking").json() == {"stopped": True}
    source, told = Source.of((studio.folder / NAME).read_text(), NAME), []
    asked = Asked(formats=("pdf",), words_only=True)
    found = edition_of(Live(NAME).see(source.text), asked, files_of(Live(NAME).see(source.text), asked)[0]["name"])
    assert found is not None
    made = pages(source, found, studio.folder, studio.folder / NAME, lambda what, share: told.append((share, what)))
    assert made[0].startswith(PNG)
    assert told == sorted(told)
    assert told[0][1] == "working the design"
    assert told[-1][1] == "setting the pages"


def test_a_file_that_would_not_be_made_has_no_pages(studio):
    assert studio.post(f"{AT}/pages", json={"formats": ["pdf"], "file": "../x.pdf"}).status_code == 422


def test_files_go_into_a_folder_below_the_designs_and_the_version_is_kept(studio):
    told = finished(studio, AT, {**WORDS, "into": "Glasswort"})
    assert told["why_not"] == ""
    assert [f["name"] for f in told["files"]] == ["glasswort-bag-words-only.txt"]
    assert (studio.folder / "Glasswort" / "glasswort-bag-words-only.txt").read_text().startswith("Glasswort Bag")
    assert list((studio.folder / "versions").iterdir())


def test_files_that_were_changed_since_are_not_written_over(studio):
    finished(studio, AT, {**WORDS, "into": "Glasswort"})
    mine = studio.folder / "Glasswort" / "glasswort-bag-words-only.txt"
    mine.write_text("my own words")
    told = finished(studio, AT, {**WORDS, "into": "Glasswort"})
    assert "was changed since it was published" in told["why_not"]
    assert mine.read_text() == "my own words"


def test_files_are_taken_away_as_one(studio):
    told = finished(studio, AT, WORDS)
    assert told["packed"]
    got = studio.get(f"{AT}/runs/{told['id']}/files.zip")
    with zipfile.ZipFile(io.BytesIO(got.content)) as z:
        assert z.namelist() == ["glasswort-bag-words-only.txt"]
        assert z.read(z.namelist()[0]).startswith(b"Glasswort Bag")
    assert got.headers["content-disposition"] == 'attachment; filename="glasswort-bag.zip"'


@pytest.mark.parametrize("into", ["../out", "/out", "a/b", ".hidden", "versions", "..", "a\\b", "x" * 99, " x", "x ", "con\n", "x\0", 7])
def test_folders_that_lie_elsewhere_are_refused(studio, into):
    assert studio.post(f"{AT}/runs", json={**WORDS, "into": into}).status_code == 422


def test_a_link_that_leads_out_of_the_folder_is_refused(studio, tmp_path):
    (tmp_path / "outside").mkdir()
    (studio.folder / "link").symlink_to(tmp_path / "outside", target_is_directory=True)
    assert studio.post(f"{AT}/runs", json={**WORDS, "into": "link"}).status_code == 422
    assert list((tmp_path / "outside").iterdir()) == []


def test_a_design_that_stops_somewhere_is_published_as_a_draft_only(studio):
    (studio.folder / "bad.txt").write_text("Bad\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (13)\n")
    at = "/api/publishing/bad.txt"
    told = finished(studio, at, {**WORDS, "into": "Bad"})
    assert told["faults"]
    assert "nothing was written" in told["why_not"]
    assert not (studio.folder / "Bad").exists()
    assert finished(studio, at, {**WORDS, "draft": True})["packed"]


def test_nothing_is_published_of_a_text_without_rows(studio):
    (studio.folder / "empty.txt").write_text("Only a title\n")
    assert "No row" in finished(studio, "/api/publishing/empty.txt", WORDS)["why_not"]


def test_a_studio_only_for_reading_packs_files_and_writes_none(open_studio):
    studio = open_studio(NAME, read_only=True)
    assert studio.post(f"{AT}/runs", json={**WORDS, "into": "Out"}).status_code == 422
    assert studio.post(f"{AT}/keep").status_code == 422
    assert finished(studio, AT, WORDS)["packed"]
    assert sorted(p.name for p in studio.folder.iterdir()) == [NAME]


def test_runs_that_there_are_none_of_are_not_found(studio):
    assert studio.get(f"{AT}/runs/none").status_code == 404
    assert studio.get(f"{AT}/runs/none/files.zip").status_code == 404


def test_nothing_is_compared_before_a_version_is_kept(studio):
    assert studio.get(f"{AT}/changes").json() == {"changes": None}


def test_changes_since_the_kept_version_come_with_errata(studio):
    text = "Sedge Coaster\nVersion: 1\n\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n"
    (studio.folder / "sedge.txt").write_text(text)
    at = "/api/publishing/sedge.txt"
    assert studio.post(f"{at}/keep").status_code == 201
    (studio.folder / "sedge.txt").write_text(text.replace("Version: 1", "Version: 2").replace("6 sc in magic ring. (6", "7 sc in magic ring. (7").replace("12 sc", "14 sc"))
    found = studio.get(f"{at}/changes").json()["changes"]
    assert found["kept"] == "sedge--v1.txt"
    assert any(c["label"] == "Rnd 1" for c in found["changes"])
    assert found["change_list"]["lines"]


@pytest.mark.parametrize("name", ["nowhere.txt", "..x.txt", ".x.txt"])
def test_designs_that_are_not_in_the_folder_are_not_published(studio, name):
    for path in ("plan", "pages", "runs"):
        assert studio.post(f"/api/publishing/{name}/{path}", json=WORDS).status_code == 404
    assert studio.get(f"/api/publishing/{name}/changes").status_code == 404
    assert studio.post(f"/api/publishing/{name}/keep").status_code == 404
