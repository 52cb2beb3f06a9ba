"""Raglan yokes from the neck down: back, sleeve and front at the neck, rows to the underarm, stitches of body and sleeve after it."""

from __future__ import annotations

import re

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line, walk
from loopwright.grading.propose.phrases import SHARES, share_of
from loopwright.grading.propose.tall import rows_mm
from loopwright.model.tree import Chain
from loopwright.record import record
from loopwright.source import Span

_CORNER = re.compile(r"\((?=[^()]*\bch\b)[^()]*\)\s+in\s+(?:the\s+)?(?:next|last)\s+(?:ch|st)\b(?!-)", re.IGNORECASE)
_RUN = re.compile(r"\bnext\s+(?P<n>\d+)\s+(?:ch|chs|chains|sts|stitches)\b|\bin\s+next\s+(?P<one>ch|st)\b", re.IGNORECASE)
_RANGE = re.compile(r"(?P<word>Rows|Rnds|Rounds)\s+(?P<first>\d+)\s*(?:-|–|to)\s*(?P<last>\d+)", re.IGNORECASE)
_CHAIN = re.compile(r"\bch(?:ain)?\s+(?P<a>\d+)\b|\b(?P<b>\d+)\s+ch(?:ains?)?\b(?!-)", re.IGNORECASE)
CORNERS = 4
LEAST_UNDERARM = 3


@record
class _Neck:
    """The row that sets the corners: spans and values of its five plain runs (front, sleeve, back, sleeve, front).

    `closed`: a round, whose first and second body parts are alike; it has no fifth run.
    """

    runs: tuple[int, int, int, int, int]
    spans: tuple[tuple[int, int], ...]
    closed: bool = False


def raglan(found: Found, lines: tuple[Line, ...], at: int) -> int | None:
    """Puts a raglan's blanks in; gives the index of the line after body and sleeves part. None where line `at` begins none."""
    chain = next((n for n in walk(lines[at].body) if isinstance(n, Chain)), None)
    if chain is None or not chain.n.span.end or at + 1 >= len(lines):
        return None
    row, neck = lines[at + 1], _round_neck(lines[at + 1].text) if lines[at].start == "tube" else _neck(lines[at + 1].text)
    grow = next((i for i in range(at + 2, min(at + 5, len(lines))) if lines[i].worked > 1), None)
    if neck is None or grow is None or row.count is None or grow + 1 >= len(lines):
        return None
    front, sleeve, back, rows = neck.runs[4], neck.runs[1], neck.runs[2], lines[grow].last
    parted, first, m = lines[grow + 1], row.first or 1, _RANGE.match(lines[grow].text)
    if m is None or rows is None or neck.runs[3] != sleeve or first != 1:
        return None
    top = sleeve + 2 * rows
    under = _underarm(parted.text)
    end = lines[grow].count
    if under is None or end is None or f" {top} " not in parted.text:
        return None
    around = 2 * front + 2 * sleeve + (0 if neck.closed else back) + CORNERS
    if neck.closed:
        _at_the_round_neck(found, row, neck, around)
    else:
        _at_the_neck(found, row, neck, around)
    found.chain(lines[at].text, lines[at].span.start, chain.n.span, "{neck ch}", (chain.n.at(0) or 0) - around)
    for line in lines[at + 2 : grow]:
        if line.printed is not None:
            rest = line.printed - around
            _printed(found, line, _link(f"row {line.first} sts", line.printed, f"{{neck ch}} plus {rest}", f"{around} + {rest}", line))
    _yoke(found, lines, grow, around, rows)
    _parts(found, lines[grow + 1 :], end - 2 * top + 2 * under, (top, under), _rows_of(lines[grow]))
    return grow + 2


def _underarm(text: str) -> int | None:
    """The chains at the underarms: the number that stands twice, else the largest."""
    chains = [int(m["a"] or m["b"]) for m in _CHAIN.finditer(text)]
    return max((n for n in chains if n >= LEAST_UNDERARM), key=lambda n: (chains.count(n), n), default=None)


def _neck(text: str) -> _Neck | None:
    """The five runs between four corners, where the row has just these."""
    corners = list(_CORNER.finditer(text))
    if len(corners) != CORNERS:
        return None
    edges = [0, *(c.end() for c in corners)]
    stops = [*(c.start() for c in corners), len(text)]
    runs = [[m for m in _RUN.finditer(text, a, b) if m["n"]] for a, b in zip(edges, stops, strict=True)]
    if any(len(r) != 1 for r in runs):
        return None
    f1, s1, b, s2, f2 = (int(r[0]["n"]) for r in runs)
    return _Neck((f1, s1, b, s2, f2), tuple(r[0].span("n") for r in runs)) if f1 <= f2 else None


def _round_neck(text: str) -> _Neck | None:
    """The four runs of a round that ends with a corner: body, sleeve, body, sleeve; the first may begin with the turning chain."""
    corners = list(_CORNER.finditer(text))
    if len(corners) != CORNERS:
        return None
    stops = [0, *(x for c in corners for x in c.span())]
    runs = [[m for m in _RUN.finditer(text, a, b) if m["n"]] for a, b in zip(stops[::2], stops[1::2], strict=False)]
    if any(len(r) != 1 for r in runs[:CORNERS]) or any(m["n"] for m in _RUN.finditer(text, corners[-1].end())):
        return None
    f, s1, b, s2 = (int(r[0]["n"]) for r in runs[:CORNERS])
    spans = tuple(r[0].span("n") for r in runs[:CORNERS])
    return _Neck((f, s1, b, s2, b), spans, closed=True) if f in (b - 1, b) else None


def _at_the_round_neck(found: Found, row: Line, neck: _Neck, around: int) -> None:
    """Body and sleeve measured, the chain their sum, the row's count after it."""
    plain, sleeve, back, _, _ = neck.runs
    facts = (f"four corners part the neck into {back}, {sleeve}, {back}, {sleeve} ch",)
    found.add(Blank("back neck", "sts", back, "neck", "yoke", 0, Legal(2, back % 2), facts, line=row.item))
    found.add(Blank("sleeve neck", "sts", sleeve, "neck", "yoke", 0, Legal(2, sleeve % 2), line=row.item))
    sum_ = f"twice {{back neck}} plus twice {{sleeve neck}} plus {CORNERS}"
    found.add(_link("neck ch", around, sum_, f"2 x {back} + 2 x {sleeve} + {CORNERS} corners = {around}", row))
    slots = ["{back neck}", "{sleeve neck}", "{back neck}", "{sleeve neck}"]
    if plain < back:
        slots[0] = found.add(_link("front plain", plain, f"{{back neck}} less {back - plain}", f"the turning chain is one of {back}", row))
    for slot, (a, b) in zip(slots, neck.spans, strict=True):
        found.replace(Span(row.span.start + a, row.span.start + b), slot)
    if row.count is not None:
        because = f"each corner adds to the {around} ch: {row.count}"
        _printed(found, row, _link("rnd 1 sts", row.count, f"{{neck ch}} plus {row.count - around}", because, row))


def _at_the_neck(found: Found, row: Line, neck: _Neck, around: int) -> None:
    """Back and sleeve measured, the front a share of the back, the chain their sum, the row's count after it."""
    plain, sleeve, back, _, front = neck.runs
    facts = (f"four corners part the neck into {front}, {sleeve}, {back}, {sleeve}, {front} ch",)
    found.add(Blank("back neck", "sts", back, "neck", "yoke", 0, Legal(2, back % 2), facts, line=row.item))
    found.add(Blank("sleeve neck", "sts", sleeve, "neck", "yoke", 0, Legal(2, sleeve % 2), line=row.item))
    shares = [
        Reason(share_of(s, "{back neck}"), f"{front} of {back} sts", abs(float(back * s) - front) + s.denominator / 20)
        for s in SHARES if back * s == front
    ]
    found.add(Blank("front neck", "sts", front, "share", given=tuple(sorted(shares, key=lambda r: r.score)), legal=Legal(), line=row.item))
    sum_ = f"{{back neck}} plus twice {{front neck}} plus twice {{sleeve neck}} plus {CORNERS}"
    found.add(_link("neck ch", around, sum_, f"{back} + 2 x {front} + 2 x {sleeve} + {CORNERS} corners = {around}", row))
    slots = ["{front neck}", "{sleeve neck}", "{back neck}", "{sleeve neck}", "{front neck}"]
    if plain < front:
        less = front - plain
        slots[0] = found.add(_link("front plain", plain, f"{{front neck}} less {less}", f"{less} of {front} are told apart", row))
    for slot, (a, b) in zip(slots, neck.spans, strict=True):
        found.replace(Span(row.span.start + a, row.span.start + b), slot)
    if row.count is not None:
        rest = row.count - around
        blank = _link("row 1 sts", row.count, f"{{neck ch}} plus {rest}", f"each corner adds to the {around} ch: {row.count}", row)
        _printed(found, row, blank)


def _yoke(found: Found, lines: tuple[Line, ...], at: int, around: int, rows: int) -> None:
    """Rows to the underarm, and the stitches they make: eight more a row, two at each corner."""
    line, end = lines[at], lines[at].count
    m = _RANGE.match(line.text)
    if m is None or end is None:
        return
    word = m["word"].lower().rstrip("s")
    facts = (f"eight more sts in every {word}, two at each corner: {rows} {word}s make {end} sts",)
    turned, tall = 2 if _rows_of(line) == "yoke rows" else 1, rows_mm(lines, at, rows, 0, rows - int(m["first"]) + 1)
    rule, unit = Legal(turned, rows % turned, least=int(m["first"])), "rows" if turned > 1 else "rnds"
    blank = Blank(_rows_of(line), unit, rows, "part", "yoke", 0, rule, facts, line=line.item, rows_mm=tall)  # type: ignore[arg-type]
    found.replace(Span(line.span.start + m.start("last"), line.span.start + m.end("last")), found.add(blank))
    rest = end - around - 8 * rows
    more = f" {'plus' if rest > 0 else 'less'} {abs(rest)}" if rest else ""
    sum_ = f" {'+' if rest > 0 else '-'} {abs(rest)}" if rest else ""
    sentence = f"{{neck ch}}{more} plus 8 times {{{_rows_of(line)}}}"
    _printed(found, line, _link("yoke sts", end, sentence, f"{around}{sum_} + 8 x {rows} = {end}", line))


def _rows_of(line: Line) -> str:
    """The name of the blank for the yoke's rows, or its rounds."""
    return "yoke rows" if line.text[:3].lower() == "row" else "yoke rounds"


def _parts(found: Found, lines: tuple[Line, ...], body: int, counts: tuple[int, int], rows: str) -> None:
    """Body and sleeves: the body is measured, the underarm is what it lacks, the sleeve has its share of the yoke and the underarm."""
    top, under = counts
    first = lines[0]
    found.add(_link("sleeve top", top, f"{{sleeve neck}} plus twice {{{rows}}}", "two more sts a row between its corners", first))
    found.add(Blank("body sts", "sts", body, "around", "body", 0, Legal(4, body % 4), (f"{under} ch at each underarm",), line=first.item))
    lacks = "half of {body sts} less half of {yoke sts} plus {sleeve top}"
    found.add(_link("underarm", under, lacks, "what the body has beyond the yoke", first))
    if any(line.count == top + under for line in lines[1:]):
        found.add(_link("sleeve sts", top + under, "{sleeve top} plus {underarm}", f"{top} + {under}", first))
    for m in _CHAIN.finditer(first.text):
        group = "a" if m["a"] else "b"
        if int(m[group]) == under:
            _put(found, first, m.span(group), "{underarm}")
    for line in lines:
        for m in re.finditer(rf"\b{top}(?=\s+(?:\w+\s+)?(?:sts|stitches)\b)", line.text):
            _put(found, line, m.span(), "{sleeve top}")
    across = body - 2 * under
    for m in re.finditer(rf"\({across}\b", first.text):
        because = f"{body} - 2 x {under}, the ch not counted"
        slot = found.add(_link("parted sts", across, "{body sts} less twice {underarm}", because, first))
        _put(found, first, (m.start() + 1, m.end()), slot)
    for line in lines[1:]:
        for m in re.finditer(rf"\b{under - 1}(?=\s+remaining\s+ch\b)", line.text):
            _put(found, line, m.span(), found.add(_link("underarm rest", under - 1, "{underarm} less 1", "the first takes the yarn", line)))
    for m in re.finditer(rf"\({body}\b", first.text):
        _put(found, first, (m.start() + 1, m.end()), "{body sts}")


def _link(name: str, value: int, sentence: str, because: str, line: Line) -> Blank:
    return Blank(name, "sts", value, "link", given=(Reason(sentence, because),), line=line.item)


def _printed(found: Found, line: Line, blank: Blank) -> None:
    """The row's printed count, where it has one, and the blank for it."""
    count = next((c for c in line.row.printed if c.n.at(0) == blank.value and c.n.span.end), None)
    slot = found.add(blank)
    if count is not None:
        found.replace(count.n.span, slot)


def _put(found: Found, line: Line, span: tuple[int, int], slot: str) -> None:
    found.replace(Span(line.span.start + span[0], line.span.start + span[1]), slot)
