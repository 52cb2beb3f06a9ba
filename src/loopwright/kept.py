"""What is remembered between calls: bounded, and without a moment at which all of it is gone."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import Any, Generic, ParamSpec, TypeVar

K = TypeVar("K")
V = TypeVar("V")
P = ParamSpec("P")
LONGEST = 20_000  # characters of what is given: longer texts are no pattern's, and would fill the memory


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


def of_short(most: int) -> Callable[[Callable[P, V]], Callable[P, V]]:
    """As lru_cache, for functions of a text or of several in a tuple; nothing is kept of long ones."""

    def keeping(function: Callable[P, V]) -> Callable[P, V]:
        held = lru_cache(maxsize=most)(function)

        @wraps(function)
        def called(*args: P.args, **named: P.kwargs) -> V:
            text: Any = args[0]
            long = len(text) if isinstance(text, str) else sum(map(len, text))
            return held(*args, **named) if long <= LONGEST else function(*args, **named)  # type: ignore[arg-type]

        return called

    return keeping
