"""The examples of the pages: the bad one brings the finding, the better one does not."""

import pytest

from loopwright.findings.registry import load
from loopwright.workshop.check import check_text

HEAD = {"Yarn": "DK, wool", "Hook": "4 mm", "Gauge": "16 sc and 18 rows = 10 cm", "Finished size": "20 cm deep"}
LEFT_OUT = {"C024": "Gauge", "C025": "Hook", "C026": "Yarn", "C027": "Finished size"}
ROW = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)"
NAMES = ("Yarn", "Hook", "Gauge", "Finished size", "Sizes", "Terms", "Abbreviations", "Turning chain", "Multiple", "Notes")


def _texts(example, left_out):
    """The example as it stands, and put into a whole pattern: its heading lines above, its rows below."""
    lines = example.split("\n")
    title = [] if ":" in lines[0] or lines[0].startswith("Ch") else [lines[0]]
    told = [x for x in lines if x.split(":")[0] in NAMES]
    rest = [x for x in lines if x not in told and x not in title]
    own = {x.split(":")[0] for x in told}
    heading = [f"{k}: {v}" for k, v in HEAD.items() if k not in own and k != left_out]
    rows = rest if any(x.startswith(("Row", "Rnd")) for x in rest) else ["Ch 13.", ROW, *rest]
    yield example
    yield "\n".join([*(title or ["Reed Cowl"]), *told, *heading, "", "Body", *rows, ""])


@pytest.mark.parametrize("code", [c for c in sorted(load()) if c.startswith("C")])
def test_the_example_has_it_and_the_better_one_has_not(code):
    entry = load()[code]
    left_out = LEFT_OUT.get(code)
    had = [code in {f.code for f in check_text(t).findings} for t in _texts(entry.example, left_out)]
    has = [code in {f.code for f in check_text(t).findings} for t in _texts(entry.better, None)]
    assert any(had)
    assert not any(has[1:] if left_out else has)
