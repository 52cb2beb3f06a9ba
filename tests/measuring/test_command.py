"""`loopwright measure`: what it prints, its JSON, and what it says when something cannot be measured."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

DESIGNS = Path(__file__).parents[2] / "designs"
DISC = "Gauge: 20 sc and 22 rows = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"


def run(*words: str, text: str | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "loopwright", "measure", *words], input=text, capture_output=True, text=True, check=False, env={**os.environ, "COLUMNS": "120"},
    )


def data(*words: str, text: str | None = None) -> dict[str, Any]:
    done = run(*words, "--json", text=text)
    assert done.returncode in (0, 1), done.stderr
    found = json.loads(done.stdout)
    assert isinstance(found, dict)
    return found


def test_a_pasted_disc_from_standard_input():
    found = data("-", text=DISC)
    size = found["sizes"][0]
    assert (found["version"], size["size"]) == (1, "one size")
    across = next(d for d in size["dimensions"] if d["name"] == "across")
    assert across["value_mm"] == pytest.approx(2 * 3 * 100 / 22, abs=0.01)
    assert across["low_mm"] < across["value_mm"] < across["high_mm"]
    assert size["stitches"] == {"sc": 36}
    assert size["shape"] is None


def test_every_size_of_a_design_in_its_order():
    found = data(str(DESIGNS / "samphire-beanie.txt"))
    around = [next(d["value_mm"] for d in s["dimensions"] if d["section"] == "Body" and d["name"] == "around") for s in found["sizes"]]
    assert len(around) == 10
    assert around == sorted(around)
    assert all(s["yarn"][0]["low_m"] < s["yarn"][0]["length_m"] < s["yarn"][0]["high_m"] for s in found["sizes"])
    assert all(s["time_low_min"] <= s["time_min"] <= s["time_high_min"] for s in found["sizes"])


def test_some_sizes_at_another_gauge():
    found = data(str(DESIGNS / "samphire-beanie.txt"), "--size", "child", "--gauge", "14 hdc and 10 rows = 10 cm")
    assert [s["size"] for s in found["sizes"]] == ["child"]
    assert found["gauge"]["stitch_mm"] == pytest.approx(100 / 14, abs=0.01)


def test_without_a_gauge_it_is_guessed_and_said():
    found = data("-", text="Yarn: worsted, wool\nHook: 5 mm\n\n" + DISC.split("\n\n", 1)[1])
    assert found["gauge"]["guessed"] is True
    assert found["notes"]


def test_with_nothing_to_guess_from_only_stitches_are_counted():
    found = data("-", text=DISC.split("\n\n", 1)[1])
    assert found["gauge"] is None
    assert found["sizes"][0]["dimensions"] == []
    assert found["sizes"][0]["stitches"] == {"sc": 36}
    assert any("no gauge" in note for note in found["notes"])


def test_the_shape_is_relaxed_and_written(tmp_path):
    found = data("-", "--shape", str(tmp_path), text=DISC)
    shape = found["sizes"][0]["shape"]
    assert shape["width_mm"] == pytest.approx(2 * 3 * 100 / 22, rel=0.1)
    assert shape["settled"] is True
    (written,) = found["files"]
    assert Path(written["path"]).read_bytes()[:4] == b"glTF"


def test_the_text_is_a_table():
    done = run(str(DESIGNS / "avocet-bonnet.txt"), "--size", "3 months")
    assert done.returncode == 0
    assert "Avocet Bonnet" in done.stdout
    assert "across" in done.stdout
    assert "Yarn, m" in done.stdout


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "measure what?"),
        (("no-such-file.txt",), "there is no file"),
        (("-", "--gauge", "0 sts = 10 cm"), "--gauge"),
        (("-", "--shape", "--budget", "-1"), "--budget"),
    ],
)
def test_what_cannot_be_measured_is_said_in_one_sentence(words, told, tmp_path):
    done = run(*words, text=DISC)
    assert done.returncode == 2
    assert told in done.stderr
    assert "Traceback" not in done.stderr


def test_start_up_without_a_shape_loads_no_arrays():
    code = "import sys, loopwright.cli.commands.measure, loopwright.workshop.measure_json; sys.exit('numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


@pytest.mark.parametrize(("rounds", "unit"), [(1, "Time, minutes"), (60, "Time, hours")])
def test_time_is_told_in_a_unit_that_says_something(rounds, unit):
    done = run("-", text=f"Gauge: 20 sc and 22 rows = 10 cm\n\nRnd 1: 60 sc in magic ring. (60)\nRnds 2-{rounds + 1}: Sc in each st around. (60)\n")
    assert unit in done.stdout
