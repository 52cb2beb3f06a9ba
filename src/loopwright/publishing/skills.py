"""What a maker must know to make it: stitches that were made, and what was done with them, seen from the fabric."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from loopwright.model.fabric import PLACES, ROLES, Fabric
from loopwright.model.tree import Document, Evenly, Ring, Row, Thing
from loopwright.terms import Dialect
from loopwright.trade.stitches import heights

_ONE_OF_MANY = re.compile(r"^(fp|bp)?(?P<base>[a-z]+?)(?P<n>\d+)tog$")
_PLACES = {"back": "back", "front": "back", "third": "back", "space": "space", "row-end": "row-end", "underside": "underside",
           "front-post": "post", "back-post": "post"}


def skills(document: Document, fabric: Fabric, dialect: Dialect, said: Mapping[str, str]) -> tuple[str, ...]:
    """Stitches by how often they are made, then techniques. `said`: how each is called, the table of `listing.toml`."""
    return (*_stitches(fabric, dialect, said), *_techniques(document, fabric, said))


def _stitches(fabric: Fabric, dialect: Dialect, said: Mapping[str, str]) -> Iterator[str]:
    known = heights()
    made = sorted(fabric.kinds, key=lambda k: -fabric.kind.count(fabric.kinds.index(k)))
    plain = [k for k in made if k in known or k in ("ch", "sl st")]
    for kind in [*sorted(plain, key=lambda k: known.get(k, 0)), *(k for k in made if k not in plain)]:
        if kind != "st" and fabric.kind.count(fabric.kinds.index(kind)):  # "st": one that had to be assumed
            term = dialect.term(kind)
            yield said["plain" if term.short == term.long else "stitch"].format(long=term.long, short=term.short)


def _techniques(document: Document, fabric: Fabric, said: Mapping[str, str]) -> Iterator[str]:
    nodes = [n for item in document.items if isinstance(item, Row) for n in _nodes(item.body)]
    found: list[str] = []
    rings = [n for n in nodes if isinstance(n, Ring)]
    if rings or any(isinstance(n, Thing) and n.kind == "ring" for n in nodes):
        found.append("magic" if not rings or any(r.magic for r in rings) else "ring")
    joined, turned, rounds = ways(fabric, document)
    found += ["rounds"] if joined else ["spiral"] if rounds else []
    found += ["rows"] if turned else []
    found += ["increases"] if _increases(fabric) else []
    found += ["decreases"] if any(_ONE_OF_MANY.match(k) for k in fabric.kinds) else []
    found += ["evenly"] if any(isinstance(n, Evenly) for n in nodes) else []
    places = {PLACES[p] for p in set(fabric.place)}
    found += [way for place, way in _PLACES.items() if place in places]
    found += ["colours"] if len({c for c in fabric.colour if fabric.colours[c]}) > 1 else []
    found += ["pieces"] if len({r.piece for r in fabric.rows}) > 1 else []
    yield from (said[key] for key in dict.fromkeys(found))


def ways(fabric: Fabric, document: Document) -> tuple[bool, bool, bool]:
    """Whether rounds are joined, rows turned, and rounds worked at all (a spiral joins none)."""
    joins = fabric.role.count(ROLES.index("join")) > 0
    turned = any(r.turned or r.turned_before for r in fabric.rows)
    rounds = joins or any(r.label.casefold().startswith(("rnd", "round")) for r in fabric.rows) or bool(document.in_rounds)
    return joins, turned, rounds


def _increases(fabric: Fabric) -> bool:
    """Whether two stitches that stand next to each other share the stitch they are worked into."""
    into, place, chains = fabric.into, fabric.place, {i for i, k in enumerate(fabric.kinds) if k in ("ch", "sl st")}
    top = {PLACES.index(p) for p in ("top", "back", "front")}
    return any(
        into[s] >= 0 and into[s] == into[s - 1] and place[s] in top and fabric.kind[s] not in chains and fabric.kind[s - 1] not in chains
        for s in range(1, len(fabric))
    )


def _nodes(node: Any) -> Iterator[Any]:
    """Every node of a row, those within others too."""
    if isinstance(node, tuple):
        for n in node:
            yield from _nodes(n)
    elif is_dataclass(node) and not isinstance(node, type):
        yield node
        for f in fields(node):
            value = getattr(node, f.name)
            if isinstance(value, tuple) or is_dataclass(value):
                yield from _nodes(value)
