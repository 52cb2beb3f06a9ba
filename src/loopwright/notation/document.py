"""A pattern's text to its document: heading, Fit, sections, rows; every character stays in the text, every item keeps its span."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from typing import Literal

from loopwright.model.tree import (
    COUNT_OR_WORK, Document, Either, FitLine, Group, HeadLine, Item, Make, Mark, Node, Num, Prose, Repeat, Row, RowOrder, Section,
    SpecialStitch, Unknown,
)
from loopwright.notation.body import nodes_until, numbers_only
from loopwright.notation.counts import printed
from loopwright.notation.cursor import Cursor
from loopwright.notation.labels import Found, labels_in
from loopwright.notation.quiet import quiet
from loopwright.notation.scanner import Token, scan
from loopwright.source import Source, Span
from loopwright.terms import Dialect, dialect

MAX_LINE = 20_000
_HEAD = re.compile(r"(?P<name>[A-Z][A-Za-z ]{1,30}):\s*(?P<value>\S.*)$")
_FIT = re.compile(r"\{(?P<blank>[^{}]+)\}:\s*(?P<sentence>\S.*)$")
_HEAD_NAMES = frozenset(
    "size sizes worked in gauge tension hook yarn terms turning chain abbreviations special stitches notes note materials colours colors "
    "finished measurements finished size cautions caution level".split()
)
_REPEAT = re.compile(
    r"(?:rep(?:eat)?\.?|(?:work\s+)?(?:same\s+)?as(?:\s+for)?|work)\s+(?:the\s+)?(?:(?:rows?|rnds?|rounds?)\s*(?P<a>\d{1,9})(?:\s*(?P<j>-|–|to|through|and|&)\s*(?:rows?|rnds?)?\s*(?P<b>\d{1,9}))?"
    r"|(?P<o>\d{1,9})(?:st|nd|rd|th)(?:\s*(?P<oj>-|to|and)\s*(?P<p>\d{1,9})(?:st|nd|rd|th))?\s+(?:rows?|rnds?|rounds?)|last\s+(?P<n>\d{1,9}\s+)?(?:rows?|rnds?|rounds?))"
    r"\s*(?P<times>\d{1,9}|once|twice|one|two|three|four|five|six|seven|eight|nine|ten)?\s*(?P<more>times more|more times|times)?",
    re.IGNORECASE,
)
_EVEN = re.compile(r"work\s+even(?:\s+in\s+\w+)?(?:\s+for)?(?:\s+(?P<n>\d{1,9}|\{[^{}]+\})\s*(?:rows?|rnds?|rounds?))?\.?\s*$", re.IGNORECASE)
_CONTINUE = re.compile(
    r"continue\b[^.(]{0,60}?\b(?P<op>inc|dec)(?:reas)?(?:e|ing)?\.?\s+(?P<n>\d{1,4})\s+(?:sts?|stitches)\s+(?:in\s+)?(?:each|every)\s+(?:row|rnd|round)"
    r"(?:[^.(]{0,40}?until\D{0,20}(?P<until>\d{1,5}))?",
    re.IGNORECASE,
)
_TIMES = {"once": 1, "twice": 2, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}
_START = re.compile(r".*\b(?:ch(?:ain)?\.?\s*\d|make\s+a\s+chain|\d{1,9}\s*ch\b|magic|ring)|^\*", re.IGNORECASE)


def read(source: Source, terms: str | None = None) -> Document:
    """Reads a pattern as written. Never raises: what cannot be read stays as prose or unknown words."""
    text = quiet(source.text)
    said, inferred = _terms(text, terms)
    which = dialect(said)
    sizes = _sizes(text)
    items: list[Item] = []
    title: str | None = None
    seen_row = False
    for number in range(1, len(source.line_starts) + 1):
        start = source.line_starts[number - 1]
        line = text[start : start + len(source.line_text(number))]
        if not line.strip():
            continue
        made = _line(text, start + len(line) - len(line.lstrip()), start + len(line.rstrip()), which, len(sizes), seen_row)
        seen_row = seen_row or any(isinstance(i, Row) for i in made)
        if title is None and not items and len(made) == 1 and isinstance(made[0], (Section, Prose)) and len(line) < 80:
            title = line.strip()
            made = [Prose(line, Span(start, start + len(line)))]
        items.extend(made)
    noted = () if terms or not inferred else ((Span(0, min(1, len(text))), f"{said.upper()} terms taken from the stitches that the text names"),)
    items = [_as_written(i, source) for i in items]
    return Document(source.text, source.name, tuple(items), title, sizes, said, bool(terms), assumptions=noted)


def _as_written(item: Item, source: Source) -> Item:
    """Texts that an item keeps, from the source: reading takes quiet words out of them."""
    if isinstance(item, Prose):
        return replace(item, text=source.cut(item.span))
    if isinstance(item, HeadLine):
        return replace(item, value=source.cut(item.value_span))
    if isinstance(item, FitLine):
        return replace(item, sentence=source.cut(item.sentence_span))
    return item


def write(document: Document) -> str:
    """The text again, as written."""
    return document.text


def _terms(text: str, terms: str | None) -> tuple[Literal["us", "uk", "old"], bool]:
    if terms in ("us", "uk", "old"):
        return terms, False  # type: ignore[return-value]
    told = re.search(r"^terms:\s*(us|uk|old)\b", text, re.IGNORECASE | re.MULTILINE)
    if told:
        return told[1].lower(), False  # type: ignore[return-value]
    uk = len(re.findall(r"\b(?:htr|miss|tension|half treble)\b", text, re.IGNORECASE))
    us = len(re.findall(r"\b(?:sc|hdc|single crochet|skip|gauge)\b", text, re.IGNORECASE))
    return ("uk" if uk > us else "us"), True


def _sizes(text: str) -> tuple[str, ...]:
    told = re.search(r"^sizes?:\s*(.+)$", text, re.IGNORECASE | re.MULTILINE)
    if told:
        names = tuple(n.strip() for n in re.split(r"[,;]", told[1]) if n.strip())[:30]
        if names:
            return names
    votes: dict[int, int] = {}
    for m in re.finditer(r"\d{1,9}\s*[(\[](\d{1,9}(?:\s*[,:;]\s*\d{1,9}|\s?[-–]\s?\d{1,9}(?=\s?[-–)\]]))*)[)\]]", text[:200_000]):
        n = len(re.findall(r"\d{1,9}", m[1])) + 1
        if n == 3 and re.search(r"[-–]", m[1]):
            continue  # a range, not two sizes
        ends = re.match(r"[ .;]*(?:\n|\Z|\()", text[m.end() :][:40]) is not None
        if n == 2 and (ends or re.search(r"(?:x|\*|row|rnd|round|times)\s*$", text[max(0, m.start() - 7) : m.start()], re.IGNORECASE)):
            continue
        votes[n] = votes.get(n, 0) + (3 if n > 2 else 1)
    best = max(votes, key=lambda k: votes[k], default=1)
    return tuple(f"size {i + 1}" for i in range(best)) if 1 < best <= 30 else ("one size",)


def _line(text: str, start: int, end: int, which: Dialect, sizes: int, seen_row: bool) -> list[Item]:
    if end - start > MAX_LINE:
        return [Prose(text[start:end], Span(start, end))]
    fit = _FIT.match(text, start, end)
    if fit and not seen_row:
        return [FitLine(" ".join(fit["blank"].split()), fit["sentence"], Span(start, end), Span(*fit.span("sentence")))]
    found = labels_in(text, start, end)
    if not found:
        return _unlabelled(text, start, end, which, sizes, seen_row)
    items: list[Item] = []
    if found[0].start > start:
        items.extend(_unlabelled(text, start, found[0].start, which, sizes, True))
    for i, label in enumerate(found):
        stop = found[i + 1].start if i + 1 < len(found) else end
        items.extend(_row(text, label, label.start, stop, which, sizes))
    return items


def _unlabelled(text: str, start: int, end: int, which: Dialect, sizes: int, seen_row: bool) -> list[Item]:
    line = text[start:end]
    span = Span(start, end)
    head = _HEAD.match(line)
    if head and not seen_row and all(w in _HEAD_NAMES for w in head["name"].lower().split()):
        value = Span(start + head.start("value"), start + head.end("value"))
        return [HeadLine(head["name"].lower(), head["value"], span, value)]
    if line.lower().rstrip(":") in ("fit", "abbreviations", "notes", "special stitches"):
        return [Prose(line, span)]
    if head and "=" in head["value"] and not seen_row:
        return [SpecialStitch(head["name"].lower(), (), head["value"], span=span)]
    body_at = start + (head.start("value") if head else 0)
    if _EVEN.match(text, body_at, end) or _REPEAT.match(text, body_at, end) and seen_row:
        return _row(text, None, body_at, end, which, sizes)
    first_stop = re.search(r"[.;]\s+(?=[A-Z])", text[body_at:end])
    nodes, unknown = _nodes(text, body_at, body_at + first_stop.start() if first_stop else end, which, sizes)
    instructions = sum(1 for n in nodes if type(n).__name__ in ("Make", "Chain", "Group", "Repeat", "Ring", "Join", "Skip"))
    if instructions and (seen_row or _START.match(text[body_at:end])) and unknown <= 2 * instructions + 3:
        section: list[Item] = [Section(head["name"], span=Span(start, body_at))] if head else []
        return [*section, *_row(text, None, body_at, end, which, sizes)]
    if len(line) < 60 and not line.rstrip().endswith(".") and not instructions:
        return [Section(line.rstrip(": "), span=span)]
    return [Prose(line, span)]


def _row(text: str, label: Found | None, start: int, end: int, which: Dialect, sizes: int) -> list[Item]:
    at = label.end if label else start
    while end > at and text[end - 1].isspace():
        end -= 1
    told = printed(text, at, end, which, sizes)
    counts, stop, after = told.counts, told.stop, told.after
    span = Span(start, end)
    said = label.label if label else None
    side: Literal["RS", "WS"] | None = None if label is None or label.side is None else "RS" if label.side == "RS" else "WS"
    words = text[at:stop].strip()
    order = _order(words)
    if order is not None:
        return [Row(said, (), counts, order, side, span=span)]
    body_end, later = _later_order(text, at, stop)
    nodes, unknown = _nodes(text, at, body_end, which, sizes)
    if not told.sure:
        if any(isinstance(n, (Make, Group, Repeat, Either)) for n in nodes):
            said_again, _ = _nodes(text, stop, after.start, which, sizes)
            nodes += (Either(COUNT_OR_WORK, ((0.0, ()), (0.4, said_again)), Span(stop, after.start)),)
        else:
            nodes, unknown = _nodes(text, at, after.start, which, sizes)
            counts = ()
    nodes += _nodes(text, after.start, after.end, which, sizes)[0]
    rows: list[Item] = [Row(said, nodes, () if later else counts, None, side, doubt=unknown, span=span)]
    if later is not None:
        rows.append(Row(None, (), counts, later, span=Span(body_end, end)))
    return rows


def _later_order(text: str, at: int, stop: int) -> tuple[int, RowOrder | None]:
    """A sentence after the row that asks for other rows: "… turn. Rep Rows 2 and 3 4 times"."""
    for m in re.finditer(r"[.;]\s+(?=rep|work even)", text[at:stop], re.IGNORECASE):
        order = _order(text[at + m.end() : stop].strip())
        if order is not None:
            return at + m.start() + 1, order
    return stop, None


def _order(words: str) -> RowOrder | None:
    even = _EVEN.match(words)
    if even:
        n = even["n"]
        times = None if n is None else Num((), " ".join(n[1:-1].split())) if n.startswith("{") else Num((min(int(n), 5000),))
        return RowOrder("even", times=times)
    going = _CONTINUE.match(words)
    if going:
        delta = Num((int(going["n"]) * (-1 if going["op"].lower() == "dec" else 1),))
        return RowOrder("continue", delta=delta, until_sts=Num((int(going["until"]),)) if going["until"] else None)
    m = _REPEAT.match(words)
    if m is None:
        return None
    more = bool(m["more"] and "more" in m["more"])
    times_text = (m["times"] or "").lower()
    times = Num((_TIMES.get(times_text) or min(int(times_text), 5000),)) if times_text else None
    if not (m["a"] or m["o"]):
        return RowOrder("repeat", last_n=min(int(m["n"]), 500) if m["n"] else 1, times=times, more=more)
    first, last = int(m["a"] or m["o"]), int(m["b"] or m["p"] or m["a"] or m["o"])
    joined = (m["j"] or m["oj"] or "").lower()
    rows = (first, last) if joined in ("and", "&") else tuple(range(first, min(last, first + 500) + 1))
    what: Literal["repeat", "same-as"] = "repeat" if words.lower().startswith("rep") else "same-as"
    return RowOrder(what, rows or (first,), times=times, more=more)


def _nodes(text: str, start: int, end: int, which: Dialect, sizes: int) -> tuple[tuple[Node, ...], int]:
    """The nodes of a row's words; whole sentences that are prose are left out of them."""
    spans = [m.start() for m in re.finditer(r"(?<=[.;])\s+(?=[A-Z])", text[start:end])]
    edges = [start, *(start + at for at in spans), end]
    kept = []
    for i, (a, b) in enumerate(itertools.pairwise(edges)):
        tokens = scan(text, a, b, which)
        if i == 0 or not _is_prose(tokens, which, sizes):
            kept.extend(tokens)
    cur = Cursor(kept, which, sizes)
    nodes = numbers_only(cur) or nodes_until(cur)
    # words before the first instruction ("With right side facing and main colour, …") leave no doubt about it
    lead = next((i for i, n in enumerate(nodes) if not isinstance(n, (Unknown, Mark))), 0)
    return tuple(nodes), cur.unknown - sum(1 for n in nodes[:lead] if isinstance(n, Unknown))


def _is_prose(tokens: list[Token], which: Dialect, sizes: int) -> bool:
    """Four or more unknown words, and more than twice as many as instructions."""
    cur = Cursor(list(tokens), which, sizes)
    nodes = nodes_until(cur)
    made = sum(1 for n in nodes if not isinstance(n, (Unknown, Mark)))
    return cur.unknown >= 4 and cur.unknown > 2 * made
