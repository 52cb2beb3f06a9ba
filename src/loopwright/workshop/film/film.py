"""A film's kit into a folder: plan, cards; with a log chapters, captions, links and description; with a video the cuts."""

from __future__ import annotations

import base64
from collections.abc import Callable
from importlib.resources import files as shipped
from pathlib import Path
from typing import Any

from loopwright.drawing.embedding import embed_together
from loopwright.filming.cards.card import SHAPES, Card, Shape
from loopwright.filming.overlays import overlays
from loopwright.filming.pages.camera import camera
from loopwright.filming.pages.printed import printed
from loopwright.filming.shots import Plan, plan
from loopwright.filming.table import table
from loopwright.filming.timed import Timed
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.files import output_folder
from loopwright.workshop.film.along import Along, along
from loopwright.workshop.film.drawn import drawn
from loopwright.workshop.film.gather import CannotFilm, Filmed, gather
from loopwright.workshop.film.video import Cut, Video, cut, probe
from loopwright.workshop.publish.folder import put

WIDTHS = {"16x9": 1280, "9x16": 720}
"""Pixels of the cards as files: 720 lines; the drawings beside them have every size, and in a cut they are drawn as large as the video."""
_FACES = (
    ("Atkinson Hyperlegible Next", 400, "AtkinsonHyperlegibleNext_400Regular"),
    ("Atkinson Hyperlegible Next", 700, "AtkinsonHyperlegibleNext_700Bold"),
    ("Besley", 500, "Besley_500Medium"), ("Besley", 700, "Besley_700Bold"),
)
Told = Callable[[str, float], None]


@record
class Asked:
    """What is asked for. `log`: its text, None for none. `video`: the film, None for none."""

    size: str | None
    terms: str | None = None
    language: str = "en"
    left_handed: bool = False
    log: str | None = None
    video: Path | None = None
    replace: bool = False


@record
class Made:
    """A file that was made: where, of which kind, and what it is."""

    path: str
    what: str
    description: str


@record
class Kit:
    """What was made, the plan, what is to be known, and why no cut was made ("" where it was, or none was asked for)."""

    files: tuple[Made, ...]
    plan: Plan
    notes: tuple[str, ...]
    filmed: Filmed
    not_cut: str = ""
    film: Timed | None = None


def film(source: Source, asked: Asked, folder: Path, progress: Told | None = None) -> Kit:
    """Makes the kit. Raises CannotFilm for a size, language or video that there is none of, CannotSave for what cannot be written."""
    return _Maker(source, asked, folder, progress or (lambda _what, _share: None)).make()


class _Maker:
    def __init__(self, source: Source, asked: Asked, folder: Path, tell: Told) -> None:
        self.source, self.asked, self.tell = source, asked, tell
        self.folder = output_folder(str(folder))
        self.notes: list[str] = []
        self.files: list[Made] = []

    def make(self) -> Kit:
        asked, not_cut = self.asked, ""
        self.tell("working the design", 0.0)
        filmed = gather(self.source, asked.size, terms=asked.terms, language=asked.language, left_handed=asked.left_handed)
        made = self._plan(filmed)
        video: Video | None = None
        if asked.video is not None:
            try:
                video = probe(asked.video)
            except CannotFilm as e:
                not_cut = str(e)
        self.tell("the plan", 0.1)
        self._put("", {
            "plan.html": (printed(made, faces()), "page", "the plan, to print"),
            "camera.html": (camera(made, faces()), "page", "the page that stands beside the camera"),
            "plan.csv": (table(made), "table", "the plan as a table"),
        })
        shown = self._cards(filmed, made)
        film = None
        if asked.log is not None or video is not None:
            film = self._along(filmed, made, shown, video)
        self.tell("written", 1.0)
        return Kit(tuple(self.files), made, tuple(dict.fromkeys(self.notes)), filmed, not_cut, film)

    def _plan(self, filmed: Filmed) -> Plan:
        try:
            made = plan(filmed.facts)
        except LookupError:
            raise CannotFilm(f"there are no words for a film in {self.asked.language!r}") from None
        if filmed.measured.gauge.sizes is None:
            self.notes.append("the design has no gauge: no measures and no pictures of the work; add a Gauge line")
        return made

    def _put(self, under: str, files: dict[str, tuple[str | bytes, str, str]]) -> None:
        where = self.folder / under if under else self.folder
        put(where, {n: d if isinstance(d, bytes) else d.encode() for n, (d, _, _) in files.items()}, replace=self.asked.replace)
        self.files += [Made(str(where / n), what, told) for n, (_, what, told) in files.items()]

    def _cards(self, filmed: Filmed, made: Plan) -> dict[Shape, list[Card]]:
        from loopwright.workshop.film.rasters import pngs  # noqa: PLC0415 - brings Pillow

        self.tell("the cards", 0.2)
        found = drawn(filmed, made)
        svgs = dict(zip(((c.shape, c.name) for c in found), embed_together([c.svg for c in found]), strict=True))
        by_shape: dict[Shape, list[Card]] = {s: [c for c in found if c.shape == s] for s in SHAPES}
        hand = " for the left-handed cut" if self.asked.left_handed else ""
        self.notes += [f"card {c.name}: its words are cut short, the captions have them whole" for c in by_shape["16x9"] if not c.whole]
        for shape, of_shape in by_shape.items():
            rasters = pngs(of_shape, WIDTHS)
            files: dict[str, tuple[str | bytes, str, str]] = {}
            for c, raster in zip(of_shape, rasters, strict=True):
                files[f"{c.name}.svg"] = (svgs[shape, c.name], "card", f"{c.description}, {shape}{hand}")
                files[f"{c.name}.png"] = (raster, "card", f"{c.description}, {shape}{hand}")
            self._put(f"cards-{shape}", files)
        return by_shape

    def _along(self, filmed: Filmed, made: Plan, shown: dict[Shape, list[Card]], video: Video | None) -> Timed:
        """Everything that needs times."""
        found = along(self.source, filmed, made, self.asked.log, video.length_s if video is not None else None)
        self.notes += found.notes
        self._put("", {t.name: (t.text, t.what, t.description) for t in found.texts})
        if video is not None:
            self._cuts(made, found, shown[_shape_of(video)], video)
        return found.film

    def _cuts(self, made: Plan, found: Along, shown: list[Card], video: Video) -> None:
        name, words = ("film-left-handed.mp4", "the left-handed cut: the picture mirrored, cards as they are") if made.left_handed else (
            "film-with-cards.mp4", "the film with cards, chapters and captions")
        self.tell(f"cutting {name}", 0.4)
        cut(
            Cut(video, overlays(found.film, shown), found.tracks(), found.chapters.chapters, made.left_handed, made.title),
            self.folder / name, replace=self.asked.replace,
            progress=lambda share: self.tell(f"cutting {name}", 0.4 + 0.6 * share),
        )
        self.files.append(Made(str(self.folder / name), "video", words))


def _shape_of(video: Video) -> Shape:
    return "16x9" if video.width_px >= video.height_px else "9x16"


def faces() -> str:
    """Rules that bring the type of the pages, CSS."""
    found = []
    for family, weight, name in _FACES:
        data = base64.b64encode(shipped("loopwright.publishing").joinpath("fonts", f"{name}.woff2").read_bytes()).decode("ascii")
        found.append(f'@font-face{{font-family:"{family}";font-weight:{weight};src:url(data:font/woff2;base64,{data}) format("woff2")}}')
    return "".join(found)


def as_json(kit: Kit) -> dict[str, Any]:
    """The command's JSON: files as those of drawings, the shots, the pieces, notes."""
    sections = kit.plan.sections
    return {
        "version": 1, "title": kit.plan.title, "size": kit.plan.size, "terms": kit.plan.terms, "language": kit.plan.language,
        "length_s": round(kit.plan.length_s, 1),
        "files": [
            {"path": f.path, "what": f.what, "size": kit.plan.size, "section": None, "description": f.description} for f in kit.files
        ],
        "pieces": [{"section": s.section, "label": s.label, "count": s.count, "work_s": round(s.work_s)} for s in kit.plan.swaps],
        "shots": [
            {
                "shot": s.number, "kind": s.kind, "section": sections[s.section].own if s.section >= 0 else None,
                "label": sections[s.section].rows[s.row].label if s.row >= 0 else None,
                "line": sections[s.section].rows[s.row].line if s.row >= 0 else None, "say": s.say, "show": s.show, "screen": s.screen,
                "count": s.count, "length_s": s.length_s,
            }
            for s in kit.plan.shots
        ],
        "notes": [*kit.notes, *([kit.not_cut] if kit.not_cut else [])],
    }
