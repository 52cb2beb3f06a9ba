"""Finished measurements and yarn of two versions, and what is large enough to be told."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from loopwright.model.measures import Measures
from loopwright.publishing.changes.model import Length, Pairing, Worked, Yarn

TOLD_MM = 0.5  # a pattern tells lengths to half a millimetre at most
TOLD_M = 0.5
FIT_MM = 5.0  # from here on a maker notices that it fits otherwise (a judgement, no source)

Key = tuple[str | None, str, bool]


def lengths_changed(old: Worked, new: Worked, pairing: Pairing, sections: Mapping[str, str]) -> tuple[Length, ...]:
    """Measurements that changed in at least one size. `sections`: new names of sections by their old ones."""
    if not old.measures or not new.measures:
        return ()
    names = tuple(new.sizes[j] for _, j in pairing.pairs)
    before = [_lengths(old.measures[i], sections) for i, _ in pairing.pairs]
    after = [_lengths(new.measures[j], {}) for _, j in pairing.pairs]
    found = []
    for key in dict.fromkeys(k for known in (*after, *before) for k in known):
        was, now = tuple(b.get(key) for b in before), tuple(a.get(key) for a in after)
        changed = [i for i in range(len(names)) if _far(was[i], now[i], TOLD_MM)]
        if changed:
            some = [tuple(v[i] for i in changed) for v in (was, now)]
            found.append(Length(*key, tuple(names[i] for i in changed), *some))
    return tuple(found)


def _lengths(measures: Measures, sections: Mapping[str, str]) -> dict[Key, float]:
    """By section, name and whether worn; the first where one section has several of a name."""
    found: dict[Key, float] = {}
    for d in measures.dimensions:
        section = sections.get(d.section, d.section) if d.section is not None else None
        found.setdefault((section, d.name, d.worn), round(d.value_mm, 2))
    return found


def _far(a: float | None, b: float | None, by: float) -> bool:
    return (a is None) is not (b is None) or a is not None and b is not None and abs(a - b) >= by


def yarn_changed(old: Worked, new: Worked, pairing: Pairing) -> tuple[Yarn, ...]:
    """Colours of which a size needs more or less than before."""
    if not old.measures or not new.measures:
        return ()
    names = tuple(new.sizes[j] for _, j in pairing.pairs)
    before = [{y.colour: round(y.length_m, 1) for y in old.measures[i].yarn} for i, _ in pairing.pairs]
    after = [{y.colour: round(y.length_m, 1) for y in new.measures[j].yarn} for _, j in pairing.pairs]
    found = []
    for colour in dict.fromkeys(c for known in (*after, *before) for c in known):
        was, now = tuple(b.get(colour) for b in before), tuple(a.get(colour) for a in after)
        changed = [i for i in range(len(names)) if _far(was[i], now[i], TOLD_M)]
        if changed:
            some = [tuple(v[i] for i in changed) for v in (was, now)]
            found.append(Yarn(colour, tuple(names[i] for i in changed), *some))
    return tuple(found)


def fits_otherwise(lengths: Sequence[Length], section: str | None, sizes: Sequence[str]) -> bool:
    """Whether a measurement of the section changed by more than a maker notices, in one of the sizes."""
    for length in lengths:
        if length.section != section:
            continue
        for size, was, now in zip(length.sizes, length.was_mm, length.now_mm, strict=True):
            if size in sizes and _far(was, now, FIT_MM):
                return True
    return False
