"""Findings that are left as they are, by a line of the heading: silent in `check`, told again when the row is another one."""

from __future__ import annotations

import pytest

from loopwright.findings import Finding
from loopwright.findings.fixes import apply
from loopwright.findings.registry import message
from loopwright.notation import read
from loopwright.source import Source, Span
from loopwright.workshop.check import check_text
from loopwright.workshop.left import left_in, line_for, open_and_left, place_of, room_for_line
from loopwright.workshop.live import Live

PATTERN = """Teal Hat
Sizes: small
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Yarn: worsted, wool, 100 g = 200 m
{left}
Crown
Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (25 hdc)
Rnd 4: Ch 1, *hdc in each of next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)

Brim
Rnd 1: Ch 1, *hdc in each of next 3 sts, 2 hdc in next st; rep from * around; join. (41 hdc)
"""


def codes(text: str) -> list[str]:
    return [f.code for f in check_text(text).findings if f.code.startswith("W")]


@pytest.mark.parametrize(("left", "still"), [
    ("", 2),
    ("Left as it is: W001 in Rnd 3, because it is meant so\n", 1),
    ("Left as it is: w001 in rnd 3\n", 1),
    ("Left as it is: W001 in Rnd 3, because a, because b\nLeft as it is: W001 in Brim, Rnd 1, because c\n", 0),
    ("Left as it is: W001 in Rnd 5, because there is no such round\n", 2),
    ("Left as it is: W003 in Rnd 3, because it is another code\n", 2),
    ("Left as it is: everything\n", 2),
])
def test_what_is_left_is_silent_and_nothing_else(left: str, still: int) -> None:
    assert len(codes(PATTERN.format(left=left))) == still


@pytest.mark.parametrize(("left", "said"), [
    ("Left as it is: W001 in Rnd 3, because it is meant so", None),
    ("Left as it is: W001 in Rnd 5, because it was meant so", "Rnd 5 has no W001"),
    ("Left as it is: everything", "leaves nothing as it is"),
])
def test_a_line_that_leaves_nothing_is_told_and_its_mend_takes_it_out(left: str, said: str | None) -> None:
    text = PATTERN.format(left=f"{left}\n")
    found = [f for f in check_text(text).findings if f.code == "C045"]
    assert bool(found) == (said is not None)
    for f in found:
        assert said is not None
        assert said in message(f)
        assert f.fix is not None
        assert apply(text, (f,), unsafe=True)[0] == PATTERN.format(left="")
    seen = Live("teal").see(text)
    assert [f.code for f in seen.report.findings].count("C045") == len(found)


def test_the_line_that_is_written_is_the_line_that_is_read() -> None:
    text = PATTERN.format(left="")
    source = Source.of(text, "teal")
    document = read(source)
    found = next(f for f in check_text(text).findings if f.code == "W001")
    place = place_of(document, found.span.start)
    assert place == "Rnd 3"
    at = room_for_line(document)
    line = line_for("W001", place, " two\nlines ")
    again = text[:at] + "\n" + line + text[at:]
    assert left_in(read(Source.of(again, "teal")))[0] == ("W001", "rnd 3", "two lines")
    assert len(codes(again)) == len(codes(text)) - 1


def test_a_text_without_a_heading_has_room_at_the_top() -> None:
    text = "Rnd 1: 6 sc in magic ring. (7 sc)\n"
    at = room_for_line(read(Source.of(text, "short")))
    assert at == 0
    assert codes(f"{line_for('W001', 'Rnd 1', 'so')}\n{text}") == []


def test_what_stops_the_rows_below_cannot_be_left() -> None:
    document = read(Source.of(PATTERN.format(left="Left as it is: W008 in Rnd 3, because no\nLeft as it is: W001 in Rnd 3, because yes\n"), "teal"))
    at = document.text.index("Rnd 3: ")
    stop, count = Finding("W008", Span(at, at + 5)), Finding("W001", Span(at, at + 5))
    still, left = open_and_left(document, (stop, count))
    assert still == (stop,)
    assert left == ((count, "yes"),)


def test_a_live_sheet_gives_what_was_left_with_its_reason_and_rows_their_names_per_size() -> None:
    wire = Live("teal").see(PATTERN.format(left="Left as it is: W001 in Rnd 3, because it is meant so\n")).as_wire()
    assert [(f["code"], f["place"], f["because"]) for f in wire["left"]] == [("W001", "Rnd 3", "it is meant so")]
    assert [f["place"] for f in wire["findings"] if f["code"] == "W001"] == ["Brim, Rnd 1"]
    assert [f["word"] for f in wire["findings"] if f["code"] == "W001"] == ["look"]
