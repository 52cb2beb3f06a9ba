"""What is remembered between calls: bounded, and without a moment at which all of it is gone."""

from __future__ import annotations

from typing import Any, Generic, TypeVar

K = TypeVar("K")
V = TypeVar("V")


class Kept(Generic[K, V]):
    """A table that holds what was used last, at most twice `most` entries: what was not used while `most` others were is let go."""

    __slots__ = ("_before", "_most", "_now")

    def __init__(self, most: int) -> None:
        self._most = most
        self._now: dict[K, V] = {}
        self._before: dict[K, V] = {}

    def get(self, key: K) -> V | None:
        """What is kept under a key; None where nothing is."""
        found = self._now.get(key)
        if found is None and self._before:
            found = self._before.get(key)
            if found is not None:
                self[key] = found
        return found

    def __setitem__(self, key: K, value: V) -> None:
        if len(self._now) >= self._most:
            self._before, self._now = self._now, {}
        self._now[key] = value

    def __len__(self) -> int:
        return len(self._now.keys() | self._before.keys())


def kept(memo: dict[Any, Any] | None, name: str, most: int) -> Kept[Any, Any]:
    """The table of a name in a memo, made when it is first asked for; a table of its own where there is no memo."""
    if memo is None:
        return Kept(most)
    table: Kept[Any, Any] | None = memo.get(name)
    if table is None:
        table = memo[name] = Kept(most)
    return table
