"""What charts are timed and weighed by. Each function gives lines: what it is, the figure, ">=" or "<=", the target."""

from __future__ import annotations

from benchmarks.bench_layout import against_graphviz
from benchmarks.clock import best
from benchmarks.figures import Lines, blanket, worked
from loopwright.drawing.chart import ChartOptions, charts
from loopwright.grading.gauge import StitchSizes

SIZES = StitchSizes(8.0, 9.0)
COLOURS = (
    "With A, ch 145.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
    "Rows 2-142: Ch 1, *with A, sc in each of next 3 sts, with B, sc in each of next 2 sts, with C, sc in next st; rep from * across.\n"
)


def charting() -> Lines:
    """Charts of about 2,000 and 20,000 symbols, laid out and written, every symbol with its source line; then layout against graphviz."""
    for stitches, most_ms in ((2_000, 300.0), (20_000, 3_000.0)):
        fabric = worked(blanket(stitches)).fabrics[0]
        options = ChartOptions(whole=True, line=lambda stitch: stitch % 99 + 1)
        drawn = charts(fabric, SIZES, options)
        symbols = sum(c.svg.count("data-stitch") for c in drawn)
        if symbols < stitches:
            raise AssertionError("a stitch is missing from the chart")
        yield f"chart of {symbols:,} symbols, ms", best(lambda f=fabric, o=options: charts(f, SIZES, o), 3) * 1000, "<=", most_ms  # type: ignore[misc]
        yield f"  kB for each 2,000 of {symbols:,} symbols", sum(len(c.svg) for c in drawn) / 1000 / (symbols / 2000), "<=", 400
    ring = worked("Rnd 1: 2000 dc in magic ring.\n").fabrics[0]
    yield "chart of 2,000 stitches in one ring, ms", best(lambda: charts(ring, SIZES, ChartOptions(whole=True)), 3) * 1000, "<=", 300.0
    grid = worked(COLOURS).fabrics[0]
    options = ChartOptions(whole=True, line=lambda _: 3)
    drawn = charts(grid, SIZES, options)
    if drawn[0].part != "colour":
        raise AssertionError("rows in several colours are not drawn as squares")
    yield "grid of 20,448 squares in three colours, ms", best(lambda: charts(grid, SIZES, options), 3) * 1000, "<=", 3_000.0
    yield "  kB for each 2,000 squares", sum(len(c.svg) for c in drawn) / 1000 / (20_448 / 2000), "<=", 400
    yield from against_graphviz()
