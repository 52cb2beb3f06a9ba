"""The words of findings: codes.toml gives each code its name, severity and text."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from loopwright.findings.model import Finding


class _Facts(dict[str, object]):
    def __missing__(self, key: str) -> str:
        return "?"


@cache
def load() -> dict[str, dict[str, Any]]:
    """All entries by code."""
    found: dict[str, dict[str, Any]] = tomllib.loads(files("loopwright.findings").joinpath("codes.toml").read_text(encoding="utf-8"))
    return found


def title(found: Finding) -> str:
    """The kebab-case name of the finding's code; the code itself when it has no entry."""
    return str(load().get(found.code, {}).get("name", found.code.lower()))


def severity(found: Finding) -> str:
    """The finding's own severity, or its code's."""
    return found.severity or str(load().get(found.code, {}).get("severity", "warning"))


def message(found: Finding) -> str:
    """The finding in words."""
    entry = load().get(found.code, {})
    said = ", ".join(f"{k.replace('_', ' ')} {v}" for k, v in found.args.items() if v not in (None, ""))
    text = str(entry.get("text", found.code)).format_map(_Facts(found.args))
    return f"{text} ({said})" if entry.get("facts") and said else text
