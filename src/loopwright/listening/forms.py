"""The forms of speech of forms.toml as expressions, each compiled when it is first asked for."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from loopwright.shipped import shipped_table

_KIND = r"(?:(?:fp|bp) )?(?:sc|hdc|dc|tr|htr|dtr)|fp|bp"
_PARTS = {
    "<THING>": r"(?:sts?|ch(?! \d)|(?:sc|hdc|dc|tr|htr|dtr)(?! (?:tog|in|around)\b))",
    "<IN>": r"(?:in|around|over|to|first in) (?:this |that |~ |(?P<loop>blo|flo) )*",
    "<K>": rf"(?P<k>{_KIND})",
    "<KIND>": _KIND,
    "<N>": r"(?P<n>\d+)",
    "<WORD>": r"(?: \S+)",
}


@cache
def _table() -> dict[str, Any]:
    return shipped_table("loopwright.listening", "forms.toml")


@cache
def form(sort: str, name: str) -> re.Pattern[str]:
    """The expression of a form."""
    text: str = _table()[sort][name]
    for part, stands_for in _PARTS.items():
        text = text.replace(part, stands_for)
    return re.compile(text)


@cache
def forms(sort: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    """All forms of a sort with their names, in their order."""
    return tuple((name, form(sort, name)) for name in _table()[sort])
