"""Waiting until something is true, on a page or on disk: asked again and again, as the page itself lets no words be run as script."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page
    from served import Served

STEP_MS = 50
LONG_MS = 60_000


def wait_for(made: Page, true: Callable[[], bool], what: str = "it") -> None:
    """Returns once it is true, the page living on meanwhile; fails after a while, saying what was waited for."""
    for _ in range(LONG_MS // STEP_MS):
        if true():
            return
        made.wait_for_timeout(STEP_MS)
    raise AssertionError(f"not true in {LONG_MS} ms: {what}")


def until(made: Page, true: str) -> None:
    """Returns once an expression is true on the page; fails with it after a while."""
    wait_for(made, lambda: bool(made.evaluate(f"() => Boolean({true})")), true)


def saved_with(made: Page, of: Served, words: str) -> None:
    """Returns once a design of the folder holds these words."""
    wait_for(made, lambda: any(words in f.read_text(encoding="utf-8") for f in of.folder.glob("*.txt")), words)
