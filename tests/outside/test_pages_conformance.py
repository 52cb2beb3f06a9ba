"""Pages against PDF/UA-1 and PDF/A-2a by an independent checker (page-validation, which is held to the veraPDF corpus by its makers)."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import page
import pytest

from loopwright.publishing.pages import Pages
from tests.publishing.made import published
from tests.publishing.pages.made_up import make

EDITIONS: dict[str, tuple[str, dict[str, Any]]] = {
    "columns": ("avocet-bonnet", {}), "ten sizes": ("samphire-beanie", {"paper": "letter"}), "one size": ("samphire-beanie", {"size": 6}),
    "large print": ("avocet-bonnet", {"large_print": True}), "phone": ("samphire-beanie", {"paper": "phone"}),
    "German": ("avocet-bonnet", {"language": "de"}), "grids": ("reedbed-panel", {}), "motifs": ("sea-lavender-blanket", {}),
}
# Where the compressed bytes of a stream happen to end in a carriage return, the checker takes it for part of the end of line that follows.
MISTAKEN = {"PDFA2A-STREAM-LENGTH-001"}


@pytest.fixture(scope="module")
def setter():
    with Pages() as pages:
        yield pages


def failures(pdf: bytes) -> set[str]:
    """The rules that pages fail."""
    return {f.rule_id for profile in ("ua1", "2a") for f in page.validate_pdf_bytes(pdf, profile=profile).failures}


@pytest.mark.parametrize("name", EDITIONS)
def test_pages_keep_to_both_standards(name, setter):
    design, edition = EDITIONS[name]
    assert failures(setter.pdf(published(design, **edition))) - MISTAKEN == set()


def test_pages_without_sizes_keep_to_them_too(setter):
    assert failures(setter.pdf(replace(make(1, 1, 2), version="1.0"))) - MISTAKEN == set()


def test_the_checker_finds_a_fault(setter):
    """So that a silent checker is not taken for good pages."""
    whole = setter.pdf(published("avocet-bonnet"))
    assert failures(whole.replace(b"/Marked true", b"/Marked null", 1))
    assert failures(re.sub(rb"/Alt\b", b"/Alx", whole))
