"""Views of a text that is being written: chart, schematic, words, measures, sizes, and the links from stitches to characters."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Literal

from loopwright.model.fabric import PLACES, ROLES
from loopwright.terms import dialect
from loopwright.wording import heading, instructions, voice_for
from loopwright.workshop.heard import Heard, found_in
from loopwright.workshop.live import Seen
from loopwright.workshop.sizes import sizes

__all__ = ["chart", "measures", "nest", "schematic", "sizes", "stitches", "words"]


def chart(seen: Seen, size: int, *, left_handed: bool = False, whole: bool = False) -> dict[str, Any]:
    """Charts of one size as SVG, with their words. Nothing where there is no gauge or no fabric."""
    from loopwright.drawing.chart import charts  # noqa: PLC0415 - only where it is looked at
    from loopwright.workshop import charting  # noqa: PLC0415 - the same

    sizes, fabric = seen.stitches, _fabric(seen, size)
    if sizes is None or fabric is None:
        return {"charts": [], "why": _why(seen, size)}
    terms: Literal["us", "uk"] = "us" if seen.filled.terms == "us" else "uk"
    line_of = seen.source.line_of
    told = charting.of_charts(seen.filled, seen.report, size)
    options = replace(
        told, terms=terms, left_handed=left_handed, whole=whole, line=lambda s: line_of(max(0, fabric.origin[s])), ident=f"chart-{size}",
    )
    found = charts(fabric, sizes, options)
    return {
        "charts": [
            {"svg": c.svg, "section": c.section, "part": c.part, "description": c.description, "notes": list(c.notes), "rows": list(c.rows)}
            for c in found
        ],
    }


def schematic(seen: Seen, size: int | None) -> dict[str, Any]:
    """Schematics, of one size or of all in brackets."""
    from loopwright.drawing.schematic import schematics  # noqa: PLC0415 - only where it is looked at
    from loopwright.workshop import charting  # noqa: PLC0415 - the same

    sizes = seen.stitches
    if sizes is None:
        return {"schematics": [], "why": _why(seen, size or 0)}
    names = list(seen.report.sizes) or ["one size"]
    found = schematics(seen.report.fabrics, sizes, names, replace(charting.of_schematics(seen.filled, size or 0), only=size))
    return {"schematics": [{"svg": d.svg, "title": d.title, "description": d.description, "size": d.size} for d in found]}


def words(seen: Seen, size: int | None, *, terms: str | None = None, full: bool = False, spelled_out: bool = False) -> dict[str, Any]:
    """The pattern as makers will read it, row by row with the line that each comes from."""
    document, report = seen.filled, seen.report
    heard: Heard = []
    voice = voice_for(document, terms or document.terms, size, full_words=full, spelled_out=spelled_out)
    said = instructions(replace(voice, pieces=heard), document, report)
    items, utf16 = document.items, _in_utf16(seen)
    rows = []
    for s in said:
        item = items[s.item] if 0 <= s.item < len(items) else None
        text = s.text.strip("\n")
        rows.append({
            "kind": type(s).__name__.removesuffix("Words").lower(), "text": text,
            "line": seen.source.line_of(item.span.start) if item is not None else None,
            "links": [[a, b, utf16(at.start), utf16(at.end)] for a, b, at in found_in(text, item, heard)] if text.isascii() else [],
        })  # fmt: skip
    return {"heading": heading(voice, document, report, "\n".join(s.text for s in said)).text, "rows": rows}


def stitches(seen: Seen, size: int) -> dict[str, Any]:
    """Every stitch of one size: the characters that made it (UTF-16), its row, what it was worked into, and what it is."""
    fabric = _fabric(seen, size)
    if fabric is None:
        return {"origin": [], "why": _why(seen, size)}
    utf16 = _in_utf16(seen)
    terms = dialect(seen.filled.terms)
    return {
        "origin": [utf16(o) for o in fabric.origin], "end": [utf16(o) for o in fabric.origin_end], "row": list(fabric.row),
        "into": list(fabric.into), "kind": list(fabric.kind), "role": list(fabric.role), "place": list(fabric.place),
        "round": list(fabric.round),
        "kinds": [{"key": k, "short": terms.term(k).short, "long": terms.term(k).long} for k in fabric.kinds],
        "roles": list(ROLES), "places": list(PLACES),
        "rows": [
            {
                "label": r.label, "section": r.section, "start": r.start, "end": r.end, "item": r.item, "right_side": r.right_side,
                "joined": r.joined, "turned": r.turned, "counted": sum(fabric.counted(r).values()),
            }
            for r in fabric.rows
        ],
    }


def _in_utf16(seen: Seen) -> Any:
    text = seen.source.text
    if max(text, default="") <= "\uffff":
        return int
    table = [0]
    for c in text:
        table.append(table[-1] + (2 if c > "\uffff" else 1))
    return lambda o: table[o] if 0 <= o < len(table) else -1


def _fabric(seen: Seen, size: int) -> Any:
    fabrics = seen.report.fabrics
    return fabrics[size] if 0 <= size < len(fabrics) else None


def _why(seen: Seen, size: int) -> str:
    if _fabric(seen, size) is None:
        return "No row could be worked yet: it appears with the first one."
    return "There is no gauge yet: a line such as 'Gauge: 17 hdc and 13 rnds = 10 cm' is what drawings are made to."


def measures(seen: Seen) -> dict[str, Any]:
    """Dimensions, yarn and time of every size, as `loopwright measure` gives them."""
    from loopwright.workshop.measure import Wanted, measure_source  # noqa: PLC0415 - only where it is looked at
    from loopwright.workshop.measure_json import as_json  # noqa: PLC0415 - the same

    found = as_json(measure_source(seen.source, Wanted()))
    return {k: found[k] for k in ("gauge", "sizes", "notes", "cautions")}


def nest(seen: Seen) -> dict[str, Any]:
    """All sizes inside one another: the outlines of every figure, as paths in millimetres."""
    from loopwright.drawing.schematic.nest import nested  # noqa: PLC0415 - only where it is looked at

    if seen.stitches is None:
        return {"figures": [], "why": _why(seen, 0)}
    found = nested(seen.report.fabrics, seen.stitches)
    figures = [
        {"name": f.name, "box_mm": [round(x, 1) for x in f.box_mm], "sizes": [None if o is None else _outline(o) for o in f.outlines]}
        for f in found
    ]
    return {"figures": figures}


def _outline(o: Any) -> dict[str, Any]:
    return {"path": o.path, "folds": o.folds, "width_mm": round(o.width_mm, 1), "height_mm": round(o.height_mm, 1)}
