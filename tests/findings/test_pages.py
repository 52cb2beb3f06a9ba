"""The generated pages are those of today's registry."""

from pathlib import Path

from loopwright.findings.pages import pages
from loopwright.findings.registry import load

FOLDER = Path(__file__).parents[2] / "docs" / "findings"


def test_pages_are_up_to_date():
    made = pages(load())
    there = {p.name: p.read_text(encoding="utf-8") for p in FOLDER.glob("*.md")}
    assert sorted(there) == sorted(made), "run: python docs/make_finding_pages.py"
    assert [n for n in made if there[n] != made[n]] == [], "run: python docs/make_finding_pages.py"


def test_every_code_has_a_kind():
    assert all(any(code.startswith(k) for k in "NWDCGMP") for code in load())
