"""Versions kept beside a design: named by version and date, never written over, the same text once."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from loopwright.workshop.compare.kept import keep_version, kept_versions, last_kept
from loopwright.workshop.files import CannotOpen, CannotSave
from tests.compare.texts import CUFF, edited


@pytest.fixture
def cuff(tmp_path):
    path = tmp_path / "cuff.txt"
    path.write_text(CUFF, encoding="utf-8")
    return path


def names(design: Path) -> list[str]:
    return [p.name for p in kept_versions(design)]


def test_the_name_tells_version_and_date(cuff):
    kept = keep_version(cuff)
    assert kept == cuff.parent / "versions" / "cuff--v1.2--on-2026-09-01.txt"
    assert kept.read_text(encoding="utf-8") == CUFF


def test_the_same_text_is_kept_once_and_another_of_the_same_version_beside_it(cuff):
    first = keep_version(cuff)
    assert keep_version(cuff) == first
    cuff.write_text(edited("hdc in each", "dc in each"), encoding="utf-8")
    assert keep_version(cuff).name == "cuff--v1.2--on-2026-09-01--2.txt"
    assert first.read_text(encoding="utf-8") == CUFF
    assert len(names(cuff)) == 2


def test_versions_stand_in_the_order_of_their_numbers(cuff):
    for version in ("1.10 (2026-01-05)", "1.9 (2026-03-01)", "1.2", "2"):
        cuff.write_text(edited("1.2 (2026-09-01)", version), encoding="utf-8")
        keep_version(cuff)
    assert names(cuff) == ["cuff--v1.2.txt", "cuff--v1.9--on-2026-03-01.txt", "cuff--v1.10--on-2026-01-05.txt", "cuff--v2.txt"]


def test_the_last_kept_is_the_newest_that_is_not_the_design_itself(cuff):
    assert last_kept(cuff) is None
    first = keep_version(cuff)
    assert last_kept(cuff) == first
    cuff.write_text(edited("1.2 (2026-09-01)", "1.3"), encoding="utf-8")
    assert last_kept(cuff) == first
    keep_version(cuff)
    assert last_kept(cuff) == first


def test_a_design_without_a_version_and_names_that_no_file_can_have(cuff):
    cuff.write_text(edited("Version: 1.2 (2026-09-01)\n", ""), encoding="utf-8")
    assert keep_version(cuff).name == "cuff--unnumbered.txt"
    cuff.write_text(edited("1.2 (2026-09-01)", "../../etc/1.5: “spring” \x07"), encoding="utf-8")
    kept = keep_version(cuff)
    assert kept.parent == cuff.parent / "versions"
    assert names(cuff)[-1] == kept.name


def test_other_designs_and_other_files_in_the_folder_are_left_alone(cuff):
    keep_version(cuff)
    folder = cuff.parent / "versions"
    for name in ("cuff-long--v1.txt", "cuff--old.txt", "notes.txt"):
        (folder / name).write_text("x", encoding="utf-8")
    (folder / "cuff--v3.txt").write_text("", encoding="utf-8")
    assert names(cuff) == ["cuff--v1.2--on-2026-09-01.txt"]


def test_nothing_is_written_over_that_somebody_else_put_there(cuff):
    folder = cuff.parent / "versions"
    folder.mkdir()
    (folder / "cuff--v1.2--on-2026-09-01.txt").write_text("hers", encoding="utf-8")
    assert keep_version(cuff).name == "cuff--v1.2--on-2026-09-01--2.txt"
    assert (folder / "cuff--v1.2--on-2026-09-01.txt").read_text(encoding="utf-8") == "hers"


def test_what_cannot_be_kept_is_said(cuff, tmp_path):
    with pytest.raises(CannotOpen, match="there is no file"):
        keep_version(tmp_path / "none.txt")
    (tmp_path / "versions").write_text("a file", encoding="utf-8")
    with pytest.raises((CannotSave, CannotOpen), match="versions"):
        keep_version(cuff)


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write anywhere")
def test_a_folder_that_may_not_be_written(cuff):
    cuff.parent.chmod(0o500)
    try:
        with pytest.raises(CannotSave):
            keep_version(cuff)
    finally:
        cuff.parent.chmod(0o700)
