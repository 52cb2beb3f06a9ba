"""The file of the shelf: opened, brought up to date by numbered steps, read by many, written by one."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager
from functools import cache
from importlib.resources import files
from pathlib import Path

FILE = Path(".loopwright") / "shelf.sqlite"
"""Where it stands below the folder of designs."""
BUSY_S = 5.0  # how long one writer waits for another
_MARK = 0x4C6F6F70  # "Loop": tells this file from other SQLite files


class ShelfError(Exception):
    """A shelf that cannot be used; the message names the file and the way out."""


class Shelf:
    """What a folder keeps. The file is made when something is first kept; before that all of it is empty."""

    def __init__(self, folder: Path, *, read_only: bool = False) -> None:
        """`folder`: of the designs. `read_only`: nothing is written, nor brought up to date."""
        self.path = folder / FILE
        self.read_only = read_only
        self._one = threading.Lock()

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """A connection to look things up. Raises ShelfError."""
        if not self.path.is_file():
            with self._told(), closing(sqlite3.connect(":memory:")) as empty:
                _steps_on(empty)
                yield _by_name(empty)
            return
        with self._told():
            if not self.read_only and self._behind():
                with self.writing():
                    pass
            with closing(sqlite3.connect(f"{self.path.as_uri()}?mode=ro", uri=True, timeout=BUSY_S)) as held:
                self._known(held)
                yield _by_name(held)

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """A connection whose changes are kept together, or none of them where it ends with an exception. Raises ShelfError."""
        if self.read_only:
            raise ShelfError("this studio is only for reading: start it without --read-only to keep things")
        with self._one, self._told():
            self.path.parent.mkdir(exist_ok=True)
            with closing(sqlite3.connect(self.path, timeout=BUSY_S, isolation_level=None)) as held:
                held.execute("PRAGMA journal_mode = WAL")
                held.execute("PRAGMA synchronous = FULL")
                held.execute("PRAGMA foreign_keys = ON")
                held.execute("BEGIN IMMEDIATE")
                try:
                    self._known(held)
                    _steps_on(held)
                    yield _by_name(held)
                except BaseException:
                    held.rollback()
                    raise
                held.commit()

    def _behind(self) -> bool:
        with closing(sqlite3.connect(f"{self.path.as_uri()}?mode=ro", uri=True, timeout=BUSY_S)) as held:
            return int(held.execute("PRAGMA user_version").fetchone()[0]) < len(steps())

    def _known(self, held: sqlite3.Connection) -> None:
        """Refuses a file of a later version, or one that is no shelf."""
        at, mark = (int(held.execute(f"PRAGMA {name}").fetchone()[0]) for name in ("user_version", "application_id"))
        if at > len(steps()):
            raise ShelfError(f"{self.path} was written by a later version of Loopwright: use that one, or put the file aside")
        if mark not in (0, _MARK):
            raise ShelfError(f"{self.path} is no shelf of Loopwright: put the file aside, and a new one is made")

    @contextmanager
    def _told(self) -> Iterator[None]:
        try:
            yield
        except sqlite3.OperationalError as e:
            raise ShelfError(f"{self.path} cannot be used now ({e}): try again, or look at the permissions of its folder") from None
        except sqlite3.DatabaseError as e:
            raise ShelfError(f"{self.path} cannot be read ({e}): put the file aside, and a new one is made") from None
        except OSError as e:
            raise ShelfError(f"{self.path} cannot be written: {e.strerror or e}") from None


@cache
def steps() -> tuple[str, ...]:
    """The statements of every step, in the order of their files' names; a step is never changed once it was handed out."""
    folder = files("loopwright.shelf").joinpath("steps")
    found = sorted((p for p in folder.iterdir() if p.name.endswith(".sql")), key=lambda p: p.name)
    return tuple(p.read_text(encoding="utf-8") for p in found)


def _steps_on(held: sqlite3.Connection) -> None:
    """Takes the steps that are still to be taken, within the transaction that is open."""
    at = int(held.execute("PRAGMA user_version").fetchone()[0])
    for n, step in enumerate(steps()[at:], at + 1):
        for statement in _statements(step):
            held.execute(statement)
        held.execute(f"PRAGMA user_version = {n}")
    if at < len(steps()):
        held.execute(f"PRAGMA application_id = {_MARK}")


def _statements(step: str) -> Iterator[str]:
    """One after the other: `executescript` would end the transaction."""
    held = ""
    for line in step.splitlines(keepends=True):
        held += line
        if sqlite3.complete_statement(held):
            yield held
            held = ""


def _by_name(held: sqlite3.Connection) -> sqlite3.Connection:
    held.row_factory = sqlite3.Row
    return held
