"""What the design's heading says of materials and gauge, and the names of sizes, in the film's terms and language."""

from __future__ import annotations

from loopwright.filming.facts import FilmFacts
from loopwright.wording import HeadWords, heading, voice_for

_MATERIALS = ("yarn", "hook", "needed", "notions", "materials", "supplies", "colours", "colors")
_GAUGE = ("gauge", "tension")


def materials_of(facts: FilmFacts) -> tuple[tuple[str, str], ...]:
    """Lines of what is needed, name and words, in the trade's order."""
    found = {h.key: h for h in reversed(_lines(facts)) if h.key in _MATERIALS}
    return tuple((found[key].name.strip(), found[key].value.strip()) for key in _MATERIALS if key in found)


def gauge_of(facts: FilmFacts) -> tuple[str, ...]:
    """Lines of gauge; () where the design has none."""
    return tuple(h.value.strip() for h in _lines(facts) if h.key in _GAUGE)


def sizes_of(facts: FilmFacts) -> tuple[str, ...]:
    """Names of the sizes in the language."""
    voice = voice_for(facts.document, facts.terms, facts.size, language=facts.language)
    return tuple(voice.name(n) for n in facts.sizes)


def _lines(facts: FilmFacts) -> tuple[HeadWords, ...]:
    voice = voice_for(facts.document, facts.terms, facts.size, language=facts.language)
    return tuple(h for h in heading(voice, facts.document, facts.report, "").lines if h.value.strip())
