"""In the browser: what is typed outlives a killed studio, nothing in a pattern runs, and the first page is small."""

from __future__ import annotations

import gzip
import re
import time
from pathlib import Path

import pytest

from tests.studio.served import PATTERN, start

ROOT = Path(__file__).parents[3]
NAME = "sedge.txt"
FIRST_PAGE = 250_000  # bytes as they are sent, without what draws shapes
HOSTILE = "<img src=x onerror=window.ran=1><script>window.ran=1</script>"


@pytest.fixture
def folder(tmp_path):
    path = tmp_path / "designs"
    path.mkdir()
    (path / NAME).write_text(PATTERN)
    return path


def sheet(page):
    page.wait_for_selector(".cm-content")
    return page.locator(".cm-content")


def typed(page, words):
    sheet(page).click()
    page.keyboard.press("Control+End")
    page.keyboard.type(words)


def until(true, seconds=20.0):
    end = time.monotonic() + seconds
    while not true() and time.monotonic() < end:
        time.sleep(0.05)
    return true()


def test_what_is_typed_while_the_studio_is_gone_is_there_again(browser, folder):
    made = start(folder)
    context = browser.new_context()
    page = context.new_page()
    page.goto(made.address)
    page.goto(f"http://{made.host}/write/{NAME}")
    typed(page, "Saved words. ")
    assert until(lambda: "Saved words." in (folder / NAME).read_text())
    made.end()
    page.keyboard.type("Words typed into the window alone. ")
    assert "typed into" not in (folder / NAME).read_text()
    page.close()
    again = start(folder)
    assert again.port == made.port
    page = context.new_page()
    page.goto(again.address)
    page.goto(f"http://{again.host}/write/{NAME}")
    assert until(lambda: "typed into the window alone" in sheet(page).inner_text())
    assert page.locator("[role=alert]").count() == 0
    assert until(lambda: "typed into the window alone" in (folder / NAME).read_text())
    assert until(lambda: page.evaluate("Object.keys(localStorage).filter((k) => k.startsWith('loopwright unsaved')).length") == 0)
    context.close()
    again.end()


def test_a_window_that_stayed_open_goes_on_when_the_studio_is_back(browser, folder):
    made = start(folder)
    context = browser.new_context()
    page = context.new_page()
    page.goto(made.address)
    page.goto(f"http://{made.host}/write/{NAME}")
    typed(page, "One. ")
    assert until(lambda: "One." in (folder / NAME).read_text())
    made.process.kill()
    page.keyboard.type("Two. ")
    made.end()
    again = start(folder)
    other = context.new_page()
    other.goto(again.address)
    assert until(lambda: "One. Two." in (folder / NAME).read_text(), 30)
    assert page.locator("[role=alert]").count() == 0
    context.close()
    again.end()


def test_a_file_changed_meanwhile_is_offered_beside_what_was_typed(browser, folder):
    made = start(folder)
    context = browser.new_context()
    page = context.new_page()
    page.goto(made.address)
    page.goto(f"http://{made.host}/write/{NAME}")
    typed(page, "Mine. ")
    assert until(lambda: "Mine." in (folder / NAME).read_text())
    made.end()
    page.keyboard.type("And more. ")
    page.close()
    (folder / NAME).write_text(PATTERN + "Hers.\n")
    again = start(folder)
    page = context.new_page()
    page.goto(again.address)
    page.goto(f"http://{again.host}/write/{NAME}")
    page.get_by_text("Two texts.").wait_for()
    assert "And more." in sheet(page).inner_text()
    assert (folder / NAME).read_text() == PATTERN + "Hers.\n"
    page.get_by_role("button", name="Keep mine").click()
    assert until(lambda: "And more." in (folder / NAME).read_text())
    kept = again.ask(f"/api/designs/{NAME}/history").json["kept"]
    texts = [again.ask(f"/api/designs/{NAME}/history/{k['id'].replace(' ', '%20')}").json["text"] for k in kept]
    assert PATTERN + "Hers.\n" in texts
    context.close()
    again.end()


def test_a_second_window_follows_the_first_until_it_writes(browser, folder):
    made = start(folder)
    context = browser.new_context()
    first, second = context.new_page(), context.new_page()
    first.goto(made.address)
    first.goto(f"http://{made.host}/write/{NAME}")
    typed(first, "One. ")
    second.goto(f"http://{made.host}/write/{NAME}")
    second.get_by_text("that one writes").first.wait_for()
    first.bring_to_front()
    first.keyboard.type("Two. ")
    assert until(lambda: "One. Two." in sheet(second).inner_text())
    assert second.get_by_text("Two texts.").count() == 0
    second.get_by_role("button", name="Write here instead").click()
    first.get_by_text("that one writes").first.wait_for()
    second.bring_to_front()
    typed(second, "Three. ")
    assert until(lambda: "One. Two. Three." in (folder / NAME).read_text())
    assert until(lambda: "Three." in sheet(first).inner_text())
    context.close()
    made.end()


def test_nothing_in_a_pattern_or_its_name_runs(page, folder):
    text = f"{HOSTILE}\nSizes: {HOSTILE}, b\nGauge: 17 sc and 20 rnds = 10 cm\n\n{HOSTILE}\n\nRnd 1: 6 sc in magic ring. (7 sc)\nRnd 2: {HOSTILE}\n"
    (folder / f"{HOSTILE.replace('/', '')}.txt").write_text(text)
    (folder / "plain.txt").write_text(text)
    made = start(folder)
    try:
        opened = page(made)
        opened.get_by_text("onerror").first.wait_for()
        assert opened.evaluate("window.ran") is None
        opened.goto(f"http://{made.host}/write/plain.txt")
        assert "onerror" in sheet(opened).inner_text()
        opened.wait_for_timeout(1500)
        assert opened.locator("img[src=x]").count() == 0
        assert opened.evaluate("window.ran") is None
    finally:
        made.end()


def test_a_script_that_gets_into_the_page_is_not_run(browser, folder):
    made = start(folder)
    context = browser.new_context()
    page = context.new_page()
    page.goto(made.address)
    page.evaluate("document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=\"window.ran=1\">')")
    page.evaluate("() => { const s = document.createElement('script'); s.textContent = 'window.ran=1'; document.body.append(s); }")
    page.wait_for_timeout(300)
    assert page.evaluate("window.ran") is None
    assert page.evaluate("document.cookie") == ""
    context.close()
    made.end()


@pytest.mark.parametrize("place", ["/", f"/write/{NAME}"])
def test_the_first_page_is_small(browser, folder, place):
    made = start(folder)
    context = browser.new_context()
    page = context.new_page()
    sizes: dict[str, int] = {}
    name, value = made.cookie.split("=")
    context.add_cookies([{"name": name, "value": value, "url": f"http://{made.host}"}])
    page.on("requestfinished", lambda r: sizes.update({re.sub(r".*:\d+", "", r.url): r.sizes()["responseBodySize"]}))
    page.goto(f"http://{made.host}{place}")
    page.wait_for_load_state("networkidle")
    page.wait_for_timeout(1000)
    sent = {name: size for name, size in sizes.items() if name.startswith(("/static", "/fonts", "/write")) or name == "/"}
    print(place, sum(sent.values()), sent)
    assert not [name for name in sent if "/shape" in name]
    assert sum(name.startswith("/fonts/") for name in sent) >= 2
    assert all(size > 0 for name, size in sent.items() if name.endswith((".js", ".css")))
    assert sum(sent.values()) <= FIRST_PAGE
    context.close()
    made.end()


def test_pages_are_sent_compressed_and_kept_by_the_browser(folder):
    made = start(folder)
    try:
        page = made.ask("/").body.decode()
        script = re.search(r'src="(/static/assets/[^"]+\.js)"', page)
        assert script
        plain, small = made.ask(script[1]), made.ask(script[1], accept_encoding="gzip, deflate")
        assert small.headers["content-encoding"] == "gzip"
        assert gzip.decompress(small.body) == plain.body
        assert "immutable" in small.headers["cache-control"]
        assert made.ask(script[1], accept_encoding="br").headers["content-encoding"] == "br"
        font = made.ask("/fonts/Besley_700Bold.woff2", accept_encoding="gzip, br")
        assert "content-encoding" not in font.headers
        assert made.ask("/fonts/Besley_700Bold.woff2", if_none_match=font.headers["etag"]).status == 304
        long = made.ask("/api/folder", accept_encoding="gzip")
        assert long.headers["content-encoding"] == "gzip"
        assert gzip.decompress(long.body)[:1] == b"{"
        assert "no-store" in made.ask("/").headers["cache-control"]
    finally:
        made.end()
