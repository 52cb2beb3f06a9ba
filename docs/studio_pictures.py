# ruff: noqa: INP001 (a script, no package)
"""Every screen of the studio at three widths, light and dark: python docs/studio_pictures.py [DIR]. Needs Chromium and the built pages."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

ROOT = Path(__file__).parents[1]
LESSON = ROOT / "tests" / "outside" / "lessons" / "bulrush_hat.vtt"
SIZES = {"desk": (1440, 900), "tablet": (820, 1180), "phone": (390, 844)}
LOG = "0:00 shot 1\n0:30 Crown\n1:12 Rnd 2\n2:40 Rnd 3 count\n4:00 Body, Rnd 1\n6:00 Band, Rnd 1\n7:00 shot 46\n"
STEPS, WAIT_MS, SETTLE_MS = 6, 60_000, 700


def _there(selector: str) -> Callable[[Page], None]:
    return lambda p: p.wait_for_selector(selector, state="attached") and None


def _film(view: str) -> Callable[[Page], None]:
    def act(p: Page) -> None:
        p.locator(".shot-pick").nth(12).click()
        p.wait_for_function("() => document.querySelector('.bigcard img')?.naturalWidth > 0")
        if view:
            p.get_by_role("button", name=view).click()
        if view == "From the log":
            files = [{"name": "film-log.txt", "mimeType": "text/plain", "buffer": LOG.encode()}]
            p.locator(".gives input[type=file]").set_input_files(files=files)  # type: ignore[arg-type]
            p.wait_for_selector(".chapters li")

    return act


def _camera(way: str) -> Callable[[Page], None]:
    def act(p: Page) -> None:
        p.wait_for_selector(".cam .ways")
        if way:
            p.get_by_role("button", name=way, exact=True).click()
            p.locator(".tap").nth(3).click()
        for _ in range(0 if way else STEPS):
            p.locator("body").press("Space")

    return act


def _listen(p: Page) -> None:
    p.locator(".captions-in input[type=file]").set_input_files(str(LESSON))
    p.locator(".rowline").nth(8).click()


SCREENS: tuple[tuple[str, str, Callable[[Page], None]], ...] = (
    ("designs", "/", _there(".stand img")), ("write", "/write/samphire-beanie.txt", _there(".made svg")),
    ("sizes", "/sizes/samphire-beanie.txt", _there(".station")), ("swatches", "/swatches", _there("main")),
    ("questions", "/questions/samphire-beanie.txt", _there("main .sentence")),
    ("editing", "/editing/samphire-beanie.txt", _there("main .lines")),
    ("publish", "/publish/samphire-beanie.txt", _there(".files li")), ("in hand", "/hand/glasswort-bag.txt", _there(".hand")),
    ("film", "/film/samphire-beanie.txt", _film("")), ("film, from the log", "/film/samphire-beanie.txt", _film("From the log")),
    ("film, the kit", "/film/samphire-beanie.txt", _film("The kit")), ("beside the camera", "/camera/curlew-toy.txt", _camera("")),
    ("beside the camera, rows", "/camera/bulrush-hat.txt", _camera("Rows")), ("from captions to a draft", "/listen", _listen),
)


def studio_pictures(folder: Path) -> list[Path]:
    """Makes the pictures; none, with a word on standard error, where something that is needed is missing."""
    chromium = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
    built = Path(os.environ.get("LOOPWRIGHT_STATIC") or ROOT / "src" / "loopwright" / "studio" / "static") / "index.html"
    if chromium is None or find_spec("playwright") is None or not built.is_file():
        sys.stderr.write("no pictures of the studio: they need Chromium, playwright and the built pages (make studio)\n")
        return []
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as held:
        designs = Path(shutil.copytree(ROOT / "designs", Path(held) / "saltmarsh"))
        words = [sys.executable, "-m", "loopwright", "studio", str(designs), "--no-browser"]
        with subprocess.Popen(words, stdout=subprocess.PIPE, text=True) as process:  # noqa: S603 - our own command
            try:
                address = process.stdout.readline().strip() if process.stdout else ""
                return _all(folder, chromium, address)
            finally:
                process.kill()


def _all(folder: Path, chromium: str, address: str) -> list[Path]:
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where there is one

    made = []
    with sync_playwright() as api:
        browser = api.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--enable-unsafe-swiftshader"])
        for width, (wide, high) in SIZES.items():
            for theme in ("light", "dark"):
                context = browser.new_context(viewport={"width": wide, "height": high}, color_scheme=theme)  # type: ignore[arg-type]
                page = context.new_page()
                page.set_default_timeout(WAIT_MS)
                page.goto(address)
                for name, place, act in SCREENS:
                    page.goto(address.partition("/?")[0] + place)
                    act(page)
                    page.wait_for_timeout(SETTLE_MS)
                    made.append(folder / f"{name.replace(', ', '-').replace(' ', '-')}-{width}-{theme}.png")
                    page.screenshot(path=str(made[-1]))
                context.close()
        browser.close()
    return made


if __name__ == "__main__":
    for path in studio_pictures(Path(sys.argv[1] if len(sys.argv) > 1 else "pictures") / "studio"):
        sys.stdout.write(f"{path}\n")
