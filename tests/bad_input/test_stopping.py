"""Ctrl-C, a closed pipe, a full disk behind standard output, and faults of our own: how the command ends."""

import subprocess
import sys
from pathlib import Path

import pytest

from loopwright.cli import main as entry

DESIGN = Path(__file__).parents[2] / "designs" / "samphire-as-worked.txt"


def ends(monkeypatch, error: BaseException) -> int:
    def fails(*_args: object) -> int:
        raise error

    monkeypatch.setattr(entry, "_run", fails)
    return entry.main(["demo"])


def test_ctrl_c(monkeypatch, capsys):
    assert ends(monkeypatch, KeyboardInterrupt()) == 130
    assert "stopped; every file is as it was, or whole" in capsys.readouterr().err


def test_a_fault_of_our_own_asks_for_a_report(monkeypatch, capsys):
    assert ends(monkeypatch, ZeroDivisionError("x")) == 2
    err = capsys.readouterr().err
    assert "ZeroDivisionError" in err
    assert "please report it" in err.splitlines()[-1]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_disk_behind_standard_output():
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        command = [sys.executable, "-m", "loopwright", "check", str(DESIGN)]
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2
    assert "the output cannot be written (No space left on device): make room" in done.stderr
    assert "Traceback" not in done.stderr


READ_BY_NOBODY = f"""
import os, sys
reader, writer = os.pipe()
os.close(reader)
os.dup2(writer, 1)
sys.argv = ["loopwright", "check", "--json", {str(DESIGN)!r}]
from loopwright.cli.main import main
sys.exit(main())
"""


def test_a_reader_that_goes_away():
    command = [sys.executable, "-c", READ_BY_NOBODY]
    done = subprocess.run(command, stderr=subprocess.PIPE, text=True, check=False)
    assert "Traceback" not in done.stderr
    assert "Exception ignored" not in done.stderr
    assert done.returncode == 0


@pytest.mark.parametrize("words", [[], ["check"], ["knit"], ["check", "--terms", "french", "x"]])
def test_usage_is_shown_for_wrong_arguments(words, capsys):
    with pytest.raises(SystemExit) as stop:
        entry.main(words)
    assert stop.value.code == 2
    assert "usage: loopwright" in capsys.readouterr().err
