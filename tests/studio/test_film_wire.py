"""The pages know the fields that the studio sends of films and lessons, no more and no less."""

from pathlib import Path

import pytest

from tests.studio import test_wire as wire

LIB = Path(__file__).parents[2] / "frontend" / "src" / "lib"
LESSON = Path(__file__).parents[1] / "outside" / "lessons" / "bulrush_hat.vtt"
AT = "/api/film/samphire-beanie.txt"
LOG = "0:00 shot 1\n0:30 Crown\n2:40 Rnd 3 count\n4:00 Body, Rnd 1\n"


@pytest.fixture(autouse=True)
def types(monkeypatch):
    monkeypatch.setattr(wire, "TYPES", "".join((LIB / n).read_text(encoding="utf-8") for n in ("film.ts", "lesson.svelte.ts", "publishing.ts")))


def test_plans_cards_and_what_a_log_gives(open_studio):
    studio = open_studio("samphire-beanie.txt")
    child = {"size": "child"}
    plan = studio.post(f"{AT}/plan", json=child).json()
    wire.same(plan, "FilmPlan")
    wire.same(plan["shots"][0], "FilmShot")
    wire.same(plan["sections"][0]["rows"][0], "FilmRow")
    cards = studio.post(f"{AT}/cards", json=child).json()
    wire.same(cards, "FilmCards")
    wire.same(cards["cards"][0], "FilmCard")
    times = studio.post(f"{AT}/times", json={**child, "log": LOG}).json()
    wire.same(times, "FilmTimes")
    wire.same(studio.get(f"{AT}/log?size=child").json(), "KeptFilmLog")
    run = studio.post(f"{AT}/runs", json=child).json()
    wire.same(run, "Run")
    studio.delete(f"{AT}/runs/{run['id']}")


def test_lessons(open_studio):
    found = open_studio().post("/api/listen", json={"captions": LESSON.read_text(encoding="utf-8")}).json()
    known = {f.rstrip("?") for f in wire.fields("Lesson")}
    assert known <= found.keys()
    for name, one in (("Cue", found["cues"][0]), ("Doubt", found["doubts"][0])):
        wire.same(one, name)
    assert {f.rstrip("?") for f in wire.fields("LessonRow")} <= found["rows"][0].keys()
    inner = {"line", "severity", "message", "hints"}
    assert all(inner <= f.keys() for f in found["findings"])
