"""Motifs joined into a rectangle: how they are laid out, as the words say, and the edge that a border goes around.

The motif is worked once; its last round tells what stands along each side. Where two motifs meet on the edge there is a join, which is
worked into as a space (common practice, no source).
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from loopwright.model.tree import Document, HeadLine
from loopwright.working.explanations import Explanation, State
from loopwright.working.kinds import CHAIN
from loopwright.working.openings import has_ring
from loopwright.working.steps import Step
from loopwright.working.view import View

MOST = 20_000  # places along an edge, as many as a row may have
CORNERS = 4
_SIZES = r"\d{1,3}(?:\s?\(\s?\d{1,3}(?:\s?,\s?\d{1,3}){0,30}\s?\))?"
_TOLD = re.compile(
    rf"(?P<across>{_SIZES})\s+(?:squares\s+|motifs\s+)?(?:across|wide)\s*(?:and|by|x|×|,)\s*(?P<down>{_SIZES})\s+(?:squares\s+|motifs\s+)?(?:down|deep|long|high)\b",
    re.IGNORECASE,
)
_BORDER = re.compile(r"\b(?:border|edging|edge|trim)\b", re.IGNORECASE)


class Layout(NamedTuple):
    """Motifs across and down."""

    across: int
    down: int


def layout_of(document: Document, size: int) -> Layout | None:
    """How many motifs a size has across and down, where the text says so: "laid out 7 (9, 12) across and 9 (12, 15) down"."""
    m = _TOLD.search(document.text)
    if m is None:
        return None
    at = _told_at(document, size)
    found = []
    for told in (m["across"], m["down"]):
        numbers = [int(n) for n in re.findall(r"\d+", told)]
        found.append(numbers[at] if at < len(numbers) else numbers[0])
    return Layout(*found) if min(found) > 0 else None


def _told_at(document: Document, size: int) -> int:
    """Where in lists of numbers a size stands: a document may have been cut down to some of the sizes that its heading names."""
    for item in document.items:
        if isinstance(item, HeadLine) and item.name in ("size", "sizes") and size < len(document.sizes):
            names = [n.strip().lower() for n in re.split(r"[,;]", item.value)]
            if document.sizes[size].lower() in names:
                return names.index(document.sizes[size].lower())
    return size


def bordered(steps: list[Step], document: Document, size: int) -> list[Step]:
    """The steps of a size, the first row of a border around motifs that are laid out marked as one."""
    for i, step in enumerate(steps):
        fresh = i > 0 and step.new_section and step.number in (None, 1) and not has_ring(step.body)
        if fresh and _BORDER.search(step.section or "") and steps[i - 1].kind == "rnd":
            layout = layout_of(document, size)  # looked for in the whole text, so only where there is such a row
            return steps if layout is None else [*steps[:i], replace(step, layout=layout), *steps[i + 1 :]]
    return steps


def around(before: Explanation, layout: tuple[int, int]) -> State | None:
    """The state in which a border begins: on the edge of all motifs; None where no round with four corners is known."""
    views: list[View] = []
    at: Explanation | None = before
    while at is not None:
        if at.state.view.joined and len(_corners(at.state.view)) == CORNERS:
            views.append(at.state.view)
        at = at.before
    if not views:
        return None
    motif = max(views, key=lambda v: v.stitches)
    if len(motif.items) * max(layout) > MOST:
        return None
    return replace(before.state, view=_edge(motif, layout), pending=None, in_rounds=True, joined=True, free=0)


def _corners(view: View) -> list[tuple[int, int]]:
    """The longest spaces of a round, if they are longer than one chain."""
    longest = max((e - s for s, e in view.runs), default=0)
    return [(s, e) for s, e in sorted(view.runs) if e - s == longest > 1]


@lru_cache(maxsize=32)
def _edge(motif: View, layout: tuple[int, int]) -> View:
    """A rectangle's edge from a corner on: its spaces where the motif has them, one more at every join."""
    corners = _corners(motif)
    first, many = corners[0][0], len(motif.items)
    items = bytearray()
    runs: list[tuple[int, int]] = []
    for k, corner in enumerate(corners):
        start = corner[1]
        end = corners[k + 1][0] if k + 1 < CORNERS else first + many
        runs.append((len(items), len(items) + corner[1] - corner[0]))
        items += bytes((CHAIN,)) * (corner[1] - corner[0])
        for motif_number in range(layout[k % 2]):
            if motif_number:
                runs.append((len(items), len(items) + 1))
                items.append(CHAIN)
            _side(motif, (start, end), items, runs)
    return View(bytes(items), tuple(runs), joined=True)


def _side(motif: View, within: tuple[int, int], items: bytearray, runs: list[tuple[int, int]]) -> None:
    """Adds what stands between two corners of a motif, round its seam where it must."""
    start, end = within
    many, shift = len(motif.items), len(items) - start
    items += bytes(motif.items[i % many] for i in range(start, end))
    for turn in (0, many):
        runs += [(s + turn + shift, e + turn + shift) for s, e in motif.runs if start <= s + turn and e + turn <= end]
