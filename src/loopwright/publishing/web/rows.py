"""Sections of rows to be ticked, and what the page's script needs to show one size: every text as each size has it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from loopwright.publishing.document import Instructions, Publication, Remark, Step, in_brackets
from loopwright.publishing.marked import Markup, el, join, void
from loopwright.publishing.marked.blocks import linked, own_language, safe_address

MOST_COLUMNS = 10
"""Sizes that can stand side by side beside the words; with more, the first and last count stand for all."""
_NAME = 40


@dataclass(slots=True)
class Rows:
    """Writes rows and gathers, in the same order, what they are in each size."""

    publication: Publication
    by_size: list[object] = field(default_factory=list)

    def section(self, held: Instructions, figures: Markup, level: int) -> Markup:
        """A section under its heading, with its film and its photographs."""
        name = self.publication.phrases["film-of"]
        title = [el(f"h{level}", held.title, id=f"at-{held.ident}")] if held.title else []
        film = [el("p", self._film(held.film, f"{name}: {held.title}" if held.title else name), class_="film")] if held.film else []
        rows = [self._remark(s) if isinstance(s, Remark) else self._step(s) for s in held.steps]
        return el("section", *title, *film, el("ol", *rows, class_="rows") if rows else "", figures, class_="rows-of", id=held.ident)

    def data(self, key: str) -> str:
        """What the script reads: sizes, rows, and words of the page, as JSON that can stand inside an element."""
        phrases = self.publication.phrases
        wanted = ("tick", "all-sizes", *(k for k in phrases if k.startswith("web-")))
        said = {k.removeprefix("web-"): phrases[k] for k in wanted}
        held = {"key": key, "sizes": list(self.publication.sizes), "rows": self.by_size, "say": said}
        text = json.dumps(held, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
        return re.sub("[&<>\u2028\u2029]", lambda m: f"\\u{ord(m[0]):04x}", text)

    def _film(self, address: str, words: str) -> Markup:
        safe = safe_address(address)
        return el("a", words, href=safe) if safe else Markup()

    def _gather(self, variants: Sequence[list[object] | None]) -> int:
        """Keeps a row's texts, each once, with the one that every size has; gives the row's number."""
        kept: list[list[object]] = []
        of: list[int] = []
        for variant in variants:
            if variant is None:
                of.append(-1)
                continue
            if variant not in kept:
                kept.append(variant)
            of.append(kept.index(variant))
        self.by_size.append([kept, of] if len(kept) != 1 or -1 in of else [kept])
        return len(self.by_size) - 1

    def _remark(self, held: Remark) -> Markup:
        at = self._gather([[t] if t else None for t in held.by_size] or [None])
        lang = own_language(self.publication, own=held.own)
        return el("li", el("p", linked(in_brackets(held.text)), lang=lang, data_is="said"), class_="remark", data_row=at)

    def _step(self, held: Step) -> Markup:
        each = held.each or ((),) * len(held.by_size)
        at = self._gather([
            None if s is None else [s.lead, s.label, s.words, s.count, n, _shortest(e, n)]
            for s, n, e in zip(held.by_size, held.counts, each, strict=True)
        ])
        name = row_name(held.lead, in_brackets(held.label), in_brackets(held.words))
        tick = el("label", void("input", type="checkbox", aria_label=f"{name}: {self.publication.phrases['tick']}"), class_="tick")
        return el("li", tick, self._words(held), *self._counts(held), class_="step", id=held.ident, data_row=at)

    def _words(self, held: Step) -> Markup:
        label, count = in_brackets(held.label), in_brackets(held.count)
        parts: list[str] = [
            el("b", held.lead, data_is="lead"), el("b", f"{label}:" if label else "", data_is="label"), " " if label else "",
            el("span", in_brackets(held.words), data_is="said"), " ",
            el("span", f"({count})" if count else "", class_="count", data_is="count"),
        ]
        if held.film:
            parts += [" ", self._film(held.film, self.publication.phrases["film-of"])]
        return el("p", *parts, class_="words")

    def _counts(self, held: Step) -> Iterator[Markup]:
        """The figures on the tape, and of each size in its column; both say again what stands in the words, so they are not read aloud."""
        known = [n for n in held.counts if n is not None]
        low_high = sorted({min(known), max(known)}) if known else []
        yield el("div", *(el("span", str(n), class_="fig") for n in low_high), class_="arm", aria_hidden="true")
        if 1 < len(held.counts) <= MOST_COLUMNS and known:
            same = len(set(held.counts)) == 1
            cells = [str(known[0])] if same else ["–" if n is None else str(n) for n in held.counts]
            yield el("div", *(el("span", c, class_="fig") for c in cells), class_="across same" if same else "across", aria_hidden="true")


def _shortest(each: Sequence[int | None], last: int | None) -> int | list[int | None]:
    """How many rows there are, where all of them end alike; else the stitches of each."""
    return max(1, len(each)) if set(each) <= {last} else list(each)


def row_name(lead: str, label: str, words: str) -> str:
    """What a row is called: its label, else what stands before it, else its first words."""
    said = f"{lead}{label}".strip(" :")
    if said:
        return said
    return words.rstrip(".") if len(words) <= _NAME else words[: words.rfind(" ", 0, _NAME)] + " …"


def stations(publication: Publication) -> Markup:
    """The switch of sizes, a tape along the top: one station for all, one for each size. Shown by the script."""
    say = publication.phrases
    names = [say["all-sizes"], *publication.sizes]
    choices = (
        el(
            "label", void("input", type="radio", name="size", value=i - 1, checked=i == 0),
            el("span", name, class_="station"), el("span", "", class_="fig", data_station=i - 1, aria_hidden="true"),
        )
        for i, name in enumerate(names)
    )
    return el("fieldset", el("legend", say["choose-size"], class_="unseen"), join(choices), class_="stations", hidden=True)
