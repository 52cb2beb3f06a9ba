"""Counts that disagree: by how much, and whether that only says again what a row below is out by, or that the words were not understood."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.findings import Finding
from loopwright.model.tree import Chain, Join, Make, Mark, Node, Repeat, Skip, Unknown

FAR = 2  # times as many or as few: no misprint, as a rule
SLIP_OF_COUNT = 2  # a printed number so near to what is made is a slip; one further off counts something else


def off_by(found: Finding | None) -> tuple[int, int] | None:
    """What a row prints and what it makes, where they differ."""
    if found is None or found.code != "W001":
        return None
    printed, made = found.args.get("printed"), found.args.get("made")
    return (printed, made) if isinstance(printed, int) and isinstance(made, int) else None


def far_off(found: Finding, body: Sequence[Node]) -> bool:
    """Whether the printed number is twice what was made or half of it, and not near what the words tell stitch by stitch either."""
    off = off_by(found)
    if off is None or abs(off[0] - off[1]) <= SLIP_OF_COUNT or max(off) < FAR * min(off):
        return False
    if sorted(str(off[0])) == sorted(str(off[1])):
        return False  # its digits stand the wrong way round
    made = [n for n in body if not isinstance(n, (Mark, Join, Chain, Unknown))]
    told = sum((n.n.at(0) or 1) * ((n.place.n.at(0) if n.place is not None and n.place.n is not None else 1) or 1) for n in made if isinstance(n, Make))
    return not all(isinstance(n, Make) for n in made) or abs(told - off[0]) > SLIP_OF_COUNT


def follows(found: Finding, off: tuple[int, int] | None) -> bool:
    """Whether a finding only says again what a row below it is out by: as many stitches, or as large a share of them."""
    if off is None:
        return False
    if found.code in ("W003", "W004"):
        return True
    own = off_by(found)
    if own is None:
        return False
    return own[1] - own[0] == off[1] - off[0] or abs(own[1] * off[0] - off[1] * own[0]) <= off[0]  # to within one stitch


def bridged_to_join(left: int, body: Sequence[Node]) -> bool:
    """ "(ch 4, skip 2 sts, sc in next st) 19 times, ch 4, join": the last chain spans as many stitches as the others, and comes to the first."""
    last = next((n for n in reversed(body) if not isinstance(n, (Mark, Join))), None)
    spans = (n.n.at(0) for r in body if isinstance(r, Repeat) for n in r.nodes if isinstance(n, Skip))
    return isinstance(last, Chain) and any(isinstance(n, Join) for n in body) and left in spans
