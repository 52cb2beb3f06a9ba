"""The relaxed shape of a fabric: a body for every stitch, by springs, bending and stuffing."""

from loopwright.measuring.relax.graph import Graph, stitch_graph
from loopwright.measuring.relax.settle import relax
from loopwright.measuring.relax.shape import RelaxOptions, Shape

__all__ = ["Graph", "RelaxOptions", "Shape", "relax", "stitch_graph"]
