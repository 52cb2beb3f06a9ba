"""How high the drawing reaches at each place along a row, so that the next row stays above it."""

from __future__ import annotations

import math
from collections.abc import Iterable

CLEAR = 4.0  # air between a symbol and whatever lies below it


class Skyline:
    """The highest v drawn so far by bins of u; `whole`: u of a turn, infinite for rows."""

    def __init__(self, bin_u: float, whole: float) -> None:
        self.bin_u, self.whole = bin_u, whole
        self.bins = round(whole / bin_u) if math.isfinite(whole) else 0
        self._high: dict[int, float] = {}

    def _bin(self, u: float) -> int:
        found = math.floor(u / self.bin_u)
        return found % self.bins if self.bins else found

    def raise_to(self, u: float, v: float, half_u: float = 0.0) -> None:
        """Something reaches v at u, half_u to either side."""
        first, last = math.floor((u - half_u) / self.bin_u), math.floor((u + half_u) / self.bin_u)
        for at in range(first, last + 1):
            key = at % self.bins if self.bins else at
            if self._high.get(key, -math.inf) < v:
                self._high[key] = v

    def at(self, u: float) -> float:
        """How high it reaches there; minus infinity where nothing is."""
        return self._high.get(self._bin(u), -math.inf)

    def need(self, places: Iterable[tuple[float, float]]) -> float:
        """How far places (u, v) must rise to be clear of it; 0 where they are."""
        return max((max(0.0, self.at(u) + CLEAR - v) for u, v in places), default=0.0)
