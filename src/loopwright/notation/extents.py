"""How far something goes: "to last 3 sts", "until 2 sts remain", "up to the next corner", "to ch-2 sp"."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.model.tree import ONE, STITCH, Make, Mark, Node, Num, PatternRun, Repeat, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.things import is_space_number, thing

_ENDS = frozenset("end row rnd round ch chain foundation turning previous last".split()) | {""}


_ENDINGS = frozenset("ch chain turn break fasten cut off yarn thread".split())


def left_words(cur: Cursor) -> tuple[Num, Thing] | None:
    """ "to last 3 sts", "until 2 sts remain", "to within 2 sts of end"; gives how many are left, takes nothing if none."""
    start = cur.at
    cur.skip("to", "until", "up", "till", "within", "except", "the", "in", "are", "there", "you", "have")
    cur.accept("last", "final")
    cur.skip("the", "but")
    n = cur.number() if not is_space_number(cur) else None
    found = thing(cur)
    if found is None and n is None and cur.low(-1) == "last" and cur.kind() in ("sep", "close", "end"):
        return ONE, STITCH  # "1 tr in each st to last, 2 tr in last st"
    if found is None and n is None:
        cur.at = start
        return None
    said_last = any(t.text.lower() in ("last", "final", "within") for t in cur.tokens[start : cur.at])
    if cur.low() == "before" and next((cur.low(i) for i in range(1, 4) if cur.low(i) not in ("the", "next", "first")), "") not in _ENDS:
        cur.at = start  # "to 1 st before the marker"
        return None
    remain = cur.low() in ("remain", "rem", "remaining", "left", "from", "of", "before")
    while cur.low() in ("remain", "rem", "remaining", "left", "of", "the", "row", "rnd", "end", "from", "are", "before", "ch", "chain", "foundation", "turning", "previous") and remain:
        cur.at += 1
    if not (said_last or remain):
        cur.at = start
        return None
    if cur.low() == "and" and (beside := _and_turning_chain(cur)):
        cur.at += beside  # "to last 2 dc and the turning ch-3": what comes next names it
    return n or ONE, found or STITCH


def _and_turning_chain(cur: Cursor) -> int:
    """ "and the turning ch-3", "and tch": so many words; 0 where none of them stand."""
    at = 1 + (cur.low(1) == "the")
    if cur.low(at) in ("tch", "t-ch"):
        return at + 1
    if cur.low(at) != "turning" or cur.low(at + 1) not in ("ch", "chain"):
        return 0
    at += 2
    at += cur.low(at) == "-" and cur.kind(at + 1) == "num"
    return at + (cur.kind(at) == "num")


_BEGINS = ("first", "beg", "beginning", "start", "starting", "1st")


def up_to(cur: Cursor) -> Thing | None:
    """ "up to the 2 chain", "to the centre st of next group", "to next corner": where "each" stops; nothing taken when not told."""
    start = cur.at
    cur.skip("up", "to", "the", "next", "following", "first")
    if cur.low() in ("centre", "center", "middle") and (cur.low(1) in ("sp", "space") or cur.low(1) == "ch" and cur.low(2) == "-"):
        cur.at += 1
    if cur.low() in ("centre", "center", "middle"):
        cur.at += 1
        thing(cur)
        if cur.accept("of"):
            cur.skip("the", "next", "each", "first")
            cur.number()
            thing(cur)
            cur.skip("group", "groups")
        return Thing("centre")
    said = any(t.text.lower() in ("next", "up", "first") for t in cur.tokens[start : cur.at])
    stop = thing(cur)
    said = said or cur.kind() in ("sep", "end", "close") or cur.low() in (",", ";", ".")
    if said and stop is not None and stop.kind in ("sp", "loop", "corner", "shell", "cluster", "popcorn", "group"):
        return stop
    cur.at = start
    return None


def to_begin(cur: Cursor) -> bool:
    """ "to beg ch-3", "to first sc", "to beginning": all round, to where the round began. Nothing taken elsewhere."""
    start = cur.at
    if cur.accept("to"):
        cur.skip("the")
        if cur.low() in _BEGINS:
            cur.at += 1
            thing(cur)
            cur.skip("of", "rnd", "round") if cur.low() == "of" and cur.low(1) in ("rnd", "round") else None
            if cur.kind() in ("sep", "end", "close") or cur.low() in ("and", "join"):
                return True
    cur.at = start
    return False


def swept_to(cur: Cursor) -> Thing | None:
    """ "dc across to ch-2 sp", "sc to corner", "sc until you reach the corner sp": where stitches told without "each" stop; nothing taken elsewhere."""
    start = cur.at
    if cur.low() not in ("to", "until", "till", "up", "down"):
        return None
    cur.skip("down", "until", "till", "you", "reach", "get")
    stop = up_to(cur)
    if stop is None or stop.kind not in ("sp", "corner") and "up" not in cur.lows[start : cur.at]:
        cur.at = start
        return None
    return stop


def stop_at(cur: Cursor) -> Thing | None:
    """ "to ch-2 sp", "to next corner": where the rounds of a repeat stop; nothing taken where no such place is told."""
    start = cur.at
    if cur.low() not in ("to", "until"):
        return None
    cur.at += 1
    cur.skip("the", "next", "following", "first", "centre", "center", "middle")
    stop = thing(cur)
    if stop is None or stop.kind not in ("sp", "loop", "corner") or cur.kind() not in ("sep", "end", "close"):
        cur.at = start
        return None
    return stop


def row_words(cur: Cursor) -> bool:
    """ "of previous row", "on foundation ch": says where we are anyway."""
    start = cur.at
    cur.at += 1
    cur.skip("the", "previous", "prev", "last", "foundation", "starting", "beginning", "beg", "preceding", "same", "this")
    if cur.low() in ("row", "rnd", "round", "rows", "ch", "chain", "edge", "rounds", "chs"):
        cur.at += 1
        cur.skip("before", "below", "beneath", "underneath")
        return True
    cur.at = start
    return False


def up_to_turning_chain(cur: Cursor) -> bool:
    """ "1 tr in each tr to turning ch, 2 tr in top of turning ch": it is worked into by what comes next; nothing taken elsewhere."""
    at = 2 if cur.low(1) in ("the", "top") else 1
    if cur.low(at) != "turning" or cur.low(at + 1) not in ("ch", "chain") or cur.kind(at + 2) != "sep" or "turning" not in cur.lows[cur.at + at + 2 :]:
        return False
    cur.at += at + 2
    return True


def left_so(cur: Cursor, made: Node, start: int) -> Iterator[Node]:
    """ "sc in each sc to within last 3 sc. Ch 1, turn.": they are left, where the row ends with that."""
    if isinstance(made, Repeat) and made.mode == "once" and made.nodes:
        made = made.nodes[-1]  # "in next dc and in each dc to within last 12 dc"
    where = made.place if isinstance(made, Make) else made if isinstance(made, PatternRun) else None
    if where is None or where.left is None or "within" not in cur.lows[start : cur.at] or not all(t.kind in ("sep", "num") or t.low in _ENDINGS for t in cur.tokens[cur.at :]):
        return
    yield Mark("leave", n=where.left, span=cur.span_from(start))


def leave(cur: Cursor) -> Node | None:
    """ "leave the last 4 sts (unworked)", "leaving rem sts unworked"."""
    start = cur.at
    cur.at += 1
    cur.skip("the", "last", "remaining", "rem", "next")
    one = cur.low(-1) in ("last", "next")
    n = cur.number()
    found = thing(cur)
    if n is None and found is not None and one and not cur.low(-1).endswith("s"):
        n = ONE  # "leave last sc unworked"
    if n is None and found is None:
        if not cur.accept("rest", "others", "remainder"):
            cur.at = start
            return None
        cur.skip("of", "the", "row", "round", "rnd", "stitches", "sts")
    cur.skip("unworked", "free", "un-worked", "un", "-", "worked")
    return Mark("leave", n=n, span=cur.span_from(start))
