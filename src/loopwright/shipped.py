"""Tables and texts that come with the program, read from beside the package that they belong to."""

from __future__ import annotations

import tomllib
from importlib import import_module
from pathlib import Path
from typing import Any


def shipped_text(package: str, name: str) -> str:
    """A text file of a package; `name`: its path within it.

    Not by importlib.resources, which loads what reads archives and makes temporary files at every start.
    """
    return Path(import_module(package).__path__[0], name).read_text(encoding="utf-8")


def shipped_table(package: str, name: str) -> dict[str, Any]:
    """A table in TOML of a package."""
    return tomllib.loads(shipped_text(package, name))
