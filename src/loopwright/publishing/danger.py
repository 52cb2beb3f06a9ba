"""Which of the designer's own notes are cautions: by the words that such notes use (common practice, no source)."""

from __future__ import annotations

import re

_WORDS = re.compile(
    r"\b(?:strang\w*|chok\w*|asleep|sleep\w*|car seat|unattended|swallow\w*|danger\w*|safety|small parts|suffocat\w*|"
    r"wind round a finger)\b", re.IGNORECASE,
)


def speaks_of_danger(text: str) -> bool:
    """Whether a note warns of something."""
    return _WORDS.search(text) is not None
