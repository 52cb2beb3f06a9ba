"""Fonts and templates for pages, read once in a run."""

from __future__ import annotations

import pytest

from loopwright.publishing.pages import Pages


@pytest.fixture(scope="session")
def pages():
    """What sets pages."""
    with Pages() as opened:
        yield opened
