"""The marker: one stitch is lit in the chart, in the sheet, in an edition's words and in the tag, on every design of the demo."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from served import Served
from waiting import until

from loopwright.workshop.live import Live
from loopwright.workshop.views import stitches

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
DESIGNS = sorted(p.name for p in (Path(__file__).parents[3] / "designs").glob("*.txt"))
LINKED = ".sheet[data-linked=true]"


@cache
def made_of(name: str) -> tuple[str, int, dict[str, Any]]:
    """A design's text, the size that was worked, and the characters of every stitch of it, as the library has them."""
    text = (Path(__file__).parents[3] / "designs" / name).read_text(encoding="utf-8")
    seen = Live(name).see(text)
    return text, max(seen.sample, 0), stitches(seen, max(seen.sample, 0))


def marked(made: Page) -> str:
    return "".join(made.locator(".w-marker").all_inner_texts())


def squeezed(words: str) -> str:
    return "".join(words.split())


@pytest.mark.parametrize("name", DESIGNS)
def test_a_stitch_of_the_chart_is_lit_in_the_words_that_made_it_and_in_the_edition(studio: Served, page: Open, name: str) -> None:
    text, _, links = made_of(name)
    made = page(studio, f"/write/{name}")
    made.wait_for_selector(LINKED)
    until(made, "document.querySelector('.drawing figure')")
    made.keyboard.press("Escape")
    drawn = [int(s) for s in made.evaluate("[...document.querySelectorAll('.drawing [data-stitch]')].map((e) => e.getAttribute('data-stitch'))")]
    with_words = [s for s in drawn if links["origin"][s] >= 0]
    assert with_words
    for s in {with_words[0], with_words[len(with_words) // 2], with_words[-1]}:
        made.evaluate("(s) => document.querySelector(`.drawing [data-stitch='${s}']`).dispatchEvent(new MouseEvent('click', { bubbles: true }))", s)
        until(made, "document.querySelector('.tag p')")
        words = text[links["origin"][s] : links["end"][s]]
        until(made, "document.querySelector('.w-marker')")
        made.wait_for_timeout(150)
        shown = squeezed(marked(made))
        assert squeezed(words).startswith(shown) or squeezed(words) in shown  # of many lines, those in sight
        assert made.locator(f".drawing [data-stitch='{s}'].lit").count() == 1
        row = links["rows"][links["row"][s]]
        assert made.locator(".tag b").inner_text().startswith(row["label"] or row["section"] or "the row below")
    made.keyboard.press("4")
    until(made, "document.querySelector('.words .lit-words')")


@pytest.mark.parametrize("name", DESIGNS)
def test_walking_with_keys_moves_the_marker_in_words_and_chart_together(studio: Served, page: Open, name: str) -> None:
    text, _, links = made_of(name)
    made = page(studio, f"/write/{name}")
    made.wait_for_selector(LINKED)
    made.keyboard.press("Escape")
    for key in ("ArrowRight", "PageDown", "ArrowRight"):  # the first stitch; the first of the next row; the one after it
        made.keyboard.press(key)
    at = links["rows"][1]["start"] + 1
    lit(made, text, links, at)
    into = links["into"][at]
    if into >= 0:
        made.keyboard.press("ArrowDown")
        lit(made, text, links, into)
        made.keyboard.press("ArrowUp")
        lit(made, text, links, links["into"].index(into))
    made.keyboard.press("End")
    last = links["rows"][links["row"][links["into"].index(into) if into >= 0 else at]]["end"] - 1
    lit(made, text, links, last)


def lit(made: Page, text: str, links: dict[str, Any], stitch: int) -> None:
    """Waits until the very characters that made a stitch are marked, and the tag tells its row; nothing is marked where none made it."""
    words = squeezed(text[links["origin"][stitch] : links["end"][stitch]]) if links["origin"][stitch] >= 0 else ""
    row = links["rows"][links["row"][stitch]]
    called = row["label"] or row["section"] or "the row below"
    until(made, f"document.querySelector('.tag b')?.innerText.startsWith({called!r})")
    for _ in range(60):
        shown = squeezed(marked(made))
        if shown == words or shown and (words.startswith(shown) or shown in words):
            return
        made.wait_for_timeout(50)
    raise AssertionError((stitch, words, marked(made)))


def test_words_of_an_edition_in_other_terms_set_the_marker(studio: Served, page: Open) -> None:
    made = page(studio, "/write/samphire-as-worked.txt")
    made.wait_for_selector(LINKED)
    made.keyboard.press("Escape")
    made.keyboard.press("4")
    made.locator(".choices select").select_option("uk")
    made.locator(".words span", has_text="2 htr in next st").nth(1).click()
    until(made, "document.querySelector('.w-marker')")
    assert marked(made) == "2 hdc in next st"
    assert made.locator(".tag b").inner_text().startswith("Rnd 4, stitch ")
    assert made.locator(".words .lit-words").inner_text() == "2 htr in next st"


def test_a_stitch_of_the_shape_sets_the_marker_and_its_colours_are_told(studio: Served, page: Open) -> None:
    made = page(studio, "/write/samphire-beanie.txt")
    made.wait_for_selector(LINKED)
    made.keyboard.press("Escape")
    made.keyboard.press("2")
    made.get_by_label("Coloured by").wait_for()
    made.get_by_label("Seen").wait_for()  # once the shape is there
    made.get_by_label("Coloured by").select_option("kind")
    assert made.locator(".legend li").all_inner_texts()[:3] == ["hdc", "fpdc", "bpdc"]
    made.get_by_label("Seen").select_option("worn")
    made.get_by_text("On a head of").wait_for()
    made.get_by_label("Seen").select_option("made")
    made.get_by_text("On a head of").wait_for(state="detached")
    box = made.locator(".solid canvas").bounding_box()
    assert box is not None
    made.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    until(made, "document.querySelector('.tag b')")
    until(made, "document.querySelector('.w-marker')")
    made.get_by_label("Coloured by").select_option("findings")
    assert made.locator(".legend").inner_text().strip()
