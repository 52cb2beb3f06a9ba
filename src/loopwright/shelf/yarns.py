"""Yarns on the shelf: class, fibre, what a ball weighs and how long it is, colours."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping
from typing import Any

from loopwright.record import record
from loopwright.shelf.store import Shelf, ShelfError

MOST = 5000
MOST_COLOURS = 200
_LONG = 200
LARGEST = 100_000.0  # grams or metres of a ball; a cone is the largest


@record
class Yarn:
    """A yarn. `weight`: class 0 to 7, None where not known; `ball_g`, `ball_m`: by its label; `id`: 0 for one not yet on the shelf."""

    name: str
    weight: int | None = None
    fibre: str = ""
    ball_g: float | None = None
    ball_m: float | None = None
    colours: tuple[str, ...] = ()
    id: int = 0

    @property
    def metres_per_g(self) -> float | None:
        """Metres in a gram, None where the label does not tell both."""
        return self.ball_m / self.ball_g if self.ball_g and self.ball_m else None


def yarns(shelf: Shelf) -> tuple[Yarn, ...]:
    """All that stand there, by name. Raises ShelfError."""
    with shelf.reading() as held:
        return tuple(of_row(r) for r in held.execute("SELECT * FROM yarn WHERE gone_at_s IS NULL ORDER BY lower(name), id"))


def put(shelf: Shelf, yarn: Yarn) -> Yarn:
    """Puts a yarn on the shelf, or in the place of the one with its number. Raises ShelfError, also for one that cannot be."""
    _checked(yarn)
    colours = json.dumps(list(yarn.colours), ensure_ascii=False)
    values = (yarn.name.strip(), yarn.weight, yarn.fibre.strip(), yarn.ball_g, yarn.ball_m, colours)
    with shelf.writing() as held:
        if yarn.id:
            done = held.execute(
                "UPDATE yarn SET name = ?, weight = ?, fibre = ?, ball_g = ?, ball_m = ?, colours = ? WHERE id = ? AND gone_at_s IS NULL",
                (*values, yarn.id),
            )
            if not done.rowcount:
                raise ShelfError("this yarn is no longer on the shelf")
            number = yarn.id
        else:
            room_for(held, "yarn", MOST)
            made = held.execute("INSERT INTO yarn (name, weight, fibre, ball_g, ball_m, colours) VALUES (?,?,?,?,?,?)", values)
            number = made.lastrowid or 0
        return of_row(held.execute("SELECT * FROM yarn WHERE id = ?", (number,)).fetchone())


def take_off(shelf: Shelf, number: int, at_s: float) -> bool:
    """Takes a yarn off the shelf; its swatches stay, and say nothing of a yarn while it is gone. False where there is none."""
    with shelf.writing() as held:
        return held.execute("UPDATE yarn SET gone_at_s = ? WHERE id = ? AND gone_at_s IS NULL", (at_s, number)).rowcount > 0


def put_back(shelf: Shelf, number: int) -> bool:
    """Puts a yarn back that was taken off. False where none of that number was."""
    with shelf.writing() as held:
        return held.execute("UPDATE yarn SET gone_at_s = NULL WHERE id = ? AND gone_at_s IS NOT NULL", (number,)).rowcount > 0


def room_for(held: sqlite3.Connection, table: str, most: int) -> None:
    """Raises ShelfError where a table ("yarn" or "swatch") is full; what was taken off counts."""
    if held.execute(f"SELECT count(*) FROM {table}").fetchone()[0] >= most:  # noqa: S608 - one of two names of ours
        raise ShelfError(f"the shelf holds {most} of these already: take some off")


def _checked(yarn: Yarn) -> None:
    if not yarn.name.strip():
        raise ShelfError("a yarn needs a name")
    if max(len(yarn.name), len(yarn.fibre), *(len(c) for c in yarn.colours), 0) > _LONG or len(yarn.colours) > MOST_COLOURS:
        raise ShelfError(f"names are at most {_LONG} characters long, and a yarn has at most {MOST_COLOURS} colours")
    if "\n" in yarn.name + yarn.fibre or any("\n" in c for c in yarn.colours):
        raise ShelfError("a name stands on one line")
    if yarn.weight is not None and not 0 <= yarn.weight <= 7:
        raise ShelfError("the class of a yarn is 0 to 7")
    for value in (yarn.ball_g, yarn.ball_m):
        if value is not None and not 0 < value <= LARGEST:
            raise ShelfError("grams and metres of a ball are more than 0")


def of_row(row: sqlite3.Row | Mapping[str, Any]) -> Yarn:
    """A yarn out of its row."""
    try:
        colours = json.loads(row["colours"])
    except ValueError:
        colours = []
    return Yarn(
        row["name"], row["weight"], row["fibre"], row["ball_g"], row["ball_m"],
        tuple(str(c) for c in colours) if isinstance(colours, list) else (), row["id"],
    )
