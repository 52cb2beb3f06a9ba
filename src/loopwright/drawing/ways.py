"""Which way up a thing stands, by what it is called."""

from __future__ import annotations

import re

_BOTTOM = re.compile(r"\b(?:bottom|base|sole|underside)\b", re.IGNORECASE)
_OPEN_ABOVE = re.compile(r"\b(?:bag|tote|basket|pot|bowl|pouch)\b", re.IGNORECASE)


def is_bottom(section: str | None) -> bool:
    """Whether a section is what a thing stands on."""
    return _BOTTOM.search(section or "") is not None


def stands_open(title: str, first_section: str | None) -> bool:
    """Whether it stands with its opening upward: what is called a bag or the like, and what begins with its bottom."""
    return _OPEN_ABOVE.search(title) is not None or is_bottom(first_section)
