"""Rows as they are written in German, French and Spanish, with what they make, worked by hand."""

from pathlib import Path

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

HERE = Path(__file__).parent / "patterns"


def patterns(language):
    """Each pattern's name, its text, and what is expected of its rows: (line, count, {kind: count})."""
    for block in (HERE / f"{language}.txt").read_text(encoding="utf-8").split("\n--- ")[1:]:
        name, *lines = block.strip("\n").split("\n")
        text, expected = [], []
        for number, line in enumerate(lines, 1):
            row, _, made = line.partition(" => ")
            text.append(row)
            if made:
                count, *kinds = made.split()
                expected.append((number, int(count), {k.replace("_", " "): int(n) for k, n in (pair.split("=") for pair in kinds)}))
        yield f"{language}: {name}", "\n".join(text), expected


CASES = [(lang, *case) for lang in ("de", "fr", "es") for case in patterns(lang)]


@pytest.mark.parametrize("language", ["de", "fr", "es"])
def test_there_are_many_rows(language):
    assert sum(len(expected) for lang, _, _, expected in CASES if lang == language) >= 40


@pytest.mark.parametrize(("language", "name", "text", "expected"), CASES, ids=[c[1] for c in CASES])
def test_rows_make_what_they_say(language, name, text, expected):
    source = Source.of(text)
    document = read(source)
    assert document.language == language
    assert write(document) == text
    made = {}
    for row in work(document).rows:
        line = document.text[: row.span.start].count("\n") + 1
        made[line] = (row.counts[0], {k: v[0] for k, v in row.made.items()})
    for line, count, kinds in expected:
        found = made.get(line)
        assert found is not None, f"{name}: line {line} is no row: {document.text.splitlines()[line - 1]}"
        assert found[0] == count, f"{name}, line {line}: {document.text.splitlines()[line - 1]}"
        assert {k: found[1].get(k) for k in kinds} == kinds, document.text.splitlines()[line - 1]


@pytest.mark.parametrize(("language", "name", "text", "expected"), CASES, ids=[c[1] for c in CASES])
def test_every_word_is_understood(language, name, text, expected):
    document = read(Source.of(text), language)
    codes = [f.code for f in work(document).findings if f.code.startswith("N")]
    assert codes == [], document.text
