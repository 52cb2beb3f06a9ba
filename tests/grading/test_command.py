"""`loopwright grade` as a user calls it: the contract of its JSON, its table, its exit codes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from loopwright.cli.main import main
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGNS = Path(__file__).parents[2] / "designs"
BEANIE = str(DESIGNS / "samphire-beanie.txt")


def call(capsys: pytest.CaptureFixture[str], *args: str) -> tuple[int, str, str]:
    code = main(["grade", *args])
    said = capsys.readouterr()
    return code, said.out, said.err


def data(capsys: pytest.CaptureFixture[str], *args: str) -> dict[str, Any]:
    code, out, _ = call(capsys, *args, "--json")
    assert code == 0
    found: dict[str, Any] = json.loads(out)
    return found


def test_the_json_keeps_its_contract(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, BEANIE)
    assert (found["version"], found["title"]) == (1, "Samphire Beanie")
    assert [s["size"] for s in found["sizes"]][:2] == ["preemie", "newborn"]
    assert len(found["sizes"]) == 10
    child = found["sizes"][6]
    assert child["blanks"] == {"crown rounds": 9, "body sts": 80, "body rounds": 12, "band rounds": 4}
    assert {"name", "target_mm", "achieved_mm", "error_mm", "step_mm", "reason", "neighbours"} <= set(child["dimensions"][0])
    body = next(d for d in child["dimensions"] if d["blank"] == "body sts")
    assert body["error_mm"] == pytest.approx(body["achieved_mm"] - body["target_mm"], abs=0.02)
    assert body["step_mm"] == pytest.approx(4 * 100 / 17, abs=0.01)
    assert [n["value"] for n in body["neighbours"]] == [76, 84]
    assert child["stitches"] == sum(r["counts"][0] for r in child["rows"])
    assert all(len(r["counts"]) == 1 for r in child["rows"])
    assert {r["line"] for r in child["rows"]} <= set(range(1, 40))


@pytest.mark.parametrize("terms", [None, "us", "uk"])
def test_the_texts_read_back_as_they_were_graded(capsys: pytest.CaptureFixture[str], terms: str | None) -> None:
    found = data(capsys, BEANIE, *(("--terms", terms) if terms else ()))
    together = work(read(Source.of(found["text"])))
    for i, size in enumerate(found["sizes"]):
        wanted = [r["counts"][0] for r in size["rows"]]
        alone = work(read(Source.of(size["text"])))
        assert [r.counts[0] for r in alone.rows] == wanted
        assert [r.counts[i] for r in together.rows if r.counts[i] is not None] == wanted


def test_sizes_and_gauge(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, BEANIE, "--size", "Teen", "--size", "newborn", "--gauge", "14 hdc and 11 rnds = 4 in")
    assert [s["size"] for s in found["sizes"]] == ["teen", "newborn"]
    assert "Gauge: 14 hdc and 11 rnds = 4 in" in found["text"]
    assert "Sizes: teen, newborn" in found["text"]


def test_the_table(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = call(capsys, BEANIE, "--size", "child")
    assert code == 0
    lines = out.splitlines()
    assert lines[0].startswith("Samphire Beanie: 1 size")
    assert any(line.split()[:5] == ["child", "9", "13.5", "13.8", "+0.3"] for line in lines)
    assert "Rnds 4-9: Continue as established" in out
    assert all(len(line) <= 112 for line in lines[: lines.index("Samphire Beanie")])


@pytest.mark.parametrize(("args", "code", "words"), [
    ((BEANIE, "--size", "giant"), 1, "G020"), ((BEANIE, "--gauge", "0 hdc and 3 rnds = 10 cm"), 2, "more than zero"),
    ((BEANIE, "--gauge", ""), 2, "cannot be read"), (("nowhere.txt",), 2, "nowhere.txt"), ((str(DESIGNS),), 2, "folder"),
])
def test_exit_codes(capsys: pytest.CaptureFixture[str], args: tuple[str, ...], code: int, words: str) -> None:
    got, _, err = call(capsys, *args)
    assert got == code
    assert words in err


def test_a_pattern_without_blanks_is_written_as_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, str(DESIGNS / "samphire-as-worked.txt"))
    assert found["sizes"][0]["blanks"] == {}
    assert found["sizes"][0]["stitches"] == 440 + 80 * 16


@pytest.mark.parametrize("text", ["", "\n\n", "{", "}{", "{a}", "Fit\n{a}: twice {a}", "Sizes: \nFit\n{}: 3", "Gauge: {a}\n{a}: sts to measure 1 cm"])
def test_odd_texts_do_no_harm(capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str) -> None:
    file = tmp_path / "odd.txt"
    file.write_text(text, encoding="utf-8")
    code, out, _ = call(capsys, str(file), "--json")
    assert code in (0, 1)
    assert json.loads(out)["version"] == 1


def test_her_own_words(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, str(DESIGNS / "avocet-bonnet.txt"), "--own-words", "--gauge", "20 htr and 16 rnds = 10 cm")
    assert "join with ss to top of 2-ch. (8 htr)" in found["text"]
    assert "Tension: 20 htr and 16 rnds = 10 cm" in found["text"]
    assert "{" not in found["text"]
    assert "Fit" not in found["text"].split()
