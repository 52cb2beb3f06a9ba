"""Which card stands on the picture when."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.filming.cards.card import Card
from loopwright.filming.timed import Timed, TimedShot
from loopwright.record import record

_OF_ROW = ("start", "same", "repeat", "end", "count", "wrong", "meet")
_LEAST_S = 0.5
_CAUTION_S = 6.0


@record
class Shown:
    """A card on the picture from one second to another; None for none."""

    start_s: float
    end_s: float
    card: Card | None


def overlays(film: Timed, cards: Sequence[Card]) -> tuple[Shown, ...]:
    """The cards of one shape along the film, without a gap from 0 to its end."""
    rows = {(c.section, c.row): c for c in cards if c.kind == "row"}
    spans: list[Shown] = []
    measured: dict[int, int] = {}
    for s in film.shots:
        spans.extend(_of_shot(s, cards, rows, measured))
    for (section, row), at in film.rows.items():
        if not any(s.shot.section == section and s.shot.row == row for s in film.shots):
            later = [s.start_s for s in spans if s.start_s > at] + [t for k, t in film.rows.items() if t > at]
            spans.append(Shown(at, min(later, default=film.length_s), rows.get((section, row))))
    return _gapless(spans, film.length_s)


def _of_shot(
    s: TimedShot, cards: Sequence[Card], rows: dict[tuple[int, int], Card], measured: dict[int, int],
) -> list[Shown]:
    kind, section = s.shot.kind, s.shot.section
    if kind in _OF_ROW:
        return [Shown(s.start_s, s.end_s, rows.get((section, s.shot.row)))]
    if kind == "swap":
        table = next((c for c in cards if c.kind == "sizes" and (c.section, c.row) == (section, s.shot.row)), None)
        return [Shown(s.start_s, s.end_s, table or rows.get((section, s.shot.row)))]
    if kind == "measure":
        n = measured[section] = measured.get(section, -1) + 1
        own = [c for c in cards if c.kind == "measure" and c.section == section and s.shot.screen.lower().startswith(_measure(c))]
        other = [c for c in cards if c.kind == "measure" and c.section == section]
        return [Shown(s.start_s, s.end_s, own[0] if own else other[n] if n < len(other) else None)]
    if kind == "goal":
        return [Shown(s.start_s, s.end_s, next((c for c in cards if c.kind == "round" and c.section == section), None))]
    if kind == "gauge":
        cautions = [c for c in cards if c.kind == "caution"]
        half = max(s.start_s, s.end_s - _CAUTION_S * len(cautions)) if cautions else s.end_s
        half = max(half, (s.start_s + s.end_s) / 2) if cautions else half
        step = (s.end_s - half) / max(1, len(cautions))
        found = [Shown(s.start_s, half, _first(cards, "gauge"))]
        return found + [Shown(half + i * step, half + (i + 1) * step, c) for i, c in enumerate(cautions)]
    return [Shown(s.start_s, s.end_s, _first(cards, "title" if kind == "done" else kind))]


def _measure(card: Card) -> str:
    """The measure that a card is of, by its label."""
    return card.label.lower()


def _first(cards: Sequence[Card], kind: str) -> Card | None:
    return next((c for c in cards if c.kind == kind), None)


def _gapless(spans: Sequence[Shown], end: float) -> tuple[Shown, ...]:
    found: list[Shown] = []
    at = 0.0
    for s in _joined(sorted(spans, key=lambda s: s.start_s)):
        start, stop = max(at, s.start_s), min(s.end_s, end)
        if stop - start < _LEAST_S:
            continue
        if start > at:
            found.append(Shown(at, start, None))
        found.append(Shown(start, stop, s.card))
        at = stop
    if at < end:
        found.append(Shown(at, end, None))
    return tuple(found)


def _joined(spans: Sequence[Shown]) -> list[Shown]:
    """Shots of one card that follow one another are one span."""
    found: list[Shown] = []
    for s in spans:
        if found and found[-1].card is s.card and s.start_s - found[-1].end_s < _LEAST_S:
            found[-1] = Shown(found[-1].start_s, max(found[-1].end_s, s.end_s), s.card)
        else:
            found.append(s)
    return found
