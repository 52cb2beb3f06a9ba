"""Loopwright: a written crochet pattern, read, worked stitch by stitch, checked, graded and written out again."""

__version__ = "0.1.0"
