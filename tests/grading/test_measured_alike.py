"""What grading says that a number makes is what is measured of the worked fabric: every design, every size, to a hundredth of a millimetre."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from loopwright.grading import Graded, Number, grade, parse_gauge
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.grading.structure import structure
from loopwright.measuring.courses import Course, courses
from loopwright.measuring.dimensions import dimensions
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGNS = [p for p in sorted((Path(__file__).parents[2] / "designs").glob("*.txt")) if "{" in p.read_text(encoding="utf-8")]
NEAR_MM = 0.01

# A dimension of grading is called by what its sentence says, one of the fabric by how the part is worked.
CALLED = {
    "across": ("across",), "around": ("around", "width"), "width": ("width", "around", "around at the end"), "depth": ("depth",),
    "height": ("depth",), "length": ("depth", "length"), "opening around": ("opening around",),
}

# Numbers that measure something for which there is no dimension of that section: which rows they are, and why.
BY_ROWS = {
    ("samphire-beanie", "crown rounds"): "the whole rounds; the crown measured has the round that increases evenly too",
    ("samphire-beanie", "body rounds"): "the hat so far, from the centre; measured are crown, body and the whole with its band",
    ("sandpiper-mitts", "palm rounds"): "the rounds below the thumb; measured is the whole hand",
    ("sandpiper-mitts", "thumb rounds"): "without the round that closes the thumb",
    ("plover-cardigan", "sleeve rounds"): "without the cuff, which stands in the same section",
}
BY_STITCHES = {
    ("avocet-bonnet", "tie"): "the chain; measured are the slip stitches worked back over it",
    ("plover-cardigan", "back neck"): "a part of the first row",
    ("plover-cardigan", "sleeve neck"): "a part of the first row",
    ("dunlin-booties", "sole sts"): "the straight side of an oval",
}


@cache
def graded(path: Path, gauge: str | None = None) -> Graded:
    return grade(read(Source.of(path.read_text(encoding="utf-8"), path.name)), work, parse_gauge(gauge) if gauge else None)


def of_text(text: str, gauge: str | None = None) -> Graded:
    return grade(read(Source.of(text)), work, parse_gauge(gauge) if gauge else None)


def of(number: Number) -> float:
    """What a number makes, mm."""
    assert number.achieved_mm is not None
    return number.achieved_mm


def measured(result: Graded, size: int, gauge: str | None = None) -> tuple[Fabric, StitchSizes, list[Course], tuple[Dimension, ...]]:
    sizes = stitch_sizes(result.document, parse_gauge(gauge) if gauge else None).sizes
    fabric = result.report.fabrics[size] if result.report is not None else None
    assert sizes is not None
    assert fabric is not None
    rows = courses(fabric, sizes)
    return fabric, sizes, rows, dimensions(fabric, sizes, rows)


def by_name(result: Graded, number: Number, found: tuple[Dimension, ...]) -> list[float]:
    """Dimensions of the sections that the blank stands in, called so."""
    plan = structure(result.design)
    sections = {plan.uses[number.blank].section} if number.unit == "row" else _sections(result, plan.counted[number.blank])
    return [d.value_mm for d in found if d.section in sections and d.name in CALLED[number.way]]


def _sections(result: Graded, items: list[int]) -> set[str | None]:
    report = result.report
    assert report is not None
    return {r.section for r in report.rows if r.item in items}


def by_rows(result: Graded, number: Number, rows: list[Course]) -> float:
    """The heights of the rows that a sentence names, up to the last that its blank tells."""
    use = structure(result.design).uses[number.blank]
    assert use.role != "count"
    last = max((c.index for c in rows if c.row.item == use.item), default=-1)
    sentence = number.reason.partition(":")[0]
    so_far = [c for c in rows if c.index <= last and c.height_mm]
    if "from the centre" in sentence:
        run = [c for c in so_far if c.row.piece == rows[last].row.piece]
    elif " until " in sentence:
        run = [c for c in so_far if c.row.section == use.section]
    else:
        run = so_far[len(so_far) - number.value :]
    return sum(c.height_mm for c in run) * (2 if number.way == "across" else 1)


CASES = [
    (p, i, n.blank) for p in DESIGNS for i, s in enumerate(graded(p).sizes) for n in s.numbers
    if n.achieved_mm is not None and (p.stem, n.blank) not in BY_STITCHES
]


def ids(value: object) -> str:
    return value.stem if isinstance(value, Path) else str(value)


@pytest.mark.parametrize(("path", "size", "blank"), CASES, ids=ids)
def test_grading_and_measuring_say_the_same(path: Path, size: int, blank: str) -> None:
    result = graded(path)
    number = next(n for n in result.sizes[size].numbers if n.blank == blank)
    _, _, rows, found = measured(result, size)
    wanted = [by_rows(result, number, rows)] if (path.stem, blank) in BY_ROWS else by_name(result, number, found)
    assert any(abs(of(number) - w) < NEAR_MM for w in wanted), (number.reason, wanted)


@pytest.mark.parametrize("gauge", ["21 sts and 9 rows = 10 cm", "12 sts and 17 rows = 10 cm"])
@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_they_say_the_same_at_other_gauges(path: Path, gauge: str) -> None:
    result = graded(path, gauge)
    for i, size in enumerate(result.sizes):
        _, _, rows, found = measured(result, i, gauge)
        for n in size.numbers:
            if n.achieved_mm is None or (path.stem, n.blank) in BY_STITCHES:
                continue
            cups = any(d.name == "across" and "laid out" in d.how for d in found) and n.way == "across"
            wanted = [by_rows(result, n, rows)] if cups or (path.stem, n.blank) in BY_ROWS else by_name(result, n, found)
            assert any(abs(of(n) - w) < NEAR_MM for w in wanted), (size.size, n.reason, wanted)
            # what is across a disc that cups is told by its rim: then the finding says that it does not lie flat
            assert not cups or "G033" in {f.code for f in result.findings}


@pytest.mark.parametrize(("design", "blank"), BY_ROWS, ids=ids)
def test_what_is_held_against_rows_has_no_dimension_of_its_own(design: str, blank: str) -> None:
    """The list above is no longer than it must be."""
    result = graded(next(p for p in DESIGNS if p.stem == design))
    misses = 0
    for i, size in enumerate(result.sizes):
        number = next(n for n in size.numbers if n.blank == blank)
        misses += all(abs(of(number) - w) >= NEAR_MM for w in by_name(result, number, measured(result, i)[3]))
    assert misses


@pytest.mark.parametrize(("design", "blank"), BY_STITCHES, ids=ids)
def test_parts_of_rows_are_as_long_as_their_stitches(design: str, blank: str) -> None:
    result = graded(next(p for p in DESIGNS if p.stem == design))
    for i, size in enumerate(result.sizes):
        number = next(n for n in size.numbers if n.blank == blank)
        _, sizes, rows, found = measured(result, i)
        if blank == "tie":
            assert number.achieved_mm in [pytest.approx(c.top_mm, abs=NEAR_MM) for c in rows if c.way == "chain"]
        elif blank == "sole sts":
            length = next(d.value_mm for d in found if d.section == "Sole" and d.name == "length")
            # the chain between the middles of its ends is a stitch longer than the straight side; four rounds lie around each end
            assert number.achieved_mm == pytest.approx(length - sizes.width("sc") - 8 * sizes.height("sc"), abs=NEAR_MM)
        else:
            first = next(c for c in rows if c.row.section == "Yoke" and c.stitches)
            whole = {n.blank: n.value for n in size.numbers}
            plain = whole["back neck"] + 2 * whole["sleeve neck"] + 2 * whole["front neck"]
            # each of four corners has a stitch on both sides of it and stands over one that is no part of the runs
            assert first.stitches == plain + 8
            assert number.achieved_mm == pytest.approx(first.top_mm / first.places * number.value, abs=NEAR_MM)


def test_a_band_of_post_stitches_is_as_tall_as_they_are() -> None:
    band = next(n for n in graded(next(p for p in DESIGNS if p.stem == "samphire-beanie")).sizes[0].numbers if n.blank == "band rounds")
    assert band.value == 4
    # hdc 100/13 mm; fpdc four fifths of a dc, which is 2.0/1.5 of it
    assert band.achieved_mm == pytest.approx(4 * 100 / 13 * 2.0 / 1.5 * 0.8)
    assert "4 rnds, 8.2 mm each, make 3.3 cm" in band.reason


RUG = """Dunlin Mat
Sizes: small, medium, large
Terms: US
Gauge: 16 sc and 20 rows = 10 cm, 4 mm hook

Fit
{mat sts}: sts to measure 20 (30, 41) cm wide
{mat rows}: rows to measure 21 (30, 38) cm high

Mat
Ch {mat sts} + 1.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. ({mat sts} sc)
Row 2: Ch 3 (counts as dc), dc in each of next sts across, turn. ({mat sts} dc)
Row 3: Ch 1, sc in each st across, turn. ({mat sts} sc)
Rows 4-{mat rows}: Rep Rows 2 and 3. ({mat sts} sts)
"""


def test_rows_that_take_turns_are_counted_with_their_own_heights() -> None:
    result = of_text(RUG)
    for i, size in enumerate(result.sizes):
        rows = next(n for n in size.numbers if n.blank == "mat rows")
        found = {(d.section, d.name): d.value_mm for d in measured(result, i)[3]}
        assert rows.achieved_mm == pytest.approx(found["Mat", "depth"], abs=NEAR_MM)
        assert rows.way == "height"
        # sc is 5 mm, dc 10 mm; every second row from the second on is dc
        assert rows.achieved_mm == pytest.approx(5 * rows.value + 5 * (rows.value // 2))
        others = [5 * n + 5 * (n // 2) for n in range(3, 100)]
        assert rows.target_mm is not None
        assert abs(of(rows) - rows.target_mm) == pytest.approx(min(abs(o - rows.target_mm) for o in others))


def test_sets_of_rows_worked_so_many_times_are_all_counted() -> None:
    text = RUG.replace("Rows 4-{mat rows}: Rep Rows 2 and 3. ({mat sts} sts)", "Rep Rows 2 and 3 {mat rows} times.")
    result = of_text(text)
    for i, size in enumerate(result.sizes):
        sets = next(n for n in size.numbers if n.blank == "mat rows")
        whole = next(d.value_mm for d in measured(result, i)[3] if (d.section, d.name) == ("Mat", "depth"))
        assert sets.achieved_mm == pytest.approx(15.0 * sets.value)
        assert whole == pytest.approx(of(sets) + 20.0, abs=NEAR_MM)  # the three rows before them


def test_loops_longer_than_what_they_span_are_as_tall_in_grading() -> None:
    text = (
        "Eelgrass Scarf\nSizes: small, large\nTerms: US\nGauge: 16 sc and 20 rows = 10 cm, 4 mm hook\n\n"
        "Fit\n{net rows}: rows to measure 20 (30) cm\n\n"
        "Net\nCh 26.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
        "Row 2: Ch 1, sc in first st, *ch 6, sk 3 sts, sc in next st; rep from * across, turn.\n"
        "Row 3: Ch 6, *sc in next ch-6 sp, ch 6; rep from * to last sp, sc in last sp, turn.\nRows 4-{net rows}: Rep Row 3.\n"
    )
    result = of_text(text)
    for i, size in enumerate(result.sizes):
        number = size.numbers[0]
        whole = next(d.value_mm for d in measured(result, i)[3] if (d.section, d.name) == ("Net", "depth"))
        assert number.achieved_mm == pytest.approx(whole, abs=NEAR_MM)
        assert of(number) > 1.2 * 5.0 * number.value  # a row of sc alone is 5 mm


def test_stitches_are_as_wide_as_those_of_their_row() -> None:
    text = (
        "Shelduck Cowl\nSizes: small, large\nTerms: US\nGauge: 16 dc and 8 rows = 10 cm; 20 sc and 22 rows = 10 cm, 4 mm hook\n\n"
        "Fit\n{lower sts}: sts to go around 50 (60) cm\n{upper sts}: sts to go around 50 (60) cm\n\n"
        "Lower\nCh {lower sts}, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. ({lower sts} sc)\n"
        "Rnds 2-9: Ch 1, sc in each st around; join. ({lower sts} sc)\nFasten off.\n\n"
        "Upper\nCh {upper sts}, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), dc in each ch around; join. ({upper sts} dc)\n"
        "Rnds 2-5: Ch 3 (counts as dc), dc in each st around; join. ({upper sts} dc)\nFasten off.\n"
    )
    result = of_text(text)
    assert result.sizes[0].blanks == {"lower sts": 100, "upper sts": 80}
    for i, size in enumerate(result.sizes):
        found = {(d.section, d.name): d.value_mm for d in measured(result, i)[3]}
        for number, section in zip(size.numbers, ("Lower", "Upper"), strict=True):
            assert number.achieved_mm == pytest.approx(found[section, "around"], abs=NEAR_MM)


@pytest.mark.parametrize("says", ["sts for a thumb opening of 7 (9) cm", "sts until thumb opening measures 7 (9) cm around", "ch to make an opening of 7 (9) cm around"])
def test_an_opening_is_graded_as_it_is_measured(says: str) -> None:
    text = (
        "Turnstone Mitts\nSizes: small, large\nTerms: US\nGauge: 18 hdc and 14 rnds = 10 cm, 4 mm hook\n\n"
        f"Fit\n{{thumb sts}}: {says}\n\n"
        "Hand\nCh 36, join with sl st to form a ring.\nRnd 1: Ch 1, hdc in each ch around; join. (36 hdc)\n"
        "Rnd 2: Ch 1, hdc in each of next 2 sts, ch {thumb sts}, sk next {thumb sts} sts, hdc in each st to end; join.\n"
        "Rnd 3: Ch 1, hdc in each st and in each ch around; join. (36 hdc)\n"
    )
    result = of_text(text)
    assert [s.numbers[0].value for s in result.sizes] == [6, 8]
    for i, size in enumerate(result.sizes):
        number = size.numbers[0]
        found = next(d.value_mm for d in measured(result, i)[3] if d.name == "opening around")
        assert number.way == "opening around"
        assert number.achieved_mm == pytest.approx(found, abs=NEAR_MM)


def test_an_edge_is_graded_as_it_is_measured() -> None:
    text = (
        "Sea-rocket Shawl\nSizes: small, large\nTerms: US\nGauge: 16 sc and 20 rows = 10 cm, 4 mm hook\n\n"
        "Fit\n{edge sts}: sts to go along an edge of 40 (52) cm, multiple of 3\n\n"
        "Edge\nCh {edge sts} + 1.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({edge sts} sc)\n"
    )
    result = of_text(text)
    assert [s.numbers[0].value for s in result.sizes] == [63, 84]
    for i, size in enumerate(result.sizes):
        found = next(d.value_mm for d in measured(result, i)[3] if (d.section, d.name) == ("Edge", "width"))
        assert (size.numbers[0].name, size.numbers[0].way) == ("edge", "length")
        assert size.numbers[0].achieved_mm == pytest.approx(found, abs=NEAR_MM)


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_words_alone_tell_the_same_numbers_as_the_worked_fabric(path: Path) -> None:
    """Grading without working must not come to other numbers in these designs, whose rows say plainly what they are made of."""
    assert grade(graded(path).design).values == graded(path).values


@pytest.mark.parametrize("name", ["bulrush-hat", "thrift-shawl", "tideline-blanket", "avocet-bonnet"])
def test_rows_in_the_stitch_of_the_gauge_are_as_tall_as_it_says(name: str) -> None:
    result = graded(next(p for p in DESIGNS if p.stem == name))
    assert result.gauge is not None
    assert result.gauge.row_mm is not None
    checked = 0
    for n in (n for s in result.sizes for n in s.numbers if n.unit == "row" and n.achieved_mm is not None):
        assert of(n) / result.gauge.row_mm == pytest.approx(n.value * (2 if n.way == "across" else 1))
        assert "mm each" not in n.reason
        checked += 1
    assert checked
