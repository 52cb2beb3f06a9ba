"""`new`, `demo` and `completion` as a user calls them."""

import json
import shutil
import subprocess

import pytest

from loopwright.cli.completion import SHELLS, script
from loopwright.cli.main import main, parser
from loopwright.workshop.designs import find, shipped


@pytest.fixture
def hat(tmp_path):
    shipped_hat = find("samphire-as-worked")
    assert shipped_hat is not None
    path = tmp_path / "hat.txt"
    path.write_text(shipped_hat.text, encoding="utf-8")
    return path


def test_new_lists_starting_points(capsys):
    assert main(["new"]) == 0
    out = capsys.readouterr().out
    assert all(d.name in out for d in shipped() if not d.as_worked)
    assert main(["new", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["starting_points"]) == 13


def test_new_writes_a_starting_point_but_not_over_a_file(tmp_path, capsys):
    path = tmp_path / "deep" / "mine.txt"
    assert main(["new", "avocet", "-o", str(path)]) == 0
    assert path.read_text(encoding="utf-8").startswith("Avocet Bonnet")
    path.write_text("hers", encoding="utf-8")
    assert main(["new", "avocet", "-o", str(path)]) == 2
    assert "--force" in capsys.readouterr().err
    assert path.read_text(encoding="utf-8") == "hers"
    assert main(["new", "avocet", "-o", str(path), "--force"]) == 0
    assert path.read_text(encoding="utf-8").startswith("Avocet Bonnet")


def test_a_starting_point_that_is_not_there(capsys):
    assert main(["new", "heron"]) == 2
    assert "loopwright new" in capsys.readouterr().err


def test_new_from_a_pattern(hat, tmp_path, capsys):
    out = tmp_path / "design.txt"
    assert main(["new", "--from", str(hat), "--worked-in", "child", "--sizes", "newborn,child,adult", "-o", str(out)]) == 0
    said = capsys.readouterr().out
    assert "because" in said
    assert "written:" in said
    text = out.read_text(encoding="utf-8")
    assert "Sizes: newborn, child, adult\nWorked in: child\n" in text
    assert main(["grade", str(out), "--size", "child"]) == 0
    assert "80 hdc" in capsys.readouterr().out


def test_new_from_to_standard_output_keeps_the_evidence_apart(hat, capsys):
    assert main(["new", "--from", str(hat)]) == 0
    out, err = capsys.readouterr()
    assert out.startswith("Samphire Beanie\n")
    assert "because" in err


def test_new_from_as_data(hat, capsys):
    assert main(["new", "--from", str(hat), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["version"] == 1
    assert data["blanks"][0]["reasons"][0]["sentence"].startswith("rnds until crown measures")


@pytest.mark.parametrize(
    ("extra", "said"),
    [(["--gauge", "0 sc = 10 cm"], "above zero"), (["--gauge", "soft"], "17 hdc"), (["bonnet"], "not both")],
)
def test_what_cannot_be_used_is_said(hat, capsys, extra, said):
    assert main(["new", "--from", str(hat), *extra]) == 2
    assert said in capsys.readouterr().err.replace("more than zero", "above zero")


def test_a_pattern_without_gauge_asks_for_one(tmp_path, capsys):
    path = tmp_path / "p.txt"
    path.write_text("Rnd 1: 6 sc in magic ring. (6)\n", encoding="utf-8")
    assert main(["new", "--from", str(path), "--worked-in", "child"]) == 2
    assert "--gauge" in capsys.readouterr().err


def test_demo_writes_every_size_and_finds_no_fault(tmp_path, capsys):
    assert main(["demo", "--out", str(tmp_path / "out")]) == 0
    out = capsys.readouterr().out
    assert "12 of 12 printed counts agree" in out
    assert out.count("errors in all sizes: 0") == 2
    assert len(list((tmp_path / "out").glob("*.txt"))) == 23
    assert main(["check", *map(str, sorted((tmp_path / "out").glob("*child*.txt")))]) == 0


@pytest.mark.parametrize("shell", SHELLS)
def test_completion_knows_every_verb_and_option(shell, tmp_path):
    text = script(parser(), shell)
    for verb in ("check", "grade", "new", "demo", "completion"):
        assert verb in text
    assert "worked-in" in text
    program = shutil.which(shell)
    if program:
        path = tmp_path / "script"
        path.write_text(text, encoding="utf-8")
        assert subprocess.run([program, "-n", str(path)], check=False).returncode == 0


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
@pytest.mark.parametrize(
    ("words", "found"),
    [(["gr"], "grade"), (["check", "--terms", ""], "us uk old de fr es"), (["new", "--fr"], "--from"), (["completion", ""], "bash zsh fish")],
)
def test_bash_completes(words, found, tmp_path):
    path = tmp_path / "script"
    path.write_text(script(parser(), "bash"), encoding="utf-8")
    line = " ".join(f"'{w}'" for w in ["loopwright", *words])
    ask = f"source {path}; COMP_WORDS=({line}); COMP_CWORD={len(words)}; _loopwright; echo ${{COMPREPLY[@]}}"
    done = subprocess.run(["bash", "-c", ask], capture_output=True, text=True, check=True)  # noqa: S607 (whichever bash there is)
    assert done.stdout.strip() == found
