"""Places in words: "in each of next 3 sts", "in 2nd ch from hook", "in back loop only of each st around"."""

from __future__ import annotations

from loopwright.model.tree import Loop, Place
from loopwright.wording.voice import Voice

_LOOPS = {"back": "back", "front": "front", "third": "third"}


def place(
    voice: Voice, at: Place, end: str, *, ring: str = "magic_ring", loop: Loop = "both", kind: str = "", top: bool = False,
    lead: int | None = None,
) -> str:
    """A place with its preposition. `end`: "around" or "across"; `ring`: which frame names the ring; `kind`: what is made there."""
    words = where(voice, at, end, ring=ring, top=top, lead=lead)
    if at.relation == "between" and at.quant == "next" and voice.language != "en" and voice.single(at.n) != 1:
        words = voice.say("over_many", n=voice.num(at.n), things=voice.thing(at.thing, many=True))
    if at.rows_below:
        words = voice.say("rows_below", where=words, n=at.rows_below + 1)
    half = _LOOPS.get(loop if loop != "both" else at.loop)
    if half:
        return voice.say("loop", loop=voice.say(half), where=words)
    if at.relation == "around":
        return voice.say("around_post" if kind.startswith(("fp", "bp")) else "post", where=words)
    return voice.say("between" if at.relation == "between" else "in", where=words)


def where(voice: Voice, at: Place, end: str, *, ring: str = "magic_ring", top: bool = False, lead: int | None = None) -> str:
    """A place without its preposition. `lead`: chains of the turning or start chain that "top of turning ch" means."""
    thing = at.thing
    if thing.kind == "ring":
        return voice.say(ring)
    if thing.kind == "tch":
        return voice.say("top_of", thing=voice.noun("ch-run", n=lead)) if lead else voice.say("tch")
    if thing.kind == "row":
        return _row_end(voice, at, end)
    if top and thing.kind == "sp" and thing.length:
        return voice.say("top_of", thing=voice.noun("ch-run", n=thing.length))
    if at.from_hook:
        return voice.say("from_hook", kth=voice.ordinal(at.k or 2), thing=voice.thing(thing))
    if at.quant in ("kth", "every") and at.k:
        return _kth(voice, at, end)
    if at.centre:
        return _centre(voice, at)
    if at.of is not None:
        frame = "of_each" if at.quant == "each" else "of_next"
        return voice.say(frame, thing=voice.thing(thing), of=voice.thing(at.of))
    if at.quant == "same" and thing.kind == "sp" and not thing.length:
        return voice.say("same", thing=voice.noun("sp" if voice.language == "en" else "ch-sp-any"))
    if at.quant in ("same", "any"):
        return voice.say(at.quant, thing=voice.thing(thing))
    if at.quant == "skipped":
        return _skipped(voice, at)
    if at.quant in ("each", "every") or at.n is None:
        return _each(voice, at, end)
    quant = at.quant if at.quant in ("first", "last") else "next"
    if voice.single(at.n) == 1:
        return voice.say(f"{quant}_one", thing=voice.thing(thing))
    return voice.say(f"{quant}_many", n=voice.num(at.n), things=voice.thing(thing, many=True))


def _skipped(voice: Voice, at: Place) -> str:
    """As in "skipped st", "2nd skipped st", "each skipped st"."""
    if at.k is not None:
        kth = voice.say("last") if at.k < 0 and voice.language == "en" else voice.ordinal(max(1, at.k))
        return voice.say("skipped_kth", kth=kth, thing=voice.thing(at.thing))
    if voice.single(at.n) == 1:
        return voice.say("skipped", thing=voice.thing(at.thing))
    if at.n is None:
        return voice.say("skipped_each", thing=voice.thing(at.thing))
    return voice.say("skipped_many", n=voice.num(at.n), things=voice.thing(at.thing, many=True))


def _row_end(voice: Voice, at: Place, end: str) -> str:
    """The side of a row: "end of each row"."""
    if at.quant in ("each", "every") or at.n is None:
        return voice.say("end_of_each", end=end)
    quant = at.quant if at.quant in ("first", "last") else "next"
    if voice.single(at.n) == 1:
        return voice.say(f"end_of_{quant}")
    return voice.say(f"end_of_{quant}_many", n=voice.num(at.n))


def _kth(voice: Voice, at: Place, end: str) -> str:
    thing = voice.thing(at.thing)
    k = at.k or 1
    if at.quant == "every":
        if k == 2:
            return voice.say("every_other", thing=thing, end=end)
        return voice.say("every", kth=voice.ordinal(k), thing=thing, end=end)
    if at.of is not None:
        of = voice.noun("ch-run", n=at.of.length) if at.of.kind == "sp" and at.of.length else voice.thing(at.of)
        return voice.say("kth_of", kth=voice.ordinal(k), thing=thing, of=of)
    return voice.say("kth", kth=voice.ordinal(k), thing=thing)


def _centre(voice: Voice, at: Place) -> str:
    if at.of is None:
        return voice.say("centre", thing=voice.thing(at.thing))
    thing = voice.noun("st") if at.of == at.thing else voice.thing(at.thing)
    return voice.say("centre_of_each" if at.quant == "each" else "centre_of_next", thing=thing, of=voice.thing(at.of))


def _each(voice: Voice, at: Place, end: str) -> str:
    thing = voice.thing(at.thing)
    if at.upto is not None:
        return voice.say("each_upto", thing=thing, stop=voice.thing(at.upto, False))
    if at.left is None:
        return voice.say("each", thing=thing, end=end)
    one = voice.single(at.left) == 1
    last = voice.noun("st", not one) if at.thing.kind in ("st", "ch") else voice.thing(at.thing, not one)
    if one:
        return voice.say("each_left_one", thing=thing, last=last)
    return voice.say("each_left", thing=thing, n=voice.num(at.left), last=last)
