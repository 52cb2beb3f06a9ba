"""Hooks and yarn classes against the trade's standard lists.

Sources: hook sizes and Standard Yarn Weight System of the Craft Yarn Council's Standards & Guidelines (list of labels from memory, gauges as
reprinted at http://222handspun.com/tips-and-tutorials/tag/Yarn%20size%20gauge); old British numbers as converted in most UK tables (common
practice).
"""

import itertools
import re
from pathlib import Path

import pytest

from loopwright.trade import hooks, yarn

US = {
    "B-1": 2.25, "C-2": 2.75, "D-3": 3.25, "E-4": 3.5, "F-5": 3.75, "G-6": 4.0, "7": 4.5, "H-8": 5.0, "I-9": 5.5, "J-10": 6.0, "K-10 1/2": 6.5,
    "L-11": 8.0, "M/N-13": 9.0, "N/P-15": 10.0, "P/Q-19": 15.0, "S-35": 19.0,
}  # fmt: skip
OLD_UK = {"14": 2.0, "13": 2.25, "11": 3.0, "10": 3.25, "9": 3.5, "8": 4.0, "7": 4.5, "6": 5.0, "5": 5.5, "4": 6.0, "3": 6.5, "2": 7.0, "0": 8.0, "00": 9.0}
STEEL = {"00": 3.5, "7": 1.65, "14": 0.75}
GAUGE = {0: (32, 42), 1: (21, 32), 2: (16, 20), 3: (12, 17), 4: (11, 14), 5: (8, 11), 6: (6, 9)}
HOOK_MM = {1: (2.25, 3.5), 2: (3.5, 4.5), 3: (4.5, 5.5), 4: (5.5, 6.5), 5: (6.5, 9.0), 6: (9.0, 16.0)}
DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))


@pytest.mark.parametrize(("label", "mm"), US.items())
def test_us_labels(label: str, mm: float) -> None:
    assert mm in [hook.mm for hook in hooks.of_label(label)]


@pytest.mark.parametrize(("number", "mm"), OLD_UK.items())
def test_old_british_numbers(number: str, mm: float) -> None:
    assert mm in [hook.mm for hook in hooks.of_old_uk(number)]


@pytest.mark.parametrize(("number", "mm"), STEEL.items())
def test_steel_hooks_run_the_other_way(number: str, mm: float) -> None:
    assert [hook.mm for hook in hooks.of_label(f"steel {number}")] == [mm]


@pytest.mark.parametrize("number", GAUGE)
def test_yarn_classes(number: int) -> None:
    weight = yarn.weights()[number]
    assert weight.number == number
    assert weight.gauge == GAUGE[number]
    assert number not in HOOK_MM or weight.hook_mm == HOOK_MM[number]


def test_a_thicker_class_has_fewer_stitches_fewer_metres_and_a_thicker_hook() -> None:
    ordered = yarn.weights()
    for thin, thick in itertools.pairwise(ordered):
        assert thin.gauge >= thick.gauge
        assert thin.metres_per_100g[0] > thick.metres_per_100g[0]
        assert thin.hook_mm[0] <= thick.hook_mm[0]
        assert thin.wraps_per_inch[0] > thick.wraps_per_inch[0]


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_hooks_of_the_designs_are_labelled_as_the_trade_labels_them(path: Path) -> None:
    found = re.search(r"^Hook: ([\d.]+) mm(?: \(([^)]+)\))?", path.read_text(encoding="utf-8"), re.MULTILINE)
    if found and found[2]:
        labels = [hook.mm for hook in hooks.of_label(found[2])] + [hook.mm for hook in hooks.of_old_uk(re.sub(r"\D", "", found[2]))]
        assert float(found[1]) in labels


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_yarns_of_the_designs_are_of_a_class_with_that_many_metres(path: Path) -> None:
    """Metres per 100 g of each design's yarn, within a tenth of the class that its name says."""
    text = path.read_text(encoding="utf-8")
    found = re.search(r"^Yarn: ([^,\n]+),.*?(\d+) g = (\d+) m", text, re.MULTILINE)
    assert found
    weight = yarn.weight(found[1])
    metres = int(found[3]) * 100 / int(found[2])
    assert weight is not None
    assert weight.metres_per_100g[0] * 0.9 <= metres <= weight.metres_per_100g[1] * 1.1
