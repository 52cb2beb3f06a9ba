"""Stitches along an edge that is no row: "work 47 sc down the side", "14 hdc evenly along the row ends", "sc evenly across the lower edge"."""

from __future__ import annotations

from loopwright.model.tree import EdgeRun, Either, Node, Num
from loopwright.notation.cursor import Cursor

EDGES = frozenset("side sides edge edges section sections neck neckline armhole armholes front fronts seam sleeve end bottom top ends".split())
_WAYS = frozenset("down up along across around round over on evenly".split())
_PLAIN_WAYS = frozenset("down up along evenly".split())
_LONGEST = 9


def work_along(cur: Cursor) -> Node | None:
    """ "work 47 s c down side", "work 32 d c across lower edge": so many along an edge; nothing taken elsewhere."""
    start = cur.at
    cur.at += cur.kind() != "num"
    n = cur.number()
    if n is None or cur.kind() != "kind" or str(cur.token().value) == "ch":  # type: ignore[union-attr]
        cur.at = start
        return None
    kind = str(cur.take().value)
    found = _edge(cur, kind, n, start) if cur.low() in _WAYS else None
    if found is None:
        cur.at = start
    return found


def along(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """What follows a stitch: "evenly along the row ends", "down the side edge"; nothing taken elsewhere."""
    if cur.low() not in _PLAIN_WAYS or cur.low() == "along" and cur.low(1) == "with":
        return None
    return _edge(cur, kind, n, start)


def _edge(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    i = 0
    said: list[str] = []
    while i < _LONGEST and cur.kind(i) not in ("sep", "end", "close", "open", "star", "num") and cur.low(i) not in ("and", "join", "turn"):
        said.append(cur.low(i))
        i += 1
    if not EDGES & set(said) or "space" in said or "sp" in said:
        return None
    cur.at += i
    span = cur.span_from(start)
    if n is None:
        return EdgeRun(kind, None, "row-ends" if _row_ends(said) else "edge", span=span)
    once = EdgeRun(kind, n, "underside" if "bottom" in said else "row-ends" if _row_ends(said) else "edge", span=span)
    return Either("edge-each", ((0.0, (once,)), (0.3, (once, once))), span) if "each" in said else once


def _row_ends(said: list[str]) -> bool:
    return bool({"end", "ends"} & set(said) and {"row", "rows", "rnd", "rnds", "round", "rounds"} & set(said))
