"""What the places ask of a design besides views: done in other processes, with a word where it cannot be done or takes too long."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.studio.desk import Desk
from loopwright.studio.shapes import shape_of
from loopwright.studio.workers import TookTooLongError, WorkFailedError
from loopwright.workshop.heard import found_in, repeated
from loopwright.workshop.live import Live
from loopwright.workshop.views import stitches, words

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
TEXT = "Teal Hat\nGauge: 17 hdc and 13 rnds = 10 cm\n\nCrown\nRnd 1: 8 hdc in magic ring. (8 hdc)\nRnd 2: 2 hdc in each st around. (17 hdc)\n"
ASKED = [
    ("POST", "/api/editing/x.txt/mended", {"text": TEXT}), ("POST", "/api/change", {"text": TEXT, "do": "gauge", "gauge": "16 hdc = 10 cm"}),
    ("POST", "/api/begin/look", {"text": TEXT}), ("POST", "/api/editing/x.txt/left", {"text": TEXT, "code": "W001", "place": "Rnd 2", "why": "so"}),
    ("GET", "/api/questions/samphire-beanie.txt?size=0", None), ("POST", "/api/publishing/samphire-beanie.txt/plan", {"formats": ["pdf"]}),
]  # fmt: skip


@pytest.fixture
def studio(open_studio):
    return open_studio("samphire-beanie.txt")


@pytest.mark.parametrize(("method", "path", "body"), ASKED)
@pytest.mark.parametrize(("error", "word"), [(TookTooLongError(), "took too long"), (WorkFailedError("it ended"), "this failed (it ended)")])
def test_work_that_is_stopped_or_fails_is_told_and_nothing_is_lost(studio, monkeypatch, method, path, body, error, word):
    async def stopped(*_given, **_named):
        raise error

    monkeypatch.setattr(Desk, "work", stopped)
    answer = studio.request(method, path, json=body)
    assert answer.status_code == 422
    assert word in answer.json()["error"].lower()
    assert "safe and saved" in answer.json()["error"]


@pytest.mark.parametrize(("method", "path", "body"), ASKED)
def test_no_text_is_worked_in_the_process_that_serves(studio, monkeypatch, method, path, body):
    def never(*_given, **_named):
        raise AssertionError("worked in the server")

    monkeypatch.setattr(Live, "see", never)
    assert studio.request(method, path, json=body).status_code == 200


def test_a_finding_is_left_with_its_reason_in_the_given_text(studio):
    told = {"text": TEXT, "code": "W001", "place": "Rnd 2", "why": " the last\n one is hidden "}
    made = studio.post("/api/editing/x.txt/left", json=told).json()["text"]
    assert "Left as it is: W001 in Rnd 2, because the last one is hidden\n" in made
    assert not [f for f in Live("x").see(made).report.findings if f.code == "W001"]
    assert "reason is needed" in studio.post("/api/editing/x.txt/left", json={**told, "why": " "}).json()["error"]


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_words_of_every_edition_come_from_the_characters_that_made_the_stitches(path):
    seen = Live(path.name).see(path.read_text(encoding="utf-8"))
    made = stitches(seen, 0)
    origins = set(zip(made["origin"], made["end"], strict=True))
    met = 0
    for terms in ("us", "uk"):
        for row in words(seen, 0, terms=terms)["rows"]:
            for a, b, start, end in row["links"]:
                assert 0 <= a < b <= len(row["text"])
                assert seen.source.line_of(start) >= (row["line"] or 0)
                met += (start, end) in origins
    assert met


def test_what_is_repeated_is_found_in_the_words_of_its_row():
    seen = Live("x").see("Ch 13.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * across, turn.\n")
    row = next(i for i in seen.document.items if getattr(i, "label", None) is not None)
    sk, sc = row.body[1].nodes[1].span, row.body[1].nodes[-1].span
    said = "Sc in 2nd ch, *ch 1, sk next ch, sc in next ch; rep from * across."
    heard = [("sk next ch", sk), ("sc in next ch", sc)]
    assert [said[a:b] for a, b, _ in found_in(said, row, heard)] == ["sk next ch", "sc in next ch"]
    a, b = repeated(said, row, heard) or (0, 0)
    assert said[a:b] == "sk next ch, sc in next ch"


@pytest.mark.parametrize(("way", "note"), [("made", ""), ("worn", "On a head of"), ("flat", "Laid flat"), ("otherwise", "")])
def test_a_hat_is_seen_as_made_as_worn_and_laid_flat(way, note):
    text = (Path(__file__).parents[2] / "designs" / "samphire-as-worked.txt").read_text(encoding="utf-8")
    header, data = shape_of(text, 0, way)
    assert header["ways"] == ["made", "worn", "flat"]
    assert note in " ".join(header["notes"])
    assert set(header["legends"]) == {"yarn", "row", "kind", "strain"}
    parts = header["parts"]
    stitches_of_it = parts["by_kind"]["length"] // 3
    assert parts["by_row"]["length"] == parts["by_strain"]["length"] == 3 * stitches_of_it
    assert max(p["at"] for p in parts.values()) < len(data)


def test_what_is_not_worn_has_no_form():
    text = (Path(__file__).parents[2] / "designs" / "lapwing-cushion.txt").read_text(encoding="utf-8")
    assert "worn" not in shape_of(text, 0)[0]["ways"]
