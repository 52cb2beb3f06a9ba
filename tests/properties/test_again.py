"""A text checked again after a change says the same as one checked for the first time: findings, rows, fabrics."""

from __future__ import annotations

import random
import re
from pathlib import Path
from typing import Any

import pytest

from loopwright.model.fabric import Fabric
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source

DESIGNS = Path(__file__).parents[2] / "designs"


def _changed(text: str, rng: random.Random) -> str:
    """The text with one thing written otherwise, as somebody types."""
    lines = text.split("\n")
    rows = [i for i, line in enumerate(lines) if re.match(r"(?:Rnd|Row)s? ", line)]
    i = rng.choice(rows)
    way = rng.randrange(8)
    if way == 0:
        lines[i] = lines[i].lower()
    elif way == 1:
        lines[i] = re.sub(r"\((\d+)", lambda m: f"({int(m[1]) + rng.choice((-1, 1))}", lines[i])
    elif way == 2:
        lines.insert(i, "Fasten off." if rng.random() < 0.3 else "Count your stitches now and then.")
    elif way == 3:
        del lines[i]
    elif way == 4:
        lines[i] = re.sub(r"(\d+) (times|more)", lambda m: f"{int(m[1]) + 1} {m[2]}", lines[i])
    elif way == 5:
        lines[0] += " of the shore"
    elif way == 6:
        lines[i] = f"With B, {lines[i][0].lower()}{lines[i][1:]}"
    else:
        lines[i] = re.sub(r"^(R\w+ )(\d+)", lambda m: f"{m[1]}{int(m[2]) + 1}", lines[i])
    return "\n".join(lines)


def _columns(fabric: Fabric | None) -> Any:
    names = [name for name in Fabric.__dataclass_fields__ if name != "known"]
    return None if fabric is None else {name: getattr(fabric, name) for name in names}


@pytest.mark.parametrize("name", ["avocet-bonnet", "sea-lavender-blanket", "tideline-blanket", "dunlin-booties", "curlew-toy", "glasswort-bag"])
def test_checking_again_says_what_a_first_check_says(name):
    text = (DESIGNS / f"{name}.txt").read_text(encoding="utf-8")
    rng = random.Random(name)  # noqa: S311 -- no secret is made
    memo: dict[Any, Any] = {}
    check_source(Source.of(text), None, memo)
    for _ in range(6):
        before, text = text, _changed(text, rng)
        again, first = check_source(Source.of(text), None, memo), check_source(Source.of(text))
        assert as_json(Source.of(text), again) == as_json(Source.of(text), first), text
        assert [_columns(f) for f in again.fabrics] == [_columns(f) for f in first.fabrics], text
        text = before if rng.random() < 0.5 else text


def test_words_that_end_elsewhere_are_told_as_on_a_first_check():
    """A full stop more belongs to the join where the words behind it are none of a colour."""
    text = (DESIGNS / "sea-lavender-blanket.txt").read_text(encoding="utf-8")
    memo: dict[Any, Any] = {}
    check_source(Source.of(text), None, memo)
    text = text.replace("3-ch. Fasten off A", "3-ch. fasten off a", 1)
    again, first = check_source(Source.of(text), None, memo), check_source(Source.of(text))
    assert [_columns(f) for f in again.fabrics] == [_columns(f) for f in first.fabrics]


def test_a_count_that_decides_how_a_row_is_worked_decides_it_again():
    """Stitches round an opening are as many as the printed count says: with another count others are made."""
    text = "With 4 mm hook\nRnd 1: Join yarn at the thumb opening, sc evenly around opening. (14 sts)\nRnd 2: Sc in each st around. (14 sts)\n"
    memo: dict[Any, Any] = {}
    counts = []
    for written in (text, text.replace("14", "16"), text.replace("14", "15", 1), text):
        again, first = check_source(Source.of(written), None, memo), check_source(Source.of(written))
        assert as_json(Source.of(written), again) == as_json(Source.of(written), first)
        counts.append([row.counts for row in again.rows])
    assert counts[1] == [(16,), (16,)]
    assert counts[2][0] == (15,)
    assert counts[3] == counts[0] == [(14,), (14,)]
