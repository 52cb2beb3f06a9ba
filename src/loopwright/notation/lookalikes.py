"""Letters that look like those of the trade's abbreviations: the dotted and dotless i of a Turkish keyboard, letters of the Cyrillic alphabet.

Common practice, no source: the forms were met in patterns that were put into English on another keyboard.
"""

from __future__ import annotations

_ALIKE = str.maketrans({"İ": "I", "ı": "i", "а": "a", "е": "e", "о": "o", "р": "p", "с": "c", "х": "x", "в": " ", "А": "A", "В": "B", "Е": "E", "М": "M", "О": "O", "Р": "P", "С": "C", "Т": "T", "Х": "X"})


def plain_letters(text: str) -> str:
    """The text with such letters put as the plain ones, of the same length: "6 İNC" as "6 INC"."""
    return text if text.isascii() else text.translate(_ALIKE)
