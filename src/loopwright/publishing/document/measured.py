"""After each section what it should measure now, so that a maker can lay a tape on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.measures import Dimension
from loopwright.publishing.document.blocks import Instructions, Remark
from loopwright.publishing.document.pattern import Pattern
from loopwright.publishing.document.running import Text, Varies
from loopwright.publishing.document.sizing import length
from loopwright.publishing.phrases import Phrases

_LAID = ("across", "width", "around", "length", "depth")
_MOST = 2  # measures to a section: what one lays a tape on first


def with_measures(found: Sequence[Instructions], pattern: Pattern, indexes: Sequence[int], say: Phrases) -> tuple[Instructions, ...]:
    """Sections with a last line that says what to measure; unchanged where nothing is known of them."""
    return tuple(_one(s, pattern, indexes, say) for s in found)


def _one(section: Instructions, pattern: Pattern, indexes: Sequence[int], say: Phrases) -> Instructions:
    if not section.own:
        return section
    by_size = [_dimensions(pattern, section.own, i) for i in indexes]
    names = [n for n in _LAID if any(n in d for d in by_size)][:_MOST]
    if not names:
        return section
    text: list[str | Varies] = []
    alone = [""] * len(indexes)
    for at, name in enumerate(names):
        lead = ("" if at == 0 else say.say("list-separator")) + say.say(f"measure-{name}") + " "
        values = [length(say, d[name].value_mm if name in d else None, inches=False) or "–" for d in by_size]
        inches = [length(say, d[name].value_mm if name in d else None) or "–" for d in by_size]
        text.append(lead)
        text += [_listed(values, say), " cm"]
        alone = [a + lead + v.replace(" (", " cm (").replace(")", " in)") if v != "–" else a for a, v in zip(alone, inches, strict=True)]
    said: Text = _joined(say.say("measure-now", what="\0"), text)
    return replace(section, steps=(*section.steps, Remark(said, tuple(say.say("measure-now", what=a) for a in alone), own=False)))


def _dimensions(pattern: Pattern, title: str, index: int) -> dict[str, Dimension]:
    found: dict[str, Dimension] = {}
    for d in pattern.measures[index].dimensions:
        if d.section and title.lower().startswith(d.section.lower()) and not d.worn and not d.relaxed:
            found.setdefault(d.name, d)
    return found


def _listed(values: Sequence[str], say: Phrases) -> str | Varies:
    if len(set(values)) == 1:
        return values[0]
    return Varies(tuple(values), f"{values[0]} ({say.say('size-separator').join(values[1:])})")


def _joined(frame: str, parts: Sequence[str | Varies]) -> Text:
    """A frame with running words in its slot; neighbouring words become one."""
    before, _, after = frame.partition("\0")
    found: list[str | Varies] = []
    for part in (before, *parts, after):
        if isinstance(part, str) and found and isinstance(found[-1], str):
            found[-1] += part
        elif part:
            found.append(part)
    return tuple(found)
