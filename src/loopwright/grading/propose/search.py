"""The search through a plain pattern: which of its numbers depend on the size, in the order of the text."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.grading.propose.blanks import Blank, Found, Role
from loopwright.grading.propose.crowns import Disc, crown_rounds, disc_from, tube_after
from loopwright.grading.propose.dependents import follow
from loopwright.grading.propose.edges import cord, foundation, part_of_edge
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.rows import Numbering, relabel, stretch_blank
from loopwright.model.tree import Mark


@dataclass(slots=True)
class _Piece:
    """The piece in hand: rows so far, how it began, the blank of its edge, whether its depth has a blank."""

    began: str = "none"
    rows: int = 0
    edge: Blank | None = None
    depth_told: bool = False


def search(lines: tuple[Line, ...], item: str) -> Found:
    """All blanks of a pattern and the edits for them. `item` is what "until … measures" calls the whole piece."""
    found, numbering, piece = Found(), Numbering(), _Piece()
    at, lost = 0, False
    while at < len(lines):
        line = lines[at]
        numbering.enter(line, lost=lost)
        disc = disc_from(lines, at) if line.start == "ring" else None
        if disc is not None:
            piece = _disc(found, lines, disc)
            lost, numbering.known = bool(found.blanks), False
            at = disc.next
            continue
        if line.start in ("ring", "chain", "tube"):
            piece = _Piece(line.start)
        lost = _line(found, lines, at, piece, numbering, item) or lost
        piece.rows += line.worked if line.start in ("none", "chain") and line.row.label else 0
        at += 1
    return found


def _disc(found: Found, lines: tuple[Line, ...], disc: Disc) -> _Piece:
    tube = tube_after(lines, disc)
    crown_rounds(found, lines, disc, tube=tube)
    edge = found.counts(disc.end, "sts")
    return _Piece("disc-tube" if tube else "disc", disc.next - disc.rounds[0], edge)


def _line(found: Found, lines: tuple[Line, ...], at: int, piece: _Piece, numbering: Numbering, item: str) -> bool:
    """One line that is no disc. True when the numbers of the rows after it are no longer known."""
    line = lines[at]
    if line.start in ("chain", "tube"):
        foundation(found, lines, at)
    elif line.start == "cord":
        cord(found, line)
        return False
    if piece.edge is not None and any(isinstance(n, Mark) and n.what == "leave" for n in line.body):
        part_of_edge(found, lines, at, piece.edge)
    stretch = line.worked >= 2
    if stretch:
        many = len(found.blanks)
        rows = stretch_blank(found, lines, at, piece.rows, numbering, _role(piece), item)
        stretch = rows > 0 and len(found.blanks) > many
        piece.depth_told = piece.depth_told or stretch
        numbering.known = numbering.known and not stretch
    else:
        relabel(found, line, numbering)
    if found.blanks and line.start == "none":
        follow(found, line, lines[at - 1] if at else None)
    return stretch


def _role(piece: _Piece) -> Role:
    if piece.began == "disc-tube":
        return "part" if piece.depth_told else "depth"
    return "length" if piece.began == "chain" else "part"
