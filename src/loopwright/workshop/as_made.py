"""A row told by what it makes, where its own words only say to go on as before: "hdc in next 3 sts, 2 hdc in next st", 8 times in all."""

from __future__ import annotations

from itertools import groupby
from typing import NamedTuple

from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow
from loopwright.terms import dialect

_MOST_RUNS = 4  # in one round of the repeat; longer ones are no help


class Made(NamedTuple):
    """The words of one round of the repeat, how often it is worked, and the first stitch of every one."""

    words: str
    times: int
    starts: tuple[int, ...]


def as_made(fabric: Fabric, row: FabricRow, terms: str) -> Made | None:
    """One kind of stitch, worked into the tops of the row below from its first to its last; None where it is more than that."""
    stitches = [s for s in range(row.start, row.end) if ROLES[fabric.role[s]] == "edge"]
    if not stitches or row.borrowed or len({fabric.kind[s] for s in stitches}) != 1:
        return None
    if any(fabric.many[s] or fabric.into[s] < 0 for s in stitches):
        return None
    if any(PLACES[fabric.place[s]] != "top" for s in stitches):
        return None
    into = [(parent, list(group)) for parent, group in groupby(stitches, key=lambda s: fabric.into[s])]
    if len({parent for parent, _ in into}) != len(into):
        return None
    given = [len(group) for _, group in into]
    period = next(p for p in range(1, len(given) + 1) if len(given) % p == 0 and given[:p] * (len(given) // p) == given)
    runs = [(n, len(list(group))) for n, group in groupby(given[:period])]
    if len(runs) > _MOST_RUNS:
        return None
    short, times = dialect(terms).term(fabric.kinds[fabric.kind[stitches[0]]]).short, len(given) // period
    if len(runs) == 1:
        return Made(f"{short} in each st" if runs[0][0] == 1 else f"{runs[0][0]} {short} in each st", 1, ())
    return Made(", ".join(_run(n, sts, short) for n, sts in runs), times, tuple(into[i * period][1][0] for i in range(times)))


def _run(many: int, sts: int, short: str) -> str:
    what = short if many == 1 else f"{many} {short}"
    if sts == 1:
        return f"{what} in next st"
    return f"{what} in next {sts} sts" if many == 1 else f"{what} in each of next {sts} sts"
