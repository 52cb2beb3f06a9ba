"""Lines as they were meant: a long line that was broken goes on in the lines indented under it; quoted lines are no instructions."""

from __future__ import annotations

import re

LONG = 50
"""A line shorter than this was not broken for its length."""
_BEGINS = re.compile(r"\s*(?:(?:next\s+)?(?:rows?|rnds?|rounds?)\b[^:]{0,60}:|[-–—•]\s|\d{1,3}\.\s|\{|[A-Z][A-Za-z ]{1,30}:\s)", re.IGNORECASE)
_INDENTED = re.compile(r"\n[^\S\n]{2}")


def unfolded(text: str) -> str:
    """A text of the same length, with spaces for the ends of lines that go on in the next.

    A line goes on when it is long, and the next one is indented by two or more further than the one that began, with no empty line
    between, and does not begin anything itself.
    """
    if _INDENTED.search(text) is None:  # as in most texts
        return text
    parts: list[str] = []
    margin = last = 0
    for line in text.split("\n"):
        bare, indent = line.strip(), len(line) - len(line.lstrip())
        goes_on = bare and last >= LONG and indent >= margin + 2 and not _BEGINS.match(line) and not quoted(line)
        if parts:
            parts.append(" " if goes_on else "\n")
        if not goes_on:
            margin = indent
        parts.append(line)
        last = 0 if quoted(line) else len(line.rstrip())
    return "".join(parts)


def quoted(line: str) -> bool:
    """Whether a line is told, not worked: it begins with ">", as quotations in plain text do."""
    return line.lstrip()[:1] == ">"
