"""What a row's items do not tell: chains and slip stitches that are no place for the next row, rounds of repeats, colours.

The search looks at items only. Beside them a run keeps this tape of notes, each at the item before which it happened; the
weaver lays the fabric down from both.
"""

from __future__ import annotations

from typing import NamedTuple

from loopwright.working.view import Slot


class Note(NamedTuple):
    """One thing that happened before item `at` was made.

    `what`: "turning" (n chains that are no stitch), "passed" (n chains of the foundation that are none), "stands" (the item
    at `at` is a start chain of n chains), "skipped" (the item at `at` is n chains skipped in the foundation), "move" (n slip
    stitches to a new start, the last into `slot`), "join" (a slip stitch into `slot`, None: the row's first item), "half"
    (the n chain items from `at` on are one stitch of `word`), "base" (a chain of n made and worked back over), "picot" (n
    knobs), "close" (a slip stitch n chains back, which makes a knob of the last chains), "round" (n rounds of a repeat begin,
    each `length` items long where n > 1; `word` "outer" or "inner"; `first` the number of the first), "colour" (`word` from
    here on), "edge" (`word`: the edge that the next stitches go along), "attach" (new yarn in `slot`), "marker" (one is placed; `word` "st": in the
    item before, "gap": before the item that comes).
    """

    at: int
    what: str
    n: int = 0
    word: str = ""
    slot: Slot | None = None
    origin: int = 0
    first: int = 0
    length: int = 0
