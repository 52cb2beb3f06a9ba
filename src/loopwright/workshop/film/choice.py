"""Which film of a design is meant."""

from __future__ import annotations

from loopwright.record import record


@record
class Choice:
    """What is filmed: a size by its name ("" for the one there is, or that the sample was worked in), terms ("" for the design's own)."""

    size: str = ""
    terms: str = ""
    language: str = "en"
    left_handed: bool = False
