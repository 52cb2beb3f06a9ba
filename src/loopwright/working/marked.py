"""Markers: where they are placed, carried up from row to row, and looked for."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.model.tree import Mark
from loopwright.working.kinds import CHAIN
from loopwright.working.run import Run, RunsOut
from loopwright.working.view import Slot

MOST = 100  # markers in a row; no piece has as many
Markers = tuple[tuple[int, bool], ...]


def carried(run: Run) -> Markers:
    """The markers of the row that was made: those it places itself, else those below it where they have come to stand."""
    placed = tuple(dict.fromkeys((max(0, n.at - (n.word == "st")), n.word == "st") for n in run.tape if n.what == "marker" and n.at <= len(run.out)))
    below = run.view.markers
    if not below or run.named.get("no-markers") or len(placed) >= len(below):
        return placed[:MOST]
    inside, gaps = _worked_into(run, {at for at, within in below if within}), _behind(run, [at for at, within in below if not within])
    return tuple(sorted({*inside, *gaps, *placed})[:MOST])


def _worked_into(run: Run, wanted: set[int]) -> Iterator[tuple[int, bool]]:
    """The middle of what was worked into each marked stitch of the row below; nothing where nothing is."""
    n, into = max(1, len(run.view.items)), run.into
    found: dict[int, tuple[int, int]] = {}
    for i, (how, start, end) in enumerate(zip(into.how, into.start, into.end, strict=True) if wanted else ()):
        if how and start >= 0:
            for at in wanted.intersection(range(start % n, start % n + max(1, end - start))):
                found[at] = found.get(at, (i, i))[0], i
    return (((first + last) // 2, True) for first, last in found.values())


def _behind(run: Run, wanted: list[int]) -> Iterator[tuple[int, bool]]:
    """Where markers between stitches of the row below stand in this one: before what is worked into the next one, and its chains."""
    how, starts, i = run.into.how, run.into.start, 0
    for at in sorted(wanted):
        while i < len(run.out) and not (how[i] and starts[i] >= at):
            i += 1
        first = i
        while first and run.out[first - 1] == CHAIN and (first < 2 or run.out[first - 2] == CHAIN):
            first -= 1
        yield first, False


def next_marker(run: Run, pos: int) -> Slot | None:
    """The next marker from a place on that has not been come to before in this row; None where there is none."""
    done = run.named.get("marker", -1)
    for at, inside in run.view.markers:
        if at >= pos and at > done and at < run.end + (not inside):
            return Slot(at, at + inside)
    return None


def place_marker(run: Run, node: Mark) -> None:
    """A marker where the words put it: in a stitch told by its number, in the middle of the group made last, else where the row has come to."""
    made = len(run.out)
    if node.text == "kth" and node.n is not None:
        stitches = [i for i in range(made) if run.out[i] != CHAIN]
        k = node.n.at(0) or 0
        if k > len(stitches):
            raise RunsOut("st", wanted=k, found=len(stitches))
        run.note("marker", word="st", at=stitches[k - 1] + 1)
    elif node.text in ("centre", "of-group"):
        group = run.groups[-1] if run.groups and run.groups[-1].end == made else None
        k = node.n.at(0) or 1 if node.n is not None else (group.end - group.start + 1) // 2 if group is not None else 1
        if node.n is not None and (group is None or group.start + k > made):
            raise RunsOut("st", wanted=k, found=0)
        run.note("marker", word="st", at=group.start + k if group is not None else made)
    else:
        run.note("marker", word=node.text)
