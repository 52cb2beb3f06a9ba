"""What changed above the instructions: sizes, gauge, hook, yarn, notes, special stitches, cautions."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from loopwright.model.cautions import CautionDue
from loopwright.model.tree import Document, FitLine, HeadLine, Prose, SpecialStitch
from loopwright.publishing.changes.entries import plain
from loopwright.publishing.changes.model import Change, GaugeFact, Severity, Worked
from loopwright.publishing.danger import speaks_of_danger
from loopwright.trade.cautions import TOLD
from loopwright.wording.heading import heading_end

_SAME_NAME = {"tension": "gauge", "note": "notes", "size": "sizes", "colors": "colours", "special stitch": "special stitches",
              "abbreviation": "abbreviations", "materials needed": "materials"}
_NOT_FOR_MAKERS = ("worked in", "swatch", "swatches", "timed sample", "weighed sample", "hidden cautions", "hidden caution")
_ELSEWHERE = ("sizes", "version", "edition", "date", "version date")  # told by the comparison itself
_MATERIALS = ("yarn", "notions", "materials", "supplies", "needed", "used", "colours", "hook and yarn")
_LENGTHS = re.compile(r"finished|measurement|dimensions|to fit|fits|actual|swatch size")
_NUMBERS = re.compile(r"\d+(?:[.,]\d+)?")
_SAME_GAUGE = 0.005  # share by which two gauges may differ and be one
_LIKE = 0.4  # from such a likeness on, two lines are one line changed


@dataclass(frozen=True, slots=True)
class Heads:
    """What was found: `changes` for makers, `notes` for the designer.

    `names`: words by which rows use a line, by its place in `changes`.
    """

    changes: tuple[Change, ...]
    notes: tuple[str, ...]
    names: dict[int, tuple[str, ...]]


def head_changes(old: Worked, new: Worked, in_terms: Callable[[str], str]) -> Heads:
    """Compares the headings. `in_terms` says an old text in the new version's terms."""
    same_terms = old.document.terms == new.document.terms
    changes: list[Change] = []
    notes: list[str] = []
    names: dict[int, tuple[str, ...]] = {}
    before, after = _lines(old.document), _lines(new.document)
    for name in {**before, **after}:
        if name in _ELSEWHERE or name == "abbreviations" and not same_terms or name == "terms" and not same_terms:
            continue
        for was, now in _pairs([v if name == "fit" else in_terms(v) for v in before.get(name, [])], after.get(name, [])):
            if name in _NOT_FOR_MAKERS or name == "fit":  # the blanks keep their names
                notes.append(_note(name, was, now))
                continue
            change = Change("heading", _severity(name, was, now, old, new), heading=name, old_text=was, new_text=now)
            if name == "special stitches":
                names[len(changes)] = _used_as(was, now)
            changes.append(change)
    if not same_terms:
        changes.append(Change("heading", "wording", heading="terms", was=(old.document.terms,), now=(new.document.terms,)))
    changes.extend(_cautions(old.cautions, new.cautions))
    return Heads(tuple(changes), tuple(notes), names)


def _lines(document: Document) -> dict[str, list[str]]:
    """Lines of the heading by name; words without a name under "about", the title under "title"."""
    found: dict[str, list[str]] = {}
    if document.title:
        found["title"] = [plain(document.title)]
    for item in document.items[: heading_end(document)]:
        if isinstance(item, HeadLine):
            found.setdefault(_SAME_NAME.get(item.name, item.name), []).append(plain(item.value))
        elif isinstance(item, FitLine):
            found.setdefault("fit", []).append(f"{{{item.blank}}}: {plain(item.sentence)}")
        elif isinstance(item, SpecialStitch):
            found.setdefault("special stitches", []).append(plain(document.text[item.span.start : item.span.end] or item.text))
        elif isinstance(item, Prose) and plain(item.text).rstrip(":").lower() not in ("fit", "notes", plain(document.title or "").lower()):
            found.setdefault("about", []).append(plain(item.text))
    return found


def _pairs(before: Sequence[str], after: Sequence[str]) -> list[tuple[str, str]]:
    """Lines that are not in both: (was, now), "" for none; a line that is like one that is gone is that line changed."""
    gone = [b for b in before if b not in after]
    come = [a for a in after if a not in before]
    found = []
    for was in gone:
        likes = [(SequenceMatcher(None, was, c, autojunk=False).ratio(), -i) for i, c in enumerate(come)]
        best = max(likes, default=(0.0, 0))
        if best[0] >= _LIKE or len(before) == len(after) == 1:
            found.append((was, come.pop(-best[1])))
        else:
            found.append((was, ""))
    return [*found, *(("", now) for now in come)]


def _severity(name: str, was: str, now: str, old: Worked, new: Worked) -> Severity:
    if name in TOLD or name == "notes" and (speaks_of_danger(was) or speaks_of_danger(now)):
        return "safety"
    if name == "gauge":
        return "wording" if old.gauge is not None and same_gauge(old.gauge, new.gauge) else "size"
    if _LENGTHS.search(name) and not (was and now):
        return "wording"  # told, and not told, is no other size
    if name.endswith("hook") or _LENGTHS.search(name):
        return "wording" if _NUMBERS.findall(was) == _NUMBERS.findall(now) else "size"
    return "materials" if name in _MATERIALS else "wording"


def same_gauge(a: GaugeFact | None, b: GaugeFact | None) -> bool:
    """Whether two gauges are one in numbers."""
    if a is None or b is None:
        return a is b
    near = (abs(x - y) <= _SAME_GAUGE * max(x, y) for x, y in ((a.stitch_mm, b.stitch_mm), (a.row_mm, b.row_mm)))
    return a.kind == b.kind and all(near)


def _note(name: str, was: str, now: str) -> str:
    what = "Fit sentence" if name == "fit" else f"line “{name[:1].upper()}{name[1:]}”"
    if not was:
        return f"a {what} was added, which makers do not see: {now}"
    if not now:
        return f"a {what} was taken out, which makers do not see: {was}"
    return f"a {what} changed, which makers do not see: {now} (was: {was})"


def _used_as(*texts: str) -> tuple[str, ...]:
    """Names under which rows use a special stitch: "V st", "bean st"."""
    names = (re.split(r"\s*[=:(]", t.strip(), maxsplit=1)[0].strip() for t in texts)
    return tuple({n.casefold() for n in names if 1 < len(n) <= 30})


def _cautions(old: Sequence[CautionDue], new: Sequence[CautionDue]) -> list[Change]:
    """Cautions that are due and were not told, or that are told no more; those of the pattern's own words are lines of the heading."""
    before, after = {c.key: c for c in old}, {c.key: c for c in new}
    found = [
        Change("caution", "safety", heading=c.name, sizes=c.sizes, new_text=c.text) for key, c in after.items()
        if not c.hidden and (key not in before or before[key].hidden)
    ]
    found += [
        Change("caution", "safety", heading=c.name, sizes=c.sizes, old_text=c.text) for key, c in before.items()
        if not c.hidden and (key not in after or after[key].hidden)
    ]
    return found
