"""Views of a text that is being written: chart, schematic, words, measures, sizes, and the links from stitches to characters."""

from __future__ import annotations

from typing import Any, Literal

from loopwright.grading import Number
from loopwright.model.fabric import PLACES, ROLES
from loopwright.model.tree import FitLine
from loopwright.terms import dialect
from loopwright.wording import heading, instructions, voice_for
from loopwright.workshop.live import Seen


def chart(seen: Seen, size: int, *, left_handed: bool = False, whole: bool = False) -> dict[str, Any]:
    """Charts of one size as SVG, with their words. Nothing where there is no gauge or no fabric."""
    from loopwright.drawing.chart import ChartOptions, charts  # noqa: PLC0415 - only where it is looked at

    sizes, fabric = seen.stitches, _fabric(seen, size)
    if sizes is None or fabric is None:
        return {"charts": [], "why": _why(seen, size)}
    terms: Literal["us", "uk"] = "us" if seen.filled.terms == "us" else "uk"
    line_of = seen.source.line_of
    options = ChartOptions(terms, left_handed, whole, line=lambda s: line_of(max(0, fabric.origin[s])), ident=f"chart-{size}")
    found = charts(fabric, sizes, options)
    return {
        "charts": [
            {"svg": c.svg, "section": c.section, "part": c.part, "description": c.description, "notes": list(c.notes), "rows": list(c.rows)}
            for c in found
        ],
    }


def schematic(seen: Seen, size: int | None) -> dict[str, Any]:
    """Schematics, of one size or of all in brackets."""
    from loopwright.drawing.schematic import SchematicOptions, schematics  # noqa: PLC0415 - only where it is looked at

    sizes = seen.stitches
    if sizes is None:
        return {"schematics": [], "why": _why(seen, size or 0)}
    names = list(seen.report.sizes) or ["one size"]
    found = schematics(seen.report.fabrics, sizes, names, SchematicOptions(only=size))
    return {"schematics": [{"svg": d.svg, "title": d.title, "description": d.description, "size": d.size} for d in found]}


def words(seen: Seen, size: int | None, *, terms: str | None = None, full: bool = False, spelled_out: bool = False) -> dict[str, Any]:
    """The pattern as makers will read it, row by row with the line that each comes from."""
    document, report = seen.filled, seen.report
    voice = voice_for(document, terms or document.terms, size, full_words=full, spelled_out=spelled_out)
    said = instructions(voice, document, report)
    items = document.items
    return {
        "heading": heading(voice, document, report, "\n".join(s.text for s in said)).text,
        "rows": [
            {
                "kind": type(s).__name__.removesuffix("Words").lower(), "text": s.text.strip("\n"),
                "line": seen.source.line_of(items[s.item].span.start) if 0 <= s.item < len(items) else None,
            }
            for s in said
        ],
    }


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


def sizes(seen: Seen) -> dict[str, Any]:
    """The grading table: for every blank and size the number, its target, what it comes to, its neighbours and its reason."""
    graded = seen.graded
    if graded is None:
        return {"sizes": list(seen.report.sizes), "blanks": []}
    names = [n.blank for n in graded.sizes[0].numbers] if graded.sizes else []
    sentences = {i.blank: i.sentence for i in seen.document.items if isinstance(i, FitLine)}
    return {
        "sizes": [s.size for s in graded.sizes],
        "blanks": [
            {
                "name": name, "sentence": sentences.get(name, ""),
                "sizes": [next((_number(n) for n in s.numbers if n.blank == name), None) for s in graded.sizes],
            }
            for name in names
        ],
    }


def _number(n: Number) -> dict[str, Any]:
    return {
        "value": n.value, "unit": n.unit, "way": n.way, "measure": n.name, "target_mm": _mm(n.target_mm), "achieved_mm": _mm(n.achieved_mm),
        "error_mm": _mm(n.error_mm), "step_mm": _mm(n.step_mm), "reason": n.reason,
        "bodies": [{"name": name, "mm": _mm(b.mm), "source": b.source, "weak": b.weak} for name, b in n.bodies],
        "neighbours": [{"value": m.value, "achieved_mm": _mm(m.achieved_mm)} for m in n.neighbours],
    }


def _mm(value: float | None) -> float | None:
    return None if value is None else round(value, 2) + 0.0


def measures(seen: Seen) -> dict[str, Any]:
    """Dimensions, yarn and time of every size, as `loopwright measure` gives them."""
    from loopwright.workshop.measure import Wanted, measure_source  # noqa: PLC0415 - only where it is looked at
    from loopwright.workshop.measure_json import as_json  # noqa: PLC0415 - the same

    found = as_json(measure_source(seen.source, Wanted()))
    return {k: found[k] for k in ("gauge", "sizes", "notes", "cautions")}
