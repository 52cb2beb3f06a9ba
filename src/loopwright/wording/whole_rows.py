"""Forms that shape a whole row: evenly, every kth, at the ends, along an edge, in pattern."""

from __future__ import annotations

from loopwright.model.tree import AtEnds, EdgeRun, Evenly, EveryKth, PatternRun
from loopwright.wording.voice import Voice


def evenly(voice: Voice, node: Evenly, end: str, kind: str | None = None) -> str:
    """As in "inc 8 sts evenly around", "hdc around, decreasing evenly to 54 sts"."""
    kind = kind or node.kind
    op, op_ing = voice.say(node.op), voice.say(f"{node.op}_ing")
    number = voice.num(node.to if node.to is not None else node.n)
    frame = ("evenly_kind" if kind else "evenly") + ("_to" if node.to is not None else "" if kind else "_n")
    return voice.say(frame, op=op, op_ing=op_ing, n=number, end=end, stitch=voice.stitch(kind) if kind else "")


def every_kth(voice: Voice, node: EveryKth) -> str:
    """As in "inc in every 3rd st"."""
    return voice.say("every_kth", op=voice.say(node.op), kth=voice.ordinal(node.k))


def at_ends(voice: Voice, node: AtEnds) -> str:
    """As in "dec 1 st at each end"."""
    frame = "at_one_end" if node.ends == 1 else "at_both_ends" if voice.single(node.n) == 1 else "at_both_ends_many"
    return voice.say(frame, op=voice.say(node.op), n=voice.num(node.n))


def edge_run(voice: Voice, node: EdgeRun) -> str:
    """As in "2 dc in end of each row", "40 sc evenly along edge"."""
    name = voice.stitch(node.kind)
    if node.where == "row-ends" and node.n is None:
        per = node.per or 1
        made = voice.say("make_one_bare", stitch=name) if per == 1 else voice.say("make_bare", n=per, stitch=voice.stitch(node.kind, True))
        return voice.say("row_ends_rate", made=made, rows=node.rows) if node.rows > 1 else voice.say("row_ends", made=made)
    if node.where == "underside" and node.n is None:
        return voice.say("underside_run", stitch=name)
    if node.where in ("around", "outline", "opening") and node.n is None:
        return voice.say("edge_all_around", stitch=voice.stitch(node.kind, True))
    frame = {"row-ends": "row_ends_n", "around": "edge_around", "outline": "edge_around"}.get(node.where, "edge_run")
    return voice.say(frame, n=voice.num(node.n), stitch=voice.stitch(node.kind, True))


def pattern_run(voice: Voice, node: PatternRun) -> str:
    """As in "work in pattern", "5 shells"."""
    if node.n is not None and node.name:
        return voice.say("in_pattern_n", n=voice.num(node.n), stitch=voice.stitch(node.name, voice.single(node.n) != 1))
    return voice.say("in_pattern")
