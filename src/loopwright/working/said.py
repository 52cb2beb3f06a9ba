"""What the words before the rows say of turning chains: "Turning chain: ch 1 does not count as a st", "Ch 3 counts as dc throughout"."""

from __future__ import annotations

import re
from typing import Any

from loopwright.kept import of_short
from loopwright.model.tree import Document, Row

_SAID = re.compile(
    r"\b(?:(?P<before>\d{1,2})[\s-]+)?(?:(?:beg(?:inning)?|turning|starting|initial|t)[\s-]+)?ch(?:ain)?s?\b[\s-]*(?P<n>\d{1,2})?(?:\s+at\s+(?:the\s+)?(?:start|beg(?:inning)?)\s+of\s+(?:(?:each|a|the|every)\s+)?(?:row|rnd|round))?"
    r"[^.;:,\d\n]{0,30}?\b(?P<how>does\s+not\s+count|do\s+not\s+count|doesn[’']t\s+count|don[’']t\s+count|never\s+counts?|(?:is|are)\s+(?:not|never)\s+(?:ever\s+)?(?:counted|an?\s+(?:(?:first|real|true)\s+)?(?:st|stitch|[sdh]{1,2}c|h?tr)\b|(?:sts|stitches)\b)|stands?\s+(?:in\s+)?(?:for|as)(?=\s+(?:(?:the|an?|one|1|your|first|1st)\s+){0,2}(?:[sdh]{1,2}c|[dh]?tr|st)\b)|(?:is|are)\s+(?:always\s+)?(?:an?|the|your)(?=\s+(?:(?:first|1st)\s+)?(?:[sdh]{1,2}c|[dh]?tr|st)\b(?!\s+(?:at|of|in)\b))|(?:does\s+)?counts?\b|counted\s+as|is\s+counted|=(?=\s*(?:an?\s+|1\s+|one\s+|first\s+)?(?:dc|tr|htr|hdc|dtr|sc|st)\b))"
    r"(?P<value>\s*(?:as\s+(?:a\s+|one\s+|1\s+)?(?:st|stitch)\s*)?:\s*(?:yes|no)\b)?",
    re.IGNORECASE,
)
_COUNTED = re.compile(r"\bcounting\s+(?:the\s+)?turning[\s-]+ch(?:ain)?\s+as\s+(?:an?|1|one|(?:the\s+)?first)\b", re.IGNORECASE)  # "(60 dc, counting turning ch as 1 dc)"
_NEITHER = re.compile(r"\bneither\s+(?:the\s+)?ch(?:ain)?[\s-]?(?P<a>\d)\s+nor\s+(?:the\s+)?ch(?:ain)?[\s-]?(?P<b>\d)\s+(?:(?:is|are|will\s+be)\s+)?(?:ever\s+)?count", re.IGNORECASE)  # "neither ch 3 nor ch 2 is ever counted"
_ONE_COUNTS = re.compile(r"\(\s*(?:(?:it|this|which)\s+)?(?:is|stands\s+(?:for|as)|counts\s+as|=)\s*(?:(?:an?|the|1|one)\s+)?(?:(?:first|1st)\s+)?(?:dc|sc|st)\b", re.IGNORECASE)  # "1 ch (counts as first dc)"
_ONE = re.compile(r"\b(?:1\s?ch|ch\s?-?1)\s*$", re.IGNORECASE)
_HEADED = re.compile(r"^turning chains?(?:\s+counts?(?:\s+as\s+(?:a\s+)?(?:st|stitch))?)?\s*:\s*(?P<value>.*)$", re.IGNORECASE | re.MULTILINE)


def said(document: Document) -> tuple[tuple[str, Any], ...]:
    """Conventions to begin with: ("told-ch-3", True) where ch 3 is said to count, ("told-ch", False) where no turning chain is."""
    found = _said(document.text[: next((i.span.start for i in document.items if isinstance(i, Row)), 0)])
    low = document.text.lower()
    counted = ("told-ch", True) if not any(name == "told-ch" for name, _ in found) and "counting" in low and _COUNTED.search(low) is not None else None
    one = ("one-counts", True) if any(_ONE.search(low, max(0, m.start() - 12), m.start()) is not None for m in _ONE_COUNTS.finditer(low)) else None
    return tuple(sorted((*found, *(told for told in (counted, one) if told is not None)))) if counted or one else found


@of_short(16)
def _said(front: str) -> tuple[tuple[str, Any], ...]:
    """What is said before the first row; kept, as rows are written more often than what stands before them."""
    found: dict[str, bool] = {}
    for head in _HEADED.finditer(front):
        value = head["value"].strip().lower()
        if value.rstrip(".") in ("yes", "no", "counts", "does not count", "counts as a st", "does not count as a st", "counts as a stitch", "does not count as a stitch"):
            found["told-ch"] = value.startswith(("yes", "counts"))
    for m in _NEITHER.finditer(front):
        found |= {f"told-ch-{m['a']}": False, f"told-ch-{m['b']}": False}
    for m in _SAID.finditer(front):
        no = re.search(r"\bnot\b|n[’']t\b|\bnever\b", m.group(), re.IGNORECASE) is not None or bool(m["value"] and m["value"].lower().rstrip().endswith("no"))
        length = m["n"] or m["before"]
        if length:
            found.setdefault(f"told-ch-{length}", not no)
        elif re.match(r"(?:beg|turning|starting|initial|t)", m.group(), re.IGNORECASE):
            found.setdefault("told-ch", not no)
    return tuple(sorted(found.items()))


_FLAT = re.compile(r"\bturn(?:ing)?\s+at\s+(?:the\s+)?end\s+of\s+(?:each|every)\s+row|\bworked\s+flat\b|\bworked\s+back\s+and\s+forth\b", re.IGNORECASE)
_IN_ROUNDS = re.compile(r"\brounds?\b|\brnds?\b|\bspiral", re.IGNORECASE)


def worked_flat(document: Document) -> bool:
    """Whether what stands before the rows says that all of them are rows: "worked flat, so turn at the end of every row"."""
    front = document.text[: next((i.span.start for i in document.items if isinstance(i, Row)), 0)]
    return _flat(front)


@of_short(16)
def _flat(front: str) -> bool:
    return _FLAT.search(front) is not None and _IN_ROUNDS.search(front) is None
