"""A row in words: label, body, count."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.model.report import RowReport
from loopwright.model.tree import Define, Evenly, Join, Mark, Node, Row
from loopwright.source import Span
from loopwright.wording.as_written import translate, with_numbers
from loopwright.wording.counts import counts_of, ends_with_count
from loopwright.wording.covered import has_unknown, left_over, numbers, says_less, sentences, spans
from loopwright.wording.labels import is_worked, label
from loopwright.wording.orders import order
from loopwright.wording.said import RowWords, capital
from loopwright.wording.stitches import Scene, words

# what leads up to a count at a row's end
_LEAD = re.compile(
    r"(?:\b(?:you (?:now |should )?have|there (?:will be|are|should be)|making|having|total(?: of)?)|[\s(\[{<=—–,;.:-])*$", re.IGNORECASE)
_COLOUR_FIRST = re.compile(
    r"[^:.\n]{1,60}[:.]\s*(?i:with|using)\s+(?i:colou?r\s+)?(?!(?:RS|WS)\b)"
    r"(?P<colour>[A-Z][\w’']*(?:\s+(?:and\s+)?[A-Z][\w’']*){0,3}),")
_OWN_SENTENCE = ("fasten-off", "note", "attach")


def row(scene: Scene, item: Row, worked: Sequence[RowReport]) -> RowWords | None:
    """A row in its parts; None where the size written for does not work it."""
    voice = scene.voice
    if voice.size is not None and (item.sizes is not None and voice.size not in item.sizes or not is_worked(item.label, voice.size)):
        return None
    said = label(voice, item.label, item.side) if item.label else ""
    body = _in_language(scene, item) if voice.language != "en" else _told(scene, item) if item.order is not None else _body_of(scene, item)
    body = _with_colour(scene, item, body)
    if not body and not said:
        return None
    stop = "" if ends_with_count(body) else voice.say("sentence_end")
    words_of_it = capital(body).rstrip(" ,;.")
    label_of_it = said if words_of_it else said.rstrip(" ,;.")
    several = item.label is not None and bool(item.label.alternate)  # each with a count of its own
    return RowWords(label_of_it, words_of_it + stop, "" if several else counts_of(scene, item, worked, body))


def _with_colour(scene: Scene, item: Row, body: str) -> str:
    """The row's words behind the colour that it begins with, which no stitch of the tree tells: "With B, ch 1, sc in each st across"."""
    voice = scene.voice
    start = item.label.span.start if item.label is not None and item.label.span.end else None  # a label reaches over what was passed by
    told = _COLOUR_FIRST.match(scene.text, start, item.span.end) if start is not None else None
    if told is None or not body:
        return body
    lead: str = voice.say("with_colour", colour=told["colour"])
    return body if lead.lower() in body.lower() else voice.say("sep").join([lead, body])


def _in_language(scene: Scene, item: Row) -> str:
    from loopwright.wording.languages import rows as other  # noqa: PLC0415 - Fluent and Babel only for other languages

    both, part = other.pair(scene, item), _part(scene, item)
    return other.told(both, part) if item.order is not None else other.body(both, part)


def _told(scene: Scene, item: Row) -> str:
    """A row told by other rows: in its own words where they are there, for they may say more than the order holds."""
    assert item.order is not None  # noqa: S101 - the caller has looked
    if item.order.what == "shape":
        return order(scene.voice, item.order, item.label, scene.end, _body(scene, item.body))
    part = _part(scene, item)
    if part is not None:
        kept = _kept(scene, item, part)
        if "{" not in kept:
            return kept
    extra = _body(scene, item.body)
    return scene.voice.say("sep").join(filter(None, [order(scene.voice, item.order, item.label, scene.end), extra]))


def _body_of(scene: Scene, item: Row) -> str:
    """A row's own instructions: sentence by sentence, those that the tree does not hold in full kept as written."""
    part = _part(scene, item)
    if part is None:
        return _body(scene, item.body)
    voice, kept = scene.voice, False
    said: list[str] = []
    for sentence in sentences(scene.text, part.start, part.end):
        nodes = tuple(n for n in item.body if sentence.start <= _start(n) < sentence.end)
        lost = has_unknown(nodes) or left_over(scene.text, sentence, item.body)
        if lost and any(_crosses(n, sentence) for n in item.body):
            return _kept(scene, item, part)
        words_of_it = "" if lost else _body(scene, nodes)
        if lost or says_less(scene.text[sentence.start : sentence.end], words_of_it):
            kept, words_of_it = True, _kept(scene, item, sentence)
        if words_of_it:
            said.append(capital(words_of_it) if said else words_of_it)
    if not kept:
        return _body(scene, item.body)
    return (voice.say("sentence_end") + " ").join(said)


def _part(scene: Scene, item: Row) -> Span | None:
    """Where a row's words stand, without label and counts; None for a tree that was not read from a text.

    Words at a line's head that the reader passed over ("With A, …") are the row's too.
    """
    if item.span.end <= item.span.start:
        return None
    start = max(item.label.span.end, item.span.start) if item.label else max(scene.floor, scene.text.rfind("\n", 0, item.span.start) + 1)
    counts = [c.span.start for c in item.printed if c.span.end > start]
    stop = min(counts, default=item.span.end)
    said = _LEAD.sub("", scene.text[start:stop]) if counts else scene.text[start:stop].rstrip()
    return Span(start, start + len(said))


def _start(node: Node) -> int:
    return min((s.start for s in spans(node)), default=-1)


def _crosses(node: Node, part: Span) -> bool:
    """Whether a node reaches over the edge of a sentence."""
    found = list(spans(node))
    inside = [part.start <= s.start and s.end <= part.end for s in found]
    return any(inside) and not all(inside)


def _kept(scene: Scene, item: Row, part: Span) -> str:
    text = with_numbers(scene.voice, scene.text[part.start : part.end], part.start, numbers(item))
    return translate(scene.voice, text, loose=True).strip(" ,;.")


def _body(scene: Scene, nodes: Sequence[Node]) -> str:
    """Nodes with the stops that the trade puts between them."""
    voice, out = scene.voice, ""
    for said, node in _said(scene, nodes):
        if not out:
            out = said
        elif isinstance(node, Join) or isinstance(node, Mark) and node.what == "no-join":
            out += voice.say("join_sep") + said
        elif isinstance(node, Mark) and node.what in _OWN_SENTENCE:
            out += voice.say("sentence_end") + " " + capital(said)
        else:
            out += voice.say("sep") + said
    return out


def _said(scene: Scene, nodes: Sequence[Node]) -> Iterator[tuple[str, Node]]:
    """Each run of words with the node that begins it."""
    i = 0
    while i < len(nodes):
        take = 1
        while i + take < len(nodes) and isinstance(nodes[i + take], (Evenly, Define)):
            take += 1
        yield from ((said, nodes[i]) for said in words(scene, nodes[i : i + take]))
        i += take
