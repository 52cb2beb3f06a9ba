"""Which sizes a pattern has: as its heading names them, or as its lists of numbers show."""

from __future__ import annotations

import re

_SIZES_BELOW = re.compile(r"^[ \t]*sizes?[ \t]*\n[ \t]*([^\n(\[]{1,30}[(\[][^()\[\]\n]+,[^()\[\]\n]+[)\]])[ \t]*$", re.IGNORECASE | re.MULTILINE)
_A_MEASURE = re.compile(r"(?:about|approx\w*\.?|ca\.?)?\s*\d[\d.½¼¾ ]*\s*(?:cm|mm|m|in|ins|inch|inches|\"|″|”)(?:[ .][^,;()]*)?", re.IGNORECASE)  # the one size's finished size
_FIRST_SIZE = re.compile(r"\s*([^,;()\[\]]+?)\s*[(\[](?!(?:to\s+)?fits?\b|about|approx|finished|shown|\d+\s*[-–](?!\s*\d+\s*(?:m|mths?|mos?|months?|y|yrs?|years?)\b))([^()\[\]]+)[)\]]\s*(months?|mths?|mos?|years?|yrs?|cm|in(?:ches)?)?\s*(?:\.(?:\s+[A-Z].*)?)?\s*$", re.IGNORECASE)


def sizes_of(text: str) -> tuple[str, ...]:
    """The names of the sizes: of the line or the block that tells them, else as many as the lists of numbers have."""
    told = re.search(r"^sizes?:\s*(.+)$", text, re.IGNORECASE | re.MULTILINE) or _SIZES_BELOW.search(text)
    if told and not _A_MEASURE.fullmatch(told[1].strip()):
        first = _FIRST_SIZE.match(told[1])  # "S (M, L, XL)": the first size, the others in brackets
        said = f"{first[1]}, {first[2].replace(':', ',') if first[3] else first[2]}" if first else told[1]
        unit = f" {first[3]}" if first and first[3] else ""
        names = tuple(n.strip() + unit for n in re.split(r"[,;]", said) if n.strip())[:30]
        if names:
            return names
    votes: dict[int, int] = {}
    for m in re.finditer(r"\d{1,9}\s*[(\[](\d{1,9}(?:\s*[,:;]\s*\d{1,9}|\s?[-–]\s?\d{1,9}(?=\s?[-–)\]]))*)[)\]]", text[:200_000]):
        n = len(re.findall(r"\d{1,9}", m[1])) + 1
        if n == 3 and re.search(r"[-–]", m[1]):
            continue  # a range, not two sizes
        ends = re.match(r"[ .;]*(?:\n|\Z|\()", text[m.end() :][:40]) is not None
        if n == 2 and (ends or re.search(r"(?:x|\*|row|rnd|round|times)\s*$", text[max(0, m.start() - 7) : m.start()], re.IGNORECASE)):
            continue
        votes[n] = votes.get(n, 0) + (3 if n > 2 else 1)
    best = max(votes, key=lambda k: votes[k], default=1)
    return tuple(f"size {i + 1}" for i in range(best)) if 1 < best <= 30 else ("one size",)
