"""`loopwright publish` as a user runs it: what it writes, what it refuses, and in which words."""

import hashlib
import json
from pathlib import Path

import pytest

from loopwright.cli.main import main

HAT = """Tern Cap
A small cap of our own.

Sizes: child, adult
Worked in: child
Version: 1.1 (2026-11-20)
Gauge: 16 sc and 18 rnds = 10 cm, 5 mm hook
Yarn: worsted, wool, 100 g = 200 m

Crown
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)

Body
Rnds 4-8 (10): Sc in each st around. (18)
"""


@pytest.fixture
def cap(tmp_path):
    path = tmp_path / "tern-cap.txt"
    path.write_text(HAT, encoding="utf-8")
    return path


def _run(*given):
    return main(["publish", *map(str, given)])


def test_pages_page_book_and_text_are_written(cap, tmp_path, capsys):
    assert _run(cap, "--out", tmp_path / "out") == 0
    written = {p.name for p in (tmp_path / "out").iterdir()}
    assert written == {"tern-cap-a4.pdf", "tern-cap.html", "tern-cap.epub", "tern-cap.txt", "published.json"}
    assert "tern-cap-a4.pdf" in capsys.readouterr().out


def test_the_list_of_files_as_data(cap, tmp_path, capsys):
    assert _run(cap, "--out", tmp_path / "out", "--format", "text", "--json") == 0
    told = json.loads(capsys.readouterr().out)
    assert told["version"] == 1
    assert [(Path(f["path"]).name, f["what"], f["size"]) for f in told["files"]] == [("tern-cap.txt", "text", None)]


def test_the_same_bytes_twice(cap, tmp_path):
    sums = []
    for folder in ("one", "two"):
        assert _run(cap, "--out", tmp_path / folder, "--each-size", "--format", "pdf", "--format", "epub", "--format", "html") == 0
        sums.append({p.name: hashlib.sha256(p.read_bytes()).hexdigest() for p in (tmp_path / folder).iterdir()})
    assert sums[0] == sums[1]
    assert len(sums[0]) == 7


def test_a_faulty_design_is_refused_and_a_draft_says_so(cap, tmp_path, capsys):
    cap.write_text(HAT.replace("(12)", "(13)").replace("2 sc in each st around. (13)", "2 sc in each of next 9 sts. (18)"), encoding="utf-8")
    assert _run(cap, "--out", tmp_path / "out", "--format", "text") == 1
    assert not (tmp_path / "out").exists()
    assert "--draft" in capsys.readouterr().err
    assert _run(cap, "--out", tmp_path / "out", "--format", "text", "--draft") == 1
    assert "raft" in (tmp_path / "out" / "tern-cap.txt").read_text(encoding="utf-8")


def test_a_file_of_somebody_elses_is_not_replaced(cap, tmp_path, capsys):
    out = tmp_path / "out"
    out.mkdir()
    (out / "tern-cap.txt").write_text("hers", encoding="utf-8")
    assert _run(cap, "--out", out, "--format", "text", "--format", "markdown") == 2
    assert "--replace" in capsys.readouterr().err
    assert [p.name for p in out.iterdir()] == ["tern-cap.txt"]
    assert _run(cap, "--out", out, "--format", "text", "--replace") == 0


def test_a_size_and_a_language_that_there_are_not(cap, tmp_path, capsys):
    assert _run(cap, "--out", tmp_path / "out", "--one-size", "teen") == 2
    assert "child, adult" in capsys.readouterr().err
    assert _run(cap, "--out", tmp_path / "out", "--language", "xx") == 2
    assert "the languages are da, de, en" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_text_without_rows(tmp_path, capsys):
    path = tmp_path / "letter.txt"
    path.write_text("Dear maker,\nthank you for your letter.\n", encoding="utf-8")
    assert _run(path, "--out", tmp_path / "out") == 2
    assert "no row" in capsys.readouterr().err


def test_a_letter_that_no_font_holds_is_named(cap, tmp_path, capsys):
    cap.write_text(HAT.replace("A small cap", "A small 帽 cap"), encoding="utf-8")
    assert _run(cap, "--out", tmp_path / "out", "--format", "pdf") == 2
    said = capsys.readouterr().err
    assert "帽" in said
    assert not (tmp_path / "out").exists()


def test_photographs_are_taken_in_and_missing_ones_told(cap, tmp_path, capsys):
    from PIL import Image

    Image.new("RGB", (5000, 3000), "#7a9a68").save(tmp_path / "cap.jpg")
    (tmp_path / "broken.jpg").write_bytes(b"not a picture")
    cap.write_text(
        HAT.replace("Yarn:", "Photograph: cap.jpg (cover): the cap on a post\nPhotograph: gone.jpg (Body): the body\nPhotograph: ../x.jpg\n"
                    "Photograph: broken.jpg\nYarn:"), encoding="utf-8")
    assert _run(cap, "--out", tmp_path / "out", "--format", "html") == 0
    told = capsys.readouterr().out
    page = (tmp_path / "out" / "tern-cap.html").read_text(encoding="utf-8")
    assert 'alt="the cap on a post"' in page
    for name in ("gone.jpg", "../x.jpg", "broken.jpg"):
        assert name in told
    assert len(page) < 1_500_000


def test_versions_are_kept_and_changes_told(cap, tmp_path):
    assert _run(cap, "--out", tmp_path / "out", "--format", "text") == 0
    assert [p.name for p in (tmp_path / "versions").iterdir()] == ["tern-cap--v1.1--on-2026-11-20.txt"]
    cap.write_text(HAT.replace("1.1 (2026-11-20)", "1.2 (2026-11-27)").replace("4-8 (10)", "4-9 (10)"), encoding="utf-8")
    assert _run(cap, "--out", tmp_path / "out", "--format", "text") == 0
    text = (tmp_path / "out" / "tern-cap.txt").read_text(encoding="utf-8")
    assert "Changes since version 1.1" in text
    assert len(list((tmp_path / "versions").iterdir())) == 2


def test_a_package_holds_the_kit(cap, tmp_path):
    assert _run(cap, "--out", tmp_path / "out", "--package") == 0
    names = {p.name for p in (tmp_path / "out").iterdir()}
    assert {"tern-cap-letter.pdf", "tern-cap-child-a4.pdf", "tern-cap-large-print-a4.pdf", "tern-cap-uk-a4.pdf", "tern-cap-shop-page.txt",
            "tern-cap-film-description.txt", "tern-cap-cover.png"} <= names


def test_data_has_its_pictures_beside_it(cap, tmp_path):
    assert _run(cap, "--out", tmp_path / "out", "--format", "data") == 0
    text = (tmp_path / "out" / "tern-cap.json").read_text(encoding="utf-8")
    pictures = list((tmp_path / "out" / "tern-cap-pictures").iterdir())
    assert pictures
    assert all(p.name in text for p in pictures)
