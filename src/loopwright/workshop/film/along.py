"""All that needs times: the log laid along the plan, and out of it chapters, captions, description and links."""

from __future__ import annotations

import json

from loopwright.filming.captions import Captions, captions, srt, vtt
from loopwright.filming.chapters import Chapters, chapters
from loopwright.filming.log import Log, read_log
from loopwright.filming.shots import Plan, plan
from loopwright.filming.timed import Timed, timed
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.film.gather import CannotFilm, Filmed, gather
from loopwright.workshop.film.links import links
from loopwright.workshop.film.video import Track
from loopwright.workshop.listing import listing_of


@record
class Text:
    """A text file: its name, what it holds, of which kind it is, and what it is."""

    name: str
    text: str
    what: str
    description: str


@record
class Spoken:
    """Captions in one way of saying them: the tag of the language, what it is called, its cues, and the name of its files."""

    tag: str
    called: str
    name: str
    captions: Captions


@record
class Along:
    """The plan in time. `texts`: the files; `notes`: what is to be known."""

    log: Log
    film: Timed
    chapters: Chapters
    spoken: tuple[Spoken, ...]
    texts: tuple[Text, ...]
    notes: tuple[str, ...]
    language: str

    def tracks(self) -> tuple[Track, ...]:
        """The captions as tracks of a video."""
        return tuple(Track(vtt(s.captions.cues, language=s.tag), self.language, s.called) for s in self.spoken)


def along(source: Source, filmed: Filmed, made: Plan, log_text: str | None, length_s: float | None = None) -> Along:
    """Lays a log along a plan. `log_text`: None for the times of the plan; `length_s`: of the video, where there is one.

    Raises CannotFilm for a log that holds nothing that is in the plan.
    """
    log = read_log(log_text, made, length_s) if log_text is not None else Log((), ())
    notes = list(log.notes)
    if log_text is None:
        notes.append("no log was given: the times are those of the plan; give the log of the page beside the camera with --log")
    elif not log.entries:
        raise CannotFilm("the log holds nothing that is in the plan: " + "; ".join(log.notes[:3] or ("it is empty",)))
    film = timed(made, log, length_s)
    if film.left_out:
        notes.append(f"{film.left_out} shots of the plan have no room between the lines of the log: taken as not filmed")
    told = chapters(made, film)
    spoken = _spoken(source, filmed, made, film)
    notes += [*told.notes, *spoken[0].captions.notes]
    texts = (*_captions(spoken), *_written(source, filmed, made, film, told))
    return Along(log, film, told, spoken, texts, tuple(dict.fromkeys(notes)), filmed.facts.language)


def _spoken(source: Source, filmed: Filmed, made: Plan, film: Timed) -> tuple[Spoken, ...]:
    """In US and UK terms, the plan's own first, or in the language."""
    facts = filmed.facts
    if facts.language != "en":
        return (Spoken(facts.language, facts.language, f"captions-{facts.language}", captions(film)),)
    found = []
    for terms in sorted(("us", "uk"), key=lambda t: (t != facts.terms, t != "us")):
        other = None
        if terms != facts.terms:
            again = plan(gather(source, made.size if made.size != "one size" else None, terms=terms).facts)
            other = [again.shots[s.shot.number - 1].say for s in film.shots]
        tag = {"us": "en-US", "uk": "en-GB"}[terms]
        found.append(Spoken(tag, f"{terms.upper()} terms", f"captions-{terms}", captions(film, other)))
    return tuple(found)


def _captions(spoken: tuple[Spoken, ...]) -> list[Text]:
    found = []
    for s in sorted(spoken, key=lambda s: s.tag, reverse=True):
        cues = s.captions.cues
        found.append(Text(f"{s.name}.vtt", vtt(cues, language=s.tag), "captions", f"captions, {s.called}, WebVTT"))
        found.append(Text(f"{s.name}.srt", srt(cues), "captions", f"captions, {s.called}, SRT"))
    return found


def _written(source: Source, filmed: Filmed, made: Plan, film: Timed, told: Chapters) -> list[Text]:
    terms = made.terms if made.terms in ("us", "uk") else None
    listed = listing_of(filmed.measured, terms, filmed="" if made.size == "one size" else made.size, chapters=told.lines())
    asked = [f"{made.sections[s.section].title}, {s.label}: {s.say}" for s in made.shots if s.kind == "wrong"]
    under = listed.film.strip() + ("\n\nQuestions already answered\n" + "\n".join(asked) if asked else "") + "\n"
    rows = json.dumps(links(made, film, filmed.facts.document, source), ensure_ascii=False, indent=1) + "\n"
    lines = "\n".join(f"{at} {title}" for at, title in told.lines()) + "\n"
    return [
        Text("chapters.txt", lines, "chapters", "chapters, for the description"),
        Text("chapters.vtt", vtt(told.cues(), kind="chapters"), "chapters", "the chapters track, WebVTT"),
        Text("description.txt", under, "description", "the text under the film"),
        Text("links.json", rows, "links", "every row with its moment in the film"),
    ]
