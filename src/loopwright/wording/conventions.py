"""What a pattern's first chains count as: as told, or as they were worked."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.model.fabric import ROLES, Fabric
from loopwright.model.report import Report
from loopwright.model.tree import Chain, Document, Node, Row
from loopwright.wording.voice import Voice


def turning_chains(voice: Voice, document: Document, report: Report | None) -> str:
    """As in "ch 3 counts as dc, ch 1 does not count as a st"; "" where no row begins with a chain, or where it was made is not known."""
    fabric = next((f for f in report.fabrics if f is not None), None) if report else None
    stood = _as_worked(fabric) if fabric is not None else {}
    found: dict[int, str | None] = {}
    for chain in _first_chains(document):
        length = voice.single(chain.n)
        if length is None or length in found:
            continue
        if chain.counts in ("yes", "no"):
            found[length] = chain.as_kind if chain.counts == "yes" else None
        elif chain.span.start in stood:
            found[length] = stood[chain.span.start]
    said = [_said(voice, length, kind) for length, kind in sorted(found.items(), reverse=True)]
    return voice.head("list_sep").join(said)


def _said(voice: Voice, length: int, kind: str | None) -> str:
    chain = voice.say("chain", n=length)
    if kind is None:
        return str(voice.say("turning_not", chain=chain))
    return str(voice.say("turning_as", chain=chain, stitch=voice.stitch(kind)))


def _first_chains(document: Document) -> Iterator[Chain]:
    """The chain that each numbered row begins with."""
    for item in document.items:
        if isinstance(item, Row) and item.label is not None and item.body and not _foundation(item.body):
            first = item.body[0]
            if isinstance(first, Chain):
                yield first


def _foundation(body: tuple[Node, ...]) -> bool:
    """Whether a row begins with the chain it is worked into, not with one that turns."""
    first = body[0]
    return isinstance(first, Chain) and (first.n.at(0) or 0) > 7


def _as_worked(fabric: Fabric) -> dict[int, str | None]:
    """By where its words stand: the stitch that a row's first chain counts as, None where it only turns. Loops are left out."""
    found: dict[int, str | None] = {}
    turning, counts = ROLES.index("turning"), ROLES.index("counts")
    for i, role in enumerate(fabric.role):
        if role == turning:
            found.setdefault(fabric.origin[i], None)
        elif role == counts:
            found[fabric.origin[i]] = fabric.kinds[fabric.counts_as.get(i, fabric.kind[i])]
    return found
