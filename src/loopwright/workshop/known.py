"""Words that a sheet can complete and explain: stitches in its own terms, its sections, special stitches and blanks."""

from __future__ import annotations

from typing import Any

from loopwright.model.tree import FitLine, HeadLine, Section, SpecialStitch
from loopwright.terms import Dialect, dialect
from loopwright.trade.composed import composed
from loopwright.workshop.live import Seen

_NO_STITCH = {"ch": "Makes a chain, which is not counted as a stitch.", "sl st": "Joins or moves; it is not counted as a stitch."}
_GROUPS = frozenset({"shell", "fan", "cluster", "popcorn", "puff", "bobble", "v-st"})
_USED = {"inc": (1, 2), "dec": (2, 1), "invdec": (2, 1)}


def known(seen: Seen) -> dict[str, Any]:
    """What can be written here: {"stitches": [...], "sections": [...], "specials": [...], "blanks": [...]}.

    A stitch has its US key, short and long form in the terms of the pattern, and a sentence that says what it uses and makes.
    """
    said = dialect(seen.document.terms)
    worked = {k for r in seen.report.rows for k in r.made if k in said.terms or composed(k).plain in said.terms}
    keys = dict.fromkeys([*said.terms, *sorted(worked)])
    items = seen.document.items
    return {
        "stitches": [
            {"key": k, "short": said.term(k).short, "long": said.term(k).long, "used": k in worked, "says": uses_and_makes(k, said)}
            for k in keys if k != "ch-sp"
        ],
        "sections": list(dict.fromkeys(i.title for i in items if isinstance(i, Section) and i.title)),
        "specials": [s for i in items if isinstance(i, (SpecialStitch, HeadLine)) for s in _specials(i)],
        "blanks": [
            {"name": i.blank, "sentence": i.sentence, "values": list(_values(seen, i.blank))} for i in items if isinstance(i, FitLine)
        ],
    }


def _specials(item: SpecialStitch | HeadLine) -> list[dict[str, Any]]:
    """What an item names as a stitch of its own: also the heading's "Special stitches: bean st = (sc, ch 1, sc) in same st"."""
    if isinstance(item, SpecialStitch):
        return [{"name": item.name, "abbreviation": item.abbreviation, "says": " ".join(item.text.split())}]
    name, equals, says = item.value.partition("=")
    if not item.name.startswith("special") or not equals or not name.strip():
        return []
    return [{"name": name.strip(), "abbreviation": None, "says": says.strip()}]


def _values(seen: Seen, blank: str) -> tuple[int | None, ...]:
    return tuple(seen.graded.values.get(blank, ())) if seen.graded is not None else ()


def uses_and_makes(kind: str, said: Dialect) -> str:
    """What a stitch takes of the row below and what it gives to its own, in words."""
    if kind in _NO_STITCH:
        return _NO_STITCH[kind]
    if kind in _USED:
        uses, makes = _USED[kind]
        return f"Uses {_many(uses)}, makes {makes}."
    if kind in _GROUPS:
        return "Worked in one place; counts as one group."
    if kind == "picot":
        return "A knob on the edge; nothing is worked into it."
    parts = composed(kind)
    if parts.foundation:
        return f"Made with a chain of its own, as tall as {said.term(parts.plain).short}; uses none, makes 1."
    how = {"fp": " around its post, from the front", "bp": " around its post, from the back"}.get(parts.post, "")
    loop = {"fl": " in its front loop", "bl": " in its back loop"}.get(parts.loop, "")
    return f"Uses {_many(parts.legs)}{how}{loop}, makes 1."


def _many(number: int) -> str:
    return "1 st" if number == 1 else f"{number} sts"
