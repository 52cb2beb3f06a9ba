"""What is timed. Each function gives lines: what it is, the figure, ">=" or "<=", the target."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from benchmarks.clock import best, command, kept_bytes, side_by_side
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HERE = Path(__file__).parent
DESIGNS = HERE.parent / "designs"
Lines = Iterator[tuple[str, float, str, float]]

SUBSET = (
    "Rnd {n}: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join with sl st to first sc. ({c} sc)",
    "Row {n} (RS): Ch 3 (counts as dc), sk 2 sts, *(2 dc, ch 1, 2 dc) in next ch-1 sp, sk 2 sts; rep from * to last {c} sts, turn.",
    "Row {n}: Ch 1, sc in each of next {c} sts, turn. ({c} sc)",
    "Rnd {n}: (sc2tog, sc in next 2 sts) 6 times; join. (18)",
    "Row {n}: sc in 2nd ch from hook, sc in each st across, turn. ({c} sc)",
    "Rnd {n}: fpdc in each st around; join.",
)


def reading() -> Lines:
    """A thousand rows read into trees, ours against an LALR grammar of the same subset that a generator made."""
    from lark import Lark

    rows = [SUBSET[n % len(SUBSET)].format(n=n + 1, c=12 + n % 40) for n in range(1000)]
    parser = Lark((HERE / "subset.lark").read_text(encoding="utf-8"), parser="lalr")
    text = "\n".join(rows)
    document = read(Source.of(text), "us")
    if len(document.items) != len(rows):
        raise AssertionError("a row of the subset was not read as one row")
    ours, theirs = side_by_side(lambda: read(Source.of(text), "us"), lambda: [parser.parse(row) for row in rows])
    yield f"reading 1,000 rows ({ours * 1000:.0f} ms), times as fast as an LALR grammar", theirs / ours, ">=", 3


def blanket(stitches: int) -> str:
    """A square blanket of single crochet with about so many stitches."""
    side = max(2, round(stitches**0.5))
    return (
        f"Ch {side + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({side} sc)\n"
        f"Rows 2-{side}: Ch 1, sc in each st across, turn. ({side} sc)\n"
    )


def worked(text: str) -> Any:
    """The report of a text; its fabric is not yet woven."""
    return work(read(Source.of(text), "us"))


def woven(text: str) -> Any:
    """A text worked, and its fabric laid down stitch by stitch: it is woven when it is looked at."""
    report = worked(text)
    return report, tuple(report.fabrics)


def web(side: int) -> Any:
    """The same blanket as a graph, node by node: each stitch with its kind and row, tied to the one before and the one below."""
    import networkx as nx

    graph = nx.DiGraph()
    for row in range(side):
        for column in range(side):
            stitch = row * side + column
            graph.add_node(stitch, kind="sc", row=row, side="RS" if row % 2 == 0 else "WS")
            if column:
                graph.add_edge(stitch, stitch - 1, how="after")
            if row:
                graph.add_edge(stitch, (row - 1) * side + side - 1 - column, how="into")
    return graph


def working() -> Lines:
    """A blanket of 100,000 stitches."""
    text = blanket(100_000)
    side = round(100_000**0.5)
    fabric = worked(text).fabrics[0]
    if fabric is None or len(fabric) < side * side:
        raise AssertionError("the blanket was not worked")
    ours, theirs = best(lambda: woven(text), 3), best(lambda: web(side), 3)
    yield f"working 100,000 stitches ({ours * 1000:.0f} ms), times as fast as a graph node by node", theirs / ours, ">=", 20
    yield "  memory, as a share of the graph's", kept_bytes(lambda: woven(text)) / kept_bytes(lambda: web(side)), "<=", 0.1


def flat() -> Lines:
    """The cost of a stitch as blankets grow."""
    costs = {}
    for size in (1_000, 10_000, 100_000, 1_000_000):
        text = blanket(size)
        costs[size] = best(lambda text=text: woven(text), 5 if size < 100_000 else 2) / size * 1e9  # type: ignore[misc]
    told = ", ".join(f"{size:,}: {cost:.0f}" for size, cost in costs.items())
    yield "cost of a stitch, 1,000,000 against 1,000", costs[1_000_000] / costs[1_000], "<=", 1.5
    yield f"  ns a stitch {told}", costs[1_000_000], "<=", max(costs[1_000], costs[10_000]) * 1.5


def hat() -> Lines:
    """The ten-size hat: read, graded, worked in every size, checked."""
    from loopwright.workshop.check import check_source

    source = Source.of((DESIGNS / "samphire-beanie.txt").read_text(encoding="utf-8"))
    sizes = len(check_source(source).sizes)
    yield f"hat in {sizes} sizes read, graded, worked and checked, warm, ms", best(lambda: check_source(source), 5) * 1000, "<=", 200


def start_up() -> Lines:
    """`loopwright --help` against Python doing nothing."""
    bare = command(["-c", "pass"])
    yield "loopwright --help, times the cost of python -c pass", command(["-m", "loopwright", "--help"]) / bare, "<=", 3


def measure() -> Lines:
    """The whole command on a hat in ten sizes, without its shape."""
    hat = str(DESIGNS / "samphire-beanie.txt")
    seconds = command(["-m", "loopwright", "measure", hat, "--json"])
    yield "loopwright measure of a ten-size hat, as a process, ms", 1000 * seconds, "<=", 300


def again() -> Lines:
    """The larger designs checked again after one line was changed, three quarters down: a word of it, and its printed count."""
    from loopwright.workshop.check import check_source

    def both(text: str, changed: str) -> tuple[float, float]:
        full, part = [], []
        for _ in range(15):  # a few milliseconds each: the quickest of few would be chance
            memo: dict[Any, Any] = {}
            check_source(Source.of(text), None, memo)
            full.append(best(lambda: check_source(Source.of(changed)), 1))
            part.append(best(lambda memo=memo: check_source(Source.of(changed), None, memo), 1))  # type: ignore[misc]
        return min(full), min(part)

    words, counts = [], []
    for name in ("reedbed-panel", "sea-lavender-blanket", "avocet-bonnet", "curlew-toy"):
        text = (DESIGNS / f"{name}.txt").read_text(encoding="utf-8")
        rows = list(re.finditer(r"^(?P<row>R(?:nd|ow)s? .*)\((?P<count>\d+)[^()]*\)$", text, re.MULTILINE))
        row = rows[len(rows) * 3 // 4]
        words.append(both(text, text[: row.start()] + row["row"].lower() + text[row.end("row") :]))
        wrong = str(int(row["count"]) + 1)[-len(row["count"]) :]
        counts.append(both(text, text[: row.start("count")] + wrong + text[row.end("count") :]))
    for what, pairs in (("words", words), ("printed count", counts)):
        share = sum(second for _, second in pairs) / sum(full for full, _ in pairs)
        yield f"checking again after the {what} of one line changed, share of a full check", share, "<=", 0.2


def decoding() -> Lines:
    """Every line of the designs and of the forms in mutations.py, read and worked."""
    from benchmarks.mutations import ROWS

    texts = [path.read_text(encoding="utf-8") for path in sorted(DESIGNS.glob("*.txt"))] + ["\n".join(ROWS)]
    count = sum(1 for text in texts for line in text.splitlines() if line.strip())
    yield f"{count} lines of all kinds decoded, ms a line", best(lambda: [worked(t) for t in texts], 3) / count * 1000, "<=", 4
