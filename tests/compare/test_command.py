"""`loopwright compare`: what it prints, its JSON, its exit codes, and what it says when versions cannot be had."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from tests.compare.texts import CUFF, edited

NEW = edited("Version: 1.2 (2026-09-01)", "Version: 1.3 (2026-11-20)", "hdc in each st around; join. (24 (30, 33, 36) hdc)", "dc in each st around; join. (24 (30, 33, 36) dc)")
GIT = shutil.which("git") or ""
git = pytest.mark.skipif(not GIT, reason="git is not installed")


def run(*words: str, cwd: Path, text: str | None = None, **env: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "loopwright", "compare", *words], cwd=cwd, input=text, capture_output=True, text=True, check=False,
        env={**os.environ, "COLUMNS": "120", **env},
    )


@pytest.fixture
def both(tmp_path):
    (tmp_path / "old.txt").write_text(CUFF, encoding="utf-8")
    (tmp_path / "new.txt").write_text(NEW, encoding="utf-8")
    return tmp_path


def data(done: subprocess.CompletedProcess[str]) -> dict[str, Any]:
    found = json.loads(done.stdout)
    assert isinstance(found, dict)
    return found


def test_json_is_one_object_with_the_change_and_its_lines(both):
    done = run("old.txt", "new.txt", "--json", cwd=both)
    assert (done.returncode, done.stderr) == (0, "")
    found = data(done)
    (change,) = found["changes"]
    assert (found["version"], found["title"], found["sizes"]) == (1, "Sandpiper Cuff", ["baby", "child", "teen", "adult"])
    assert (found["old"]["edition"]["name"], found["new"]["edition"]["date"]) == ("1.2", "2026-11-20")
    assert (change["what"], change["section"], change["label"], change["old_line"], change["new_line"]) == ("stitches", "Cuff", "Rnd 7", 15, 15)
    assert change["erratum"]["where"] == "Cuff, Rnd 7, all sizes"
    assert found["change_list"] == {"heading": "Changes since version 1.2 (2026-09-01)", "lines": ["Cuff, Rnd 7, all sizes: 24 (30, 33, 36) dc, was 24 (30, 33, 36) hdc."]}
    assert any(m["name"] == "depth" and m["now_mm"][0] > m["was_mm"][0] for m in found["measurements"])


def test_text_and_markdown_say_the_same(both):
    text, marked = run("old.txt", "new.txt", cwd=both).stdout, run("old.txt", "new.txt", "--markdown", cwd=both).stdout
    assert text.startswith("Sandpiper Cuff: corrections\n")
    assert marked.startswith("# Sandpiper Cuff: corrections\n")
    assert "**Cuff, Rnd 7, all sizes:** 24 (30, 33, 36) dc, was 24 (30, 33, 36) hdc." in marked
    assert "Cuff, Rnd 7, all sizes: 24 (30, 33, 36) dc, was 24 (30, 33, 36) hdc." in text
    assert "Which makers are concerned: anyone who makes any size and has begun Rnd 7 of “Cuff”." in text


def test_the_same_text_twice_is_no_difference(both):
    done = run("old.txt", "old.txt", cwd=both)
    assert done.returncode == 0
    assert "No difference" in done.stdout


def test_errors_of_either_version_end_in_one(both):
    (both / "bad.txt").write_text(edited("(24 (30, 33, 36) hdc)", "(24 (30, 34, 36) hdc)"), encoding="utf-8")
    assert run("bad.txt", "old.txt", cwd=both).returncode == 1
    done = run("old.txt", "bad.txt", cwd=both)
    assert done.returncode == 1
    assert "the new version has 1 error" in done.stderr
    assert "the printed count is (33 hdc), was" not in done.stdout
    assert "the printed count is (34 hdc), was (33 hdc)" in done.stdout


def test_standard_input_is_the_new_version(both):
    assert data(run("old.txt", "-", "--json", cwd=both, text=NEW))["new"]["file"] == "-"


def test_one_file_alone_is_compared_with_the_version_kept(both):
    (both / "cuff.txt").write_text(CUFF, encoding="utf-8")
    assert "no older version of cuff.txt is kept" in run("cuff.txt", cwd=both).stderr
    kept = run("--keep", "cuff.txt", cwd=both)
    assert (kept.returncode, kept.stdout.strip()) == (0, f"kept: {Path('versions') / 'cuff--v1.2--on-2026-09-01.txt'}")
    (both / "cuff.txt").write_text(NEW, encoding="utf-8")
    assert "Cuff, Rnd 7" in run("cuff.txt", cwd=both).stdout


def test_a_folder_of_old_versions(both):
    (both / "before").mkdir()
    (both / "before" / "new.txt").write_text(CUFF, encoding="utf-8")
    assert "Cuff, Rnd 7" in run("new.txt", "--since", "before", cwd=both).stdout


@git
def test_an_old_version_out_of_a_repository(both):
    who = {"GIT_AUTHOR_NAME": "studio", "GIT_AUTHOR_EMAIL": "studio@example.org", "GIT_COMMITTER_NAME": "studio", "GIT_COMMITTER_EMAIL": "studio@example.org"}
    (both / "cuff.txt").write_text(CUFF, encoding="utf-8")
    for words in (["init", "-q"], ["add", "cuff.txt"], ["commit", "-q", "-m", "first"]):
        subprocess.run([GIT, *words], cwd=both, check=True, env={**os.environ, **who})
    (both / "cuff.txt").write_text(NEW, encoding="utf-8")
    assert "Cuff, Rnd 7" in run("cuff.txt@HEAD", "cuff.txt", cwd=both).stdout
    missing = run("cuff.txt@v9", "cuff.txt", cwd=both)
    assert missing.returncode == 2
    assert "git has no cuff.txt@v9" in missing.stderr


def test_without_git_the_way_out_is_told(both):
    done = run("new.txt@HEAD", "new.txt", cwd=both, PATH=str(both))
    assert done.returncode == 2
    assert "git is not installed" in done.stderr


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("missing.txt", "new.txt"), "there is no file missing.txt"),
        (("old.txt", "new.txt", "old.txt"), "two versions are compared at a time"),
        (("-", "-"), "standard input is one text"),
        (("-",), "standard input has no kept versions"),
        (("new.txt", "--since", "nowhere"), "there is no folder nowhere"),
        (("new.txt", "--since", "."), ""),
        (("old.txt", "new.txt", "--since", "."), "name the old version once"),
        (("new.txt@--output=x", "new.txt"), "no name of a revision"),
        (("nowhere/new.txt@HEAD", "new.txt"), "there is no folder nowhere"),
        (("bytes.txt", "new.txt"), "is not UTF-8 text"),
        ((".", "new.txt"), "is a folder"),
    ],
)
def test_what_cannot_be_compared_is_said_in_one_sentence(both, words, told):
    (both / "bytes.txt").write_bytes(b"Rnd 1: \xff\xfe")
    done = run(*words, cwd=both, text="Rnd 1: 6 sc in magic ring. (6)\n")
    assert done.returncode == (2 if told else 0)
    assert told in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("old", ["", "\n", "no pattern at all", "Rnd 1: 6 sc in magic ring. (6)", "{" * 500, "\x00\x01", "Sizes: ,,,\n\nRnd 1: 6 sc in magic ring."])
@pytest.mark.parametrize("new", ["", CUFF])
def test_odd_texts_are_compared_all_the_same(both, old, new):
    (both / "odd.txt").write_text(old, encoding="utf-8")
    (both / "other.txt").write_text(new, encoding="utf-8")
    done = run("odd.txt", "other.txt", "--json", cwd=both)
    assert done.returncode in (0, 1), done.stderr
    assert data(done)["version"] == 1


def test_start_up_loads_no_arrays():
    code = "import sys, loopwright.cli.commands.compare, loopwright.workshop.compare.as_json; sys.exit('numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
