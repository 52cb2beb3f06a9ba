"""Lists of stitches and the place or the "around" told behind them: each in its own, all in one, over and over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    Chain,
    Either,
    Group,
    Make,
    Mark,
    Node,
    Num,
    Repeat,
    Skip,
    Unknown,
)
from loopwright.notation.cursor import Cursor
from loopwright.notation.places import place
from loopwright.source import Span

NEAR = 60  # nodes back that a group may have had its name
_GATHERED = frozenset("cluster popcorn puff bobble".split())  # of many stitches in one place: several before it have their own


def late_place(cur: Cursor, out: list[Node], floor: int) -> bool:
    """ "2 dc, ch 2, 2 dc, all in next sp": a place told after the list it is for; nothing taken where there is none."""
    start = cur.at
    cur.skip("all", "worked")
    if cur.low() not in ("in", "into") or not isinstance(out[-1], (Make, Chain)) or isinstance(out[-1], Make) and out[-1].place is not None:
        cur.at = start
        return False
    first = len(out)
    while first > floor and _listed(out[first - 1]):
        first -= 1
    while first < len(out) and isinstance(out[first], Chain):
        first += 1
    where = place(cur) if first < len(out) else None
    if where is None or where.from_hook or cur.low() in ("work", "make"):
        cur.at = start
        return False
    out[first:] = [Group(tuple(out[first:]), where, span=out[first].span.cover(cur.span_from(start)))]
    return True


def so_often(cur: Cursor, out: list[Node], *, starred: bool) -> None:
    """ "inc x4", "2 sc in next st twice": what was told last, so often; nothing taken elsewhere.

    Where it is said in words and a list stands before it, the whole list may be meant; the worker finds out.
    """
    last, token = out[-1], cur.token()
    if token is None or token.kind != "times" or not isinstance(last, (Make, Group)):
        return
    in_words = token.low[-1].isalpha() and not token.low.endswith("x")
    if in_words and (starred or cur.kind(1) == "close" or cur.low(1) == "from") or cur.depth > 1 and not _closes(cur):
        return  # the bracket's, or the star's
    cur.at += 1
    n, more = token.value
    times = Num((n + 1 if more else n,))
    span = last.span.cover(Span(token.start, token.end))
    again = Repeat((last,), "times", times, span=span)
    first = len(out) - 1
    while first > 0 and isinstance(out[first - 1], (Make, Group, Skip)):
        first -= 1
    if not in_words or first == len(out) - 1:
        out[-1] = again
        return
    listed = tuple(out[first:])
    if _undecided(listed):
        out[-1] = again
        return
    whole = Repeat(listed, "times", times, span=listed[0].span.cover(span))
    out[first:] = [Either("times-of", ((0.0, (*listed[:-1], again)), (0.3, (whole,))), whole.span)]


def _undecided(nodes: Sequence[Node]) -> bool:
    """Whether a list holds, within repeats or groups, what has two readings already: with a third the readings of lists within lists would double each time."""
    inner = [n for node in nodes if isinstance(node, (Repeat, Group)) for n in node.nodes]
    while inner:
        node = inner.pop()
        if isinstance(node, Either):
            return True
        if isinstance(node, (Repeat, Group)):
            inner += node.nodes
    return False


def listed(cur: Cursor, out: list[Node]) -> bool:
    """ "Sc in next 5 sts, sc2tog, 3 times.": the list of the sentence, so often; nothing taken elsewhere, or where there are stars in it."""
    first = cur.at
    while first and cur.lows[first - 1] not in (".", ";", "*"):
        first -= 1
    begin = next((i for i, n in enumerate(out) if n.span.start >= cur.tokens[first].start and not isinstance(n, (Chain, Mark))), len(out))
    inside = tuple(out[begin:])
    if first and cur.lows[first - 1] == "*" or len(inside) < 2 or cur.kind(1) not in ("sep", "end", "open"):
        return False
    if any(_to_the_end(n) or not isinstance(n, (Make, Group, Skip, Chain)) for n in inside):
        return False
    n, more = cur.take().value
    out[begin:] = [Repeat(inside, "more" if more else "times", Num((n,)), span=inside[0].span.cover(inside[-1].span))]
    return True


def _closes(cur: Cursor) -> bool:
    """Whether a bracket that is open here is closed further on."""
    level = 0
    for kind in cur.kinds[cur.at :]:
        level += (kind == "close") - (kind == "open")
        if level > 0:
            return True
    return False


def swept(out: list[Node]) -> None:
    """ "sc in next 2 sts, inc around": the whole list over and over, or only its last instruction; the worker finds out which."""
    last = out[-1].readings[0][1][-1] if isinstance(out[-1], Either) and out[-1].readings[0][1] else out[-1]
    first = len(out) - 1
    while first > 0 and _sweeps(out[first - 1]):
        first -= 1
    while first < len(out) - 1 and isinstance(begun := out[first], Make) and begun.place is not None and begun.place.quant == "same":
        first += 1  # "2 dc in same st, dc in next st and 2 in the next around": where the round began, once
    if not isinstance(last, Make) or len(out) - first < 2 and not isinstance(out[-1], Either):
        return
    shapes = last.kind in ("inc", "dec", "invdec") or last.place is not None and last.place.quant == "next"
    once = replace(last, place=None if _to_the_end(last) else last.place)
    listed = (*out[first:-1], *(out[-1].readings[0][1][:-1] if isinstance(out[-1], Either) else ()), once)
    if len(listed) < 2 or _undecided(listed):
        return
    again = Repeat(listed, "end", span=listed[0].span.cover(last.span))
    costs = (0.0, 0.8) if shapes else (0.6, 0.0)
    readings = sorted([(costs[0], (again,)), (costs[1], tuple(out[first:]))], key=lambda r: r[0])
    out[first:] = [Either("list-around", tuple(readings), again.span)]


def all_round(cur: Cursor, out: list[Node]) -> bool:
    """ "1 long, 2 chain, miss 1, all round": the whole list over and over; nothing taken where it is not said behind the list."""
    start = cur.at
    if cur.low(-1) not in (",", ";") or not any(map(cur.accept_words, _ALL_ROUND)):
        return False
    cur.skip("the", "row", "round", "rnd", "of")
    first = next((i for i, n in enumerate(out) if isinstance(n, (Make, Chain, Skip, Group))), len(out))
    listed = [n for n in out[first:] if not isinstance(n, Unknown)]
    plain = all(isinstance(n, (Make, Chain, Skip, Group)) and not _to_the_end(n) for n in listed)
    if cur.low(-1) == "around" and cur.low(-2) in (",", ";"):
        return _around(cur, out, start)
    if not (cur.done or cur.low() in (";", ".") or cur.low() in (",", "and") and cur.low(1) in _ENDS) or not plain or not any(isinstance(n, Skip) for n in listed):
        cur.at = start
        return False
    out[first:] = [Repeat(tuple(listed), "end", span=listed[0].span.cover(cur.span_from(start)))]
    return True


def _around(cur: Cursor, out: list[Node], start: int) -> bool:
    """ "3 sc, 2 sc in next, around": the list behind the chain that begins the round; nothing taken where it is one stitch, or told otherwise."""
    first = int(bool(out) and isinstance(out[0], Chain))
    listed = [n for node in out[first:] for n in (node.readings[0][1] if isinstance(node, Either) and node.key == "list-then-place" else (node,))]
    plain = all(isinstance(n, Make) and n.kind != "sl st" and not _to_the_end(n) and (n.place is None or n.place.quant == "next") for n in listed)
    if not plain or len(listed) < 2 or not (cur.done or cur.low() in (";", ".", ",")):
        cur.at = start
        return False
    out[first:] = [Repeat(tuple(listed), "end", span=listed[0].span.cover(cur.span_from(start)))]
    return True


def over_and_over(cur: Cursor, out: list[Node]) -> bool:
    """ "Dc in next 2 dc, 2 dc in next, around": the list before the comma over and over; nothing taken where no such list stands there."""
    at = next((i for i in range(1, 4) if cur.kind(i) in ("sep", "end")), 0) if cur.low(-1) == "," else 0
    if not at or any(cur.low(i) not in ("the", "way", "row", "rnd", "round") for i in range(1, at)):
        return False
    first = len(out)
    while first and isinstance(made := out[first - 1], Make) and made.kind != "sl st" and (made.place is None or made.place.quant in ("next", "first")) and not _to_the_end(made):
        first -= 1
    inside = [n for n in out[first:] if isinstance(n, Make)]
    if len(inside) < 2 or inside[-1].place is None and inside[-1].kind not in ("inc", "dec", "invdec") and not inside[-1].kind.endswith("tog"):
        return False
    if any(n.place is not None and n.place.quant == "first" for n in inside[1:]):
        return False
    if (begun := inside[0].place) is not None and begun.quant == "first":
        inside[0] = replace(inside[0], place=replace(begun, quant="next"))  # of each time
    cur.at += at
    out[first:] = [Repeat(tuple(inside), "end", span=inside[0].span.cover(cur.span_from(cur.at - at)))]
    return True


def between_them(cur: Cursor, out: list[Node]) -> bool:
    """ "3 long, 3 chain, 3 long in each corner, and 1 chain between the corners": the chain behind each of them; nothing taken elsewhere."""
    group, chain = (out[-2], out[-1]) if len(out) > 1 else (None, None)
    where = group.place if isinstance(group, (Make, Group)) else None
    if not isinstance(group, (Make, Group)) or where is None or where.left is not None or not isinstance(chain, Chain):
        return False
    many = where.n if where.quant == "next" and where.n is not None and (where.n.at(0) or 0) > 2 else None
    if many is None and (where.quant != "each" or where.n is not None):
        return False
    start = cur.at
    cur.at += 1
    cur.skip("the", "each", "every", "of")
    named = cur.low() in _BETWEEN_THESE or cur.kind() == "kind" and cur.token().value in _BETWEEN_THESE  # type: ignore[union-attr]
    named = named or cur.kind() == "kind" and isinstance(group, Make) and group.n == ONE and where.quant == "each"  # "dc in each st, with ch 2 between dc's"
    cur.at += 2 * (bool(named) and cur.low(1) in ("'", "’") and cur.low(2) == "s")
    if cur.low(-1) in ("each", "between") and cur.kind() in ("sep", "end") or named and cur.kind(1) in ("sep", "end", "word"):
        cur.at += named
        each = replace(group, place=replace(where, quant="next", n=ONE))
        out[-2:] = [Repeat((each, chain), "end" if many is None else "times", many, span=group.span.cover(cur.span_from(start)))]
        return True
    cur.at = start
    return False


_BETWEEN_THESE = frozenset("corners corner groups group them these shell cluster petal point fan scallop".split())
_ALL_ROUND = ("all round", "all around", "all along", "all across", "to end", "to the end", "the whole way", "round", "around")
ALL = frozenset(words.split()[0] for words in _ALL_ROUND)
_ENDS = frozenset("join fasten finish break turn and".split())


def named_again(out: list[Node]) -> None:
    """ "(tr, 1 ch, tr) in next ch (a V made), …, (tr, 1 ch, tr) in next ch": what was named before has its name again."""
    last = out[-1]
    if not isinstance(last, Group) or last.name is not None or len(last.nodes) < 2:
        return
    made = _made_of(last)
    named = next((g for g in out[-NEAR:-1] if isinstance(g, Group) and g.name and _made_of(g) == made), None)
    if named is not None:
        out[-1] = replace(last, name=named.name)


def _made_of(group: Group) -> list[tuple[str, tuple[int | None, ...]]]:
    return [(n.kind if isinstance(n, Make) else "ch" if isinstance(n, Chain) else type(n).__name__, n.n.values if isinstance(n, (Make, Chain)) else ()) for n in group.nodes]


def _sweeps(node: Node) -> bool:
    return isinstance(node, (Skip, Repeat)) or isinstance(node, Make) and node.kind != "sl st" and not _to_the_end(node)


def _to_the_end(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None and node.place.quant in ("each", "every", "last")


def one_place(out: list[Node], floor: int, *, also: bool = False) -> None:
    """ "2 dc, ch 1, 2 dc in next st": all in one place, or each in its own; the worker finds out which. `also`: the last is told with "and"."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant not in ("next", "same", "kth", "first", "last", "any") or last.place.left:
        return
    if last.place.n is None or last.place.n.at(0) != 1:
        return
    first = len(out) - 1
    while first > floor and _listed(out[first - 1]):
        first -= 1
    repeated = first == len(out) - 1 > floor and isinstance(out[first - 1], Repeat) and _of_one_list(out[first - 1])
    if repeated:
        first -= 1
    if last.place.from_hook and not all(isinstance(n, Chain) for n in out[:first]):
        return
    while first < len(out) - 1 and (isinstance(out[first], Chain) or isinstance(out[first], Make) and out[first].kind == "picot"):  # type: ignore[union-attr]
        first += 1
    run = out[first:]
    if len(run) < 2:
        return
    together = Group((*run[:-1], replace(last, place=None)), last.place, span=run[0].span.cover(last.span))
    told = [n.kind for n in run if isinstance(n, Make)]
    if any(isinstance(g, Group) and g.name and [n.kind for n in g.nodes if isinstance(n, Make)] == told for g in out[:first]):
        out[first:] = [together]  # as in the group that was named before
        return
    chains = any(isinstance(n, Chain) for n in run)
    alike = all(isinstance(n, Make) and n.kind == last.kind for n in run) and not chains
    gathered = (last.kind in _GATHERED or "tog" in last.kind) and any(isinstance(n, Make) and (n.n.at(0) or 1) > 1 for n in run[:-1])
    costs = (0.0 if also else 0.3, 0.4 if also else 0.0) if repeated else (0.0, 0.6) if chains else (1.0, 0.0) if alike else (0.6, 0.0) if gathered else (0.15, 0.25)
    told_so: list[tuple[float, tuple[Node, ...]]] = [(costs[0], (together,)), (costs[1], tuple(run))]
    if alike and len(run) == 2 and isinstance(two := run[0], Make) and (two.n.at(0) or 1) > 1 == last.n.at(0):
        told_so.append((0.5, (replace(two, place=last.place), last)))  # "*2 dc, dc next st*": two in one, where the count says so
    readings = sorted(told_so, key=lambda r: r[0])
    out[first:] = [Either("list-then-place", tuple(readings), together.span)]


def over_each(out: list[Node]) -> None:
    """ "4 dc, ch 1, 4 dc over each loop": the whole list in each of them."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant != "each" or last.place.thing.kind not in ("sp", "loop", "corner"):
        return
    first = len(out) - 1
    while first > 0 and _listed(out[first - 1]):
        first -= 1
    while first < len(out) - 1 and isinstance(out[first], Chain):
        first += 1
    run = out[first:]
    kinds = {n.kind for n in run if isinstance(n, Make)}
    if len(run) > 2 and (isinstance(run[1], Chain) or len(kinds) > 1):
        out[first:] = [Group((*run[:-1], replace(last, place=None)), last.place, span=run[0].span.cover(last.span))]


def in_each(out: list[Node], cur: Cursor) -> None:
    """ "2 sc and 1 hdc in each of next 3 sts": both in each of them."""
    last = out[-1]
    if len(out) < 2 or not isinstance(last, Make) or last.place is None or last.place.quant != "next" or last.place.n is None or (last.place.n.at(0) or 1) < 2:
        return
    before = out[-2]
    if last.place.thing.kind in ("sp", "loop") and isinstance(before, Chain):
        return
    if not isinstance(before, Make) or not _listed(before) or before.kind == last.kind or (before.n.at(0) or 1) > 4:
        return
    said = [t.text.lower() for t in cur.tokens[: cur.at] if before.span.end <= t.start < last.span.end]
    if said[:1] == ["and"] and "each" in said:
        out[-2:] = [Group((before, replace(last, place=None)), last.place, span=before.span.cover(last.span))]


def _listed(node: Node) -> bool:
    return isinstance(node, Chain) or isinstance(node, Make) and node.place is None and (node.taking or 0) < 2 and node.kind not in ("inc", "dec", "sl st") and "tog" not in node.kind


def _of_one_list(node: Node) -> bool:
    """ "(dc, ch 2) 3 times and dc in next sc": whether what is repeated names no place, and so may lie in that of what follows it."""
    return isinstance(node, Repeat) and node.mode == "times" and len(node.nodes) > 1 and isinstance(node.nodes[-1], Chain) and all(map(_listed, node.nodes))
