"""Drawings in the language of a document: names and rows by the words of its instructions, sentences by its phrases."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Literal

from loopwright.drawing.speech import Again, Each, Made, Thing, in_english
from loopwright.model.tree import Chain, Document, Join, Loop, Make, Node, Num, Place, Skip
from loopwright.model.tree import Thing as PlaceThing
from loopwright.publishing.phrases import Phrases
from loopwright.wording import voice_for
from loopwright.wording.languages import LanguageVoice
from loopwright.wording.shown import label_shown, name_shown, shown

_WHAT = {"space": "sp", "ring": "ring", "row-end": "row"}
_LOOPS: dict[str, Loop] = {"back": "back", "front": "front", "third": "third"}
_ONE_OF = re.compile(r"(?P<name>.*?)(?P<more> in all| \(\d+\))")


class Spoken:
    """See loopwright.drawing.speech.Speech. Names that the language's tables do not have stay as they are."""

    def __init__(self, voice: LanguageVoice) -> None:
        """`voice`: of the language; it is of no other text, since it takes notice of what is said."""
        self.voice = voice

    def say(self, key: str, **slots: int | str) -> str:
        """A phrase under its name with "drawn-" before it; in English where the language has none."""
        phrases = Phrases(self.voice.code)
        if not phrases.has(f"drawn-{key}"):
            return in_english(self.voice.terms).say(key, **slots)
        return phrases.say(f"drawn-{key}", **slots)

    def stitch(self, kind: str, n: int = 1) -> str:
        """Its short form; the plural where it has none."""
        return str(self.voice.stitch(kind, self.voice.many(Num((n,)))))

    def named(self, kind: str) -> str:
        """As in "hStb: halbes Stäbchen"; a stitch of the pattern's own by its name."""
        word = self.voice.tongue.stitch(kind)
        said = str(self.voice.stitch(kind))
        return said if word.sure == "own" or word.short == word.long else f"{word.short}: {word.long}"

    def name(self, said: str) -> str:
        """Where a table has it."""
        return name_shown(self.voice, said) if said else ""

    def measure(self, said: str) -> str:
        """By the phrases of the table of sizes."""
        m = _ONE_OF.fullmatch(said)
        if m is not None:
            name = self.measure(m["name"])
            return self.say("in-all-of", measure=name) if m["more"] == " in all" else name + m["more"]
        key, phrases = f"measure-{said.replace(' ', '-')}", Phrases(self.voice.code)
        return phrases.say(key) if phrases.has(key) else said

    def row(self, label: str) -> str:
        """Round or row and number."""
        return label_shown(self.voice, label)

    def own(self, said: str) -> str:
        """As translated by hand, else as they are, marked with their language."""
        return self.voice.prose(said)

    def decimal(self, number: str) -> str:
        """By the language's sign."""
        return number.replace(".", Phrases(self.voice.code).say("decimal"))

    def listed(self, words: Sequence[str]) -> str:
        """With the language's "and"."""
        return str(self.voice.say("and")).join(x for x in (", ".join(words[:-1]), *words[-1:]) if x)

    def worked(self, things: Sequence[Thing]) -> str:
        """By the frames of the instructions."""
        sep = str(self.voice.say("sep"))
        return sep.join(self._thing(t) for t in things)

    def _thing(self, thing: Thing) -> str:
        if isinstance(thing, Again):
            return f"[{self.worked(thing.things)}] {self._times(thing.times)}"
        made, times = (thing.made, thing.times) if isinstance(thing, Each) else (thing, 1)
        node, all_told = _node(made, times)
        said = shown(self.voice, [node], bare=made.where == "")
        if made.where == "underside":
            said = self.say("underside", made=said)
        if made.picot:
            said = self.say("with-picot", made=said, picot=self.stitch("picot"))
        return said if all_told else f"[{said}] {self._times(times)}"

    def _times(self, n: int) -> str:
        return str(self.voice.times(Num((n,))))


def spoken(document: Document, language: str, translations: Mapping[str, str] | None = None) -> Spoken | None:
    """For drawings of a pattern in a language; None for English, which drawings have themselves."""
    voice = voice_for(document, document.terms, language=language, translations=translations)
    return Spoken(voice) if isinstance(voice, LanguageVoice) else None


def _node(made: Made, times: int) -> tuple[Node, bool]:
    """A thing as a node of the tree, and whether that says how often it comes."""
    n = Num((made.n,))
    if made.what == "chain":
        return Chain(n), times == 1
    if made.what == "skip":
        return Skip(n, PlaceThing("ch" if made.of_chain else "st")), times == 1
    if made.what == "join":
        return Join(None, "sl st"), times == 1
    if made.over > 1 and made.where != "between":
        return Make(made.kind, n, taking=made.over), times == 1
    if not made.where:
        return Make(made.kind, n), times == 1
    if made.hook:
        at = Place("kth", n=None, thing=PlaceThing("ch"), k=made.hook, from_hook=True, loop=_LOOPS.get(made.where, "both"))
        return Make(made.kind, n, at), times == 1
    thing = PlaceThing(_WHAT.get(made.where, "ch" if made.of_chain else "st"))
    relation: Literal["in", "between", "around"] = "in"
    if made.where in ("around", "front-post", "back-post"):
        relation = "around"
    elif made.where == "between":
        relation = "between"
    if made.same:
        return Make(made.kind, n, Place("same", None, thing, relation=relation, loop=_LOOPS.get(made.where, "both"))), times == 1
    each = made.over if made.where == "between" else times if made.where != "ring" and not made.picot else 1
    place = Place("next", Num((each,)), thing, relation=relation, loop=_LOOPS.get(made.where, "both"))
    return Make(made.kind, n, place), times in (each, 1)


__all__ = ["Spoken", "spoken"]
