"""A designer's own size chart: every way of writing it down, and what is said where it is wrong."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.trade import sizes

SAME = {
    "spaces": "size     head circumference   hat height\nsmall    50 cm                19.5 cm\nlarge    56 cm                22 cm",
    "csv": "size,head,hat height\nsmall,50 cm,19.5 cm\nlarge,56 cm,22 cm\n",
    "one unit for all": "all in cm\nsize,head,hat height\nsmall,50,19.5\nlarge,56,22\n",
    "decimal commas": "size;head (cm);hat height (cm)\nsmall;50;19,5\nlarge;56;22",
    "bars": "| size | head (cm) | hat height |\n|---|---|---|\n| small | 50 | 195 mm |\n| large | 56 | 22 cm |",
    "across": "My own chart\nmeasurement  small  large\nhead   50 cm   56 cm\nhat height  19.5 cm  22 cm",
    "tabs and CRLF": "size\thead\that height\r\nsmall\t50 cm\t19.5 cm\r\nlarge\t56 cm\t22 cm\r\n",
}


@pytest.mark.parametrize("text", SAME.values(), ids=SAME)
def test_a_chart_is_read_however_it_is_written(text):
    chart = sizes.read_chart(text)
    assert [(s.name, s.measure("head").mm, s.measure("hat depth").mm) for s in chart.sizes] == [("small", 500, 195), ("large", 560, 220)]


def test_inches_fractions_ranges_and_unknown_figures():
    chart = sizes.read_chart('size  head (in)  hat height  ear to ear\nteen  20-21 1/2  7½"  30 cm\nadult  22  -  31 cm')
    teen = chart.find("14 years")
    assert teen.measure("head").low_mm == pytest.approx(508)
    assert teen.measure("head").mm == pytest.approx(527.05)
    assert teen.measure("hat height").mm == pytest.approx(190.5)
    assert teen.measure("Ear to ear").mm == 300
    with pytest.raises(sizes.UnknownNameError, match="no hat height for adult"):
        chart.find("adult").measure("hat height")


@pytest.mark.parametrize(
    ("text", "line", "column", "problem"),
    [
        ("", 1, 1, "needs a line of names"),
        ("size,head\nsmall,50\n", 2, 7, "no unit"),
        ("size,head circumfrence\nsmall,50 cm\n", 1, 6, "nearest: head circumference"),
        ("size,head\nsmall,50 cm\nSmall,51 cm", 3, 1, "stands twice"),
        ("size,head,around head\nsmall,50 cm,50 cm", 1, 11, "stands twice"),
        ("size,head\nsmall,fifty\n", 2, 7, "no length"),
        ("size,head\nsmall,50 cm, 40 cm\n", 2, 14, "3 columns here, but 2 names"),
        ("size,head\nsmall,5000 cm\n", 2, 7, "at most 3 m"),
        ("size,head\nsmall,0 cm\n", 2, 7, "more than 0"),
        ("size,head\nsmall,56-50 cm\n", 2, 7, "downwards"),
        ("size,head\nsmall,1/0 in\n", 2, 7, "no length"),
        ("size,head\n,50 cm\n", 2, 1, "without a name"),
    ],
)
def test_what_is_wrong_is_said_with_its_place(text, line, column, problem):
    with pytest.raises(sizes.ChartError, match=problem) as found:
        sizes.read_chart(text)
    assert (found.value.line, found.value.column) == (line, column)


def test_the_first_line_of_the_chart_may_be_any_line_of_the_pattern():
    with pytest.raises(sizes.ChartError, match="line 21, column 7"):
        sizes.read_chart("size,head\nsmall,fifty\n", first_line=20)


@settings(deadline=None)
@given(st.text(alphabet='size, \n\t|;-–01.½/cmn"headt()٣²', max_size=120))
def test_nothing_else_is_ever_raised(text):
    try:
        sizes.read_chart("size, head\nsmall, 5" + text)
        sizes.read_chart(text)
    except sizes.ChartError:
        pass
