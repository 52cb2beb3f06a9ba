"""Where measurements come from: the size chart in the pattern first, then the trade's."""

from __future__ import annotations

from collections.abc import Callable

from loopwright.trade import sizes as trade_sizes

Measure = Callable[[str, str], float]


class NoMeasurement(LookupError):
    """A size or a measurement that no chart knows; the message names the nearest ones."""


def trade_measure(which: str = "trade") -> Measure:
    """Looks measurements up in one of the trade's charts: (size, measurement) to millimetres. The lookup raises NoMeasurement."""
    chart = trade_sizes.chart(which)

    def measure(size: str, what: str) -> float:
        try:
            return float(chart.find(size).measure(what).mm)
        except trade_sizes.UnknownNameError as e:
            raise NoMeasurement(str(e)) from None

    return measure


def known_to_trade(size: str, which: str = "trade") -> bool:
    """Whether the chart has a size of that name."""
    try:
        trade_sizes.chart(which).find(size)
    except trade_sizes.UnknownNameError:
        return False
    return True
