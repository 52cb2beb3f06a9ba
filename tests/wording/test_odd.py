"""Text out of joint is written too: nothing raises, whatever the tree."""

from __future__ import annotations

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
LINES = [line for path in DESIGNS for line in path.read_text(encoding="utf-8").splitlines() if line]
WORDS = [*sorted({word for line in LINES for word in line.split()}), "(", ")", "[", "*", "**", "–", "{x}", "3 (4, 5)", "0"]


@st.composite
def texts(draw: st.DrawFn) -> str:
    lines = []
    for line in draw(st.lists(st.sampled_from(LINES), min_size=1, max_size=8)):
        words = line.split(" ")
        for at, word in draw(st.lists(st.tuples(st.integers(0, 30), st.sampled_from(WORDS)), max_size=4)):
            words[at % len(words)] = word
        lines.append(" ".join(words))
    return "\n".join(lines)


@given(texts(), st.sampled_from(["us", "uk", "old"]), st.booleans(), st.booleans())
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_nothing_raises(text: str, terms: str, full: bool, one_size: bool) -> None:
    document = read(Source.of(text))
    assert write(document, None, terms=terms, full_words=full, size=0 if one_size else None, spelled_out=full).strip()


def test_a_line_that_only_tells_a_colour_is_written_again() -> None:
    text = "Reed Scarf\n\nBand\nWith A.\nRow 1: Ch 11, sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nChange to B.\nRow 2: Ch 1, sc in each st across. (10 sc)\n"
    lines = write(read(Source.of(text)), terms="us").splitlines()
    assert lines[lines.index("Band") + 1] == "With A."
    assert lines[-2] == "Change to B."
