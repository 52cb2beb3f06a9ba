"""What keeps a fabric from lying as it should, with its figures: discs that cup or ruffle, edges that pull, ripples that widen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from loopwright.record import record

Fault = Literal["cups", "ruffles", "corners", "row ends", "border", "ripple", "slant", "edging"]
Follows = Literal["", "round", "row"]


@record
class LieFault:
    """One fault.

    `row`: index of the fabric's row where it shows. `item`: of the document's item that asked for that row. `off`: share of too many
    (above 0) or too few stitches; for corners the share of the radius that they stand out; for ripples and slants what a row changes
    against its length. `follows`: what is worked on after it: nothing, rounds, rows. `facts`: the figures in words, for a message.
    `mend`: what would make it lie.
    """

    what: Fault
    section: str | None
    label: str
    row: int
    item: int
    off: float
    mend: str
    facts: Mapping[str, str] = field(default_factory=dict)
    follows: Follows = ""
