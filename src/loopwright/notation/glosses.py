"""Tokens of a row put as the reader knows them: names explained in brackets, numbers told before a bracket, loops told before a stitch.

Common practice, no source.
"""

from __future__ import annotations

from loopwright.notation.cursor import thing_word
from loopwright.notation.scanner import Token
from loopwright.notation.things import LOOP_WORDS

_SHORT = {
    "repeat": "rep", "skip": "sk", "together": "tog", "beginning": "beg", "remaining": "rem", "stitch": "st", "stitches": "sts", "space": "sp", "spaces": "sps",
    "chain": "ch", "round": "rnd", "loop": "lp", "only": "blo flo", "loops": "blo flo", "marker": "m pm", "ring": "mr mc", "circle": "mc mr", "cast": "pm",
}
_CHAINLESS = {"csdc": "dc", "cssc": "sc", "cshdc": "hdc", "cstr": "tr"}
_MOVED = frozenset(LOOP_WORDS) | _CHAINLESS.keys()


def plain_tokens(tokens: list[Token]) -> list[Token]:
    """The tokens without what says a name twice, and in the order that the reader knows."""
    if len(tokens) < 2:
        return tokens
    kinds = [t.kind for t in tokens]
    if "open" in kinds:
        tokens = _unexplained(tokens)
    if "times" in kinds or "star" in kinds:
        tokens = _times_behind(tokens)
    lows = [t.low for t in tokens]
    if "hook" in lows and "each" in lows:
        tokens = _from_hook_behind(tokens)
    if not _MOVED.isdisjoint(lows):
        tokens = _loops_behind(tokens)
    return tokens


def _unexplained(tokens: list[Token]) -> list[Token]:
    """ "single crochet (sc)", "magic ring (MR)": without the name's abbreviation, which makes no stitch of its own."""
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        t = tokens[i]
        if out and t.kind == "open" and i + 2 < len(tokens) and tokens[i + 2].kind == "close" and _explains(out[-1], tokens[i + 1]):
            i += 3
            continue
        out.append(t)
        i += 1
    return out


def _explains(full: Token, short: Token) -> bool:
    """Whether one token is the abbreviation of another."""
    if len(short.text) >= len(full.text):
        return False
    if full.kind == short.kind == "kind":
        return bool(full.value == short.value)
    if thing_word(full.low) is not None and thing_word(full.low) == thing_word(short.low):
        return True
    return short.low in _SHORT.get(full.low, "").split()


def _times_behind(tokens: list[Token]) -> list[Token]:
    """ "6 x (sc, inc)", "6*(sc, inc)", "(sc, inc) [6 times]" as "(sc, inc) 6 times", "3 x dec" as "3 dec"."""
    out: list[Token] = []
    due: list[tuple[int, Token]] = []  # how deep a bracket is that has its number before it
    depth = i = 0
    while i < len(tokens):
        t = tokens[i]
        starred = t.kind == "num" and i + 2 < len(tokens) and tokens[i + 1].text == "*" and sum(o.kind == "star" for o in tokens) == 1
        follows = tokens[i + 1 + starred] if i + 1 + starred < len(tokens) else None
        if (t.kind == "times" or starred) and follows is not None and follows.kind == "open" and _begins(out) and _makes(tokens, i + 1 + starred):
            due.append((depth, t if t.kind == "times" else t._replace(kind="times", value=(t.value, False))))
            i += 1 + starred
            continue
        if t.kind == "times" and t.text[0].isdigit() and t.low[-1] in "x×" and follows is not None and follows.kind == "kind" and _begins(out) and isinstance(t.value, tuple):
            t = t._replace(kind="num", value=t.value[0])  # "3 x dec"
        if t.kind == "open" and out and out[-1].kind == "close" and i + 2 < len(tokens) and tokens[i + 1].kind == "times" and tokens[i + 2].kind == "close":
            out.append(tokens[i + 1])
            i += 3
            continue
        depth += (t.kind == "open") - (t.kind == "close")
        out.append(t)
        if t.kind == "close" and due and due[-1][0] == depth:
            out.append(due.pop()[1]._replace(start=t.end, end=t.end))
        i += 1
    return out if not due else tokens


def _begins(out: list[Token]) -> bool:
    """Whether an instruction begins behind these tokens."""
    if not out or out[-1].kind == "open":
        return True
    return out[-1].text in (",", ";", ".", ":") and (len(out) < 2 or out[-2].kind not in ("close", "star"))


def _makes(tokens: list[Token], at: int) -> bool:
    """Whether a bracket has a stitch in it and no number behind it."""
    depth, made = 0, False
    for i in range(at, len(tokens)):
        depth += (tokens[i].kind == "open") - (tokens[i].kind == "close")
        made = made or tokens[i].kind == "kind"
        if not depth:
            return made and (i + 1 == len(tokens) or tokens[i + 1].kind in ("sep", "close"))
    return False


_BEGINNING = frozenset("starting beginning start begin".split())


def _from_hook_behind(tokens: list[Token]) -> list[Token]:
    """ "ch 10, in 2nd ch from hook, 2 sc in each ch" as "ch 10, 2 sc in 2nd ch from hook and in each ch"; at a row's beginning too."""
    for i in range(len(tokens) - 7):
        at, ch, start, hook, stop = tokens[i], tokens[i + 2], tokens[i + 3], tokens[i + 4], tokens[i + 5]
        begun = i > 0 and tokens[i - 1].low in _BEGINNING
        if at.low != "in" or tokens[i + 1].kind != "ord" or ch.value != "ch" and not (begun and thing_word(ch.low) == "st") or (start.low, hook.low) != ("from", "hook"):
            continue
        comma = stop.text == ","
        if not (begun or comma and (not i or tokens[i - 1].kind == "sep")):
            continue
        first = i + 5 + comma
        end = first + (tokens[first].kind == "num")
        each = tokens[end + 1 : end + 4]
        if len(each) == 3 and tokens[end].kind == "kind" and (each[0].low, each[1].low, each[2].value) == ("in", "each", "ch"):
            joined = hook._replace(kind="word", text="and", value="and", low="and", start=hook.end, end=hook.end)
            place = [*tokens[i : i + 2], ch._replace(kind="kind", value="ch"), start, hook]
            return [*tokens[: i - begun], *tokens[first : end + 1], *place, joined, *tokens[end + 1 :]]
    return tokens


def _loops_behind(tokens: list[Token]) -> list[Token]:
    """ "4 BLO sc" as "4 sc BLO", and "csdc" as the chainless stitch that it is."""
    out: list[Token] = []
    for t, after in zip(tokens, [*tokens[1:], None], strict=True):
        if t.low in _CHAINLESS and t.kind == "word":
            out += [t._replace(text="chainless", value="chainless", low="chainless", end=t.start), t._replace(kind="word", text="starting", value="starting", low="starting", end=t.start)]
            out.append(t._replace(kind="kind", value=_CHAINLESS[t.low], low=_CHAINLESS[t.low]))
        elif t.kind == "kind" and len(out) > 1 and out[-1].low in LOOP_WORDS and out[-2].kind == "num" and (after is None or after.kind != "kind"):
            loop = out.pop()
            out += [t, loop]
        else:
            out.append(t)
    return out
