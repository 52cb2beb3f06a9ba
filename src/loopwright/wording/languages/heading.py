"""The heading of a pattern in another language."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.model.report import Report
from loopwright.model.tree import Document, FitLine, HeadLine, Prose, Section, SpecialStitch
from loopwright.trade.cautions import HIDDEN, TOLD
from loopwright.wording.as_written import translate
from loopwright.wording.cautions import caution_lines
from loopwright.wording.conventions import turning_chains
from loopwright.wording.covered import has_words_unread, says_less
from loopwright.wording.languages.abbreviations import abbreviations
from loopwright.wording.languages.numbers import decimal, length, listed, unit_sign
from loopwright.wording.languages.voice import LanguageVoice, capitalised, english_twin
from loopwright.wording.said import Heading, HeadWords

_LEFT_OUT = ("abbreviations", "terms", "special stitches", "special stitch", "note", "notes")
_GAUGE = re.compile(
    r"(?P<n>[\d.]+) (?P<stitch>[a-z ]+?) and (?P<m>[\d.]+) (?P<word>rows|rnds|rounds) = (?P<size>[\d.]+) (?P<unit>cm|in)"
    r"(?: in (?P<pattern>[a-z -]+?))?(?:, (?P<hook>[\d.]+) mm hook)?", re.IGNORECASE)
_COUNTS = re.compile(r"(?:ch (?P<a>\d+)|(?P<b>\d+) ch) (?:(?P<no>does not count)|counts) as (?:an? )?(?P<kind>[a-z ]+)", re.IGNORECASE)
_AMOUNT = re.compile(r"(?P<n>\d+(?:\.\d+)?) (?P<unit>mm|cm|m|g|yd)\b")
_LETTERS = re.compile(r"[A-Za-z]{3}")
_IN_COLOUR = re.compile(r"\b([A-Z]{1,3}) \(([^()]+)\)")


def heading(
    voice: LanguageVoice, document: Document, report: Report | None, body: str, items: Sequence[object],
    measurements: Mapping[str, Sequence[float | None]] | None = None,
) -> Heading:
    """As wording.heading does in English; the words of the designer's own that no table has stay marked with their language."""
    voice.enter("")
    top, lines = _as_told(voice, document, report, items)
    if len(document.sizes) > 1 and not any(x.key == "sizes" for x in lines):
        lines.insert(0, _sizes(voice, document))
    lines.extend(_measured(voice, measurements))
    if not any(x.key == "turning chain" for x in lines) and (told := turning_chains(voice, document, report)):
        lines.append(_line(voice, "turning chain", told))
    lines.extend(_specials(voice, document, items))
    told_notes = [i.value for i in items if isinstance(i, HeadLine) and i.name in ("note", "notes")]
    notes = [_line(voice, "notes", voice.prose(translate(voice, n))) for n in told_notes]
    cautions = tuple(caution_lines(voice, document, report, [i for i in items if isinstance(i, HeadLine)]))
    used = abbreviations(voice, "\n".join([body, *(x.value for x in lines if x.key in ("gauge", "turning chain", "special"))]))
    at = next((i for i, x in enumerate(lines) if x.key == "special"), len(lines))
    if used:
        listed = voice.head("list_sep").join(voice.head("defines", short=s, long=long) for s, long in used)
        lines.insert(at, _line(voice, "abbreviations", listed))
    fit = [i for i in items if isinstance(i, FitLine)] if "{" in body else []
    told_fit = (voice.head("fit"), *(f"{{{i.blank}}}: {i.sentence}" for i in fit)) if fit else ()
    return Heading(tuple(top), (*lines, *notes), used, told_fit, cautions)


def _line(voice: LanguageVoice, key: str, value: str) -> HeadWords:
    name = voice.head(key.replace(" ", "_"))
    return HeadWords(key, name, value)


def _as_told(voice: LanguageVoice, document: Document, report: Report | None, items: Sequence[object]) -> tuple[list[str], list[HeadWords]]:
    top: list[str] = []
    lines: list[HeadWords] = []
    for item in items:
        if isinstance(item, Prose) and item.text.strip().rstrip(":").lower() != "fit":
            said = translate(voice, item.text)
            if lines:
                lines.append(HeadWords("", "", voice.prose(said)))
            else:
                top.append(said if said.strip() == (document.title or "").strip() else voice.prose(said))
        elif isinstance(item, HeadLine):
            lines.extend(_told(voice, document, report, item))
        elif isinstance(item, Section):
            lines.append(HeadWords("", "", voice.name(item.title)))
    return top, lines


def _told(voice: LanguageVoice, document: Document, report: Report | None, item: HeadLine) -> list[HeadWords]:
    name = item.name
    if name in (*_LEFT_OUT, *TOLD, *HIDDEN) or name.startswith("special") or voice.size is not None and name == "worked in":
        return []
    if name in ("size", "sizes"):
        return [_sizes(voice, document)]
    value = translate(voice, item.value)
    if name in ("gauge", "tension"):
        return [_line(voice, "gauge", gauge(voice, value))]
    if name == "turning chain":
        return [_line(voice, name, _conventions(voice, value) or turning_chains(voice, document, report) or voice.prose(value))]
    if name == "worked in":
        return [_line(voice, name, voice.name(value))]
    if name in ("hook", "yarn", "finished size", "multiple"):
        return [_line(voice, name, _materials(voice, value) if name != "multiple" else voice.prose(value))]
    own = voice.head("notions") if name == "notions" else capitalised(voice.name(name))
    return [HeadWords(name, own, voice.prose(value))]


def gauge(voice: LanguageVoice, told: str) -> str:
    """As in "17 hStb und 13 Rd = 10 cm, Häkelnadel 4 mm"; the designer's words where it is told in another way."""
    m = _GAUGE.fullmatch(told.strip().rstrip("."))
    kind = voice.source.kind_of(m["stitch"].lower()) if m else None
    unknown = m is not None and m["pattern"] and m["pattern"].lower() not in voice.tongue.parts
    if m is None or unknown or kind is None and m["stitch"] not in ("sts", "stitches"):
        return voice.prose(told)
    stitch = voice.stitch(kind, many=True) if kind else voice.noun("st", many=True)
    pattern = f" {voice.head('in_pattern', pattern=voice.name(m['pattern']))}" if m["pattern"] else ""
    hook = voice.head("with_hook", size=length(float(m["hook"]), "mm", voice.code)) if m["hook"] else ""
    word = voice.say("rows_in_text" if m["word"] == "rows" else "rnds_in_text")
    n, rows = (decimal(float(m[k]), voice.code, 2) for k in ("n", "m"))
    over = length(float(m["size"]), m["unit"], voice.code)
    return f"{voice.head('gauge_line', n=n, stitch=stitch, rows=rows, word=word, size=over)}{pattern}{hook}"


def _materials(voice: LanguageVoice, told: str) -> str:
    """Amounts with the language's decimal sign, names of fibres and weights out of the table; the rest stays as it is, marked."""
    return ", ".join(_material(voice, part.strip()) for part in re.split(r",(?![^()]*\))", told))


def _material(voice: LanguageVoice, part: str) -> str:
    if not _LETTERS.search(part):
        return _AMOUNT.sub(lambda m: length(float(m["n"]), m["unit"], voice.code), part)
    fibres = [voice.tongue.parts.get(p.strip().lower()) for p in part.split(" and ")]
    if all(fibres):
        return listed([f for f in fibres if f], voice.code)
    colours = _IN_COLOUR.findall(part)
    if colours and not _LETTERS.search(_IN_COLOUR.sub("", part).replace("and", "").replace("in", "")):
        said = [f"{letter} ({voice.prose(name)})" for letter, name in colours]
        return listed(said, voice.code) if len(said) > 1 else said[0]
    return voice.prose(part)


def _conventions(voice: LanguageVoice, told: str) -> str:
    """As in "3 Lm zählen als Stb"; "" where it is told in another way."""
    found = []
    for part in told.rstrip(".").split(","):
        m = _COUNTS.fullmatch(part.strip())
        kind = voice.source.kind_of(m["kind"].lower()) if m else None
        if m is None or kind is None and not m["no"]:
            return ""
        chain = voice.say("chain", n=int(m["a"] or m["b"]))
        told = voice.say("turning_not", chain=chain) if m["no"] else voice.say("turning_as", chain=chain, stitch=voice.stitch(kind or "st"))
        found.append(told)
    return voice.head("list_sep").join(found)


def _sizes(voice: LanguageVoice, document: Document) -> HeadWords:
    if voice.size is not None:
        return HeadWords("sizes", voice.head("size"), voice.name(document.sizes[voice.size]))
    said = voice.head("list_sep").join(voice.name(s) for s in document.sizes)
    return HeadWords("sizes", voice.head("sizes" if len(document.sizes) > 1 else "size"), said)


def _measured(voice: LanguageVoice, measured: Mapping[str, Sequence[float | None]] | None) -> list[HeadWords]:
    """Finished measurements: "Krone, Durchmesser 7,7 (9,2, 10,8) cm"."""
    found = []
    for name, values in (measured or {}).items():
        shown = [values[voice.size]] if voice.size is not None and len(values) > 1 else list(values)
        said = [voice.say("dash") if v is None else decimal(v / 10, voice.code) for v in shown]
        sep = "; " if any("," in s for s in said) else voice.say("size_sep")  # a comma is the decimal sign here
        numbers = said[0] if len(set(said)) == 1 else voice.say("sizes", first=said[0], rest=sep.join(said[1:]))
        found.append(voice.head("measured", name=_measure_name(voice, name), value=f"{numbers} {unit_sign('cm', voice.code)}"))
    return [_line(voice, "measurements", "; ".join(found))] if found else []


def _measure_name(voice: LanguageVoice, name: str) -> str:
    """A part and the way it is measured: "crown across"."""
    part, _, way = name.rpartition(" ")
    known = voice.tongue.parts.get(f"way {way}")
    return voice.name(name) if known is None or not part else voice.head("measure_name", part=voice.name(part), way=known)


def _specials(voice: LanguageVoice, document: Document, items: Sequence[object]) -> list[HeadWords]:
    """What special stitches are, in the designer's words."""
    told = [i.text if isinstance(i, SpecialStitch) else i.value for i in items
            if isinstance(i, SpecialStitch) or isinstance(i, HeadLine) and i.name.startswith("special")]
    return [_line(voice, "special", _special(voice, document, text)) for text in told]


def _special(voice: LanguageVoice, document: Document, text: str) -> str:
    """As in "V-Masche = (1 hStb, 1 Lm, 1 hStb)"; kept where what it is made of was not read, or says more than the frames would."""
    from functools import partial  # noqa: PLC0415 - for specials alone

    from loopwright.wording.stitches import Scene, words  # noqa: PLC0415 - the two call each other

    name = re.split(r"\s*[=:(]", text.strip(), maxsplit=1)[0]
    kind = voice.source.kind_of(name.lower())
    told = [s for s in document.specials if kind is not None and kind in (s.name, voice.source.kind_of(s.name))]
    special = next((s for s in told if s.text and s.text in text), None)
    nodes = (special.nodes or special.told) if special is not None else ()
    if special is None or not nodes or has_words_unread(nodes) or kind is None or not voice.tongue.knows(kind):
        return voice.prose(translate(voice, text))
    twin = english_twin(voice)
    scene, english = (
        Scene(v, v.say("around"), "magic_ring", document.text, partial(translate, v), lambda fork: fork.readings[0][1], in_ring=True)
        for v in (voice, twin)
    )
    if not special.nodes and says_less(special.text, " ".join(words(english, nodes))):
        return voice.prose(translate(voice, text))
    return voice.head("defines", short=capitalised(voice.stitch(kind)), long=voice.say("sep").join(words(scene, nodes)))
