"""The abbreviations that a text in another language uses, with what they stand for."""

from __future__ import annotations

import re

from loopwright.wording.languages.voice import LanguageVoice

_THINGS = frozenset({"hook", "yarn", "size", "gauge", "marker", "colour"})
_SMALL = ("rep", "skip", "together")
_KEPT = re.compile(r"\[[a-z]{2}: (?:[^\[\]]|\[[^\[\]]*\])*\]")


def abbreviations(voice: LanguageVoice, text: str) -> tuple[tuple[str, str], ...]:
    """Short and long form of each, by the alphabet. Words that stayed in English are not looked at."""
    text = _KEPT.sub(" ", text)
    table = voice.tongue
    found: dict[str, str] = {}
    composed = {k: table.stitch(k) for k in voice.heard.used if k not in table.stitches and table.knows(k) and not k.endswith("tog")}
    nouns = (word for key, word in table.nouns.items() if key not in _THINGS)
    small = (table.words[key] for key in _SMALL if key in table.words)
    for word in (*table.stitches.values(), *composed.values(), *nouns, *small):
        if word.short != word.long and word.short not in found and _is_used(word.short, text):
            found[word.short] = word.long
    return tuple((s, found[s]) for s in sorted(found, key=lambda s: (s.lower(), s)))


def _is_used(short: str, text: str) -> bool:
    return bool(re.search(rf"(?<!\w){re.escape(short)}(?![\w’'])", text))
