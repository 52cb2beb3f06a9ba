"""Numbers that follow from others: printed counts, "each of the 14 rows", edges counted out of their parts. They become blanks or go."""

from __future__ import annotations

import re
from collections import Counter
from fractions import Fraction

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import Blank, Found, Reason, Role
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.phrases import share_of
from loopwright.grading.propose.rows import said
from loopwright.grading.propose.takes import legs, taken
from loopwright.model.tree import Chain, Count, Evenly, Group, Join, Make, Mark, Repeat, Skip
from loopwright.source import Span

SMALL = 4
TWELFTHS = 10  # the finest share that has a plain name
_ROWS = re.compile(r"(?P<n>\d+)(?=\s+(?:rows|rnds|rounds)\b)", re.IGNORECASE)
_STS = re.compile(
    r"(?P<n>\d+)(?=\s+(?:free|unworked|remaining|missed|skipped)\s+(?:sts|stitches)\b)|(?<=of the )(?P<m>\d+)(?=\s+(?:sts|stitches)\b)",
    re.IGNORECASE,
)
_CHS = re.compile(r"(?<=each of the )(?P<n>\d+)(?=\s+ch\b)", re.IGNORECASE)
_BRACKET = re.compile(r"\s*\((?P<in>[^()]*\d[^()]*)\)\s*\.?\s*$")
_PER_ROW = re.compile(r"(?:(?P<n>\d+)\s+)?\w+(?: \w+)? in (?:the )?(?:ends? of )?each (?:of (?:the )?(?:\d+ )?)?rows?", re.IGNORECASE)


def follow(found: Found, line: Line, before: Line | None) -> None:
    """Puts blanks for the numbers of a line that stand for earlier blanks; a printed count that nothing explains is left out."""
    _evenly(found, line)
    _all_rows(found, line)
    _in_body(found, line)
    parts = _parts(found, line)
    if not line.row.printed:
        _bracket(found, line)
    for count in line.row.printed:
        if count.n.span.end and not _count(found, line, count, parts, before):
            _drop(found, line)
            return


def _evenly(found: Found, line: Line) -> None:
    """A number that a row grows or shrinks to evenly is measured: a cuff, a neck."""
    node = next((n for n in line.body if isinstance(n, Evenly) and n.to is not None), None)
    value = node.to.at(0) if node is not None and node.to is not None else None
    m = re.search(rf"\bto\s+(?P<n>{value})\b", line.text) if value else None
    if value is None or m is None or found.counts(value, "sts") is not None:
        return
    word = (line.section.title if line.section else "end").lower()
    role: Role = "around" if line.in_rounds else "width"
    facts = (f"{said(line)} brings the stitches to {value}",)
    blank = Blank(found.name(f"{word} end sts"), "sts", value, role, word, 0, Legal(2, value % 2), facts, line=line.item)
    found.replace(Span(line.span.start + m.start("n"), line.span.start + m.end("n")), found.add(blank))


def _parts(found: Found, line: Line) -> list[Blank]:
    """Blanks that stand in the words of the row now, each as often as it stands there."""
    names = {f"{{{b.name}}}": b for b in found.blanks}
    inside = [e for e in found.edits if line.span.start <= e.span.start < line.span.start + _stop(line)]
    return [names[e.text] for e in sorted(inside, key=lambda e: e.span.start) if e.text in names]


def _bracket(found: Found, line: Line) -> None:
    """A number in brackets at the end that was not read as a count, such as "(32 sts, the ch counted)"."""
    m = _BRACKET.search(line.text)
    first = re.match(r"\d+", m["in"]) if m else None
    if m is None or first is None:
        return
    same = found.counts(int(first.group()), "sts", "times")
    at = line.span.start + m.start("in")
    if same is not None:
        found.replace(Span(at, at + first.end()), f"{{{same.name}}}")


def _all_rows(found: Found, line: Line) -> None:
    """As in "in the end of each of the 28 rows" along a front: the rows of yoke and body together."""
    rows = [b for b in found.blanks if b.unit == "rows" and b.role != "link"]
    total = sum(b.value for b in rows)
    if len(rows) < 2 or found.counts(total, "rows", "rnds") is not None or not re.search(rf"\b{total}\s+rows\b", line.text):
        return
    words = " plus ".join(f"{{{b.name}}}" for b in rows)
    link = Reason(words, " + ".join(str(b.value) for b in rows) + f" = {total}")
    found.add(Blank(found.name("edge rows"), "rows", total, "link", given=(link,), line=line.item))


def _in_body(found: Found, line: Line) -> None:
    """Blanks for the numbers in the words of the row that stand for them."""
    at, stop = line.span.start, _stop(line)
    for pattern, units in ((_ROWS, ("rnds", "rows")), (_STS, ("sts",)), (_CHS, ("sts",))):
        for m in pattern.finditer(line.text, 0, stop):
            group = "n" if m["n"] else "m"
            value = int(m[group])
            blank = found.counts(value, *units) if value > SMALL else None
            span = Span(at + m.start(group), at + m.end(group))
            if blank is None or line.row.label is not None and span.end <= line.row.label.span.end:
                continue
            found.replace(span, f"{{{blank.name}}}")


def _stop(line: Line) -> int:
    m = _BRACKET.search(line.text)
    return m.start() if m else len(line.text)


def _count(found: Found, line: Line, count: Count, parts: list[Blank], before: Line | None) -> bool:
    """A printed number: a blank already there, a sum of the row's parts, or out of its repeats. False when nothing explains it."""
    value = count.n.at(0)
    if value is None or value <= SMALL:
        return True
    same = found.counts(value, "sts", "times")
    if same is None:
        reason = _sum(value, parts) or _left_open(found, value, parts, before) or _along(found, line, value)
        reason = reason or _repeats(found, line, value, before) or _share(found, line, value, before)
        reason = reason or _steadily(found, line, value, before)
        if reason is None:
            return False
        word = line.section.title if line.section else "edge"
        same = Blank(found.name(f"{word} sts"), "sts", value, "link", given=(reason,), line=line.item)
        found.add(same)
    found.replace(count.n.span, f"{{{same.name}}}")
    return True


def _sum(value: int, parts: list[Blank]) -> Reason | None:
    """As in "twice {front rows} plus {neck sts}": the parts of an edge, one stitch in each."""
    rest = value - sum(b.value for b in parts)
    if not parts or not 0 <= rest <= (2 * SMALL if len(parts) > 1 else 0):
        return None
    tally = Counter(b.name for b in parts)
    words = " plus ".join(share_of(Fraction(n), f"{{{name}}}") for name, n in tally.items())
    added = [str(b.value) for b in parts] + ([str(rest)] if rest else [])
    return Reason(words + (f" plus {rest}" if rest else ""), f"{' + '.join(added)} = {value}")


def _left_open(found: Found, value: int, parts: list[Blank], before: Line | None) -> Reason | None:
    """A row that passes by the stitches of an opening: those that were there, less these."""
    base = found.counts(before.count, "sts") if before is not None and before.count else None
    gone = next((b for b in parts if base is not None and b.unit == "sts" and base.value - b.value == value), None)
    if base is None or gone is None:
        return None
    return Reason(f"{{{base.name}}} less {{{gone.name}}}", f"{base.value} - {gone.value} = {value}")


def _steadily(found: Found, line: Line, value: int, before: Line | None) -> Reason | None:
    """A row of one run as long as it needs to be and fixed ends: so many more or fewer than there were, in every size."""
    base = found.counts(before.count, "sts") if before is not None and before.count else None
    places = [n.place for n in line.body if isinstance(n, Make) and n.place is not None]
    runs = [p for p in places if p.quant in ("each", "every") and p.n is None]
    fixed = all(isinstance(n, (Make, Group, Chain, Mark, Skip, Join)) for n in line.body)
    if base is None or len(runs) != 1 or not fixed or _PER_ROW.search(line.text) or base.value == value or _parts(found, line):
        return None
    more = value - base.value
    return Reason(f"{{{base.name}}} {'plus' if more > 0 else 'less'} {abs(more)}", f"the ends of {said(line)} are alike in every size")


def _along(found: Found, line: Line, value: int) -> Reason | None:
    """So many in the end of each row of the piece: a whole number of times its rows."""
    m = _PER_ROW.search(line.text)
    if m is None:
        return None
    per = int(m["n"] or 1)
    fronts = _fronts(found, value, per * len(_PER_ROW.findall(line.text)))
    if fronts is not None:
        return fronts
    rows = next((b for b in reversed(found.blanks) if b.unit in ("rows", "rnds") and b.value * per == value), None)
    if rows is None:
        return None
    return Reason(share_of(Fraction(per), f"{{{rows.name}}}"), f"{per} in the end of each of {rows.value} rows = {value}")


def _fronts(found: Found, value: int, per: int) -> Reason | None:
    """The fronts of a garment in one piece: along yoke and body on both sides, and the neck between them."""
    rows = [b for b in found.blanks if b.unit == "rows" and b.role != "link"]
    rest = value - per * sum(b.value for b in rows)
    neck = next((b for b in found.blanks if b.name == "neck ch"), None)
    if neck is None or len(rows) < 2 or rest not in (0, neck.value):
        return None
    words = " plus ".join([*(share_of(Fraction(per), f"{{{b.name}}}") for b in rows), *(["{neck ch}"] if rest else [])])
    return Reason(words, f"{per} for each of {' + '.join(str(b.value) for b in rows)} rows{f', {rest} along the neck' if rest else ''}")


def _repeats(found: Found, line: Line, value: int, before: Line | None) -> Reason | None:
    """A count of groups: one in each repeat, out of the stitches that the row is worked over."""
    repeat = next((n for n in line.body if isinstance(n, Repeat)), None)
    per = taken(repeat.nodes) if repeat is not None else None
    over = found.counts(before.count, "sts") if before is not None and before.count else None
    if not per or over is None or not 0 <= over.value - per * value < per + SMALL:
        return None
    rest = over.value - per * value
    less = f" less {rest}" if rest else ""
    return Reason(f"{{{over.name}}}{less}, divided by {per}", f"one in each repeat of {per} sts over {over.value}", 1)


def _share(found: Found, line: Line, value: int, before: Line | None) -> Reason | None:
    """Rounds that lose or gain in every repeat: a plain share of the stitches that were there, when these are a multiple of it."""
    base = next((b for b in reversed(found.blanks) if b.unit == "sts" and b.legal.multiple > 1 and b.legal.plus == 0), None)
    turns = any(isinstance(n, Repeat) for n in line.body) or any(isinstance(n, Make) and legs(n.kind) > 1 for n in line.body)
    if base is None or before is None or before.count is None or not turns:
        return None
    share = Fraction(value, base.value)
    if share.denominator > TWELFTHS or share.denominator == 1 or base.legal.multiple % share.denominator:
        return None
    return Reason(share_of(share, f"{{{base.name}}}"), f"{value} of {base.value} sts: each repeat changes alike", 1)


def _drop(found: Found, line: Line) -> None:
    """Takes the printed count away: it would be wrong in other sizes, and it is counted again when the pattern is written."""
    m = _BRACKET.search(line.text)
    if m is None:
        return
    at = line.span.start
    found.replace(Span(at + m.start(), at + m.end()), "" if line.text[: m.start()].endswith(".") else ".")
    found.kept.append(f"the count ({m['in']}) is left out: no blank explains it in other sizes")
