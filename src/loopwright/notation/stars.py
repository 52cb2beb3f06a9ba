"""Repeats told by marks: "*…; rep from * around", "** … ending at **", so many times."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    Chain,
    Group,
    Join,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Thing,
    Unknown,
)
from loopwright.notation.after_places import END_WORDS
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.extents import left_words, stop_at
from loopwright.notation.from_start import begun_by_chain, begun_where_joined, in_its_place, once, where_begun
from loopwright.notation.last_rounds import ended, omitting, two_sides
from loopwright.notation.places import place
from loopwright.notation.stops import stop_before

_AGAIN = frozenset("from between around across to * all".split())  # what "rep." goes on with
MOST = 60  # repeats of a row, each of which may hold the ones before it: several times what any tells
MEANT = 2  # instructions behind a star that nothing repeats: one alone is printed with the star by mistake
_SAID_AGAIN = frozenset("rep repeat rept repeated repeating times twice thrice".split())
_ONE_BY_ONE = frozenset("sc hdc dc tr dtr cluster popcorn puff bobble".split())
_BEGUN_WITH = frozenset("shell fan v-st scallop".split())
_GROUPS = Thing("group")


def to_end(cur: Cursor, inside: tuple[Node, ...], start: int) -> Node:
    """A repeat along the row, to its end or until so much is left ("across to last 3 sts"); `start`: its first token."""
    cur.skip("this", "all", "the", "way") if cur.low() in ("this", "all") else None
    cur.skip("around", "across", "round", "along", "the", "row", "rnd", "entire", "ch", "chain", "all")
    stop = stop_at(cur)
    if stop is not None:
        return Repeat(inside, "end", span=cur.span_from(start), upto=stop)
    before = stop_before(cur)
    if before is not None:
        return Repeat(inside, "end", left=before[0], span=cur.span_from(start), upto=before[1])
    left = left_words(cur)
    if left is not None:
        return Repeat(inside, "left", left=left[0], left_of=left[1], span=cur.span_from(start))
    cur.skip("to", "end", "of", "the", "row", "rnd", "round", "way", "around", "across")
    last = inside[-1] if inside and cur.accept_words("as before") else None
    if isinstance(last, Make) and last.kind in _BEGUN_WITH:  # the row began with it: its last one is left out, and the round joined
        span = cur.span_from(start)
        return Repeat((Repeat(inside, "end", span=span, ending=(last,), ending_mode="omit"), Join(None, "sl st", span=span)), "once", span=span)
    return Repeat(inside, "end", span=cur.span_from(start))


def star(cur: Cursor, out: list[Node], stars: list[int]) -> None:
    """A mark: opens a repeat, or closes one where times, "around" or a repeat follow ("*…* 6 times")."""
    token = cur.take()
    if len(token.text) == 1 and stars and cur.low() == "to" and cur.kind(1) == "star":
        cur.at += 2
        made = _stopped(_counted_repeat(cur, _taken(out, stars.pop()), cur.at - 3))
        if isinstance(made, Repeat) and made.mode == "times" and not _in_all(cur):
            made = replace(made, mode="star-times")  # "…, ch 1 **; * to ** 6 times": as often again, as a rule
        out.append(made)
        return
    if len(token.text) > 1 and stars:
        out.append(_all_in(cur, out, stars[-1]) or Mark("stop-mark", token.text))
        return
    closing = bool(stars) and len(token.text) == 1 and (
        _times_ahead(cur) or cur.kind() in ("times", "end") or cur.low() in END_WORDS or cur.low() in ("rep", "repeat", ",", ";", ".", "to", "each", "join", "sl", "slst")
        or cur.kind() == "kind" and cur.token().value == "sl st"  # type: ignore[union-attr]
        or cur.kind() == "open" and cur.kind(1) == "star" and cur.low(2) == "to" or _repeat_in_bracket(cur) or cur.low() in ("in", "into") and cur.low(1) in ("each", "every")
        or cur.low() in ("from", "between") and cur.kind(1) == "star"
    ) and len(out) > stars[-1]
    if not closing:
        cur.first_star.setdefault(cur.depth, len(out))
        stars.append(len(out))
        return
    inside = begun_where_joined(_taken(out, stars.pop()), out)
    start = cur.at - 1
    if cur.low() in ("in", "into") and (where := place(cur)) is not None:
        out.append(Group(inside, where, span=cur.span_from(start)))  # "*sl st, ch 2, 4 dc, ch 2, sl st* in each ch-3 sp"
        return
    again = _lead_in(cur)
    total = cur.low() in ("a", "for", "total")
    made = _counted_repeat(cur, inside, start)
    if isinstance(made, Repeat) and made.mode == "times" and not _in_all(cur) and again and not total:
        made = replace(made, mode="star-times")  # "*1 tr, 5 ch* repeat 5 times", "*…* repeat from * to * 2 times": as often again, as a rule
    made = omitting(cur, _stopped(made))
    ends = isinstance(made, Repeat) and (made.mode == "end" or made.stop_at is not None) and cur.low(cur.low() in (",", ";")) in ("ending", "end", "finishing")
    out.append(ended(cur, made) if ends and isinstance(made, Repeat) else made)


def _all_in(cur: Cursor, out: list[Node], begin: int) -> Group | None:
    """ "* dc, ch 2, dc, ch 2 ** in next ch-3 sp. Rep * to **": all that stands between the marks goes into that place; None where none is told."""
    inside, start = tuple(out[begin:]), cur.at
    if cur.low() not in ("in", "into") or cur.low(1) not in ("next", "each", "the") or not inside or any(not isinstance(n, (Chain, Make)) or getattr(n, "place", None) is not None for n in inside):
        return None
    where = place(cur)
    if where is None:
        cur.at = start
        return None
    del out[begin:]
    return Group(inside, where, span=inside[0].span.cover(where.span))


def left_open(cur: Cursor, out: list[Node], stars: list[int]) -> None:
    """ "* 1 tr, 2 ch", "* 3 dc in next loop; end with 2 ch": an old book that has said once that all is repeated from the star to the end says it no more."""
    if cur.dialect.id != "old" or len(stars) != 1 or len(out) - stars[0] < MEANT or any(isinstance(n, Repeat) for n in out) or not _SAID_AGAIN.isdisjoint(cur.lows):
        return
    behind = 0
    while isinstance(out[-1 - behind], (Join, Mark)) and len(out) - behind > stars[0] + 1:
        behind += 1
    closing = out[len(out) - behind :]
    del out[len(out) - behind :]
    made = Repeat(_taken(out, stars.pop()), "end", span=cur.span_from(0))
    out.append(ended(cur, made) if cur.low() == "end" and cur.low(1) == "with" else made)
    out.extend(closing)


def _in_all(cur: Cursor) -> bool:
    return cur.accept_words("in all") or cur.accept_words("in total") or cur.accept("altogether")


END_OF_TWO = 3  # tokens: "* to *"


def _lead_in(cur: Cursor) -> bool:
    """Takes what leads from a list in stars to the number of times: "repeat from * to *", "- [rep", "repeat **".

    Whether it may mean so many more: "repeat from * to * 2 times", a British "repeat 5 times".
    """
    cur.at += _repeat_in_bracket(cur)
    if cur.kind() == "open" and cur.kind(1) == "star":
        cur.at += 2
        while cur.low() in ("to", *END_WORDS) or cur.kind() in ("star", "open") and cur.kind(1) == "end":
            cur.at += 1
    again = cur.low() in ("rep", "repeat") and cur.kind(1) == "times" and cur.dialect.id != "us"
    cur.skip(",", ";", ".", "rep", "repeat") if cur.kind(1) != "end" else None
    if cur.low() in ("from", "between"):
        again = True
        _from_star(cur)
    elif cur.low() == "*" and (both := _between_two(cur)):
        again = both == END_OF_TWO and cur.low(-1) in ("rep", "repeat") or again or both > 2  # "rep * to * once" is as "rep from * to * once"
        cur.at += both
    elif cur.low(-1) in ("rep", "repeat") and cur.low() == "**" and (cur.kind(1) in ("times", "num") or cur.low(1) in END_WORDS):
        cur.at += 1  # "repeat ** 6 times": what stands between the two
    return again


def _repeat_in_bracket(cur: Cursor) -> int:
    """ "*…* - [repeat from * to * around]", "*…* (rep around)", "*…* - repeat": how many tokens lead to the word that repeats; 0 elsewhere."""
    dash = int(cur.low() in ("-", "–", "—"))
    led = dash + (cur.kind(dash) == "open")
    return led if led and cur.low(led) in ("rep", "repeat") else 0


def _between_two(cur: Cursor) -> int:
    """ "repeat * to * 6 times", "rep *-* around", "complete * * twice": how many tokens the two stars take; 0 where no number or end follows."""
    if cur.low(-1) in ("rep", "repeat") and cur.kind(1) in ("times", "num"):
        return 1  # "rep * 6 times"
    took = 2 if cur.kind(1) == "star" else 3 if cur.low(1) in ("to", "and", "-", "–", "through") and cur.kind(2) == "star" else 0
    return took if took and (cur.kind(took) in ("times", "num", "end") or cur.low(took) in (*END_WORDS, ",", ".", ";", "all", "to", "until")) else 0


def _taken(out: list[Node], begin: int) -> tuple[Node, ...]:
    """The nodes from an index on, taken off the list."""
    inside = tuple(out[begin:])
    del out[begin:]
    return inside


def _stopped(made: Node) -> Node:
    """A repeat whose nodes hold a second mark (**): remembered as the place where its last round may stop."""
    if not isinstance(made, Repeat):
        return made
    at = next((i for i, n in enumerate(made.nodes) if isinstance(n, Mark) and n.what == "stop-mark"), None)
    if at is None:
        return made
    return replace(made, nodes=tuple(n for n in made.nodes if not (isinstance(n, Mark) and n.what == "stop-mark")), stop_at=at)


def to_mark(cur: Cursor, out: list[Node]) -> bool:
    """ "then from * to ** once more": the part before the second mark of a repeat told before."""
    start = cur.at
    cur.skip("then", "rep", "repeat", "work", "and", ",", ";")
    if cur.low() == "from" and cur.low(1) in ("first", "1st") and cur.kind(2) == "star":
        cur.at += 2  # "then from first * to **"
    if not (cur.low() == "from" and cur.kind(1) == "star" and cur.low(2) == "to" and cur.kind(3) == "star"
            or cur.kind() == "star" and cur.low(1) == "to" and cur.kind(2) == "star" and len(cur.low(2)) > 1 and cur.low(0) != cur.low(2)):
        cur.at = start
        return False
    told = next((n for n in reversed(out) if isinstance(n, Repeat) and n.stop_at is not None), None)
    if told is None:
        cur.at = start
        return False
    cur.at += 4 if cur.low() == "from" else 3
    times = cur.take().value[0] if cur.kind() == "times" else 1
    out.append(Repeat(told.nodes[: told.stop_at], "times", Num((times,)), span=cur.span_from(start)))
    return True


def _times_ahead(cur: Cursor) -> bool:
    """Whether a number of times stands here for each size: "8 (9, 10) times"."""
    mark = cur.at
    found = cur.kind() in ("num", "blank") and cur.number() is not None and cur.low() in ("times", "x")
    cur.at = mark
    return found


def _total_of(cur: Cursor) -> bool:
    """ "for a total of" before a number of times. Takes the words."""
    mark = cur.at
    cur.skip("for", "a", ",")
    if cur.accept_words("total of") and (cur.kind() == "times" or _times_ahead(cur)):
        return True
    cur.at = mark
    return False


def _counted_repeat(cur: Cursor, inside: tuple[Node, ...], start: int) -> Node:
    """ "6 times", "twice more", "8 (9, 10) times", "a total of 3 times", or to the end."""
    in_all = _total_of(cur)
    if cur.kind() == "times":
        n, more = cur.take().value
        in_all = cur.accept("total") or in_all
        return Repeat(inside, "more" if more and not in_all else "times", Num((n,)), span=cur.span_from(start))
    if _times_ahead(cur) and (many := cur.number()) is not None:
        cur.at += 1
        return Repeat(inside, "more" if cur.accept("more") else "times", many, span=cur.span_from(start))
    if (made := until_made(cur)) is not None:
        return Repeat(inside, "until", made[0], left_of=made[1], span=cur.span_from(start))
    return to_end(cur, inside, start)


def _from_star(cur: Cursor) -> None:
    """ "from *", "between *'s", "from * to *", "from first *": where the repeat begins; "to last 4 sts" is left standing."""
    cur.skip("from", "between", "the")
    cur.skip("first", "1st", "last", "beg", "beginning", "second") if cur.kind(1) == "star" or cur.low() in ("beg", "beginning") else None
    if cur.kind() == "star":
        cur.at += 1
        cur.skip("'s", "s", "’s")
        if cur.low() in ("to", "and", "-", "–") and cur.kind(1) == "star":
            cur.at += 2
        elif cur.low(-1) == "*" and cur.low() == "*":
            cur.at += 1  # "repeat between * * twice more"


def _between_brackets(cur: Cursor, out: list[Node]) -> bool:
    """ "rep between [ ] around": the bracket just read; nothing taken when it is not told so."""
    start = cur.at
    if not out or not isinstance(out[-1], Repeat) or out[-1].mode != "once":
        return False
    cur.skip("what", "is", "instructions", "the", "from")
    if cur.low() in ("between", "bet", "betw", "inside", "within", "in"):
        cur.at += 1
        if cur.kind() == "open" and cur.kind(1) == "close":
            cur.at += 2
            return True
        if cur.accept("brackets") or cur.accept("parentheses") or cur.accept("parenthesis"):
            return True
    cur.at = start
    return False


def until_made(cur: Cursor) -> tuple[Num, Thing] | None:
    """ "until 4 groups are made", "until there are 12 treble in all": how many of what; nothing taken when it is not told so."""
    start = cur.at
    if not cur.accept("until", "till"):
        return None
    there = cur.accept_words("there are") or cur.accept_words("you have")
    n = cur.number()
    words = [cur.low(i) for i in range(9)]
    if n is None or "remain" in words or "left" in words or not (there or {"made", "completed", "worked", "formed"} & set(words)):
        cur.at = start
        return None
    if thing_word(cur.low()) == "loop" or cur.kind() == "kind" and cur.token().value == "ch" and thing_word(cur.low(3)) == "loop":  # type: ignore[union-attr]
        of = Thing("loop")
    elif cur.low() in ("sts", "stitches"):
        of = Thing("st")
    else:
        of = Thing(str(cur.token().value)) if cur.kind() == "kind" and cur.token().value in _ONE_BY_ONE else _GROUPS  # type: ignore[union-attr]
    while not cur.done and cur.kind() not in ("sep", "close", "open", "star"):
        cur.at += 1
    return n, of


def repeat_from(cur: Cursor, out: list[Node], stars: list[int]) -> None:
    """ "rep from * around", "rep from * to last 3 sts", "rep from * 5 times (more)"."""
    start = cur.at
    cur.repeats += 1
    if cur.repeats > MOST:
        cur.at += 1
        cur.unknown += 1
        out.append(Unknown(cur.low(-1), 1, cur.span_from(start)))
        return
    cur.at += 1 + (cur.low(1) == "." and cur.low(2) in _AGAIN)  # "rep. from *"
    if _between_brackets(cur, out):
        out.append(_stopped(_counted_repeat(cur, out.pop().nodes, start)))  # type: ignore[union-attr]
        return
    if _between_stars(cur, out, stars) or not stars and _as_before(cur, out, start):
        return
    _from_star(cur)
    if cur.kind() == "times" and cur.low(1) == "from" and cur.kind(2) == "star":  # "repeat 4 times from *"
        cur.put_back(cur.at + 3, cur.take())
        cur.at += 2
    starred = bool(stars)
    begin = stars.pop() if stars else 0
    if not begin and not stars and cur.low(-1) == "*" and cur.depth in cur.first_star:
        begin = min(cur.first_star[cur.depth], len(out))  # one * serves two repeats: "repeat from 1st *"
    unmarked = not begin and not starred and start > 0 and not any(t.kind == "star" for t in cur.tokens[:start])
    begin = where_begun(out, cur.low(-1) in ("beg", "beginning")) if unmarked else begin
    inside = once(tuple(out[begin:])) if unmarked else tuple(out[begin:])
    del out[begin:]
    if inside and isinstance(inside[0], Make) and inside[0].place is not None and inside[0].place.quant == "first" and inside[0].place.n in (None, ONE) and starred:
        inside = (replace(inside[0], place=replace(inside[0].place, quant="next")), *inside[1:])  # "* 1 dc in the first stitch, …": of each round
    inside = begun_where_joined(inside, out) if starred else inside
    if len(inside) > 1 and any(isinstance(n, Chain) for n in inside) and len({n.place.thing.kind for n in inside if isinstance(n, Make) and n.place is not None and _in_each(n.place)} & _RUNS) < 2:
        inside = tuple(replace(n, place=replace(n.place, quant="next", n=ONE)) if isinstance(n, Make) and n.place is not None and _in_each(n.place) else n for n in inside)
    cur.skip("all", "the", "way") if cur.low() == "all" else None
    if cur.low(1) == "until" and cur.low() in END_WORDS:
        cur.at += 1  # "repeat from * around until there are 35 loops"
    total = _total_of(cur)
    if cur.kind() == "times":
        n, more = cur.take().value
        in_all = cur.accept_words("in all") or cur.accept("total") or total
        made = Repeat(inside, "times" if in_all else "more" if more else "star-times", Num((n,)), span=cur.span_from(start))
    elif cur.kind() in ("num", "blank"):
        n2 = cur.number()
        cur.skip("times", "time")
        more, in_all = cur.accept("more"), cur.accept_words("in all") or total
        made = Repeat(inside, "times" if in_all else "more" if more else "star-times", n2, span=cur.span_from(start))
    elif (many := until_made(cur)) is not None:
        made = Repeat(inside, "until", many[0], left_of=many[1], span=cur.span_from(start))
    elif cur.low() == "," and _rest_ahead(cur):
        made = Repeat(inside, "more", ONE, span=cur.span_from(start))
    else:
        found = to_end(cur, inside, start)
        made = found if isinstance(found, Repeat) else Repeat(inside, "end")
    stopped = _stopped(made)
    made = stopped if isinstance(stopped, Repeat) else made
    without = omitting(cur, made)
    made = without if isinstance(without, Repeat) else made
    done = ended(cur, made)
    if (all_there := in_its_place(out[-1] if out else None, done)) is not None:
        out[-1] = all_there
        return
    if not starred and (sides := two_sides(cur, done)) is not None:
        out.append(sides)
        return
    out.extend(begun_by_chain(out, done) if unmarked else [done])


def _rest_ahead(cur: Cursor) -> bool:
    """ "repeat from *, …, 2 dc in each remaining st": the repeat cannot go to the end, so it is worked once more."""
    if cur.low(1) in ("end", "ending", "finish", "finishing", "then", "join"):
        return False
    return any(cur.low(i) in ("remaining", "rem") and cur.low(i - 1) == "each" for i in range(2, min(80, len(cur.lows) - cur.at)))


def _as_before(cur: Cursor, out: list[Node], start: int) -> bool:
    """ "*A* twice, B, repeat between * * 6 more times": what stands between the two, worked anew after B. Nothing taken elsewhere."""
    told = next((i for i in range(len(out) - 1, -1, -1) if isinstance(out[i], Repeat)), len(out) - 1)
    mark = cur.at
    if 0 <= told < len(out) - 1 and cur.accept("between", "from") and cur.kind() == "star":
        cur.at += 1
        cur.skip("and", "to")
        if cur.kind() == "star" and cur.kind(1) in ("times", "num"):
            cur.at += 1
            before = out[told]
            made = _counted_repeat(cur, before.nodes, start)  # type: ignore[union-attr]
            if isinstance(made, Repeat) and made.times is not None:
                out.append(replace(made, mode="times"))
                return True
    cur.at = mark
    return False


_RUNS = frozenset("sc hdc dc tr".split())  # "*dc in each sc, ch 3, sc in each dc; rep from *": runs of them, one after the other


def _in_each(where: Place) -> bool:
    """ "1 double in each loop, 4 chain; repeat": the next one of them each time."""
    return where.quant == "each" and where.n is None and where.left is None and where.upto is None and where.of is None and where.thing.kind in ("sp", "loop", "st", "sc", "hdc", "dc", "tr")


def _between_stars(cur: Cursor, out: list[Node], stars: list[int]) -> bool:
    """ "*A,* B, rep between *s once more": what stands between the two, again; B is left. Nothing taken elsewhere."""
    if cur.low() != "between" or len(stars) < 2 or cur.kind(1) != "star" or cur.low(2) != "s" or cur.kind(3) != "times":
        return False
    start, inside = cur.at, tuple(out[stars[-2] : stars[-1]])
    del stars[-2:]
    cur.at += 3
    out.append(Repeat(inside, "times", Num((cur.take().value[0],)), span=cur.span_from(start)))
    return True
