"""Web pages against the Nu HTML checker of the W3C (npm package vnu-jar, MIT): no error and no warning.

What it says of the page's policy is left out: it takes no data: for a source of images and finds no hash of a longer script. Whether the
policy lets through what it should is asked of Chromium, in test_pages_in_a_browser.py, where any refusal fails the test.
"""

from __future__ import annotations

import json
import re
import subprocess
from typing import Any

import pytest

from loopwright.publishing.web import html
from tests.outside.pages.checkers import java, npm_packages
from tests.publishing.made import published
from tests.publishing.web.test_page import with_hostile_words

_OF_POLICY = re.compile("(?:Resource|Inline script) violates Content Security Policy")


@pytest.fixture(scope="module")
def checker(request, tmp_path_factory):
    """A function from pages by name to the checker's messages but the mere remarks."""
    command = [java(), "-jar", str(npm_packages(request, tmp_path_factory) / "vnu-jar" / "build" / "dist" / "vnu.jar"), "--format", "json", "--stdout"]

    def messages(pages: dict[str, str]) -> list[dict[str, Any]]:
        folder = tmp_path_factory.mktemp("pages")
        for name, page in pages.items():
            (folder / f"{name}.html").write_text(page, encoding="utf-8")
        made = subprocess.run([*command, *(str(p) for p in sorted(folder.iterdir()))], capture_output=True, check=False, timeout=240)
        found = json.loads(made.stdout)["messages"]
        found = [m for m in found if m["type"] != "info" or m.get("subType") == "warning"]
        return [m for m in found if not _OF_POLICY.match(m["message"])]

    return messages


def test_pages_of_all_kinds(checker):
    pages = {
        "hat-of-ten-sizes": html(published("samphire-beanie")),
        "bonnet": html(published("avocet-bonnet")),
        "bonnet-left": html(published("avocet-bonnet", left_handed=True, size=1)),
        "cardigan-large": html(published("plover-cardigan", large_print=True)),
        "toy": html(published("curlew-toy", ink_saving=True)),
        "words-only": html(published("avocet-bonnet", words_only=True, terms="us")),
        "hostile": html(with_hostile_words()),
    }
    assert checker(pages) == []


def test_the_checker_finds_a_fault(checker):
    """So that a silent checker is not taken for a valid page."""
    assert checker({"bad": html(published("curlew-toy")).replace("<main", "<main><table><p>x</p></table", 1)})
