"""The rules on the designs that come with the product: what they say there is true, and there is next to nothing to say."""

from pathlib import Path

import pytest

from loopwright.workshop.check import check_text

DESIGNS = Path(__file__).parents[2] / "designs"
# the first draft of the hat tells no measurements; a row of the yoke grows and prints no count, as its next rows do
TRUE = {("samphire-as-worked", "C027"), ("plover-cardigan", "C035")}


@pytest.mark.parametrize("path", sorted(DESIGNS.glob("*.txt")), ids=lambda p: p.stem)
def test_rules_say_nothing_untrue(path, codes):
    said = {(path.stem, c) for c in codes(path.read_text(encoding="utf-8"))}
    assert said <= TRUE


def test_a_design_is_checked_in_every_size_with_its_blanks_filled():
    report = check_text((DESIGNS / "samphire-beanie.txt").read_text(encoding="utf-8"))
    assert len(report.sizes) == 10
    assert [f.code for f in report.findings] == []
    last = report.rows[-1]
    assert list(last.counts) == sorted(c or 0 for c in last.counts)
    assert last.agrees
