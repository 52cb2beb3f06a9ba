"""Publish: photographs chosen or dropped, where they stand, what they show, missing ones, taken out and back, laid aside."""

from __future__ import annotations

import base64
import io
from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from PIL import Image
from served import PATTERN, Served, start
from waiting import until, wait_for

if TYPE_CHECKING:
    from playwright.sync_api import FilePayload, Page

Open = Callable[..., "Page"]
NAME = "sedge-coaster.txt"
TEAL, RED = (10, 120, 90), (200, 40, 20)


def picture(colour: tuple[int, int, int] = TEAL, kind: str = "JPEG") -> bytes:
    held = io.BytesIO()
    Image.new("RGB", (600, 400), colour).save(held, kind)
    return held.getvalue()


def file(name: str, data: bytes) -> FilePayload:
    return {"name": name, "mimeType": "image/jpeg", "buffer": data}


@pytest.fixture
def coaster(empty_studio: Served) -> Served:
    (empty_studio.folder / NAME).write_text(PATTERN, encoding="utf-8")
    return empty_studio


def opened(made: Page) -> Page:
    made.locator(".photographs h2").wait_for()
    made.get_by_text("Add photographs …").wait_for()
    return made


def said(of: Served, line: str) -> Callable[[], bool]:
    return lambda: line in (of.folder / NAME).read_text(encoding="utf-8").split("\n")


def test_photographs_are_added_described_and_taken_out_and_back(coaster: Served, page: Open) -> None:
    made = opened(page(coaster, f"/publish/{NAME}"))
    (coaster.folder / "flat.jpg").write_bytes(picture(RED))
    made.get_by_label("Add photographs …").set_input_files([file("crown.jpg", picture()), file("flat.jpg", picture())])
    wait_for(made, said(coaster, "Photograph: crown.jpg (cover)"))
    wait_for(made, said(coaster, "Photograph: flat 2.jpg"))
    assert (coaster.folder / "flat.jpg").read_bytes() == picture(RED)
    until(made, "document.querySelectorAll('.photographs ol img').length === 2 && [...document.querySelectorAll('.photographs ol img')].every((i) => i.naturalWidth === 480)")
    flat = made.get_by_role("group", name="flat 2.jpg")
    flat.get_by_label("What it shows").fill("the coaster, laid flat")
    flat.get_by_label("What it shows").blur()
    wait_for(made, said(coaster, "Photograph: flat 2.jpg: the coaster, laid flat"))
    flat.get_by_label("It stands").select_option(label="on the front")
    wait_for(made, said(coaster, "Photograph: flat 2.jpg (cover): the coaster, laid flat"))
    made.locator(".missing", has_text="crown.jpg has no words").wait_for()
    made.get_by_role("button", name="Take it out: flat 2.jpg").click()
    wait_for(made, lambda: not said(coaster, "Photograph: flat 2.jpg (cover): the coaster, laid flat")())
    assert (coaster.folder / "photographs" / "flat 2.jpg").is_file()
    made.locator("h1").click()
    made.keyboard.press("Control+z")
    wait_for(made, said(coaster, "Photograph: flat 2.jpg (cover): the coaster, laid flat"))


def test_one_is_dropped_and_what_is_no_photograph_or_too_large_is_told(coaster: Served, page: Open) -> None:
    made = opened(page(coaster, f"/publish/{NAME}"))
    made.evaluate(
        """(data) => {
            const held = new DataTransfer(), raw = Uint8Array.from(atob(data), (c) => c.charCodeAt(0));
            held.items.add(new File([raw], 'drop.jpg', { type: 'image/jpeg' }));
            held.items.add(new File([new Uint8Array(41e6)], 'large.jpg', { type: 'image/jpeg' }));
            for (const kind of ['dragover', 'drop']) document.querySelector('.photographs').dispatchEvent(new DragEvent(kind, { dataTransfer: held, bubbles: true, cancelable: true }));
        }""",
        base64.b64encode(picture()).decode(),
    )
    wait_for(made, said(coaster, "Photograph: drop.jpg (cover)"))
    made.locator(".photographs [role=alert]", has_text="large.jpg has 41 MB: a photograph here has at most 40 MB").wait_for()
    assert [p.name for p in (coaster.folder / "photographs").iterdir()] == ["drop.jpg"]


def test_a_missing_one_is_chosen_and_others_of_the_folder_are_used_or_laid_aside(coaster: Served, page: Open) -> None:
    (coaster.folder / NAME).write_text(PATTERN.replace("Gauge", "Photograph: gone.jpg (cover): on a table\nGauge"), encoding="utf-8")
    for name in ("old.jpg", "other.jpg"):
        (coaster.folder / name).write_bytes(picture())
    made = opened(page(coaster, f"/publish/{NAME}"))
    gone = made.get_by_role("group", name="gone.jpg")
    gone.get_by_text("There is no such file in the folder").wait_for()
    gone.get_by_label("Choose it …").set_input_files(file("here.jpg", picture(RED)))
    wait_for(made, said(coaster, "Photograph: here.jpg (cover): on a table"))
    made.get_by_text("2 more in the folder").click()
    made.get_by_role("button", name="Use it: other.jpg").click()
    wait_for(made, said(coaster, "Photograph: other.jpg"))
    made.get_by_role("button", name="Lay it aside: old.jpg").click()
    wait_for(made, (coaster.folder / ".loopwright" / "laid aside" / "old.jpg").is_file)
    made.locator(".photographs details").wait_for(state="detached")


def test_a_studio_only_for_reading_shows_them(coaster: Served, page: Open) -> None:
    (coaster.folder / NAME).write_text(PATTERN.replace("Gauge", "Photograph: here.jpg: on a table\nGauge"), encoding="utf-8")
    (coaster.folder / "here.jpg").write_bytes(picture())
    reading = start(coaster.folder, "--read-only")
    try:
        made = page(reading, f"/publish/{NAME}")
        made.get_by_role("group", name="here.jpg").wait_for()
        assert made.get_by_label("What it shows").input_value() == "on a table"
        assert made.get_by_text("Add photographs …").count() == 0
        assert made.get_by_role("button", name="Take it out: here.jpg").count() == 0
    finally:
        reading.end()


@pytest.mark.parametrize(("width", "height", "dark"), [(1440, 900, False), (820, 1180, True), (390, 844, False), (320, 640, True)])
def test_axe_finds_nothing(coaster: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    (coaster.folder / NAME).write_text(PATTERN.replace("Gauge", "Photograph: gone.jpg (cover)\nPhotograph: here.jpg: flat\nGauge"), encoding="utf-8")
    for name in ("here.jpg", "other.jpg"):
        (coaster.folder / name).write_bytes(picture())
    made = opened(page(coaster, f"/publish/{NAME}", width=width, height=height, dark=dark, bypass_csp=True))
    made.get_by_text("1 more in the folder").click()
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
