"""The book as a file: package, contents, style, fonts, and the archive around them, the same bytes every time.

EPUB 3.3 (W3C Recommendation of 2023); names of accessibility metadata from the Schema.org Accessibility Properties for Discoverability
vocabulary (W3C). No conformance is claimed: that needs a person who has evaluated the book.
"""

from __future__ import annotations

import io
import re
import uuid
import zipfile
from collections.abc import Iterator, Sequence
from importlib.resources import files

from loopwright.publishing.document import Figure, Instructions, Part, Publication
from loopwright.publishing.epub.chapters import Chapter, Chapters, Held, document, part_headings
from loopwright.publishing.marked import Markup, el, void

_FONTS = ("AtkinsonHyperlegibleNext_400Regular", "AtkinsonHyperlegibleNext_700Bold", "Besley_500Medium")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")
_NO_DATE = "2000-01-01"
_STORED = ("image/jpeg", "font/woff2")
_CONTAINER = """<?xml version="1.0" encoding="utf-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="OEBPS/package.opf" media-type="application/oebps-package+xml"/></rootfiles>
</container>
"""


def epub(publication: Publication) -> bytes:
    """The document as a book, with fonts and pictures in it; the same bytes for the same document."""
    making = Chapters(publication)
    chapters = list(making.made())
    shipped = files("loopwright.publishing")
    held = [
        Held("style.css", "text/css", shipped.joinpath("epub", "style.css").read_bytes()),
        *(Held(f"fonts/{n}.woff2", "font/woff2", shipped.joinpath("fonts", f"{n}.woff2").read_bytes()) for n in _FONTS),
        *making.pictures,
    ]
    nav = document(publication, publication.phrases["web-contents"], *_nav(publication, chapters))
    package = _package(publication, chapters, held, making.cover)
    written = [Held("package.opf", "", package.encode()), Held("nav.xhtml", "", nav.encode())]
    written += [Held(c.name, "", c.content.encode()) for c in chapters]
    return _archive([*written, *held])


def _archive(held: Sequence[Held]) -> bytes:
    """The files in a zip archive, the media type first and not packed, all of one date."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as archive:
        _put(archive, "mimetype", b"application/epub+zip", packed=False)
        _put(archive, "META-INF/container.xml", _CONTAINER.encode())
        for file in held:
            _put(archive, f"OEBPS/{file.name}", file.data, packed=file.kind not in _STORED)
    return made.getvalue()


def _put(archive: zipfile.ZipFile, name: str, data: bytes, *, packed: bool = True) -> None:
    entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
    entry.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
    entry.create_system, entry.external_attr = 3, 0o644 << 16
    archive.writestr(entry, data)


def _nav(publication: Publication, chapters: list[Chapter]) -> Iterator[Markup]:
    items = []
    for heading, under in part_headings(chapters):
        links = [el("li", el("a", c.heading, href=c.name)) for c in under]
        items.append(el("li", el("a", heading, href=under[0].name), el("ol", *links)) if heading else links[0])
    name = publication.phrases["web-contents"]
    yield el("nav", el("h1", name), el("ol", *items), epub__type="toc", role="doc-toc", id="toc")
    first = next((c for c in chapters if c.under), chapters[0])
    marks = [el("a", name, href="#toc", epub__type="toc"), el("a", first.under or first.heading, href=first.name, epub__type="bodymatter")]
    yield el("nav", el("ol", *(el("li", mark) for mark in marks)), epub__type="landmarks", hidden=True)


def _package(publication: Publication, chapters: list[Chapter], held: list[Held], cover: str) -> str:
    items = [_item("nav", "nav.xhtml", "application/xhtml+xml", "nav")]
    items += [_item(f"c{i}", c.name, "application/xhtml+xml") for i, c in enumerate(chapters)]
    items += [_item(f"f{i}", f.name, f.kind, "cover-image" if f.name == cover else None) for i, f in enumerate(held)]
    spine = [void("itemref", xml=True, idref=ident) for ident in ("c0", "nav", *(f"c{i}" for i in range(1, len(chapters))))]
    metadata = el("metadata", *_metadata(publication), xmlns__dc="http://purl.org/dc/elements/1.1/")
    whole = el(
        "package", metadata, el("manifest", *items), el("spine", *spine),
        xmlns="http://www.idpf.org/2007/opf", version="3.0", unique_identifier="book", xml__lang=publication.language,
    )
    return f'<?xml version="1.0" encoding="utf-8"?>\n{whole}\n'


def _item(ident: str, href: str, kind: str, properties: str | None = None) -> Markup:
    return void("item", xml=True, id=ident, href=href, media_type=kind, properties=properties)


def _metadata(publication: Publication) -> Iterator[Markup]:
    date = publication.date if _DATE.fullmatch(publication.date) else ""
    yield el("dc:identifier", f"urn:uuid:{_ident(publication)}", id="book")
    yield el("dc:title", publication.title)
    for language in dict.fromkeys((publication.language, publication.own_language)):
        yield el("dc:language", language)
    for name, said in (("creator", publication.author), ("description", publication.description), ("date", date)):
        if said:
            yield el(f"dc:{name}", said)
    yield el("meta", f"{date or _NO_DATE}T00:00:00Z", property="dcterms:modified")
    for name, said in _accessible(publication):
        yield el("meta", said, property=f"schema:{name}")


def _ident(publication: Publication) -> uuid.UUID:
    """The same for every making of one edition of one version, other for any other."""
    said = (publication.title, publication.version, publication.date, publication.language, publication.terms, repr(publication.edition))
    return uuid.uuid5(uuid.NAMESPACE_URL, "\n".join(said))


def _accessible(publication: Publication) -> Iterator[tuple[str, str]]:
    """What the book offers, as far as it does: no picture, no description; no description, no claim of one."""
    pictures = [f for p in publication.parts for f in _figures(p)]
    yield "accessMode", "textual"
    if pictures:
        yield "accessMode", "visual"
    yield "accessModeSufficient", "textual"
    features = ["displayTransformability", "readingOrder", "structuralNavigation", "tableOfContents"]
    if pictures and all(f.alt for f in pictures):
        features.append("alternativeText")
    if any(f.description for f in pictures):
        features.append("longDescription")
    if publication.edition.large_print:
        features.append("largePrint")
    yield from (("accessibilityFeature", f) for f in features)
    yield "accessibilityHazard", "none"
    yield "accessibilitySummary", publication.phrases["epub-summary"]


def _figures(part: Part) -> Iterator[Figure]:
    for block in part.blocks:
        if isinstance(block, Figure):
            yield block
        elif isinstance(block, Instructions):
            yield from block.figures
