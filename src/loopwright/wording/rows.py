"""A row in words: label, body, count; and rows that are told by other rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import fields, replace
from typing import Any

from loopwright.model.report import RowReport
from loopwright.model.tree import Label, Mark, Node, Num, Row, RowOrder, Unknown
from loopwright.wording.counts import counts_of
from loopwright.wording.stitches import Scene, words
from loopwright.wording.voice import Voice

_OWN_SENTENCE = ("fasten-off", "no-join", "note")


def row(scene: Scene, item: Row, worked: Sequence[RowReport]) -> str:
    """A row on one line; "" where the size written for does not work it."""
    voice = scene.voice
    if item.sizes is not None and voice.size is not None and voice.size not in item.sizes:
        return ""
    said = label(voice, item.label, item.side) if item.label else ""
    if item.label and voice.size is not None and not _worked(item.label, voice.size):
        return ""
    if item.order is not None:
        body = order(voice, item.order, item.label, scene.end)
        extra = _body(scene, item.body)
        body = voice.say("sep").join(filter(None, [body, extra]))
    elif item.doubt or _unknown(item.body):
        body = scene.as_written_body(item)
    else:
        body = _body(scene, item.body)
    if not body and not said:
        return ""
    count = counts_of(scene, item, worked)
    return f"{said}{_capital(body)}".rstrip(" ,;.") + voice.say("sentence_end") + count


def _capital(text: str) -> str:
    at = next((i for i, c in enumerate(text) if c.isalnum()), 0)
    return text[:at] + text[at : at + 1].upper() + text[at + 1 :]


def _body(scene: Scene, nodes: Sequence[Node]) -> str:
    """The nodes with the stops that the trade puts between them."""
    voice, out = scene.voice, ""
    for said, node in _said(scene, nodes):
        if not out:
            out = said
        elif type(node).__name__ == "Join" or said.startswith(voice.say("no_join")):
            out += voice.say("join_sep") + said
        elif isinstance(node, Mark) and node.what in _OWN_SENTENCE:
            out += voice.say("sentence_end") + " " + _capital(said)
        else:
            out += voice.say("sep") + said
    return out


def _said(scene: Scene, nodes: Sequence[Node]) -> Iterator[tuple[str, Node]]:
    """Each run of words with the node that begins it."""
    pairs: list[tuple[str, Node]] = []
    nodes = list(nodes)
    i = 0
    while i < len(nodes):
        take = 1
        while i + take < len(nodes) and type(nodes[i + take]).__name__ in ("Evenly", "Define"):
            take += 1
        pairs.extend((said, nodes[i]) for said in words(scene, nodes[i : i + take]))
        i += take
    return iter(pairs)


def _unknown(nodes: Any) -> bool:
    if isinstance(nodes, Unknown):
        return True
    if isinstance(nodes, tuple):
        return any(_unknown(n) for n in nodes)
    if hasattr(nodes, "__dataclass_fields__") and not isinstance(nodes, Num):
        return any(_unknown(getattr(nodes, f.name)) for f in fields(nodes))
    return False


# --- labels ----------------------------------------------------------------------------------------------------------


def label(voice: Voice, told: Label, side: str | None) -> str:
    """ "Rnd 3: ", "Rows 4-7 (8, 9): ", "Next 3 rows (RS): "."""
    mark = voice.say("side", side=side) if side else ""
    kind = "row" if told.kind == "row" else "rnd" if told.kind == "rnd" else ""
    if told.first is None:
        one = voice.single(told.how_many) == 1
        word = voice.say(f"{kind or 'row'}{'' if one else 's'}_in_text")
        return voice.say("label_next" if one else "label_next_many", word=word, n=voice.num(told.how_many), side=mark)
    first, last = voice.num(told.first), voice.num(told.last or told.first)
    if told.also and voice.single(told.first) is not None:
        numbers = sorted({*range(voice.single(told.first) or 0, (voice.single(told.last or told.first) or 0) + 1), *told.also})
        return voice.say("label_two", word=_label_word(voice, kind, True), first=voice.say("sep").join(map(str, numbers[:-1])), last=numbers[-1], side=mark)
    if first == last:
        return voice.say("label_one", word=_label_word(voice, kind, False), first=first, side=mark).lstrip()
    return voice.say("label_range", word=_label_word(voice, kind, True), first=first, last=last, side=mark).lstrip()


def _label_word(voice: Voice, kind: str, many: bool) -> str:
    return voice.say(f"{kind}s" if many else kind) if kind else ""


def _worked(told: Label, size: int) -> bool:
    if told.first is None:
        return told.how_many.at(size) != 0
    first, last = told.first.at(size), (told.last or told.first).at(size)
    if not told.first.values or (told.last is not None and not told.last.values):
        return True
    return first is not None and last is not None and last >= first


# --- rows told by other rows -----------------------------------------------------------------------------------------


def order(voice: Voice, told: RowOrder, at: Label | None, end: str) -> str:
    """ "Rep Rows 2 and 3 twice more", "Work even for 6 rnds", "As Rnds 1-3 of first square"."""
    kind = at.kind if at and at.kind != "none" else told.kind if told.kind in ("row", "rnd") else "rnd" if end == voice.say("around") else "row"
    if told.what == "even":
        return _even(voice, told, kind)
    if told.what == "continue":
        return _going_on(voice, told, kind)
    if told.what == "correspond":
        return voice.say("correspond")
    return _repeated(voice, told, kind) + _until(voice, told)


def _even(voice: Voice, told: RowOrder, kind: str) -> str:
    stitch = told.kind if told.kind not in (None, "row", "rnd") else None
    if told.times is None:
        return voice.say("even_bare") + _until(voice, told)
    word = voice.say(f"{kind}{'' if voice.single(told.times) == 1 else 's'}_in_text")
    if stitch:
        return voice.say("even_kind", stitch=voice.stitch(stitch), n=voice.num(told.times), word=word)
    return voice.say("even", n=voice.num(told.times), word=word)


def _going_on(voice: Voice, told: RowOrder, kind: str) -> str:
    if told.delta is None:
        return voice.say("continue") + _until(voice, told)
    delta = replace(told.delta, values=tuple(None if v is None else abs(v) for v in told.delta.values))
    down = any(v is not None and v < 0 for v in told.delta.values)
    said = voice.say("continue_delta", op=voice.say("dec" if down else "inc"), n=voice.num(delta), word=voice.say(f"{kind}_in_text"))
    return said + _until(voice, told)


def _repeated(voice: Voice, told: RowOrder, kind: str) -> str:
    if told.last_n:
        one = told.last_n == 1
        said = voice.say("rep_last" if one else "rep_last_many", n=told.last_n, word=voice.say(f"{kind}{'' if one else 's'}_in_text"))
    else:
        rows = told.rows
        text = str(rows[0]) if len(rows) == 1 else voice.say("rows_and", a=rows[0], b=rows[-1]) if len(rows) == 2 else voice.say(
            "rows_range", a=rows[0], b=rows[-1])
        word = voice.say(kind if len(rows) == 1 else f"{kind}s")
        said = voice.say("as_row" if told.what == "same-as" else "rep_rows", word=word, rows=text)
        if told.section:
            said += voice.say("of_section", section=told.section)
    if told.times is not None:
        said += voice.say("order_more" if told.more else "order_times", times=voice.times(told.times))
    return said


def _until(voice: Voice, told: RowOrder) -> str:
    if told.until_sts is not None:
        return voice.say("until_sts", n=voice.num(told.until_sts))
    return voice.say("until_text", text=told.until_text) if told.until_text else ""
