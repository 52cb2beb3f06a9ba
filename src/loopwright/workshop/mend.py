"""Puts the safe mends into a pattern file, whole or not at all."""

from __future__ import annotations

from pathlib import Path

from loopwright.findings.fixes import apply
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.check import check_source
from loopwright.workshop.files import open_source, write_whole

ROUNDS = 5  # mends that overlap wait for the next round


@record
class Mended:
    """What was done: line (from 1, of the text as it was in that round), the mend in words, the line before and after."""

    line: int
    title: str
    before: str
    after: str


def mend_text(source: Source, terms: str | None = None) -> tuple[str, tuple[Mended, ...]]:
    """The text with all safe mends in it, and what they changed."""
    done: list[Mended] = []
    for _ in range(ROUNDS):
        text, put_in = apply(source.text, check_source(source, terms).findings)
        if not put_in:
            break
        after = Source.of(text, source.name)
        for found in put_in:
            first = source.line_of(found.fix.edits[0].span.start) if found.fix else 0
            now = after.line_text(first) if first <= len(after.line_starts) else ""
            done.append(Mended(first, found.fix.title if found.fix else "", source.line_text(first), now))
        source = after
    return source.text, tuple(done)


def mend_file(name: str, terms: str | None = None) -> tuple[Mended, ...]:
    """Mends a file where it stands; its line ends and its byte order mark stay. Raises CannotOpen, CannotSave."""
    source = open_source(name)
    text, done = mend_text(source, terms)
    if done:
        raw = Path(name).read_bytes()
        if b"\r\n" in raw:
            text = text.replace("\n", "\r\n")
        write_whole(Path(name), ("\ufeff" if raw.startswith(b"\xef\xbb\xbf") else "") + text)
    return done
