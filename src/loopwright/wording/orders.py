"""Rows told by other rows, in words: "Rep Rows 2 and 3 twice more", "Work even for 6 rnds", "As Rnds 1-3 of first square"."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import Label, RowOrder
from loopwright.wording.schedules import shaping
from loopwright.wording.voice import Voice


def order(voice: Voice, told: RowOrder, at: Label | None, end: str, own: str = "") -> str:
    """An order in words. `end`: "around" or "across", which tells rounds from rows where nothing else does.

    `own`: the words of a shaping row that the order tells the schedule of.
    """
    kind = told.kind if told.kind in ("row", "rnd") else "rnd" if end == voice.say("around") else "row"
    kind = at.kind if at and at.kind != "none" else kind
    if told.what == "shape":
        return shaping(voice, told, at, kind, own)
    if told.what == "even":
        return _even(voice, told, kind)
    if told.what == "continue":
        return _going_on(voice, told, kind)
    if told.what == "correspond":
        return voice.say("correspond")
    return _repeated(voice, told, kind)


def _word(voice: Voice, kind: str, *, many: bool) -> str:
    return voice.say(f"{kind}{'s' if many else ''}_in_text")


def _even(voice: Voice, told: RowOrder, kind: str) -> str:
    stitch = told.kind if told.kind not in (None, "row", "rnd") else None
    until = _until(voice, told)
    if told.times is None:
        return voice.say("even_bare", until=until)
    word = _word(voice, kind, many=voice.many(told.times))
    if stitch:
        return voice.say("even_kind", stitch=voice.stitch(stitch), n=voice.num(told.times), word=word)
    return voice.say("even", n=voice.num(told.times), word=word)


def _going_on(voice: Voice, told: RowOrder, kind: str) -> str:
    until = _until(voice, told)
    if told.delta is None:
        return voice.say("continue", until=until)
    delta = replace(told.delta, values=tuple(None if v is None else abs(v) for v in told.delta.values))
    down = any(v is not None and v < 0 for v in told.delta.values)
    word = _word(voice, kind, many=False)
    if told.alternate:
        word = voice.say("alternate", word=word) if told.alternate == "other" else f"{voice.keep(told.alternate)} {word}"
    return voice.say("continue_delta", op=voice.say("dec" if down else "inc"), n=voice.num(delta), word=word, until=until)


def _repeated(voice: Voice, told: RowOrder, kind: str) -> str:
    how = voice.say("order_more" if told.more else "order_times", times=voice.times(told.times)) if told.times is not None else ""
    until = _until(voice, told)
    if told.total_rows is not None:
        how, until = "", voice.say("until_rows", n=voice.num(told.total_rows), word=_word(voice, kind, many=True))
    if told.last_n:
        one = told.last_n == 1
        word = _word(voice, kind, many=not one)
        return voice.say("rep_last" if one else "rep_last_many", n=told.last_n, word=word, how=how, until=until)
    rows = told.rows or (1,)
    many = len(rows) > 1
    text = str(rows[0]) if not many else voice.say("rows_and" if len(rows) == 2 else "rows_range", a=rows[0], b=rows[-1])
    section = voice.say("of_section", section=told.section) if told.section else ""
    frame = "as_row" if told.what == "same-as" else "rep_rows"
    rows_told = voice.say(frame, word=voice.say(f"{kind}s" if many else kind), rows=text, section=section, how=how, until=until)
    return rows_told + _altered(voice, told)


def _altered(voice: Voice, told: RowOrder) -> str:
    """What is altered in the rows named, in words that say the same again when they are read."""
    if told.untold:
        return f", {voice.keep('but with something more or less than there')}"
    if told.grow:
        return f", {voice.keep('having 1 group more on each side' if told.grow > 0 else 'having 1 loop less on pineapple')}"
    swap = told.swap
    if swap is None:
        return ""
    if swap.kind == "times":
        return f", {voice.keep(f'having {swap.new} instead of {swap.old} in brackets')}"
    if swap.kind == "side":
        return f", {voice.keep(f'having {swap.new} groups on each side')}"
    if swap.kind == "any":
        return f", {voice.keep(f'but {swap.new} instead of {swap.old}')}"
    if swap.kind == "anywhere":
        one, other = voice.stitch(swap.within), voice.stitch(swap.other)
        return f", {voice.keep('working')} {one} {voice.keep('over')} {other} {voice.keep('and')} {other} {voice.keep('over')} {one}"
    if swap.other:
        return f", {voice.keep('but')} {voice.stitch(swap.other)} {voice.keep('instead of')} {voice.stitch(swap.kind)}"
    within = f" {voice.keep(f'in each {swap.within}')}" if swap.within else ""
    if swap.kind == "ch":
        of = f"{voice.keep('instead of')} {voice.stitch('ch')} {swap.old}" if swap.old else voice.keep("in each loop")
        return f", {voice.keep('making')} {voice.stitch('ch')} {swap.new} {of}"
    stitch = voice.stitch(swap.kind)
    instead = f" {voice.keep('instead of')} {swap.old} {stitch}" if swap.old else ""
    return f", {voice.keep('making')} {swap.new} {stitch}{instead}{within}"


def _until(voice: Voice, told: RowOrder) -> str:
    if told.between is not None:
        return voice.say("until_text", text=voice.keep(f"there are {told.between.at(0) or 0} sts between the increases"))
    if told.until_sts is not None:
        return voice.say("until_sts", n=voice.num(told.until_sts))
    return voice.say("until_text", text=voice.keep(told.until_text)) if told.until_text else ""
