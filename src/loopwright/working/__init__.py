"""The worker: a written pattern becomes fabric, row by row, and every count a fact."""

from loopwright.working.reporting import work

__all__ = ["work"]
