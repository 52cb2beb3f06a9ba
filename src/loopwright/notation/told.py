"""Lines before the first row that tell something and ask for no stitch: notes, definitions, measurements, lists of what is needed."""

from __future__ import annotations

import re

_BLOCK = re.compile(
    r"(?:(?:pattern|designer|special|general|helpful)\s+)?notes?|abbreviations?(?:\s+used)?|special\s+stitch(?:es)?|stitch(?:es)?(?:\s+(?:used|guide))?"
    r"|materials(?:\s+needed)?|supplies|you(?:\s+will|'ll)\s+need|what\s+you\s+need|gauge|tension|yarn|hook|notions"
    r"|(?:finished\s+)?(?:sizes?|measurements?|dimensions)|skill\s+level",
    re.IGNORECASE,
)
_ROW_LABEL = re.compile(r"(?:\d{1,3}(?:st|nd|rd|th)\s+)?(?:rows?|rnds?|rounds?|r)\b\.?\s*\d*|foundation\b|set[- ]?up\b", re.IGNORECASE)
_DEFINES = re.compile(r"[\w() /.&-]{1,24}(?:\s+\([^)]*\))?\s*=\s*\S")
_HEADED = re.compile(
    r"(?:finished|actual|to fit|fits|approx\w*|skill|difficulty|level|gauge|tension|yarn|hook|stitch(?:es)? used|special stitch|abbreviation|"
    r"measurement|dimension|material|notion|you will need|size)[\w &/()-]{0,30}:",
    re.IGNORECASE,
)
_OF_CHAINS = re.compile(
    r"(?:the\s+|all\s+|each\s+|any\s+)?(?:turning|starting|beginning|start|beg)?\s*-?\s*(?:\d\s*-?\s*ch(?:ain)?s?|ch(?:ain)?s?\s*-?\s*\d?)\b[^.;]{0,60}"
    r"\bcounts?\b",
    re.IGNORECASE,
)
_OF_WORK = re.compile(
    r"\b(?:is|are)\s+(?:\w+ly\s+|then\s+|all\s+)?(?:worked|made|crocheted|multiples?|written|sewn|joined|closed|picked up|left|turned)\b", re.IGNORECASE
)


LONGEST_NAME = 120


def opens_block(line: str) -> bool:
    """Whether a line is the bare name of a block such as "Notes" or "Abbreviations (US terms):"; the block ends at a blank line."""
    return len(line) <= LONGEST_NAME and _BLOCK.fullmatch(re.sub(r"\s*\([^)]*\)", "", line).strip(" :.-–—")) is not None


def is_told(line: str, in_block: bool) -> bool:
    """Whether a line before the first row tells something, though its words name stitches. A line with a row's label never does."""
    words = line.strip()
    if _ROW_LABEL.match(words):
        return False
    if in_block or _DEFINES.match(words) or _HEADED.match(words):
        return True
    counts = _OF_CHAINS.match(words)
    return counts is not None and "(" not in counts.group() or _OF_WORK.search(words) is not None
