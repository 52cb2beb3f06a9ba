"""Regular expressions that are compiled when they are first used: a command loads many more of them than it needs."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cached_property


class Expression:
    """As re.compile, but not at once. For what most patterns do not have: what each of them needs is better compiled at once."""

    def __init__(self, text: str, flags: re.RegexFlag = re.NOFLAG) -> None:
        self.text, self.flags = text, flags

    @cached_property
    def compiled(self) -> re.Pattern[str]:
        """The expression itself."""
        return re.compile(self.text, self.flags)

    def search(self, text: str, at: int = 0) -> re.Match[str] | None:
        """The first place from `at` on."""
        return self.compiled.search(text, at)

    def match(self, text: str, at: int = 0) -> re.Match[str] | None:
        """At that place or nowhere."""
        return self.compiled.match(text, at)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """The whole text or nothing."""
        return self.compiled.fullmatch(text)

    def finditer(self, text: str) -> Iterator[re.Match[str]]:
        """One place after the other."""
        return self.compiled.finditer(text)

    def sub(self, new: str | Callable[[re.Match[str]], str], text: str) -> str:
        """Every place put differently."""
        return self.compiled.sub(new, text)
