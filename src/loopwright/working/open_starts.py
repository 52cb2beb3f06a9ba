"""Foundation chains whose length is left open ("a multiple of 4 plus 2"): worked on a sample that the next row fits on."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from loopwright.model.tree import Chain, Mark, Node, Num
from loopwright.record import changed
from loopwright.working.beginnings import printed_of_row
from loopwright.working.rows import work_row
from loopwright.working.run import CannotWork
from loopwright.working.tally import agrees
from loopwright.working.view import foundation

if TYPE_CHECKING:
    from loopwright.working.search import Decoder
    from loopwright.working.steps import Step

SAMPLE = 24  # chains at least, where nothing tells more: enough for a few repeats of most patterns
REPEATS = 3  # at least
TRIED = 40  # lengths, each a repeat longer than the one before
WORK = 6_000  # instructions in all of them
LONGEST = 600


def opened(steps: list[Step], decoder: Decoder, conventions: tuple[tuple[str, Any], ...]) -> list[Step]:
    """The steps of a size, each chain of an open length given that of a sample."""
    if not any(_open(step) is not None for step in steps):
        return steps
    found = list(steps)
    for i, step in enumerate(steps):
        at = _open(step)
        if at is None:
            continue
        chain = step.body[at]
        assert isinstance(chain, Chain)
        rest = step.body[at + 1 :]
        here = any(not isinstance(n, Mark) for n in rest)
        first = step if here else steps[i + 1] if i + 1 < len(steps) else None
        body = rest if here or first is None else first.body
        length = _sample(chain, step, first, body, decoder, conventions)
        found[i] = changed(step, body=(*step.body[:at], changed(chain, n=Num((length - chain.plus,))), *rest), printed=step.printed if here else ())
    return found


def _open(step: Step) -> int | None:
    """Where a chain of an open length stands in a row."""
    return next((i for i, n in enumerate(step.body) if isinstance(n, Chain) and n.every and not n.n.values), None)


def _sample(chain: Chain, step: Step, first: Step | None, body: tuple[Node, ...], decoder: Decoder, conventions: tuple[tuple[str, Any], ...]) -> int:
    """The length that the first row fits on: with its printed count where it has one, else one of some repeats."""
    every, plus = chain.every, chain.plus
    told = printed_of_row(step.printed) if step is not first else None
    if told is not None and plus < told <= LONGEST and (told - plus) % every == 0:
        return told
    least = max(-(-(SAMPLE - plus) // every), REPEATS if every > 1 else 1) * every + plus
    if first is None:
        return least
    wanted = printed_of_row(first.printed)
    near = max(every + plus, (wanted or 0) - 2 * every - 2)
    begin = least if wanted is None else near + (plus - near) % every
    work, kind = 0, first.kind == "rnd"
    for n in range(begin, min(begin + TRIED * every, LONGEST), every):
        try:
            made = work_row(foundation(n), body, (), dict(conventions), decoder.definitions, "sc", kind, 0)
        except CannotWork as why:
            work += why.work
        else:
            work += made.work
            if made.left == 0 and (wanted is None or agrees(made, first.printed)):
                return n
        if work > WORK:
            break
    return least
