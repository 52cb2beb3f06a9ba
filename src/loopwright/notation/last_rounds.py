"""What the last round of a repeat is, told behind it: "ending last repeat at **", "ending with 2 dc in last st", "work last sl st in top of ch-3"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, Chain, Either, Group, Join, Make, Node, Repeat, Skip, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.lists import one_place
from loopwright.notation.same_space import same_space

LONGEST = 40  # words that are looked through for the end of a repeat within an ending
_GAP, _SPACE = Thing("gap"), Thing("sp")


def _works_last(cur: Cursor) -> bool:
    """ "rep from * across, work last sl st in top of ch-3": where the slip stitch that ends the repeat goes."""
    the = cur.low(1) == "the"
    token = cur.token(2 + the)
    return cur.low() in ("work", "working") and cur.low(1 + the) == "last" and token is not None and token.value == "sl st" and cur.low(3 + the) in ("in", "into", "on")


def ended(cur: Cursor, made: Repeat) -> Repeat:
    """ "…, ending at **", "…, ending with 2 dc in last st", "… work last sl st in top of ch-3": what the last round of a repeat is, told behind it."""
    cur.skip(",", ";")
    rowed = cur.low() in ("ending", "end") and cur.low(1) in ("row", "rnd", "round") and cur.low(2) in ("with", "by")
    if rowed:
        cur.at += 1  # "ending row with"
        if cur.low(1) == "with" and cur.low(2) == "the" and (stop := _so_far(cur, made)):
            return replace(made, ending_mode="at", stop_at=stop)
    at_mark = next((i for i in range(1, 8) if cur.kind(i) == "star" and len(cur.low(i)) > 1), None)
    if cur.low() in ("ending", "end", "finishing") and at_mark and made.stop_at is not None and any(cur.low(i) in ("at", "with") for i in range(1, at_mark)):
        cur.at += at_mark + 1
        made = replace(made, ending_mode="at")
    elif cur.low() in ("ending", "end", "finishing") and cur.low(1) == "to" and cur.low(2).startswith("corr"):
        cur.at += 3
        made = replace(made, ending_mode="correspond")
    elif rowed or _works_last(cur) or cur.low() in ("ending", "end") and (cur.low(1) in ("with", "last", "in", "rep", "skip", "sk") or cur.kind(1) in ("kind", "num", "open") or cur.low(1) == "the" and cur.low(2) == "last"):
        last = any(cur.low(i) in ("last", "rep", "repeat") for i in range(1, 4)) or _instead(cur)
        cur.skip("ending", "end", "work", "working", "the") if cur.low(1) == "the" or cur.low().startswith("work") else None
        cur.skip("ending", "end", "with", "last", "rep", "repeat", "side", "by", "in", *(("row", "rnd", "round") if rowed else ()))
        if cur.low() == "." and cur.low(-1) in ("rep", "rept") and cur.low(1) in ("with", "by", "in"):
            cur.at += 1  # "ending last rep. with"
            cur.skip("with", "by", "in")
        tail: list[Node] = []
        if cur.low() in ("corner", "shell", "cluster", "group") and cur.kind(1) in ("sep", "end") and isinstance(made.nodes[0] if made.nodes else None, (Group, Either)):
            cur.at += 1
            tail = [made.nodes[0]]  # "ending with corner": as each round begins
        _to_its_end(cur, made, tail)
        made = replace(made, ending=_spaces_alike(made.nodes, tail), ending_mode="with-last" if last else "with")
    return made


def _so_far(cur: Cursor, made: Repeat) -> int:
    """ "* dc in popcorn, 3 dc in next dc, dc in next popcorn, 2 popcorns in loop; repeat from * ending row with the 5 dc": those that the round begins with.

    How many of its nodes make them; 0 and nothing taken elsewhere.
    """
    start = cur.at
    cur.at += 3
    n = cur.number()
    kind = str(cur.take().value) if n is not None and cur.kind() == "kind" else ""
    wanted = n.at(0) if n is not None else None
    if wanted and kind and (cur.done or cur.kind() in ("sep", "end")):
        many = 0
        for at, node in enumerate(made.nodes):
            place = node.place if isinstance(node, Make) and node.kind == kind else None
            if place is None or not isinstance(node, Make):
                break
            many += (node.n.at(0) or 0) * (place.n.at(0) or 1 if place.n is not None else 1)
            if many == wanted and at + 1 < len(made.nodes):
                return at + 1
    cur.at = start
    return 0


def _to_its_end(cur: Cursor, made: Repeat, tail: list[Node]) -> None:
    """What the last round ends with, up to a stop."""
    from loopwright.notation.body import one
    from loopwright.notation.stars import repeat_from

    stars: list[int] = []
    while not cur.done and cur.low() not in (";", "."):
        at = cur.at
        if cur.low() == "*" and any(cur.low(i) in ("rep", "repeat") and cur.low(i + 1) == "from" for i in range(2, LONGEST)):
            stars.append(len(tail))  # "…, ending with sc in first loop, * ch 3, sc in next loop, repeat from * 4 times, ch 5": a repeat of its own
            cur.at += 1
            continue
        if stars and cur.low() in ("rep", "repeat") and cur.low(1) == "from":
            repeat_from(cur, tail, stars)
            continue
        if cur.low() in ("turn", "join") or cur.kind() == "close":
            break
        if tail and cur.accept_words("instead of"):
            while not cur.done and cur.kind() not in ("sep", "close", "star"):
                cur.at += 1  # "… sl st in first sc instead of sc": what the rounds before had there
            break
        found_node = one(cur, tail)
        if found_node is not None:
            tail.append(same_space(cur, [*made.nodes[-1:], *tail] if len(tail) == 1 else tail, found_node))
            one_place(tail, 0)
            before = made.nodes[-1] if made.nodes else None
            if isinstance(found_node, Join) and found_node.via == "sl st" and isinstance(before, Make) and before.kind == "sl st":
                tail[-1] = Make("sl st", ONE, found_node.place, span=found_node.span)  # a slip stitch of the pattern, no join
        if cur.at == at:
            cur.at += 1


def _instead(cur: Cursor) -> bool:
    """Whether what the repeat ends with stands for a part of its last round: "ending with 3 tr in last dc instead of 5 tr"."""
    stop = next((i for i in range(cur.at, len(cur.lows)) if cur.lows[i] in (";", ".")), len(cur.lows))
    return "instead" in cur.lows[cur.at : stop]


def _spaces_alike(told: Sequence[Node], ending: Sequence[Node]) -> tuple[Node, ...]:
    """ "*3 dc in next sp between groups …; rep from * around, ending with 3 dc in last sp": the last space is one between groups too."""
    last = told[-1] if told else None
    if len(ending) == 1 and isinstance(last, Make) and last.place is not None and last.place.quant == "next" and last.place.thing.kind in ("sp", "loop"):
        only = ending[0]
        if isinstance(only, Make) and only.place is None and only.kind == last.kind and (only.n.at(0) or 0) > 1:
            return (replace(only, place=last.place),)  # "3 tr in next loop …, ending with 4 tr": in the last loop
    if not any(isinstance(n, Make) and n.place is not None and n.place.thing == _GAP for n in told):
        return tuple(ending)
    return tuple(replace(n, place=replace(n.place, thing=_GAP)) if isinstance(n, Make) and n.place is not None and n.place.quant == "last" and n.place.thing == _SPACE else n for n in ending)


def omitting(cur: Cursor, made: Node) -> Node:
    """ "rep from * around, omitting last sc", "(omit the last hdc and ch 3)": the last round without its last instructions."""
    ahead = 0
    while cur.low(ahead) in (",", ";", "but", "(", "and"):
        ahead += 1
    last = cur.low(ahead + 1) in ("last", "the", "final") or any(cur.low(ahead + i) in ("last", "final") for i in range(2, 8))
    if not isinstance(made, Repeat) or cur.low(ahead) not in ("omit", "omitting") or not last or not made.nodes:
        return made
    bracket = cur.low(ahead - 1) == "(" if ahead else False
    cur.at += ahead
    named: list[str] = []
    while not cur.done and (cur.kind() not in ("sep", "close", "star") or cur.low() in ("+", "&") or cur.low() == "-" and cur.kind(1) == "num" or cur.low() == "." and cur.low(-1) in ("c", "rep", "ch") and cur.kind(1) != "end"):
        named += [str(cur.token().value)] if cur.kind() == "kind" else []  # type: ignore[union-attr]
        cur.at += 1
    cur.at += bracket and cur.kind() == "close"
    return replace(made, ending=_last_named(made.nodes, named), ending_mode="omit")


def _last_named(nodes: tuple[Node, ...], named: list[str]) -> tuple[Node, ...]:
    """The nodes at the end that are the kinds named, with what is passed over between them; the last node alone where they are others."""
    at = len(nodes)
    for kind in reversed(named):
        while at and isinstance(nodes[at - 1], Skip):
            at -= 1
        node = nodes[at - 1] if at else None
        if kind != ("ch" if isinstance(node, Chain) else node.kind if isinstance(node, Make) else ""):
            return nodes[-1:]
        at -= 1
    return nodes[at:] if 0 < at < len(nodes) else nodes[-1:]


def two_sides(cur: Cursor, made: Node) -> Either | None:
    """ "*A; rep from * twice more, B, rep from * 3 times, B": one star serves two counts, so that A is worked again alone, or all before; None elsewhere."""
    told = made.nodes[0] if isinstance(made, Repeat) and made.nodes else None
    if not isinstance(made, Repeat) or not isinstance(told, Repeat) or len(made.nodes) < 2 or made.ending or made.stop_at is not None:
        return None
    if any(isinstance(n, (Repeat, Either)) for n in told.nodes):
        return None  # lists within lists would double each time
    if made.times is None or told.times is None or not {made.mode, told.mode} <= {"times", "more", "star-times"}:
        return None
    alone = (*made.nodes, replace(told, mode="times", times=made.times, span=made.span))
    behind = int(cur.kind() == "sep")
    after = cur.token(behind)
    goes_on = after is not None and after.low not in ("join", "sl", "turn", "fasten", "end") and after.value != "sl st"
    return Either("one-star", ((0.3 if goes_on else 0.0, (made,)), (0.0 if goes_on else 0.3, alone)), made.span)
