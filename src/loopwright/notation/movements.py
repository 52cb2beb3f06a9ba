"""Stitches told by the movements of the hook, put into the name of a stitch: "insert hook in next st, draw up a loop …".

The text keeps its length, so that spans outside of such a passage stay true. Common practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from loopwright.source.expressions import Expression

_YO = r"(?:\byo\b|\by\.? o\b\.?|\byarn over\b|\bthread over\b|\bwool over\b)(?:\s+(?:the\s+)?hook\b(?!\s*\d))?"
_MOVE = Expression(
    rf"(?P<lead>keeping (?:all )?loops on (?:the )?hook,?)|(?P<insert>(?:insert(?:\s+hook)?(?:\s+again)?|(?:pull|draw)\s+up\s+(?:a\s+)?loop)\s+(?:in|into|under)\s+(?:the\s+)?(?P<place>[^,.;()*]*?)(?=\s*(?:,|\.|;|\)|\(|$|\band\s+(?:pull|draw)|{_YO})))"
    rf"|(?P<yo>{_YO})|(?P<off>(?:and\s+)?(?:work(?:ing)?\s+off|pull\s+through|draw\s+(?:loop\s+)?through|thru|through|pull\s+[A-Z]\w*\s+through)\s+(?:the\s+)?(?P<all>all|both|remaining|rem|last)?(?:\s*\d)?\s*(?P<two>2|two)?\s*(?:remaining\s+)?loops?\b(?:\s+on\s+(?:the\s+)?hook)?(?:\s+at\s+one\s+time)?(?:\s+together)?)"
    r"|(?P<pull>(?:and\s+)?(?:pull|draw)(?:\s+(?:yarn|thread|wool|a|the|loop|up))*\s+through\b|drop\s+[A-Z]\w*(?=,))|(?P<skip>(?:skip|miss)\s+(?:next\s+)?(?P<many>\d)?\s*(?:next\s+)?(?:sts?|ch)\b(?:\s+of\s+ch)?)"
    r"|(?P<more>(?:and\s+)?\bin(?:to)?\s+(?P<place2>[^,.;()*]*))|(?P<again>repeat\s+from\s+\*\s+(?P<times>once|twice|\d\s+times)|\)\s*(?P<times2>once|twice|\d\s+times))|(?P<glue>[\s,.;(]+|\band\b|\bthen\b)",
    re.IGNORECASE,
)
_OVER_HOOK = re.compile(r"\bw\.o\.h\.", re.IGNORECASE)
_STARTS = re.compile(rf"(?:\*\s*)?(?:keeping (?:all )?loops on|insert\s+hook\s+(?:again\s+)?in|(?:pull|draw)\s+up\s+(?:a\s+)?loop\s+in|{_YO},?\s*(?:and\s+)?insert)", re.IGNORECASE)
_HELD = re.compile(
    rf"(?:holding|keeping|leaving) (?:back )?(?:on (?:the )?hook )?(?:the )?last loop of each [a-z .]{{2,6}}?(?: on (?:the )?hook)?[,;]\s*(?:make |work )?(?P<k>[a-z]{{2,4}}) in next (?P<n>\d) (?P<t>\w+)[,;]\s*{_YO},? and (?:draw|pull) through all (?:the )?loops on (?:the )?hook",
    re.IGNORECASE,
)
_CLUSTERED = re.compile(  # "leaving the last loop of each on hook work 3 tr. into next sp., thread over and draw through all loops on hook (a cluster made)"
    rf"(?:\b(?:[34] ?ch|ch ?[34])\b\.?,?\s?)?\b(?:holding|keeping|leaving) (?:back )?(?:on (?:the )?hook )?(?:the )?last loop of each(?: [a-z .]{{2,6}}?)?(?: on (?:the )?hook)?,? (?:make |work )?[2-9] ?(?:d\.? ?tr|tr|d\.? ?c|h\.? ?tr)s?\.? "
    rf"(?P<place>in(?:to)? (?:the )?(?:next|same|first|each|last)\b[^,;(*]{{0,40}}?),? (?:then )?{_YO},? (?:and )?(?:draw|pull) through all (?:the )?loops(?: on (?:the )?hook)?(?: \((?:an? |the )?(?:first )?(?:\d[- ]?tr\.? )?cluster(?: made)?\))?",
    re.IGNORECASE,
)
_AND_IN = re.compile(r"\s+and\s+(?:then\s+)?in(?:to)?\s+(?:the\s+)?", re.IGNORECASE)
_TURNED = re.compile(r"\bch \d,?\s*(?:\([^()]{1,40}\),?\s*)?(?:turn,?)?\s*$", re.IGNORECASE)  # the chain that a row begins with: loops drawn up in it take no stitch
_OF_STAR = re.compile(r"\beye\b|\bside of\b|\bstar\b", re.IGNORECASE)
_LAST = re.compile(r"\bin (?:the )?last (?:st|stitch|ch|sc|hdc)\b", re.IGNORECASE)  # behind stars: the last of them has taken that stitch too
_FROM_HOOK = re.compile(r"skip (?P<n>[3-9]) sts, (?P<stitch>\w+) in next st$")
_LABELLED = re.compile(r"\b(?:row|rnd|round)\s*\d{1,3}\s*(?:\([^()]{1,20}\)\s*)?:\s*(?:ch \d+,\s*)?$", re.IGNORECASE)
_OF_STITCHES = re.compile(r"\b(?:first|next)\s+(?:\d\s+)?(?!ch)[a-z]", re.IGNORECASE)
TURN = 60  # characters of "ch 3 (does not count as a st), turn, "
LONGEST = 700  # characters that one stitch's movements may take
_TIMES = {"once": 1, "twice": 2}
_OUT = r"(?:(?:drop|slip) (?:the )?loop (?:from|off) (?:the )?hook|(?:withdraw|remove|take out) (?:the )?hook)"
_DROPPED = re.compile(
    rf",?\s{{0,3}}{_OUT}(?: from (?:the )?loop)?,?\s*insert (?:(?:hook|it) )?in(?:to)? [^,;.]{{1,60}}?(?:,|\band\b)\s*(?:pick up|draw|pull|catch)[^,;.()—–]*(?:through)?[^,;.()—–]*(?:,\s*do not ch 1|,?\s*ch 1 to (?:tighten|fasten|close)(?: (?:the )?(?:st|popcorn))?\b|,\s*ch 1(?=,?\s*\((?:popcorn|pc)\b))?"
    r"|(?<=—)\s*to make [^.]*\.|\bas follows:[^()]*(?=\([^()]*made\))",
    re.IGNORECASE,
)
_FIRST_POPPED = re.compile(  # "3 ch, 4 tr into same sp, withdraw hook, insert it into 3rd of 3 ch and draw dropped loop through"
    rf"\b(?:3 ?ch|ch ?3),? (?P<n>[2-9]) ?(?:d\.? ?c|tr)s?\.? (?P<place>in(?:to)? (?:the )?(?:next|same|first|each)\b[^,;.(*]{{0,40}})(?=,?\s*(?:and )?{_OUT}[^;*]{{0,40}}(?:3rd|third|top) (?:(?:ch|st) )?of (?:the )?(?:3[- ]?ch|ch(?:[- ]?3)?)\b)", re.IGNORECASE,
)
_POPPED = re.compile(
    rf"\b(?P<n>[2-9]) ?(?:s\.? ?c|d\.? ?c|h\.? ?d\.? ?c|d?\.? ?tr)s?\.? (?P<place>in(?:to)? (?:the )?(?:next|same|first|each)\b[^,;.(*]{{0,40}})(?=,?\s*(?:and )?{_OUT})", re.IGNORECASE,
)
SINGLE = {"us": ("sc", "hdc", "dc"), "uk": ("dc", "htr", "tr"), "old": ("dc", "htr", "tr")}


@dataclass(slots=True)
class _Told:
    """What a passage has told so far."""

    places: list[str] = field(default_factory=list)
    begun: int = 0
    yarns: int = 0
    twos: int = 0
    turned: bool = False
    done: int | None = None
    starred: bool = False
    steps: list[str] = field(default_factory=list)


def named(text: str, terms: str) -> str:
    """The text with passages of hook movements replaced by the stitch they make; same length."""
    low = text.lower()
    text = _OVER_HOOK.sub("yo    ", text) if "w.o.h" in low else text
    text = _HELD.sub(lambda m: f"cluster over next {m['n']} {m['t']}".ljust(len(m.group())), text)
    if "last loop" in text:
        text = _CLUSTERED.sub(lambda m: f"cluster {m['place']}".ljust(len(m.group())), text)
    if "hook" in low:
        text = _FIRST_POPPED.sub(lambda m: f"pc {m['place']}".ljust(len(m.group())), text)
        text = _POPPED.sub(lambda m: f"pc {m['place']}".ljust(len(m.group())), text)
    if "hook" in low or "made" in low or "make" in low:
        text = _DROPPED.sub(lambda m: " " * len(m.group()), text)
    if "insert" not in low and "loop" not in low:
        return text  # no movement is told
    at = 0
    while (m := _STARTS.search(text, at)) is not None:
        told = _read(text, m.start())
        at = m.end()
        if told.done is None or not told.places:
            continue
        start = m.start() if not told.starred else m.start() + 1
        short = _said(told, terms)
        if len(told.places) > 1 and "from" in told.places[0] and _LABELLED.search(text, max(0, m.start() - TURN), m.start()) is not None:
            short = _FROM_HOOK.sub(lambda m: f"{m['stitch']} in {int(m['n']) + 1}th ch from hook (skipped chs do not count as a st)", short)  # those before its last are its own
        room = told.done - start
        if len(short) <= room:
            rest = text[told.done :]
            if any(_OF_STAR.search(p) for p in told.places):
                rest = _LAST.sub(lambda m: "in same st".ljust(len(m.group())), rest, count=1)
            text = text[:start] + short.ljust(room) + rest
            at = start + len(short)
    return text


def _read(text: str, at: int) -> _Told:
    told = _Told()
    starred = text[at] == "*"
    begun = at
    at += starred
    since = 0
    finished: int | None = None
    far = at + LONGEST
    while at < far and (m := _MOVE.match(text, at)) is not None and m.end() > at:
        if finished is not None and not m["glue"] and (not (m["yo"] or m["insert"] or m["off"] or m["again"]) or m["insert"] and not m["yo"]):
            break
        if m["insert"] or m["more"] and told.places:
            named = _AND_IN.split(m["place"] or m["place2"])
            told.places += named
            told.steps += ["place"] * len(named)
        elif m["skip"] and told.places:
            told.steps.append(f"skip{m['many'] or 1}")
        elif m["again"]:
            times = (m["times"] or m["times2"]).lower()
            again = _TIMES.get(times) or int(times.split()[0])
            block = told.places[since if m["times2"] else 0 :]
            told.places += block * again
            told.steps += ["place"] * (len(block) * again)
            starred = False
        elif m["yo"]:
            told.yarns += not told.places
        elif m["off"]:
            told.twos += bool(m["two"]) and not m["all"]
            if told.places:
                finished = m.end()
                if m["all"] and m["all"].lower() != "last":
                    break
        elif m["skip"] or m["more"]:
            break
        if "(" in m.group():
            since = len(told.places)
        at = m.end()
    told.done, told.starred = finished, starred
    told.turned = len(told.places) > 1 and _TURNED.search(text, max(0, begun - TURN), begun) is not None and any(_OF_STITCHES.search(p) for p in told.places)
    return told


def _said(told: _Told, terms: str) -> str:
    """The passage in a few words: what is passed over, and one stitch into the last place."""
    sc, hdc, dc = SINGLE.get(terms, SINGLE["us"])
    many, moves, loops = 0, 0, False
    from_hook = 0
    index = 0
    last = "next st"
    for step in told.steps:
        if step.startswith("skip"):
            moves += int(step[4:])
            continue
        place = told.places[index].lower()
        index += 1
        hook = re.search(r"(\d)(?:st|nd|rd|th)\s+(?:ch|st)\S*\s+from", place)
        if told.turned and (hook or re.search(r"\bch", place)):
            many += 1
            continue
        count = sum(int(n or 1) for n in re.findall(r"\b(?:next|first)\s+(\d)?", place))
        many += max(1, count + bool(re.search(r"\b(?:same|last)\b", place)))
        if hook:
            from_hook, last = int(hook[1]), "next st"
        elif re.search(r"\bsame\b|worked in|where\b|\beye\b|\bside\b|\blast loop\b|\bstar\b", place) and not count:
            last = "same st"
        elif re.match(r"(?:the )?last\b", place) and not count:
            last = "last st"
        elif re.match(r"ch 1$", place):
            last = "same st"
        else:
            loops = loops or bool(re.search(r"\bloop\b", place))
            moves += max(1, count)
            last = "next loop" if loops else "next st"
    passed = moves - 1 if last.startswith("next") and moves else moves
    stitch = "cluster" if many > 1 else sc if not told.yarns else dc if told.twos else hdc
    if from_hook and not moves:
        return f"{stitch} in {from_hook}{'nd' if from_hook == 2 else 'rd' if from_hook == 3 else 'th'} ch from hook"
    passed += from_hook
    thing = "loops" if loops else "sts"
    part = "(does not count as a st) " if told.turned else ""  # the chain is a part of the first stitch
    return part + (f"skip {passed} {thing}, " if passed else "") + f"{stitch} in {last}"
