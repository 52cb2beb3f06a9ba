"""`loopwright listen` as a user calls it."""

import json
from pathlib import Path

import pytest

from loopwright.cli.main import main

LESSON = str(Path(__file__).parents[1] / "outside" / "lessons" / "bulrush_hat.vtt")


def test_the_draft_goes_to_a_file_and_never_over_another(tmp_path, capsys):
    out = tmp_path / "draft.txt"
    assert main(["listen", LESSON, "-o", str(out)]) == 0
    told = capsys.readouterr()
    assert "Rnds 9-{hat rounds}: Rep Rnd 8." in out.read_text(encoding="utf-8")
    assert "Rnd 8  56" in told.err
    assert "loopwright check" in told.out
    before = out.read_bytes()
    assert main(["listen", LESSON, "-o", str(out)]) == 2
    assert out.read_bytes() == before
    assert main(["listen", LESSON, "-o", str(out), "--force"]) == 0
    assert main(["check", str(out)]) == 0


def test_json_is_as_checks_with_times_and_doubts(capsys):
    assert main(["listen", LESSON, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["version"] == 1
    (file,) = data["files"]
    assert {"file", "title", "terms", "sizes", "rows", "assumptions", "findings", "text", "doubts", "note"} <= set(file)
    assert len(file["rows"]) == 21
    assert all(r["at_s"] <= r["until_s"] for r in file["rows"])
    assert file["sizes"] == ["2 years"]


def test_json_where_no_row_was_heard(tmp_path, capsys):
    file = tmp_path / "bread.srt"
    file.write_text("1\n00:00:01,000 --> 00:00:03,000\nmix the flour and the salt\n", encoding="utf-8")
    assert main(["listen", str(file), "--json"]) == 1
    (entry,) = json.loads(capsys.readouterr().out)["files"]
    assert entry["rows"] == []
    assert "crochet" in entry["note"]
    assert main(["listen", str(file)]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert "no row was heard" in told.err


@pytest.mark.parametrize(("data", "said"), [(b"\xff\xfe1", "UTF-16"), (b"\x80abc", "byte 1"), (None, "no file")])
def test_files_that_cannot_be_used(tmp_path, capsys, data, said):
    file = tmp_path / "captions.vtt"
    if data is not None:
        file.write_bytes(data)
    assert main(["listen", str(file)]) == 2
    assert said in capsys.readouterr().err
