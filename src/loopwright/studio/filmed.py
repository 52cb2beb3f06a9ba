"""In a process of its own: what the studio asks of a film. Plans are remembered, as the next question is mostly of the same."""

from __future__ import annotations

import json
from collections import OrderedDict
from pathlib import Path
from typing import Any

from loopwright.drawing.embedding import embed_together
from loopwright.filming.cards.card import Card, Shape
from loopwright.filming.shots import Plan
from loopwright.source import Source
from loopwright.studio.runs import packed, sentence, teller
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.film.choice import Choice
from loopwright.workshop.film.drawn import drawn
from loopwright.workshop.film.film import Asked, film
from loopwright.workshop.film.gather import CannotFilm, Filmed
from loopwright.workshop.film.kit_folder import place
from loopwright.workshop.film.planned import log_as_wire, plan_as_wire, planned
from loopwright.workshop.listen import as_log, beside, listen_to

_MOST_PLANNED = 3
_planned: OrderedDict[tuple[str, str, Choice], tuple[Filmed, Plan]] = OrderedDict()


def _plan(design: str, text: str, choice: Choice) -> tuple[Filmed, Plan]:
    """A plan, remembered, as the next question is mostly of the same one."""
    key = design, text, choice
    if key not in _planned:
        _planned[key] = planned(Source.of(text, design), choice)
    _planned.move_to_end(key)
    while len(_planned) > _MOST_PLANNED:
        _planned.popitem(last=False)
    return _planned[key]


def plan_of(design: str, text: str, choice: Choice) -> tuple[bool, Any]:
    """The plan as JSON, or why there is none."""
    try:
        return True, _json(plan_as_wire(*_plan(design, text, choice)))
    except CannotFilm as e:
        return False, _in_the_studio(str(e))


def cards_of(design: str, text: str, choice: Choice, shape: Shape) -> tuple[bool, Any]:
    """What each card is, as JSON, and their drawings, or why there are none."""
    try:
        found = drawn(*_plan(design, text, choice), (shape,))
    except CannotFilm as e:
        return False, _in_the_studio(str(e))
    return True, (_json([_card(c) for c in found]), tuple(embed_together([c.svg for c in found])))


def _card(c: Card) -> dict[str, Any]:
    return {"name": c.name, "kind": c.kind, "section": c.section, "row": c.row, "description": c.description, "whole": c.whole}


def times_of(design: str, text: str, choice: Choice, log: str) -> tuple[bool, Any]:
    """What a log gives, as JSON, or why there is no plan for it."""
    try:
        return True, _json(log_as_wire(Source.of(text, design), *_plan(design, text, choice), log))
    except CannotFilm as e:
        return False, _in_the_studio(str(e))


def kit_of(design: str, choice: Choice, log: str | None, into: str | None, held: str) -> dict[str, Any]:
    """The kit, made in this run's own folder, then put into a folder, all or none, or packed into one file."""
    made = Path(held) / "film"
    asked = Asked(choice.size or None, choice.terms or None, choice.language, choice.left_handed, log)
    try:
        found = film(open_source(design), asked, made, teller(held))
        files = [{"name": str(Path(f.path).relative_to(made)), "what": f.what, "description": f.description} for f in found.files]
        names = [f["name"] for f in files]
        if into is not None:
            place(made, names, Path(into))
        return {"files": files, "notes": list(found.notes), "packed": None if into is not None else packed(made, names)}
    except CannotFilm as e:
        return {"why_not": _in_the_studio(str(e))}
    except (CannotOpen, CannotSave) as e:
        return {"why_not": sentence(str(e))}


def heard(captions: str, name: str, terms: str | None) -> dict[str, Any]:
    """The draft of a lesson, its rows, doubts, findings, and the words beside it."""
    found = listen_to(captions, name, terms)
    return {**found.as_json(), "cues": beside(found, captions), "timed": found.draft.timed, "log": as_log(found)}


def _in_the_studio(words: str) -> str:
    """What the command says, without its options."""
    return sentence(words.replace("which size is on camera? --size NAME, one of:", "Choose the size on camera:").replace(
        ": look at it with loopwright check", ": its findings stand in Editing",
    ))


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
