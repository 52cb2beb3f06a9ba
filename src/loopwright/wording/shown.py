"""What a drawing shows of a row, in words: nodes that no text stands behind."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.model.tree import Node
from loopwright.wording.stitches import Scene, words
from loopwright.wording.voice import Voice

_NUMBERED = re.compile(r"(?:(?P<rnd>rnd|round)|row)s? (?P<number>\d.*)", re.IGNORECASE)
_NEXT = re.compile(r"next (?:(?P<rnd>rnd|round)|row)", re.IGNORECASE)
_COPIES = re.compile(r"(?P<name>.+?) \(make (?P<n>\d+)\)")


def shown(voice: Voice, nodes: Sequence[Node], *, bare: bool = False) -> str:
    """Nodes in words, in order; `bare`: a stitch without a place stands alone, not in the next stitch."""
    scene = Scene(voice, voice.say("across"), "ring", "", str, lambda _: None, deep=int(bare))
    return str(voice.say("sep").join(words(scene, nodes)))


def label_shown(voice: Voice, label: str) -> str:
    """The label of a row as it stands in English ("Rnd 3", "Next row", "Border round 2"), in the words of a voice."""
    m = _NUMBERED.fullmatch(label)
    if m is not None:
        return f"{voice.say('rnd' if m['rnd'] else 'row')} {m['number']}"
    m = _NEXT.fullmatch(label)
    if m is not None:
        return str(voice.say("label_next", word=voice.say("rnd_in_text" if m["rnd"] else "row_in_text"), side="")).rstrip(" :\u00a0\u202f")
    return voice.name(label)


def name_shown(voice: Voice, name: str) -> str:
    """The name of a part, with how many are made of it where it says so."""
    m = _COPIES.fullmatch(name)
    return str(voice.say("copies", title=voice.name(m["name"]), n=int(m["n"]))) if m is not None else voice.name(name)
