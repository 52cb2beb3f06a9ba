"""What a row tells of itself before it is worked: whether it begins a piece, goes on in the middle, prints a count."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loopwright.model.tree import (
    Chain,
    Count,
    Make,
    Mark,
    Node,
    PatternRun,
    Repeat,
    Ring,
)
from loopwright.working.kinds import HEIGHT, plain
from loopwright.working.rows import from_hook, lead_chain
from loopwright.working.run import MAX_ITEMS, Printed
from loopwright.working.starts import first_stitch

if TYPE_CHECKING:
    from loopwright.working.explanations import State
    from loopwright.working.steps import Step

TURNING = 4  # no more chains turn a row


def by_shape(body: tuple[Node, ...]) -> bool:
    """Whether a row is told by shapes alone, so that nobody knows its stitches."""
    return any(isinstance(n, PatternRun) and (n.name is not None or n.n is None) for n in body)


def printed_total(printed: tuple[Count, ...]) -> int | None:
    """The printed number of stitches, if one is printed that a row may have."""
    for count in printed:
        number = count.n.at(0)
        if count.scope == "row" and number is not None and (count.noun in (None, "st", "sts") or plain(count.noun) in HEIGHT):
            return number if number <= MAX_ITEMS else None
    return None


def stitches_below(body: tuple[Node, ...]) -> int | None:
    """How many stitches a row's own words say are there before it, "(from 60)"; None where they do not, or no row has so many."""
    first = body[0] if body else None
    many = first.n.at(0) if isinstance(first, Mark) and first.what == "below" and first.n is not None else None
    return many if many and many <= MAX_ITEMS else None


def as_asked(printed: tuple[Count, ...]) -> Printed:
    """What is printed, for a row to ask for while it is worked."""
    noun = next((c.noun for c in printed if c.scope == "row" and c.n.at(0) is not None), None)
    return Printed(printed_total(printed) or 0, of_all=noun in (None, "st", "sts"))


def joins_round(body: tuple[Node, ...]) -> bool:
    """Whether a row says that it is joined."""
    from loopwright.model.tree import Join

    return any(isinstance(n, Join) for n in body)


def has_ring(body: tuple[Node, ...]) -> bool:
    """Whether a row makes a ring."""
    return any(isinstance(n, Ring) for n in body)


def from_the_middle(step: Step) -> bool:
    """Whether a first row met is a later row of its piece: numbered past 1, its stitches in places of a row below."""
    if step.number in (None, 1) and _turns_only(step):
        return True
    first = first_stitch(step.body)
    if step.number is None or step.number <= 1:
        return lead_chain(step.body) is None and not has_ring(step.body) and first is not None and (
            first[1] is None or first[1].thing.kind not in ("ring", "ch") and not first[1].from_hook
        ) and step.number is None
    first = first_stitch(tuple(n for n in step.body if not isinstance(n, (Chain, Mark))))
    ring = first is not None and first[1] is not None and first[1].thing.kind == "ring"
    return first is not None and not ring and not has_ring(step.body) and not from_hook(step.body)


def _turns_only(step: Step) -> bool:
    """Whether a first row's chain is too short for the count printed: "Row 1: Ch 2, hdc in each st to end. (36)" stands on stitches told elsewhere."""
    chain = lead_chain(step.body)
    if chain is None or (chain.n.at(0) or 0) > TURNING or (printed_total(step.printed) or 0) <= 2 * TURNING or from_hook(step.body) or has_ring(step.body):
        return False
    first = first_stitch(tuple(n for n in step.body if not isinstance(n, (Chain, Mark))))
    onto = first is not None and first[1] is not None and (first[1].thing.kind not in ("ring", "ch") or onto_chain(step.body))
    return onto and any(isinstance(n, Repeat) and n.mode == "end" or isinstance(n, Make) and n.place is not None and n.place.quant == "each" for n in step.body)


def onto_chain(body: tuple[Node, ...]) -> bool:
    """Whether a row goes into each of the chains that it does not make: "Rnd 1: Ch 1, sc in each ch around. (36)"."""
    first = first_stitch(tuple(n for n in body if not isinstance(n, (Chain, Mark))))
    return first is not None and first[1] is not None and first[1].quant == "each" and first[1].thing.kind == "ch" and not from_hook(body)


def leaves_any(body: tuple[Node, ...]) -> bool:
    """Whether a row says to leave the rest, of which it does not tell the number: then it needs no certain number of stitches."""
    return any(isinstance(n, Mark) and n.what == "leave" and n.n is None for n in body)


_WORKS = frozenset("Group Evenly PatternRun InTurn EdgeRun EveryKth AtEnds Spread Divided Either".split())


def begins_anew(step: Step, state: State) -> tuple[bool, bool]:
    """Whether a row surely, or perhaps, begins a new piece: a ring, or a foundation chain."""
    body = step.body
    first = first_stitch(body)
    chain = lead_chain(body)
    fresh = step.order is None and (step.new_section or step.number in (None, 1))
    fresh = fresh or step.order is not None and step.order.section is not None and step.new_section  # "work as for head"
    if has_ring(body) and (chain is not None or fresh):
        return True, False
    if first is not None and first[1] is not None and first[1].thing.kind == "ring":
        return (True, False) if fresh and not state.view.ring else (False, False)
    if chain is None:
        return False, False
    length = chain.n.at(0) or 0
    if from_hook(body) and fresh and length > 1:
        return True, False
    only_chain = not any(isinstance(n, (Make, Repeat)) or n.__class__.__name__ in _WORKS for n in body)
    if only_chain and step.number is None and (length > 6 or step.new_section):
        return True, False
    if only_chain and step.number is None and length > 1 and step.order is None and all(n is chain for n in body):
        return False, True
    return False, (step.new_section or step.number == 1) and length > 6
