"""How long words take to be said.

The pace: 150 words a minute, the average of conversation in the United States by the National Center for Voice and Speech, as speech
trainers quote it (https://help4study.online/speech/presentation-speaking-words-per-minute); for presentations the same pages give 100 to
150. Stitch names are long words, so syllables are counted, not words: at 150 words a minute of everyday English, about 1.4 syllables a
word (from memory, no source), and with a pause at every stop and comma. The shares of both were fitted on a synthesiser at that pace.
"""

from __future__ import annotations

import re

WORDS_PER_MINUTE = 150
SYLLABLE_S, WORD_S, STOP_S, COMMA_S = 0.138, 0.092, 0.67, 0.57
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?|\d+")
_VOWELS = re.compile(r"[aeiouyàáâãäåæèéêëìíîïòóôõöøœùúûüý]+", re.IGNORECASE)
_SILENT = re.compile(r"(?<![aeiouy])(?:e|es|ed)$", re.IGNORECASE)
_ONES = (2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2)  # nought, one, two … nineteen
_TENS = (0, 0, 2, 2, 2, 2, 2, 3, 2, 2)


def seconds(words: str) -> float:
    """How long words take to be said, in seconds; 0 for none."""
    found = _WORD.findall(words)
    stops, commas = len(re.findall(r"[.!?:](?:\s|$)", words)), len(re.findall(r"[,;](?:\s|$)", words))
    return sum(syllables(w) for w in found) * SYLLABLE_S + len(found) * WORD_S + stops * STOP_S + commas * COMMA_S


def syllables(word: str) -> int:
    """Syllables of a word, or of a number said out; by groups of vowels, a last silent e left out."""
    if word.isdigit():
        return _of_number(int(word)) if len(word) < 7 else 2 * len(word)
    if len(word) > 1 and word.isupper():
        return len(word)
    groups = len(_VOWELS.findall(word))
    if groups > 1 and _SILENT.search(word) and not word.endswith(("le", "ches", "shes", "ses", "ted", "ded")):
        groups -= 1
    return max(1, groups)


def _of_number(n: int) -> int:
    """As English says it: "one hundred and four"."""
    if n < 20:
        return _ONES[n]
    if n < 100:
        return _TENS[n // 10] + (_ONES[n % 10] if n % 10 else 0)
    if n < 1000:
        return _ONES[n // 100] + 2 + (1 + _of_number(n % 100) if n % 100 else 0)
    return _of_number(n // 1000) + 2 + (_of_number(n % 1000) if n % 1000 else 0)
