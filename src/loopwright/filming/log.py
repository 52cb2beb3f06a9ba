"""The log of a film: which shot, row or section begins when. A few lines of text, written by hand or by the page beside the camera.

    0:00 Crown
    1:12 Rnd 2
    2:40 Rnd 3 count
    1:02:03 shot 41

Behind the number of a shot may stand what it is called ("shot 12 Crown, Rnd 3, count"): where the plan has changed since, the shot of
that name counts. A line is a time and what begins there; "#" begins a remark. Read with patience: "01:12,5", "72 s", "1m12s", a dash or
comma after the time.
"""

from __future__ import annotations

import re

from loopwright.filming.phrases import Phrases
from loopwright.filming.shots import Kind, Plan, Shot
from loopwright.record import record

MOST_LINES = 5000
LONGEST_S = 24 * 3600.0
_CLOCK = re.compile(
    r"^\s*[\[(]?(?:(?:(?P<h>\d{1,2}):)?(?P<m>\d{1,3}):(?P<s>\d{1,2})(?:[.,](?P<f>\d{1,3}))?|"
    r"(?:(?P<hh>\d{1,2})\s*h\s*)?(?:(?P<mm>\d{1,3})\s*m(?:in)?\s*)?(?:(?P<ss>\d{1,6})(?:[.,](?P<ff>\d{1,3}))?\s*s(?:ec)?))[\])]?"
    r"[\s,;:–—-]*(?P<what>.*)$", re.IGNORECASE,
)
_OF = re.compile(r"\s*of\b")  # "Rnd 1" is not "Rnd 1 of 6"
_ENDS = {2: "nd", 3: "rd"}
_NTH = re.compile(r"\s*\((\d{1,3})(?:st|nd|rd|th)\)$")
_SHOT = re.compile(r"^shot\s*#?\s*(\d{1,5})\b", re.IGNORECASE)
_ROW = re.compile(r"^(?P<word>rnd|round|row|r|rd|runde|reihe|tour|rang)?s?\.?\s*(?P<n>\d{1,5})\b", re.IGNORECASE)
_KINDS: dict[str, Kind] = {
    "start": "start", "first": "start", "repeat": "repeat", "end": "end", "join": "end", "turn": "end", "count": "count", "wrong": "wrong",
    "meet": "meet", "swap": "swap", "measure": "measure", "tape": "measure", "title": "title", "materials": "materials", "gauge": "gauge",
    "done": "done", "finished": "done", "goal": "goal", "intro": "title", "beginning": "title",
}


@record
class Entry:
    """What begins at a time: a shot (its number), or a row without a shot of its own (`section`, `row`); `line` of the log.

    `alone`: the shot was named by its number, so that no other one begins with it.
    """

    at_s: float
    shot: int
    section: int
    row: int
    line: int
    alone: bool = False


@record
class Log:
    """The entries in order of time; what was not understood or not used, in words with its line. `exact`: shots were named by number."""

    entries: tuple[Entry, ...]
    notes: tuple[str, ...]
    exact: bool = False


def shot_name(plan: Plan, shot: Shot) -> str:
    """What a line of the log calls a shot: "shot 12 Crown, Rnd 3, count"."""
    return f"shot {shot.number} {_full_name(plan, shot)}"


def row_name(plan: Plan, section: int, row: int) -> str:
    """What a line of the log calls a row: "Crown, Rnd 3"; "Hand, Rnd 1 of 4 (2nd)", where the section has more of that label."""
    found = plan.sections[section]
    label = found.rows[row].label
    before = sum(r.label == label for r in found.rows[:row])
    nth = f" ({before + 1}{_ENDS.get(before + 1, 'th')})" if before else ""
    return ", ".join(x for x in (found.title, label + nth) if x)


def _full_name(plan: Plan, shot: Shot) -> str:
    where = plan.sections[shot.section].title if shot.section >= 0 else ""
    label = plan.sections[shot.section].rows[shot.row].label if shot.row >= 0 else ""
    return ", ".join(x for x in (where, label, shot.kind) if x)


def _names(plan: Plan, shot: Shot) -> set[str]:
    """All that a shot may be called behind its number, in small letters."""
    full = _full_name(plan, shot).lower()
    label = shot.label.lower()
    return {full, label, f"{label} {shot.kind}", f"{label}, {shot.kind}", full.rpartition(", ")[0]} - {""}


def read_log(text: str, plan: Plan, length_s: float | None = None) -> Log:
    """The log of a film. `length_s`: of the video; what comes later is left out and noted."""
    reader = _Reader(plan, length_s)
    for number, line in enumerate(text.lstrip("\ufeff").splitlines(), 1):
        if number > MOST_LINES:
            reader.notes.append(f"the log is longer than {MOST_LINES:,} lines: the rest is left out")
            break
        if line.strip() and not line.lstrip().startswith("#"):
            reader.line(line, number)
    return reader.log()


class _Reader:
    def __init__(self, plan: Plan, length_s: float | None) -> None:
        self.plan, self.length_s = plan, length_s
        self.entries: list[Entry] = []
        self.notes: list[str] = []
        self.section, self.row, self.exact, self.latest = 0, -1, False, 0.0
        self.say = Phrases(plan.language)

    def line(self, line: str, number: int) -> None:
        found = _CLOCK.match(line)
        if found is None:
            self.notes.append(f"line {number} of the log has no time in front: {_short(line)}")
            return
        at, what = _seconds(found), found["what"].split("#")[0].strip()
        if what == "" and "#" in found["what"]:
            return
        if at > LONGEST_S:
            self.notes.append(f"line {number} of the log: {_short(line)} is later than a day, and is left out")
            return
        if self.length_s is not None and at >= self.length_s:
            self.notes.append(f"line {number} of the log: {_short(line)} is after the end of the video, and is left out")
            return
        entry = self._meant(at, what, number)
        if entry is None:
            self.notes.append(f"line {number} of the log: nothing in the plan is called {what[:60]!r}; use a section, a row or 'shot 12'")
            return
        if at < self.latest:
            self.notes.append(f"line {number} of the log is earlier than the line before it: taken in order of time")
        self.latest = max(self.latest, at)
        self.entries.append(entry)

    def log(self) -> Log:
        last: dict[tuple[int, int, int], Entry] = {}
        for e in sorted(self.entries, key=lambda e: e.at_s):
            key = (e.shot, e.section, e.row)
            if key in last:
                self.notes.append(f"line {e.line} of the log begins the same shot again: the last take counts")
            last[key] = e
        return Log(tuple(sorted(last.values(), key=lambda e: e.at_s)), tuple(self.notes), self.exact)

    def _meant(self, at: float, what: str, number: int) -> Entry | None:
        words = " ".join(what.lower().split())
        shot = _SHOT.match(words)
        if shot:
            self.exact = True
            n = self._numbered(int(shot[1]), words[shot.end() :].strip(" ,:–-"), number)
            return self._entry(at, n, number, alone=True) if 1 <= n <= len(self.plan.shots) else None
        for i, section in sorted(enumerate(self.plan.sections), key=lambda s: -len(s[1].title)):
            names = {n for t in (section.title, section.own) for n in (t.lower(), _bare(t))} - {""}
            for name in sorted(names, key=len, reverse=True):
                if words == name or words.startswith((f"{name} ", f"{name},", f"{name}:")):
                    rest = words[len(name) :].strip(" ,:–-")
                    self.section, self.row = i, -1
                    return self._in_section(at, rest, number) if rest else self._first(at, i, number)
        return self._in_section(at, words, number)

    def _numbered(self, n: int, called: str, number: int) -> int:
        """The shot that is meant: the one of that number, unless it has another name and there is one of the name that was written."""
        shots = self.plan.shots
        if not called or 1 <= n <= len(shots) and called in _names(self.plan, shots[n - 1]):
            return n
        same = [s.number for s in shots if s.section >= 0 and called in _names(self.plan, s)]
        if not same:
            return n
        found = min(same, key=lambda m: abs(m - n))
        changed = f"{called[:60]!r} is shot {found} now, not {n}: the plan has changed since; taken by its name"
        self.notes.append(f"line {number} of the log: {changed}")
        return found

    def _in_section(self, at: float, words: str, number: int) -> Entry | None:
        """A row of this section or of one that follows, and which shot of it; or a shot of the row that was named last."""
        nth = _NTH.search(words)
        passed, words = (int(nth[1]) - 1, words[: nth.start()]) if nth else (0, words)
        for i in [*range(self.section, len(self.plan.sections)), *range(self.section)]:
            for n, row in enumerate(self.plan.sections[i].rows):
                rest = _called(words, row.label)
                if rest is not None and passed:
                    passed -= 1
                    continue
                if rest is not None:
                    self.section, self.row = i, n
                    return self._of_row(at, i, n, _KINDS.get(rest.strip(" ,:–-")), number)
        kind = _KINDS.get(words)
        if kind is None:
            return None
        for s in self.plan.shots:
            here = s.section == self.section and (self.row < 0 or s.row in (self.row, -1)) or s.section < 0
            if s.kind == kind and here:
                return self._entry(at, s.number, number)
        return None

    def _first(self, at: float, section: int, number: int) -> Entry | None:
        shot = next((s for s in self.plan.shots if s.section == section), None)
        return self._entry(at, shot.number, number) if shot else None

    def _of_row(self, at: float, section: int, row: int, kind: Kind | None, number: int) -> Entry:
        own = [s for s in self.plan.shots if s.section == section and s.row == row and (kind is None or s.kind == kind)]
        return self._entry(at, own[0].number, number) if own else Entry(at, 0, section, row, number)

    def _entry(self, at: float, shot: int, number: int, *, alone: bool = False) -> Entry:
        s = self.plan.shots[shot - 1]
        if s.section >= 0:
            self.section, self.row = s.section, s.row
        return Entry(at, shot, s.section, s.row, number, alone)


def _called(words: str, label: str) -> str | None:
    """What follows a row's name, where the words begin with it: "rnd 3", "round 3", "r3", "3"; None where they do not."""
    name = label.lower()
    if words == name or (words.startswith((f"{name} ", f"{name},")) and not _OF.match(words[len(name) :])):
        return words[len(name) :]
    said, own = _ROW.match(words), _ROW.match(name)
    if said and own and said["n"] == own["n"] and not _OF.match(words[said.end() :]):
        return words[said.end() :]
    return None


def _bare(title: str) -> str:
    return re.sub(r"\s*\(.*\)\s*$", "", title).strip().lower()


def _seconds(m: re.Match[str]) -> float:
    fraction = m["f"] or m["ff"] or ""
    hours, minutes, seconds = (int(m[a] or m[b] or 0) for a, b in (("h", "hh"), ("m", "mm"), ("s", "ss")))
    return hours * 3600.0 + minutes * 60.0 + seconds + (int(fraction) / 10 ** len(fraction) if fraction else 0.0)


def _short(line: str) -> str:
    said = " ".join(line.split())
    return repr(said if len(said) <= 60 else f"{said[:59]}…")
