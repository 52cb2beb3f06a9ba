"""Web pages in Chromium, from a file and without a network: as they are read, ticked, switched, printed; and against axe (npm axe-core)."""

from __future__ import annotations

import itertools
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from loopwright.publishing.web import html
from tests.outside.pages.checkers import chromium, npm_packages
from tests.publishing.made import fabric_counts, published
from tests.publishing.web.test_page import HOSTILE, with_hostile_words

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
PHONE, DESK = (390, 844), (1280, 900)


@pytest.fixture(scope="module")
def browser():
    with chromium() as started:
        yield started


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("pages")


@cache
def _page(name: str, edition: tuple[tuple[str, Any], ...]) -> str:
    return html(published(name, **dict(edition)))


@pytest.fixture
def opened(browser, folder):
    """A function that opens a document and gives the page; whatever the browser complained of or asked for fails the test."""
    complaints: list[str] = []
    asked: list[str] = []
    contexts = []

    def open_page(name="avocet-bonnet", *, text="", size=PHONE, dark=False, script=True, again=None, **edition):
        path: Path = folder / f"{name}{'-'.join(map(str, sorted(edition.items())))}.html"
        path.write_text(text or _page(name, tuple(sorted(edition.items()))), encoding="utf-8")
        context = again or browser.new_context(
            viewport={"width": size[0], "height": size[1]}, color_scheme="dark" if dark else "light", java_script_enabled=script, offline=True,
        )
        contexts.append(context)
        page = context.new_page()
        page.on("console", lambda m: complaints.append(m.text))
        page.on("pageerror", lambda e: complaints.append(str(e)))
        page.on("dialog", lambda d: complaints.append(d.message))
        page.on("request", lambda r: asked.append(r.url))
        page.goto(path.as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert complaints == []
    assert [a for a in asked if not a.startswith(("file:", "data:"))] == []
    assert len({a for a in asked if a.startswith("file:")}) <= 1


def choose(page, index: int) -> None:
    page.locator(f'.stations input[value="{index}"]').check(force=True)


def ticks(page) -> list[str]:
    found: list[str] = page.eval_on_selector_all(".step", "all => all.filter(s => s.querySelector('input').checked).map(s => s.id)")
    return found


@pytest.mark.parametrize(
    ("name", "index", "size", "dark"),
    [
        *(("avocet-bonnet", None, size, dark) for size in (PHONE, DESK) for dark in (False, True)),
        ("samphire-beanie", None, DESK, False), ("samphire-beanie", 6, PHONE, False), ("samphire-beanie", 6, DESK, True),
        ("curlew-toy", None, PHONE, True), ("plover-cardigan", 1, PHONE, False),
    ],
)
def test_axe_finds_nothing(opened, request, tmp_path_factory, name, index, size, dark):
    axe = (npm_packages(request, tmp_path_factory) / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
    page = opened(name, size=size, dark=dark)
    if index is not None:
        choose(page, index)
    page.locator('[data-do="done"]').click()
    page.locator("details").first.evaluate("d => d.open = true")
    page.evaluate(axe)
    result = page.evaluate(f"axe.run({{runOnly: {RULES}}})")
    assert [(v["id"], [n["target"] for n in v["nodes"]][:3]) for v in result["violations"]] == []
    assert len(result["passes"]) > 25


def test_axe_finds_a_fault(opened, request, tmp_path_factory):
    """So that a silent axe is not taken for a good page."""
    axe = (npm_packages(request, tmp_path_factory) / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
    page = opened("curlew-toy")
    page.evaluate("document.documentElement.removeAttribute('lang')")
    page.evaluate(axe)
    assert "html-has-lang" in [v["id"] for v in page.evaluate(f"axe.run({{runOnly: {RULES}}})")["violations"]]


def test_the_size_switch_by_keyboard(opened):
    page = opened("samphire-beanie")
    for _ in range(12):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.name") == "size":
            break
    assert page.evaluate("document.activeElement.value") == "-1"
    assert page.get_by_role("group", name="Size").get_by_role("radio").count() == 11
    for _ in range(7):
        page.keyboard.press("ArrowRight")
    assert page.evaluate("document.activeElement.parentElement.textContent").startswith("child")
    row = page.locator("#crown-4-5")
    assert " ".join(row.locator(".words").inner_text().split()) == "Rnds 4-9: Continue as established, inc 8 sts each rnd. (72 hdc)"
    assert page.locator("header .name p").inner_text().replace("\n", " ").startswith("child")
    assert page.locator("#sizes tbody tr td:visible").count() == page.locator("#sizes tbody tr td").count() / 10
    page.keyboard.press("Home")
    for _ in range(7):
        page.keyboard.press("ArrowLeft")
    assert "Rnds 4-5 (5, 6, 6, 7, 8, 9, 10, 10, 11): " in row.inner_text()


def test_ticks_by_keyboard_and_the_bar(opened):
    page = opened("curlew-toy")
    first = page.locator(".step input").first
    first.focus()
    page.keyboard.press("Space")
    assert len(ticks(page)) == 1
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    assert len(ticks(page)) == 2
    page.locator('[data-do="done"]').focus()
    page.keyboard.press("Enter")
    assert len(ticks(page)) == 3
    page.locator('[data-do="back"]').focus()
    page.keyboard.press("Enter")
    assert len(ticks(page)) == 2
    assert page.locator(".now").get_attribute("aria-current") == "step"


def test_rows_told_at_once_are_ticked_one_by_one_with_the_count_of_each(opened):
    """Rnds 4-9 of the child's crown: 32, 40, 48, 56, 64, 72."""
    page = opened("samphire-beanie")
    choose(page, 6)
    for _ in range(3):
        page.locator('[data-do="done"]').click()
    shown = []
    for _ in range(6):
        shown.append(page.locator(".now .arm .fig").inner_text())
        page.locator('[data-do="done"]').click()
    assert shown == ["32", "40", "48", "56", "64", "72"]
    assert page.locator(".now").get_attribute("id") == "crown-next"


def test_ticks_and_size_outlive_the_page_and_each_size_has_its_own(opened):
    page = opened("samphire-beanie")
    choose(page, 3)
    page.locator(".step input").nth(0).check()
    page.locator(".step input").nth(1).check()
    made = ticks(page)
    page.reload()
    assert page.locator('.stations input[value="3"]').is_checked()
    assert ticks(page) == made
    assert len(made) == 2
    choose(page, 4)
    assert ticks(page) == []
    choose(page, -1)
    assert ticks(page) == []
    choose(page, 3)
    assert ticks(page) == made


def test_taking_all_ticks_out_can_be_undone(opened):
    page = opened("curlew-toy")
    for _ in range(4):
        page.locator('[data-do="done"]').click()
    before = ticks(page)
    page.locator('[data-do="clear"]').click()
    assert ticks(page) == []
    page.locator('[data-do="clear"]').click()
    assert ticks(page) == before
    assert len(before) == 4
    page.reload()
    assert ticks(page) == before


def test_a_second_window_shows_the_same_ticks(opened):
    page = opened("curlew-toy")
    other = opened("curlew-toy", again=page.context)
    page.locator(".step input").nth(2).check()
    other.wait_for_function("document.querySelectorAll('.step input')[2].checked")
    assert ticks(other) == ticks(page)


def test_what_was_kept_and_is_no_longer_right_does_no_harm(opened):
    page = opened("curlew-toy")
    key = "loopwright|Curlew Toy||en-US|one size"
    for bad in ("{", "[1]", '{"no-such-row": 3, "head-and-body-rnd": -2, "head-and-body-2": "x"}', "null"):
        page.evaluate("([k, v]) => localStorage.setItem(k, v)", [key, bad])
        page.reload()
        assert ticks(page) == []


@pytest.mark.parametrize("name", ["samphire-beanie", "avocet-bonnet", "plover-cardigan", "curlew-toy"])
def test_figures_on_the_tape_of_every_size_are_the_fabrics(opened, name):
    """Worked through with the bar, row by row: each number that is shown is the one that was worked."""
    page = opened(name)
    sizes = len(published(name).sizes)
    for size in range(sizes):
        if sizes > 1:
            choose(page, size)
        wanted = fabric_counts(name, size)
        found = page.evaluate("""() => {
          const all = [], done = document.querySelector('[data-do=done]');
          while (!done.disabled) { all.push(document.querySelector('.now .arm .fig')?.textContent ?? ''); done.click(); }
          return all;
        }""")
        assert [int(n) for n in found if n] == wanted


def test_rows_that_a_size_does_not_have_are_hidden(opened):
    name = "sandpiper-mitts"
    publication = published(name)
    page = opened(name)
    for size in range(len(publication.sizes)):
        choose(page, size)
        wanted = {s.ident for p in publication.parts for b in p.blocks for s in getattr(b, "steps", ()) if getattr(s, "ident", "") and s.by_size[size]}
        assert set(page.eval_on_selector_all(".step", "all => all.filter(s => !s.hidden).map(s => s.id)")) == wanted


def test_without_script_everything_reads_in_order(opened):
    page = opened("samphire-beanie", script=False)
    assert page.locator(".stations").is_hidden()
    assert page.locator(".bar").is_hidden()
    assert page.locator(".place").is_hidden()
    text = page.locator("body").inner_text()
    order = ["Samphire Beanie", "All sizes", "A close hat", "Sizes and finished", "Hook", "17 hdc and 13 rnds", "Crown", "Rnds 4-5 (5, 6,", "Charts"]
    at = [text.index(words) for words in order[:4]]
    assert at == sorted(at)
    assert [text.find(words, at[-1]) > 0 for words in order[4:]] == [True] * 5
    page.locator(".step input").first.check()  # a box is a box, even if nothing remembers it
    assert page.locator(".step input").first.is_checked()


def test_read_aloud_a_row_is_its_box_and_its_words_and_no_figure_twice(opened):
    page = opened("curlew-toy")
    tree = page.locator("#head-and-body-2").aria_snapshot()
    assert re.sub(r"\s+", " ", tree) == '- listitem: - \'checkbox "Rnd 2: Worked"\' - paragraph: "Rnd 2: 2 sc in each st around. (12 sc)"'


def test_landmarks_and_headings(opened):
    page = opened("avocet-bonnet")
    for role in ("banner", "main", "contentinfo"):
        assert page.get_by_role(role).count() == 1
    assert page.get_by_role("navigation", name="In this pattern").count() == 1
    levels = page.eval_on_selector_all("h1,h2,h3,h4", "all => all.map(h => Number(h.tagName[1]))")
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(b - a <= 1 for a, b in itertools.pairwise(levels))
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.hash") == "#instructions"


@pytest.mark.parametrize(("name", "edition"), [("samphire-beanie", {}), ("plover-cardigan", {"large_print": True}), ("avocet-bonnet", {"left_handed": True})])
def test_at_320_px_nothing_is_cut_off_or_scrolls_sideways(opened, name, edition):
    page = opened(name, size=(320, 640), **edition)
    assert page.evaluate("document.documentElement.scrollWidth") == 320
    if not edition.get("large_print"):
        choose(page, 1)
    assert page.evaluate("document.documentElement.scrollWidth") == 320
    cut = page.eval_on_selector_all(".words, .remark, h1, h2, h3, dd", "all => all.filter(e => e.scrollWidth > e.clientWidth + 1).map(e => e.textContent)")
    assert cut == []


def test_targets_are_large_enough(opened):
    page = opened("samphire-beanie")
    small = page.eval_on_selector_all(
        "button, .tick, .stations label, .larger, .contents a, summary",
        "all => all.filter(e => e.offsetParent).map(e => [e.className || e.tagName, e.getBoundingClientRect()]).filter(([, b]) => b.width < 44 || b.height < 40).map(([n]) => n)",
    )
    assert small == []


def test_hostile_words_run_nothing(opened):
    page = opened("hostile", text=html(with_hostile_words()))
    assert page.locator("h1").inner_text().strip() == HOSTILE.replace("\u2028", "").strip() or HOSTILE[:40] in page.locator("h1").inner_text()
    choose(page, 0)
    page.locator('[data-do="done"]').click()
    assert page.locator("img[src=x]").count() == 0
    assert page.locator("script").count() == 2


def test_printed_there_is_the_chosen_size_and_nothing_to_press(opened):
    page = opened("samphire-beanie")
    choose(page, 6)
    page.emulate_media(media="print")
    for what in (".bar", ".stations", ".contents", ".place", ".kept", ".larger"):
        assert not page.locator(what).first.is_visible()
    assert "Rnds 4-9:" in page.locator("#crown-4-5").inner_text()
    assert page.evaluate("getComputedStyle(document.querySelector('.rows-of')).backgroundImage") == "none"


def test_reduced_motion_nothing_moves_by_itself(opened):
    page = opened("samphire-beanie")
    assert page.evaluate("document.getAnimations().length") == 0
    before = page.evaluate("scrollY")
    choose(page, 2)
    assert page.evaluate("scrollY") == before


def test_the_place_is_told_when_a_row_is_done(opened):
    page = opened("samphire-beanie")
    choose(page, 6)
    status = page.get_by_role("status")
    told = []
    for _ in range(5):
        told.append(status.get_by_role("link").aria_snapshot().split('"')[1])
        page.locator('[data-do="done"]').click()
    assert told == ["Rnd 1, 1 of 26", "Rnd 2, 2 of 26", "Rnd 3, 3 of 26", "Rnds 4-9, 4 of 26", "Rnds 4-9, 5 of 26"]
