"""A round of clusters begun by a chain and one leg less: "ch 3, dc2tog in same st, *ch 3, dc3tog in next st; rep from * around"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, Chain, Either, Group, Make, Mark, Node, Num, Repeat, Ring

_LEGS = re.compile(r"([a-z]+?)(\d{1,2})tog")
_LONGEST = 5  # chains that are as tall as one leg
_INTO_ONE = frozenset("sp space loop ring corner".split())


def begun_clusters(nodes: Sequence[Node]) -> Sequence[Node]:
    """The nodes of a row, in which the chain that begins it and the cluster beside it are one where the clusters that follow have one leg more."""
    ring = next((i + 1 for i, n in enumerate(nodes[:3]) if isinstance(n, Ring)), 0)  # "ch 8, join to form a ring, ch 4, …"
    at = next((i for i, n in enumerate(nodes) if i >= ring and not isinstance(n, Mark) and not (isinstance(n, Make) and n.kind == "sl st")), len(nodes))
    chain, first = (nodes[at], nodes[at + 1]) if at + 2 < len(nodes) else (None, None)
    slipped = any(isinstance(n, Make) for n in nodes[:at])
    if isinstance(chain, Chain) and isinstance(first, Make) and first.kind == "cluster" and first.taking and not slipped and (both := _over_more(chain, first, nodes[at + 2 :])) is not None:
        return [*nodes[:at], *both, *nodes[at + 2 :]]
    if not isinstance(chain, Chain) or chain.counts != "unsaid" or not isinstance(first, Make) or (chain.n.at(0) or 0) > _LONGEST or first.n != ONE:
        return nodes
    legs = _LEGS.fullmatch(first.kind)
    if first.kind == "cluster" and first.parts and first.place is not None and (first.place.quant == "same" or first.place.thing.kind in _INTO_ONE):
        told = f"cluster of {first.parts + 1}" in _kinds(nodes[at + 2 :])
        return [*nodes[:at], replace(chain, counts="no"), replace(first, parts=first.parts + 1), *nodes[at + 2 :]] if told else nodes
    if legs is None or first.place is None or first.place.quant != "same" and first.place.thing.kind not in _INTO_ONE:
        return nodes
    whole = f"{legs[1]}{int(legs[2]) + 1}tog"
    if whole not in _kinds(nodes[at + 2 :]):
        return nodes
    return [*nodes[:at], replace(chain, counts="no"), replace(first, kind=whole), *nodes[at + 2 :]]


def _over_more(chain: Chain, first: Make, after: Sequence[Node]) -> tuple[Node, Node] | None:
    """ "Ch 2 (to count as dc), cluster over next 4 dc, * ch 7, cluster over next 5 dc": the chain is the leg over the first; None where no later one is over one more."""
    taken = first.taking or 0
    if chain.counts not in ("unsaid", "yes") or (chain.n.at(0) or 0) > _LONGEST or first.n != ONE or f"cluster of {taken + 1}" not in _kinds(after):
        return None
    where = replace(first.place, n=Num((taken + 1,))) if first.place is not None else None
    return replace(chain, counts="no", as_kind=None), replace(first, parts=taken + 1, taking=taken + 1, place=where)


def one_leg_more(chain: Node, made: Node, told: str) -> tuple[Node, Node] | None:
    """ "Ch 3, dc2tog in same st (counts as dc3tog)": the chain, which is no stitch then, and the one that both are; None where it says another thing."""
    legs = _LEGS.fullmatch(made.kind) if isinstance(made, Make) and isinstance(chain, Chain) and made.n == ONE else None
    if legs is None or not isinstance(made, Make) or not isinstance(chain, Chain) or told != f"{legs[1]}{int(legs[2]) + 1}tog":
        return None
    return replace(chain, counts="no"), replace(made, kind=told)


def _kinds(nodes: Sequence[Node]) -> Iterator[str]:
    for node in nodes:
        if isinstance(node, Make):
            yield f"cluster of {node.parts}" if node.kind == "cluster" else node.kind
        elif isinstance(node, (Group, Repeat)):
            yield from _kinds(node.nodes)
        elif isinstance(node, Either):
            yield from _kinds(node.readings[0][1])
