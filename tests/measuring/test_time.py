"""Making time: the table's speeds or her own, and the finishing."""

from __future__ import annotations

import pytest

from loopwright.measuring.time import own_speed, stitches_by_kind, time_need, time_of
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def test_the_table_gives_a_range_with_the_finishing_in_it():
    need = time_of({"sc": 1000})
    assert need.value_min == pytest.approx(1000 * 2.8 / 60 / 0.85)
    assert need.low_min == pytest.approx(1000 * 2.2 / 60 / 0.9)
    assert need.high_min == pytest.approx(1000 * 6 / 60 / 0.8)
    assert "10 to 20 %" in need.how


def test_her_own_speed_narrows_it_and_carries_over_to_other_stitches():
    need = time_of({"sc": 100}, {"sc": 3.0})
    assert need.value_min == pytest.approx(100 * 3 / 60 / 0.85)
    assert need.high_min / need.low_min < 2
    assert time_of({"dc": 100}, {"sc": 3.0}).value_min == pytest.approx(1.4 * need.value_min)
    assert time_of({"sc": 100}, {"dc": 4.2}).value_min == pytest.approx(need.value_min)
    assert time_of({"sc": 50, "dc": 50}, {"sc": 3.0, "dc": 6.0}).value_min == pytest.approx(1.5 * need.value_min)


@pytest.mark.parametrize(("quick", "slow"), [("ch", "sc"), ("sc", "hdc"), ("hdc", "dc"), ("dc", "fpdc"), ("dc", "dc2tog"), ("dc2tog", "dc3tog"), ("dc", "tr")])
def test_more_work_takes_longer(quick, slow):
    assert time_of({quick: 10}).value_min < time_of({slow: 10}).value_min


@pytest.mark.parametrize(("line", "speed"), [
    ("Timed: 20 sc in 60 seconds", {"sc": 3.0}), ("Timed: 15 dc in 1 minute; 20 sc = 50 s", {"dc": 4.0, "sc": 2.5}), ("Timed: quickly", {}),
    ("Timed: 20 sc in 0 seconds", {}), ("Timed: 0 sc in 60 seconds", {}),
])
def test_timed_lines(line, speed):
    assert own_speed(read(Source.of(f"{line}\nTerms: US\nRow 1: Sc in each st."))) == pytest.approx(speed)


def test_timed_lines_are_in_the_patterns_terms():
    assert own_speed(read(Source.of("Terms: UK\nTimed: 20 dc in 60 seconds\nRow 1: Dc in each st."))) == {"sc": 3.0}


def test_chains_turning_chains_and_copies_are_worked_too():
    document = read(Source.of("Strap (make 2)\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each st across. (10 sc)\n"))
    fabric = work(document).fabrics[0]
    assert fabric is not None
    assert stitches_by_kind(fabric) == {"ch": 12, "sc": 20}
    assert time_need(fabric, copies={fabric.rows[0].section: 2}).value_min == pytest.approx(2 * time_need(fabric).value_min)


def test_a_speed_that_is_none_is_refused():
    with pytest.raises(ValueError, match=r"between 0\.3 and 600"):
        time_of({"sc": 10}, {"sc": 0.0})
