"""Texts that are no patterns, or patterns that no one could make: read and worked within bounds, told clearly, never a crash."""

import signal
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from loopwright.cli.main import main
from loopwright.findings.registry import message, severity
from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

SECONDS = 20  # of processor time; generous: it is a limit against hanging, not a benchmark
HAT = "Rnd 1: 6 sc in magic ring. (6)\n"


@contextmanager
def bounded() -> Iterator[None]:
    """Raises TimeoutError inside work that hangs."""

    def stop(_signal: int, _frame: object) -> None:
        raise TimeoutError(f"no answer within {SECONDS} s of work")

    before = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def worked(text):
    """The report of a text that is read, kept, and worked within bounds."""
    with bounded():
        document = read(Source.of(text))
        assert write(document) == Source.of(text).text
        report = work(document)
    for found in report.findings:
        assert message(found)
        assert 0 <= found.span.start <= found.span.end <= len(text)
    return report


def test_an_empty_file_is_said_to_be_empty(tmp_path, capsys):
    file = tmp_path / "empty.txt"
    file.write_bytes(b"")
    assert main(["check", str(file)]) in (0, 1)
    assert "empty.txt" in capsys.readouterr().out


@pytest.mark.parametrize(
    "text",
    [
        "Rnd 1: 999999999 sc in magic ring.",
        HAT + "Rnd 2: (sc in next st, 2 sc in next st) 999999999 times.",
        HAT + "Rnd 2: *sc in next st; rep from * 999999999 times.",
        HAT + "Rnds 2-999999999: Sc in each st around.",
        HAT + "Rnd 2: Rep Rnd 1 999999999 times.",
        "Ch 999999999.\nRow 1: Sc in each ch across.",
        "Ch " + "9" * 4000 + ".\nRow 1: Sc in each ch across.",
        HAT + "\n".join(f"Rnd {n}: (2 sc in each st around) 40 times." for n in range(2, 20)),
        HAT + "\n".join(f"Rnd {n}: 2 sc in each st around." for n in range(2, 30)),
    ],
    ids=lambda t: t[-40:],
)
def test_numbers_beyond_all_measure_are_bounded_and_told(text):
    report = worked(text)
    assert [f for f in report.findings if severity(f) in ("error", "warning")]


@pytest.mark.parametrize("text", ["Rnd 1: 0 sc in magic ring. (0)", "Ch 0.\nRow 1: Sc in each ch across. (0)", HAT + "Rnd 2: (2 sc in next st) 0 times. (0)"])
def test_nothing_at_all_can_be_asked_for(text):
    worked(text)


@pytest.mark.parametrize("text", ["Row 2: as row 2", "Rep Row 1.", HAT + "Rnd 2: As Rnd 3.\nRnd 3: As Rnd 2.", HAT + "Rnd 2: Rep Rnds 1 and 2."])
def test_rows_told_by_themselves(text):
    report = worked(text)
    assert report.findings


@pytest.mark.parametrize("mark", ["(", ")", "[", "]", "{", "}", "*", "**", "(*", "*)", "([{", "((sc) x 2"])
@pytest.mark.parametrize("count", [1, 7, 3000])
def test_brackets_out_of_balance(mark, count):
    worked("Rnd 1: 6 sc in magic ring. (6)\nRnd 2: Sc in next st, " + mark * count + " 2 sc in next st; rep from * around. (12)\n")


@pytest.mark.parametrize("piece", ["x", "sc in next st, ", "(", "*", "(sc, ch 1) in next st, ", "9", "\u00e9", "rep from *; ", "60 (64, 72) ", " ", "{a}"])
def test_one_line_of_a_megabyte(piece):
    worked("Rnd 1: " + piece * (1_000_000 // len(piece)))


BLANKS = (
    "Tension: 16 dc and 18 rnds = 10 cm, 4 mm{}hook", ": 17 of{}dc and 8=rows 1 cm in ripple pattern", "{{x}}: {{hand sts}} ch, join with ss to form{}a ring",
    "Abbreviations: sc{}x", "Sizes: 25 (38){}ch.", "Sizes: S{}M", "Rnd 3: Ch 1, dc in next 22 (35){}dc. (98 (124)", "Finished size: 74 (94, 124){}x 94 cm",
    "Rep Row 2{}times", "Work even{}, for 6 rows", "Dec 1 st at each end{}every 4th row", "Turning chain: ch 3{}counts as dc", "Row 1: Sc in each st.{}Size M: Row 2: Sc",
)


@pytest.mark.parametrize("line", BLANKS)
@pytest.mark.parametrize("blank", [" ", "\t"])
def test_blanks_by_the_hundred_are_passed_over(line, blank):
    worked("Sizes: S (M)\n" + HAT + line.format(blank * 600))


@pytest.mark.parametrize("text", ["and evenly ( ) : rows 1,5 12 dc", "bean ( ) = 3 sc in next st", "( ) : sc", "shell (.) = 5 dc in next st"])
def test_a_stitch_without_a_name(text):
    worked(text + "\nRow 1: Sc in next st.")


@pytest.mark.parametrize("words", ["Fasten off", "join", "turn,", "work even", "until 9 sts", "in each st", "for 3 rows", "and", "of next", "sl st,"])
def test_words_told_over_and_over(words):
    worked(HAT + "Rnd 2: 2 sc in each st around. " + f"{words} " * 60)


def test_repeats_within_repeats_without_end():
    report = worked(HAT + "Rnd 2: Sc in next st, " + "rep from * " * 60 + "around. (12)")
    assert report.findings
    worked(HAT + "Rnd 2: " + "*sc in next st; rep from * twice, " * 60 + "join. (12)")


def test_a_row_that_grows_without_end():
    report = worked(HAT + "Rnds 2-500: 5 sc in each st around.")
    assert [f for f in report.findings if severity(f) == "error"]


def test_a_bracket_that_ends_with_half_an_order():
    for words in ("do not", "Do not turn", "do"):
        worked(HAT + f"Rnd 2: (2 sc in next st) 6 times, (12 times {words}")


@pytest.mark.parametrize("text", [
    "Rnd 1: 3 ch (counts as tr), 2 tr in ring, 2 ch, *3 tr in ring, 2 ch; rep from * twice more; with ss to top of 100000000000000000000-ch. (12 tr)",
    "Rnd 1: Sl st in next 10000000 sts of ring, 6 sc in ring.", "Special stitch: knot = sl st.\nRnd 1: 6 sc in magic ring.\nRnd 2: (10000000 knot) in next st.",
])
def test_slip_stitches_beyond_all_bounds(text):
    assert sum(len(f) for f in worked(text).fabrics if f is not None) < 100_000


@pytest.mark.parametrize("row", ["Rnd 2: sc in each st around. (999999 sc)", "Rnd 2: Work in pattern around. (999999 sc)", "Rep Rnd 1 until 999999 sts."])
def test_a_count_that_no_row_has_makes_no_stitches(row):
    report = worked(HAT + row + "\nRnd 3: sc in each st around. (6)")
    assert sum(len(f) for f in report.fabrics if f is not None) < 100
    assert report.findings or report.assumptions


def test_many_lines():
    worked((HAT + "Rnd 2: 2 sc in each st around. (12)\n") * 1000)


@pytest.mark.parametrize("text", ["\0" * 50, "\x1b[31mRow 1\x1b[0m", "Row 1: \u202esc in each st", "\ud800", "\u0301" * 40, "\t\v\f", "Row \u0663: sc", "Row \u00b2: 3 sc", "Row 1: sc in next \u2460 sts"])
def test_signs_from_elsewhere(text):
    worked(text)


@pytest.mark.parametrize("terms", ["us", "uk", "old"])
def test_a_poem_is_read_as_prose(terms):
    report = work(read(Source.of("The tide goes out, the curlew calls,\nand nobody counts a stitch at all.\n"), terms))
    assert not [f for f in report.findings if severity(f) == "error"]
