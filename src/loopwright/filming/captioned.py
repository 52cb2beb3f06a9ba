"""Words broken into captions: lines and blocks of them, and the time each needs to be read.

Limits: lines of at most 42 characters, two of them, 5/6 of a second to 7 seconds (timed text style guide of a university library,
https://utk-timed-text-guide.readthedocs.io/en/latest/contents/1_timed_text_style_guide.html); at most 20 characters a second (caption
guidelines, 15 to 20; https://gist.github.com/knarf18/76f3738e970e8efa9243).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

LINE, LINES, PER_SECOND, SHORTEST_S, LONGEST_S = 42, 2, 20.0, 5 / 6, 7.0
GAP_S = 0.04
_SENTENCE = re.compile(r"(?<=[.!?])\s+")


def least_s(text: str) -> float:
    """The shortest time in which all captions of a text may be read; 0 for none."""
    found = blocks(text)
    return sum(least(b) + GAP_S for b in found)


def least(block: Sequence[str]) -> float:
    """The shortest time in which a block may be read; a little more, for times are rounded."""
    return max(SHORTEST_S, len("\n".join(block)) / PER_SECOND) + 0.002


def blocks(text: str) -> list[list[str]]:
    """Lines, two by two; a sentence begins a block where it has not room in the one before."""
    found: list[list[str]] = []
    for sentence in _SENTENCE.split(text.strip()):
        lines = lines_of(sentence)
        if found and len(lines) == 1 and len(found[-1]) == 1 and len(found[-1][0]) + len(lines[0]) < LINE:
            found[-1] = [f"{found[-1][0]} {lines[0]}"]
            continue
        if found and len(found[-1]) + len(lines) <= LINES:
            found[-1] += lines
            continue
        found += [lines[i : i + LINES] for i in range(0, len(lines), LINES)]
    return [b for b in found if b]


def lines_of(text: str) -> list[str]:
    """Lines of at most so many characters, as few as may be and about alike; a longer word is cut."""
    fewest = len(_broken(text, LINE))
    for width in range(max(1, len(text) // max(1, fewest)), LINE):
        found = _broken(text, width)
        if len(found) == fewest and all(len(x) <= LINE for x in found):
            return found
    return _broken(text, LINE)


def _broken(text: str, width: int) -> list[str]:
    lines: list[str] = []
    for word in (w[i : i + LINE] for w in text.split() for i in range(0, len(w), LINE)):
        if lines and len(lines[-1]) + 1 + len(word) <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
