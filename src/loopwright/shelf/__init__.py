"""The shelf: what must last beside the designs and is no text of theirs, in one small SQLite file of the folder."""

from loopwright.shelf.store import FILE, Shelf, ShelfError

__all__ = ["FILE", "Shelf", "ShelfError"]
