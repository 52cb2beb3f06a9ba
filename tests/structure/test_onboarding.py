"""docs/onboarding.md: what it shows after >>> is what happens."""

import doctest
from pathlib import Path

PAGE = Path(__file__).parents[2] / "docs" / "onboarding.md"


def test_the_page_tells_what_happens():
    done = doctest.testfile(str(PAGE), module_relative=False, encoding="utf-8")
    assert done.attempted > 25
    assert done.failed == 0
