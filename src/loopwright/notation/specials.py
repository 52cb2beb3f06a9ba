"""Stitches that the pattern defines itself: "Special stitches: bean st = …", "Puff st (ps): …", "Abbreviations: cl = cluster".

They count, and are places to work into, like any other. A stitch told in movements of the hook is one stitch; one told in
stitches ("V st = (dc, ch 1, dc) in one st") is those stitches in one place.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise

from loopwright.model.tree import ONE, Chain, Either, Group, Make, Node, Repeat, Skip, SpecialStitch, Unknown
from loopwright.record import record
from loopwright.source import Span
from loopwright.terms import Dialect
from loopwright.terms.dialect import extended

MOST = 60  # definitions kept of one pattern
_HEADS = re.compile(
    r"^[ \t]*(?P<head>(?:special|other|unusual|stitch(?:es)?)\s+(?:stitch(?:es)?|sts?|abbreviations?|patterns?|terms|guide|used)(?:\s+used)?|abbreviations?(?:\s+used)?|stitch(?:es)?\s+(?:guide|used)|key)[ \t]*(?P<colon>[:.—–-]?)[ \t]*(?P<rest>.*)$",
    re.IGNORECASE | re.MULTILINE,
)
_NAME = r"(?P<name>[A-Za-z][\w’'/, -]{0,34}?)"
_DEFINED = re.compile(rf"{_NAME}[ \t]*+(?:[(\[](?:worked\s+)?over\s[^)\]]{{1,30}}[)\]][ \t]*+)?(?:[(\[](?P<abbr>[\w./’' -]{{1,34}})[)\]])?[ \t]*+(?:=|:|—|–|(?<= )- )[ \t]*+(?P<words>\S.*)$")
_BRACKETED = re.compile(r"(?P<name>[A-Za-z][\w’' -]{1,34}?)[ \t]*[(\[](?:work|make)\s+(?P<words>(?=[^()\[\]]*\bin(?:to)?\b)[^()\[\]]{4,80})[)\]]\.?", re.IGNORECASE)  # "V st (work 2 dc into one st)"
_PAIR = re.compile(r"(?:^|[,;.]\s+)(?P<name>[A-Za-z][\w/’'-]*(?: (?:st|sts|dc|sc|tr|sp))?)(?:\(s\))?\s*(?:=|:|—|–)\s*")
_MOVES = re.compile(r"\b(?:yo|yoh|yrh|woh|wrh|insert|pull(?:ing)?\s+(?:up|through)|draw(?:ing)?|pick\s+up|work(?:ed)?\s+off|yarn\s+over|yarn\s+round|worked\s+tog(?:ether)?|leaving|last\s+loops?|loops?\s+on)\b", re.IGNORECASE)
_WITHIN = re.compile(r"\((?P<name>shell|fan|scallop|v-st|cluster|puff|popcorn|bobble)s?\s?=\s?(?P<words>[^()=\n]{4,80})\)", re.IGNORECASE)
_STITCHY = re.compile(r"\b(?:st|sts|stitch|shell|cluster|fan|puff|popcorn|bobble|picot|bean|star|knot|cross(?:ed)?|cable|v-?st|block|bl|mesh|(?:inc|dec) ?[2-5])\b", re.IGNORECASE)
_NAMED = re.compile(r"(?:\s+in(?:to)?\s+(?:the\s+)?(?:place|st|stitch|sp|space|loop)s?(?:\s+or\s+(?:st|stitch|sp|space|loop)s?)?\s+(?:named|indicated|specified|stated|directed|given|noted|instructed|told|called\s+for))?[\s.]*$", re.IGNORECASE)
_BULLET = re.compile(r"[ \t]*[-–•·*][ \t]+")
_SENTENCES = re.compile(r"(?:(?<=\.)[ \t]+(?=[A-Z])|(?<=[.)\]])[ \t]+[-–•·][ \t]+)(?=[A-Za-z][\w’'-]*(?: [\w’'-]+){0,2}(?:\s*\([\w -]{1,12}\))?\s*[:=])")
_PLACED = re.compile(r"\bin(?:to)?\b", re.IGNORECASE)
_LISTED = re.compile(r"[(\[]\d?\s?[a-z][^()]*,[^()]*[)\]]", re.IGNORECASE)  # "(2 dc, ch 1, 2 dc)"
_OPENING = re.compile(r"(?:beg|beginning|starting|initial)\s+(?=[a-z])")
_LABEL = re.compile(r"[ \t]*(?:\d+(?:st|nd|rd|th)\s+)?(?:rows?|rnds?|rounds?|r)\b\s*\.?\s*\d|[ \t]*(?:next|last|first|final|dec|inc|set-?up|foundation)\s+(?:\d+\s+)?(?:rows?|rnds?|rounds?)\b", re.IGNORECASE)
_NEXT = re.compile(r"\b(?:in|into|through)\s+(?:the\s+|each\s+of\s+(?:the\s+)?)?(?:next|following)\s+(?P<n>\d)?\s*(?:sts?|stitch(?:es)?|[shd]{1,2}c|tr)\b", re.IGNORECASE)
_BECOME = re.compile(r"\b(?P<n>[2-9])\s+(?:sts?|stitches)\s+becomes?\s+(?:1|one)\b", re.IGNORECASE)
_REMARK = re.compile(r"\s*\((?:used|this|which|makes?|creates?|\d+\s+(?:sts?|stitches)\s+becomes?)\b[^()]*\)[^()=:;]{0,200}$", re.IGNORECASE)  # "(used where nothing is increased)"
_AGAIN = re.compile(r"[(\[](?P<inside>[^()\[\]]+)[)\]]\s*(?P<times>twice|x?\s*\d\s*(?:times|x)?)", re.IGNORECASE)
_STEM = re.compile(r"\s+(?:sts?|stitch(?:es)?)$")  # "star st" is called "star" too
_TOG = re.compile(r"(?:[3-9]|1\d)tog$")
_SHORT = re.compile(r"[A-Z]{2,5}")
_SPELT_OUT = re.compile(r"[ \t]*[A-Za-z][A-Za-z -]{2,30}\((?P<made>[^()]*\b(?:in|into|around)\b[^()]*)\)[ \t.]*$")
_MESH = re.compile(r"(?:open|solid|closed|filled|empty)\s+(?:mesh|sp|space|square)|mesh")  # of filet: how each is made stands in the row below
_KEPT = frozenset("ch chain st sts stitch stitches sp sps rnd rnds row rows rep repeat sl st ss rs ws sk skip lp lps beg tog yo inc dec blo flo".split())


@record
class Special:
    """A definition found: names in lower case (full, abbreviated), what it is made of, its words and their place.

    `told`: as it was read, where it is not told in stitches that go into one place.
    """

    names: tuple[str, ...]
    kind: str
    nodes: tuple[Node, ...]
    words: str
    span: Span
    told: tuple[Node, ...] = ()


Parse = Callable[[str, int, int, Dialect], tuple[Node, ...]]


def specials(text: str, which: Dialect, parse: Parse, written: str = "") -> tuple[Special, ...]:
    """The definitions of a pattern's front matter. `parse` reads words of a row into nodes; `written`: the text before anything was put in other words."""
    found: list[Special] = []
    for start, end, listed in _blocks(text):
        pairs = _pairs(text, start, end) if listed else []
        for name, abbr, a, b in pairs or _whole(text, start, end):
            one = _special(text, name, abbr, a, b, which, parse)
            if one is not None and len(found) < MOST:
                found.append(one)
    if "=" in written:
        found += _within_rows(written, frozenset(name for one in found for name in one.names), which, parse)
    return tuple(found)


def _within_rows(text: str, known: frozenset[str], which: Dialect, parse: Parse) -> list[Special]:
    """ "… rep from * across (shell = 5 dc)": the stitches told where they are worked, and nowhere before."""
    told: dict[str, Special] = {}
    for m in _WITHIN.finditer(text):
        name = m["name"].lower()
        if name not in known and name not in told and (one := _special(text, name, None, *m.span("words"), which, parse)) is not None and one.nodes:
            told[name] = one
    return list(told.values())


def with_specials(which: Dialect, found: tuple[Special, ...]) -> Dialect:
    """The dialect that knows the pattern's own names too."""
    names = {name: s.kind for s in found for name in s.names if which.kind_of(name) is None or s.nodes}
    stems = {stem: s.kind for s in found for name in s.names if (stem := _STEM.sub("", name)) != name and len(stem) > 2}
    names |= {name.replace(" ", ""): kind for name, kind in names.items() if name[-1].isdigit() and " " in name}  # "dec2" of "dec 2"
    several = {many: kind for name, kind in names.items() if (many := _several(name)) and which.kind_of(many) is None}
    names = several | {stem: kind for stem, kind in stems.items() if which.kind_of(stem) is None and stem not in _KEPT} | names
    return extended(which, names) if names else which


def _several(name: str) -> str:
    """ "open meshes" of "open mesh": what several are called where an s alone does not tell it; "" elsewhere."""
    return f"{name}es" if name.endswith(("sh", "ch", "ss", "x")) else f"{name[:-1]}ies" if name.endswith("y") and len(name) > 3 else ""


def defined(found: tuple[Special, ...]) -> tuple[SpecialStitch, ...]:
    """The definitions as nodes of the tree."""
    return tuple(SpecialStitch(s.kind, s.nodes, s.words, s.names[1] if len(s.names) > 1 else None, s.span, s.told) for s in found)


def _blocks(text: str) -> list[tuple[int, int, bool]]:
    """Lines of definitions (start, end, whether several stand on it): those of a heading, and those below it to an empty line."""
    lines: list[tuple[int, int, bool]] = []
    for head in (m for at in _line_starts(text) if (m := _HEADS.match(text, at)) is not None):
        if head["rest"] and (head["colon"] or "=" in head["rest"]):
            lines.append((head.start("rest"), head.end("rest"), True))
        at = head.end() + 1
        while at < len(text):
            stop = text.find("\n", at)
            stop = len(text) if stop < 0 else stop
            line = text[at:stop]
            if not line.strip() or _LABEL.match(line) or not re.match(r"[^=:]{1,50}(?:=|:|—|–)", line) or _HEADS.match(text, at, stop):
                break
            if re.match(r"[ \t]*(?:gauge|tension|hook|yarn|sizes?|notes?|materials|fit|terms|turning chain|cautions?|finished)\b", line, re.IGNORECASE):
                break
            lines.append((at, stop, True))
            at = stop + 1
    if not lines:
        alone = (part for m in re.finditer(r"^.{3,400}$", _front(text), re.MULTILINE) for part in _sentences(text, m.start(), m.end()))
        lines = [(start, end, False) for start, end in alone if _alone(text[start:end])]
    return lines


def _sentences(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """The definitions of a line that holds several: "Shell: …. Beg shell: …"."""
    bullet = _BULLET.match(text, start, end)
    cuts = [bullet.end() if bullet else start, *(m.end() for m in _SENTENCES.finditer(text, start, end)), end]
    return list(pairwise(cuts))


def _front(text: str) -> str:
    """The text before its first row."""
    return text[: next((at for at in _line_starts(text) if _LABEL.match(text, at)), 4000)]


def _line_starts(text: str) -> Iterator[int]:
    """Where lines begin: to look at those places alone, and not for them at every character."""
    at = 0
    while at >= 0:
        yield at
        at = text.find("\n", at) + 1 or -1


def _alone(line: str) -> bool:
    """Whether a line of its own defines a stitch: "Puff st (ps): yo, insert hook …"."""
    m = _DEFINED.match(line.strip())
    short = m is not None and "=" in line and _SHORT.fullmatch(m["name"]) is not None
    return m is not None and ("," not in m["name"] or m["abbr"] is not None) and (m["abbr"] is not None or short or _STITCHY.search(m["name"]) is not None) and (_MOVES.search(m["words"]) is not None or _PLACED.search(m["words"]) is not None or "=" in line and _LISTED.match(m["words"]) is not None)


def _pairs(text: str, start: int, end: int) -> list[tuple[str, str | None, int, int]]:
    """ "ch = chain, bean st = …, cl = cluster": name, abbreviation, start and end of the words."""
    line = text[start:end]
    starts = list(_PAIR.finditer(line))
    if len(starts) < 2 and not (starts and starts[0].start() == start and "(" not in line[: starts[0].end()]):
        return []
    pairs: list[tuple[str, str | None, int, int]] = []
    for i, m in enumerate(starts):
        stop = start + starts[i + 1].start() if i + 1 < len(starts) else end
        pairs.append((m["name"], None, start + m.end(), stop))
    return pairs


def _whole(text: str, start: int, end: int) -> list[tuple[str, str | None, int, int]]:
    m = _DEFINED.match(text[start:end].strip()) or _BRACKETED.fullmatch(text[start:end].strip())
    if m is None or "," in m["name"] and m.groupdict().get("abbr") is None:
        return []
    lead = start + len(text[start:end]) - len(text[start:end].lstrip())
    return [(m["name"].strip(), m.groupdict().get("abbr"), lead + m.start("words"), lead + m.end("words"))]


def _special(text: str, name: str, abbr: str | None, start: int, end: int, which: Dialect, parse: Parse) -> Special | None:
    words = text[start:end].strip(" .,;")
    end = start + remark.start() if (remark := _REMARK.search(text[start:end])) is not None else end
    names = tuple(dict.fromkeys(low for n in (name, abbr) if n and (low := " ".join(n.lower().strip(" .").split()))))
    if not words or not names or any(n in _KEPT or _MESH.fullmatch(n) for n in names[:1]):
        return None
    meant = which.kind_of(words.lower())
    if meant is not None:  # "h = half treble": another way to write a stitch the dialect has
        return Special(names, meant, (), words, Span(start, end)) if which.kind_of(names[0]) is None else None
    if not abbr and not _STITCHY.search(f"{name} {words}") and not _MOVES.search(words):
        return None
    known = which.kind_of(names[0])
    opened = _OPENING.match(names[0])  # "beginning popcorn": one of them too
    kind = known or opened and which.kind_of(names[0][opened.end() :]) or names[0]
    if _MOVES.search(words):
        many = _places(words)
        over = (Repeat((Make("cluster", ONE, None, parts=many, taking=many),), "once"),) if many > 1 else ()
        return Special(names, kind, over, words, Span(start, end)) if known is None else None
    if (spelt := _SPELT_OUT.match(text, start, end)) is not None:  # "MDC = mosaic dc (dc in the front loop of the st two rows below)"
        start, end = spelt.span("made")
    told = parse(text, start, end - len(_NAMED.search(text[start:end])[0]), which)  # type: ignore[index]
    nodes = _in_one(told) or (() if known not in (None, "cross-st") else _over_several(told))
    if not nodes:
        return Special(names, kind, (), words, Span(start, end), told) if known and len(told) > 1 or known is None and _STITCHY.search(name) else None
    return Special(names, kind, nodes, words, Span(start, end))


def _places(words: str) -> int:
    """How many stitches a stitch told in movements of the hook takes: those that it names as the next ones, as often as brackets say."""
    if (told := _BECOME.search(words)) is not None:
        return int(told["n"])
    total, ends = 0, 0
    for m in _AGAIN.finditer(words):
        times = 2 if m["times"].lower().startswith("twice") else int(re.sub(r"\D", "", m["times"]) or 1)
        total += times * _named_next(m["inside"]) + _named_next(words[ends : m.start()])
        ends = m.end()
    return total + _named_next(words[ends:])


def _named_next(words: str) -> int:
    return sum(int(m["n"] or 1) for m in _NEXT.finditer(words))


def _over_several(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """A definition told over several stitches ("skip next st, dc in next st, dc in skipped st"), to be worked where its name stands."""
    several = any(isinstance(n, Make) and n.place is not None and n.place.n is not None and (n.place.n.at(0) or 1) > 1 for n in nodes)
    each = len(nodes) > 1 and all(isinstance(n, Make) and (n.n.at(0) or 1) > 1 and n.place is not None for n in nodes)  # "2 dc in one st, 3 dc in one st, 2 dc in one st"
    if not several and not each and not any(isinstance(n, Skip) for n in nodes) or not any(isinstance(n, Make) and n.place is not None for n in nodes):
        return ()
    if any(isinstance(n, Make) and n.place is not None and n.place.quant not in ("next", "skipped", "same") for n in nodes):
        return ()
    return (Repeat(nodes, "once"),)


def _in_one(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The stitches of a definition as one group; () when it is not told in stitches that go into one place."""
    if len(nodes) == 1 and isinstance(nodes[0], Either):
        nodes = min(nodes[0].readings, key=lambda r: 0 if any(isinstance(n, Group) for n in r[1]) else 1)[1]
    made = [n for n in nodes if isinstance(n, (Make, Group, Chain, Repeat))]
    if len(made) == 1 and isinstance(made[0], Group):
        return (Group(made[0].nodes, None),)
    if len(made) == 1 and isinstance(made[0], Make) and (made[0].n.at(0) or 1) > 1:
        return (Group((Make(made[0].kind, made[0].n),), None),)
    if len(made) == 1 and isinstance(made[0], Make) and _TOG.search(made[0].kind) and (where := made[0].place) is not None and where.quant in ("same", "next") and where.n == ONE:
        return (Group((Make(made[0].kind),), None),)  # "5tr tog in one st"
    only = len(made) == 1 and not any(isinstance(n, (Skip, Unknown)) for n in nodes)
    if only and isinstance(made[0], Make) and (where := made[0].place) is not None and (where.rows_below or where.quant == "skipped"):
        return (Repeat((made[0],), "once"),)  # "dc in skipped st 3 rows below"
    if len(made) == 1 and isinstance(made[0], Repeat) and made[0].mode == "once":
        return (Group(made[0].nodes, None),)
    return ()
