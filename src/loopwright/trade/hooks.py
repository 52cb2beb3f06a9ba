"""Hooks: thickness in mm with the labels the trade prints on them."""

from __future__ import annotations

import re
from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry


@record
class Hook:
    """A hook by its shaft in mm; labels are empty where the trade has none, `uk_source` where `source` gives both."""

    mm: float
    us: str
    uk: str
    steel: bool
    source: str
    uk_source: str
    weak: bool
    note: str = ""


@cache
def hooks() -> tuple[Hook, ...]:
    """All hooks for yarn, then the steel ones, each from thin to thick. Raises TableError where the table is not in order."""
    top = tables.load("hooks")
    sources = tables.sources(top)
    found = [_hook(entry, sources, steel=False) for entry in top.entries("hook")]
    found += [_hook(entry, sources, steel=True) for entry in top.entries("steel")]
    top.done()
    return tuple(sorted(found, key=lambda hook: (hook.steel, hook.mm)))


def _hook(entry: Entry, sources: dict[str, str], *, steel: bool) -> Hook:
    hook = Hook(
        entry.number("mm"),
        entry.text("us", ""),
        entry.text("uk", ""),
        steel,
        entry.source("source", sources),
        entry.source("uk_source", sources) if "uk_source" in entry else "",
        entry.flag("weak"),
        entry.text("note", ""),
    )
    entry.done()
    return hook


def of_label(label: str) -> tuple[Hook, ...]:
    """The hooks a US label may mean: "H-8", "H/8", "H", "US 8", "steel 7"; none where nobody uses it.

    More than one where makers differ; a number alone means the hook for yarn unless it says steel.
    """
    steel = "steel" in label.lower()
    wanted = _plain(re.sub(r"(?i)\b(steel|usa?|size|hook|no|nr)\b\.?|#", "", label))
    return tuple(h for h in hooks() if h.steel == steel and h.us and wanted in _labels(h.us))


def _plain(label: str) -> str:
    """A label in capitals, its parts joined by hyphens, a half as .5."""
    said = re.sub(r"\s*(½|1/2)", ".5", label.upper())
    return "-".join(re.findall(r"[A-Z]+|\d+(?:\.\d+)?", said))


def _labels(us: str) -> set[str]:
    """What a label is called: "M/N-13" is M-N-13, M, N, M-13, N-13 and 13."""
    parts = _plain(us).split("-")
    letters, numbers = [x for x in parts if x.isalpha()], [x for x in parts if not x.isalpha()]
    return {"-".join(parts), *letters, *numbers, *(f"{letter}-{number}" for letter in letters for number in numbers)}


def of_old_uk(number: str) -> tuple[Hook, ...]:
    """The hooks an old British number may mean; tables disagree on some."""
    return tuple(h for h in hooks() if not h.steel and h.uk == number.strip())


def nearest(mm: float) -> Hook:
    """The hook for yarn nearest to a thickness; the thinner of two that are as near."""
    return min((h for h in hooks() if not h.steel), key=lambda hook: (abs(hook.mm - mm), hook.mm))
