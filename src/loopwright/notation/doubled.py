"""Repeats told in numbers alone: "*2 dc, dc* around", "(2 sc, 1 sc) 6 times", where the two go into one stitch. Common practice, no source."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import ONE, Either, Make, Node, Place, Repeat
from loopwright.notation.cursor import Cursor
from loopwright.notation.scanner import words

_PLAIN = frozenset("sc hdc dc tr dtr".split())
_YARNS = frozenset("A B C D E F G H MC CC".split())
DEARER = 2.5  # each in its own place
_MOST = 3  # in one stitch


def doubled(out: list[Node], cur: Cursor) -> None:
    """Gives the repeat told last its other reading, where nobody would tell it so if each stitch had its own place."""
    last = out[-1] if out else None
    if isinstance(last, Repeat):
        nodes = _in_one(last.nodes, cur) if last.mode in ("end", "times", "star-times", "left") else None
        if nodes is not None:
            out[-1] = Either("two-in-one", ((0.0, (replace(last, nodes=nodes),)), (DEARER, (last,))), last.span)
    elif isinstance(last, Either) and last.key == "list-around":
        again = next((told[0] for _, told in last.readings if len(told) == 1 and isinstance(told[0], Repeat)), None)
        nodes = _in_one(again.nodes, cur) if again is not None else None
        if nodes is not None and again is not None:
            others = tuple((cost + DEARER, told) for cost, told in last.readings)
            out[-1] = replace(last, readings=((0.0, (replace(again, nodes=nodes),)), *others))


def _in_colours(cur: Cursor, first: Make, last: Make) -> bool:
    """ "*2 sc A, 1 sc B* around": stitches of one kind told apart by their yarns."""
    return any(t.text in _YARNS or t.low in words()["colours"] for t in cur.tokens if first.span.start <= t.start <= last.span.end + 1)


def _number_first(cur: Cursor, made: Make) -> bool:
    """Whether the number stands before the stitch, "2 dc", and not behind it, "dc 2"."""
    return next((t.kind == "num" for t in cur.tokens if t.start >= made.span.start), False)


def _in_one(nodes: tuple[Node, ...], cur: Cursor) -> tuple[Node, ...] | None:
    """The nodes with each bare number of stitches in one place; None where they are told otherwise."""
    made = [n for n in nodes if isinstance(n, Make)]
    if len(made) < 2 or len(made) != len(nodes) or len({m.kind for m in made}) > 1 or made[0].kind not in _PLAIN:
        return None
    bare = [m for m in made if m.place is None and m.between == 0 and m.taking is None]
    several = [m for m in bare if m.n.at(0) != 1]
    before = [m for m in several if _number_first(cur, m)]
    several = before if len(before) < len(several) and len(several) == len(bare) else several  # "(dc 2, 2dc) around"
    if not several or len(several) == len(made) or any(not 1 < (m.n.at(0) or 0) <= _MOST for m in several):
        return None
    if any(m.place is not None and (m.place.quant != "next" or m.n.at(0) != 1) for m in made) or any(m.place is not None for m in made) and len(bare) > len(several):
        return None
    if _in_colours(cur, made[0], made[-1]):
        return None
    return tuple(replace(m, place=Place("next", ONE)) if m in several else m for m in made)
