"""On the body: how far what goes around stretches, and what that leaves of its depth."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopwright.model.measures import Dimension
from loopwright.trade.ease import Ease

# Crochet stretched along its rows grows shorter by about this share of the stretch. Common practice, no source.
SHORTENS = 0.3


def worn(found: Sequence[Dimension], body_mm: float, ease: Ease) -> Iterator[Dimension]:
    """What goes around the body as it is worn, and the depth that is left; nothing where nothing goes around it.

    `body_mm`: the body's measurement that the item goes by.
    """
    around = _around(found, body_mm)
    if around is None or body_mm <= 0:
        return
    off = around.value_mm - body_mm
    low, high = ease.range_mm(body_mm)
    habit = f"a {ease.name} is usually {_cm(low)} to {_cm(high)} cm"
    size = f"{abs(off) / 10:.1f} cm {'more' if off > 0 else 'less'} than the {ease.measure or 'chest'} of {body_mm / 10:.1f} cm"
    value = max(around.value_mm, body_mm)
    yield replace(
        around, section=None, name="around worn", value_mm=value, low_mm=max(around.low_mm, body_mm),
        high_mm=max(around.high_mm, body_mm), worn=True, how=f"{size} ({habit} against it)",
    )
    stretch = value / around.value_mm - 1
    depth = next((d for d in found if d.section is None and d.name == "depth" and not d.worn), None)
    if depth is not None and stretch > 0.001:
        less = 1 - SHORTENS * stretch
        how = f"stretched by {100 * stretch:.0f} % around, which takes up about {100 * (1 - less):.0f} % of the depth"
        yield replace(
            depth, name="depth worn", value_mm=depth.value_mm * less, low_mm=depth.low_mm * less, high_mm=depth.high_mm, worn=True, how=how,
        )


def _around(found: Sequence[Dimension], body_mm: float) -> Dimension | None:
    """The widest round of the first piece that is near the body's measure: from half to double of it."""
    near = [d for d in found if d.name == "around" and not d.worn and d.piece == 0 and 0.5 * body_mm <= d.value_mm <= 2 * body_mm]
    return max(near, key=lambda d: d.value_mm, default=None)


def _cm(mm: float) -> str:
    return f"{mm / 10:+.1f}".replace("-", "−")
