"""How well lessons are understood: python -m benchmarks.score_lessons [FOLDER] [--all].

A folder (tests/outside/lessons) holds captions and beside each a TOML with the true rows: label, count, at_s, and whether she corrected
herself in it. Rows found are set against the true ones in order (the longest common sequence of labels, then counts and times are
compared); what is left over is missed or invented. A lesson with `apart = true` was not looked at while the reader was built.
"""

from __future__ import annotations

import sys
import time
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from loopwright.listening import listen
from loopwright.listening.captions import heard
from loopwright.workshop.listen import listen_to

LESSONS = Path(__file__).parent.parent / "tests" / "outside" / "lessons"
NEAR_S = 10.0
WORDS_A_SECOND = 2.5
LONG_S = 25 * 60.0


@dataclass
class Score:
    """One lesson: true rows, those found in order, counts right, invented rows, corrections, times within 10 s, processor time."""

    name: str
    apart: bool
    rows: int = 0
    found: int = 0
    counts: int = 0
    invented: int = 0
    corrected: int = 0
    followed: int = 0
    near: int = 0
    taken_s: float = 0.0


def score(truth_path: Path) -> Score:
    """The score of the lesson whose true rows stand in this file."""
    truth = tomllib.loads(truth_path.read_text(encoding="utf-8"))
    captions = truth_path.with_name(truth["captions"]).read_text(encoding="utf-8")
    began = time.process_time()
    listened = listen_to(captions, truth["captions"])
    out = Score(truth_path.stem, truth["apart"], taken_s=time.process_time() - began)
    made = [r for r in listened.rows() if r["label"]]
    pairs = matched(truth["row"], made)
    out.rows, out.found, out.invented = len(truth["row"]), len(pairs), len(made) - len(pairs)
    for i, j in pairs:
        want, got = truth["row"][i], made[j]
        right = got["counts"][0] == want["count"]
        out.counts += right
        out.near += got["at_s"] is not None and abs(got["at_s"] - want["at_s"]) <= NEAR_S
        out.followed += right and want.get("corrected", False)
    out.corrected = sum(1 for r in truth["row"] if r.get("corrected"))
    return out


def matched(true: list[dict[str, Any]], made: list[dict[str, Any]]) -> list[tuple[int, int]]:
    """Pairs of true and made rows in order with the same label; among those, as many with the same count as can be."""
    n, m = len(true), len(made)
    best = [[0.0] * (m + 1) for _ in range(n + 1)]
    for i in range(n - 1, -1, -1):
        for j in range(m - 1, -1, -1):
            best[i][j] = max(best[i + 1][j], best[i][j + 1], best[i + 1][j + 1] + worth(true[i], made[j]))
    out, i, j = [], 0, 0
    while i < n and j < m:
        if (w := worth(true[i], made[j])) and best[i][j] == best[i + 1][j + 1] + w:
            out.append((i, j))
            i, j = i + 1, j + 1
        elif best[i][j] == best[i + 1][j]:
            i += 1
        else:
            j += 1
    return out


def worth(true: dict[str, Any], made: dict[str, Any]) -> float:
    """What it is worth to pair two rows: nothing with different labels, a little more with the same count."""
    return (1.0 + 0.01 * (true["count"] == made["counts"][0])) if true["label"] == made["label"] else 0.0


def long_lesson() -> str:
    """More than 25 minutes of talk: the lessons one after the other, each word in its own time, as lines with a time in front."""
    lines, at = [], 0.0
    for path in sorted(LESSONS.glob("*.toml")):
        said = heard(path.with_name(tomllib.loads(path.read_text(encoding="utf-8"))["captions"]).read_text(encoding="utf-8"))
        for i in range(0, len(said), 9):
            lines.append(f"{int(at) // 60}:{int(at) % 60:02} {' '.join(h.word for h in said[i : i + 9])}")
            at += 9 / WORDS_A_SECOND
        if at > LONG_S:
            break
    return "\n".join(lines)


def main() -> None:
    """Prints a line for each lesson and the sums; --all takes in the lessons kept apart."""
    folder = next((Path(a) for a in sys.argv[1:] if not a.startswith("-")), LESSONS)
    scores = [score(p) for p in sorted(folder.glob("*.toml"))]
    shown = [s for s in scores if "--all" in sys.argv or not s.apart]
    print(f"{'lesson':22} {'rows':>4} {'found':>5} {'counts':>6} {'invented':>8} {'corrections':>11} {'times':>5} {'s':>5}")
    for s in shown:
        tag = " (kept apart)" if s.apart else ""
        right = f"{s.rows:4} {s.found:5} {s.counts:6} {s.invented:8} {s.followed:5} of {s.corrected:<2} {s.near:5}"
        print(f"{s.name:22} {right} {s.taken_s:5.2f}{tag}")
    rows = sum(s.rows for s in shown)
    print(
        f"rows {100 * sum(s.found for s in shown) / rows:.1f} %, counts {100 * sum(s.counts for s in shown) / rows:.1f} % of {rows}; "
        f"invented {sum(s.invented for s in shown)}; corrections {sum(s.followed for s in shown)} of {sum(s.corrected for s in shown)}; "
        f"within 10 s {100 * sum(s.near for s in shown) / rows:.1f} %"
    )
    talk = long_lesson()
    began = time.process_time()
    listen(talk)
    print(f"{len(talk.split())} words, {talk.splitlines()[-1].split()[0]} of talk:", end=" ")
    print(f"read in {time.process_time() - began:.2f} s of the processor")


if __name__ == "__main__":
    main()
