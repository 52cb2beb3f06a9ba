"""No printed sum is left out, and none is done twice."""

import tomllib
from pathlib import Path

HERE = Path(__file__).parent


def test_every_example_is_done_once():
    examples = tomllib.loads((HERE / "worked_examples.toml").read_text(encoding="utf-8"))["example"]
    solvers = "\n".join(p.read_text(encoding="utf-8") for p in HERE.glob("test_sums_of_*.py"))
    assert [e["id"] for e in examples if solvers.count(f'"{e["id"]}"') != 1] == []
    assert len(examples) == 91
    assert all(e["source"].startswith("http") for e in examples)
