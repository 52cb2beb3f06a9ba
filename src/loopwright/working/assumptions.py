"""What the worker had to assume, put into words: each convention once, each start at the row that needed it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from loopwright.model.report import Assumption
from loopwright.model.tree import Chain, Document
from loopwright.working.explanations import Outcome


def assumptions(document: Document, per_size: Sequence[Sequence[Outcome]]) -> list[Assumption]:
    """Everything that was assumed in the first size, each once, in the order of the text."""
    found: dict[str, Assumption] = {}
    for span, message in document.assumptions:
        found.setdefault(message, Assumption(span, message))
    held: dict[str, Any] = {}
    for outcomes in per_size[:1]:
        for o in outcomes:
            if o.step.guess == "rows-not-told":
                message = "the rows it names are not in the text: taken as worked even"
                found.setdefault(f"{o.step.item}:{message}", Assumption(o.step.span, message))
            for node in o.step.body:
                if isinstance(node, Chain) and node.every:
                    found.setdefault(f"{o.step.item}:chain", Assumption(o.step.span, _length_words(node)))
            for key, value in o.assumed:
                words = _assumed_words(key, value, first=o is outcomes[0])
                if words:
                    found.setdefault(f"{o.step.item}:{words}", Assumption(o.step.span, words))
            for key, value in o.made.conventions if o.made else ():
                if key not in held:
                    held[key] = value
                    words = _convention_words(key, value)
                    if words:
                        found.setdefault(words, Assumption(o.step.span, words))
    return sorted(found.values(), key=lambda a: a.span.start)


def _length_words(chain: Chain) -> str:
    told = "any length" if chain.every == 1 else f"a multiple of {chain.every}" + (f" plus {chain.plus}" if chain.plus else "")
    return f"the chain may be {told}: worked here as a sample on a chain of {(chain.n.at(0) or 0) + chain.plus}"


def _assumed_words(key: str, value: Any, *, first: bool) -> str | None:
    if key == "start":
        before = "the text begins in the middle" if first else "what stands before this row is not told"
        return f"{before}: it needs {value} {'stitch' if value == 1 else 'stitches'}, so {value} {'was' if value == 1 else 'were'} there"
    if key == "start-chain":
        return f"no chain is told before this row: it fits on a chain of {value}"
    if key == "as-printed":
        return f"this row goes on in pattern: its count of {value} is taken from the print"
    if key == "otherwise":
        return f"this row does otherwise than the row that tells it: its count of {value} is taken from the print"
    if key == "new-piece":
        return "a new piece begins here"
    if key == "lower":
        return f"worked into row {value}, behind what stands between"
    if key == "motifs":
        return f"worked around {value[0]} by {value[1]} motifs as they are laid out, each join between two of them as a space"
    if key == "until":
        return f"worked as told until there are {value} stitches"
    return None


def _convention_words(key: str, value: Any) -> str | None:
    parts = key.split("-")
    if parts[0] == "start" and len(parts) >= 2:
        stitch = f" before {parts[2]}" if len(parts) > 2 else ""
        if isinstance(value, tuple):
            more = f" and {value[1]} {'chain' if value[1] == 1 else 'chains'}" if value[1] else ""
            return f"ch {parts[1]} at the start of a row{stitch} counts as a stitch{more}"
        return f"ch {parts[1]} at the start of a row{stitch} " + ("is a loop" if value == "loop" else "does not count as a stitch")
    if parts[0] == "skipped":
        what = {"no": "do not count as a stitch", "loop": "are a loop"}.get(value, "count as a stitch") if isinstance(value, str) else "count as a stitch"
        return f"the {parts[1]} chains skipped before the first {parts[2]} {what}"
    if key == "times-more":
        return '"rep from * n times" means n times after the first' if value else '"rep from * n times" means n times in all'
    if key == "round-the-piece":
        why = {"print": "what the printed count leaves for it", "words": "what the number told leaves for it"}.get(value[1], "the customary number for rows of that height")
        return f"the stitches round the piece: {value[0]} along a side's row ends, {why}"
    if key == "round-an-opening":
        return f"nobody tells how many stitches go round this edge: the printed count of {value} is taken"
    if key == "one-repeat-told" and value:
        return "rows that tell one repeat mean it for the whole row"
    if key == "last-slip" and value:
        return "the slip stitch that ends a row is a stitch that the next row is worked into"
    return None
