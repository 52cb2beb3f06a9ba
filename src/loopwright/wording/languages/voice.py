"""How a text is said in another language: stitches and things out of the language's table, frames out of its Fluent file."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from loopwright.model.tree import Num, Thing
from loopwright.terms.languages import Language, Word, language
from loopwright.wording.languages.frames import Words, filled, keys
from loopwright.wording.languages.phrasebook import phrase
from loopwright.wording.translations import translation_of
from loopwright.wording.voice import Voice

_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z])")
_ADDRESS = re.compile(r"(?:https?://|www\.)\S+|\S+@\S+")
_SPACES = re.compile(r" {2,}")
_SP = frozenset({"sp", "loop", "mesh"})
_TOGETHER = re.compile(r"\d+tog$")
# frames that say a term of the table themselves
_TERMS_OF_FRAMES = {
    "row": "row", "rows": "row", "row_in_text": "row", "rows_in_text": "row", "rnd": "rnd", "rnds": "rnd", "rnd_in_text": "rnd",
    "rnds_in_text": "rnd", "RS": "rs", "WS": "ws", "magic_ring": "magic_ring", "make_ring": "magic_ring", "ring": "ring", "tch": "tch",
    "back": "back", "front": "front", "third": "third", "turn": "turn", "join": "join", "join_via": "join", "join_via_to": "join",
    "fasten_off": "fasten_off", "skip": "skip", "skip_one": "skip", "star": "rep", "star_more": "rep", "star_times": "rep",
    "rep_rows": "rep", "rep_last": "rep",
}
SEVERAL = 2  # a number that is not one in any of the languages: for lists of sizes that differ


@dataclass(slots=True)
class Heard:
    """What a text has used so far: stitches and things by key, and words that had to stay in the pattern's own language.

    `kept` holds them in order: the words, and the section and row that they stand in.
    """

    used: dict[str, None] = field(default_factory=dict)
    kept: list[tuple[str, str, str]] = field(default_factory=list)
    section: str = ""
    row: str = ""


@dataclass(frozen=True)
class LanguageVoice(Voice):
    """A voice for one of terms/languages. Words that have no frame stay in English, in a bracket that says so, and are noted in `heard`."""

    code: str = "de"
    own_language: str = "en"
    heard: Heard = field(default_factory=Heard, compare=False)
    translations: dict[str, str] = field(default_factory=dict, compare=False)

    @property
    def language(self) -> str:
        """The language written in."""
        return self.code

    @property
    def prefers_written(self) -> bool:
        """Frames go first: words as they stand are in another language."""
        return False

    @cached_property
    def tongue(self) -> Language:
        """The language's table of terms."""
        return language(self.code)

    def keep(self, said: str) -> str:
        """Words for which there is no frame: as translated by hand or in the phrase book, else in English and marked."""
        if not said:
            return ""
        known = phrase(self, said)
        return self._own(said, "en") if known is None else known

    def prose(self, said: str) -> str:
        """The designer's own sentences: as translated by hand, else as they are and marked with their language."""
        if not said or _ADDRESS.fullmatch(said.strip()):
            return said
        self.heard.row = ""
        sentences = _SENTENCE.split(said)
        known = [phrase(self, s) for s in sentences]
        if not any(known) or translation_of(said, self.translations) is not None:
            return self._own(said, self.own_language)
        return " ".join(f"{capitalised(k)}." if k else self._own(s, self.own_language) for s, k in zip(sentences, known, strict=True))

    def _own(self, said: str, code: str) -> str:
        translated = translation_of(said, self.translations)
        if translated is not None:
            return translated
        if code == self.code:
            return said
        self.heard.kept.append((said, self.heard.section, self.heard.row))
        return f"[{code}: {said}]"

    def name(self, said: str) -> str:
        """A part's or a size's name where the table has it, else as it is."""
        own = self.tongue.sizes.get(said.lower()) or self.tongue.parts.get(said.lower())
        if own is None:
            own = translation_of(said, self.translations)
        if own is None:
            self.heard.kept.append((said, self.heard.section, ""))
            return said
        return capitalised(own) if said[:1].isupper() else own

    def enter(self, section: str) -> None:
        """Begins a section: where words stand is told by it."""
        self.heard.section, self.heard.row = section, ""

    def caution(self, key: str, said: str) -> str:
        """A caution of ours as the language has it."""
        frame = f"caution-{key}"
        return str(self.say(frame)) if frame in keys(self.code) else self._own(said, "en")

    def head(self, frame: str, **slots: object) -> str:
        """A frame of the heading with its slots filled."""
        return str(self.say({"list_sep": "list_sep", "defines": "defines"}.get(frame, f"head_{frame}"), **slots))

    def say(self, frame: str, **slots: object) -> str:
        """A frame with its slots filled."""
        if frame in _TERMS_OF_FRAMES:
            self.heard.used[_TERMS_OF_FRAMES[frame]] = None
        text = _SPACES.sub(" ", filled(self.code, frame, slots, full=self.full_words))
        for before, after in self.tongue.contractions:
            text = before.sub(after, text)
        number = slots.get("n")
        return Words(text, key=frame, number=number.number if isinstance(number, Words) else number if isinstance(number, int) else None)

    def many(self, number: Num | None) -> bool:
        """Whether the language has what a number counts in the plural (CLDR's rules, through Fluent)."""
        one = self.single(number)
        return one is None or str(self.say("is_many", n=one)) == "yes"

    # --- numbers -------------------------------------------------------------------------------------------------

    def num(self, number: Num | None) -> str:
        """See Voice.num; the number decides the plural of what follows."""
        one = self.single(number)
        return Words(super().num(number), number=SEVERAL if one is None else one)

    def values(self, values: Sequence[int | None]) -> str:
        """See Voice.values."""
        text = super().values(values)
        return Words(text, number=int(text) if text.isdigit() else SEVERAL)

    def ordinal(self, k: int) -> str:
        """The number alone: what follows it in writing depends on gender, and stands in the frames."""
        return Words(str(k), number=k)

    # --- stitches and things -------------------------------------------------------------------------------------

    def stitch(self, kind: str, many: bool = False) -> str:
        """A stitch as the language says it."""
        word = self.tongue.stitch(kind)
        if word.sure == "own":
            name = self.names.get(kind, kind)
            self.heard.used[f"own {name}"] = None
            return Words(name, gender=self.tongue.nouns["st"].gender, key=kind)
        self.heard.used[kind] = None
        return self._word(word, kind, many=many)

    def _word(self, word: Word, key: str, *, many: bool) -> str:
        together = bool(_TOGETHER.search(key))
        if not self.full_words and word.short != word.long:
            return Words(word.short, gender=word.gender, key=key, together=together)
        said, definite = (word.plural, word.definites) if many else (word.long, word.definite)
        return Words(said, definite=definite, gender=word.gender, key=key, together=together, plural=word.plural)

    def noun(self, key: str, many: bool = False, **slots: object) -> str:
        """A thing that is no stitch."""
        if key in ("ch-sp", "gap", "ch-run"):
            return self._made_noun(key.replace("-", "_"), many=many, **slots)
        key = {"ch-sp-any": "ch-sp", "bl": "block"}.get(key, key)
        word = self.tongue.nouns.get(key) or self.tongue.stitch(key)
        self.heard.used[key] = None
        return self._word(word, key, many=many)

    def _made_noun(self, key: str, *, many: bool, **slots: object) -> str:
        """A noun with a number in it, or one that a frame makes ("2-Lm-Bogen")."""
        self.heard.used["sp" if key == "gap" else "ch-sp" if key == "ch_sp" else "ch"] = None
        ways = ("many", "definites") if many else ("", "definite")
        texts = [filled(self.code, key, slots, full=self.full_words, attribute=a) for a in ways]
        gender = "p" if key == "ch_run" else self.tongue.nouns["sp" if key == "gap" else "ch-sp"].gender
        return Words(texts[0], definite=texts[1], gender=gender, key=key)

    def thing(self, thing: Thing, many: bool = False) -> str:
        """What a place is made of, in words."""
        kind = thing.kind
        if kind in _SP and not thing.length and thing.length != 0:
            return self.noun("ch-sp-any" if kind == "sp" else kind, many)
        if kind in _SP:
            return self.noun("ch-sp", many, n=thing.length) if thing.length else self.noun("gap", many)
        if kind == "any":
            return self.noun("st", many)
        if kind == "join":
            return Words(str(self.say("join_place")), gender=str(self.say("join_place_gender")), key=kind)
        if kind in self.tongue.nouns:
            return self.noun(kind, many)
        return self.stitch(kind, many)


def capitalised(text: str) -> str:
    """With a large first letter."""
    return text[:1].upper() + text[1:]


def language_voice(voice: Voice, code: str, translations: dict[str, str] | None = None, own_language: str = "en") -> LanguageVoice:
    """The same choices (size, full words …) for another language. `own_language`: that of the designer's prose.

    Raises ValueError for a language that there is not.
    """
    language(code)
    return LanguageVoice(
        voice.source_terms, voice.source_terms, voice.sizes, voice.size, voice.full_words, voice.spelled_out, voice.blanks, voice.names,
        voice.kept, voice.told, voice.told_of, code=code, own_language=own_language, translations=translations or {},
    )


class EnglishTwin(Voice):
    """Says in English, by frames alone, what another language's frames say: what it leaves out, they leave out."""

    @property
    def prefers_written(self) -> bool:
        """Never: what is asked of it is what the frames say."""
        return False


def english_twin(voice: LanguageVoice) -> Voice:
    """The voice that says the same in English, in the pattern's own terms and abbreviated."""
    return EnglishTwin(
        voice.source_terms, voice.source_terms, voice.sizes, voice.size, names=voice.names, kept=voice.kept, blanks=voice.blanks,
        told=voice.told, told_of=voice.told_of,
    )


__all__ = ["EnglishTwin", "Heard", "LanguageVoice", "english_twin", "language_voice"]
