"""Shaping rows among plain ones in words: "Dec 1 st at each end on every 4th row 3 times, then every 3rd row twice"."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tapers import schedule
from loopwright.model.tree import Label, Num, RowOrder, Spacing
from loopwright.wording.voice import Voice


def shaping(voice: Voice, told: RowOrder, at: Label | None, kind: str, own: str) -> str:
    """A schedule in words. `kind`: "row" or "rnd"; `own`: what a shaping row does, "" where another row is worked again."""
    word, words = voice.say(f"{kind}_in_text"), voice.say(f"{kind}s_in_text")
    what = own or _again(voice, told, kind, word)
    spaced = told.spaced or _shared_out(told, at)
    if not spaced:
        return voice.say("shape_over", what=what, times=voice.times(told.times), n=voice.num(told.total_rows), words=words)
    said = [_spacing(voice, s, word, words) for s in spaced if not _left_out(voice, s)]
    first = said[0] if said else ""
    first = voice.say("shape_at_once", word=word, then=first) if told.at_once else first
    until = voice.say("shape_until", n=voice.num(told.until_sts)) if told.until_sts is not None else ""
    whole = voice.say("shape_then").join([first, *said[1:]])
    return voice.say("shape_own" if own else "shape_again", what=what, schedule=whole, until=until)


def _again(voice: Voice, told: RowOrder, kind: str, word: str) -> str:
    if told.delta_kind:
        return voice.say("shape_rep_named", op=voice.say(told.delta_kind), word=word)
    if told.rows:
        return voice.say("rep_rows", word=voice.say(kind), rows=str(told.rows[0]), section="", how="", until="")
    return voice.say("rep_last", word=word, how="", until="")


def _spacing(voice: Voice, spacing: Spacing, word: str, words: str) -> str:
    times = voice.times(spacing.times) if spacing.times is not None else ""
    every = voice.single(spacing.every)
    frame = "spacing_each" if every == 1 else "spacing"
    return voice.say(frame, kth=voice.ordinals(spacing.every), n=voice.num(spacing.every), word=word, words=words, times=times).rstrip()


def _left_out(voice: Voice, spacing: Spacing) -> bool:
    return voice.size is not None and spacing.times is not None and spacing.times.at(voice.size) in (None, 0)


def _shared_out(told: RowOrder, at: Label | None) -> tuple[Spacing, ...]:
    """The spacings that share shaping rows out evenly, in every size; nothing where a number is not known."""
    many = max(len(n.values) for n in (told.times, told.total_rows, at.first if at else None, at.last if at else None) if n is not None)
    each: list[tuple[tuple[int, int], ...]] = []
    for size in range(max(1, many)):
        times, rows = None if told.times is None else told.times.at(size), _rows(told, at, size)
        if times is None or rows is None or times > rows:
            return ()
        each.append(tuple((s.every, s.times) for s in schedule(rows, times)))
    return tuple(_column(each, i) for i in range(max(map(len, each), default=0)))


def _rows(told: RowOrder, at: Label | None, size: int) -> int | None:
    if told.total_rows is not None:
        return told.total_rows.at(size)
    first, last = (None if at is None or n is None else n.at(size) for n in ((at.first, at.last) if at else (None, None)))
    return None if first is None or last is None else last - first + 1


def _column(each: Sequence[tuple[tuple[int, int], ...]], which: int) -> Spacing:
    """The spacing at one place of every size's schedule; a dash where a size has none."""
    found = [steps[which] if which < len(steps) else (None, None) for steps in each]
    return Spacing(_num([e for e, _ in found]), _num([t for _, t in found]))


def _num(values: Sequence[int | None]) -> Num:
    return Num((values[0],) if len(set(values)) == 1 else tuple(values))
