"""Which entry of the old version is which of the new: by what the rows make, by their labels, and by their words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from itertools import zip_longest

from loopwright.publishing.changes.entries import Entry, Part, together

# Weights of likeness, chosen on planted changes in the shipped designs: what a row makes and says counts more than its number.
SAME_WORDS, SAME_COUNTS, SAME_LABEL, NO_LABELS, LIKE_WORDS = 3.0, 2.0, 1.5, 0.5, 2.0
ENOUGH = 1.5  # below it two rows are not one row changed; the same label alone is enough
ENOUGH_WORDS = 0.4  # share of words that prose must have in common
LARGEST = 250_000  # pairs that are weighed; above it a row must be the same, or stand between two that are
MANY_ALIKE = 50  # rows of the same words and counts, from which on runs of them are not told apart
LIKE_SECTION = 0.5  # share of rows two sections must have in common to be one that was renamed


@dataclass(slots=True)
class Aligned:
    """Pairs of sections and entries; None on one side for what stands on the other alone. `moved`: entries by old and new index."""

    parts: list[tuple[Part | None, Part | None]]
    entries: list[tuple[Entry | None, Entry | None]]
    moved: list[tuple[Entry, Entry]] = field(default_factory=list)
    moved_parts: list[tuple[Part, Part]] = field(default_factory=list)


def align(old: Sequence[Part], new: Sequence[Part]) -> Aligned:
    """Sections and entries of two versions, in the order of the new one; what was taken out stands where it stood."""
    pairs = _pair_parts(old, new)
    found = Aligned(_in_order(old, new, pairs), [])
    shift = _out_of_order([pairs[i] for i in range(len(new)) if i in pairs])
    found.moved_parts = [(old[pairs[i]], new[i]) for i in pairs if pairs[i] in shift]
    for a, b in found.parts:
        if a is None or b is None:
            found.entries.extend(_whole(a, b))
        else:
            found.entries.extend(_regrouped(_pair_entries(a.entries, b.entries)))
    _moves(found)
    return found


def _whole(a: Part | None, b: Part | None) -> list[tuple[Entry | None, Entry | None]]:
    """A section that is in one version alone: one entry."""
    if a is not None and a.entries:
        return [(together(a.entries), None)]
    return [(None, together(b.entries))] if b is not None and b.entries else []


def _regrouped(pairs: list[tuple[Entry | None, Entry | None]]) -> list[tuple[Entry | None, Entry | None]]:
    """Rows that are told one by one in one version, and together in the other ("Rnds 4-9"), are taken together where they make the same."""
    found: list[tuple[Entry | None, Entry | None]] = []
    run: list[tuple[Entry | None, Entry | None]] = []
    for pair in [*pairs, None]:
        if pair is not None and not _makes_the_same(*pair):
            run.append(pair)
            continue
        old, new = [a for a, _ in run if a is not None], [b for _, b in run if b is not None]
        if old and new and len(old) != len(new):
            one, other = together(old), together(new)
            run = [(one, other)] if _makes_the_same(one, other) else run
        found.extend(run)
        run = []
        if pair is not None:
            found.append(pair)
    return found


def _makes_the_same(a: Entry | None, b: Entry | None) -> bool:
    if a is None or b is None or a.counts != b.counts or not any(a.counts):
        return False
    return all(x.same(y) for was, now in zip(a.rows, b.rows, strict=True) for x, y in zip(was, now, strict=True))


# --- sections --------------------------------------------------------------------------------------------------------


def _pair_parts(old: Sequence[Part], new: Sequence[Part]) -> dict[int, int]:
    """New section -> old one: by title first, then by what they hold."""
    pairs: dict[int, int] = {}
    left = dict(enumerate(old))
    for i, part in enumerate(new):
        same = next((j for j, o in left.items() if o.key == part.key), None)
        if same is not None:
            pairs[i] = same
            del left[same]
    for i, part in enumerate(new):
        if i in pairs or not left:
            continue
        best = max(left, key=lambda j: (_likeness(left[j], part), -j))
        if _likeness(left[best], part) >= LIKE_SECTION:
            pairs[i] = best
            del left[best]
    return pairs


def _likeness(a: Part, b: Part) -> float:
    """Which share of the rows is the same, by words or by all they make."""
    if not a.entries or not b.entries:
        return 0.0
    words = {e.bare for e in a.entries}
    counts = {e.counts for e in a.entries if any(e.counts)}
    alike = sum(e.bare in words or any(e.counts) and e.counts in counts for e in b.entries)
    return alike / max(len(a.entries), len(b.entries))


def _in_order(old: Sequence[Part], new: Sequence[Part], pairs: dict[int, int]) -> list[tuple[Part | None, Part | None]]:
    found: list[tuple[Part | None, Part | None]] = [(old[pairs[i]] if i in pairs else None, p) for i, p in enumerate(new)]
    taken = set(pairs.values())
    for j, part in enumerate(old):
        if j in taken:
            continue
        before = next((k for k, (a, _) in enumerate(found) if j and a is old[j - 1]), -1)
        found.insert(before + 1, (part, None))
    return found


def _out_of_order(numbers: Sequence[int]) -> set[int]:
    """Those that must move so that the others stand in rising order: all but the longest rising run."""
    runs: list[list[int]] = []
    for n in numbers:
        rising = [r for r in runs if r[-1] < n]
        longest: list[int] = max(rising, key=len) if rising else []
        runs.append([*longest, n])
    kept: list[int] = max(runs, key=len) if runs else []
    return set(numbers) - set(kept)


# --- entries ---------------------------------------------------------------------------------------------------------


def _pair_entries(old: list[Entry], new: list[Entry]) -> list[tuple[Entry | None, Entry | None]]:
    head = 0
    while head < min(len(old), len(new)) and _alike(old[head], new[head]):
        head += 1
    tail = 0
    while tail < min(len(old), len(new)) - head and _alike(old[-1 - tail], new[-1 - tail]):
        tail += 1
    a, b = old[head : len(old) - tail], new[head : len(new) - tail]
    middle = _weighed(a, b) if len(a) * len(b) <= LARGEST else _by_runs(a, b)
    ends = list(zip(old[len(old) - tail :], new[len(new) - tail :], strict=True))
    return [*zip(old[:head], new[:head], strict=True), *middle, *ends]


def _alike(a: Entry, b: Entry) -> bool:
    return a.words == b.words and a.counts == b.counts


def _weighed(a: list[Entry], b: list[Entry]) -> list[tuple[Entry | None, Entry | None]]:
    """The pairing of greatest likeness that keeps the order (dynamic programming over all pairs)."""
    best = [[0.0] * (len(b) + 1) for _ in range(len(a) + 1)]
    likes = [[_weight(x, y) for y in b] for x in a]
    for i in range(len(a) - 1, -1, -1):
        row, below, like = best[i], best[i + 1], likes[i]
        for j in range(len(b) - 1, -1, -1):
            row[j] = max(below[j], row[j + 1], below[j + 1] + like[j] if like[j] else 0.0)
    found: list[tuple[Entry | None, Entry | None]] = []
    i = j = 0
    while i < len(a) or j < len(b):
        if i < len(a) and j < len(b) and likes[i][j] and best[i][j] == best[i + 1][j + 1] + likes[i][j]:
            found.append((a[i], b[j]))
            i, j = i + 1, j + 1
        elif j >= len(b) or i < len(a) and best[i][j] == best[i + 1][j]:
            found.append((a[i], None))
            i += 1
        else:
            found.append((None, b[j]))
            j += 1
    return found


def _weight(a: Entry, b: Entry) -> float:
    """How much two entries are one; 0 where they are not."""
    common = len(a.tokens & b.tokens) / len(a.tokens | b.tokens) if a.tokens or b.tokens else 1.0
    if not (a.is_row and b.is_row):
        like = LIKE_WORDS * common + (SAME_WORDS if a.words == b.words else 0.0)
        return like + 1 if common >= ENOUGH_WORDS else 0.0
    weight = LIKE_WORDS * common
    weight += SAME_WORDS if a.bare == b.bare else 0.0
    weight += SAME_COUNTS if any(a.counts) and a.counts == b.counts else 0.0
    weight += NO_LABELS if not a.label and not b.label else SAME_LABEL if a.label.casefold() == b.label.casefold() else 0.0
    return weight if weight >= ENOUGH else 0.0


def _by_runs(a: list[Entry], b: list[Entry], *, labels: bool = True) -> list[tuple[Entry | None, Entry | None]]:
    """For very long patterns: runs of equal rows, with their labels first and then without; what stands between them is weighed."""
    keys = [[(e.label if labels else "", e.bare, e.counts) for e in side] for side in (a, b)]
    if not labels and max(Counter(keys[1]).values(), default=0) > MANY_ALIKE:
        return list(zip_longest(a, b))  # row upon row the same: one is as good as another
    found: list[tuple[Entry | None, Entry | None]] = []
    for tag, i, i2, j, j2 in SequenceMatcher(None, keys[0], keys[1], autojunk=False).get_opcodes():
        if tag == "equal":
            found.extend(zip(a[i:i2], b[j:j2], strict=True))
        elif (i2 - i) * (j2 - j) <= LARGEST:
            found.extend(_weighed(a[i:i2], b[j:j2]))
        else:
            found.extend(_by_runs(a[i:i2], b[j:j2], labels=False) if labels else zip_longest(a[i:i2], b[j:j2]))
    return found


def _moves(found: Aligned) -> None:
    """Entries that were taken out in one place and put in elsewhere, the same in words and in what they make, have moved."""
    gone = [a for a, b in found.entries if a is not None and b is None and a.is_row]
    for k, (a, b) in enumerate(found.entries):
        if a is not None or b is None or not b.is_row:
            continue
        same = next((g for g in gone if g.bare == b.bare and (g.counts == b.counts or not any(b.counts))), None)
        if same is not None:
            gone.remove(same)
            found.moved.append((same, b))
            found.entries[k] = (same, b)
    moved = {id(a) for a, _ in found.moved}
    found.entries = [(a, b) for a, b in found.entries if b is not None or id(a) not in moved]
