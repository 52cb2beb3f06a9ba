"""What holds for every answer: it never fails for a row that is there, and its facts are the fabric's own counts."""

import re
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.answering import CountAsked, count_is_off, measure_is_wanted, woven_row, yarn_is_left
from loopwright.model.measures import Dimension, Measures, YarnNeed
from loopwright.workshop.asked import Asked, CannotAnswerError, Question

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
_SLOT = re.compile(r"\{\w+\}|\bNone\b|\bnan\b|\binf\b")


@cache
def asked(path):
    return Asked(path.read_text(encoding="utf-8"), path.name)


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_every_row_of_every_design_can_be_asked_about(data):
    desk = asked(data.draw(st.sampled_from(DESIGNS)))
    size = data.draw(st.integers(0, max(1, len(desk.seen.report.sizes)) - 1))
    rows = desk.rows(size)
    row = data.draw(st.sampled_from(rows))
    have = max(0, row["count"] + data.draw(st.integers(-30, 30)))
    before = data.draw(st.none() | st.integers(0, 300))
    terms = data.draw(st.sampled_from(["us", "uk"]))
    found = desk.answer(Question("count", size, row["row"], have, before, terms=terms))
    assert f"makes {row['count']} st" in found.facts[0]
    assert desk.seen.report.rows[row["row"]].counts[size] == row["count"]
    assert bool(found.causes) == (have != row["count"])
    assert len(found.causes) <= 4
    for words in (found.heading, found.text, *(c.title + c.see + c.mend for c in found.causes)):
        assert words.strip()
        assert not _SLOT.search(words)


def _joins(fabric, row):
    """Slip stitches of a row that join it to another piece: no stitches of the row."""
    slips = [i for i in range(row.start, row.end) if fabric.name(i) == "sl st" and fabric.part_of(i) == "edge"]
    return sum(any(fabric.rows[fabric.row[p]].piece != row.piece for p in fabric.parents(i)) for i in slips)


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_counts_of_the_fabric_are_those_of_the_facts(data):
    desk = asked(data.draw(st.sampled_from(DESIGNS)))
    size = data.draw(st.integers(0, max(1, len(desk.seen.report.sizes)) - 1))
    fabric = desk.seen.report.fabrics[size]
    row = data.draw(st.sampled_from(desk.rows(size)))
    woven = woven_row(desk.seen.report, row["row"], size)
    item = desk.seen.report.rows[row["row"]].item
    asked_for = [r for r in desk.seen.report.rows if r.item == item and r.counts[size] is not None]
    if fabric is None or woven is None or len(asked_for) != sum(r.item == item for r in fabric.rows):
        return  # squares that are joined as they are made: the fabric has each of them
    counted = sum(fabric.counted(fabric.rows[woven]).values()) - _joins(fabric, fabric.rows[woven])
    chains = sum(fabric.name(i) == "ch" for i in range(fabric.rows[woven].start, fabric.rows[woven].end))
    with_chains = desk.seen.report.rows[row["row"]].with_chains
    assert row["count"] in (counted or chains, with_chains[size] if with_chains else counted)


@settings(max_examples=300, deadline=None)
@given(
    kind=st.sampled_from(["count", "gauge", "yarn", "measure"]), size=st.integers(-2, 12), row=st.integers(-5, 60), have=st.integers(-5, 10**7),
    before=st.none() | st.integers(-5, 10**7), stitches=st.floats(), rows=st.floats(), amount=st.text(max_size=60), name=st.text(max_size=9), want=st.floats(),
)
def test_whatever_is_asked_there_is_an_answer_or_a_word(kind, size, row, have, before, stitches, rows, amount, name, want):
    desk = asked(next(p for p in DESIGNS if p.stem == "samphire-beanie"))
    try:
        said = desk.answer(Question(kind, size, row, have, before, stitches, rows, amount, (None, name), want)).text
    except CannotAnswerError as e:
        said = str(e)
    assert len(said) > 10


@given(have=st.floats(0.01, 1e6), needs=st.lists(st.floats(0.1, 1e5), min_size=1, max_size=8))
def test_sizes_that_yarn_makes_are_those_whose_high_end_it_reaches(have, needs):
    sizes = [Measures(f"size {i}", yarn=(YarnNeed("", n, n * 0.8, n * 1.3),)) for i, n in enumerate(needs)]
    found = yarn_is_left(sizes, 0, have)
    fits = [m.size for m in sizes if m.yarn[0].high_m <= have]
    assert all((f"{name}," in found.text or f"{name}." in found.text) for name in fits)
    assert (found.heading == "It will do") == (sizes[0].size in fits)


@given(want=st.floats(1, 5000), wide=st.floats(0.5, 30), multiple=st.integers(1, 24), data=st.data())
def test_no_other_legal_count_comes_nearer_to_a_measure(want, wide, multiple, data):
    plus = data.draw(st.integers(0, multiple - 1))
    sizes = [Measures("one", (Dimension(None, "around", 10_000, 10_000, 10_000, (0, 0), ""),))]
    found = measure_is_wanted(sizes, None, "around", want, wide, multiple, plus)
    told = re.search(r"work (\d+) sts", " ".join(found.facts))
    assert told is not None
    chosen = int(told[1])
    assert chosen % multiple == plus % multiple
    legal = [n for n in range(plus, int(want / wide) + 3 * multiple + plus, multiple) if n > 0]
    assert abs(chosen * wide - want) <= min(abs(n * wide - want) for n in legal) + 1e-6


def test_a_count_of_a_row_that_a_size_leaves_out_is_told():
    desk = asked(next(p for p in DESIGNS if p.stem == "samphire-beanie"))
    out = next((i, s) for i, r in enumerate(desk.seen.report.rows) for s, n in enumerate(r.counts) if n is None)
    with pytest.raises(ValueError, match="no count"):
        count_is_off(desk.seen.report, CountAsked(out[0], out[1], 5))
