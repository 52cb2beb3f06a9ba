"""docs/notation.md: every example on the page is read, worked, and free of faults; so are the commands it names."""

import re
from pathlib import Path

import pytest

from loopwright.cli.main import parser
from loopwright.findings.registry import message, severity
from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.workshop.check import check_text

PAGE = (Path(__file__).parents[2] / "docs" / "notation.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"^```pattern ?(us|uk|old)?\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)


def test_there_are_many_examples():
    assert len(EXAMPLES) >= 15


@pytest.mark.parametrize(("terms", "text"), EXAMPLES, ids=[t.splitlines()[0][:40] for _, t in EXAMPLES])
def test_an_example_is_read_and_worked(terms, text):
    report = check_text(text, "notation.md", terms or None)
    assert [r.label for r in report.rows if not r.read] == []
    assert [r.label for r in report.rows if r.agrees is False] == []
    assert [(f.code, message(f)) for f in report.findings if severity(f) in ("error", "warning")] == []
    assert report.rows
    assert write(read(Source.of(text))) == text


def test_the_commands_of_the_page_exist():
    commands = [line.strip() for line in PAGE.splitlines() if line.startswith("    loopwright ")]
    assert len(commands) >= 3
    for command in commands:
        words = re.findall(r'"[^"]*"|\S+', command.split("   ")[0])[1:]
        parser().parse_args([w.strip('"') for w in words])
