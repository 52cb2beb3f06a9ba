"""Filet: meshes told by their number, "15 sps", "3 bls", and the rows that tell what they are made of as well.

Common practice, no source: the forms were met in leaflets.
"""

from __future__ import annotations

from loopwright.model.tree import Filet, Make, Mark, Node
from loopwright.notation.cursor import Cursor

_OPEN_MESH = frozenset("sp sps space spaces mesh meshes".split())
_EMPTY, _FILLED = frozenset("open empty".split()), frozenset("solid closed filled".split())
_BLOCKS = frozenset("bl bls block blocks".split())


def meshes(cur: Cursor) -> Node | None:
    """ "15 sps", "3 bls" in a row of filet, which has blocks in it, says so twice, or nothing else; nothing taken elsewhere."""
    start = cur.at
    if cur.low() in ("work", "make"):
        if cur.low(2).rstrip(".") not in ("bl", "bls"):  # "work 17 bls"; other blocks are shapes
            return None
        cur.at += 1
    n = cur.number()
    filled = cur.low() in _FILLED
    cur.at += (filled or cur.low() in _EMPTY) and (cur.low(1) in _OPEN_MESH or cur.low(1) in _BLOCKS)
    word = cur.low()
    block = cur.kind() == "kind" and cur.token().value == "block" or filled and word in _OPEN_MESH  # type: ignore[union-attr]
    over = _over(cur)
    ends = bool(over) or word.endswith(".") or cur.kind(1) in ("sep", "end", "close") or cur.low(1) in (",", ";", ".", "turn", "and")
    if n is None or not ends or not (block or word in _OPEN_MESH):
        cur.at = start
        return None
    filet = block or sum(map(cur.lows.count, _OPEN_MESH)) > 1 or any(t.value == "block" for t in cur.tokens)
    named = cur.kind(1) == "close" and start > 0 and cur.tokens[start - 1].kind == "open"  # "3 dc (1 bl)": what that makes
    alone = word.endswith("s") and n.at(0) not in (1, 2) and all(_is_start(cur, i) for i, t in enumerate(cur.tokens) if t.kind == "kind")
    if not filet and not alone:
        cur.at = start
        return None
    cur.at += 1 + over
    if named:
        return Mark("note", "block" if block else "sp", n, span=cur.span_from(start))
    return Filet(n, block, cur.span_from(start))


def _is_start(cur: Cursor, at: int) -> bool:
    """Whether a stitch named in a row is its start chain, or what that counts as."""
    return cur.tokens[at].value == "ch" or at > 0 and cur.tokens[at - 1].text.lower() == "as"


def _over(cur: Cursor) -> int:
    """ "1 bl over next bl", "6 sps over 6 sps": how many words tell what lies below; 0 where they tell nothing of it."""
    if cur.low(1) != "over":
        return 0
    at = 2
    while cur.low(at) in ("the", "next", "each", "first", "last") or cur.kind(at) == "num":
        at += 1
    return at if cur.low(at) in _OPEN_MESH | _BLOCKS else 0


def meshes_made(cur: Cursor) -> Mark | None:
    """ "(9 sps made)": how many meshes the words before it make; None, and nothing taken, for other words. The bracket is open."""
    block, start = cur.low(1) in _BLOCKS, cur.at
    if cur.kind() != "num" or not (block or cur.low(1) in _OPEN_MESH) or cur.low(2) != "made" or cur.kind(3) != "close":
        return None
    n = cur.number()
    cur.at = start + 4
    return Mark("note", "block" if block else "sp", n, span=cur.span_from(start))


def in_meshes(nodes: list[Node]) -> list[Node]:
    """A row of meshes whose first ones are told stitch by stitch, with their number behind: all of it in meshes."""
    if nodes and isinstance(nodes[0], Filet) and isinstance(last := nodes[-1], Make) and last.place is None and last.n.at(0) == 1 and last.kind != "sl st":
        nodes = [*nodes[:-1], Mark("note", span=last.span)]  # "4 o., 1 c., 4 o., 1 dc.": the stitch that closes the last; the row begins with one untold
    if not any(isinstance(n, Filet) for n in nodes) or not any(_mark(n) for n in nodes):
        return nodes
    out: list[Node] = []
    begin = 0
    for node in nodes:
        if isinstance(node, Mark) and node.n is not None and _mark(node):
            del out[begin:]
            out.append(Filet(node.n, node.text == "block", node.span))
            begin = len(out)
        else:
            begin = len(out) + 1 if _stays(node, first=begin == len(out)) else begin
            out.append(node)
    return out


def _mark(node: Node) -> bool:
    return isinstance(node, Mark) and node.what == "note" and node.text in ("sp", "block") and node.n is not None


def _stays(node: Node, *, first: bool) -> bool:
    """Whether it is none of the stitches that are told with their meshes: a start chain, a turn, meshes told by number."""
    return isinstance(node, (Filet, Mark)) or first and type(node).__name__ == "Chain"
