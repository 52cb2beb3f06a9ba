"""A pattern's text to its document: heading, Fit, sections, rows; every character stays in the text, every item keeps its span."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from typing import Any, Literal

from loopwright.findings import Finding
from loopwright.model.moved import moved, own_words
from loopwright.model.tree import (
    COUNT_OR_WORK,
    ONE,
    Chain,
    Count,
    Document,
    Either,
    FitLine,
    Group,
    HeadLine,
    Item,
    Make,
    Mark,
    Node,
    Prose,
    Repeat,
    Row,
    Section,
    Unknown,
)
from loopwright.notation.counts import COUNT_BEGINS, number_alone, only_count, printed
from loopwright.notation.endings import closing, later_until, more_titles, title_before, until
from loopwright.notation.folded import quoted, told_lines, unfolded
from loopwright.notation.labels import Found, labels_in, one_each, plain_label
from loopwright.notation.later import FOR_ROWS, behind_a_length, for_rows, later_order, repeated_label, shapes_then
from loopwright.notation.loops import loop_rounds
from loopwright.notation.nodes import behind_count, nodes_of
from loopwright.notation.onward import told_until
from loopwright.notation.orders import changing, number
from loopwright.notation.orders import in_turn as orders_in_turn
from loopwright.notation.orders import order as order_of
from loopwright.notation.quiet import quiet
from loopwright.notation.remembered import Known, Remembered
from loopwright.notation.rings import in_ring
from loopwright.notation.schedules import schedule
from loopwright.notation.size_lists import plain_lists
from loopwright.notation.sizes_told import in_label, named_in_rows, sizes_of, sizes_only, without_dashes
from loopwright.notation.specials import defined, specials, with_specials
from loopwright.notation.starred_rows import starred_row
from loopwright.notation.strips import strip_on
from loopwright.notation.terms_told import terms_of
from loopwright.notation.told import closes_block, defines, is_glossary, is_heading, is_told, of_the_whole, opens_block, part_only
from loopwright.notation.untold import with_untold
from loopwright.record import changed
from loopwright.source import Source, Span
from loopwright.terms import Dialect, dialect

MAX_LINE = 20_000
_JOINT = re.compile(r"(?<=\S) {3,}(?=\S)")  # where a broken line went on
_INSTRUCTIONS = frozenset("Make Chain Group Repeat Ring Join Skip Either EdgeRun Evenly EveryKth AtEnds PatternRun InTurn Spread Divided".split())
_HEAD = re.compile(r"(?!(?i:row|rnd|round)\s\()(?P<name>[A-Z][A-Za-z ]{1,30})(?:\s\([^()]{1,30}\))?:\s*(?P<value>\S.*)$")
_FITS = re.compile(r"(?:to fit|fits|actual|left as it is)\b", re.IGNORECASE)
_MORE_FACTS = re.compile(r"(?<=[.;)])\s+(?=(?:Gauge|Tension|Hook|Yarn|Terms|Sizes?|Finished size|Finished measurements)\s*:)")  # told in one line
_FIT = re.compile(r"\{(?P<blank>[^{}]+)\}:\s*(?P<sentence>\S.*)$")
_HEAD_NAMES = frozenset(
    "size sizes worked in gauge tension hook yarn terms turning chain abbreviations special stitches notes note materials colours colors "
    "finished measurements measurement finished size cautions caution level needed used supplies notions dimensions terminology "
    "safety warning warnings abbreviation hidden swatch swatches timed sample weighed version date designer author description care "
    "photograph photographs film help contact corrections copyright of use accent".split()
)
_OMITTING = re.compile(r",?\s*\b(?:omit(?:ting)?|without)\s+(?:the\s+)?(?:turning[- ])?(?:ch(?:ain)?\.?[- ]?\d?|\d\s*ch(?:ain)?)(?:,?\s+turn)?\s+(?:at|from)\s+(?:the\s+)?end\s+of\s+(?:the\s+)?last\s+(?:row|rnd|round|rep(?:eat)?)\b", re.IGNORECASE)
_TURNED = re.compile(r"[.;,]\s+(?P<chain>(?:ch(?:ain)?\.?\s*[1-9]|[1-9]\s*ch(?:ain)?)\b\.?,?\s*turn)\b\.?\s*$", re.IGNORECASE)
_COUNT_ENDS = re.compile(r"(?:[)\]]|(?:[.;]|\s[–—-])\s+\d{1,4}\s+[a-z]{2,5})\.$")
_ENDED = re.compile(r"(?:(?:fasten|break|cut|end|finish)\s+(?:off|yarn|thread)\b\.?\s*)+", re.IGNORECASE)
_THEN = re.compile(r"[,;.]?\s*\bthen\s+(?=[^.;]{3,60}\bfor\s+(?:\d{1,4}|two|three|four|five|six)\s+(?:more\s+)?(?:rows|rnds|rounds)\b)", re.IGNORECASE)
_OTHER_CRAFT = re.compile(r"\b(?:tunisian|afghan\s+st(?:itch)?|broomstick|solomon[’']?s?\s+knots?|lover[’']?s?\s+knots?|love\s+knots?|knot\s+st(?:itche?)?s?|hairpin\s+lace)\b", re.IGNORECASE)
_OF_CRAFT = ("tunisian", "afghan", "broomstick", "knot", "hairpin")  # one of them is in all that pattern finds
_STUFF = re.compile(r"\b(?:\d\s*mm|hooks?|yarns?|worsted|multiple of|skeins?|balls? of|\d+\s*(?:g|yds?|yards|m)|(?:us|uk) terms)\b", re.IGNORECASE)  # of what it is made
_START = re.compile(r".*\b(?:ch(?:ain)?\.?\s+(?:of\s+)?(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|ten|eleven|twelve|\w{3,5}teen)\b|(?:three|four|five|six|seven|eight|nine|ten|eleven|twelve)\s+chain\b|ch(?:ain)?\.?\s*(?:of\s+)?[\d{]|(?:an?|of)\s+chain\b|^\s*chain\s+of|\d{1,9}(?:\s*[(\[][\d\s,:;–-]+[)\]])?\s*ch(?:ains?)?\b|in\s+this\s+(?:ring\s+)?work|magic|ring|f(?:oundation )?(?:sc|hdc|dc|htr|tr)\b)|^\s*\*|\{[^{}]+\}\s*ch\b", re.IGNORECASE)


def read(source: Source, terms: str | None = None, memo: dict[Any, Any] | None = None) -> Document:
    """Reads a pattern in English as written. Never raises: what cannot be read stays as prose or unknown words.

    `memo` keeps lines between calls: one that says the same is not read again, wherever it stands now.
    """
    said, inferred = terms_of(source.text, terms)
    written, source = source.text, Source.of(unfolded(source.text), source.name)
    text = plain_lists(quiet(source.text, said))
    which = dialect(said)
    sizes = sizes_of(text, source.text)
    before = Remembered(memo)
    own = specials(text, which, before.definition, source.text)
    which = with_specials(which, own)
    which, long = with_untold(which, text)
    items: list[Item] = []
    title: str | None = None
    seen_row = in_block = False
    only: tuple[int, ...] | None = None
    low = text.lower()
    known, elsewhere = Known(memo), any(word in low for word in _OF_CRAFT)
    for start, end, told_as in told_lines(source, text, sizes):
        line = text[start:end]
        bare = line.strip()
        if quoted(line):
            items.append(Prose(line, Span(start, start + len(line))))
            continue
        if not bare:
            in_block = False
            if items and told_as.strip():  # nothing but quiet words
                items.append(Prose(line, Span(start, start + len(line))))
            continue
        other = _OTHER_CRAFT.search(line) if elsewhere else None
        if other is not None and (seen_row or labels_in(text, start, start + len(line))):
            long.append(Finding("N004", Span(start + other.start(), start + other.end()), {"technique": other.group().lower()}))
        if len(line) > MAX_LINE:
            long.append(Finding("N003", Span(start, start + 40), {"length": len(line), "limit": MAX_LINE}))
        after = at = start + len(line) - len(line.lstrip())
        stop, here = at + len(bare), None
        if len(sizes) > 1:
            after, here = sizes_only(text, at, stop, sizes, only)
            if here is only and (told := in_label(text, at, start + len(line), sizes))[1] is not None:
                text, here, after = told[0], told[1], at
        alone = after > at and not text[after : start + len(line)].strip()
        if after == at and here is only or alone or here is None:
            only = here  # said on a line of its own it holds until told otherwise, before a row for that row
        if after > at and alone:
            items.append(Prose(line, Span(start, start + len(line))))
            continue
        counts = only_count(text[at:stop], at, which, len(sizes)) if seen_row and bare[0] in COUNT_BEGINS else ()
        if counts and isinstance(items[-1], Row) and not items[-1].printed:  # asked for last: the words of a row are moved when they are
            items[-1] = replace(items[-1], printed=counts)  # the count of the row above it
            items.append(Prose(line, Span(start, start + len(line))))
            continue
        works = _has_row(made := before.line(_line, text, after, stop, which, len(sizes), seen_row, known))
        if works and seen_row and (end_of_row := closing(made)) is not None:
            if end_of_row.printed and isinstance(items[-1], Row) and not items[-1].printed:
                items[-1] = replace(items[-1], printed=end_of_row.printed)  # "Join to first dc. (30 dc)", on a line of its own
            made = [Prose(line, Span(start, start + len(line)))]
        elif works and (
            not seen_row and is_told(line if after == at else text[after:end], in_block)
            or own and (not seen_row or defines(bare)) and any(start <= s.span.start < end for s in own)
        ):
            made, works = [Prose(line, Span(start, start + len(line)))], False
        in_block = not seen_row and (in_block and not closes_block(line) or opens_block(line))
        if here is not None:
            made = [replace(i, sizes=here) if isinstance(i, Row) else i for i in made]
        elif len(sizes) > 1:
            made = [without_dashes(i) if isinstance(i, Row) else i for i in made]
        seen_row = seen_row or works
        if title is None and not items and len(made) == 1 and isinstance(made[0], (Section, Prose)) and len(line) < 80:
            title = told_as.strip()
            made = [Prose(line, Span(start, start + len(line)))]
        items.extend(made)
    noted = () if terms or not inferred else ((Span(0, min(1, len(text))), f"{said.upper()} terms taken from the stitches that the text names"),)
    noted = (*noted, *((called,) if (called := named_in_rows(source.text, sizes)) is not None else ()))
    items = [i if isinstance(i, Row) else _as_written(i, source, text) for i in items]
    return Document(source.text, source.name, tuple(items), title, sizes, said, None, tuple(long), noted, defined(own), written=written)


def _has_row(items: list[Item]) -> bool:
    for item in items:  # noqa: SIM110 (no generator: asked of every line)
        if isinstance(item, Row):
            return True
    return False


def _as_written(item: Item, source: Source, quiet: str) -> Item:
    """Texts that an item keeps, from the source: reading takes quiet words out of them, at the ends of lines too ("With A.")."""
    if isinstance(item, Prose):
        start, end = item.span.start, item.span.end
        while start and quiet[start - 1] == " ":
            start -= 1
        while end < len(quiet) and quiet[end] == " ":
            end += 1
        whole = source.text[start:end]
        start, end = start + len(whole) - len(whole.lstrip()), end - len(whole) + len(whole.rstrip())
        return replace(item, text=_JOINT.sub(" ", source.cut(Span(start, end))), span=Span(start, end))
    if isinstance(item, HeadLine):
        return replace(item, value=_JOINT.sub(" ", source.cut(item.value_span)))
    if isinstance(item, FitLine):
        return replace(item, sentence=source.cut(item.sentence_span))
    return item


def _line(text: str, start: int, end: int, which: Dialect, sizes: int, seen_row: bool, known: Known) -> list[Item]:
    plain = plain_label(text, start, end)
    if plain is not None and text[plain.end - 1 : end] in known.alone:
        return _row(text, plain, start, end, which, sizes, known)
    if end - start > MAX_LINE or seen_row and is_glossary(text[start:end]):
        return [Prose(text[start:end], Span(start, end))]  # of long ones read() says so
    fit = _FIT.match(text, start, end)
    if fit and not seen_row:
        return [FitLine(" ".join(fit["blank"].split()), fit["sentence"], Span(start, end), Span(*fit.span("sentence")))]
    titled = title_before(text, start, end) if seen_row or _head(text[start:end]) is None else None
    if titled is not None:
        return [Section(titled[0], span=Span(start, titled[1])), *_line(text, titled[1], end, which, sizes, True, known)]
    found = labels_in(text, start, end, sizes)
    if not found:
        return _unlabelled(text, start, end, which, sizes, seen_row, known)
    if plain is not None and len(found) == 1:
        known.alone.add(text[plain.end - 1 : end])
    items: list[Item] = []
    found = one_each(found)
    if found[0].start > start:
        items.extend(_unlabelled(text, start, found[0].start, which, sizes, True, known))
    for i, label in enumerate(found):
        stop = found[i + 1].start if i + 1 < len(found) else end
        items.extend(_row(text, label, label.start, stop, which, sizes, known))
    return items


def _head(line: str) -> re.Match[str] | None:
    """A line of the heading: "Gauge: …", "YARN: …", "Abbreviations (UK terms): …"."""
    head = _HEAD.match(line)
    return head if head and (all(w in _HEAD_NAMES for w in head["name"].lower().split()) or _FITS.match(head["name"])) else None


def _unlabelled(text: str, start: int, end: int, which: Dialect, sizes: int, seen_row: bool, known: Known) -> list[Item]:
    line = text[start:end]
    if not seen_row and (more := _MORE_FACTS.search(text, start, end)) is not None:
        first = _unlabelled(text, start, more.start(), which, sizes, False, known)
        return [*first, *_unlabelled(text, more.end(), end, which, sizes, False, known)]
    span = Span(start, end)
    if not seen_row and (told := _head(line)) is not None:
        return [HeadLine(told["name"].lower(), told["value"], span, Span(start + told.start("value"), start + told.end("value")))]
    head = _HEAD.match(line)
    if line.lower().rstrip(":") in ("fit", "abbreviations", "notes", "special stitches"):
        return [Prose(line, span)]
    if seen_row and (part_only(line) or of_the_whole(line)):
        return [Section(line.rstrip(": ."), span=span) if part_only(line) else Prose(line, span)]
    if is_heading(line) or len(letter := line.strip(" .:")) == 1 and letter.isupper():  # pieces called A, B …
        return [Section(line.rstrip(": "), span=span)]
    title, body_at = more_titles(text, head["name"], start + head.start("value"), end) if head else ("", start)
    if head and seen_row and of_the_whole(text[body_at:end]):
        return [Section(title, span=Span(start, body_at)), Prose(text[body_at:end], Span(body_at, end))]
    if seen_row and loop_rounds(text[body_at:end].strip(), None, span) is not None:
        return _row(text, None, body_at, end, which, sizes, known)
    order = until(text[body_at:end].strip(), which, sizes) or order_of(text[body_at:end].strip(), sizes, which)
    if seen_row and schedule(text[body_at:end], sizes) is not None:
        return _row(text, None, body_at, end, which, sizes, known)
    if order is not None and (seen_row or order.what == "even" or order.what == "repeat" and order.rows):
        return _row(text, None, body_at, end, which, sizes, known)
    instructions = 0
    stops = [m.start() for m in re.finditer(r"[.;]\s+(?=[A-Z])", text[body_at:end])]
    for a, b in itertools.pairwise([0, *stops[:4], end - body_at]):
        nodes, unknown = nodes_of(text, body_at + a, body_at + b, which, sizes)
        made = sum(1 for n in nodes if type(n).__name__ in _INSTRUCTIONS)
        instructions += made
        plainly = unknown == 0 and not head and any(_placed(n) for n in nodes) or _open_chain(nodes)
        if made and (seen_row or plainly or _START.match(text[body_at + a : end])) and unknown <= 2 * made + 3:
            section: list[Item] = [Section(title, span=Span(start, body_at))] if head else []
            return [*section, *_row(text, None, body_at, end, which, sizes, known)]
    if len(line) < 60 and not line.rstrip().endswith(".") and not instructions and (seen_row or not _STUFF.search(line)):
        return [Section(line.rstrip(": "), span=span)]
    return [Prose(line, span)]


def _open_chain(nodes: tuple[Node, ...]) -> bool:
    """Whether a line begins with a chain whose length it leaves open."""
    first = next((n for n in nodes if not isinstance(n, Mark)), None)
    return isinstance(first, Chain) and first.every > 0


def _placed(node: Node) -> bool:
    """Whether a node is worked somewhere: what a list of abbreviations never is."""
    if isinstance(node, Make):
        return node.place is not None
    return isinstance(node, Group) or isinstance(node, Repeat) and any(_placed(n) for n in node.nodes)


def _row(text: str, label: Found | None, start: int, end: int, which: Dialect, sizes: int, known: Known) -> list[Item]:
    """A row and what follows it in its words; words that were read before, behind another label, are moved here."""
    told = label.label if label is not None else None
    alone = told is None or told.first is told.last and told.how_many is ONE and not told.also
    if told is not None and not alone and (told.first != told.last or told.how_many != ONE or told.also):
        return _row_anew(text, label, start, end, which, sizes, known)
    at = label.end if label is not None else start
    key = told is None, text[at - 1 : end] if at else text[:end]
    held = known.rows.get(key)
    side = _side(label)
    if held is None:
        items = _row_anew(text, label, start, end, which, sizes, known)
        first = items[0] if items else None
        if isinstance(first, Row) and first.label is told and first.side == side:
            known.rows[key] = at, changed(first, label=None), items[1:]
        return items
    row, by = held[1], at - held[0]
    return [own_words(row, by, told, side, Span(start, row.span.end + by)), *(moved(i, by) for i in held[2])]


def _side(label: Found | None) -> Literal["RS", "WS"] | None:
    return None if label is None or label.side is None else "RS" if label.side == "RS" else "WS"


def _row_anew(text: str, label: Found | None, start: int, end: int, which: Dialect, sizes: int, known: Known) -> list[Item]:
    at = label.end if label else start
    if label is not None and (titled := title_before(text, at, end)) is not None:
        at = titled[1]
    while end > at and text[end - 1].isspace():
        end -= 1
    if label is not None and (alone := number_alone(text, at, end, sizes)) is not None:
        return [Row(label.label, *alone, None, _side(label), span=Span(start, end))]
    if (starred := starred_row(text, at, end, sizes)) is not None:
        return [*_row_anew(text, None if label is None else changed(label, end=starred[0]), starred[0] if label is None else start, starred[1], which, sizes, known), Row(None, (), (), starred[2], span=Span(starred[1], end))]
    told = printed(text, at, end, which, sizes)
    counts, stop, after = told.counts, told.stop, told.after
    span = Span(start, end)
    said = label.label if label else None
    side = _side(label)
    if (shapes := shapes_then(text, at, stop, sizes)) is not None:
        return [*_row_anew(text, label, start, shapes[0], which, sizes, known), *_row_anew(text, None, shapes[1], end, which, sizes, known)]
    shaped = _shaped(text, label, (start, at, stop, end), counts, which, sizes, known)
    if shaped is not None:
        return shaped
    if (loops := loop_rounds(text[at:stop].strip(), said, Span(at, stop))) is not None:
        return [Row(loops[0], loops[1], counts, None, side, span=span)]
    whole = order_of(text[at:end].strip(), sizes, which)
    until_so = whole is not None and whole.what == "repeat" and whole.until_sts is not None and (whole.rows or whole.last_n)
    ends = None if until_so else until(text[at:end].strip(), which, sizes)
    again = orders_in_turn(text, at, stop, sizes, which) or behind_a_length(text, at, stop)
    if again and (text[at:at + 3].lower() == "rep" or any(type(n).__name__ in _INSTRUCTIONS for n in nodes_of(text, again, stop, which, sizes)[0])):
        return [*_row_anew(text, label, start, again, which, sizes, known), *_row_anew(text, None, again, end, which, sizes, known)]
    order = ends or whole if ends is not None or whole is not None and (whole.total_rows or whole.until_sts) else order_of(text[at:stop].strip(), sizes, which)
    if order is not None:
        said = for_rows(said, order, text[at:stop], sizes)
        said = None if order.total_rows and said and said.first == said.last else said  # "Row 3 onwards: repeat Row 2 until you have 30 rows"
        omits = order.what == "repeat" and _OMITTING.search(text, at, stop) is not None
        behind = _TURNED.search(text, at, stop) if order.what == "even" or omits else None
        then = nodes_of(text, behind.start("chain"), behind.end(), which, sizes)[0] if behind is not None else ()  # the chain of the next row
        if omits:
            then = (Mark("no-chain"), *then)
        return [Row(said, then, () if order is ends or order is whole and order.total_rows else counts, order, side, span=span)]
    split = _THEN.search(text, at, stop)
    if split is not None:
        first = _row_anew(text, label, start, split.start(), which, sizes, known)
        rest = _row_anew(text, None, split.end(), end, which, sizes, known)
        return [*first, *rest]
    many = FOR_ROWS.search(text, at, stop)
    if many is not None and (n := number(many["n"], sizes)) is not None:
        said, stop = repeated_label(said, n), many.start()
    body_end, later = later_order(text, at, stop, sizes, which)
    if later is None and (told_end := later_until(text, at, end, which, sizes)) is not None:
        body_end, later = told_end
        counts = ()
    own = printed(text, at, body_end, which, sizes) if later is not None and _COUNT_ENDS.search(text, at, body_end) else None
    body_end = body_end if own is None or not own.sure else own.stop
    nodes, unknown = known.nodes(text, at, body_end, which, sizes)
    if not told.sure and later is None:  # behind an order it can only be a count
        if any(type(n).__name__ in _INSTRUCTIONS - {"Chain", "Ring", "Join", "Skip"} for n in nodes):
            said_again, _ = nodes_of(text, stop, after.start, which, sizes)
            if any(type(n).__name__ in _INSTRUCTIONS - {"Chain"} for n in said_again):  # else it can only be a count: "6 ch-2 sps"
                nodes += (Either(COUNT_OR_WORK, ((0.0, ()), (0.4, said_again)), Span(stop, after.start)),)
        else:
            nodes, unknown = nodes_of(text, at, after.start, which, sizes)
            counts = ()
    nodes += behind_count(text, after.start, after.end, which, sizes)
    its = counts if later is None else own.counts if own is not None and own.sure else ()
    its = its or tuple(told_until(nodes))
    nodes = in_ring(nodes, its)
    rows: list[Item] = [Row(said, nodes, its, None, side, doubt=unknown, span=span)]
    if later is not None:
        omits = later.what == "repeat" and _OMITTING.search(text, body_end, end) is not None
        rows.append(Row(None, (Mark("no-chain"),) if omits else (), counts, later, span=Span(body_end, end)))
    return rows


def _shaped(
    text: str, label: Found | None, where: tuple[int, int, int, int], counts: tuple[Count, ...], which: Dialect, sizes: int, known: Known,
) -> list[Item] | None:
    """A row that tells of shaping among plain rows, and what follows it in the line.

    `where`: the line's start, the row's words from and to, the line's end.
    """
    start, at, stop, end = where
    said = label.label if label else None
    if (strip := strip_on(text, at, end, which)) is not None:
        return [*_row_anew(text, label, start, strip[0], which, sizes, known), strip[1]]
    ranged = said is not None and (said.last != said.first or said.how_many != ONE)
    found = schedule(text[at:stop], sizes, ranged=ranged, first=said.first.at(0) if said is not None and said.first is not None else None)
    if found is None or changing(text[at:end].lstrip(), sizes) is not None:
        return None
    nodes, unknown = nodes_of(text, at + found.body[0], at + found.body[1], which, sizes)
    if unknown or found.body[1] and not any(type(n).__name__ in _INSTRUCTIONS for n in nodes):
        return None
    side = _side(label)
    rest = at + found.end
    while rest < stop and text[rest] in " .,;:(\n":
        rest += 1
    ended = _ENDED.fullmatch(text, rest, stop)
    more = rest < stop and any(c.isalpha() for c in text[rest:stop]) and ended is None
    then = _row_anew(text, None, rest, end, which, sizes, known) if more else []
    if all(isinstance(i, Row) and i.order is None and not i.printed and all(isinstance(n, (Mark, Unknown)) for n in i.body) for i in then):
        more, then = False, []  # "Fasten off."
    row = Row(said, nodes, () if more else counts, found.order, side, span=Span(start, rest if more else end))
    return [row, *then]
