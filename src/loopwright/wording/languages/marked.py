"""Words that stayed in another language, taken apart from the rest: so that a page can name the language of each."""

from __future__ import annotations

import re
from typing import NamedTuple

_KEPT = re.compile(r"\[(?P<code>[a-z]{2}): (?P<words>(?:[^\[\]]|\[[^\[\]]*\])*)\]")


class Run(NamedTuple):
    """A stretch of words; `language`: the code of the language they stayed in, "" for that of the text."""

    words: str
    language: str = ""


def runs(text: str) -> tuple[Run, ...]:
    """A text in its stretches, without the brackets that mark what stayed: "Mit A, [en: stuff it]." gives three."""
    found: list[Run] = []
    at = 0
    for m in _KEPT.finditer(text):
        found += [Run(text[at : m.start()]), Run(m["words"], m["code"])]
        at = m.end()
    return tuple(r for r in (*found, Run(text[at:])) if r.words)
