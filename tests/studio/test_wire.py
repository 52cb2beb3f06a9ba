"""The connection of a window: whatever comes is answered or refused with a word; the list of messages is the same everywhere."""

from __future__ import annotations

import json
import re
import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.studio import seeing
from loopwright.studio.routes import live
from loopwright.workshop import views
from loopwright.workshop.in_hand import in_hand
from loopwright.workshop.known import known
from loopwright.workshop.live import Live
from tests.studio.served import PATTERN, hear, start, write

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "studio.md").read_text(encoding="utf-8")
TYPES = "".join((ROOT / "frontend" / "src" / "lib" / n).read_text(encoding="utf-8") for n in ("wire.ts", "live.svelte.ts"))
ANSWERS = {"error", "view", "seen", "saved", "unsaved", "changed", "writer", "fault"}

scalars = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20) | st.sampled_from(
    ["text", "view", "write here", "chart", "words", "stitches", "sizes", "measures", "known", "hand", "proof", "schematic", PATTERN, "\ud800"],
)
values = st.recursive(scalars, lambda v: st.lists(v, max_size=4) | st.dictionaries(st.text(max_size=8), v, max_size=4), max_leaves=12)
KEYS = ("t", "seq", "text", "base", "gauge", "what", "size", "ask", "left_handed", "whole", "terms", "full")
near = st.fixed_dictionaries({"t": st.sampled_from(["text", "view", "write here"]) | values}, optional=dict.fromkeys(KEYS[1:], values))
asked = st.builds(
    lambda what, more: {"t": "view", "what": what, **more}, st.sampled_from(live.VIEWS[:6] + live.VIEWS[7:]),
    st.fixed_dictionaries({"size": st.integers(-5, 20) | st.none(), "ask": st.integers()}, optional=dict.fromkeys(KEYS[8:], scalars)),
)
typed = st.builds(
    lambda text, more: {"t": "text", "text": text, **more}, st.text(max_size=60) | st.just(PATTERN),
    st.fixed_dictionaries({"seq": st.integers(), "base": st.text(max_size=5)}, optional={"gauge": scalars}),
)


@pytest.fixture(scope="module")
def studio(tmp_path_factory):
    folder = tmp_path_factory.mktemp("wire")
    (folder / "sedge.txt").write_text(PATTERN)
    made = start(folder)
    yield made
    made.end()


@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
@given(messages=st.lists(values | near | asked | typed, min_size=1, max_size=5))
def test_any_message_is_answered_or_refused_with_a_word(studio, messages):
    with studio.window("sedge.txt") as window:
        hear(window, "writer")
        for message in messages:
            window.send(json.dumps(message))
            said = hear(window, *ANSWERS)
            if said["t"] in ("error", "unsaved", "fault"):
                assert said["message"]
            if said["t"] == "view":
                assert {"data", "error", "dropped"} & said.keys()
    assert studio.process.poll() is None


def test_the_newest_text_wins_and_views_of_an_outrun_text_are_dropped(studio):
    rows = "".join(f"Rnd {n}: Sc in each st around. (18 sc)\n" for n in range(4, 400))
    with studio.window("sedge.txt") as window:
        write(window, 1, PATTERN, None)
        hear(window, "seen")
        for n in range(2, 42):
            write(window, n, PATTERN + rows + " " * n, None)
        heard: list[int] = []
        while not heard or heard[-1] != 41:
            heard.append(hear(window, "seen")["seq"])
        assert heard == sorted(heard)
        assert len(heard) < 30
        for n in range(5):
            window.send(json.dumps({"t": "view", "what": "chart", "size": 0, "whole": True, "ask": n}))
        write(window, 42, PATTERN, None)
        said = [hear(window, "view") for _ in range(5)]
        assert {s["ask"] for s in said} == set(range(5))
        assert any("dropped" in s for s in said)
        window.send(json.dumps({"t": "view", "what": "words", "size": 0, "ask": 9}))
        assert hear(window, "view")["data"]["rows"]


def test_heavy_work_of_one_window_does_not_hold_up_another(studio):
    (studio.folder / "heavy.txt").write_text(PATTERN)
    rows = "".join(f"Rnd {n}: Sc in each of next {n * 7} sts, 2 sc in next st. ({n})\n" for n in range(4, 1500))
    with studio.window("heavy.txt") as heavy, studio.window("sedge.txt") as light:
        write(light, 1, PATTERN, None)
        hear(light, "seen")
        write(heavy, 1, PATTERN + rows, None)
        for n in range(2, 8):
            write(light, n, PATTERN + " " * n, None)
            assert hear(light, "seen", timeout_s=10)["seq"] == n
        write(heavy, 2, PATTERN, None)
        assert hear(heavy, "seen", "fault")["t"] in ("seen", "fault")


def test_every_view_that_may_be_asked_for_is_made_somewhere():
    assert {*seeing.VIEWS, "shape"} == set(live.VIEWS)


def fields(name: str) -> set[str]:
    """The fields of a TypeScript interface, those of what it extends with them; those that may be missing with a "?"."""
    found = re.search(rf"export interface {name}(?: extends (\w+))? \{{(.*?)\n?\}}(?=\n)", TYPES, re.DOTALL)
    assert found, name
    inner = re.sub(r"/\*.*?\*/|//.*", "", found[2], flags=re.DOTALL)
    while (flat := re.sub(r"\{[^{}]*\}|\([^()]*\)|\[[^\[\]]*\]|<[^<>]*>", "", inner)) != inner:
        inner = flat
    own = set(re.findall(r"(?:^|;)\s*(\w+\??):", inner))
    return own | (fields(found[1]) if found[1] else set())


def same(told: dict[str, Any], name: str) -> None:
    """A dictionary has just the fields of the interface; those with a "?" may be missing."""
    known = fields(name)
    must, may = {f for f in known if not f.endswith("?")}, {f.rstrip("?") for f in known}
    assert must <= told.keys() <= may, (name, sorted(must - told.keys()), sorted(told.keys() - may))


def test_the_pages_know_the_fields_that_the_studio_sends(studio):
    text = PATTERN.replace("(18 sc)", "(19 sc)") + "Fit\n{n}: rnds until piece measures 5 cm\nRnds 4-{n}: Sc in each st around.\n"
    seen = Live("sedge").see(text)
    wire = seen.as_wire()
    same({"t": "seen", "seq": 1, "revision": 1, **wire}, "Seen")
    same(wire["rows"][0], "Row")
    same(wire["findings"][0], "Finding")
    same(wire["blanks"][0], "Blank")
    fixes = [f["fix"] for f in wire["findings"] if f["fix"]]
    same(fixes[0], "Fix")
    same(fixes[0]["edits"][0], "Edit")
    same(views.stitches(seen, 0), "Stitches")
    same(views.chart(seen, 0)["charts"][0], "Chart")
    same(known(seen), "Known")
    same(in_hand(seen, 0), "InHandRows")
    same(in_hand(seen, 0)["rows"][0], "HandRow")
    same(studio.ask("/api/designs/sedge.txt").json, "Opened")
    listing = studio.ask("/api/folder").json
    same(listing, "FolderListing")
    same(listing["designs"][0], "DesignCard")


def messages_of_the_page(heading: str) -> dict[str, set[str]]:
    """The list of messages in docs/studio.md: by what they are, their fields."""
    part = PAGE.partition(f"### {heading}\n")[2].partition("\n###")[0].partition("\n## ")[0]
    rows = re.findall(r"^\| `([\w ]+)` \| (.*?) \|", part, re.MULTILINE)
    return {name: set(re.findall(r"`(\w+)\??`", told)) for name, told in rows if name != "t"}


def test_the_page_lists_every_message_with_its_fields(studio):
    out, into = messages_of_the_page("From a window"), messages_of_the_page("To a window")
    assert set(out) == {"text", "view", "write here"}
    assert set(into) == ANSWERS
    assert out["text"] == {"seq", "text", "base", "gauge"}
    assert out["view"] == {"what", "size", "ask", *live.OPTIONS}
    heard: dict[str, set[str]] = {}
    (studio.folder / "listed.txt").write_text(PATTERN)
    with studio.window("listed.txt") as window:
        base = studio.ask("/api/designs/listed.txt").json["sum"]
        write(window, 1, PATTERN + "a", base)
        window.send(json.dumps({"t": "view", "what": "words", "size": 0, "ask": 1}))
        window.send("{}")
        until = time.monotonic() + 20
        while {"writer", "saved", "seen", "error", "view"} - heard.keys() and time.monotonic() < until:
            said = hear(window, *ANSWERS)
            heard.setdefault(said.pop("t"), set()).update(said)
        (studio.folder / "listed.txt").write_text("other")
        heard["changed"] = hear(window, "changed").keys() - {"t"}
    for kind, names in heard.items():
        assert names <= into[kind] | (names if kind == "seen" else set()), kind
        assert kind != "seen" or {"seq", "revision"} <= names
        assert into[kind] - names <= {"error", "dropped", "data"}, kind


def test_the_pages_name_every_message(studio):
    union = TYPES.partition("type Message =")[2].partition(";\n\nconst")[0]
    named = set(re.findall(r't: "(\w+)"', union)) | {"seen", "view"}
    assert named == ANSWERS
