"""One picture per round: the work so far, stitch by stitch, the new round told apart by colour and by a heavy line, its count beside it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loopwright.drawing.rounds.drawn import RoundDrawing, RoundOptions
from loopwright.drawing.rounds.joined import Joined, joined_flat
from loopwright.drawing.rounds.laid import LaidOut, facing, laid_out, seen_flat
from loopwright.drawing.rounds.page import Page, page
from loopwright.drawing.rounds.stitches import Frame, extent_mm, frame_of, work_so_far
from loopwright.drawing.scene.cells import Outlines, outlined
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import Course
from loopwright.measuring.parts import Part
from loopwright.measuring.relax import Shape
from loopwright.model.fabric import Fabric

MOST_FACES = 2500
"""Stitches in one picture; where there are more, rows are drawn, not stitches."""
MOST_IN_ALL = 400_000
SMALL = 0.03
"""A chain that takes less than this share of its picture is a ring to begin in, and has no picture of its own."""


def round_drawings(
    fabric: Fabric, sizes: StitchSizes, options: RoundOptions | None = None, *, shape: Shape | None = None,
) -> tuple[RoundDrawing, ...]:
    """A drawing for every row and round that was worked, in the order of making; none for a fabric without stitches.

    Discs, ovals and rows are seen on their right side, tubes from the front and a little above. `shape`: where it is relaxed already.
    """
    asked = options or RoundOptions()
    laid = laid_out(fabric, sizes, shape, title=asked.title, opening_up=asked.opening_up, budget_s=asked.budget_s)
    if not len(laid.body.points):
        return ()
    joined = joined_flat(laid, sizes, asked.budget_s)
    laid = replace(laid, body=laid.body.at(joined.points)) if joined is not None else laid
    worked = [c for c in laid.rows if not c.assumed and c.row.end > c.row.start and len(laid.nodes_of(c.index))]
    outlines = outlined(fabric, laid.body)
    most = min(MOST_FACES, MOST_IN_ALL // max(1, len(worked)))
    found = []
    frames: dict[tuple[int, int], Frame] = {}
    for c in worked:
        part = seen_flat(laid, c)
        key = (c.row.piece, part.rows[0] if part is not None else -1)
        if key not in frames:
            in_layout = joined is not None and c.row.piece in joined.pieces
            to_eye = np.eye(3) if in_layout else facing(laid, part)
            frames[key] = replace(frame_of(laid, to_eye, part, c.row.piece), mirrored=asked.left_handed, laid_flat=in_layout)
        frame = frames[key] if joined is None else _in_layout(frames[key], c, joined)
        if c.way != "chain" or extent_mm(laid, c) >= SMALL * frame.whole_mm:
            found.append(_drawing((laid, outlines), c, part, frame, asked, most))
    return tuple(found)


def _in_layout(frame: Frame, c: Course, joined: Joined) -> Frame:
    """The frame of a round of motifs that are joined, or of the border around them."""
    if c.index in joined.border:
        return replace(frame, lines=joined.lines, told=" The lines within are the edges of the motifs.")
    if c.row.piece not in joined.across_mm:
        return frame
    found = replace(frame, whole_mm=joined.across_mm[c.row.piece])
    if c.index not in joined.beside:
        return found
    return replace(found, from_row=joined.beside[c.index], told=" Beside it lies the motif that it is joined to.")


def _drawing(
    of: tuple[LaidOut, Outlines], c: Course, part: Part | None, frame: Frame, asked: RoundOptions, most: int,
) -> RoundDrawing:
    laid, outlines = of
    counted = laid.fabric.counted(c.row)
    count = sum(counted.values()) or c.chains
    label = _label(laid, c)
    told = _told(counted, c, asked)
    description = f"{label}{f', {c.row.section}' if c.row.section else ''}: {told}. {_gain(laid, c, count)}{_seen(frame, part)}"
    description += " Mirrored for the left hand." if asked.left_handed else ""
    drawing = work_so_far(laid, outlines, c, frame, most)
    told_beside = Page(asked.ident, c.index, asked.title, label, c.row.section or "", count, told, description)
    svg = page(told_beside, drawing, plain=asked.plain, one_black=asked.one_black)
    stitches = tuple(s for s in range(c.row.start, c.row.end) if laid.body.node_of[s] >= 0)
    return RoundDrawing(svg, description, c.index, label, c.row.section, count, stitches)


def _told(counted: dict[str, int], c: Course, asked: RoundOptions) -> str:
    """ "24 hdc and 6 sc"; chains where there is nothing else."""
    if not counted:
        return f"{c.chains} {asked.say('ch')}"
    words = [f"{n} {asked.say(kind)}" for kind, n in counted.items()]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _label(laid: LaidOut, c: Course) -> str:
    """As the pattern has it; of rows without one, their number in the section."""
    if c.row.label:
        return c.row.label
    if c.way == "chain":
        return "Foundation chain"
    number = sum(o.row.section == c.row.section and o.row.piece == c.row.piece and o.way != "chain" for o in laid.rows[: c.index + 1])
    return f"{'Rnd' if c.way == 'round' else 'Row'} {number}"


def _gain(laid: LaidOut, c: Course, count: int) -> str:
    """How many more or fewer than in the round that it stands on, where it takes all of that."""
    if not 0 <= c.below < c.index or laid.rows[c.below].way == "chain":
        return ""
    before = laid.rows[c.below]
    below = sum(laid.fabric.counted(before.row).values())
    if not below or c.uses < before.places * 0.9:
        return ""
    word = "As many as" if count == below else f"{abs(count - below)} {'more' if count > below else 'fewer'} than"
    return f"{word} in {_label(laid, before)}. "


def _seen(frame: Frame, part: Part | None) -> str:
    front = part is None and not frame.laid_flat
    return f"Seen {'from the front' if front else 'on its right side'}, the new stitches told apart.{frame.told}"
