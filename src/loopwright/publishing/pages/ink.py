"""Colours of pages. All text keeps a contrast of 4.5 and more with white paper, all lines that carry meaning one of 3."""

from __future__ import annotations

import re

from loopwright.publishing.document import Design, Edition
from loopwright.publishing.errors import PageError

NEEDED = 4.5  # WCAG 2.2, 1.4.3: text against its ground
_HEX = re.compile(r"#?(?P<digits>[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3})$")
_COLOURS = {
    "ink": "#12262C", "soft": "#3C5156", "edge": "#748988", "rule": "#C9D6D0", "stripe": "#EFF4F0", "tape": "#84702A", "accent": "#12262C",
}
_BLACK = {"ink": "#000000", "soft": "#000000", "edge": "#6B6B6B", "rule": "#8C8C8C", "stripe": "", "tape": "#6B6B6B", "accent": "#000000"}


def colours(edition: Edition, design: Design) -> dict[str, str]:
    """The colours of an edition by what they are for, "" for none. Raises PageError for an accent that is no colour."""
    found = dict(_BLACK if design == "far" or edition.ink_saving else _COLOURS)
    if edition.accent and design != "far" and not edition.ink_saving:
        found["accent"] = accent(edition.accent)[0]
    return found


def accent(asked: str) -> tuple[str, str]:
    """A colour that can be read on white, darkened where it must be, and what was done, in words ("" for nothing).

    Raises PageError for what is no colour.
    """
    m = _HEX.match(asked.strip())
    if m is None:
        raise PageError(f"accent '{asked}' is no colour; write it as # and six digits, such as #0A6174")
    digits = m["digits"] if len(m["digits"]) == 6 else "".join(2 * c for c in m["digits"])
    given = tuple(int(digits[i : i + 2], 16) for i in (0, 2, 4))
    share = 1.0
    while contrast(_darkened(given, share)) < NEEDED:
        share -= 0.02
    taken = "#{:02X}{:02X}{:02X}".format(*_darkened(given, share))
    if share == 1.0:
        return taken, ""
    return taken, f"accent #{digits.upper()} has a contrast of {contrast(given):.1f} with white, too little to read; darkened to {taken}"


def _darkened(rgb: tuple[int, ...], share: float) -> tuple[int, ...]:
    return tuple(round(c * share) for c in rgb)


def contrast(rgb: tuple[int, ...]) -> float:
    """Contrast of a colour (0 to 255 each) with white, 1 to 21. Source: WCAG 2.2, definitions of contrast ratio and relative luminance."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (v / 255 for v in rgb)]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)
