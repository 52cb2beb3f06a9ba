"""Stitches along an edge that is no row: "work 47 sc down the side", "14 hdc evenly along the row ends", "sc evenly across the lower edge"."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from loopwright.model.tree import ONE, STITCH, EdgeRun, Either, Make, Node, Num, Place
from loopwright.notation.cursor import Cursor
from loopwright.notation.things import underside_words

EDGES = frozenset("side sides edge edges section sections neck neckline armhole armholes front fronts seam sleeve end bottom top ends".split())
_WAYS = frozenset("down up along across around round over on evenly".split())
_PLAIN_WAYS = frozenset("down up along evenly".split())
_NO_ROW = EDGES - frozenset("end ends top front".split())  # the end of a row and its front loops are the row's own
_OWN = frozenset("top upper around round".split())  # and so is the edge at its top, and the one around
_STITCHES = frozenset("st sts stitch stitches loop loops space sp".split())
_GOAL = frozenset("to until till".split())
_LONGEST = 9
_WHOLE = frozenset("evenly edge edges side sides entire outer outside perimeter whole piece blanket afghan throw".split())
_PART = frozenset(
    "each next same last first st sts stitch stitches loop loops space sp ring ch chain chains neck neckline armhole armholes sleeve sleeves front "
    "fronts bottom top lower upper opening post foot leg seam row rows thumb motif motifs".split(),
)
_OPENINGS = frozenset("neck neckline armhole armholes opening openings thumb sleeve sleeves bottom top lower upper leg hem cuff".split())
_FOR = frozenset("for per in into over to".split())
_ROWS = frozenset("row rows rnd rnds round rounds".split())
_ASIDE = ("and", "join", "turn", "working", "making", "with", "placing", "work", "having")


def work_along(cur: Cursor) -> Node | None:
    """ "work 47 s c down side", "work 32 d c across lower edge": so many along an edge; nothing taken elsewhere."""
    start = cur.at
    cur.at += cur.kind() != "num"
    n = cur.number()
    if n is None or cur.kind() != "kind" or str(cur.token().value) == "ch":  # type: ignore[union-attr]
        cur.at = start
        return None
    kind = str(cur.take().value)
    found = _edge(cur, kind, n, start, EDGES, _STITCHES) if cur.low() in _WAYS else None
    if found is None:
        cur.at = start
        return None
    return with_rate(cur, found, start)


def along(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """What follows a stitch: "evenly along the row ends", "down the side edge"; nothing taken elsewhere."""
    if cur.low() not in _PLAIN_WAYS or cur.low() == "along" and cur.low(1) == "with":
        return None
    return _edge(cur, kind, n, start, _NO_ROW, _STITCHES | _OWN)


_ENDS = ("sep", "end", "close")
_EDGE = ("edge", "side", "end")


def one_of_sides(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """ "sc evenly down the side, …, sc across the bottom, …, sc up the other side, …, sc across the top": an edge by its name; nothing taken elsewhere."""
    mark = cur.at
    cur.skip("evenly", "spaced")
    way = cur.low()
    if way in _ALONG_SIDES and n is None:
        cur.at += 1
        cur.skip("evenly", "the", "entire", "whole", "long", "short")
        word = cur.low()
        cur.at += 1
        named = cur.accept(*_EDGE)
        if cur.kind() in _ENDS:
            if word in ("bottom", "lower"):
                return EdgeRun(kind, None, "underside", span=cur.span_from(start))
            if word in ("top", "upper"):
                return Make(kind, ONE, Place("each", None, STITCH), span=cur.span_from(start))
            if word in ("other", "opposite", "second", "remaining") and named and way in ("up", "down") and _SIDES.keys() & set(cur.lows[:start]):
                return EdgeRun(kind, None, "edge", span=cur.span_from(start))
    cur.at = mark
    return None


def all_around(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """What follows a stitch: "evenly around", "around the entire outer edge", "along all four sides"; nothing taken elsewhere."""
    i = 0
    said: set[str] = set()
    while i < _LONGEST and cur.kind(i) not in ("sep", "end", "close", "open", "star", "times") and cur.low(i) not in _ASIDE:
        if cur.kind(i) == "num" and not said & {"all"}:
            return None
        said |= set(cur.low(i).split())
        i += 1
    opening = said & _OPENINGS and said & {"around", "round"} and said & {"evenly", "edge", "opening"} and not said & (_PART - _OPENINGS)
    if n is None and opening:
        cur.at += i
        return EdgeRun(kind, None, "opening", span=cur.span_from(start))
    if not i or said & _PART or not said & _WHOLE or not (said & {"around", "round"} or "all" in said and said & {"sides", "edges"}):
        return None
    cur.at += i
    return EdgeRun(kind, n, "around", span=cur.span_from(start))


def at_a_rate(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """What follows a stitch: "3 sts for every 4 rows", "1 sc per row"; nothing taken elsewhere."""
    mark = cur.at
    if n is None or cur.low() not in ("st", "sts", "stitch", "stitches", *_FOR):
        return None
    cur.at += cur.low() not in _FOR
    rows = _for_rows(cur)
    if rows is None or n.at(0) is None:
        cur.at = mark
        return None
    return EdgeRun(kind, None, "row-ends", n.at(0), rows, span=cur.span_from(start))


def with_rate(cur: Cursor, edge: Node, start: int) -> Node:
    """An edge with how many go along the row ends, where that is told behind it: ", placing 1 sc in each row end"."""
    if not isinstance(edge, EdgeRun) or edge.where not in ("row-ends", "edge", "around"):
        return edge
    mark = cur.at
    cur.skip(",", "working", "placing", "making", "approximately", "about", "roughly", "at", "a", "the", "rate", "of", "with", "work", "place")
    many = cur.number()
    if many is not None:
        cur.at += cur.kind() == "kind" or cur.low() in _STITCHES
    rows = _for_rows(cur) if many is not None else None
    if many is None or rows is None:
        cur.at = mark
        return edge
    if edge.n is not None:
        return replace(edge, span=cur.span_from(start))
    return replace(edge, where="row-ends", per=many.at(0), rows=rows, span=cur.span_from(start))


def _for_rows(cur: Cursor) -> int | None:
    """ "for every 4 rows", "per row", "in each row end": how many rows; nothing taken where none are told."""
    mark = cur.at
    if cur.low() not in _FOR:
        return None
    each = cur.take().low in ("per", "for")
    each = cur.accept("every", "each", "ea", "the") or each
    many = cur.number()
    rows = cur.low() in _ROWS
    if not each or not rows or many is not None and (many.at(0) or 0) < 1:
        cur.at = mark
        return None
    while cur.low() in _ROWS or cur.low() in ("end", "ends", "-"):
        cur.at += 1
    while cur.low() in ("along", "around", "across", "up", "down", "of", "on", "the", "side", "sides", "edge", "all", "way", "to"):
        cur.at += 1
    return (many.at(0) or 1) if many is not None else 1


def _edge(cur: Cursor, kind: str, n: Num | None, start: int, edges: frozenset[str], never: frozenset[str]) -> Node | None:
    i = 0
    said: list[str] = []
    while i < _LONGEST and cur.kind(i) not in ("sep", "end", "close", "open", "star", "num") and cur.low(i) not in ("and", "join", "turn"):
        said += cur.low(i).split()
        i += 1
    where = set(said[: next((k for k, word in enumerate(said) if word in _GOAL), len(said))])
    if not (edges & where or _row_ends(where)) or never & where or _underside(cur):
        return None
    cur.at += i
    span = cur.span_from(start)
    way: Literal["row-ends", "edge"] = "row-ends" if _row_ends(where) else "edge"
    if n is None:
        return EdgeRun(kind, None, way, span=span)
    once = EdgeRun(kind, n, "underside" if "bottom" in where else way, span=span)
    return Either("edge-each", ((0.0, (once,)), (0.3, (once, once))), span) if "each" in where else once


def _row_ends(said: set[str]) -> bool:
    return bool({"end", "ends"} & said and {"row", "rows", "rnd", "rnds", "round", "rounds"} & said)


def _underside(cur: Cursor) -> bool:
    """Whether the other side of the chain comes next, which has a way of its own."""
    start = cur.at
    cur.skip("evenly")
    found = underside_words(cur)
    cur.at = start
    return bool(found)


_ALONG_SIDES = frozenset("along across on over down up in into at".split())
_BETWEEN_SIDES = frozenset(", and with work working evenly spaced loosely around the entire whole outer".split())
_SIDES = {"side": 4, "sides": 4, "edge": 4, "edges": 4}


def each_side(cur: Cursor) -> Node | None:
    """ "80 sc along each side with 3 sc in each corner", "47 sc across each short side": a border of four sides; nothing taken elsewhere."""
    start, total, kind = cur.at, 0, ""
    begun, seen = 0, set[str]()
    while not cur.done and cur.low() not in (".", ";") and cur.low() not in ("join", "do", "turn", "fasten", "end"):
        if cur.kind() not in ("num", "kind") and (cur.low() in _BETWEEN_SIDES or not seen and cur.kind() == "word" and cur.low() not in ("rep", "repeat")):
            cur.at += 1
            continue
        found = _per_side(cur, kind)
        if found is None:
            break
        kind, many, where = found
        begun += many if where == "one corner" else 0
        total, seen = total + many, {*seen, where}
    total -= begun if "corner" in seen else 0  # which is one of them
    if cur.low() == "," and cur.low(1) in ("join", "do", "turn", "fasten"):
        cur.at += 1
    ended = cur.done or cur.low() in (".", ";", "-", "–", "—", "(", "join", "do", "turn", "fasten", "end", "sl", "total") or cur.kind() == "close"
    if not ended or not ("corner" in seen and len(seen) > 1 or {"long", "short"} <= {way[:5].rstrip("e") for way in seen}):
        cur.at = start
        return None
    return EdgeRun(kind, Num((total,)), "edge", span=cur.span_from(start))


def _per_side(cur: Cursor, kind: str) -> tuple[str, int, str] | None:
    """ "68 sc across each long side": the stitch, how many of it in all, and where."""
    n = cur.number()
    if n is None or len(n.values) != 1 or cur.kind() != "kind" or kind and cur.token().value != kind:  # type: ignore[union-attr]
        return None
    kind = str(cur.take().value)
    cur.skip("evenly", "spaced", "loosely")
    if cur.low() in ("in", "into", "at") and cur.low(1) not in ("each", "every", "all") and "corner" in cur.lows[cur.at + 1 : cur.at + 4]:
        while cur.low() in ("in", "into", "at", "the", "same", "first", "this", "corner", "sp", "st", "space"):
            cur.at += 1
        return kind, n.at(0) or 0, "one corner"  # the others are told further on
    if cur.low() not in _ALONG_SIDES or cur.low(1) not in ("each", "every", "all"):
        return None
    cur.at += 2
    cur.skip("of", "the", "four", "4")
    way = cur.low()
    cur.skip("long", "short", "longer", "shorter")
    if cur.low() in ("corner", "corners"):
        cur.at += 1
        cur.skip("st", "sts", "stitch", "sp", "space")
        return kind, 4 * (n.at(0) or 0), "corner"
    if cur.low() not in _SIDES:
        return None
    cur.at += 1
    return kind, (2 if way.startswith(("long", "short")) else 4) * (n.at(0) or 0), way
