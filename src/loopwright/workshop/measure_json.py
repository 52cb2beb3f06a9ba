"""The JSON of `loopwright measure`: lengths in mm, yarn in metres, mass in grams, time in minutes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from loopwright.findings.render_json import as_json as findings_json
from loopwright.model.measures import Dimension, Measures, YarnNeed
from loopwright.workshop.cautions import as_json as cautions_json
from loopwright.workshop.measure import Measured
from loopwright.workshop.original import line_of


def as_json(measured: Measured) -> dict[str, Any]:
    """The command's JSON."""
    sizes = measured.gauge.sizes
    return {
        "version": 1, "title": measured.document.title, "terms": measured.document.terms,
        "gauge": None if sizes is None else {
            "text": sizes.text, "stitch": sizes.kind, "stitch_mm": _mm(sizes.width_mm), "row_mm": _mm(sizes.row_mm),
            "guessed": sizes.guessed,
        },
        "sizes": [_size_json(measured, m) for m in measured.sizes],
        "cautions": cautions_json(measured.source, measured.cautions),
        "notes": list(measured.notes),
        "findings": findings_json(measured.source, measured.findings),
    }


def _size_json(measured: Measured, m: Measures) -> dict[str, Any]:
    line = line_of(measured.document, measured.source)
    items = measured.document.items
    return {
        "size": m.size,
        "dimensions": [_dimension(d) for d in m.dimensions],
        "rounds": [
            {
                "section": r.section, "label": r.label, "line": line(items[r.item].span.start), "stitches": r.stitches,
                "rate": round(r.rate, 2), "flat_rate": round(r.flat_rate, 2), "lies": r.lies, "curvature": round(r.curvature, 3),
                "mend": r.mend,
            }
            for r in m.rounds
        ],
        "shape": None if m.shape is None else {
            "width_mm": _mm(m.shape.width_mm), "depth_mm": _mm(m.shape.depth_mm), "height_mm": _mm(m.shape.height_mm),
            "strain_mean": round(m.shape.strain_mean, 5), "strain_max": round(m.shape.strain_max, 4), "settled": m.shape.settled,
            "laid_flat": m.shape.laid_flat,
        },
        "worn": None if m.worn is None else {
            "form": m.worn.form, "front_mm": _mm(m.worn.front_mm), "back_mm": _mm(m.worn.back_mm), "sides_mm": _mm(m.worn.sides_mm),
            "behind_brow_mm": _mm(m.worn.behind_brow_mm), "stretch": round(m.worn.stretch, 3), "notes": list(m.worn.notes),
        },
        "yarn": _yarn(m.yarn),
        "yarn_of_sections": [{"section": section, "yarn": _yarn(needs)} for section, needs in m.yarn_of_sections],
        "at_hand": None if m.at_hand is None else {
            "have_m": round(m.at_hand.have_m, 1), "verdict": m.at_hand.verdict, "spare_m": round(m.at_hand.spare_m, 1),
            "colour": m.at_hand.colour, "runs_out": m.at_hand.label or None, "section": m.at_hand.section,
            "earliest": m.at_hand.earliest or None, "latest": m.at_hand.latest or None, "share": round(m.at_hand.share, 3),
        },
        "time_min": None if m.time is None else round(m.time.value_min, 1),
        "time_low_min": None if m.time is None else round(m.time.low_min, 1),
        "time_high_min": None if m.time is None else round(m.time.high_min, 1),
        "stitches": m.stitches, "notes": list(m.notes),
    }


def _yarn(needs: Sequence[YarnNeed]) -> list[dict[str, Any]]:
    return [
        {
            "colour": y.colour, "length_m": round(y.length_m, 1), "low_m": round(y.low_m, 1), "high_m": round(y.high_m, 1),
            "mass_g": None if y.mass_g is None else round(y.mass_g, 1), "balls": y.balls, "how": y.how,
            "other_balls": y.other_balls,
        }
        for y in needs
    ]


def _dimension(d: Dimension) -> dict[str, Any]:
    return {
        "section": d.section, "name": d.name, "value_mm": _mm(d.value_mm), "low_mm": _mm(d.low_mm), "high_mm": _mm(d.high_mm), "how": d.how,
        "rows": list(d.rows), "piece": d.piece, "worn": d.worn, "relaxed": d.relaxed,
    }


def _mm(value: float) -> float:
    return round(value, 2) + 0.0


