"""What is worked in a row of a drawing, in order: data that any language can put into words."""

from __future__ import annotations

from typing import Literal, TypeAlias

from loopwright.record import record

Where = Literal[
    "", "in", "back", "front", "third", "space", "ring", "row-end", "underside", "between", "around", "front-post", "back-post",
]


@record
class Made:
    """Stitches that stand in one place, a run of chains, stitches passed over, or the join of a round.

    `n`: how many. `where`: what they are worked into, "" where nobody could say it in words; `over`: how many places of it they take
    together. `of_chain`: the place is a chain. `hook`: it is that chain from the hook, 0 for any other. `same`: the place is the
    one that the stitches before them were worked into. `picot`: a picot stands on them.
    """

    what: Literal["stitch", "chain", "skip", "join"]
    n: int = 1
    kind: str = ""
    where: Where = ""
    over: int = 1
    of_chain: bool = False
    hook: int = 0
    same: bool = False
    picot: bool = False


@record
class Each:
    """The same thing so many times running."""

    made: Made
    times: int


@record
class Again:
    """Several things that come so many times, one after the other."""

    things: tuple[Thing, ...]
    times: int


Thing: TypeAlias = "Made | Each | Again"
