"""The fabrics of a worked pattern, each woven when it is first looked at: counts and findings need none."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import overload

from loopwright.model.fabric import Fabric


class Fabrics(Sequence[Fabric | None]):
    """One fabric per size, None where it could not be worked. Reads like a tuple; a fabric asked for twice is the same object."""

    __slots__ = ("_made", "_weavers")

    def __init__(self, weavers: Sequence[Callable[[], Fabric | None]]) -> None:
        self._weavers = tuple(weavers)
        self._made: dict[int, Fabric | None] = {}

    @overload
    def __getitem__(self, index: int) -> Fabric | None: ...

    @overload
    def __getitem__(self, index: slice) -> tuple[Fabric | None, ...]: ...

    def __getitem__(self, index: int | slice) -> Fabric | tuple[Fabric | None, ...] | None:
        if isinstance(index, slice):
            return tuple(self[i] for i in range(*index.indices(len(self))))
        at = range(len(self._weavers))[index]
        if at not in self._made:
            self._made[at] = self._weavers[at]()
        return self._made[at]

    def __len__(self) -> int:
        return len(self._weavers)
