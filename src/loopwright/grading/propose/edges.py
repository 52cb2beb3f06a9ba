"""Foundation chains, stitches left unworked, repeats told in figures, cords: their numbers become blanks."""

from __future__ import annotations

import re

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line, walk
from loopwright.grading.propose.phrases import FINER, SHARES, legal, share_of
from loopwright.grading.propose.rows import needed
from loopwright.grading.propose.takes import taken
from loopwright.model.tree import Chain, Mark, Repeat
from loopwright.source import Span

MOST_AT_EDGES = 3
MOST_TURNING = 5
_FOR = re.compile(r"unworked\s+for\s+(?:the\s+)?(?P<what>[a-z]+)", re.IGNORECASE)


def foundation(found: Found, lines: tuple[Line, ...], i: int) -> None:
    """The chain that a piece begins with: the stitches of its first row, and the chains it needs beyond them."""
    line = lines[i]
    chain = next(n for n in walk(line.body) if isinstance(n, Chain))
    chains = chain.n.at(0) or 0
    first = line if line.count not in (None, chains) and line.first is not None else lines[i + 1] if i + 1 < len(lines) else None
    if first is None or first.count is None or not chain.n.span.end:
        return
    more = chains - first.count
    if first.wide is not None and not -1 <= more <= MOST_TURNING:
        more = chains - first.wide
    if line.start != "tube" and not -1 <= more <= MOST_TURNING:
        found.kept.append(f"ch {chains} stays: its first row has {first.count} sts, so the two do not hang together by a few chains")
        return
    more = 0 if line.start == "tube" else more
    count = chains - more
    rule, why = needed(lines, i if first is line else i + 1, count)
    word = (first.section.title if first.section else "width").lower()
    facts = (*why, f"ch {chains} make {count} sts in the first row" + (f": {more} more for turning" if more else ""))
    role = "around" if line.start == "tube" or first.in_rounds else "width"
    slot = found.add(Blank(found.name(f"{word} sts"), "sts", count, role, word, 0, rule, facts, line=i))  # type: ignore[arg-type]
    found.chain(line.text, line.span.start, chain.n.span, slot, more)


def part_of_edge(found: Found, lines: tuple[Line, ...], i: int, around: Blank) -> None:
    """A row over a part of an edge: the part, what is left of it, and its repeats."""
    line = lines[i]
    mark = next((n for n in line.body if isinstance(n, Mark) and n.what == "leave"), None)
    left = _left(line, mark)
    if left is None:
        return
    free, span = left
    used = around.value - free
    repeat = next((n for n in line.body if isinstance(n, Repeat)), None)
    per = taken(repeat.nodes) if repeat is not None else None
    rule = Legal(per or 1, used % per if per else 0)
    word = (line.section.title if line.section else "front").lower()
    facts, shares = _part_facts(around, free, used, per), _shares(around, used, rule)
    part = Blank(found.name(f"{word} sts"), "sts", used, "share", word, 0, rule, facts, shares, i)
    found.add(part)
    if repeat is not None and per:
        times_blank(found, line, repeat, part, per)
    else:
        _plain_run(found, line, part)
    wording = _FOR.search(line.text)
    name = f"{wording['what']} sts" if wording else "free sts"
    link = Reason(f"{{{around.name}}} less {{{part.name}}}", f"{around.value} round the edge, {used} worked, {free} left")
    rest = Blank(found.name(name), "sts", free, "link", given=(link,), line=i)
    found.replace(span, found.add(rest))
    _to_last(found, line, rest)


def _to_last(found: Found, line: Line, free: Blank) -> None:
    """The repeat's end, told from the edge: "to last 11 sts", ten of them free."""
    m = re.search(r"\bto (?:the )?last (?P<n>\d+)(?=\s+(?:sts|stitches)\b)", line.text)
    more = int(m["n"]) - free.value if m else -1
    if m is None or not 0 <= more <= MOST_AT_EDGES:
        return
    slot = f"{{{free.name}}}"
    if more:
        link = Reason(f"{{{free.name}}} plus {more}", f"{free.value} free and {more} worked after the repeat")
        slot = found.add(Blank(found.name("last sts"), "sts", int(m["n"]), "link", given=(link,), line=line.item))
    found.replace(Span(line.span.start + m.start("n"), line.span.start + m.end("n")), slot)


def _plain_run(found: Found, line: Line, part: Blank) -> None:
    """A row told as one run: "dc in each of next 49 sts" over 50, the turning chain being one of them."""
    for m in re.finditer(r"(?P<n>\d+)(?=\s+(?:sts|stitches)\b)", line.text):
        less = part.value - int(m["n"])
        if 0 <= less <= MOST_AT_EDGES:
            link = Reason(f"{{{part.name}}}" + (f" less {less}" if less else ""), f"{part.value} sts, {less} of them told apart")
            run = Blank(found.name(f"{part.name.rpartition(' ')[0]} run sts"), "sts", int(m["n"]), "link", given=(link,), line=line.item)
            slot = found.add(run) if less else f"{{{part.name}}}"
            found.replace(Span(line.span.start + m.start("n"), line.span.start + m.end("n")), slot)
            return


def _left(line: Line, mark: Mark | None) -> tuple[int, Span] | None:
    if mark is None:
        return None
    m = re.search(r"(?P<n>\d+)\s+(?:sts?|stitches)\s+(?:unworked|free)", line.text)
    if m is None:
        return None
    at = line.span.start
    return int(m["n"]), Span(at + m.start("n"), at + m.end("n"))


def _part_facts(around: Blank, free: int, used: int, per: int | None) -> tuple[str, ...]:
    facts = [f"{free} of {around.value} sts are left unworked, {100 * free / around.value:.0f} in 100 of the edge; {used} are worked"]
    if per and per > 1:
        facts.append(f"the repeat takes {per} sts")
    return tuple(facts)


def _shares(around: Blank, used: int, rule: Legal) -> tuple[Reason, ...]:
    """Shares of the edge that lead to her number at the nearest legal count, the plainest and nearest first; finer ones where none does."""
    found = []
    plain = [s for s in SHARES if rule.nearest(around.value * s) == (used,)]
    for share in plain or FINER:
        if rule.nearest(around.value * share) == (used,):
            away = abs(float(around.value * share) - used)
            words = share_of(share, f"{{{around.name}}}") + legal(rule)
            because = f"{used} of {around.value} sts are {used / around.value:.3f}; {share} is {float(share):.3f}"
            found.append(Reason(words, because, away / rule.multiple + share.denominator / 8))
    if not plain:
        less = around.value - used
        words = f"{{{around.name}}} less {less}{legal(rule)}"
        found.append(Reason(words, "no plain share of the edge brings her number back, a fixed number left does", 9))
    return tuple(sorted(found, key=lambda r: r.score))


def times_blank(found: Found, line: Line, repeat: Repeat, over: Blank, per: int) -> None:
    """How often a repeat is worked, out of the stitches it is worked over."""
    told = repeat.times
    times = told.at(0) if told is not None else None
    said = re.search(rf"\b{times}(?=\s+(?:more\s+)?times\b)", line.text)
    if told is None or times is None or said is None:
        return
    in_all = times + (1 if repeat.mode == "more" else 0)
    rest = over.value - per * in_all
    if rest < 0:
        return
    rest += per if repeat.mode == "more" else 0
    noun = next((c.noun for c in line.row.printed if c.n.at(0) == in_all and c.noun), None)
    name = f"{noun.split('-')[0].split()[0]} repeats" if noun else "repeats"
    less = f" less {rest}" if rest else ""
    why = f"{over.value} sts less {rest} at the edges, {per} in each repeat" if rest else f"{per} sts in each repeat"
    link = Reason(f"{{{over.name}}}{less}, divided by {per}", why)
    slot = found.add(Blank(found.name(name), "times", times, "link", given=(link,), line=line.item))
    at = line.span.start
    found.replace(Span(at + said.start(), at + said.end()), slot)


def cord(found: Found, line: Line) -> None:
    """A tie: a chain that is worked back over or simply cut off; the same number again is the same tie."""
    chain = next((n for n in walk(line.body) if isinstance(n, Chain)), None)
    if chain is None or not chain.n.span.end:
        return
    value = chain.n.at(0) or 0
    same = next((b for b in found.blanks if b.role == "cord" and b.value == value), None)
    if same is not None:
        found.replace(chain.n.span, f"{{{same.name}}}")
        return
    told = f"{line.section.title if line.section else ''} {line.text}".lower()
    word = next((w for w in ("tie", "strap", "cord", "handle", "loop") if re.search(rf"\b{w}s?\b", told)), "cord")
    facts = (f"a chain of {value}, worked back over",)
    blank = Blank(found.name(word), "ch", value, "cord", word, facts=facts, line=line.item)
    found.replace(chain.n.span, found.add(blank))
    _back_over(found, line, blank)


def _back_over(found: Found, line: Line, cord_: Blank) -> None:
    """The stitches worked back over a cord: one fewer than its chains, since the first is passed over (common practice, no source)."""
    count = next((c for c in line.row.printed if c.n.at(0) in (cord_.value, cord_.value - 1) and c.n.span.end), None)
    if count is None:
        return
    slot = f"{{{cord_.name}}}"
    if count.n.at(0) != cord_.value:
        link = Reason(f"{{{cord_.name}}} less 1", "one chain more than the stitches worked back over it")
        slot = found.add(Blank(found.name(f"{cord_.name} sts"), "sts", cord_.value - 1, "link", given=(link,), line=line.item))
    found.replace(count.n.span, slot)


def cords_again(found: Found, line: Line) -> None:
    """The same cord made again within another row."""
    known = {b.value: b for b in found.blanks if b.role == "cord"}
    for node in walk(line.body):
        if isinstance(node, Chain) and node.n.span.end and (node.n.at(0) or 0) in known:
            found.replace(node.n.span, f"{{{known[node.n.at(0) or 0].name}}}")


