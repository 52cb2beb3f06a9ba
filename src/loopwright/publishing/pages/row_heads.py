"""Heads of rows in the structure of pages. The typesetter marks heads of columns alone: its way to mark those of rows is not to be had yet.

Only objects of the structure tree are written anew (PDF 32000-1, 14.7.2 and 14.8.5.7), in place, and the table of their places after them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

_XREF = re.compile(rb"startxref\s+(\d+)\s+%%EOF\s*$")
_TABLE = re.compile(rb"xref\n0 (\d+)\n")
_ENTRY = re.compile(rb"(\d{10}) (\d{5}) ([nf])")
_ELEMENT = re.compile(rb"\d+ 0 obj\s*<</Type/StructElem/S/(?P<kind>T\w+)/")
_KIDS = re.compile(rb"/K\[(?P<kids>(?:\d+ 0 R\s*)+)\]")
_SPAN = re.compile(rb"/ColSpan (\d+)")
_HEADERS = re.compile(rb"/Headers\[(?P<names>[^\]]*)\]")
_ID = re.compile(rb"/ID\((?P<id>[^()\\]+)\)")
_OWNER = re.compile(rb"/P \d+ 0 R")
_NAMES = re.compile(rb"/IDTree<</Names\[(?P<names>[^\]]*)\]")
_NAME = re.compile(rb"\((?P<id>[^()\\]+)\)(?P<number>\d+) 0 R")
HEAD_AT = {1: 0, 3: 1}
"""Which cell of a row is its head, by how many columns the first head of columns spans: tables of sizes, and rows with a box to tick."""


def with_row_heads(pdf: bytes) -> bytes:
    """The same pages with a head for every row of a table, named by the other cells of the row; as they were where no table is found."""
    places = _places(pdf)
    if not places:
        return pdf
    objects = _Objects(pdf, places)
    for table in objects.of_kind(b"Table"):
        _mark(objects, table)
    if not objects.heads:
        return pdf
    _listed(objects)
    return objects.written()


def _places(pdf: bytes) -> list[int]:
    """Where the objects of a file stand, by their numbers; nothing for a file of another make."""
    end = _XREF.search(pdf[-64:])
    table = _TABLE.match(pdf, int(end[1])) if end is not None else None
    if table is None:
        return []
    entries = [_ENTRY.match(pdf, table.end() + 20 * n) for n in range(int(table[1]))]
    if any(e is None for e in entries):
        return []
    return [int(e[1]) if e is not None and e[3] == b"n" else -1 for e in entries]


class _Objects:
    """The objects of a file, by number; those that are changed."""

    def __init__(self, pdf: bytes, places: Sequence[int]) -> None:
        self.pdf = pdf
        self.places = places
        order = sorted((at, n) for n, at in enumerate(places) if at >= 0)
        self.end = pdf.rindex(b"xref\n0 ")
        ends = [at for at, _ in order[1:]] + [self.end]
        self.order = [n for _, n in order]
        self.bounds = {n: (at, end) for (at, n), end in zip(order, ends, strict=True)}
        self.changed: dict[int, bytes] = {}
        self.heads: dict[bytes, int] = {}

    def text(self, number: int) -> bytes:
        """An object as it stands now."""
        at, end = self.bounds[number]
        return self.changed.get(number) or self.pdf[at:end]

    def kind(self, number: int) -> bytes:
        """Its kind, b"" where it is no part of a table."""
        m = _ELEMENT.match(self.text(number))
        return m["kind"] if m is not None else b""

    def of_kind(self, kind: bytes) -> Iterator[int]:
        """The numbers of elements of a kind."""
        return (n for n in self.order if self.kind(n) == kind)

    def kids(self, number: int) -> list[int]:
        """The elements within one."""
        m = _KIDS.search(self.text(number))
        return [int(n) for n in re.findall(rb"(\d+) 0 R", m["kids"])] if m is not None else []

    def span(self, number: int) -> int:
        """How many columns a cell spans."""
        m = _SPAN.search(self.text(number))
        return int(m[1]) if m is not None else 1

    def written(self) -> bytes:
        """The whole file with what was changed."""
        out, places = bytearray(self.pdf[: self.bounds[self.order[0]][0]]), dict.fromkeys(self.order, 0)
        for number in self.order:
            places[number] = len(out)
            out += self.text(number)
        start = len(out)
        table = bytearray(self.pdf[self.end :])
        first = _TABLE.match(table)
        for number, at in places.items():
            entry = (first.end() if first is not None else 0) + 20 * number
            table[entry : entry + 10] = b"%010d" % at
        out += _XREF.sub(b"startxref\n%d\n%%%%EOF" % start, bytes(table))
        return bytes(out)


def _mark(objects: _Objects, table: int) -> None:
    """Names the heads of a table: of rows by a mark of their own, of columns in every cell below them, whatever stands between."""
    groups = objects.kids(table)
    head = next((objects.kids(g) for g in groups if objects.kind(g) == b"THead"), [])
    columns = _columns(objects, objects.kids(head[0])) if head else []
    at = HEAD_AT.get(columns.count(columns[0])) if columns else None
    if at is None or b"" in columns:
        return
    for group in groups[1:]:
        for row in objects.kids(group):
            cells = objects.kids(row)
            if any(objects.kind(c) == b"TD" for c in cells):
                _row(objects, cells, at, columns)
            else:  # a head between rows is of all columns, and names none
                for cell in cells:
                    objects.changed[cell] = _HEADERS.sub(b"/Headers[]", objects.text(cell), count=1)


def _columns(objects: _Objects, cells: Sequence[int]) -> list[bytes]:
    """The name of the head of every column."""
    found: list[bytes] = []
    for cell in cells:
        m = _ID.search(objects.text(cell))
        found += [m["id"] if m is not None else b""] * objects.span(cell)
    return found


def _row(objects: _Objects, cells: Sequence[int], at: int, columns: Sequence[bytes]) -> None:
    """Makes one cell of a row its head where the row has one, and names heads in all cells."""
    plain = len(cells) > at and all(objects.kind(c) == b"TD" and objects.span(c) == 1 for c in cells[: at + 1])
    name = _head(objects, cells[at]) if plain and b"/K[" in objects.text(cells[at]) else b""
    x = 0
    for n, cell in enumerate(cells):
        wide = objects.span(cell)
        of_row = [] if not name or n == at else [name]
        text = objects.text(cell)
        m = _HEADERS.search(text)
        if m is not None:
            objects.changed[cell] = text[: m.start()] + _named(m, of_row, columns[x : x + wide]) + text[m.end() :]
        x += wide


def _named(m: re.Match[bytes], row: Sequence[bytes], columns: Sequence[bytes]) -> bytes:
    names = dict.fromkeys([*row, *re.findall(rb"\(([^()]+)\)", m["names"]), *columns])
    return b"/Headers[%s]" % b"".join(b"(%s)" % n for n in names)


def _head(objects: _Objects, cell: int) -> bytes:
    """Makes a cell the head of its row; its name, b"" where that cannot be."""
    name = b"R%06d" % cell
    text = objects.text(cell).replace(b"/S/TD/", b"/S/TH/", 1).replace(b"/O/Table/", b"/O/Table/Scope/Row/", 1)
    owner = _OWNER.search(text)
    if owner is None or b"/Scope/Row/" not in text:
        return b""
    objects.changed[cell] = text[: owner.end()] + b"/ID(%s)" % name + text[owner.end() :]
    objects.heads[name] = cell
    return name


def _listed(objects: _Objects) -> None:
    """Names of heads go into the list of names, in order."""
    for number in objects.order:
        m = _NAMES.search(objects.text(number)) if b"/Type/StructTreeRoot" in objects.text(number)[:200] else None
        if m is not None:
            known = {n["id"]: int(n["number"]) for n in _NAME.finditer(m["names"])} | objects.heads
            names = b"".join(b"(%s)%d 0 R" % (name, at) for name, at in sorted(known.items()))
            text = objects.text(number)
            objects.changed[number] = text[: m.start("names")] + names + text[m.end("names") :]
            return
