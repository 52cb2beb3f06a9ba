"""The figures that Loopwright holds itself to, each with its target beside it.

    python -m benchmarks.run [NAME …]

Ratios compare two things within this one run; each side is the best of several runs, in processor time. Exit code 1 when one is missed.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from benchmarks import bench_chart, bench_compare, bench_pages, bench_shape, figures


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the table."""

    name: str
    figure: str
    target: str
    met: bool


FIGURES: dict[str, Callable[[], Iterator[tuple[str, float, str, float]]]] = {
    "reading": figures.reading,
    "working": figures.working,
    "flat": figures.flat,
    "hat": figures.hat,
    "help": figures.start_up,
    "again": figures.again,
    "decoding": figures.decoding,
    "measure": figures.measure,
    "charting": bench_chart.charting,
    "comparing": bench_compare.comparing,
    "pages": bench_pages.setting,
    "strain": bench_shape.strained,
    "picture": bench_shape.first_picture,
    "descent": bench_shape.plain_descent,
    "layouts": bench_shape.layouts,
    "spring layout": bench_shape.spring_layout,
}


def lines(names: list[str]) -> Iterator[Line]:
    """The lines of the table, one figure after the other."""
    for name in names:
        for what, value, sign, target in FIGURES[name]():
            met = value >= target if sign == ">=" else value <= target
            yield Line(what, f"{value:,.2f}", f"{sign} {target:g}", met)


def main() -> int:
    """Prints the table as it comes; 1 when a target is missed."""
    args = argparse.ArgumentParser(description=__doc__)
    args.add_argument("names", nargs="*", choices=[*FIGURES, []], help=f"figures to take (all): {', '.join(FIGURES)}")
    names = args.parse_args().names or list(FIGURES)
    missed = 0
    print(f"{'figure':<74}{'measured':>12}{'target':>10}")
    for line in lines(names):
        missed += not line.met
        print(f"{line.name:<74}{line.figure:>12}{line.target:>10}{'' if line.met else '   MISSED'}", flush=True)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
