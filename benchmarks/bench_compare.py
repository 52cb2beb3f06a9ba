"""How long comparing takes: a share of what working both versions takes, in the same run."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from benchmarks.clock import best
from loopwright.publishing.changes import compare
from loopwright.publishing.changes.page import page
from loopwright.source import Source
from loopwright.workshop.compare.versions import worked

HAT = Path(__file__).parent.parent / "designs" / "samphire-beanie.txt"


def comparing() -> Iterator[tuple[str, float, str, float]]:
    """Two ten-size hats of which every count differs in six sizes, compared and written out, against working and measuring both."""
    text = HAT.read_text(encoding="utf-8")
    texts = (text, text.replace("multiple of 4", "multiple of 6"))
    old, new = (worked(Source.of(t)) for t in texts)
    if not compare(old, new).changes:
        raise AssertionError("the two hats must differ")
    working = best(lambda: [worked(Source.of(t)) for t in texts])
    ours = best(lambda: page(compare(old, new)))
    yield f"comparing two ten-size hats ({ours * 1000:.0f} ms), times as fast as working both", working / ours, ">=", 1
