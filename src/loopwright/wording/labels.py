"""Labels of rows in words, and for which sizes a row is."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Label, Num, Row
from loopwright.wording.said import capital
from loopwright.wording.voice import Voice


def label(voice: Voice, told: Label, side: str | None) -> str:
    """What stands before a row: "Rnd 3: ", "Rows 4-7 (8, 9): ", "Next 3 rows (RS): "."""
    mark = voice.say("side", side=voice.say(side)) if side else ""
    kind = told.kind if told.kind in ("row", "rnd") else ""
    if told.alternate:
        rows = {"row": voice.say(f"{kind or 'row'}_in_text"), "rows": voice.say(f"{kind or 'row'}s_in_text")}
        if told.first is None:
            return capital(voice.say(f"label_{told.alternate}", side=mark, **rows))
        return voice.say("label_alternate", word=_word(voice, kind, many=False), first=voice.num(told.first), side=mark, **rows)
    if told.first is None:
        one = voice.single(told.how_many) == 1
        word = voice.say(f"{kind or 'row'}{'' if one else 's'}_in_text")
        shaping = told.text[:3].lower()
        if one and shaping in ("dec", "inc"):  # other rows call it by that name
            return capital(voice.say("label_shaping", op=voice.say(shaping), word=word, side=mark))
        return voice.say("label_next" if one else "label_next_many", word=word, n=voice.num(told.how_many), side=mark)
    first, end = voice.num(told.first), _last(told, voice.sizes)
    last = voice.num(end)
    if told.also and (begin := voice.single(told.first)) is not None:
        numbers = sorted({*range(begin, (voice.single(end) or begin) + 1), *told.also})
        listed = voice.say("sep").join(map(str, numbers[:-1]))
        return voice.say("label_two", word=_word(voice, kind, many=True), first=listed, last=numbers[-1], side=mark)
    if first == last:
        return voice.say("label_one", word=_word(voice, kind, many=False), first=first, side=mark).lstrip()
    return voice.say("label_range", word=_word(voice, kind, many=True), first=first, last=last, side=mark).lstrip()


def _last(told: Label, sizes: int) -> Num:
    """The last row of a range, with no number for sizes in which the range is empty."""
    last, first = told.last or told.first, told.first
    if last is None or first is None or len(last.values) <= 1 or last is first:
        return last or Num((1,))
    return Num(tuple(None if (b := last.at(s)) is None or b < (first.at(s) or 0) else b for s in range(sizes)))


def _word(voice: Voice, kind: str, *, many: bool) -> str:
    return voice.say(f"{kind}s" if many else kind) if kind else ""


def is_worked(told: Label | None, size: int) -> bool:
    """Whether a size works the rows of a label at all."""
    if told is None:
        return True
    if told.first is None:
        return told.how_many.at(size) != 0
    last = told.last or told.first
    if not told.first.values or not last.values:
        return True
    a, b = told.first.at(size), last.at(size)
    return a is not None and b is not None and b >= a


def only(voice: Voice, item: Row, names: Sequence[str]) -> tuple[int, ...] | None:
    """The sizes that must be named before a row: those it is for, where its label and its times do not tell it."""
    if item.sizes is None or voice.size is not None:
        return None
    told = {s for s in range(len(names)) if is_worked(item.label, s)}
    if item.order is not None and item.order.times is not None and item.order.times.values:
        told = {s for s in told if item.order.times.at(s) not in (0, None)}
    return None if told == set(item.sizes) else item.sizes
