"""Repeats told without a mark: "ch 3, dc in same st, …, repeat from beginning around": where their rounds begin, and what the first of them is begun with.

Common practice, no source: the forms were met in printed leaflets.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, STITCH, Chain, Group, Join, Make, Mark, Node, Num, Place, Repeat, Skip

_AS_TALL = {"hdc": 2, "dc": 3, "tr": 4, "dtr": 5}
_LONGEST, _LOOP = 4, 3  # chains of one that is a stitch at most; of one that is a loop, before a stitch that none stands for, at least
_SPAN = re.compile(r"Span\([^()]*\)")


def where_begun(out: Sequence[Node], beginning: bool) -> int:
    """The index of the first instruction that is worked again: behind what leads to the place and a chain that stands for a stitch. `beginning`: told to be from there."""
    at = _led_to(out)
    first, then = out[at] if at < len(out) else None, out[at + 1] if at + 1 < len(out) else None
    if not isinstance(first, (Chain, Mark)):
        return at
    many = first.n.at(0) or 0 if isinstance(first, Chain) else 0
    if beginning and many > _LONGEST:
        return at  # "ch 7, …, repeat from beginning": the loop is part of it
    if many and isinstance(then, Skip) and not then.first and many > max(3, then.n.at(0) or 0):
        return at  # "5 chain, miss 2, 1 dc in the 3rd; repeat": the chain bridges what is missed
    if many >= _LOOP and isinstance(then, Make) and then.kind == "sc" and then.place is not None and then.place.quant == "next":
        return at  # "ch 5, sc in next loop, …; repeat around": a loop
    begun = _behind_first(out)
    return begun or at + 1


def _led_to(out: Sequence[Node]) -> int:
    """How many slip stitches lead to the place where a chain begins the row; 0 where they are the row's own stitches."""
    at = next((i for i, n in enumerate(out) if not (isinstance(n, Make) and n.kind == "sl st")), len(out))
    return at if at < len(out) and isinstance(out[at], Chain) and any(isinstance(n, (Make, Group)) for n in out[at:]) and not any(isinstance(n, Make) and n.kind == "sl st" for n in out[at:]) else 0


def _behind_first(out: Sequence[Node]) -> int:
    """ "Sl st in next sc, ch 1, sc in same sc, 9 dc in ch-3 sp, sc in next sc, repeat to end": where the rounds begin, behind the row's first stitch; 0 elsewhere."""
    at = next((i for i, n in enumerate(out) if not isinstance(n, (Chain, Mark)) and not (isinstance(n, Make) and n.kind == "sl st")), len(out))
    first, last = (out[at], out[-1]) if at + 1 < len(out) else (None, None)
    same = isinstance(first, Make) and first.place is not None and first.place.quant == "same" and first.n == ONE
    return at + 1 if same and isinstance(last, Make) and last.kind == first.kind and last.place is not None and last.place.quant == "next" else 0  # type: ignore[union-attr]


def once(inside: tuple[Node, ...]) -> tuple[Node, ...]:
    """What is told twice before it is repeated, told once: "ch 6, sc in next loop, ch 6, sc in next loop; repeat around"."""
    half = len(inside) // 2
    return inside[:half] if half and len(inside) == 2 * half and _SPAN.sub("", repr(inside[:half])) == _SPAN.sub("", repr(inside[half:])) else inside


def begun_by_chain(before: Sequence[Node], made: Repeat) -> list[Node]:
    """The repeat of a row's beginning; where a chain stands for the first stitch, the first round as it is told, and the others with the stitch itself."""
    chain = before[-1] if before else None
    if not isinstance(chain, Chain) or chain.counts == "no" or made.mode != "end" or not made.nodes or any(isinstance(n, Repeat) and n.mode == "end" for n in made.nodes):
        return [made]  # the last: repeated to the end before, it would be told twice as often each time
    first = _with_it(chain, made.nodes[0], moved=len(before) > 1)
    return [made] if first is made.nodes[0] else [*made.nodes, replace(made, nodes=(first, *made.nodes[1:]))]


def _with_it(chain: Chain, first: Node, moved: bool) -> Node:
    """The instruction behind the chain with the stitch that the chain stands for: "ch 3, 2 dc in same st" is 3 dc in the next when it comes again."""
    if isinstance(first, Group) and first.place is not None and first.place.quant == "same" and first.nodes and isinstance(first.nodes[0], Make) and _stands_for(chain, first.nodes[0].kind):
        return replace(first, nodes=(replace(first.nodes[0], n=_more(first.nodes[0].n)), *first.nodes[1:]), place=_next(first.place, moved))
    if not isinstance(first, Make) or first.place is None or not _stands_for(chain, first.kind):
        return first
    if first.place.quant == "same":
        return replace(first, n=_more(first.n), place=_next(first.place, moved))
    if first.place.quant == "next" and first.n == ONE and first.place.n is not None and first.place.thing.kind in ("st", "sc", "hdc", "dc", "tr"):
        return replace(first, place=replace(first.place, n=_more(first.place.n)))
    return first


def _next(same: Place, moved: bool) -> Place:
    """The next such place; "in same space" where nothing led to a space is the stitch that the chain stands on."""
    return replace(same, quant="next", thing=same.thing if moved else STITCH)


def _stands_for(chain: Chain, kind: str) -> bool:
    return kind in _AS_TALL and (chain.as_kind in (None, kind) and chain.counts == "yes" or chain.n.at(0) == _AS_TALL[kind])


def _more(n: Num) -> Num:
    return replace(n, values=tuple(None if v is None else v + 1 for v in n.values))


def in_its_place(before: Node | None, made: Repeat) -> Group | None:
    """ "Over next loop work 3 sc, * ch 3, 3 sc, repeat from * twice": all of it goes into the loop told first; None where the repeat tells a place, or no such loop stands there."""
    told = before.place if isinstance(before, Group) and before.nodes else None
    if not isinstance(before, Group) or told is None or told.quant not in ("next", "each") or told.thing.kind not in ("sp", "loop", "corner"):
        return None
    first = before.nodes[0].span.start
    bare = isinstance(made.nodes[0], Chain) and all(isinstance(n, Chain) or isinstance(n, Make) and n.place is None for n in made.nodes) if made.nodes else False
    if not bare or made.ending or made.mode not in ("star-times", "times", "more") or not 0 <= told.span.start < first or told.span.end > first:
        return None
    return replace(before, nodes=(*before.nodes, replace(made, mode="more") if made.mode == "star-times" else made))


def begun_where_joined(inside: tuple[Node, ...], before: Sequence[Node]) -> tuple[Node, ...]:
    """ "Join in any st, *2 sc in same st, …; rep from *": of the other rounds it is the next one, as of the first where nothing is worked yet."""
    first = inside[0] if inside else None
    if not isinstance(first, (Make, Group)) or first.place is None or first.place.quant != "same" or len(inside) < 2 and first.place.thing.kind == "st":
        return inside
    joined = before and isinstance(before[-1], Mark) and before[-1].what == "attach" and all(isinstance(n, Mark) for n in before)
    return (replace(first, place=replace(first.place, quant="next")), *inside[1:]) if joined else inside


_SPACES = ("sp", "loop", "corner")


def in_the_space_reached(out: list[Node], words: Sequence[str], begin: int) -> None:
    """ "Sl st to loop, ch 3, 4 dc in loop", "join in any sp, (ch 3, 2 dc) in the sp": the one that the hook was taken to, no further one.

    `words`: those of what was read last; `begin`: where a star stands that is still open.
    """
    last = out[-1]
    where = last.place if isinstance(last, (Make, Group)) else None
    if not isinstance(last, (Make, Group)) or where is None or where.quant != "next" or where.n != ONE or where.of is not None or where.thing.kind not in _SPACES or "next" in words or "following" in words:
        return
    own = isinstance(last, Group) and bool(last.nodes) and isinstance(last.nodes[0], Chain)
    at = len(out) - 2
    while at > 0 and not own and (isinstance(out[at], Chain) or isinstance(out[at], Make) and out[at].place is None):  # type: ignore[union-attr]
        at -= 1
    led = out[at] if begin <= at and (own or at < len(out) - 2 and isinstance(out[at + 1], Chain)) else None
    led = led.nodes[-1] if isinstance(led, Repeat) and led.mode == "once" and led.nodes else led
    if led is not None and takes_to_a_space(led):
        out[-1] = replace(last, place=replace(where, quant="same"))


def takes_to_a_space(node: Node) -> bool:
    """Whether the hook comes to a space, a loop or a corner: "sl st to corner sp", "sl st to 3rd ch of loop", "join yarn in any ch-2 sp"."""
    slipped = isinstance(node, Make) and node.kind == "sl st" or isinstance(node, Join) and node.via == "sl st" or isinstance(node, Mark) and node.what == "attach"
    to = node.place if slipped and isinstance(node, (Make, Join, Mark)) else None
    return to is not None and (to.thing.kind in _SPACES or to.of is not None and to.of.kind in _SPACES)
