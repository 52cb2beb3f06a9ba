"""docs/grammar.ebnf: every rule that is used is there, and every example in it is read without unknown words."""

import re
from pathlib import Path

import pytest

from loopwright.model.tree import Row, Unknown
from loopwright.notation import read
from loopwright.source import Source

GRAMMAR = (Path(__file__).parents[2] / "docs" / "grammar.ebnf").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"^\(\* e\.g\. (.*) \*\)$", GRAMMAR, re.MULTILINE)
RULES = re.sub(r"\(\*.*?\*\)", "", GRAMMAR, flags=re.DOTALL)
GIVEN = {"prose", "value", "sentence", "size", "name", "abbreviation", "length"}  # told in words, not in rules


@pytest.mark.parametrize("line", EXAMPLES)
def test_an_example_is_read(line):
    rows = [i for i in read(Source.of(line)).items if isinstance(i, Row)]
    assert rows
    assert all(row.doubt == 0 for row in rows)
    assert not any(isinstance(n, Unknown) for row in rows for n in row.body)


def test_no_rule_is_missing():
    defined = set(re.findall(r"^([a-z-]+)\s*=", RULES, re.MULTILINE))
    bare = re.sub(r'"[^"]*"', "", RULES)
    used = set(re.findall(r"(?<![A-Za-z-])[a-z][a-z-]+", re.sub(r"^[a-z-]+\s*=", "", bare, flags=re.MULTILINE)))
    assert used - defined - GIVEN == set()
    assert defined - used - {"pattern"} == set()


def test_there_are_examples():
    assert len(EXAMPLES) >= 20
