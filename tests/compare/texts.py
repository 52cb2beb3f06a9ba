"""Small patterns that the tests here change in one place, and how they are compared."""

from __future__ import annotations

from collections.abc import Callable

from loopwright.publishing.changes import Change, Changes
from loopwright.source import Source
from loopwright.workshop.compare.versions import compare_sources

CUFF = """Sandpiper Cuff
Sizes: baby, child, teen, adult
Terms: US
Gauge: 18 sc and 20 rnds = 10 cm
Hook: 4 mm
Yarn: DK, wool, 50 g = 120 m
Turning chain: ch 1 does not count as a st
Version: 1.2 (2026-09-01)

Cuff
Rnd 1: Ch 1, 8 (10, 11, 12) sc in magic ring; join. (8 (10, 11, 12) sc)
Rnd 2: Ch 1, 2 sc in each st around; join. (16 (20, 22, 24) sc)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join. (24 (30, 33, 36) sc)
Rnds 4-6: Ch 1, sc in each st around; join.
Rnd 7: Ch 1, hdc in each st around; join. (24 (30, 33, 36) hdc)

Edge
Rnd 1: Ch 1, sc in back loop only of each st around; join.
Rnd 2: Ch 1, sc in each st around; join.
Fasten off.
"""


def changed(*pairs: str, text: str = CUFF) -> Changes:
    """A pattern compared with itself after each "was" is "now"."""
    return compare_sources(Source.of(text), Source.of(edited(*pairs, text=text)))


def edited(*pairs: str, text: str = CUFF) -> str:
    """A text with each "was" made "now", once."""
    for was, now in zip(pairs[::2], pairs[1::2], strict=True):
        assert text.count(was) >= 1, was
        text = text.replace(was, now, 1)
    return text


def only(changes: Changes, wanted: Callable[[Change], bool] = lambda _: True) -> Change:
    """The one change there is."""
    found = [c for c in changes.changes if wanted(c)]
    assert len(found) == 1, [(c.what, c.section, c.label, c.heading) for c in changes.changes]
    return found[0]
