"""`measure` and `draw` stopped, without room, without a folder, without a pattern: one sentence, the exit code, nothing half-written."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from loopwright.cli.main import main

DESIGNS = Path(__file__).parents[2] / "designs"
HAT, SHAWL = str(DESIGNS / "samphire-beanie.txt"), str(DESIGNS / "thrift-shawl.txt")
MEASURE, DRAW = ("measure", HAT, "--size", "child", "--shape"), ("draw", HAT, "--size", "child", "--what", "schematic", "--out")


def ends(capsys, *words: str) -> tuple[int, str]:
    code = main(list(words))
    return code, capsys.readouterr().err


@pytest.mark.parametrize("words", [MEASURE, DRAW])
@pytest.mark.parametrize("budget", ["nan", "inf", "0", "-1", "1e9"])
def test_a_budget_that_is_no_time(words, budget, tmp_path, capsys):
    code, err = ends(capsys, *words, str(tmp_path / "out"), "--budget", budget)
    assert (code, err.count("\n")) == (2, 1)
    assert "--budget is a time in seconds" in err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("width", ["nan", "0", "59", "1001", "inf"])
def test_a_width_that_no_schematic_has(width, tmp_path, capsys):
    code, err = ends(capsys, *DRAW, str(tmp_path / "out"), "--width", width)
    assert code == 2
    assert "--width is of a schematic in millimetres, 60 to 1000" in err


@pytest.mark.parametrize("words", [MEASURE, DRAW])
@pytest.mark.parametrize("gauge", ["nan sc = 10 cm", "inf sts and inf rows = 10 cm", "0 sts = 10 cm", "1e999 sc = 10 cm", ""])
def test_a_gauge_that_is_none(words, gauge, tmp_path, capsys):
    code, err = ends(capsys, *words, str(tmp_path / "out"), "--gauge", gauge)
    assert (code, err.count("\n")) == (2, 1)
    assert err.startswith("loopwright: --gauge: ")


@pytest.mark.parametrize("words", [MEASURE, DRAW])
def test_a_folder_that_is_a_file_is_said_before_there_is_work(words, tmp_path, capsys, monkeypatch):
    def works(*_args: object) -> None:
        raise AssertionError("it was relaxed or drawn first")

    monkeypatch.setattr("loopwright.workshop.shapes.with_shapes", works)
    monkeypatch.setattr("loopwright.workshop.draw.schematics", works)
    (tmp_path / "out").write_text("mine", encoding="utf-8")
    for folder in (tmp_path / "out", tmp_path / "out" / "deep"):
        code, err = ends(capsys, *words, str(folder))
        assert code == 2
        assert "is a file, not a folder" in err
    assert (tmp_path / "out").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("words", [MEASURE, DRAW])
def test_a_folder_that_may_not_be_written(words, tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(os, "access", lambda *_args: False)
    code, err = ends(capsys, *words, str(tmp_path / "out"))
    assert (code, err.count("\n")) == (2, 1)
    assert "may not be written: name another output folder" in err
    assert list((tmp_path / "out").iterdir()) == []


def test_a_file_of_the_same_name_is_replaced_and_a_folder_is_not(tmp_path, capsys):
    name = "samphire-beanie-schematic-1.svg"
    (tmp_path / name).write_text("old", encoding="utf-8")
    assert main([*DRAW, str(tmp_path)]) == 0
    assert (tmp_path / name).read_text(encoding="utf-8").startswith("<svg")
    (tmp_path / name).unlink()
    (tmp_path / name).mkdir()
    code, err = ends(capsys, *DRAW, str(tmp_path))
    assert code == 2
    assert "is a folder" in err
    assert [p.name for p in tmp_path.iterdir()] == [name]


@pytest.mark.parametrize("words", [("measure", "-"), ("draw", "-", "--what", "schematic", "--out", "{}")])
def test_an_empty_standard_input(words, tmp_path):
    command = [sys.executable, "-m", "loopwright", *(w.format(tmp_path / "out") for w in words)]
    done = subprocess.run(command, input="", capture_output=True, text=True, check=False)
    assert (done.returncode, "Traceback" in done.stderr) == (0, False)
    assert "nothing to measure: no row of it could be worked" in done.stdout


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
@pytest.mark.parametrize("words", [("measure", HAT, "--size", "child"), (*DRAW, "{}")])
def test_a_full_disk_behind_standard_output(words, tmp_path):
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        command = [sys.executable, "-m", "loopwright", *(w.format(tmp_path) for w in words)]
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert (done.returncode, "Traceback" in done.stderr) == (2, False)
    assert "the output cannot be written" in done.stderr


@pytest.mark.parametrize("words", [("measure", SHAWL, "--shape", "{}"), ("draw", SHAWL, "--what", "shape", "--out", "{}")])
def test_ctrl_c_in_the_middle_of_relaxing(words, tmp_path):
    out = tmp_path / "out"
    running = subprocess.Popen([sys.executable, "-m", "loopwright", *(w.format(out) for w in words)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    until = time.monotonic() + 60
    while not out.exists() and running.poll() is None and time.monotonic() < until:  # the folder is made before the shape is relaxed
        time.sleep(0.02)
    running.send_signal(signal.SIGINT)
    _, err = running.communicate(timeout=60)
    assert running.returncode == 130
    assert "stopped; every file is as it was, or whole" in err
    assert list(out.iterdir()) == []


def test_hardly_any_time_gives_a_shape_that_says_so(tmp_path, capsys):
    assert main([*MEASURE, str(tmp_path), "--budget", "0.001"]) == 0
    told = capsys.readouterr().out
    assert "child: the shape has not come to rest: time" in told
    assert (tmp_path / "samphire-beanie-child.glb").read_bytes()[:4] == b"glTF"
