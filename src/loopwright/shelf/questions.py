"""What makers asked, kept with the design, its version, the size and the row."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping
from typing import Any, Literal, get_args

from loopwright.record import record
from loopwright.shelf.store import Shelf, ShelfError

Kind = Literal["count", "gauge", "yarn", "measure", "looks", "chain", "turning", "balls"]
MOST = 2000  # questions of one design
MOST_LONG = 8000  # characters of the answer that was sent
_SHORT = 300


@record
class Kept:
    """A question that was kept. `asked`: the blanks of its sentence; `sent`: the answer; `at_s`: when, seconds since 1970."""

    design: str
    version: str
    kind: Kind
    size: str
    section: str
    label: str
    asked: Mapping[str, Any]
    heading: str
    sent: str
    at_s: float
    id: int = 0


def keep(shelf: Shelf, question: Kept) -> Kept:
    """Keeps a question, and gives it with its number. Raises ShelfError, also for one that is none or too long."""
    asked = json.dumps(dict(question.asked), ensure_ascii=False)
    short = (question.design, question.version, question.size, question.section, question.label, question.heading)
    if question.kind not in get_args(Kind) or max(map(len, short)) > _SHORT or len(asked) + len(question.sent) > MOST_LONG:
        raise ShelfError("this question is too long to be kept, or is none: shorten its answer")
    with shelf.writing() as held:
        if held.execute("SELECT count(*) FROM question WHERE design = ?", (question.design,)).fetchone()[0] >= MOST:
            raise ShelfError(f"{MOST} questions of this design are kept already: let some of them go")
        made = held.execute(
            "INSERT INTO question (design, version, kind, size, section, label, asked, heading, sent, at_s) VALUES (?,?,?,?,?,?,?,?,?,?)",
            (
                question.design, question.version, question.kind, question.size, question.section, question.label, asked,
                question.heading, question.sent, question.at_s,
            ),
        )
        at = held.execute("SELECT * FROM question WHERE id = ?", (made.lastrowid,)).fetchone()
    return _kept(at)


def kept(shelf: Shelf, design: str) -> tuple[Kept, ...]:
    """The questions of a design, the oldest first. Raises ShelfError."""
    with shelf.reading() as held:
        return tuple(_kept(r) for r in held.execute("SELECT * FROM question WHERE design = ? ORDER BY at_s, id", (design,)))


def let_go(shelf: Shelf, design: str, number: int) -> bool:
    """Takes one question of a design off the shelf; False where there is none of that number. Raises ShelfError."""
    with shelf.writing() as held:
        return held.execute("DELETE FROM question WHERE design = ? AND id = ?", (design, number)).rowcount > 0


def _kept(row: sqlite3.Row) -> Kept:
    try:
        asked = json.loads(row["asked"])
    except ValueError:
        asked = {}
    parts = {name: row[name] for name in ("design", "version", "kind", "size", "section", "label", "heading", "sent", "at_s", "id")}
    return Kept(asked=asked if isinstance(asked, dict) else {}, **parts)
