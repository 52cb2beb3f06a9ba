"""A publication as data for the template. All words of a pattern go this way: none ever becomes part of a template's source."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from loopwright.publishing.document import Block, Facts, Figure, Instructions, Listing, Paragraph, Part, Publication, Table
from loopwright.publishing.pages.drawings import for_print
from loopwright.publishing.pages.faces import WORDS, WORKED, Faces
from loopwright.publishing.pages.figures import ACROSS_MM, Placed, grouped, placed
from loopwright.publishing.pages.ink import colours
from loopwright.publishing.pages.rasters import Rasters
from loopwright.publishing.pages.rows import Rows
from loopwright.publishing.pages.sheet import NOTES_MM, POINT_MM, Sheet, column_mm, sheet_of
from loopwright.publishing.pages.signs import plain
from loopwright.publishing.pages.tables import laid
from loopwright.publishing.pages.texts import pieces

_DATE = re.compile(r"(?P<year>\d{4})-(?P<month>0[1-9]|1[0-2])-(?P<day>0[1-9]|[12]\d|3[01])(?!\d)")
_TAG = re.compile(r"(?P<lang>[a-z]{2,3})(?:-(?P<region>[A-Z]{2}))?$")
_HEAD_PT = 8.0  # heads of columns are set a little larger, in a face that runs a little narrower
_SHORT = 900  # letters: a part that is kept on one page
_WORDED = ("tick", "notes-of-mine", "your-column", "size", "sizes", "draft", "in-words", "web-contents", "film-of")
Files = dict[str, bytes]


class Laying:
    """One publication on its way into data: gathers the files of its pictures."""

    def __init__(self, publication: Publication, faces: Faces, rasters: Rasters) -> None:
        self.publication = publication
        self.faces = faces
        self.rasters = rasters
        self.sheet: Sheet = sheet_of(publication)
        self.files: Files = {}
        self.drawings: dict[str, str] = {}  # names of pictures by the file that they are in
        self.rows = Rows(publication, self.sheet, faces)

    def data(self) -> dict[str, Any]:
        """Everything that the template needs, and the pictures as files under names of ours."""
        return {**self._about(), **self._looks(), "parts": [self._part(part) for part in self.publication.parts]}

    def _about(self) -> dict[str, Any]:
        """What the document is."""
        p = self.publication
        return {
            "title": plain(p.title), "description": plain(p.description), "author": plain(p.author), "date": _date(p.date),
            "language": _tag(p.language), "own": _tag(p.own_language),
            "translated": p.language.split("-")[0] != p.own_language.split("-")[0],
            "sizes": [plain(s) for s in p.sizes], "of_one": len(p.sizes) == 1 and p.edition.size is None,
            "draft": plain(p.draft), "foot": [plain(x) for x in (p.version, p.date, p.corrections)], "version": _version(p),
            "page": _page_words(p.phrases.get("page-of", "{page} / {pages}")),
            "phrases": {key: plain(p.phrases.get(key, "")) for key in _WORDED},
        }

    def _looks(self) -> dict[str, Any]:
        """How its pages look. Heads are in our own display type, or all in hers."""
        sheet, edition = self.sheet, self.publication.edition
        family = self.faces.family(edition.typeface)
        words = [family] if family == WORDS else [family, WORDS]
        return {
            "form": sheet.form, "paper": sheet.paper, "page_mm": [sheet.width_mm, sheet.height_mm],
            "margins_mm": [sheet.side_mm, sheet.top_mm, sheet.bottom_mm], "across_mm": list(ACROSS_MM),
            "words_pt": sheet.words_pt, "column_mm": column_mm(len(self.publication.sizes)), "notes_mm": NOTES_MM, "turned": self._turned(),
            "section_per_page": edition.section_per_page, "ink_saving": edition.ink_saving,
            "colours": colours(edition, "far" if sheet.form == "far" else "columns"),
            "fonts": {"words": words, "worked": [WORKED, WORDS], "heads": [WORKED, WORDS] if family == WORDS else words},
        }

    def _turned(self) -> bool:
        """Whether names of sizes must stand upright to fit their columns."""
        room_pt = (column_mm(len(self.publication.sizes)) - 1.0) / POINT_MM
        return any(self.faces.width_em(word) * _HEAD_PT > room_pt for s in self.publication.sizes for word in plain(s).split())

    def _part(self, part: Part) -> dict[str, Any]:
        blocks = list(self._blocks(part.blocks))
        words = sum(len(str(b)) for b in blocks if b["kind"] in ("paragraph", "listing", "facts"))
        short = words < _SHORT and all(b["kind"] in ("paragraph", "listing", "facts") for b in blocks)
        if part.key == "schematic" and self.sheet.form == "far":
            _tell(blocks, part.blocks)
        return {"key": part.key, "heading": plain(part.heading), "blocks": blocks, "short": short}

    def _blocks(self, blocks: Iterable[Block]) -> Iterator[dict[str, Any]]:
        """Blocks in order; neighbouring figures become lines of figures."""
        held: list[Placed] = []
        for block in blocks:
            if isinstance(block, Figure) and not block.cover:
                held.append(placed(block, self.sheet, self.faces, first=not held))
                continue
            yield from self._figures(held)
            held = []
            yield self._block(block)
        yield from self._figures(held)

    def _figures(self, held: list[Placed]) -> Iterator[dict[str, Any]]:
        for line in grouped(held, self.sheet):
            yield {"kind": "figures", "across": line[0].across, "figures": [self._filed(f) for f in line]}

    def _block(self, block: Block) -> dict[str, Any]:
        if isinstance(block, Paragraph):
            return {"kind": "paragraph", "text": pieces(block.text), "own": block.own, "heading": plain(block.heading)}
        if isinstance(block, Listing):
            return {"kind": "listing", "items": [pieces(i) for i in block.items], "ordered": block.ordered, "own": block.own}
        if isinstance(block, Facts):
            return {"kind": "facts", "pairs": [[plain(n), pieces(t)] for n, t in block.pairs], "close": block.close}
        if isinstance(block, Table):
            return laid(block, self.sheet, self.faces)
        if isinstance(block, Instructions):
            figures = [placed(f, self.sheet, self.faces) for f in block.figures]
            lines = [[self._filed(f) for f in line] for line in grouped(figures, self.sheet)]
            return {**self.rows.section(block), "figures": lines}
        return self._filed(placed(block, self.sheet, self.faces)) | {"kind": "cover"}

    def _filed(self, found: Placed) -> dict[str, Any]:
        """A figure as data, its picture among the files."""
        picture = found.figure.picture
        if picture.kind != "svg":
            return replace(found, file=f"/{self.rasters.name(picture, found.width_mm)}").data
        file = f"picture-{len(self.files) + 1}.svg"
        self.drawings[file] = picture.name
        ink_only = self.sheet.form == "far" or self.publication.edition.ink_saving
        self.files[file] = for_print(picture.data, ink_only=ink_only, grown=found.grown)
        return replace(found, file=file).data


def _tell(laid_out: list[dict[str, Any]], blocks: Iterable[Block]) -> None:
    """Gives pictures their description in words, line by line: sentences of their own are easier to find one's place in."""
    told = iter([b.description for b in blocks if isinstance(b, Figure)])
    for line in laid_out:
        for figure in line.get("figures", ()):
            figure["told"] = figure["alt"]
            figure["description"] = [pieces(s) for s in re.split(r"\n|(?<=[A-Za-z)]\.) (?=[A-Z])", next(told, "")) if s]


def _tag(tag: str) -> dict[str, str | None]:
    m = _TAG.match(tag)
    return {"lang": m["lang"], "region": m["region"]} if m else {"lang": "en", "region": None}


def _date(text: str) -> list[int] | None:
    m = _DATE.search(text)
    if m is None or (int(m["month"]) == 2 and int(m["day"]) > 28) or (int(m["month"]) in (4, 6, 9, 11) and m["day"] == "31"):
        return None
    return [int(m["year"]), int(m["month"]), int(m["day"])]


def _page_words(frame: str) -> list[str]:
    """The words before, between and after the two numbers of "page 3 of 7"."""
    before, _, rest = plain(frame).partition("{page}")
    between, _, after = rest.partition("{pages}")
    return [before, between, after]


def _version(p: Publication) -> str:
    """The version as the part about the pattern says it; "" where none is told."""
    part = next((x for x in p.parts if x.key == "version"), None)
    said = [b.text for b in (part.blocks if part else ()) if isinstance(b, Paragraph)]
    return next((plain(str(t[0])) for t in said if p.version and t and p.version in str(t[0])), p.version)
