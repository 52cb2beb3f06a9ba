"""The words in which changes are said, out of errata.toml; names of sizes and rows brought together."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from loopwright.publishing.changes.model import Follow, Value

_NUMBERED = re.compile(r"(?P<word>.*?\D)?(?P<n>\d+)$")

_COUNTED = re.compile(r"(?P<n>\d+) (?P<what>[^\d,]+)$")


@cache
def phrases() -> dict[str, dict[str, str]]:
    """Tables of phrases by name."""
    found: dict[str, Any] = tomllib.loads(files("loopwright.publishing.changes").joinpath("errata.toml").read_text(encoding="utf-8"))
    return found


def some_sizes(sizes: Sequence[str], all_sizes: Sequence[str], *, either: bool = False) -> str:
    """Names of sizes, three and more next to each other as a range: "newborn to 6 months and adult"; `either`: "… or adult"."""
    where = phrases()["where"]
    places = sorted({all_sizes.index(s) for s in sizes if s in all_sizes})
    groups: list[list[int]] = []
    for p in places:
        if groups and p == groups[-1][-1] + 1:
            groups[-1].append(p)
        else:
            groups.append([p])
    said: list[str] = []
    for g in groups:
        names = [all_sizes[i] for i in g]
        said.extend([where["range"].format(first=names[0], last=names[-1])] if len(g) > 2 else names)
    said.extend(s for s in sizes if s not in all_sizes)
    return listed(said, "or" if either else "and")


def listed(said: Sequence[str], joiner: str = "and") -> str:
    """As in "a, b and c"."""
    where = phrases()["where"]
    return where[joiner].join([where["between"].join(said[:-1]), said[-1]]) if len(said) > 1 else "".join(said)


def values(told: Sequence[Value]) -> str:
    """One value where all are the same, else all of them: "56 (60, 64)"."""
    none = phrases()["page"]["no_value"]
    said = [none if v is None else str(v) for v in told]
    if len(set(said)) <= 1:
        return said[0] if said else none
    alike = [_COUNTED.match(x) for x in said]
    if all(alike) and len({m["what"] for m in alike if m}) == 1:  # "24 (30, 33) dc"
        return f"{values([m['n'] for m in alike if m])} {alike[0]['what'] if alike[0] else ''}"
    return f"{said[0]} ({', '.join(said[1:])})"


def labels_joined(labels: Sequence[str]) -> str:
    """Labels in order, those that count on brought together: "Rnds 3-5 and Next rnd"."""
    runs: list[tuple[str, int | None, int | None]] = []
    for label in dict.fromkeys(labels):
        m = _NUMBERED.match(label)
        if m is None:
            runs.append((label, None, None))
            continue
        word, n = (m["word"] or "").strip(), int(m["n"])
        if runs and runs[-1][0].casefold() == word.casefold() and runs[-1][2] is not None and n == runs[-1][2] + 1:
            runs[-1] = (runs[-1][0], runs[-1][1], n)
        else:
            runs.append((word, n, n))
    return listed([_run(*r) for r in runs if r[0] or r[1] is not None])


def span_of(firsts: Sequence[str], lasts: Sequence[str]) -> str:
    """What rows are called that begin and end at these labels, one of each per size: "Rnds 4-8", "Rnds 4-8 (9, 9)", "Next rnd"."""
    if list(firsts) == list(lasts):
        return labels_joined(firsts)
    return _between(firsts[0], [lasts[0]] if len(set(firsts)) == len(set(lasts)) == 1 else lasts)


def _between(first: str, lasts: Sequence[str]) -> str:
    begin, ends = _NUMBERED.match(first), [_NUMBERED.match(x) for x in lasts]
    if begin is None or not all(ends):
        return first
    word = (begin["word"] or "").strip()
    return f"{word}{'s' if word else ''} {begin['n']}-{values([int(e['n']) for e in ends if e])}".strip()


def _run(word: str, first: int | None, last: int | None) -> str:
    if first is None:
        return word
    if first == last:
        return f"{word} {first}".strip()
    return f"{word}s {first}-{last}" if word and not word.endswith("s") else f"{word} {first}-{last}".strip()


def follows_said(follows: Sequence[Follow], head: dict[str, tuple[Value, Value]]) -> str:
    """Rows that follow, by section; "(the same count)" where every one has the count of the row that changed. `head`: was, now by size."""
    makers, where = phrases()["makers"], phrases()["where"]
    sections: dict[str | None, list[Follow]] = {}
    for f in follows:
        sections.setdefault(f.section, []).append(f)
    said = []
    for section, found in sections.items():
        rows = labels_joined([f.label for f in found])
        text = where["between"].join(x for x in (section or "", rows) if x) or where["unlabelled"]
        same = all(
            f.what == "count" and head.get(size) == (was, now) for f in found for size, was, now in zip(f.sizes, f.was, f.now, strict=True)
        )
        said.append(makers["follow_same"].format(rows=text) if same else text)
    return "; ".join(said)
