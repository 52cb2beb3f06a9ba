"""Lines without end through reading and working: reports each that raises, is not kept, hangs, or takes more than 250 ms.

python -m benchmarks.fuzz_long --lines 1000000 --seed 1 --report offenders.txt
python -m benchmarks.fuzz_long --lines 20000 --language de
"""

from __future__ import annotations

import argparse
import signal
import sys
import time
from collections import Counter
from pathlib import Path
from typing import NamedTuple

from benchmarks.mutations import FIRST, IN_OTHERS, lines
from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

SLOW_S = 0.25
ROW_S = 0.002  # a line may ask for 2,000 rows: so much more for each
HANG_S = 10.0  # of processor time
MANY = "many rows"  # over the limit only by the rows asked for: reported, and counted apart


class Cost(NamedTuple):
    """What one text took."""

    seconds: float  # of processor time
    rows: int  # that it asked for

    @property
    def slow(self) -> bool:
        """Over the limit, its rows allowed for."""
        return self.seconds > SLOW_S + ROW_S * self.rows

    @property
    def long(self) -> bool:
        """Over the limit that holds for any line, whatever it asks for."""
        return self.seconds > SLOW_S


def once(text: str, terms: str | None) -> Cost:
    """Reads and works one text. Raises what reading and working raise, AssertionError when text is lost."""
    begin = time.process_time()
    document = read(Source.of(text), terms)
    if write(document) != Source.of(text).text:
        raise AssertionError("not kept")
    report = work(document)
    rows = len(report.rows)
    tuple(report.fabrics)  # woven when looked at
    return Cost(time.process_time() - begin, rows)


def timed(text: str, terms: str | None) -> Cost:
    """As once. Raises TimeoutError when it hangs."""
    signal.setitimer(signal.ITIMER_VIRTUAL, HANG_S)
    try:
        return once(text, terms)
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)


def trouble(text: str, terms: str | None) -> str | None:
    """What is wrong with a text: the exception, "hangs", "slow" or "many rows"; None when all is well."""
    try:
        if not timed(text, terms).long:
            return None
        best = min(timed(text, terms) for _ in range(2))
    except TimeoutError:
        return "hangs"
    except Exception as e:  # noqa: BLE001 (any exception is what is looked for)
        at = e.__traceback__
        while at is not None and at.tb_next is not None:
            at = at.tb_next
        where = f"{Path(at.tb_frame.f_code.co_filename).name}:{at.tb_lineno}" if at is not None else "?"
        return f"raises {type(e).__name__} at {where}: {e}"
    if not best.long:
        return None
    return f"{'slow' if best.slow else MANY} ({best.seconds * 1000:.0f} ms, {best.rows} rows)"


def _stop(_signal: int, _frame: object) -> None:
    raise TimeoutError


def main() -> int:
    """Runs the lines; 1 when there were offenders."""
    args = argparse.ArgumentParser(description=__doc__)
    args.add_argument("--lines", type=int, default=1_000_000)
    args.add_argument("--seed", type=int, default=1)
    args.add_argument("--language", choices=["en", *IN_OTHERS], default="en", help="what the rows are written in that are mutated")
    args.add_argument("--report", type=Path, help="a file that offenders are added to")
    args.add_argument("--seconds", type=float, default=float("inf"), help="stop after so long")
    given = args.parse_args()
    signal.signal(signal.SIGVTALRM, _stop)
    begin, kinds, ran = time.monotonic(), Counter[str](), 0
    other = given.language != "en"
    for line in lines(given.seed, given.language):
        if ran >= given.lines or time.monotonic() - begin > given.seconds:
            break
        text = line if ran % 3 == 0 or other else FIRST + line
        found = trouble(text, given.language if other else ("us", "uk", "old", None)[ran % 4])
        ran += 1
        if found:
            kinds[found.split(" (")[0][:80]] += 1
            if given.report:
                with given.report.open("a", encoding="utf-8") as f:
                    f.write(f"{found}\n    {text!r}\n")
        if ran % 20_000 == 0:
            print(f"{ran:,} lines, {time.monotonic() - begin:.0f} s, {kinds.total() - kinds[MANY]} offenders", file=sys.stderr)
    bad = kinds.total() - kinds[MANY]
    print(f"{ran:,} lines with seed {given.seed} in {time.monotonic() - begin:.0f} s: {bad} offenders")
    for kind, count in kinds.most_common():
        print(f"{count:6}  {kind}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
