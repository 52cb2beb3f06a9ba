"""Shaping rows among plain rows: read in the trade's ways of saying it, worked row by row, shared out, written, and read back."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading import grade
from loopwright.model.tapers import schedule
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import instructions, voice_for
from loopwright.working import work

HEAD = "Sleeve\nTerms: US\nGauge: 16 sc and 18 rows = 10 cm\n\nSleeve\n"
FLAT = HEAD + "Ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40)\n"


def counts(text: str, size: int = 0) -> list[int | None]:
    """What each row after the first makes."""
    report = work(read(Source(text, "text")))
    return [row.counts[size] for row in report.rows][2:]


def runs(*told: tuple[int, int]) -> list[int]:
    """(count, rows) said out: 40, 40, 38 …"""
    return [count for count, rows in told for _ in range(rows)]


EVERY_4TH = runs((40, 3), (38, 4), (36, 4), (34, 1))
EVERY_4TH_THEN_3RD = runs((40, 3), (38, 4), (36, 4), (34, 3), (32, 3), (30, 1))


@pytest.mark.parametrize(("words", "made"), [
    ("Dec 1 st at each end of every 4th row 3 times.", EVERY_4TH),
    ("Dec 1 st at both ends on every fourth row three times.", EVERY_4TH),
    ("Decrease 1 st at each end every 4 rows 3 times.", EVERY_4TH),
    ("Dec 1 st at each end every 4th row 3 times, then every 3rd row twice.", EVERY_4TH_THEN_3RD),
    ("Dec 1 st at each end of every 4th row 3 times and then every foll 3rd row 2 times, working all other rows even.", EVERY_4TH_THEN_3RD),
    ("Rows 2-13: Dec 1 st at each end of every 4th row 3 times.", EVERY_4TH),
    ("Rows 2-13: Dec 1 st at each end of every 4th row.", EVERY_4TH),
    ("Rows 2-15: Dec 1 st at each end of every 4th row 3 times.", [*EVERY_4TH, 34, 34]),
    ("Dec 1 st at each end 3 times, evenly spaced over the next 12 rows.", EVERY_4TH),
    ("Dec 1 st at each end evenly over the next 12 rows, 3 times.", EVERY_4TH),
    ("Rows 2-13: Dec 1 st at each end 3 times, evenly spaced.", EVERY_4TH),
    ("Dec 1 st at each end 3 times, evenly spaced over the next 11 rows.", runs((40, 3), (38, 4), (36, 3), (34, 1))),
    ("Dec 1 st at each end of next and foll alt row.", runs((38, 2), (36, 1))),
    ("Dec 1 st at each end of next row and foll 4th row.", runs((38, 4), (36, 1))),
    ("Dec 1 st at each end of next and foll 2 alt rows.", runs((38, 2), (36, 2), (34, 1))),
    ("Dec 1 st at each end of next and foll 3 rows.", [38, 36, 34, 32]),
    ("Dec 1 st at neck edge on each of next 3 rows.", [39, 38, 37]),
    ("Keeping patt correct, dec 1 st at each end of next 2 rows.", [38, 36]),
    ("Dec 1 st each end of next and every foll 4th row until 34 sts remain.", runs((38, 4), (36, 4), (34, 1))),
    ("Inc 1 st at beg and end of every other row until there are 46 sts.", runs((40, 1), (42, 2), (44, 2), (46, 1))),
    ("Inc 1 st at each end every row 3 times.", [42, 44, 46]),
    ("Row 2 (dec row): Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRep dec row every 3rd row twice more.", runs((38, 3), (36, 3), (34, 1))),
    ("Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. Rep Row 2 every 3rd row twice.", runs((38, 3), (36, 3), (34, 1))),
    ("Row 2 (dec row): Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRepeat the decrease row every 3rd row a total of 3 times.",
     runs((38, 3), (36, 3), (34, 1))),
    ("Row 2 (dec row): Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRep last row every alt row 3 times in all. Work 2 rows even.",
     runs((38, 2), (36, 2), (34, 3))),
    ("Dec Row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRep dec row every other row once.", runs((38, 2), (36, 1))),
])
def test_every_way_of_saying_a_schedule_works_the_same_rows(words, made):
    assert counts(FLAT + words) == made


def test_sizes_have_schedules_of_their_own_and_a_size_without_a_number_leaves_it_out():
    text = HEAD.replace("Terms", "Sizes: small, large\nTerms") + (
        "Ch 41 (45).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 (44))\n"
        "Dec 1 st at each end of every 4th (3rd) row 2 (3) times, then every – (2nd) row – (1) times. (36 (36))"
    )
    assert [n for n in counts(text, 0) if n is not None] == runs((40, 3), (38, 4), (36, 1))
    assert counts(text, 1) == runs((44, 2), (42, 3), (40, 3), (38, 2), (36, 1))


def test_a_schedule_that_is_longer_than_its_rows_is_said():
    report = work(read(Source(FLAT + "Rows 2-9: Dec 1 st at each end of every 4th row 3 times.", "text")))
    found = next(f for f in report.findings if f.code == "W012")
    assert (found.args["needs"], found.args["rows"]) == (12, 8)


def test_a_schedule_of_a_row_that_nobody_told_is_said():
    report = work(read(Source(FLAT + "Rep dec row every 4th row 3 times.", "text")))
    assert "W009" in [f.code for f in report.findings]


GRADED = """Sleeve
Terms: US
Sizes: small, medium, large
Gauge: 16 sc and 18 rows = 10 cm

Fit
{top}: sts to measure 30 (34, 38) cm, multiple of 2
{cuff}: sts to measure 16 (18, 19) cm, multiple of 2
{decs}: half of {top} less half of {cuff}
{rows}: rows to measure 18 (22, 25) cm

Sleeve
Ch {top} + 1.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. ({top})
Row 2: Ch 1, sc in each st across, turn.
Dec 1 st at each end {decs} times, evenly spaced over the next {rows} rows. ({cuff})
Inc 1 st each end of next and every foll 6th row until there are 50 (52, 56) sts.
Dec row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.
Rep dec row every other row 3 times, then every row 1 (2, 3) times.
"""


def _graded():
    found = grade(read(Source(GRADED, "text")), work)
    assert found.report is not None
    return found.document, found.report


@pytest.mark.parametrize("size", [None, 0, 1, 2])
@pytest.mark.parametrize("full", [False, True])
@pytest.mark.parametrize("terms", ["us", "uk"])
def test_what_is_written_reads_back_as_the_same_rows(size, full, terms):
    document, report = _graded()
    voice = voice_for(document, terms, size, full_words=full)
    said = "\n".join(s.text.strip() for s in instructions(voice, document, report))
    head = f"Sleeve\nTerms: {'US' if terms == 'us' else 'UK'}\n" + ("" if size is not None else "Sizes: small, medium, large\n") + "\n"
    again = work(read(Source(head + said, "written")))
    for was in range(3) if size is None else [size]:
        made = [row.counts[was] for row in report.rows if row.counts[was] is not None]
        now = [row.counts[was if size is None else 0] for row in again.rows if row.counts[was if size is None else 0] is not None]
        assert now == made, said


def test_the_schedule_of_each_size_is_written_out():
    document, report = _graded()
    said = {size: "\n".join(s.text for s in instructions(voice_for(document, "us", size), document, report)) for size in (None, 0, 2)}
    assert "every 3rd (4th, 3rd) row 10 (1, 15) times, then every 2nd (3rd, –) row 1 (12, –) times" in said[None]
    assert "every 3rd row 10 times, then every 2nd row once" in said[0]
    assert "every 3rd row 15 times. (30" in said[2]


@pytest.mark.parametrize("language", ["de", "fr", "es", "nl", "sv", "da", "pt", "it"])
def test_other_languages_say_schedules_in_full(language):
    document, report = _graded()
    voice = voice_for(document, "us", None, language=language)
    said = "\n".join(s.text for s in instructions(voice, document, report))
    assert "every" not in said
    assert "10 (1, 15)" in said


@given(rows=st.integers(1, 400), events=st.integers(0, 400))
def test_a_schedule_takes_all_rows_and_shapes_so_often(rows, events):
    if events > rows:
        with pytest.raises(ValueError, match="do not fit"):
            schedule(rows, events)
        return
    steps = schedule(rows, events)
    assert sum(s.times for s in steps) == events
    assert sum(s.rows for s in steps) == (rows if events else 0)
    assert all(a.every - b.every == 1 for a, b in pairwise(steps))
