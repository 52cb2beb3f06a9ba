"""What the pages are held against: npm packages of the lock file here, Chromium, Java. What is missing is said, and its tests are skipped."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

HERE = Path(__file__).parent
ARGUMENTS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
    "--disable-sync", "--disable-dev-shm-usage",
]


def java() -> str:
    """The command; skips the test where there is none."""
    found = shutil.which("java")
    if found is None:
        pytest.skip("java is needed for this checker, and is not here (Debian: default-jre-headless)")
    return found


def npm_packages(request: pytest.FixtureRequest, factory: pytest.TempPathFactory) -> Path:
    """A folder with the packages of the lock file, made once and kept in pytest's cache where there is one."""
    npm = shutil.which("npm")
    if npm is None:
        pytest.skip("npm is needed to fetch the checkers, and is not here")
    cache = getattr(request.config, "cache", None)
    folder = Path(cache.mkdir("pages-checkers")) if cache else factory.mktemp("pages-checkers")
    lock = (HERE / "package-lock.json").read_text(encoding="utf-8")
    done = folder / "installed.json"
    if not done.exists() or done.read_text(encoding="utf-8") != lock:
        for name in ("package.json", "package-lock.json"):
            shutil.copy(HERE / name, folder / name)
        command = [npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund"]
        made = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False, timeout=240)
        if made.returncode != 0:
            pytest.skip(f"the checkers could not be installed: {made.stderr.strip()[-300:]}")
        done.write_text(lock, encoding="utf-8")
    return folder / "node_modules"


@contextmanager
def chromium() -> Iterator[Browser]:
    """A browser; skips the test where there is none."""
    playwright = pytest.importorskip("playwright.sync_api", reason="playwright is needed to look at pages in a browser")
    path = shutil.which("chromium") or shutil.which("google-chrome")
    if path is None:
        pytest.skip("chromium is needed to look at pages in a browser, and is not here (Debian: chromium)")
    with playwright.sync_playwright() as started:
        browser = started.chromium.launch(executable_path=path, args=ARGUMENTS)
        yield browser
        browser.close()
