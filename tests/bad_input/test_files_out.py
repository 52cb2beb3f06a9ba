"""Files that cannot be written: what was there stays, nothing half-written is left, and the message says the way out."""

import errno
import os
from pathlib import Path

import pytest

from loopwright.workshop.files import CannotSave, make_folder, write_whole


def test_a_file_is_written_with_its_folder(tmp_path):
    path = tmp_path / "out" / "child.txt"
    write_whole(path, "Rnd 1: 8 hdc\nno \r added\n")
    assert path.read_bytes() == b"Rnd 1: 8 hdc\nno \r added\n"
    assert [p.name for p in path.parent.iterdir()] == ["child.txt"]


def test_an_older_file_keeps_its_permissions(tmp_path):
    path = tmp_path / "child.txt"
    path.write_text("old", encoding="utf-8")
    path.chmod(0o640)
    write_whole(path, "new")
    assert path.read_text(encoding="utf-8") == "new"
    assert path.stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (errno.ENOSPC, "the disk is full: make room"),
        (errno.EDQUOT, "the disk is full"),
        (errno.EACCES, "may not be written: choose another folder"),
        (errno.EROFS, "may not be written"),
        (errno.EIO, "cannot be written"),
    ],
)
def test_a_failure_while_writing_leaves_the_old_file(tmp_path, monkeypatch, number, said):
    path = tmp_path / "child.txt"
    path.write_text("old", encoding="utf-8")

    def fails(_handle: int) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", fails)
    with pytest.raises(CannotSave, match=said):
        write_whole(path, "new " * 1000)
    assert path.read_text(encoding="utf-8") == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["child.txt"]


def test_stopping_while_writing_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "child.txt"
    path.write_text("old", encoding="utf-8")

    def stops(_handle: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stops)
    with pytest.raises(KeyboardInterrupt):
        write_whole(path, "new")
    assert path.read_text(encoding="utf-8") == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["child.txt"]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_disk_as_the_system_tells_it():
    with Path("/dev/full").open("wb", buffering=0) as full, pytest.raises(OSError, match="No space left"):
        full.write(b"x" * 100_000)


def test_a_folder_where_the_file_should_be(tmp_path):
    (tmp_path / "child.txt").mkdir()
    with pytest.raises(CannotSave, match="is a folder: name a file in it"):
        write_whole(tmp_path / "child.txt", "new")
    assert [p.name for p in tmp_path.iterdir()] == ["child.txt"]


def test_a_file_where_the_folder_should_be(tmp_path):
    (tmp_path / "out").write_text("x", encoding="utf-8")
    for path in (tmp_path / "out", tmp_path / "out" / "deep"):
        with pytest.raises(CannotSave, match="is a file, not a folder: name another output folder"):
            make_folder(path)


def test_an_output_folder_that_may_not_be_made(tmp_path, monkeypatch):
    def denied(*_args: object, **_named: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", denied)
    with pytest.raises(CannotSave, match="may not be written: choose another folder"):
        write_whole(tmp_path / "out" / "child.txt", "new")


def test_a_file_name_that_is_too_long(tmp_path):
    with pytest.raises(CannotSave, match="too long for a file name"):
        write_whole(tmp_path / ("x" * 300 + ".txt"), "new")
