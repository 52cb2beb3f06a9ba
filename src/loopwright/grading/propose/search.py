"""The search through a plain pattern: which of its numbers depend on the size, in the order of the text."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, replace

from loopwright.findings import Edit
from loopwright.grading.propose.blanks import Blank, Found, Role
from loopwright.grading.propose.brims import around_strip
from loopwright.grading.propose.crowns import Disc, crown_rounds, disc_from, tube_after
from loopwright.grading.propose.dependents import follow
from loopwright.grading.propose.edges import cord, cords_again, foundation, part_of_edge
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.growth import growing
from loopwright.grading.propose.measured import measured
from loopwright.grading.propose.openings import opening
from loopwright.grading.propose.ovals import oval
from loopwright.grading.propose.rows import NEXT_ROWS, Numbering, refer, relabel, said, stretch_blank
from loopwright.grading.propose.takes import taken
from loopwright.grading.propose.tapers import taper
from loopwright.grading.propose.yokes import raglan
from loopwright.model.tree import Chain, Mark, Section
from loopwright.source import Span

_EDGE = re.compile(
    r"\bends? of|\bin each row\b|row[- ]ends?|along|evenly around|around the (?:edge|piece)|up the|down the"
    r"|(?:free|unworked|missed|skipped) sts",
    re.IGNORECASE,
)

_NUMBERS = re.compile(r"(?P<n>\d)\s*\(\d[^()]*\)\s*\.?\s*$")
_JOINED = re.compile(r"[^:]*:\s*(?:with [^,.;]*,\s*)?(?:re)?(?:join|attach)\b(?!\s+(?:with )?s[ls])", re.IGNORECASE)

LEAST_RUN = 7
BAND = 6


@dataclass(slots=True)
class _Piece:
    """The piece in hand: rows so far, how it began, the blank of its edge, whether its depth has a blank.

    `varies`: whether the count of its live row depends on a blank; `base`: that blank, where the piece begins with it.
    """

    began: str = "none"
    rows: int = 0
    edge: Blank | None = None
    depth_told: bool = False
    varies: bool = False
    base: Blank | None = None


def search(lines: tuple[Line, ...], item: str, row_mm: float | None = None) -> Found:
    """All blanks of a pattern and the edits for them.

    `item` is what "until … measures" calls the whole piece, `row_mm` the height of a row, for rows that are told by a measure.
    """
    found, numbering, piece = Found(), Numbering(), _Piece()
    at, lost = 0, False
    while at < len(lines):
        line = lines[at]
        numbering.enter(line, lost=lost)
        disc = _disc_at(found, lines, at)
        if disc is not None:
            piece = _disc(found, lines, disc)
            lines = _parted(found, lines, disc.next, piece.began) if piece.varies else lines
            lost, numbering.known = bool(found.blanks), not piece.varies
            at = disc.next
            continue
        piece = _begun(line, piece)
        ended = _shaped(found, lines, at, numbering)
        if ended is not None:
            piece.varies = lost = True
            piece.rows, at = ended - at - 1, ended
            continue
        if line.worked >= 2 and line.start == "none" and (NEXT_ROWS.match(line.text) or not numbering.known and line.first is not None):
            numbering.parts += 1
            lines = _headed(found, lines, at, _part(line, numbering.parts))
            line = lines[at]
            numbering.enter(line, lost=True)
        lost = _line(found, lines, at, piece, numbering, (item, row_mm)) or lost
        piece.rows += line.worked if line.start in ("none", "chain") and line.row.label else 0
        at += 1
    for line in lines:
        _stop(found, line)
    return found


def _disc_at(found: Found, lines: tuple[Line, ...], at: int) -> Disc | None:
    """The disc that begins at a line; a ring whose rounds grow unevenly is told."""
    if lines[at].start != "ring":
        return None
    disc = disc_from(lines, at)
    if disc is None and _grows(lines, at):
        found.kept.append(f"{said(lines[at])} and the rounds after it do not all gain the same, so their numbers stay")
    return disc


def _begun(line: Line, piece: _Piece) -> _Piece:
    """The piece in hand, or a new one where the line begins or joins one."""
    if line.start in ("ring", "chain", "tube"):
        return _Piece(line.start)
    return _Piece("joined") if _JOINED.match(line.text) else piece


def _shaped(found: Found, lines: tuple[Line, ...], at: int, numbering: Numbering) -> int | None:
    """An oval or a raglan from the line on: the index of the line after it, its labels set right; None where there is none."""
    if lines[at].start not in ("chain", "tube"):
        return None
    ended = (oval(found, lines, at) if lines[at].start == "chain" else None) or raglan(found, lines, at)
    for passed in lines[at + 1 : ended] if ended is not None else ():
        numbering.enter(passed, lost=at > 0)
        relabel(found, passed, numbering)
    return ended


def _stop(found: Found, line: Line) -> None:
    """A full stop between a number and the count after it: "x 6 (12)" would read as numbers of two sizes in a design."""
    m = _NUMBERS.search(line.text)
    at = line.span.start + m.end("n") if m else 0
    if m is not None and not any(e.span.start < at < e.span.end or e.span.start == at for e in found.edits):
        found.edits.append(Edit(Span(at, at), "."))


def _parted(found: Found, lines: tuple[Line, ...], at: int, began: str) -> tuple[Line, ...]:
    """A heading where rows go on after a disc without one, since their numbers are no longer known: they start at 1 again under it."""
    if at >= len(lines) or lines[at].section is not lines[at - 1].section or lines[at].start != "none" or lines[at].first is None:
        return lines
    return _headed(found, lines, at, "Body" if began == "disc-tube" else "Front")


def _part(line: Line, number: int) -> str:
    """A heading for rows whose numbers are no longer known: what comes at the end of a sleeve is its cuff."""
    section = line.section
    again = f" (make {section.copies})" if section is not None and section.copies > 1 else ""
    sleeve = section is not None and "sleeve" in section.title.lower()
    return f"{'Cuff' if sleeve else 'Band' if line.worked <= BAND else f'Part {number}'}{again}"


def _headed(found: Found, lines: tuple[Line, ...], at: int, title: str) -> tuple[Line, ...]:
    """The lines with a new section from `at` to the end of the old one, and its heading put in the text."""
    old, start = lines[at].section, lines[at].span.start
    new = Section(title.partition(" (")[0], old.copies if old is not None else 1, Span(start, start))
    found.edits.append(Edit(new.span, f"\n{title}\n"))
    end = next((i for i in range(at, len(lines)) if lines[i].section is not old), len(lines))
    return (*lines[:at], *(replace(x, section=new) for x in lines[at:end]), *lines[end:])


def _grows(lines: tuple[Line, ...], at: int) -> bool:
    """Whether the rounds after a ring grow at all, several times."""
    counts = [x.count for x in lines[at : at + 8] if x.count is not None and x.in_rounds]
    return sum(a < b for a, b in itertools.pairwise(counts)) >= 3


def _disc(found: Found, lines: tuple[Line, ...], disc: Disc) -> _Piece:
    tube, many = tube_after(lines, disc), len(found.blanks)
    crown_rounds(found, lines, disc, tube=tube)
    edge = found.counts(disc.end, "sts")
    rows = disc.full + (1 if disc.part is not None else 0)
    return _Piece("disc-tube" if tube else "disc", rows, edge, varies=len(found.blanks) > many, base=edge if tube else None)


def _line(
    found: Found, lines: tuple[Line, ...], at: int, piece: _Piece, numbering: Numbering, names: tuple[str, float | None],
) -> bool:
    """One line that is no disc. True when the numbers of the rows after it are no longer known."""
    line = lines[at]
    many = len(found.blanks)
    if line.start != "cord":
        cords_again(found, line)
    if line.start in ("chain", "tube"):
        foundation(found, lines, at)
        piece.varies = len(found.blanks) > many
        piece.base = found.blanks[-1] if piece.varies else None
    elif line.start == "cord":
        cord(found, line)
        return False
    elif piece.edge is not None and any(isinstance(n, Mark) and n.what == "leave" for n in line.body):
        part_of_edge(found, lines, at, piece.edge)
    elif opening(found, lines, at):
        piece.varies = True
    elif around_strip(found, lines, at):
        piece.began, piece.varies = "disc-tube", True
        piece.rows, piece.depth_told = 0, True
    refer(found, line, lines[at - 1] if at else None, numbering)
    stretch = _stretch(found, lines, at, piece, numbering, names)
    if not stretch:
        relabel(found, line, numbering)
    if piece.varies and piece.base is not None:
        _hold(found, line, lines[at - 1], piece.base)
    piece.varies = piece.varies or found.touched(line.span) and not stretch or bool(found.blanks and _EDGE.search(line.text))
    if line.start == "none" and piece.varies:
        follow(found, line, lines[at - 1] if at else None)
    return stretch


def _hold(found: Found, line: Line, before: Line, base: Blank) -> None:
    """A row of plain runs that add up to the stitches below holds for this one count: the blank goes back to her number."""
    used = taken(line.body)
    stands = int(bool(line.body) and isinstance(line.body[0], Chain))  # the turning chain may stand for the first of them
    if used is not None and used > LEAST_RUN and before.count is not None and before.count - used in (0, stands):
        found.fixed.setdefault(base.name, f"{said(line)} is told for {used} sts alone")


def _stretch(
    found: Found, lines: tuple[Line, ...], at: int, piece: _Piece, numbering: Numbering, names: tuple[str, float | None],
) -> bool:
    """Rows worked alike: their number becomes a blank, unless they change their count."""
    line = lines[at]
    rows = measured(found, lines, at, piece.rows, numbering, _role(piece), names)
    if rows:
        piece.depth_told, numbering.known = True, False
        return True
    if line.worked < 2 or line.start != "none":
        return False
    before = lines[at - 1] if at else None
    if not line.even_after(before):
        if before is not None and not piece.varies and growing(found, lines, at):
            numbering.known, piece.varies = False, True
            return True
        if taper(found, lines, at, piece.rows, _role(piece), names[0]):
            numbering.known, piece.varies, piece.depth_told = False, True, True
            return True
        found.kept.append(f"{line.row.label.text if line.row.label else line.text[:30]}: rows that grow or shrink keep their number")
        return False
    many = len(found.blanks)
    rows = stretch_blank(found, lines, at, piece.rows, numbering, _role(piece), names[0])
    made = rows > 0 and len(found.blanks) > many
    piece.depth_told = piece.depth_told or made
    numbering.known = numbering.known and not made
    return made


def _role(piece: _Piece) -> Role:
    if piece.began == "disc-tube":
        return "part" if piece.depth_told else "depth"
    return "length" if piece.began == "chain" else "part"
