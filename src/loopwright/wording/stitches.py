"""Instructions in words: stitches, chains, groups, skips, joins, marks. Repeats and whole-row forms stand in files of their own."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    AtEnds,
    Chain,
    Define,
    EdgeRun,
    Either,
    Evenly,
    EveryKth,
    Filet,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    Num,
    PatternRun,
    Place,
    Repeat,
    Ring,
    Skip,
    Spread,
    Unknown,
)
from loopwright.trade.stitches import heights
from loopwright.wording.places import place, where
from loopwright.wording.voice import Voice
from loopwright.wording.whole_rows import at_ends, edge_run, evenly, every_kth, pattern_run

_COLOUR = re.compile(r"(?:re)?(?:join|attach) ([A-Z]{1,3})(?![A-Za-z])", re.IGNORECASE)
_CHAIN = re.compile(r"(?:(\d+)[- ]?ch(?:ain)?|ch(?:ain)?[- ]?(\d+))\b", re.IGNORECASE)


@dataclass(slots=True)
class Scene:
    """What is known while a row is written: how its end is called, what the ring is, the words as they stood."""

    voice: Voice
    end: str
    ring: str
    text: str
    translate: Callable[[str], str]
    chosen: Callable[[Either], tuple[Node, ...] | None]
    repeats: Num | None = None
    in_ring: bool = False
    deep: int = 0
    floor: int = 0
    kind: str = ""
    lead: int | None = None
    below: int | None = None

    def as_written(self, node: Node) -> str:
        """The words that made a node, in the terms of this text; "" where it has none."""
        return self.voice.keep(self.translate(self.text[node.span.start : node.span.end]).strip(" ,;."))


def words(scene: Scene, nodes: Sequence[Node]) -> list[str]:
    """Each node in words, in order; nodes that say nothing are left out."""
    found: list[str] = []
    before: Node | None = None
    for node in nodes:
        if _left_out(scene.voice, node):
            continue
        if isinstance(before, Make) and isinstance(node, Evenly) and before.place is not None and before.place.quant == "each":
            found[-1] = evenly(scene.voice, node, scene.end, before.kind)
        elif isinstance(node, Define):
            if found and not node.nodes and getattr(before, "name", None) is None:
                found[-1] = scene.voice.say("named", group=found[-1], name=scene.voice.stitch(node.name))
        elif said := one(scene, node):
            found.append(said)
            if scene.voice.pieces is not None and node.span.end:
                scene.voice.pieces.append((said, node.span))
        before = node
    return found


def _left_out(voice: Voice, node: Node) -> bool:
    """Whether the one size written for does not work an instruction: a dash or 0 in its list."""
    if voice.size is None:
        return False
    told = [getattr(node, name, None) for name in ("n", "times", "to")]
    at = getattr(node, "place", None)
    told.append(at.n if isinstance(at, Place) else None)
    return any(isinstance(n, Num) and len(n.values) > 1 and n.at(voice.size) in (None, 0) for n in told)


def one(scene: Scene, node: Node) -> str:
    """One node in words."""
    voice = scene.voice
    if isinstance(node, Make):
        return make(scene, node)
    if isinstance(node, Chain):
        return chain(voice, node)
    if isinstance(node, Group):
        return group(scene, node)
    if isinstance(node, Skip):
        return skip(voice, node)
    if isinstance(node, Repeat):
        from loopwright.wording.repeats import repeat  # noqa: PLC0415 - the two call each other

        return repeat(scene, node)
    if isinstance(node, Either):
        return either(scene, node)
    if isinstance(node, Join):
        return join(scene, node)
    if isinstance(node, Ring):
        scene.in_ring, scene.ring = True, "ring"
        return voice.say("make_ring") if node.magic else voice.say("ring_of_chain", slip=voice.stitch("sl st"))
    if isinstance(node, Mark):
        return mark(scene, node)
    return _rare(scene, node)


def either(scene: Scene, node: Either) -> str:
    """The reading that was worked; "picot, dc in next st" as it stood where nothing shows which it was."""
    nodes = scene.chosen(node)
    if nodes is not None:
        return scene.voice.say("sep").join(words(scene, nodes))
    run = next((r for _, r in node.readings if len(r) > 1), node.readings[0][1])
    scene.deep += 1
    said = words(scene, run)
    scene.deep -= 1
    return scene.voice.say("sep").join(said)


def _rare(scene: Scene, node: Node) -> str:
    voice = scene.voice
    if isinstance(node, Evenly):
        return evenly(voice, node, scene.end)
    if isinstance(node, EveryKth):
        return every_kth(voice, node)
    if isinstance(node, AtEnds):
        return at_ends(voice, node)
    if isinstance(node, EdgeRun):
        return edge_run(voice, node)
    if isinstance(node, PatternRun):
        return pattern_run(voice, node)
    if isinstance(node, Filet):
        mesh = voice.noun("bl" if node.filled else "mesh" if voice.language != "en" else "sp", voice.many(node.n))
        return _told_first(scene, node) or voice.say("filet", n=voice.num(node.n), mesh=mesh)
    if isinstance(node, InTurn):
        return voice.say("sep").join(words(scene, node.parts))
    if isinstance(node, Spread):
        over = where(voice, Place("each", None), scene.end) if node.over is None else None
        here = voice.say("over", where=over or voice.say("over_many", n=voice.num(node.over), things=voice.noun("st", many=True)))
        return voice.say("make", n=voice.num(node.n), stitch=voice.stitch(node.kind, many=True), place=here)
    if isinstance(node, Unknown):
        return voice.keep(scene.translate(node.text))
    return ""


def make(scene: Scene, node: Make) -> str:
    """Stitches of one kind. A place is always said, except in a ring or in a group that has one."""
    voice = scene.voice
    count = voice.num(node.n)
    single = voice.single(node.n)
    node = _real(scene, node)
    name = voice.stitch(node.kind, voice.many(node.n))
    at = node.place
    if at is None:
        return _without_place(scene, node, single)
    if _all_together(node, at):
        return voice.say("make_to_end", stitch=voice.stitch(node.kind), end=scene.end)
    if _takes_together(voice, node, at):
        here = voice.say("over", where=voice.say("over_many", n=voice.num(at.n), things=voice.thing(at.thing, True)))
    else:
        lead = _length(scene, at) or scene.below
        here = place(voice, at, scene.end, ring=scene.ring, loop=node.loop, kind=node.kind, top=_top(scene, at), lead=lead)
    if node.between:
        run = voice.say("chain", n=node.between)
        name = voice.say("make_between", made=voice.say("make_bare", n=count, stitch=name), chain=run)
        return voice.say("make_one", stitch=name, place=here)
    if single == 1:
        return voice.say("make_one", stitch=name, place=here)
    return voice.say("make", n=count, stitch=name, place=here)


def _real(scene: Scene, node: Make) -> Make:
    """A stitch that is not named ("6 in ring") by the name of what was made."""
    return replace(node, kind=scene.kind) if node.kind in ("st", "*same*") and scene.kind else node


def _all_together(node: Make, at: Place) -> bool:
    """Whether a row is full of one decrease: "dec around", not "dec in each st"."""
    plain = at.quant == "each" and at.left is None and at.upto is None and at.relation == "in" and at.loop == node.loop == "both"
    fewer = node.kind.endswith("tog") or node.kind in ("dec", "invdec")
    return fewer and plain and at.thing == STITCH and at.of is None and node.n == ONE


def _takes_together(voice: Voice, node: Make, at: Place) -> bool:
    """Whether a decrease is worked over the places it names: "sc2tog over next 2 sts"."""
    plain = at.quant == "next" and at.relation == "in" and at.thing.kind in ("st", "ch")
    return node.kind.endswith("tog") and plain and at.n is not None and voice.single(at.n) != 1


def _top(scene: Scene, at: Place) -> bool:
    """Whether the words spoke of the top of a chain, not of the space under it."""
    return "top" in scene.text[at.span.start : at.span.end].lower().split()


def _length(scene: Scene, at: Place) -> int | None:
    """The length that the words gave to the chain whose top is meant."""
    m = _CHAIN.search(scene.text, at.span.start, at.span.end) if at.thing.kind == "tch" else None
    return int(m[1] or m[2]) if m else None


def _without_place(scene: Scene, node: Make, single: int | None) -> str:
    voice = scene.voice
    count = voice.num(node.n)
    name = voice.stitch(node.kind, voice.many(node.n))
    if scene.deep or scene.in_ring or node.kind == "picot":
        return voice.say("make_one_bare", stitch=name) if single == 1 else voice.say("make_bare", n=count, stitch=name)
    if node.taking:
        name = voice.say("make_taking", stitch=voice.stitch(node.kind), n=node.taking, things=voice.noun("st", True))
        return name if single == 1 else voice.say("make_times", stitch=name, times=voice.times(node.n))
    if node.kind.endswith("tog") or node.kind in ("inc", "dec", "invdec"):
        bare = voice.stitch(node.kind)
        return bare if single == 1 else voice.say("together_times", stitch=bare, times=voice.times(node.n))
    here = place(voice, Place("next", node.n, STITCH), scene.end, loop=node.loop, kind=node.kind)
    return voice.say("make_one", stitch=voice.stitch(node.kind), place=here)


def chain(voice: Voice, node: Chain) -> str:
    """As in "ch 3 (counts as dc)"."""
    n = Num(tuple(None if v is None else v + node.plus for v in node.n.values), node.n.blank) if node.n.values else node.n
    said = voice.say("chain", n=voice.num(n))
    if node.plus and not node.n.values:
        said = voice.say("chain_plus", n=voice.num(node.n), plus=node.plus)
    if node.counts == "no":
        return voice.say("counts_no", chain=said)
    if node.counts != "yes":
        return said
    if node.as_kind is None:
        return voice.say("counts_st", chain=said)
    tall = heights().get(node.as_kind, 0)
    spare = (voice.single(node.n) or 0) - tall if tall > 1 else 0
    if spare > 0:
        return voice.say("counts_yes_chains", chain=said, stitch=voice.stitch(node.as_kind), spare=voice.say("chain", n=spare))
    return voice.say("counts_yes", chain=said, stitch=voice.stitch(node.as_kind))


def group(scene: Scene, node: Group) -> str:
    """As in "(2 dc, ch 1, 2 dc) in next ch-1 sp", "[sc, ch 1] 8 times in ring"."""
    only = node.nodes[0] if len(node.nodes) == 1 else None
    if isinstance(only, Repeat) and only.mode == "times" and not only.ending and node.place is not None:
        return _group_of_repeat(scene, only, node.place)
    scene.deep += 1
    parts = scene.voice.say("sep").join(words(scene, node.nodes))
    scene.deep -= 1
    if node.place is None:
        return scene.voice.say("group_bare", parts=parts)
    at = place(scene.voice, node.place, scene.end, ring=scene.ring, top=_top(scene, node.place))
    said = scene.voice.say("group", parts=parts, place=at)
    return scene.voice.say("named", group=said, name=scene.voice.stitch(node.name)) if node.name else said


def _group_of_repeat(scene: Scene, only: Repeat, at: Place) -> str:
    """A repeat of things into one place."""
    scene.deep += 1
    parts = scene.voice.say("sep").join(words(scene, only.nodes))
    scene.deep -= 1
    here = place(scene.voice, at, scene.end, ring=scene.ring, top=_top(scene, at))
    return scene.voice.say("group_times", parts=parts, times=scene.voice.times(only.times), place=here)


def skip(voice: Voice, node: Skip) -> str:
    """As in "sk next 2 sts"; UK "miss"."""
    word = voice.dialect.words["skip_long" if voice.full_words else "skip"]
    frame = "skip_first" if node.first else "skip"
    if voice.single(node.n) == 1:
        return voice.say(f"{frame}_one", skip=word, thing=voice.thing(node.thing))
    return voice.say(frame, skip=word, n=voice.num(node.n), things=voice.thing(node.thing, True))


def join(scene: Scene, node: Join) -> str:
    """As in "join with sl st to first hdc"."""
    voice = scene.voice
    if node.last_chain and (told := _told_first(scene, node)):
        return told
    if node.place is None:
        return voice.say("join") if node.via is None else voice.say("join_via", stitch=voice.stitch(node.via))
    at = where(voice, node.place, scene.end, top=node.place.thing.kind == "sp", lead=_length(scene, node.place) or scene.lead)
    if node.via is None:
        return voice.say("join_to", where=at)
    return voice.say("join_via_to", stitch=voice.stitch(node.via), where=at)


def mark(scene: Scene, node: Mark) -> str:
    """What moves no stitch. Words that the tree does not hold are kept as they stood."""
    voice = scene.voice
    if node.what == "turn":
        return voice.say("turn")
    if node.what == "fasten-off":
        return voice.say("fasten_off")
    if node.what == "no-join":
        return voice.say("no_join")
    if node.what == "loops":
        return voice.say("loops", loop=voice.say(node.loop)) if node.loop in ("back", "front", "third") else ""
    if node.what == "leave" and node.n is not None:
        return voice.say("leave", n=voice.num(node.n))
    if node.what == "attach":
        yarn = _COLOUR.match(scene.text, node.span.start)
        here = "" if node.place is None else place(voice, node.place, scene.end)
        frame = "attach" if here else "attach_bare"
        return _told_first(scene, node) or voice.say(f"{frame}_colour" if yarn else frame, colour=yarn[1] if yarn else "", place=here)
    return scene.as_written(node)


def _told_first(scene: Scene, node: Node) -> str:
    """The words of a node as they stood, where they are words of the language written in."""
    return scene.as_written(node) if scene.voice.prefers_written else ""


__all__ = ["Scene", "one", "words"]
