"""Chapters by the published convention: the first at 0:00, at least three, in order, each of 10 seconds or more; short titles.

The convention: https://9to5google.com/2020/05/28/youtube-video-chapters/ (first at 0:00, three, 10 s); titles of up to 49 characters are
shown whole: https://support.vevo.com/hc/en-us/articles/6945557784347-YouTube-Chapters.
"""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.filming.captions import Cue
from loopwright.filming.phrases import Phrases
from loopwright.filming.shots import Plan
from loopwright.filming.table import clock
from loopwright.filming.timed import Timed
from loopwright.record import record

FEWEST, SHORTEST_S, LONGEST_TITLE = 3, 10.0, 49


@record
class Chapter:
    """A chapter: when it begins, when it ends, its title, which is the section's as in the written pattern."""

    start_s: float
    end_s: float
    title: str


@record
class Chapters:
    """The chapters, and what could not be kept to, in words."""

    chapters: tuple[Chapter, ...]
    notes: tuple[str, ...]

    def lines(self) -> tuple[tuple[str, str], ...]:
        """Time and title, as they stand under a film."""
        return tuple((clock(c.start_s), c.title) for c in self.chapters)

    def cues(self) -> tuple[Cue, ...]:
        """As cues of a chapters track."""
        return tuple(Cue(c.start_s, c.end_s, (c.title,)) for c in self.chapters)


def chapters(plan: Plan, film: Timed) -> Chapters:
    """Chapters of the sections; where those are fewer than three, of rows too."""
    say = Phrases(plan.language)
    sections: dict[int, float] = {}
    for s in film.shots:
        sections.setdefault(s.shot.section, s.start_s)
    for (i, _), at in film.rows.items():
        sections[i] = min(at, sections.get(i, at))
    done = sections.pop(-1, 0.0)
    opening = min((s.start_s for s in film.shots if s.shot.section == -1), default=None)
    starts = [(at, plan.sections[i].title or plan.title) for i, at in sections.items()]
    if opening is not None and all(opening < at for at, _ in starts):
        starts.append((done, say("beginning")))
    kept = _apart(sorted(starts), film.length_s)
    if len(kept) < FEWEST:
        rows = [(at, f"{plan.sections[i].title}, {plan.sections[i].rows[n].label}".strip(", ")) for (i, n), at in film.rows.items()]
        kept = _filled(kept, sorted(rows), film.length_s)
    kept = [(0.0 if i == 0 else at, title) for i, (at, title) in enumerate(kept)]
    notes = []
    if len(kept) < FEWEST:
        notes.append(f"only {len(kept)} chapters: film sites want {FEWEST} or more, each of {SHORTEST_S:g} s or more, else they show none")
    ends = [at for at, _ in kept[1:]] + [film.length_s]
    found = tuple(Chapter(at, end, _short(title)) for (at, title), end in zip(kept, ends, strict=True))
    return Chapters(found, tuple(notes))


def _apart(starts: Sequence[tuple[float, str]], end: float) -> list[tuple[float, str]]:
    """Those that are long enough: what begins too soon after another one, or too near the end, has no chapter of its own."""
    found: list[tuple[float, str]] = []
    for at, title in starts:
        whole = int(at)  # as it is written under the film
        if not found:
            found.append((0.0, title))
        elif whole - found[-1][0] >= SHORTEST_S and end - whole >= SHORTEST_S:
            found.append((float(whole), title))
    return found


def _filled(kept: Sequence[tuple[float, str]], rows: Sequence[tuple[float, str]], end: float) -> list[tuple[float, str]]:
    """With rows among them, as evenly as may be, until there are three."""
    found = list(kept)
    while len(found) < FEWEST:
        room = [(min(abs(int(at) - k) for k in [t for t, _ in found] + [end]), int(at), title) for at, title in rows]
        best = max(room, default=(0.0, 0, ""))
        if best[0] < SHORTEST_S:
            break
        found = sorted([*found, (float(best[1]), best[2])])
    return found


def _short(title: str) -> str:
    said = " ".join(title.split())
    return said if len(said) <= LONGEST_TITLE else said[: LONGEST_TITLE - 1].rstrip(" ,(") + "…"
