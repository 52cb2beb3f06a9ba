"""How the rounds of a fabric lie, what is at fault, and what is worth a note."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import Course
from loopwright.measuring.courses import courses as courses_of
from loopwright.measuring.flatness.borders import border_faults
from loopwright.measuring.flatness.crowns import Crown, crowns
from loopwright.measuring.flatness.discs import curvature, disc_faults
from loopwright.measuring.flatness.edges import edge_faults
from loopwright.measuring.flatness.mends import round_mend
from loopwright.measuring.flatness.rows import row_faults
from loopwright.model.fabric import Fabric
from loopwright.model.lies import LieFault
from loopwright.model.measures import RoundLies
from loopwright.record import changed

SEAM = 12  # joined rounds after which the seam's travel is seen: common practice, no source


def lies(fabric: Fabric, courses: Sequence[Course], sizes: StitchSizes) -> tuple[RoundLies, ...]:
    """How each round of each disc, crown, oval and motif lies, up to the last that increases; rounds of loops are left out."""
    return tuple(r for crown in crowns(fabric, courses, sizes) for r in _listed(crown))


def _listed(crown: Crown) -> list[RoundLies]:
    found = []
    for ring in crown.rings:
        if not ring.sure:
            break
        c = ring.course
        mend = "" if ring.word == "flat" else round_mend(crown, ring)
        found.append(
            RoundLies(
                c.row.section, c.row.label, c.index, c.row.item, c.stitches, ring.rate, ring.flat_rate, ring.word, curvature(ring), mend,
            )
        )
    return found


def faults(fabric: Fabric, courses: Sequence[Course] | None, sizes: StitchSizes) -> tuple[LieFault, ...]:
    """What keeps the fabric from lying as it should, in the order of its rows. A guessed gauge finds no fault."""
    if sizes.guessed:
        return ()
    which = sizes, [(r.label.lower(), r.section) for r in fabric.rows]
    held: tuple[object, tuple[LieFault, ...]] | None = fabric.known.get("faults")
    if held is None or held[0] != which:
        held = fabric.known["faults"] = which, _faults(fabric, courses if courses is not None else courses_of(fabric, sizes), sizes)
    return tuple(changed(f, label=fabric.rows[f.row].label, item=fabric.rows[f.row].item) for f in held[1])


def _faults(fabric: Fabric, rows: Sequence[Course], sizes: StitchSizes) -> tuple[LieFault, ...]:
    found = [
        *disc_faults(fabric, rows, sizes), *edge_faults(fabric, rows, sizes), *border_faults(rows),
        *row_faults(fabric, rows),
    ]
    return tuple(sorted(found, key=lambda f: f.row))


def notes(courses: Sequence[Course]) -> tuple[str, ...]:
    """What is no fault but worth knowing: seams that travel."""
    found, run = [], 0
    for c in courses:
        stands = c.way == "round" and c.row.joined and not c.row.turned_before
        run = run + 1 if stands and run else int(stands)
        if run == SEAM:
            where = f" in {c.row.section}" if c.row.section else ""
            found.append(
                f"{SEAM} and more joined rounds{where}, never turned: the seam of the joins travels to one side (common practice, no "
                "source); turn each round, or move the start of the round back a stitch now and then"
            )
    return tuple(dict.fromkeys(found))
