"""Names that a pattern defines, and what they are made of."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.moved import bare
from loopwright.model.tree import Chain, Define, Document, Either, Group, Make, Node, Num, Repeat, Row


def definitions(document: Document) -> dict[str, tuple[Node, ...]]:
    """Names that the pattern defines, with what they are made of, from anywhere in it; their words stand nowhere.

    So a stitch comes from the words that ask for it, not from those that explain it.
    """
    found: dict[str, tuple[Node, ...]] = {}
    for special in sorted(document.specials, key=lambda s: _begins_row(s.nodes)):
        if special.nodes:
            found.setdefault(special.name, special.nodes)
    for item in document.items:
        if isinstance(item, Row):
            _collect(item.body, found)
    found = {name: nodes for name, nodes in found.items() if name and not name.startswith(_BEGUN)}
    return {name: bare(nodes) for name, nodes in found.items() if name not in _reached(name, found)}


def _begins_row(nodes: tuple[Node, ...]) -> bool:
    """Whether a definition is of the one that begins a row ("beg shell = (ch 3, dc, ch 1, 2 dc)"): the others are made as the name without "beg" tells."""
    first = nodes[0] if nodes else None
    return isinstance(first, Group) and bool(first.nodes) and isinstance(first.nodes[0], Chain)


def _reached(name: str, found: dict[str, tuple[Node, ...]]) -> set[str]:
    """The names that a definition uses, directly or through others; one that uses itself is none."""
    reached: set[str] = set()
    ahead = [name]
    while ahead:
        for used in _uses(found.get(ahead.pop(), ())):
            if used not in reached:
                reached.add(used)
                ahead.append(used)
    return reached


def _uses(nodes: tuple[Node, ...]) -> set[str]:
    used: set[str] = set()
    for node in nodes:
        if isinstance(node, Make):
            used.add(node.kind)
        elif isinstance(node, (Group, Repeat)):
            used |= _uses(node.nodes)
        elif isinstance(node, Either):
            for _, reading in node.readings:
                used |= _uses(reading)
    return used


FANNED = frozenset({"shell", "fan", "scallop", "v-st", "corner"})


_BEGUN = "begun "


def _define(found: dict[str, tuple[Node, ...]], name: str, parts: tuple[Node, ...], *, begun: bool) -> None:
    """Keeps what a name was first given to, but for a group behind the chain that begins a row, whose first stitch that chain is."""
    if name not in found or not begun and _BEGUN + name in found:
        found[name] = parts
        found.pop(_BEGUN + name, None)
        if begun:
            found[_BEGUN + name] = ()


def whole(group: Group) -> Group:
    """A group whose first stitch is the chain that begins the row, with a stitch for that chain; as it is where its halves are equal without it."""
    nodes = group.nodes[1:] if isinstance(group.nodes[0], Chain) else group.nodes
    at = next((i for i, n in enumerate(nodes) if isinstance(n, Chain)), len(nodes))
    if not nodes or not isinstance(first := nodes[0], Make) or (n := first.n.values[0]) is None or _stitches(nodes[:at]) == _stitches(nodes[at + 1 :]):
        return group
    return replace(group, nodes=(replace(first, n=Num((n + 1,))), *nodes[1:]))


def _stitches(nodes: tuple[Node, ...]) -> int:
    return sum((n.n.at(0) or 0) for n in nodes if isinstance(n, Make))


def _collect(nodes: tuple[Node, ...], found: dict[str, tuple[Node, ...]], *, within: bool = False) -> None:
    before: Node | None = None
    begun = False
    row_began = within  # behind the first group no chain begins the row
    for node in nodes:
        if isinstance(node, Make) and node.kind in FANNED and node.kind not in found and "" in found:
            found[node.kind] = found[""]  # named only when it is worked again: the group made last
        if isinstance(node, Group) and not node.name and len(node.nodes) > 1:
            found[""] = (whole(node) if isinstance(node.nodes[0], Chain) or isinstance(before, Chain) and not row_began else node,)
        if isinstance(node, Either):
            _collect(node.readings[0][1], found)
        if isinstance(node, Define):
            parts = node.nodes or ((before,) if isinstance(before, (Group, Make)) else ())
            if parts and not any(isinstance(p, Make) and p.kind == node.name for p in parts):
                _define(found, node.name, parts, begun=begun)
        elif isinstance(node, Group):
            if node.name:
                begins = isinstance(before, Chain) and not row_began
                _define(found, node.name, (whole(node) if begins else node,), begun=begins)
            _collect(node.nodes, found, within=True)
        elif isinstance(node, Repeat):
            _collect(node.nodes, found, within=True)
            _collect(node.ending, found, within=True)
        begun = isinstance(node, Group) and isinstance(before, Chain) and not row_began
        row_began = row_began or isinstance(node, Group)
        before = node
