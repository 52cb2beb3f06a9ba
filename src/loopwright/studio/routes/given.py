"""What a request gives: an object out of its body, and single values that are what they should be."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from loopwright.workshop.files import CannotOpen

if TYPE_CHECKING:
    from starlette.requests import Request

_NONE = "this request could not be understood"
_MOST = 10**9


async def body_of(request: Request) -> dict[str, Any]:
    """The object in a request's body. Raises CannotOpen where there is none."""
    try:
        asked = json.loads(await request.body())
    except (ValueError, RecursionError):
        raise CannotOpen(_NONE) from None
    if not isinstance(asked, dict):
        raise CannotOpen(_NONE)
    return asked


def whole(given: Mapping[str, Any], name: str, default: int | None = None) -> int:
    """A whole number. Raises CannotOpen for anything else, and where it is missing without a default."""
    value = given.get(name, default)
    if value is None and default is not None:
        return default
    if isinstance(value, bool) or not isinstance(value, int) or abs(value) > _MOST:
        raise CannotOpen(f"{name} should be a whole number")
    return value


def real(given: Mapping[str, Any], name: str) -> float:
    """A number; 0 where none is given. Raises CannotOpen for anything else."""
    value = given.get(name, 0)
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value) or abs(value) > _MOST:
        raise CannotOpen(f"{name} should be a number")
    return float(value)


def words(given: Mapping[str, Any], name: str, most: int = 200) -> str:
    """A text; "" where none is given. Raises CannotOpen for anything else, or one that is too long."""
    value = given.get(name)
    if value is None:
        return ""
    if not isinstance(value, str) or len(value) > most or "\0" in value:
        raise CannotOpen(f"{name} should be a text of at most {most} characters")
    return value


def some(given: Mapping[str, Any], name: str, allowed: tuple[str, ...]) -> tuple[str, ...]:
    """Some of the words that are allowed, none twice. Raises CannotOpen for others."""
    value = given.get(name, [])
    if not isinstance(value, list) or not all(isinstance(v, str) and v in allowed for v in value):
        raise CannotOpen(f"{name} should be some of {', '.join(allowed)}")
    return tuple(dict.fromkeys(value))


def number_in_address(said: str | None, name: str, default: int = 0) -> int:
    """A number in the query of an address. Raises CannotOpen for anything else."""
    if said is None:
        return default
    if not said.isascii() or not said.isdecimal() or len(said) > 9:
        raise CannotOpen(f"{name} should be a whole number")
    return int(said)
