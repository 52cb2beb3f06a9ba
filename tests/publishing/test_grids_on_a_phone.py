"""Grids on the pages of a phone: drawn for its width, so that their squares and letters can be read."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from loopwright.publishing.document import Edition
from loopwright.source import Source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.gather import gather
from loopwright.workshop.publish.pictures import PHONE_PX, Drawings

DESIGNS = Path(__file__).parents[2] / "designs"


def drawn(name: str, *editions: Edition) -> list[list[tuple[float, float]]]:
    """Of each edition's charts their own width, and the width they are shown at, in CSS pixels."""
    found = gather(Source.of((DESIGNS / name).read_text(encoding="utf-8"), name), Wanted(), DESIGNS, DESIGNS / name)
    drawings = Drawings(found.measured)
    said = [[d.picture.data[:600].decode() for d in drawings.charts(e)] for e in editions]
    return [[(float(re.search(r'viewBox="0 0 ([\d.]+)', s)[1]), float(re.search(r' width="([\d.]+)"', s)[1])) for s in one] for one in said]  # type: ignore[index]


def test_a_grid_is_drawn_for_the_width_of_a_phone_and_as_ever_for_paper() -> None:
    paper, phone = drawn("reedbed-panel.txt", Edition(), Edition(paper="phone"))
    assert [shown for _, shown in phone] == [PHONE_PX] * len(phone)
    assert phone[0][0] < paper[0][0]  # narrower by what stands beside its rows


@pytest.mark.parametrize("paper", ["letter", "phone"])
def test_what_is_no_grid_is_the_same_on_every_paper(paper: str) -> None:
    first, other = drawn("dunlin-booties.txt", Edition(), Edition(paper=paper))  # type: ignore[arg-type]
    assert first == other
