"""The whole page: head with its one style and one script, the parts, and the words around them."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files

from loopwright.publishing.document import Block, Figure, Instructions, Paragraph, Part, Publication, Table
from loopwright.publishing.marked import Markup, block, el, figure_words, join, void
from loopwright.publishing.marked.blocks import own_language
from loopwright.publishing.marked.pictures import NotDrawnError, data_address, drawn
from loopwright.publishing.web.rows import MOST_COLUMNS, Rows, stations

_FACES = (
    ("Atkinson Hyperlegible Next", 400, "AtkinsonHyperlegibleNext_400Regular"),
    ("Atkinson Hyperlegible Next", 700, "AtkinsonHyperlegibleNext_700Bold"),
    ("Besley", 500, "Besley_500Medium"), ("Besley", 700, "Besley_700Bold"),
)
_COLOUR = re.compile(r"#[0-9A-Fa-f]{6}")
_FAMILY = re.compile(r"[\w -]{1,60}")
_ARROW = Markup(
    '<svg viewBox="0 0 20 20" width="20" height="20" fill="none" stroke="currentColor" stroke-width="1.7" stroke-linecap="round" '
    'stroke-linejoin="round" aria-hidden="true"><path d="M17 10H3.5M9 4.5L3.5 10L9 15.5"/></svg>'
)
_MARK = "data:image/svg+xml;base64," + base64.b64encode(
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 20"><rect width="20" height="20" fill="#F3E1A0"/>'
    b'<path d="M2 16C9 16 14 12 14 7A4 4 0 0 0 6 7C6 12 11 16 18 16" fill="none" stroke="#12262C" stroke-width="2"/></svg>'
).decode("ascii")


def html(publication: Publication) -> str:
    """One page of a document: fonts and pictures are inside it, it asks nothing of any server, and its script is not needed to read it."""
    page = _Page(publication)
    main = page.main()
    style = _style(publication, page.styles)
    script = _text("script.js")
    screen = void("meta", name="viewport", content="width=device-width, initial-scale=1")
    head = el(
        "head", void("meta", charset="utf-8"), _policy(style, script), screen,
        el("title", _title(publication)), *_described(publication), void("link", rel="icon", href=_MARK), el("style", Markup(style)),
    )
    data = el("script", Markup(page.rows.data(_key(publication))), type="application/json", id="rows-by-size")
    body = el("body", page.skip(), page.top(), main, page.foot(), data, el("script", Markup(script)), class_=_classes(publication))
    whole = el("html", head, body, lang=publication.language, class_="large" if publication.edition.large_print else None)
    return f"<!doctype html>\n{whole}\n"


@dataclass(slots=True)
class _Page:
    publication: Publication
    styles: list[str] = field(default_factory=list)
    rows: Rows = field(init=False)

    def __post_init__(self) -> None:
        self.rows = Rows(self.publication)

    def skip(self) -> Markup:
        """The first link, seen when it has the focus."""
        return el("a", self.publication.phrases["web-skip"], href="#instructions", class_="skip")

    def top(self) -> Markup:
        """Name, version and place; below them the sizes."""
        held = self.publication
        name = el("h1", held.title, lang=own_language(held, own=True))
        facts = [el("span", _sizes(held), data_is="size")] if _sizes(held) else []
        facts += [el("span", x) for x in (held.terms, held.version) if x]
        place = el("p", el("a", href="#instructions"), class_="place", role="status", hidden=True)
        switch = stations(held) if len(held.sizes) > 1 else Markup()
        return el("header", el("div", name, el("p", *facts), class_="name"), place, switch, class_="top")

    def main(self) -> Markup:
        """All parts, after the first of them the list of the others."""
        parts = [p for p in self.publication.parts if p.key != "title"]
        title = [b for p in self.publication.parts if p.key == "title" for b in p.blocks]
        return el("main", *self._draft(), self._front(title, self._contents(parts)), *(self._part(p) for p in parts), id="main")

    def foot(self) -> Markup:
        """What stands at the end of every copy."""
        held = self.publication
        said = [held.title, held.version, held.date, held.author]
        return el("footer", el("p", " · ".join(x for x in said if x)))

    def _draft(self) -> Iterator[Markup]:
        if self.publication.draft:
            yield el("p", el("strong", f"{self.publication.phrases['draft']}: "), self.publication.draft, class_="draft", role="note")

    def _front(self, title: list[Block], contents: Markup) -> Markup:
        covers = [self._figure(b) for b in title if isinstance(b, Figure)]
        words = [self._block(b, 2) for b in title if not isinstance(b, Figure)]
        return el("div", el("div", *words, class_="said"), *covers, contents, class_="front" if covers else "front plain")

    def _contents(self, parts: list[Part]) -> Markup:
        name = self.publication.phrases["web-contents"]
        items = (el("li", el("a", p.heading, href=f"#{p.key}")) for p in parts)
        return el("nav", el("ul", *items), aria_label=name, class_="contents")

    def _part(self, part: Part) -> Markup:
        blocks = [self._block(b, 3) for b in part.blocks]
        extra = [self._bar()] if part.key == "instructions" else []
        heading = el("h2", part.heading, id=f"at-{part.key}")
        return el("section", heading, *blocks, *extra, class_=f"part {part.key}", id=part.key, aria_labelledby=f"at-{part.key}")

    def _bar(self) -> Markup:
        """What the script shows while one works: the row at hand done, one back, and what is kept."""
        say = self.publication.phrases
        back = el("button", _ARROW, type="button", class_="act", aria_label=say["web-back"], data_do="back")
        done = el("button", "", type="button", class_="act ink", data_do="done")
        clear = el("button", say["web-untick"], type="button", class_="act", data_do="clear")
        kept = el("div", el("p", say["web-kept"], data_is="kept"), clear, class_="kept", hidden=True)
        return join([kept, el("div", back, done, class_="bar", hidden=True)])

    def _block(self, held: Block, level: int) -> Markup:
        if isinstance(held, Figure):
            return self._figure(held)
        if isinstance(held, Instructions):
            return self.rows.section(held, join(self._figure(f) for f in held.figures), level)
        made = block(held, self.publication, level)
        if isinstance(held, Table):
            note = el("p", held.note, class_="note") if held.note else ""
            return join([el("div", made, class_="wide", tabindex="0", role="group", aria_label=held.caption), note])
        return el("div", made, class_="own") if isinstance(held, Paragraph) and held.own else made

    def _figure(self, held: Figure) -> Markup:
        caption = el("figcaption", held.caption) if held.caption else ""
        words = figure_words(held, self.publication)
        found = _drawing(held)
        if found is None:
            image = void("img", src=data_address(held.picture, cover=held.cover), alt=held.alt, loading=None if held.cover else "lazy")
            return el("div", el("figure", image, caption), words, class_="cover" if held.cover else None)
        picture, style = found
        if style not in self.styles:
            self.styles.append(style)
        larger = el("label", void("input", type="checkbox"), self.publication.phrases["web-larger"], class_="larger")
        box = el("div", picture, class_="drawn", tabindex="0", role="group", aria_label=held.caption or held.alt.partition(". ")[0])
        return el("div", el("figure", larger, box, caption), words)


def _drawing(held: Figure) -> tuple[Markup, str] | None:
    """A drawing that can stand in the page, and its style sheet; None for a photograph, and for a drawing that cannot."""
    if held.picture.kind != "svg":
        return None
    try:
        return drawn(held.picture, held.alt)
    except NotDrawnError:
        return None


def _policy(style: str, script: str) -> Markup:
    """Nothing may be fetched, and nothing may run but the one script of the page."""
    said = (
        f"default-src 'none'; style-src '{_hash(style)}'; script-src '{_hash(script)}'; img-src data:; font-src data:; base-uri 'none'; "
        "form-action 'none'"
    )
    return void("meta", http_equiv="Content-Security-Policy", content=said)


def _hash(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode('ascii')}"


def _described(publication: Publication) -> Iterator[Markup]:
    for name, content in (("description", publication.description), ("author", publication.author), ("generator", "Loopwright")):
        if content:
            yield void("meta", name=name, content=content)


def _title(publication: Publication) -> str:
    return ", ".join(x for x in (publication.title, _sizes(publication)) if x)


def _sizes(publication: Publication) -> str:
    if len(publication.sizes) > 1:
        return publication.phrases["all-sizes"]
    return publication.sizes[0] if publication.edition.size is not None else ""


def _key(publication: Publication) -> str:
    """Under what ticks are kept: the design, its version and its terms."""
    return f"loopwright|{publication.title}|{publication.version}|{publication.language}"


def _classes(publication: Publication) -> str:
    found = ["left" if publication.edition.left_handed else "", "spare" if publication.edition.ink_saving else ""]
    several = 1 < len(publication.sizes) <= MOST_COLUMNS
    return " ".join(x for x in (*found, "unrolled" if several else "", "several" if len(publication.sizes) > 1 else "one") if x)


def _style(publication: Publication, drawings: list[str]) -> str:
    edition = publication.edition
    own = [f"--sizes:{len(publication.sizes)}"]
    if _COLOUR.fullmatch(edition.accent):
        own.append(f"--accent:{edition.accent}")
    if _FAMILY.fullmatch(edition.typeface):
        own.append(f'--written:"{edition.typeface}","Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif')
    return "".join((_faces(), _text("style.css"), f":root{{{';'.join(own)}}}", *drawings))


@cache
def _faces() -> str:
    found = []
    for family, weight, name in _FACES:
        data = base64.b64encode(files("loopwright.publishing").joinpath("fonts", f"{name}.woff2").read_bytes()).decode("ascii")
        source = f"url(data:font/woff2;base64,{data})"
        found.append(f'@font-face{{font-family:"{family}";font-weight:{weight};font-display:swap;src:{source} format("woff2")}}')
    return "".join(found)


@cache
def _text(name: str) -> str:
    return files("loopwright.publishing").joinpath("web", name).read_text(encoding="utf-8")
