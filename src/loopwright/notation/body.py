"""The words of a row to nodes: recursive descent over tokens. What cannot be read becomes `Unknown` and reading goes on."""

from __future__ import annotations

from loopwright.model.tree import (
    ONE,
    Chain,
    Evenly,
    Group,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Ring,
    Spread,
    Thing,
    Unknown,
)
from loopwright.notation.after_places import END_WORDS, PREPOSITIONS
from loopwright.notation.at_corners import named_corner
from loopwright.notation.brackets import bracket, named_made
from loopwright.notation.cursor import FILLER, Cursor
from loopwright.notation.doubled import doubled
from loopwright.notation.extents import leave, left_so
from loopwright.notation.from_start import in_the_space_reached
from loopwright.notation.further import further_ordinals
from loopwright.notation.last_rounds import ended
from loopwright.notation.layers import THROUGH, through_both
from loopwright.notation.lists import (
    ALL,
    all_round,
    between_them,
    in_each,
    late_place,
    listed,
    named_again,
    one_place,
    over_and_over,
    over_each,
    so_often,
    swept,
)
from loopwright.notation.markers import MARKER_VERBS, marker
from loopwright.notation.moves import SKIPS, base_passed, join, skip
from loopwright.notation.olden import behind_skip, every_with_chain, in_order
from loopwright.notation.phrases import phrase
from loopwright.notation.places import place
from loopwright.notation.same_space import same_space
from loopwright.notation.shaping import absorbed, plainly, shaping
from loopwright.notation.stars import left_open, repeat_from, star, to_mark
from loopwright.notation.stitches import UNSEEN, first_chain, kind_before, kind_follows, make, standing
from loopwright.notation.things import LOOPS_ONLY, loop_words, main_colour, thing, underside_words
from loopwright.notation.turns import in_turn

QUIET = FILLER | frozenset("and with for so from hook yarn this rnd row round counting made last ending even complete".split())
_BARE_STITCHES = frozenset("st sts stitch stitches".split())
NAMING = frozenset("next first last each every same the".split())
STITCH_UNKNOWN = 3
LED = 40  # tokens of a row, among which its first space is reached
KNOWN = QUIET | frozenset(END_WORDS)  # words that are never unknown


def numbers_only(cur: Cursor) -> list[Node]:
    """ "1, 1, 2 around": so many stitches in each next place, over and over. Empty, and nothing taken, where other words stand."""
    start = cur.at
    made: list[Node] = []
    while cur.kind() == "num":
        n = cur.number()
        if n is None:  # a decimal, which counts nothing
            break
        made.append(Make("st", n, Place("next"), span=cur.span_from(cur.at - 1)))
        cur.skip(",", "then", "and")
    if len(made) < 2 or not (cur.done or cur.low() in END_WORDS and cur.kind(1) in ("end", "sep")):
        cur.at = start
        return []
    around = not cur.done
    cur.at = len(cur.tokens) if around and cur.kind(1) == "end" else cur.at + around
    return [Repeat(tuple(made), "end", span=cur.span_from(start))] if around else made


STOPS = frozenset(",;.:")  # between two instructions; they tell nothing themselves
_LATE = frozenset("all worked in into".split())


def nodes_until(cur: Cursor, *ends: str) -> list[Node]:
    """Nodes up to a closing bracket (`ends` has "close"), a closing star ("star") or the end; the closing token is left standing."""
    out: list[Node] = []
    stars: list[int] = []
    cur.depth += 1
    cur.first_star.pop(cur.depth, None)
    while not cur.done and cur.kind() not in ends:
        at, low = cur.at, cur.low()
        if low in STOPS:
            cur.at += 1
            continue
        if low in ("then", "rep", "repeat", "from", "*", "work", "and") and any(isinstance(n, Repeat) and n.stop_at is not None for n in out) and to_mark(cur, out):
            pass
        elif cur.kind() == "star":
            star(cur, out, stars)
        elif stars and low == "end" and cur.low(1) == "with" and not ends:
            left_open(cur, out, stars)
        elif out and (not stars and (low in ALL and all_round(cur, out) or low in END_WORDS and over_and_over(cur, out)) or low == "between" and between_them(cur, out) or low in _LATE and late_place(cur, out, stars[-1] if stars else 0)):
            pass
        elif low in ("and", "so") and (cur.accept_words("and so on") or cur.accept_words("so on")):
            cur.at -= 1
            repeat_from(cur, out, stars)
        elif low == "end" and out and cur.low(-1) in (",", ";") and (cur.kind(1) in ("kind", "num", "open") or cur.low(1) in ("skip", "sk")):
            cur.at += 1  # "(…) 6 times, end 2 dc in last ch"
        elif low == "ending" and out and isinstance(out[-1], Repeat) and out[-1].mode in ("times", "more", "star-times") and cur.low(-1) in (",", ";") and cur.low(1) in ("last", "the"):
            out[-1] = ended(cur, out[-1])
        elif low in ("rep", "repeat") or low in ("rept", "r") and cur.low(1) in ("from", "between", "around", "across", "to", "*"):
            repeat_from(cur, out, stars)
        else:
            found = one(cur, out)
            if isinstance(found, Mark) and found.what == "underside" and out and cur.tokens[at - 1].kind != "sep" and cur.tokens[at - 1].low not in ("then", "and", "now"):
                out.insert(len(out) - 1, found)  # "27 dc on the other side": said after the stitches
            elif found is not None:
                _added(cur, out, stars, same_space(cur, out, found), at)
        doubled(out, cur)
        cur.at += cur.at == at
    if stars and not ends:
        left_open(cur, out, stars)
    cur.depth -= 1
    return out


def _has_place(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None


def _added(cur: Cursor, out: list[Node], stars: list[int], found: Node, at: int) -> None:
    """Puts what was read last behind the nodes before it, and both as they belong together."""
    out.append(found)
    out.extend(left_so(cur, found, at))
    if found.__class__ is Make and found.place is not None and found.place.quant in ("kth", "first"):
        further_ordinals(cur, out)
    behind_skip(out)
    if len(out) > 1 and at < LED:
        in_the_space_reached(out, cur.lows[at : cur.at], stars[-1] if stars else 0)
    if cur.kind() == "times":
        so_often(cur, out, starred=bool(stars))
    in_turn(out, stars[-1] if stars else None)
    named_again(out)
    if _has_place(out[-1]):  # only those are of a list that goes into one place
        in_order(out)
        every_with_chain(out, cur.dialect.id)
        one_place(out, stars[-1] if stars else 0, also=at > 1 and cur.tokens[at - 1].low == "and" and cur.tokens[at - 2].kind != "sep")
    if cur.swept == cur.at and not stars:
        swept(out)
    if _has_place(out[-1]):
        in_each(out, cur)
        over_each(out)


_SHAPING = frozenset("inc dec invdec".split())


def _number_of_stitches(cur: Cursor) -> bool:
    """ "3, inc, 6, inc, 2": whether a number that stands alone among increases and decreases is so many stitches."""
    alone = (not cur.at or cur.kind(-1) in ("sep", "open", "star")) and cur.kind(1) in ("sep", "close", "star", "end") and cur.low(-1) != "." != cur.low(1)
    return alone and cur.sizes == 1 and any(t.kind == "kind" and t.value in _SHAPING for t in cur.tokens)


def one(cur: Cursor, before: list[Node]) -> Node | None:
    """The next node, None when the words make none (separators, filler)."""
    kind, low, start = cur.kind(), cur.low(), cur.at
    if kind in ("sep", "close", "punct"):
        cur.at += 1
        return None
    if kind == "end":  # "in each sp work 2 dc and"
        return None
    if kind == "open":
        return bracket(cur, before)
    told = phrase(cur, before)
    if told is not None:
        return absorbed(before, told) if isinstance(told, Evenly) else told
    if kind == "word" and low in MARKER_VERBS and (mark := marker(cur)) is not None:
        return mark
    if low in THROUGH and through_both(cur):
        cur.layered = True
        return None
    if low in SKIPS:
        return base_passed(cur, before, skip(cur))
    if low == "turn" and cur.low(1 + (cur.low(1) in ("work", "piece", "it"))) in ("upside", "upsidedown"):
        cur.at += 2 + (cur.low(1) in ("work", "piece", "it"))
        cur.accept("down")
        return Mark("underside", span=cur.span_from(start))
    if low in ("turn", "turning"):
        cur.at += 1 + (cur.low(1) == "back")
        return Mark("turn", span=cur.span_from(start))
    if low in ("join", "unite", "close") or low == "sl" and cur.low(1) == "to":
        return join(cur, before)
    if low == "place" and cur.kind(1) in ("num", "blank"):  # "place 2 sc in each stitch"
        cur.at += 1
        return None
    if low == "rotate":
        cur.at += 1
        return Mark("underside", span=cur.span_from(start))  # at the end of a foundation; elsewhere the words say which edge
    if low == "fo" or low in ("fasten", "finish", "break", "cut", "end") and cur.low(1) in ("off", "yarn", "thread"):
        cur.at += 1 + (low != "fo")
        return Mark("fasten-off", span=cur.span_from(start))
    if low in ("leave", "leaving") and (left := leave(cur)) is not None:
        return left
    if low in UNSEEN and (first := standing(cur, before)) is not None:
        return first
    if low in UNSEEN and cur.low(1) == "join":
        cur.at += 1
        return join(cur, before)
    if low == "do" and cur.low(1) == "not" or low in ("don't", "don’t") or low == "no" and cur.low(1) in ("join", "turn"):
        cur.at += low == "do"
        what = {"join": "no-join", "turn": "no-turn"}.get(cur.low(1), "note")
        cur.at += 1 + (cur.kind(1) != "end")
        cur.skip("rnd", "rnds", "rounds", "round", "hereafter", "henceforth") if what == "no-join" else None
        cur.skip("off", "yarn", "the", "thread") if cur.low(-1) in ("fasten", "finish", "break", "cut") else None
        return Mark(what, span=cur.span_from(start))
    shaped = shaping(cur) or plainly(cur)
    if shaped is not None:
        return absorbed(before, shaped)
    if kind == "kind" or kind in ("num", "blank") and kind_follows(cur):
        return first_chain(make(cur), before, leads=start < 3)
    if kind == "num" and cur.low(1) in _BARE_STITCHES and cur.low(2) in ("in", "into", "on") and cur.low(3) != "all" and (n := cur.number()) is not None:
        cur.at += 1
        return Make(kind_before(before) or "st", n, place(cur), span=cur.span_from(start))  # "two stitches in every loop"
    if kind == "num" and _number_of_stitches(cur) and (n := cur.number()) is not None:
        known = kind_before([b for b in before if isinstance(b, Make) and b.kind not in _SHAPING])
        return Make(known or "st", n, span=cur.span_from(start))
    if low == "st" and cur.low(1) in ("in", "into") and (not start or cur.kind(-1) in ("sep", "open", "star")):
        cur.at += 1
        return Make(kind_before(before) or "st", ONE, place(cur), span=cur.span_from(start))  # "[st in next st, 2 st in next] 5 times": a stitch, of whatever kind they are
    if kind == "num" and cur.low(1) in _BARE_STITCHES and cur.low(-1) in ("work", "make") and cur.kind(2) in ("sep", "end") and cur.dialect.id != "us" and (n := cur.number()) is not None:
        cur.at += 1
        return Make(kind_before(before) or "st", n, span=cur.span_from(start))  # "1st round.—Work 8 stitches."
    if kind == "num" and cur.low(1) in ("in", "into", "on", "under", "over", "each") and (known := kind_before(before) or _unnamed(cur, before)) is not None:
        n = cur.number()
        return Make(known, n or ONE, place(cur), span=cur.span_from(start))
    if low in ("magic", "mr", "mc", "adjustable") and not main_colour(cur):
        found = thing(cur)
        if found is not None:
            if cur.kind() == "num" and cur.kind(1) == "end" and (n := cur.number()) is not None:  # "MR 6"
                return Make("st", n, Place("next", ONE, found), span=cur.span_from(start))
            return Ring(True, span=cur.span_from(start))
    if low == "mc" and main_colour(cur):
        cur.at += 1
        return Mark("colour", "MC", span=cur.span_from(start))
    if low == "or" and any(isinstance(b, (Make, Group, Repeat, Ring)) for b in before) and cur.kind(1) != "end":
        cur.at = len(cur.tokens)  # another way to do the same
        return Mark("note", span=cur.span_from(start))
    if low == "corner" and (turned := named_corner(cur, before)) is not None:
        return turned
    if low in PREPOSITIONS:
        at = cur.at
        first = _place_first(cur, before)
        if first is not None or cur.at > at:
            return first
    if underside_words(cur):
        return Mark("underside", span=cur.span_from(start))
    cur.skip("in", "into", "through", "thru") if low in ("in", "into", "through", "thru") else None
    loop = loop_words(cur)
    if loop is not None:
        cur.at += cur.low(-1) == "of" and cur.kind() == "kind" and cur.kind(1) == "sep"  # "all sts in 3rd loop of hdc, …"
        return Mark("loops", loop=loop, span=cur.span_from(start))
    cur.at = start
    if kind == "times" and cur.low(-1) == "," and listed(cur, before):
        return None
    token = cur.take()
    if token.kind == "word" and low not in KNOWN:
        stitch = cur.kind(-2) == "num" and cur.low() in ("in", "into") and cur.low(1) in NAMING
        cur.unknown += 1 + STITCH_UNKNOWN * stitch  # "1 sx into first st": so many of what nobody knows
        return Unknown(token.text, 1, cur.span_from(start))
    return None


def _unnamed(cur: Cursor, before: list[Node]) -> str | None:
    """ "One in the first, two in the second": stitches as those before, where books name none at a row's beginning."""
    return "st" if cur.dialect.id != "us" and not before and cur.low(2) in ("the", "each", "every") else None


def _place_first(cur: Cursor, before: list[Node]) -> Node | None:
    """ "in next sp work 2 dc, ch 1 and 2 dc": the list up to a stop goes into one place."""
    start = cur.at
    where = place(cur)
    if where is not None and where.from_hook and (cur.done or cur.low() in (":", ",", ";")) and not any(isinstance(b, (Group, Repeat)) for b in before):
        cur.at += not cur.done
        return None  # "starting in 2nd ch from hook: sc 20": where the row begins anyway
    if where is not None and where.quant == "any" and not before and cur.low() == "," and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        return Mark("attach", place=where, span=cur.span_from(start))  # "In any ch-3 sp, ch 3, dc in same sp": the yarn is joined there
    this = where is None and cur.low(1) == "this" and cur.low(2) in ("work", "make") or where is None and cur.accept_words("in this ring")
    if this:
        cur.at += 2
        where = Place("next", ONE, Thing("ring"))
    bare = where is not None and where.quant == "each" and where.thing.kind in ("sp", "loop", "ch") and cur.kind() == "num" and kind_follows(cur) and (not start or cur.kinds[start - 1] in ("sep", "star"))
    if bare and cur.low(2) not in (",", "and"):
        bare = False  # "in each loop 1 dc, 5 tr, 1 dc": a list goes into it
    bare = bare or where is not None and (_leads(cur, where, start) or _alone(cur, where, start))
    if where is not None and not bare and _stopped(cur, where, start) and (told := _unplaced(cur)):
        return Group(told, where, span=cur.span_from(start))
    if where is None or cur.low() not in ("work", "make", ":") and not bare or cur.low() == ":" and cur.tokens[cur.at - 1].low in LOOPS_ONLY and where.thing.kind not in ("loop", "sp"):
        along = cur.lows[start] == "along" and where is not None and cur.kind() in ("star", "sep")
        cur.at = cur.at if along else start
        return Mark("note", span=cur.span_from(start)) if along else None  # "along the scallop * 1 chain, …"
    said = {t.text.lower() for t in cur.tokens[start : cur.at]}
    cur.at += not bare
    inside = _listed(cur)
    if cur.kind() == "times":
        n, more = cur.take().value
        inside = [Repeat(tuple(inside), "more" if more else "times", Num((n,)), span=cur.span_from(start))]
    total = where.n.at(0) if where.n is not None else None
    if total and total > 1 and where.quant == "next" and not said & {"each", "every"} and len(inside) == 1 and isinstance(inside[0], Make) and inside[0].place is None and (inside[0].n.at(0) or 1) > 1:
        return Spread(inside[0].kind, inside[0].n, where.n, span=cur.span_from(start))  # "in the 12 dc work 24 treble"
    return Group(tuple(inside), where, span=cur.span_from(start))


def _alone(cur: Cursor, where: Place, start: int) -> bool:
    """Whether a place is told before the only stitches that go into it: "…; in next loop 3 sc*"."""
    behind = not start or cur.kinds[start - 1] in ("sep", "star")
    one_place = where.quant == "next" and where.thing.kind in ("sp", "loop", "corner") and where.left is None
    if not (behind and one_place and cur.kind() == "num" and cur.kind(1) == "kind"):
        return False
    chained = 3 * (cur.low(2) == "," and cur.kind(3) == "kind" and cur.token(3).value == "ch" and cur.kind(4) == "num")  # type: ignore[union-attr]
    return cur.kind(2 + chained) in ("star", "end", "close") or cur.low(2 + chained) in (";", ".")


def _leads(cur: Cursor, where: Place, start: int) -> bool:
    """Whether a loop named before a list leads it, as old books have it: "Into the 6 chain 1 double, 4 long, 1 double"."""
    begins = not start or cur.kinds[start - 1] == "star" or cur.low(start - 1 - cur.at) in (".", ";", ":", ",")
    loop = where.thing.kind in ("sp", "loop") and where.quant in ("next", "each") and where.left is None
    return cur.dialect.id != "us" and begins and loop and cur.kind() == "num" and kind_follows(cur) and cur.low(2) != "in"


def _stopped(cur: Cursor, where: Place, start: int) -> bool:
    """Whether a comma stands between a place that leads a sentence and a list: "under each 2 chain, 1 dc, 3 treble, 1 dc"."""
    leads = not start or cur.kinds[start - 1] == "star" or cur.low(start - 1 - cur.at) in (";", ".", ":", "turn")
    each = where.quant == "each" and where.thing.kind in ("sp", "loop", "ch", "corner") and where.left is None
    return leads and each and cur.low() == "," and (cur.kind(1) in ("num", "kind"))


def _unplaced(cur: Cursor) -> tuple[Node, ...]:
    """The list behind a place and its comma; nothing, and nothing taken, where one of it has a place of its own."""
    start, unknown = cur.at, cur.unknown
    cur.at += 1
    inside = _listed(cur)
    made = [n for n in inside if isinstance(n, Make)]
    if made and all(isinstance(n, Chain) or isinstance(n, Make) and n.place is None for n in inside) and cur.unknown == unknown:
        return tuple(inside)
    cur.at, cur.unknown = start, unknown
    return ()


def _listed(cur: Cursor) -> list[Node]:
    """The nodes of a list up to its stop, or to the one behind its "and"."""
    inside: list[Node] = []
    begun: list[int] = []  # where each of them begins
    while not cur.done and cur.low() not in (";", ".") and cur.kind() not in ("close", "star"):
        if cur.low() in ("rep", "repeat", "join", "turn", "ending"):
            break
        if len(inside) > 1 and cur.kind() == "open" and _names_all(cur):
            break
        at = cur.at
        last = cur.low() == "and"
        if last:
            cur.at += 1
        found = one(cur, inside)
        if isinstance(found, Make) and _elsewhere(found) and (stay := _before_chains(inside)):
            cur.at = begun[stay] if stay < len(begun) else at  # "in next loop make tr, (ch 1, tr) 4 times, ch 3, sc in next loop"
            return inside[:stay]
        if found is not None:
            inside.append(found)
            begun += [at] * (len(inside) - len(begun))
            if last:
                break
        if cur.at == at:
            cur.at += 1
        if cur.kind() == "times":
            break
    return inside


def _names_all(cur: Cursor) -> bool:
    """Whether a bracket that begins here gives all of a list its name: "in each sp make 2 dc, ch 2, 2 dc (shell made)"."""
    cur.at += 1
    named = named_made(cur) is not None
    cur.at -= 1
    return named


def _elsewhere(made: Make) -> bool:
    """Whether a stitch of a list goes on to the next space by itself."""
    return made.place is not None and made.place.quant == "next" and made.place.thing.kind in ("sp", "loop") and made.place.relation == "in"


def _before_chains(inside: list[Node]) -> int:
    """How many nodes of a list come before the chains at its end; 0 where there is no chain."""
    stay = len(inside)
    while stay and isinstance(inside[stay - 1], Chain):
        stay -= 1
    return stay if stay < len(inside) else 0
