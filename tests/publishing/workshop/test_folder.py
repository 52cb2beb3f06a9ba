"""The folder of published files: all or none, and never over somebody else's."""

import json
import os

import pytest

from loopwright.workshop.files import CannotSave
from loopwright.workshop.publish.folder import LIST, put


def test_files_and_their_list_are_written(tmp_path):
    put(tmp_path / "new", {"a.txt": b"one", "b.txt": b"two"})
    assert (tmp_path / "new" / "a.txt").read_bytes() == b"one"
    assert set(json.loads((tmp_path / "new" / LIST).read_text())["files"]) == {"a.txt", "b.txt"}
    assert sorted(p.name for p in (tmp_path / "new").iterdir()) == ["a.txt", "b.txt", LIST]


def test_what_was_published_before_is_replaced(tmp_path):
    put(tmp_path, {"a.txt": b"one"})
    put(tmp_path, {"a.txt": b"two"})
    assert (tmp_path / "a.txt").read_bytes() == b"two"


def test_somebody_elses_file_stays(tmp_path):
    (tmp_path / "a.txt").write_bytes(b"hers")
    with pytest.raises(CannotSave, match="was not published from here"):
        put(tmp_path, {"b.txt": b"two", "a.txt": b"one"})
    assert (tmp_path / "a.txt").read_bytes() == b"hers"
    assert not (tmp_path / "b.txt").exists()


def test_a_file_that_was_changed_since_stays(tmp_path):
    put(tmp_path, {"a.txt": b"one"})
    (tmp_path / "a.txt").write_bytes(b"one, and her notes")
    with pytest.raises(CannotSave, match="changed since"):
        put(tmp_path, {"a.txt": b"two"})
    assert (tmp_path / "a.txt").read_bytes() == b"one, and her notes"
    put(tmp_path, {"a.txt": b"two"}, replace=True)
    assert (tmp_path / "a.txt").read_bytes() == b"two"


def test_the_same_content_is_no_quarrel(tmp_path):
    (tmp_path / "a.txt").write_bytes(b"one")
    put(tmp_path, {"a.txt": b"one"})
    assert (tmp_path / "a.txt").read_bytes() == b"one"


def test_a_folder_by_the_name_of_a_file(tmp_path):
    (tmp_path / "a.txt").mkdir()
    with pytest.raises(CannotSave, match="is a folder"):
        put(tmp_path, {"a.txt": b"one"})


def test_a_file_by_the_name_of_the_folder(tmp_path):
    (tmp_path / "out").write_bytes(b"")
    with pytest.raises(CannotSave, match="is a file"):
        put(tmp_path / "out", {"a.txt": b"one"})


def test_a_full_disk_leaves_nothing_half_written(tmp_path, monkeypatch):
    put(tmp_path, {"a.txt": b"one"})
    real, calls = os.fsync, []

    def full(handle):
        calls.append(handle)
        if len(calls) == 2:
            raise OSError(28, "No space left on device")
        return real(handle)

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(CannotSave, match=r"b\.txt was not written, the disk is full"):
        put(tmp_path, {"a.txt": b"two", "b.txt": b"three"})
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.txt", LIST]
    assert (tmp_path / "a.txt").read_bytes() == b"one"
