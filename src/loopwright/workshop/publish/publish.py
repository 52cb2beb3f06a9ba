"""Documents of a design into a folder: which editions, each built, laid out in its format, written."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from loopwright.model.measures import Measures
from loopwright.publishing.document import Edition, Figure, Publication
from loopwright.publishing.document.build import build
from loopwright.publishing.document.covered import covered, wants_cover
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.compare.kept import keep_version
from loopwright.workshop.measure import Measured, Wanted
from loopwright.workshop.publish.beside import Beside
from loopwright.workshop.publish.editions import Asked, Job, jobs
from loopwright.workshop.publish.folder import put
from loopwright.workshop.publish.gather import Gathered, gather
from loopwright.workshop.publish.listing import KitFile, listing_files
from loopwright.workshop.publish.pictures import Drawings

if TYPE_CHECKING:
    from loopwright.publishing.pages import Pages

Told = Callable[[str, float], None]


@record
class Written:
    """A file that was written: where, in which format, for which size ("" for all), and what it is, in words."""

    path: str
    what: str
    size: str
    description: str


@record
class Published:
    """What was published, what is to be known of it, and the design as measured."""

    files: tuple[Written, ...]
    notes: tuple[str, ...]
    measured: Measured


class FaultyDesignError(Exception):
    """A design with errors, which nobody said to publish all the same. `errors`: in words with their lines."""

    def __init__(self, errors: Sequence[str]) -> None:
        super().__init__("; ".join(errors))
        self.errors = tuple(errors)


def publish(
    source: Source, wanted: Wanted, asked: Callable[[Gathered], Asked], folder: Path, *, home: Path, design: Path | None = None,
    draft: bool = False, replace_files: bool = False, progress: Told | None = None, beside: Beside | None = None,
) -> Published:
    """Publishes a design. `asked`: what is to be made, told once the design's sizes are known. `home`: where its photographs are.

    `design`: its file, beside which versions are kept; None for a text without one. `beside`: where the cover is drawn meanwhile.

    Raises FaultyDesignError for a design with errors unless `draft`, PageError for a page that cannot be set, CannotSave, GaugeError,
    NothingToPublishError.
    """
    tell = progress or (lambda _what, _share: None)
    tell("working the design", 0.0)
    found = gather(source, wanted, home, design)
    if found.pattern.errors and not draft:
        raise FaultyDesignError(found.pattern.errors)
    title = found.pattern.document.title or Path(source.name).stem
    chosen = asked(found)
    found = replace(found, pattern=replace(found.pattern, translations=chosen.translations))
    todo = jobs(chosen, title, found.pattern.sizes, found.pattern.document.terms)
    drawings = Drawings(found.measured, beside, chosen.translations)
    made = _Maker(found, drawings, tell, [Path(chosen.typeface)] if chosen.typeface else []).make(todo)
    files = {job.name: data for job, data in zip(todo, made.data, strict=True)} | made.pictures
    written = [described(folder, job, found.pattern.sizes) for job in todo]
    kit: tuple[KitFile, ...] = ()
    if chosen.package:
        kit = listing_files(found.measured, title, [(Path(w.path).name, w.description) for w in written], made.cover)
    put(folder, {**files, **{k.name: k.data for k in kit}}, replace=replace_files)
    notes = dict.fromkeys((*made.notes, *found.measured.notes))
    if design is not None and not found.pattern.errors:
        notes[f"this version is kept as {keep_version(design).name} beside the design, so that the next one can be compared with it"] = None
    tell("written", 1.0)
    written += [Written(str(folder / k.name), "listing", "", k.description) for k in kit]
    return Published(tuple(written), tuple(notes), found.measured)


@record
class _Made:
    data: tuple[bytes, ...]
    notes: tuple[str, ...]
    cover: bytes | None
    pictures: dict[str, bytes]


class _Maker:
    """Builds each edition once, however many formats it is wanted in; pages are set in threads while the next edition is built."""

    def __init__(self, found: Gathered, drawings: Drawings, tell: Told, typefaces: Sequence[Path] = ()) -> None:
        self.found = found
        self.drawings = drawings
        self.typefaces = typefaces
        self.tell = tell
        self.built: dict[Edition, Publication] = {}
        self.pages: list[Pages] = []
        self.beside: dict[str, bytes] = {}

    def make(self, todo: Sequence[Job]) -> _Made:
        """All files, in order; whatever goes wrong, nothing that was begun is left behind."""
        try:
            return self._all(todo)
        finally:
            for pages in self.pages:
                pages.close()

    def _all(self, todo: Sequence[Job]) -> _Made:
        self._build_all(todo)
        with ThreadPoolExecutor(max_workers=2) as pool:
            waiting: list[Future[bytes] | bytes] = []
            for at, job in enumerate(todo):
                self.tell(job.name, at / max(1, len(todo)))
                waiting.append(self._one(job, pool))
            data = tuple(w if isinstance(w, bytes) else w.result() for w in waiting)
        notes = [n for p in self.built.values() for n in p.reported]
        for publication in list(self.built.values())[:1] if self.pages else ():
            from loopwright.publishing.pages import reported  # noqa: PLC0415 - it is loaded by now

            notes += reported(publication)
        cover = self.drawings.drawn_cover
        return _Made(data, (*notes, *self.drawings.notes), cover.picture.data if cover is not None else None, self.beside)

    def _one(self, job: Job, pool: ThreadPoolExecutor) -> Future[bytes] | bytes:
        publication = self._built(job)
        if job.format == "pdf":
            return pool.submit(self._setter().pdf, publication)
        if job.format == "data":  # it names its pictures, so they stand beside it
            figures = (b for part in publication.parts for b in part.blocks if isinstance(b, Figure))
            self.beside |= {f"{Path(job.name).stem}-pictures/{f.picture.name}": f.picture.data for f in figures}
        return _other(publication, job, self.found.pattern.measures)

    def _build_all(self, todo: Sequence[Job]) -> None:
        """Every edition once, whatever papers it is for. The cover, which takes longest, is drawn meanwhile."""
        self.tell("charts and schematics", 0.0)
        editions = tuple(dict.fromkeys(job.edition.held for job in todo))
        photographed = any(p.cover and p.picture is not None for p in self.found.pattern.photographs)
        if not photographed and any(not (e.words_only or e.ink_saving) for e in editions):
            self.drawings.begin_cover()
        self.drawings.prepare(editions)
        self.built = {e: build(self.found.pattern, self.drawings.pictures(e), e) for e in editions}
        if any(job.format == "pdf" for job in todo):
            self._setter()
        if any(map(wants_cover, self.built.values())):
            self.tell("the cover", 0.0)
            cover = self.drawings.cover()
            self.built = {e: covered(p, cover) if cover is not None else p for e, p in self.built.items()}

    def _built(self, job: Job) -> Publication:
        return replace(self.built[job.edition.held], edition=job.edition)

    def _setter(self) -> Pages:
        if not self.pages:
            from loopwright.publishing.pages import Pages  # noqa: PLC0415 - brings the typesetter

            self.pages.append(Pages(self.typefaces))
        return self.pages[0]


def _other(publication: Publication, job: Job, measures: Sequence[Measures]) -> bytes:
    if job.format == "html":
        from loopwright.publishing.web import html  # noqa: PLC0415 - only where it is wanted

        return html(publication).encode()
    if job.format == "epub":
        from loopwright.publishing.epub import epub  # noqa: PLC0415 - the same

        return epub(publication)
    if job.format == "data":
        from loopwright.publishing.data import as_json as export  # noqa: PLC0415 - the same

        size = publication.edition.size
        return export(publication, measures if size is None else measures[size : size + 1]).encode()
    from loopwright.publishing.plain import markdown, text  # noqa: PLC0415 - the same

    return (text if job.format == "text" else markdown)(publication).encode()


_WHAT = {
    "pdf": "pages", "html": "a web page", "epub": "a book for reading devices", "text": "plain text", "markdown": "Markdown",
    "data": "data for other programs",
}


def described(folder: Path, job: Job, sizes: Sequence[str]) -> Written:
    """The file that a job makes: where it goes, and what it is, in words."""
    e = job.edition
    size = sizes[e.size] if e.size is not None else ""
    words = [_WHAT[job.format], f"size {size}" if size else "all sizes" if len(sizes) > 1 else ""]
    words.append({"us": "US terms", "uk": "UK terms", "old": "old British terms"}[e.terms] if e.language == "en" else e.language)
    words += [w for w, on in (("large print", e.large_print), ("left-handed", e.left_handed), ("ink-saving", e.ink_saving)) if on]
    words += ["words only"] * e.words_only + ([{"a4": "A4", "letter": "Letter", "phone": "phone"}[e.paper]] if job.format == "pdf" else [])
    return Written(str(folder / job.name), job.format, size, ", ".join(w for w in words if w))


def as_json(published: Published) -> dict[str, Any]:
    """The command's JSON: files as those of drawings, notes."""
    return {
        "version": 1, "title": published.measured.document.title,
        "files": [
            {"path": f.path, "what": f.what, "size": f.size or None, "section": None, "description": f.description} for f in published.files
        ],
        "notes": list(published.notes),
    }
