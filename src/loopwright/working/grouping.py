"""Stitches that were told one after the other but went into one place are a group."""

from __future__ import annotations

from bisect import bisect_left
from itertools import accumulate, compress
from operator import eq

from loopwright.working.kinds import CHAIN, code
from loopwright.working.run import Run
from loopwright.working.slots import HOW, NOTHING
from loopwright.working.view import Group

SLIP = code("sl st")
_RING, _SPACE, _TOP = HOW["ring"], HOW["space"], HOW["top"]


def together(run: Run) -> None:
    """Adds to a run's groups the stitches that share a place and are in no group yet."""
    out, starts, ends, hows = run.out, run.into.start, run.into.end, run.into.how
    added: list[Group] = []
    start, n = int(_stands_beside(run)), len(out)
    if hows.count(_TOP) == n == len(set(starts)):
        return  # each in a stitch of its own
    reach = _reach(run.groups, n)
    likely = compress(range(n - 1), map(eq, starts, starts[1:])) if CHAIN not in out else range(n - 1)
    for at in likely:  # where a group may begin
        if at < start:
            continue
        start = at
        a, b, how = starts[start], ends[start], hows[start]
        alone = starts[start + 1] != a and out[start + 1] != CHAIN
        if alone or how in (NOTHING, _RING) or a < 0 or b - a > 1 and how != _SPACE or out[start] in (CHAIN, SLIP):
            start += 1
            continue
        told = reach[start]
        if told > start + 1 and (told >= n or out[told] != CHAIN and starts[told] != a):
            start = told  # all that went in here is in a group already
            continue
        last = _last(run, start, a, b)
        many = last - start > 1 and last - start - out.count(CHAIN, start, last) > 1
        if many and reach[start] < last:
            added.append(Group(start, last, ""))
        start = max(last, start + 1)
    if added:
        _add(run, added)
        _begun(run)
    if run.named.get("called"):
        _called(run)


def _stands_beside(run: Run) -> bool:
    """Whether the row begins with chains passed over that stand beside a group: "5 dc in 6th ch from hook"."""
    starts = run.into.start[:3]
    return run.tch_item and run.view.foundation and len(set(starts)) == 1 and len(starts) > 2 and any(t.what == "skipped" for t in run.tape)


def _called(run: Run) -> None:
    """Groups that are just like one that words gave a name to in this row have it too: "5 dc in next st (shell made), … 5 dc in next st"."""
    groups, out = run.groups, run.out
    names = {bytes(out[g.start : g.end]): g.name for g in reversed(groups) if g.name}
    groups[:] = [g if g.name else g._replace(name=names.get(bytes(out[g.start : g.end]), "")) for g in groups]


def _begun(run: Run) -> None:
    """A round's first group, made of its start chain, has the name of the others that are just like it: "ch 4, dc in same st, V-st in next sp"."""
    first = run.groups[0]
    if first.start or first.name or len(run.groups) < 2:
        return
    like = run.out[: first.end]
    name = next((g.name for g in run.groups[1:] if g.name and run.out[g.start : g.end] == like), "")
    if name:
        run.groups[0] = first._replace(name=name)


def _last(run: Run, start: int, a: int, b: int) -> int:
    """Where the stitches that went into the place a … b end; chains between them are among them, chains after them not."""
    out, starts, ends, hows = run.out, run.into.start, run.into.end, run.into.how
    end = last = start + 1
    while end < len(out) and (out[end] == CHAIN or hows[end] != NOTHING and starts[end] == a and ends[end] == b):
        end += 1
        last = end if out[end - 1] != CHAIN else last
    return last


def _reach(groups: list[Group], count: int) -> list[int]:
    """Per item: how far a group that begins there or before goes."""
    furthest = [0] * (count + 1)
    if not groups:
        return furthest
    for g in groups:
        if g.start <= count:  # stitches taken back may leave a group behind
            furthest[g.start] = max(furthest[g.start], g.end)
    return list(accumulate(furthest, max))


def _add(run: Run, added: list[Group]) -> None:
    """Puts new groups in; they take in the smaller ones within them, and the name of such a one."""
    known = sorted(run.groups)
    gone: set[int] = set()
    new = []
    for g in added:
        low, high = bisect_left(known, (g.start,)), bisect_left(known, (g.end,))
        inner = [i for i in range(low, high) if known[i].end <= g.end and i not in gone]
        name = next((known[i].name for i in inner if known[i].name), "")
        if not name or len(inner) < 2:
            gone.update(inner)
            new.append(Group(g.start, g.end, name))
    if new:
        run.groups[:] = sorted([g for i, g in enumerate(known) if i not in gone] + new)
