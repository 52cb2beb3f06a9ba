"""One size, row by row, as a maker works it: what the row is called, how many it makes, what is done, in how many rounds of its repeat."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import Any

from loopwright.model.fabric import Fabric, FabricRow
from loopwright.terms import dialect
from loopwright.wording import RowWords, instructions, voice_for
from loopwright.workshop.as_made import as_made
from loopwright.workshop.heard import Heard, repeated
from loopwright.workshop.live import Seen

_MOST_ROWS = 4000


def in_hand(seen: Seen, size: int, *, terms: str | None = None) -> dict[str, Any]:
    """The rows of one size. Each: label, section, count, unit (what is counted), words, how often its repeat is worked, its line.

    `again`: from where to where its words hold what is repeated.

    Nothing, with a word why, where the size has no fabric. `start`: the row's first stitch, as in the view of stitches.
    """
    fabrics = seen.report.fabrics
    fabric = fabrics[size] if 0 <= size < len(fabrics) else None
    if fabric is None:
        return {"rows": [], "why": "No row could be worked yet: it appears with the first one."}
    heard: Heard = []
    voice = replace(voice_for(seen.filled, terms or seen.filled.terms, size), pieces=heard)
    said = {s.item: s for s in instructions(voice, seen.filled, seen.report) if isinstance(s, RowWords)}
    items, line_of = seen.filled.items, seen.source.line_of
    spoken = terms or seen.filled.terms
    each = Counter(r.item for r in fabric.rows)
    met: Counter[int] = Counter()
    rows = []
    for row in fabric.rows[:_MOST_ROWS]:
        met[row.item] += 1
        words = said.get(row.item)
        made = as_made(fabric, row, spoken) if each[row.item] > 1 else None
        starts = _repeats(fabric, row) or list(made.starts if made else ())
        told = words.words.strip() if words else ""
        again = repeated(told, items[row.item] if 0 <= row.item < len(items) else None, heard)
        count, unit = _counted(fabric, row, spoken)
        rows.append({
            "label": row.label, "section": row.section, "count": count, "unit": unit, "words": told,
            "again": list(again) if again else None,
            "lead": words.lead.strip() if words else "", "repeats": starts,
            "made": made.words if made else None, "times": made.times if made else 0, "start": row.start, "end": row.end,
            "nth": met[row.item], "of": each[row.item], "joined": row.joined, "right_side": row.right_side if row.side_said else None,
            "line": line_of(items[row.item].span.start) if 0 <= row.item < len(items) else None,
        })
    return {"rows": rows, "title": seen.document.title, "sizes": list(seen.report.sizes)}


def _counted(fabric: Fabric, row: FabricRow, terms: str) -> tuple[int, str]:
    """How many stitches, and their name where all are of one kind."""
    kinds = {k: n for k, n in fabric.counted(row).items() if n}
    total = sum(kinds.values())
    if len(kinds) != 1:
        return total, "sts"
    term = dialect(terms).term(next(iter(kinds)))
    return total, term.short


def _repeats(fabric: Fabric, row: FabricRow) -> list[int]:
    """The first stitch of every round of the row's outermost repeat; [] where there is none."""
    starts, last = [], 0
    for at in range(row.start, row.end):
        if fabric.round[at] > last:
            last = fabric.round[at]
            starts.append(at)
    return starts if len(starts) > 1 else []
