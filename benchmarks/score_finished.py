"""Finished sizes measured against printed ones: python -m benchmarks.score_finished FILE.jsonl.

Each line of the file is an item with a printed gauge, counts and size: {"id", "gauge_num": {"unit", "sts", "sts_over_cm", "rows",
"rows_over_cm"}, "counts_num": {"sts_across": […], "rows": […]}, "finished_num": {"width_cm" | "around_cm" | "length_cm": […]}}. The counts
become a written pattern, the pattern is read, worked and measured, and what is measured is set beside what was printed.
"""

from __future__ import annotations

import json
import statistics
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from loopwright.source import Source
from loopwright.workshop.measure import measure_source

KINDS = {"tr space": "tr", "dc space": "dc", "trc": "tr", "group": "dc", "shell": "dc"}  # units that are no stitch; others: sc
CHAINS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4}
FROM_HOOK = {1: "2nd", 2: "3rd", 3: "4th", 4: "5th"}


def pattern(item: dict[str, Any], sts: int, rows: int, *, around: bool) -> str:
    """The item as a written pattern: so many stitches, so many rows, in the stitch of its gauge."""
    g = item["gauge_num"]
    kind = g["unit"] if g["unit"] in CHAINS else KINDS.get(g["unit"], "sc")
    gauge = f"{g['sts']} {kind} = {g['sts_over_cm']} cm"
    if g["rows"]:
        gauge += f", {g['rows']} rows = {g['rows_over_cm']} cm"
    if around:
        start = f"Ch {sts}, join with sl st to form a ring.\nRnd 1: Ch 1, {kind} in each ch around; join. ({sts} {kind})"
        more = f"\nRnds 2-{rows}: Ch 1, {kind} in each st around; join. ({sts} {kind})" if rows > 1 else ""
    else:
        high = CHAINS[kind]
        start = f"Ch {sts + high}.\nRow 1: {kind} in {FROM_HOOK[high]} ch from hook and in each ch across, turn. ({sts} {kind})"
        more = f"\nRows 2-{rows}: Ch {high} (does not count as st), {kind} in each st across, turn. ({sts} {kind})" if rows > 1 else ""
    return f"{item['item']}\nTerms: US\nGauge: {gauge}\n\n{start}{more}\n"


def errors(item: dict[str, Any]) -> Iterator[tuple[str, float, float]]:
    """For each printed dimension that the counts tell: its name, what is printed and what is measured, mm."""
    counts, done = item.get("counts_num") or {}, item.get("finished_num") or {}
    if not item.get("gauge_num"):
        return
    across, rows = counts.get("sts_across") or [], counts.get("rows") or []
    around = "around_cm" in done
    for i in range(max(len(across), len(rows))):
        sts = across[min(i, len(across) - 1)] if across else 12
        many = rows[min(i, len(rows) - 1)] if rows else 1
        measured = measure_source(Source.of(pattern(item, sts, many, around=around), item["id"]))
        found = {d.name: d.value_mm for d in measured.sizes[0].dimensions}
        for name, key, known in (("width", "width_cm", across), ("around", "around_cm", across), ("depth", "length_cm", rows)):
            if known and key in done and name in found and (key != "length_cm" or item["gauge_num"]["rows"]):
                yield name, 10 * done[key][min(i, len(done[key]) - 1)], found[name]


def main() -> None:
    """Prints each dimension and the median error."""
    shares: list[float] = []
    for line in Path(sys.argv[1]).read_text(encoding="utf-8").splitlines():
        item = json.loads(line)
        for name, printed, measured in errors(item):
            shares.append(abs(measured / printed - 1))
            print(f"{item['id']:8} {name:7} printed {printed:7.0f} measured {measured:7.0f} mm  {100 * (measured / printed - 1):+6.1f} %")
    print(f"{len(shares)} dimensions, median error {100 * statistics.median(shares):.1f} %, within 5 %: {sum(s <= 0.05 for s in shares)}")


if __name__ == "__main__":
    main()
