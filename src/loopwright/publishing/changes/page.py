"""Errata as a page: plain text or Markdown."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.publishing.changes.errata import Erratum, errata
from loopwright.publishing.changes.model import SEVERITIES, Changes
from loopwright.publishing.changes.phrases import phrases, some_sizes, values

_MARKS = re.compile(r"([\\`*_{}\[\]<>#|~])")


def page(changes: Changes, *, markdown: bool = False, notes: bool = True) -> str:
    """All changes: what is wrong in the version before, whom it concerns, what is right; lengths and yarn that changed; wording apart.

    `notes`: remarks for the designer too.
    """
    write = _Page(markdown)
    told = phrases()["page"]
    write.head(1, told["title"].format(title=changes.title) if changes.title else told["untitled"])
    write.text(_versions(changes))
    if changes.none:
        write.text(told["identical" if changes.identical else "none" if changes.pairing.pairs else "none_in_sizes"])
    elif changes.wording_only and changes.pairing.pairs:
        write.text(told["wording_only"])
    found = errata(changes)
    for severity in SEVERITIES:
        some = [e for e in found if e.severity == severity]
        if some:
            write.head(2, phrases()["severity"][severity])
            write.text(phrases()["severity"].get(f"{severity}_lead", ""))
            for e in some:
                write.erratum(e)
    write.lists(told["measurements"], _lengths(changes))
    write.lists(told["yarn"], _yarn(changes))
    if notes:
        write.lists("", [told["note"].format(text=n) for n in changes.notes] + [told["warning"].format(text=w) for w in changes.warnings])
    return write.done()


def _versions(changes: Changes) -> str:
    told, old, new = phrases()["page"], changes.old_version, changes.new_version
    if new is None or not new.text:
        return ""
    return told["versions"].format(new=new.text, old=old.text) if old is not None and old.text else told["new_version"].format(new=new.text)


def _cm(values_mm: Sequence[float | None]) -> str:
    return values([None if v is None else f"{v / 10:.1f}".removesuffix(".0") for v in values_mm])


def _lengths(changes: Changes) -> list[str]:
    told, where = phrases()["page"], phrases()["where"]
    found = []
    for n in changes.lengths:
        sizes = _named(n.sizes, changes)
        place = where["between"].join(x for x in (n.section or told["whole"], n.name, sizes) if x)
        found.append(told["length"].format(where=place, now=_cm(n.now_mm), was=_cm(n.was_mm)))
    return found


def _yarn(changes: Changes) -> list[str]:
    told, where = phrases()["page"], phrases()["where"]
    found = []
    for y in changes.yarn:
        name = where["between"].join(x for x in (y.colour or told["any_colour"], _named(y.sizes, changes)) if x)
        now, was = (values([None if v is None else f"{v:.0f}" for v in each]) for each in (y.now_m, y.was_m))
        if now != was:
            found.append(told["metres"].format(colour=name, now=now, was=was))
    return found


def _named(sizes: Sequence[str], changes: Changes) -> str:
    where = phrases()["where"]
    if len(changes.all_sizes) == 1:
        return ""
    if set(sizes) == set(changes.all_sizes):
        return where["all_sizes"]
    return where["one" if len(sizes) == 1 else "many"].format(sizes=some_sizes(sizes, changes.all_sizes))


class _Page:
    """Paragraphs, joined by empty lines."""

    def __init__(self, markdown: bool) -> None:
        self.markdown = markdown
        self.parts: list[str] = []

    def safe(self, text: str) -> str:
        """A text whose signs are no marks."""
        return _MARKS.sub(r"\\\1", text) if self.markdown else text

    def head(self, level: int, text: str) -> None:
        self.parts.append(f"{'#' * level} {self.safe(text)}" if self.markdown else text if level == 1 else text.upper())

    def text(self, text: str) -> None:
        if text:
            self.parts.append(self.safe(text))

    def lists(self, head: str, lines: Sequence[str]) -> None:
        if lines:
            if head:
                self.head(2, head)
            self.parts.append("\n".join(f"- {self.safe(x)}" if self.markdown or head else self.safe(x) for x in lines))

    def erratum(self, e: Erratum) -> None:
        makers = phrases()["makers"]
        named = (
            (makers["lead"], _sentence(e.concerned)), ("", _sentence(e.unconcerned)), (makers["now"], e.now), (makers["was"], e.was),
            (makers["follow"], _sentence(e.follows)),
        )
        first = f"**{self.safe(e.where)}:** {self.safe(e.what)}." if self.markdown else f"{e.line}."
        lines = [
            makers["lines"].format(label=f"*{k}*" if self.markdown else k, text=self.safe(v)) if k else self.safe(v) for k, v in named if v
        ]
        mark = "- " if self.markdown else "  "
        body = "\n".join(mark + x.replace("\n", " ") for x in lines)
        self.parts.append(f"{first}\n\n{body}" if self.markdown and body else f"{first}\n{body}" if body else first)

    def done(self) -> str:
        """The whole page."""
        return "\n\n".join(self.parts) + "\n"


def _sentence(text: str) -> str:
    return f"{text}." if text and not text.endswith(".") else text
