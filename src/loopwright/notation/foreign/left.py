"""Words that a translation left in English, "[en: …]": they stay, in the terms that go with the stitches told in the other language."""

from __future__ import annotations

import re

LEFT = re.compile(r"\[en:\s*([^\[\]]*)\]")
_UK = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "trtr": "dtr", "ss": "sl st", "miss": "skip", "missed": "skipped"}
_WORD = re.compile(r"(?<![A-Za-z])(?P<post>fp|bp|FP|BP)?(?P<word>dc|htr|trtr|tr|dtr|ss|missed|miss|sc|hdc)(?P<tog>\dtog)?s?(?![A-Za-z])", re.IGNORECASE)
_ONE_SIDE = {"uk": frozenset({"htr", "ss", "miss", "missed"}), "us": frozenset({"sc", "hdc"})}
_STITCHES = frozenset({"sc", "hdc", "dc", "tr", "dtr"})


def says_uk(left: list[str], told: set[str]) -> bool:
    """Whether English words left over are in UK terms. `told`: stitches (US keys) of the words that were translated.

    What one side alone says decides, else which reading names more of the stitches that the rest tells.
    """
    words = {m["word"].lower() for text in left for m in _WORD.finditer(text)}
    if words & _ONE_SIDE["us"] or not words:
        return False
    if words & _ONE_SIDE["uk"]:
        return True
    as_us, as_uk = words & _STITCHES, {_UK.get(w, w) for w in words} & _STITCHES
    return len(as_uk & told) > len(as_us & told)


def in_us(text: str) -> str:
    """UK terms as US terms."""
    return _WORD.sub(lambda m: f"{m['post'] or ''}{_UK.get(m['word'].lower(), m['word'])}{m['tog'] or ''}", text)
