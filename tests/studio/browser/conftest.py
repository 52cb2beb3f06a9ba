"""A studio in a real Chromium: one process on a folder of copied designs, pages whose console, errors and requests are watched."""

from __future__ import annotations

import json
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from served import Served, start  # noqa: E402 - beside these tests, found by the line above

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

ROOT = Path(__file__).parents[3]
AXE = ROOT / "frontend" / "node_modules" / "axe-core" / "axe.min.js"
BUILT = Path(os.environ.get("LOOPWRIGHT_STATIC") or ROOT / "src" / "loopwright" / "studio" / "static") / "index.html"
CHROMIUM = next((p for p in (os.environ.get("CHROMIUM"), shutil.which("chromium"), shutil.which("chromium-browser")) if p), None)
ARGS = [
    "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--disable-dev-shm-usage", "--enable-unsafe-swiftshader",
]
QUICK_MS = 90_000


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium; skipped, with a word, where there is none or the pages are not built."""
    if CHROMIUM is None:
        pytest.skip("no Chromium on this machine")
    if not BUILT.is_file():
        pytest.skip("the studio's pages are not built: make studio")
    api = pytest.importorskip("playwright.sync_api")
    with api.sync_playwright() as made:
        chromium = made.chromium.launch(executable_path=CHROMIUM, args=ARGS)
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A studio on copies of all designs."""
    folder = tmp_path_factory.mktemp("saltmarsh")
    for design in (ROOT / "designs").glob("*.txt"):
        shutil.copy(design, folder)
    served = start(folder)
    yield served
    served.end()


@pytest.fixture
def empty_studio(tmp_path: Path) -> Iterator[Served]:
    """A studio on an empty folder."""
    folder = tmp_path / "new"
    folder.mkdir()
    served = start(folder)
    yield served
    served.end()


@pytest.fixture
def page(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Opens a place of a studio; at the end nothing may stand in the console, and nothing may have been asked of another machine."""
    with ExitStack() as held:
        heard: list[str] = []

        def opened(of: Served, place: str = "/", *, width: int = 1440, height: int = 900, dark: bool = False, **more: Any) -> Page:
            context = browser.new_context(viewport={"width": width, "height": height}, color_scheme="dark" if dark else "light", **more)
            held.callback(context.close)
            made = context.new_page()
            made.set_default_timeout(QUICK_MS)
            made.on("console", lambda m: heard.append(f"{m.type}: {m.text}") if m.type in ("error", "warning") else None)
            made.on("pageerror", lambda e: heard.append(f"fault: {e}"))
            made.on("request", lambda r: None if r.url.startswith((f"http://{of.host}", f"ws://{of.host}", "blob:", "data:")) else heard.append(f"went to {r.url}"))
            made.goto(of.address)
            if place != "/":
                made.goto(f"http://{of.host}{place}")
            return made

        yield opened
        assert not [h for h in heard if "GPU stall" not in h and "GL Driver" not in h]


@pytest.fixture
def axe() -> Callable[[Page], list[str]]:
    """What axe finds on a page (WCAG 2 A and AA, best practice), one line for each rule and place."""
    if not AXE.is_file():
        pytest.skip("axe-core is not installed: npm ci in frontend")
    source = AXE.read_text(encoding="utf-8")

    def found(made: Page) -> list[str]:
        made.evaluate(source)
        result = made.evaluate("() => axe.run(document, {resultTypes: ['violations']})")
        return [f"{v['id']}: {n['target']} {json.dumps(n['html'][:160])}" for v in result["violations"] for n in v["nodes"]]

    return found
