"""`loopwright film`: files, JSON, exit codes, what is said of bad input."""

import json

import pytest

from loopwright.cli.main import main
from loopwright.workshop.designs import find


@pytest.fixture
def hat(tmp_path):
    path = tmp_path / "hat.txt"
    found = find("samphire-beanie")
    assert found is not None
    text = found.text
    path.write_text(text.replace("Turning chain:", "Film: Crown = https://films.example/watch?v=a, https://films.example/all.mp4\nTurning chain:", 1), encoding="utf-8")
    return path


def test_a_whole_kit(hat, tmp_path, capsys):
    log = tmp_path / "log.txt"
    log.write_text("0:00 Crown\n1:30 Rnd 3\n4:00 Body\n6:00 Band\n", encoding="utf-8")
    out = tmp_path / "out"
    assert main(["film", str(hat), "--size", "Child", "--out", str(out), "--log", str(log), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["version"] == 1
    assert told["size"] == "child"
    assert all((tmp_path / f["path"]).exists() for f in told["files"])
    assert {f["what"] for f in told["files"]} == {"page", "table", "card", "captions", "chapters", "description", "links"}
    rows = {(r["section"], r["label"]): r for r in json.loads((out / "links.json").read_text(encoding="utf-8"))["rows"]}
    assert rows["Crown", "Rnd 3"]["film"] == "https://films.example/watch?v=a&t=90"
    assert rows["Band", "Rnd 1"]["film"].startswith("https://films.example/all.mp4#t=36")
    description = (out / "description.txt").read_text(encoding="utf-8")
    assert "Size filmed: child" in description
    assert "0:00 Crown\n4:00 Body\n6:00 Band" in description
    assert "Questions already answered" in description
    assert main(["film", str(hat), "--size", "child", "--out", str(out), "--log", str(log)]) == 0, "a second time over its own files"


def test_documents_link_each_row_to_its_moment(hat, tmp_path, capsys):
    log = tmp_path / "log.txt"
    log.write_text("0:00 Crown\n1:30 Rnd 3\n4:00 Body\n6:00 Band\n", encoding="utf-8")
    assert main(["film", str(hat), "--size", "child", "--out", str(tmp_path / "film"), "--log", str(log)]) == 0
    hat.write_text(hat.read_text(encoding="utf-8").replace("Film: ", "Notes: The rows move down a line.\nFilm: film/links.json, "), encoding="utf-8")
    assert main(["publish", str(hat), "--out", str(tmp_path / "out"), "--format", "html", "--format", "data"]) == 0
    page = next((tmp_path / "out").glob("*.html")).read_text(encoding="utf-8")
    assert 'href="https://films.example/watch?v=a&amp;t=90"' in page
    assert 'href="https://films.example/all.mp4#t=24' in page, "after the goal shot, which begins at 4:00"


@pytest.mark.parametrize("text", ["", "[]", '{"rows": [{"section": "Crown"}]}', '{"rows": [{"section": "Crown", "text": "x", "at_s": "soon"}]}'])
def test_links_that_cannot_be_read_are_left_out(hat, tmp_path, text):
    (tmp_path / "links.json").write_text(text, encoding="utf-8")
    hat.write_text(hat.read_text(encoding="utf-8").replace("Film: ", "Film: links.json, "), encoding="utf-8")
    assert main(["publish", str(hat), "--out", str(tmp_path / "out"), "--format", "text"]) == 0


def test_files_that_were_changed_are_not_replaced(hat, tmp_path, capsys):
    out = tmp_path / "out"
    assert main(["film", str(hat), "--out", str(out)]) == 0, "the size the sample was worked in"
    (out / "plan.html").write_text("mine", encoding="utf-8")
    assert main(["film", str(hat), "--out", str(out)]) == 2
    assert "plan.html was changed" in capsys.readouterr().err
    assert (out / "plan.html").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(("more", "said"), [
    (["--size", "giant"], "there is no size 'giant'"),
    (["--language", "xx"], "no words for a film in 'xx'"),
    (["--log", "gone.txt"], "there is no file gone.txt"),
    (["--video", "gone.mp4"], "there is no video gone.mp4"),
])
def test_what_cannot_be_done_is_said_in_a_sentence(hat, tmp_path, capsys, more, said):
    assert main(["film", str(hat), "--out", str(tmp_path / "out"), *more]) == 2
    err = capsys.readouterr().err
    assert said in err
    assert "Traceback" not in err


def test_the_output_folder_may_be_a_file(hat, capsys):
    assert main(["film", str(hat), "--size", "child", "--out", str(hat)]) == 2
    assert "is a file, not a folder" in capsys.readouterr().err
