"""The top of a pattern: materials, gauge, abbreviations used, special stitches, notes on conventions."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.model.report import Report
from loopwright.model.tree import Document, FitLine, HeadLine, Item, Prose, Row, Section, SpecialStitch
from loopwright.trade.cautions import HIDDEN, TOLD
from loopwright.wording.abbreviations import abbreviations, own_abbreviations, told_again
from loopwright.wording.as_written import doubtful_words, in_full, swap_terms, translate
from loopwright.wording.cautions import caution_lines
from loopwright.wording.conventions import turning_chains
from loopwright.wording.said import Heading, HeadWords
from loopwright.wording.voice import Voice

_ONE_SIZE_LEAVES_OUT = ("worked in",)


def heading(
    voice: Voice, document: Document, report: Report | None, body: str, measurements: Mapping[str, Sequence[float | None]] | None = None,
) -> Heading:
    """What stands before the first section, in the order it was written; what is missing is put in where it belongs."""
    items = document.items[: heading_end(document)]
    if voice.language != "en":
        from loopwright.wording.languages import heading as other  # noqa: PLC0415 - Fluent and Babel only for other languages
        from loopwright.wording.languages.voice import LanguageVoice  # noqa: PLC0415

        assert isinstance(voice, LanguageVoice)  # noqa: S101 - no other voice has another language
        return other.heading(voice, document, report, body, items, measurements)
    head = voice.phrases.heading
    top, lines, specials = _as_told(voice, document, items)
    lines = _with_terms(voice, document, lines)
    lines.extend(_measurements(voice, measurements))
    silent = not any(isinstance(i, HeadLine) and i.name == "turning chain" for i in items)
    if silent and (told := turning_chains(voice, document, report)):
        lines.append(HeadWords("turning chain", head["turning"], told))
    used = abbreviations(voice, body + " ".join(specials), own_abbreviations(voice, items))
    if used:
        listed = str(head["list_sep"]).join(head["defines"].format(short=s, long=long) for s, long in used)
        lines.append(HeadWords("abbreviations", head["abbreviations"], listed))
    lines.extend(HeadWords("special", head["special"], s) for s in specials)
    notes = [translate(voice, i.value) for i in items if isinstance(i, HeadLine) and i.name in ("note", "notes")]
    kept = doubtful_words(" ".join(i.text for i in document.items if isinstance(i, Prose)), voice.source, voice.dialect)
    if kept:
        notes.append(head["kept_words"].format(terms=head[voice.source_terms], words=head["list_sep"].join(kept)))
    lines.extend(HeadWords("notes", head["notes"], n) for n in notes)
    fit = [i for i in items if isinstance(i, FitLine)] if "{" in body else []
    told_fit = (head["fit"], *(f"{{{i.blank}}}: {i.sentence}" for i in fit)) if fit else ()
    return Heading(tuple(top), tuple(lines), used, told_fit, tuple(caution_lines(voice, document, report, items)))


def _as_told(voice: Voice, document: Document, items: Sequence[Item]) -> tuple[list[str], list[HeadWords], list[str]]:
    """The words at the top, the lines under names, and what special stitches are, as the pattern tells them."""
    top: list[str] = []
    lines: list[HeadWords] = []
    specials: list[str] = []
    again = told_again(voice, document)
    for at, item in enumerate(items):
        if at in again:
            continue
        if isinstance(item, Prose):
            if item.text.strip().rstrip(":").lower() == "fit":
                continue
            said = translate(voice, item.text)
            if any(isinstance(i, HeadLine) for i in items[:at]):
                lines.append(HeadWords("", "", said))
            else:
                top.append(said)
        elif isinstance(item, HeadLine):
            lines.extend(_line(voice, document, item, specials))
        elif isinstance(item, Section):
            lines.append(HeadWords("", "", translate(voice, document.text[item.span.start : item.span.end] or item.title)))
        elif isinstance(item, SpecialStitch):
            specials.append(translate(voice, item.text))
    return top, lines, specials


def heading_end(document: Document) -> int:
    """How many items stand before the first section or row; a line that looks like a section may stand among those of the heading."""
    found = document.items
    stop = next((i for i, item in enumerate(found) if isinstance(item, Row)), len(found))
    last = max((i + 1 for i in range(stop) if isinstance(found[i], (HeadLine, FitLine, SpecialStitch))), default=0)
    leading = next((i for i in range(stop) if not isinstance(found[i], Prose)), stop)
    return max(last, leading)


def _line(voice: Voice, document: Document, item: HeadLine, specials: list[str]) -> list[HeadWords]:
    head = voice.phrases.heading
    name = item.name
    if name in ("abbreviations", "note", "notes", "terms", "left as it is", *TOLD, *HIDDEN):
        return []
    if name.startswith("special"):
        specials.append(translate(voice, item.value))
        return []
    if voice.size is not None and name in _ONE_SIZE_LEAVES_OUT:
        return []
    if name in ("size", "sizes"):
        return _sizes(voice, document)
    if name in ("gauge", "tension"):
        said = head["gauge" if voice.dialect.words["gauge"] == "gauge" else "tension"]
        return [HeadWords("gauge", said, translate(voice, item.value))]
    if name == "turning chain":
        return [HeadWords(name, head["turning"], _conventions(voice, item.value))]
    return [HeadWords(name, f"{name[:1].upper()}{name[1:]}", translate(voice, item.value))]


def _conventions(voice: Voice, text: str) -> str:
    """As in "ch 3 counts as dc" in the order these terms use: "3 ch counts as tr"."""
    said = swap_terms(text, voice.source, voice.dialect)
    said = in_full(voice, said) if voice.full_words else said
    return re.sub(r"\b(?:(\d+) ch(?:ain)?|ch(?:ain)? (\d+))\b", lambda m: str(voice.say("chain", n=m[1] or m[2])), said)


def _with_terms(voice: Voice, document: Document, lines: list[HeadWords]) -> list[HeadWords]:
    """The sizes, where they were told nowhere but in lists; the terms after the sizes, or first."""
    head = voice.phrases.heading
    if len(document.sizes) > 1 and not any(x.key == "sizes" for x in lines):
        lines = [*_sizes(voice, document), *lines]
    at = max((i + 1 for i, x in enumerate(lines) if x.key in ("sizes", "worked in")), default=0)
    return [*lines[:at], HeadWords("terms", head["terms"], head[voice.terms]), *lines[at:]]


def _sizes(voice: Voice, document: Document) -> list[HeadWords]:
    head = voice.phrases.heading
    if voice.size is not None:
        return [HeadWords("sizes", head["size"], document.sizes[voice.size])]
    return [HeadWords("sizes", head["sizes" if len(document.sizes) > 1 else "size"], head["list_sep"].join(document.sizes))]


def _measurements(voice: Voice, measured: Mapping[str, Sequence[float | None]] | None) -> list[HeadWords]:
    if not measured:
        return []
    sep, dash = voice.say("size_sep"), voice.say("dash")
    said = []
    for name, values in measured.items():
        shown = [values[voice.size]] if voice.size is not None and len(values) > 1 else list(values)
        cm = [dash if v is None else f"{v / 10:.1f}".removesuffix(".0") for v in shown]
        said.append(f"{name} {cm[0] if len(set(cm)) == 1 else voice.say('sizes', first=cm[0], rest=sep.join(cm[1:]))} cm")
    head = voice.phrases.heading
    return [HeadWords("measurements", head["measurements"], head["list_sep"].join(said))]
