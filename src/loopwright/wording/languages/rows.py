"""A row in another language: node by node. What the frames would not say in full stays in English, marked, where it stood."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from loopwright.model.tree import Chain, Define, Evenly, Join, Mark, Node, Repeat, Row
from loopwright.source import Span
from loopwright.terms.dialect import spellings
from loopwright.wording.as_written import translate, with_numbers
from loopwright.wording.covered import has_words_unread, left_over, numbers, quiet_words, says_less, sentences, spans
from loopwright.wording.languages.voice import LanguageVoice, english_twin
from loopwright.wording.orders import order
from loopwright.wording.said import capital
from loopwright.wording.stitches import Scene, words

_OWN_SENTENCE = ("fasten-off", "note", "attach")
_WORD = re.compile(r"[a-z]+|\d+")
_BLANK = re.compile(r"\{[^{}\n]*\}")
_TRIM = " ,;.:\n\t"
_COLOUR = re.compile(r"[A-Z]{1,3}")
_OF_PART = re.compile(r"\bof (?:the )?([A-Za-z][A-Za-z ]*)\.?$", re.IGNORECASE | re.MULTILINE)
_COUNTS = re.compile(r"\s*\(counts as (\d+) ([a-z ]+)\)\s*$", re.IGNORECASE)
_TAKEN_UP = re.compile(r"\*\s*with [A-Z]{1,3}[,:]?\s*")  # the repeat says it
_TO_END = re.compile(r"\bto (?:the )?end\b", re.IGNORECASE)
_IN_ROUNDS = re.compile(r"\b(?:rnds?|rounds?)\b", re.IGNORECASE)
_NUMBERS = frozenset("one two three four five six seven eight nine ten twelve hook yarn miss missed skip sk skipped yo".split())


@dataclass(slots=True)
class Pair:
    """A row in the making: said in the language, and in English beside it, to see what the frames leave out."""

    scene: Scene
    english: Scene
    item: Row

    @property
    def voice(self) -> LanguageVoice:
        """The voice of the language."""
        voice = self.scene.voice
        assert isinstance(voice, LanguageVoice)  # noqa: S101 - pair() has seen to it
        return voice

    def kept(self, part: Span) -> str:
        """Words that stay: numbers filled in, one size where one is asked for, and marked."""
        text = self.scene.text[part.start : part.end]
        said = translate(self.english.voice, with_numbers(self.english.voice, text, part.start, numbers(self.item)))
        return self.voice.keep(said.strip(_TRIM))


def pair(scene: Scene, item: Row) -> Pair:
    """The row's scene with its English twin."""
    voice = scene.voice
    assert isinstance(voice, LanguageVoice)  # noqa: S101 - rows.row calls this for such voices alone
    voice.heard.row = item.label.text.strip() if item.label else ""
    twin = english_twin(voice)
    around = scene.end == voice.say("around") or bool(_IN_ROUNDS.search(scene.text[item.span.start : item.span.end]))
    scene.end, end = voice.say("around" if around else "across"), twin.say("around" if around else "across")
    return Pair(scene, replace(scene, voice=twin, end=end, translate=lambda text: translate(twin, text)), item)


def told(both: Pair, part: Span | None) -> str:
    """A row told by other rows; in English where its words say more than the order holds."""
    scene, item = both.scene, both.item
    assert item.order is not None  # noqa: S101 - the caller has looked
    what = item.order
    where = _OF_PART.search(scene.text, item.span.start, part.end) if part is not None and what.section else None
    name = where[1].strip() if where else what.section
    said = order(scene.voice, replace(what, section=both.voice.name(name) if name else None), item.label, scene.end)
    english = order(both.english.voice, replace(what, section=name), item.label, both.english.end)
    if what.what == "shape":
        return order(scene.voice, what, item.label, scene.end, _body(both, item.body))
    if part is None:
        return scene.voice.say("sep").join(filter(None, [said, _body(both, item.body)]))
    parts = [said]
    if item.body:
        english += " " + " ".join(words(both.english, item.body))
        parts.append(_body(both, item.body))
    text = scene.text[part.start : part.end]
    altered = what.grow or what.swap is not None or what.untold or what.alternate in ("even", "odd")
    if altered or says_less(text, english) or _lost(text, english):
        return both.kept(part)
    return scene.voice.say("sep").join(filter(None, parts))


def body(both: Pair, part: Span | None) -> str:
    """A row's own instructions, sentence by sentence."""
    if part is None:
        return _body(both, both.item.body)
    voice = both.voice
    found = sentences(both.scene.text, part.start, part.end)
    if any(_crosses(n, s) for s in found for n in both.item.body):
        found = [part]
    said = [_sentence(both, s) for s in found]
    return (voice.say("sentence_end") + " ").join(capital(s) if i else s for i, s in enumerate(filter(None, said)))


def _crosses(node: Node, part: Span) -> bool:
    found = [part.start <= s.start and s.end <= part.end for s in spans(node)]
    return any(found) and not all(found)


@dataclass(frozen=True, slots=True)
class _Piece:
    """Part of a sentence: its words as written, said in the language (nothing for words to be kept), and the node that begins it."""

    at: Span
    said: tuple[str, ...] = ()
    node: Node | None = None


def _sentence(both: Pair, part: Span) -> str:
    """The nodes of a sentence and the words between them, in the order they stand in."""
    nodes = tuple(n for n in both.item.body if part.start <= _reach(n).start < part.end)
    if not nodes:
        return both.kept(part) if left_over(both.scene.text, part, ()) else ""
    pieces: list[_Piece] = []
    gaps = list(_gaps(both, part))
    for run in _runs(nodes):
        at = _reach(run)
        said, english = _run(both, run)
        if isinstance(run[0], Repeat):
            gaps = [g for g in gaps if not (g.start <= at.start and _TAKEN_UP.fullmatch(both.scene.text[g.start : at.start]))]
        beside = [g for g in gaps if not _between(both.scene.text, at, g)]
        colour = next((g for g in beside if g.start >= at.end and _COLOUR.fullmatch(both.scene.text[g.start : g.end])), None)
        if colour is not None and isinstance(run[0], Mark) and run[0].what == "fasten-off":
            gaps.remove(colour)
            said = (both.voice.say("fasten_off_colour", colour=both.scene.text[colour.start : colour.end]),)
        for gap in beside:
            note = _counts_as(both.voice, said[-1], both.scene.text[gap.start : gap.end]) if said and gap.start >= at.end else ""
            if note:
                gaps.remove(gap)
                said = (*said[:-1], note)
            elif gap in gaps and set(_WORD.findall(both.scene.text[gap.start : gap.end].lower())) <= set(_WORD.findall(english.lower())):
                gaps.remove(gap)
        pieces.append(_Piece(at, said, run[0]))
    pieces = _merged(both.scene.text, sorted([*pieces, *map(_Piece, gaps)], key=lambda p: p.at.start))
    return _joined(both.voice, [(s, p.node) for p in pieces for s in (p.said or (both.kept(p.at),))])


def _without_note(node: Node) -> Node:
    """A bracket without what it says of chains that count: that is told behind it."""
    if not isinstance(node, Repeat):
        return node
    return replace(node, nodes=tuple(n for n in node.nodes if not (isinstance(n, Mark) and n.what == "skipped-counts")))


def _counts_as(voice: LanguageVoice, said: str, note: str) -> str:
    """Words with what is said of them in brackets: "(counts as 2 dc)"; "" for another note."""
    m = _COUNTS.fullmatch(note)
    kind = voice.source.kind_of(m[2].lower()) if m else None
    return voice.say("counts_several", made=said, n=int(m[1]), stitch=voice.stitch(kind, many=True)) if m and kind else ""


def _between(text: str, a: Span, b: Span) -> bool:
    """Whether a stop stands between two parts of a sentence."""
    first, second = sorted((a, b), key=lambda s: s.start)
    return bool(re.search(r"[,;.:]", text[first.end : second.start]))


def _merged(text: str, pieces: Sequence[_Piece]) -> list[_Piece]:
    """Words that stay take with them what no stop parts from them."""
    found: list[_Piece] = []
    for piece in pieces:
        before = found[-1] if found else None
        if before is not None and not (before.said and piece.said) and not _between(text, before.at, piece.at):
            found[-1] = _Piece(Span(before.at.start, max(before.at.end, piece.at.end)), (), before.node or piece.node)
        else:
            found.append(piece)
    return found


def _run(both: Pair, run: tuple[Node, ...]) -> tuple[tuple[str, ...], str]:
    """One node with what belongs to it in words, and the same in English; no words where it has to stay as written."""
    at = _reach(run)
    heard = both.voice.heard
    before = len(heard.kept), dict(heard.used)
    whole = both.scene.text[at.start : at.end]
    if _COUNTS.search(whole):
        run = tuple(_without_note(n) for n in run)
    said = words(both.scene, run)
    english = " ".join(words(both.english, run))
    text = _TO_END.sub("", whole)
    note = _COUNTS.search(text) if said and not isinstance(run[0], Chain) else None
    if note and (noted := _counts_as(both.voice, said[-1], note[0])):
        said[-1], text = noted, text[: note.start()]
    if at.end > at.start and (has_words_unread(run) or says_less(text, english) or not isinstance(run[0], Chain) and _lost(text, english)):
        del heard.kept[before[0] :]
        heard.used.clear()
        heard.used.update(before[1])
        return (), ""
    return tuple(said), english


def _lost(text: str, english: str) -> bool:
    """Whether the words as written have one, or a number, that the English frames would not say."""
    said = set(_WORD.findall(english.lower()))
    known = _trade_words()
    for word in _WORD.findall(_BLANK.sub(" ", text).lower()):
        if word not in said and (word.isdigit() and word != "1" or not word.isdigit() and word not in known):
            return not (word.isdigit() and _said_in_letters(word, english))
    return bool(re.search(r"\b[B-Z]\b", text)) and not set(re.findall(r"\b[B-Z]\b", text)) <= set(re.findall(r"\b[B-Z]\b", english))


def _said_in_letters(number: str, english: str) -> bool:
    """Whether a number stands in the frames as a word ("once", "twice", "every other")."""
    return number == "2" and ("twice" in english or "other" in english)


@cache
def _trade_words() -> frozenset[str]:
    """Words of stitches and places, which the tree always holds, and words that say nothing."""
    return frozenset(w for s in spellings() for w in s.lower().split()) | quiet_words() | _NUMBERS


def _gaps(both: Pair, part: Span) -> Iterator[Span]:
    """Runs of words in a sentence that no node holds and that say something."""
    inside = [s for n in both.item.body for s in spans(n) if s.start < part.end and s.end > part.start]
    held = sorted((max(s.start, part.start), min(s.end, part.end)) for s in inside)
    at = part.start
    for start, end in [*held, (part.end, part.end)]:
        if start > at:
            gap = _trimmed(both.scene.text, at, start)
            if gap.end > gap.start and left_over(both.scene.text, part, both.item.body) and left_over(both.scene.text, gap, both.item.body):
                yield gap
        at = max(at, end)


def _trimmed(text: str, start: int, end: int) -> Span:
    while start < end and text[start] in _TRIM:
        start += 1
    while end > start and text[end - 1] in _TRIM:
        end -= 1
    return Span(start, end)


def _reach(nodes: Node | Sequence[Node]) -> Span:
    """From where the words of nodes begin to where they end."""
    found = list(spans(tuple(nodes) if isinstance(nodes, Sequence) else nodes))
    return Span(min((s.start for s in found), default=-1), max((s.end for s in found), default=-1))


def _runs(nodes: Sequence[Node]) -> Iterator[tuple[Node, ...]]:
    """Each node with those that belong to it."""
    i = 0
    while i < len(nodes):
        take = 1
        while i + take < len(nodes) and isinstance(nodes[i + take], (Evenly, Define)):
            take += 1
        yield tuple(nodes[i : i + take])
        i += take


def _body(both: Pair, nodes: Sequence[Node]) -> str:
    return _joined(both.voice, [(said, run[0]) for run in _runs(nodes) for said in _run(both, run)[0] or (both.kept(_reach(run)),)])


def _joined(voice: LanguageVoice, found: Sequence[tuple[str, Node | None]]) -> str:
    """Words with the stops that the trade puts between them."""
    out = ""
    for said, node in found:
        if not out:
            out = said
        elif isinstance(node, Join) or isinstance(node, Mark) and node.what == "no-join":
            out += voice.say("join_sep") + said
        elif isinstance(node, Mark) and node.what in _OWN_SENTENCE:
            out += voice.say("sentence_end") + " " + capital(said)
        else:
            out += voice.say("sep") + said
    return out
