"""How the pieces go together: each outline with a small letter, as often as it is made, and a dotted line to what it is joined to."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.drawing import svg
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.drawing.schematic import drawing
from loopwright.drawing.schematic.book import Book
from loopwright.drawing.schematic.figure import Figure, Point
from loopwright.drawing.schematic.look import LINE_PX, NAME_PX, TEXT_PX
from loopwright.drawing.schematic.placed import CAPTION_PX, GAP_PX, PX_PER_MM, STEP, Placed
from loopwright.drawing.speech import Speech, in_english
from loopwright.record import record

LETTERS = "abcdefghjkmnpqrstuvwxyz"  # without i, l and o, which look like figures (common practice, no source)
APART_PX = 60.0  # between the largest piece and the others, for the lines that join them
TALLEST = 0.7  # of the width
LONG = 2.0  # a piece so many times as wide as it is high stands above its like, not beside it
CROWDED = 0.5  # where names make all smaller than this, letters alone stand above the pieces and the names below
SMALLEST_SCALE = 0.02  # px per mm: names alone are wider than the sheet
_JOINED = re.compile(r"\b(?:sew|join|attach|stitch|fix|fasten)\b", re.IGNORECASE)
_CLAUSE = re.compile(r"[.;]\s|\band\s+(?:the|each|one)\b|,\s*then\b", re.IGNORECASE)
_TOGETHER = re.compile(r"\btogether\b|\bpieces\b|\bboth\b", re.IGNORECASE)
_OFF = re.compile(r"\bfasten(?:ed)? off\b", re.IGNORECASE)


@record
class Join:
    """A piece that is joined to another, both by their numbers among the figures."""

    piece: int
    to: int


_ROUNDS = re.compile(r"\b(?:rnd|round|row)s?\.?\s*(\d+)(?:\s*(?:and|to|-|–)\s*(\d+))?", re.IGNORECASE)


def joins(figures: Sequence[Figure], words: str) -> tuple[Join, ...]:
    """What the words of making up join to what: "sew the bill to the head and the wings to the body".

    A piece named alone is joined to the largest; two pieces that are not named, to each other ("sew the pieces together"). Nothing where
    the words name no piece of several.
    """
    return tuple(Join(piece, to) for piece, (to, _) in sorted(_joined(figures, words).items()) if piece != to)


def _joined(figures: Sequence[Figure], words: str) -> dict[int, tuple[int, str]]:
    """By piece what it is joined to, and the clause that says so."""
    main = max(range(len(figures)), key=lambda i: _area(figures[i]), default=0)
    found: dict[int, tuple[int, str]] = {}
    joining = False
    for clause in _CLAUSE.split(_OFF.sub("", words)):
        joining = _JOINED.search(clause) is not None or joining
        named = _named(figures, clause) if joining else []
        if len(named) > 1:
            piece, to = (named[1], named[0]) if named[0] == main else (named[0], named[1])
            found.setdefault(piece, (to, clause))
        elif named and named[0] != main:
            found.setdefault(named[0], (main, clause))
    if not found and joining and len(figures) == 2 and _TOGETHER.search(words):
        found[1 - main] = main, words
    return found


def _place(placed: Placed, clause: str) -> Point:
    """Where another piece is joined to one: in the middle of the rounds that the words name, else in its middle."""
    levels, m = placed.figure.levels, _ROUNDS.search(clause)
    named = [int(n) for n in m.groups() if n] if m else []
    if not levels or not named or max(named) > len(levels):
        return _middle(placed)
    y = sum(levels[n - 1] for n in named) / len(named)
    edge = [p for s in placed.figure.strokes if s.line == "outline" for p in s.points if p[0] > 0]
    return placed.at(min(edge, key=lambda p: abs(p[1] - y)))  # at its right edge: all others lie there


def _area(figure: Figure) -> float:
    wide, high = _size(figure)
    return wide * high


def _named(figures: Sequence[Figure], clause: str) -> list[int]:
    """The figures that a clause names, in its order: any word of four letters or more of a figure's name, in one or several."""
    at: dict[int, int] = {}
    for i, figure in enumerate(figures):
        for word in re.findall(r"[a-z]{4,}", figure.name.split(" (", 1)[0].lower()):
            m = re.search(rf"\b{re.escape(word.removesuffix('s'))}(?:s|es)?\b", clause.lower())
            if m is not None:
                at[i] = min(at.get(i, m.start()), m.start())
    return sorted(at, key=lambda i: at[i])


@record
class MadeUp:
    """The picture: its elements, how wide and high they are, px, and what it says, in words."""

    inside: tuple[str, ...]
    wide_px: float
    high_px: float
    says: str


def made_up(figures: Sequence[Figure], copies: Sequence[str], words: str, room_px: float, speech: Speech | None = None) -> MadeUp | None:
    """The largest piece, the others beside it, and the lines that join them.

    None where nothing is joined and nothing made twice, unless several pieces have words of making up: they may be joined as nobody names.

    `copies`: what is said of each piece, "make 2, alike"; `words`: of making up, in English; `speech`: None for English.
    """
    linked = joins(figures, words)
    speech = speech or in_english("us")
    unnamed = len(figures) > 1 and _JOINED.search(_OFF.sub("", words)) is not None
    if not figures or not linked and not any(copies) and not unnamed:
        return None
    order = sorted(range(len(figures)), key=lambda i: -_area(figures[i]))
    letters = {i: LETTERS[at % len(LETTERS)] for at, i in enumerate(order)}
    names = {i: _name(letters[i], figures[i], copies[i], speech) for i in order}
    bare = {i: _bare(figures[i], names[i]) for i in order}
    lines: list[list[tuple[int, Figure]]] = []
    for i in order:
        again = _again(bare[i], copies[i], letters[i], i)
        long = _size(bare[i])[0] > LONG * _size(bare[i])[1]
        lines += [[(i, bare[i])], again] if again and long else [[(i, bare[i]), *again]]
    placed, high, shrunk = _beside(lines, room_px)
    own = speech.own(words) if words else ""
    below = own
    if shrunk < CROWDED:
        placed, high, _ = _beside([[(i, replace(f, name=letters[i])) for i, f in line] for line in lines], room_px)
        below = f"{' '.join(f'{names[i]}.' for i in order)} {own}"
    first = {i: next(p for j, p in placed if j == i) for i in order}
    said = _joined(figures, words)
    to = {j.piece: (j.to, said[j.piece][1]) for j in linked}
    joined = [svg.path("join", [_middle(p), _place(first[to[i][0]], to[i][1])]) for i, p in placed if i in to]
    drawn = [drawing.figure(p, Book([]), in_english("us"), captions=True) for _, p in placed]
    told, words_px = _words(below, room_px, high)
    return MadeUp((*joined, *drawn, *told), room_px, high + words_px, _says(order, names, letters, linked, speech))


def _bare(figure: Figure, name: str) -> Figure:
    """Its outlines alone."""
    return replace(figure, name=name, strokes=[s for s in figure.strokes if s.line != "work"], spans=[], words=[])


def _again(figure: Figure, told: str, letter: str, number: int) -> list[tuple[int, Figure]]:
    """The second of a piece that is made twice; one that is made oftener is drawn once."""
    if not re.match(r"make 2\b", told):
        return []
    return [(number, replace(figure.mirrored() if "mirrored" in told else figure, name=letter))]


def _beside(lines: Sequence[Sequence[tuple[int, Figure]]], room_px: float) -> tuple[list[tuple[int, Placed]], float, float]:
    """The first line at the left, the others below one another at its right, so that no line between them goes over a third piece.

    With how high all is, px, and by how much it is smaller than it would be without its names.
    """
    main, others = lines[0], lines[1:]
    across = sum(_size(f)[0] for _, f in main) + max((sum(_size(f)[0] for _, f in line) for line in others), default=0.0)
    tall = max(1e-9, *(_size(f)[1] for _, f in main), sum(max(_size(f)[1] for _, f in line) for line in others))
    scale = most = min(PX_PER_MM, room_px / max(across, 1e-9), TALLEST * room_px / tall)
    while True:
        found, y = _line(main, 0.0, 0.0, scale), 0.0
        left = max(p.left_px + p.wide_px for _, p in found) + APART_PX
        for line in others:
            found += _line(line, left, y, scale)
            y += max(p.high_px for _, p in found[-len(line) :]) + GAP_PX
        if max(p.left_px + p.wide_px for _, p in found) <= room_px or scale < SMALLEST_SCALE:
            return found, max(p.top_px + p.high_px for _, p in found), scale / most
        scale *= STEP


def _line(line: Sequence[tuple[int, Figure]], left: float, top: float, scale: float) -> list[tuple[int, Placed]]:
    found = []
    for number, figure in line:
        wide, high = (v * scale for v in _size(figure))
        room = max(wide, width_px(figure.name, NAME_PX, heavy=True))
        x0, y0, _, _ = figure.box
        origin = left + (room - wide) / 2 - x0 * scale, top + CAPTION_PX - y0 * scale
        found.append((number, Placed(figure, (), origin, scale, 1, top, left, room, high + CAPTION_PX)))
        left += room + GAP_PX
    return found


def _size(figure: Figure) -> tuple[float, float]:
    x0, y0, x1, y1 = figure.box
    return x1 - x0, y1 - y0


def _middle(placed: Placed) -> Point:
    x0, y0, x1, y1 = placed.figure.box
    return placed.at(((x0 + x1) / 2, (y0 + y1) / 2))


def _words(words: str, room_px: float, top_px: float) -> tuple[list[str], float]:
    """The pattern's own words of making up, below."""
    lines = wrapped(plain(words), TEXT_PX, room_px) if words else []
    top = top_px + 20
    inside = [svg.text("text", (0, top + TEXT_PX + i * LINE_PX), line) for i, line in enumerate(lines)]
    return inside, 20 + len(lines) * LINE_PX


def _says(order: Sequence[int], names: dict[int, str], letters: dict[int, str], linked: Sequence[Join], speech: Speech) -> str:
    to = {j.piece: letters[j.to] for j in linked}
    said = [speech.say("joined-to", name=names[i], letter=to[i]) if i in to else names[i] for i in order]
    return " ".join(f"{x}." for x in said)


def _name(letter: str, figure: Figure, told: str, speech: Speech) -> str:
    """ "b: Wing (make 2)"."""
    name, many = plain(speech.name(figure.name.split(" (", 1)[0])) or speech.say("piece"), re.search(r"\d+", told)
    copies = speech.say("make", n=int(many[0])) if many else ""
    return speech.say("letter-copies" if copies else "letter-name", letter=letter, name=name, copies=copies)
