"""Yarn by area against printed lengths: `python -m benchmarks.bench_yarn FILE`, a file of finished items, one JSON object a line.

An item has `finished_num` (width_cm, length_cm, diameter_cm, around_cm: a list per size), `gauge_num` (unit, sts, sts_over_cm, rows,
rows_over_cm) or null, `hook_mm`, `yarn_weight`, `stitch`, `item`, and `yardage_m` with `yardage_basis`, or `yarn_g`. What kind of fabric it
is follows from its words by the fixed rules below. They were written with one such file in view, and lace and filet got fills of their own
after a first score: judge by another file. Constants of stitches and yarn were not chosen by any item.
"""

from __future__ import annotations

import json
import math
import re
import statistics
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from loopwright.grading.gauge import Gauge, StitchSizes, sizes_from
from loopwright.grading.gauge.guess import guess
from loopwright.grading.gauge.heading import yarn_class
from loopwright.grading.gauge.sizes import usual_shape
from loopwright.measuring.yarn import YarnKnown, yarn_from_area
from loopwright.model.measures import YarnNeed
from loopwright.terms import dialect

FILLS = (
    ("filet", r"filet"), ("lace", r"lace|ch[ -]?(?:\d+ )?loops|knot"), ("openwork", r"mesh|eyelet|ch[ -]?1\b|V st|spaces"),
    ("post", r"\bpost|rib\b"),
    ("bobbles", r"bobble|popcorn|puff|cluster"),
)  # fmt: skip
# A hat whose size is told only around: its crown's centre lies two fifths of that from the edge (common practice for heads).
HAT_DEPTH = 0.4


def area_mm2(item: dict[str, Any], size: int) -> float | None:
    """Area of the fabric by the printed measures, of one size; None where they do not tell it."""
    told = {name: values for name, values in (item["finished_num"] or {}).items() if name.endswith("_cm")}
    mm: dict[str, float] = {name.removesuffix("_cm"): 10 * values[min(size, len(values) - 1)] for name, values in told.items()}
    pieces = 2 if re.search(r"two (?:equal )?pieces|made twice|tote", f"{item['item']} {item['counts']}") else 1
    if str(item["finished"]).startswith("crown"):
        return None  # a part only
    if "diameter" in mm:
        return math.pi / 4 * mm["diameter"] ** 2
    if "around" in mm:
        crown = mm["around"] ** 2 / 4 / math.pi
        hat = "hat" in item["item"] and "open" not in item["item"]
        deep = mm.get("length", HAT_DEPTH * mm["around"])
        if hat:
            return crown + mm["around"] * max(0.0, deep - mm["around"] / 2 / math.pi)
        return mm["around"] * mm["length"] if "length" in mm else None
    return mm["width"] * mm["length"] * pieces if "width" in mm and "length" in mm else None


def sizes_of(item: dict[str, Any]) -> StitchSizes | None:
    """Sizes from the gauge, else guessed from the hook and the yarn."""
    words, told = f"{item['stitch']} ", item["gauge_num"]
    named = re.findall(r"[a-z]+", f"{(told or {}).get('unit') or ''} {words}")
    kinds = [k for w in named if (k := dialect("us").kind_of(w)) in ("sc", "hdc", "dc", "tr")]
    kind = kinds[0] if kinds else "dc" if "granny" in words else "sc"
    if told is None:
        hook = item["hook_mm"][0] if isinstance(item["hook_mm"], list) else item["hook_mm"]
        found = guess(kind, yarn_class(item["yarn_weight"] or ""), hook)
        return found.sizes if found else None
    width = 10 * told["sts_over_cm"] / told["sts"]
    if "space" in told["unit"]:  # a filet space: the stitch, and chains for one less than it is tall in chains
        width /= 4 if kind == "tr" else 3
    elif told["unit"] not in ("st", "sc", "hdc", "dc", "tr", "trc", "mixed"):
        return None  # shells and groups of stitches that the figures do not tell
    row = 10 * told["rows_over_cm"] / told["rows"] if told.get("rows") else None
    if told["unit"] == "st" and not kinds and row:  # a pattern of its own: as the stitch whose shape it has
        kind = min(("sc", "hdc", "dc", "tr"), key=lambda k: abs(math.log(row / width / usual_shape(k))))
    return sizes_from(Gauge(width, row), kind, float(told["sts"]), float(told.get("rows") or 0) or None)


def predicted(item: dict[str, Any], size: int) -> YarnNeed | None:
    """Our figure for one size of an item, None where its measures or its stitch do not tell enough."""
    area, sizes = area_mm2(item, size), sizes_of(item)
    if area is None or sizes is None:
        return None
    fill = next((name for name, words in FILLS if re.search(words, f"{item['stitch']} {item['item']}")), "solid")
    return yarn_from_area(area, sizes, YarnKnown(yarn_class(item["yarn_weight"] or "")), sizes.kind, fill)


def weighed(item: dict[str, Any], groups: dict[str, list[tuple[float, bool]]]) -> None:
    """Items with a mass: ours at the middle of the yarn class's metres. What was bought, not what was used: as a rough look only."""
    true, yarn = item["yarn_g"], YarnKnown(yarn_class(item["yarn_weight"] or ""))
    if item["yardage_m"] or not true or not yarn.usual_metres_per_100g:
        return
    for size, grams in enumerate(true if isinstance(true, list) else [true]):
        need = predicted(item, size)
        if need is not None:
            to_g = 100 / yarn.usual_metres_per_100g
            ours = need.length_m * to_g
            print(f"{item['id']} {item['item'][:30]:30} {grams:8.1f} g, ours {ours:8.1f} x{ours / grams:.2f} {need.how[:60]}")
            groups.setdefault("mass bought", []).append((need.length_m * to_g / grams, need.low_m * to_g <= grams <= need.high_m * to_g))


def main() -> None:
    """Prints every item that can be scored, and the medians by group."""
    groups: dict[str, list[tuple[float, bool]]] = {}
    for line in Path(sys.argv[1]).read_text(encoding="utf-8").splitlines():
        item = json.loads(line)
        weighed(item, groups)
        true = item["yardage_m"]
        for size, metres in enumerate(true if isinstance(true, list) else [true] if true else []):
            need = predicted(item, size)
            if need is None:
                continue
            bound = "printed" if str(item["yardage_basis"]).startswith("printed") else "at most"
            group = f"{bound}, {'gauge known' if item['gauge_num'] else 'hook or yarn alone'}"
            groups.setdefault(group, []).append((need.length_m / metres, need.low_m <= metres <= need.high_m))
            said = f"{metres:8.1f} m, ours {need.length_m:8.1f} ({need.low_m:.1f} to {need.high_m:.1f})"
            print(f"{item['id']} {item['item'][:30]:30} {said} x{need.length_m / metres:.2f} {need.how[:60]}  [{group}]")
    for group, cases in sorted(groups.items()):
        ratios = [r for r, _ in cases]
        held = sum(inside for _, inside in cases)
        error = 100 * statistics.median(abs(r - 1) for r in ratios)
        middle = statistics.median(ratios)
        print(f"{group}: {len(cases)} values, median ratio {middle:.2f}, median error {error:.0f} %, in range {held} of {len(cases)}")


if __name__ == "__main__":
    main()
