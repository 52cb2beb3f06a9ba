"""The words of a row to its nodes, sentence by sentence; what is only talk is left out."""

from __future__ import annotations

import itertools
import re

from loopwright.model.tree import Group, Join, Make, Mark, Node, Ring, Unknown
from loopwright.notation.begun_clusters import begun_clusters
from loopwright.notation.body import KNOWN, nodes_until, numbers_only
from loopwright.notation.both_sides import ends_where_begun
from loopwright.notation.cursor import Cursor
from loopwright.notation.glosses import plain_tokens
from loopwright.notation.meshes import in_meshes
from loopwright.notation.olden import counted, divided
from loopwright.notation.scanner import Token, letters, scan
from loopwright.notation.shaping import even_between, every_kth
from loopwright.notation.singly import singly
from loopwright.terms import Dialect

PROSE_FROM = 4  # so many unknown words may be prose


def nodes_of(text: str, start: int, end: int, which: Dialect, sizes: int) -> tuple[tuple[Node, ...], int]:
    """The nodes of a row's words; whole sentences that are prose are left out of them."""
    if start >= end or text[start:end].isspace():
        return (), 0
    spans = [m.start() for m in re.finditer(r"(?<=[.;])\s+(?=[A-Z])", text[start:end])]
    edges = [start, *(start + at for at in spans), end]
    kept: list[Token] = []
    talk = False
    for i, (a, b) in enumerate(itertools.pairwise(edges)):
        tokens = plain_tokens(letters(text[a:b], scan(text, a, b, which)))
        prose = len(edges) > 2 and (i > 0 and _is_remark(tokens) or _is_prose(tokens, which, sizes))
        if i == 0 or not prose:
            if i == 1 and talk:
                kept.clear()
            kept.extend(tokens)
        talk = i == 0 and prose and not _makes(tokens, which, sizes)
    cur = Cursor(kept, which, sizes)
    nodes = ends_where_begun(begun_clusters(singly(even_between(in_meshes(every_kth(counted(divided(numbers_only(cur) or nodes_until(cur)), which.id)))))))
    made = next((i for i, n in enumerate(nodes) if isinstance(n, (Make, Group))), len(nodes))
    nodes = [Join(None, "sl st", span=n.span) if i > made and isinstance(n, Ring) and not n.magic else n for i, n in enumerate(nodes)]  # "6 sc in 2nd ch. Join in circle with ss."
    # words before the first instruction ("With right side facing and main colour, …") leave no doubt about it
    lead = next((i for i, n in enumerate(nodes) if not isinstance(n, (Unknown, Mark))), 0)
    return tuple(nodes), cur.unknown - sum(1 for n in nodes[:lead] if isinstance(n, Unknown))


_JOINED = re.compile(r"[\s.,;]*(?:join|close)\b(?:\s+(?:the\s+)?(?:rnd|round)\b)?\s*(?:with\b|to\b|in(?:to)?\b|[.;,]|$)", re.IGNORECASE)


def behind_count(text: str, start: int, end: int, which: Dialect, sizes: int) -> tuple[Node, ...]:
    """The nodes of what follows a row's count: "(12 sc). Join with sl st to first sc." closes the round, and attaches no yarn; ", ss to join" makes no ring."""
    nodes, _ = nodes_of(text, start, end, which, sizes)
    first = nodes[0] if nodes else None
    if isinstance(first, Mark) and first.what == "attach" and not first.text and (first.place is None or first.place.quant in ("first", "kth")) and _JOINED.match(text, start, end):
        return (Join(first.place, "sl st", span=first.span), *nodes[1:])
    return tuple(Join(None, "sl st", span=n.span) if isinstance(n, Ring) and not n.magic or i == 0 and _joins(n) else n for i, n in enumerate(nodes))


def _joins(node: Node) -> bool:
    """Whether a slip stitch goes back to where the row began."""
    return isinstance(node, Make) and node.kind == "sl st" and node.place is not None and (node.place.quant == "first" or node.place.thing.kind == "tch")


def _makes(tokens: list[Token], which: Dialect, sizes: int) -> bool:
    """Whether any of the words make something."""
    return any(not isinstance(n, (Unknown, Mark)) for n in nodes_until(Cursor(list(tokens), which, sizes)))


_MEANS = frozenset("counts count stands stand serves represents".split())


def _is_remark(tokens: list[Token]) -> bool:
    """ "The 4 chain counts for a treble and 1 chain.", "The first long of each round is made with 3 chain.": what stitches are, and none to be made."""
    if len(tokens) < 5 or tokens[0].low != "the" or any(t.kind == "star" for t in tokens):
        return False
    lows = [t.low for t in tokens[1:12]]
    return not _MEANS.isdisjoint(lows) or any(a in ("is", "are") and b in ("made", "formed") for a, b in itertools.pairwise(lows))


def _is_prose(tokens: list[Token], which: Dialect, sizes: int) -> bool:
    """Four or more unknown words, and more than twice as many as instructions; never a sentence that asks for a repeat."""
    if any(t.kind == "star" for t in tokens) or sum(t.kind == "word" and t.low not in KNOWN for t in tokens) < PROSE_FROM:
        return False
    cur = Cursor(list(tokens), which, sizes)
    nodes = nodes_until(cur)
    made = sum(1 for n in nodes if not isinstance(n, (Unknown, Mark)))
    return cur.unknown >= PROSE_FROM and cur.unknown > 2 * made
