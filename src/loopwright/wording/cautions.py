"""The cautions of a pattern before its instructions: the designer's own, then those that are due and that she has not told."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.report import Report
from loopwright.model.tree import Document, HeadLine, Item
from loopwright.trade.cautions import TOLD, cautions, cautions_due, defer
from loopwright.wording.as_written import translate
from loopwright.wording.said import HeadWords
from loopwright.wording.voice import Voice


def caution_lines(voice: Voice, document: Document, report: Report | None, items: Sequence[Item]) -> list[HeadWords]:
    """One line each, in plain words; the sentence that refers to local rules once, last. None for what the heading hides or notes tell."""
    own = [_own(voice, i) for i in items if isinstance(i, HeadLine) and i.name in TOLD]
    due = report.cautions if report is not None and report.cautions is not None else cautions_due(document)
    asked = None if voice.size is None else document.sizes[voice.size]
    added = []
    for caution in due:
        if caution.told or caution.hidden or caution.sizes and asked is not None and asked not in caution.sizes:
            continue
        everyone = asked is not None or not caution.sizes
        whom = "" if everyone else voice.head("for_sizes", sizes=_some(voice, document.sizes, caution.sizes))
        added.append(HeadWords("safety", voice.head("safety"), f"{whom}{voice.caution(caution.key, caution.text)}"))
    refer = bool(added) or any(_is_ours(line.value) for line in own)
    refers = [HeadWords("safety", voice.head("safety"), voice.caution("defer", defer()))] if refer else []
    return [*(line for line in own if line not in refers), *added, *refers]


def _some(voice: Voice, all_sizes: Sequence[str], sizes: Sequence[str]) -> str:
    """Sizes as they are said: "newborn to 12 months" where they stand next to each other, else each of them."""
    first = all_sizes.index(sizes[0]) if sizes[0] in all_sizes else 0
    if len(sizes) > 2 and tuple(all_sizes[first : first + len(sizes)]) == tuple(sizes):
        return voice.head("from_to", first=voice.name(sizes[0]), last=voice.name(sizes[-1]))
    return voice.head("list_sep").join(voice.name(s) for s in sizes)


def _own(voice: Voice, line: HeadLine) -> HeadWords:
    """A line of the designer's; one that was written by this module before stays as it is."""
    value = voice.prose(line.value if _is_ours(line.value) else translate(voice, line.value))
    name = f"{line.name[:1].upper()}{line.name[1:]}" if voice.language == "en" else voice.head("safety")
    return HeadWords("safety", name, value)


def _is_ours(said: str) -> bool:
    return said.endswith(defer()) or any(c.text in said for c in cautions())
