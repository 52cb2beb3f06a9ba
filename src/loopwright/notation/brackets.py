"""Brackets: groups, repeats, notes, names."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    Chain,
    Define,
    EdgeRun,
    Either,
    Group,
    Join,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Skip,
    Unknown,
)
from loopwright.notation.after_places import END_WORDS, PREPOSITIONS
from loopwright.notation.begun_clusters import one_leg_more
from loopwright.notation.below import told_below
from loopwright.notation.cursor import Cursor
from loopwright.notation.further import NOTE_WORDS, denied, more_for_group
from loopwright.notation.markers import bracketed
from loopwright.notation.meshes import meshes_made
from loopwright.notation.places import place
from loopwright.notation.stars import to_end

MAX_DEPTH = 12
MANY = 5  # stitches that are those of a whole round
_SAYS_WHICH = frozenset("is makes made this these center centre middle".split())
_GATHERED = frozenset("popcorn puff bobble cluster".split())
_MOVEMENTS = frozenset("drop dropping insert remove draw pull loop lp loops lps hook yo through".split())
SHAPES = frozenset("shell fan scallop cluster popcorn puff bobble picot v-st cross-st petal point pineapple".split())
_AROUND = frozenset("around across end way".split())
_NAMED = frozenset("shell fan v-st scallop inc".split())
_PART_OF = frozenset("half quarter small large".split())
_BEGINNING = frozenset("starting beginning".split())
_WHICH = frozenset("first another second one a beg beginning starting next last".split())
_MESHES = frozenset("bl blk block sp space mesh".split())
REMARKS = frozenset("increased decreased made completed formed".split())


def bracket(cur: Cursor, before: list[Node]) -> Node | None:
    """From an opening bracket on: a group, a repeat, or the name of what stands before; None for a note or a count."""
    from loopwright.notation.body import nodes_until

    start = cur.at
    cur.at += 1
    if cur.depth >= MAX_DEPTH:
        return Unknown("(", 1, cur.span_from(start))
    if not before and (below := told_below(cur, start)) is not None:
        return below
    if (named := named_made(cur)) is not None and _name(before, named[0]):
        cur.at += named[1]
        return Define(named[0], span=cur.span_from(start))  # "2 dc, ch 2 and 2 dc in next sp (shell made)"
    if (other := meshes_made(cur) or bracketed(cur, before, start)) is not None:
        return other
    said = _note(cur, before, start)
    if said:
        return None
    unknown = cur.unknown
    inside = tuple(nodes_until(cur, "close"))
    closed = cur.kind() == "close"  # one that is left open ends with its row: what is said last is said of it
    counted = cur.tokens[cur.at - 1] if (closed or cur.done) and cur.tokens[cur.at - 1].kind == "times" else None
    if counted is not None and inside and isinstance(inside[-1], (Repeat, Either)) and inside[-1].span.end == counted.end:
        counted = None  # it was of the last stitch: "(sc, inc x2)"
    cur.at += closed
    if counted is not None and len(inside) > 0 and cur.kind() != "times":  # "(3 ch and 1 dc in the ring 7 times)"
        return Repeat(inside, "more" if counted.value[1] else "times", Num((counted.value[0],)), span=cur.span_from(start))
    if not before and len(inside) == 1 and isinstance(inside[0], Chain) and cur.kind() not in ("times", "star"):
        return inside[0]
    if len(inside) == 2 and isinstance(inside[0], Make) and isinstance(inside[1], Unknown) and inside[1].text.lower() in ("st", "sts", "stitch"):
        inside = inside[:1]
    if before and len(inside) == 2 and isinstance(inside[0], Unknown) and inside[0].text.lower() in _PART_OF and _a_shape(inside[1]):
        cur.unknown = unknown
        return Mark("note", span=cur.span_from(start))  # "3 dc in first sc (half shell)": what that is called
    only_unknown = all(isinstance(n, (Unknown, Mark)) for n in inside)
    if only_unknown:
        cur.unknown = unknown
        return Mark("note", span=cur.span_from(start)) if inside else None
    if cur.low() in ("rep", "repeat") and cur.kind(1) not in ("times", "num", "blank") and cur.low(1) not in ("around", "across"):
        return Repeat(inside, "once", span=cur.span_from(start)) if not _names(inside, before) else Define(str(inside[0].kind), span=cur.span_from(start))  # type: ignore[union-attr]
    if cur.low() != "*" or _opened(cur) % 2 == 0:  # else it closes the star before: "*sc in next 4, (2 sc in next st)* across"
        opens = cur.kind() == "star" and "star" not in cur.kinds[: cur.at] and (cur.kind(1) == "kind" or cur.low(1) in ("skip", "sk"))  # "ch 1 (a sc) *ch 3, …"
        cur.skip(*(() if opens else ("*", "rep", "repeat", "worked")))
    cur.at += cur.low() in END_WORDS and cur.kind(1) == "times"  # "(…) around 8 times"
    if (rounds := _over(cur, inside)) is not None:
        return Repeat(inside, "times", rounds, span=cur.span_from(start))
    if cur.kind() == "times":
        n, more = cur.take().value
        again = Repeat(inside, "more" if more else "times", Num((n,)), span=cur.span_from(start))
        if cur.low() in ("in", "into") and not any(isinstance(x, Make) and x.place is not None for x in inside) and (where := place(cur)) is not None:
            return Group((again,), where, span=cur.span_from(start))  # "(3 dc, ch 2) twice in next space"
        return again
    if cur.kind() in ("num", "blank"):
        mark, n2 = cur.at, cur.number()
        if n2 is not None and 1 < cur.sizes == len(n2.values) and cur.low() in (",", ";") and cur.kind(1) != "open":
            return Repeat(inside, "times", n2, span=cur.span_from(start))  # "(2 dc in next sp, ch 2) 13 (14, 15), 2 dc in next sp": the word is left out
        if cur.low() in ("times", "time", "x"):
            cur.at += 1
            return Repeat(inside, "more" if cur.accept("more") else "times", n2, span=cur.span_from(start))
        cur.at = mark
    if before and isinstance(before[-1], Repeat) and (cur.kind() in ("sep", "end") or cur.low() in _GOES_ON) and _so_many_shapes(inside):
        return Mark("note", span=cur.span_from(start))  # "…; rep from * 11 times (12 shells), ch 3": how many they are now
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind == "pattern" and inside[0].place is None:
        return Define("pattern", span=cur.span_from(start)) if _name(before, "pattern") else Mark("note", span=cur.span_from(start))
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind in SHAPES and inside[0].place is None and _name(before, inside[0].kind):
        return Define(inside[0].kind, span=cur.span_from(start))
    if cur.low() == "all" and cur.low(1) in PREPOSITIONS:
        cur.at += 1  # "(3 dc, 1 tr) all in this dc"
    where = place(cur)
    if where is None and cur.low() in ("each", "every"):
        where = place(cur, bare=True)
    if where is not None:
        called = _called(cur, before, start)
        group = Group(inside, where, called, span=cur.span_from(start))
        if where.thing.kind == "ring" and cur.kind() == "times":
            n, more = cur.take().value
            return Repeat((group,), "more" if more else "times", Num((n,)), span=cur.span_from(start))  # "(ch 3, 3 dc, ch 3, sl st) in ring 5 times"
        return more_for_group(cur, group)
    if cur.low() in END_WORDS or cur.low() == "to" or cur.low() in ("all", "until", "till", "continue") and _AROUND & {cur.low(1), cur.low(2), cur.low(3)}:
        cur.skip("continue", "until", "till")
        return to_end(cur, inside, start)
    if not before and cur.done and len(inside) == 1:
        return Repeat(inside, "once", span=cur.span_from(start))  # a whole row in brackets: "[12 sc]"
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].place is None and inside[0].n.at(0) not in (None, 1):
        return Group(inside, Place("next", ONE), span=cur.span_from(start))
    once = Repeat(inside, "once", span=cur.span_from(start))
    if before and _told_again(before[-1], inside):
        before.pop()  # "28 dc (2 dc in each st)": how many, and how
    told = [n for n in inside if isinstance(n, Make) and n.place is not None]
    if len(told) > 1 and len(told) == len(inside) and cur.low() in (";", ".", ",") and cur.kind(1) == "kind" and any(cur.low(i) == "last" for i in range(2, 6)):
        again = replace(once, mode="end")  # "[dc in next 3 sts, 2 dc in next st]; dc in last 3 sts": over and over, though it does not say so
        return Either("bracket-again", ((0.0, (once,)), (0.4, (again,))), once.span)
    return once


def _opened(cur: Cursor) -> int:
    """How many single stars stand before here."""
    return sum(t.kind == "star" and t.text == "*" for t in cur.tokens[: cur.at])


def _told_again(made: Node, inside: tuple[Node, ...]) -> bool:
    """Whether a bracket tells how the stitches before it are made, which say but how many they are."""
    one = inside[0] if len(inside) == 1 else None
    if not isinstance(made, Make) or made.place is not None or not isinstance(one, Make) or one.place is None:
        return False
    return made.kind == one.kind and one.place.quant == "each" and one.place.left is None and (made.n.at(0) or 0) > max(MANY, one.n.at(0) or 0)


def _over(cur: Cursor, inside: tuple[Node, ...]) -> Num | None:
    """ "(sc, dc) in pattern over next 18 sts": how often, where it comes out even; None (and nothing taken) for anything else."""
    start = cur.at
    plain = len(inside) > 1 and all(isinstance(n, (Make, Skip, Chain)) and (not isinstance(n, Make) or n.place is None and n.n == ONE and not n.kind.endswith("tog")) for n in inside)
    cur.accept_words("in pattern")
    if not plain or not cur.accept("over"):
        cur.at = start
        return None
    cur.skip("the", "next", "first", "last")
    many = cur.number()
    if many is None or not cur.accept("sts", "stitches"):
        cur.at = start
        return None
    takes = sum(1 if isinstance(n, Make) else n.n.at(0) or 0 for n in inside if isinstance(n, (Make, Skip)))
    if takes < 1 or any(v is None or v % takes for v in many.values) or not many.values:
        cur.at = start
        return None
    return Num(tuple((v or 0) // takes for v in many.values))


def _a_shape(node: Node) -> bool:
    return isinstance(node, Make) and node.kind in SHAPES and node.place is None and node.n.at(0) == 1


def _names(inside: tuple[Node, ...], before: list[Node]) -> bool:
    """Whether a bracket only gives a name to what stands before it."""
    return len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind in SHAPES and inside[0].place is None and _name(before, inside[0].kind)


def _called(cur: Cursor, before: list[Node], start: int) -> str | None:
    """ "fan (4 tr, ch 2, 4 tr) in next sp": the name told right before the bracket; it is taken off the nodes before."""
    last = before[-1] if before else None
    if isinstance(last, Make) and last.kind in SHAPES and last.place is None and start and cur.tokens[start - 1].kind == "kind":
        before.pop()
        return last.kind
    return None


def _so_many_shapes(inside: tuple[Node, ...]) -> bool:
    """ "(12 shells)": several of a shape, and no place for them."""
    only = inside[0] if len(inside) == 1 else None
    return isinstance(only, Make) and only.kind in SHAPES and only.place is None and (only.n.at(0) or 0) > 1


def named_made(cur: Cursor) -> tuple[str, int] | None:
    """ "(shell made)", "(first shell made)": the name, and how many words say it with the bracket; None for other words."""
    called = int(cur.low() in ("called", "raglan", "corner"))  # "into next tr work 1 tr, 1 ch and 1 tr (called inc)"
    at = called + int(cur.low(called) in _WHICH or cur.kind(called) == "ord")
    if cur.kind(at) == "num" and cur.kind(sized := at + 1 + (cur.low(at + 1) == "-")) == "kind":
        at = sized + 1 + (cur.low(sized + 1) == "-")  # "(5-dc shell made)"
    begun = cur.low(at) in _BEGINNING or cur.low(at - 1) in _BEGINNING  # "(a starting shell)"
    at += cur.low(at) in _BEGINNING
    token = cur.token(at)
    shape = str(token.value) if token is not None and token.kind == "kind" else ""
    if shape not in _NAMED:
        return None
    over = 2 if cur.low(at + 1) == "over" and cur.kind(at + 2) == "kind" else 0  # "(shell over shell made)"
    made = int(cur.low(at + over + 1) in ("made", "formed", "completed"))
    return (shape, at + over + made + 2) if (made or over or called or begun) and cur.kind(at + over + made + 1) == "close" else None


def _name(before: list[Node], name: str) -> bool:
    """ "(shell)" after what a shell is made of: gives the name; False when nothing stands there to be named."""
    if not before:
        return False
    last = before[-1]
    if isinstance(last, Group):
        before[-1] = replace(last, name=name)
        return True
    if isinstance(last, Either) and any(isinstance(n, Group) for _, r in last.readings for n in r):
        group = next(n for _, r in last.readings for n in r if isinstance(n, Group))
        before[-1] = replace(group, name=name)
        return True
    first = len(before)
    while first > 0 and (isinstance(before[first - 1], Chain) or isinstance(before[first - 1], Make) and _same_place(before[first - 1])):
        first -= 1
    if first and any(_same_place(n) for n in before[first:]) and _in_one_place(before[first - 1]):
        first -= 1  # "2 dc in next dc, ch 1, 2 dc in same place (shell)"
    while first < len(before) and isinstance(before[first], Chain):
        first += 1
    run = before[first:]
    if sum(isinstance(n, Make) for n in run) > 1:  # "cl in same sp, ch 3, cl in same sp (shell)"
        place_ = next(n.place for n in run if isinstance(n, Make))
        before[first:] = [Group(tuple(replace(n, place=None) if isinstance(n, Make) else n for n in run), place_, name, span=run[0].span.cover(run[-1].span))]
        return True
    return isinstance(last, Make)


def _pair(cur: Cursor, before: list[Node], words: int) -> tuple[Node, Node] | None:
    """ "ch 2, dc in next st (counts as dc2tog)": the chain, which is no stitch then, and the one that both are; None for anything else."""
    if len(before) < 2 or not isinstance(before[-1], Make) or not isinstance(before[-2], Chain):
        return None
    told = next((str(t.value) for t in cur.tokens[cur.at : cur.at + words] if t.kind == "kind"), "")
    if told.endswith("tog") and (whole := one_leg_more(before[-2], before[-1], told)) is not None:
        return whole
    same = before[-1].n == ONE and _same_place(before[-1])
    if not same and not _single(before[-1]):
        return None
    kind = next((str(t.value) for t in cur.tokens[cur.at : cur.at + words] if t.kind == "kind" and str(t.value).endswith("2tog")), None)
    return (replace(before[-2], counts="no"), Make(kind, ONE, before[-1].place if same else None, span=before[-1].span)) if kind is not None else None


def _single(made: Make) -> bool:
    """One stitch in the next place."""
    return made.n.at(0) == 1 and (made.place is None or made.place.quant == "next" and (made.place.n is None or made.place.n.at(0) == 1))


def _in_one_place(node: Node) -> bool:
    """Stitches that go into one next place, none that is told by its number."""
    return isinstance(node, Make) and node.place is not None and node.place.quant == "next" and node.place.n is not None and node.place.n.at(0) == 1 and node.place.k is None


def _same_place(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None and node.place.quant == "same"


def _stands(cur: Cursor, before: list[Node], word: str) -> bool:
    """ "3 chain (for a treble)", "ch 3 (to count as a dc)": said of the chain before."""
    from loopwright.notation.phrases import for_a_stitch, stands_for

    chain = before[-1]
    if not isinstance(chain, Chain):
        return False
    if word == "for" and (as_kind := for_a_stitch(cur)) is not None:
        before[-1] = replace(chain, counts="yes", as_kind=as_kind)
        return True
    return word in ("to", "standing", "serving", "stands", "serves") and stands_for(cur, before)


def _is_remark(cur: Cursor, before: list[Node], words: list[str], stop: int) -> bool:
    """Whether words in brackets tell how something comes, of what it is made or where it is, and ask for no stitch."""
    last, closed = before[-1] if before else None, cur.kind(stop) == "close"
    if isinstance(last, EdgeRun) and {"row", "rows"} & set(words) and {"each", "every", "per", "end", "ends"} & set(words):
        return True  # "40 sc evenly around the band (1 sc into each row end)"
    if isinstance(last, Make) and closed and last.kind in _GATHERED and len(_MOVEMENTS & set(words)) > 1 and cur.kind(stop + 1) in ("sep", "end"):
        return True  # "popcorn in next dc (5 dc in one st, drop loop, insert hook in first of the 5 and draw loop through)"
    if isinstance(last, Make) and closed and last.kind in _GATHERED and _only_named(cur, stop):
        return True  # "4 dc in ring keeping last loop of each on hook, … (dc cluster st), ch 5"
    if isinstance(last, Make) and closed and words[:2] == ["the", "last"] and words[2:3] in (["in"], ["into"], ["on"]):
        return True  # "1 tr into every tr (the last into the 3 ch.)"
    if closed and isinstance(last, Make) and last.kind == "sc" and last.n == ONE and last.place is not None and last.place.from_hook and _tells_picot(words):
        before[-1] = replace(last, kind="sl st")  # "ch 5, sc in 5th ch from hook (picot made)": it is none of the row's stitches
        return True
    if len(words) == 2 and cur.kind() == "num" and cur.kind(1) == "kind" and closed and len(before) > 1 and _same_place(before[-1]) and any(isinstance(b, Chain) for b in before[:-1]) and cur.kind(stop + 1) == "sep":
        return True  # "ch 3, turn, 1 dc in same st (2 dc), …": what has been made so far
    if not words:
        return False
    first, ending = words[0], "" if any(cur.kind(j) == "open" for j in range(stop)) else words[-1]  # "[ch 3, … (cluster formed)]": that is said of what stands within
    if ending in REMARKS or "per" in words[1:3] or words[:2] == ["base", "of"] or first in _SAYS_WHICH or "inc point" in " ".join(words):
        return True
    if "made" in words[1:3] and words[2:] and words[words.index("made") + 1 : words.index("made") + 2] == ["over"]:
        return True  # "in next sp make 2 dc, ch 2 and 2 dc (shell made over shell)"
    if words[1:2] == ["over"] and first.rstrip("s") in _MESHES or first in ("first", "1st") and "is" in words[1:4] or first == "same" and "as" in words:
        return True
    return ending in ("row", "rnd", "round") and not {"inc", "dec", "increase", "decrease"}.isdisjoint(words)


def _tells_picot(words: list[str]) -> bool:
    """Whether words in a bracket say but that a picot is made: "(picot made)", "(for a p)", "(another picot)"."""
    return any(w in ("picot", "p") for w in words) and all(w in _PICOT_WORDS for w in words)


_PICOT_WORDS = frozenset("picot p for a an the one 1 first another is made formed completed".split())


def _only_named(cur: Cursor, stop: int) -> bool:
    """Whether a bracket holds the name of a stitch of its own and nothing else: "(tr cluster st)", "(4 dc cluster)", "(rice st)"."""
    name = str(cur.token(stop - 1).value) if 0 < stop <= 3 and cur.kind(stop - 1) == "kind" else ""  # type: ignore[union-attr]
    alone = all(cur.kind(i) == "kind" or i == 0 and cur.kind() == "num" for i in range(stop)) and cur.kind(stop + 1) in ("sep", "end", "word")
    return alone and (name in _GATHERED and stop > 1 and cur.kind(stop - 2) == "kind" or name.endswith(" st") and name != "sl st")


def _chain_told(before: list[Node]) -> int:
    """Where the chain stands that a remark is about, counted from the end: "ch 3, turn (counts as dc)"; 0 where none does."""
    if before and isinstance(before[-1], Chain):
        return -1
    turned = len(before) > 1 and isinstance(before[-1], Mark) and before[-1].what == "turn"
    return -2 if turned and isinstance(before[-2], Chain) else 0


_LEGS = frozenset("half leg part".split())
_GOES_ON = frozenset("ch chain turn join end ending finish finishing".split())  # what is told next where no comma stands between


def _note(cur: Cursor, before: list[Node], start: int) -> bool:
    """ "(counts as dc)", "(does not count as a st)": said of the chain before; takes the whole bracket."""
    i = next((j for j in range(NOTE_WORDS) if cur.kind(j) in ("close", "end")), NOTE_WORDS)
    words = [cur.low(j) for j in range(i)]
    text = " ".join(words)
    defines = len(words) > 3 and (":" in words[1:4] or words[0] == "to" and words[1] in ("make", "work", "form") and words[2] in ("a", "the", "first", *SHAPES))
    if defines:
        cur.at += i + int(cur.kind(i) == "close")
        return True
    says = bool(words and before) and words[0] in ("is", "makes", "means") and isinstance(before[-1], Chain) and any(cur.kind(j) == "kind" for j in range(i))
    if not says and _is_remark(cur, before, words, i):
        cur.at += i + int(cur.kind(i) == "close")
        return True
    if words and before and _stands(cur, before, words[0]):
        cur.at = start + 1 + i + int(cur.kind(i + start + 1 - cur.at) == "close")
        return True
    if not says and "count" not in text and not text.startswith("=") or not says and not words[0].startswith("count") and any(cur.kind(j) == "open" for j in range(i)):
        return False  # a note within brackets is of what stands there: "(ch 3 (counts as dc), 2 dc) in next sp"
    if "turning" in words and {"space", "mesh", "loop", "sp"} & set(words):
        before.append(Mark("note", "tch-space", span=cur.span_from(start)))
    if before and isinstance(before[-1], Join) and len(before) < 3 and not denied(words):
        kind = next((str(cur.token(j).value) for j in range(i) if cur.kind(j) == "kind"), None)  # type: ignore[union-attr]
        if kind is not None:
            before.append(Make(kind, ONE, Place("first", ONE, STITCH), span=cur.span_from(start)))  # a join that counts as a stitch
    if (pair := _pair(cur, before, i)) is not None and not denied(words):
        before[-2:] = pair
    elif len(before) == 1 and isinstance(before[0], Skip) and before[0].thing.kind == "ch":
        before.insert(0, Mark("skipped-counts", "no" if denied(words) else "yes"))  # "skip 3 chs (counts as dc), *sc in next ch, …"
    elif (at := _chain_told(before)):
        no = denied(words)
        as_kind = next((str(cur.token(j).value) for j in range(i) if cur.kind(j) == "kind"), None)  # type: ignore[union-attr]
        leg = "of" in words and not _LEGS.isdisjoint(words)  # "counts as first half of dc2tog": with what comes next it is that
        before[at] = replace(before[at], counts="no" if no else "part" if leg else "yes", as_kind=None if no or leg else as_kind)  # type: ignore[arg-type]
    elif len(before) > 1 and isinstance(before[-1], Make) and isinstance(before[-2], Chain) and {"first", "1st", "beg"} & set(words) and not denied(words):
        before[-2] = replace(before[-2], counts="no", as_kind=None)  # "ch 3, dc2tog in ring (counts as first cluster)": it is part of that
    cur.at += i + int(cur.kind(i) == "close")
    return True
