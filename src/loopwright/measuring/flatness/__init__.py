"""Does it lie flat: how each round from a centre lies, and what keeps edges, borders, ripples and rows from lying as they should.

A round of height h, one further out, is 2 pi h longer: so many more stitches of width w lie flat, fewer cup, more ruffle. With corners it
is 2 n tan(pi / n) h. Judged over all rounds so far, not one by one: the curvature inside a round is 2 pi less what its length leaves
(Gauss and Bonnet). Pure counting on the fabric's columns.
"""

from loopwright.measuring.flatness.judge import faults, lies, notes

__all__ = ["faults", "lies", "notes"]
