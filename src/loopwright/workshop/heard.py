"""Where each instruction stands in the words that a row is said in, whatever terms they are in."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.model.tree import Item, Repeat, Row
from loopwright.source import Span

Heard = list[tuple[str, Span]]
"""What a voice said of each instruction, with the place of the pattern's words that it came from (`Voice.pieces`)."""


def found_in(text: str, item: Item | None, heard: Heard) -> Iterator[tuple[int, int, Span]]:
    """Where what was said of a row's instructions stands in its words: each after the one that was said before it.

    What holds others (a repeat) is said after them: it is sought from where the first of them stands.
    """
    if not isinstance(item, Row):
        return
    low, at = text.lower(), 0
    begun: list[tuple[int, Span]] = []
    for said, span in heard:
        if not item.span.start <= span.start < item.span.end:
            continue
        inner = [b for b, s in begun if span.start <= s.start and s.end <= span.end and s != span]
        begin = low.find(said.lower(), low.rfind(said[:1].lower(), 0, min(inner) + 1) if inner else at)
        if begin < 0:
            continue
        begun.append((begin, span))
        at = max(at, begin + len(said))
        yield begin, begin + len(said), span


def repeated(text: str, item: Item | None, heard: Heard) -> tuple[int, int] | None:
    """From where to where a row's words hold what is worked again and again: its first repeat; None where there is none to be found."""
    repeat = next((n for n in item.body if isinstance(n, Repeat)), None) if isinstance(item, Row) else None
    if repeat is None:
        return None
    spans = {n.span for n in repeat.nodes}
    inside = [(a, b) for a, b, at in found_in(text, item, heard) if at in spans]
    return (inside[0][0], inside[-1][1]) if inside else None
