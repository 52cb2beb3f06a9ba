"""What a picture of a round is, and what may be asked of it."""

from __future__ import annotations

from collections.abc import Callable

from loopwright.record import record


def _as_it_is(kind: str) -> str:
    return kind


@record
class RoundOptions:
    """What is asked for.

    `title`: of the pattern. `say`: the name of a kind of stitch in the reader's terms; kinds are US abbreviations. `opening_up`: pieces
    stand with their opening above, as a bag does; None: as the title and the first section's name say (`drawing.ways`). `ident`: begins
    every id in the files; letters, digits, - and _. `budget_s`: seconds that the shape may take. `left_handed`: as who works with the
    left hand sees it, the picture mirrored and its words not. `plain`: the picture alone, square, without a word and without a ground,
    for cards of a film. `one_black`: the new round black on white, as every picture is when it is printed.
    """

    title: str = ""
    say: Callable[[str], str] = _as_it_is
    opening_up: bool | None = None
    ident: str = "round"
    budget_s: float = 20.0
    left_handed: bool = False
    plain: bool = False
    one_black: bool = False


@record
class RoundDrawing:
    """The work so far with one round of it told apart.

    `svg`: the file. `description`: the same in words. `row`: index of the fabric's row. `label`, `section`: as the pattern has them.
    `count`: its stitches as the trade counts them. `stitches`: numbers of the fabric's stitches that are told apart.
    """

    svg: str
    description: str
    row: int
    label: str
    section: str | None
    count: int
    stitches: tuple[int, ...]
