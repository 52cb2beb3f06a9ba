"""Discs: rounds that gain the same number each, from a ring. Their rounds become a blank, their last count another where a tube follows."""

from __future__ import annotations

import re
from fractions import Fraction

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.phrases import share_of
from loopwright.grading.propose.rows import needed
from loopwright.model.tree import Mark, Repeat
from loopwright.record import record
from loopwright.source import Span

LEAST_ROUNDS = 5
LEAST_GAIN = 3
BESIDE = 9.0  # such a reason comes after the usual ones and before any other share
NAMED = (*range(3, 11), 12)  # gains whose share has a plain name
FEW = 6  # rounds of a disc of tall stitches: a fourth one written out would leave small sizes no room
_PRINTED = re.compile(r"\((?P<n>\d+)(?P<noun>\s[^()]*)?\)\.?\s*$")


@record
class Disc:
    """Rounds that gain `gain` each, the first with `start`, the last with `end`; `part` is one more line that gains less.

    `lines`: indexes of the lines that tell them; `full`: how many whole rounds these are.
    """

    lines: tuple[int, ...]
    start: int
    gain: int
    end: int
    full: int
    part: int | None = None

    @property
    def next(self) -> int:
        """The line after it."""
        return (self.part if self.part is not None else self.lines[-1]) + 1


def disc_from(lines: tuple[Line, ...], at: int) -> Disc | None:
    """The disc whose ring stands in line `at`; None where the rounds after it do not grow evenly."""
    first = at if lines[at].first is not None or lines[at].row.printed else at + 1
    if first + 1 >= len(lines) or lines[first].first not in (None, 1):
        return None
    if any(x.row.label is not None and x.row.label.kind == "row" for x in lines[first : first + 2]):
        return None  # rows that grow to and fro are a triangle or a half disc
    start, second = lines[first].count, _each(lines[first + 1])
    if start is None or not second or second[0] is None or second[0] - start < LEAST_GAIN:
        return None
    told, gain, now, full = [first], second[0] - start, start, 1
    part = None
    for i in range(first + 1, len(lines)):
        each = _each(lines[i])
        wanted = [now + gain * (k + 1) for k in range(len(each))]
        if lines[i].start == "none" and each and each == wanted:
            told.append(i)
            now, full = wanted[-1], full + len(each)
            continue
        if len(each) == 1 and each[0] is not None and 0 < each[0] - now < gain and lines[i].start == "none":
            part, now = i, each[0]
        break
    return Disc(tuple(told), start, gain, now, full, part) if full >= LEAST_ROUNDS else None


def _each(line: Line) -> list[int | None]:
    """The counts of a line's rounds, the printed one where it tells a single round."""
    return [line.count] if line.worked == 1 else list(line.counts)


def established(lines: tuple[Line, ...], disc: Disc) -> int:
    """How many of its rounds must stay written out so that "as established" is clear: three, four where the round begins apart."""
    alone = next((k for k, i in enumerate(disc.lines) if lines[i].worked != 1), len(disc.lines))
    if alone < 3:
        return disc.full
    third = lines[disc.lines[2]]
    repeat_at = next((i for i, n in enumerate(third.body) if isinstance(n, Repeat)), 1)
    return 3 if repeat_at <= 1 or disc.full <= FEW else min(4, alone)


def crown_rounds(found: Found, lines: tuple[Line, ...], disc: Disc, *, tube: bool) -> None:
    """Puts the disc's blanks in: rounds, and either the count of the tube after it or the count that its rounds give."""
    kept = established(lines, disc)
    full = disc.full - (1 if tube and disc.part is None else 0)
    if full <= kept:
        found.kept.append(f"the {disc.full} rounds of the disc stay as they are: too few to grow with the size")
        return
    last = lines[disc.next - 1]
    word = (last.section.title if last.section else "crown").lower()
    unit = "Rnds"
    facts = (f"the disc has {full} whole rounds that gain {disc.gain} sts each",)
    name, rule = found.name(f"{word} rounds"), Legal(least=kept)
    body = _body_name(found, lines, disc) if tube else ""
    also = (_link(body, disc, full),) if tube and disc.gain in NAMED else ()
    tall = [h for i in disc.lines for h in lines[i].tall_mm][:full]
    step = sum(tall[kept:]) / len(tall[kept:]) if len(tall) == full else None
    mm = (step, sum(tall) - full * step) if step else None
    across = Blank(name, "rnds", full, "across", word, 0, rule, facts, line=disc.lines[0], gain=disc.gain, also=also, rows_mm=mm)
    slot = found.add(across)
    unsaid = lines[disc.lines[kept - 1]].printed is None  # the count that the rounds start from, which the grader must know
    own = found.add(_edge(found, disc, across, last)) if not tube or unsaid else ""
    end = f" ({own}{_noun(last)})" if own else ""
    text = f"{unit} {kept + 1}-{slot}: Continue as established, inc {disc.gain} sts each rnd.{end}"
    if tube:
        text += "\n" + _last_round(found, lines, disc, body)
    begin = lines[disc.lines[kept]].span.start
    stop = lines[disc.next - 1].span.end
    found.replace(Span(begin, stop), text)


def _edge(found: Found, disc: Disc, across: Blank, last: Line) -> Blank:
    """The count at the edge of a disc whose rounds are all whole: it follows from their number."""
    rest = disc.start - disc.gain
    more = f" {'plus' if rest > 0 else 'less'} {abs(rest)}" if rest else ""
    count = disc.start + disc.gain * (across.value - 1)
    why = f"{across.value} rounds that gain {disc.gain} each make {count}"
    given = (Reason(f"{disc.gain} times {{{across.name}}}{more}", why),)
    word = (last.section.title if last.section else "edge").lower()
    return Blank(found.name(f"{word} sts"), "sts", count, "link", given=given, line=disc.next - 1)


def _body_name(found: Found, lines: tuple[Line, ...], disc: Disc) -> str:
    """What the tube's count will be called: by its own section, "body" where it has none."""
    last = lines[disc.next - 1]
    section = lines[disc.next].section if disc.next < len(lines) else None
    return found.name(f"{section.title if section is not None and section is not last.section else 'body'} sts")


def _link(body: str, disc: Disc, full: int) -> Reason:
    """The rounds as what the tube's count leaves for them: whole ones up to the last, which takes the rest."""
    words = f"{share_of(Fraction(1, disc.gain), f'{{{body}}}')} less 1, rounded up"
    return Reason(words, f"{full} whole rounds of {disc.gain} come just below {disc.end} sts, and one more round takes the rest", BESIDE)


def _last_round(found: Found, lines: tuple[Line, ...], disc: Disc, body: str) -> str:
    """The round that brings the disc to the tube's count, in the words of the rounds before it."""
    last = lines[disc.next - 1]
    legal, why = needed(lines, disc.next, disc.end)
    blank = Blank(body, "sts", disc.end, "around", "", 0, legal, why, line=disc.next)
    slot = found.add(blank)
    begins = re.match(r"[^:]*:\s*(?P<chain>(?:\d+\s*)?ch\b[^,;*]*,\s*)?", last.text, re.IGNORECASE)
    chain = begins["chain"] if begins and begins["chain"] else ""
    stitch = next((lines[i].stitch for i in (disc.next - 1, *reversed(disc.lines)) if lines[i].stitch), "st")
    told = _noun(last).split()
    noun = told[0] if told and told[0] not in ("st", "sts", "stitches") else stitch
    joined = "; join." if re.search(r"\bjoin\b", last.text) else "."
    kind = noun if noun != "st" else "st in each st"
    words = f"{chain}{kind} around, increasing evenly to {slot} sts{joined}"
    return f"Next rnd: {words[0].upper() + words[1:]} ({slot}{_noun(last)})"


def _noun(line: Line) -> str:
    m = _PRINTED.search(line.text)
    return f" {m['noun'].strip()}" if m and m["noun"] else ""


def tube_after(lines: tuple[Line, ...], disc: Disc) -> bool:
    """Whether the rounds after the disc go on all around its edge."""
    if disc.next >= len(lines):
        return False
    line = lines[disc.next]
    left = any(isinstance(n, Mark) and n.what == "leave" for n in line.body)
    return not left and line.start == "none" and line.count == disc.end
