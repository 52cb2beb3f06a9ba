"""Schematics: the outline of every piece to scale, with letters, and a table of its measurements. Standard library only."""

from loopwright.drawing.schematic.drawn import NARROWEST_MM, WIDEST_MM, SchematicDrawing, SchematicOptions, Units
from loopwright.drawing.schematic.schematics import schematics

__all__ = ["NARROWEST_MM", "WIDEST_MM", "SchematicDrawing", "SchematicOptions", "Units", "schematics"]
