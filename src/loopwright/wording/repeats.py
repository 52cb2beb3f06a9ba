"""Repeats in words: after a star, in square brackets, or written out as often as they are worked."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, Make, Node, Num, Place, Repeat
from loopwright.wording.places import place
from loopwright.wording.stitches import Scene, words
from loopwright.wording.voice import Voice

MOST_WRITTEN_OUT = 12
LONGEST_WITH = 12
_WITH = re.compile(r"\bwith ([A-Z]{1,3})[,:]? ?$")


def repeat(scene: Scene, node: Repeat) -> str:
    """A repeat. Inside another one a star would be read as the outer one: square brackets then."""
    voice = scene.voice
    if node.mode == "once":
        return _once(scene, node)
    if (alone := _alone(node)) is not None:
        return voice.say("make_to_end", stitch=voice.stitch(alone), end=scene.end)
    if voice.spelled_out and (written := _written_out(scene, node)) is not None:
        return written
    starred = not scene.deep and not (node.mode == "times" and not node.ending)
    if voice.spelled_out and starred and node.mode in ("end", "left") and not node.ending and scene.repeats is not None:
        node = as_more(node, scene.repeats)
    parts = _parts(scene, node)
    if not starred:
        return _bracket(scene, node, parts)
    said = _star(scene, node, parts)
    if node.ending_mode == "at":
        return voice.say("star_at", star=said)
    if node.ending_mode == "correspond":
        return voice.say("star_correspond", star=said)
    if not node.ending:
        return said
    ending = voice.say("and").join(words(scene, node.ending)) if len(node.ending) < 2 else voice.say("sep").join(words(scene, node.ending))
    if node.ending_mode in ("with", "with-last"):
        return voice.say("star_with" if node.ending_mode == "with" else "star_with_last", star=said, ending=ending)
    if node.ending_mode == "omit":
        return voice.say("star_omit", star=said, ending=ending)
    return voice.say("sep").join([said, ending])


def _alone(node: Repeat) -> str | None:
    """The one decrease that a row is full of ("sc2tog around")."""
    only = node.nodes[0] if len(node.nodes) == 1 else None
    plain = isinstance(only, Make) and only.place is None and only.n == ONE and only.loop == "both" and only.kind.endswith("tog")
    return only.kind if isinstance(only, Make) and plain and node.mode == "end" and not node.ending else None


def _parts(scene: Scene, node: Repeat) -> str:
    """What is repeated; two stars stand where the last round stops."""
    sep = scene.voice.say("sep")
    if node.ending_mode != "at" or node.stop_at is None:
        return sep.join(_inner(scene, node.nodes))
    before, after = _inner(scene, node.nodes[: node.stop_at]), _inner(scene, node.nodes[node.stop_at :])
    return f"{sep.join(before)}{sep}** {sep.join(after)}"


def _inner(scene: Scene, nodes: Sequence[Node]) -> list[str]:
    """The nodes of a repeat: repeats among them go in brackets."""
    found: list[str] = []
    run: list[Node] = []
    for n in nodes:
        if not scene.voice.prefers_written and (colour := _colour_before(scene, n)):
            found += [*words(scene, run), scene.voice.say("with_colour", colour=colour)]
            run = []
        if isinstance(n, Repeat) and n.mode != "once":
            found += [*words(scene, run), _nested(scene, n)]
            run = []
        else:
            run.append(n)
    return [*found, *words(scene, run)]


def _colour_before(scene: Scene, node: Node) -> str:
    """The colour that is taken up before a node of a repeat: "with B, sc in next st"."""
    m = _WITH.search(scene.text, max(0, node.span.start - LONGEST_WITH), node.span.start) if node.span.end else None
    return m[1] if m else ""


def _nested(scene: Scene, node: Repeat) -> str:
    if scene.voice.spelled_out and (written := _written_out(scene, node)) is not None:
        return written
    said = _bracket(scene, node, scene.voice.say("sep").join(_inner(scene, node.nodes)))
    return scene.voice.say("sep").join([said, *words(scene, node.ending)])


def _bracket(scene: Scene, node: Repeat, parts: str) -> str:
    voice = scene.voice
    if node.mode == "end":
        return voice.say("bracket_end", parts=parts, end=scene.end)
    if node.mode == "left":
        return voice.say("bracket_left", parts=parts, n=voice.num(node.left), last=_last(voice, node))
    more = 1 if node.mode in ("more", "star-times") else 0
    return voice.say("bracket", parts=parts, times=voice.times(node.times, more))


def _last(voice: Voice, node: Repeat) -> str:
    """What a repeat leaves: "sts" of any sort, or the thing it names."""
    many = voice.single(node.left) != 1
    return voice.noun("st", many) if node.left_of.kind in ("st", "ch") else voice.thing(node.left_of, many)


def _star(scene: Scene, node: Repeat, parts: str) -> str:
    voice = scene.voice
    if node.mode == "left":
        one = voice.single(node.left) == 1
        return voice.say("star_left_one" if one else "star_left", parts=parts, n=voice.num(node.left), last=_last(voice, node))
    if node.mode == "more":
        return voice.say("star_more", parts=parts, times=voice.times(node.times))
    if node.mode == "star-times":
        return voice.say("star_times", parts=parts, times=voice.times(node.times))
    if node.mode == "times":
        return voice.say("star_more", parts=parts, times=voice.times(node.times, -1))
    return voice.say("star", parts=parts, end=scene.end)


def _once(scene: Scene, node: Repeat) -> str:
    """One stitch in several places ("sc in next ch and in each ch across"), or a bracket that says nothing."""
    voice, nodes = scene.voice, node.nodes
    makes = [n for n in nodes if isinstance(n, Make) and n.place is not None]
    if len(makes) == len(nodes) > 1 and all(m.kind == makes[0].kind and m.n == makes[0].n for m in makes):
        end, scene.end = scene.end, ""
        said = words(scene, makes[:1])[0].rstrip()
        scene.end = end
        for i, m in enumerate(makes[1:], 2):
            here = place(voice, m.place or Place(), end if i == len(makes) else "", ring=scene.ring, loop=m.loop, kind=m.kind)
            said = voice.say("and_more_places", made=said, place=here.rstrip())
        return said
    return voice.say("sep").join([*words(scene, nodes), *words(scene, node.ending)])


def _written_out(scene: Scene, node: Repeat) -> str | None:
    """Every round of a repeat in full; None where their number is not known or they are too many to read."""
    times = _known_times(scene.voice, scene, node)
    if times is None or times < 1 or times * len(node.nodes) > MOST_WRITTEN_OUT or (node.ending and node.ending_mode != "after"):
        return None
    once = _inner(scene, node.nodes)
    return scene.voice.say("sep").join([*once * times, *words(scene, node.ending)])


def _known_times(voice: Voice, scene: Scene, node: Repeat) -> int | None:
    if node.mode in ("times", "more"):
        told = voice.single(node.times)
        return None if told is None else told + (node.mode == "more")
    if node.mode in ("end", "left") and scene.repeats is not None:
        return voice.single(scene.repeats)
    return None


def as_more(node: Repeat, times: Num) -> Repeat:
    """The same repeat with its number told: so many times after the first."""
    if any(v is None or v < 2 for v in times.values):
        return node
    return replace(node, mode="more", times=Num(tuple(v - 1 for v in times.values if v is not None)), left=None)
