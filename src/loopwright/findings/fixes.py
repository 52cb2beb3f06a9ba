"""Mends put into the text. A mend is taken whole or not at all; what touches an earlier one waits for the next run."""

from __future__ import annotations

from collections.abc import Iterable

from loopwright.findings.model import Edit, Finding


def apply(text: str, findings: Iterable[Finding], unsafe: bool = False) -> tuple[str, tuple[Finding, ...]]:
    """The mended text and the findings whose mends are in it. Unsafe mends only when asked for.

    Mends are taken in the order of their places; one whose edits overlap those already taken, or lie outside the text, is left out.
    """
    taken: list[Edit] = []
    done: list[Finding] = []
    mends = [f for f in findings if f.fix is not None and f.fix.edits and (f.fix.safe or unsafe)]
    for found in sorted(mends, key=lambda f: f.fix.edits[0].span.start if f.fix else 0):
        edits = found.fix.edits if found.fix else ()
        if all(_fits(e, taken, len(text)) for e in edits):
            taken += [e for e in edits if e not in taken]
            done.append(found)
    for edit in sorted(taken, key=lambda e: (e.span.start, e.span.end), reverse=True):
        text = text[: edit.span.start] + edit.text + text[edit.span.end :]
    return text, tuple(done)


def _fits(edit: Edit, taken: list[Edit], length: int) -> bool:
    if not 0 <= edit.span.start <= edit.span.end <= length:
        return False
    return edit in taken or not any(_touch(edit, t) for t in taken)


def _touch(one: Edit, other: Edit) -> bool:
    same_place = one.span.start == other.span.start  # two insertions at one place have no order
    return same_place or (one.span.start < other.span.end and other.span.start < one.span.end)
