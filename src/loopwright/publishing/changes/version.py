"""The version that a heading tells: "Version: 1.3 (2026-11-20)", and what is written like it."""

from __future__ import annotations

import re

from loopwright.model.tree import Document, HeadLine
from loopwright.publishing.changes.model import Version

_LINE = re.compile(r"^[ \t]*(?:version|edition|ver)\b[ \t]*[:.]?[ \t]*(?P<value>v?\.?[ \t]*\d[^\n]*)$", re.IGNORECASE | re.MULTILINE)
_NUMBER = re.compile(r"\d+(?:\.\d+)*")
_DATES = (
    r"\d{4}-\d{1,2}-\d{1,2}", r"\d{1,2}[./]\d{1,2}[./]\d{2,4}",
    r"\d{1,2}\.?\s+[^\W\d_]{3,12}\.?,?\s+\d{4}", r"[^\W\d_]{3,12}\.?\s+\d{1,2},?\s+\d{4}", r"[^\W\d_]{3,12}\.?\s+\d{4}",
)
_DATE = re.compile("|".join(f"(?:{d})" for d in _DATES))
_LONGEST = 4  # parts of a version's number that are compared
_FAR_DOWN = 4000  # characters; a heading is no longer


def version_of(document: Document) -> Version | None:
    """The version in the heading; a line "Date:" gives the date where the version has none. None where neither is told."""
    heads = [i for i in document.items if isinstance(i, HeadLine)]
    told = next((i.value for i in heads if i.name in ("version", "edition")), None)
    if told is None:
        first = next((i.span.start for i in document.items if type(i).__name__ == "Row"), len(document.text))
        line = _LINE.search(document.text[: min(first, _FAR_DOWN)])
        told = line["value"] if line is not None else None
    date = next((i.value.strip() for i in heads if i.name in ("date", "version date")), "")
    if told is None:
        return Version("", date) if date else None
    return parsed(told, date)


def parsed(text: str, date: str = "") -> Version:
    """A version out of what stands behind "Version:". Anything is taken: what is no number and no date is its name."""
    found = _DATE.search(text)
    said = found.group() if found is not None else date
    rest = text.replace(found.group(), " ", 1) if found is not None else text
    rest = " ".join(re.sub(r"[()\[\],;]", " ", rest).split()).strip(" .-–—")
    number = _NUMBER.search(rest)
    numbers = tuple(int(n[:9]) for n in number.group().split(".")[:_LONGEST]) if number is not None else ()
    plain = re.fullmatch(r"(?:v(?:er(?:sion)?)?\.?\s*)?(\d+(?:\.\d+)*)", rest, re.IGNORECASE)
    return Version(plain[1] if plain else rest, said, numbers)


def rises(old: Version | None, new: Version | None) -> bool | None:
    """Whether the new version's number is higher; None where one of them has no number."""
    if old is None or new is None or not old.numbers or not new.numbers:
        return None
    return _filled(new.numbers) > _filled(old.numbers)


def _filled(numbers: tuple[int, ...]) -> tuple[int, ...]:
    """1.3 and 1.3.0 are one version."""
    return numbers + (0,) * (_LONGEST - len(numbers))
