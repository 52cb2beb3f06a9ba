"""Pasting into a page."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page


def paste(made: Page, words: str) -> None:
    """As the browser pastes: the clipboard's text goes to what has the focus."""
    made.evaluate(
        "(t) => { const d = new DataTransfer(); d.setData('text/plain', t);"
        " document.activeElement.dispatchEvent(new ClipboardEvent('paste', { clipboardData: d, bubbles: true, cancelable: true })); }",
        words,
    )
