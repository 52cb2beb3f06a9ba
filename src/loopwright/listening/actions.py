"""What is done in a row, out of the words of the trade as they were spoken: stitches and where they go, chains, joins, turns, counts."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace

from loopwright.listening.forms import form, forms
from loopwright.listening.words import Line
from loopwright.record import record

_WAY = re.compile(r"(?: ~)? around")

_MOST_IN_ONE = 40  # stitches that go into one place; more is a count


@record
class Act:
    """One thing done. `words`: as the trade writes it; `at`: index of the word where it was said; `weak`: perhaps only spoken of."""

    do: str
    words: str
    at: int
    end: int
    n: int = 1
    kind: str | None = None
    place: str | None = None
    whole: bool = False
    weak: bool = False


@record
class _Where:
    name: str
    words: str
    end: int
    whole: bool = False


def acts(line: Line, start: int, stop: int, kind: str | None, *, in_rows: bool) -> tuple[list[Act], str | None]:
    """What is done between two words of a line, and the kind of stitch it ends with. `kind`: the stitch of the row before."""
    text = line.text
    at = line.starts[start] if start < len(line.starts) else len(text)
    end = line.starts[stop] if stop < len(line.starts) else len(text)
    out: list[Act] = []
    reader = _Reader(text, end, kind, in_rows=in_rows)
    said = range(start, min(stop, len(line.tokens)))
    reader.breaks = frozenset(line.starts[i] + len(line.tokens[i].text) for i in said if line.tokens[i].pause)
    while at < end:
        fits = ((name, m) for name, pattern in forms("acts") if (m := pattern.match(text, at)) and m.end() <= end)
        found = next((a for name, m in fits if (a := reader.act(name, m))), None)
        if found:
            out.append(replace(found, at=line.index(at), end=line.index(max(at, found.end - 1))))
            at = max(at + 1, found.end)
        following = text.find(" ", at - 1 if found else at) + 1
        if not following:
            break
        at = following
    return sorted([*out, *_alone(line, start, stop)], key=lambda a: a.at), reader.kind


def _alone(line: Line, start: int, stop: int) -> list[Act]:
    """Numbers that stand alone between two stops are counts perhaps: "Twelve.", "Twenty-four again."."""
    few = 2
    return [
        Act("claim", "", i, i, int(t.text), weak=True)
        for i, t in enumerate(line.tokens[start:stop], start)
        if t.text.isdecimal() and t.stop and i > start and line.tokens[i - 1].stop and few < int(t.text)
    ]


class _Reader:
    """Turns matches into acts; knows the stitch that is being worked and the loop that is worked into."""

    def __init__(self, text: str, end: int, kind: str | None, *, in_rows: bool) -> None:
        self.text, self.end, self.kind = text, end, kind
        self.way = "across" if in_rows else "around"
        self.loop = ""
        self.placed = False
        self.breaks: frozenset[int] = frozenset()

    def act(self, name: str, m: re.Match[str]) -> Act | None:
        """The act of a match, or None where the words do not make one after all."""
        make: Callable[[re.Match[str]], Act | None] | None = getattr(self, f"_{name}", None)
        return make(m) if make else Act(name, name, 0, m.end())

    def _n(self, m: re.Match[str]) -> int:
        n = m.groupdict().get("n")
        return min(int(n), 1000) if n else 1

    def _kind(self, m: re.Match[str]) -> str:
        said = m["k"]
        if said in ("fp", "bp"):
            low = (self.kind or "dc").removeprefix("fp").removeprefix("bp")
            said = f"{said} {low}"
        self.kind = said.replace(" ", "")
        return self.kind

    def _chain_noun(self, m: re.Match[str]) -> Act | None:
        return Act("noun", "", 0, m.end(), weak=True)

    def _shorthand(self, m: re.Match[str]) -> Act | None:
        where = self._where(m.end()) if m["n"] and self.kind else None
        if where is None or where.name != "sp":
            return Act("noun", "", 0, m.end(), weak=True)
        words = f"({m['n']} {self.kind}, ch {m['n2']}, {m['n3']} {self.kind}) {where.words}"
        return Act("group", words, 0, where.end, kind=self.kind, place="sp", whole=where.whole, weak=bool(m["so"]))

    def _join(self, m: re.Match[str]) -> Act | None:
        if m["ring"]:
            return Act("ring", "join with sl st to form a ring", 0, m.end())
        after = form("after", "join_space").match(self.text, m.end())
        if after and m[0].startswith("sl"):
            return Act("slip", "sl st in corner sp", 0, after.end(), kind="sp")
        tail = form("after", "join_to").match(self.text[m.end() : m.end() + 90])
        return Act("join", "join", 0, m.end() + (tail.end() if tail else 0))

    def _slip(self, m: re.Match[str]) -> Act | None:
        n = self._n(m)
        return Act("slip", f"sl st in next {n} sts" if n > 1 else "sl st in next st", 0, m.end(), n)

    def _sized(self, m: re.Match[str]) -> Act | None:
        few = 2
        return Act("claim", "", 0, m.end(), int(m["n"]), kind=(m["of"] or "").strip() or None) if few < int(m["n"]) else None

    _sized_too = _sized

    def _stands(self, m: re.Match[str]) -> Act | None:
        n = int(next(d for d in re.findall(r"\d+", m[0])))
        few = 2
        return Act("claim", "", 0, m.end(), n, kind=m["of"] or m["of2"], weak=True) if n > few else None

    def _kind_run(self, m: re.Match[str]) -> Act | None:
        kind, n = self._kind(m), self._n(m)
        return Act("make", f"{kind} in next {n} sts" if n > 1 else f"{kind} in next st", 0, m.end(), 1, kind, "next")

    def _for_so_many(self, m: re.Match[str]) -> Act | None:
        few = 2
        return Act("claim", "", 0, m.end(), int(m["n"]), weak=True) if int(m["n"]) > few else None

    def _together(self, m: re.Match[str]) -> Act | None:
        kind = self._kind(m)
        where = self._where(m.end())
        n, end = int(m["often"] or self._n(m)), where.end if where else m.end()
        return Act("dec", f"{kind}2tog", 0, end, n, kind, where.name if where else None)

    def _dec(self, m: re.Match[str]) -> Act | None:
        where = self._where(m.end())
        return Act("dec", f"{self.kind or 'sc'}2tog", 0, where.end if where else m.end(), self._n(m), self.kind, weak=m.start() == 0)

    def _run_inc(self, m: re.Match[str]) -> Act | None:
        return Act("run", m["what"], 0, m.end(), self._n(m), self.kind)

    def _inc(self, m: re.Match[str]) -> Act | None:
        where = self._where(m.end()) or self._where(m.end(), " in")
        kind = self.kind or "sc"
        if where and where.whole:
            return Act("make", f"2 {kind} {where.words}", 0, where.end, 2, kind, "each", whole=True)
        n = self._n(m)
        if n > 1:
            return Act("make", f"2 {kind} in each of next {n} sts", 0, m.end(), 2, kind, "next")
        end = where.end if where and where.name == "one" else m.end()
        return Act("make", f"2 {kind} in next st", 0, end, 2, kind, "next", weak=where is None)

    def _made(self, m: re.Match[str]) -> Act | None:
        return self._make(m, self._n(m), self._kind(m))

    def _elliptic(self, m: re.Match[str]) -> Act | None:
        return self._make(m, self._n(m), self.kind) if self.kind else None

    _ring_st = _elliptic

    def _also(self, m: re.Match[str]) -> Act | None:
        made = self._make(m, 1, self.kind) if self.kind else None
        return made if made is not None and made.place != "sp" else None

    def _make(self, m: re.Match[str], n: int, kind: str | None) -> Act | None:
        where = self._where(m.end())
        if where is None or kind is None:
            return Act("make", kind or "", 0, m.end(), n, kind, weak=True) if kind and "k" in m.groupdict() else None
        if n > _MOST_IN_ONE and where.name != "ring":
            return None
        head = f"{n} {kind}" if n > 1 else kind
        several = where.name == "next" and n > 1
        words = f"{head} in each of {where.words.removeprefix('in ')}" if several else f"{head} {where.words}"
        if kind[:2] in ("fp", "bp"):
            words = words.replace(" in ", " around ", 1)
        return Act("make", words, 0, where.end, n, kind, where.name, whole=where.whole)

    def _bare(self, m: re.Match[str]) -> Act | None:
        return Act("make", "", 0, m.end(), self._n(m), self._kind(m))

    def _bare_one(self, m: re.Match[str]) -> Act | None:
        around = _WAY.match(self.text, m.end())
        kind = self._kind(m)
        if around:
            return Act("make", f"{kind} in each st {self.way}", 0, around.end(), 1, kind, "each", whole=True, weak=True)
        return Act("make", "", 0, m.end(), 1, kind, weak=True)

    def _chain(self, m: re.Match[str]) -> Act | None:
        n = int(m["n"] or m["n2"])
        return Act("chain", f"ch {n}", 0, m.end(), n) if n else None

    def _skip(self, m: re.Match[str]) -> Act | None:
        if m["what"]:
            return Act("skip", f"sk next {'ch-sp' if 'ch' not in m['what'] else 'ch sp'}", 0, m.end(), 1, "sp")
        if not m["n"] and m[0].endswith("ch"):
            return None
        n = self._n(m)
        one = "sk first st" if m["first"] == "first" else "sk next st"
        return Act("skip", f"sk next {n} sts" if n > 1 else one, 0, m.end(), n)

    def _leave(self, m: re.Match[str]) -> Act | None:
        return Act("leave", f"leave last {m['n']} sts unworked" if m["n"] else "leave rem sts unworked", 0, m.end(), int(m["n"] or 0))

    def _times(self, m: re.Match[str]) -> Act | None:
        return Act("times", "", 0, m.end(), self._n(m))

    def _place(self, m: re.Match[str]) -> Act | None:
        where = self._where(m.start() - 1)
        if where is None or where.name not in ("sp", "ring", "last", "first", "one", "same", "each", "hook"):
            return None
        return Act("place", where.words, 0, where.end, 1, None, where.name, whole=where.whole)

    def _where(self, at: int, extra: str = "") -> _Where | None:
        """The place that is named right at an offset (a space before it)."""
        gap = form("after", "place").match(self.text[at : at + 20])
        found = ((name, m) for name, place in forms("places") if (m := place.match(self.text, at + gap.end()))) if gap else iter(())
        name, m = next(((n, p) for n, p in found if not ("many" in p.groupdict() and p.start("many") - 1 in self.breaks)), ("", None))
        if m is None or m.end() > self.end:
            return None
        loop = m.groupdict().get("loop")
        if loop and not extra:
            self.loop = " in back loop only" if loop == "blo" else " in front loop only"
        return self._worded(name, m)

    def _worded(self, name: str, m: re.Match[str]) -> _Where:
        end = m.end()
        loop = self.loop.removeprefix(" in ")
        of = f"{loop} of " if loop else ""
        if name == "hook":
            rank = {1: "1st", 2: "2nd", 3: "3rd"}.get(int(m["kth"]), f"{m['kth']}th")
            return _Where(name, f"in {rank} ch from hook", end)
        if name in ("next", "many", "chs"):
            n = int(next(v for k, v in m.groupdict().items() if v and k != "loop"))
            return _Where("next", f"in {of}next {n} {'ch' if name == 'chs' else 'sts'}" if n > 1 else f"in {of}next st", end)
        if name == "each":
            return self._each(m, of)
        if name == "sp":
            return self._space(m)
        n = int(next((v for k, v in m.groupdict().items() if v and k in ("firsts", "lasts")), 1))
        some = f" {n} sts" if n > 1 else " st"
        words = {
            "one": f"in {of}next st", "kth": f"in {of}next st", "first": f"in {of}first{some}", "last": f"in {of}last{some}",
            "same": "in same st", "ring": "in ring", "rowend": f"in end of each row {self.way}",
        }[name]
        return _Where(name, words, end, name == "rowend")

    def _each(self, m: re.Match[str], of: str) -> _Where:
        what = "ch" if m["thing"] == "ch" else "st"
        left = form("after", "left").match(self.text, m.end())
        if left and left.end() <= self.end:
            if left["sp"]:
                return _Where("each", f"in {of}each {what} to {_sp(left['sp'])}", left.end())
            n = int(left["left"] or 1)
            return _Where("each", f"in {of}each {what} to last {f'{n} sts' if n > 1 else 'st'}", left.end())
        way = _WAY.match(self.text, m.end())
        return _Where("each", f"in {of}each {what} {self.way}", way.end() if way else m.end(), whole=True)

    def _space(self, m: re.Match[str]) -> _Where:
        quants = m["quant"].split()
        what = _sp(m["sp"])
        if "each" in quants or "all" in quants:
            return _Where("sp", f"in each {what} {self.way}", m.end(), whole=True)
        same = "same" in quants or (not self.placed and ("that" in quants or "this" in quants))
        self.placed = True
        return _Where("sp", f"in {'same' if same else 'next'} {what}", m.end())


def _sp(said: str) -> str:
    length = re.search(r"ch(?:ref)? (\d+)", said)
    if length:
        return f"ch-{length[1]} sp"
    return "corner sp" if "corner" in said else "sp"


def claims(done: list[Act]) -> Iterator[Act]:
    """The counts that were said, in order."""
    return (a for a in done if a.do == "claim")
