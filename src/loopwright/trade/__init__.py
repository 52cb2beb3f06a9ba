"""What the trade knows, as tables with sources: sizes, ease, hooks, yarn, stitches, cautions, stitch patterns.

Each module loads its table when first asked, so that importing this package costs nothing.
"""
