"""What cannot be graded is said, with its place and the way out, and the rest is graded all the same."""

from __future__ import annotations

import pytest

from loopwright.findings.registry import hints, message
from loopwright.grading import Graded, grade, parse_gauge
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HEAD = "Tern Cuff\nSizes: small, large\nTerms: US\nGauge: 20 sc and 22 rows = 10 cm\n"
ROWS = "\nCuff\nCh {a}, join to form a ring.\nRnd 1: Ch 1, sc in each ch around. ({a} sc)\nRnds 2-{b}: Ch 1, sc in each st around. ({a} sc)\n"
A = "{a}: sts to measure 15 (18) cm, multiple of 4"
B = "{b}: rnds to measure 6 cm"


def graded(*fit: str, head: str = HEAD, rows: str = ROWS, gauge: str | None = None, sizes: tuple[str, ...] | None = None) -> Graded:
    text = head + "\nFit\n" + "\n".join(fit) + "\n" + rows
    return grade(read(Source.of(text)), work, parse_gauge(gauge) if gauge else None, sizes)


def codes(result: Graded) -> list[str]:
    return [f.code for f in result.findings]


def test_all_well() -> None:
    result = graded(A, B)
    assert codes(result) == []
    assert result.values == {"a": (32, 36), "b": (13, 13)}


@pytest.mark.parametrize(("fit", "code"), [
    ((A,), "G012"), ((A, B, "{c}: sts to measure 4 cm"), "G013"), ((A, B, "{a}: sts to measure 3 cm"), "G011"),
    (("{a}: twice {c}", "{c}: half of {a}", B), "G014"), (("{a}: twice {a}", B), "G014"), (("{a}: sts to measure 15 (18, 20) cm", B), "G015"),
    (("{a}: twice {wing}", B), "G016"), (("{a}: sts to measure 10 cm plus {b}", B), "G017"), (("{a}: whatever looks nice, please", B), "G010"), (("{a}: whatever looks nice", B), "G021"),
    (("{a}: sts to go around wing span", B), "G021"), (("{a}: sts to go around head circumference less 90 cm", B), "G021"),
    (("{a}: sts to measure 10 cm less 12 cm", B), "G031"), (("{a}: sts to measure 10 cm, multiple of 8, at least 17, at most 23", B), "G030"),
    (("{a}: sts to measure 10 cm, at least {b} plus 90, at most 50", B), "G030"), (("{a}: sts to measure 30 cm, at most 20", B), "G032"),
    (("{a}: repeats to measure 10 cm", B), "G006"), (("{a}: {b}, divided by 4, at most 90", "{b}: rnds to measure 6 cm, at most 15, odd"), "G030"),
])
def test_faults_in_fit_sentences(fit: tuple[str, ...], code: str) -> None:
    result = graded(*fit)
    assert code in codes(result)
    found = next(f for f in result.findings if f.code == code)
    assert "?" not in message(found).replace("mean {", "")[-1:] or code in ("G012", "G013", "G016")
    assert hints(found)
    assert found.span.end > found.span.start


def test_one_fault_does_not_stop_the_rest() -> None:
    assert graded("{a}: whatever looks nice", B).values == {"b": (13, 13)}


def test_impossible_names_the_nearest_legal_ones() -> None:
    result = graded("{a}: sts to measure 10 cm, multiple of 8, at least 17, at most 23", B)
    assert [str(f.args["near"]) for f in result.findings] == ["16 or 24", "16 or 24"]
    assert [f.sizes for f in result.findings] == [("small",), ("large",)]


@pytest.mark.parametrize(("line", "code"), [
    ("", "G001"), ("Gauge: about right\n", "G002"), ("Gauge: 0 sc and 22 rows = 10 cm\n", "G003"), ("Gauge: 20 sc and 22 rows = -10 cm\n", "G003"),
    ("Gauge: 20 sc and 22 rows = 10 m\n", "G004"), ("Gauge: 20 sc = 10 cm\n", "G005"), ("Gauge: 22 rows = 10 cm\n", "G006"),
])
def test_faults_in_the_gauge(line: str, code: str) -> None:
    assert codes(graded(A, B, head=f"Tern Cuff\nSizes: small, large\nTerms: US\n{line}")) == [code]


def test_a_gauge_of_stitches_alone_keeps_the_rows_of_the_design() -> None:
    result = graded(A, B, gauge="10 sc = 10 cm")
    assert codes(result) == ["G007"]
    assert result.values == {"a": (16, 20), "b": (13, 13)}


def test_unknown_sizes() -> None:
    assert codes(graded(A, B, sizes=("medium",))) == ["G020"]
    assert [s.size for s in graded(A, B, sizes=("Large",)).sizes] == ["large"]


def test_a_size_of_the_chart_that_the_design_does_not_list() -> None:
    fit = "{a}: sts to go around wrist, multiple of 2"
    head = HEAD.replace("small, large", "child")
    result = graded(fit, B, head=head, sizes=("child", "woman"))
    assert [s.size for s in result.sizes] == ["child", "woman"]
    assert codes(result) == []
    assert result.report is not None
    assert [r.counts for r in result.report.rows][-1] == result.values["a"]
    # lists that the designer wrote herself have no number for one size more
    listed = graded(fit, B, head=head.replace("child", "child, teen"), rows=ROWS + "Rnd 20: Ch 1, sc in each of next 5 (6) sts.\n", sizes=("woman",))
    assert codes(listed) == ["G020"]


def test_her_own_size_chart() -> None:
    chart = "Size chart\nsize   wrist  hand length\nsmall  14 cm  15 cm\nlarge  19 cm  18 cm\n"
    result = graded("{a}: sts to go around wrist, multiple of 2", "{b}: rnds to measure a third of hand length", head=HEAD + chart)
    assert (codes(result), result.values) == ([], {"a": (28, 38), "b": (11, 13)})
    assert codes(graded(A, B, head=HEAD + chart.replace("19 cm", "wide"))) == ["G023"]
    assert codes(graded(A, B, head=HEAD + "Size chart: mine\n")) == ["G024"]
    assert codes(graded(A, B, head=HEAD + "Size chart: measured\n")) == []


def test_numbers_without_order_in_sizes_are_held_in_order() -> None:
    # without order the second size would be one step shorter: the front takes two rounds more away from it
    result = graded("{a}: sts to measure 10 (10.2) cm, multiple of 4", "{b}: rnds until cuff measures 6 (6) cm")
    assert len(set(result.values["a"])) == 1
    assert len(set(result.values["b"])) == 1


def test_equals_take_the_larger_and_say_so() -> None:
    number = graded("{a}: sts to measure 11 cm, multiple of 4", B).sizes[0].numbers[0]
    assert (number.value, number.equal) == (24, 20)
    assert "of two equals the larger is taken" in number.reason


def test_a_plain_pattern_has_nothing_to_grade() -> None:
    result = grade(read(Source.of("Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n")), work)
    assert codes(result) == ["G034"]
    assert result.report is not None
    assert [r.counts for r in result.report.rows] == [(6,), (12,)]


def test_the_same_parity_in_all_sizes() -> None:
    result = graded("{a}: sts to measure 10 (11.5) cm, same parity in all sizes", B)
    assert result.values["a"] in ((20, 24), (20, 22))
    assert graded("{a}: sts to measure 10 (11.5) cm", B).values["a"] == (20, 23)


def test_cords_in_small_sizes_come_with_a_caution() -> None:
    head = "Tern Bonnet\nSizes: newborn, 2 years, woman\nTerms: US\nGauge: 20 sc and 22 rows = 10 cm\n"
    rows = "\nBonnet\nCh 20.\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc)\nTies\nCh {tie}.\n"
    result = graded("{tie}: ch to measure 20 cm", head=head, rows=rows)
    found = [f for f in result.findings if f.code == "G035"]
    assert [f.sizes for f in found] == [("newborn", "2 years")]
    assert "Rules differ from country to country" in message(found[0])


def test_measurements_are_told_with_their_source() -> None:
    result = graded("{a}: sts to go around wrist, multiple of 2", B, head=HEAD.replace("small, large", "child"))
    (name, body), = result.sizes[0].numbers[0].bodies
    assert name == "wrist"
    assert body.mm > 0
    assert body.source


def test_a_gauge_told_in_repeats_gives_whole_repeats_and_stitches_of_a_multiple() -> None:
    head = HEAD.replace("Gauge: 20 sc and 22 rows = 10 cm", "Gauge: 5 repeats and 22 rows = 11 cm")
    assert graded("{a}: repeats to measure 44 cm", B, head=head).values["a"] == (20, 20)
    assert graded("{a}: sts to measure 44 cm, multiple of 6", B, head=head).values["a"] == (120, 120)


def test_a_measured_disc_tells_the_height_of_a_round() -> None:
    head = HEAD.replace("Gauge: 20 sc and 22 rows = 10 cm", "Gauge: 20 sc = 10 cm, 8 rnds of sc = 8 cm across")
    assert graded(A, "{b}: rnds until cuff measures 10 cm across", head=head).values["b"] == (10, 10)


def test_a_blank_named_without_its_braces_is_that_blank() -> None:
    result = graded("{a}: half of body sts", "{body sts}: sts to measure 20 cm", B)
    assert codes(result) == []
    assert result.values["a"] == (20, 20)
