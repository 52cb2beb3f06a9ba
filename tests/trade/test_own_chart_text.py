"""A designer's own chart changed as text: one figure, a size more, a measurement more; whatever marks its columns."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.trade.own_chart import ChartError, read_chart
from loopwright.trade.own_chart_text import laid_out, with_figure

SPACED = "size     head circumference   hat height\nsmall    50 cm                19.5 cm\nlarge    56 cm                22 cm\n"
CHARTS = {
    "spaces": SPACED, "tabs": "size\thead\that height\nsmall\t50 cm\t19.5 cm\nlarge\t56 cm\t22 cm\n",
    "bars": "| size | head | hat height |\n|---|---|---|\n| small | 50 cm | 19.5 cm |\n| large | 56 cm | 22 cm |\n",
    "commas": "size,head,hat height\nsmall,50 cm,19.5 cm\nlarge,56 cm,22 cm\n", "across": "measure       small    large\nhead     50 cm    56 cm\nhat height    19.5 cm    22 cm\n",
    "all in": "all in cm\nsize     head    hat height\nsmall    50      19.5\nlarge    56      22\n",
}


def figures(text: str) -> dict[str, dict[str, float]]:
    return {s.name: {name: length.mm for name, length in s.lengths.items()} for s in read_chart(text).sizes}


@pytest.mark.parametrize("text", CHARTS.values(), ids=CHARTS)
def test_one_figure_is_changed_and_no_other(text: str) -> None:
    before, after = figures(text), figures(with_figure(text, "large", "head circumference", "57.5 cm"))
    assert before["large"]["head circumference"] == 560
    before["large"]["head circumference"] = 575
    assert after == before


@pytest.mark.parametrize("text", [CHARTS[k] for k in ("spaces", "tabs", "bars", "commas", "across")], ids=("spaces", "tabs", "bars", "commas", "across"))
def test_a_size_or_a_measurement_more(text: str) -> None:
    more = figures(with_figure(text, "huge", "head circumference", "60 cm"))
    assert list(more) == ["small", "large", "huge"]
    assert more["huge"] == {"head circumference": 600}
    wider = figures(with_figure(text, "small", "chest", "70 cm"))
    assert wider["small"]["chest"] == 700
    assert "chest" not in wider["large"]


@pytest.mark.parametrize("said", ["fifty", "0 cm", "5000 cm", "50 stones"])
def test_a_figure_that_is_none(said: str) -> None:
    with pytest.raises(ChartError):
        with_figure(SPACED, "small", "head circumference", said)


@pytest.mark.parametrize("text", ["", "size\n", "just words"])
def test_a_chart_that_is_none(text: str) -> None:
    with pytest.raises(ChartError):
        with_figure(text, "small", "head circumference", "50 cm")


@given(st.lists(st.floats(10, 2900).map(round), min_size=1, max_size=12))
def test_what_is_laid_out_is_read_back(lengths: list[int]) -> None:
    names = [f"size {i}" for i in range(len(lengths))]
    read = figures(laid_out(names, {"head circumference": list(lengths)}))
    assert {n: v["head circumference"] for n, v in read.items()} == dict(zip(names, lengths, strict=True))
