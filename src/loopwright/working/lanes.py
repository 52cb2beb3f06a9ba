"""Adding a number to many array items at once, with the long integers of the standard library.

An array of 32-bit items is read as one long integer whose 32-bit lanes are the items; adding base * 0x…00000001_00000001 adds
base to every lane. No lane overflows as long as items and sums stay below 2**31. Some 2 ns an item against 40 in a loop.
"""

from __future__ import annotations

import sys
from array import array
from functools import lru_cache

_SHORT = 24
_SIGN = 31
_ALL = 0xFFFFFFFF


@lru_cache(maxsize=512)
def ones(count: int) -> int:
    """A one in each of `count` lanes."""
    return int.from_bytes((1).to_bytes(4, sys.byteorder) * count, sys.byteorder)


def shifted(items: array[int], step: int) -> array[int]:
    """Each item plus `step`; items below zero stay as they are. Sums must not be negative."""
    if len(items) >= _SHORT and step >= 0:
        mask = ones(len(items))
        total = int.from_bytes(items.tobytes(), sys.byteorder)
        if not total & (mask << _SIGN):
            return _unpacked(total + mask * step, len(items))
    return array("i", [i + step if i >= 0 else i for i in items])


def add(items: array[int], step: int, mask: int) -> array[int]:
    """`step` (not negative) added to the items whose lane has a one in `mask`."""
    if not step or not mask or not items:
        return items[:]
    return _unpacked(int.from_bytes(items.tobytes(), sys.byteorder) + mask * step, len(items))


def mirrored(items: array[int], top: int, mask: int) -> array[int]:
    """`top` minus each item where the mask has a one, -1 elsewhere: a row seen from its other end."""
    whole = mask * _ALL
    total = mask * top - (int.from_bytes(items.tobytes(), sys.byteorder) & whole)
    return _unpacked(total | (ones(len(items)) * _ALL) ^ whole, len(items))


def _unpacked(total: int, count: int) -> array[int]:
    found: array[int] = array("i")
    found.frombytes(total.to_bytes(count * 4, sys.byteorder))
    return found


def mask_of(flags: bytes) -> int:
    """A mask with a one in each lane whose flag byte is 1 (flags are 0 or 1)."""
    if not flags:
        return 0
    if 0 not in flags:
        return ones(len(flags))
    wide = bytearray(len(flags) * 4)
    wide[0 if sys.byteorder == "little" else 3 :: 4] = flags
    return int.from_bytes(wide, sys.byteorder)
