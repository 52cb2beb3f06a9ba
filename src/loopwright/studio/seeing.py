"""In a process of its own: what is true of a text, its views, and its summary, each as the JSON that a window is sent.

A process remembers the texts that it saw last, so that the next keystroke of a design costs what it changes.
"""

from __future__ import annotations

import json
from collections import OrderedDict
from collections.abc import Callable, Mapping
from typing import Any

from loopwright.findings.registry import severity
from loopwright.workshop import views
from loopwright.workshop.in_hand import in_hand
from loopwright.workshop.known import known
from loopwright.workshop.live import Live, Seen
from loopwright.workshop.proof import proof

_MOST_DESIGNS = 4  # that one process remembers
_MOST_SEEN = 4

Asked = Mapping[str, Any]

VIEWS: dict[str, Callable[[Seen, int | None, Asked], Any]] = {
    "chart": lambda s, size, a: views.chart(s, size or 0, left_handed=bool(a.get("left_handed")), whole=bool(a.get("whole"))),
    "schematic": lambda s, size, _: views.schematic(s, size),
    "words": lambda s, size, a: views.words(
        s, size, terms=a["terms"] if a.get("terms") in ("us", "uk") else None, full=bool(a.get("full")), spelled_out=bool(a.get("full")),
    ),
    "stitches": lambda s, size, _: views.stitches(s, size or 0),
    "sizes": lambda s, _, __: views.sizes(s),
    "measures": lambda s, _, __: views.measures(s),
    "nest": lambda s, _, __: views.nest(s),
    "known": lambda s, _, __: known(s),
    "hand": lambda s, size, _: in_hand(s, size or 0),
    "proof": lambda s, _, __: proof(s),
}
"""Every view by its name on the wire: of a seen text, for a size or None for all, with what else was asked."""

_lives: OrderedDict[str, Live] = OrderedDict()
_seen: OrderedDict[tuple[str, str, str | None], Seen] = OrderedDict()


def see(name: str, text: str, gauge: str | None) -> str:
    """All that a sheet shows of a text, as JSON."""
    return _json(seen_of(name, text, gauge).as_wire())


def view(name: str, text: str, gauge: str | None, what: str, size: int | None, asked: Asked) -> str:
    """One view of a text, as JSON."""
    return _json(VIEWS[what](seen_of(name, text, gauge), size, asked))


def summary(name: str, text: str) -> dict[str, Any]:
    """What is said of a design among others: title, sizes, rows, and how much is open."""
    seen = seen_of(name, text, None)
    open_ones = [severity(f) for f in seen.report.findings]
    return {
        "title": seen.document.title or name, "sizes": list(seen.report.sizes), "rows": len(seen.report.rows),
        "unread": sum(not r.read for r in seen.report.rows), "terms": seen.document.terms,
        "open": {word: open_ones.count(word) for word in ("error", "warning", "advice")},
    }


def warm() -> None:
    """Nothing but what it takes to be ready: this module and what it needs."""


def seen_of(name: str, text: str, gauge: str | None) -> Seen:
    """A text as it is seen, remembered; `gauge`: another than its own."""
    key = name, text, gauge
    if key not in _seen:
        live = _lives.setdefault(name, Live(name))
        _seen[key] = live.see(text, gauge)
    _seen.move_to_end(key)
    if name in _lives:
        _lives.move_to_end(name)
    while len(_seen) > _MOST_SEEN:
        _seen.popitem(last=False)
    while len(_lives) > _MOST_DESIGNS:
        _lives.popitem(last=False)
    return _seen[key]


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
