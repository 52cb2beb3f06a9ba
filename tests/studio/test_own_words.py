"""Her own words in another language over the wire: listed, kept in the table that the commands read, taken away, brought in filled, published."""

import pytest

from loopwright.cli.main import main
from loopwright.wording.translations import from_table
from tests.studio.running import finished

NAME = "samphire-beanie.txt"
AT = f"/api/publishing/{NAME}/words"
GATHER = "Gather the ring at the crown tightly before the end is woven in."
SAID = "Den Ring an der Krone fest zusammenziehen, bevor der Faden vernäht wird."
SHAWL = "thrift-shawl.txt"
DEEP = "{1} cm deep and {2} cm along the top edge"


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME, SHAWL)


def table(studio, code="de"):
    return studio.folder / f"samphire-beanie.{code}.tsv"


def test_the_phrases_are_those_of_the_command(studio, tmp_path):
    made = tmp_path / "made.tsv"
    main(["grade", str(studio.folder / NAME), "--language", "de", "--translations", str(made)])
    listed = studio.get(f"{AT}/de").json()
    rows = [line.split("\t") for line in made.read_text().splitlines()[1:]]
    assert [(p["text"], p["where"]) for p in listed["phrases"]] == [(r[2], r[1]) for r in rows]
    assert studio.get(f"{AT}/de/table").text == made.read_text()
    assert not listed["there"]
    assert not table(studio).exists()


def test_what_is_written_stands_in_the_table_and_in_what_is_published(studio, tmp_path):
    shown = studio.put(f"{AT}/de", json={"said": {GATHER: f"  {SAID}\n"}}).json()
    assert [p["said"] for p in shown["phrases"] if p["text"] == GATHER] == [SAID]
    assert from_table(table(studio).read_text()) == {GATHER: SAID}
    asked = {"formats": ["text"], "languages": ["de"], "words_only": True}
    finished(studio, f"/api/publishing/{NAME}", {**asked, "into": "Out"})
    told = " ".join(next((studio.folder / "Out").glob("*-de-*.txt")).read_text().split())
    assert SAID in told
    assert GATHER not in told
    out = tmp_path / "command"
    given = ["--language", "de", "--translations", str(table(studio)), "--format", "text", "--words-only"]
    main(["publish", str(studio.folder / NAME), "--out", str(out), *given])
    assert " ".join(next(out.glob("*.txt")).read_text().split()) == told


def test_the_pages_are_others_once_the_words_are(studio):
    asked = {"formats": ["pdf"], "languages": ["de"], "words_only": True, "file": "samphire-beanie-de-words-only-a4.pdf"}
    at = f"/api/publishing/{NAME}/pages"
    before = studio.post(at, json=asked).json()
    studio.put(f"{AT}/de", json={"said": {GATHER: SAID}})
    after = studio.post(at, json=asked).json()
    assert after["key"] != before["key"]
    pages = {k: [studio.get(f"{at}/{made['key']}/{n}").content for n in range(made["pages"])] for k, made in (("before", before), ("after", after))}
    assert pages["before"] != pages["after"]


def test_words_that_left_the_pattern_and_columns_of_her_own_stay_in_the_table(studio):
    head = f"id\twhere\ttext\tnumbers\tde\tby\nu1\tBand\t{GATHER}\t\tAlt\tAnke\nu2\tCrown\tGone long ago.\t\tLange fort.\tAnke\n"
    table(studio).write_text(head)
    shown = studio.put(f"{AT}/de", json={"said": {GATHER: SAID}}).json()
    assert shown["left"] == 1
    rows = [line.split("\t") for line in table(studio).read_text().splitlines()]
    assert rows[0] == ["id", "where", "text", "numbers", "de", "by"]
    assert [r[4:] for r in rows if r[2] == GATHER] == [[SAID, "Anke"]]
    assert rows[-1] == ["u2", "Crown", "Gone long ago.", "", "Lange fort.", "Anke"]
    assert any("Alt" in kept.read_text() for kept in studio.folder.glob(".loopwright/history/samphire-beanie.de.tsv/*"))


def test_a_number_that_is_lost_is_told(studio):
    at = f"/api/publishing/{SHAWL}/words/es"
    shown = studio.put(at, json={"said": {DEEP: "{1} cm de alto"}}).json()
    assert [(p["lost"], p["numbers"]) for p in shown["phrases"] if p["text"] == DEEP] == [(["{2}"], ["57 (78)", "114 (156)"])]


def test_a_filled_list_is_brought_in_and_what_it_replaces_is_kept(studio):
    studio.put(f"{AT}/de", json={"said": {GATHER: "Erst so."}})
    filled = studio.get(f"{AT}/de/table").text.replace("Erst so.", SAID) + "u9\t\tOf another hat.\t\tVon einer anderen Mütze.\n"
    shown = studio.post(f"{AT}/de/table", json={"table": "\ufeff" + filled.replace("\n", "\r\n")}).json()
    assert (shown["taken"], shown["replaced"], shown["strange"], shown["left"]) == (2, 1, 1, 1)
    assert from_table(table(studio).read_text()) == {GATHER: SAID, "Of another hat.": "Von einer anderen Mütze."}
    assert any("Erst so." in kept.read_text() for kept in studio.folder.glob(".loopwright/history/samphire-beanie.de.tsv/*"))


def test_a_list_with_nothing_filled_in_changes_nothing(studio):
    studio.put(f"{AT}/de", json={"said": {GATHER: SAID}})
    before = table(studio).read_text()
    shown = studio.post(f"{AT}/de/table", json={"table": before.replace(SAID, "")}).json()
    assert shown["taken"] == 0
    assert table(studio).read_text() == before


@pytest.mark.parametrize(("given", "word"), [
    ("no table", "no table of translations"), ("id\twhere\ttext\tnumbers\tfr\n", "for 'fr', not for 'de'"), ("", "no table"),
    ("id\twhere\ttext\tnumbers\tde\nx\n", "line 2"), (7, "text"), ("x" * 1_000_001, "at most"),
])
def test_what_is_no_list_is_refused_with_a_word(studio, given, word):
    found = studio.post(f"{AT}/de/table", json={"table": given})
    assert found.status_code == 422
    assert word in found.json()["error"]
    assert not table(studio).exists()


@pytest.mark.parametrize("said", [None, [], {"Not of this pattern": "x"}, {GATHER: 7}, {GATHER: "x" * 4001}, {GATHER: "a\0b"}])
def test_what_is_no_translation_is_refused(studio, said):
    assert studio.put(f"{AT}/de", json={"said": said}).status_code == 422
    assert not table(studio).exists()


@pytest.mark.parametrize("code", ["en", "xx", "d-e", "DE"])
def test_languages_that_there_are_none_of_are_refused(studio, code):
    assert studio.get(f"{AT}/{code}").status_code == 422


def test_a_damaged_table_is_told_and_never_written_over(studio):
    table(studio).write_text("her own notes\n")
    assert "samphire-beanie.de.tsv" in studio.get(f"{AT}/de").json()["error"]
    assert studio.put(f"{AT}/de", json={"said": {GATHER: SAID}}).status_code == 422
    assert table(studio).read_text() == "her own notes\n"


def test_a_link_that_leads_out_of_the_folder_is_not_followed(studio, tmp_path):
    (tmp_path / "outside.tsv").write_text("id\twhere\ttext\tnumbers\tde\n")
    table(studio).symlink_to(tmp_path / "outside.tsv")
    assert studio.put(f"{AT}/de", json={"said": {GATHER: SAID}}).status_code == 422
    assert (tmp_path / "outside.tsv").read_text().count("\n") == 1


def test_a_studio_only_for_reading_lists_and_gives_but_writes_nothing(open_studio):
    studio = open_studio(NAME, read_only=True)
    assert studio.get(f"{AT}/de").json()["read_only"]
    assert GATHER in studio.get(f"{AT}/de/table").text
    assert studio.put(f"{AT}/de", json={"said": {GATHER: SAID}}).status_code == 422
    assert studio.post(f"{AT}/de/table", json={"table": studio.get(f"{AT}/de/table").text.replace("\t\n", "\tx\n")}).status_code == 422
    assert sorted(p.name for p in studio.folder.iterdir()) == [NAME]
