"""Film: the plan, the cards, what the log gives, the kit; the page beside the camera by touch and by keys, through reloads and losses."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from waiting import wait_for

from loopwright.filming.log import read_log
from loopwright.source import Source
from loopwright.workshop.film.choice import Choice
from loopwright.workshop.film.planned import planned

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Locator, Page
    from served import Served

Open = Callable[..., "Page"]
AT, CAMERA = "/film/samphire-beanie.txt", "/camera/glasswort-bag.txt"
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (820, 1180, True), (390, 844, False), (390, 844, True), (320, 640, False), (320, 256, True)]
LOG = "0:00 shot 1\n0:30 Crown\n1:12 Rnd 2\n2:40 Rnd 3 count\n4:00 Body, Rnd 1\n6:00 Band, Rnd 1\n7:00 shot 46\n"


def choose_file(at: Locator, name: str, data: bytes) -> None:
    at.set_input_files({"name": name, "mimeType": "text/plain", "buffer": data})


def film(made: Page) -> Page:
    made.wait_for_selector(".shot")
    return made


def camera(made: Page, way: str = "") -> Page:
    made.wait_for_selector(".cam .ways")
    if way:
        made.get_by_role("button", name=way, exact=True).click()
        made.wait_for_selector(".tap")
    return made


def kept(of: Served, design: str = "glasswort-bag.txt") -> str:
    place = of.folder / ".loopwright" / "film" / design
    found = [p for p in place.iterdir() if len(p.suffixes) == 1] if place.is_dir() else []
    return found[0].read_text() if found else ""


def until_kept(made: Page, of: Served, wanted: str) -> str:
    wait_for(made, lambda: re.search(wanted, kept(of), re.MULTILINE) is not None, wanted)
    return kept(of)


@pytest.fixture
def bag(empty_studio: Served) -> Served:
    text = (Path(__file__).parents[3] / "designs" / "glasswort-bag.txt").read_text()
    (empty_studio.folder / "glasswort-bag.txt").write_text(text)
    return empty_studio


def test_the_plan_stands_on_the_sheet_and_follows_size_and_terms(studio: Served, page: Open) -> None:
    made = film(page(studio, AT))
    assert "is on camera" in made.locator(".film .sentence").inner_text()
    shots = made.locator(".shot").count()
    assert made.locator(".corner .fig").inner_text() == str(shots)
    body = made.locator("section[aria-label='Body'] .shot").first
    was = body.inner_text()
    made.get_by_role("radio", name=re.compile("^newborn")).click()
    made.wait_for_function("was => document.querySelector(\"section[aria-label='Body'] .shot\").innerText !== was", arg=was)
    made.get_by_label("Terms", exact=True).select_option("uk")
    made.wait_for_function("() => document.querySelector('.film').innerText.includes('half treble')")
    made.get_by_label("Language", exact=True).select_option("de")
    made.wait_for_function("() => !document.querySelector('.film').innerText.includes('half treble')")
    made.reload()
    film(made)
    assert made.get_by_label("Language", exact=True).input_value() == "de"
    assert made.get_by_role("radio", name=re.compile("^newborn")).get_attribute("aria-checked") == "true"


def test_a_shot_shows_all_of_it_its_card_and_every_size(studio: Served, page: Open) -> None:
    made = film(page(studio, AT))
    made.wait_for_selector(".bigcard img")
    made.locator(".shot-pick", has_text="Rnd 3").first.press("Enter")
    assert made.locator(".shot.here dl").inner_text().startswith("Show")
    made.wait_for_function("() => document.querySelector('.bigcard img').alt.includes('Rnd 3') && document.querySelector('.bigcard img').naturalWidth > 0")
    assert made.locator(".corner").inner_text().split() == ["Rnd", "3", "24"]
    made.get_by_role("button", name="9:16, standing").click()
    made.wait_for_function("() => { const i = document.querySelector('.bigcard.\\\\39x16 img'); return i && i.naturalHeight > i.naturalWidth; }")
    made.locator(".cardlist [aria-checked=true]").press("ArrowRight")
    made.wait_for_function("() => document.querySelector('.bigcard img').alt.includes('Rnd 4')")


def test_a_log_that_is_opened_gives_chapters_captions_and_description(studio: Served, page: Open) -> None:
    made = film(page(studio, AT))
    made.get_by_role("button", name="From the log").click()
    choose_file(made.locator(".gives input[type=file]"), "log.txt", LOG.encode())
    made.wait_for_selector(".chapters li")
    assert made.locator(".chapters").inner_text().split("\n")[0].split() == ["0:00", "Beginning"]
    assert "double crochet" in made.locator(".cues").inner_text()
    made.get_by_role("button", name="UK terms").click()
    assert "half treble" in made.locator(".cues").inner_text()
    with made.expect_download() as taken:
        made.get_by_role("button", name="Save captions-us.vtt").click()
    assert Path(taken.value.path()).read_text().startswith("WEBVTT")
    with made.expect_download() as taken:
        made.get_by_role("button", name="Save film-log.txt").click()
    assert Path(taken.value.path()).read_text() == LOG
    assert kept(studio, "samphire-beanie.txt") == LOG


def test_the_kit_is_packed_with_progress_and_taken_away(bag: Served, page: Open) -> None:
    made = film(page(bag, "/film/glasswort-bag.txt"))
    made.get_by_role("button", name="The kit").click()
    made.get_by_role("button", name="Pack it to take away").click()
    made.wait_for_selector("[role=progressbar]")
    made.wait_for_selector("a:has-text('files away')")
    with made.expect_download() as taken:
        made.get_by_role("link", name=re.compile("files away")).click()
    assert taken.value.suggested_filename == "glasswort-bag-film.zip"
    with zipfile.ZipFile(io.BytesIO(Path(taken.value.path()).read_bytes())) as z:
        assert "camera.html" in z.namelist()


def test_an_older_log_is_looked_at_and_taken_again(bag: Served, page: Open, axe: Callable[[Page], list[str]]) -> None:
    made = film(page(bag, "/film/glasswort-bag.txt", width=360, height=780))
    made.get_by_role("button", name="From the log").click()
    choose_file(made.locator(".gives input[type=file]"), "first.txt", b"0:00 shot 1\n0:30 shot 2\n")
    until_kept(made, bag, "^0:30 shot 2$")
    choose_file(made.locator(".gives input[type=file]"), "second.txt", b"0:00 shot 3\n")
    until_kept(made, bag, "^0:00 shot 3$")
    made.get_by_role("button", name="The older log").click()
    made.locator(".older-logs button", has_text="Kept on").click()
    assert made.locator(".older-logs .logtext").inner_text().split("\n")[:2] == ["0:00 shot 1", "0:30 shot 2"]
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == 360
    made.get_by_role("button", name="Take it again").click()
    until_kept(made, bag, "^0:30 shot 2$")
    made.get_by_role("button", name="The 2 older logs").wait_for()


def test_the_kit_goes_into_a_folder_and_not_over_a_changed_file(bag: Served, page: Open) -> None:
    made = film(page(bag, "/film/glasswort-bag.txt"))
    made.get_by_role("button", name="The kit").click()
    made.get_by_label("Into the folder").fill("Bag film")
    made.get_by_role("button", name="Write the kit").click()
    made.wait_for_selector("text=in the folder Bag film")
    (bag.folder / "Bag film" / "plan.csv").write_text("mine")
    made.get_by_role("button", name="Write the kit").click()
    made.wait_for_selector("[role=alert]:has-text('was changed since')")
    assert (bag.folder / "Bag film" / "plan.csv").read_text() == "mine"


def tapped(made: Page) -> list[str]:
    return [w for w in made.locator(".shots li.was, .shots li.on").all_inner_texts() if ":" in w]


def test_by_keys_alone_from_the_plan_to_the_last_tap_and_back(bag: Served, page: Open) -> None:
    made = film(page(bag, "/film/glasswort-bag.txt"))
    made.get_by_role("button", name="Stand it beside the camera").press("Enter")
    camera(made)
    made.locator("body").press("Space")
    made.locator("body").press("PageDown")
    made.locator("body").press("ArrowRight")
    until_kept(made, bag, r"^\d+:\d\d\.\d shot 3 ")
    made.locator("body").press("w")
    text = until_kept(made, bag, r"# shot 3 .*a word went wrong")
    assert text.startswith("# ")
    assert re.search(r"^# camera on 0:00\.0 at 20", text, re.MULTILINE)
    made.locator("body").press("z")
    until_kept(made, bag, r"^# taken back: .*a word went wrong")
    made.locator("body").press("z")
    until_kept(made, bag, r"^# taken back: .* shot 3 ")
    assert "Taken back" in made.locator(".sr[aria-live]").inner_text()
    made.locator("body").press("o")
    until_kept(made, bag, "^# camera off ")
    at = made.locator(".cam header .fig").inner_text()
    made.wait_for_timeout(1200)
    assert made.locator(".cam header .fig").inner_text() == at
    made.locator("body").press("Escape")
    film(made)


def test_a_button_for_every_row_and_every_shot_is_large_and_tapped_by_touch(bag: Served, page: Open) -> None:
    made = camera(page(bag, CAMERA, width=390, height=844, has_touch=True, is_mobile=True), "Rows")
    filmed, plan = planned(Source.of((bag.folder / "glasswort-bag.txt").read_text(), "bag"), Choice("small"))
    assert made.locator(".tap").count() == sum(len(s.rows) for s in plan.sections)
    made.locator(".tap").nth(1).tap()
    made.get_by_role("button", name="Shots", exact=True).tap()
    assert made.locator(".tap").count() == len(plan.shots)
    made.locator(".tap").nth(7).tap()
    until_kept(made, bag, " shot 8 ")
    for way in ("Rows", "Shots", "One by one"):
        made.get_by_role("button", name=way, exact=True).tap()
        made.wait_for_timeout(100)
        small = made.evaluate("[...document.querySelectorAll('.cam button')].map(b => b.getBoundingClientRect()).filter(r => r.height < 44 || r.width < 44).length")
        assert small == 0, way
    log = read_log(kept(bag), plan)
    assert [(e.shot, e.alone) for e in log.entries][-1] == (8, True)
    assert log.notes == ()
    assert filmed.facts.sizes == ("small", "large")


def test_taps_survive_a_reload_and_the_clock_goes_on(bag: Served, page: Open) -> None:
    made = camera(page(bag, CAMERA))
    made.locator("body").press("Space")
    made.wait_for_timeout(1500)
    made.locator("body").press("Space")
    until_kept(made, bag, " shot 2 ")
    made.reload()
    camera(made)
    made.wait_for_function("() => document.querySelectorAll('.shots .was').length === 1")
    assert made.locator(".cam .live").inner_text() == "camera on"
    minutes, seconds = made.locator(".cam header .fig").inner_text().split(":")
    assert int(minutes) * 60 + int(seconds) >= 1
    made.locator("body").press("Space")
    until_kept(made, bag, " shot 3 ")


def test_nothing_is_lost_while_the_studio_does_not_answer(bag: Served, browser: Browser) -> None:
    context = browser.new_context()
    made = context.new_page()
    made.goto(bag.address)
    made.goto(f"http://{bag.host}{CAMERA}")
    camera(made)
    made.locator("body").press("Space")
    until_kept(made, bag, " shot 1 ")
    made.route("**/api/film/*/log", lambda r: r.abort())
    for _ in range(3):
        made.locator("body").press("Space")
        made.wait_for_timeout(120)
    made.wait_for_selector(".kept:has-text('all is kept in this window')")
    assert len(tapped(made)) == 4
    assert " shot 4 " not in kept(bag)
    made.reload()
    camera(made)
    made.unroute("**/api/film/*/log")
    until_kept(made, bag, " shot 4 ")
    assert len(re.findall(r"^\d.* shot \d", kept(bag), re.MULTILINE)) == 4
    context.close()


def test_a_new_log_keeps_the_one_before(bag: Served, page: Open) -> None:
    made = camera(page(bag, CAMERA))
    made.locator("body").press("Space")
    until_kept(made, bag, " shot 1 ")
    made.get_by_role("button", name="Begin again").click()
    made.get_by_role("button", name="Begin a new log").click()
    made.wait_for_function("() => !document.querySelector('.shots .was')")
    place = bag.folder / ".loopwright" / "film" / "glasswort-bag.txt"
    for _ in range(100):
        if len(list(place.iterdir())) == 2:
            break
        made.wait_for_timeout(50)
    assert any(" shot 1 " in p.read_text() for p in place.iterdir())


def test_the_log_that_was_tapped_is_what_the_film_place_shows(bag: Served, page: Open) -> None:
    made = camera(page(bag, CAMERA))
    for _ in range(3):
        made.locator("body").press("Space")
        made.wait_for_timeout(150)
    made.get_by_role("button", name="Put it down").click()
    film(made)
    made.get_by_role("button", name="From the log").click()
    made.wait_for_selector(".chapters li")
    assert "shot 3" in made.locator(".logtext").first.inner_text()
    assert "filmed at" in made.locator(".shot").nth(2).inner_text()


def test_a_design_without_rows_says_why_there_is_no_plan(empty_studio: Served, page: Open) -> None:
    (empty_studio.folder / "empty.txt").write_text("Only a title\n")
    made = page(empty_studio, "/film/empty.txt")
    made.wait_for_selector(".film [role=alert]")


def largest(part: Locator) -> float:
    return float(part.evaluate("e => e.scrollWidth - e.clientWidth"))


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_in_film(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = film(page(studio, AT, width=width, height=height, dark=dark, bypass_csp=True))
    made.locator(".shot-pick").nth(6).click()
    made.wait_for_selector(".cardlist button")
    found = axe(made)
    made.get_by_role("button", name="From the log").click()
    choose_file(made.locator(".gives input[type=file]"), "log.txt", LOG.encode())
    made.wait_for_selector(".chapters li")
    found += axe(made)
    made.get_by_role("button", name="The kit").click()
    found += axe(made)
    assert found == []
    assert made.evaluate("document.documentElement.scrollWidth") == width


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_beside_the_camera(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = camera(page(studio, CAMERA, width=width, height=height, dark=dark, bypass_csp=True))
    made.locator("body").press("Space")
    found = axe(made)
    for way in ("Rows", "Shots"):
        made.get_by_role("button", name=way, exact=True).click()
        made.locator(".tap").first.click()
        found += axe(made)
    assert found == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
    assert largest(made.locator(".taps")) <= 0
