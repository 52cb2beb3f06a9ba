"""A whole pattern in words, out of its tree."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Chain, Document, Either, Group, HeadLine, Item, Join, Mark, Node, Prose, Ring, Row, RowOrder, Section
from loopwright.wording.abbreviations import kept_names, own_names, told_again
from loopwright.wording.as_written import translate
from loopwright.wording.choices import chooser, only_kind, repeats_of
from loopwright.wording.covered import numbers
from loopwright.wording.heading import heading, heading_end
from loopwright.wording.labels import only
from loopwright.wording.rows import row
from loopwright.wording.said import ProseWords, RowWords, Said, SectionWords
from loopwright.wording.stitches import Scene
from loopwright.wording.voice import Voice

_FOR_SIZES = re.compile(  # said again before the rows that it is told for
    r"\(?(?:for\s+)?(?:the\s+)?(?:all\s+sizes|sizes?\s+[^.:;()]{1,60}\s+only|[^.:;()]{1,60}\s+sizes?\s+only)\)?\s*[:.—–-]?", re.IGNORECASE)
_MAKE = re.compile(r"[ \t]*(\(make [^\n]*\))[ \t]*:?[ \t]*$", re.IGNORECASE | re.MULTILINE)
_MADE = re.compile(r"(.+?)\s*\(make (\d[^\n]*)\)", re.IGNORECASE)
_BLANK = re.compile(r"\{([^{}\n]+)\}")


def write(
    document: Document, report: Report | None = None, *, terms: str, size: int | None = None, full_words: bool = False,
    spelled_out: bool = False, measurements: Mapping[str, Sequence[float | None]] | None = None, language: str = "en",
    translations: Mapping[str, str] | None = None,
) -> str:
    """The pattern as the trade writes it.

    `terms` is us, uk or old; `size` an index for one size alone, None for all in brackets; `full_words` writes stitches
    out; `spelled_out` writes repeats out where their number is known. `measurements`: millimetres per size by name. `language`:
    a code ("de"); what has no words in it stays in English, marked, unless `translations` has it (see wording/translations.py).
    Raises ValueError for terms or a language that there are none of, IndexError for a size that there is none of.
    """
    voice = voice_for(
        document, terms, size, full_words=full_words, spelled_out=spelled_out, language=language, translations=translations,
    )
    return write_in(voice, document, report, measurements)


def write_in(
    voice: Voice, document: Document, report: Report | None = None, measurements: Mapping[str, Sequence[float | None]] | None = None,
) -> str:
    """As `write`, in a voice of the caller's: one of another language has heard afterwards what had to stay as it was."""
    parts = instructions(voice, document, report)
    first = next((i for i, part in enumerate(parts) if isinstance(part, RowWords)), 0)
    if first and isinstance(parts[first - 1], ProseWords) and _parted(document, parts[first - 1].item, parts[first].item):
        parts = (*parts[:first], ProseWords("", parts[first].item), *parts[first:])  # notes end at a blank line
    body = "\n".join(part.text for part in parts).strip("\n") + "\n"
    return heading(voice, document, report, body, measurements).text + "\n" + body


def _parted(document: Document, before: int, after: int) -> bool:
    """Whether a blank line stands between two items as written."""
    a, b = document.items[before].span, document.items[after].span
    return b.end > 0 and "\n\n" in re.sub(r"[ \t]", "", document.text[a.end : b.start])


def voice_for(
    document: Document, terms: str, size: int | None = None, *, full_words: bool = False, spelled_out: bool = False, language: str = "en",
    translations: Mapping[str, str] | None = None,
) -> Voice:
    """The voice for a pattern's words. `language` other than "en": see wording/languages; `terms` matter for English alone.

    Raises IndexError for a size that there is none of, ValueError for a language that there is none of.
    """
    sizes = max(1, len(document.sizes))
    if size is not None and not 0 <= size < sizes:
        raise IndexError(f"there is no size {size}: the pattern has {sizes}")
    voice = Voice(
        terms, document.terms, sizes, size, full_words, spelled_out,
        _blanks(document), own_names(document), kept_names(document), *_told(document),
    )
    if language == "en":
        return voice
    from loopwright.wording.languages.voice import language_voice  # noqa: PLC0415 - Fluent and Babel only for other languages

    return language_voice(voice, language, dict(translations or {}), document.language)


def instructions(voice: Voice, document: Document, report: Report | None) -> tuple[Said, ...]:
    """Everything from the first section or row on, part by part."""
    return _Body(voice, document, report).parts()


@dataclass(slots=True)
class _Body:
    """Everything from the first section or row on."""

    voice: Voice
    document: Document
    report: Report | None
    said: list[Said] = field(default_factory=list)
    ring: str = "magic_ring"
    pending: str = ""
    lead: int | None = None
    sizes: tuple[int, ...] | None = None

    def parts(self) -> tuple[Said, ...]:
        worked: dict[int, list[RowReport]] = {}
        for r in self.report.rows if self.report else ():
            worked.setdefault(r.item, []).append(r)
        again = told_again(self.voice, self.document)
        for index in range(heading_end(self.document), len(self.document.items)):
            if index in again:
                continue
            self._item(self.document.items[index], index, worked.get(index, []))
        return tuple(self.said)

    def _item(self, item: Item, index: int, worked: Sequence[RowReport]) -> None:
        if isinstance(item, Section):
            self._section(item, index)
        elif isinstance(item, Row):
            self._row(item, index, worked)
        elif isinstance(item, Prose) and not (len(self.document.sizes) > 1 and _FOR_SIZES.fullmatch(item.text.strip())):
            self.said.append(ProseWords(self.voice.prose(translate(self.voice, item.text)), index))

    def _section(self, item: Section, index: int) -> None:
        """A heading of its own, or the name before a row on the same line ("First tie: Ch 40, …")."""
        self.voice.enter(item.title)
        title = self._title(item)
        following = self.document.items[index + 1] if index + 1 < len(self.document.items) else None
        if isinstance(following, Row) and following.label is None and item.span.end:
            between = self.document.text[item.span.end : following.span.start]
            if "\n" not in between:
                self.pending = f"{title}: "
                return
        self.said.append(SectionWords(title, index))
        self.ring, self.sizes, self.lead = "magic_ring", None, None

    def _title(self, item: Section) -> str:
        """A section's name, with how often it is made."""
        text = self.document.text
        said = text[item.span.start : item.span.end].strip().rstrip(": ")
        copies = _MAKE.match(text, item.span.end) if item.span.end else None
        if copies and "(" not in said:
            said = f"{said} {copies[1]}"
        if item.copies > 1 and not said:
            return self.voice.say("copies", title=self.voice.name(item.title), n=item.copies)
        return self._named(translate(self.voice, said or item.title))

    def _named(self, title: str) -> str:
        """A title with how often it is made, as the language says it."""
        made = _MADE.fullmatch(title) if self.voice.language != "en" else None
        return self.voice.say("copies", title=self.voice.name(made[1]), n=made[2]) if made else self.voice.name(title)

    def _row(self, item: Row, index: int, worked: Sequence[RowReport]) -> None:
        scene = self._scene(item, worked)
        scene.floor = max((i.span.end for i in self.document.items[max(0, index - 1) : index]), default=0)
        said: RowWords | None = row(scene, item, worked)
        if _stitches(item.body):
            self.ring = "magic_ring"
        elif any(isinstance(n, Ring) for n in item.body):
            self.ring = "ring"
        if item.order is None:
            self.lead = scene.lead if scene.lead or _stitches(item.body) else self.lead
        if said is not None:
            self.said.append(replace(said, item=index, lead=self._only(item) + self.pending))
        self.pending = ""

    def _only(self, item: Row) -> str:
        """As in "For size large only: " where sizes change from one row to the next."""
        names = [self.voice.name(s) for s in self.document.sizes]
        wanted = only(self.voice, item, names)
        if wanted == self.sizes:
            return ""
        self.sizes = wanted
        if wanted is None:
            return self.voice.head("everyone")
        said = self.voice.head("list_sep").join(names[s] for s in wanted)
        return self.voice.head("only_one" if len(wanted) == 1 else "only", sizes=said)

    def _scene(self, item: Row, worked: Sequence[RowReport]) -> Scene:
        voice = self.voice
        rounds = item.label is not None and item.label.kind == "rnd" or any(isinstance(n, Join) for n in item.body)
        text = self.document.text[item.span.start : item.span.end].lower()
        rounds = rounds or item.label is None and bool(self.document.in_rounds) or "around" in text.split()
        return Scene(
            voice, voice.say("around" if rounds else "across"), self.ring, self.document.text, partial(translate, voice),
            chooser(self.report, voice.size), repeats_of(item, worked, voice, self.report), self.ring == "ring",
            kind=only_kind(worked), lead=_lead(voice, item.body), below=self.lead,
        )


def _lead(voice: Voice, body: tuple[Node, ...]) -> int | None:
    """How long the chain is that a row begins with; None where sizes differ or it begins otherwise."""
    for node in body:
        if isinstance(node, Mark):
            continue
        if isinstance(node, Group):
            return _lead(voice, node.nodes)
        if isinstance(node, Either):
            return _lead(voice, node.readings[0][1])
        return voice.single(node.n) if isinstance(node, Chain) else None
    return None


def _stitches(nodes: tuple[Node, ...]) -> bool:
    return any(not isinstance(n, (Ring, Mark)) and type(n).__name__ != "Chain" for n in nodes)


def _told(document: Document) -> tuple[tuple[int, ...], int]:
    """Which of the sizes named in the heading these are, and how many it names; nothing where they are all of them."""
    line = next((i.value for i in document.items if isinstance(i, HeadLine) and i.name in ("size", "sizes")), "")
    names = [n.strip() for n in re.split(r"[,;]", line) if n.strip()]
    if len(names) == len(document.sizes) or not all(s in names for s in document.sizes):
        return (), 0
    return tuple(names.index(s) for s in document.sizes), len(names)


def _blanks(document: Document) -> dict[str, tuple[int | None, ...]]:
    """Blanks that have been filled, by name: from where their numbers stand in the text."""
    found: dict[str, tuple[int | None, ...]] = {}
    text = document.text
    for item in document.items:
        for (start, end), number in numbers(item).items():
            name = _BLANK.fullmatch(text[start:end])
            if name:
                found.setdefault(" ".join(name[1].split()), number.values)
        if isinstance(item, Row):
            _unplaced(item, text, found)
    return found


def _unplaced(item: Row, text: str, found: dict[str, tuple[int | None, ...]]) -> None:
    """Numbers of labels and orders have no place of their own: one name left over means the one number left over."""
    if item.label is not None and item.label.last is not None and item.label.last.values:
        names = _BLANK.findall(item.label.text)
        if len(names) == 1:
            found.setdefault(" ".join(names[0].split()), item.label.last.values)
    order = item.order
    if isinstance(order, RowOrder):
        told = [n for n in (order.times, order.until_sts, order.total_rows) if n is not None and n.values]
        start = item.label.span.end if item.label else item.span.start
        stop = min((c.span.start for c in item.printed if c.span.end), default=item.span.end)
        names = _BLANK.findall(text[start:stop])
        if len(names) == len(told) == 1:
            found.setdefault(" ".join(names[0].split()), told[0].values)


