"""Waiting until something is true on a page: asked again and again, as the page itself lets no words be run as script."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

STEP_MS = 50
LONG_MS = 20_000


def until(made: Page, true: str) -> None:
    """Returns once an expression is true on the page; fails with it after a while."""
    for _ in range(LONG_MS // STEP_MS):
        if made.evaluate(f"() => Boolean({true})"):
            return
        made.wait_for_timeout(STEP_MS)
    raise AssertionError(f"not true in {LONG_MS} ms: {true}")
