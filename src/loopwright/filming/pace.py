"""How long stitches take before the camera: by her own timed stitches, else by the table's middle speed."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.measuring.time import Pace
from loopwright.trade.yarn_use import yarn_use


class Pacer:
    """Seconds for stitches by kind (US key)."""

    def __init__(self, speeds: Mapping[str, float]) -> None:
        """`speeds`: seconds a stitch as timed, {} for the table's."""
        self._pace = Pace(speeds)
        usual = Pace({})
        by_sc = [s / (usual.seconds(k, 1.0) or 1.0) for k, s in speeds.items()]
        self._sc = sum(by_sc) / len(by_sc) if by_sc else yarn_use().speed.middle_s

    def seconds(self, made: Mapping[str, int]) -> float:
        """For so many stitches of each kind."""
        return sum(n * self._pace.seconds(kind, self._sc) for kind, n in made.items())
