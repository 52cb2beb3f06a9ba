"""Laying fabric down: shells in rows, squares in rounds, and how the cost of a stitch goes with the size. Run it by itself.

`python -m benchmarks.bench_fabric` prints milliseconds, nanoseconds a stitch, and the share of the time that weaving takes.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.clock import best, kept_bytes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def shells(side: int) -> str:
    """A blanket of shells, about `side` stitches wide and as many rows long."""
    return (
        f"Ch {side // 6 * 6 + 2}.\n"
        "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
        "Row 2: Ch 3 (counts as dc), 2 dc in first st, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last 6 sts, "
        "sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.\n"
        "Row 3: Ch 1, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across, turn.\n"
        f"Rows 4-{max(4, side)}: Rep Rows 2 and 3.\n"
    )


def square(rounds: int) -> str:
    """One large square in rounds: no round is like another."""
    lines = [
        "Ch 4, join with sl st to form a ring.",
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3.",
    ]
    for i in range(2, rounds + 1):
        side = f", (3 dc in next ch-1 sp, ch 1) {i - 2} times" if i > 2 else ""
        lines.append(
            f"Rnd {i}: Sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1{side}, "
            f"*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1{side}; rep from * twice more; join with sl st to top of ch-3."
        )
    return "\n".join(lines)


def measured(name: str, text: str) -> None:
    """Prints one line: stitches, milliseconds, nanoseconds and bytes a stitch."""
    document = read(Source.of(text), "us")

    def worked() -> Any:
        return work(document).fabrics[0]

    stitches = len(worked())
    seconds = best(worked, 3)
    held = kept_bytes(worked) / stitches
    print(f"{name:28} {stitches:>9,} sts {seconds * 1000:8.1f} ms {seconds / stitches * 1e9:8.0f} ns a st {held:6.0f} bytes a st")


def main() -> None:
    """All the figures."""
    for side in (32, 100, 316, 1000):
        measured(f"shells, {side} wide", shells(side))
    for rounds in (10, 40, 110):
        measured(f"square, {rounds} rounds", square(rounds))


if __name__ == "__main__":
    main()
