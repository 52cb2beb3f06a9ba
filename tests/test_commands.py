"""The command as a user calls it."""

import json

import pytest

from loopwright.cli.main import main


def test_check_json(tmp_path, capsys):
    file = tmp_path / "hat.txt"
    file.write_text("Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (13)\n", encoding="utf-8")
    assert main(["check", "--json", str(file)]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["version"] == 1
    rows = data["files"][0]["rows"]
    assert [(r["label"], r["line"], r["counts"], r["agrees"]) for r in rows] == [("Rnd 1", 1, [6], True), ("Rnd 2", 2, [12], False)]


@pytest.mark.parametrize(("data", "said"), [(b"\xff\xfe", "byte 1"), (None, "no file")])
def test_unusable_files_are_named(tmp_path, capsys, data, said):
    file = tmp_path / "x.txt"
    if data is not None:
        file.write_bytes(data)
    assert main(["check", str(file)]) == 2
    assert said in capsys.readouterr().err


def test_a_folder_is_no_pattern(tmp_path, capsys):
    assert main(["check", str(tmp_path)]) == 2
    assert "folder" in capsys.readouterr().err
