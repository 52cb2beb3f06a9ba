"""Which differences are changes of their own, and which only follow from one before them; sizes that changed alike are gathered."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from loopwright.publishing.changes.model import Diff, Follow, Told

_FABRIC = ("count", "stitches", "places")


class Causes:
    """Differences sorted by their causes.

    `told`: changes of rows; `named`: what follows from a line of the heading, by its key; `open`: what follows from nothing that was found.
    """

    def __init__(self) -> None:
        self.told: dict[tuple[int, str, str], Told] = {}
        self.named: dict[int, list[Diff]] = {}
        self.open: list[Diff] = []

    def take(self, diffs: Iterable[Diff], heading_of: Callable[[Diff], int | None]) -> None:
        """Sorts the differences of one size, which must come in the order of the text. `heading_of`: the heading's line that a row uses."""
        current: Told | None = None
        printed: Told | None = None  # a printed count alone is the cause where nothing else is: rows are read by it
        waiting: list[Diff] = []
        past: list[Told] = []
        for d in diffs:
            if d.what == "printed" and d.detail and current is not None:
                continue  # the count follows from a row before, and so does the printed one
            by_heading = None if d.own else heading_of(d)
            if by_heading is not None:
                self.named.setdefault(by_heading, []).append(d)
            elif not d.own:
                cause = next((t for t in reversed(past) if _alike(t.by_pair[d.pair], d)), current or printed)
                (cause.follows if cause is not None else waiting).append(d)
            elif current is not None and self._goes_on(current, d):
                current.follows.append(d)
            else:
                told = self.told.setdefault((d.order, d.what, d.label), Told(d))
                told.by_pair[d.pair] = d
                past.append(told)
                if d.what == "printed":
                    printed = told
                else:
                    current = told
                told.follows.extend(waiting)  # read otherwise, because of what comes after
                waiting.clear()
        self.open.extend(waiting)

    @staticmethod
    def _goes_on(current: Told, d: Diff) -> bool:
        """Whether this is a later row of the very words that changed."""
        head = current.by_pair.get(d.pair)
        return head is not None and head.order == d.order and d.what in _FABRIC and head.what in _FABRIC

    def in_order(self) -> list[Told]:
        """Changes of rows in the order of the text, the gravest of one row first."""
        return [self.told[k] for k in sorted(self.told, key=lambda k: (k[0], self.told[k].head.part))]


def _alike(cause: Diff, d: Diff) -> bool:
    """Whether a count is otherwise just as that of a row that changed."""
    return cause.what == d.what == "count" and (cause.was, cause.now) == (d.was, d.now)


def follows(diffs: Sequence[Diff], names: Sequence[str]) -> tuple[Follow, ...]:
    """Differences that follow, gathered over the sizes, in the order of the text. `names`: of the pairs of sizes."""
    gathered: dict[tuple[int, int, str, str], list[Diff]] = {}
    for d in sorted(diffs, key=lambda d: (d.order, d.part, d.pair)):
        gathered.setdefault((d.order, d.part, d.label, d.what), []).append(d)
    return tuple(
        Follow(
            found[0].section, label, tuple(names[d.pair] for d in found), tuple(d.was for d in found), tuple(d.now for d in found),
            found[0].noun, found[0].what,
        )
        for (_, _, label, _), found in gathered.items()
    )
