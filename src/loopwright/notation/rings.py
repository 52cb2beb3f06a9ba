"""A ring that stands alone in its row: its count tells how many stitches are made into it."""

from __future__ import annotations

from loopwright.model.tree import ONE, Count, Make, Node, Place, Ring, Thing

_STITCHES = (None, "st", "sts")


def in_ring(nodes: tuple[Node, ...], counts: tuple[Count, ...]) -> tuple[Node, ...]:
    """ "MR (6)": six stitches in the ring; the row as it is where more is told, or no count of stitches."""
    ring = nodes[0] if len(nodes) == 1 and len(counts) == 1 else None
    if not isinstance(ring, Ring) or not ring.magic or counts[0].noun not in _STITCHES or not counts[0].n.values:
        return nodes
    return (Make("st", counts[0].n, Place("next", ONE, Thing("ring"), span=ring.span), span=ring.span),)
