"""The count at a row's end: as printed, or as made where none is printed."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.model.report import RowReport
from loopwright.model.tree import Count, Row
from loopwright.wording.as_written import translate
from loopwright.wording.stitches import Scene
from loopwright.wording.voice import Voice

_LENGTH = re.compile(r"(?:(\d+)[- ]?ch(?:ain)?|ch(?:ain)?[- ]?(\d+))[ -]", re.IGNORECASE)
_NO_STITCH = frozenset({"ch", "ch-sp", "group", "repeat", "sl st", "picot"})


_REMARK = re.compile(r"\s*,\s*([A-Za-z][^()\[\]\n]{2,40})[)\]]")
_LISTS = re.compile(r"\s[(\[][\d\s,:;–-]+[)\]]")
_PRINTED = re.compile(r"[(\[]\s*\d[^()\[\]]*[)\]]?$")


def counts_of(scene: Scene, item: Row, worked: Sequence[RowReport], body: str = "") -> str:
    """As in " (24 dc and 12 ch-2 sps)"; "" where nothing is known or there is nothing to count. `body`: the words before it."""
    voice = scene.voice
    told = [c for c in item.printed if c.scope == "row"]
    if told:
        said = [_count(voice, scene.text, c) for c in told]
        tail = voice.say("sep").join(said[:-1])
        all_of_it = voice.say("and").join(filter(None, [tail, said[-1]])) + _remark(scene, told[-1])
        return voice.say("counts", all=all_of_it)
    if ends_with_count(body):
        return ""  # the words as they stood end with a count already
    return _made(voice, item, worked)


def _remark(scene: Scene, last: Count) -> str:
    """What is said of the count in its bracket: ", the ch counted"."""
    m = _REMARK.match(scene.text, last.span.end) if last.span.end else None
    return f", {scene.voice.keep(scene.translate(m[1]))}" if m else ""


def ends_with_count(body: str) -> bool:
    """Whether the words of a row, kept as they stood, end with a count in brackets."""
    return bool(_PRINTED.search(_LISTS.sub("", body)))


def _count(voice: Voice, text: str, told: Count) -> str:
    many = voice.many(told.n)
    n = voice.num(told.n)
    words = text[told.n.span.end : told.span.end].strip(" .,") if told.n.span.end else ""
    if words and words[0].isalnum() and voice.language == "en":
        return f"{n} {_noun(voice, words, many=many)}"
    if told.noun is None or told.noun in ("st", "sts"):
        return voice.say("count", n=n, stitch=voice.say("sts" if many else "st"))
    if told.noun == "ch-sp":
        length = _LENGTH.search(text[told.n.span.end : told.span.end])
        if length:
            return voice.say("count", n=n, stitch=voice.noun("ch-sp", many, n=length[1] or length[2]))
        return voice.say("count", n=n, stitch=voice.noun("ch-sp-any", many))
    if told.noun in voice.phrases.nouns:
        return voice.say("count", n=n, stitch=voice.noun(told.noun, many))
    return voice.say("count", n=n, stitch=voice.stitch(told.noun, many))


def _noun(voice: Voice, words: str, *, many: bool) -> str:
    """What is counted, as it was written: "bls", "2-ch sps"; its number decides whether full words stand in the plural."""
    number = "2 " if many else "1 "
    return translate(voice, number + words, loose=True).removeprefix(number)


def _made(voice: Voice, item: Row, worked: Sequence[RowReport]) -> str:
    """From the last row that the item asks for. A row that makes no stitch has no count."""
    if not worked or item.label is None and item.order is None:
        return ""
    last = worked[-1]
    if not last.read or not voice.works(last.counts) or any(c is None for c in last.counts):
        return ""
    kinds = [k for k, n in last.made.items() if k not in _NO_STITCH and any(n)]
    if not kinds or not any(last.counts):
        return ""
    many = voice.values(last.counts) != "1"
    noun = voice.stitch(kinds[0], many) if len(kinds) == 1 and last.made[kinds[0]] == last.counts else voice.say("sts" if many else "st")
    return voice.say("counts", all=voice.say("count", n=voice.values(last.counts), stitch=noun))
