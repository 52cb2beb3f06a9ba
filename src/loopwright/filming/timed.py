"""The plan laid along the film: when each shot begins and ends, from the log and, between its lines, the planned lengths."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from loopwright.filming.captioned import least_s
from loopwright.filming.log import Log
from loopwright.filming.shots import Plan, Shot
from loopwright.record import record


@record
class TimedShot:
    """A shot and when it is in the film, seconds."""

    shot: Shot
    start_s: float
    end_s: float


@record
class Timed:
    """The shots in order of time; `rows`: when rows begin, by (section, row), those without a shot of their own too; the film's length.

    `left_out`: shots between the first and the last that have no room where the log would have them.
    """

    shots: tuple[TimedShot, ...]
    rows: Mapping[tuple[int, int], float]
    length_s: float
    left_out: int = 0


def timed(plan: Plan, log: Log, length_s: float | None = None) -> Timed:
    """Lays the plan along the film. Without a log the planned lengths alone say when; `length_s`: of the video, where there is one."""
    starts = _starts(plan, log, length_s)
    events = sorted({*starts.values(), *(e.at_s for e in log.entries)})
    lasts = max(events, default=0.0)
    last = next((plan.shots[n - 1].length_s for n, t in starts.items() if t == lasts), 10.0)
    end = length_s if length_s is not None else lasts + last
    found = []
    for n, t in sorted(starts.items(), key=lambda nt: (nt[1], nt[0])):
        if t < end:
            found.append(TimedShot(plan.shots[n - 1], round(t, 3), round(next((e for e in events if e > t), end), 3)))
    rows: dict[tuple[int, int], float] = {}
    for s in found:
        if s.shot.row >= 0 and s.shot.kind not in ("meet", "swap"):
            rows.setdefault((s.shot.section, s.shot.row), s.start_s)
    for s in found:
        if s.shot.row >= 0:
            rows.setdefault((s.shot.section, s.shot.row), s.start_s)
    for e in log.entries:
        if e.shot == 0 and e.at_s < end:
            rows[e.section, e.row] = e.at_s
    numbers = {s.shot.number for s in found}
    left_out = max(numbers, default=0) - min(numbers, default=1) + 1 - len(numbers) if numbers and not log.exact else 0
    return Timed(tuple(found), rows, end, left_out)


def _starts(plan: Plan, log: Log, length_s: float | None) -> dict[int, float]:
    """When shots begin, by number."""
    known = {e.shot: e.at_s for e in log.entries if e.shot}
    if log.exact:
        return {**_beside_numbers(plan, log), **known}
    if not log.entries:
        return _spread(plan.shots, 0.0, min(plan.length_s, length_s or plan.length_s))
    if not known:
        return {}
    found: dict[int, float] = {}
    ordered = sorted(known.items(), key=lambda nt: nt[1])
    first, began = ordered[0]
    if began > 0:
        found.update(_spread(plan.shots[: first - 1], 0.0, began))
    walls = sorted({e.at_s for e in log.entries})
    for n, t in ordered:
        later = [m for m in known if m > n and known[m] > t]
        upto = min(later, default=len(plan.shots) + 1)
        group = plan.shots[n - 1 : upto - 1]
        wall = next((w for w in walls if w > t), None)
        natural = t + sum(s.length_s for s in group)
        end = wall if wall is not None else length_s if length_s is not None else natural
        if length_s is not None and wall is None:
            end = min(max(natural, t), length_s) if natural < length_s else length_s
        for m, at in _spread(_with_room(group, end - t), t, end).items():
            found.setdefault(m, at)
    return {**found, **known}


def _beside_numbers(plan: Plan, log: Log) -> dict[int, float]:
    """In a log that names shots by number: those of a row that was named as a whole, up to what begins next."""
    found: dict[int, float] = {}
    walls = sorted({e.at_s for e in log.entries})
    named = {e.shot for e in log.entries if e.alone}
    for e in log.entries:
        if e.alone or not e.shot or e.row < 0:
            continue
        group = [s for s in plan.shots[e.shot - 1 :] if (s.section, s.row) == (e.section, e.row) and s.number not in named - {e.shot}]
        end = next((w for w in walls if w > e.at_s), e.at_s + sum(s.length_s for s in group))
        found.update(_spread(_with_room(group, end - e.at_s), e.at_s, end))
    return found


def _with_room(shots: Sequence[Shot], room_s: float) -> Sequence[Shot]:
    """The first ones whose words have room; those after them were not filmed. One at least."""
    used = 0.0
    for i, s in enumerate(shots):
        used += least_s(s.say)
        if used > room_s and i > 0:
            return shots[:i]
    return shots


def _spread(shots: Sequence[Shot], start: float, end: float) -> dict[int, float]:
    """Shots between two times: to each what its words need, the rest by the planned lengths."""
    needs = [least_s(s.say) for s in shots]
    room, need = end - start, sum(needs)
    spare = [max(0.1, s.length_s - n) for s, n in zip(shots, needs, strict=True)]
    rest = max(0.0, room - need) / (sum(spare) or 1.0)
    tight = min(1.0, room / need) if need > 0 else 1.0
    found, at = {}, start
    for s, n, more in zip(shots, needs, spare, strict=True):
        found[s.number] = at
        at += n * tight + more * rest
    return found
