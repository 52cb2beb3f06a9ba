"""Colours and type that all drawings on paper share, from `palette.toml`."""

from __future__ import annotations

from functools import cache
from typing import Any, Literal

from loopwright.shipped import shipped_table


@cache
def _table() -> dict[str, Any]:
    return shipped_table("loopwright.drawing", "palette.toml")


def colours(theme: Literal["light", "dark"]) -> dict[str, Any]:
    """Colours by name, #RRGGBB, in tones a list of them."""
    found: dict[str, Any] = _table()[theme]
    return found


WRITTEN: str = _table()["type"]["written"]
"""Families of type for words, in CSS."""
WORKED: str = _table()["type"]["worked"]
"""Families of type for names and large figures, in CSS."""
