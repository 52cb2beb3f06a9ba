"""The registry's entries, the renderers and the putting in of mends."""

import re
import string
from pathlib import Path

import pytest

from loopwright.findings import Edit, Finding, Fix
from loopwright.findings.fixes import apply
from loopwright.findings.registry import hints, load, message, severity, title
from loopwright.findings.render_json import as_json
from loopwright.findings.render_text import summary
from loopwright.findings.render_text import text as as_text
from loopwright.source import Source, Span


@pytest.mark.parametrize("code", sorted(load()))
def test_entries_are_complete(code):
    entry = load()[code]
    assert entry.severity in ("error", "warning", "advice")
    assert entry.name == entry.name.lower().replace(" ", "-")
    assert all((entry.text, entry.means, entry.why, entry.example, entry.better))
    assert not entry.text.endswith(".")
    assert all(name is None or name.isidentifier() for _, name, _, _ in string.Formatter().parse(entry.text + entry.hint))


def test_names_are_given_once():
    names = [e.name for e in load().values()]
    assert len(names) == len(set(names))


def test_words_come_from_the_registry():
    found = Finding("C012", Span(0, 3), {"label": "Row 4"})
    assert message(found) == "Row 4 stands twice: the row before has the same number"
    assert (title(found), severity(found), hints(found)) == ("row-number-doubled", "warning", ())


def test_missing_facts_do_not_hurt():
    assert "?" in message(Finding("C012", Span(0, 3)))
    assert message(Finding("X999", Span(0, 3))) == "X999"


def test_text_marks_the_place():
    source = Source.of("Row 4: Sc.\n\tRow 4: Dc.\n", "reed.txt")
    shown = as_text(source, [Finding("C012", Span(12, 17), {"label": "Row 4"})])
    assert shown.splitlines()[0].startswith("reed.txt:2:2: warning C012 row-number-doubled:")
    assert shown.splitlines()[2] == "    \t^^^^^"
    assert "\x1b[" not in shown
    assert "\x1b[" in as_text(source, [Finding("C012", Span(12, 17))], colour=True)


def test_long_lines_are_cut_around_the_place():
    source = Source.of("x" * 500 + "BAD" + "x" * 500)
    line, mark = as_text(source, [Finding("C012", Span(500, 503))]).splitlines()[1:3]
    at = mark.index("^")
    assert line[at : at + 3] == "BAD"
    assert len(line) < 200


def test_json_tells_edits_in_both_units():
    source = Source.of("🧶 (13)\n")
    fix = Fix("say 12", (Edit(Span(3, 5), "12"),))
    (one,) = as_json(source, [Finding("W001", Span(3, 5), fix=fix)])
    assert (one["line"], one["column"], one["end_column"]) == (1, 4, 6)
    assert one["fix"]["edits"][0]["start_utf16"] == 4
    assert one["fix"]["safe"] is True


def _mend(start, end, text, safe=True):
    return Finding("C012", Span(start, end), fix=Fix("mend", (Edit(Span(start, end), text),), safe))


def test_mends_are_put_in_together_and_overlaps_wait():
    text, done = apply("abcdef", [_mend(4, 5, "E"), _mend(0, 2, "AB!"), _mend(1, 3, "x")])
    assert text == "AB!cdEf"
    assert len(done) == 2


def test_unsafe_mends_only_when_asked_for():
    assert apply("abc", [_mend(0, 1, "x", safe=False)])[0] == "abc"
    assert apply("abc", [_mend(0, 1, "x", safe=False)], unsafe=True)[0] == "xbc"


def test_mends_outside_the_text_are_left_out():
    assert apply("abc", [_mend(2, 9, "x")]) == ("abc", ())


def test_parts_of_a_text_without_their_facts_are_left_out():
    known = Finding("W003", Span(0, 3), {"label": "Row 4", "thing": "st", "wanted": 12, "found": 10})
    assert message(known) == "Row 4 asks for 12 stitches, and there are 10"
    more = Finding("W003", Span(0, 3), {"label": "Row 4", "thing": "sp", "wanted": 1, "found": 0, "round": 3, "rounds": 4})
    assert message(more) == "Row 4 asks for 1 chain space in repeat 3 of 4, and there are 0"


def test_every_code_that_is_given_has_an_entry_and_every_entry_is_given():
    source = Path(__file__).parents[2] / "src" / "loopwright"
    given = {c for p in source.rglob("*.py") for c in re.findall(r'"([NWDCGMP]\d{3})"', p.read_text(encoding="utf-8"))}
    assert given == set(load())


def test_the_summary_counts_by_severity():
    found = [Finding("C012", Span(0, 1)), Finding("W001", Span(0, 1)), Finding("C024", Span(0, 1)), Finding("C025", Span(0, 1))]
    assert summary(found) == "1 error, 1 warning, 2 pieces of advice"
    assert summary([]) == "nothing to mend"
