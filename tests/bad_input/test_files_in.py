"""Files that cannot be used: a message that names the file, what is wrong and the way out; exit code 2; nothing on standard output."""

import io
import sys
from pathlib import Path

import pytest

from loopwright.cli.main import main
from loopwright.workshop import files
from loopwright.workshop.files import CannotOpen, open_source

HAT = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n"


def refused(capsys, name) -> str:
    assert main(["check", str(name)]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert "Traceback" not in err
    return str(err)


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (HAT.encode() + b"caf\xe9 hat\n", ["byte 77 (offset 76, in line 3)", "0xe9", "save it as UTF-8"]),
        (HAT.encode("utf-16"), ["UTF-16", "byte 1 (offset 0)", "0xff", "save it as UTF-8"]),
        (b"\xfe\xff" + HAT.encode("utf-16-be"), ["UTF-16", "0xfe"]),
        (b"x" * (files.MAX_BYTES + 1), ["longer than 2,000,000 bytes", "split it"]),
        (b"Row 1: ch 5 \xf0\x9f\x90", ["byte 13", "0xf0"]),
    ],
)
def test_bytes_that_are_no_pattern(tmp_path, capsys, raw, said):
    file = tmp_path / "avocet.txt"
    file.write_bytes(raw)
    err = refused(capsys, file)
    assert "avocet.txt" in err
    assert [s for s in said if s not in err] == []


def test_a_folder(tmp_path, capsys):
    assert "is a folder: name a text file in it" in refused(capsys, tmp_path)


def test_no_such_file(tmp_path, capsys):
    assert "there is no file" in refused(capsys, tmp_path / "nowhere.txt")


def test_a_name_that_is_none(capsys):
    assert "no file name" in refused(capsys, "a\0b")


def test_a_name_far_too_long(capsys):
    assert "cannot be read" in refused(capsys, "x" * 5000)


def test_no_permission(tmp_path, capsys, monkeypatch):
    file = tmp_path / "locked.txt"
    file.write_text(HAT, encoding="utf-8")

    def denied(*_args: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", denied)  # as root, a locked file opens all the same
    assert "may not be read: change its permissions" in refused(capsys, file)


def test_one_bad_file_among_good_ones_is_named(tmp_path, capsys):
    good = tmp_path / "good.txt"
    good.write_text(HAT, encoding="utf-8")
    assert main(["check", str(good), str(tmp_path / "gone.txt")]) == 2
    assert "gone.txt" in capsys.readouterr().err


@pytest.mark.parametrize("raw", ["\ufeff" + HAT, HAT.replace("\n", "\r\n"), HAT.replace("\n", "\r"), HAT.rstrip("\n")])
def test_other_ways_to_save_the_same_text(tmp_path, capsys, raw):
    file = tmp_path / "hat.txt"
    file.write_bytes(raw.encode("utf-8"))
    assert main(["check", str(file)]) == 0
    assert capsys.readouterr().out.count("agrees") == 2


def test_standard_input(capsys, monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(HAT.encode()), encoding="ascii"))
    assert main(["check", "-"]) == 0
    assert capsys.readouterr().out.count("agrees") == 2


def test_bad_standard_input_is_named(monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"\xff"), encoding="ascii"))
    with pytest.raises(CannotOpen, match="standard input is not UTF-8 text: byte 1"):
        open_source("-")
