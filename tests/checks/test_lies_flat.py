"""From faults of the fabric to findings: what is said, and what is left alone because it is meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.checks.lies import lie_findings
from loopwright.checks.pattern import look
from loopwright.findings import Finding
from loopwright.findings.registry import hints, load, message, severity
from loopwright.grading import grade
from loopwright.grading.gauge import stitch_sizes
from loopwright.measuring.flatness import faults
from loopwright.model.lies import LieFault
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

ROOT = Path(__file__).parents[2]
TEXTS = sorted([*(ROOT / "designs").glob("*.txt"), *(Path(__file__).parent / "sound").glob("*.txt")])
CODES = [c for c in sorted(load()) if c.startswith("M")]


def found(text: str) -> list[Finding]:
    """The findings about how it lies, of every size."""
    graded = grade(read(Source.of(text)), work)
    assert graded.report is not None
    sizes = stitch_sizes(graded.document).sizes
    pattern = look(graded.document, graded.report)
    if sizes is None:
        return []
    return [f for fabric in graded.report.fabrics if fabric is not None for f in lie_findings(pattern, faults(fabric, None, sizes))]


def codes(text: str) -> list[str]:
    return [f.code for f in found(text)]


@pytest.mark.parametrize("path", TEXTS, ids=lambda p: p.stem)
def test_nothing_is_said_of_sound_patterns(path):
    assert [(f.code, message(f)) for f in found(path.read_text(encoding="utf-8"))] == []


@pytest.mark.parametrize("code", CODES)
def test_the_example_has_it_and_the_better_one_has_not(code):
    entry = load()[code]
    first = found(entry.example)[0]
    assert (first.code, severity(first)) == (code, entry.severity)
    assert "?" not in message(first)
    assert hints(first)
    assert code not in codes(entry.better)


def disc(title: str, rate: int, section: str = "", after: str = "") -> str:
    rounds = [f"Rnd 1: {rate} sc in magic ring. ({rate})"]
    rounds += [f"Rnd {n}: Sc around, increasing {rate} sts evenly. ({rate * n})" for n in range(2, 8)]
    return f"{title}\nGauge: 20 sc and 22 rows = 10 cm\nTerms: US\n\n{section}\n" + "\n".join(rounds) + f"\n{after}\n"


HAT = "Rnds 8-16: Sc in each st around. (49)"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        (disc("Avocet Coaster", 7), ["M002"]),
        (disc("Avocet Coaster", 4), ["M001"]),
        (disc("Sea-lavender", 7), ["M002"]),
        (disc("Avocet Rug", 10), ["M002"]),
        (disc("Glasswort Bag", 5, "Bottom", HAT.replace("49", "35")), ["M001"]),
        (disc("Sea-lavender", 10), []),  # so far off, and no word says that it is to be flat
        (disc("Curlew Toy", 4), []),
        (disc("Avocet Coaster", 4, after="Stuff it firmly."), []),
        (disc("Avocet Bowl", 5), []),
        (disc("Sea-lavender Flower", 8), []),
        (disc("Samphire", 5, "Crown", HAT.replace("49", "35")), []),
        (disc("Samphire Beanie", 5), []),
        (disc("Avocet Coaster", 6), []),
    ],
)
def test_discs(text, code):
    assert codes(text) == code


def edited(code: str, *changes: tuple[str, str]) -> str:
    text = load()[code].example
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return text


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("M003", [("Reed Coaster", "Reed Hexagon")]),
        ("M003", [("Reed Coaster", "Reed Toy")]),
        ("M004", [("Edge:", "Neck edge:")]),
        ("M004", [("Edge:", "Gathered edge:")]),
        ("M005", [("Reed Cloth", "Reed Tray")]),
        ("M005", [("\nBorder\n", "\nSides\n")]),
        ("M006", [("Reed Blanket", "Reed Shawl")]),
        ("M006", [("in next 3 sts, sc2tog; rep from * across, turn.", "in next 3 sts, sc2tog; rep from * across, turn. (55 sc)")]),
        ("M007", [("Reed Scarf", "Reed Bias Scarf")]),
        ("M008", [("Reed Cowl", "Reed Cowl with a drawn-in edge")]),
        ("M008", [("work 60 sc evenly around", "sc around, decreasing 20 sts evenly")]),
    ],
)
def test_what_is_meant_is_left_alone(code, changes):
    assert code in codes(load()[code].example)
    assert code not in codes(edited(code, *changes))


def test_what_two_pieces_have_alike_is_said_once():
    coaster = disc("Avocet Coaster", 7, "First").rstrip()
    second = "\n".join(coaster.split("\n")[5:])
    assert codes(f"{coaster}\nFasten off.\n\nSecond\n{second}\n") == ["M002"]


def test_a_fault_of_a_row_that_is_not_there_is_passed_over():
    document = read(Source.of("Rnd 1: 6 sc in magic ring.\n"))
    pattern = look(document, work(document))
    for what in ("cups", "ruffles", "corners", "row ends", "border", "ripple", "slant", "edging"):
        lost = LieFault(what, None, "", 0, 99, 0.2, "mend it")
        assert list(lie_findings(pattern, [lost])) == []
