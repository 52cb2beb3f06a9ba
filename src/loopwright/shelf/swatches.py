"""Swatches on the shelf: what was worked with which hook, and how many stitches and rows came to which length."""

from __future__ import annotations

import sqlite3
from dataclasses import replace

from loopwright.record import record
from loopwright.shelf.store import Shelf, ShelfError
from loopwright.shelf.yarns import room_for

MOST = 20_000
_LONG = 500
NARROWEST_MM, WIDEST_MM = 0.2, 200.0  # a stitch: finer than the finest thread, wider than an arm's
THICKEST_MM = 100.0  # a hook


@record
class Swatch:
    """A swatch: so many `stitches` over `width_mm`, so many `rows` over `height_mm`.

    `stitch`: as the trade writes it ("hdc"). `yarn`: its number, 0 for none. `rounds`: worked in rounds. `mass_g`: of the measured piece,
    None where it was not weighed. `made_at_s`: when it was put there, seconds since 1970.
    """

    hook_mm: float
    stitch: str
    stitches: float
    width_mm: float
    rows: float
    height_mm: float
    yarn: int = 0
    rounds: bool = False
    washed: bool = False
    mass_g: float | None = None
    note: str = ""
    made_at_s: float = 0.0
    id: int = 0

    @property
    def stitch_mm(self) -> float:
        """Width of a stitch."""
        return self.width_mm / self.stitches

    @property
    def row_mm(self) -> float:
        """Height of a row."""
        return self.height_mm / self.rows

    def metres_per_stitch(self, metres_per_g: float | None) -> float | None:
        """Yarn in one stitch by what the swatch weighs; None where it was not weighed or the yarn's label is not known."""
        return None if self.mass_g is None or metres_per_g is None else self.mass_g * metres_per_g / (self.stitches * self.rows)


def swatches(shelf: Shelf) -> tuple[Swatch, ...]:
    """All that stand there, the newest first. Raises ShelfError."""
    with shelf.reading() as held:
        return tuple(_swatch(r) for r in held.execute("SELECT * FROM swatch WHERE gone_at_s IS NULL ORDER BY made_at_s DESC, id DESC"))


def one(shelf: Shelf, number: int) -> Swatch | None:
    """The swatch of a number, None where none stands there. Raises ShelfError."""
    with shelf.reading() as held:
        found = held.execute("SELECT * FROM swatch WHERE id = ? AND gone_at_s IS NULL", (number,)).fetchone()
    return None if found is None else _swatch(found)


def put(shelf: Shelf, swatch: Swatch) -> Swatch:
    """Puts a swatch on the shelf, or in the place of the one with its number. Raises ShelfError, also for one that cannot be."""
    _checked(swatch)
    values = (
        swatch.yarn or None, swatch.hook_mm, swatch.stitch.strip(), swatch.stitches, swatch.width_mm, swatch.rows, swatch.height_mm,
        int(swatch.rounds), int(swatch.washed), swatch.mass_g, swatch.note.strip(),
    )
    with shelf.writing() as held:
        if swatch.yarn and held.execute("SELECT 1 FROM yarn WHERE id = ?", (swatch.yarn,)).fetchone() is None:
            raise ShelfError("this yarn is not on the shelf")
        if swatch.id:
            done = held.execute(
                "UPDATE swatch SET yarn = ?, hook_mm = ?, stitch = ?, stitches = ?, width_mm = ?, rows = ?, height_mm = ?, rounds = ?, "
                "washed = ?, mass_g = ?, note = ? WHERE id = ? AND gone_at_s IS NULL", (*values, swatch.id),
            )
            if not done.rowcount:
                raise ShelfError("this swatch is no longer on the shelf")
            number = swatch.id
        else:
            room_for(held, "swatch", MOST)
            number = held.execute(
                "INSERT INTO swatch (yarn, hook_mm, stitch, stitches, width_mm, rows, height_mm, rounds, washed, mass_g, note, made_at_s) "
                "VALUES (?,?,?,?,?,?,?,?,?,?,?,?)", (*values, swatch.made_at_s),
            ).lastrowid or 0
        return _swatch(held.execute("SELECT * FROM swatch WHERE id = ?", (number,)).fetchone())


def take_off(shelf: Shelf, number: int, at_s: float) -> bool:
    """Takes a swatch off the shelf; it can be put back. False where there is none of that number. Raises ShelfError."""
    with shelf.writing() as held:
        return held.execute("UPDATE swatch SET gone_at_s = ? WHERE id = ? AND gone_at_s IS NULL", (at_s, number)).rowcount > 0


def put_back(shelf: Shelf, number: int) -> bool:
    """Puts a swatch back that was taken off. False where none of that number was. Raises ShelfError."""
    with shelf.writing() as held:
        return held.execute("UPDATE swatch SET gone_at_s = NULL WHERE id = ? AND gone_at_s IS NOT NULL", (number,)).rowcount > 0


def _checked(swatch: Swatch) -> None:
    if not 0 < swatch.hook_mm <= THICKEST_MM:
        raise ShelfError(f"a hook is more than 0 and at most {THICKEST_MM:g} mm thick")
    if not swatch.stitch.strip() or max(len(swatch.stitch), len(swatch.note)) > _LONG or "\n" in swatch.stitch:
        raise ShelfError(f"the stitch of the swatch is needed, and at most {_LONG} characters of a note")
    if any(not 0 < v <= 100_000 for v in (swatch.stitches, swatch.rows, swatch.width_mm, swatch.height_mm)):
        raise ShelfError("stitches, rows and the lengths that they come to are more than 0")
    for what, mm in (("stitch", swatch.stitch_mm), ("row", swatch.row_mm)):
        if not NARROWEST_MM <= mm <= WIDEST_MM:
            raise ShelfError(f"a {what} of {mm:.3g} mm is beyond all yarn: look at the count and the length again")
    if swatch.mass_g is not None and not 0 < swatch.mass_g <= 100_000:
        raise ShelfError("a swatch weighs more than 0 g")


def _swatch(row: sqlite3.Row) -> Swatch:
    made = Swatch(
        row["hook_mm"], row["stitch"], row["stitches"], row["width_mm"], row["rows"], row["height_mm"], row["yarn"] or 0,
        bool(row["rounds"]), bool(row["washed"]), row["mass_g"], row["note"],
    )
    return replace(made, made_at_s=row["made_at_s"], id=row["id"])
