"""`grade --language`: the text, what is to be checked, the table to translate by; and the examples of docs/languages.md."""

import json
import re
import shutil
from pathlib import Path

import pytest

from loopwright.cli.main import main
from loopwright.terms.languages import LANGUAGES, language
from loopwright.workshop.designs import find

DOCS = (Path(__file__).parents[3] / "docs" / "languages.md").read_text(encoding="utf-8")


@pytest.fixture
def beanie(tmp_path):
    path = tmp_path / "samphire-beanie.txt"
    path.write_text(find("samphire-beanie").text, encoding="utf-8")
    return path


def test_the_examples_of_the_page_come_out(beanie, capsys):
    assert main(["grade", str(beanie), "--language", "de", "--size", "child"]) == 0
    text = capsys.readouterr().out
    block = next(b for b in re.findall(r"```\n(.*?)```", DOCS, re.DOTALL) if "Größe: Kind" in b)
    wanted = [line for line in block.split("\n")[1:] if line not in ("", "…")]
    assert len(wanted) > 8
    assert [line for line in wanted if line not in text.split("\n")] == []


@pytest.mark.parametrize(("name", "row"), re.findall(r"^\| (\w+) \| `(.*)` \|$", DOCS, re.MULTILINE))
def test_the_row_in_other_languages_comes_out(name, row, beanie, capsys):
    code = next(c for c in LANGUAGES if language(c).name.startswith(name))
    assert main(["grade", str(beanie), "--language", code, "--size", "child"]) == 0
    assert row in capsys.readouterr().out.replace("\u00a0", " ")


@pytest.mark.parametrize("code", LANGUAGES)
def test_the_figures_of_the_page_are_those_of_the_tables(code):
    table = language(code)
    sure = [w.sure for words in (table.stitches, table.nouns, table.words) for w in words.values()]
    name = table.name.split(" ")[0]
    assert f"| {name} | {sure.count('seen')} | {sure.count('custom')} | {sure.count('memory')} |" in DOCS


def test_json_says_what_stays_and_what_is_to_be_checked(beanie, capsys):
    main(["grade", str(beanie), "--language", "de", "--json"])
    told = json.loads(capsys.readouterr().out)["language"]
    assert told["code"] == "de"
    assert {"key": "fpdc", "short": "RStb v", "long": "Reliefstäbchen von vorne", "known_from": "custom"} in told["unchecked"]
    assert [u["where"] for u in told["untranslated"]] == ["Band", "", "", ""]
    main(["grade", str(beanie), "--json"])
    assert "language" not in json.loads(capsys.readouterr().out)


def test_a_table_is_made_filled_in_and_used(beanie, tmp_path, capsys):
    table = tmp_path / "beanie.de.tsv"
    ask = ["grade", str(beanie), "--language", "de", "--size", "child", "--translations", str(table)]
    assert main(ask) == 0
    assert "beanie.de.tsv lists what there is to translate" in capsys.readouterr().err
    lines = table.read_text(encoding="utf-8").split("\n")
    lines[1] += "Den Ring vorher fest zuziehen."
    table.write_text("\n".join(lines), encoding="utf-8")
    assert main(ask) == 0
    text = capsys.readouterr().out
    assert "Faden abschneiden und die Enden vernähen. Den Ring vorher fest zuziehen." in text
    assert "3 of the designer's own phrases are not in German yet" in text
    kept = table.read_text(encoding="utf-8")
    assert kept == "\n".join(lines)  # a table that is there is never written over


def test_a_file_that_is_no_table_is_refused_in_words(beanie, tmp_path, capsys):
    other = tmp_path / "other.tsv"
    shutil.copy(beanie, other)
    assert main(["grade", str(beanie), "--language", "de", "--translations", str(other)]) == 2
    assert "other.tsv: line 1: this is no table of translations" in capsys.readouterr().err


def test_an_unknown_language_is_a_usage_error(beanie, capsys):
    with pytest.raises(SystemExit) as ended:
        main(["grade", str(beanie), "--language", "tlh"])
    assert ended.value.code == 2
    assert "choose from" in capsys.readouterr().err
