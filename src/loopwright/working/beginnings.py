"""Starts that the text does not tell: how many stitches must have been there for a row to work out."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any

from loopwright.model.tree import Count, Mark, Node
from loopwright.working.kinds import code
from loopwright.working.openings import as_asked, leaves_any, onto_chain
from loopwright.working.rows import Made, from_hook, lead_chain, main_kind, work_row
from loopwright.working.run import MAX_ITEMS, CannotWork
from loopwright.working.tally import agrees
from loopwright.working.view import View, foundation, plain_row

if TYPE_CHECKING:
    from loopwright.working.explanations import State
    from loopwright.working.search import Decoder
    from loopwright.working.steps import Step

NEAR = 10
FAR = 420
SPAN = 70
SHORT, LONGEST = 130, 3_000  # foundation chains that are tried one by one, and at all
LONG = 600  # a chain that is longer than most that a row takes
WORK = 8_000  # instructions worked in all numbers of chains that are tried
TRIED = 30_000  # and in all numbers of stitches, where a count is sought
OPEN = 5_000  # and where there is none: five times what any row of the designs takes
STITCHES = 4_000  # made in all numbers that are tried
HORIZON = 4


class _Tries:
    """A row tried on plain rows of so many stitches, as long as the work of it all is within bounds."""

    def __init__(self, decoder: Decoder, state: State, step: Step, body: tuple[Node, ...], kind: str, said: tuple[tuple[str, Any], ...] = (), most: int = TRIED) -> None:
        self.decoder, self.state, self.step, self.body, self.kind, self.most = decoder, state, step, body, kind, most
        self.conventions = {**dict(state.conventions), **dict(said)}
        self.work = 0

    def on(self, number: int) -> Made | None:
        """The row on so many stitches; None where it cannot be worked, and once there was too much work."""
        if self.work > self.most:
            return None
        rounds = self.step.kind == "rnd"
        view = plain_row(number, code(self.kind), joined=rounds)
        try:
            made = work_row(view, self.body, (), dict(self.conventions), self.decoder.definitions, self.kind, rounds, self.state.rows, printed=as_asked(self.step.printed))
        except CannotWork as why:
            self.work += why.work
            return None
        self.work += made.work
        return made


def solve(decoder: Decoder, state: State, step: Step, steps: list[Step], at: int) -> list[tuple[int, str, bool, int | None]]:
    """Numbers of stitches that may have stood below, best first.

    Each with its kind, whether a printed count was needed to tell, and how many items later the row is if it was the count of a later one.

    A row whose repeats are all bounded tells it exactly. Otherwise its printed count does, where one number alone
    leaves nothing over; then that count cannot also confirm the row.
    """
    body = decoder._body(state, step)
    kind = main_kind(body, state.kind)
    below = kind or "sc"
    if from_hook(body) and lead_chain(body) is None:
        if state.view.foundation:
            return []  # the chain is told: the row does not fit it
        return [(n, "ch", printed_of_row(step.printed) is not None, None) for n in _chains(decoder, state, step, body, kind)]
    if state.view.items == b"" and onto_chain(body):
        return [(n, "ch", True, None) for n in _chains(decoder, state, step, body, kind)] if printed_of_row(step.printed) else []
    bounded = _try_open(decoder, state, step, body, kind)
    wanted = printed_of_row(step.printed)
    if bounded is not None and bounded > 0 and (bounded > 1 or not wanted or wanted == 1):  # one stitch alone may be told for a whole row
        return [(bounded, below, False, None)]
    if wanted:
        return [(n, below, True, None) for n in _by_own_count(decoder, state, step, body, kind, wanted, alone=bounded == 1)[:3]]
    if step.awaits is not None and (made := _Tries(decoder, state, step, body, kind).on(step.awaits)) is not None and made.left == 0 and made.count == step.awaits:
        return [(step.awaits, below, True, 0)]
    if state.view.items and not step.new_section and not step.gap:
        return []  # a row below is told: that this one does not fit it is a fault of either
    key = (body, kind, state.conventions)
    family = decoder.families.get(key)
    if family is None:
        family = decoder.families[key] = _family(_Tries(decoder, state, step, body, kind, most=OPEN))
    if not family:
        return []
    decoder.family = family
    return [(n, below, True, item) for n, item in _by_later_count(decoder, state, step, steps, at, family)]


def _by_own_count(decoder: Decoder, state: State, step: Step, body: tuple[Node, ...], kind: str, wanted: int, *, alone: bool) -> list[int]:
    """Numbers of stitches from which a row comes out at its printed count. `alone`: it tells one stitch, which may stand for all."""
    which = decoder.told(step), body[:1], kind, state.conventions, state.rows, step.kind
    known = decoder.starts.get(which)
    if known is not None:
        return known
    found = _by_count(_Tries(decoder, state, step, body, kind), step.printed, wanted)
    if not found and lead_chain(body) is not None:  # the chain may count for nothing
        found = _by_count(_Tries(decoder, state, step, body, kind, (("told-ch", False),)), step.printed, wanted)
    if not found and alone:
        found = _by_count(_Tries(decoder, state, step, body, kind, (("one-repeat-told", True),)), step.printed, wanted)
    decoder.starts[which] = found
    return found


def _family(tries: _Tries) -> tuple[int, ...]:
    """Numbers of stitches up to SPAN that the row uses up with nothing over, at its cheapest; () when it fits everywhere or nowhere."""
    takes = _round_takes(tries)
    if takes is not None:
        return _family_of_rounds(tries, takes)
    fits: list[tuple[float, int]] = []
    for n in range(2, SPAN):
        made = tries.on(n)
        if made is not None and made.left == 0 and made.spaces_left == 0:
            fits.append((made.cost, n))
            if _settled(fits):
                break
    if not fits:
        return ()
    cheapest = min(c for c, _ in fits)
    members = [n for c, n in fits if c < cheapest + 0.05]
    step_ = members[-1] - members[-2] if len(members) > 1 else 0
    return tuple(n for n in members if step_ and (members[-1] - n) % step_ == 0)  # short ones may come out by a part of a repeat


def _round_takes(tries: _Tries) -> int | None:
    """How many stitches one round of the row's repeat takes; None where it has none, or one too long to be met three times."""
    for n in (SPAN - 1, SPAN - 2):
        made = tries.on(n)
        if made is not None and made.uneven is not None:
            return made.uneven[0] if made.uneven[0] * 3 < SPAN else None
    return None


def _family_of_rounds(tries: _Tries, takes: int) -> tuple[int, ...]:
    """As _family, for a row that goes on in rounds of so many stitches: what fits is met once in each round's length."""

    def cost(n: int) -> float | None:
        made = tries.on(n)
        return made.cost if made is not None and made.left == 0 and made.spaces_left == 0 else None

    top = {n: c for n in range(SPAN - takes, SPAN) if (c := cost(n)) is not None}
    if not top:
        return ()
    cheapest = min(top.values())
    last = max(n for n, c in top.items() if c < cheapest + 0.05)
    least = range(last % takes or takes, last, takes)
    first = next((n for n in least if n > 1 and (c := cost(n)) is not None and c < cheapest + 0.05), last)
    return tuple(range(first, last + 1, takes))


def _settled(fits: list[tuple[float, int]]) -> bool:
    """Whether the last four that fitted stand at equal distances and cost the same: the rest would go on so."""
    last = fits[-4:]
    return len(last) == 4 and len({b[1] - a[1] for a, b in pairwise(last)}) == 1 and last[0][0] == last[-1][0] == min(c for c, _ in fits)


def told(family: tuple[int, ...]) -> tuple[int, int] | None:
    """A family as "any multiple of 4 plus 2": (4, 2); None when its members do not stand at equal distances."""
    steps = {b - a for a, b in pairwise(family)}
    if len(steps) != 1 or 1 in steps:
        return None
    step = steps.pop()
    return step, family[0] % step


def _by_later_count(
    decoder: Decoder, state: State, step: Step, steps: list[Step], at: int, family: tuple[int, ...],
) -> list[tuple[int, int | None]]:
    """The member of a family with which a row a few rows later comes true.

    Either that row needs so many stitches, or its printed count tells; then it comes with how many items later that row is: it is not
    confirmed by it.
    """
    ahead, wanted, item = _known_later(decoder, state, steps, at)
    if wanted is None or len(family) < 2 or any(s.problem or s.new_section for s in steps[at + 1 : ahead + 1]):
        return []
    between = steps[at : ahead + 1] if item is not None else steps[at:ahead]
    low, high = family[0], family[-1]
    a, b = (decoder.count_after(state, between, n) for n in (low, high))
    if a is None or b is None or b == a:
        return []
    number = low + (wanted - a) * (high - low) / (b - a)
    first = round(number)
    if abs(number - first) > 0.01 or not 1 < first <= FAR or decoder.count_after(state, between, first) != wanted:
        return []
    return [(first, item)]


def _known_later(decoder: Decoder, state: State, steps: list[Step], at: int) -> tuple[int, int | None, int | None]:
    """The first row ahead that tells a number: its place, the number, and how many items later it is where the number is its printed count."""
    for i in range(at + 1, min(at + HORIZON, len(steps))):
        later = steps[i]
        body = decoder._body(state, later)
        if not leaves_any(body) and (lead_chain(body) is None or not from_hook(body)):
            needs = _try_open(decoder, state, later, body, main_kind(body, state.kind))
            if needs is not None and needs > 1:
                return i, needs, None
        printed = printed_of_row(later.printed)
        if printed is not None:
            return i, printed, later.item - steps[at].item
    return at, None, None


def _chains(decoder: Decoder, state: State, step: Step, body: tuple, kind: str) -> list[int]:  # type: ignore[type-arg]
    """Lengths of the foundation chain that the row fits on: by its printed count, else by what it uses up."""
    wanted = printed_of_row(step.printed)
    if not wanted and (taken := _taken_of_chain(decoder, state, step, body, kind)) is not None:
        return [taken] if taken else []
    fits: list[tuple[float, int]] = []
    near = [wanted + d for d in (1, 2, 3, 0, 4, 5, 6, -1, -2)] if wanted else range(2, 130)
    numbers = [*near, *(n for n in range(2, SHORT) if n not in near)] if wanted else list(near)
    work = 0
    for n in numbers:
        if not 1 < n <= LONGEST or work > WORK:
            continue
        try:
            made = work_row(foundation(n), body, (), dict(state.conventions), decoder.definitions, kind, step.kind == "rnd", 0)
        except CannotWork as why:
            work += why.work
            continue
        work += made.work
        if made.left == 0 and (not wanted or agrees(made, step.printed) or abs(made.count - wanted) == 1):
            fits.append((made.cost, n))
            if not wanted:
                # an open row fits on any chain: then nothing is known
                return [n] if _bounded(decoder, state, step, body, kind, n) else []
        if len(fits) >= 3:
            break
    return [n for _, n in sorted(fits)]


def _taken_of_chain(decoder: Decoder, state: State, step: Step, body: tuple, kind: str) -> int | None:  # type: ignore[type-arg]
    """How many chains a row takes that takes as many of any long chain; 0 of one that goes on to its end, None where that can't be found out."""

    def left_of(n: int) -> int | None:
        try:
            return work_row(foundation(n), body, (), dict(state.conventions), decoder.definitions, kind, step.kind == "rnd", 0).left
        except CannotWork:
            return None

    long = left_of(LONG)
    if long is None:
        return None
    if not long or any(left_of(LONG + more) != long + more for more in (23, 61)):
        return 0
    return LONG - long if left_of(LONG - long) == 0 else None


def _bounded(decoder: Decoder, state: State, step: Step, body: tuple, kind: str, n: int) -> bool:  # type: ignore[type-arg]
    try:
        more = work_row(foundation(n + 1), body, (), dict(state.conventions), decoder.definitions, kind, step.kind == "rnd", 0)
    except CannotWork:
        return True
    return more.left > 0


def printed_of_row(printed: tuple[Count, ...]) -> int | None:
    """The count printed for a row in all, in the first size."""
    for count in printed:
        if count.scope == "row" and count.n.at(0) is not None:
            return count.n.at(0)
    return None


def _try_open(decoder: Decoder, state: State, step: Step, body: tuple, kind: str) -> int | None:  # type: ignore[type-arg]
    """Works the row on a row without end; how many it used or said to leave, when it came to an end by itself."""
    from loopwright.working.run import Run

    view = View(b"\x02", open_end=True, joined=step.kind == "rnd")
    run = Run(view, (), dict(state.conventions), decoder.definitions, kind, step.kind == "rnd")
    from loopwright.working.instructions import do_all
    from loopwright.working.rows import split_pending

    nodes, _ = split_pending(body)
    try:
        do_all(run, nodes)
    except CannotWork:
        return None
    return run.pos + sum(n.n.at(0) or 0 for n in nodes if isinstance(n, Mark) and n.what == "leave" and n.n is not None) or None


def _by_count(tries: _Tries, printed: tuple[Count, ...], wanted: int) -> list[int]:
    """Numbers of stitches near the printed count from which the row comes out at it with nothing over."""
    if wanted > MAX_ITEMS:
        return []  # no row has so many
    first = tries.on(max(1, wanted))
    guess = wanted
    if first is not None and first.count:
        guess = max(1, round(wanted * wanted / first.count))
    centres = tuple(dict.fromkeys((wanted, guess)))
    near = (c + d for d in range(NEAR + 1) for c in centres for d in dict.fromkeys((-d, d)))
    fits: list[tuple[float, int]] = []
    stitches = 0
    for n in dict.fromkeys(n for n in near if 0 < n <= FAR):
        made = tries.on(n)
        if made is not None and made.left == 0 and agrees(made, printed):
            fits.append((made.cost, n))
        stitches += n if made is None else len(made.out)
        if len(fits) >= 4 or stitches > STITCHES:
            break
    return [n for _, n in sorted(fits)]
