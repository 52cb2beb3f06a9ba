"""`loopwright publish` as a user runs it: what it writes, what it refuses, and in which words."""

import csv
import hashlib
import io
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
    for name in ("gone.jpg", "../x.jpg"):
        assert f"photograph {name}: there is no such file" in told
    assert "photograph broken.jpg: it is damaged" in told
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


def test_a_table_of_translations_that_came_back_is_in_every_part(cap, tmp_path, capsys):
    cap.write_text(HAT.replace("Yarn:", "Care: Wash it by hand.\nTerms of use: It may be sold.\nHelp: Ask us.\nYarn:"), encoding="utf-8")
    table = tmp_path / "cap.de.tsv"
    assert main(["grade", str(cap), "--language", "de", "--translations", str(table)]) == 0
    rows = list(csv.reader(io.StringIO(table.read_text(encoding="utf-8")), dialect="excel-tab"))
    own = [r[2] for r in rows[1:] if r[2][:1].isupper()]
    assert {"Wash it by hand.", "It may be sold."} <= set(own)
    with table.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out, dialect="excel-tab").writerows([rows[0], *([*r[:4], f"Deutsch {n}."] for n, r in enumerate(rows[1:], 1))])
    assert _run(cap, "--out", tmp_path / "out", "--format", "text", "--language", "de", "--translations", table) == 0
    text = " ".join((tmp_path / "out" / "tern-cap-de.txt").read_text(encoding="utf-8").split())
    assert "[en:" not in text
    for n, row in enumerate(rows[1:], 1):
        if row[2] in own:
            assert f"Deutsch {n}." in text, row[2]
    assert "native maker" in capsys.readouterr().out


@pytest.mark.parametrize(("language", "table", "said"), [
    ("fr", "id\twhere\ttext\tnumbers\tde\n", "is a table for 'de'"), ("de", "something else\n", "no table of translations"), ("de", None, "there is no"),
])
def test_a_table_of_translations_that_does_not_fit_is_told(cap, tmp_path, capsys, language, table, said):
    path = tmp_path / "cap.tsv"
    if table is not None:
        path.write_text(table, encoding="utf-8")
    assert _run(cap, "--out", tmp_path / "out", "--language", language, "--translations", path) == 2
    assert said in capsys.readouterr().err
    assert not (tmp_path / "out").exists()
